"""The count track: clicks on the beats, counts before each change and section calls, mixed with the song.

Seconds are those of the track, divided by the speed; a click starts on the sample nearest its beat.
"""

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from sequencer.arrays import Floats
from sequencer.outputs.sound.clicks import CHANGE_STEP, COUNT_STEPS, call_steps, click, spoken, tone
from sequencer.outputs.sound.recording import write_recording
from sequencer.staging.staged import Staged

VOICES = ("pitched", "spoken", "none")
_CEILING = 10 ** (-1.2 / 20)  # [1] largest sample of a mix: 1.2 dB below full scale
COUNTED = 4  # beats before a change


@dataclass(frozen=True, slots=True, kw_only=True)
class Mix:
    """What goes into a count track."""

    song: float | None = -9.0  # [dB] level of the song; None leaves it out
    speed: float = 1.0  # playback speed, at the same pitch
    clicks: bool = True
    counts: str = "pitched"  # one of VOICES
    calls: bool = True
    split: bool = False  # song left, counts right
    who: tuple[str, ...] = ()  # performers whose changes are counted; everybody if empty

    def __post_init__(self) -> None:
        if self.counts not in VOICES:
            raise ValueError(f"counts must be one of {', '.join(VOICES)}, got {self.counts!r}")
        if not 0.25 <= self.speed <= 2.0:
            raise ValueError(f"speed must be 0.25 to 2, got {self.speed!r}")
        if self.song is not None and not -80.0 <= self.song <= 0.0:
            raise ValueError(f"the song's level must be -80 to 0 dB, got {self.song!r}")


def count_track(staged: Staged, samples: Floats | None, rate: int, mix: Mix) -> Floats:
    """Mix of song and counts.

    Parameters
    ----------
    staged : Staged
    samples : ndarray, shape (n, c) [1], or None
        The song; None for counts only.
    rate : int
        Sample rate [Hz].
    mix : Mix

    Returns
    -------
    track : ndarray, shape (m, 2) [1]
        Left and right, peaking at most 1.2 dB below full scale; of a part of a show, from four beats before it.

    Notes
    -----
    Source: beats as detected or corrected; slow versions by librosa's phase vocoder (D. Ellis, A
    phase vocoder in Matlab, 2002). A click lies within half a sample of its beat.
    """
    length = int(np.ceil(staged.song.duration * rate / mix.speed)) + rate // 2
    counts = counted(staged, length, rate, mix)
    song: Floats = np.zeros((length, 2))
    if samples is not None and mix.song is not None:
        played = stretched(_stereo(samples), mix.speed)
        n = min(len(played), length)
        np.multiply(played[:n], 10 ** (mix.song / 20), out=song[:n])
    if mix.split:
        song[:, 0] = song.mean(axis=1)
        song[:, 1] = counts
    else:
        song += counts[:, None]
    largest = max(float(song.max(initial=0.0)), -float(song.min(initial=0.0)))
    if largest > _CEILING:
        song *= _CEILING / largest
    if staged.part is not None:
        first, last = (
            max(0, round(staged.seconds(beat) / mix.speed * rate))
            for beat in (staged.part.start - COUNTED, staged.part.end)
        )
        return song[first:last]
    return song


def write_count_track(
    path: Path, staged: Staged, samples: Floats | None, rate: int, mix: Mix
) -> None:
    """Write a count track as 16-bit WAV.

    Raises
    ------
    InputError
        If the folder cannot be written.
    """
    write_recording(path, count_track(staged, samples, rate, mix), rate)


def counted(staged: Staged, length: int, rate: int, mix: Mix) -> Floats:
    """Clicks, counts and calls alone.

    Parameters
    ----------
    staged : Staged
    length : int
        Samples.
    rate : int
        [Hz]
    mix : Mix

    Returns
    -------
    counts : ndarray, shape (length,) [1]

    Notes
    -----
    Source: the song's beats. Exact to half a sample.
    """
    out: Floats = np.zeros(length)
    sounds: list[tuple[float, Floats]] = _clicks(staged, rate) if mix.clicks else []
    if mix.counts != "none":
        words = mix.counts == "spoken"
        counts = counts_before(changes(staged, mix.who))
        sounds += [(beat, _count(left, rate, words=words)) for beat, left in counts]
    if mix.calls:
        sounds += [(beat, tone(rate, step, 0.3, loud=0.3)) for beat, step in section_calls(staged)]
    for beat, sound in sounds:
        at = round(float(staged.tempo.seconds_from_beats(beat)) / mix.speed * rate)
        if 0 <= at < length:
            part = sound[: length - at]
            out[at : at + len(part)] += part
    return out


