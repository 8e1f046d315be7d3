"""Changes of the show file that may keep two performers apart, by kind, smallest change first.

Move a place, bend a path, widen or turn a formation, turn a facing, shift a block or change its canon, shorten a
tether, choose another plane. `planning.space_mends` tries each on the show before offering it. The cost is the size of
the change in metres of moved places; other changes are weighed against those by common practice.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Literal

import numpy as np

from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.outcome import direction_words
from sequencer.planning.as_written import angle_like, length_like, plain
from sequencer.planning.dance_edits import tether_edit
from sequencer.planning.join_edits import step_at
from sequencer.planning.moves import MovePlace, place_mends
from sequencer.planning.shapes import (
    Places,
    centre_line,
    keeps_lines,
    marked,
    marked_away,
    partner,
)
from sequencer.show.editing import Change, Insertion
from sequencer.show.model import Entry, Formation
from sequencer.staging.staged import Block, Staged, Standing

EditKind = Literal["place", "way", "widen", "turn", "facing", "shift", "canon", "tether", "plane"]
_TOUCH = 1e-6  # [beats]
_FACTORS = (1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.75, 2.0)
_SPOT_TURNS = (15.0, -15.0, 30.0, -30.0, 45.0, -45.0)  # [degrees]
_SHAPE_TURNS = (15.0, -15.0, 30.0, -30.0, 45.0, -45.0, 90.0)  # [degrees]
_BENDS = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0)  # [m]
_SHIFTS = (0.5, -0.5, 1.0, -1.0, 2.0, -2.0)  # [beats]
_SHORTER = (0.05, 0.10, 0.15, 0.20)  # [m]
_A_BEAT, _A_RADIAN, _A_METRE, _A_PLANE = 0.5, 0.5, 4.0, 1.5  # [m] that each of these counts as


@dataclass(frozen=True, slots=True, kw_only=True)
class SpaceEdit:
    """One change of the show file to keep two performers apart."""

    kind: EditKind
    words: str  # what to do
    cost: float  # [m]
    changes: tuple[Change, ...]
    insertions: tuple[Insertion, ...] = ()

    @property
    def of_trajectories(self) -> bool:
        """Whether it changes what is danced, and not only where."""
        return self.kind in {"shift", "canon", "tether", "plane"}


def edits_by_kind(
    show: Staged, conflict: Conflict, *, span: tuple[float, float], required: float
) -> tuple[Iterator[SpaceEdit], ...]:
    """The edits of each kind, smallest first, the kinds in a captain's order; each is made when it is asked for.

    Parameters
    ----------
    show : Staged
    conflict : Conflict
    span : (float, float)
        Beats of the whole show.
    required : float
        Distance that performers must keep [m].
    """
    kinds = (
        _widened(show, conflict),
        _places(show, conflict, span, required),
        _ways(show, conflict),
        _turned(show, conflict),
        _facings(show, conflict),
        _canons(show, conflict),
        _shifts(show, conflict),
        _tethers(show, conflict),
        _planes(show, conflict),
        _places(show, conflict, span, required, shaped=False),
    )
    return tuple(_sorted(kind) for kind in kinds)


def _sorted(kind: Iterator[SpaceEdit]) -> Iterator[SpaceEdit]:
    """The edits of a kind by cost, made when the first is asked for."""
    yield from sorted(kind, key=lambda edit: edit.cost)


def _formations_between(show: Staged, start: float, end: float) -> list[Standing]:
    """Formations held, walked to or left between two beats; each name once."""
    found: dict[str, Standing] = {}
    for one in show.standings:
        if one.walk < end - _TOUCH and one.end > start + _TOUCH:
            found.setdefault(one.formation, one)
    return list(found.values())


def _formation(show: Staged, name: str) -> Formation | None:
    return show.show.formations.get(name)


def _in(standings: Sequence[Standing]) -> str:
    return " and ".join(one.formation for one in standings)


def _places(
    show: Staged,
    conflict: Conflict,
    span: tuple[float, float],
    required: float,
    *,
    shaped: bool = True,
) -> Iterator[SpaceEdit]:
    """Move one place, the other, or both by half, by the shortest vector; mirrored pairs and lines stay, unless told."""
    for mend in place_mends(
        show.dancers,
        conflict.first,
        conflict.second,
        conflict=(conflict.start, conflict.end),
        show=span,
        required=required,
        crowding=False,
    ):
        formations = _moved_with(show, mend)
        moved = _moved(show, formations, mend, shaped=shaped)
        if moved is None:
            continue
        changes, by = moved
        words = " and ".join(f"{who} {direction_words(vector)}" for who, vector in by.items())
        yield SpaceEdit(
            kind="place",
            words=f"move {words} in {_in(formations)}",
            cost=sum(math.hypot(*vector) for vector in by.values()),
            changes=changes,
        )


def _moved_with(show: Staged, mend: MovePlace) -> list[Standing]:
    """Formations held, not merely walked to or left, while the mend acts."""
    found = [
        one
        for one in show.standings
        if one.start < mend.end - _TOUCH and one.end > mend.start + _TOUCH
    ]
    return list({one.formation: one for one in found}.values())


def _moved(
    show: Staged, formations: Sequence[Standing], mend: MovePlace, *, shaped: bool
) -> tuple[tuple[Change, ...], dict[str, tuple[float, float]]] | None:
    """Changes of spots in every formation that the mend moves, and by how much in the first.

    Places end on 5 cm; whoever mirrors one who moves moves too, mirrored. None if a formation is a named shape, or
    a line would be one no longer.
    """
    changes: list[Change] = []
    told: dict[str, tuple[float, float]] = {}
    for one in formations:
        formation = _formation(show, one.formation)
        if formation is None or formation.spots is None:
            return None
        before = {who: (spot.at[0], spot.at[1]) for who, spot in formation.spots.items()}
        after = _mirrored_moves(before, dict(zip(mend.who, mend.by, strict=True)), mirrored=shaped)
        if shaped and not keeps_lines(before, after):
            return None
        raw = _values(show)["formations"][one.formation]["spots"]
        for who, at in after.items():
            if at == before[who]:
                continue
            told.setdefault(who, (at[0] - before[who][0], at[1] - before[who][1]))
            changes.append(
                (("formations", one.formation, "spots", who, "at"), _place_like(raw[who]["at"], at))
            )
    return (tuple(changes), told) if changes else None


def _mirrored_moves(
    before: Places, by: dict[str, tuple[float, float]], *, mirrored: bool
) -> dict[str, tuple[float, float]]:
    """Places after some moves, each to 5 cm; the partner of one who moves keeps mirroring them."""
    after = dict(before)
    for who, (x, y) in by.items():
        here = before[who]
        at = (marked_away(here[0], x), marked_away(here[1], y))
        mate = partner(before, who) if mirrored else None
        if mate is not None:
            other, middle = mate
            if other in by and other in after and after[other] != before[other]:
                continue  # the first of the two has moved both
            after[other] = (round(2 * middle - at[0], 3) + 0.0, at[1])
        after[who] = at
    return after


def _place_like(raw: Sequence[Any], at: tuple[float, float]) -> list[Any]:
    """A place in the units in which the file has it."""
    return [length_like(own, value) for own, value in zip(raw, at, strict=True)]


def _ways(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Bend a straight walk aside by a point half way: one performer's, or both away from each other."""
    names = [show.dancers[k].name for k in (conflict.first, conflict.second)]
    for before, one in pairwise(show.standings):
        if not (one.walk < conflict.end - _TOUCH and one.start > conflict.start + _TOUCH):
            continue
        raw = _values(show)["staging"][int(one.path[1])]
        via = dict(raw.get("via") or {})
        walking = [
            name
            for name in names
            if name not in via and math.dist(before.spots[name][:2], one.spots[name][:2]) > 0.5
        ]
        for bend in _BENDS:
            points = {
                (name, sign): _half_way(before.spots[name], one.spots[name], sign * bend)
                for name in walking
                for sign in (1, -1)
            }
            choices = [{who: points[who, sign]} for who, sign in points]
            if len(walking) == 2:
                choices += [
                    {walking[0]: points[walking[0], a], walking[1]: points[walking[1], b]}
                    for a in (1, -1)
                    for b in (1, -1)
                ]
            for chosen in choices:
                stops = " and ".join(f"{who} by [{x:g}, {y:g}]" for who, (x, y) in chosen.items())
                bent = {**via, **{who: [list(point)] for who, point in chosen.items()}}
                yield SpaceEdit(
                    kind="way",
                    words=f"walking to {one.formation} at {show.aloud(one.walk)}, send {stops} (via)",
                    cost=bend * len(chosen),
                    changes=((("staging", int(one.path[1]), "via"), bent),),
                )


