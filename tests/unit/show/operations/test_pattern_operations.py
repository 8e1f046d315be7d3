"""The show's own patterns put in, changed, renamed and taken out; the files of patterns that it uses."""

import pytest

from sequencer.show.operations.combined_operations import inverse
from sequencer.show.operations.operation import apply
from sequencer.show.operations.pattern_operations import (
    AddPattern,
    ChangePattern,
    DeletePattern,
    RenamePattern,
    SetPatternFiles,
)
from sequencer.show.operations.phrase_operations import NamePhrase, RenamePhrase
from tests.unit.show.operations.duo import SHOW as DUO
from tests.unit.show.operations.duo import lines, refused

OWN = """\
patterns:
  # mine
  small flower:                    # of four petals
    law: orbit
    set: {ratio: -3, hand_radius: 25 cm}   # tight
    needs: [extension, big one]
  big one: {law: orbit, set: {ratio: -2}}  # and round
wishes: {moves: {big one: 2, flower: 1}}
phrases:
"""
SHOW = (
    DUO.replace("phrases:\n", OWN, 1)
    .replace("pattern: fountain,", "left: {pattern: big one}, right: {pattern: fountain},")
    .replace("prop: poi}", "prop: poi, repertoire: {known: [extension, big one], never: big one}}")
    .replace("{pattern: corkscrew,", "{pattern: big  one,")
)


def test_a_value_is_changed_in_its_place_and_comments_stay():
    tight = ChangePattern(name="small flower", values={"set": {"ratio": -4, "hand_radius": "25 cm"}})  # fmt: skip
    assert lines(tight, SHOW) == [
        "-    set: {ratio: -3, hand_radius: 25 cm}   # tight",
        "+    set: {ratio: -4, hand_radius: 25 cm}   # tight",
    ]
    two = ChangePattern(name="small  flower", values={"needs": None, "difficulty": 2})
    assert lines(two, SHOW) == ["-    needs: [extension, big one]", "+    difficulty: 2"]
    assert "has no pattern 'tall' of its own" in refused(ChangePattern(name="tall", values={}))


def test_a_pattern_is_added_and_the_heading_with_the_first():
    pattern = {"law": "orbit", "set": {"ratio": 3}}
    assert lines(AddPattern(name="mine", pattern=pattern), DUO) == [
        "+patterns:",
        "+  mine: {law: orbit, set: {ratio: 3}}",
        "+",
    ]
    assert lines(AddPattern(name="mine", pattern=pattern), SHOW) == [
        "+  mine: {law: orbit, set: {ratio: 3}}"
    ]
    assert "there is already a pattern 'big one'; choose" in refused(
        AddPattern(name="big one", pattern=pattern), SHOW
    )


@pytest.mark.parametrize(
    ("name", "there"),
    [("Big  One", "pattern 'big one'"), ("Wheel", "phrase 'wheel'"), ("FOUNTAIN", "move 'fountain' in the vocabulary")],
)  # fmt: skip
def test_no_two_moves_have_one_name_but_for_its_capital_letters(name, there):
    for new in (
        AddPattern(name=name, pattern={"law": "orbit"}),
        RenamePattern(old="small flower", new=name),
        NamePhrase(at=(("timeline", 3),), name=name),
        RenamePhrase(old="long one", new=name),
    ):
        assert f"there is already a {there}; choose another name" in refused(new, SHOW)


def test_ones_own_name_may_be_written_otherwise():
    assert lines(RenamePattern(old="small flower", new="Small Flower"), SHOW)
    assert lines(RenamePhrase(old="wheel", new="Wheel"), SHOW)


def test_a_new_name_is_taken_over_wherever_the_old_one_is_said():
    made = lines(RenamePattern(old="big one", new="huge"), SHOW)
    gone = [line[1:] for line in made if line.startswith("-")]
    assert [line[1:] for line in made if line.startswith("+")] == [
        line.replace("big  one", "huge").replace("big one", "huge") for line in gone
    ]
    assert len(gone) == 6
    assert "big one" not in apply(SHOW, RenamePattern(old="big one", new="huge")).replace("  ", " ")
    assert "there is already" in refused(RenamePattern(old="big one", new="small flower"), SHOW)


def test_what_is_danced_or_named_is_not_deleted_and_the_places_are_told():
    told = refused(DeletePattern(name="big one"), SHOW)
    assert "the pattern 'big one' is still named in entry 4 of the timeline, entry 2 of 'long one' of the phrases, 'small flower' of the patterns and 3 more; write another one there" in told  # fmt: skip
    line = int(told.split(":")[1])
    assert "left: {pattern: big one}" in SHOW.splitlines()[line - 1]


def test_what_nothing_names_is_deleted_with_its_heading_if_it_was_the_last():
    gone = DeletePattern(name="small flower")
    assert lines(gone, SHOW) == [f"-{line}" for line in OWN.splitlines()[2:6]]
    one = DUO.replace("phrases:\n", "patterns: {mine: {law: orbit}}\nphrases:\n", 1)
    assert lines(DeletePattern(name="mine"), one) == ["-patterns: {mine: {law: orbit}}"]


def test_files_come_and_go_and_comments_of_those_that_stay_are_kept():
    files = DUO + "pattern_files:\n  - a.yaml  # ours\n  - b.yaml\n"
    assert lines(SetPatternFiles(files=("a.yaml",)), files) == ["-  - b.yaml"]
    assert lines(SetPatternFiles(files=()), files) == ["-pattern_files:", "-  - a.yaml  # ours", "-  - b.yaml"]  # fmt: skip
    assert "+  - c.yaml" in lines(SetPatternFiles(files=("a.yaml", "b.yaml", "c.yaml")), files)
    assert "-  - a.yaml  # ours" not in lines(SetPatternFiles(files=("a.yaml", "b.yaml", "c.yaml")), files)  # fmt: skip
    assert lines(SetPatternFiles(files=("a.yaml",)), DUO) == ["+pattern_files: [a.yaml]", "+"]
    assert lines(SetPatternFiles(files=()), DUO) == []


def test_each_has_its_way_back():
    for operation in (
        AddPattern(name="mine", pattern={"law": "orbit"}),
        RenamePattern(old="big one", new="huge"),
        DeletePattern(name="small flower"),
        SetPatternFiles(files=("a.yaml",)),
    ):
        after = apply(SHOW, operation)
        assert after != SHOW
        assert apply(after, inverse(SHOW, after)) == SHOW
