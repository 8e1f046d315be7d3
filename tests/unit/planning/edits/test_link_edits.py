"""Mends of a passage name the position that they write, to the part of a beat."""

from sequencer.planning.edits.link_edits import passage_ladders
from sequencer.planning.trying.fault_places import Crossing
from tests.stopped_show import EXTENSION, stopped_show


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
