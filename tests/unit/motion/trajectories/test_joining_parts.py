"""Joins with laws and links that answer what the test says: each tolerance, order and word by hand."""

from dataclasses import fields, replace
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories import joining
from sequencer.motion.trajectories.joining import Gap, Tolerances, gap_between, judge, shortest_link
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits

NAMES = [each.name for each in fields(Motion)]
X, Y, Z = np.eye(3)
ROOM = HandSpace(body=Body(stature=1.7), side="right", length=0.5)


def test_the_numbers_of_a_join():
    """docs/motion.md, section 5, typed here again."""
    assert joining.SHIFT_STEP == 0.25
    assert joining.LINK_BEATS == (1.0, 2.0, 3.0, 4.0, 0.5)
    assert joining.VERDICTS == (
        "joins", "joins after a shift", "needs a link", "wrong way round", "cannot join",
    )  # fmt: skip


@pytest.mark.parametrize(
    "name", ["hand", "tether_deg", "axis_deg", "hand_velocity", "head_velocity"]
)
def test_a_tolerance_is_more_than_nothing(name):
    assert getattr(Tolerances(**{name: 1e-9}), name) == 1e-9
    for size in (0.0, -1.0):
        with pytest.raises(ValueError, match="tolerances must be positive, and the ratios"):
            Tolerances(**{name: size})


@pytest.mark.parametrize(
    ("ratio", "good"),
    [
        ((1.0, 1.0), True), ((0.01, 1.0), True), ((1.0, 9.0), True), ((0.0, 1.2), False),
        ((-0.1, 1.2), False), ((1.01, 1.2), False), ((0.8, 0.99), False), ((0.5, 0.5), False),
    ],
)  # fmt: skip
def test_one_lies_between_the_ratios(ratio, good):
    if good:
        assert Tolerances(rate_ratio=ratio).rate_ratio == ratio
    else:
        with pytest.raises(ValueError, match="the ratios must have 1 between them"):
            Tolerances(rate_ratio=ratio)


def gap_of(**apart):
    none = dict.fromkeys(("hand", "hand_velocity", "tether", "axis", "plane", "head_velocity"), 0.0)
    return Gap(**{k: np.array(v) for k, v in {**none, "rate_ratio": 1.0, **apart}.items()})


@pytest.mark.parametrize(
    ("name", "edge", "outwards"),
    [
        ("hand", 0.15, 1), ("tether", np.radians(20), 1), ("axis", np.radians(20), 1),
        ("rate_ratio", 0.8, -1), ("rate_ratio", 1.25, 1), ("hand_velocity", 2.0, 1),
        ("head_velocity", 3.0, 1),
    ],
)  # fmt: skip
def test_rounding_by_a_billionth_is_allowed_and_no_more(name, edge, outwards):
    for off, joins in ((0.5e-9, True), (2e-9, False), (0.3, False), (-1e-3, True)):
        assert bool(gap_of(**{name: edge + outwards * off}).within(Tolerances())) is joins


def test_exactly_a_billionth_more_still_joins_and_a_law_always_has_one_shift():
    """To the last bit: the sums are those of the tolerances, typed. A period of next to nothing has no quarter."""
    twenty = np.radians(20.0) + 1e-9
    edges = {"hand": 0.15 + 1e-9, "tether": twenty, "axis": twenty, "hand_velocity": 2.0 + 1e-9, "head_velocity": 3.0 + 1e-9}  # fmt: skip
    for name, edge in edges.items():
        assert bool(gap_of(**{name: edge}).within(Tolerances()))
    for ratio in (0.8 - 1e-9, 1.25 + 1e-9):
        assert bool(gap_of(rate_ratio=ratio).within(Tolerances()))
    assert joining.shifts_of(SimpleNamespace(period=1e-10)).tolist() == [0.0]


def test_another_axis_takes_the_place_of_the_own_and_the_head_may_reverse():
    tolerances = Tolerances()
    gap = gap_of(axis=3.0, head_velocity=9.0)
    assert not bool(gap.within(tolerances))
    assert bool(gap.within(tolerances, axis=np.array(0.1)))
    assert not bool(gap.within(tolerances, axis=np.array(0.5)))
    assert not bool(
        replace(gap, hand_velocity=np.array(2.1)).within(tolerances, axis=np.array(0.1))
    )
    many = gap_of(hand=[0.1, 0.2, 0.1], tether=[0.0, 0.0, 1.0])
    assert many.within(tolerances).tolist() == [True, False, False]


