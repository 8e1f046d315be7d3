"""Blocks put, changed, stretched, moved, copied, pasted, deleted: which lines change, and what is refused."""

import pytest

from sequencer.show.operations.block_operations import (
    ChangeBlock,
    CopyBlocks,
    DeleteBlocks,
    MoveBlock,
    PasteBlocks,
    PutBlock,
    SplitBlock,
    StretchBlock,
    copied,
)
from sequencer.show.operations.operation import apply
from sequencer.show.show_text import ShowText
from tests.unit.show.operations.duo import SHOW, lines, refused


def test_a_block_is_put_right_behind_the_one_before_it():
    put = PutBlock(into=("timeline",), block={"rest": 2}, before=2)
    assert lines(put) == ["+  - {rest: 2}"]
    assert "note: twice}\n  - {rest: 2}\n\n  # and lights" in apply(SHOW, put)


def test_a_step_is_put_into_a_phrase():
    put = PutBlock(into=("phrases", "wheel"), block={"pattern": "fountain", "beats": "1/2"})
    assert lines(put) == ["+    - {pattern: fountain, beats: 1/2}"]


def test_the_first_block_of_a_show():
    bare = SHOW[: SHOW.index("phrases:")]
    after = apply(bare, PutBlock(into=("timeline",), block={"rest": 2}))
    assert after == bare + "\ntimeline:\n  - {rest: 2}\n"


def test_keys_are_set_and_taken_out():
    change = ChangeBlock(at=("timeline", 1), values={"note": None, "mirrored": True})
    assert lines(change) == [
        "-  - {who: Ash, phrase: wheel, repeat: 2, note: twice}",
        "+  - {who: Ash, phrase: wheel, repeat: 2, mirrored: true}",
    ]


@pytest.mark.parametrize(
    ("at", "given", "says"),
    [
        (("phrases", "wheel", 0), {"beats": 8}, "    - {pattern: extension, beats: 8}           # slowly"),
        (("phrases", "long one", 1), {"beats": 8}, "    - {pattern: corkscrew, beats: 8}"),
        (("timeline", 3), {"beats": "1/2"}, "  - {who: Birch, pattern: fountain, beats: 1/2}"),
        (("timeline", 4), {"beats": 6}, "  - {rest: 6}"),
        (("timeline", 4), {"until": "30.1"}, "  - {rest: true, until: 30.1}"),
    ],
)  # fmt: skip
def test_a_block_is_stretched_by_the_key_that_says_how_long_it_is(at, given, says):
    assert lines(StretchBlock(at=at, **given))[1] == f"+{says}"


def test_a_phrase_and_an_accent_cannot_be_stretched():
    assert "s.yaml:24:5: the phrase 'wheel' is as long as its steps; stretch a step" in refused(
        StretchBlock(at=("timeline", 0), beats=8)
    )
    assert "an accent takes no time" in refused(StretchBlock(at=("timeline", 5), beats=8))


def test_a_length_that_is_none_is_refused_in_the_files_own_words():
    assert refused(StretchBlock(at=("timeline", 4), beats="many")).startswith(
        "s.yaml:30:12: rest: 'many' is not a number of beats, such as 8 or 1/2"
    )


def test_a_block_moves_in_time_and_in_its_list():
    assert lines(MoveBlock(at=("timeline", 1), start="4.3")) == [
        "-  - {who: Ash, phrase: wheel, repeat: 2, note: twice}",
        "+  - {who: Ash, from: 4.3, phrase: wheel, repeat: 2, note: twice}",
    ]
    assert lines(MoveBlock(at=("timeline", 5), start="22.1")) == [
        "-  - {accent: 21.1}",
        "+  - {accent: 22.1}",
    ]
    step = MoveBlock(at=("phrases", "wheel", 0), before=2)
    assert lines(step) == ["+    - {link: true, beats: 2}", "-    - {link: true, beats: 2}"]
    assert "a step of a phrase starts where" in refused(
        MoveBlock(at=("phrases", "wheel", 0), start="4.1")
    )
    back = MoveBlock(at=("phrases", "wheel", 1), before=0)
    assert apply(apply(SHOW, step), back) == SHOW


