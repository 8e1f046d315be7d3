"""Steps back and forth through a text."""

import random

import pytest

from sequencer.desk.file.edited_text import EditedText


def test_every_step_can_be_undone_and_done_again():
    draw = random.Random(3)  # noqa: S311
    edits, texts = EditedText("start"), ["start"]
    for k in range(200):
        at = draw.randrange(len(edits.text) + 1)
        edits.step(edits.text[:at] + draw.choice("abä火\n") + edits.text[at:], f"step {k}", "now")
        texts.append(edits.text)
    for text in reversed(texts[:-1]):
        assert edits.undo()
        assert edits.text == text
    assert not edits.undo()
    for text in texts[1:]:
        assert edits.redo()
        assert edits.text == text
    assert not edits.redo()
    assert edits.revision == 1 + 3 * 200


def test_a_new_step_forgets_what_was_undone():
    edits = EditedText("a")
    edits.step("ab", "one", "now")
    edits.undo()
    edits.step("ac", "two", "now")
    assert not edits.redo()
    assert [step.words for step in edits.done] == ["two"]


def test_texts_of_late_revisions_are_known_and_old_ones_forgotten():
    edits = EditedText("0")
    for k in range(300):
        edits.step(str(k + 1), "", "now")
    assert edits.at(301) == "300"
    assert edits.at(290) == "289"
    assert edits.at(1) is None
    assert edits.at(999) is None


def test_the_text_after_any_step_is_known_also_of_steps_that_were_undone():
    draw = random.Random(5)  # noqa: S311
    edits, texts = EditedText("start"), ["start"]
    for k in range(30):
        at = draw.randrange(len(edits.text) + 1)
        edits.step(edits.text[:at] + draw.choice("abä火\n") + edits.text[at:], f"step {k}", "now")
        texts.append(edits.text)
    for undone in range(12):
        assert [edits.after(k) for k in range(31)] == texts
        assert [each.words for each in edits.all_steps] == [f"step {k}" for k in range(30)]
        assert edits.text == texts[30 - undone]
        edits.undo()
    for wrong in (-1, 31):
        with pytest.raises(ValueError, match="30 steps"):
            edits.after(wrong)
