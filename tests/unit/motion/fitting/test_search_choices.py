"""Choices of the search, one at a time: what it asks, in what order, and which of the answers it takes.

Whatever a choice depends on is given by hand, so that the right one follows by reasoning; orders and sizes that
could as well be others are approved: a change of choice changes dancers' traces and must be seen.
"""

from itertools import count
from math import inf, nextafter, pi
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.fitting import kept_fits, sampled_dance, search
from sequencer.motion.fitting.fits import Dance, Fit, Margins
from sequencer.motion.fitting.sampled_dance import Placing, SampledDance
from sequencer.motion.props.prop import Prop

POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)


def dance(name="pro-bend-4", *, sides=SIDES, given=None, tempo=(100.0, 100.0), cycle=2.0):
    return Dance(
        parts={side: (name, given or {}) for side in sides}, cycle=cycle, tempo=tempo,
        body=Body(stature=1.7), props=dict.fromkeys(sides, POI),
    )  # fmt: skip


def margins(least=0.1, pull=inf, reach=0.3):
    return Margins(least, inf, reach, pull)


def placing(least=0.1, **more):
    return Placing({}, UPRIGHT, margins(least, **more))


# What is kept


def test_each_rounded_question_is_searched_once_and_the_memory_is_emptied_when_full(monkeypatch):
    asked, stored = [], []
    monkeypatch.setattr(search, "_KEPT", {})
    monkeypatch.setattr(search, "MOST_KEPT", 2)
    monkeypatch.setattr(kept_fits, "load", lambda _question: None)
    monkeypatch.setattr(kept_fits, "store", lambda *both: stored.append(both))
    fits = (Fit(margins=margins(0.01 * k)) for k in count())
    monkeypatch.setattr(search, "searched", lambda each: asked.append(each) or next(fits))
    one, two, three = (dance(tempo=(tempo, 120.0)) for tempo in (80.2, 90.0, 100.0))

    first = search.fitted(one)
    assert search.fitted(dance(tempo=(79.9, 120.4))) is first
    second = search.fitted(two)
    assert search.fitted(one) is first
    assert list(search._KEPT.values()) == [first, second]
    third = search.fitted(three)
    assert list(search._KEPT.values()) == [third]
    assert [each.tempo for each in asked] == [(80.0, 120.0), (90.0, 120.0), (100.0, 120.0)]
    assert stored == [(e.question, f) for e, f in zip(asked, (first, second, third), strict=True)]


def test_what_is_on_disk_is_neither_searched_nor_written(monkeypatch):
    known = Fit(margins=margins(0.03))
    monkeypatch.setattr(search, "_KEPT", {})
    monkeypatch.setattr(kept_fits, "load", lambda _question: known)

    def refuse(*_anything):
        raise AssertionError("known already")

    monkeypatch.setattr(kept_fits, "store", refuse)
    monkeypatch.setattr(search, "searched", refuse)
    assert search.fitted(dance()) is known


def test_the_memory_holds_four_thousand_and_more():
    """Approved: a fit is a kilobyte or so, and a show asks a few hundred."""
    assert (search.MOST_KEPT, search.MOST_SHAPES, sampled_dance.MOST_LOOKS) == (4096, 32, 1024)


# Those who dance together


def together(monkeypatch, alone, in_shape):
    """The fits of as many dancers as `alone` names shapes; `in_shape` gives margins by dancer and shape."""
    dances = [dance(tempo=(float(50 + k), 100.0)) for k in range(len(alone))]
    fits = [Fit(values={"right": {"size": size, "up": 0.1 * k}}) for k, size in enumerate(alone)]
    monkeypatch.setattr(search, "fitted", lambda each: fits[dances.index(each)])

    def shaped(each, shape):
        least, pull = in_shape[shape["right"]["size"]][dances.index(each)]
        return Fit(values={"right": shape["right"]}, margins=margins(least, pull))

    monkeypatch.setattr(search, "_in_shape", shaped)
    found = search.fitted_together(dances)
    return fits if found == fits else found[0].values["right"]["size"]


GOOD_ENOUGH = 0.026  # [m] two centimetres and the error of the proofs


def test_one_shape_of_all_needs_no_further_search(monkeypatch):
    assert isinstance(together(monkeypatch, [0.3, 0.3], {}), list)


