"""Edits for a cast of three: which of their entries, formations and props each touches, by hand.

Ash, Birch and Cedar dance static-spin together and mirrored from beat 8 to 16; from 16 on Ash and, one beat
later, Cedar dance an extension in canon, Birch one alone; from 32 on all dance a phrase, from 40 Ash and Birch
with a pattern in each hand, from 44 Birch alone. They stand in `close` to beat 12, walk to `there` until 28 and
from 44 to 48 to a named line.
"""

import math
from dataclasses import replace

import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances.spacing import Conflict
from sequencer.planning.edits import danced_edits as danced
from sequencer.planning.edits import floor_edits as floor
from sequencer.planning.edits.moves import MovePlace
from tests.unit.planning.mends.test_space_mends import stage, text_of

TEXT = (
    text_of(
        "spots: {Ash: {at: [-1, 4], facing: 10}, Birch: {at: [1, 4.5]}, Cedar: {at: [3, 6]}}",
        "who: all, from: 3.1, pattern: static-spin, cycle: 1, beats: 8, timing: together, mirror: all}\n"
        "  - {who: [Ash, Cedar], from: 5.1, pattern: extension, cycle: 2, beats: 8, canon: 1,"
        " with: {hand_radius: 40 cm}}\n"
        "  - {who: Birch, from: 5.1, pattern: extension, cycle: 2, beats: 8, timing: together}\n"
        "  - {who: all, from: 9.1, phrase: turns}\n"
        "  - {who: [Ash, Birch], from: 11.1, left: {pattern: static-spin}, right: {pattern: extension},"
        " cycle: 2, beats: 4, mirror: [Birch]}\n"
        "  - {who: Birch, from: 12.1, pattern: static-spin, cycle: 1, beats: 4, timing: together",
        more="  there:\n    spots: {Ash: {at: [-1, 4]}, Birch: {at: [1, 6.5]}, Cedar: {at: [3, 6]}}\n"
        "  row:\n    shape: line\n    centre: [0, 4]\n    spacing: 2.6\n    turn: 5\n",
        walk="  - {formation: there, from: 4.1, beats: 16}\n  - {formation: row, from: 12.1, beats: 4}\n",
    ).replace(
        "prop: *poi}",
        "prop: poi}\n"
        "  - {name: Cedar, stature: 1.7, left: {kind: poi, tether: 0.52}, right: {kind: poi, tether: 0.5}}",
    )
    + "phrases:\n  turns:\n    - {pattern: static-spin, cycle: 1, beats: 8, timing: together}\n"
)


def conflict(start, end, first=0, second=1):
    return Conflict(
        first=first, second=second, start=start, end=end, distance=0.1, at=start,
        spans=((start, end),), parts=("head", "head"), where=(0.0, 4.0),
    )  # fmt: skip


@pytest.fixture(scope="module")
def show():
    return stage(TEXT)


def test_a_copy_for_one_of_three_leaves_the_entry_to_the_others(show):
    found = list(danced.shifts(show, conflict(8.0, 16.0, 2, 0)))
    assert len(found) == 12
    copy = {
        "from": "3.1",
        "pattern": "static-spin",
        "cycle": "1",
        "beats": "8",
        "timing": "together",
    }
    for who, rest, edit in (
        ("Cedar", ["Ash", "Birch"], found[3]),
        ("Ash", ["Birch", "Cedar"], found[9]),
    ):
        assert edit.changes == ((("timeline", 0, "who"), rest),)
        assert edit.insertions == (
            (("timeline",), 1, {"who": who, **copy, "shift": -1, "mirror": who}),
        )
        assert edit.words == f"let {who} start 1 beat earlier in static-spin at 3.1"
    assert found[10].words == "let Ash start 2 beats further into static-spin at 3.1"
    assert found[4].insertions[0][2]["shift"] == 2


def test_who_dances_in_canon_or_in_a_phrase_is_not_shifted_alone(show):
    assert list(danced.shifts(show, conflict(16.5, 25.0, 0, 2))) == []
    assert list(danced.shifts(show, conflict(33.0, 35.0))) == []
    (*rest,) = danced.shifts(show, conflict(16.5, 25.0, 0, 1))
    assert [edit.changes for edit in rest] == [
        ((("timeline", 2, "shift"), by),) for by in (0.5, -0.5, 1, -1, 2, -2)
    ]


