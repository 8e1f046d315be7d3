"""What a switch of who is there changed, said part by part; against a show whose counts and spots are known by hand."""

import pytest

from sequencer.outputs.compared.switched import switched
from sequencer.staging.timeline import staged
from tests.songs import even_song
from tests.unit.show.test_tonight import SHOW, read

BIRCH = "tonight: {away: [Birch]}\n"
FERN = "tonight: {stand_ins: [{for: Birch, name: Fern, stature: 1.5 m}]}\n"
CARD = SHOW.replace("stop_call:", "emergency: {caller: Ivy, meets: 'Oak, at the gate'}\nstop_call:")


def switch(before, after, text=SHOW):
    return switched(*(staged(read(each, text), even_song(80)) for each in (before, after, "")))


def test_nothing_is_told_where_nothing_is_switched():
    for tonight in ("", BIRCH, FERN):
        found = switch(tonight, tonight)
        assert (found.parts, found.changes, found.together) == ((), (), ())
        assert [each.state for each in found.jobs] == ["still open"] * (
            2 if tonight == BIRCH else 0
        )


def test_what_falls_out_row_by_row_and_what_comes_back():
    out = switch("", BIRCH).changes
    assert [(each.part, each.kind, each.moves) for each in out] == [("Birch", "out", 4)]
    (section,) = out[0].sections
    assert (section.section, section.moves) == ("A", 4)
    assert [(row.bar, row.position, row.second, row.moves, row.words) for row in section.rows] == [
        (1, "2.1", 2.0, 1, "extension"),
        (5, "5.1", 8.0, 1, "extension"),
        (9, "9.1", 16.0, 2, "extension (2 times)"),
    ]
    back = switch(BIRCH, "").changes
    assert back[0].kind == "back"
    assert back[0].sections == out[0].sections


@pytest.mark.parametrize(("stop", "moves"), [("rest", 4), ("hold", 5)])
def test_links_and_rests_are_no_moves_and_a_hold_is(stop, moves):
    more = f"  - {{who: Birch, link: true, beats: 2}}\n  - {{who: Birch, {stop}: 2}}\nfire:\n"
    found = switch("", BIRCH, SHOW.replace("fire:\n", more))
    assert found.changes[0].moves == moves


def test_each_section_has_its_own_count():
    named = SHOW.replace(
        "track: {file: a.ogg}",
        "track: {file: a.ogg, corrections: {sections: [{from: 1.1, name: intro}, {from: 5.1, name: verse}]}}",
    )
    sections = switch("", BIRCH, named).changes[0].sections
    assert [(each.section, each.moves) for each in sections] == [("intro", 1), ("verse", 3)]


def test_who_stands_where_and_which_spot_stays_empty():
    row, deep = switch("", BIRCH).stands
    assert (row.formation, row.position) == ("row", "1.1")
    assert [(each.part, each.person, each.at) for each in row.spots] == [
        ("Ash", "Ash", (-3.0, 4.0)), ("Birch", None, (0.0, 4.0)), ("Cedar", "Cedar", (3.0, 4.0)),
    ]  # fmt: skip
    assert (deep.formation, deep.position, deep.second) == ("deep", "11.1", 20.0)
    assert switch(BIRCH, FERN).stands[1].spots[1].person == "Fern"


@pytest.mark.parametrize(
    ("before", "after", "canon", "mirror"),
    [
        ("", BIRCH, "Cedar leads it now, 4 counts after its first count, since Birch is away", "nobody mirrors Cedar and Ash: Birch is away"),
        (BIRCH, "", "Birch leads it now, at its first count", "Birch mirrors Cedar and Ash"),
        ("", FERN, "Fern leads it now, at its first count, in the place of Birch", "Fern mirrors Cedar and Ash"),
        ("", "tonight: {away: [Cedar, Ash]}\n", "Birch dances it alone, at its first count: no canon is left", "Birch dances the mirror image of nobody: Cedar and Ash are away"),
        ("tonight: {away: [Cedar, Ash]}\n", "", "Birch leads it again, at its first count", "Birch mirrors Cedar and Ash"),
        ("", "tonight: {away: [Ash]}\n", None, "Birch mirrors Cedar"),
        ("", "tonight: {away: [Birch, Cedar]}\n", "Ash dances it alone, 8 counts after its first count: no canon is left", "nobody mirrors Ash: Birch is away"),
    ],
)  # fmt: skip
def test_who_leads_a_canon_and_who_mirrors_whom(before, after, canon, mirror):
    found = {each.kind: each for each in switch(before, after).together}
    assert found.get("canon") is None if canon is None else found["canon"].words == canon
    assert found["mirror"].words == mirror
    assert {(each.title, each.position, each.second) for each in found.values()} == {("extension", "5.1", 8.0)}  # fmt: skip


