"""Slack, reach, own body and tangles, against brute force that shares no code with the search."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.performers.feasibility import (
    GAP_ERROR,
    body_gap,
    frame_rates,
    props_gap,
    reach_left,
    shape_of,
)
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.reach import farthest_reach
from sequencer.motion.props.tension import beats_a_second, hand_work, lowest_tempo, pull
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.unit.motion.performers.drawn import pull_left

BODY = Body(stature=1.7)
PROP = Prop(length=0.55, mass=0.2, wick_radius=0.05)


def trajectory(name, side="right", beats=4.0, **parameters):
    law = law_for(name, parameters, side=side, body=BODY)
    return Trajectory((Span(start=0.0, end=beats, law=law, origin=0.0, kind="block", label=name),))


def distance_to_segments(points, low, high):
    """Distance of points from segments by a fine grid on the segment: slow and independent."""
    share = np.linspace(0, 1, 41)[:, None, None]
    along = low + share * (high - low)
    return np.linalg.norm(points[None] - along, axis=-1).min(axis=0)


def sampled_body_gap(name, parameters, beats):
    motion = law_for(name, parameters, side="right", body=BODY).at(beats)
    least = np.inf
    for capsule in BODY.capsules:
        low, high = np.array(capsule.start), np.array(capsule.end)
        for share in np.linspace(0, 1, 21):
            points = motion.hand + share * PROP.length * motion.tether
            radius = PROP.wick_radius if share == 1 else 0.01
            gap = distance_to_segments(points, low, high) - capsule.radius - radius
            least = min(least, float(gap.min()))
    return least


@pytest.mark.parametrize("name", ["pro-bend-4", "buzzsaw", "anti-bend-3", "iso-bend-5"])
def test_own_body_gap_is_the_sampled_one(name):
    found = body_gap(trajectory(name), [0.0, 4.0], prop=PROP, body=BODY)[0]
    expected = sampled_body_gap(name, {}, np.linspace(0, 4, 801))
    assert expected < 0
    assert abs(found.value - expected) <= GAP_ERROR + 0.004  # the grids of the reference
    assert BODY.capsules[found.label].name in {"trunk", "head", "leg"}


def test_what_stays_clear_is_told_so():
    found = body_gap(trajectory("extension"), [0.0, 4.0], prop=PROP, body=BODY)[0]
    assert found.label == -1
    assert found.value >= 0
    assert np.isnan(found.beat)


def test_tangle_is_the_sampled_one():
    left, right = trajectory("butterfly", "left"), trajectory("butterfly", "right", ahead=-0.14)
    found = props_gap((left, PROP), (right, PROP), [0.0, 4.0])[0]
    beats = np.linspace(0, 4, 4001)
    a, b = left.at(beats), right.at(beats)
    heads = np.linalg.norm(a.head(0.55) - b.head(0.55), axis=-1) - 0.1
    other = distance_to_segments(a.head(0.55), b.hand, b.head(0.55)) - 0.06
    another = distance_to_segments(b.head(0.55), a.hand, a.head(0.55)) - 0.06
    expected = min(heads.min(), other.min(), another.min())
    assert expected < 0
    assert found.value <= expected + GAP_ERROR


def test_reach_left_at_its_edge():
    """A circle as wide as the arm is just in reach where it lies beside the shoulder."""
    arm = BODY.arm_length
    wide = trajectory("orbit", hand_radius=arm)
    assert abs(reach_left(wide, [0.0, 4.0], side="right", body=BODY)[0].value) < 0.003
    beyond = trajectory("orbit", hand_radius=arm, across=0.05)
    found = reach_left(beyond, [0.0, 4.0], side="right", body=BODY)[0]
    assert_allclose(found.value, -0.05, atol=0.003)
    law = beyond.spans[0].law
    reach = farthest_reach(law, side="right", body=BODY)
    assert reach.beyond
    assert_allclose(reach.distance, arm + 0.05, atol=1e-6)


@given(st.sampled_from(sorted(patterns())), st.floats(30, 200))
@settings(max_examples=40)
def test_pull_is_never_missed(name, tempo):
    """The proven smallest tension agrees with 20 001 samples, on either side of slack."""
    own = trajectory(name, beats=8.0)
    rate = tempo / 60
    found = pull_left(
        own, [0.0, 8.0], prop=PROP, beats_per_second=lambda t: np.full(np.shape(t), rate)
    )[0]
    sampled = pull(
        own.at(np.linspace(0, 8, 20_001)), length=0.55, mass=1.0, beats_per_second=rate
    ).min()
    if sampled < -0.06:
        assert abs(found.value - sampled) <= 0.06
    else:
        assert found.value >= -0.06


def test_tempo_changes_are_seen_beat_by_beat():
    """One slow beat in eight makes the tether slack in that beat alone."""
    own = trajectory("extension", beats=8.0)

    def rates(beats):
        return np.where((beats >= 5) & (beats < 6), 0.4, 2.0)

    found = pull_left(own, [0.0, 8.0], prop=PROP, beats_per_second=rates)[0]
    assert found.value < 0
    assert 5 <= found.beat <= 6


def test_lowest_tempo_has_no_mercy_with_a_stall():
    stall = law_for("stall", {}, side="right", body=BODY)
    assert lowest_tempo(stall, length=0.55).lowest == np.inf


@pytest.mark.parametrize("name", ["overhead-spin", "corkscrew", "carry", "pendulum"])
def test_a_tether_that_never_rises_is_taut_at_every_tempo(name):
    """Level or hanging all along: the search must end at 0, which no relative error ever meets."""
    found = lowest_tempo(law_for(name, {}, side="right", body=BODY), length=0.5)
    assert found.lowest == 0
    assert found.error <= 0.1


def test_a_tether_that_rises_a_little_is_not_taut_at_every_tempo():
    """A flat spin tilted by α: taut from √(9.80665·sin α/r)/2π turns a second on, be α as small as it likes."""
    for tilt in (1e-3, 0.1):
        normal, across = (0.0, -np.sin(tilt), np.cos(tilt)), (0.0, np.cos(tilt), np.sin(tilt))
        law = ComposedLaw(
            hand=HandPath((0.3, 0.3, 1.8)), tether=across, plane=normal,
            turns=(Turn(normal, Wave(rate=2 * np.pi)),), period=1.0,
        )  # fmt: skip
        found = lowest_tempo(law, length=0.5)
        true = 60 * np.sqrt(9.80665 * np.sin(tilt) / 0.5) / (2 * np.pi)
        assert true <= found.lowest <= true * (1 + 1e-4)


def test_a_hand_that_overtakes_a_hanging_head_ends_the_tempi():
    """A prop that hangs from a hand on a circle is carried up to ω²·R = g, whatever its tether."""
    law = law_for("carry", {"hand_radius": 0.4}, side="right", body=BODY, beats=4.0)
    found = lowest_tempo(law, length=0.5)
    true = 60 * np.sqrt(9.80665 / 0.4) / (2 * np.pi / 4)
    assert 0.995 * true <= found.highest <= true
    assert (
        lowest_tempo(law_for("extension", {}, side="right", body=BODY), length=0.5).highest
        == np.inf
    )


@pytest.mark.parametrize("tempo", [0, -10, float("nan"), float("inf")])
def test_tempo_must_be_positive(tempo):
    with pytest.raises(ValueError, match="tempo must be positive"):
        beats_a_second(tempo)
    with pytest.raises(ValueError, match="tempo must be positive"):
        hand_work(law_for("toroid", {}, side="right", body=BODY), length=0.5, mass=0.2, tempo=tempo)


@pytest.mark.parametrize("field", ["length", "mass", "wick_radius"])
@pytest.mark.parametrize("value", [0.0, -1.0, float("nan"), float("inf")])
def test_props_are_positive(field, value):
    with pytest.raises(ValueError, match=f"{field} must be positive"):
        Prop(**{"length": 0.5, "mass": 0.2, "wick_radius": 0.05, field: value})


def test_hot_radius_is_wick_and_flame():
    assert Prop(length=0.5, mass=0.2, wick_radius=0.05, flame_reach=0.4).hot_radius == 0.45
    with pytest.raises(ValueError, match="flame_reach must not be negative"):
        Prop(length=0.5, mass=0.2, wick_radius=0.05, flame_reach=-0.1)


@pytest.mark.parametrize("name", ["pro-bend-4", "anti-bend-3", "toroid"])
def test_no_verdict_depends_on_where_a_course_is_cut(name):
    """The smallest value of the whole is the smallest of its stretches, however they are cut."""
    own = trajectory(name, beats=8.0)
    rates = lambda t: np.full(np.shape(t), 0.6)  # noqa: E731 - a slow steady tempo
    whole = (
        body_gap(own, [0.0, 8.0], prop=PROP, body=BODY)[0].value,
        pull_left(own, [0.0, 8.0], prop=PROP, beats_per_second=rates)[0].value,
    )
    for edges in ([0.0, 1.7, 3.3, 8.0], [0.0, *np.linspace(0.1, 7.9, 40).tolist(), 8.0]):
        cut = (
            min(one.value for one in body_gap(own, edges, prop=PROP, body=BODY)),
            min(one.value for one in pull_left(own, edges, prop=PROP, beats_per_second=rates)),
        )
        assert_allclose(cut, whole, atol=0.06)
        assert abs(cut[0] - whole[0]) <= 2 * GAP_ERROR


def test_a_flat_prop_is_never_turned_over_at_once():
    """Two laws that meet in hand and tether but not in their planes: only a flat prop needs a blend."""
    from dataclasses import replace

    from sequencer.motion.laws.composed import ComposedLaw, HandPath
    from sequencer.motion.trajectories.one_link.link_limits import hand_space_of

    still = ComposedLaw(
        hand=HandPath((0.3, 0.4, 1.2)), tether=(0.0, 0.0, -1.0), plane=(-1.0, 0.0, 0.0), turns=(),
        period=1.0,
    )  # fmt: skip
    laws = still, replace(still, plane=(0.0, 1.0, 0.0))
    spans = tuple(
        Span(start=2.0 * k, end=2.0 * k + 2, law=law, origin=0.0, kind="block", label="still")
        for k, law in enumerate(laws)
    )
    fan = Prop(kind="fan", length=0.4, mass=0.5, wicks=5, spread=2.0, wick_radius=0.03)
    beats = np.linspace(1.5, 2.5, 1001)
    for prop, most in ((PROP, np.inf), (fan, 0.02)):
        own = Trajectory(spans, hand_space_of(BODY, "right", prop))
        turned = np.linalg.norm(np.diff(own.at(beats).plane, axis=0), axis=-1).max()
        assert (turned > 1.0) == (most == np.inf)
        assert turned <= most
    assert shape_of(fan, frame_rates(own, [0.0, 4.0])) == fan.solids
