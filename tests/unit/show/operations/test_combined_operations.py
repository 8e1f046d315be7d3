"""Several as one, changes of a mend, and the way back."""

from sequencer.show.operations.block_operations import DeleteBlocks, StretchBlock
from sequencer.show.operations.combined_operations import DoTogether, MakeChanges, inverse
from sequencer.show.operations.every_operation import read_operation
from sequencer.show.operations.operation import apply, json_of
from tests.unit.show.operations.duo import SHOW, lines, refused

REST = StretchBlock(at=("timeline", 4), beats=8)


def test_all_or_none():
    gone = DeleteBlocks(at=(("timeline", 5),))
    assert lines(DoTogether(operations=(REST, gone))) == [
        "-  - {rest: 4}",
        "-  - {accent: 21.1}",
        "+  - {rest: 8}",
    ]
    assert "there is no entry 6" in refused(DoTogether(operations=(gone, gone)))
    assert DoTogether(operations=(REST, gone)).words == "stretch to 8 beats; delete 1 block"
    assert DoTogether(operations=(), said="tidy up").words == "tidy up"


def test_changes_as_a_mend_proposes_them():
    mend = MakeChanges(
        said="a link before it",
        changes=((("timeline", 3, "until"), None), (("timeline", 3, "beats"), 6)),
        insertions=((("timeline",), 3, {"who": "Birch", "link": True, "beats": 2}),),
    )
    assert lines(mend) == [
        "-  - {who: Birch, pattern: fountain, until: 20.1}",
        "+  - {who: Birch, link: true, beats: 2}",
        "+  - {who: Birch, pattern: fountain, beats: 6}",
    ]


def test_the_way_back_leads_to_the_first_byte_and_is_refused_once_it_is_no_more():
    after = apply(SHOW, REST)
    back = inverse(SHOW, after, REST.words)
    assert (back.old, back.new, back.words) == ("8", "4", "take back: stretch to 8 beats")
    assert apply(after, read_operation(json_of(back))) == SHOW
    assert "has been changed since" in refused(
        back, apply(after, DeleteBlocks(at=(("timeline", 0),)))
    )
