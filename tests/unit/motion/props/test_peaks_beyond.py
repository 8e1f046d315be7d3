"""The largest value over pieces of a law, against a limit: nothing is missed however short, nothing told that is not so."""

from math import inf

import numpy as np
import pytest

from sequencer.motion.laws.law import Bounds
from sequencer.motion.props.peaks import Sought, peak_beyond
from sequencer.motion.props.prop import Prop

POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
STEEP = 1.00001e5  # [1/beat] slope of the spike, and a little for the sway


def bounds(slope, coarse):
    """A piece's bounds, which carry slope and bound of the value to `made_up`."""
    return Bounds(
        hand_speed=coarse, hand_acceleration=slope, turn_rate=0, turn_acceleration=0, hand_reach=0
    )


def made_up(values):
    """What is sought: values typed here, with the slope and the bound of each piece."""
    return lambda _law, _prop, _tempo, own: Sought(
        values, own.hand_acceleration, own.hand_speed, "speed"
    )


def spike(t, at=0.70001, width=5e-6):
    """1 at one moment, 0 a five millionth of a beat away from it, on a sway of half the height."""
    return 0.5 + 0.1 * np.sin(3 * t) + 0.5 * np.maximum(1 - np.abs(t - at) / width, 0.0)


PIECES = [(0.0, 0.5, bounds(0.3, 0.6)), (0.5, 1.0, bounds(STEEP, 3.0))]


def sought(values=spike, pieces=PIECES, most=0.9, share=5e-4):
    return peak_beyond(made_up(values), None, pieces, prop=POI, beats_per_second=1.0, most=most, share=share)  # fmt: skip


def test_a_spike_between_any_samples_is_found():
    top = float(spike(np.array(0.70001)))
    assert sought() == pytest.approx(top, rel=1e-3)
    assert spike(np.linspace(0, 1, 513)).max() < 0.65  # as many samples as once were taken


def test_what_is_within_the_limit_is_proven_to_be():
    top = float(spike(np.array(0.70001)))
    assert sought(most=top * 1.0001) is None
    assert sought(most=top * 0.999) == pytest.approx(top, rel=1e-3)
    assert sought(most=3.0) is None  # by the bounds alone


def test_each_piece_is_searched_with_its_own_slope():
    """A spike in a piece that is said to be flat there would not be one: the bound is believed."""
    flat = [(0.0, 0.5, bounds(0.3, 1.2)), (0.5, 1.0, bounds(0.3, 1.2))]
    assert sought(pieces=flat) is None
    steep_first = [(0.0, 0.5, bounds(STEEP, 1.2)), (0.5, 1.0, bounds(0.3, 0.7))]
    assert sought(lambda t: spike(t, at=0.2), steep_first) == pytest.approx(
        0.5 + 0.1 * np.sin(0.6) + 0.5, rel=1e-3
    )


def test_where_no_slope_is_bounded_the_bound_itself_is_told():
    assert sought(pieces=[PIECES[0], (0.5, 1.0, bounds(inf, 3.0))]) == 3.0


@pytest.mark.parametrize(("error", "told"), [(1e-5, None), (0.01, 0.905)])
def test_what_cannot_be_told_apart_for_the_error_of_the_values_is_told_by_its_bound(error, told):
    """Values of 0.895 that may be 0.905, with a limit of 0.9."""

    def rough(_law, _prop, _tempo, own):
        return Sought(lambda t: 0.895 + 0 * t, 0.01, own.hand_speed, "speed", error=error)

    found = peak_beyond(
        rough, None, [(0.0, 1.0, bounds(0.0, 3.0))], prop=POI, beats_per_second=1.0, most=0.9, share=5e-4
    )  # fmt: skip
    assert found == (told and pytest.approx(told, abs=6e-3))
