"""What a hand holds, from the words of a show file to the prop that the laws see."""

from math import radians

import numpy as np
import pytest
from numpy.testing import assert_allclose
from pydantic import ValidationError

from sequencer.facts.flames import FASTEST_HEAD
from sequencer.geometry.bodies import Body
from sequencer.motion.course import Course, Span
from sequencer.motion.library import law_for
from sequencer.show.model import Dancer, Fire
from sequencer.show.props import DEFAULTS, KINDS, Prop
from sequencer.show.wicks import fastest_wick, flame_reach
from sequencer.timing.tempo import TempoMap


def test_every_kind_has_sizes():
    assert set(DEFAULTS) == set(KINDS)
    for kind in KINDS:
        given = {"tether": 0.6} if "tether" in DEFAULTS[kind] else {}
        held = Prop(kind=kind, **given).held()
        assert held.kind == kind
        assert held.farthest > 0.3


def test_old_files_mean_the_same():
    held = Prop(tether=0.55).held(0.4)
    assert (held.kind, held.length, held.mass, held.wick_radius) == ("poi", 0.55, 0.2, 0.05)
    assert held.hot_radius == pytest.approx(0.45)
    assert held.behind == 0


def test_a_staff_is_held_in_its_middle_unless_said():
    held = Prop(kind="staff", length="1.5 m").held()
    assert (held.length, held.behind) == (0.75, 0.75)
    off = Prop(kind="staff", length="1.5 m", grip="30 cm").held()
    assert_allclose((off.length, off.behind), (1.2, 0.3))
    end = Prop(kind="staff", length=1.5, grip=0).held()
    assert (end.length, end.behind) == (1.5, 0)


def test_club_fan_and_hoop():
    club = Prop(kind="club").held()
    assert_allclose((club.length, club.behind), (0.45, 0.1))
    fan = Prop(kind="fan", spread=90, wicks=3).held()
    assert (fan.wicks, fan.spread) == (3, radians(90))
    hoop = Prop(kind="hoop", diameter=0.9).held()
    assert (hoop.length, len(hoop.heads)) == (0.9, 4)


def test_a_hand_may_hold_nothing():
    single = Dancer(name="Ada", stature=1.7, right=Prop(kind="staff"))
    assert single.held("left") is None
    assert list(single.props) == ["right"]
    both = Dancer(name="Ada", stature=1.7, prop=Prop(tether=0.5), left=Prop(kind="fan"))
    assert [both.props[side].kind for side in both.props] == ["fan", "poi"]
    with pytest.raises(ValidationError, match="left, right or each"):
        Dancer(name="Ada", stature=1.7)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"kind": "poi"}, "Field required"),
        ({"kind": "hoop", "tether": 0.5}, "a hoop has no tether; it has diameter"),
        ({"kind": "poi", "tether": 0.5, "mass": 0.5}, "a poi has no mass"),
        ({"kind": "club", "grip": 0.6}, "only 0.55 m"),
        ({"kind": "fan", "spread": 5}, "5° is outside 10 … 180°"),
    ],
)
def test_what_does_not_belong_is_refused(given, words):
    with pytest.raises(ValidationError, match=words):
        Prop(**given)


def test_a_fast_head_draws_its_flame_out():
    """Two metres of rope twice round a second are 25 m/s; a poi stays under what is taken for all."""
    body = Body(stature=1.7)
    law = law_for("static-spin", {}, side="right", body=body, beats=1.0)
    course = Course((Span(start=0.0, end=8.0, law=law, origin=0.0, kind="block", label="spin"),))
    tempo = TempoMap(np.arange(0.0, 30.0, 0.5), first=0, bars=(0,), metre=4)
    rope, poi = Prop(kind="rope dart", tether=2.0), Prop(tether=0.55)
    speed = fastest_wick(rope.held(), course, ((0.0, 4.0),), tempo)
    assert speed == pytest.approx(2 * np.pi * 2 * 2.0, rel=1e-6)
    assert speed > FASTEST_HEAD > fastest_wick(poi.held(), course, ((0.0, 4.0),), tempo)
    fire = Fire(fuel="kerosene", flame=0.4)
    assert flame_reach(rope, fire, speed=speed) > flame_reach(rope, fire)
    assert fastest_wick(rope.held(), course, (), tempo) == 0
