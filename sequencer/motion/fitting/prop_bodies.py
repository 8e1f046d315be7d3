"""The bodies of a prop at samples of its motion, as the search for a fit looks at them: few, each with its ends.

Frame: that of the motion [m].
"""

from collections.abc import Sequence
from itertools import pairwise
from math import inf

import numpy as np

from sequencer.arrays import Floats, Ints, crossed
from sequencer.geometry.segments import point_segment, segment_segment
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import SHAFT_RADIUS, Prop, PropPoint, Solid

HOOP_CHORDS = 12

Bodies = list[tuple[Solid, Floats, Floats]]  # of a prop, with their ends, each shape (n, 3) [m]


def bodies_of(prop: Prop, motion: Motion) -> Bodies:
    """Bodies of a prop with their ends, each shape (n, 3) [m]."""
    aside = crossed(motion.plane, motion.tether)

    def put(along: float, across: float) -> Floats:
        return np.asarray(motion.hand + along * motion.tether + across * aside)

    return [(solid, put(*solid.start), put(*solid.end)) for solid in simple_parts(prop)]


def ball_about(bodies: Sequence[tuple[Solid, Floats, Floats]]) -> tuple[Floats, float]:
    """Centres (n, 3) [m] and radius [m] of balls that enclose a prop at every sample."""
    ends = np.stack([end for _, *both in bodies for end in both])
    radii = np.repeat([solid.radius for solid, _, _ in bodies], 2)[:, None]
    middle = 0.5 * (ends.min(axis=0) + ends.max(axis=0))
    away = ends - middle
    return middle, float((np.sqrt(np.einsum("kni,kni->kn", away, away)) + radii).max())


def simple_parts(prop: Prop) -> Sequence[Solid]:
    """Simplified bodies of a prop: a hoop's rim in fewer chords, each thick enough for its arc."""
    if prop.kind != "hoop":
        return prop.solids
    rim, chords = prop.length / 2, HOOP_CHORDS
    turns = 2 * np.pi * np.arange(chords + 1) / chords
    spots = [PropPoint(float(rim - rim * np.cos(t)), float(rim * np.sin(t))) for t in turns]
    arc = rim * (1 - np.cos(np.pi / chords))
    thick = max(SHAFT_RADIUS["hoop"] + arc, prop.wick_radius)
    return [Solid("hoop", a, b, float(thick)) for a, b in pairwise(spots)]


def balls_of(prop: Prop, motion: Motion) -> tuple[Floats, Floats]:
    """Balls that approximate a prop: centres (k·n, 3) [m] and radii (k·n,) [m]."""
    spots: list[tuple[float, float, float]] = []
    for solid in simple_parts(prop):
        start, end = np.array(solid.start[:2]), np.array(solid.end[:2])
        count = max(1, int(np.ceil(np.linalg.norm(end - start) / 0.14)))
        for k in range(1, count + 1):
            at = start + (end - start) * (k / count)
            spots.append((float(at[0]), float(at[1]), solid.radius))
    if prop.two_ended:
        spots.append((-prop.behind, 0.0, prop.shaft_radius))
    aside = crossed(motion.plane, motion.tether)
    centres = [motion.hand + a * motion.tether + c * aside for a, c, _ in spots]
    radii = np.repeat([r for _, _, r in spots], len(motion.hand))
    return np.concatenate(centres), np.asarray(radii)


def gaps_between(left: Bodies, right: Bodies, step: Floats, look: Ints) -> Floats:
    """Gaps of two props at n samples, the left one moved by a step (n, 3) each, shape (n,) [m]."""
    least: Floats = np.full(len(look), inf)
    theirs = [(b, start[look], end[look]) for b, start, end in right]
    for a, low, high in left:
        ends = low[look] + step, high[look] + step
        for b, start, end in theirs:
            if b.start == b.end:
                found = point_segment(start, *ends)
            elif a.start == a.end:
                found = point_segment(ends[0], start, end)
            else:
                found = segment_segment(*ends, start, end)[0]
            least = np.minimum(least, found - a.radius - b.radius)
    return least


def rows_of(motion: Motion, rows: slice | Ints) -> Motion:
    """Some samples of a motion."""
    return Motion(**{name: getattr(motion, name)[rows] for name in Motion.__slots__})
