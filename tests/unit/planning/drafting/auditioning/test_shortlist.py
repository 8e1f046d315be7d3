"""Which moves of a pattern are tried, and which are kept."""

from sequencer.motion.patterns.library import patterns
from sequencer.planning.drafting.auditioning.candidates import HANDS, DraftMove, Heard
from sequencer.planning.drafting.auditioning.shortlist import (
    in_order,
    kept_of_each,
    lacking,
    mixed,
    some_of,
    without_hopeless,
)


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
        found = mixed([3, 1, 0, 2, 7, 6, 5, 4], moves, turn)
        assert found[0] == 3  # the best stays first
        assert sorted(hands_of(moves, found[:4])) == sorted(HANDS)
        assert sorted(found) == list(range(8))


def test_where_few_are_kept_patterns_differ_in_the_second():
    names = [f"p{k}" for k in range(80)]
    moves = moves_of(*names)
    heard = [Heard(passes=True, margin=0.1 - 0.001 * k % 4) for k in range(len(moves))]
    everything = list(range(len(moves)))
    kept = some_of(moves, heard, everything, [[True] * len(moves)], most=160)
    assert len(kept) == 160
    seconds = set()
    for name in names:
        own = [k for k in kept if moves[k].pattern == name]
        assert len(set(hands_of(moves, own))) == 2
        seconds |= set(hands_of(moves, own))
    assert seconds == set(HANDS)
    fewer = some_of(moves, heard, everything, [[True] * len(moves)], most=20)
    assert len(fewer) == 160  # two of each at least


def test_every_range_of_tempos_gets_a_move_that_passes_there():
    moves = moves_of("line")
    heard = [Heard(passes=True, margin=0.1)] * len(moves)
    rows = [[k != 7 for k in range(8)], [k == 7 for k in range(8)]]
    assert 7 in some_of(moves, heard, list(range(8)), rows, most=2)


def test_each_pattern_begins_with_its_usual_hands_and_others_with_a_way_of_their_own():
    names = ("extension", "wheel-spin", "cat-eye", "isolation", "three-beat-weave", "butterfly")
    moves = moves_of(*names)
    order = in_order(moves, patterns())
    firsts = {name: hands_of(moves, own)[0] for name, own in order.items()}
    assert [firsts[name] for name in names[:4]] == list(HANDS)
    assert firsts["three-beat-weave"] == ("split", "same")
    assert firsts["butterfly"][1] == "opposite"
    for own in order.values():
        assert [moves[k].usual for k in own] == [True] * 4 + [False] * 4
        assert sorted(hands_of(moves, own[:4])) == sorted(HANDS)


def test_of_a_cycle_that_failed_twice_no_more_is_tried():
    moves = moves_of("line")  # four ways of 2 beats, then four of 4
    yes, no = Heard(passes=True), Heard(passes=False)
    two = {0: [no], 1: [no]}
    queue = list(range(2, 8))
    without_hopeless(queue, moves, {0: [no]}, [0, 0], 4)
    assert queue == list(range(2, 8))  # one failure is none
    without_hopeless(queue, moves, two, [0, 0], 4)
    assert queue == [4, 5, 6, 7]
    # It passed at the slower tempo, and enough do so: only where too few pass does it count.
    queue = [2, 3, 6, 7]
    both = {0: [yes, no], 1: [yes, no], 4: [yes, yes], 5: [yes, yes]}
    without_hopeless(queue, moves, both, [4, 4, 1], 4)
    assert queue == [6, 7]
    queue = list(range(2, 8))
    without_hopeless(queue, moves, {0: [yes, no], 1: [no, yes]}, [2, 1, 1], 4)
    assert queue == list(range(2, 8))
    # Of two performers who are auditioned at one tempo, both have to pass.
    queue = list(range(2, 8))
    without_hopeless(queue, moves, {0: [yes, no], 1: [no, yes]}, [0, 0], 4)
    assert queue == [4, 5, 6, 7]


def test_of_few_patterns_more_is_tried_and_until_enough_pass_at_every_tempo():
    assert [kept_of_each(n, 120) for n in (1, 10, 25, 60, 200)] == [6, 6, 4, 2, 2]
    assert lacking([0, 0, 0], 4) == 4
    assert lacking([3, 3, 3], 4) == 1
    assert lacking([4, 4, 2], 4) == 0
    assert lacking([6, 6, 0], 4) == 2  # nothing yet where the song is fastest
