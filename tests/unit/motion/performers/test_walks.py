import pickle
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.performers.walks import Move, WalkPath, WalkPaths

WALK = WalkPath(
    (0.0, 1.0),
    0.0,
    (
        Move(start=2, end=6, place=(2, 3), facing=1.0, through=((1, 3), (1.5, 2.5))),
        Move(start=7, end=9, place=(-1, 2), facing=-2.0),
    ),
)


def test_stands_before_between_and_after():
    stand = WALK.at([-5.0, 2.0, 6.0, 6.5, 7.0, 9.0, 100.0])

    assert_allclose(stand.place[:, 0], [0, 0, 2, 2, 2, -1, -1], atol=1e-12)
    assert_allclose(stand.facing, [0, 0, 1, 1, 1, -2, -2], atol=1e-12)
    assert_allclose(stand.place_rate, 0, atol=1e-12)
    assert_allclose(stand.place_acceleration, 0, atol=1e-9)


def test_passes_through_the_points_given():
    way = WALK.at(np.linspace(2, 6, 40_001)).place

    for point in ((1, 3), (1.5, 2.5)):
        assert np.min(np.hypot(*(way - point).T)) < 1e-3


def test_rates_are_derivatives():
    beats = np.linspace(1, 10, 90_001)
    stand = WALK.at(beats)

    for value, rate in (
        (stand.place, stand.place_rate),
        (stand.place_rate, stand.place_acceleration),
        (stand.facing, stand.facing_rate),
        (stand.facing_rate, stand.facing_acceleration),
    ):
        assert_allclose(np.gradient(value, beats, axis=0)[2:-2], rate[2:-2], atol=2e-3)


def test_no_rate_exceeds_its_bound():
    for start, end, bounds in WALK.pieces(-1, 12):
        stand = WALK.at(np.linspace(start, end, 5001))
        assert np.hypot(*stand.place_rate.T).max() <= bounds.speed + 1e-9
        assert np.hypot(*stand.place_acceleration.T).max() <= bounds.acceleration + 1e-9
        assert np.abs(stand.facing_rate).max() <= bounds.turn_rate + 1e-9
        assert np.abs(stand.facing_acceleration).max() <= bounds.turn_acceleration + 1e-9


def test_bounds_of_a_straight_walk_are_reached():
    """Minimum jerk peaks at 15/8 of the mean speed and 10/√3 of distance over time squared."""
    ((_, _, bounds),) = WalkPath((0, 0), 0, (Move(start=0, end=4, place=(3, 0), facing=0),)).pieces(
        0, 4
    )

    assert_allclose(bounds.speed, 15 / 8 * 3 / 4)
    assert_allclose(bounds.acceleration, 10 / np.sqrt(3) * 3 / 16)


def test_pieces_cover_the_span_without_a_gap():
    pieces = WALK.pieces(3.0, 8.0)

    assert [piece[0] for piece in pieces] == [3.0, 6.0, 7.0]
    assert [piece[1] for piece in pieces] == [6.0, 7.0, 8.0]


def test_shapes_follow_the_beats():
    assert WALK.at(3.0).place.shape == (2,)
    assert WALK.at(np.zeros((4, 5))).place.shape == (4, 5, 2)
    assert WALK.at(np.zeros((4, 5))).facing_rate.shape == (4, 5)


def test_moving_a_held_place_moves_only_that():
    other = WALK.moved((0.5, 0.0), start=6.2, end=6.8)

    assert_allclose(other.at([0.0, 6.5, 10.0]).place[:, 0], [0, 2.5, -1])
    assert WALK.held(6.2, 6.8) == (2, 9)


def test_moving_on_a_walk_moves_both_its_ends():
    other = WALK.moved((0.5, 0.0), start=3, end=4)

    assert_allclose(other.at([0.0, 6.5, 10.0]).place[:, 0], [0.5, 2.5, -1])
    assert WALK.held(3, 4) == (-np.inf, 9)


def test_shifting_is_later():
    beats = np.linspace(0, 12, 50)

    assert_allclose(WALK.shifted(3).at(beats + 3).place, WALK.at(beats).place, atol=1e-12)


def test_survives_another_process():
    WALK.at(0.0)
    again = pickle.loads(pickle.dumps(WALK))  # noqa: S301 - our own bytes

    assert_allclose(again.at(4.0).place, WALK.at(4.0).place)


def test_points_that_coincide_do_no_harm():
    path = WalkPath(
        (0, 0), 0, (Move(start=0, end=2, place=(1, 0), facing=0, through=((0, 0), (0.5, 0.2))),)
    )

    assert_allclose(path.at([0.0, 2.0]).place, [[0, 0], [1, 0]], atol=1e-12)
    path = WalkPath((1, 0), 0, (Move(start=0, end=2, place=(1, 0), facing=2),))
    assert_allclose(path.at(1.3).place, [1, 0])


