"""Which entry and which use of a phrase each block comes from: a change made there alone changes that block and no other."""

import pytest

from sequencer.errors import InputError
from sequencer.show.operations.block_operations import StretchBlock
from sequencer.show.operations.operation import applied, shown_text
from sequencer.show.operations.phrase_operations import ChangeHere
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.danced_entries import danced_by, entry_of_blocks
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Within
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 14 m, depth: 9 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
formations: {one: {spots: {Ash: {at: [0, 4]}}}}
staging: [{formation: one, from: 1.1}]
phrases:
  inner:
    - {pattern: two-beat-weave, beats: 4}
    - {pattern: extension, beats: 3}
  outer:
    - {phrase: inner, repeat: 2}
    - {pattern: static-spin, beats: 4}
    - {phrase: inner}
timeline:
  - {from: 3.1, phrase: outer}
  - {from: 13.1, phrase: outer, repeat: 2}
  - {from: 33.1, phrase: inner}
"""


def show_of(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(200, tempo=100.0))


def lengths(show):
    return [each.end - each.start for each in show.blocks]


def test_each_block_has_the_way_that_it_is_danced_by():
    show = show_of(SHOW)
    ways = danced_by(show)
    found = [ways[id(each)] for each in show.blocks]
    assert [entry_of_blocks(show)[id(each)] for each in show.blocks] == [
        each.entry for each in found
    ]
    assert [each.rounds for each in found[:7]] == [
        (None, 0), (None, 0), (None, 1), (None, 1), (None,), (None, None), (None, None)
    ]  # fmt: skip
    assert [each.rounds for each in found[7:21]] == [
        (turn, *inner)
        for turn in (0, 1)
        for inner in ((0,), (0,), (1,), (1,), (), (None,), (None,))
    ]
    assert found[5].use == (("timeline", 0), ("phrases", "outer", 2))
    assert [each.use for each in found[21:]] == [(("timeline", 2),)] * 2


@pytest.mark.parametrize("k", range(23))
def test_a_change_made_here_only_changes_one_block(k):
    show = show_of(SHOW)
    block, before = show.blocks[k], lengths(show)
    way = danced_by(show)[id(block)]
    stretch = StretchBlock(at=block.path, beats=before[k] - 1)
    change = ChangeHere(use=way.use, rounds=way.rounds, operation=stretch)
    after = lengths(show_of(applied(shown_text(SHOW, "s.yaml"), change).text))
    assert after == [*before[:k], before[k] - 1, *before[k + 1 :]]


def test_what_is_no_step_of_the_phrase_that_is_danced_there_is_refused():
    """Else it would be changed wherever it is danced."""
    stretch = StretchBlock(at=("phrases", "inner", 0), beats=2)
    with pytest.raises(InputError, match="no step of the phrase that is danced here"):
        applied(
            shown_text(SHOW, "s.yaml"),
            ChangeHere(use=(("timeline", 0),), operation=stretch),
        )
