"""The vocabulary: what may be set, what is refused and how, patterns of the user's own."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.patterns.law_kinds import law_kinds
from sequencer.motion.patterns.library import find, law_for, patterns, patterns_from, turn_beats
from sequencer.motion.patterns.samples import SAMPLE_COLUMNS, pattern_rows
from sequencer.motion.props.prop import PROP_KINDS, USUAL_HANDS
from sequencer.motion.props.reach import farthest_reach

BODY = Body(stature=1.7)


def test_vocabulary_is_large_and_complete():
    book = patterns()
    assert len(book) >= 64
    for pattern in book.values():
        assert pattern.summary, pattern.name
        assert pattern.why, pattern.name
        assert 1 <= pattern.difficulty <= 5
        for need in pattern.needs:
            assert need in book
            assert book[need].difficulty <= pattern.difficulty, (pattern.name, need)
    families = {pattern.family for pattern in book.values()}
    assert families >= {"planar orbit", "toroid", "weave", "swing", "carry", "hybrid", "body turn"}


@pytest.mark.parametrize("stature", [1.5, 1.7, 1.95])
def test_every_pattern_is_in_reach_of_either_hand(stature):
    body = Body(stature=stature)
    for name in patterns():
        for side in ("left", "right"):
            law = law_for(name, {}, side=side, body=body)
            end = law.period if np.isfinite(law.period) else 8.0
            assert farthest_reach(law, side=side, body=body, end=end).within, (name, side)


@pytest.mark.parametrize(
    ("name", "parameters", "message"),
    [
        ("torid", {}, r"'torid' is not known; did you mean toroid"),
        ("toroid", {"lobe": 3}, r"no parameter 'lobe'; did you mean lobes"),
        ("toroid", {"lobes": 0}, r"lobes must be 1 … 24, got 0"),
        ("toroid", {"lobes": 2.5}, r"lobes must be a whole number"),
        ("toroid", {"lobes": 1, "bend": "anti"}, r"anti-bend needs at least 2 lobes"),
        ("toroid", {"bend": "sideways"}, r"bend must be one of iso, pro, anti"),
        ("toroid", {"start": 0}, r"start must be one of 1, -1"),
        ("toroid", {"tether": -0.5}, r"tether must be 0.05 … 3 m, got -0.5"),
        ("toroid", {"hand_radius": "0.9 m"}, r"hand_radius must be at most the arm's 0.66 m"),
        ("toroid", {"hand_radius": "300 furlong"}, r"unit 'furlong'"),
        ("orbit", {"ratio": "fast"}, r"ratio must be a number such as -3 or 3/2"),
        ("orbit", {"ratio": "1/0"}, r"ratio must be a number"),
        ("orbit", {"ratio": True}, r"ratio must be a number"),
        ("isolation", {"ratio": 2}, r"has a fixed ratio; it cannot be set"),
        ("stall", {"plane": "floor"}, r"plane must be one of wall, wheel"),
        ("two-beat-weave", {"way": "up"}, r"way must be one of forward, backward"),
    ],
)
def test_bad_input_is_refused_with_its_reason(name, parameters, message):
    with pytest.raises(ValueError, match=message):
        law_for(name, parameters, side="right", body=BODY)


@pytest.mark.parametrize("beats", [0.0, -1.0, float("nan"), float("inf")])
def test_a_cycle_takes_time(beats):
    with pytest.raises(ValueError, match="beats of a cycle must be positive"):
        law_for("toroid", {}, side="right", body=BODY, beats=beats)


def test_values_may_be_written_as_people_do():
    plain = law_for(
        "orbit", {"ratio": -1.5, "hand_radius": 0.3, "lag": 90}, side="right", body=BODY
    )
    words = {"ratio": "-3/2", "hand_radius": "30 cm", "lag": "90 deg"}
    written = law_for("orbit", words, side="right", body=BODY)
    assert plain == written


def test_rows_have_the_agreed_columns_and_beats():
    rows = pattern_rows(
        "toroid", {"lobes": "4", "bend": "pro", "start": "-1"}, beats=4, per_beat=96, tempo=120
    )
    assert rows.shape == (4 * 96 + 1, len(SAMPLE_COLUMNS))
    assert_allclose(rows[:, 1], np.arange(385) / 96)
    assert_allclose(rows[:, 0], rows[:, 1] / 2)
    sense = rows[::48, 8:]
    assert_allclose(sense[[0, 2, 4, 6]], [(-1, 0, 0), (0, 0, 1), (1, 0, 0), (0, 0, -1)], atol=1e-12)
    assert_allclose(np.linalg.norm(rows[:, 5:8] - rows[:, 2:5], axis=1), 0.51)


def test_a_static_spin_turns_once_in_its_beats():
    rows = pattern_rows("orbit", {"hand_radius": 0, "beats": 2}, beats=2, per_beat=4)
    assert_allclose(rows[0, 2:], rows[-1, 2:], atol=1e-12)
    assert_allclose(rows[4, 5:8] - rows[4, 2:5], rows[0, 2:5] - rows[0, 5:8], atol=1e-12)
    with pytest.raises(ValueError, match="beats of a hand cycle must be a number"):
        pattern_rows("orbit", {"beats": "two"})


def test_from_and_turn_of_the_fixed_patterns():
    """0 is to the performer's right, −90 below; for the wheel plane 0 is ahead."""
    for plane, start, outward in (
        ("wall", 0, (1, 0, 0)), ("wall", -90, (0, 0, -1)), ("wheel", 0, (0, 1, 0)),
        ("wheel", -90, (0, 0, -1)), ("floor", 0, (1, 0, 0)), ("floor", 90, (0, 1, 0)),
    ):  # fmt: skip
        for turn in ("anticlockwise", "clockwise"):
            law = law_for(
                "orbit",
                {"plane": plane, "turn": turn, "from": start, "ratio": 1},
                side="right",
                body=BODY,
            )
            assert_allclose(law.at(np.array(0.0)).tether, outward, atol=1e-12)
            n = law.at(np.array(0.3)).plane
            expected = {"wall": (0, -1, 0), "wheel": (1, 0, 0), "floor": (0, 0, 1)}[plane]
            assert_allclose(
                n, np.array(expected) * (1 if turn == "anticlockwise" else -1), atol=1e-12
            )


