"""Who is on the stage when, and free: a stretch is danced by those who are there for the whole of it."""

from collections.abc import Callable, Collection, Mapping, Sequence
from typing import NamedTuple

from sequencer.planning.drafting.gaps.slots import SHORTEST_STRETCH, Slot
from sequencer.timing.position import TOUCH

Span = tuple[float, float]  # [beats]
Away = Mapping[str, Sequence[Span]]  # of those who are not on stage throughout, when they are off
EVER = 1e6  # [beats] before and behind every song


class LeftOpen(NamedTuple):
    """A span in which some do not dance, since they are lit or put out."""

    start: float  # [beats]
    end: float  # [beats]
    who: tuple[str, ...]


def at_rest(names: Sequence[str], away: Away, left: Sequence[LeftOpen]) -> Away:
    """Of those who do not dance throughout, when they are off the stage, lit or put out.

    Parameters
    ----------
    names : sequence of str
        Who dances.
    away : mapping of str to sequence of (start, end) [beats]
    left : sequence of LeftOpen
    """
    found = {
        name: (*away.get(name, ()), *((each.start, each.end) for each in left if name in each.who))
        for name in names
    }
    return {name: spans for name, spans in found.items() if spans}


def nobody_on(names: Sequence[str], away: Away) -> list[Span]:
    """Spans of beats in which nobody at all is on the stage, by start.

    Parameters
    ----------
    names : sequence of str
        Who dances.
    away : mapping of str to sequence of (start, end) [beats]
    """
    common = [(float("-inf"), float("inf"))]
    for name in names:
        common = [
            (max(a, c), min(b, d))
            for a, b in common
            for c, d in away.get(name, ())
            if min(b, d) > max(a, c) + TOUCH
        ]
    return sorted(common)


def those_off(slots: Sequence[Slot], names: Sequence[str], away: Away) -> dict[int, frozenset[str]]:
    """Of each slot in which somebody is off the stage for a moment or longer, who that is.

    Parameters
    ----------
    slots : sequence of Slot
    names : sequence of str
        Who dances.
    away : mapping of str to sequence of (start, end) [beats]
    """
    found = {}
    for k, slot in enumerate(slots):
        off = frozenset(
            name
            for name in names
            if any(a < slot.end - TOUCH and b > slot.start + TOUCH for a, b in away.get(name, ()))
        )
        if off:
            found[k] = off
    return found


def cuts_for_somebody(slots: Sequence[Slot], names: Sequence[str], away: Away) -> list[Span]:
    """Beats at which slots have to be cut, so that in each part somebody is on throughout: one goes as another comes.

    Parameters
    ----------
    slots : sequence of Slot
    names : sequence of str
        Who dances.
    away : mapping of str to sequence of (start, end) [beats]

    Returns
    -------
    cuts : list of (beat, beat)
        Spans without length, as `slots_of` takes them.
    """
    off = those_off(slots, names, away)
    inside = [slots[k] for k, own in off.items() if len(own) == len(names)]
    edges = {edge for spans in away.values() for span in spans for edge in span}
    return sorted((edge, edge) for edge in edges if any(s.start < edge < s.end for s in inside))


def cuts_beside(
    slots: Sequence[Slot], left: Sequence[LeftOpen], names: Collection[str], *, phrase: int
) -> list[Span]:
    """Beats at which slots are cut between phrases, so that whoever is lit or put out in one misses no more of it than has to be.

    Parameters
    ----------
    slots : sequence of Slot
    left : sequence of LeftOpen
    names : collection of str
        Who dances: where all are left out, slots end anyway.
    phrase : int
        How long a phrase of the song is [beats]; slots are cut at whole ones from where they start.

    Returns
    -------
    cuts : list of (beat, beat)
        Spans without length, as `slots_of` takes them; what is before and behind one is long enough to be danced.
    """
    cuts = set[float]()
    for slot in slots:
        for start, end, who in left:
            if not set(names) - set(who) or start >= slot.end - TOUCH:
                continue
            before = slot.start + phrase * ((start - slot.start + TOUCH) // phrase)
            behind = slot.start - phrase * ((slot.start - end + TOUCH) // phrase)
            cuts |= {
                at
                for at in (before, behind)
                if min(at - slot.start, slot.end - at) >= SHORTEST_STRETCH
            }
    return sorted((at, at) for at in cuts)


def left_in_words(
    left: Sequence[LeftOpen], names: Sequence[str], clock: Callable[[float], str]
) -> tuple[str, ...]:
    """Who does not dance when, since they are lit or put out, in words.

    Parameters
    ----------
    left : sequence of LeftOpen
    names : sequence of str
        Who dances.
    clock : callable
        Minutes and seconds of a beat coordinate.
    """
    spans: dict[Span, set[str]] = {}
    for start, end, who in left:
        spans.setdefault((start, end), set()).update(who)
    said = []
    for (start, end), named in sorted(spans.items()):
        some = [name for name in names if name in named]
        if len(some) == len(names):
            what = "somebody is lit or put out then, so nobody dances"
        else:
            what = (
                f"{' and '.join(some)} {'does' if len(some) == 1 else 'do'} not dance while being "
                "lit or put out"
            )
        said.append(f"{clock(start)} to {clock(end)}: {what}")
    return tuple(said)


def dances_in_words(
    slots: Sequence[Slot],
    off: Mapping[int, Collection[str]],
    names: Sequence[str],
    away: Away,
    position: Callable[[float], str],
) -> tuple[str, ...]:
    """When each of those who come on or go off dances, in words.

    Parameters
    ----------
    slots : sequence of Slot
    off : mapping of int to collection of str
        Who does not dance in a slot.
    names : sequence of str
        Who dances.
    away : mapping of str to sequence of (start, end) [beats]
    position : callable
        bar.beat of a beat coordinate.
    """
    if not slots:
        return ()
    first, last = min(slot.start for slot in slots), max(slot.end for slot in slots)
    return tuple(
        _said_of_stay(name, stay, own, position)
        for name in names
        if name in away
        for stay in _stays(away[name])
        if stay[0] < last - TOUCH and stay[1] > first + TOUCH
        for own in [
            [
                slot
                for k, slot in enumerate(slots)
                if name not in off.get(k, ()) and stay[0] - TOUCH <= slot.start < stay[1]
            ]
        ]
    )


def _stays(away: Sequence[Span]) -> list[Span]:
    """The spans between those in which somebody is off [beats]."""
    in_order = sorted(away)
    edges = [-EVER, *(edge for span in in_order for edge in span), EVER]
    return [(a, b) for a, b in zip(edges[::2], edges[1::2], strict=True) if b > a + TOUCH]


def _said_of_stay(
    name: str, stay: Span, own: Sequence[Slot], position: Callable[[float], str]
) -> str:
    on = f"there at {position(stay[0])}" if stay[0] > -EVER else ""
    off = f"goes off at {position(stay[1])}" if stay[1] < EVER else ""
    said = ", ".join(filter(None, (on, off)))
    if not own:
        return f"{name} gets nothing to dance ({said}): no stretch of the song lies in that time"
    begins = f" from {position(own[0].start)}" if on else ""
    ends = f" until {position(own[-1].end)}" if off else ""
    return f"{name} dances{begins}{ends} ({said})"