def test_a_gap_in_words():
    gap = gap_of(hand=0.126, tether=np.radians(33.4), axis=np.radians(61.0), rate_ratio=1.234)
    words = "hand 13 cm, tether 33°, turning axis 61°, turning 1.23 times as fast"
    assert gap.words() == words
    resting = gap_of(axis=np.nan, rate_ratio=np.inf)
    assert resting.words() == "hand 0 cm, tether 0°, turning axis undefined, turning from rest"


def test_a_tether_slower_than_a_millionth_is_at_rest():
    """Up to and including it; rows of states against one."""

    def spun(*speeds):
        parts = {name: np.zeros((len(speeds), 3)) for name in NAMES}
        parts |= {"tether": np.tile(X, (len(speeds), 1)), "plane": np.tile(Z, (len(speeds), 1))}
        return Motion(**parts | {"tether_rate": np.array(speeds)[:, None] * Y})

    speeds = (0.0, 1e-6, 1.1e-6, 2.0)
    found = gap_between(spun(2.0), spun(*speeds), 0.5)
    assert np.isnan(found.axis).tolist() == [True, True, False, False]
    assert_allclose(found.rate_ratio, np.array(speeds) / 2)
    found = gap_between(spun(*speeds), spun(2.0), 0.5)
    assert np.isnan(found.axis).tolist() == [True, True, False, False]
    assert_allclose(found.rate_ratio, [np.inf, np.inf, 2 / 1.1e-6, 1.0])
    assert_allclose(gap_between(spun(0.0), spun(1e-6), 0.5).rate_ratio, 1.0)


def test_an_angle_is_exact_near_none_and_near_half_a_turn():
    """Vectors of any length, in rows of rows."""
    angles = np.array([0.0, 1e-8, 0.5, np.pi / 2, 3.0, np.pi - 1e-8, np.pi])
    a = np.tile(3 * X, (2, 7, 1))
    b = 0.2 * np.stack((np.cos(angles), np.sin(angles), 0 * angles), axis=-1) * np.ones((2, 1, 1))
    assert_allclose(joining._angle(a, b), np.tile(angles, (2, 1)), rtol=1e-7, atol=1e-15)


def test_one_pair_and_one_state_of_several():
    draw = np.random.default_rng(1)
    gap = Gap(**{each.name: draw.normal(size=3) for each in fields(Gap)})
    motion = Motion(**{name: draw.normal(size=(3, 3)) for name in NAMES})
    for k in range(3):
        for each in fields(Gap):
            assert getattr(joining._one(gap, k), each.name) == getattr(gap, each.name)[k]
        for name in NAMES:
            assert_allclose(getattr(joining._state(motion, k), name), getattr(motion, name)[k])


class Placed:
    """A still prop at a place for each beat, turning this way or that."""

    period = 1.0

    def __init__(self, places, spin=2.0):
        self.places, self.spin = places, spin

    def at(self, beats):
        beats = np.asarray(beats, float)
        far = np.array([self.places[float(beat)] for beat in beats.ravel()]).reshape(beats.shape)
        parts = {name: np.zeros((*beats.shape, 3)) for name in NAMES}
        parts["hand"] = far[..., None] * X
        parts["tether"] = parts["tether"] + Y
        parts["tether_rate"] = parts["tether_rate"] + self.spin * Z
        return Motion(**parts | {"plane": parts["plane"] + np.sign(self.spin) * X})


def answering(monkeypatch, within):
    """Links of these beats are within the limits; the others say why not."""
    asked = []

    def made(first, last, beats, space, limits):
        asked.append((first, last, beats, space, limits))
        return beats

    def broken(limits, law, space):
        return "" if law in within else f"no {law:g}"

    monkeypatch.setattr(joining, "link", made)
    monkeypatch.setattr(joining, "limit_broken", broken)
    return asked


FIRST = Placed({0.0: 0.0}).at(np.array(0.0))


