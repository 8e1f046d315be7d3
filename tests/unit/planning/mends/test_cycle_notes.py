"""A note on a cycle that is left open, and the change that writes it down. Reference: the check that notes it."""

from dataclasses import replace

from sequencer.checks.dance.feasible import feasible
from sequencer.checks.fault_kinds import ANOTHER_CYCLE
from sequencer.errors import InputError, Place
from sequencer.planning.mends.cycle_notes import cycle_written
from sequencer.planning.trying.restaging import restaged
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Stalls
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.7, prop: {tether: 0.45}}
formations:
  pair: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4]}}}
staging: [{formation: pair, from: 1.1}]
phrases:
  twice:
    - {pattern: stall, beats: 8}
timeline:
"""


def shown(timeline, tempo=100.0, head=SHOW):
    document = parse_document(head + timeline, "s.yaml")
    return staged(show_from_document(document), even_song(64, tempo=tempo))


def notes(show):
    return [one for one in feasible(show).findings if one.code == ANOTHER_CYCLE]


def test_it_is_written_wherever_they_dance_that_pattern_and_the_note_is_gone():
    show = shown(
        "  - {who: Ash, from: 3.1, pattern: stall, beats: 8}\n"
        "  - {who: Ash, from: 7.1, phrase: twice}\n"
        "  - {who: Birch, from: 3.1, pattern: static-spin, beats: 8}\n"
    )
    (note,) = notes(show)
    edit = cycle_written(show, note)
    assert dict(edit.changes) == {
        ("timeline", 0, "cycle"): 4,
        ("phrases", "twice", 0, "cycle"): 4,
    }
    assert edit.words == "keep it at 4 beats a cycle, whatever the count or the prop: write `cycle: 4`"  # fmt: skip
    after = restaged(show, edit.changes)
    assert notes(after) == []
    assert [block.cycle for block in after.blocks] == [block.cycle for block in show.blocks]


def test_notes_about_both_are_one_change():
    show = shown("  - {from: 3.1, pattern: stall, beats: 8}\n")
    edits = [cycle_written(show, note) for note in notes(show)]
    assert [edit.changes for edit in edits] == [((("timeline", 0, "cycle"), 4),)] * 2


def test_one_number_for_two_who_dance_it_at_different_cycles_is_not_offered():
    show = shown(
        "  - {who: Ash, from: 3.1, phrase: twice}\n  - {who: Birch, from: 3.1, phrase: twice}\n"
    )
    note = notes(show)[0]
    assert cycle_written(show, note) is not None
    assert cycle_written(slower(show, "Birch", 8.0), note) is None


def test_a_cycle_that_no_number_says_exactly_is_not_offered():
    """Written to six places, the dance would be another one by a hair."""
    show = shown("  - {who: Ash, from: 3.1, pattern: stall, beats: 8}\n")
    (note,) = notes(show)
    assert cycle_written(slower(show, "Ash", 8 / 3), note) is None


# Of two who dance one phrase, Birch's staff takes the usual cycle where Ash's poi do not.
STAFF = SHOW.replace(
    "Birch, stature: 1.7, prop: {tether: 0.45}", "Birch, stature: 1.7, prop: {kind: staff, length: 1.4}"
)  # fmt: skip
BOTH = "  - {from: 3.1, phrase: twice}\n"
ASH = "  - {who: Ash, from: 3.1, phrase: twice}\n"
AWAY = "tonight: {away: [Birch]}\n"
TAKEN = "tonight: {stand_ins: [{for: Birch, name: Fern, stature: 1.7, prop: {tether: 0.45}}]}\n"


def test_what_would_change_the_dance_of_who_is_away_is_not_offered():
    everybody = shown(BOTH, 130.0, STAFF)
    assert len({block.cycle for block in everybody.blocks if not block.link}) == 2
    (note,) = notes(shown(BOTH + AWAY, 130.0, STAFF))
    assert cycle_written(shown(BOTH + AWAY, 130.0, STAFF), note) is None
    assert cycle_written(shown(ASH + AWAY, 130.0, STAFF), note) is not None


def test_what_would_change_the_dance_of_whose_part_is_taken_is_not_offered():
    tonight = shown(BOTH + TAKEN, 130.0, STAFF)
    assert len({block.cycle for block in tonight.blocks if not block.link}) == 1
    assert [cycle_written(tonight, note) for note in notes(tonight)] == [None, None]


def test_nothing_is_offered_where_the_whole_cast_cannot_be_staged(monkeypatch):
    def refused(show):
        raise InputError("bad", Place("s.yaml"), "this cannot be staged", "mend it")

    tonight = shown(ASH + AWAY, 130.0, STAFF)
    monkeypatch.setattr("sequencer.planning.mends.cycle_notes.with_everybody", refused)
    assert cycle_written(tonight, notes(tonight)[0]) is None


def test_entries_of_others_stay_as_they_are():
    show = shown(
        "  - {who: Ash, from: 3.1, pattern: stall, beats: 8}\n"
        "  - {who: Birch, from: 3.1, pattern: stall, beats: 8}\n"
    )
    written = {note.who: cycle_written(show, note).changes for note in notes(show)}
    assert written == {
        ("Ash",): ((("timeline", 0, "cycle"), 4),),
        ("Birch",): ((("timeline", 1, "cycle"), 4),),
    }


def test_moves_of_another_pattern_and_links_stay_as_they_are():
    """Even where a pattern of the show's is called as links are."""
    own = "patterns:\n  link: {law: orbit, set: {ratio: -3}, summary: a flower}\nphrases:"
    show = shown(
        "  - {who: Ash, from: 3.1, pattern: link, beats: 8}\n"
        "  - {who: Ash, from: 5.1, link: true, beats: 4}\n"
        "  - {who: Ash, from: 6.1, pattern: stall, beats: 8}\n",
        head=SHOW.replace("phrases:", own),
    )
    (note,) = (one for one in notes(show) if one.message.startswith("stall"))
    assert [path for path, _ in cycle_written(show, note).changes] == [("timeline", 2, "cycle")]
    first = replace(note, start=show.seconds(show.blocks[0].start), message="link takes 4 beats")
    assert [path for path, _ in cycle_written(show, first).changes] == [("timeline", 0, "cycle")]


