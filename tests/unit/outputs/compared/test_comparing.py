"""What changed, in a performer's words, eight by eight."""

from functools import reduce

import pytest

from sequencer.outputs.compared.comparing import ComparedText, compared, sheet_rows
from sequencer.show.drafted import mark_of
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.property.test_edits import SHOW, SONG
from tests.songs import even_song


def stage(text, song=SONG):
    return staged(show_from_document(parse_document(text, "s.yaml")), song)


def between(*pairs, old=SHOW, stage=stage):
    new = reduce(_replaced, pairs, old)
    return compared(ComparedText("then", old), ComparedText("now", new), stage)


def _replaced(text, pair):
    assert pair[0] in text, pair
    return text.replace(*pair)


def told(found):
    """Each change as who, when and what."""
    return [(",".join(each.who), each.position, each.words) for each in found.changes]


def test_moves_put_gone_stretched_moved_and_danced_otherwise():
    found = between(
        ("cycle: 1, beats: 8}", "cycle: 2, beats: 6}"),
        ("from: 5.1, pattern: two-beat-weave", "from: 5.2, pattern: two-beat-weave"),
        ("  - {who: Cedar, rest: 6}\n", ""),
        ("from: 8.1, phrase: both}", "from: 9.1, phrase: both, mirror: Birch}"),
    )
    assert told(found) == [
        ("Cedar", "2.1", "static-spin: one hand cycle in 2 beats instead of 1 beat; 6 beats instead of 8"),
        ("Cedar", "5.2", "two-beat-weave: 1 beat later, from 5.2 instead of 5.1"),
        ("Cedar", "6.3", "a rest, 6 beats, is gone"),
        ("Ash,Cedar", "9.1", "extension: 4 beats later, from 9.1 instead of 8.1"),
        ("Birch", "9.1", "extension: left and right changed over; 4 beats later, from 9.1 instead of 8.1"),
        ("Ash,Cedar", "10.3", "two-beat-weave: 4 beats later, from 10.3 instead of 9.3"),
        ("Birch", "10.3", "two-beat-weave: left and right changed over; 4 beats later, from 10.3 instead of 9.3"),
    ]  # fmt: skip
    assert [(row.bar, len(row.changes)) for row in found.eights] == [(1, 1), (5, 2), (9, 4)]
    assert found.elsewhere == ()
    assert found.line == "7 changes in what is danced"


def test_hands_timing_parameters_and_another_move():
    found = between(
        ("{pattern: extension, cycle: 2, beats: 6, timing: together}", "{pattern: extension, cycle: 2, beats: 6, timing: split, hands: both, with: {hand_radius: 0.2}}"),
        ("pattern: static-spin, cycle: 1", "pattern: extension, hands: left, cycle: 1"),
    )  # fmt: skip
    words = [each.words for each in found.changes]
    assert any(each.startswith("extension instead of static-spin: the left hand only instead of both hands") for each in words)  # fmt: skip
    assert any("split time instead of same time" in each and "hand radius 0.2" in each for each in words)  # fmt: skip


def test_several_moves_by_the_same_length_are_one_change():
    rows = "".join(f"  - {{who: Ash, from: {bar}.1, pattern: extension, cycle: 2, beats: 4}}\n" for bar in (12, 14, 16))  # fmt: skip
    long = SHOW.replace("fire:\n", f"{rows}fire:\n")
    found = between(
        ("12.1", "13.1"),
        ("14.1", "15.1"),
        ("16.1", "17.1"),
        old=long,
        stage=lambda text: stage(text, even_song(100)),
    )
    (change,) = found.changes
    assert change.words == "3 pieces, from 13.1 to 17.1: 4 beats later (extension)"
    assert len(change.spans) == len(change.before) == 3


def test_a_canon_is_told_as_one_and_by_its_performers():
    found = between(("from: 8.1, phrase: both}", "from: 8.1, phrase: both, canon: 2}"))
    words = told(found)
    assert ("", "8.1", "phrase both from 8.1 (Ash, Birch, Cedar): one after the other, 2 beats apart, instead of all at once") in words  # fmt: skip
    assert ("Cedar", "9.1", "extension: 4 beats later, from 9.1 instead of 8.1") in words


def test_spots_walks_and_ways_by_how_much():
    found = between(
        ("Birch: {at: [0, 4]}", "Birch: {at: [0.3, 3.6], facing: 45}"),
        ("deep, from: 5.1, beats: 8}", "deep, from: 6.1, beats: 6, via: {Ash: [[-4, 3]]}}"),
    )
    assert told(found) == [
        ("Birch", "1.1", "formation wide: 0.30 m to stage left and 0.40 m downstage, at [0.3, 3.6] instead of [0, 4]; faces 45° instead of 0°"),
        ("", "6.1", "to formation deep: from 6.1 instead of 5.1, a walk of 6 beats instead of 8 beats"),
        ("Ash", "6.1", "to formation deep: through [-4, 3] instead of straight there"),
    ]  # fmt: skip
    (move,) = found.changes[0].moves
    assert (move.before, move.after) == ((0.0, 4.0), (0.3, 3.6))


