"""Distances that an authority requires, as the plan keeps them throughout the song.

Distances to audience and fuel are from the outer edge of prop and flame at its closest; those to an
extinguisher follow the walking route. Each is given beside the requirement.
"""

from collections.abc import Callable, Sequence
from math import ceil, floor

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.arrays import Floats
from sequencer.findings import Clearance
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import NO_WAY
from sequencer.motion.clearance.to_posts import closest, farthest
from sequencer.outputs.sheets.page.elements import Cell, grid, heading
from sequencer.outputs.sheets.page.paper import TEXT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import brief, clock, metres
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety.site_ground.guarding import Guarded, guarded_by
from sequencer.safety.site_ground.ways_out import audience_gap, ways_out

_Ways = Callable[[Floats], Floats]


def distances_block(edition: Edition, room: float) -> list[Flowable]:
    """A line for each distance, its time and the requirement; nothing if nobody is lit."""
    if not edition.plan.followed:
        return []
    lines = [*_audience(edition), *_exits(edition), *_extinguishers(edition), *_fuel(edition)]
    rows: list[list[Cell]] = [
        [
            Prose(TextSpan(name, "Regular", TEXT), role="TD"),
            Prose(TextSpan(far, "Bold", TEXT), role="TD"),
        ]
        for name, far in lines[:14]
    ]
    if not rows:
        return []
    return [
        CondPageBreak(100),
        heading("Distances, over the whole song", level=2),
        grid(rows, [room * 0.5, room * 0.5], pad=2.5),
    ]


def _audience(edition: Edition) -> list[tuple[str, str]]:
    """The check's own figures where it has them, which allow for hand work too."""
    checked: dict[str, Clearance] = {}
    for row in edition.report.clearances:
        known = checked.setdefault(row.between[1], row)
        if row.distance < known.distance:
            checked[row.between[1]] = row
    lines = []
    for edge in edition.staged.show.venue.audience:
        name = f"{brief(edge.name)} to prop and flame, at the closest"
        found = checked.get(edge.name)
        if found is None:
            lines.append(_nearest(edition, name, _to_line(edge.line), None))
            continue
        words = f"{_clear(found.distance)}{_least(found.required)}; {brief(found.between[0])}"
        lines.append((name, f"{words} at {clock(found.at)}"))
    return lines


def _exits(edition: Edition) -> list[tuple[str, str]]:
    """How near a flame comes to each exit and the way to it."""
    required = audience_gap(edition.staged)
    return [
        _nearest(
            edition,
            f"exit {brief(out.name)} and the way to it, to prop and flame",
            _to_line(out.way or (out.at, out.at)),
            required,
        )
        for out in ways_out(edition.staged)
    ]


def _extinguishers(edition: Edition) -> list[tuple[str, str]]:
    """Walks to the nearest extinguisher: of the act from its performers, of the fuel from the fuel station."""
    import numpy as np

    plan, venue = edition.plan, edition.staged.show.venue
    rule = plan.book.strictest("extinguisher-travel")
    most = f" (at most {metres(rule.number, decimals=2)})" if rule else ""
    own: dict[Guarded, list[Point]] = {"act": [], "fuel": []}
    for tool, guards in zip(venue.extinguishers, guarded_by(edition.staged), strict=True):
        own[guards].append(tool.at)
    lines = []
    if own["act"]:
        ways = plan.ground.ways_to(own["act"])
        burn, worst = max(
            zip(
                plan.followed,
                farthest(plan.followed, [ways] * len(plan.followed), 0.0),
                strict=True,
            ),
            key=lambda pair: pair[1].distance,
        )
        when = clock(edition.staged.seconds(worst.beat))
        lines.append(
            (
                "lit performer to the nearest extinguisher of the act, on foot",
                f"{_walk(worst.distance)}{most}; {brief(burn.who)} at {when}",
            )
        )
    if venue.fuel_station is not None:
        words = "none stands ready for it"
        if own["fuel"]:
            walk = float(plan.ground.ways_to(own["fuel"])(np.array([venue.fuel_station])).min())
            words = f"{_walk(walk)}{most}"
        lines.append(("fuel station to its own extinguisher, on foot", words))
    return lines


def _fuel(edition: Edition) -> list[tuple[str, str]]:
    station = edition.staged.show.venue.fuel_station
    if station is None:
        return []
    book = edition.plan.book
    to_flame = book.strictest("fuel-point-distance")
    to_people = book.strictest("fuel-point-audience")

    def ways(places: Floats) -> Floats:
        found: Floats = ((places - station) ** 2).sum(axis=1, keepdims=True) ** 0.5
        return found

    lines = [
        _nearest(
            edition,
            "fuel station to prop and flame, at the closest",
            ways,
            to_flame.number if to_flame else None,
        )
    ]
    import numpy as np

    for edge in edition.staged.show.venue.audience:
        far = float(_to_line(edge.line)(np.array([station]))[0, 0])
        lines.append(
            (
                f"fuel station to {brief(edge.name)}",
                f"{_clear(far)}{_least(to_people.number if to_people else None)}",
            )
        )
    return lines


def _nearest(edition: Edition, name: str, ways: _Ways, required: float | None) -> tuple[str, str]:
    followed = edition.plan.followed
    reach = {dancer.name: dancer.reach for dancer in edition.staged.dancers}
    gap, who, beat = min(
        (near.distance - reach[burn.who], burn.who, near.beat)
        for burn, near in zip(followed, closest(followed, [ways] * len(followed), 0.0), strict=True)
    )
    when = clock(edition.staged.seconds(beat))
    return name, f"{_clear(gap)}{_least(required)}; {brief(who)} at {when}"


def _to_line(line: Sequence[tuple[float, float]]) -> _Ways:
    import shapely

    edge = shapely.LineString(line)

    def ways(places: Floats) -> Floats:
        found: Floats = shapely.distance(edge, shapely.points(places))[:, None]
        return found

    return ways


def _least(required: float | None) -> str:
    return "" if required is None else f" (at least {metres(required, decimals=2)})"


def _clear(gap: float) -> str:
    """A distance kept clear, rounded down."""
    return metres(floor(max(gap, 0.0) * 100) / 100, decimals=2)


def _walk(way: float) -> str:
    """A walking distance, rounded up."""
    return "no walking route" if way >= NO_WAY else metres(ceil(way * 100) / 100, decimals=2)
