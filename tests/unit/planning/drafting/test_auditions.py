"""Which moves of a pattern are kept."""

from sequencer.planning.drafting.auditions import _mixed, _some
from sequencer.planning.drafting.candidates import HANDS, DraftMove, Heard


def moves_of(*names, hands=HANDS):
    return [
        DraftMove(pattern=name, timing=timing, direction=direction, cycle=cycle, usual=cycle == 2.0)
        for name in names
        for cycle in (2.0, 4.0)
        for timing, direction in hands
    ]


def hands_of(moves, kept):
    return [(moves[k].timing, moves[k].direction) for k in kept]


def test_each_way_of_timing_the_hands_comes_once_before_any_comes_again():
    moves = moves_of("line")
    for turn in range(5):
        found = _mixed([3, 1, 0, 2, 7, 6, 5, 4], moves, turn)
        assert found[0] == 3  # the best stays first
        assert sorted(hands_of(moves, found[:4])) == sorted(HANDS)
        assert sorted(found) == list(range(8))


def test_where_few_are_kept_patterns_differ_in_the_second():
    names = [f"p{k}" for k in range(80)]
    moves = moves_of(*names)
    heard = [Heard(passes=True, margin=0.1 - 0.001 * k % 4) for k in range(len(moves))]
    everything = list(range(len(moves)))
    kept = _some(moves, heard, everything, [[True] * len(moves)])
    assert len(kept) == 160
    seconds = set()
    for name in names:
        own = [k for k in kept if moves[k].pattern == name]
        assert len(set(hands_of(moves, own))) == 2
        seconds |= set(hands_of(moves, own))
    assert seconds == set(HANDS)
    fewer = _some(moves, heard, everything, [[True] * len(moves)], most=20)
    assert len(fewer) == 160  # two of each at least


def test_every_range_of_tempos_gets_a_move_that_passes_there():
    moves = moves_of("line")
    heard = [Heard(passes=True, margin=0.1)] * len(moves)
    rows = [[k != 7 for k in range(8)], [k == 7 for k in range(8)]]
    assert 7 in _some(moves, heard, list(range(8)), rows, most=2)
