"""Tension, throws and circles against textbook examples.

Sources: OpenStax, College Physics 2e, chapter 6 (examples 6.2, 6.3, 6.4, problem on a merry-go-round);
vertical circle and conical pendulum: LibreTexts, General Physics I, 41.3, and school-physics notes on
circular motion; range with release height: projectile motion, any mechanics text (from memory).
"""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.tension import (
    GRAVITY,
    farthest_flight,
    force_across,
    hand_work,
    lowest_tempo,
    pull,
)

BODY = Body(stature=1.7)


def circle(rate, axis=(0.0, -1.0, 0.0), tether=(1.0, 0.0, 0.0)):
    """A static spin of `rate` turns a beat."""
    return ComposedLaw(
        hand=HandPath((0.0, 0.0, 1.4)),
        tether=tether,
        plane=axis,
        turns=(Turn(axis, Wave(rate=2 * np.pi * rate)),),
        period=1 / rate,
    )


@pytest.mark.parametrize(
    ("speed", "radius", "acceleration"),
    [(25.0, 500.0, 1.25), (2 * np.pi * 1250 * 0.075, 0.075, 4.6264e6)],
    ids=["example 6.2, a car in a curve", "example 6.3, an ultracentrifuge"],
)
def test_centripetal_acceleration(speed, radius, acceleration):
    """The head's acceleration on a static circle is v²/r."""
    rate = speed / (2 * np.pi * radius)  # turns a second, one beat a second
    felt = circle(rate).at(np.array([0.3])).head_acceleration(radius)

    assert_allclose(np.linalg.norm(felt), acceleration, rtol=1e-4)


@pytest.mark.parametrize(
    ("mass", "radius", "turns", "force"),
    [(22.0, 1.25, 40 / 60, 482.5), (22.0, 8.0, 3 / 60, 17.37)],
    ids=["merry-go-round, fast", "merry-go-round, slow"],
)
def test_merry_go_round(mass, radius, turns, force):
    """In the floor plane the pull is m·ω²·r, printed 483 N and 17.4 N."""
    law = circle(turns, axis=(0.0, 0.0, 1.0))
    tension = pull(law.at(np.array([0.1])), length=radius, mass=mass, beats_per_second=1.0)

    assert_allclose(tension, force, rtol=2e-3)


@pytest.mark.parametrize(("turns", "slack"), [(0.50, True), (0.60, False)])
def test_loop_the_loop(turns, slack):
    """A 0.75 m circle needs 2.712 m/s (0.576 turns a second) at the top, or the string goes slack."""
    law = circle(1.0)
    least = lowest_tempo(law, length=0.75)
    tension = pull(law.at(np.linspace(0, 1, 4001)), length=0.75, mass=0.2, beats_per_second=turns)

    assert bool(np.min(tension) < 0) is slack
    assert_allclose(least.lowest / 60, np.sqrt(GRAVITY / 0.75) / (2 * np.pi), rtol=1e-5)
    assert_allclose(
        least.lowest / 60, 0.576, rtol=1e-3
    )  # T25 of the facts sheet: three printed digits
    assert (turns * 60 < least.lowest) is slack


def test_tension_at_top_and_bottom_of_a_vertical_circle():
    """m(v²/r − g) at the top, m(v²/r + g) at the bottom."""
    law = circle(1.0)
    top, bottom = law.at(np.array([0.25, 0.75])).tether[:, 2]
    tension = pull(law.at(np.array([0.25, 0.75])), length=0.75, mass=0.2, beats_per_second=1.5)
    own = (2 * np.pi * 1.5) ** 2 * 0.75

    assert_allclose([top, bottom], [1, -1], atol=1e-12)
    assert_allclose(tension, [0.2 * (own - GRAVITY), 0.2 * (own + GRAVITY)], rtol=1e-12)


def test_conical_pendulum():
    """0.060 kg on 0.90 m round a path of 0.90 m: printed 0.596 N, about 9.1°, period 1.892 s."""
    radius = 0.90 / (2 * np.pi)
    half = np.arcsin(radius / 0.90)
    period = 2 * np.pi * np.sqrt(0.90 * np.cos(half) / GRAVITY)
    law = ComposedLaw(
        hand=HandPath((0.0, 0.0, 2.0)),
        tether=(float(np.sin(half)), 0.0, -float(np.cos(half))),
        plane=(float(np.cos(half)), 0.0, float(np.sin(half))),
        turns=(Turn((0.0, 0.0, 1.0), Wave(rate=2 * np.pi)),),
        period=1.0,
    )
    motion = law.at(np.linspace(0, 1, 9))
    tension = pull(motion, length=0.90, mass=0.060, beats_per_second=1 / period)

    assert_allclose(tension, 0.5956, rtol=1e-3)  # T24 of the facts sheet, printed for g 9.80
    assert_allclose(np.degrees(half), 9.158, rtol=1e-3)
    assert_allclose(period, 1.892, rtol=1e-3)
    # a passive tether gives it all: nothing is needed across, and the hand may stay where it is
    assert_allclose(
        force_across(motion, length=0.90, mass=0.060, beats_per_second=1 / period), 0, atol=1e-12
    )
    assert hand_work(law, length=0.90, mass=0.060, tempo=60 / period).largest < 1e-12


