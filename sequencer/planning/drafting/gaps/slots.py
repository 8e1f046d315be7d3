"""Where a draft may put something: stretches of the song's eights, and which of them share their material.

A section is cut into stretches of two eights from its first beat (in a waltz two or three phrases of six, at a slow tempo
half as much, and where two tunes take turns all along or a part of two eights returns at once, if the links fit in); what is left
over is a stretch of its own, or makes the last one longer. Parts of the song that return share material: the first stretch of every refrain is one piece of material.
What a person wrote stays: stretches are cut at it, and what is shorter than `SHORTEST` is left open.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from sequencer.timing.phrases import Phrase, phrase_length, phrases
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

SHORTEST_STRETCH = (
    6  # [beats] of a stretch; a pattern needs time to be seen, and the link out of it takes some
)
LONGEST_STRETCH = 24  # [beats]
USUAL = 16  # [beats] about as long as a stretch is: two eights, or three phrases of a waltz
SLOWEST_PAIR = (
    76.0  # [beats/min] below which a stretch is half as long, since it would last too long
)
_FEW, _LONG = (
    4,
    96,
)  # stretches that are danced differently, in a song of so many beats: two tunes that take turns
SLOW_ENOUGH = 0.65  # [s] of a beat from which a prop that only pulls mostly can be led over in one; see `docs/draft.md`
STOP_BEATS = 8  # of a stop: two to come to rest, four in which nothing moves, two to begin again


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A stretch of the song that gets one pattern."""

    start: int  # [beats]
    end: int  # [beats]
    section: str  # unique name
    label: str  # shared by parts that return
    material: int  # number of what is danced; equal for slots that are danced alike

    @property
    def beats(self) -> int:
        """How long it lasts."""
        return self.end - self.start


@dataclass(frozen=True, slots=True, kw_only=True)
class SongPart:
    """A section of the song in whole beats."""

    name: str  # unique
    label: str
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Fixed:
    """Something that stays as it is, beside what is drafted."""

    start: float  # [beats]
    end: float  # [beats]
    pattern: str
    label: str  # of its section
    material: str  # equal for what is written once in the file


def parts_of(song: Song, tempo: TempoMap) -> tuple[SongPart, ...]:
    """The sections of a song in which there are phrases, in whole beats."""
    label = dict(zip(song.section_names(), (each.label for each in song.sections), strict=True))
    cut = _eights(song, tempo)
    return tuple(
        SongPart(name=name, label=label[name], start=own[0][0], end=own[-1][1])
        for name in dict.fromkeys(each.section for each, *_ in cut)
        if (own := [(start, end) for each, start, end in cut if each.section == name])
    )


def slots_of(
    song: Song,
    tempo: TempoMap,
    *,
    taken: Sequence[tuple[float, float]] = (),
    alike: bool = True,
    only: str | None = None,
    pulled: bool = False,
) -> tuple[Slot, ...]:
    """The stretches of a song that a draft fills, by start.

    Parameters
    ----------
    song : Song
        As the show counts it.
    tempo : TempoMap
    taken : sequence of (start, end) [beats]
        What stays as it is, and stops.
    alike : bool
        Whether parts that return share their material.
    only : str, optional
        The one section that is filled; a name or a label.
    pulled : bool
        Whether somebody dances with a prop that only pulls: at a quick tempo its links take two beats, too much of an eight.
    """
    taken = sorted(taken)
    slots: list[Slot] = []
    known: dict[tuple[object, ...], int] = {}
    for part, edges in _cut(song, tempo, alike=alike, pulled=pulled):
        for k, (start, end) in enumerate(pairwise(edges)):
            for n, (low, high) in enumerate(_free(start, end, taken)):
                if only is not None and only not in (part.name, part.label):
                    continue
                key = (part.label if alike else part.name, k, n, n and low - start)
                material = known.setdefault(key, len(known))
                slots.append(
                    Slot(
                        start=low, end=high, section=part.name, label=part.label, material=material
                    )
                )
    return tuple(_numbered(slots))


