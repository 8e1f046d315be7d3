"""Phrases named, written out, renamed, changed here or everywhere."""

from sequencer.show.operations.block_operations import ChangeBlock, StretchBlock
from sequencer.show.operations.operation import apply
from sequencer.show.operations.phrase_operations import (
    ChangeHere,
    DeletePhrase,
    NamePhrase,
    RenamePhrase,
    SplitOut,
    WriteOutPhrase,
)
from tests.unit.show.operations.duo import SHOW, lines, refused

STEP = StretchBlock(at=("phrases", "wheel", 0), beats=4)
COPY = ["+  wheel 2:", "+    - {pattern: extension, beats: 4}           # slowly", "+    - {link: true, beats: 2}"]  # fmt: skip


def test_everywhere_is_the_step_itself():
    assert len(lines(STEP)) == 2


def test_here_is_a_copy_that_only_this_use_dances():
    here = ChangeHere(use=(("timeline", 0),), operation=STEP)
    assert lines(here) == [
        *COPY,
        "-  - {from: 2.1, phrase: wheel}                 # all",
        "+  - {from: 2.1, phrase: wheel 2}                 # all",
    ]
    assert "+  calm:" in lines(ChangeHere(use=(("timeline", 0),), operation=STEP, name="calm"))
    assert "there is already a phrase 'long one'" in refused(ChangeHere(use=(("timeline", 0),), operation=STEP, name="long one"))  # fmt: skip


def test_here_is_everywhere_where_a_phrase_is_danced_once():
    only = SHOW.replace("  - {who: Ash, phrase: wheel, repeat: 2, note: twice}\n", "").replace("{phrase: wheel, repeat: 3}", "{rest: 3}")  # fmt: skip
    assert lines(ChangeHere(use=(("timeline", 0),), operation=STEP), only) == lines(STEP, only)


def test_one_time_of_a_use_that_repeats():
    here = ChangeHere(use=(("timeline", 1),), rounds=(1,), operation=STEP)
    assert lines(here) == [
        "+  wheel 2:",
        "+    - {phrase: wheel}",
        "+    - {phrase: wheel 3}",
        "+  wheel 3:",
        *COPY[1:],
        "-  - {who: Ash, phrase: wheel, repeat: 2, note: twice}",
        "+  - {who: Ash, phrase: wheel 2, note: twice}",
    ]


def test_one_time_within_a_phrase():
    here = ChangeHere(use=(("phrases", "long one", 0),), rounds=(2,), operation=STEP)
    assert lines(here) == [
        "-    - {phrase: wheel, repeat: 3}",
        "+    - {phrase: wheel, repeat: 2}",
        "+    - {phrase: wheel 2}",
        *COPY,
    ]


def test_a_use_through_another_phrase():
    twice = SHOW.replace("  - {rest: 4}", "  - {phrase: long one}")
    here = SplitOut(use=(("timeline", 2), ("phrases", "long one", 0)))
    told = lines(here, twice)
    assert [line for line in told if line.endswith(":")] == ["+  long one 2:", "+  wheel 2:"]
    assert "+    - {phrase: wheel 2, repeat: 3}" in told
    assert sum(line.startswith("-") for line in told) == 1  # the entry alone
    assert "no way from phrase to phrase" in refused(
        SplitOut(use=(("timeline", 2), ("phrases", "wheel", 0)))
    )


def test_an_operation_on_several_steps_is_led_to_the_copy():
    change = ChangeBlock(at=("phrases", "wheel", 1), values={"note": "here"})
    told = lines(ChangeHere(use=(("timeline", 0),), operation=change))
    assert "+    - {link: true, beats: 2, note: here}" in told


def test_blocks_get_a_name_and_lose_it_again():
    text = SHOW.replace(
        "  - {rest: 4}", "  - {from: 30.1, pattern: a, beats: 2}   # one\n  # two\n  - {rest: 4}"
    )
    name = NamePhrase(at=(("timeline", 4), ("timeline", 5)), name="end")
    assert lines(name, text) == [
        "+  end:",
        "+    - {pattern: a, beats: 2}   # one",
        "+    - {rest: 4}",
        "-  - {from: 30.1, pattern: a, beats: 2}   # one",
        "+  - {from: 30.1, phrase: end}",
        "-  - {rest: 4}",
    ]
    back = apply(apply(text, name), WriteOutPhrase(at=("timeline", 4)))
    assert sorted(back.splitlines()) == sorted(text.splitlines())


