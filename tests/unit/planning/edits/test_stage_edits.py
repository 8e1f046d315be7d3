"""Mends of a walk name the position that they write, to the part of a beat."""

from sequencer.findings import Finding
from sequencer.planning.edits.stage_edits import stage_ladders
from tests.stopped_show import EXTENSION, stopped_show

WALKS = """\
formations:
  near: {spots: {Ash: {at: [0, 2]}}}
  far: {spots: {Ash: {at: [0, 8]}}}
staging:
  - {formation: near, from: 1.1}
  - {formation: far, from: 4.1+1/16, beats: 2}
"""


def test_when_to_set_off_is_told_as_it_is_written():
    show = stopped_show(EXTENSION, cast=WALKS)
    walk = show.standings[1]
    fault = Finding(
        code="walks-too-fast", severity="stop", who=("Ash",), start=show.seconds(walk.walk),
        end=show.seconds(walk.start), position="4.1+1/16", message="too fast",
    )  # fmt: skip
    (sooner,) = (one for one in stage_ladders(show, fault) if one.name == "an earlier start")
    told = [edit.words.rsplit(", at ", 1)[1] for edit in sooner.rungs]
    assert told[:2] == ["3.4+1/16", "3.3+1/16"]
    assert told == [
        {path[-1]: value for path, value in one.changes}["from"] for one in sooner.rungs
    ]