def _numbered(slots: Sequence[Slot]) -> list[Slot]:
    """The slots with materials numbered as they first occur."""
    order: dict[int, int] = {}
    return [replace(slot, material=order.setdefault(slot.material, len(order))) for slot in slots]


def _cut(
    song: Song, tempo: TempoMap, *, alike: bool, pulled: bool
) -> list[tuple[SongPart, list[int]]]:
    """The edges of the stretches of each section; shorter ones where else one or a few would come all the time.

    So it is in a song of two tunes that take turns, and in a part of one stretch that returns at once: but not where links would
    take too much of them.
    """
    most = max(1, round(USUAL / phrase_length(song.metre)))
    if song.tempo < SLOWEST_PAIR:
        most = max(1, most // 2)
    cut = _cut_by(song, tempo, most)
    if not alike or most == 1 or (pulled and 60.0 / song.tempo < SLOW_ENOUGH):
        return cut
    beats = sum(edges[-1] - edges[0] for _, edges in cut)
    different = {(part.label, k) for part, edges in cut for k in range(len(edges) - 1)}
    if len(different) < _FEW and beats >= _LONG:
        return _cut_by(song, tempo, most // 2)
    at_once = {
        before.label
        for (before, one), (after, other) in pairwise(cut)
        if before.label == after.label and len(one) == len(other) == 2
    }
    return _cut_by(song, tempo, most, at_once) if at_once else cut


def _cut_by(
    song: Song, tempo: TempoMap, most: int, halved: Collection[str] = ()
) -> list[tuple[SongPart, list[int]]]:
    """The edges of stretches of so many phrases, of half as many in some parts; a section too short for one makes the stretch before it longer."""
    eights = _eights(song, tempo)
    out: list[tuple[SongPart, list[int]]] = []
    for part in parts_of(song, tempo):
        own = [(start, end) for each, start, end in eights if each.section == part.name]
        count = -(-len(own) // (most // 2 if part.label in halved else most))
        each, more = divmod(len(own), count)
        lasts = [(k + 1) * each + min(k + 1, more) - 1 for k in range(count)]
        edges = [own[0][0], *(own[k][1] for k in lasts)]
        if len(edges) > 2 and edges[-1] - edges[-2] < SHORTEST_STRETCH:
            if edges[-1] - edges[-3] <= LONGEST_STRETCH:
                del edges[-2]
            else:
                edges[-2] = edges[-3] + 8
        if edges[-1] - edges[0] < SHORTEST_STRETCH and out and out[-1][1][-1] == edges[0]:
            out[-1][1][-1] = edges[-1]
            continue
        out.append((part, edges))
    return out


def _eights(song: Song, tempo: TempoMap) -> list[tuple[Phrase, int, int]]:
    """The phrases of a song in whole beats."""
    found = []
    last = round(float(tempo.beats_from_seconds(song.beats[-1]))) if song.beats else 0
    for each in phrases(song):
        start = round(float(tempo.beats_from_seconds(each.start)))
        end = min(start + each.counts, last)
        if end > start:
            found.append((each, start, end))
    return found


def _free(start: int, end: int, taken: Sequence[tuple[float, float]]) -> list[tuple[int, int]]:
    """What of a stretch is not taken, in whole beats, as far as it is long enough."""
    free, at = [], start
    for low, high in taken:
        if high <= at or low >= end:
            continue
        if low > at:
            free.append((at, int(low // 1)))
        at = max(at, -int(-high // 1))
    if at < end:
        free.append((at, end))
    return [(low, high) for low, high in free if high - low >= SHORTEST_STRETCH]


def occurrences(slots: Sequence[Slot]) -> Mapping[int, tuple[Slot, ...]]:
    """The slots of each material."""
    found: dict[int, list[Slot]] = {}
    for slot in slots:
        found.setdefault(slot.material, []).append(slot)
    return {material: tuple(own) for material, own in found.items()}
