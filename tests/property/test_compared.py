"""Nothing that differs between two texts of a show is left unsaid, and nothing is said of two that are the same.

Reference: the records that both files are read into, compared as plain data; and each single value of a file, changed alone.
"""

import random

import pytest

from sequencer.errors import InputError
from sequencer.outputs.compared.comparing import ComparedText, compared
from sequencer.show.operations.operation import apply
from sequencer.show.reading import show_from_document
from sequencer.show.show_text import ShowText
from sequencer.show.text.document import parse_document
from sequencer.show.text.plain_edits import ValueSet
from sequencer.staging.timeline import staged
from tests.made_operations import SHOW, VARIANTS, Draw
from tests.operation_oracle import text_of
from tests.property.test_edits import SHOW as SMALL
from tests.property.test_edits import SONG
from tests.property.test_operations import every_path


def read(text):
    return show_from_document(parse_document(text, "s.yaml"))


def stage(text):
    return staged(read(text), SONG)


def between(old, new, stage=None):
    return compared(ComparedText("old", old), ComparedText("new", new), stage)


def said(text):
    return read(text).show.model_dump(mode="json", by_alias=True)


def assert_whole(old, new, found):
    """Something is said where letters differ, and more than a spelling where the records do."""
    assert bool(found.changes) == (old != new)
    assert found.identical == (old == new)
    assert found.says_the_same == (said(old) == said(new))
    assert found.line


@pytest.mark.parametrize("variant", range(len(VARIANTS)))
def test_after_random_operations_something_is_said_exactly_where_something_differs(variant):
    draw = Draw(random.Random(variant))  # noqa: S311  # no secret
    texts = [VARIANTS[variant]]
    while len(texts) < 40:
        operation = draw.one(text_of(parse_document(texts[-1], "s.yaml").values))
        try:
            texts.append(apply(texts[-1], operation))
        except InputError:
            continue
        before = draw.random.choice(texts)
        assert_whole(before, texts[-1], between(before, texts[-1]))


def changed_alone(text):
    """Each value of a file changed by itself, where the file is still a show: its path, the value, the text."""
    shown = ShowText(text, "s.yaml")
    for path in every_path(shown.values):
        value = shown.value(*path)
        if not isinstance(value, str):
            continue
        for new in others(value):
            try:
                after = shown.edited(ValueSet(path, new)).text
                read(after)
            except (InputError, ValueError):
                continue
            yield path, new, after
            break


def others(value):
    """Values like one: a number near it, a moment near it, another word of the same kind."""
    words = {"split": "together", "true": "false", "kerosene": "lamp oil", "spotter": "perimeter", "poi": "club"}  # fmt: skip
    if value in words:
        yield words[value]
    if "." in value and value.replace(".", "").isdigit():
        bar, _, beat = value.partition(".")
        yield f"{bar}.{int(beat) % 4 + 1}"
    number = value.removesuffix(" m")
    try:
        yield f"{float(number) * 1.01:.4g}{value[len(number) :]}"
        yield str(int(float(number)) + 1)
    except ValueError:
        yield from ("extension", "two-beat-weave", "Ash", "Birch", f"{value} x")


@pytest.mark.parametrize("text", [SHOW, SMALL])
def test_each_value_that_is_changed_alone_is_told_as_it_is_now(text):
    count = 0
    for path, new, after in changed_alone(text):
        found = between(text, after)
        assert_whole(text, after, found)
        if said(text) == said(after):
            continue
        count += 1
        told = " ".join(each.words for each in found.changes)
        words = {"true": "yes", "false": "no"}.get(new, new)
        assert words in told or named(path, found), (path, new, told)
    assert count > 30


def named(path, found):
    """Whether an edit renamed something: then it is told as a new name, or as one gone and another one new."""
    return any(each.kind in ("new", "gone") for each in found.changes) or "is called" in found.changes[0].words  # fmt: skip


def test_each_value_that_is_changed_alone_is_told_of_a_staged_show():
    count = 0
    for path, new, after in changed_alone(SMALL):
        found = between(SMALL, after, stage)
        assert_whole(SMALL, after, found)
        count += not found.faults and said(SMALL) != said(after)
        if path[0] == "timeline" and not found.faults and path[-1] in ("pattern", "beats", "from"):
            subjects = {each.subject for each in found.changes}
            assert "dance" in subjects, (path, new, found.changes)
    assert count > 40


def test_staged_after_random_operations_nothing_is_left_unsaid():
    draw = Draw(random.Random(7))  # noqa: S311  # no secret
    texts, told = [SMALL], 0
    while told < 25:
        operation = draw.one(text_of(parse_document(texts[-1], "s.yaml").values))
        try:
            after = apply(texts[-1], operation)
            stage(after)
        except InputError:
            continue
        texts.append(after)
        before = draw.random.choice(texts)
        found = between(before, after, stage)
        assert_whole(before, after, found)
        assert not found.faults
        told += before != after