def test_blocks_go_and_comments_above_them_stay():
    gone = DeleteBlocks(at=(("timeline", 1), ("timeline", 2)))
    assert lines(gone) == [
        "-  - {who: Ash, phrase: wheel, repeat: 2, note: twice}",
        "-  - {who: [Ash, Birch], from: 8.1, phrase: long one, canon: 4, mirror: [Birch]}",
    ]


def test_a_copy_takes_its_words_along_and_drops_what_a_step_has_not():
    found = copied(ShowText(SHOW, "s.yaml"), [("timeline", 0), ("phrases", "wheel", 0)])
    assert found == ("{from: 2.1, phrase: wheel}                 # all", "{pattern: extension, beats: 6}           # slowly")  # fmt: skip
    paste = PasteBlocks(into=("phrases", "long one"), blocks=found, before=1)
    assert lines(paste) == [
        "+    - {phrase: wheel}                 # all",
        "+    - {pattern: extension, beats: 6}           # slowly",
    ]


def test_copies_start_where_they_are_said_to():
    copy = CopyBlocks(
        at=(("timeline", 0), ("timeline", 0), ("timeline", 5)), into=("timeline",), starts=("30.1", None, "31.1")
    )  # fmt: skip
    assert lines(copy) == [
        "+  - {from: 30.1, phrase: wheel}                 # all",
        "+  - {phrase: wheel}                 # all",
        "+  - {accent: 31.1}",
    ]
    assert "one start for each block" in refused(CopyBlocks(at=(("timeline", 0),), into=("timeline",), starts=("1.1", "2.1")))  # fmt: skip


def test_what_is_pasted_is_no_longer_drafted():
    text = SHOW.replace("{rest: 4}", "{rest: 4, drafted: true}")
    assert lines(CopyBlocks(at=(("timeline", 4),), into=("timeline",)), text) == ["+  - {rest: 4}"]


def test_what_is_no_block_is_not_pasted():
    paste = PasteBlocks(into=("timeline",), blocks=("- a\n- b",))
    assert "what was copied is no block" in refused(paste)


def test_a_block_is_cut_in_two():
    cut = SplitBlock(at=("phrases", "wheel", 0), first=4, second=2, shift=4)
    assert lines(cut) == [
        "-    - {pattern: extension, beats: 6}           # slowly",
        "+    - {pattern: extension, beats: 4}           # slowly",
        "+    - {pattern: extension, beats: 2, shift: 4}           # slowly",
    ]
    assert "a block with 'phrase' is not cut" in refused(
        SplitBlock(at=("timeline", 0), first=1, second=1)
    )


@pytest.mark.parametrize(
    ("shift", "home", "said"),
    [(12, 2, ""), (5, 2, ", shift: 1"), (66.5, 8, ", shift: 2.5"), (4, 8, ", shift: 4"), (-1, 4, ", shift: 3"),
     (4.4 - 0.1, 4.3, ""), (7, None, ", shift: 7"), (None, 2, "")],
)  # fmt: skip
def test_a_move_that_is_cut_is_danced_on_from_within_one_time_of_it(shift, home, said):
    cut = SplitBlock(at=("phrases", "wheel", 0), first=4, second=2, shift=shift, home=home)
    assert lines(cut)[2].split("   ")[1] == f" - {{pattern: extension, beats: 2{said}}}"


def test_a_place_that_is_not_there():
    assert "there is no entry 10 of the timeline; look at the show as it is now" in refused(
        StretchBlock(at=("timeline", 9), beats=8)
    )
    assert "none is put before number 12" in refused(
        PutBlock(into=("timeline",), block={"rest": 2}, before=12)
    )
