"""Which changes of a block are tried for which fault, and which of them only where nothing else helps."""

import pytest

from sequencer.findings import Finding
from sequencer.planning.edits.dance_edits import block_ladders
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

FAR = """\
title: Far
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 9 m}
  audience: [{line: [[-9, -9], [9, -9]]}]
cast:
  - {name: Isa, stature: 1.7 m, prop: {tether: 0.45 m}}
timeline:
  - {from: 2.1, pattern: static-spin, timing: together, with: {ahead: 40 cm}, beats: 8}
"""


@pytest.mark.parametrize(("code", "last"), [("hand-out-of-reach", True), ("self-hit", False)])
def test_a_cycle_is_for_a_hand_out_of_reach_only_where_nothing_else_helps(code, last):
    """How far a hand goes hardly depends on how long it takes; whether a prop hits the body may."""
    show = staged(show_from_document(parse_document(FAR, "s.yaml")), even_song(32))
    fault = Finding(
        code=code, severity="stop", who=("Isa",), start=2.0, end=6.0, position="2.1", message="far"
    )
    found = {each.name: each for each in block_ladders(show, show.blocks[0], fault)}
    assert found["the cycle"].rungs
    assert found["the cycle"].last == last
    assert found["the cycle in quarter beats"].last
    assert not found["ahead"].last
