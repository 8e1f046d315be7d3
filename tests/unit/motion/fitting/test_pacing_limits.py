"""Which beats are tried, in what order, and each limit just met and just missed.

Laws, pull and twist are given here, so that what holds is known beforehand.
"""

from dataclasses import replace
from math import inf, nextafter, pi
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.fitting import pacing
from sequencer.motion.fitting.pacing import Pace, least_pull, usual_cycle
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import GRAVITY

POI = Prop(length=0.45, mass=0.2, wick_radius=0.05)
DART = Prop(length=1.5, mass=0.2, wick_radius=0.05, kind="rope dart")
CLUB = Prop(length=0.5, behind=0.12, mass=0.6, wick_radius=0.04, kind="club")
SHARES = (1, 1 / 2, 2, 3 / 4, 3 / 2, 2 / 3, 4 / 3, 1 / 4, 7 / 8, 5 / 8, 5 / 6, 9 / 16)


def test_tables():
    """Approved: what is tried, and what a performer can do; both change what is danced."""
    assert_allclose(pacing.CYCLE_SHARES, SHARES, atol=1e-15)
    assert Pace() == Pace(hand_speed=6, hand_acceleration=80, turns=2.5, head_speed=20, torque=8)
    assert (pacing.TAUT, pacing.MOST_TRIALS) == (0.5, 12)


# Which beats


BOOK = {"it": "a pattern"}


def chosen(monkeypatch, able, props=(POI,), pace=None, tempo=90.0):
    """Share of the usual three beats that is taken, and what was asked; `able` has a row of shares for each case."""
    asked = []
    monkeypatch.setattr(
        pacing, "cycle_beats", lambda *all_: 3.0 if all_ == ("it", {"a": 1}, BOOK) else None
    )

    def laws(name, parameters, prop, book):
        assert (name, parameters, book) == ("it", {"a": 1}, BOOK)
        return [lambda beats, k=k: (k, beats) for k in range(len(able[prop]))]

    def holds(built, prop, beats_per_second, limits):
        k, beats = built
        asked.append((prop, k, beats, beats_per_second, limits))
        return any(beats == pytest.approx(3 * share) for share in able[prop][k])

    # Its parts are replaced: what is kept must not be asked, nor told.
    monkeypatch.setattr(pacing, "_usual", getattr(pacing._usual, "__wrapped__", pacing._usual))
    monkeypatch.setattr(pacing, "recent", lambda _kind, _key, work, **_most: work())
    monkeypatch.setattr(pacing, "_laws", laws)
    monkeypatch.setattr(pacing, "_holds", holds)
    beats = usual_cycle("it", {"a": 1}, tempo=tempo, props=props, pace=pace, book=BOOK)
    return beats / 3, asked


def test_the_usual_beats_are_asked_of_each_prop_once(monkeypatch):
    """A flame is no other prop; 90 beats a minute are 1.5 a second."""
    lit = replace(POI, flame_reach=0.4)
    share, asked = chosen(monkeypatch, {POI: [SHARES, SHARES], DART: [(1,)]}, (lit, DART, POI))
    assert share == 1
    assert asked == [(POI, 0, 3, 1.5, Pace()), (POI, 1, 3, 1.5, Pace()), (DART, 0, 3, 1.5, Pace())]
    slow = Pace(turns=1.0)
    assert {each[4] for each in chosen(monkeypatch, {POI: [(1,)]}, pace=slow)[1]} == {slow}


@pytest.mark.parametrize(
    ("able", "share"),
    [
        ([SHARES[1:]], 1 / 2),
        ([SHARES[4:]], 3 / 2),
        ([SHARES[11:]], 9 / 16),
        # The first that both can do; what one alone does sooner counts for nothing.
        ([(1, 3 / 4, 1 / 4), (1 / 2, 2, 1 / 4)], 1 / 4),
        # Who can do none does not hold up the others; if nobody can, or no two agree, the usual beats stay.
        ([(), (2, 1 / 2)], 1 / 2),
        ([(), ()], 1),
        ([(1 / 2,), (2,)], 1),
        ([(1,), (2,)], 1),
    ],
)
def test_the_first_share_that_all_can_do(monkeypatch, able, share):
    assert chosen(monkeypatch, {POI: able})[0] == pytest.approx(share)


