"""Records of a fit: what fits and what does not, just met and just missed, and what a question holds."""

from dataclasses import replace
from math import inf, nextafter
from types import SimpleNamespace

import pytest

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import UPRIGHT
from sequencer.motion.fitting import fits
from sequencer.motion.fitting.fits import Dance, Fit, Margins
from sequencer.motion.patterns.library import find, law_for
from sequencer.motion.props.prop import Prop

POI = Prop(length=0.5, mass=0.2, wick_radius=0.05, flame_reach=0.3)


def dance(sides=SIDES, given=None, **more):
    return Dance(
        parts={side: ("pro-bend-4", given or {}) for side in sides}, body=Body(stature=1.7),
        props=dict.fromkeys(sides, POI), **{"cycle": 2.0, "tempo": (90.0, 100.0), **more},
    )  # fmt: skip


def test_limits():
    """Approved: 5 cm are good, 2 cm and the proofs' error the least, a centimetre of the arm to spare."""
    assert (fits.GOOD, fits.LEAST_MARGIN, fits.REACH_SPARE) == (0.05, 0.026, 0.01)
    assert (dance().torque, dance().timing, dance().direction) == (8.0, "split", "same")
    assert Fit() == Fit(values={}, posture=UPRIGHT, margins=Margins(inf, inf, inf, inf))


@pytest.mark.parametrize(
    ("margins", "least"),
    [
        ((0.3, 0.2, 0.01, 1.0), 0.2),
        ((0.2, 0.3, 0.01, 1.0), 0.2),
        ((0.2, 0.3, 0.0, 1.0), -0.01),
        ((-0.2, 0.3, 0.0, 1.0), -0.2),
        ((inf, inf, 5.0, 1.0), inf),
    ],
)
def test_the_least_margin(margins, least):
    assert Margins(*margins).least == pytest.approx(least)
    assert Margins(0.2, 0.3, nextafter(0.01, 0), 1.0).least < 0


@pytest.mark.parametrize(
    ("least", "pull", "good"),
    [
        (0.026, 1e-9, True), (nextafter(0.026, 0), 1.0, False), (0.026, 0.0, False),
        (0.5, -1.0, False), (0.5, inf, True),
    ],
)  # fmt: skip
def test_what_fits(least, pull, good):
    assert Fit(margins=Margins(least, inf, 0.1, pull)).fits == good


def test_sides_are_in_order():
    assert dance(("right", "left")).sides == ("left", "right")
    assert dance(("right",)).sides == ("right",)


def test_laws_take_values_below_what_is_set():
    """The same hand as the law that is built with both."""
    asked = dance(("right",), {"up": 0.1})
    law = asked.laws({"right": {"up": 0.3, "ahead": 0.05}})["right"]
    own = law_for(
        "pro-bend-4",
        {"up": 0.1, "ahead": 0.05},
        side="right",
        body=asked.body,
        beats=2.0,
        tether=0.5,
    )
    assert law.period == own.period
    assert law.at([0.3]).hand == pytest.approx(own.at([0.3]).hand)
    assert asked.laws({})["right"].at([0.3]).hand[0, 1] == pytest.approx(
        law.at([0.3]).hand[0, 1] - 0.05
    )


def test_what_is_open_is_not_set_and_of_this_law():
    names = {p.name for p in find("pro-bend-4").parameters}
    asked = dance(given={"up": 0.1, "from": 30})
    assert set(asked.open("left")) == names - {"up", "from"}
    assert asked.values("left")["up"] == 0.1
    assert asked.values("right")["from"] == 30
    assert asked.values("right")["ahead"] == asked.open("right")["ahead"].default


def test_tempi_are_rounded_to_whole_beats_and_cycles_to_millionths():
    found = dance(tempo=(0.4, 100.6), cycle=1.23456789).rounded
    assert (found.tempo, found.cycle) == ((1.0, 101.0), 1.234568)
    assert dance(tempo=(1.4, 2.4)).rounded.tempo == (1.0, 2.0)
    assert dance(cycle=1.0000004).rounded.cycle == 1.0


def test_a_question_is_the_same_in_any_order_and_without_flames():
    one = dance(given={"up": 0.1, "ahead": 0.2})
    two = replace(
        dance(("right", "left"), {"ahead": 0.2, "up": 0.1}),
        props=dict.fromkeys(SIDES, replace(POI, flame_reach=0.0)),
    )
    assert one.question == two.question
    assert replace(one, torque=7.0).question != one.question
    assert "flame_reach=0.0" in one.question


def test_a_pattern_in_words_is_its_law_fixed_values_defaults_and_room():
    kind = SimpleNamespace(name="orbit", stations=("s",))
    hands = {side: SimpleNamespace(kind=kind, fixed={"b": 2, "a": side}) for side in SIDES}
    pattern = SimpleNamespace(
        hand=hands.get, parameters=[SimpleNamespace(name="up", default=0.1)], offset_limits="room"
    )
    expected = (("orbit", [("a", "left"), ("b", 2)], ("s",)), [("up", 0.1)], "room")
    assert fits._pattern_text(pattern, "left") == repr(expected)
