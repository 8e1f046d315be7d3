"""Even ways: how a dart is measured, paths on which the hand does not stand, and that a show's limits choose them."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.one_link import link_search
from sequencer.motion.trajectories.one_link.hand_paths import (
    MOVING,
    Piecewise,
    hand_paths,
    moving_paths,
    whole,
)
from sequencer.motion.trajectories.one_link.link_law import LinkLaw, hand_at
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits, PaceLimits, hand_space_of
from sequencer.motion.trajectories.one_link.link_search import DARTS, FAR_ENOUGH, darting
from sequencer.motion.trajectories.one_link.links import found_link
from sequencer.motion.trajectories.one_link.sphere import quintics

BODY = Body(stature=1.7)
SHOULDER = BODY.shoulder("right")


def at(*off):
    """A place so far from the shoulder."""
    return SHOULDER + np.array(off)


def state(place, rate=(0.0, 0.0, 0.0)):
    rows = {each: np.zeros((1, 3)) for each in Motion.__dataclass_fields__}
    return Motion(**{**rows, "hand": np.array([place]), "hand_rate": np.array([rate])})


def law(path, beats=2.0):
    flat = whole(np.zeros((1, 6, 2)))
    return LinkLaw(beats=beats, hand=path, frame=np.eye(3), angles=flat, tilt=(0.0, 0.0))


def straight(far):
    """From stop to stop by minimum jerk."""
    ends = np.zeros((2, 3, 3))
    ends[1, 0, 0] = far
    return whole(quintics(ends[:1], ends[1:]))


def step(x):
    """The minimum-jerk step 10x³ − 15x⁴ + 6x⁵ (Flash and Hogan 1985, from memory)."""
    return 10 * x**3 - 15 * x**4 + 6 * x**5


def test_a_minimum_jerk_way_darts_as_its_formula_says():
    """Quickest quarter about the middle, over the middle three quarters."""
    middle = step(0.625) - step(0.375)
    wanted = 3 * middle / (step(0.875) - step(0.125))
    assert darting(law(straight(1.0))) == pytest.approx(wanted, rel=1e-3)
    assert wanted == pytest.approx(1.39, abs=0.01)


def test_a_hand_that_stands_and_then_darts_is_told_from_one_that_moves():
    first, last = state(at(0.4, 0.2, 0.0)), state(at(-0.4, 0.2, 0.0))
    two = np.array([2.0])
    stops = hand_paths(first, last, two, shoulder=SHOULDER, arm=BODY.arm_length)
    moves = moving_paths(first, last, two, shoulder=SHOULDER, arm=BODY.arm_length)
    # The way of the middle run is covered in half, a quarter and three quarters of the link.
    assert [path.knots for path in stops[1:]] == [(0, 4, 12, 16), (0, 6, 10, 16), (0, 2, 14, 16)]
    assert darting(law(stops[2])) == pytest.approx(3.0, abs=0.01)
    assert darting(law(stops[1])) > DARTS
    assert all(darting(law(path)) < DARTS for path in (stops[0], *moves))


def test_a_short_way_needs_no_haste():
    assert darting(law(straight(FAR_ENOUGH))) == 1.0


def test_moving_paths_meet_their_ends_and_go_straight_at_one_speed_between():
    first = state(at(0.3, 0.3, 0.1), (1.0, 0.5, 0.0))
    last = state(at(-0.3, 0.2, 0.2), (0.0, 1.0, -1.0))
    beats = np.array([2.0])
    found = moving_paths(first, last, beats, shoulder=SHOULDER, arm=BODY.arm_length)
    assert [path.knots[1] for path in found] == list(MOVING)
    for path in found:
        place, rate, _ = hand_at(path, 2.0, np.array([0.0, 1.0]))
        assert_allclose(place, [first.hand[0], last.hand[0]], atol=1e-12)
        assert_allclose(rate, [first.hand_rate[0], last.hand_rate[0]], atol=1e-9)
        low, high = path.knots[1] / 16, path.knots[2] / 16
        _, rate, push = hand_at(path, 2.0, np.linspace(low + 1e-9, high - 1e-9, 50))
        assert_allclose(rate, np.repeat(rate[:1], 50, 0), atol=1e-7)
        assert np.abs(push).max() < 1e-6
        x = np.linspace(0, 1, 4001)
        _, rate, push = hand_at(path, 2.0, x)
        assert np.abs(np.diff(rate, axis=0)).max() < 0.02  # no jump at the knots
        assert np.abs(np.diff(push, axis=0)).max() < 0.5


def test_a_show_asks_for_even_ways_and_a_pattern_by_itself_does_not():
    """Of ways through the same places, the one that does not dart; with no limits of a show the search is as it was."""
    darts = {False: 0, True: 0}
    prop = Prop(length=0.5, mass=0.2, wick_radius=0.05)
    room = hand_space_of(BODY, "right", prop)
    names = [
        "windmill",
        "overhead-weave",
        "extension",
        "antispin-flower-4",
        "butterfly",
        "two-beat-weave",
    ]
    laws = [law_for(name, {}, side="right", body=BODY, tether=prop.length) for name in names]
    for k, before in enumerate(laws):
        for after in laws[k + 1 :]:
            ends = before.at(np.array(0.4)), after.at(np.array(0.2))
            for own in (None, PaceLimits().at(1.6)):
                found = found_link(*ends, 2.0, room, own)
                darts[own is not None] += darting(found.law) > DARTS
    assert darts[True] == 0 < darts[False]


def test_within_a_shows_limits_a_link_that_breaks_one_still_keeps_clear_where_it_can(monkeypatch):
    """Displaced paths are tried although a limit is broken; without limits of a show they are not."""
    tried = []
    inner = link_search._Search.best

    def best(own, asides, ways, *, moving=False):
        tried.append((asides is not None, moving))
        found = inner(own, asides, ways, moving=moving)
        return found._replace(found=found.found._replace(kept=False, gap=-1.0))

    monkeypatch.setattr(link_search._Search, "best", best)
    prop = Prop(length=0.5, mass=0.2, wick_radius=0.05)
    room = hand_space_of(BODY, "right", prop)
    law_ = law_for("windmill", {}, side="right", body=BODY, tether=prop.length)
    ends = law_.at(np.array(0.3)), law_.at(np.array(0.8))
    link_search.searched(*ends, 1.0, room, LinkLimits(), None)
    assert tried == [(False, False)]
    tried.clear()
    link_search.searched(*ends, 1.0, room, LinkLimits(hand_speed=3.0), None)
    assert (True, False) in tried
    assert (False, True) in tried


def test_a_path_of_one_piece_is_as_whole():
    assert isinstance(straight(1.0), Piecewise)