@pytest.mark.parametrize(
    ("alone", "in_shape", "taken"),
    [
        # Both fit everyone: the one that two of three have by themselves, wherever its margins lie.
        ((1, 2, 2), {1: [(0.05, 1)] * 3, 2: [(GOOD_ENOUGH, 1)] * 3}, 2),
        # The most usual one is too near to one of them.
        ((1, 2, 2), {1: [(0.05, 1)] * 3, 2: [(0.5, 1)] * 2 + [(0.0259, 1)]}, 1),
        # It is slack for one of them: a pull of 0 is.
        ((1, 2, 2), {1: [(0.05, 1)] * 3, 2: [(0.5, 1)] * 2 + [(0.5, 0)]}, 1),
        # None fits all: how many have it no longer counts, only its nearest.
        ((1, 2, 2), {1: [(0.02, 1)] * 3, 2: [(0.5, 1), (0.5, 1), (0.01, 1)]}, 1),
        ((1, 2, 2), {1: [(0.01, 1)] * 3, 2: [(0.5, 1), (0.5, 1), (0.02, 1)]}, 2),
        # Of two as usual the one with more to spare, and of equal ones the first dancer's.
        ((1, 2), {1: [(0.05, 1)] * 2, 2: [(0.06, 1)] * 2}, 2),
        ((1, 2), {1: [(0.06, 1)] * 2, 2: [(0.06, 1)] * 2}, 1),
        # Slack for someone in each: the first.
        ((1, 2), {1: [(0.01, -1)] * 2, 2: [(0.06, -1)] * 2}, 1),
    ],
)
def test_a_common_shape_fits_all_and_is_the_most_usual(monkeypatch, alone, in_shape, taken):
    assert together(monkeypatch, alone, in_shape) == taken


def test_a_shape_is_all_but_the_place():
    fit = Fit(
        values={"left": {"up": 0.1, "ahead": 0.2, "across": 0.3}, "right": {"size": 0.2, "up": 0}}
    )
    assert search._shape_of(fit) == {"right": {"size": 0.2}}


def test_a_shape_is_set_over_defaults_and_the_place_is_searched(monkeypatch):
    """Open defaults are set as well, so that no other shape is tried; what the performer set stays."""
    asked = dance("pro-bend-4", given={"hand_radius": 0.11})
    defaults = {
        side: {name: each.default for name, each in asked.open(side).items()} for side in SIDES
    }
    seen = []

    def fitted(each):
        seen.append(each)
        return Fit(values={"left": {"up": 0.1}}, margins=margins(0.04))

    monkeypatch.setattr(search, "fitted", fitted)
    found = search._in_shape(asked, {"left": {"from": 30.0, "up": 0.7}})

    for side in SIDES:
        own = {
            name: value for name, value in defaults[side].items()
            if value is not None and name not in ("across", "ahead", "up")
        }  # fmt: skip
        expected = {**own, "hand_radius": 0.11, **({"from": 30.0} if side == "left" else {})}
        assert "from" in own
        assert seen[0].parts[side] == ("pro-bend-4", expected)
    assert found.values == {"left": {"from": 30.0, "up": 0.1}, "right": {}}
    assert found.margins == margins(0.04)


# The search over shapes


def shaped(monkeypatch, least, *, pull=inf, heavy=False, scores=None, leaning=None, bad=()):
    """What is found, the shapes that were built, and the fits about which the body gave way.

    Each shape is known by its number: its least margin, its score (default the same) and, for `leaning`, the
    scores in each posture.
    """
    built, leant = [], []

    class Shaped:
        def __init__(self, _dance, shape):
            self.k, self.pull, self.heavy = shape["right"]["k"], pull, heavy
            built.append(self.k)
            if self.k in bad:
                raise ValueError("no such law")

        def placed(self):
            return Placing({"k": self.k}, UPRIGHT, margins(least[self.k], pull))

        def score(self, place):
            return place.moves.get("score", (scores or least)[self.k])

        def fit(self, place):
            return Fit(values={"right": {"k": self.k, **place.moves}}, margins=place.margins)

        def leaning(self, fit):
            assert fit.values["right"]["k"] == self.k
            leant.append(self.k)
            return [
                Placing({"score": each}, UPRIGHT, margins(0.0, pull))
                for each in (leaning or {}).get(self.k, ())
            ]

    monkeypatch.setattr(search, "SampledDance", Shaped)
    monkeypatch.setattr(search, "best_place", Shaped.placed)
    monkeypatch.setattr(search, "leaning_places", Shaped.leaning)
    monkeypatch.setattr(
        search, "_shapes", lambda _d: ({"right": {"k": k}} for k in range(len(least)))
    )
    return search.searched(dance()).values["right"], built, leant