def test_cast_place_crew_rules_and_names_in_words():
    found = between(
        ("Ash, stature: 1.7, prop: {tether: 0.45}", "Ash, stature: 1.72 m, prop: staff"),
        ("fuel_station: [12, 12]", "fuel_station: [12, 9]\n  exits: [{name: east, at: [7, 2], width: 1.2 m}]"),
        ("{name: Ivy, post: [-8, 6], duty: spotter}", "{name: Ivy, post: [-8, 7], duty: lead}"),
        ("rules: {}", "limits: {hand_speed: 7}\nrules: {}"),
        ("  fuel: kerosene\n", "  fuel: lamp-oil\n"),
    )  # fmt: skip
    words = [each.words for each in found.changes]
    for each in (
        "Ash: stature 1.72 m instead of 1.7",
        "exit east is new: at [7, 2], width 1.2 m",
        "place: fuel station [12, 9] instead of [12, 12], 3.00 m away",
        "Ivy: post [-8, 7] instead of [-8, 6], 1.00 m away",
        "Ivy: duty lead instead of spotter",
        "limits: hand speed 7 instead of the usual 6",
        "fire: fuel lamp-oil instead of kerosene",
    ):
        assert any(each in own for own in words), (each, words)
    assert any(own.startswith("Ash, prop: kind staff instead of") for own in words), words


def test_a_new_name_is_a_new_name_and_nothing_else():
    found = between(("Birch", "Rowan"), ("wide", "line"), ("both", "double"))
    assert sorted(each.words for each in found.changes) == [
        "Birch is called Rowan now", "the formation wide is called line now", "the phrase both is called double now",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("pair", "words"),
    [
        (("title: Three\n", "title: Three   # ours\n"), ["the comment “ours” is new"]),
        (("stature: 1.7,", "stature: 1.70 m,"), ["Ash: stature 1.70 m instead of 1.7; it says the same"]),
        (("stature: 1.7,", "stature:   1.7,"), ["spacing, quotes or the order of keys or comments differ"]),
        (("\n", "\r\n"), ["line ends differ"]),
        (("{who: Cedar, rest: 6}", "{rest: 6, who: Cedar}"), ["spacing, quotes or the order of keys or comments differ"]),
    ],
)  # fmt: skip
def test_what_is_written_otherwise_and_says_the_same_is_said_to(pair, words):
    found = between(pair)
    assert [each.words for each in found.changes] == words
    assert found.says_the_same
    assert found.line == "only comments or spelling differ"


def test_entries_put_down_otherwise_and_danced_alike_are_said_to():
    found = between(("  - {who: Cedar, rest: 6}\n", "  - {who: Cedar, from: 6.3, rest: 6}\n"))
    (change,) = found.changes
    assert (change.subject, change.words) == ("entries", "rest from 6.3 (Cedar): from 6.3 instead of nothing (danced alike)")  # fmt: skip
    assert not found.says_the_same


def test_what_cannot_be_staged_or_read_is_compared_all_the_same():
    found = between(("pattern: two-beat-weave, beats: 6}\n  - {who: Cedar, rest", "pattern: nothing-like-it, beats: 6}\n  - {who: Cedar, rest"))  # fmt: skip
    assert "nothing-like-it" in found.faults[0]
    assert [each.words for each in found.changes] == ["two-beat-weave from 5.1 (Cedar): pattern nothing-like-it instead of two-beat-weave".replace("two-beat-weave from", "nothing-like-it from")]  # fmt: skip
    found = between(("title: Three", "titel: Three"))
    assert found.faults
    assert [each.words for each in found.changes] == ["title Three is gone", "titel Three is new"]
    found = between(("title: Three", "title: [Three"))
    assert [each.words for each in found.changes] == [
        "line 1: “title: [Three” instead of “title: Three”"
    ]


def test_an_entry_that_changed_beside_a_new_one_is_told_as_changed():
    found = between(
        ("cycle: 1, beats: 8}", "cycle: 1, beats: 6}\n  - {who: Ash, from: 6.1, pattern: corkscrew, beats: 4}"),
        stage=None,
    )  # fmt: skip
    assert [each.words for each in found.changes] == [
        "static-spin from 2.1 (Cedar): beats 6 instead of 8",
        "corkscrew from 6.1 (Ash) is new: who Ash, from 6.1, pattern corkscrew, beats 4",
    ]


def test_rows_are_two_bars_and_a_section_begins_a_new_one():
    text = SHOW.replace("track: {file: song.ogg}", "track: {file: song.ogg, corrections: {sections: [{from: 1.1, name: one}, {from: 4.1, name: two}]}}")  # fmt: skip
    rows = sheet_rows(stage(text), 0.0)
    assert [(row.bar, row.section) for row in rows[:4]] == [
        (1, "one"),
        (3, "one"),
        (4, "two"),
        (6, "two"),
    ]


