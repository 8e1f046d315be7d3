"""What a hand holds, from the words of a show file to the prop that the laws see."""

from math import radians

import numpy as np
import pytest
from numpy.testing import assert_allclose
from pydantic import ValidationError

from sequencer.facts.flames import FASTEST_HEAD
from sequencer.facts.fuels import fuel
from sequencer.geometry.bodies import Body
from sequencer.motion.laws.law import Bounds
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.prop import PROP_KINDS
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.file_records.prop_records import DEFAULTS, PropRecord, usual_prop
from sequencer.show.model import Fire
from sequencer.staging.wicks import ASSUMED_FLAME, fastest_wick, flame_at_rest, flame_reach
from sequencer.timing.tempo import TempoMap


def test_every_kind_has_sizes():
    assert set(DEFAULTS) == set(PROP_KINDS)
    for kind in PROP_KINDS:
        held = PropRecord(kind=kind).held()
        assert held.kind == kind
        assert held.farthest > 0.3


def test_old_files_mean_the_same():
    held = PropRecord(tether=0.55).held(0.4)
    assert (held.kind, held.length, held.mass, held.wick_radius) == ("poi", 0.55, 0.2, 0.05)
    assert held.hot_radius == pytest.approx(0.45)
    assert held.behind == 0


def test_a_staff_is_held_in_its_middle_unless_said():
    held = PropRecord(kind="staff", length="1.5 m").held()
    assert (held.length, held.behind) == (0.75, 0.75)
    off = PropRecord(kind="staff", length="1.5 m", grip="30 cm").held()
    assert_allclose((off.length, off.behind), (1.2, 0.3))
    end = PropRecord(kind="staff", length=1.5, grip=0).held()
    assert (end.length, end.behind) == (1.5, 0)


def test_club_fan_and_hoop():
    club = PropRecord(kind="club").held()
    assert_allclose((club.length, club.behind), (0.45, 0.1))
    fan = PropRecord(kind="fan", spread=90, wicks=3).held()
    assert (fan.wicks, fan.spread) == (3, radians(90))
    hoop = PropRecord(kind="hoop", diameter=0.9).held()
    assert (hoop.length, len(hoop.heads)) == (0.9, 4)


def test_a_hand_may_hold_nothing():
    single = Performer(name="Ada", stature=1.7, right=PropRecord(kind="staff"))
    assert single.held("left") is None
    assert list(single.props) == ["right"]
    both = Performer(
        name="Ada", stature=1.7, prop=PropRecord(tether=0.5), left=PropRecord(kind="fan")
    )
    assert [both.props[side].kind for side in both.props] == ["fan", "poi"]
    with pytest.raises(ValidationError, match="left, right or each"):
        Performer(name="Ada", stature=1.7)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"kind": "hoop", "tether": 0.5}, "a hoop has no tether; it has diameter"),
        ({"kind": "poi", "tether": 0.5, "mass": 0.5}, "a poi has no mass"),
        ({"kind": "club", "grip": 0.6}, "only 0.55 m"),
        ({"kind": "fan", "spread": 5}, "5° is outside 10 … 180°"),
    ],
)
def test_what_does_not_belong_is_refused(given, words):
    with pytest.raises(ValidationError, match=words):
        PropRecord(**given)


@pytest.mark.parametrize(
    ("kind", "paired", "size"),
    [
        ("poi", True, 0.30),
        ("poi", False, 0.30),
        ("rope dart", False, 0.39),
        ("staff", False, 0.80),
        ("staff", True, 0.60),
    ],
)
def test_sizes_go_with_the_body(kind, paired, size):
    for stature in (0.8, 1.45, 1.7, 2.0, 2.6):
        hands = {"prop": kind} if paired else {"right": kind}
        held = Performer(name="Ada", stature=stature, **hands).held("right")
        assert held.size == pytest.approx(size * stature, abs=0.00501)
        assert (held.tether is None) == (kind == "staff")
        assert usual_prop(kind, stature=stature, paired=paired) == held.held()


@pytest.mark.parametrize(
    ("kind", "alone", "pair"), [("hoop", 0.85, 0.60), ("club", 0.55, 0.55), ("fan", 0.40, 0.40)]
)
def test_other_sizes_do_not(kind, alone, pair):
    for stature in (1.45, 2.0):
        assert Performer(name="Ada", stature=stature, left=kind).held("left").size == alone
        both = Performer(name="Ada", stature=stature, prop=kind)
        assert [held.size for held in both.props.values()] == [pair, pair]


def test_a_pair_is_two_of_one_kind_however_they_are_given():
    mixed = Performer(name="Ada", stature=1.7, right="staff", left="hoop")
    assert [held.size for held in mixed.props.values()] == [0.85, 1.36]
    apart = Performer(
        name="Ada", stature=1.7, right="staff", left={"kind": "staff", "length": "1.5 m"}
    )
    assert [held.size for held in apart.props.values()] == [1.5, 1.02]


