"""Smallest distance of dancers from stationary objects, proven, and when it is below a requirement.

Stage frame [m], beats. A stationary object is a set of upright convex prisms. The measure is one of
- envelope: a ball round the position, with the radius of half the shoulders, arm, prop and flame stretched
sideways;
- place: the body's axis alone;
- parts: all capsules of the dancer as they move, flames while they are lit;
- flames: the heads while they are lit; wicks: the heads without flame, against a level floor.

Hand work and the floor. Everything a hand holds is widened by the block's hand deviation w, because the
hand may be that far from its nominal path. But a hand is limited by its arm: it is never lower than the
lowest position of its shoulder (`Carriage.lowest_shoulder`) minus the arm, and no wick is more than
`Prop.farthest` below it, its surface a wick's radius more. With

    E = lowest shoulder − arm − farthest − wick radius

for the height of that lowest point above the floor, a wick with nominal height z is, wherever the hand
really is, at z − w or above (hand deviation), and at E or above (arm): so at max(z − w, E). If the nominal
height itself is below E the hand is out of reach, which is a separate finding; the nominal height is then
used as it is, and f(z) = max(z − w, min(z, E)) is reported. f is non-decreasing and never grows faster than
z, so f applied to bounds of z over an interval gives bounds of the reported value. Rigid props have no hand
deviation. A shoulder moves upwards only (`Body.shoulder_give`).
Source: triangle inequality; lengths from geometry/bodies.py.
"""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Literal

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.content_keys import content_key
from sequencer.geometry.bodies import SIDES, Side
from sequencer.geometry.certified import TOLERANCE, CertifiedMinima, Sample, Spans, search
from sequencer.geometry.prisms import FAR_AWAY, Prism
from sequencer.kept import recent_each
from sequencer.motion.clearance.by_slice import SlicedSearch, SliceKey
from sequencer.motion.clearance.grid import Cells
from sequencer.motion.performers.body_parts import PARTS, parts_of
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.sampling import States, states

_MOST_GAPS = 2_000  # dancers and objects whose distances on the plan are kept
_MOST_GAPS_IN_SLICES = 50_000

Measure = Literal["envelope", "place", "parts", "flames", "wicks"]

_MEASURED: dict[Measure, tuple[int, ...]] = {
    "envelope": (0,),
    "place": (0,),
    "parts": tuple(range(len(PARTS))),
    "flames": (3, 6, 7, 8),
    "wicks": (3, 6, 7, 8),
}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Encounters:
    """Smallest distance of every dancer from one object, and the spans below the requirement."""

    distance: Floats  # (n,) [m] to the tolerance; inf if there was nothing to measure
    at: Floats  # (n,) [beats]
    part: Ints  # (n,) index into PARTS; -1 if a bound was enough
    bound: Bools  # (n,) the distance is only a lower bound: too far away to need sampling
    spans: Spans  # group is the dancer
    evaluations: int