@pytest.mark.parametrize(
    ("least", "pull", "heavy", "tried"),
    [
        (0.032, 0.5, False, 1),
        (nextafter(0.032, 0), 0.5, False, 3),
        (0.032, nextafter(0.5, 0), False, 3),
        (0.032, 0.5, True, 3),
        (0.05, inf, False, 1),
    ],
)
def test_the_first_shape_that_is_sure_taut_and_light_ends_the_search(
    monkeypatch, least, pull, heavy, tried
):
    _, built, _ = shaped(monkeypatch, [least, 0.0, 0.01], pull=pull, heavy=heavy)
    assert built == list(range(tried))


def test_a_shape_without_a_law_is_passed_over_unless_it_is_the_performers_own(monkeypatch):
    found, built, _ = shaped(monkeypatch, [0.028, 0.05, 0.031], bad=(1,))
    assert (found["k"], built) == (2, [0, 1, 2])
    with pytest.raises(ValueError, match="no such law"):
        shaped(monkeypatch, [0.028, 0.05], bad=(0,))


@pytest.mark.parametrize(
    ("scores", "taken"),
    [((0.02, 0.0205, 0.0215), 0), ((0.02, 0.0205, 0.0225), 2), ((0.02, 0.0215, 0.0219), 1)],
)
def test_each_further_shape_must_gain_a_millimetre_more(monkeypatch, scores, taken):
    assert shaped(monkeypatch, [0.03] * 3, scores=scores)[0]["k"] == taken


def test_the_body_gives_way_about_the_two_best_shapes_that_do_not_fit(monkeypatch):
    least = [0.01, 0.0259, 0.02, 0.015]
    assert shaped(monkeypatch, least)[2] == [1, 2]
    assert shaped(monkeypatch, [0.01, 0.026, 0.02])[2] == []
    assert shaped(monkeypatch, [0.01, 0.02], pull=-0.1)[2] == []
    assert shaped(monkeypatch, [0.01, 0.02], pull=0.0)[2] == [1, 0]


@pytest.mark.parametrize(
    ("leaning", "taken"),
    [
        ({}, {"k": 1}),
        # The best shape has 2 cm less its rank's millimetre; a first posture costs one, the next two.
        ({1: [0.0199]}, {"k": 1}),
        ({1: [0.0201]}, {"k": 1, "score": 0.0201}),
        ({1: [0.0, 0.0209]}, {"k": 1}),
        ({1: [0.0, 0.0211]}, {"k": 1, "score": 0.0211}),
        ({1: [0.0, 0.0225], 0: [0.0216]}, {"k": 0, "score": 0.0216}),
        ({1: [0.0, 0.0225], 0: [0.0214]}, {"k": 1, "score": 0.0225}),
    ],
)
def test_a_posture_must_gain_a_millimetre_for_each_that_is_smaller(monkeypatch, leaning, taken):
    found, _, leant = shaped(monkeypatch, [0.01, 0.02], leaning=leaning)
    assert (found, leant) == (({"k": 1} if taken == {"k": 1} else taken), [1, 0])


# Shapes


def test_shapes_are_tried_from_the_most_usual_of_both_on(monkeypatch):
    """Eight by six: in order of the sum of their places, then the first; at most 32 (approved)."""
    monkeypatch.setattr(
        search, "_trials", lambda _d: [{"right": {"a": k, "b": k}} for k in range(8)]
    )
    monkeypatch.setattr(
        search, "_starts", lambda _d: [{"right": {"b": 10 + k}, "left": {"c": k}} for k in range(6)]
    )
    expected = []
    for total in range(13):
        expected += [(i, total - i) for i in range(8) if 0 <= total - i < 6]
    found = list(search._shapes(SimpleNamespace(sides=SIDES)))
    assert found == [{"left": {"c": j}, "right": {"a": i, "b": 10 + j}} for i, j in expected[:32]]


def asking(trials, *, open_, values=None):
    """A dance whose patterns list these trials, one list a side."""
    book = {
        side: SimpleNamespace(
            trials=lambda given, kind, own=own, side=side: (
                own if (given, kind) == ({"of": side}, "poi") else None
            )
        )
        for side, own in trials.items()
    }
    return SimpleNamespace(
        book=book, parts={side: (side, {"of": side}) for side in trials},
        props=dict.fromkeys(trials, POI), sides=tuple(trials),
        open=lambda side: {n: SimpleNamespace(default=v) for n, v in open_[side].items()},
        values=lambda side: (values or {}).get(side, {}),
    )  # fmt: skip


def test_trials_are_what_differs_from_the_defaults_of_what_is_open():
    """The shorter list stays at its last while the longer goes on; nothing is tried twice."""
    trials = {
        "left": [{"size": 1, "set": 9}, {"size": 2, "set": 9}],
        "right": [{"size": 5}, {"size": 6}, {"size": 5}, {"size": 6}, {"size": 7}],
    }
    asked = asking(trials, open_={"left": {"size": 1}, "right": {"size": 5}})
    assert search._trials(asked) == [
        {},
        {"left": {"size": 2}, "right": {"size": 6}},
        {"left": {"size": 2}},
        {"left": {"size": 2}, "right": {"size": 7}},
    ]