def test_no_more_shares_are_tried_than_decide(monkeypatch):
    """The first can do half its beats, the second only twice as many: each is asked up to what it can do, and once."""
    able = {POI: [(1 / 2, 2), (2,)]}
    _, asked = chosen(monkeypatch, able)
    assert [(k, beats / 3) for _, k, beats, *_ in asked] == [
        (0, 1), (0, 1 / 2), (1, 1), (1, 1 / 2), (1, 2), (0, 2)
    ]  # fmt: skip


@pytest.mark.parametrize(("hybrid", "sides"), [(True, ("left", "right")), (False, ("right",))])
def test_laws_of_the_first_twelve_trials(monkeypatch, hybrid, sides):
    """Of each hand where they differ; a trial's values only where the law has them, below what is set."""
    trials = [{"size": k, "turn": k, "set": -1} for k in range(14)]

    def hand(side):
        names = ("size", "set") if side == "right" else ("turn", "set")
        return SimpleNamespace(
            kind=SimpleNamespace(parameters=[SimpleNamespace(name=n) for n in names])
        )

    pattern = SimpleNamespace(
        trials=lambda given, kind: trials if (given, kind) == ({"set": 5}, "poi") else [],
        hand=hand,
        hybrid=hybrid,
    )
    built = []
    monkeypatch.setattr(pacing, "find", lambda *both: pattern if both == ("it", "book") else None)
    monkeypatch.setattr(
        pacing, "law_for", lambda *given, **more: built.append((given, more)) or len(built)
    )
    own = pacing._laws("it", {"set": 5}, POI, "book")
    assert built == []
    assert [laws(2.5) for laws in own] == [list(range(1, 13)), list(range(13, 25))][: len(sides)]
    expected = [
        (
            ("it", {"size" if side == "right" else "turn": k, "set": 5}),
            {"side": side, "body": Body(stature=1.7), "beats": 2.5, "tether": 0.45, "book": "book"},
        )
        for side in sides for k in range(12)
    ]  # fmt: skip
    assert built == expected


# Limits


class Law:
    """A law of given bounds, which notes when it is looked at."""

    def __init__(self, period=2.0, **bounds):
        slow = {
            "hand_speed": 0.0,
            "hand_acceleration": 0.0,
            "turn_rate": 0.0,
            "turn_acceleration": 0.0,
        }
        self.own = Bounds(**(slow | {"hand_reach": 0.5} | bounds))
        self.period, self.looks = period, None

    def bounds(self):
        return self.own

    def at(self, beats):
        self.looks = beats
        return self


@pytest.fixture
def taut(monkeypatch):
    """Every tether is taut; what was asked."""
    asked = []
    monkeypatch.setattr(
        pacing, "least_pull", lambda motion, **more: asked.append((motion, more)) or 0.5
    )
    return asked


WIDE = Pace(hand_speed=inf, hand_acceleration=inf, turns=inf, head_speed=inf, torque=inf)


@pytest.mark.parametrize(
    ("limit", "most", "bounds", "order"),
    [
        # At two beats a second, by hand: metres a beat, doubled; metres a beat², times four; radians, over 2π.
        ("hand_speed", 3.0, {"hand_speed": 1.5}, 1),
        ("hand_acceleration", 12.0, {"hand_acceleration": 3.0}, 2),
        ("turns", 1.5, {"turn_rate": 1.5 * pi}, 1),
        ("head_speed", 2 * (1.5 + 0.45 * 4.0), {"hand_speed": 1.5, "turn_rate": 4.0}, 1),
    ],
)
@pytest.mark.parametrize(
    ("beyond", "held"), [(0.0, True), (0.9e-6, True), (1.1e-6, False), (-0.5, True)]
)
def test_each_limit_is_met_to_a_millionth(taut, limit, most, bounds, order, beyond, held):
    pace = replace(WIDE, **{limit: most * (1 - beyond) ** order})
    assert pacing._holds([Law(**bounds)], POI, 2.0, pace) == held
    # Another shape may hold where the first does not.
    assert pacing._holds([Law(**bounds), Law()], POI, 2.0, pace)
    assert pacing._holds([Law(), Law(**bounds)], POI, 2.0, pace)


