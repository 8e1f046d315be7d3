"""What a plan shows of the site besides the stage: exits with their ways, fire lane, gate, spin-off zone, fuel.

Stage frame [m]. Everything differs by shape and dash as well as by ink.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from sequencer.geometry.regions import Point
from sequencer.outputs.plans.plan_labels import Label
from sequencer.outputs.plans.plan_style import COOL, PLAN_INK, PLAN_SOFT, shown
from sequencer.safety.site_ground.site_lines import fuel_rings, lane_outline, lane_words
from sequencer.safety.site_ground.ways_out import WayOut, ways_out
from sequencer.show.file_records.site import FireLane
from sequencer.staging.staged import Staged

_NEAR = 30.0  # [m] from the middle of the stage: what is farther away need not be shown


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteMarks:
    """Exits, lane, gate, zone and fuel of a show."""

    exits: tuple[WayOut, ...] = ()
    lane: FireLane | None = None
    gate: Point | None = None
    zone: tuple[Point, ...] = ()
    fuel: Point | None = None
    rings: tuple[
        tuple[float, str], ...
    ] = ()  # [m] radius round the fuel, and what must stay out of it
    extinguishers: tuple[Point, ...] = ()

    @property
    def points(self) -> tuple[Point, ...]:
        """Places that a plan of the site shows, as far as they are near."""
        ways = [point for out in self.exits for point in (*out.way, out.at)]
        single = [each for each in (self.gate, self.fuel) if each is not None]
        found = (
            *ways,
            *(self.lane.line if self.lane else ()),
            *self.zone,
            *single,
            *self.extinguishers,
        )
        return tuple(point for point in found if np.hypot(*point) <= _NEAR)


def site_marks(show: Staged) -> SiteMarks:
    """What a show's file says of its site."""
    venue = show.show.venue
    return SiteMarks(
        exits=ways_out(show),
        lane=venue.fire_lane,
        gate=venue.gate,
        zone=venue.spin_off or (),
        fuel=venue.fuel_station,
        rings=fuel_rings(show),
        extinguishers=tuple(tool.at for tool in venue.extinguishers),
    )


def draw_site(axes: Any, site: SiteMarks) -> None:
    """Draw the marks of a site into axes whose limits are set, without words."""
    from matplotlib.patches import Circle, Polygon

    if site.lane is not None:
        outline = lane_outline(site.lane)
        axes.add_patch(
            Polygon(outline, facecolor="white", edgecolor=PLAN_INK, linestyle=(0, (7, 3)), linewidth=1.0, zorder=0.3)
        )  # fmt: skip
    if site.zone:
        axes.add_patch(
            Polygon(site.zone, fill=False, edgecolor=PLAN_SOFT, linestyle=(0, (1, 2)), linewidth=1.2, zorder=0.8)
        )  # fmt: skip
    for out in site.exits:
        if len(out.way) > 1:
            x, y = np.array(out.way).T
            dashes = (0, (5, 2)) if out.counted else (0, (1, 2))
            axes.plot(x, y, color=PLAN_INK, linestyle=dashes, linewidth=1.2, zorder=2, scalex=False, scaley=False)  # fmt: skip
            axes.annotate(
                "", xy=out.way[-1], xytext=out.way[-2], arrowprops={"arrowstyle": "-|>", "color": PLAN_INK, "lw": 0},
                annotation_clip=True, zorder=2,
            )  # fmt: skip
        _mark(axes, out.at, "P", "white")
    for tool in site.extinguishers:
        _mark(axes, tool, "^", PLAN_INK)
    if site.fuel is not None:
        _mark(axes, site.fuel, "D", PLAN_INK)
        for radius, _ in site.rings:
            axes.add_patch(
                Circle(site.fuel, radius, fill=False, edgecolor=COOL, linestyle=(0, (1, 3)), linewidth=1.0, zorder=0.9)
            )  # fmt: skip
    if site.gate is not None:
        _mark(axes, site.gate, "H", "white")


def site_labels(site: SiteMarks, off: float) -> list[Label]:
    """The words of a site's marks, the most important first."""
    words: list[tuple[str, Point]] = [
        (f"exit {out.name}{'' if out.counted else ', does not count'}", out.at)
        for out in site.exits
    ]
    if site.fuel is not None:
        words.append(("fuel", site.fuel))
        x, y = site.fuel
        words += [
            (f"{what} within {radius:.2f} m of the fuel", (x, y - radius))
            for radius, what in site.rings
        ]
    if site.lane is not None:
        words.append((lane_words(site.lane), _middle(site.lane.line)))
    if site.gate is not None:
        words.append(("gate", site.gate))
    if site.zone:
        words.append(("spin-off zone", _middle(site.zone)))
    words += [("extinguisher", tool) for tool in site.extinguishers]
    return [
        Label(text=shown(text[:60]), at=at, off=off, ink=PLAN_INK, size=7.5, needed=False)
        for text, at in words
    ]


def _mark(axes: Any, at: Point, marker: str, inside: str) -> None:
    axes.plot(
        *at, marker=marker, markersize=8, color=inside, mec=PLAN_INK, mew=1.2, zorder=4, scalex=False, scaley=False
    )  # fmt: skip


def _middle(points: tuple[Point, ...]) -> Point:
    x, y = np.mean(points, axis=0)
    return float(x), float(y)