def test_a_mirror_of_one_goes_with_them_and_leaves_none():
    """Birch alone is mirrored: their copy is, the rest is not; a copy of Ash's is not mirrored."""
    text = TEXT.replace("{who: [Ash, Birch], from: 11.1, left: {pattern: static-spin}, right:"
                        " {pattern: extension}", "{who: [Ash, Birch], from: 11.1, pattern: extension")  # fmt: skip
    found = list(danced.shifts(stage(text), conflict(33.0, 42.0)))
    ash, birch = found[0], found[6]
    assert ash.changes == ((("timeline", 4, "who"), ["Birch"]),)
    assert "mirror" not in ash.insertions[0][2]
    assert birch.changes == (
        (("timeline", 4, "who"), ["Ash"]),
        (("timeline", 4, "mirror"), None),
    )
    assert birch.insertions[0][:2] == (("timeline",), 5)
    assert birch.insertions[0][2]["mirror"] == "Birch"


def test_a_canon_is_changed_where_both_dance_it(show):
    assert list(danced.canons(show, conflict(16.0, 24.0, 0, 1))) == []
    assert list(danced.canons(show, conflict(16.0, 24.0, 1, 2))) == []
    found = list(danced.canons(show, conflict(16.0, 24.0, 2, 0)))
    assert [(edit.changes, edit.cost) for edit in found] == [
        (((("timeline", 1, "canon"), canon),), cost)
        for canon, cost in ((1.5, 0.25), (0.5, 0.25), (2, 0.5), (3, 1.0))
    ]


def test_a_canon_of_all_three_costs_twice_as_much():
    """The second moves by the change, the third by twice as much: two moves in all."""
    text = TEXT.replace("who: [Ash, Cedar], from: 5.1", "who: all, from: 5.1").replace(
        "  - {who: Birch, from: 5.1, pattern: extension, cycle: 2, beats: 8, timing: together}\n",
        "",
    )
    found = list(danced.canons(stage(text), conflict(16.0, 24.0)))
    assert [edit.cost for edit in found] == [0.5, 0.5, 1.0, 2.0]
    assert found[1].words == "set the canon of extension to 0.5 beats instead of 1"


def test_another_plane_is_danced_in_a_copy_or_by_all(show):
    """static-spin and extension are danced in the wall, wheel and floor planes, as written in the wall."""
    found = list(danced.planes(show, conflict(8.0, 16.0, 1, 0)))
    assert [edit.words.split(" dance")[0] for edit in found] == [
        "let Birch", "let everyone", "let Birch", "let everyone",
        "let Ash", "let everyone", "let Ash", "let everyone",
    ]  # fmt: skip
    assert found[0].changes == ((("timeline", 0, "who"), ["Ash", "Cedar"]),)
    assert found[0].insertions[0][:2] == (("timeline",), 1)
    assert found[0].insertions[0][2]["with"] == {"plane": "wheel"}
    assert found[2].insertions[0][2]["with"] == {"plane": "floor"}
    assert found[3].changes == ((("timeline", 0, "with"), {"plane": "floor"}),)
    assert found[3].insertions == ()
    assert found[3].words == "let everyone dance static-spin at 3.1 in the floor plane"
    assert [edit.cost for edit in found] == [1.5, 2.25] * 4


def test_a_plane_in_canon_or_phrase_is_changed_for_all_and_keeps_what_is_set(show):
    found = list(danced.planes(show, conflict(17.5, 20.0, 0, 2)))
    assert [edit.changes for edit in found] == [
        ((("timeline", 1, "with"), {"hand_radius": "40 cm", "plane": plane}),)
        for plane in ("wheel", "floor", "wheel", "floor")
    ]
    assert [edit.words[:28] for edit in found[1:3]] == [
        "let everyone dance extension", "let everyone dance extension",
    ]  # fmt: skip
    phrase = list(danced.planes(show, conflict(33.0, 35.0)))
    assert [edit.changes for edit in phrase] == [
        ((("phrases", "turns", 0, "with"), {"plane": plane}),)
        for plane in ("wheel", "floor", "wheel", "floor")
    ]
    assert list(danced.planes(show, conflict(40.5, 42.0))) == [], "the hands differ"
    alone = list(danced.planes(show, conflict(40.5, 46.0, 1, 2)))
    assert [edit.changes[0] for edit in alone] == [
        (("timeline", 5, "with"), {"plane": plane})
        for plane in ("wheel", "wheel", "floor", "floor")
    ]


