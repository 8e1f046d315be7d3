"""Operations at random: each makes exactly its change of the show, or none, and undo leads back to the first byte.

Reference: the same change on plain Python data, and the dance with every phrase written out (`tests/operation_oracle.py`).
More of them: `python benchmarks/operations.py`.
"""

import random

import pytest

from sequencer.show.operations.every_operation import OPERATIONS
from tests.made_operations import VARIANTS
from tests.operation_runs import run


@pytest.mark.parametrize("variant", range(len(VARIANTS)))
def test_random_operations_make_exactly_their_change(variant):
    draw = random.Random(variant)  # noqa: S311  # no secret
    told = run(VARIANTS[variant], draw, steps=90, rounds=2)

    assert told.done > 40
    assert told.refused > 5


def test_every_kind_of_operation_is_done_by_now():
    draw = random.Random(12)  # noqa: S311  # no secret
    told = run(VARIANTS[0], draw, steps=60, rounds=12, whole=0.0)

    assert set(OPERATIONS) - set(told.kinds) == {"paste-blocks", "put-back"}  # `copy-blocks` pastes