@pytest.mark.parametrize(("period", "span"), [(3.0, 3.0), (inf, 8.0)])
def test_a_tether_is_looked_at_over_a_period(taut, period, span):
    law = Law(period)
    assert pacing._holds([law], POI, 2.0, WIDE)
    assert taut == [(law, {"length": 0.45, "beats_per_second": 2.0})]
    assert_allclose(law.looks, np.linspace(0, span, 256, endpoint=False), atol=1e-12)


@pytest.mark.parametrize(
    ("pulls", "held"),
    [((0.5,), True), ((nextafter(0.5, 0),), False), ((0.4, 0.6), True), ((), False)],
)
def test_one_taut_shape_is_enough(monkeypatch, pulls, held):
    left = list(pulls)
    monkeypatch.setattr(pacing, "least_pull", lambda *_motion, **_more: left.pop(0))
    monkeypatch.setattr(pacing, "twist", None)
    assert pacing._holds([Law()] * len(pulls), POI, 2.0, WIDE) == held


@pytest.mark.parametrize(
    ("twists", "held"), [((8.0,), True), ((nextafter(8.0, 9),), False), ((9.0, 7.0), True)]
)
def test_a_rigid_prop_takes_no_more_than_its_torque(monkeypatch, twists, held):
    asked, left, laws = [], list(twists), [Law() for _ in twists]
    monkeypatch.setattr(pacing, "twist", lambda *all_: asked.append(all_) or left.pop(0))
    monkeypatch.setattr(pacing, "least_pull", None)
    assert pacing._holds(laws, CLUB, 2.0, replace(WIDE, torque=8.0)) == held
    assert asked == [(law, CLUB, 2.0 * (1 - 1e-6)) for law in laws]


# Pull


def at_its_top(turning, push=0.0, fastest=1.0):
    """Least pull of a tether that stands up at one of four looks; the hand is pushed up by so much [m/s²]."""
    first, up = np.arange(4)[:, None] == 0, np.array([0.0, 0.0, 1.0])
    zero = np.zeros((4, 3))
    motion = Motion(
        hand=zero, hand_rate=zero, hand_acceleration=np.where(first, push * up, 0.0),
        tether=np.where(first, up, -up), tether_acceleration=zero, plane=zero,
        tether_rate=np.where(first, [turning, 0, 0], [fastest, 0, 0]),
    )  # fmt: skip
    return least_pull(motion, length=0.5, beats_per_second=1.0)


@pytest.mark.parametrize(
    ("turning", "fastest", "rests"),
    [
        (0.5, 1.0, False), (nextafter(0.5, 0), 1.0, True),
        (0.35 * pi, 9.0, False), (nextafter(0.35 * pi, 0), 9.0, True),
    ],
)  # fmt: skip
def test_a_tether_rests_below_a_rate_and_not_at_it(turning, fastest, rests):
    expected = inf if rests else 0.5 * turning**2 - GRAVITY
    assert at_its_top(turning, fastest=fastest) == pytest.approx(expected)


@pytest.mark.parametrize(("push", "rests"), [(0.9e-6, True), (1.1e-6, False), (-1.0, True)])
def test_a_tether_at_rest_lacks_its_weight_and_no_more(push, rests):
    found = at_its_top(0.0, push)
    assert found == (inf if rests else pytest.approx(-GRAVITY - push))


def test_pull_has_all_its_terms():
    """By hand, two looks: 4·(0.5·9 − 2) − 9.80665·0.6 is the less, with d·h″ = 0.6·2 + 0.8·1 = 2."""
    zero = np.zeros((2, 3))
    motion = Motion(
        hand=zero, hand_rate=zero, plane=zero, tether_acceleration=zero,
        tether=np.array([[0.8, 0, 0.6], [1.0, 0, 0]]), hand_acceleration=np.array([[1.0, 5, 2], [0, 0, 7]]),
        tether_rate=np.array([[0.0, 3, 0], [0, 0, -4]]),
    )  # fmt: skip
    assert least_pull(motion, length=0.5, beats_per_second=2.0) == pytest.approx(10 - GRAVITY * 0.6)
    assert_array_equal(motion.hand, zero)
