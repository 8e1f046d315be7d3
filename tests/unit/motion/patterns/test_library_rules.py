"""The rules of a vocabulary's records one by one, on small books of one's own."""

import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.transforms import Mirrored
from sequencer.motion.patterns.law_kinds import law_kinds
from sequencer.motion.patterns.library import (
    PATTERN_PLUGINS,
    cycle_beats,
    find,
    law_for,
    patterns_from,
    turn_beats,
)
from sequencer.motion.patterns.parameters import OffsetLimits
from sequencer.motion.props.prop import PROP_KINDS

BODY = Body(stature=1.7)
CUBE = [
    {"hand": 90 * k, "bend": bend, "phase": 180 * (k + 1)} for k, bend in enumerate((90, 0, 90, 180, 90))
]  # fmt: skip
BOTH = {"left": {"law": "carry"}, "right": {"law": "orbit", "set": {"ratio": 2}}}


def own(**record):
    return patterns_from({"m": record})["m"]


def test_what_a_record_leaves_open():
    """Difficulty 3, common practice, all props, the law's own family, cycle and room."""
    plain = own(law="carry")
    assert (plain.difficulty, plain.source, plain.family) == (3, "common practice", "carry")
    assert (plain.summary, plain.why, plain.notes, plain.needs) == ("", "", "", ())
    assert (plain.cycle, plain.props, plain.offset_limits) == (None, PROP_KINDS, None)
    assert not plain.hybrid
    assert plain.left is plain.right
    assert own(**BOTH).family == "hybrid"
    assert own(**BOTH).hybrid
    assert PATTERN_PLUGINS == "sequencer.patterns"


def test_what_a_record_says():
    full = own(
        law="carry", difficulty=5, source="mine", family="still", summary="s", why="w", notes="n",
        cycle="6", props=["club", "poi"], room={"up": ["-10 cm", 0.2]},
    )  # fmt: skip
    assert (full.difficulty, full.source, full.family) == (5, "mine", "still")
    assert (full.summary, full.why, full.notes) == ("s", "w", "n")
    assert full.cycle == 6.0
    assert full.props == tuple(kind for kind in PROP_KINDS if kind in ("poi", "club"))
    assert full.offset_limits == OffsetLimits(up=(-0.1, 0.2))
    assert full.room({}) == full.offset_limits
    assert own(law="windmill").room({}) == law_kinds()["windmill"].room({})
    assert own(**BOTH, family="pair").family == "pair"
    assert repr(own(law="fountain", set={"way": "backward"})) == (
        "<Pattern m: weave, difficulty 3 of 5; width, lead, tether, across, ahead, up>"
    )
    assert repr(own(law="fountain", set={"way": "backward"}).right) == (
        "<HandLaw fountain with {'way': 'backward'}>"
    )


@pytest.mark.parametrize("difficulty", [1, 5])
def test_the_least_and_the_greatest_difficulty(difficulty):
    assert own(law="orbit", difficulty=difficulty).difficulty == difficulty


@pytest.mark.parametrize("difficulty", [0, 6])
def test_no_other_difficulty(difficulty):
    with pytest.raises(ValueError, match="difficulty must be 1 to 5"):
        own(law="orbit", difficulty=difficulty)


