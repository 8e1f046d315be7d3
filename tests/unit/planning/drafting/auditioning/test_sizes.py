"""The same move smaller or larger."""

from types import SimpleNamespace

import pytest

from sequencer.motion.patterns.library import patterns
from sequencer.planning.drafting.auditioning.candidates import DraftMove, Heard
from sequencer.planning.drafting.auditioning.sizes import (
    SEEN_SIZE,
    can_be_sized,
    first_found,
    is_seen,
    keeps_shape,
    sizes_of,
    to_size,
    written,
)


def move(name, **more):
    given = {"timing": "split", "direction": "same", "cycle": 2.0, "usual": True, **more}
    return DraftMove(pattern=name, **given)


@pytest.mark.parametrize(
    ("name", "parameter", "small", "large"),
    [
        ("extension", "hand_radius", (0.15, 0.25), (0.5, 0.45)),
        ("iso-bend-2", "hand_radius", (0.1, 0.15), (0.3, 0.25)),
        ("pendulum", "amplitude", (30.0, 45.0), (90.0, 75.0)),
        ("fountain", "width", (0.5, 0.75), (1.5, 1.25)),
    ],
)
def test_a_pattern_is_drawn_small_and_large_by_what_makes_it_so(name, parameter, small, large):
    book = patterns()
    usual = next(each.default for each in book[name].parameters if each.name == parameter)
    queues = sizes_of(move(name), book)
    assert [[each.sized for each in queue] for queue in queues] == [
        [(parameter, value) for value in small],
        [(parameter, value) for value in large],
    ]
    assert all(value < usual for value in small)
    assert all(value > usual for value in large)
    for queue, drawn in zip(queues, ("small", "large"), strict=True):
        assert {each.drawn for each in queue} == {drawn}
        assert {each.as_usual for each in queue} == {move(name)}
        assert all(each.words.endswith(f", drawn {drawn}") for each in queue)


def test_a_pattern_without_such_a_parameter_has_one_size():
    assert sizes_of(move("isolation"), patterns()) == []


def test_values_are_written_as_people_say_them():
    assert written("hand_radius", 0.15) == {"hand_radius": "15 cm"}
    assert written("amplitude", 45.0) == {"amplitude": 45}
    assert written("width", 0.75) == {"width": 0.75}


def test_the_first_size_that_passes_is_taken_and_those_behind_it_are_not_tried():
    seen = []
    queues = [(move("a"), move("b")), (move("c"), move("d")), (move("e"),)]

    def tried(wave):
        seen.append([each.pattern for each in wave])
        return [None if each.pattern in "ae" else each.pattern * 2 for each in wave]

    assert first_found(queues, tried) == [(move("b"), "bb"), (move("c"), "cc")]
    assert seen == [["a", "c", "e"], ["b"]]


def test_a_size_counts_once_it_passes_and_can_be_seen():
    usual = Heard(passes=True, size=0.5)
    enough, less = 1.01 * SEEN_SIZE, 0.99 * SEEN_SIZE
    assert is_seen(usual, Heard(passes=True, size=0.5 + enough), "large")
    assert is_seen(usual, Heard(passes=True, size=0.5 - enough), "small")
    assert not is_seen(usual, Heard(passes=True, size=0.5 + less), "large")
    assert not is_seen(usual, Heard(passes=True, size=0.5 + enough), "small")
    assert not is_seen(usual, Heard(passes=False, size=0.5 + enough), "large")


class Fitting:
    """A stage on which moves are fitted as given."""

    def __init__(self, **fits):
        self.show = SimpleNamespace(book=patterns())
        self.record = SimpleNamespace(props={"left": None, "right": None})
        self.fits = fits

    def fit(self, danced):
        values, posture = self.fits[danced.drawn or "usual"]
        return SimpleNamespace(values={"left": values, "right": values}, posture=posture)


@pytest.mark.parametrize(
    ("values", "posture", "same"),
    [
        ({"ahead": 0.2, "across": 0.3}, "upright", True),  # elsewhere, which a body does by itself
        ({"begin": "in"}, "upright", True),  # as it is by itself
        ({"begin": "out"}, "upright", False),
        ({"from": 90.0}, "upright", False),
        ({"ahead": 0.2}, "leaning", False),
    ],
)
def test_a_size_with_another_start_or_posture_is_another_move(values, posture, same):
    large = sizes_of(move("iso-bend-2"), patterns())[1][0]
    stage = Fitting(usual=({"ahead": 0.1}, "upright"), large=(values, posture))
    assert keeps_shape(large, stage) == same


def test_what_had_to_be_made_smaller_to_fit_has_no_other_size():
    own = move("iso-bend-2")
    assert can_be_sized(own, Fitting(usual=({"ahead": 0.1}, "upright")))
    assert not can_be_sized(own, Fitting(usual=({"hand_radius": 0.1}, "upright")))
    assert not can_be_sized(move("isolation"), Fitting(usual=({}, "upright")))


def test_who_knows_few_patterns_gets_them_in_sizes_and_who_knows_many_does_not():
    def many(patterns_, ways):
        return [move(f"p{n}", cycle=float(k + 1)) for n in range(patterns_) for k in range(ways)]

    few = many(3, 6)
    sized = to_size(few, list(range(len(few))), 120)
    assert len(sized) == 18  # everything of three patterns: there is room for it
    some = many(6, 6)
    sized = to_size(some, list(range(len(some))), 120)
    assert sized == [0, 1, 6, 7, 12, 13, 18, 19, 24, 25, 30, 31]  # as many of each, the best first
    assert to_size(many(25, 4), list(range(100)), 120) == []
