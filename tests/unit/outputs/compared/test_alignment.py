"""Which piece has become which: the way of telling it that a person would choose."""

import random

import pytest

from sequencer.outputs.compared import alignment
from sequencer.outputs.compared.alignment import TimedPiece, aligned


def pieces(*rows):
    return [TimedPiece(what, start, start + length) for what, start, length in rows]


OLD = pieces(("a", 0, 8), ("b", 8, 8), ("c", 16, 8))


@pytest.mark.parametrize(
    ("new", "pairs"),
    [
        (OLD, [(0, 0), (1, 1), (2, 2)]),
        (pieces(("a", 0, 8), ("b", 8, 12), ("c", 20, 8)), [(0, 0), (1, 1), (2, 2)]),  # stretched, moved
        (pieces(("x", 0, 8), ("a", 8, 8), ("b", 16, 8), ("c", 24, 8)), [(None, 0), (0, 1), (1, 2), (2, 3)]),  # put in front
        (pieces(("a", 0, 8), ("x", 8, 8), ("c", 16, 8)), [(0, 0), (1, 1), (2, 2)]),  # another in its place
        (pieces(("a", 0, 8), ("c", 16, 8)), [(0, 0), (1, None), (2, 1)]),  # gone
        (pieces(("c", 0, 8), ("b", 8, 8), ("a", 16, 8)), [(0, 0), (1, 1), (2, 2)]),  # changed in place, not swapped
        (pieces(("b", 8, 8), ("c", 16, 8), ("a", 40, 8)), [(1, 0), (2, 1), (0, 2)]),  # moved past others
        ([], [(0, None), (1, None), (2, None)]),
    ],
)  # fmt: skip
def test_it_is_told_in_the_fewest_words(new, pairs):
    assert aligned(OLD, new) == pairs
    back = [(j, i) for i, j in aligned(new, OLD)]
    assert sorted(back, key=str) == sorted(pairs, key=str)


@pytest.mark.parametrize("cells", [0, 400_000])
def test_every_piece_is_in_exactly_one_pair(cells, monkeypatch):
    monkeypatch.setattr(alignment, "_MOST_CELLS", cells)
    draw = random.Random(2)  # noqa: S311  # no secret
    for _ in range(200):
        old, new = (
            pieces(*((draw.choice("abc"), 4 * k + draw.choice((0, 0, 1)), draw.choice((2, 4))) for k in range(draw.randrange(9))))
            for _ in range(2)
        )  # fmt: skip
        pairs = aligned(old, new)
        assert sorted(i for i, _ in pairs if i is not None) == list(range(len(old)))
        assert sorted(j for _, j in pairs if j is not None) == list(range(len(new)))
        stays = {piece for piece in old if piece in new}
        assert {
            old[i] for i, j in pairs if i is not None and j is not None and old[i] == new[j]
        } == stays
        assert all(i is not None or j is not None for i, j in pairs)
