"""Where a draft had least to choose from."""

from sequencer.planning.drafting.costing.refusal import narrowest
from tests.unit.planning.drafting.costing.test_setting import setting, slot


def at(beat):
    return f"b{beat:g}"


def test_the_narrowest_place_and_its_commonest_fault_are_named():
    found = setting([slot(0, label="A"), slot(1, label="B"), slot(2, label="C")])
    assert narrowest(found, at) == ""
    for first in range(5):
        for second in range(1, 5):
            for link in (1, 2, 3, 4):
                found.bad[first, 16.0 - link, link, second, 0, 0, 0] = "too fast"
    # All slots are as long and danced in one way, so what fails at one place fails at each; then a move is out at one.
    assert narrowest(found, at) == (
        "least is left from A 0 to B 1 at b16, 5 of 25 pairs of moves (too fast)"
    )
    found.forbidden.add((2, 0))
    assert narrowest(found, at) == (
        "least is left from B 1 to C 2 at b32, 0 of 25 pairs of moves (too fast)"
    )
