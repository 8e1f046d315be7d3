"""Mirrored and retimed laws: reflected and stretched by hand, field by field and bound by bound."""

from dataclasses import dataclass
from math import inf, nan

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.laws.transforms import Mirrored, Retimed, mirrored, shifted

FIELDS = (
    "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
)  # fmt: skip
BOUNDS = Bounds(
    hand_speed=2.0, hand_acceleration=3.0, turn_rate=5.0, turn_acceleration=7.0, hand_reach=11.0,
    hand_jerk=13.0, turn_jerk=17.0, frame_rate=19.0, frame_acceleration=23.0,
)  # fmt: skip


@dataclass(frozen=True)
class Known:
    """A law whose every field is a known row of numbers at each beat."""

    period: float = 6.0

    def at(self, beats):
        row = np.asarray(beats, dtype=float)[..., None] + np.array([1.0, 2.0, 3.0])
        return Motion(**{name: row * 10.0**k for k, name in enumerate(FIELDS)})

    def bounds(self):
        return BOUNDS


LAW = Known()
BEATS = np.array([0.0, 0.5, 2.0])


def test_a_mirror_turns_x_of_what_points_and_y_and_z_of_what_turns():
    """Polar vectors change x; the plane, an axial one, changes y and z: any text on vectors."""
    mirror, own = Mirrored(LAW), LAW.at(BEATS)
    seen = mirror.at(BEATS)
    for name in FIELDS:
        signs = (1.0, -1.0, -1.0) if name == "plane" else (-1.0, 1.0, 1.0)
        assert_allclose(getattr(seen, name), getattr(own, name) * signs, rtol=1e-15, err_msg=name)
    assert mirror.period == 6.0
    assert mirror.bounds() == BOUNDS
    assert repr(mirror) == "<Mirrored Known(period=6.0)>"


def test_a_pace_scales_rates_by_itself_and_accelerations_by_its_square():
    """The chain rule."""
    law, pace, shift = Retimed(LAW, 0.7, 3.0), 3.0, 0.7
    seen, own = law.at(BEATS), LAW.at(shift + pace * BEATS)
    powers = (0, 1, 2, 0, 1, 2, 0)
    for name, power in zip(FIELDS, powers, strict=True):
        expected = getattr(own, name) * pace**power
        assert_allclose(getattr(seen, name), expected, rtol=1e-14, err_msg=name)
    assert law.period == 2.0
    assert law.bounds() == Bounds(
        hand_speed=6.0, hand_acceleration=27.0, turn_rate=15.0, turn_acceleration=63.0,
        hand_reach=11.0, hand_jerk=13.0 * 27, turn_jerk=17.0 * 27, frame_rate=57.0,
        frame_acceleration=23.0 * 9,
    )  # fmt: skip


def test_a_slower_pace_is_no_other_rule():
    law = Retimed(LAW, pace=0.5)
    assert law.period == 12.0
    assert_allclose(law.at(BEATS).hand_rate, LAW.at(BEATS / 2).hand_rate / 2)
    assert law.bounds().turn_jerk == 17.0 / 8


def test_a_shift_alone_is_the_law_later_on():
    law = Retimed(LAW, 0.7)
    seen, own = law.at(BEATS), LAW.at(BEATS + 0.7)
    for name in FIELDS:
        assert_allclose(getattr(seen, name), getattr(own, name), rtol=1e-15)
    assert (law.period, law.pace) == (6.0, 1.0)
    assert law.bounds() is BOUNDS
    assert Retimed(LAW).shift == 0.0
    assert repr(law) == "<Retimed by 0.7 beats, 1 a beat: Known(period=6.0)>"


@pytest.mark.parametrize(
    ("shift", "pace"), [(0.0, 0.0), (0.0, -1.0), (0.0, inf), (0.0, nan), (inf, 1.0), (nan, 1.0)]
)
def test_what_is_no_pace_is_refused(shift, pace):
    with pytest.raises(ValueError, match="pace must be positive"):
        Retimed(LAW, shift, pace)


def test_any_positive_pace_and_any_shift_will_do():
    assert Retimed(LAW, -3.0, 0.5).period == 12.0
    assert Retimed(LAW, 3.0, 1e-9).pace == 1e-9


def test_mirrored_twice_and_shifted_to_and_fro_is_the_law_itself():
    assert mirrored(LAW) == Mirrored(LAW)
    assert mirrored(mirrored(LAW)) is LAW
    assert shifted(LAW, 0.0) is LAW
    assert shifted(LAW, 2.0) == Retimed(LAW, 2.0)
    assert shifted(shifted(LAW, 2.0), 0.5) == Retimed(LAW, 2.5)
    assert shifted(shifted(LAW, 2.0), -2.0) is LAW
    paced = Retimed(LAW, 2.0, 3.0)
    assert shifted(paced, 0.5) == Retimed(paced, 0.5)