def test_a_toroids_start_is_turned_elsewhere():
    """Where there are lobes, neither `begin` nor `from` is tried; where there are none, both are."""
    trials = {side: [{"begin": 1, "from": 2, "size": 3}] for side in SIDES}
    open_ = {side: {"begin": 0, "from": 0, "size": 0} for side in SIDES}
    asked = asking(trials, open_=open_, values={"left": {"lobes": 3}})
    assert search._trials(asked) == [
        {"left": {"size": 3}, "right": {"begin": 1, "from": 2, "size": 3}}
    ]


def test_two_hands_do_not_turn_the_body_each_to_its_own_side():
    """Unless nothing else is listed; one hand may."""
    own, right, plain = {"towards": "own"}, {"towards": "right"}, {"size": 1}
    open_ = {side: {"towards": None, "size": 0} for side in SIDES}
    both = asking({"left": [own, plain, right], "right": [own]}, open_=open_)
    assert search._trials(both) == [
        {"left": plain, "right": own},
        {"left": right, "right": own},
    ]
    one = asking({"left": [own, plain]}, open_=open_)
    assert search._trials(one) == [{"left": own}, {"left": plain}]


def test_a_toroid_is_turned_by_half_a_lobe_and_a_whole_one():
    """Seven lobes are 51.4286° each."""
    open_ = {"left": {"from": -90.0}, "right": {"from": None}}
    asked = asking(
        {side: [] for side in SIDES},
        open_=open_,
        values={"left": {"lobes": 7}, "right": {"lobes": "4"}},
    )
    assert search._starts(asked) == [
        {},
        {"left": {"from": -64.2857}, "right": {"from": 45.0}},
        {"left": {"from": -38.5714}, "right": {"from": 90.0}},
    ]
    plain = asking({"left": []}, open_=open_, values={"left": {"size": 7}})
    assert search._starts(plain) == [{}]
    held = asking({"left": []}, open_={"left": {"begin": 0.0}}, values={"left": {"lobes": 7}})
    assert search._starts(held) == [{}]


def test_postures_are_those_of_the_list_that_stay_in_the_column(monkeypatch):
    """Approved: leans and turns of a few degrees, smallest first; here all but the second and the last."""
    table = [
        (0, -5, 0, 0, 0), (15, 0, 0, 0, 0), (-15, 0, 0, 0, 0), (0, 0, 0, 0, 15), (0, 0, 0, 0, -15),
        (0, 0, 0, -12, 0), (0, -9, 0, 0, 0), (0, 8, 0, 0, 0), (25, 0, 0, 0, 0), (-25, 0, 0, 0, 0),
        (15, -5, 0, 0, 0), (-15, -5, 0, 0, 0),
    ]  # fmt: skip
    body, asked = Body(stature=1.7), []
    kept = [k not in (1, 11) for k in range(12)]
    monkeypatch.setattr(
        sampled_dance, "in_column", lambda *both: asked.append(both) or np.array(kept)
    )
    found = sampled_dance._postures.__wrapped__(body)
    angles = np.array(table) * pi / 180  # turn, lean, side, nod, tilt
    assert asked[0][0] is body
    assert_allclose(asked[0][1], angles, atol=1e-15)
    assert_allclose([each.angles for each in found], angles[kept], atol=1e-15)


# Places


def bare(sides=SIDES, free=(True, True, True), **own):
    """A sampled dance without samples, for what it decides on what it is told."""
    looks = SampledDance.__new__(SampledDance)
    looks.dance = SimpleNamespace(sides=sides, body=Body(stature=1.7))
    looks.shape, looks.free, looks.pull, looks.heavy = {}, list(free), inf, False
    for name, value in own.items():
        setattr(looks, name, value)
    return looks


def alike(*move, sides=SIDES):
    return dict.fromkeys(sides, np.array(move, dtype=float))


