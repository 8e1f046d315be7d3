"""A place to perform: stage, audience, scenery, ceiling, posts, as plain records.

Stage frame [m]: origin where the centre line meets the downstage edge, X to the audience's right,
Y upstage. Outlines are checked by shapely when the record is made, so no bad one can exist.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.prisms import FAR_AWAY, Prism, plane, walls

Point = tuple[float, float]
_WIDEST = 2000.0  # [m] a coordinate beyond this is a slip of the unit


@dataclass(frozen=True, slots=True)
class Region:
    """A simple polygon on the plan, with holes.

    Parameters
    ----------
    outline : sequence of (X, Y)
        Corners in turn [m, stage frame], either way round; the last joins the first.
    holes : sequence of outlines
        Parts left out.
    """

    outline: tuple[Point, ...]
    holes: tuple[tuple[Point, ...], ...] = ()

    def __post_init__(self) -> None:
        import shapely

        object.__setattr__(self, "outline", _points("outline", self.outline, 3))
        holes = tuple(_points("hole", hole, 3) for hole in self.holes)
        object.__setattr__(self, "holes", holes)
        polygon = self.polygon
        if not polygon.is_valid:
            raise ValueError(
                f"an outline must not cross or touch itself: {_reason(shapely, polygon)}"
            )
        if not polygon.area > 1e-6:
            raise ValueError("an outline must enclose an area, its corners lie on one line")

    @property
    def polygon(self) -> Any:
        """The same as a shapely polygon."""
        import shapely

        return shapely.Polygon(self.outline, self.holes)

    @property
    def area(self) -> float:
        """Area without the holes [m²]."""
        return float(self.polygon.area)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, downstage, right, upstage edge [m]."""
        left, down, right, up = self.polygon.bounds
        return float(left), float(down), float(right), float(up)

    def prisms(self, *, bottom: float = -FAR_AWAY, top: float = FAR_AWAY) -> tuple[Prism, ...]:
        """Convex prisms that together fill the region between two heights."""
        return _convex(self.polygon, bottom, top)

    def outside(self) -> tuple[Prism, ...]:
        """Convex prisms that together fill the plan outside the region."""
        import shapely

        return _convex(
            shapely.box(-FAR_AWAY, -FAR_AWAY, FAR_AWAY, FAR_AWAY).difference(self.polygon),
            -FAR_AWAY,
            FAR_AWAY,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class AudienceEdge:
    """A line that the audience stands behind."""

    line: tuple[Point, ...]
    name: str = "audience"

    def __post_init__(self) -> None:
        object.__setattr__(self, "line", _points(self.name, self.line, 2))

    @property
    def prisms(self) -> tuple[Prism, ...]:
        """One wall a stretch."""
        return walls(np.array(self.line))


@dataclass(frozen=True, slots=True, kw_only=True)
class Scenery:
    """A thing on stage, with a height."""

    name: str
    region: Region
    height: float  # [m]
    combustible: bool = True
    bottom: float = 0.0  # [m] above the floor, for what hangs

    def __post_init__(self) -> None:
        if not self.bottom < self.height < _WIDEST:
            raise ValueError(
                f"{self.name}: height must be over {self.bottom} and under {_WIDEST:.0f} m, "
                f"got {self.height!r}"
            )

    @property
    def prisms(self) -> tuple[Prism, ...]:
        """Convex prisms that fill it."""
        return self.region.prisms(bottom=self.bottom, top=self.height)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ceiling:
    """A ceiling, over everything or over a region."""

    height: float  # [m]
    region: Region | None = None
    name: str = "ceiling"

    def __post_init__(self) -> None:
        if not 0 < self.height < _WIDEST:
            raise ValueError(
                f"{self.name}: height must be 0 to {_WIDEST:.0f} m, got {self.height!r}"
            )

    @property
    def prisms(self) -> tuple[Prism, ...]:
        """All that lies above it."""
        if self.region is None:
            return (plane(bottom=self.height),)
        return self.region.prisms(bottom=self.height)


@dataclass(frozen=True, slots=True, kw_only=True)
class Post:
    """Where one of the crew stands."""

    name: str
    at: Point
    radius: float = 0.3  # [m] room that a standing person takes; common practice

    def __post_init__(self) -> None:
        object.__setattr__(self, "at", _points(self.name, (self.at,), 1)[0])
        if not 0 <= self.radius < _WIDEST:
            raise ValueError(f"{self.name}: radius must not be negative, got {self.radius!r}")

    @property
    def prisms(self) -> tuple[Prism, ...]:
        """The upright line through it."""
        return (Prism(np.array([self.at])),)


@dataclass(frozen=True, slots=True, kw_only=True)
class Venue:
    """All that stands still."""

    stage: Region | None = None  # None: no edge is known
    audience: tuple[AudienceEdge, ...] = ()
    ceilings: tuple[Ceiling, ...] = ()  # none: open sky
    scenery: tuple[Scenery, ...] = ()
    posts: tuple[Post, ...] = ()


def rectangle(width: float, depth: float) -> Region:
    """Stage of a width and a depth [m], its downstage edge on Y = 0."""
    _sizes(width=width, depth=depth)
    half = width / 2
    return Region(((-half, 0.0), (half, 0.0), (half, depth), (-half, depth)))


def thrust(width: float, depth: float, *, tongue_width: float, tongue_depth: float) -> Region:
    """Stage with a tongue towards the audience [m]; Y = 0 is the tongue's downstage edge."""
    _sizes(width=width, depth=depth, tongue_width=tongue_width, tongue_depth=tongue_depth)
    if not tongue_width < width:
        raise ValueError(f"the tongue must be narrower than the stage, got {tongue_width}, {width}")
    half, tongue = width / 2, tongue_width / 2
    back = tongue_depth + depth
    return Region(
        (
            (-tongue, 0.0),
            (tongue, 0.0),
            (tongue, tongue_depth),
            (half, tongue_depth),
            (half, back),
            (-half, back),
            (-half, tongue_depth),
            (-tongue, tongue_depth),
        )
    )


def round_stage(diameter: float, *, corners: int = 72) -> Region:
    """Round stage that touches Y = 0, as a polygon inside the circle (2.4 mm a metre of radius)."""
    _sizes(diameter=diameter)
    radius = diameter / 2
    turn = 2 * np.pi * np.arange(corners) / corners - np.pi / 2
    return Region(
        tuple(
            (float(x), float(y))
            for x, y in zip(radius * np.cos(turn), radius + radius * np.sin(turn), strict=True)
        )
    )


def _points(name: str, points: Sequence[Sequence[float]], least: int) -> tuple[Point, ...]:
    out = []
    for point in points:
        if len(point) != 2 or not all(math.isfinite(value) for value in point):
            raise ValueError(f"{name}: a corner must be two finite numbers, got {tuple(point)!r}")
        if max(abs(value) for value in point) > _WIDEST:
            raise ValueError(
                f"{name}: {tuple(point)!r} lies over {_WIDEST:.0f} m away; millimetres?"
            )
        out.append((float(point[0]), float(point[1])))
    if len(out) > 1 and out[0] == out[-1] and least > 2:
        out.pop()
    if len(out) < least:
        raise ValueError(f"{name}: at least {least} corners are needed, got {len(out)}")
    return tuple(out)


def _sizes(**sizes: float) -> None:
    for name, value in sizes.items():
        if not 0 < value < _WIDEST:
            raise ValueError(f"{name} must be 0 to {_WIDEST:.0f} m, got {value!r}")


def _reason(shapely: Any, polygon: Any) -> str:
    return str(shapely.is_valid_reason(polygon)).replace("[", " at (").replace("]", ")").lower()


def _convex(polygon: Any, bottom: float, top: float) -> tuple[Prism, ...]:
    """Triangles of a polygon, each a prism; the polygon itself where it is convex."""
    import shapely

    hull = polygon.convex_hull
    pieces = (
        [polygon]
        if polygon.geom_type == "Polygon" and hull.area - polygon.area < 1e-9 * hull.area
        else shapely.constrained_delaunay_triangles(polygon).geoms
    )
    out = []
    for piece in pieces:
        if piece.area <= 0:
            continue
        ring: Floats = np.asarray(shapely.geometry.polygon.orient(piece).exterior.coords)[:-1]
        out.append(Prism(ring, bottom, top))
    return tuple(out)