@pytest.mark.parametrize(
    ("make", "match"),
    [
        (lambda: Move(start=2, end=2, place=(0, 0), facing=0), "end after"),
        (lambda: Move(start=0, end=float("nan"), place=(0, 0), facing=0), "finite"),
        (lambda: Move(start=0, end=1, place=(0, float("inf")), facing=0), "finite"),
        (lambda: WalkPath((0, float("nan"))), "finite"),
        (
            lambda: WalkPath(
                (0, 0),
                0,
                (
                    Move(start=0, end=2, place=(0, 0), facing=0),
                    Move(start=1, end=3, place=(0, 0), facing=0),
                ),
            ),
            "overlap",
        ),
    ],
)
def test_what_cannot_be_walked_is_refused(make, match):
    with pytest.raises(ValueError, match=match):
        make()


def test_points_on_a_way_move_only_if_both_of_its_ends_do():
    """Places held from 4.5 to 9 are the second and third: what lies between them goes along, no more."""
    moves = (
        Move(start=2.0, end=4.0, place=(1.0, 0.0), facing=0.1, through=((0.5, 0.5),)),
        Move(start=6.0, end=8.0, place=(2.0, 0.0), facing=0.2, through=((1.5, 0.5), (1.6, 0.6))),
        Move(start=10.0, end=12.0, place=(3.0, 0.0), facing=0.3, through=((2.5, 0.5),)),
    )
    path = WalkPath((0.0, 0.0), 0.0, moves)
    assert path.held(4.5, 9.0) == (2.0, 12.0)
    after = path.moved((10.0, -5.0), start=4.5, end=9.0, turn=1.0)

    assert (after.place, after.facing) == ((0.0, 0.0), 0.0)
    assert [move.place for move in after.moves] == [(11.0, -5.0), (12.0, -5.0), (3.0, 0.0)]
    assert [move.facing for move in after.moves] == pytest.approx([1.1, 1.2, 0.3])
    assert [move.through for move in after.moves] == [
        ((0.5, 0.5),), ((11.5, -4.5), (11.6, -4.4)), ((2.5, 0.5),),
    ]  # fmt: skip
    assert [(move.start, move.end) for move in after.moves] == [(2, 4), (6, 8), (10, 12)]
    whole = path.moved((10.0, -5.0))
    assert whole.place == (10.0, -5.0)
    assert whole.moves[0].through == ((10.5, -4.5),)
    later = path.shifted(1.5)
    assert [(move.start, move.end) for move in later.moves] == [
        (3.5, 5.5),
        (7.5, 9.5),
        (11.5, 13.5),
    ]
    assert [move.place for move in later.moves] == [move.place for move in moves]


def test_what_stands_for_a_path_is_all_its_numbers():
    """Another number anywhere is another path, and so is the other zero; what is equal shares its table."""
    same = replace(WALK, moves=tuple(replace(move) for move in WALK.moves))
    assert same.content == WALK.content
    assert same.table is WALK.table
    first, last = WALK.moves
    others = [
        replace(WALK, place=(0.1, 1.0)), replace(WALK, place=(-0.0, 1.0)), replace(WALK, facing=0.1),
        *(replace(WALK, moves=(replace(first, **more), last)) for more in (
            {"start": 1.0}, {"end": 6.5}, {"place": (2, 3.1)}, {"facing": 1.1}, {"through": ()},
            {"through": ((1, 3), (1.5, 2.6))},
        )),
        replace(WALK, moves=(first,)),
    ]  # fmt: skip
    assert len({each.content for each in (WALK, *others)}) == len(others) + 1
    assert len(WALK.walks) == 2
    # The second walk begins where the first one ends.
    assert replace(WALK, place=(5.0, 5.0)).walks[1] == WALK.walks[1]
    moved = replace(WALK, moves=(replace(first, place=(2, 3.5)), last))
    assert moved.walks[1] != WALK.walks[1]


@pytest.mark.parametrize("beat", [-1.0, 2.0, 3.7, 6.5, 8.0, 40.0])
def test_a_place_at_one_instant_is_that_of_many(beat):
    for path in (WALK, replace(WALK, place=(3.0, 3.0)), WALK):
        assert path.place_at(beat) == tuple(path.at([beat]).place[0].tolist())


def test_thousands_of_paths_at_once_are_each_as_alone():
    """Reference: each path by itself. At the end of a walk nothing of the next row is mistaken for it."""
    others = [WalkPath((float(k), 0.0), moves=WALK.moves) for k in range(8)]
    many = WalkPaths([*others * 750, WALK])  # 18,003 rows: row 16,384 and 1 − 1e-12 make 16,385
    beats = np.array([1.0, 2.0, 3.7, 5.2, 5.999999, 6.0, 8.999999, 9.0, 40.0])
    for k, path in ((0, others[0]), (5_900, others[5_900 % 8]), (6_000, WALK)):
        found, alone = many.at([(k, 0, len(beats))], beats), path.at(beats)
        assert np.array_equal(found.place, alone.place)
        assert np.array_equal(found.place_acceleration, alone.place_acceleration)
    assert_allclose(many.at([(6_000, 0, 1)], np.array([6.0])).place, [[2.0, 3.0]], atol=1e-12)