@pytest.mark.parametrize(
    ("least", "free", "pull", "searches"),
    [
        (0.05, (True, True, True), inf, False),
        (nextafter(0.05, 0), (False, True, False), 0.0, True),
        (0.02, (False, False, False), inf, False),
        (0.02, (True, True, True), -1e-9, False),
        (0.02, (True, True, True), inf, True),
    ],
)
def test_a_place_is_searched_where_the_usual_one_is_not_good(least, free, pull, searches):
    coarse = [alike(1, 0, 0), alike(2, 0, 0)]
    found = {0: placing(least), 1: placing(0.03), 2: placing(0.04)}

    def places(moves):
        return [Placing(each, UPRIGHT, found[int(each["right"][0])].margins) for each in moves]

    refined = []
    looks = bare(free=free, pull=pull, places=places, _coarse=lambda: coarse)
    looks.score = lambda place: -place.margins.least  # the nearest, to tell it from the last
    looks._refined = lambda place: refined.append(place) or "refined"
    taken = looks.placed()
    if searches:
        assert taken == "refined"
        assert refined[0].margins.least == min(least, 0.03)
    else:
        assert taken.margins.least == least
        assert_array_equal(taken.moves["left"], np.zeros(3))


@pytest.mark.parametrize("seed", range(12))
def test_the_best_of_all_coarse_places_is_refined(seed):
    """By the real score of each, in their order; those that are not looked at could not have won."""
    draw = np.random.default_rng(seed)
    moves = [alike(x, 0, 0) for x in draw.integers(1, 60, 8) / 100]
    least = {m["right"][0]: draw.choice([0.0, 0.02, 0.04, 0.05, 0.2]) for m in moves} | {0.0: 0.01}
    asked = []

    def places(own):
        asked.extend(each["right"][0] for each in own)
        return [Placing(each, UPRIGHT, margins(least[each["right"][0]])) for each in own]

    looks = bare(places=places, _coarse=lambda: moves, _refined=lambda place: place)
    every = [Placing(m, UPRIGHT, margins(least[m["right"][0]])) for m in [alike(0, 0, 0), *moves]]
    best = max(every, key=looks.score)
    assert looks.placed().moves["right"][0] == best.moves["right"][0]
    assert asked[:2] == [0.0, moves[0]["right"][0]]
    done = max(looks.score(place) for place in every[:2])
    for place in every[2:]:
        good = Placing(place.moves, UPRIGHT, margins(9.0, reach=9.0))
        assert (place.moves["right"][0] in asked[2:]) == (looks.score(good) > done)


def test_of_places_as_good_the_usual_one_stays():
    looks = bare(places=lambda moves: [Placing(m, UPRIGHT, margins(0.02)) for m in moves])
    looks._coarse, looks.score, looks._refined = (
        lambda: [alike(1, 0, 0)],
        lambda _p: 0.0,
        lambda p: p,
    )
    assert_array_equal(looks.placed().moves["right"], np.zeros(3))


def test_three_postures_that_gain_most_are_refined_from_the_smallest_on(monkeypatch):
    postures = [Posture(turn=0.05 * k) for k in range(6)]
    gain = dict(zip(postures, (0.01, 0.05, 0.03, 0.02, 0.03, 0.04), strict=True))
    monkeypatch.setattr(
        sampled_dance, "_postures", lambda body: tuple(postures) if body.stature == 1.7 else ()
    )
    move = alike(0.1, 0.2, 0.3)

    def places(moves, stances):
        assert all(each is move for each in moves)
        return [Placing(m, s, margins()) for m, s in zip(moves, stances, strict=True)]

    looks = bare(places=places, moves_of=lambda _fit: move, score=lambda place: gain[place.posture])
    looks._refined = lambda place: place.posture
    assert looks.leaning(Fit()) == [postures[1], postures[2], postures[5]]
    looks.dance.body = Body(stature=1.8)
    assert looks.leaning(Fit()) == []


@pytest.mark.parametrize(
    ("least", "reach", "moves", "pull", "heavy", "score"),
    [
        # By hand: margin up to 5 cm; 6 cm a metre moved, half as much again upwards.
        (0.05, 0.05, {"right": (0, 0, 0)}, 0.5, False, 0.05),
        (0.07, 0.30, {"right": (0, 0, 0)}, 9.0, False, 0.05),
        (0.04, 0.30, {"right": (0.3, 0, 0.2)}, 9.0, False, 0.04 - 0.06 * 0.18**0.5),
        (0.04, 0.30, {"right": (0, 0.2, 0)}, 9.0, False, 0.028),
        (0.04, 0.30, {"right": (0, 0.2, 0), "left": (0, 0, -0.4)}, 9.0, False, 0.04 - 0.06 * 0.4),
        # Below 3.2 cm each millimetre counts four times in all.
        (0.032, 0.30, {"right": (0, 0, 0)}, 9.0, False, 0.032),
        (0.022, 0.30, {"right": (0, 0, 0)}, 9.0, False, 0.022 - 0.03),
        # A tenth of what lacks of 5 cm of spare arm; 2 cm is no lack of reach yet.
        (0.05, 0.02, {"right": (0, 0, 0)}, 9.0, False, 0.05 - 0.003),
        # A metre for a slack tether, or too much for the wrist; not both.
        (0.05, 0.30, {"right": (0, 0, 0)}, 0.499, False, -0.95),
        (0.05, 0.30, {"right": (0, 0, 0)}, 9.0, True, -0.95),
        (0.05, 0.30, {"right": (0, 0, 0)}, 0.499, True, -0.95),
    ],
)  # fmt: skip
def test_a_score_is_the_margin_less_what_it_costs(least, reach, moves, pull, heavy, score):
    place = Placing(
        {side: np.array(move, dtype=float) for side, move in moves.items()},
        UPRIGHT,
        margins(least, reach=reach),
    )
    assert bare(pull=pull, heavy=heavy).score(place) == pytest.approx(score, abs=1e-12)