@pytest.mark.parametrize(
    ("places", "spin", "kind", "shift"),
    [
        ((0.1, 0.1, 0.1, 0.1), 2.0, "joins", 0.0), ((0.1, 9, 9, 9), 2.0, "joins", 0.0),
        ((9, 0.1, 0.1, 0.1), 2.0, "joins after a shift", 0.25),
        ((9, 9, 0.1, 0.1), 2.0, "joins after a shift", 0.75),
        ((9, 9, 0.1, 9), 2.0, "joins after a shift", 0.5),
        ((0.1, 9, 9, 9), -2.0, "wrong way round", 0.0),
        ((9, 9, 9, 9), 2.0, "needs a link", 0.0), ((9, 9, 9, 9), -2.0, "needs a link", 0.0),
    ],
)  # fmt: skip
def test_a_verdict_by_where_the_next_law_is_at_each_quarter(monkeypatch, places, spin, kind, shift):
    """The nearest shift round the period first: a quarter, three quarters, then half a beat."""
    asked = answering(monkeypatch, {2.0, 0.5})
    law = Placed(dict(zip((0.0, 0.25, 0.5, 0.75), places, strict=True)), spin)
    found = judge(FIRST, law, space=ROOM)
    assert (found.kind, found.shift, found.reason) == (kind, shift, "")
    assert float(found.gap.hand) == pytest.approx(places[0])
    if kind == "needs a link":
        assert found.link_beats == 2.0
        assert [call[2] for call in asked] == [1.0, 2.0]
        assert asked[0][0] is FIRST
        assert_allclose(asked[0][1].hand, 9 * X)
        assert asked[0][3:] == (ROOM, LinkLimits())
    else:
        assert np.isnan(found.link_beats)
        assert not asked


def test_what_is_reversed_is_told_before_a_shift_is_tried():
    """Here a shift would join it too: a law that turns the other way at a quarter of a beat."""

    class Turning(Placed):
        def at(self, beats):
            states = super().at(beats)
            back = np.where(np.asarray(beats) == 0.0, -1.0, 1.0)[..., None]
            return replace(states, tether_rate=back * states.tether_rate, plane=back * states.plane)

    law = Turning(dict.fromkeys((0.0, 0.25, 0.5, 0.75), 0.1))
    assert judge(FIRST, law, space=ROOM).kind == "wrong way round"


def test_given_tolerances_and_limits_are_used(monkeypatch):
    asked = answering(monkeypatch, set())
    law, limits = Placed(dict.fromkeys((0.0, 0.25, 0.5, 0.75), 0.3)), LinkLimits(hand_speed=1.0)
    assert judge(FIRST, law, space=ROOM, tolerances=Tolerances(hand=0.31)).kind == "joins"
    found = judge(FIRST, law, space=ROOM, limits=limits)
    assert (found.kind, found.reason) == ("cannot join", "in 1 beat no 1; in 2 beats no 2")
    assert [call[2] for call in asked] == [1.0, 2.0, 3.0, 4.0, 0.5]
    assert all(call[4] is limits for call in asked)


@pytest.mark.parametrize("within", [1.0, 2.0, 3.0, 4.0, 0.5])
def test_the_shortest_link_is_the_first_within_the_limits(monkeypatch, within):
    asked = answering(monkeypatch, {within})
    assert shortest_link(FIRST, FIRST, space=ROOM) == (within, "")
    assert asked[0][4] == LinkLimits()
    answering(monkeypatch, {0.5, within})
    assert shortest_link(FIRST, FIRST, space=ROOM)[0] == within


@pytest.mark.parametrize(
    ("spin", "length", "home"),
    [(5.4, 0.55, True), (5.5, 0.55, False), (5.5, 0.5, True), (5.4, 0.6, False)],
)
def test_the_end_of_a_law_counts_its_heads_velocity(spin, length, home):
    """At rest the tether would turn; here it speeds up by `spin`: 3 m per beat at 5.4545 per beat and 0.55 m."""
    law = SimpleNamespace(
        at=lambda beats: replace(
            Placed({0.0: 0.0}, spin=30.0 + spin * float(beats > 0)).at(np.zeros(()))
        )
    )
    more = {} if length == 0.55 else {"length": length}
    assert joining.ends(law, 2.0, **more) == ("home" if home else "elsewhere")


def test_the_end_of_a_law_may_be_reversed():
    def law(places, spins):
        return SimpleNamespace(
            at=lambda beats: Placed({0.0: places[float(beats) > 0]}, spins[float(beats) > 0]).at(np.zeros(()))
        )  # fmt: skip

    assert joining.ends(law((0, 0.1), (2.0, 2.0)), 3.0) == "home"
    assert joining.ends(law((0, 0.1), (2.0, -2.0)), 3.0) == "reversed"
    assert joining.ends(law((0, 0.3), (2.0, -2.0)), 3.0) == "elsewhere"
    assert joining.ends(law((0, 0.3), (2.0, 2.0)), 3.0) == "elsewhere"
