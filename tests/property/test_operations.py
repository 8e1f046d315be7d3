"""Operations at random: each makes exactly its change of the show, or none, and undo leads back to the first byte.

Reference: the same change on plain Python data, and the dance with every phrase written out (`tests/operation_oracle.py`).
More of them: `python benchmarks/operations.py`.
"""

import random

import pytest

from sequencer.errors import InputError
from sequencer.show.operations.every_operation import OPERATIONS
from sequencer.show.operations.operation import apply
from sequencer.show.show_text import ShowText
from sequencer.show.text.document import parse_document
from sequencer.show.text.plain_edits import TakenOut, ValueSet
from tests.made_operations import VARIANTS, Draw
from tests.operation_oracle import text_of
from tests.operation_runs import run
from tests.repeated import often


@pytest.mark.parametrize("rounds", often(1, 2))
@pytest.mark.parametrize("variant", range(len(VARIANTS)))
def test_random_operations_make_exactly_their_change(variant, rounds):
    draw = random.Random(variant)  # noqa: S311  # no secret
    told = run(VARIANTS[variant], draw, steps=90, rounds=rounds)

    assert told.done > 20 * rounds
    assert told.refused > 2 * rounds


def test_every_kind_of_operation_is_done_by_now():
    draw = random.Random(1)  # noqa: S311  # no secret
    open_kinds = set(OPERATIONS)
    for _ in range(60):
        open_kinds -= set(run(VARIANTS[0], draw, steps=60, rounds=1, whole=0.0).kinds)
        if not open_kinds:
            break
    assert open_kinds == set()


def test_on_a_file_with_faults_they_are_done_or_refused_in_a_sentence():
    """Values of the wrong kind anywhere: never an error that is none of the user's."""
    draw = Draw(random.Random(3))  # noqa: S311  # no secret
    values = text_of(parse_document(VARIANTS[0], "s.yaml").values)
    places = [path for path in every_path(values) if path]
    wrong = ("x", "3", None, [], {}, ["x"], {"x": "y"}, [["x"]], [{"name": ["a"]}], True)
    refused = 0
    for _ in range(400):
        path = draw.random.choice(places)
        edit = draw.random.choice((TakenOut(path), ValueSet(path, draw.random.choice(wrong))))
        text = ShowText(VARIANTS[0], "s.yaml").edited(edit).text
        try:
            apply(text, draw.one(values), file="s.yaml")
        except InputError:
            refused += 1
    assert refused > 200


def every_path(value, path=()):
    yield path
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()  # fmt: skip
    for key, own in items:
        yield from every_path(own, (*path, key))
