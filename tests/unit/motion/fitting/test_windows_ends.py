"""Ends of windows where what fits is known beforehand: hands that fit in a box, and sizes in an interval."""

from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.fitting import windows
from sequencer.motion.fitting.fits import LEAST_MARGIN, REACH_SPARE, Dance, Fit, Margins
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS, Placing
from sequencer.motion.fitting.windows import _run, _sized, short_of
from sequencer.motion.patterns.library import cycle_beats
from sequencer.motion.props.prop import Prop

POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
USUAL = {"left": np.array([0.1, 0.2, 0.3]), "right": np.array([0.15, 0.25, 0.35])}
MOVES = {"left": np.array([0.02, -0.03, 0.04]), "right": np.array([-0.01, 0.05, 0.0])}


def dance(sides=SIDES, name="pro-bend-4", given=None):
    return Dance(
        parts={side: (name, given or {}) for side in sides}, cycle=cycle_beats(name, given or {}),
        tempo=(100.0, 100.0), body=Body(stature=1.7), props=dict.fromkeys(sides, POI),
    )  # fmt: skip


def placing(least, reach=0.1):
    return Placing({}, None, Margins(least, np.inf, reach, 1.0))


class Box:
    """Fits while the right hand (or the only one) is moved less than so far down and up each axis."""

    low, high = np.array([0.055, 0.105, 0.0]), np.array([0.085, 0.995, 0.315])
    sizes = (0.0, np.inf)
    pull = 1.0
    built: list = []  # noqa: RUF012  # of each test

    def __init__(self, dance, values):
        self.dance, self.values = dance, values
        self.free = np.ones(3, bool)
        self.usual = USUAL
        self.built.append(values)
        size = next((v["hand_radius"] for v in values.values() if "hand_radius" in v), None)
        self.good = size is None or self.sizes[0] < size < self.sizes[1]
        if size is not None and size > 5.0:
            raise ValueError("too large")

    def moves_of(self, _fit):
        return {side: MOVES[side] for side in self.dance.sides}

    def places(self, moves, postures):
        assert len(moves) == len(postures)
        out = []
        for each in moves:
            lead = "right" if "right" in each else "left"
            off = each[lead] - MOVES[lead]
            others = [each[side] - MOVES[side] for side in each]
            assert all(np.allclose(other, off) for other in others)  # both hands alike
            inside = np.all(off > -self.low - 1e-9) and np.all(off < self.high + 1e-9)
            out.append(placing(LEAST_MARGIN if inside and self.good else LEAST_MARGIN - 1e-6))
        return out


@pytest.fixture
def box(monkeypatch):
    monkeypatch.setattr(windows, "SampledDance", Box)
    monkeypatch.setattr(Box, "built", [])
    return Box


@pytest.mark.parametrize("sides", [SIDES, ("right",), ("left",)])
def test_ends_are_whole_centimetres_inside_what_fits(box, sides):
    """5 cm of 5.5 down the first axis, 8 of 8.5 up; 10 and the 60 that are searched; none and 31."""
    found = windows._windows(dance(sides), Fit(), PLACE_OFFSETS)
    lead = sides[-1]
    for k, (name, low, high) in enumerate(
        zip(PLACE_OFFSETS, (0.05, 0.10, 0.0), (0.08, 0.60, 0.31), strict=True)
    ):
        best = USUAL[lead][k] + MOVES[lead][k]
        window = found[name]
        assert_allclose((window.low, window.best, window.high), (best - low, best, best + high))
        apart = (USUAL["left"] + MOVES["left"] - USUAL["right"] - MOVES["right"])[k]
        assert window.apart == pytest.approx(apart if len(sides) == 2 else 0.0)
        assert window.name == name


def test_only_what_was_named_and_is_free_has_a_window(box, monkeypatch):
    assert list(windows._windows(dance(), Fit(), ("up",))) == ["up"]
    init = Box.__init__

    def held(self, dance, values):
        init(self, dance, values)
        self.free = np.array([True, False, True])

    monkeypatch.setattr(Box, "__init__", held)
    assert set(windows._windows(dance(), Fit(), PLACE_OFFSETS)) == set(PLACE_OFFSETS) - {
        PLACE_OFFSETS[1]
    }


def test_sizes_that_were_set_stay_set_and_places_are_searched_anew(box):
    fit = Fit(values={side: {"hand_radius": 0.2, PLACE_OFFSETS[0]: 0.1} for side in SIDES})
    windows._windows(dance(), fit, PLACE_OFFSETS)
    assert box.built == [{side: {"hand_radius": 0.2} for side in SIDES}]