def test_what_would_be_danced_otherwise_once_written_is_not_offered(monkeypatch):
    show = shown("  - {who: Ash, from: 3.1, pattern: stall, beats: 8}\n")
    (note,) = notes(show)
    module = "sequencer.planning.mends.cycle_notes.restaged"
    monkeypatch.setattr(module, lambda show, _: slower(show, "Ash", 8.0))
    assert cycle_written(show, note) is None

    def refused(*_):
        raise InputError("bad", Place("s.yaml"), "this cannot be staged", "mend it")

    monkeypatch.setattr(module, refused)
    assert cycle_written(show, note) is None


def test_a_cycle_that_stands_written_stays_as_it_is():
    """Written alike beside an open one, or another one before it."""
    for cycle in (4, 8):
        show = shown(
            f"  - {{who: Ash, from: 3.1, pattern: stall, beats: 8, cycle: {cycle}}}\n"
            "  - {who: Ash, from: 7.1, pattern: stall, beats: 8}\n"
        )
        (note,) = notes(show)
        edit = cycle_written(show, note)
        assert edit is not None, cycle
        assert edit.changes == ((("timeline", 1, "cycle"), 4),)


def test_a_note_is_about_the_move_that_begins_then():
    """Of two moves of one pattern, the open one alone is written; the other dances it twice as slowly."""
    show = shown(
        "  - {who: Ash, from: 3.1, pattern: stall, beats: 8}\n"
        "  - {who: Ash, from: 7.1, pattern: stall, beats: 8}\n"
    )
    note = notes(show)[-1]
    later = replace(note, start=note.start + 0.25)
    assert cycle_written(show, later) is None  # nothing begins there


def slower(show, who, cycle):
    """The show with another cycle of whoever that is."""
    blocks = tuple(
        replace(block, cycle=cycle) if block.who == who and not block.link else block
        for block in show.blocks
    )
    return replace(show, blocks=blocks)
