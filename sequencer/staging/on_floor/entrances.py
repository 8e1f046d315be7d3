"""Entrances and exits on the floor: who waits in the wings, and who walks on or off while a formation stands.

Whoever is off when others walk stays in the wings; whoever comes on goes to their spot in the formation that then stands.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import dist

from sequencer.geometry.regions import Region
from sequencer.motion.performers.walks import Move
from sequencer.show.file_records.entrance_record import Entrance
from sequencer.show.reading import ReadShow
from sequencer.staging.entries.moments import Moments
from sequencer.staging.on_floor.own_walks import wings_changed
from sequencer.staging.on_floor.venues import venue_of
from sequencer.staging.staged import Coming, Standing
from sequencer.timing.position import TOUCH

_OFF_STAGE = 1.0  # [m] off the edge of the stage, where a side is named
_BESIDE = 1.5  # [m] between people who would wait in one place
_LEAST_BEHIND = 2.0  # [beats] least time in which somebody gets round behind the stage; whether it is enough, the checks say

Box = tuple[float, float, float, float]  # left, downstage, right, upstage [m]


@dataclass(frozen=True, slots=True)
class _Said:
    """An entrance or exit of one performer as the file says it."""

    who: str
    on: bool
    start: float
    end: float
    record: Entrance
    number: int


def with_entrances(
    read: ReadShow, moments: Moments, stood: tuple[Standing, ...]
) -> tuple[Standing, ...]:
    """Formations with those who come on and go off meanwhile; as they are if nobody does.

    Parameters
    ----------
    read : ReadShow
    moments : Moments
    stood : tuple of Standing
        The formations as if everybody were on stage throughout.

    Raises
    ------
    InputError
        If somebody comes on twice in a row, leaves during a walk of theirs, or walks past the end of the show.
    """
    if not any(each.who for each in read.show.entrances):
        return stood
    _refuse_places(read)
    last = max(one.end for one in stood)
    box = stage_box(read)
    of_all: list[Coming] = []
    for name in read.show.names:
        said = _in_turn(read, _said_of(read, moments, name, last))
        _refuse_in_walks(read, moments, stood, said)
        own = [_placed(each, stood, box, of_all) for each in said]
        _refuse_no_time_behind(read, own)
        of_all += own
    return _joined(stood, of_all)


def ways_behind(name: str, stood: Sequence[Standing], box: Box) -> tuple[Move, ...]:
    """Ways behind the stage of somebody who goes off on one side and comes on from another, in order.

    Parameters
    ----------
    name : str
    stood : sequence of Standing
    box : (left, downstage, right, upstage)
        Edges of the stage [m].
    """
    return tuple(move for pair in wings_changed(name, stood) for move in _round_behind(*pair, box))


def spans_off(name: str, stood: Sequence[Standing]) -> tuple[tuple[float, float], ...]:
    """Spans of beats in which somebody is off the stage, with the walks off and on.

    Parameters
    ----------
    name : str
    stood : sequence of Standing
    """
    return _spans(name, stood, walks=True)


def spans_in_wings(name: str, stood: Sequence[Standing]) -> tuple[tuple[float, float], ...]:
    """The same without the walks: spans of beats in which somebody waits in the wings."""
    return _spans(name, stood, walks=False)


def _spans(name: str, stood: Sequence[Standing], *, walks: bool) -> tuple[tuple[float, float], ...]:
    own = sorted(
        (each for one in stood for each in one.comings if each.who == name),
        key=lambda each: each.start,
    )
    spans: list[tuple[float, float]] = []
    since = float("-inf")
    for each in own:
        if each.on:
            spans.append((since, each.end if walks else each.start))
        else:
            since = each.start if walks else each.end
    if own and not own[-1].on:
        spans.append((since, float("inf")))
    return tuple(spans)


def _refuse_places(read: ReadShow) -> None:
    """A place of its own is for one performer, and off the stage."""
    stage = venue_of(read).stage
    for k, record in enumerate(read.show.entrances):
        if record.at is None:
            continue
        if "all" in record.who and len(read.written.names) > 1:
            raise read.fault(
                "one-place-for-all", ("entrances", k, "who"), "at is one place, where all would wait in each other",
                "give a side, beside which they wait next to each other, or each person an entry of their own",
            )  # fmt: skip
        if stage is not None and _covers(stage, record.at):
            left, _, right, _ = stage.box
            x, y = record.at
            beside = right + _OFF_STAGE if x >= (left + right) / 2 else left - _OFF_STAGE
            raise read.fault(
                "waits-on-stage", ("entrances", k, "at"), f"[{x:g}, {y:g}] is on the stage, where nobody waits unseen",
                f"give a place off the stage, such as [{beside:g}, {y:g}], or a side",
            )  # fmt: skip


def _covers(stage: Region, place: tuple[float, float]) -> bool:
    import shapely  # only shows with a place of its own need it here

    return bool(stage.polygon.covers(shapely.Point(place)))


def _said_of(read: ReadShow, moments: Moments, name: str, last: float) -> Iterator[_Said]:
    for k, record in enumerate(read.show.entrances):
        if name not in record.who and "all" not in record.who:
            continue
        key = "comes_on" if record.on else "goes_off"
        start = moments.beat(record.moment, ("entrances", k, key))
        if start + record.beats > last + TOUCH:
            raise read.fault(
                "walk-past-the-end", ("entrances", k, "beats"),
                f"this walk ends {start + record.beats - last:g} beats after the end of the show",
                "start it earlier, or give it fewer beats",
            )  # fmt: skip
        yield _Said(name, record.on, start, start + record.beats, record, k)


def _in_turn(read: ReadShow, said: Iterator[_Said]) -> list[_Said]:
    """In order of time; somebody who is on cannot come on, nor go off who is off, nor do two of these at once."""
    own = sorted(said, key=lambda each: each.start)
    for before, after in pairwise(own):
        path = ("entrances", after.number)
        if before.on == after.on:
            said_twice = "comes on twice" if after.on else "goes off twice"
            raise read.fault(
                "entrance-twice", path, f"{after.who} {said_twice} without {'going off' if after.on else 'coming on'} between",
                f"say when {after.who} {'goes off' if after.on else 'comes on'} between, or take one of the two out",
            )  # fmt: skip
        if after.start < before.end - TOUCH:
            raise read.fault(
                "entrance-too-soon", path,
                f"{after.who} {'comes on' if after.on else 'goes off'} before the walk {'off' if after.on else 'on'} is over",
                f"start it {before.end - after.start:g} beats later, or give the walk before it fewer beats",
            )  # fmt: skip
    return own


def _refuse_in_walks(
    read: ReadShow, moments: Moments, stood: Sequence[Standing], said: Sequence[_Said]
) -> None:
    """Nobody walks to a spot and on or off at once."""
    on = not said or not said[0].on
    for before, one in pairwise(stood):
        for each in said:
            moved = before.spots[each.who] != one.spots[each.who]
            inside = one.walk + TOUCH < each.start < one.start - TOUCH
            begins = each.start + TOUCH < one.walk < each.end - TOUCH
            if not moved or not (begins if each.on else inside and _on(said, one.walk, first=on)):
                continue
            there = moments.tempo.position_of(one.start if not each.on else one.walk)
            mend = f"let it end by {there}, or begin then" if each.on else f"start it at {there}"
            raise read.fault(
                "entrance-in-a-walk", ("entrances", each.number),
                f"{each.who} {'is still coming on when' if each.on else 'goes off while'} everybody walks to {one.formation!r}",
                mend,
            )  # fmt: skip


def _refuse_no_time_behind(read: ReadShow, own: Sequence[Coming]) -> None:
    """Whoever goes off on one side and comes on from another needs time to get there."""
    for before, after in pairwise(own):
        elsewhere = after.on and dist(before.place, after.place) > TOUCH
        if elsewhere and after.start - before.end < _LEAST_BEHIND:
            raise read.fault(
                "entrance-too-soon", after.path,
                f"{after.who} has no time to get to where they come on from",
                f"let them come on from the side on which they went off, or {_LEAST_BEHIND:g} beats or more later",
            )  # fmt: skip


def _on(said: Sequence[_Said], beat: float, *, first: bool) -> bool:
    """Whether somebody is on stage at a beat."""
    state = first
    for each in said:
        if each.start <= beat + TOUCH:
            state = each.on
    return state


def _placed(said: _Said, stood: Sequence[Standing], box: Box, others: Sequence[Coming]) -> Coming:
    """With the place in the wings: level with the spot, beside whoever waits there already."""
    place, side = said.record.at, said.record.side or ""
    spot = _held(stood, said.end).spots[said.who]
    if place is None:
        x, y, _ = _held(stood, said.end if said.on else said.start).spots[said.who]
        left, _, right, up = box
        place = {
            "stage left": (right + _OFF_STAGE, y),
            "stage right": (left - _OFF_STAGE, y),
            "upstage": (x, up + _OFF_STAGE),
        }[side]
        out = {"stage left": (1.0, 0.0), "stage right": (-1.0, 0.0), "upstage": (0.0, 1.0)}[side]
        while any(
            other.who != said.who and dist(other.place, place) < _BESIDE - TOUCH for other in others
        ):
            place = (place[0] + _BESIDE * out[0], place[1] + _BESIDE * out[1])
    return Coming(
        who=said.who, on=said.on, start=said.start, end=said.end, place=place, side=side,
        goal=spot if said.on else (*place, spot[2]), path=("entrances", said.number),
    )  # fmt: skip


def _held(stood: Sequence[Standing], beat: float) -> Standing:
    """The formation that stands at a beat, or is being taken."""
    return [stood[0], *(one for one in stood[1:] if one.walk < beat - TOUCH)][-1]


def _joined(stood: tuple[Standing, ...], comings: Sequence[Coming]) -> tuple[Standing, ...]:
    """Formations in order: walks that somebody joins from the wings, and those in which only they walk."""
    joins: dict[int, list[Coming]] = {}
    alone: list[Coming] = []
    for each in sorted(comings, key=lambda one: one.start):
        meets = [
            k for k, one in enumerate(stood)
            if k and one.walk < each.end - TOUCH and each.start < one.start - TOUCH
        ]  # fmt: skip
        if meets:
            joins.setdefault(meets[0], []).append(each)
        else:
            alone.append(each)
    rows = [replace(one, comings=tuple(joins.get(k, ()))) for k, one in enumerate(stood)]
    for group in _together(alone):
        held = _held(stood, group[0].end)
        rows.append(
            Standing(
                formation=held.formation, walk=group[0].start, start=max(one.end for one in group),
                end=held.end, spots=held.spots, path=group[0].path, comings=tuple(group),
            )
        )  # fmt: skip
    rows.sort(key=lambda one: (one.walk, one.start))
    by_name = {name: [one for one in comings if one.who == name] for name in stood[0].spots}
    ends = [after.walk for after in rows[1:]] + [max(one.end for one in stood)]
    found = []
    for k, (one, end) in enumerate(zip(rows, ends, strict=True)):
        wings = _wings(one, by_name, first=not k)
        spots = {
            who: (*wings[who], spot[2]) if who in wings else spot for who, spot in one.spots.items()
        }
        found.append(replace(one, spots=spots, waiting=tuple(wings), end=max(end, one.start)))
    return tuple(found)


def _together(alone: Sequence[Coming]) -> Iterator[list[Coming]]:
    """Those whose walks overlap, each group in order of time."""
    group: list[Coming] = []
    for each in alone:
        if group and each.start >= max(one.end for one in group) - TOUCH:
            yield group
            group = []
        group.append(each)
    if group:
        yield group


def _wings(
    standing: Standing, comings: Mapping[str, Sequence[Coming]], *, first: bool
) -> dict[str, tuple[float, float]]:
    """Who waits in the wings once a formation is taken, and where [m]."""
    at = float("-inf") if first else standing.walk
    out = {}
    for who in standing.spots:
        own = sorted(comings[who], key=lambda each: each.start)
        past = [each for each in own if each.start <= at + TOUCH or each in standing.comings]
        if past and not past[-1].on:
            out[who] = past[-1].place
        elif not past and own and own[0].on:
            out[who] = own[0].place
    return out


def _round_behind(before: Coming, after: Coming, box: Box) -> Iterator[Move]:
    """From one place in the wings to another, past the upstage edge unless both are on one side; each stretch in its share of the time."""
    left, _, right, up = box
    (x1, y1), (x2, y2) = before.place, after.place
    way = [before.place, after.place]
    if not ((x1 < left and x2 < left) or (x1 > right and x2 > right) or (y1 > up and y2 > up)):
        behind = max(up + _OFF_STAGE, y1, y2)
        way = [
            *_to_behind(before.place, behind, box),
            *reversed(_to_behind(after.place, behind, box)),
        ]
    lengths = [dist(a, b) for a, b in pairwise(way)]
    time, at = after.start - before.end, before.end
    for goal, length in zip(way[1:], lengths, strict=True):
        if length > TOUCH:
            end = at + time * length / sum(lengths)
            yield Move(start=at, end=end, place=goal, facing=0.0)
            at = end


def _to_behind(place: tuple[float, float], behind: float, box: Box) -> list[tuple[float, float]]:
    """From a place in the wings to level with the way behind the stage; from in front of the stage, past its nearer side."""
    left, _, right, up = box
    x, y = place
    if left <= x <= right and y <= up:
        beside = left - _OFF_STAGE if x - left < right - x else right + _OFF_STAGE
        return [place, (beside, y), (beside, behind)]
    return [place, (x, behind)]


def stage_box(read: ReadShow) -> Box:
    """Edges of the stage: left, downstage, right, upstage [m]."""
    stage = venue_of(read).stage
    return (0.0, 0.0, 0.0, 0.0) if stage is None else stage.box