def test_what_nobody_dances_any_more():
    alone = SHOW.replace("who: [Birch, Cedar, Ash], from: 5.1", "who: [Birch, Cedar], from: 5.1")
    found = switch("", "tonight: {away: [Birch, Cedar]}\n", alone).together
    assert [each.words for each in found] == ["nobody dances it: Birch and Cedar are away"] * 2


def test_jobs_that_nobody_has_and_who_else_has_the_duty():
    found = switch("", "tonight: {away: [Ivy]}\n", CARD).jobs
    assert [(each.job, each.state, each.left) for each in found] == [
        ("spotter at the post", "open", ()),
        ("watches Birch", "open", ()),
        ("lights the props", "open", ()),
        ("lights Birch", "open", ()),
        ("calls for help, by the emergency card", "open", ()),
    ]
    two = SHOW.replace("crew:\n", "crew:\n  - {name: Yew, post: [0, 9], duty: lighter}\n")
    (post, *others) = switch("", "tonight: {away: [Oak]}\n", two).jobs
    assert (post.job, post.left) == ("lighter at the post", ("Yew",))
    assert [each.job for each in others] == [
        "watches Ash",
        "watches Birch",
        "puts Ash and Birch out",
    ]


def test_a_stand_in_fills_what_the_part_has_and_not_what_the_card_gives_to_a_person():
    stands_in = "tonight: {stand_ins: [{for: Ivy, name: Rue}]}\n"
    found = switch("tonight: {away: [Ivy]}\n", stands_in, CARD).jobs
    assert [(each.job, each.state) for each in found] == [
        ("spotter at the post", "filled"),
        ("watches Birch", "filled"),
        ("lights the props", "filled"),
        ("lights Birch", "filled"),
        ("calls for help, by the emergency card", "still open"),
    ]
    duty = SHOW.replace("Ash: lie down}", "spotter: cut the music}")
    assert "cut the music" not in str(switch("", "tonight: {away: [Ivy]}\n", duty).jobs)


def test_who_has_each_part_now():
    def words(*tonight):
        return [each.words for each in switch(*tonight).parts]

    assert words("", "tonight: {away: [Birch, Oak]}\n") == ["Birch is away", "Oak is away"]
    assert words(BIRCH, FERN) == ["Fern dances the part of Birch"]
    assert words(FERN, BIRCH) == ["Birch’s part: Fern is away too"]
    assert words(FERN, "") == ["Birch is there again, instead of Fern"]
    assert words(BIRCH, "") == ["Birch is there again"]
    other = FERN.replace("Fern", "Gorse")
    assert words(FERN, other) == ["Gorse dances the part of Birch, instead of Fern"]
    assert words("", "tonight: {stand_ins: [{for: Oak, name: Elm}]}\n") == [
        "Elm takes the post of Oak"
    ]


def test_a_stand_in_dances_some_moves_otherwise_by_their_own_body():
    small = FERN.replace("1.5 m", "1.2 m")  # too small for the usual place of the hands
    there, back = (switch(*each).changes for each in (("", small), (small, "")))
    assert [(each.part, each.kind, each.moves) for each in (*there, *back)] == [("Birch", "otherwise", 4)] * 2  # fmt: skip
    rows = [row.words for each in there[0].sections for row in each.rows]
    assert rows[0] == "extension: circles 35 cm in radius, centred 20 cm ahead, 15 cm out to each side, at shoulder height"  # fmt: skip
    assert back[0].sections[0].rows[0].words == "extension: in the usual place"
    assert switch("", FERN.replace("1.5 m", "1.6 m")).changes == ()
