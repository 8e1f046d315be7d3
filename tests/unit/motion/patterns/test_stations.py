"""Station patterns: a toroid is the exact special case; lists that are no build are refused."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.phases import CosineSteps, Spline
from sequencer.motion.patterns.build_steps import build_steps
from sequencer.motion.patterns.library import cycle_beats, law_for, patterns_from
from sequencer.motion.patterns.stations import StationPoint, station_law
from sequencer.motion.patterns.toroid import toroid

BODY = Body(stature=1.7)


def ins(lobes, bend, start=1, cycles=1):
    """The ins of a toroid as stations."""
    sign = {"pro": 1, "anti": -1}[bend]
    return [
        StationPoint(
            hand=360 * k / lobes,
            bend=sign * (90 - start * 90 * np.cos(np.pi * k)),
            phase=180 + 360 * k,
        )
        for k in range(cycles * lobes + 1)
    ]


@pytest.mark.parametrize(
    ("lobes", "bend", "cycles"), [(4, "pro", 1), (3, "pro", 2), (5, "anti", 2)]
)
@pytest.mark.parametrize("start", [1, -1])
def test_a_toroid_given_by_its_ins_is_the_same_curve(lobes, bend, cycles, start):
    beats = float(cycles * lobes)
    law = station_law(ins(lobes, bend, start, cycles), hand_radius=0.2, beats=beats, body=BODY)
    exact = toroid(
        lobes=lobes, bend=bend, start=start, hand_radius=0.2, beats=float(lobes), body=BODY
    )
    at = np.linspace(-3, 2 * beats, 331)
    own, true = law.at(at), exact.at(at)
    for name in (
        "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
    ):  # fmt: skip
        assert_allclose(getattr(own, name), getattr(true, name), atol=1e-9, err_msg=name)


def uneven():
    rows = [(0, 0, 180), (70, 120, 430), (200, 60, 800), (360, 0, 1260)]
    return [StationPoint(hand=h, bend=b, phase=p) for h, b, p in rows]


def test_an_uneven_build_is_bounded_and_its_rates_are_right():
    law = station_law(uneven(), hand_radius=0.2, beats=3.0, body=BODY)
    beats, step = np.linspace(0.01, 2.99, 401), 1e-6
    near = np.min(np.abs(beats[:, None] - [0, 0.694, 1.722, 3]), axis=1) > 1e-3
    before, now, after = law.at(beats - step), law.at(beats), law.at(beats + step)
    assert_allclose(now.tether_rate, (after.tether - before.tether) / (2 * step), atol=1e-6)
    differences = (after.tether_rate - before.tether_rate) / (2 * step)
    assert_allclose(now.tether_acceleration[near], differences[near], atol=1e-3)
    bounds = law.bounds()
    assert np.linalg.norm(now.tether_rate, axis=-1).max() <= bounds.turn_rate
    assert np.linalg.norm(now.tether_acceleration, axis=-1).max() <= bounds.turn_acceleration
    assert np.linalg.norm(now.hand_acceleration, axis=-1).max() <= bounds.hand_acceleration


@pytest.mark.parametrize(
    ("rows", "message"),
    [
        ([(0, 0, 180), (360, 0, 540)], "at least 3 stations"),
        ([(0, 0, 180), (90, 90, 360), (350, 0, 540)], "the last station must repeat the first: its hand"),
        ([(0, 0, 180), (90, 90, 360), (360, 0, 500)], "its phase is off by -40.0"),
        ([(0, 0, 180), (90, 90, 100), (360, 0, 540)], "stations 1 and 2: hand and phase must increase"),
        ([(0, 0, 180), (90, 90, 180), (360, 0, 540)], "stations 1 and 2: hand and phase must increase"),
        ([(0, 0, 180), (0, 90, 270), (360, 0, 540)], "stations 1 and 2: hand and phase must increase"),
        ([(0, 0, 180), (90, 270, 360), (360, 360, 540)], "the direction jumps: the plane would bend by 270"),
        ([(0, 0, 180), (180, 0, 360), (360, 0, 540)], "stations 1 and 2: their planes are parallel"),
    ],
)  # fmt: skip
def test_what_is_no_build_is_refused(rows, message):
    points = [StationPoint(hand=h, bend=b, phase=p) for h, b, p in rows]
    with pytest.raises(ValueError, match=message):
        station_law(points, hand_radius=0.2, beats=2.0, body=BODY)


def test_station_patterns_of_the_users_own_have_build_steps():
    rows = [{"hand": s.hand, "bend": s.bend, "phase": s.phase} for s in ins(4, "pro", -1)]
    book = patterns_from({"mine": {"stations": rows, "summary": "four ins"}})
    assert cycle_beats("mine", {}, book) == 4
    law = law_for("mine", {"hand_radius": 0.25}, side="left", body=BODY, book=book)
    assert law.period == 4
    steps = build_steps("mine", {}, book=book)
    assert [s.half for s in steps] == ["in"] * 5
    assert [s.performer for s in steps[:3]] == [
        "wheel plane, forward", "floor plane, anticlockwise from above", "wheel plane, backward",
    ]  # fmt: skip
    with pytest.raises(ValueError, match="station 1 must give hand, bend and phase"):
        patterns_from({"bad": {"stations": [{"hand": 0}]}})
    with pytest.raises(ValueError, match="give either a law, or stations"):
        patterns_from({"bad": {"stations": rows, "law": "orbit"}})


@pytest.mark.parametrize("kind", [CosineSteps, Spline])
def test_phases_refuse_what_does_not_rise(kind):
    with pytest.raises(ValueError, match="must increase"):
        kind((0.0, 0.0, 1.0), (0.0, 1.0, 2.0))
    with pytest.raises(ValueError, match="as many values as knots"):
        kind((0.0,), (0.0,))