@pytest.mark.parametrize(
    ("sign", "sizes", "expected"),
    [
        (1.0, (0.0, 0.251), 0.25), (-1.0, (0.119, 1.0), 0.12),
        (1.0, (0.0, 0.2), 0.2), (1.0, (0.0, 9.0), 0.8), (-1.0, (-1.0, 1.0), 0.01),
    ],
)  # fmt: skip
def test_a_size_ends_where_it_no_longer_fits(box, monkeypatch, sign, sizes, expected):
    """From 20 cm by centimetres: at most 60 cm away, and more than none."""
    monkeypatch.setattr(Box, "sizes", sizes)
    fit = Fit(values={side: {PLACE_OFFSETS[1]: 0.3} for side in SIDES})
    assert _sized(dance(), fit, "hand_radius", 0.2, sign) == pytest.approx(expected)
    assert all(PLACE_OFFSETS[1] not in one for each in box.built for one in each.values())


def test_a_size_ends_where_a_tether_goes_slack_or_no_law_is_left(box, monkeypatch):
    assert _sized(dance(), Fit(), "hand_radius", 4.95, 1.0) == pytest.approx(5.0)
    monkeypatch.setattr(Box, "pull", 0.0)
    assert _sized(dance(), Fit(), "hand_radius", 0.2, 1.0) == pytest.approx(0.8)
    assert (
        _sized(dance(), Fit(), "hand_radius", 0.25, 1.0) == 0.85
    )  # just 60 cm are no more than 60
    monkeypatch.setattr(Box, "pull", -1e-6)
    assert _sized(dance(), Fit(), "hand_radius", 0.2, 1.0) == 0.2


def test_a_size_begins_at_the_one_that_was_fitted_or_is_usual(box):
    name = "hand_radius"
    usual = float(dance().open("right")[name].default)
    plain = windows._windows(dance(), Fit(), (name,))[name]
    assert (plain.best, plain.apart) == (usual, 0.0)
    fitted = Fit(values={"left": {name: 0.1}, "right": {name: 0.3}})
    assert windows._windows(dance(), fitted, (name,))[name].best == 0.3
    assert windows._windows(dance(given={name: 0.2}), Fit(), (name,)) == {}


@pytest.mark.parametrize("default", [None, 0.0])
def test_a_size_that_is_nothing_by_default_has_no_window(box, monkeypatch, default):
    """Nor has one that only the other hand has."""
    defaults = {"left": 0.2, "right": default}
    monkeypatch.setattr(
        Dance, "open", lambda _dance, side: {"size": SimpleNamespace(default=defaults[side])}
    )
    assert windows._windows(dance(), Fit(), ("size",)) == {}
    defaults["right"] = 0.3
    assert windows._windows(dance(), Fit(), ("size",))["size"].best == 0.2
    monkeypatch.setattr(
        Dance,
        "open",
        lambda _dance, side: {"size": SimpleNamespace(default=0.2)} if side == "left" else {},
    )
    assert windows._windows(dance(), Fit(), ("size",)) == {}


@pytest.mark.parametrize(
    ("fits", "extent"),
    [("1", 0.0), ("0", 0.0), ("", 0.0), ("11", 0.01), ("1101", 0.01), ("0111", 0.0), ("111", 0.02)],
)
def test_a_run_ends_at_the_first_that_does_not_fit(fits, extent):
    places = [placing(LEAST_MARGIN if each == "1" else 0.0) for each in fits]
    assert _run(places) == pytest.approx(extent)


def test_a_run_keeps_both_what_is_near_and_what_is_in_reach():
    assert _run([placing(0.1), placing(0.1, REACH_SPARE), placing(0.1, REACH_SPARE - 1e-6)]) == 0.01
    assert _run([placing(0.1), placing(LEAST_MARGIN), placing(LEAST_MARGIN - 1e-6)]) == 0.01


@pytest.mark.parametrize(
    ("margins", "words"),
    [
        ((0.1, 0.1, -0.05, 1.0), "the hand would be 5 cm out of reach"),
        ((0.1, 0.1, -0.0099, 1.0), "the hand would be 10 mm out of reach"),
        ((0.1, 0.1, 0.0, 1.0), "the arm would be fully stretched"),
        ((0.1, 0.1, 0.0099, 1.0), "the arm would be fully stretched"),
        ((0.1, 0.1, 0.01, -0.1), "the tether goes slack"),
        ((0.0, 0.1, 0.1, 0.0), "the prop comes within 0 mm of your own body"),
        ((0.1, 0.012, 0.1, 1.0), "the prop comes within 1 cm of the other prop"),
        ((-0.03, 0.1, 0.1, 1.0), "the prop still goes 3 cm into your own body"),
        ((-0.03, -0.03, 0.1, 1.0), "the prop still goes 3 cm into your own body"),
        ((0.1, -0.005, 0.1, 1.0), "the prop still goes 5 mm into the other prop"),
        ((0.026, 0.026, 0.1, 1.0), ""),
        ((np.inf, np.inf, np.inf, np.inf), ""),
    ],
)
def test_what_is_short_is_said_with_its_size(margins, words):
    assert short_of(SimpleNamespace(margins=Margins(*margins))) == words