def thrown(place, velocity):
    """Range of a projectile over level ground: any mechanics text."""
    rise = velocity[:, 2]
    time = (rise + np.sqrt(rise**2 + 2 * GRAVITY * place[:, 2])) / GRAVITY
    return np.linalg.norm(velocity[:, :2], axis=-1) * time


def test_let_go_is_a_throw():
    """v 10.838 m/s from 1.5 m flies 13.40 m at most (any angle), 11.98 m from the ground."""
    assert_allclose(farthest_flight(10.838, 1.5), 13.40, rtol=1e-3)
    assert_allclose(farthest_flight(10.838, 0.0), 10.838**2 / 9.80665, rtol=1e-12)
    law = law_for("static-spin", {}, side="right", body=BODY)
    motion = law.at(np.linspace(0, 1, 20_001))
    flights = thrown(motion.head(1.15), motion.head_rate(1.15) * 1.5)
    speed = 2 * np.pi * 1.5 * 1.15
    highest = float(motion.head(1.15)[:, 2].max())

    assert_allclose(speed, 10.838, rtol=1e-4)
    assert np.max(flights) <= farthest_flight(speed, highest) + 1e-12
    assert np.max(flights) > 0.95 * farthest_flight(speed, float(motion.hand[0, 2]))


# Figures that the design of this project fixes, at 100 beats a minute, one loop a beat, tether 0.55 m,
# hand circle 0.6 m, 0.2 kg, wall plane: hand work largest and RMS [cm]; lowest tempo [beats a minute].
@pytest.mark.parametrize(
    ("name", "parameters", "largest", "rms"),
    [
        ("static-spin", {}, 9.0, 6.3),
        ("antispin-flower-4", {"hand_radius": 0.6}, 22, 12),
        ("iso-bend-4", {"hand_radius": 0.6}, 31, 19),
        ("pro-bend-4", {"hand_radius": 0.6}, 43, 24),
    ],
)
def test_hand_work_of_the_design(name, parameters, largest, rms):
    law = law_for(name, parameters, side="right", body=BODY)
    work = hand_work(law, length=0.55, mass=0.2, tempo=100)
    digit = 0.05 if isinstance(largest, float) else 0.5

    assert abs(100 * work.largest - largest) <= digit
    assert abs(100 * work.rms - rms) <= digit


def test_static_hand_work_in_closed_form():
    """For a static circle the hand is off by r·|unit(a − g) + d|, largest where g is across the tether."""
    law = law_for("static-spin", {}, side="right", body=BODY)
    own = (2 * np.pi * 100 / 60) ** 2 * 0.55
    angle = np.arcsin(GRAVITY / own)  # between a − g and −d at most

    work = hand_work(law, length=0.55, mass=0.2, tempo=100)
    assert_allclose(work.largest, 0.55 * 2 * np.sin(angle / 2), rtol=1e-5)


@pytest.mark.parametrize(
    ("name", "tempo"),
    [
        ("static-spin", 40.33),
        ("pro-bend-4", 40.44),
        ("anti-bend-4", 44.12),
        ("antispin-flower-4", 55.76),
    ],
)
def test_lowest_tempo_of_the_design(name, tempo):
    parameters = {} if name == "static-spin" else {"hand_radius": 0.6}
    law = law_for(name, parameters, side="right", body=BODY)
    found = lowest_tempo(law, length=0.55)

    assert abs(found.lowest - tempo * np.sqrt(GRAVITY / 9.81)) <= 0.005  # printed for g 9.81
    # just below it is slack somewhere, just above nowhere, on a grid that knows nothing of the proof
    beats = np.linspace(0, law.period, 100_001)
    low, high = (
        np.min(pull(law.at(beats), length=0.55, mass=0.2, beats_per_second=(found.lowest + d) / 60))
        for d in (-0.01, 0.01)
    )
    assert low < 0 < high