@pytest.mark.parametrize(
    ("record", "words"),
    [
        ({"law": "orbit", "stations": []}, "give either a law, or stations, or left and right"),
        ({"law": "orbit", **BOTH}, "give either a law"),
        ({"stations": [], **BOTH}, "give either a law"),
        ({"law": "orbit", "stations": [], **BOTH}, "give either a law"),
        ({"summary": "s"}, "give either a law"),
        ({"right": {"law": "orbit"}}, "give both left and right"),
        ({"left": {"law": "orbit"}}, "give both left and right"),
        ({"left": {"law": "orbit"}, "right": {"law": "orbits"}}, "law 'orbits' is not known"),
        ({"law": None}, "law None is not known"),
        ({"law": "orbit", "props": []}, "props must be one or more of"),
        ({"law": "orbit", "props": 3}, "props must be one or more of"),
        ({"law": "orbit", "props": ["poi", "sword"]}, "prop 'sword' is not known"),
        ({"law": "orbit", "laws": 1}, "key 'laws' is not known; did you mean law"),
        ({"law": "orbit", "room": {"up": [0.1, 0.2]}}, "room: up must include 0"),
        ({"law": "orbit", "room": {"up": [-0.2, -0.1]}}, "room: up must include 0"),
        ({"law": "orbit", "room": {"up": [-0.2, 0.1, 0.2]}}, "room: up must be a lowest and"),
        ({"law": "orbit", "room": {"up": "-1"}}, "room: up must be a lowest and"),
        ({"law": "orbit", "room": {"up": [0.0, 0.1], "aside": [0, 1]}}, "room must give across"),
        ({"law": "orbit", "set": {"ratio": 2}, "defaults": {"ratio": 3}}, "no open parameter"),
        ({**BOTH, "set": {"ratio": 2}}, "set is said for each hand: write it under left and under"),
        (
            {**BOTH, "left": {"law": "orbit", "sett": {}}},
            "left: key 'sett' is not known; did you mean set",
        ),
        ({**BOTH, "right": {"law": "orbit", "why": "x"}}, "right: key 'why' is not known"),
        ({"stations": CUBE, "set": {"ratio": 2}}, "a list of stations has no parameter 'ratio'"),
        ({"stations": CUBE, "set": {"hand_radius": "9 m"}}, "hand_radius must be"),
    ],
)
def test_records_that_are_refused(record, words):
    with pytest.raises(ValueError, match=words):
        own(**record)


def test_stations_may_have_values_that_are_fixed_for_good():
    """The same motion as where the show says the value: what is fixed holds."""
    fixed, left_open = own(stations=CUBE, set={"hand_radius": "30 cm"}), own(stations=CUBE)
    assert fixed.right.fixed == {"hand_radius": 0.3}
    made = [
        law_for("mine", given, side="right", body=BODY, book={"mine": pattern})
        for pattern, given in ((fixed, {}), (left_open, {"hand_radius": 0.3}), (left_open, {}))
    ]
    assert made[0] == made[1]
    assert made[0] != made[2]
    with pytest.raises(ValueError, match="hand_radius"):
        law_for("mine", {"hand_radius": 0.2}, side="right", body=BODY, book={"mine": fixed})


def test_a_room_may_end_at_nought():
    limits = own(law="orbit", room={"up": [0, 0.1], "ahead": [-0.1, 0], "across": (0, 0)})
    assert limits.offset_limits == OffsetLimits(up=(0.0, 0.1), ahead=(-0.1, 0.0), across=(0, 0))


def test_a_record_is_refused_by_its_name_and_needs_what_is_there():
    with pytest.raises(ValueError, match="pattern 'm': difficulty"):
        own(law="orbit", difficulty=0)
    with pytest.raises(ValueError, match="pattern 'b' needs 'c', which is not known"):
        patterns_from({"a": {"law": "orbit"}, "b": {"law": "orbit", "needs": ["a", "c"]}})
    # what is needed may come later in the same records, or be known before
    book = patterns_from({"a": {"law": "orbit", "needs": ["b"]}, "b": {"law": "orbit"}})
    more = patterns_from({"c": {"law": "orbit", "needs": ["a"]}}, book)
    assert list(more) == ["a", "b", "c"]
    assert list(book) == ["a", "b"]
    with pytest.raises(ValueError, match="pattern 'a' already exists"):
        patterns_from({"a": {"law": "orbit"}}, book)
    with pytest.raises(ValueError, match="pattern 'orbit' is not known"):
        find("orbit", {})  # an empty book is a book
    assert find("orbit").name == "orbit"


