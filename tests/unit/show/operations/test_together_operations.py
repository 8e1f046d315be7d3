"""Canon, mirror, unison, one taken out, an answer: which lines change, and what is refused."""

from sequencer.show.operations.together_operations import (
    AnswerWith,
    PartEntry,
    SetCanon,
    SetMirror,
    SetUnison,
)
from tests.unit.show.operations.duo import SHOW, lines, refused

TRIO = SHOW.replace(
    "prop: staff}\n", "prop: staff}\n  - {name: Cedar, stature: 1.8, prop: poi}\n"
).replace("facing: 90}}}", "facing: 90}, Cedar: {at: [0, 6]}}}")
CANON = "  - {from: 30.1, pattern: a, beats: 4, canon: 2, mirror: [Ash, Cedar]}"
ROUND = TRIO.replace("  - {rest: 4}", CANON)


def test_a_canon_names_who_follows_whom():
    assert lines(SetCanon(at=("timeline", 0), beats=4))[1] == (
        "+  - {who: [Ash, Birch], from: 2.1, phrase: wheel, canon: 4}                 # all"
    )
    assert "[Birch, Ash]" in lines(SetCanon(at=("timeline", 0), beats=4, who=("Birch", "Ash")))[1]
    assert "Ash alone dances no canon" in refused(SetCanon(at=("timeline", 1), beats=4))
    assert "a step of a phrase is danced by" in refused(
        SetCanon(at=("phrases", "wheel", 0), beats=4)
    )


def test_a_mirror_is_set_and_taken_out():
    assert lines(SetMirror(at=("timeline", 0), who=("Birch",)))[1] == (
        "+  - {from: 2.1, phrase: wheel, mirror: Birch}                 # all"
    )
    assert ", mirror" not in lines(SetMirror(at=("timeline", 2), who=()))[1]
    assert "Birch does not dance this entry" in refused(
        SetMirror(at=("timeline", 1), who=("Birch",))
    )


def test_unison_drops_canon_and_mirror():
    assert lines(SetUnison(at=(("timeline", 2),)))[1] == (
        "+  - {who: [Ash, Birch], from: 8.1, phrase: long one}"
    )


def test_entries_that_say_the_same_become_one():
    text = SHOW.replace(
        "  - {rest: 4}", "  - {who: Ash, from: 9.1, rest: 4}  # one\n  - {who: Birch, rest: 4}"
    )
    assert lines(SetUnison(at=(("timeline", 5), ("timeline", 4))), text) == [
        "-  - {who: Ash, from: 9.1, rest: 4}  # one",
        "-  - {who: Birch, rest: 4}",
        "+  - {who: [Ash, Birch], from: 9.1, rest: 4}  # one",
    ]
    assert "is not what the first one dances" in refused(
        SetUnison(at=(("timeline", 0), ("timeline", 1)))
    )


def test_one_is_taken_out_and_goes_on_as_before():
    told = lines(PartEntry(at=("timeline", 0), who=("Cedar",)), TRIO)
    assert told[1:] == [
        "+  - {who: [Ash, Birch], from: 2.1, phrase: wheel}                 # all",
        "+  - {who: Cedar, from: 2.1, phrase: wheel}                 # all",
    ]
    assert "Ash cannot be taken out" in refused(PartEntry(at=("timeline", 1), who=("Ash",)))


def test_neighbours_in_a_canon_stay_a_canon():
    starts = {"Birch": "30.3", "Cedar": "31.1"}
    told = lines(PartEntry(at=("timeline", 4), who=("Ash",), starts=starts), ROUND)
    assert told[1:] == [
        "+  - {who: Ash, from: 30.1, pattern: a, beats: 4, mirror: Ash}",
        "+  - {who: [Birch, Cedar], from: 30.3, pattern: a, beats: 4, canon: 2, mirror: Cedar}",
    ]
    told = lines(PartEntry(at=("timeline", 4), who=("Birch",), starts=starts), ROUND)
    assert [line.partition(", pattern")[0] for line in told[1:]] == [
        "+  - {who: Ash, from: 30.1", "+  - {who: Birch, from: 30.3", "+  - {who: Cedar, from: 31.1",
    ]  # fmt: skip
    assert "nothing says when Birch starts" in refused(
        PartEntry(at=("timeline", 4), who=("Ash",)), ROUND
    )
    until = ROUND.replace("beats: 4, canon", "until: 32.1, canon")
    assert "`until` is the end of the first alone" in refused(
        PartEntry(at=("timeline", 4), who=("Ash",), starts=starts), until
    )


def test_an_entry_without_a_moment_needs_one_to_be_parted():
    text = SHOW.replace("{rest: 4}", "{who: [Ash, Birch], rest: 4}")
    assert "nothing says when Ash starts" in refused(
        PartEntry(at=("timeline", 4), who=("Birch",)), text
    )
    told = lines(
        PartEntry(at=("timeline", 4), who=("Birch",), starts={"Ash": "40.1", "Birch": "40.1"}), text
    )
    assert told[1:] == [
        "+  - {who: Ash, from: 40.1, rest: 4}",
        "+  - {who: Birch, from: 40.1, rest: 4}",
    ]


def test_others_answer_with_the_same():
    assert lines(AnswerWith(at=("timeline", 1), who=("Birch",), start="6.1")) == [
        "+  - {who: Birch, from: 6.1, phrase: wheel, repeat: 2, note: twice}"
    ]
    assert lines(AnswerWith(at=("timeline", 1), who=("Birch", "Ash")))[0].startswith(
        "+  - {who: all, phrase"
    )
    assert "ends at a moment of the song" in refused(AnswerWith(at=("timeline", 3), who=("Ash",)))
    assert "nobody answers" in refused(AnswerWith(at=("timeline", 1), who=()))
