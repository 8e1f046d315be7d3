"""Mends that name a position name the one that they write, to the part of a beat."""

from sequencer.findings import Finding
from sequencer.planning.fault_places import Crossing
from sequencer.planning.link_edits import passage_ladders
from sequencer.planning.stage_edits import stage_ladders
from tests.stopped_show import EXTENSION, stopped_show

WALKS = """\
formations:
  near: {spots: {Ash: {at: [0, 2]}}}
  far: {spots: {Ash: {at: [0, 8]}}}
staging:
  - {formation: near, from: 1.1}
  - {formation: far, from: 4.1+1/16, beats: 2}
"""


def told(edits):
    """The last word of each mend that names a position."""
    return [edit.words.rsplit(", at ", 1)[1] for edit in edits if ", at " in edit.words]


def test_where_a_block_is_to_end_or_to_start_is_told_as_it_is_written():
    after = EXTENSION.replace("{", "{from: 6.1+1/16, ").replace("8}", "4}")
    show = stopped_show(EXTENSION.replace("beats: 8", "beats: 8.0625"), after)
    before, block = show.blocks
    gap = Crossing(who="Ash", before=before, link=None, after=block)
    edits = [edit for ladder in passage_ladders(show, gap, both=False) for edit in ladder.rungs]
    ends = told(edit for edit in edits if edit.words.startswith("end "))
    starts = told(edit for edit in edits if edit.words.startswith("start "))
    assert ends[:3] == ["4.4+9/16", "4.4+1/16", "4.3+9/16"]
    assert starts[:3] == ["6.1+9/16", "6.2+1/16", "6.2+9/16"]
    written = [
        value
        for edit in edits
        if edit.words.startswith("start ")
        for path, value in edit.changes
        if path[-1] == "from"
    ]
    assert starts == written


def test_when_to_set_off_is_told_as_it_is_written():
    show = stopped_show(EXTENSION, cast=WALKS)
    walk = show.standings[1]
    fault = Finding(
        code="walks-too-fast", severity="stop", who=("Ash",), start=show.seconds(walk.walk),
        end=show.seconds(walk.start), position="4.1+1/16", message="too fast",
    )  # fmt: skip
    (sooner,) = (one for one in stage_ladders(show, fault) if one.name == "an earlier start")
    assert told(sooner.rungs)[:2] == ["3.4+1/16", "3.3+1/16"]
    assert told(sooner.rungs) == [
        {path[-1]: value for path, value in one.changes}["from"] for one in sooner.rungs
    ]
