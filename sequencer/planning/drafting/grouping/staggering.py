"""Canons, answers and solos: in some parts of a song a group goes on one after another, or one of them dances alone.

Within a part, from the first stretch to the next one: in a canon each begins the next pattern some counts after the one
nearer to the lead; in a call and answer one side of the formation begins it, and the other side answers an eight later.
Before and after, all dance in unison; so a stretch is longer for those who are late in leaving it, and the next one shorter.
Where people stand, or walk, is left as it is: by then everybody has arrived, and nobody walks in the stretch that follows.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

from sequencer.planning.drafting.gaps.slots import Slot

CANON, ANSWER, PAIRS, SOLO = "canon", "answer", "pairs", "solo"
_TURNS = (PAIRS, CANON, ANSWER, SOLO)  # how parts that are neither loudest nor calmest take turns
_MOST_LATE = 6  # [beats] of the last in a canon, so that the pattern is still seen
_MOST_COUNTS = 4  # [beats] between two of a canon
_ANSWER = 8  # [beats] an eight
_LEAST = 16  # [beats] of a stretch that is left or begun one after another
_SEEN = 12  # [beats] of a solo
_GROUP = 3  # people from which one of them dances alone

Spots = Mapping[
    str, tuple[float, float, float]
]  # X, Y [m, stage frame] and facing [degrees] by name
Lateness = Mapping[str, int]  # [beats] of each, by name; those who go first are not in it


@dataclass(frozen=True, slots=True, kw_only=True)
class Staggered:
    """How the parts of a song are danced by a group."""

    pairs: frozenset[int]  # slots in mirrored pairs
    late: Mapping[int, Lateness]  # of the passage out of a slot into the next
    kinds: Mapping[int, str]  # of these: canon or answer
    solos: frozenset[int] = (
        frozenset()
    )  # slots in which whoever leads dances alone, the others in support


def staggered(
    slots: Sequence[Slot],
    spots: Sequence[Spots],
    between: Sequence[str],
    *,
    lead: str,
    names: Sequence[str],
    walked: frozenset[int],
    calmest: str | None = None,
) -> Staggered:
    """Which parts are danced in mirrored pairs, in canon, as a solo with support, or as call and answer.

    Parameters
    ----------
    slots : sequence of Slot
    spots : sequence of mapping
        Where everybody stands in each slot.
    between : sequence of str
        Labels of the parts that are neither loudest nor calmest, in the order of the song; they take turns.
    lead : str
        Who begins.
    names : sequence of str
        In the order of the cast.
    walked : frozenset of int
        Slots in which somebody walks.
    calmest : str, optional
        Label of a part that is danced in canon or, if it cannot be, in unison.

    Notes
    -----
    A part that has no two stretches of 16 beats for it, in each of its returns, is danced in pairs instead; one that cannot be
    answered is a solo, if it can be.
    """
    pairs: set[int] = set()
    solos: set[int] = set()
    late: dict[int, Lateness] = {}
    kinds: dict[int, str] = {}

    def passages(label: str, kind: str) -> dict[int, Lateness]:
        """Who is late out of which stretches of a part; nothing where it cannot be danced so in each of its returns."""
        own = [k for k, slot in enumerate(slots) if slot.label == label]
        found = {} if kind in {PAIRS, SOLO} else _passages(slots, own, walked)
        ways = {k: _lateness(kind, spots[k + 1], lead, names) for k in found}
        # What returns is danced alike: every occurrence of the label needs the same lateness.
        said = {tuple(sorted(way.items())) for way in ways.values()}
        return ways if len(said) == 1 and said.pop() else {}

    # One part in canon is enough: where the calmest is, the others take turns in the rest.
    calm = calmest is not None and bool(passages(calmest, CANON))
    turns = [kind for kind in _TURNS if not (calm and kind == CANON)]
    wanted = [(label, turns[k % len(turns)]) for k, label in enumerate(between)]
    if calmest is not None:
        wanted.append((calmest, CANON))
    for label, kind in wanted:
        own = [k for k, slot in enumerate(slots) if slot.label == label]
        ways = passages(label, kind)
        if not ways:
            if kind in {ANSWER, SOLO} and len(names) >= _GROUP and _is_seen(slots, own):
                solos |= set(own)
            elif label != calmest:
                pairs |= set(own)
            continue
        late |= ways
        kinds |= dict.fromkeys(ways, kind)
    return Staggered(pairs=frozenset(pairs), late=late, kinds=kinds, solos=frozenset(solos))


def _is_seen(slots: Sequence[Slot], own: Sequence[int]) -> bool:
    """Whether each return of a part lasts long enough for one to dance alone; the others may walk meanwhile."""
    beats: dict[str, int] = {}
    for k in own:
        beats[slots[k].section] = beats.get(slots[k].section, 0) + slots[k].beats
    return min(beats.values()) >= _SEEN


def _passages(slots: Sequence[Slot], own: Sequence[int], walked: frozenset[int]) -> set[int]:
    """The first stretch of each occurrence of a part, if all of them can be left one after another."""
    sections = {slots[k].section for k in own}
    found = set()
    for a, b in pairwise(own):
        one, other = slots[a], slots[b]
        first = a == 0 or slots[a - 1].section != one.section
        if not first or one.section != other.section or one.end != other.start or b != a + 1:
            continue
        if min(one.beats, other.beats) >= _LEAST and b not in walked:
            found.add(a)
    return found if len(found) == len(sections) else set()


def _lateness(kind: str, spots: Spots, lead: str, names: Sequence[str]) -> Lateness:
    """How much later than the first each of a group goes on [beats]; empty where nobody can be."""
    if kind == CANON:
        counts = min(_MOST_LATE // max(len(names) - 1, 1), _MOST_COUNTS)
        x, y, _ = spots[lead]
        order = sorted(
            names,
            key=lambda n: (
                round(hypot(spots[n][0] - x, spots[n][1] - y), 2),
                names.index(n),
            ),
        )
        return {name: k * counts for k, name in enumerate(order) if k and counts}
    middle = sum(x for x, _, _ in spots.values()) / len(spots)
    side = spots[lead][0] >= middle
    return {name: _ANSWER for name in names if (spots[name][0] >= middle) != side}


def longer(late: Mapping[int, Lateness], k: int) -> Lateness:
    """How much longer than the slot each of a group dances in it [beats]; negative where they are late in coming."""
    leaves, comes = late.get(k, {}), late.get(k - 1, {})
    beats = {name: leaves.get(name, 0) - comes.get(name, 0) for name in {**leaves, **comes}}
    return {name: n for name, n in sorted(beats.items()) if n}