def test_values_are_given_fixed_or_default_of_the_hand_s_own_law():
    both = own(
        left={"law": "carry", "set": {"turn": "clockwise"}},
        right={"law": "orbit", "set": {"ratio": 2}},
        defaults={"hand_radius": 0.25},
    )
    right, left = both.values({"from": 30}), both.values({"from": 30}, "left")
    assert (right["ratio"], right["hand_radius"], right["from"]) == (2.0, 0.25, 30.0)
    assert right["turn"] == "anticlockwise"
    assert (left["turn"], left["hand_radius"], left["from"]) == ("clockwise", 0.25, 30.0)
    assert "ratio" not in left
    for name in ("turn", "ratio"):
        with pytest.raises(ValueError, match=f"has a fixed {name}; it cannot be set"):
            both.values({name: 1})
    with pytest.raises(ValueError, match="has no parameter 'lag'"):
        both.values({"lag": 1})  # only one of the two laws has it
    assert both.hand("left").kind.name == "carry"
    assert both.hand("right").kind.name == "orbit"
    assert [p.name for p in both.parameters] == [
        "hand_radius", "tether", "plane", "from", "across", "ahead", "up",
    ]  # fmt: skip


def test_trials_of_both_hands_laws_but_for_what_is_given():
    both = own(**BOTH)
    assert both.trials({}, "poi")[:2] == [{"hand_radius": 0.35}, {"hand_radius": 0.2625}]
    assert both.trials({"hand_radius": 0.2}, "poi") == [{}]
    weaves = own(left={"law": "fountain"}, right={"law": "windmill"})
    assert weaves.trials({}, "poi") == [{"width": 1.0}, {"width": 1.2}, {"width": 0.8}]
    other = own(left={"law": "windmill"}, right={"law": "fountain"})
    assert other.trials({}, "poi") == [{"width": 1.0}, {"width": 0.75}, {"width": 0.5}]
    lobes = own(left={"law": "toroid"}, right={"law": "carry"})  # `from` is free in the left hand
    trials = lobes.trials({}, "poi")
    assert trials[:3] == [
        {"hand_radius": 0.35, "from": -90.0},
        {"hand_radius": 0.35, "from": 90.0},
        {"hand_radius": 0.2625, "from": -90.0},
    ]
    assert len(trials) == 16
    mixed = own(left={"law": "travelling"}, right={"law": "swing"})
    assert mixed.trials({}, "poi") == [{}]


def test_which_props_and_hands_it_suits():
    plain, both = own(law="orbit", props=["poi", "staff"]), own(**BOTH)
    assert plain.suits("poi", hands=1)
    assert plain.suits("poi", hands=2)
    assert plain.suits("staff")
    assert not plain.suits("club", hands=2)
    assert both.suits("poi", hands=2)
    assert both.suits("poi")
    assert not both.suits("poi", hands=1)


def test_beats_and_turns_of_a_pattern():
    """A four-lobed toroid takes four beats, or what its record says; a weave turns as often as it loops."""
    book = patterns_from(
        {"four": {"law": "toroid"}, "slow": {"law": "toroid", "cycle": 9}, "both": BOTH,
         "weave": {"left": {"law": "weave"}, "right": {"law": "carry"}}}
    )  # fmt: skip
    assert cycle_beats("four", {}, book) == 4.0
    assert cycle_beats("four", {"lobes": 3}, book) == 3.0
    assert cycle_beats("slow", {}, book) == 9.0
    assert cycle_beats("both", {}, book) == 1.0  # the right hand's: an inspin of one petal
    assert turn_beats("weave", {}, beats=3.0, book=book) == 3.0
    assert turn_beats("weave", {}, beats=3.0, side="left", book=book) == 1.5


def test_a_law_takes_the_pattern_s_tether_then_the_prop_s_then_the_usual():
    """An isolation's hand circles at half the tether."""

    def radius(given, tether=None):
        law = law_for("isolation", given, side="right", body=BODY, tether=tether)
        return sum(x * x for x in law.hand.arms[0].vector) ** 0.5

    assert radius({"tether": 0.6}, 0.8) == pytest.approx(0.3)
    assert radius({}, 0.8) == pytest.approx(0.4)
    assert radius({}) == pytest.approx(0.255)


def test_a_law_goes_as_told():
    usual = law_for("carry", {}, side="right", body=BODY)
    assert usual.period == 4.0
    assert law_for("carry", {}, side="right", body=BODY, beats=3.0).period == 3.0
    assert isinstance(law_for("carry", {}, side="right", body=BODY, opposite=True), Mirrored)
    assert not isinstance(usual, Mirrored)
    with pytest.raises(ValueError, match="beats of a cycle must be positive"):
        law_for("carry", {}, side="right", body=BODY, beats=0.0)