def test_a_size_that_is_given_stays():
    given = {"poi": "tether", "rope dart": "tether", "staff": "length", "club": "length",
             "fan": "length", "hoop": "diameter"}  # fmt: skip
    for kind, key in given.items():
        ada = Performer(name="Ada", stature=2.0, prop={"kind": kind, key: 0.77})
        assert [held.size for held in ada.props.values()] == [0.77, 0.77]


def test_its_kind_alone_is_a_prop():
    for kind in PROP_KINDS:
        short, long = (Performer(name="Ada", stature=1.6, prop=p) for p in (kind, {"kind": kind}))
        assert short == long
    with pytest.raises(ValidationError, match="'poi', 'rope dart'"):
        Performer(name="Ada", stature=1.6, prop="poy")


def test_a_grip_is_held_against_the_size_that_is_filled_in():
    tall = {"name": "Ada", "prop": {"kind": "staff", "grip": "1.1 m"}}
    assert Performer(stature=2.0, **tall).held("left").held().length == pytest.approx(0.1)
    with pytest.raises(ValidationError, match=r"left hand's staff: .* 1.1 m .* only 0.9 m"):
        Performer(stature=1.5, **tall)


@pytest.mark.parametrize(
    ("measures", "words"),
    [
        ({"stature": 0.79}, "0.79 m is outside 0.8 … 2.6 m"),
        ({"stature": 2.61}, "2.61 m is outside 0.8 … 2.6 m"),
        ({"arm": 0.33}, "0.33 m is outside 0.34 … 1.02 m"),
        ({"arm": 1.03}, "outside 0.34 … 1.02 m"),
        ({"shoulder": 1.18}, "outside 1.19 … 1.53 m"),
        ({"shoulder": 1.54}, "outside 1.19 … 1.53 m"),
        ({"arm": 0.7, "shoulder": 1.4, "overhead": 2.28}, "2.28 m does not match a shoulder at 1.40 m"),
        ({"arm": 0.7, "shoulder": 1.4, "overhead": 1.92}, "an arm of 0.70 m, 2.10 m together"),
    ],
)  # fmt: skip
def test_measures_that_cannot_be_of_one_body(measures, words):
    with pytest.raises(ValidationError, match=words):
        Performer(name="Ada", prop="poi", **{"stature": 1.7, **measures})


def test_measures_reach_the_body():
    ada = Performer(name="Ada", stature=1.7, prop="poi", arm=0.7, shoulder=1.4, overhead=2.26)
    assert (ada.body.arm_length, ada.body.shoulder_height) == (0.7, 1.4)
    assert ada.body.overhead_grip == 2.26
    assert Performer(name="Ada", stature=1.7, prop="poi").body == Body(stature=1.7)
    for stature in (0.8, 2.6):
        assert Performer(name="Ada", stature=stature, prop="poi").body.stature == stature


@pytest.mark.parametrize(
    ("measures", "words"),
    [
        ({"posture": "lying"}, "'standing' or 'seated'"),
        ({"shoulder": 0.87}, "0.87 m is outside 0.88 … 1.35 m, .* 1.70 m, seated"),
        ({"shoulder": 1.40}, "outside 0.88 … 1.35 m"),
        ({"shoulder": 1.10, "overhead": 2.0}, "2 m does not match a shoulder at 1.10 m"),
    ],
)
def test_measures_of_who_is_seated_are_those_in_the_chair(measures, words):
    with pytest.raises(ValidationError, match=words):
        Performer(name="Ada", prop="poi", **{"stature": 1.7, "posture": "seated", **measures})


def test_who_is_seated_has_a_seated_body():
    ada = Performer(
        name="Ada", stature=1.7, posture="seated", prop="poi", shoulder=1.1, overhead=1.8
    )
    assert ada.body == Body(stature=1.7, shoulder_top=1.1, grip_overhead=1.8, seated=True)
    assert Performer(name="Ada", stature=1.7, posture="standing", prop="poi").body == Body(
        stature=1.7
    )


def test_a_fast_head_draws_its_flame_out():
    """Two metres of rope twice round a second are 25 m/s; a poi stays under what is taken for all."""
    body = Body(stature=1.7)
    law = law_for("static-spin", {}, side="right", body=body, beats=1.0)
    trajectory = Trajectory(
        (Span(start=0.0, end=8.0, law=law, origin=0.0, kind="block", label="spin"),)
    )
    tempo = TempoMap(np.arange(0.0, 30.0, 0.5), first=0, bars=(0,), metre=4)
    rope, poi = PropRecord(kind="rope dart", tether=2.0), PropRecord(tether=0.55)
    speed = fastest_wick(rope.held(), trajectory, ((0.0, 4.0),), tempo)
    assert speed == pytest.approx(2 * np.pi * 2 * 2.0, rel=1e-6)
    assert speed > FASTEST_HEAD > fastest_wick(poi.held(), trajectory, ((0.0, 4.0),), tempo)
    fire = Fire(fuel="kerosene", flame=0.4)
    assert flame_reach(rope, fire, speed=speed) > flame_reach(rope, fire)
    assert fastest_wick(rope.held(), trajectory, (), tempo) == 0