def test_both_tethers_are_shortened_and_neither_below_the_least(show):
    """Ash's 45 cm prop three times, Cedar's 52 and 50 cm four times: to 30 cm and no further."""
    found = list(danced.tethers(show, conflict(8.0, 16.0, 0, 2)))
    assert [edit.changes for edit in found] == [
        *(((("cast", 0, "prop"), {"tether": tether}),) for tether in (0.4, 0.35, 0.3)),
        *(
            (
                (("cast", 2, "left"), {"kind": "poi", "tether": left}),
                (("cast", 2, "right"), {"kind": "poi", "tether": right}),
            )
            for left, right in ((0.47, 0.45), (0.42, 0.4), (0.37, 0.35), (0.32, 0.3))
        ),
    ]
    assert_allclose([edit.cost for edit in found], [0.2, 0.4, 0.6, 0.2, 0.4, 0.6, 0.8])
    assert found[-1].words == "Cedar's tethers at 0.32 m (now 0.52 m)"


def test_a_prop_named_by_its_kind_is_written_out(show):
    usual = show.show.cast[1].prop.sized(1.7).tether
    found = list(danced.tethers(show, conflict(8.0, 16.0, 1, 1)))
    assert found[0].changes == (
        (("cast", 1, "prop"), {"kind": "poi", "tether": round(usual - 0.05, 3)}),
    )


def test_who_does_not_walk_far_is_not_bent(show):
    """Only Birch walks, 2 m upstage: their left is −x; the bend of one whole metre is the third."""
    found = list(floor.ways(show, conflict(13.0, 20.0, 0, 1)))
    assert len(found) == 12
    assert [edit.changes[0][1] for edit in found[:4]] == [
        {"Birch": [point]} for point in ([0.5, 5.5], [1.5, 5.5], [0.0, 5.5], [2.0, 5.5])
    ]  # fmt: skip
    assert list(floor.ways(show, conflict(13.0, 20.0, 0, 2))) == []
    assert next(floor.ways(show, conflict(13.0, 20.0, 2, 1))).changes == found[0].changes


def test_the_walk_of_the_time_is_bent(show):
    """To the line whose middle is (0, 4), from 44 on: its left end at 185° from (0, 4), 2.6 m away."""
    found = list(floor.ways(show, conflict(45.0, 46.0, 0, 1)))
    assert {edit.changes[0][0] for edit in found} == {("staging", 2, "via")}
    assert found[0].words.startswith("walking to row at 12.1, send Ash by [")


@pytest.mark.parametrize(("far", "walks"), [(0.5, False), (0.5001, True)])
def test_half_a_metre_is_not_yet_a_walk_to_be_bent(show, far, walks):
    there = replace(
        show.standings[1], spots={**show.standings[0].spots, "Birch": (1.0, 4.5 + far, 0.0)}
    )
    near = replace(show, standings=(show.standings[0], there))
    assert bool(list(floor.ways(near, conflict(13.0, 20.0)))) == walks


def test_a_bend_that_is_written_stays():
    text = TEXT.replace(
        "{formation: there, from: 4.1, beats: 16}",
        "{formation: there, from: 4.1, beats: 16, via: {Birch: [[2, 5]]}}",
    )
    assert list(floor.ways(stage(text), conflict(13.0, 20.0))) == []


