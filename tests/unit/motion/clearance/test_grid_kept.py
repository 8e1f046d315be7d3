"""Bounds of dancers that are kept from one grid to the next: those of a whole cast, whatever pairs are looked at between."""

import pytest

from sequencer.motion.clearance.grid import cells
from sequencer.motion.performers.dancer import Dancer
from tests.nothing_kept import nothing_kept


@pytest.fixture
def bounded(monkeypatch):
    """Names of the dancers whose bounds are worked out."""
    names, own = [], Dancer.pieces

    def pieces(dancer, start, end):
        names.append(dancer.name)
        return own(dancer, start, end)

    monkeypatch.setattr(Dancer, "pieces", pieces)
    return names


def test_pairs_put_no_bounds_of_a_whole_cast_away(dance, bounded):
    """A show of thousands of conflicts looks at as many pairs between one trial and the next."""
    cast = [dance.dancer(name, (3 * k, 8)) for k, name in enumerate("ABCD")]
    with nothing_kept():
        cells(cast, 0.0, 64.0)
        assert bounded == ["A", "B", "C", "D"]
        for k in range(300):
            cells(cast[:2], k / 8, k / 8 + 1)
        bounded.clear()
        cells([*cast[:3], dance.dancer("E", (9, 9))], 0.0, 64.0)
    assert bounded == ["E"]


def test_bounds_of_a_cast_of_any_size_are_kept(dance, bounded):
    """Else a show of hundreds works all of them out anew for each change that is tried."""
    cast = [dance.dancer(f"P{k}", (3 * k, 8), sides=()) for k in range(300)]
    with nothing_kept():
        cells(cast, 0.0, 4.0)
        assert len(bounded) == 300
        bounded.clear()
        cells([*cast[:-1], dance.dancer("other", (3, 9), sides=())], 0.0, 4.0)
    assert bounded == ["other"]