def encounters(
    dancers: Sequence[Dancer],
    grid: Cells,
    prisms: Sequence[Prism],
    *,
    measure: Measure,
    required: Floats,
    only_lit: bool = False,
    tolerance: float = TOLERANCE,
) -> Encounters:
    """Search every dancer against one stationary object.

    Parameters
    ----------
    dancers : sequence of Dancer
    grid : Cells
        Of the same dancers, over the beats to search.
    prisms : sequence of Prism
        The object, as convex pieces.
    measure : {"envelope", "place", "parts", "flames", "wicks"}
    required : ndarray, shape (n,) [m]
        Distance that each dancer must keep.
    only_lit : bool
        Skip the beats in which the dancer is not lit; always the case for flames.
    tolerance : float
        Largest error of a distance [m].

    Returns
    -------
    encounters : Encounters

    Raises
    ------
    ValueError
        If there are no prisms, or wicks are measured against something other than a floor.

    Notes
    -----
    Source: `geometry.certified.search`. Error: at most `tolerance`.
    """
    if not prisms:
        raise ValueError("prisms must contain at least one prism")
    if measure == "wicks" and any(prism.bottom > -FAR_AWAY for prism in prisms):
        raise ValueError("wicks are measured above a floor, which must have no bottom")
    kernel = _Kernel(dancers, grid, prisms, measure)
    gap = kernel.apart()
    looked = np.ones_like(grid.lit)
    if only_lit or measure == "flames":
        looked = grid.lit
    if measure in {"flames", "wicks"}:
        looked = looked & np.array([bool(dancer.props) for dancer in dancers])[:, None]
    far = np.where(looked, gap, np.inf)
    found = SlicedSearch(
        grid=grid,
        gap=far,
        required=required,
        tolerance=tolerance,
        key=kernel.keys(only_lit=only_lit),
        sample=lambda who, cell, beats: kernel.sampled(
            who, cell, beats, np.zeros(len(beats)), np.inf
        ),
        search=partial(kernel.searched, tolerance=tolerance),
        by_time=False,
    ).found()
    bound = ~np.isfinite(found.value)
    middle = 0.5 * (grid.start + grid.end)
    return Encounters(
        distance=np.where(bound, far.min(axis=1), found.value),
        at=np.where(bound, middle[far.argmin(axis=1)], found.at),
        part=found.label,
        bound=bound,
        spans=found.spans,
        evaluations=found.evaluations,
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Kernel:
    """Samples of dancers against prisms."""

    dancers: Sequence[Dancer]
    grid: Cells
    prisms: Sequence[Prism]
    measure: Measure

    def apart(self) -> Floats:
        """Lower bound of the distance on the plan in each cell, shape (n, c) [m]."""
        content = self._content()
        keys = [
            None if content is None or None in own else (content, own, self.grid.within)
            for own in self.grid.floors
        ]
        out = np.stack(recent_each("places", keys, self._from_places, most=_MOST_GAPS))
        if self.measure == "place":
            reach: Floats = np.zeros(1)
        elif self.measure == "envelope":
            reach = self._envelopes()
        else:
            reach = self.grid.reach
        return np.asarray(out - self.grid.place_uncertainty - reach)

    def _envelopes(self) -> Floats:
        """Reach with arm and tether stretched out, or the proven reach if the nominal motion goes farther."""
        stretched = np.array([dancer.reach for dancer in self.dancers])
        # A hand off its nominal path is still limited by its arm: no hand deviation here.
        return np.asarray(np.maximum(stretched, self.grid.drawn.max(axis=1)))[:, None]

    def _from_places(self, missing: list[int]) -> list[Floats]:
        """Distances of places on the plan from the prisms, for some dancers; those of known slices are kept."""
        grid, content, cuts = self.grid, self._content(), self.grid.cuts.tolist()
        own = [(k, s) for k in missing for s in range(len(cuts) - 1)]

        def work(missing: list[int]) -> list[Floats]:
            parts = [grid.place[k, cuts[s] : cuts[s + 1]] for k, s in (own[i] for i in missing)]
            plan = np.concatenate(parts)
            ground = np.concatenate([plan, np.zeros((len(plan), 1))], axis=-1)
            out = np.full(len(plan), np.inf)
            for prism in self.prisms:
                out = np.minimum(out, Prism(prism.corners).nearest(ground)[0])
            return np.split(out, np.cumsum([len(part) for part in parts])[:-1])

        keys = [
            None if content is None or (key := grid.floors[k][s]) is None
            else (content, key, grid.within[s])
            for k, s in own
        ]  # fmt: skip
        found = recent_each("places in slices", keys, work, most=_MOST_GAPS_IN_SLICES)
        each = len(cuts) - 1
        return [np.concatenate(found[low : low + each]) for low in range(0, len(found), each)]

    def _content(self) -> bytes | None:
        try:
            return content_key(tuple(self.prisms))
        except TypeError:
            return None

    def keys(self, *, only_lit: bool) -> SliceKey:
        """Content keys of dancers in slices, against these prisms."""
        content, keys, within = self._content(), self.grid.keys, self.grid.within
        reach = self._envelopes()[:, 0].tolist() if self.measure == "envelope" else None

        def key(who: int, s: int) -> Hashable | None:
            own = keys[who][s]
            if content is None or own is None:
                return None
            envelope = None if reach is None else reach[who]
            return ("fixture", own, within[s], content, self.measure, only_lit, envelope)

        return key

    def searched(
        self,
        who: Ints,
        cell: Ints,
        group: Ints,
        required: Floats,
        best: Floats,
        *,
        tolerance: float,
    ) -> CertifiedMinima:
        """Search the given cells of the given dancers."""

        def sample(rows: Ints, centre: Floats, half: Floats, enough: Floats) -> Sample:
            return self.sampled(who[rows], cell[rows], centre, half, enough)

        return search(
            sample,
            group=group,
            start=self.grid.start[cell],
            end=self.grid.end[cell],
            required=required,
            best=best,
            tolerance=tolerance,
            apart=True,
        )

    def sampled(
        self, i: Ints, c: Ints, centre: Floats, half: Floats, enough: Floats | float
    ) -> Sample:
        """Values and bounds for dancers i over intervals within cells c."""
        envelopes = self._envelopes()[:, 0] if self.measure == "envelope" else None
        state, (at,) = states(self.grid.ensemble, (i,), centre, self.grid.points)
        value: Floats = np.full(len(i), np.inf)
        lower, upper = value, value
        label: Ints = np.full(len(i), -1, dtype=np.int64)
        for part in _MEASURED[self.measure]:
            if part >= state.radii.shape[1]:
                continue
            without = self._without(part)[i]
            if np.all(without):
                continue
            radius, speed = self._radius(state, at, i, c, part, envelopes)
            for prism in self.prisms:
                if self.measure == "wicks":
                    one = self._over(prism, state, at, i, c, half, part, radius, centre)
                else:
                    one = self._one(prism, state, at, i, c, half, part, radius, speed, enough)
                if np.any(without):
                    one = Sample(
                        np.where(without, np.inf, one.value),
                        np.where(without, np.inf, one.lower),
                        np.where(without, np.inf, one.upper),
                        one.label,
                    )
                closer = one.value < value
                label = np.where(closer, part, label)
                value = np.minimum(value, one.value)
                lower = np.minimum(lower, one.lower)
                upper = np.minimum(upper, one.upper)
        return Sample(value, lower, upper, label)

    def _over(
        self,
        floor: Prism,
        state: States,
        at: Ints,
        i: Ints,
        c: Ints,
        half: Floats,
        part: int,
        radius: Floats,
        beats: Floats,
    ) -> Sample:
        """Height of one wick above a floor, negative if below it; hand work as in the module docstring."""
        point, side = parts_of(self.grid.points)[part].start, PARTS[part].side
        height = state.points[at, point, 2] - floor.top - radius
        rate = np.abs(state.rates[at, point, 2])
        speed = self.grid.speed[i, c, point] * half
        bend = 0.5 * self.grid.acceleration[i, c, point] * half * half
        deviation, lowest = np.zeros(len(i)), np.full(len(i), np.inf)
        for k in np.unique(i):
            if side is None:
                continue
            own = i == k
            deviation[own] = self.dancers[k].deviations(beats[own])[SIDES.index(side)]
            lowest[own] = lowest_wick(self.dancers[k], side) - floor.top

        def reported(height_above: Floats) -> Floats:
            return np.asarray(
                np.maximum(height_above, np.minimum(height_above + deviation, lowest))
            )

        lower = reported(height - np.minimum(speed, rate * half + bend))
        return Sample(reported(height), lower, reported(height + speed), np.zeros_like(at))

    def _without(self, part: int) -> Bools:
        """Dancers without this part or, when measuring wicks, without a wick there."""
        if self.measure in {"flames", "wicks"}:
            return np.array([not dancer.burns(part) for dancer in self.dancers])
        return np.array([not dancer.carries(part) for dancer in self.dancers])

    def _radius(
        self, state: States, at: Ints, i: Ints, c: Ints, part: int, envelopes: Floats | None
    ) -> tuple[Floats, Floats]:
        """Radius of a part, and how fast it can change [m/beat]."""
        still = np.zeros(len(at))
        if envelopes is not None:
            return envelopes[i], still
        if self.measure == "place":
            return still, still
        if self.measure == "wicks":
            # Subtract the flame's part again; a cell is either entirely lit or entirely unlit.
            flame = np.array([_flame(dancer, part) for dancer in self.dancers])
            return state.radii[at, part] - np.where(self.grid.lit[i, c], flame[i], 0.0), still
        if PARTS[part].kind == "arm":
            slope = np.array([dancer.body.elbow_slope for dancer in self.dancers])
            arm = 0 if PARTS[part].side == "left" else 1
            return state.radii[at, part], slope[i] * self.grid.hand_speed[i, c, arm]
        return state.radii[at, part], still

    def _one(
        self,
        prism: Prism,
        state: States,
        at: Ints,
        i: Ints,
        c: Ints,
        half: Floats,
        part: int,
        radius: Floats,
        growth: Floats,
        enough: Floats | float,
    ) -> Sample:
        """One part against one prism."""
        on_axis = self.measure in {"envelope", "place"}
        parts = parts_of(self.grid.points)
        own = (0, 0) if on_axis else (parts[part].start, parts[part].end)
        ends = tuple(dict.fromkeys(own))
        speed = np.max([self.grid.speed[i, c, end] for end in ends], axis=0) + growth
        points = [state.points[at, end] for end in ends]
        near = [prism.nearest(point) for point in points]
        # An end is within half the length of any point between, so this settles distant parts.
        size = np.linalg.norm(points[-1] - points[0], axis=-1)
        value = np.minimum(near[0][0], near[-1][0])
        lower = value - 0.5 * size - speed * half - radius
        on_part, on_prism = points[0], near[0][1]
        if len(ends) > 1:
            left = np.flatnonzero(lower < enough)
            value = np.full(len(at), np.inf)
            on_part, on_prism = on_part.copy(), on_prism.copy()
            if len(left):
                value[left], on_part[left], on_prism[left] = prism.nearest_of_segment(
                    points[0][left], points[1][left]
                )
        n = on_part - on_prism
        length = np.linalg.norm(n, axis=-1)
        n /= np.maximum(length, 1e-12)[:, None]
        proven = np.full(len(at), np.inf)
        for end, point in zip(ends, points, strict=True):
            along = np.einsum("nc,nc->n", point, n)
            rate = np.abs(np.einsum("nc,nc->n", state.rates[at, end], n))
            bend = 0.5 * self.grid.acceleration[i, c, end]
            proven = np.minimum(proven, along - (rate + growth) * half - bend * half * half)
        proven -= prism.level(n)
        sampled = np.isfinite(value)
        close = np.where(length > 1e-9, proven, 0.0) - radius
        close = np.maximum(close, np.where(sampled, value, 0.0) - radius - speed * half)
        lower = np.where(sampled, np.maximum(lower, close), lower)
        return Sample(value - radius, lower, value - radius + speed * half, np.zeros_like(at))


def lowest_wick(dancer: Dancer, side: Side) -> float:
    """Lowest possible height of a wick, arm and prop straight down [m above the floor]; inf without a prop.

    Parameters
    ----------
    dancer : Dancer
    side : {"left", "right"}

    Notes
    -----
    Source: module docstring. A bound for every hand within reach of its shoulder.
    """
    prop = dancer.props.get(side)
    if prop is None:
        return np.inf
    lowest = dancer.carriage.lowest_shoulder - dancer.body.arm_length
    return lowest - prop.farthest - prop.wick_radius


def _flame(dancer: Dancer, part: int) -> float:
    """Extra radius of a part while lit [m]."""
    side = PARTS[part].side
    if side is None or not dancer.burns(part):
        return 0.0
    prop = dancer.props[side]
    return (
        prop.flame_reach if PARTS[part].kind == "rear" else prop.burning_radius - prop.cold_radius
    )
