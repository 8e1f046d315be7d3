"""Changes of where people stand and walk that may keep two performers apart, by kind.

Move a place, bend a path, widen or turn a formation, turn a facing.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from typing import Any

import numpy as np

from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.outcome import direction_words
from sequencer.planning.edits.as_written import angle_like, length_like
from sequencer.planning.edits.moves import MovePlace, place_mends
from sequencer.planning.edits.shapes import (
    Places,
    centre_line,
    keeps_lines,
    marked,
    marked_away,
    partner,
)
from sequencer.planning.edits.space_edits import TOUCH, SpaceEdit, file_values
from sequencer.show.editing import Change
from sequencer.show.model import Formation
from sequencer.staging.staged import Staged, Standing

_FACTORS = (1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.75, 2.0)
_SPOT_TURNS = (15.0, -15.0, 30.0, -30.0, 45.0, -45.0)  # [degrees]
_SHAPE_TURNS = (15.0, -15.0, 30.0, -30.0, 45.0, -45.0, 90.0)  # [degrees]
_BENDS = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0)  # [m]
_A_RADIAN = 0.5  # [m] that a turn counts as


def places(
    show: Staged,
    conflict: Conflict,
    span: tuple[float, float],
    required: float,
    *,
    shaped: bool = True,
) -> Iterator[SpaceEdit]:
    """Move one place, the other, or both by half, by the shortest vector.

    Parameters
    ----------
    show : Staged
    conflict : Conflict
    span : (float, float)
        Beats of the whole show.
    required : float
        Distance that performers must keep [m].
    shaped : bool
        Whether mirrored pairs and lines stay; if not, only the moves that they would not allow.
    """
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
        if moved is None or (not shaped and moved == _moved(show, formations, mend, shaped=True)):
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
        if one.start < mend.end - TOUCH and one.end > mend.start + TOUCH
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
        raw = file_values(show)["formations"][one.formation]["spots"]
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


def ways(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Bend a straight walk aside by a point half way: one performer's, or both away from each other."""
    names = [show.dancers[k].name for k in (conflict.first, conflict.second)]
    for before, one in pairwise(show.standings):
        if not (one.walk < conflict.end - TOUCH and one.start > conflict.start + TOUCH):
            continue
        if one.path[0] != "staging":
            continue  # an entrance or exit
        raw = file_values(show)["staging"][int(one.path[1])]
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
                    words=f"walking to {one.formation} {show.at_aloud(one.walk)}, send {stops} (via)",
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


def widened(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
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
    neighbours = ""
    changes: list[Change] = []
    if formation.spots is not None:
        raw = file_values(show)["formations"][one.formation]["spots"]
        wide: dict[str, tuple[float, float]] = {}
        for who, spot in formation.spots.items():
            x, y = (marked(middle[k] + factor * (spot.at[k] - middle[k])) for k in (0, 1))
            wide[who] = x, y
            path = ("formations", one.formation, "spots", who, "at")
            changes.append((path, _place_like(raw[who]["at"], wide[who])))
        now = {who: (spot.at[0], spot.at[1]) for who, spot in formation.spots.items()}
        neighbours = _apart(_nearest(wide), _nearest(now))
    elif formation.spacing is not None:
        spacing = math.ceil(20 * factor * formation.spacing - 1e-9) / 20
        old = file_values(show)["formations"][one.formation].get("spacing")
        changes.append((("formations", one.formation, "spacing"), length_like(old, spacing)))
        neighbours = _apart(spacing, formation.spacing)
    return f"spread {one.formation} from its middle{neighbours}", cost, changes


def _apart(after: float, before: float) -> str:
    """How far neighbours stand apart once a formation is wider, and now; empty for one who is alone."""
    if not math.isfinite(after):
        return ""
    return f": neighbours {after:.2f} m apart, not {before:.2f} m"


def _nearest(places: Places) -> float:
    """How far the two who are nearest to each other stand apart [m]; infinity for one alone."""
    return min((math.dist(a, b) for a, b in combinations(places.values(), 2)), default=math.inf)


def turned(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
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


def facings(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
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
                raw = file_values(show)["formations"][one.formation]["spots"][who].get("facing", 0)
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


def _formations_between(show: Staged, start: float, end: float) -> list[Standing]:
    """Formations held, walked to or left between two beats; each name once."""
    found: dict[str, Standing] = {}
    for one in show.standings:
        if one.walk < end - TOUCH and one.end > start + TOUCH:
            found.setdefault(one.formation, one)
    return list(found.values())


def _formation(show: Staged, name: str) -> Formation | None:
    return show.show.formations.get(name)


def _in(standings: Sequence[Standing]) -> str:
    return " and ".join(one.formation for one in standings)