def test_patterns_of_the_users_own():
    book = patterns_from(
        {
            "slow-star": {
                "law": "orbit", "set": {"ratio": -4}, "defaults": {"hand_radius": "25 cm"},
                "summary": "five petals", "difficulty": 4, "why": "slow", "needs": ["extension"],
                "cycle": 10,
            }
        },
        patterns(),
    )  # fmt: skip
    law = law_for("slow-star", {}, side="right", body=BODY, book=book)
    assert law.period == 10
    assert find("slow-star", book).needs == ("extension",)


@pytest.mark.parametrize(
    ("record", "message"),
    [
        ({"law": "orbits"}, "law 'orbits' is not known; did you mean orbit"),
        ({"law": "orbit", "colour": 1}, "key 'colour' is not known"),
        ({"law": "orbit", "set": {"petals": 4}}, "law 'orbit' has no parameter 'petals'"),
        ({"law": "toroid", "set": {"lobes": 0}}, "lobes must be 1 … 24"),
        ({"law": "orbit", "defaults": {"ratios": 4}}, "no open parameter 'ratios'"),
        ({"left": {"law": "orbit"}}, "give both left and right"),
        ({}, "give either a law"),
        ({"law": "orbit", "needs": ["extensio"]}, "needs 'extensio', which is not known; did you"),
        ({"law": "orbit", "difficulty": 9}, "difficulty must be 1 to 5"),
        (3, "must be a record"),
    ],
)
def test_bad_patterns_are_refused(record, message):
    with pytest.raises(ValueError, match=message):
        patterns_from({"mine": record}, patterns())


def test_a_name_is_given_once():
    with pytest.raises(ValueError, match="'orbit' already exists"):
        patterns_from({"orbit": {"law": "orbit"}}, patterns())


def test_kinds_are_named_once():
    assert len(law_kinds()) == len({kind.name for kind in law_kinds().values()})


def two(name, timing, direction, **more):
    return block_laws(
        {"left": (name, {}), "right": (name, {})},
        timing=timing, direction=direction, cycle=4.0, body=BODY,
        tethers={"left": 0.55, "right": 0.55}, **more,
    )  # fmt: skip


def test_timing_and_direction_of_two_hands():
    beats = np.linspace(0, 4, 9)
    same = two("antispin-flower-4", "together", "same")
    assert_allclose(same["left"].at(beats).tether, same["right"].at(beats).tether, atol=1e-12)

    split = two("antispin-flower-4", "split", "same")
    assert_allclose(split["left"].at(beats).tether, same["right"].at(beats + 2).tether, atol=1e-12)
    quarter = two("antispin-flower-4", "quarter", "same")
    assert_allclose(
        quarter["left"].at(beats).tether, same["right"].at(beats + 1).tether, atol=1e-12
    )

    opposite = two("antispin-flower-4", "together", "opposite")
    seen = opposite["left"].at(beats)
    assert_allclose(seen.plane, -same["right"].at(beats).plane, atol=1e-12)
    assert_allclose(seen.tether * [-1, 1, 1], same["right"].at(beats).tether, atol=1e-12)


