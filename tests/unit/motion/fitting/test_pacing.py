"""Beats of a cycle: the usual ones where they hold, else halves, doubles and shares that do."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.fitting import pacing
from sequencer.motion.fitting.pacing import CYCLE_SHARES, Pace, least_pull, twist, usual_cycle
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import cycle_beats, law_for
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import GRAVITY

POI = Prop(length=0.45, mass=0.2, wick_radius=0.05)
STAFF = Prop(length=0.5, behind=0.5, mass=0.8, wick_radius=0.04, kind="staff")


def beats(name, tempo, given=None, props=(POI,), **kwargs):
    return usual_cycle(name, given or {}, tempo=tempo, props=props, **kwargs)


def test_usual_beats_stay_where_they_hold():
    assert beats("static-spin", 100) == cycle_beats("static-spin", {}) == 1
    assert beats("antispin-flower-4", 100) == 4


def test_a_slack_pattern_is_danced_twice_as_fast():
    """A cat eye of 45 cm keeps (r/2)·ω² over g: 2π/T·rate ≥ √(2·9.80665/0.45) = 6.60 rad/s, which 2 beats at
    100 a minute (5.24 rad/s) lack and one has."""
    assert 2 * np.pi / 2 * 100 / 60 < np.sqrt(2 * 9.80665 / 0.45) < 2 * np.pi * 100 / 60

    assert beats("cat-eye", 100) == 1
    assert beats("cat-eye", 160) == 2


def test_a_pattern_too_quick_is_danced_at_half():
    assert beats("stall", 100) == 4
    assert beats("stall", 80) == 2
    assert beats("stall", 80, pace=Pace(turns=1.5)) == 4


def test_every_limit_counts():
    usual = cycle_beats("antispin-flower-5", {})
    for limit in ("hand_speed", "hand_acceleration", "turns", "head_speed"):
        assert beats("antispin-flower-5", 160, pace=Pace(**{limit: 0.05})) == usual  # none holds
    for limit, most in (
        ("hand_speed", 1.0),
        ("hand_acceleration", 3.0),
        ("turns", 1.5),
        ("head_speed", 6.0),
    ):
        given = {"hand_radius": 0.35}  # else a narrower circle would do
        assert beats("antispin-flower-5", 160, given, pace=Pace(**{limit: most})) > usual, limit


def test_the_shortest_tether_of_all_decides():
    short = Prop(length=0.20, mass=0.2, wick_radius=0.05)
    assert beats("antispin-flower-2", 100, props=(POI,)) == 2
    assert beats("antispin-flower-2", 100, props=(POI, short)) == 1


def test_what_is_held_is_never_slack():
    assert beats("cat-eye", 60, props=(STAFF,)) == 2


def test_unknown_patterns_and_parameters_are_refused():
    with pytest.raises(ValueError, match="did you mean"):
        beats("cat-eys", 100)
    with pytest.raises(ValueError, match="lag"):
        beats("static-spin", 100, {"lagg": 3})


def test_shares_begin_with_the_usual_beats():
    assert CYCLE_SHARES[0] == 1.0


def test_pull_is_newtons():
    """Against the second difference of the head's path, T/m = −d·(a − g), all by numbers."""
    law = law_for("antispin-flower-3", {}, side="right", body=Body(stature=1.7), tether=0.45)
    rate, step = 1.5, 1e-4
    t = np.linspace(0, law.period, 4000, endpoint=False)
    heads = [law.at(t + k * step).head(0.45) for k in (-1, 0, 1)]
    push = (heads[0] - 2 * heads[1] + heads[2]) / (step / rate) ** 2 + np.array([0, 0, 9.80665])
    expected = np.min(-np.sum(law.at(t).tether * push, axis=1))

    assert_allclose(least_pull(law.at(t), length=0.45, beats_per_second=rate), expected, rtol=1e-4)


def test_a_stall_rests_at_its_top_and_a_slow_spin_does_not():
    body = Body(stature=1.7)
    t = np.linspace(0, 4, 400, endpoint=False)
    stall = law_for("stall", {}, side="right", body=body, tether=0.45, beats=4.0)
    spin = law_for("static-spin", {}, side="right", body=body, tether=0.45, beats=4.0)

    assert least_pull(stall.at(t), length=0.45, beats_per_second=1.6) == np.inf
    assert least_pull(spin.at(t), length=0.45, beats_per_second=1.6) < 0


def test_a_prop_that_never_holds_does_not_decide_for_the_others():
    """Ten metres of rope are too fast at any number of beats that a poi of 45 cm can be spun in."""
    rope = Prop(length=10.0, mass=0.2, wick_radius=0.05)
    assert beats("stall", 100, props=(POI, rope)) == beats("stall", 100) == 4


def test_a_tether_that_is_pulled_off_its_top_is_no_stall():
    """It stands there, but the hand is pushed up past it: more than its weight is missing."""
    zero, up = np.zeros((64, 3)), np.tile([0.0, 0.0, 1.0], (64, 1))
    turning = np.where(np.arange(64)[:, None] == 0, 0.0, [3.0, 0.0, 0.0])
    turning = np.broadcast_to(turning, (64, 3))
    top = np.where(np.arange(64)[:, None] == 0, up, -up)

    def pulled(push):
        motion = Motion(
            hand=zero, hand_rate=zero, hand_acceleration=push * up, tether=top, tether_rate=turning,
            tether_acceleration=zero, plane=np.tile([0.0, 1.0, 0.0], (64, 1)),
        )  # fmt: skip
        return least_pull(motion, length=0.5, beats_per_second=1.0)

    assert pulled(0.0) == np.inf
    assert pulled(-1.0) == np.inf
    assert pulled(2.0) == -GRAVITY - 2.0