def test_facings_are_turned_in_every_formation_of_the_time(show):
    """Ash faces 10° in the first, 0° in the second; a named shape has no spots to turn."""
    found = list(floor.facings(show, conflict(8.0, 13.0, 0, 2)))
    assert found[0].changes == (
        (("formations", "close", "spots", "Ash", "facing"), 25),
        (("formations", "there", "spots", "Ash", "facing"), 15),
    )
    assert found[0].words == "turn Ash 15° anticlockwise (seen from above) in close and there"
    assert [edit.changes[0][1] for edit in found[:6]] == [25, -5, 40, -20, 55, -35]
    assert [edit.changes[1][1] for edit in found[6:]] == [15, -15, 30, -30, 45, -45]
    assert list(floor.facings(show, conflict(29.0, 46.0, 0, 2))) == []


def test_what_is_widened_and_turned_by_the_time(show):
    widened = list(floor.widened(show, conflict(29.0, 46.0)))
    assert [edit.changes[0][0][1] for edit in widened] == ["there"] * 9 + ["row"] * 9 + [
        "there"
    ] * 9
    assert (
        widened[18].words
        == "spread there from its middle: neighbours 2.17 m apart, not 2.06 m and spread row from its middle: neighbours 2.75 m apart, not 2.60 m"
    )
    assert widened[18].changes == widened[0].changes + widened[9].changes
    # the middle of (−1, 4), (1, 6.5), (3, 6) is (1, 5.5); at 200 % each stands twice as far from it
    assert [change[1] for change in widened[8].changes] == [[-3.0, 2.5], [1.0, 7.5], [5.0, 6.5]]
    far = math.hypot(2, 1.5) + 1 + math.hypot(2, 0.5)
    assert_allclose([edit.cost for edit in widened[:2]], [0.05 * far, 0.1 * far])
    assert widened[9].changes == ((("formations", "row", "spacing"), 2.75),)
    assert widened[9].words == "spread row from its middle: neighbours 2.75 m apart, not 2.60 m"
    assert_allclose(widened[17].cost, 2 * 2.6)
    assert_allclose(widened[26].cost, widened[8].cost + widened[17].cost)
    turned = list(floor.turned(show, conflict(29.0, 46.0)))
    assert [edit.changes[0][1] for edit in turned] == [20, -10, 35, -25, 50, -40, 95]
    assert_allclose(turned[-1].cost, 5.2 * math.sqrt(2))  # the chord of a right angle
    assert list(floor.turned(show, conflict(8.0, 28.0))) == []


def mend(start, end, *, who=("Ash",), by=((0.25, -0.5),)):
    return MovePlace(who=who, by=by, start=start, end=end, distance=0.32)


def test_a_place_is_moved_in_every_formation_held_then(show, monkeypatch):
    """Held, not walked to: `there` from 28 on. Who stands in a shape is not moved."""
    given = [
        mend(8.0, 12.0),
        mend(8.0, 30.0, who=("Ash", "Birch"), by=((0.25, -0.5), (-0.125, 0.0))),
        mend(30.0, 60.0),
        mend(12.0, 28.0),
        mend(28.0, 30.0, who=("Cedar",), by=((0.0, 1.0),)),
    ]
    monkeypatch.setattr(floor, "place_mends", lambda *_given, **_named: given)
    found = list(floor.places(show, conflict(8.0, 16.0), (0.0, 48.0), 0.3))
    spots = ("formations", "close", "spots")
    there = ("formations", "there", "spots")
    assert [edit.changes for edit in found] == [
        (((*spots, "Ash", "at"), [-0.75, 3.5]),),
        (
            ((*spots, "Ash", "at"), [-0.75, 3.5]),
            ((*spots, "Birch", "at"), [0.85, 4.5]),
            ((*there, "Ash", "at"), [-0.75, 3.5]),
            ((*there, "Birch", "at"), [0.85, 6.5]),
        ),
        (((*there, "Cedar", "at"), [3.0, 7.0]),),
    ]
    assert_allclose(
        [edit.cost for edit in found], [math.hypot(0.25, 0.5), math.hypot(0.25, 0.5) + 0.15, 1.0]
    )
    assert found[0].words.endswith(" in close")
    assert found[1].words.startswith("move Ash ")
    assert " and Birch " in found[1].words
    assert found[1].words.endswith(" in close and there")


