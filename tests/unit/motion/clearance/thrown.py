"""Dancers with lit props, and a projectile written out: what tests of heads let go share.

Source: uniform acceleration, any mechanics text. The reference shares the laws of hands and walks with what it judges,
which tests of their own hold; velocities are central differences of places, and the ground is met where the height is 0.
"""

import numpy as np

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.timing.tempo import TempoMap

G = 9.80665  # [m/s²] standard gravity
QUICKENING = TempoMap(
    np.cumsum(np.r_[0.5, np.linspace(0.62, 0.45, 40)])
)  # [s] 97 to 133 beats a minute
STEADY = TempoMap.steady(120.0, beats=64)
POI = Prop(length=0.55, mass=0.2, wick_radius=0.05)
PROPS = {
    "poi": POI,
    "staff": Prop(kind="staff", length=0.7, behind=0.5, mass=0.6, wick_radius=0.04),
    "fan": Prop(kind="fan", length=0.4, mass=0.4, wicks=5, spread=2.0, wick_radius=0.02),
    "hoop": Prop(kind="hoop", length=0.85, mass=0.6, wicks=4, wick_radius=0.03),
}
WALK = WalkPath(
    (1.0, 4.0),
    0.3,
    (Move(start=2.0, end=7.0, place=(3.0, 5.0), facing=2.5, through=((1.5, 5.5),)),),
)


def danced(*names, prop=POI, floor=WALK, lit=((0.0, 12.0),), beats=4.0):
    """One after the other in the right hand, four beats each, blended where they meet."""
    body = Body(stature=1.7)
    spans = tuple(
        Span(
            start=4.0 * k,
            end=4.0 * k + 4.0,
            law=law_for(name, {}, side="right", body=body, tether=0.55, beats=beats),
            origin=4.0 * k,
            kind="block",
            label=name,
        )
        for k, name in enumerate(names)
    )
    return Dancer(
        name="Ada", body=body, props={"right": prop}, trajectories={"right": Trajectory(spans)}, floor=floor, lit=lit,
    )  # fmt: skip


def thrown(dancer, tempo, beats):
    """Releases and landings of every wick, each shape (k, n, 2)."""
    step = 1e-6
    seconds = tempo.seconds_from_beats(beats + step) - tempo.seconds_from_beats(beats - step)
    (before, at, after) = (dancer.wick_places(beats + d)["right"] for d in (-step, 0.0, step))
    velocity = (after - before) / seconds[:, None]
    z, rise = np.maximum(at[..., 2], 0.0), velocity[..., 2]
    aloft = [
        max(np.roots([-G / 2, up, high]).real)
        for up, high in zip(rise.ravel(), z.ravel(), strict=True)
    ]
    return at[..., :2], at[..., :2] + velocity[..., :2] * np.reshape(aloft, z.shape)[..., None]


def instants(tempo, low, high, n):
    """Even ones, none so near a beat that a difference would mix two tempi."""
    beats = np.linspace(low + 2e-6, high - 2e-6, n)
    return beats[np.abs(beats - np.round(beats)) > 2e-6]


CASES = {
    "poi": (danced("three-beat-weave", "antispin-flower-4", "pendulum"), QUICKENING),
    "staff": (
        danced("extension", "extension", prop=PROPS["staff"], lit=((0.5, 3.0), (5.0, 8.0))),
        STEADY,
    ),
    "fan": (danced("extension", prop=PROPS["fan"], lit=((0.0, 4.0),)), STEADY),
    "hoop": (danced("windmill", prop=PROPS["hoop"], lit=((0.0, 4.0),)), QUICKENING),
}