@pytest.mark.parametrize(
    ("metre", "bars"), [(2, [1, 5, 7, 11, 15]), (3, [1, 3, 5, 7, 9]), (4, [1, 3, 5, 7, 9])]
)
def test_a_row_is_an_eight_of_two_beats_a_bar_too(metre, bars):
    borders = "sections: [{from: 1.1, name: one}, {from: 7.1, name: two}]"
    text = SHOW.replace("track: {file: song.ogg}", f"track: {{file: song.ogg, corrections: {{metre: {metre}, {borders}}}}}")  # fmt: skip
    text = text[: text.index("timeline:")] + "timeline:\n  - {from: 1.1, rest: 40}\n"
    rows = sheet_rows(stage(text), 0.0)
    assert [row.bar for row in rows[:5]] == bars


TONIGHT = """\
crew:
  - {name: Ivy, post: [-8, 6]}
tonight: {away: [Birch, Ivy], stand_ins: [{for: Ash, name: Fern, stature: 1.6 m}]}
"""


@pytest.mark.parametrize(
    ("old", "new", "who"),
    [
        ("name: Birch, stature: 1.6,", "name: Birch, stature: 1.75,", "Birch"),
        ("name: Ash, stature: 1.7,", "name: Ash, stature: 1.8,", "Ash"),
        ("Birch: {at: [0, 4]}", "Birch: {at: [0, 4.7]}", "Birch"),
        ("post: [-8, 6]", "post: [-9, 6]", "Ivy"),
        ("name: Fern, stature: 1.6 m", "name: Fern, stature: 1.5 m", "tonight"),
    ],
)
@pytest.mark.parametrize("stages", [True, False])
def test_who_is_away_or_replaced_is_compared_as_the_file_says_it(old, new, who, stages):
    text = SHOW[: SHOW.index("\nfire:") + 1] + TONIGHT if "\nfire:" in SHOW else SHOW + TONIGHT
    assert old in text
    sides = ComparedText("then", text), ComparedText("now", text.replace(old, new, 1))
    found = compared(*sides, stage if stages else None)
    assert len(found.changes) == 1
    change = found.changes[0]
    assert who in f"{change.subject} {change.words} {change.who}"


def test_the_file_that_is_no_yaml_is_the_one_that_is_named():
    sides = ComparedText("a", "a: [", file="a.yaml"), ComparedText("b", SHOW, file="b.yaml")
    found = compared(*sides, None, file="b.yaml")
    assert found.faults[0].startswith("compared line by line: a.yaml:")


MARK = "the invisible mark at the start of the file (a byte order mark) is"


@pytest.mark.parametrize(("marks", "words"), [((False, True), "new"), ((True, False), "gone")])
def test_a_byte_order_mark_is_a_matter_of_spelling(marks, words):
    """Alone, beside another title, and before what is no show."""
    for now, others in ((SHOW, 0), (SHOW.replace("title: Three", "title: Four"), 1), ("[", 1)):
        old, new = (
            ComparedText("then", SHOW, marked=marks[0]),
            ComparedText("now", now, marked=marks[1]),
        )
        found = compared(old, new, stage)
        assert found.changes[-1].words == f"{MARK} {words}"
        assert found.changes[-1].subject == "writing"
        assert not found.identical
        assert (len(found.changes) > 1) == bool(others)
        assert found.says_the_same == (not others)
    both = (ComparedText(name, SHOW, marked=True) for name in ("then", "now"))
    assert compared(*both).line == "the same, letter by letter"


def drafted(beats, mark):
    row = f"  - {{who: Ash, from: 12.1, pattern: extension, cycle: 2, beats: {beats}{mark}}}\n"
    return SHOW.replace("fire:\n", f"{row}fire:\n")


def marked(beats):
    row = {"who": "Ash", "from": "12.1", "pattern": "extension", "cycle": "2", "beats": str(beats)}
    return f", drafted: {mark_of(row)}"


@pytest.mark.parametrize("stage", [lambda text: stage(text, even_song(beats=80)), None])
def test_the_mark_of_a_draft_is_never_printed_and_never_unsaid(stage):
    was = drafted(4, marked(4))
    found = compared(ComparedText("then", was), ComparedText("now", drafted(6, marked(6))), stage)
    assert len(found.changes) == 1  # the mark follows what the entry says
    assert "drafted" not in found.changes[0].words
    for new, words in [
        (drafted(4, ""), "no longer marked as drafted"),
        (drafted(4, ", drafted: true"), "the mark of what is drafted is another one"),
    ]:
        found = compared(ComparedText("then", was), ComparedText("now", new), stage)
        assert len(found.changes) == 1
        assert words in found.changes[0].words
        assert stage is None or found.changes[0].subject == "entries"
    found = compared(ComparedText("then", was), ComparedText("now", drafted(6, ", drafted: bcdfg")), stage)  # fmt: skip
    assert any("the mark of what is drafted" in each.words for each in found.changes)
    assert not any("bcdfg" in each.words for each in found.changes)
    gone = compared(ComparedText("then", SHOW), ComparedText("now", was), None).changes[0].words
    assert gone.endswith(", drafted")


def test_the_line_counts_every_change_comments_too():
    found = between(("cycle: 1, beats: 8}", "cycle: 2, beats: 6}  # slower"))
    assert found.line == "1 change in what is danced, 1 change in comments and spelling"
    assert len(found.changes) == 2
