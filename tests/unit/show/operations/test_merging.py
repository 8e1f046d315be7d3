"""Two changes of one file in one text: words of both sides stay, and what clashes is told with both."""

import random

import pytest

from sequencer.errors import InputError
from sequencer.show.operations.block_operations import ChangeBlock, DeleteBlocks, PutBlock
from sequencer.show.operations.floor_operations import MoveSpot
from sequencer.show.operations.heading_operations import ChangeHeading, ChangeTitles
from sequencer.show.operations.merging import conflict_words, merged
from sequencer.show.operations.operation import apply
from sequencer.show.operations.people_operations import ChangePerson, RenamePerson
from sequencer.show.text.document import parse_document
from tests.made_operations import VARIANTS, Draw
from tests.operation_oracle import text_of
from tests.repeated import often
from tests.unit.show.operations.duo import SHOW


def both(ours, theirs, base=SHOW):
    found = merged(base, ours, theirs, file="s.yaml")
    assert (found.text is None) == bool(found.conflicts)
    return found


def told(found):
    return [line for each in found.conflicts for line in conflict_words(each)]


def test_changes_in_different_places_are_both_in_the_text_with_all_words():
    ours = apply(SHOW, ChangeBlock(at=("timeline", 1), values={"note": "ours"})).replace(
        "title: Duo", "title: Duo   # mine"
    )
    theirs = SHOW.replace("{rest: 4}", "{rest: 6}   # longer").replace(
        "crew:", "# at the door\ncrew:"
    )
    found = both(ours, theirs).text
    assert found == ours.replace("{rest: 4}", "{rest: 6}   # longer").replace(
        "crew:", "# at the door\ncrew:"
    )
    assert both(theirs, ours).text == found


def test_two_keys_of_one_line_are_merged():
    ours = apply(SHOW, ChangePerson(group="cast", name="Ash", values={"stature": "1.8 m"}))
    theirs = apply(SHOW, ChangePerson(group="cast", name="Ash", values={"birth_year": 1990}))
    line = "  - {name: Ash, stature: 1.8 m, prop: poi, birth_year: 1990}     # has a cold"
    assert line in both(ours, theirs).text.splitlines()
    assert line in both(theirs, ours).text.splitlines()


def test_the_same_change_of_both_is_made_once():
    ours = apply(SHOW, DeleteBlocks(at=(("timeline", 4),)))
    theirs = apply(ours, ChangeTitles(values={"version": 2}))
    assert both(ours, theirs).text == theirs
    mine = ChangeBlock(at=("timeline", 0), values={"note": "ours"})
    more = apply(ours, ChangeBlock(at=("timeline", 1), values={"note": "theirs"}))
    assert both(apply(ours, mine), more).text == apply(more, mine)
    assert both(ours, ours).text == ours
    assert both(SHOW, theirs).text == theirs
    assert both(ours, SHOW).text == ours


def test_entries_put_in_at_different_places():
    ours = apply(SHOW, PutBlock(into=("timeline",), block={"rest": 1}, before=0))
    theirs = apply(SHOW, PutBlock(into=("timeline",), block={"rest": 2}))
    assert both(ours, theirs).text == apply(ours, PutBlock(into=("timeline",), block={"rest": 2}))


def test_neighbours_are_different_places():
    ours = apply(SHOW, ChangeBlock(at=("timeline", 3), values={"note": "ours"}))
    gone = DeleteBlocks(at=(("timeline", 4),))
    assert both(ours, apply(SHOW, gone)).text == apply(ours, gone)


def test_one_value_changed_by_both_is_told_with_both():
    ours = apply(SHOW, ChangeBlock(at=("timeline", 4), values={"rest": 6}))
    theirs = apply(SHOW, ChangeBlock(at=("timeline", 4), values={"rest": 8}))
    assert told(both(ours, theirs)) == [
        "timeline / 5 / rest: both sides changed this",
        "here: 6",
        "there: 8",
    ]


def test_what_one_takes_out_and_the_other_changes_is_told():
    ours = SHOW.replace(", note: twice", "")
    theirs = SHOW.replace("note: twice", "note: thrice")
    assert told(both(ours, theirs)) == [
        "timeline / 2 / note: one side took out what the other changed", "here: taken out", "there: thrice",
    ]  # fmt: skip
    ours = apply(SHOW, DeleteBlocks(at=(("timeline", 1),)))
    assert told(both(ours, theirs))[0] == "timeline / 2: both sides put in or took out entries here"


def test_two_entries_put_in_at_one_place_are_told():
    ours, theirs = (apply(SHOW, PutBlock(into=("timeline",), block={"rest": n})) for n in (1, 2))
    assert told(both(ours, theirs))[0] == "timeline / 7: both sides put in or took out entries here"


def test_changes_that_make_no_show_together_are_told_with_the_fault():
    ours = apply(SHOW, RenamePerson(group="cast", name="Birch", new="Elm"))
    theirs = apply(SHOW, PutBlock(into=("timeline",), block={"who": "Birch", "rest": 2}))
    (line,) = told(both(ours, theirs))
    assert line.startswith(
        "the show file: they do not go together: s.yaml:32:11: 'Birch' is not in the cast"
    )


def test_comments_of_both_on_one_line_are_never_dropped():
    ours = SHOW.replace("{rest: 4}", "{rest: 4}   # mine")
    theirs = SHOW.replace("{rest: 4}", "{rest: 4}   # yours")
    assert told(both(ours, theirs)) == ["the show file: both sides changed the same lines"]


def test_a_text_that_is_not_yaml_is_refused():
    with pytest.raises(InputError, match="not YAML"):
        merged(SHOW, SHOW + "# x\n", "a: [")


@pytest.mark.parametrize("times", often(70, 200))
@pytest.mark.parametrize("variant", [0, 1, 5])
def test_drawn_changes_are_merged_as_if_one_had_been_made_after_the_other(variant, times):
    """Reference: changes that name what they change, made by hand on the other side's text."""
    draw, base = Draw(random.Random(variant)), VARIANTS[variant]  # noqa: S311  # no secret
    named = (ChangeTitles, ChangeHeading, MoveSpot, ChangePerson)
    done = clashes = 0
    for _ in range(times):
        ours = theirs = base
        ops = []
        for _ in range(draw.random.randint(1, 4)):
            ours = changed(ours, draw.one(values(ours)))
            op = draw.one(values(theirs))
            if isinstance(op, named) and changed(theirs, op) != theirs:
                theirs = changed(theirs, op)
                ops.append(op)
        found = both(ours, theirs, base)
        other = both(theirs, ours, base)
        assert {each.path for each in found.conflicts} == {each.path for each in other.conflicts}
        if found.text is None:
            clashes += 1
            continue
        assert values(found.text) == values(other.text)
        again = ours
        for op in ops:
            again = changed(again, op)
        assert values(again) == values(found.text), (ops, ours)
        done += bool(ops) and ours != base
    assert done > times / 20
    assert clashes < done


def values(text):
    return text_of(parse_document(text, "s.yaml").values)


def changed(text, op):
    try:
        return apply(text, op, file="s.yaml")
    except InputError:
        return text
