"""Tables of trajectories by hand, and the points of a cast at the very edges of blends, bridges and slices."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.composed import ComposedLaw, HandPath, Slide
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers import ensemble
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.ensemble import Ensemble
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
STAFF = Prop(kind="staff", length=0.6, behind=0.7, mass=0.8, wick_radius=0.05)


def law(seed):
    """A tether on a circle from a hand that sways, every number drawn."""
    draw = np.random.default_rng(seed)
    axis = np.array([0.2, 1.0, 0.1 * seed])
    axis /= np.linalg.norm(axis)
    tether = np.cross(axis, [0.0, 0.0, 1.0])
    tether /= np.linalg.norm(tether)
    sway = Wave(0.0, 0.0, ((0.2, float(draw.uniform(1, 3)), 0.3),))
    hand = HandPath(tuple(draw.uniform(0.1, 0.4, 3).tolist()), (Slide((0.3, 0.5, 1.0), sway),))
    turn = Turn(
        tuple(axis.tolist()), Wave(float(draw.uniform(0, 1)), float(draw.uniform(1, 3)), ())
    )
    return ComposedLaw(
        hand=hand,
        tether=tuple(tether.tolist()),
        plane=tuple(axis.tolist()),
        turns=(turn,),
        period=4.0,
    )


def table(**more):
    """Three spans from 0, 4 and 8; a mix about 4 of half 0.5, a bridge about 8 of half 1, by hand."""
    given = {
        "edges": np.array([4.0, 8.0]), "laws": np.array([1, 2, 3]),
        "origins": np.array([0.0, 3.0, 8.5]), "boundaries": np.array([4.0, 8.0]),
        "halves": np.array([0.5, 1.0]), "bridges": np.array([-1, 0]), "befores": np.array([0, 1]),
    }  # fmt: skip
    return ensemble._Table(**{**given, **more})


def test_which_law_holds_at_each_instant():
    """A mix goes by minimum jerk: at its middle ½, at the rate 15/8 over its whole width of a beat."""
    beats = np.array([-1.0, 3.5, 3.75, 4.0, 4.25, 4.5, 5.0, 7.0, 7.25, 8.0, 8.99, 9.0, 20.0])
    found = table().laws_at(beats)
    assert found.law.tolist() == [1, 1, 1, 1, 1, 2, 2, 2, 0, 0, 0, 3, 3]
    own = [-1.0, 3.5, 3.75, 4.0, 4.25, 1.5, 2.0, 4.0, 0.25, 1.0, 1.99, 0.5, 11.5]
    assert_allclose(found.beats, own)
    assert found.other.tolist() == [-1, -1, 2, 2, 2, *[-1] * 8]
    assert_allclose(found.other_beats, [0, 0, 0.75, 1.0, 1.25, *[0] * 8])
    quarter = 10 / 4**3 - 15 / 4**4 + 6 / 4**5
    assert_allclose(found.share, [0, 0, quarter, 0.5, 1 - quarter, *[0] * 8])
    slope = 30 * (0.25 * 0.75) ** 2
    assert_allclose(found.slope, [0, 0, slope, 15 / 8, slope, *[0] * 8])


def test_spans_that_are_not_blended():
    none = np.empty(0)
    bare = table(boundaries=none, halves=none, bridges=none, befores=none)
    found = bare.laws_at(np.array([3.99, 4.0, 8.0]))
    assert found.law.tolist() == [1, 2, 3]
    assert_allclose(found.beats, [3.99, 1.0, -0.5])
    assert found.other.tolist() == [-1] * 3
    assert_array_equal([found.other_beats, found.share, found.slope], np.zeros((3, 3)))
    wide = table(halves=np.array([0.25, 1.0])).laws_at(np.array([3.8, 4.0]))  # half a beat wide
    assert_allclose(wide.slope, [30 * (0.1 * 0.9) ** 2 / 0.5, 15 / 4])
    assert_allclose(wide.share[1], 0.5)


class Loose:
    """A trajectory of no spans."""

    def at(self, beats):
        return law(9).at(np.asarray(beats) * 0.5)

    def pieces(self, start, end):
        raise NotImplementedError


def trajectory(*seeds):
    return Trajectory(
        tuple(
            Span(start=4.0 * k, end=4.0 * k + 4, origin=4.0 * k - 0.5, kind="block", label=f"{seed}",
                 law=law(seed))
            for k, seed in enumerate(seeds)
        )
    )  # fmt: skip


def test_a_trajectory_as_a_table():
    """Laws go into one list after those that are there: spans first, then what bridges them."""
    spans = [
        replace(span, origin=origin)
        for span, origin in zip(
            trajectory(1, 2, 2, 5, 4).spans, (-0.5, 3.5, 3.5, 1.0, 2.0), strict=True
        )
    ]
    own, laws = Trajectory(tuple(spans)), [law(7)]
    found = ensemble._table(own, laws)
    assert laws[1:6] == [law(1), law(2), law(2), law(5), law(4)]
    blended = [(k, blend) for k, blend in enumerate(own.blends) if blend.half > 0]
    bridged = [blend.bridge for _, blend in blended if blend.bridge is not None]
    assert [id(each) for each in laws[6:]] == [id(each) for each in bridged]
    assert found.laws.tolist() == [1, 2, 3, 4, 5]
    assert found.edges.tolist() == [4.0, 8.0, 12.0, 16.0]
    assert found.origins.tolist() == [-0.5, 3.5, 3.5, 1.0, 2.0]
    assert (
        found.befores.tolist() == [k for k, _ in blended] == [0, 2, 3]
    )  # the second goes on in the third
    assert found.boundaries.tolist() == [blend.boundary for _, blend in blended]
    assert found.halves.tolist() == [blend.half for _, blend in blended]
    assert 0 < len(bridged) < len(blended), [blend.bridge for blend in own.blends]
    numbers = iter(range(6, 9))
    assert found.bridges.tolist() == [
        -1 if blend.bridge is None else next(numbers) for _, blend in blended
    ]
    loose, one = Loose(), [law(7)]
    alone = ensemble._table(loose, one)
    assert one[1] is loose
    assert alone.laws.tolist() == [1]
    assert alone.origins.tolist() == [0.0]
    assert (alone.edges.tolist(), alone.boundaries.tolist(), alone.halves.tolist()) == ([], [], [])
    assert (alone.bridges.tolist(), alone.befores.tolist()) == ([], [])


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


def test_a_mix_with_the_first_of_all_laws():
    """Law 0 a quarter mixed into law 1 at the rate 2: hands by the product rule, tethers brought back to length 1."""
    own = Ensemble([cast()[3]])
    two, three = np.array([1, 1]), np.array([0.3, 0.3])
    mixed = own._props(
        ensemble._LawAt(
            two, three, np.array([0, -1]), np.array([0.7, 0.0]), np.array([0.25, 0.0]),
            np.array([2.0, 0.0]),
        )
    )  # fmt: skip
    one, other = own._laws.at(two[:1], three[:1]), own._laws.at(two[:1] - 1, np.array([0.7]))
    assert_allclose(mixed.hand[:, 0], (0.75 * one.hand + 0.25 * other.hand)[:, 0])
    rate = 0.75 * one.hand_rate + 0.25 * other.hand_rate + 2 * (other.hand - one.hand)
    assert_allclose(mixed.hand_rate[:, 0], rate[:, 0])
    m = (0.75 * one.tether + 0.25 * other.tether)[:, 0]
    m1 = 0.75 * one.tether_rate + 0.25 * other.tether_rate + 2 * (other.tether - one.tether)
    m1, size = m1[:, 0], np.linalg.norm(m)
    assert_allclose(mixed.tether[:, 0], m / size)
    assert_allclose(mixed.tether_rate[:, 0], m1 / size - (m @ m1) * m / size**3, atol=1e-14)
    for part, plain in zip(mixed, one, strict=True):
        assert_array_equal(part[:, 1], plain[:, 0])


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