def changes(staged: Staged, who: tuple[str, ...] = ()) -> tuple[float, ...]:
    """Beats at which someone changes: starts of blocks and stops, ends that nothing follows directly, and accents."""
    chosen = [block for block in (*staged.blocks, *staged.stops) if not who or block.who in who]
    starts = {round(block.start, 6) for block in chosen}
    ends = {round(block.end, 6) for block in chosen}
    hits = {round(each.beat, 6) for each in staged.accents if not who or each.who in who}
    return tuple(sorted(starts | ends | hits))


def counts_before(at: tuple[float, ...]) -> list[tuple[float, int]]:
    """Beats with the number left until the next change: 4, 3, 2, 1, and 0 on the change itself.

    A count never reaches back past the previous change.
    """
    out: list[tuple[float, int]] = []
    before = -np.inf
    for change in at:
        out += [
            (change - left, left) for left in range(COUNTED, 0, -1) if change - left > before + 1e-6
        ]
        out.append((change, 0))
        before = change
    return out


def section_calls(staged: Staged) -> list[tuple[float, int]]:
    """Beats and pitches of three-note calls, one bar ahead of each section; the same label gets the same call."""
    families: dict[str, int] = {}
    out: list[tuple[float, int]] = []
    tempo = staged.tempo
    for section in staged.song.sections:
        family = families.setdefault(section.label, len(families))
        start = round(float(tempo.beats_from_seconds(section.start)))
        bar = tempo.position_of(start).bar
        ahead = start - tempo.bar_length(bar - 1)
        out += [(ahead + 0.5 * i, step) for i, step in enumerate(call_steps(family))]
    return out


def stretched(samples: Floats, speed: float) -> Floats:
    """The song slower or faster at the same pitch.

    Parameters
    ----------
    samples : ndarray, shape (n, c) [1]
    speed : float
        1 leaves it unchanged.

    Returns
    -------
    samples : ndarray, shape (n / speed, c) [1]

    Notes
    -----
    Source: phase vocoder of librosa. Sharp attacks are smeared by up to half a window (23 ms at
    44.1 kHz); clicks are added afterwards and stay sharp.
    """
    if speed == 1.0:
        return samples
    from librosa.effects import time_stretch

    channels = [
        time_stretch(np.ascontiguousarray(samples[:, c], dtype=np.float32), rate=speed)
        for c in range(samples.shape[1])
    ]
    return np.stack(channels, axis=1).astype(np.float64)


def _clicks(staged: Staged, rate: int) -> list[tuple[float, Floats]]:
    tempo, downs = staged.tempo, set(staged.tempo.bars)
    plain, first = click(rate, first=False), click(rate, first=True)
    last = int(np.floor(tempo.beats_from_seconds(staged.song.duration)))
    return [
        (float(beat), first if _starts_bar(staged, beat, downs) else plain)
        for beat in range(tempo.first, last + 1)
    ]


def _count(left: int, rate: int, *, words: bool) -> Floats:
    if left == 0:
        return tone(rate, CHANGE_STEP, 0.4, loud=0.4)
    return spoken(left, rate) if words else tone(rate, COUNT_STEPS[left], 0.16)


def _starts_bar(staged: Staged, beat: int, downs: set[int]) -> bool:
    if staged.tempo.bars[0] <= beat <= staged.tempo.bars[-1]:
        return beat in downs
    return staged.tempo.position_of(beat).beat == 1


def _stereo(samples: Floats) -> Floats:
    if samples.ndim == 1:
        samples = samples[:, None]
    if samples.shape[1] == 1:
        return np.repeat(samples, 2, axis=1)
    return (
        samples if samples.shape[1] == 2 else np.repeat(samples.mean(axis=1, keepdims=True), 2, 1)
    )