USUAL = {"left": np.array([0.1, 0.2, 0.3]), "right": np.array([-0.1, 0.0, 0.5])}


def test_a_place_is_told_by_what_was_moved_and_is_free():
    looks = bare(free=(True, False, True), shape={"left": {"size": 0.3}}, usual=USUAL)
    moves = {"left": np.array([0.02, 0.5, 2e-9]), "right": np.array([1e-9, 0.5, -1e-9])}
    posture = Posture(lean=-0.05)
    found = looks.fit(Placing(moves, posture, margins(0.04)))
    assert found == Fit(
        values={"left": {"size": 0.3, "across": 0.12, "up": 0.3}},
        posture=posture,
        margins=margins(0.04),
    )
    moves = {"right": np.array([0.123456, 0.0, -0.2])}
    assert looks.fit(Placing(moves, UPRIGHT, margins())).values == {
        "right": {"across": 0.0235, "up": 0.3}
    }
    looks.free = [True] * 3
    moves = {"right": np.array([0.0, -0.25, 0.0])}
    assert looks.fit(Placing(moves, UPRIGHT, margins())).values == {"right": {"ahead": -0.25}}


def test_moves_of_a_fit_are_off_the_usual_place():
    found = bare(usual=USUAL).moves_of(Fit(values={"right": {"across": 0.2, "up": 0.1}}))
    assert set(found) == set(SIDES)
    assert_allclose(found["right"], [0.3, 0.0, -0.4])
    assert_array_equal(found["left"], np.zeros(3))


# Finer steps


class Hill:
    """A score that is less the farther the hands are from a target, along each axis by itself."""

    def __init__(self, target, **own):
        self.target, self.asked = target, []
        sides = tuple(side for side in SIDES if side in target)
        own = {"limits": np.array([[-9.0] * 3, [9.0] * 3])} | own
        self.looks = bare(
            sides, places=self.places, score=self.score, _near=lambda at: ("near", at), **own
        )
        self.begin = Placing(alike(0, 0, 0, sides=sides), Posture(turn=0.1), margins(0.01))

    def places(self, moves, postures, near=None):
        assert postures == [Posture(turn=0.1)] * len(moves)
        self.asked.append((moves, near))
        return [Placing(each, postures[0], margins(0.01 if near else 0.02)) for each in moves]

    def score(self, place):
        return -sum(float(np.abs(self.target[s] - move).sum()) for s, move in place.moves.items())

    def refined(self):
        found = self.looks._refined(self.begin)
        assert self.asked[-1][1] is None  # the last look is at every sample
        assert all(near == ("near", self.begin) for _, near in self.asked[:-1])
        return found


FAR = {"+": 1.0, "-": -1.0, "0": 0.0}


@pytest.mark.parametrize(
    ("right", "left"),
    [("+00", "+00"), ("-00", "-00"), ("0+0", "0+0"), ("0-0", "0-0"), ("0+0", "0-0"), ("0-0", "0+0"),
     ("00+", "00+"), ("00-", "00-"), ("00+", "00-"), ("00-", "00+")],
)  # fmt: skip
def test_two_steps_of_three_centimetres_and_two_of_half_that(right, left):
    """Towards a target far away each of the four steps is taken: 3 + 3 + 1.5 + 1.5 cm."""
    way = {"right": np.array([FAR[c] for c in right]), "left": np.array([FAR[c] for c in left])}
    hill = Hill(way)
    found = hill.refined()
    for side in SIDES:
        assert_allclose(found.moves[side], 0.09 * way[side], atol=1e-12)
    assert [len(moves) for moves, _ in hill.asked] == [10] * 4 + [1]
    assert found.margins.least == 0.02


def test_hands_part_ahead_and_up_but_not_across():
    """Apart across is the same as out together, mirrored: the target lies there, and no step helps."""
    way = {"right": np.array([1.0, 0, 0]), "left": np.array([-1.0, 0, 0])}
    found = Hill(way).refined()
    assert all(not move.any() for move in found.moves.values())


