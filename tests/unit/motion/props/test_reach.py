"""Distance of a hand from its shoulder, against circles and lines worked out by hand."""

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import PosedBody, Posture
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.reach import Reach, farthest_reach

BODY = Body(stature=1.7)


class Straight:
    """A hand at `place` + `speed`·t from the right shoulder; a stated bound of its acceleration."""

    def __init__(self, place, speed, period=4.0):
        self.place, self.speed = np.array(place), np.array(speed)
        self.period = period

    def at(self, beats):
        t = np.asarray(beats)[..., None]
        hand = BODY.shoulder("right") + self.place + self.speed * t
        zero = 0 * hand
        return Motion(
            hand=hand, hand_rate=zero, hand_acceleration=zero, tether=zero, tether_rate=zero,
            tether_acceleration=zero, plane=zero,
        )  # fmt: skip

    def bounds(self):
        return Bounds(
            hand_speed=0.0,
            hand_acceleration=3.0,
            turn_rate=0.0,
            turn_acceleration=0.0,
            hand_reach=0.0,
        )


def test_the_farthest_moment_and_its_error():
    """On a line the ends are farthest; error Δ²/8·|h''| with 1024 parts (linear interpolation)."""
    law = Straight((0.0, -1.0, 0.0), (0.0, 1.0, 0.0))
    found = farthest_reach(law, side="right", body=BODY)
    assert (found.distance, found.at) == pytest.approx((3.0, 4.0))
    assert found.error == pytest.approx((4 / 1024) ** 2 / 8 * 3.0, rel=1e-12)
    assert found.arm == BODY.arm_length
    part = farthest_reach(law, side="right", body=BODY, start=-2.0, end=2.0)
    assert (part.distance, part.at) == pytest.approx((3.0, -2.0))
    assert part.error == pytest.approx((4 / 1024) ** 2 / 8 * 3.0, rel=1e-12)
    later = farthest_reach(law, side="right", body=BODY, start=1.0)
    assert (later.distance, later.at) == pytest.approx((4.0, 5.0))
    short = farthest_reach(law, side="right", body=BODY, start=1.0, end=1.5)
    assert (short.distance, short.at) == pytest.approx((0.5, 1.5))
    assert short.error == pytest.approx((0.5 / 1024) ** 2 / 8 * 3.0, rel=1e-12)


def test_every_sample_is_looked_at():
    """Farthest at a grid point in the middle: 300/1024 of the span, and only there."""

    class Tent(Straight):
        def at(self, beats):
            t = 1.0 - 100 * np.abs(np.asarray(beats) - 4.0 * 300 / 1024)
            return Straight((0.0, 0.0, 0.0), (0.0, 1.0, 0.0)).at(np.maximum(t, 0.0))

    found = farthest_reach(Tent((0, 0, 0), (0, 0, 0)), side="right", body=BODY)
    assert (found.distance, found.at) == pytest.approx((1.0, 4.0 * 300 / 1024))


def test_the_side_and_the_posture_place_the_shoulder():
    law = Straight((0.0, 0.0, 0.0), (0.0, 0.0, 0.0))
    left = farthest_reach(law, side="left", body=BODY)
    assert left.distance == pytest.approx(2 * BODY.half_shoulder)
    bent = Posture(turn=0.3, lean=0.05)
    moved = PosedBody(BODY, bent).shoulder("right") - BODY.shoulder("right")
    found = farthest_reach(law, side="right", body=BODY, posture=bent)
    assert found.distance == pytest.approx(np.linalg.norm(moved))


def test_a_law_without_a_period_needs_an_end():
    law = Straight((0.0, 0.1, 0.0), (0.0, 0.0, 0.0), period=np.inf)
    with pytest.raises(ValueError, match="no period; give its end"):
        farthest_reach(law, side="right", body=BODY)
    assert farthest_reach(law, side="right", body=BODY, end=2.0).distance == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("distance", "beyond", "within"),
    [
        (0.60, False, True), (0.625, False, True), (0.63, False, False), (0.65, False, False),
        (0.66, True, False),
    ],
)  # fmt: skip
def test_what_is_proven_at_the_edges(distance, beyond, within):
    """An arm of 0.65 with an error of 0.025 (both whole binary steps apart from 0.625)."""
    found = Reach(distance=distance, error=0.025, at=0.0, arm=0.65)
    assert (found.beyond, found.within) == (beyond, within)
