"""Undo and redo without end, revisions, and texts from elsewhere."""

import pytest

from sequencer.errors import InputError
from sequencer.show.operations.block_operations import PutBlock, StretchBlock
from sequencer.show.operations.history import History
from tests.unit.show.operations.duo import SHOW

REST = StretchBlock(at=("timeline", 4), beats=8)


def test_steps_back_and_forth_with_their_words():
    history = History(SHOW, "s.yaml")
    first = history.do(REST)
    second = history.do(PutBlock(into=("timeline",), block={"link": True, "beats": 2}))
    assert history.can_undo == ("put a link", "stretch to 8 beats")
    assert history.undo()
    assert (history.text, history.can_redo, history.revision) == (first, ("put a link",), 3)
    assert history.redo()
    assert history.text == second
    assert not history.redo()
    assert history.undo()
    assert history.undo()
    assert not history.undo()
    assert (history.text, history.can_undo) == (SHOW, ())
    assert history.can_redo == ("stretch to 8 beats", "put a link")
    assert len(history.show.show.timeline) == 6


def test_a_new_step_ends_what_could_be_done_again():
    history = History(SHOW)
    history.do(REST)
    history.undo()
    history.do(StretchBlock(at=("timeline", 4), beats=6))
    assert history.can_redo == ()


def test_an_operation_on_another_revision_is_refused():
    history = History(SHOW, "s.yaml")
    history.do(REST, on=0)
    with pytest.raises(InputError, match=r"s\.yaml: the show has been changed since; look at it"):
        history.do(REST, on=0)
    assert history.revision == 1


def test_what_is_refused_or_changes_nothing_is_no_step():
    history = History(SHOW)
    with pytest.raises(InputError):
        history.do(StretchBlock(at=("timeline", 4), beats="many"))
    history.do(StretchBlock(at=("timeline", 4), beats=4))
    history.take(SHOW, "the same again")
    assert (history.revision, history.can_undo, history.text) == (0, (), SHOW)


def test_a_text_from_elsewhere_is_a_step_even_if_it_is_no_show():
    history = History(SHOW, "s.yaml")
    history.take("title: a\n", "edited elsewhere")
    assert history.can_undo == ("edited elsewhere",)
    with pytest.raises(InputError):
        _ = history.show
    with pytest.raises(InputError, match="not YAML"):
        history.take("a: [", "broken")
    assert history.text == "title: a\n"
    assert history.undo()
    assert history.text == SHOW


def test_ten_thousand_steps_are_undone():
    history = History(SHOW)
    for beats in range(1, 1001):
        history.do(StretchBlock(at=("timeline", 4), beats=beats + 10))
    while history.undo():
        pass
    assert history.text == SHOW
    assert len(history.can_redo) == 1000