def test_one_hand_moves_along_what_is_free():
    hill = Hill({"left": np.array([1.0, 1.0, 1.0])}, free=(False, True, False))
    assert_allclose(hill.refined().moves["left"], [0, 0.09, 0])
    assert_allclose([m["left"] for m in hill.asked[0][0]], [[0, 0.03, 0], [0, -0.03, 0]])
    held = Hill({"left": np.array([1.0, 1.0, 1.0])}, free=(False, False, False))
    assert held.looks._refined(held.begin) is held.begin


def test_a_step_must_help_and_ends_at_the_limit():
    """4.0 cm are allowed: a whole step, then the rest of one. A top 22 mm up: 30 is 8 off, 30 − 15 only 7."""
    limits = np.array([[-0.01, -9, -9], [0.04, 9, 9]])
    out = {side: np.array([1.0, 0, 0]) for side in SIDES}
    assert_allclose(Hill(out, limits=limits).refined().moves["left"], [0.04, 0, 0])
    back = {side: np.array([-1.0, 0, 0]) for side in SIDES}
    assert_allclose(Hill(back, limits=limits).refined().moves["left"], [-0.01, 0, 0])
    top = {side: np.array([0.0, 0, 0.022]) for side in SIDES}
    assert_allclose(Hill(top).refined().moves["left"], [0, 0, 0.015])


@pytest.mark.parametrize(("gain", "moved"), [(0.9e-6, 0.0), (1.1e-6, 0.03)])
def test_a_gain_of_a_micrometre_is_none(gain, moved):
    """Anywhere but where it is by so much better: the first way, once, or none at all."""
    hill = Hill({side: np.array([1.0, 0, 0]) for side in SIDES})
    hill.looks.score = lambda place: gain * float(place.moves["right"].any())
    assert hill.refined().moves["right"][0] == moved


@pytest.mark.parametrize(("least", "rounds"), [(0.05, 0), (nextafter(0.05, 0), 4)])
def test_a_good_place_is_left(least, rounds):
    hill = Hill({side: np.array([1.0, 0, 0]) for side in SIDES})
    hill.begin = hill.begin._replace(margins=margins(least))
    hill.refined()
    assert len(hill.asked) == rounds + 1


# The coarse grid


def grid_of(low, high):
    return [0.06 * k for k in range(-30, 31) if low - 1e-9 <= 0.06 * k <= high + 1e-9]


def field(offsets, seed):
    """A rough field of margins: some good, some beyond the arm."""
    x, y, z = np.moveaxis(np.asarray(offsets), -1, 0)
    rough = 0.05 * np.sin(37 * x + seed) + 0.05 * np.cos(53 * y - seed * z) + 0.03 * np.sin(29 * z)
    return np.where(np.cos(91 * x + 17 * y + 5 * z + seed) < -0.9, -inf, rough)


def coarse_looks(sides, free, ranges, seeds, lift=0.0):
    looks = bare(sides, free, ranges=ranges, sparse=slice(None, None, 12), often=4)
    looks._alone = lambda side, offsets: lift + field(offsets, seeds[side])

    def pairs(shift, rows):
        assert rows in (looks.sparse, slice(None, None, 4))
        few = np.round(field(shift, 5.0) + 0.06, 2)
        # What is too near by few samples is not asked again: the answer would be told by a whole metre.
        return few if rows == looks.sparse else np.where(few > 0, few - 0.02, 1.0)

    looks._pairs = pairs
    return looks


def by_hand(sides, free, ranges, seeds, lift=0.0):
    """All offsets one by one: the best three of each split, then the best ten of all."""
    axes = [grid_of(*span) if each else [0.0] for each, span in zip(free, ranges, strict=True)]
    offsets = [np.array([x, y, z]) for x in axes[0] for y in axes[1] for z in axes[2]]

    def way(move):
        return 0.06 * float(np.sqrt(move[0] ** 2 + move[1] ** 2 + (1.5 * move[2]) ** 2))

    if len(sides) == 1:
        side = sides[0]
        scored = [
            (min(lift + float(field(o, seeds[side])), 0.05) - way(o), {side: o}) for o in offsets
        ]
        scored = sorted(scored, key=lambda each: -each[0])[:10]
        return [moves for score, moves in scored if score > -0.2]

    def alone(side, at):
        inside = all(
            min(np.abs(np.array(axis) - c)) < 1e-6 for axis, c in zip(axes, at, strict=True)
        )
        return lift + float(field(at, seeds[side])) if inside else -inf

    found = []
    splits = [(a, u) for a in ((0, 1, -1, 2, -2) if free[1] else (0,))
              for u in ((0, 1, -1, 2, -2) if free[2] else (0,)) if abs(a) + abs(u) <= 2]  # fmt: skip
    for a, u in splits:
        half = 0.06 * np.array([0, a, u])
        scored = []
        for k, o in enumerate(offsets):
            # Left less right: both go out by x, so apart by −2x; the right one goes by half, the left one back.
            shift = np.array([-2 * o[0], -2 * half[1], -2 * half[2]])
            pair = round(float(field(shift, 5.0)) + 0.06, 2)
            pair = pair - 0.02 if pair > 0 else pair
            both = min(alone("right", o + half), alone("left", o - half), pair, 0.05)
            scored.append((both - way(o) - way(half), k, o))
        best = sorted(scored, key=lambda each: -each[0])[:3]
        found += [
            (score, {"right": o + half, "left": o - half})
            for score, _, o in sorted(best, key=lambda each: each[1]) if score > -0.2
        ]  # fmt: skip
    return [moves for _, moves in sorted(found, key=lambda each: -each[0])[:10]]


