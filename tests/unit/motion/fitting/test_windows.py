"""Windows: their ends as a law built with them has it, words that lie within, and what opens one."""

import numpy as np
import pytest

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.fitting import kept_fits, search, windows
from sequencer.motion.fitting.fits import LEAST_MARGIN, REACH_SPARE, Dance, Fit, Margins
from sequencer.motion.fitting.sampled_dance import SampledDance
from sequencer.motion.fitting.search import fitted
from sequencer.motion.fitting.windows import Window, ways_out, window_of
from sequencer.motion.patterns.library import cycle_beats
from sequencer.motion.props.prop import Prop

POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)


@pytest.fixture(autouse=True)
def nothing_kept(monkeypatch, tmp_path):
    monkeypatch.setattr(kept_fits, "folder", lambda: tmp_path / "fits")
    monkeypatch.setattr(search, "_KEPT", {})


def dance(name, *, stature=1.7, given=None, sides=SIDES, tempo=100.0):
    return Dance(
        parts={side: (name, given or {}) for side in sides},
        cycle=cycle_beats(name, given or {}),
        tempo=(tempo, tempo),
        body=Body(stature=stature),
        props=dict.fromkeys(sides, POI),
    )


@pytest.mark.parametrize("name", ["ahead", "up", "hand_radius"])
def test_a_window_ends_where_a_law_with_its_value_no_longer_fits(name):
    """Its ends keep what a fit must keep; a centimetre on, something is short."""
    asked = dance("pro-bend-3", sides=("right",))
    fit = fitted(asked)
    window = windows._windows(asked, fit, (name,))[name]

    def margins(value):
        values = {**fit.values.get("right", {}), name: value}
        looks = SampledDance(dance("pro-bend-3", sides=("right",), given=values), {})
        return looks.places([{"right": np.zeros(3)}], [fit.posture])[0].margins

    for end in (window.low, window.high):
        assert margins(end).least >= LEAST_MARGIN - 1e-9
        assert margins(end).reach >= REACH_SPARE - 1e-9
    for beyond in (window.low - 0.01, window.high + 0.01):
        assert beyond <= 0.001 or margins(beyond).least < LEAST_MARGIN
    assert window.low < window.high
    assert window.low <= window.best <= window.high


def test_a_value_at_an_end_is_in_a_window():
    window = Window(name="up", low=0.1, high=0.25, best=0.2)

    held = [window.holds(value) for value in (0.0999, 0.1, 0.2, 0.25, 0.2501)]
    assert held == [False, True, True, True, False]


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (0.101, 0.199, "11 to 19 cm"),
        (-0.199, -0.101, "-19 to -11 cm"),
        (0.27999999999999997, 0.3, "28 to 30 cm"),
        (0.295, 0.305, "30 cm"),
        (-0.105, -0.105, "-10.5 cm"),
        (0.262, 0.268, "26.5 cm"),
    ],
)
def test_words_of_a_window_lie_in_it(low, high, words):
    assert Window(name="up", low=low, high=high, best=(low + high) / 2).words == words


def test_what_opens_a_window_is_tried_from_the_least_change_on(monkeypatch):
    """Tempo, tether, own parameters, the hands: the first that fits of each, and each only where it may help."""
    asked, tried = dance("pro-bend-4", given={"up": 0.1, "ahead": 0.1}, tempo=60.0), []

    def fits(other):
        tried.append(other)
        return Fit()

    monkeypatch.setattr(windows, "fitted", fits)
    monkeypatch.setattr(windows, "MOST_OPENERS", 9)
    slack = Fit(margins=Margins(body=0.1, other=0.0, reach=0.1, pull=-1.0))
    assert list(windows._openers(asked, slack)) == [
        "66 beats per minute or more",
        "a tether of 45 cm",
        "ahead left for the tool to choose",
        "same time, same direction",
    ]
    assert tried[0].tempo == pytest.approx((66.0, 66.0))
    assert tried[1].props["left"].length == 0.45
    assert [set(other.parts["left"][1]) for other in tried] == [{"ahead", "up"}] * 2 + [
        {"up"},
        {"ahead", "up"},
    ]
    near = Fit(margins=Margins(body=0.0, other=0.1, reach=0.1, pull=1.0))
    assert list(windows._openers(asked, near)) == [
        "a tether of 45 cm",
        "ahead left for the tool to choose",
    ]


def test_a_way_out_names_the_window_of_what_was_set():
    asked = dance("pro-bend-4", given={"ahead": 0.3})
    window = window_of(asked, "ahead")

    assert ways_out(asked) == (f"ahead {window.words} (now 30 cm)",)
    assert window.high < 0.3
    assert fitted(dance("pro-bend-4", given={"ahead": window.best})).fits


def test_what_hinders_only_together_is_to_be_left_out_together():
    asked = dance("pro-bend-4", stature=1.5, given={"across": 0, "ahead": 0})

    assert not fitted(asked).fits
    assert ways_out(asked) == (
        "leave across and ahead out: the pattern is then placed where it fits",
    )


def test_a_window_of_hands_that_lie_apart_names_no_one_value_for_both(monkeypatch):
    asked = dance("pro-bend-4", given={"ahead": 0.3})
    found = Window(name="ahead", low=0.05, high=0.06, best=0.06, apart=-0.12)
    monkeypatch.setattr(windows, "window_of", lambda _dance, _name: found)

    assert ways_out(asked) == ("leave ahead out: the pattern is then placed where it fits",)


def test_two_openers_are_enough(monkeypatch):
    """Each that is tried is a whole search: the first two that help are told."""
    monkeypatch.setattr(windows, "fitted", lambda _other: Fit())
    asked = dance("pro-bend-4", given={"up": 0.1, "ahead": 0.1}, tempo=60.0)
    slack = Fit(margins=Margins(body=0.1, other=0.0, reach=0.1, pull=-1.0))

    assert list(windows._openers(asked, slack)) == [
        "66 beats per minute or more",
        "a tether of 45 cm",
    ]
