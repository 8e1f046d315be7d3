"""What stands before and after the music: speech, applause, rain or tuning, which is not counted, and a count-in, which is not bar 1.

A network that has heard the music goes on counting before it and behind it. Whether there is anything to count is told by the
sound alone: in music something rises on most beats, elsewhere as much rises between them.
"""

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.listening.signal.spectra import FRAMES

_LOUDEST = 6  # number of bands that rise most
_NEAR = 1  # frames about a beat in which something rises
_EDGES = (0.6, 0.8, 0.9, 0.95)  # of ranks, between which shares are counted
_MUSIC = (
    0.04,
    0.04,
    0.13,
    0.19,
    0.6,
)  # shares of ranks on the beats of music (benchmarks, 17 tracks)
_ALIKE = 12.0  # beats of such music that a song's own beats are added to
_ROUNDS = 2
_LEAST = 6  # beats
_CLEAR = 5.0  # [nats] by which beats at an end must be unlike the song's
_SAME_COLOURS = 0.88  # correlation of mean spectra: music before its strokes set in has those of the music behind (benchmarks)
_CERTAIN, _VERY_ALIKE = 20.0, 0.915  # [nats], and the same where so much speaks against music
_FAINT = 0.6  # [1] of the music's level, on the scale of `levelled`
_MOST_MOVED = 24  # beats by which an end is moved to where the colours change
_STILL = 0.03  # [1] by which the level of what only hums goes up and down
_THIN = 0.25  # [1] of the sound of the next bars: what is left between the strokes of a count-in
_LATE, _BEFORE_NEXT = 0.45, 0.9  # [beats] after a stroke, where it has died away
_DEEP = 8  # lowest bands, up to about 250 Hz
_HEARD, _NO_DRUM = 0.1, 0.6  # on the scale of `levelled`; of what sounds that low
_MOST_STRUCK = 0.7  # [1] of the beats
_FEWEST = 16  # beats of music behind a count-in


