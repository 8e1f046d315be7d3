"""First looks at changed blocks: what they call hopeless stays in the whole check, and what mends is never called so."""

import pytest

from sequencer.planning.mends.dance_mends import causes
from sequencer.planning.trying import first_looks
from sequencer.planning.trying.first_looks import still_there
from sequencer.planning.trying.trials import DanceEdit, FaultTrials
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Looked at
track: {{file: song.ogg}}
venue:
  stage: {{shape: round, width: 9 m}}
  audience: [{{line: [[-9, -9], [9, -9]]}}]
cast:
  - {{name: Isa, stature: 1.7 m, prop: {{tether: 0.45 m}}}}
timeline:
  - {{from: 2.1, pattern: {}, beats: {}}}
  - {{link: true, beats: 2}}
  - {{pattern: static-spin, timing: together, beats: 8}}
"""
FAULTS = {
    "hand-out-of-reach": ("static-spin, timing: together, with: {ahead: 45 cm}", ("with", "ahead"), (0.43, 0.2)),
    "self-hit": ("two-beat-weave, with: {across: -30 cm}", ("with", "across"), (-0.28, 0.1)),
    "self-tangle": (
        "pro-bend-3, timing: together, with: {hand_radius: 10 cm, ahead: 30 cm}", ("with", "ahead"), (0.28, 0.15)
    ),
    "tether-slack": ("static-spin, timing: together, cycle: 9", ("cycle",), (8, 1)),
}  # fmt: skip


def faulty(code, beats=8):
    given, path, values = FAULTS[code]
    show = staged(
        show_from_document(parse_document(SHOW.format(given, beats), "s.yaml")), even_song(48)
    )
    trials = FaultTrials(show=show)
    faults = [each for own in trials.before.values() for each in own]
    (cause, *_) = [each for each in causes(show, faults) if each.code == code and each.place.blocks]
    edits = [
        DanceEdit(words=f"{value}", changes=((("timeline", 0, *path), value),)) for value in values
    ]
    return trials, cause, edits


@pytest.mark.parametrize("code", FAULTS)
def test_what_is_hopeless_stays_and_what_clears_is_not(code):
    trials, cause, (still, mends) = faulty(code)
    (block, *_) = cause.place.blocks
    assert still_there(trials.show, code, block, still.changes)
    assert not trials.of(cause.faults, still).cleared
    assert not still_there(trials.show, code, block, mends.changes)
    assert trials.of(cause.faults, mends).cleared


def test_nothing_is_known_where_nothing_can_be_seen(monkeypatch):
    trials, cause, (still, _) = faulty("hand-out-of-reach")
    (block, *_) = cause.place.blocks
    assert not still_there(trials.show, "link-too-hard", block, still.changes), "not of a block"
    nowhere = ((("timeline", 9, "shift"), 1),)
    assert not still_there(trials.show, "hand-out-of-reach", block, nowhere), "the trial says so"
    monkeypatch.setattr(first_looks, "restaged_dancers", lambda *_args, **_named: None)
    assert not still_there(trials.show, "hand-out-of-reach", block, still.changes)


def test_a_block_that_is_all_blend_is_not_looked_at(monkeypatch):
    given, _, _ = FAULTS["hand-out-of-reach"]
    text = SHOW.format(given, 0.9)
    show = staged(show_from_document(parse_document(text, "s.yaml")), even_song(48))
    monkeypatch.setattr(first_looks, "restaged_dancers", lambda *_args, **_named: 1 / 0)
    assert not still_there(show, "hand-out-of-reach", show.blocks[0], ())
