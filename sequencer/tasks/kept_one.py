"""The performer's own one through a change of the count: bars go on beginning where they began.

`one` in the show file is a beat of the count that it corrects. In another count the same words are another beat, or lie between two.
"""

import numpy as np

from sequencer.arrays import Floats
from sequencer.errors import InputError
from sequencer.show.reading import ReadShow
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import ValueSet
from sequencer.show.text.plain_values import ValuePath
from sequencer.staging.entries.counted_song import as_counted
from sequencer.staging.entries.written_count import without_corrections, without_sections
from sequencer.timing.corrections import Corrections, corrected
from sequencer.timing.position import Clock, Position, clock_text
from sequencer.timing.song import Song

_ONE: ValuePath = ("track", "corrections", "one")
_NEAR = 0.25  # [beats of the old count] within which two moments are the same beat


def with_one_kept(new: ShowText, read: ReadShow, other: ReadShow, song: Song) -> ShowText:
    """A show file's text with `one` at a one of the old count that is a beat of the new one, as near as may be to where it was.

    Parameters
    ----------
    new : ShowText
        With the new corrections; it comes back as it is where it has no `one`, or where `one` is what is corrected.
    read, other : ReadShow
        The show in the old count, and as `new` says it.
    song : Song
        As heard.

    Raises
    ------
    InputError
        If with no such beat all bars of the one count begin with bars of the other.
    """
    given = read.show.track.corrections.one
    if given is None or other.show.track.corrections.one != given:
        return new
    old, _ = as_counted(without_sections(read), song)
    _, unmoved = as_counted(without_corrections(without_sections(read), ("one",)), song)
    plain, count = as_counted(without_corrections(without_sections(other), ("one",)), song)
    said = given.seconds if isinstance(given, Clock) else 0.0
    if isinstance(given, Position):
        said = unmoved.second_of(unmoved.beat_of(given))
    near = _NEAR * float(np.median(np.diff(old.beats)))
    beats: Floats = np.array(plain.beats)
    for at in sorted(old.downbeats, key=lambda one: (abs(one - said), one)):
        beat = float(beats[np.argmin(np.abs(beats - at))])
        if abs(beat - at) > near or not _goes_on(old, plain, beat, near):
            continue
        if isinstance(given, Position):
            text = count.position_text(float(count.beats_from_seconds(beat)))
        else:
            same = beats[np.argmin(np.abs(beats - said))] == beat
            text = str(new.value(*_ONE)) if same else clock_text(beat, decimals=2)
        return new if text == str(new.value(*_ONE)) else new.edited(ValueSet(_ONE, text))
    raise InputError(
        "falls-between", new.document.place(*_ONE),
        f"no one that you count with `one: {new.value(*_ONE)}` is a beat of the new count, so its bars could not begin where yours do",
        "give --recount one=none, or another one, and then ask again",
    )  # fmt: skip


def _goes_on(old: Song, plain: Song, one: float, near: float) -> bool:
    """Whether bars from a one on begin where bars of the old count did; bars of another metre cannot."""
    if old.metre != plain.metre:
        return True
    ones = corrected(plain, Corrections(one=Clock(one))).downbeats
    few, many = sorted((old.downbeats, ones), key=len)
    inside = [at for at in few if many[0] - near <= at <= many[-1] + near]
    apart = np.abs(np.subtract.outer(np.array(inside), np.array(many)))
    return bool(np.all(apart.min(axis=1) <= near))