@pytest.mark.parametrize("seed", range(4))
def test_the_fastest_wick_is_that_of_the_fastest_piece(seed):
    """Every piece at the fastest tempo within it; neither laws nor beats are alike, so that neither decides alone."""
    draw = np.random.default_rng(seed)
    spans = tuple(
        Span(
            start=4.0 * k, end=4.0 * k + 4, origin=4.0 * k, kind="block", label="",
            law=law_for("static-spin", {}, side="right", beats=beats, body=Body(stature=1.7)),
        )
        for k, beats in enumerate(draw.uniform(1.0, 2.0, 4).tolist())
    )  # fmt: skip
    trajectory, prop = Trajectory(spans), PropRecord(tether=0.55).held()
    tempo = TempoMap(np.cumsum(draw.uniform(0.3, 0.7, 17)), first=0, bars=(0,), metre=4)
    lit = ((0.5, 7.0), (9.0, 15.5))
    every = [
        prop.fastest(bounds) * tempo.fastest(low, high)
        for span in lit for low, high, bounds in trajectory.pieces(*span)
    ]  # fmt: skip
    assert fastest_wick(prop, trajectory, lit, tempo) == max(every)


def test_a_prop_remembers_what_nobody_measured():
    bare = Performer.model_validate({"name": "Ada", "stature": "1.7 m", "prop": "poi"})
    whole = {"kind": "poi", "tether": "50 cm", "head_mass": "180 g", "wick": "4 cm"}

    assert PropRecord.model_validate(whole).assumed == ()
    assert PropRecord.model_validate(whole | {"kind": "rope dart"}).assumed == ()
    assert PropRecord.model_validate({**whole, "wick": None} | {"wick": "4 cm"}).assumed == ()
    assert set(PropRecord.model_validate({"kind": "poi", "tether": "50 cm"}).assumed) == {
        "head_mass",
        "wick",
    }
    assert set(bare.props["left"].assumed) == {"tether", "head_mass", "wick"}
    assert set(PropRecord.model_validate({"kind": "club"}).assumed) >= {"length", "grip", "mass"}


def burning(**said):
    return Fire.model_validate(
        {"fuel": "kerosene", "burn": {"time": "240 s", "measured": True}} | said
    )


def test_the_flame_of_distances_is_the_larger_of_the_watched_and_the_computed_peak():
    """45 g of kerosene in 240 s: 45e-3 x 43.2e6 / 240 = 8.1 kW, 12.15 kW at the peak; Heskestad over 10 cm."""
    prop = PropRecord(kind="poi", wick=0.05, fuel_mass=0.045)
    watts = 1.5 * 45e-3 * fuel("kerosene").heat_of_combustion.highest / 240
    computed = 0.235 * (watts / 1000) ** 0.4 - 1.02 * 0.10

    assert_allclose(flame_at_rest(prop, burning()), computed, rtol=1e-9)
    assert_allclose(flame_at_rest(prop, burning(flame="0.3 m")), computed, rtol=1e-9)
    assert flame_at_rest(prop, burning(flame="0.9 m")) == 0.9
    # half the time, twice the heat
    quick = burning(burn={"time": "120 s", "measured": True})
    assert flame_at_rest(prop, quick) > computed


def test_a_flame_that_nobody_states_is_assumed_where_nothing_can_be_computed():
    prop = PropRecord(kind="poi", wick=0.05)

    assert flame_at_rest(prop, burning()) == ASSUMED_FLAME
    assert flame_at_rest(prop, burning(flame="0.3 m")) == 0.3
    assert flame_reach(prop, burning()) > ASSUMED_FLAME


class Pieces:
    """Bounds drawn at random, a quarter of a beat each."""

    def __init__(self, seed):
        drawn = np.random.default_rng(seed).uniform(0.0, 9.0, (80, 3)).tolist()
        self.own = [
            (
                k / 4, (k + 1) / 4,
                Bounds(
                    hand_speed=h, hand_acceleration=0.0, turn_rate=t, turn_acceleration=0.0,
                    hand_reach=0.0, hand_jerk=0.0, frame_rate=f,
                ),
            )
            for k, (h, t, f) in enumerate(drawn)
        ]  # fmt: skip

    def pieces(self, start, end):
        return tuple((max(a, start), min(b, end), each) for a, b, each in self.own if b > start and a < end)  # fmt: skip


@pytest.mark.parametrize("seed", range(20))
def test_the_fastest_wick_is_the_most_of_every_piece_at_its_own_tempo(seed):
    """Reference: every piece, one by one; to the last digit."""
    times = np.cumsum(np.random.default_rng(seed).uniform(0.2, 0.9, 24))
    tempo, course = TempoMap(times), Pieces(seed)
    for kind in ("poi", "fan", "hoop"):
        prop = PropRecord(kind=kind).held()
        lit = ((1.3, 6.0), (8.1, 15.0))
        each = [
            prop.fastest(bounds) * tempo.fastest(low, high)
            for start, end in lit
            for low, high, bounds in course.pieces(start, end)
        ]
        assert fastest_wick(prop, course, lit, tempo) == max(each)