RANGES = [(-0.07, 0.1), (-0.06, 0.13), (-0.13, 0.1)]


@pytest.mark.parametrize(
    ("sides", "free", "seeds", "lift"),
    [
        (SIDES, (True, True, True), {"left": 1.0, "right": 2.0}, 0.0),
        (SIDES, (True, True, True), {"left": 0.3, "right": 4.0}, 0.1),
        (SIDES, (True, False, True), {"left": 1.0, "right": 2.0}, -0.1),
        (SIDES, (False, True, False), {"left": 6.0, "right": 2.0}, 0.0),
        (SIDES, (False, True, True), {"left": 6.0, "right": 2.0}, -0.17),
        (("right",), (True, True, True), {"right": 2.0}, 0.0),
        (("left",), (True, False, True), {"left": 3.0}, -0.19),
    ],
)
def test_the_best_of_the_grid_one_by_one(sides, free, seeds, lift):
    found = coarse_looks(sides, free, RANGES, seeds, lift)._coarse()
    expected = by_hand(sides, free, RANGES, seeds, lift)
    assert 1 <= len(found) == len(expected) <= 10
    for mine, its in zip(found, expected, strict=True):
        assert set(mine) == set(its)
        for side in sides:
            assert_allclose(mine[side], its[side], atol=1e-12)


@pytest.mark.parametrize("sides", [SIDES, ("left",)])
def test_what_is_twenty_centimetres_too_near_is_no_place(sides):
    looks = bare(sides, (False, False, False), ranges=RANGES, sparse=slice(None), often=4)
    looks._pairs = lambda shift, _rows: np.ones(len(shift))
    for least, kept in ((-0.2, 0), (nextafter(-0.2, 0), 1)):
        looks._alone = lambda _side, offsets, least=least: np.full(len(offsets), least)
        assert len(looks._coarse()) == kept


@pytest.mark.parametrize(
    ("free", "splits"),
    [
        ((True, False, False), [(0, 0, 0)]),
        ((False, True, False), [(0, 0, 0), (0, 1, 0), (0, -1, 0), (0, 2, 0), (0, -2, 0)]),
        ((True, False, True), [(0, 0, 0), (0, 0, 1), (0, 0, -1), (0, 0, 2), (0, 0, -2)]),
        (
            (True, True, True),
            [(0, 0, 0), (0, 0, 1), (0, 0, -1), (0, 0, 2), (0, 0, -2), (0, 1, 0), (0, 1, 1),
             (0, 1, -1), (0, -1, 0), (0, -1, 1), (0, -1, -1), (0, 2, 0), (0, -2, 0)],
        ),
    ],
)  # fmt: skip
def test_hands_part_by_two_steps_in_all(free, splits):
    """Approved: the nearest first."""
    assert bare(free=free)._splits() == splits


@pytest.mark.parametrize(
    "split", [(0, 0, 0), (0, 1, -2), (0, -1, 1), (0, 2, 0), (1, -2, 3), (0, 5, 0)]
)
@pytest.mark.parametrize("sign", [1, -1])
def test_values_of_a_grid_moved(split, sign):
    """Cell by cell: the value there is that of the cell a split away, −∞ where there is none."""
    values = np.random.default_rng(1).normal(size=(3, 5, 4))
    expected = np.full(values.shape, -inf)
    for place in np.ndindex(values.shape):
        of = [p + sign * s for p, s in zip(place, split, strict=True)]
        if all(0 <= p < n for p, n in zip(of, values.shape, strict=True)):
            expected[place] = values[tuple(of)]
    assert_array_equal(sampled_dance._shifted(values, split, sign), expected)