def counted_music(times: Floats, bands: NDArray[np.float32]) -> tuple[int, int]:
    """The first beat that is heard, and the one after the last.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
        Beats, rising.
    bands : ndarray, shape (m, 80) [1]
        See `spectra.levelled`.

    Returns
    -------
    first, end : int
        0 and n where all of them are, or hardly differ from the others.

    Notes
    -----
    Source: the run of beats with the largest sum (J. Bentley, Programming Pearls, 1984; from memory) of log odds: how much rises on
    a beat, as a rank among the frames around it, in music against chance. The ranks of music are the song's own, so that one whose
    strokes lie beside its beats keeps them all. Music that starts softly, without strokes, keeps its count where its colours are
    those of the music behind. Thresholds are this project's choice (benchmarks).
    """
    n = len(times)
    if n < 4:
        return 0, n
    ranks = stroke_ranks(times, bands)
    total: Floats = np.zeros(n + 1)
    first, end = 0, n
    for _ in range(_ROUNDS):  # what is no music has no say in how music is
        total = _sums(ranks, ranks[first:end])
        first, end = _fullest(total)
    frames = np.round(times * FRAMES).astype(np.int64)
    low, high = int(frames[first]), int(frames[end - 1]) + 1
    music = bands[low:high]
    # of each stretch the part that lies far from the music: the run may begin late
    ahead, behind = bands[: 2 * low // 3], bands[high + (len(bands) - high) // 3 :]
    begins, ends = 0, n
    if first >= _LEAST and _unlike(ahead, music, total[first]):
        begins = first
        while begins > max(first - _MOST_MOVED, 0) and _closer(bands, frames[begins - 1], music, ahead):  # fmt: skip
            begins -= 1
        while begins < first + _MOST_MOVED and not _closer(bands, frames[begins], music, ahead):
            begins += 1
    if n - end >= _LEAST and _unlike(behind, music, total[n] - total[end]):
        ends = end
        while ends < min(end + _MOST_MOVED, n) and _closer(bands, frames[ends], music, behind):
            ends += 1
    return begins, ends


def _closer(
    bands: NDArray[np.float32], frame: int, music: NDArray[np.float32], other: NDArray[np.float32]
) -> bool:
    """Whether what follows a beat sounds more like the music than like something else."""
    here = bands[max(frame, 0) : frame + FRAMES // 2]
    return len(here) > 2 and _colours(here, music) >= _colours(here, other)


def _sums(ranks: Floats, music: Floats) -> Floats:
    """Log odds of music against chance, added up over the first beats, shape (n + 1,) [nats]."""
    place = np.searchsorted(_EDGES, music)
    own = np.bincount(place, minlength=len(_MUSIC)) + _ALIKE * np.array(_MUSIC)
    bounds = np.array([0.0, *_EDGES, 1.0]) ** (2 * _NEAR + 1)  # the highest of so many frames
    gain = np.log(own / own.sum() / np.diff(bounds))[np.searchsorted(_EDGES, ranks)]
    return np.concatenate([[0.0], np.cumsum(gain)])


def _fullest(total: Floats) -> tuple[int, int]:
    """Ends of the run of beats over which the sums rise most; at least one beat."""
    lowest = np.minimum.accumulate(total[:-1])
    end = int(np.argmax(total[1:] - lowest)) + 1
    return int(np.argmin(total[:end])), end


def _unlike(some: NDArray[np.float32], music: NDArray[np.float32], odds: float) -> bool:
    """Whether a stretch is no part of the music: nothing is struck on its beats, and other colours, or nothing that moves."""
    if odds > -_CLEAR or len(some) < FRAMES or len(music) < FRAMES:
        return False
    level = some.mean(axis=1)
    if level.mean() < _FAINT * music.mean():
        return False  # music that begins softly, or fades out
    most = _SAME_COLOURS if odds > -_CERTAIN else _VERY_ALIKE
    return bool(_colours(some, music) < most or level.std() < _STILL * level.mean())


def _colours(some: NDArray[np.float32], other: NDArray[np.float32]) -> float:
    """Correlation of mean spectra."""
    a, b = some.mean(axis=0), other.mean(axis=0)
    return float(np.corrcoef(a, b)[0, 1]) if a.std() > 0 and b.std() > 0 else 0.0


def stroke_ranks(times: Floats, bands: NDArray[np.float32]) -> Floats:
    """How much rises on each beat, as a rank among the frames around it, shape (n,) [1]."""
    rises = risen(bands)
    gaps = np.diff(times, append=times[-1] + (times[-1] - times[-2]))
    found = np.full(len(times), 0.7)
    for k, (at, gap) in enumerate(zip(times, gaps, strict=True)):
        # no frame half a beat away: eighths rise there as well
        middle, half = round(at * FRAMES), round(gap * FRAMES / 2) - 2 * _NEAR - 1
        around = rises[max(middle - half, 0) : middle + half + 1]
        here = rises[max(middle - _NEAR, 0) : middle + _NEAR + 1]
        if len(around) > 8 and len(here):  # else it lies at the very edge of the track
            top = here.max()
            found[k] = np.mean(around < top) + 0.5 * np.mean(around == top)
    return found


def count_in(times: Floats, first: NDArray[np.bool_], metre: int, bands: NDArray[np.float32]) -> int:  # fmt: skip
    """Beats of a count-in before the music: one or two bars of strokes with nothing between them.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
    first : ndarray, shape (n,) [1]
        Which of them begin bars.
    metre : int
    bands : ndarray, shape (m, 80) [1]

    Returns
    -------
    beats : int
        0 if there is none. The beat after them begins a bar.

    Notes
    -----
    Source: ours. What sounds in the second half of each beat is compared with the bars that follow.
    """
    starts = np.flatnonzero(first)
    sound = bands.mean(axis=1)
    for beats in starts[(starts > 1) & (starts <= 2 * metre)].tolist()[::-1]:
        if len(times) < beats + _FEWEST:
            continue
        full = _between(times[beats : beats + 2 * metre + 1], sound)
        thin = _between(times[: beats + 1], sound)
        begun = full[0] > 2 * _THIN * np.median(full)
        if thin.max() < _THIN * np.median(full) and begun and _clicks(times[:beats], bands):
            return int(beats)
    return 0


def _clicks(times: Floats, bands: NDArray[np.float32]) -> bool:
    """Whether something is struck or said on most of the beats that is no bass drum."""
    index = np.round(times * FRAMES).astype(np.int64)[:, None] + np.arange(4)
    struck = bands[np.clip(index, 0, len(bands) - 1)].max(axis=1)
    low, high = struck[:, :_DEEP].mean(axis=1), struck[:, _DEEP:].mean(axis=1)
    return bool(np.mean((high > _NO_DRUM * low) & (high > _HEARD)) > _MOST_STRUCK)


def _between(times: Floats, sound: NDArray[np.float32]) -> Floats:
    """Mean of what sounds late in each beat, shape (n − 1,) [1]."""
    gaps = np.diff(times)
    low = np.round((times[:-1] + _LATE * gaps) * FRAMES).astype(np.int64)
    high = np.round((times[:-1] + _BEFORE_NEXT * gaps) * FRAMES).astype(np.int64)
    total = np.concatenate([[0.0], np.cumsum(sound, dtype=np.float64)])
    low, high = np.clip(low, 0, len(sound)), np.clip(high, 0, len(sound))
    return np.asarray((total[high] - total[low]) / np.maximum(high - low, 1))


def risen(bands: NDArray[np.float32]) -> NDArray[np.float32]:
    """Rise of the bands that rise most, frame by frame, shape (n,) [1]; each band is combined with its neighbour."""
    smooth = bands[:, :-1] + bands[:, 1:]
    rise = np.zeros(len(bands), np.float32)
    if len(bands) > 3:
        up = np.partition(smooth[2:] - smooth[:-2], -_LOUDEST, axis=1)[:, -_LOUDEST:]
        rise[1:-1] = np.maximum(up, 0).mean(axis=1)
    return rise