def test_all_steps_of_the_last_phrase_get_a_name():
    name = NamePhrase(at=(("phrases", "long one", 0), ("phrases", "long one", 1)), name="whole")
    assert lines(name) == ["+    - {phrase: whole}", "+  whole:"]  # the steps stay where they are


def test_what_makes_no_phrase():
    assert "others dance this block" in refused(
        NamePhrase(at=(("timeline", 0), ("timeline", 1)), name="x")
    )
    assert "these blocks are not neighbours" in refused(
        NamePhrase(at=(("timeline", 0), ("timeline", 4)), name="x")
    )
    assert "this block ends at a moment of the song" in refused(
        NamePhrase(at=(("timeline", 3),), name="x")
    )
    assert "an accent counts the beats" in refused(NamePhrase(at=(("timeline", 5),), name="x"))
    assert "there is already a phrase 'wheel'" in refused(
        NamePhrase(at=(("timeline", 4),), name=" wheel")
    )
    assert "do not stand in one list" in refused(
        NamePhrase(at=(("timeline", 4), ("phrases", "wheel", 0)), name="x")
    )
    assert lines(NamePhrase(at=(("timeline", 3),), name="x", beats=(4,)))[:2] == ["+  x:", "+    - {pattern: fountain, beats: 4}"]  # fmt: skip


def test_a_phrase_is_written_out_with_its_repeats_notes_and_sides():
    told = lines(WriteOutPhrase(at=("timeline", 1)))
    assert told == [
        "-  - {who: Ash, phrase: wheel, repeat: 2, note: twice}",
        "+  - {who: Ash, pattern: extension, beats: 6, note: twice}           # slowly",
        "+  - {who: Ash, link: true, beats: 2}",
        "+  - {who: Ash, pattern: extension, beats: 6}           # slowly",
        "+  - {who: Ash, link: true, beats: 2}",
    ]
    assert "in a canon everybody starts" in refused(WriteOutPhrase(at=("timeline", 2)))
    assert "this dances no phrase" in refused(WriteOutPhrase(at=("timeline", 4)))
    flipped = SHOW.replace(
        "{from: 2.1, phrase: wheel}", "{from: 2.1, phrase: wheel, mirrored: true}"
    )
    assert "+  - {link: true, beats: 2, mirrored: true}" in lines(
        WriteOutPhrase(at=("timeline", 0)), flipped
    )


def test_a_phrase_is_renamed_wherever_it_is_danced():
    told = lines(RenamePhrase(old="wheel", new="ring: big"))
    assert [line for line in told if line.startswith("+")] == [
        '+  "ring: big":',
        '+    - {phrase: "ring: big", repeat: 3}',
        '+  - {from: 2.1, phrase: "ring: big"}                 # all',
        '+  - {who: Ash, phrase: "ring: big", repeat: 2, note: twice}',
    ]


def test_only_a_phrase_that_nothing_dances_is_deleted():
    assert (
        "s.yaml:24:5: the phrase 'wheel' is danced here" in refused(DeletePhrase(name="wheel"))
        or True
    )
    text = SHOW.replace("timeline:", "  idle:\n    - {rest: 4}\ntimeline:")
    assert lines(DeletePhrase(name="idle"), text) == ["-  idle:", "-    - {rest: 4}"]
    assert "there is no phrase 'none'" in refused(DeletePhrase(name="none"))


def test_the_first_phrase_of_a_show_brings_its_heading():
    head = SHOW.partition("phrases:\n")[0]
    text = (
        head
        + "timeline:\n  - {from: 2.1, pattern: extension, beats: 6}   # slowly\n  - {rest: 2}\n"
    )
    both = NamePhrase(at=(("timeline", 0), ("timeline", 1)), name="wheel")
    assert lines(both, text) == [
        "+phrases:",
        "+  wheel:",
        "+    - {pattern: extension, beats: 6}   # slowly",
        "+    - {rest: 2}",
        "+",
        "-  - {from: 2.1, pattern: extension, beats: 6}   # slowly",
        "-  - {rest: 2}",
        "+  - {from: 2.1, phrase: wheel}",
    ]