def _half_way(
    here: tuple[float, float, float], there: tuple[float, float, float], aside: float
) -> tuple[float, float]:
    """Middle of a straight path, moved aside to its left [m]."""
    x, y = there[0] - here[0], there[1] - here[1]
    size = math.hypot(x, y)
    return (
        marked(0.5 * (here[0] + there[0]) - aside * y / size),
        marked(0.5 * (here[1] + there[1]) + aside * x / size),
    )


def _widened(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Spread a formation from its middle, or a named shape by its spacing."""
    between = [
        one for one in _formations_between(show, conflict.start, conflict.end)
        if _formation(show, one.formation) is not None
    ]  # fmt: skip
    for several in [[one] for one in between] + ([between] if len(between) > 1 else []):
        for factor in _FACTORS:
            each = [_wider(show, one, factor) for one in several]
            yield SpaceEdit(
                kind="widen",
                words=" and ".join(words for words, _, _ in each),
                cost=sum(cost for _, cost, _ in each),
                changes=tuple(change for _, _, changes in each for change in changes),
            )


def _wider(show: Staged, one: Standing, factor: float) -> tuple[str, float, list[Change]]:
    """A formation spread by a factor: in words, by how many metres in all, and the changes."""
    formation = show.show.formations[one.formation]
    points = np.array([(x, y) for x, y, _ in one.spots.values()])
    middle = points.mean(axis=0)
    line = centre_line({who: (x, y) for who, (x, y, _) in one.spots.items()})
    if line is not None:  # mirrored pairs stay mirrored
        middle[0] = line
    cost = (factor - 1.0) * float(np.hypot(*(points - middle).T).sum())
    words = f"widen {one.formation} to {100 * factor:.0f} %"
    changes: list[Change] = []
    if formation.spots is not None:
        raw = _values(show)["formations"][one.formation]["spots"]
        for who, spot in formation.spots.items():
            at = [marked(middle[k] + factor * (spot.at[k] - middle[k])) for k in (0, 1)]
            path = ("formations", one.formation, "spots", who, "at")
            changes.append((path, _place_like(raw[who]["at"], (at[0], at[1]))))
    elif formation.spacing is not None:
        spacing = math.ceil(20 * factor * formation.spacing - 1e-9) / 20
        old = _values(show)["formations"][one.formation].get("spacing")
        changes.append((("formations", one.formation, "spacing"), length_like(old, spacing)))
        words += f" (spacing {spacing:.2f} m)"
    return words, cost, changes


def _turned(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Turn a whole named shape about its centre."""
    for one in _formations_between(show, conflict.start, conflict.end):
        formation = _formation(show, one.formation)
        if formation is None or formation.shape is None:
            continue
        points = np.array([(x, y) for x, y, _ in one.spots.values()])
        far = float(np.hypot(*(points - points.mean(axis=0)).T).sum())
        for angle in _SHAPE_TURNS:
            sense = "anticlockwise" if angle > 0 else "clockwise"
            yield SpaceEdit(
                kind="turn",
                words=f"turn {one.formation} {abs(angle):.0f}° {sense} seen from above",
                cost=far * 2 * math.sin(math.radians(abs(angle)) / 2),
                changes=(
                    (("formations", one.formation, "turn"), round(formation.turn + angle, 3)),
                ),
            )


def _facings(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Turn one performer's facing wherever they stand at the time."""
    formations = _formations_between(show, conflict.start, conflict.end)
    for k in (conflict.first, conflict.second):
        who = show.dancers[k].name
        for angle in _SPOT_TURNS:
            changes: list[Change] = []
            for one in formations:
                formation = _formation(show, one.formation)
                if formation is None or formation.spots is None:
                    break
                facing = formation.spots[who].facing + angle
                facing = round(math.remainder(facing, 360.0), 3)
                raw = _values(show)["formations"][one.formation]["spots"][who].get("facing", 0)
                new = angle_like(raw, facing)
                changes.append((("formations", one.formation, "spots", who, "facing"), new))
            else:
                sense = "anticlockwise" if angle > 0 else "clockwise"
                yield SpaceEdit(
                    kind="facing",
                    words=(
                        f"turn {who} {abs(angle):.0f}° {sense} (seen from above) in {_in(formations)}"
                    ),
                    cost=_A_RADIAN * math.radians(abs(angle)),
                    changes=tuple(changes),
                )


def _danced(show: Staged, conflict: Conflict, who: str) -> list[Block]:
    """Blocks of a performer during a conflict, without links."""
    return [
        block
        for block in show.blocks_of(who)
        if not block.link
        and block.start < conflict.end - _TOUCH
        and block.end > conflict.start + _TOUCH
    ]


def _canons(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Tighten or widen the canon of an entry that both dance."""
    names = [show.dancers[k].name for k in (conflict.first, conflict.second)]
    for i, entry in enumerate(show.show.timeline):
        who = show.show.names if "all" in entry.who else entry.who
        if entry.canon is None or not set(names) <= set(who):
            continue
        for by in _SHIFTS:
            canon = entry.canon + by
            if canon <= 0:
                continue
            yield SpaceEdit(
                kind="canon",
                words=f"set the canon of {_entry(entry)} to {canon:g} beats instead of {entry.canon:g}",
                cost=_A_BEAT * abs(by) * (len(who) - 1),
                changes=((("timeline", i, "canon"), plain(canon)),),
            )


def _shifts(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Start one performer some beats later or earlier in the pattern."""
    for k in (conflict.first, conflict.second):
        who = show.dancers[k].name
        for block in _danced(show, conflict, who):
            if block.path[0] != "timeline":
                continue
            for by in _SHIFTS:
                parts = _alone(show, block, {"shift": plain(block.shift + by)})
                if parts is not None:
                    where = "further into" if by > 0 else "earlier in"
                    yield SpaceEdit(
                        kind="shift",
                        words=(
                            f"let {who} start {abs(by):g} {'beat' if abs(by) == 1 else 'beats'} {where} "
                            f"{block.title} at "
                            f"{show.aloud(block.start)}"
                        ),
                        cost=_A_BEAT * abs(by),
                        changes=parts[0],
                        insertions=parts[1],
                    )


def _planes(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Dance a pattern in another plane that it allows: one performer, or all who dance it."""
    for k in (conflict.first, conflict.second):
        who = show.dancers[k].name
        for block in _danced(show, conflict, who):
            names = {part.pattern for part in block.hands.values()}
            step = step_at(show, block.path)
            if len(names) != 1 or step.pattern is None:
                continue
            pattern = show.book.get(step.pattern)
            planes = [p for p in pattern.parameters if p.name == "plane"] if pattern else []
            if pattern is None or not planes:
                continue
            part = next(iter(block.hands.values()))
            now = str(pattern.values(part.values)["plane"])
            for plane in planes[0].choices:
                if plane == now:
                    continue
                values = {**_raw(show, block).get("with", {}), "plane": plane}
                words = f"dance {step.pattern} at {show.aloud(block.start)} in the {plane} plane"
                parts = _alone(show, block, {"with": values})
                if parts is not None:
                    yield SpaceEdit(
                        kind="plane",
                        words=f"let {who} {words}",
                        cost=_A_PLANE,
                        changes=parts[0],
                        insertions=parts[1],
                    )
                yield SpaceEdit(
                    kind="plane",
                    words=f"let everyone {words}",
                    cost=_A_PLANE * 1.5,
                    changes=(((*block.path, "with"), values),),
                )


def _tethers(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Shorten one performer's tethers, in both hands alike."""
    for k in (conflict.first, conflict.second):
        for by in _SHORTER:
            edit = tether_edit(show, show.dancers[k].name, by)
            if edit is not None:
                yield SpaceEdit(
                    kind="tether", words=edit.words, cost=_A_METRE * by, changes=edit.changes
                )


def _alone(
    show: Staged, block: Block, values: dict[str, Any]
) -> tuple[tuple[Change, ...], tuple[Insertion, ...]] | None:
    """Changes of a block for one performer: of the entry itself, or of a copy split off a shared one."""
    if block.path[0] != "timeline":
        return None
    entry = step_at(show, block.path)
    if not isinstance(entry, Entry) or entry.pattern is None:
        return None
    who = list(show.show.names if "all" in entry.who else dict.fromkeys(entry.who))
    if who == [block.who]:
        return tuple(((*block.path, key), value) for key, value in values.items()), ()
    if entry.canon is not None:
        return None
    mine = {**_raw(show, block), **values}
    mine = {"who": block.who, "from": show.position(block.start)} | {
        key: value for key, value in mine.items() if key not in {"who", "from", "mirror"}
    }
    if "all" in entry.mirror or block.who in entry.mirror:
        mine["mirror"] = block.who
    rest = [name for name in who if name != block.who]
    changes: list[Change] = [((*block.path, "who"), rest)]
    if block.who in entry.mirror:
        left = [name for name in entry.mirror if name != block.who]
        changes.append(((*block.path, "mirror"), left or None))
    return tuple(changes), ((block.path[:-1], int(block.path[-1]) + 1, mine),)


def _raw(show: Staged, block: Block) -> dict[str, Any]:
    """The entry or step as written in the file."""
    value = _values(show)
    for key in block.path:
        value = value[key]
    return dict(value)


def _values(show: Staged) -> Any:
    if show.read is None:
        raise ValueError("this show does not remember its file")
    return show.read.document.values


def _entry(entry: Entry) -> str:
    return entry.phrase or entry.pattern or "the entry"
