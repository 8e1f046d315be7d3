"""Periods that are searched: they fly, forward in time too, they repeat as they should, and are kept."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown import flown_motion, period_search
from sequencer.motion.flown.contact import Contact
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.symmetry import repeat_of
from sequencer.motion.laws.transforms import mirrored, shifted
from sequencer.motion.props.prop import Prop
from tests.nothing_kept import nothing_kept
from tests.unit.motion.flown.flights import (
    POI,
    flying,
    integrated,
    law_of,
    path_of,
    period_of,
)


@pytest.mark.parametrize("name", ["extension", "two-beat-weave"])
def test_integrated_forward_the_head_is_on_its_path(name):
    """Four beats of Newton's law with nothing but the hand's motion given: within a millimetre, as the design asks."""
    period = period_of(name)
    looks = np.linspace(0.0, 4.0, 17)
    off = np.linalg.norm(integrated(period, looks) - period.head.at(looks), axis=1)
    assert off.max() < 1e-3
    assert period.broken == ()


def test_a_bent_pattern_integrated_forward():
    """A head that lobes carry around is so unstable that what is rounded grows a millionfold in three beats: over one."""
    period = period_of("iso-bend-2")
    looks = np.linspace(0.5, 1.5, 9)
    off = np.linalg.norm(integrated(period, looks, tolerance=1e-7) - period.head.at(looks), axis=1)
    assert off.max() < 1e-4


def test_lobes_that_are_drawn_alike_are_flown_alike():
    period = period_of("iso-bend-2")
    repeat = repeat_of(period.law, POI.length)
    assert (repeat.parts, period.alike) == (2, 2)
    beats = np.linspace(0.0, 2.0, 40)
    here, there = period.head.at(beats), period.head.at(beats + 1.0)
    centre = repeat.centre + period.moved
    assert_allclose((here - centre) @ repeat.turn.T, there - centre, atol=1e-9)


def test_petals_that_stand_are_flown_as_gravity_lets_them():
    """On a wall each petal sees another gravity: they differ by more than a thousandth of the tether."""
    period = period_of("inspin-flower-2")
    repeat = repeat_of(period.law, POI.length)
    assert (repeat.parts, period.alike) == (2, 1)
    beats = np.linspace(0.0, 3.0, 60)
    here, there = period.head.at(beats), period.head.at(beats + 1.5)
    off = (here - repeat.centre) @ repeat.turn.T - (there - repeat.centre)
    assert np.linalg.norm(off, axis=1).max() > 0.01


def test_the_flight_is_nearer_to_both_than_either_alone():
    """Least is the sum of squares of head and hand: below that of a head, or of a hand, exactly on the drawing."""
    period = period_of("two-beat-weave")
    beats = np.linspace(0.0, 2.0, 400, endpoint=False)
    law = period.law.at(beats)
    flown = period.head_off[0] ** 2 + period.hand_off[0] ** 2
    beat = period.flying.beat
    exact = law.head_acceleration(POI.length) / beat**2 + [0.0, 0.0, 9.80665]
    pull = np.linalg.norm(exact, axis=-1, keepdims=True)
    hand = law.head(POI.length) + POI.length * exact / pull
    assert flown < np.mean(np.sum((hand - law.hand) ** 2, axis=-1))
    assert period.residual < 1e-5


@pytest.mark.parametrize("name", ["extension", "two-beat-weave"])
def test_a_mirrored_law_is_flown_as_the_mirror_image(name):
    """The body is its own mirror image in x = 0, gravity too."""
    right = period_of(name)
    left = flown_period(mirrored(right.law), flying(side="left"))
    beats = np.linspace(0.0, right.law.period, 50)
    assert_allclose(left.head.at(beats), right.head.at(beats) * [-1, 1, 1], atol=1e-5)
    assert left.least_pull == pytest.approx(right.least_pull, rel=1e-4)


def test_a_law_that_starts_later_is_flown_later():
    now = period_of("extension")
    later = flown_period(shifted(now.law, 0.25), flying())
    beats = np.linspace(0.0, 1.0, 50)
    first = now.law.at(beats).hand - later.law.at(beats).hand
    assert np.abs(first).max() > 0.1
    moved = -0.25 if np.allclose(now.law.at(beats - 0.25).hand, later.law.at(beats).hand) else 0.25
    # other knots, the same optimum
    assert_allclose(later.head.at(beats), now.head.at(beats + moved), atol=1e-3)


@pytest.mark.parametrize(
    ("tempo", "limits", "broken"),
    [
        (12.0, FlownLimits(), "pull"),
        (100.0, FlownLimits(hand_acceleration=2.0), "acceleration"),
        (100.0, FlownLimits(hand_speed=0.1), "speed"),
    ],
)
def test_what_cannot_be_flown_is_reported_and_not_raised(tempo, limits, broken):
    period = flown_period(law_of("extension"), flying(tempo=tempo, limits=limits))
    assert broken in period.broken
    assert np.all(np.isfinite(period.head.coefficients))


def test_a_rigid_prop_or_a_law_that_ends_is_the_callers_mistake():
    staff = Prop(length=0.6, mass=0.5, wick_radius=0.05, kind="staff", behind=0.6)
    with pytest.raises(ValueError, match="a staff is turned by the hand: it flies as drawn"):
        flown_period(law_of("extension"), flying(prop=staff))
    endless = SimpleNamespace(period=np.inf)
    with pytest.raises(ValueError, match="does not repeat"):
        flown_period(endless, flying())


def test_it_is_kept_by_its_content(monkeypatch):
    first = flown_period(law_of("static-spin"), flying())
    monkeypatch.setattr(period_search, "_searched", None)  # a search would fail
    again = flown_period(law_of("static-spin"), flying())
    beats = np.linspace(0.0, 1.0, 20)
    assert np.array_equal(again.head.coefficients, first.head.coefficients)
    assert_allclose(again.flight(beats).hand, first.flight(beats).hand)
    assert (again.alike, again.residual) == (first.alike, first.residual)
    for other in (flying(tempo=101.0), flying(prop=replace(POI, mass=0.21)), flying(side="left")):
        with pytest.raises(TypeError):
            flown_period(law_of("static-spin"), other)


def test_it_is_the_same_in_every_digit_each_time():
    with nothing_kept():
        one, two = (flown_period(law_of("static-spin"), flying()) for _ in range(2))
    assert one.head.coefficients.tobytes() == two.head.coefficients.tobytes()


def test_head_and_hand_keep_clear_of_body_and_floor_where_the_drawing_does():
    period = period_of("two-beat-weave")
    drawn = period.law.at(np.linspace(0.0, 2.0, 300))
    room = flying().space(0.03)
    near = min(0.03, room.gaps(drawn.hand, drawn.head(POI.length)).min())
    assert period.body_gap > near - 0.01
    assert path_of(period, np.linspace(0, 2, 300))[0][:, 2].min() > POI.wick_radius


def test_knots():
    """Twelve a beat and twelve a turn of the prop, one more for what the bound of its rate is rounded up by."""

    def spans(name, finer=1):
        law = law_of(name)
        repeat = repeat_of(law, POI.length)
        grid = period_search._grid_of(law, repeat, 0.6, finer)
        assert grid.step * grid.spans == pytest.approx(0.6 * law.period / repeat.parts)
        return grid.spans

    assert 12 <= spans("static-spin") <= 13  # one turn in one beat
    assert spans("static-spin", 2) == 2 * spans("static-spin")
    assert spans("antispin-flower-3") >= 12 * 0.999
    turns = law_of("pro-bend-2").bounds().turn_rate / (2 * np.pi)
    assert 1.4 < turns < 1.6  # a beat, of which a part has one
    assert spans("pro-bend-2") == np.ceil(12 * turns)


def test_a_pattern_is_moved_out_of_what_it_touches():
    """A wall ahead of hand and head: it moves back by nearly as much as they are in it, and never to the other hand."""
    hand, head = np.array([[0.3, 0.5, 1.2]]), np.array([[0.3, 0.9, 1.2]])

    def wall(_hand, heads):
        deep = heads[:, 1] - 0.8
        at = np.flatnonzero(deep > 0)
        return Contact(at, deep[at], np.ones(len(at)), np.tile([0.0, -1.0, 0.0], (len(at), 1)))

    moved = period_search._clear((hand, head), wall, "right")
    assert moved[1] == pytest.approx(-0.1, abs=0.01)
    assert_allclose(moved[[0, 2]], 0.0, atol=1e-12)

    def inner(_hand, heads):
        return Contact(np.zeros(1, int), np.ones(1), np.ones(1), np.array([[-1.0, 0.0, 0.0]]))

    assert_allclose(period_search._clear((hand, head), inner, "right"), 0.0, atol=1e-12)
    assert period_search._clear((hand, head), inner, "left")[0] == pytest.approx(
        -period_search.FARTHEST_MOVED, abs=1e-9
    )


def test_a_pattern_that_would_linger_by_the_body_is_flown_farther_from_it(monkeypatch):
    """Any speed counts as slow here: a bend that is drawn 5 cm and more from the body is flown so, and not 3 cm away."""
    near = period_of("pro-bend-3")
    assert near.body_gap == pytest.approx(0.03, abs=0.003)
    assert not near.lingers
    monkeypatch.setattr(flown_motion, "SLOW_PASS", 100.0)
    assert replace(near).lingers
    with nothing_kept():
        far = flown_period(law_of("pro-bend-3"), flying())
    assert far.body_gap > 0.05
    assert not far.broken