def test_both_hands_of_a_hybrid_must_hold():
    """At 160 beats a minute the right hand alone could go on in two beats."""
    assert cycle_beats("extension-with-antispin", {}) == 2
    assert beats("extension-with-antispin", 160) == 4


def test_twist_is_the_moment_of_the_masses_about_the_hand():
    """Σ m·u·d × (h″ + u·d″) over a rod cut into pieces, and the weight's lever by its level part.

    Source: moment of inertial forces about a point, any mechanics text; only the two sizes are added, so
    that it bounds every facing.
    """
    club = Prop(length=0.5, behind=0.12, mass=0.6, wick_radius=0.04, kind="club")
    spots = [spot.along for spot in club.heads]
    cuts = np.linspace(-club.behind, club.length, 4001)
    along = np.concatenate([(cuts[1:] + cuts[:-1]) / 2, spots])
    frame = club.mass - club.head_mass * len(spots)
    masses = np.concatenate([np.full(4000, frame / 4000), [club.head_mass] * len(spots)])
    draw = np.random.default_rng(3)
    tether = draw.normal(size=(7, 3))
    tether /= np.linalg.norm(tether, axis=1)[:, None]
    hand, turning = draw.normal(size=(2, 7, 3))
    zero = np.zeros((7, 3))
    for n in range(7):
        motion = Motion(
            hand=zero[:1], hand_rate=zero[:1], hand_acceleration=hand[n : n + 1], plane=zero[:1],
            tether=tether[n : n + 1], tether_rate=zero[:1], tether_acceleration=turning[n : n + 1],
        )  # fmt: skip
        at = along[:, None] * tether[n]
        pushed = masses[:, None] * (hand[n] + along[:, None] * turning[n]) * 1.7**2
        moving = np.linalg.norm(np.cross(at, pushed).sum(axis=0))
        down = np.array([0.0, 0.0, -GRAVITY])
        weight = np.linalg.norm(np.cross(at, masses[:, None] * down).sum(axis=0))
        assert_allclose(twist(motion, club, 1.7), moving + weight, rtol=1e-6)


def test_twist_is_the_largest_of_a_period_and_holds_a_prop_within_its_limit():
    """A staff turned about its middle by a steady hand has no lever of weight: I·ω′ alone."""
    level = np.tile([1.0, 0.0, 0.0], (3, 1))
    turning = np.array([[0.0, 1, 0], [0, 3, 0], [0, 2, 0]])
    motion = Motion(
        hand=0 * level, hand_rate=0 * level, hand_acceleration=0 * level, plane=0 * level,
        tether=level, tether_rate=0 * level, tether_acceleration=turning,
    )  # fmt: skip
    assert_allclose(twist(motion, STAFF, 2.0), 4 * STAFF.inertia * 3)
    heavy = Prop(length=0.5, behind=0.0, mass=0.8, wick_radius=0.04, kind="club")
    least = heavy.mass * heavy.centre_of_mass * GRAVITY
    law = law_for("static-spin", {}, side="right", body=Body(stature=1.7), tether=0.5, beats=1.0)
    needed = twist(law.at(np.arange(256) / 256), heavy, 100 / 60)
    assert needed >= least * 0.99
    for torque, held in ((needed * 1.001, True), (needed * 0.999, False)):
        assert pacing._holds([law], heavy, 100 / 60, Pace(torque=torque)) == held


@pytest.mark.parametrize(("turning", "rests"), [(0.34, True), (0.36, False), (0.9, False)])
def test_a_tether_rests_that_turns_slower_than_a_third_of_pi_a_beat(turning, rests):
    """At its top, one of 64 looks; elsewhere it turns ten times as fast."""
    zero, up = np.zeros((64, 3)), np.array([0.0, 0.0, 1.0])
    first = np.arange(64)[:, None] == 0
    motion = Motion(
        hand=zero, hand_rate=zero, hand_acceleration=zero, tether=np.where(first, up, -up),
        tether_rate=np.where(first, [turning * np.pi, 0, 0], [10 * np.pi, 0, 0]),
        tether_acceleration=zero, plane=np.tile([0.0, 1.0, 0.0], (64, 1)),
    )  # fmt: skip
    found = least_pull(motion, length=0.5, beats_per_second=1.0)
    expected = np.inf if rests else 0.5 * (turning * np.pi) ** 2 - GRAVITY
    assert found == pytest.approx(expected)


def test_a_tether_rests_that_turns_less_than_half_as_fast_as_it_ever_does():
    for share, rests in ((0.49, True), (0.51, False)):
        zero, up = np.zeros((64, 3)), np.array([0.0, 0.0, 1.0])
        first = np.arange(64)[:, None] == 0
        motion = Motion(
            hand=zero, hand_rate=zero, hand_acceleration=zero, tether=np.where(first, up, -up),
            tether_rate=np.where(first, [share, 0, 0], [1.0, 0, 0]), tether_acceleration=zero,
            plane=np.tile([0.0, 1.0, 0.0], (64, 1)),
        )  # fmt: skip
        assert np.isinf(least_pull(motion, length=0.5, beats_per_second=1.0)) == rests