def test_wheel_plane_hands_go_opposite_by_turning_back():
    """The mirror would keep a wheel's direction, so the way round is reversed instead."""
    pair = two("wheel-spin", "together", "opposite")
    forward, backward = (pair[side].at(np.array(0.2)).plane for side in ("right", "left"))
    assert_allclose(forward, (-1, 0, 0), atol=1e-12)
    assert_allclose(backward, (1, 0, 0), atol=1e-12)


def test_a_mirrored_block_changes_the_hands_over():
    plain, mirror = (
        two("pro-bend-3", "split", "same"),
        two("pro-bend-3", "split", "same", mirrored=True),
    )
    beats = np.linspace(0, 4, 9)
    assert_allclose(
        mirror["left"].at(beats).hand * [-1, 1, 1], plain["right"].at(beats).hand, atol=1e-12
    )
    assert_allclose(
        mirror["right"].at(beats).plane * [1, -1, -1], plain["left"].at(beats).plane, atol=1e-12
    )


def test_split_of_weaves_is_half_a_loop_or_three_halves():
    assert turn_beats("two-beat-weave", {}, beats=2) / 2 == 0.5
    assert turn_beats("three-beat-weave", {}, beats=3) / 2 == 1.5


def test_three_beat_weave_has_two_loops_on_the_own_side():
    law = law_for("three-beat-weave", {}, side="right", body=BODY)
    across = law.at(np.array([0.0, 1.0, 2.0])).hand[:, 0]
    assert across[0] > 0.2
    assert_allclose(across[0], across[1])
    assert across[2] < -0.2
    # the hand changes sides while the prop points ahead
    crossing = law.at(np.array([1.5, 2.5]))
    assert_allclose(crossing.tether[:, 1], 1, atol=1e-12)


def test_what_is_for_a_prop_is_what_can_be_learnt_with_it():
    """Whoever learns a pattern with a prop finds what comes before it for the same prop."""
    book = patterns()
    for pattern in book.values():
        assert "poi" in pattern.props, pattern.name
        for kind in set(pattern.props) - {"poi"}:
            for need in pattern.needs:
                assert kind in book[need].props, (pattern.name, kind, need)
    for kind in PROP_KINDS:
        assert "static-spin" in {p.name for p in book.values() if p.suits(kind)}


def test_what_hangs_is_only_for_what_hangs():
    """A rigid prop does not swing, stall or hang by itself, and a long rope draws no flowers."""
    book = patterns().values()
    for pattern in book:
        if pattern.family in ("swing", "carry", "toroid"):
            assert set(pattern.props) <= {"poi", "rope dart", "club"}, pattern.name
            assert "staff" not in pattern.props
        if "flower" in pattern.name or "isolation" in pattern.name:
            assert "rope dart" not in pattern.props, pattern.name


def test_two_different_hands_need_a_prop_in_each():
    assert set(USUAL_HANDS) == set(PROP_KINDS)
    hybrid, weave = find("extension-with-antispin"), find("two-beat-weave")
    assert hybrid.suits("club")
    assert not hybrid.suits("club", hands=1)
    assert weave.suits("staff", hands=1)
    assert not find("pendulum").suits("staff")
    everything = patterns_from({"m": {"left": {"law": "orbit"}, "right": {"law": "orbit"}}})["m"]
    assert everything.props == PROP_KINDS
    assert not everything.suits("rope dart")  # a rope dart is in one hand


@pytest.mark.parametrize(
    ("given", "read"),
    [(["hoop", "poi"], ("poi", "hoop")), ("fan", ("fan",)), (["fan", "fan"], ("fan",))],
)
def test_props_of_ones_own_pattern(given, read):
    assert patterns_from({"m": {"law": "orbit", "props": given}})["m"].props == read


@pytest.mark.parametrize(
    ("given", "message"),
    [
        (["staf"], "pattern 'm': prop 'staf' is not known; did you mean staff"),
        ([["fan"]], "pattern 'm': prop \\['fan'\\] is not known"),
        ([], "props must be one or more of poi, rope dart"),
        (3, "props must be one or more of poi, rope dart"),
        ({"fan": 1}, "props must be one or more of poi, rope dart"),
    ],
)
def test_props_that_are_none_are_refused(given, message):
    with pytest.raises(ValueError, match=message):
        patterns_from({"m": {"law": "orbit", "props": given}})


def test_what_either_hand_has_for_good_cannot_be_set_of_both():
    hands = {
        "left": {"law": "orbit", "set": {"ratio": 2}},
        "right": {"law": "orbit", "set": {"hand_radius": 0.3}},
    }
    pattern = patterns_from({"two": hands}, patterns())["two"]
    open_names = {parameter.name for parameter in pattern.parameters}
    assert not open_names & {"ratio", "hand_radius"}
    assert {"plane", "turn", "from"} <= open_names
