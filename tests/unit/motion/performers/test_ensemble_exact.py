"""The points of a cast at the very edges of blends, bridges and slices."""

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.ensemble import Ensemble
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from tests.unit.motion.performers.drawn import Loose, trajectory

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
STAFF = Prop(kind="staff", length=0.6, behind=0.7, mass=0.8, wick_radius=0.05)


def cast():
    bent = Carriage(
        body=BODY,
        held=(
            HeldPosture(0.5, 1.5, Posture(turn=0.3, lean=0.05)),
            HeldPosture(3.0, 6.0, Posture()),
        ),
    )
    moves = (Move(start=1.0, end=6.0, place=(1.0, 4.0), facing=2.0, through=((0.5, 3.0),)),)
    walking, standing = WalkPath((0.5, 2.0), 0.3, moves), WalkPath((3.0, 1.0), -1.0)
    return [
        Dancer(name="a", body=BODY, props={}, trajectories={}, floor=walking, carriage=bent),
        Dancer(
            name="b", body=BODY, props={"left": POI, "right": STAFF}, floor=walking, carriage=bent,
            trajectories={"left": trajectory(1, 2, 3), "right": Loose()},
        ),
        Dancer(
            name="c", body=Body(stature=1.6, seated=True), props={"right": POI}, floor=standing,
            trajectories={"right": trajectory(3, 1)},
        ),
        Dancer(
            name="d", body=Body(stature=1.8), props={"left": STAFF}, floor=standing,
            trajectories={"left": trajectory(2, 5, 4)}, carriage=None,
        ),
        Dancer(
            name="e", body=BODY, props={"right": STAFF}, floor=walking, carriage=bent,
            trajectories={"right": trajectory(4, 4, 1)},
        ),
    ]  # fmt: skip


@pytest.mark.parametrize("kept", [8, 10])
@pytest.mark.parametrize("some", [(0, 1, 2, 3, 4), (0,), (1, 4), (2,), (3,)])
def test_points_are_those_of_each_alone(kept, some):
    """Every half beat and either side of every boundary, some dancers only; to the rounding."""
    dancers = [cast()[k] for k in some]
    beats = np.unique([b + e for b in np.arange(-1, 13, 0.5) for e in (-0.3, -1e-6, 0.0, 0.2)])
    who = np.repeat(np.arange(len(dancers)), len(beats))
    own = Ensemble(dancers)
    points, rates = own.stage_points(who, np.tile(beats, len(dancers)), kept)
    assert points.shape == rates.shape == (len(who), kept, 3)
    for k, dancer in enumerate(dancers):
        at, moving = dancer.stage_points(beats)
        assert_allclose(points[who == k], at[:kept].transpose(1, 0, 2), atol=1e-12)
        assert_allclose(rates[who == k], moving[:kept].transpose(1, 0, 2), atol=1e-11)
    slopes = [dancer.body.elbow_slope for dancer in dancers]
    assert_array_equal(own.elbow_slopes, slopes)


def test_all_points_are_kept_unless_told():
    dancers = cast()
    who, beats = np.array([1, 3, 3]), np.array([0.7, 0.2, 3.9])
    points, rates = Ensemble(dancers).stage_points(who, beats)
    assert points.shape == rates.shape == (3, 10, 3)
    assert_allclose(points[0], dancers[1].stage_points(0.7)[0], atol=1e-12)
    assert_allclose(points[2], dancers[3].stage_points(3.9)[0], atol=1e-12)


def test_a_mix_by_the_product_rule():
    """d = m/|m| with m = (1 − s)·d₁ + s·d₂: differences of the mixed places over 2·10⁻⁵ beats."""
    dancers = [cast()[3]]
    blends = [blend for blend in dancers[0].trajectories["left"].blends if blend.half > 0]
    assert any(blend.bridge is None for blend in blends)
    beats = np.concatenate([b.boundary + b.half * np.linspace(-0.9, 0.9, 7) for b in blends])
    own, step, who = Ensemble(dancers), 1e-5, np.zeros(len(beats), dtype=np.int64)
    rates = own.stage_points(who, beats)[1]
    later, sooner = (own.stage_points(who, beats + s)[0] for s in (step, -step))
    assert_allclose(rates, (later - sooner) / (2 * step), atol=1e-7)
    assert isinstance(dancers[0].trajectories["left"].at(beats), Motion)
