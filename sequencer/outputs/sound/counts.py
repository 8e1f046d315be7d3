"""The count track: clicks on the beats, counts before each change and section calls, mixed with the song.

Seconds are those of the track, divided by the speed; a click starts on the sample nearest its beat. Four counts lead into
each change, five, six, seven, eight where they are spoken, as dancers count; a link is the way into what follows it, and
not counted itself. Under a spoken count the song is turned down.
"""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.outputs.sound.clicks import CHANGE_STEP, COUNT_STEPS, call_steps, click, spoken, tone
from sequencer.outputs.sound.slowed import slowed
from sequencer.staging.staged import Staged

VOICES = ("pitched", "spoken", "none")
_CEILING = 10 ** (-1.2 / 20)  # [1] largest sample of a mix: 1.2 dB below full scale
COUNTED = 4  # beats before a change
_EIGHT = 8  # the count that leads to the one
_UNDER = 10 ** (-9 / 20)  # of the song under a spoken count
_FADE = 0.04  # [s] in which the song goes down and comes up


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


def played(samples: Floats | None, mix: Mix) -> Floats | None:
    """The song as a mix plays it: in two channels, at its speed; None where it is left out."""
    if samples is None or mix.song is None:
        return None
    return slowed(_stereo(samples), mix.speed)


def mixed(staged: Staged, song: Floats | None, rate: int, mix: Mix) -> Floats:
    """The count track: mix of song and counts.

    Parameters
    ----------
    staged : Staged
    song : ndarray, shape (n, 2) [1], or None
        As `played` has it; None for counts only.
    rate : int
        Sample rate [Hz].
    mix : Mix

    Returns
    -------
    track : ndarray, shape (m, 2) [1]
        Left and right, peaking at most 1.2 dB below full scale; of a part of a show, from four beats before it.

    Notes
    -----
    Source: beats as detected or corrected. A click lies within half a sample of its beat.
    """
    length = int(np.ceil(staged.song.duration * rate / mix.speed)) + rate // 2
    counts = counted(staged, length, rate, mix)
    track: Floats = np.zeros((length, 2))
    if song is not None and mix.song is not None:
        n = min(len(song), length)
        np.multiply(song[:n], 10 ** (mix.song / 20), out=track[:n])
    if mix.split:
        track[:, 0] = track.mean(axis=1)
        track[:, 1] = counts
    else:
        if mix.counts == "spoken":
            track *= _turned_down(staged, length, rate, mix)[:, None]
        track += counts[:, None]
    largest = max(float(track.max(initial=0.0)), -float(track.min(initial=0.0)))
    if largest > _CEILING:
        track *= _CEILING / largest
    if staged.part is not None:
        first, last = (
            max(0, round(staged.seconds(beat) / mix.speed * rate))
            for beat in (staged.part.start - COUNTED, staged.part.end)
        )
        return track[first:last]
    return track


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
    """Beats at which somebody begins something: a pattern, a stop or an accent, or ends what nothing follows directly.

    A link is no change of its own: with what follows it, it is one.
    """
    own = [block for block in (*staged.blocks, *staged.stops) if not who or block.who in who]
    begun = {(block.who, round(block.start, 6)) for block in own}
    starts = {round(block.start, 6) for block in own if not block.link}
    ends = {round(each.end, 6) for each in own if (each.who, round(each.end, 6)) not in begun}
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
    return spoken(_EIGHT + 1 - left, rate) if words else tone(rate, COUNT_STEPS[left], 0.16)


def _turned_down(staged: Staged, length: int, rate: int, mix: Mix) -> Floats:
    """What the song is multiplied by, sample by sample: less under the words."""
    out = np.ones(length)
    fade = max(1, round(_FADE * rate))
    down = np.linspace(1.0, _UNDER, fade)
    for beat, left in counts_before(changes(staged, mix.who)):
        if not left:
            continue
        word = len(_count(left, rate, words=True))
        dip = np.concatenate([down, np.full(word, _UNDER), down[::-1]])
        at = round(float(staged.tempo.seconds_from_beats(beat)) / mix.speed * rate) - fade
        first, last = max(at, 0), min(at + len(dip), length)
        if first < last:
            np.minimum(out[first:last], dip[first - at : last - at], out=out[first:last])
    return out


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