def test_the_place_mends_are_asked_for_this_conflict(show, monkeypatch):
    asked = []
    monkeypatch.setattr(
        floor, "place_mends", lambda *given, **named: asked.append((given, named)) or []
    )
    assert list(floor.places(show, conflict(8.0, 16.0, 0, 2), (0.0, 48.0), 0.3)) == []
    assert asked == [
        (
            (show.dancers, 0, 2),
            {"conflict": (8.0, 16.0), "show": (0.0, 48.0), "required": 0.3, "crowding": False},
        )
    ]


@pytest.mark.parametrize(
    ("value", "number"), [(2.0, 2), (-1.0, -1), (0.5, 0.5), (1 / 3, 0.333333), (3, 3)]
)
def test_whole_numbers_are_written_whole(value, number):
    found = danced.plain(value)
    assert (found, type(found)) == (number, type(number))


@pytest.mark.parametrize("end", [8.0, 8.0 + 9e-7])
def test_a_millionth_of_a_beat_is_no_overlap(show, end):
    assert danced._danced(show, conflict(4.0, end), "Ash") == []
    assert len(danced._danced(show, conflict(4.0, 8.0 + 2e-6), "Ash")) == 1
    assert danced._danced(show, conflict(44.0 - 9e-7, 50.0), "Ash") == []
    assert len(danced._danced(show, conflict(44.0 - 2e-6, 50.0), "Ash")) == 1
    standing = floor._formations_between(show, 0.0, 12.0 + end - 8.0)
    assert [one.formation for one in standing] == ["close"]
    assert len(floor._formations_between(show, 0.0, 12.0 + 2e-6)) == 2
    assert [one.formation for one in floor._formations_between(show, 12.0 - 9e-7, 13.0)] == [
        "there"
    ]
    assert len(floor._formations_between(show, 12.0 - 2e-6, 13.0)) == 2
    assert [one.formation for one in floor._moved_with(show, mend(12.0 - 9e-7, 28.0 + 9e-7))] == []
    assert [one.formation for one in floor._moved_with(show, mend(12.0 - 2e-6, 28.0 + 2e-6))] == [
        "close", "there",
    ]  # fmt: skip
    assert list(floor.ways(show, conflict(4.0, 4.0 + end))) == []
    assert list(floor.ways(show, conflict(28.0 - 9e-7, 31.0))) == []
    assert len(list(floor.ways(show, conflict(28.0 - 2e-6, 31.0)))) == 12


def test_what_just_touches_is_left_out(show, monkeypatch):
    """With half a beat for a touch, so that sums are exact: equal is not over."""
    monkeypatch.setattr(floor, "TOUCH", 0.5)
    monkeypatch.setattr(danced, "TOUCH", 0.5)
    assert danced._danced(show, conflict(4.0, 8.5), "Ash") == []
    assert danced._danced(show, conflict(43.5, 50.0), "Ash") == []
    assert [one.formation for one in floor._formations_between(show, 0.0, 12.5)] == ["close"]
    assert [one.formation for one in floor._formations_between(show, 11.5, 13.0)] == ["there"]
    assert floor._moved_with(show, mend(11.5, 28.5)) == []
    assert list(floor.ways(show, conflict(4.0, 12.5))) == []
    assert list(floor.ways(show, conflict(27.5, 31.0))) == []


def test_a_formation_that_the_file_does_not_name_is_left_and_the_others_are_not(show):
    """The first stands in `nowhere`: what is known is widened and turned all the same, what needs all is not."""
    first, second, third = show.standings
    odd = replace(show, standings=(replace(first, formation="nowhere"), second, third))
    widened = list(floor.widened(odd, conflict(8.0, 46.0)))
    assert [edit.changes[0][0][1] for edit in widened] == ["there"] * 9 + ["row"] * 9 + [
        "there"
    ] * 9
    assert len(list(floor.turned(odd, conflict(8.0, 46.0)))) == 7
    assert list(floor.facings(odd, conflict(8.0, 11.0))) == []
    assert floor._moved(odd, odd.standings[:1], mend(8.0, 11.0), shaped=True) is None
    assert floor._moved(odd, odd.standings[:2], mend(8.0, 11.0), shaped=True) is None
