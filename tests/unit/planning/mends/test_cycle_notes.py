"""A note on a cycle that is left open, and the change that writes it down. Reference: the check that notes it."""

from dataclasses import replace

from sequencer.checks.dance.feasible import feasible
from sequencer.checks.fault_kinds import ANOTHER_CYCLE
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


def shown(timeline):
    document = parse_document(SHOW + timeline, "s.yaml")
    return staged(show_from_document(document), even_song(64, tempo=100.0))


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


def slower(show, who, cycle):
    """The show with another cycle of whoever that is."""
    blocks = tuple(
        replace(block, cycle=cycle) if block.who == who and not block.link else block
        for block in show.blocks
    )
    return replace(show, blocks=blocks)
