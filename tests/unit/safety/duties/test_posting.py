"""Proposed posts: free at every moment, and as near as the best that is known."""

import math

import numpy as np
import pytest

from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.safety.duties import posting
from sequencer.safety.duties.posting import (
    POST_CLEARANCE,
    PostArea,
    propose_posts,
    too_deep,
    too_few,
)

ROOM = PostArea(left=-10.0, right=10.0, down=-4.0, up=14.0)
REACH = {"Wren": 1.5, "Moss": 1.5}


def stand(who, x, y):
    return Followed(who=who, floor=WalkPath((x, y)), start=0.0, end=32.0)


def proposed(number, burns, *, bounds=ROOM, ground=None, tall=None, cast=None):
    return propose_posts(
        number, burns, cast or burns, REACH, bounds=bounds,
        ground=ground or WalkableFloor(), tall=tall or WalkableFloor(),
    )  # fmt: skip


def test_one_post_for_two_stands_in_the_middle():
    """The point nearest to both of two points is their middle: 3 m."""
    found = proposed(1, [stand("Wren", -3, 5), stand("Moss", 3, 5)])

    assert found.way == pytest.approx(3.0, abs=0.06)
    assert found.places[0] == pytest.approx((0.0, 5.0), abs=0.2)


def test_two_posts_stand_at_the_edge_of_the_reach():
    found = proposed(2, [stand("Wren", -3, 5), stand("Moss", 3, 5)])

    assert found.way == pytest.approx(1.5 + POST_CLEARANCE, abs=0.08)


def test_a_walk_is_covered_as_well_as_a_fine_search_can():
    """Against every place of a grid of 5 cm with the walk's own samples."""
    floor = WalkPath(
        (-4.0, 3.0),
        moves=(Move(start=4.0, end=20.0, facing=0.0, place=(4.0, 3.0), through=((0.0, 8.0),)),),
    )
    burn = Followed(who="Wren", floor=floor, start=0.0, end=32.0)
    found = proposed(1, [burn])
    walk = floor.at(np.linspace(0.0, 32.0, 2001)).place
    x, y = np.meshgrid(np.arange(-6, 6, 0.1), np.arange(-1, 10, 0.1))
    gap = np.hypot(x[..., None] - walk[:, 0], y[..., None] - walk[:, 1])
    free = gap.min(axis=-1) >= 1.5 + POST_CLEARANCE
    best = gap.max(axis=-1)[free].min()

    # the proven margin for the moments between samples keeps posts a little farther out
    assert best - 0.01 <= found.way <= best + 0.35
    clear = np.hypot(walk[:, 0] - found.places[0][0], walk[:, 1] - found.places[0][1]).min()
    assert clear >= 1.5 + POST_CLEARANCE


def test_posts_keep_out_of_the_reach_of_those_who_are_not_lit():
    burns = [stand("Wren", -3, 5)]
    cast = [*burns, stand("Moss", -1.2, 5)]
    found = proposed(1, burns, cast=cast)

    for each in cast:
        assert math.dist(found.places[0], each.floor.place) >= 1.5 + POST_CLEARANCE - 1e-9


def test_posts_keep_out_of_the_audience_and_see_past_scenery():
    pit = ((-10.0, -4.0), (10.0, -4.0), (10.0, 6.9), (-10.0, 6.9))
    found = proposed(
        1, [stand("Wren", 0, 5)], bounds=PostArea(left=-10, right=10, down=-4, up=14, closed=(pit,))
    )
    assert found.places[0][1] > 6.9

    wall = WalkableFloor((((-6.0, 6.4), (6.0, 6.4), (6.0, 6.6), (-6.0, 6.6)),))
    found = proposed(1, [stand("Wren", 0, 5)], ground=wall, tall=wall)
    assert found.places[0][1] < 6.4


def test_no_free_place_is_said_and_nonsense_refused():
    small = PostArea(left=-1.0, right=1.0, down=4.0, up=6.0)

    assert proposed(1, [stand("Wren", 0, 5)], bounds=small) is None
    with pytest.raises(ValueError, match="at least one post"):
        proposed(0, [stand("Wren", 0, 5)])
    with pytest.raises(ValueError, match="at least one post"):
        proposed(1, [], cast=[stand("Wren", 0, 5)])


def test_the_same_show_gives_the_same_posts():
    burns = [stand("Wren", -3.3, 5.1), stand("Moss", 2.7, 4.2)]

    assert proposed(3, burns) == proposed(3, burns)


@pytest.mark.parametrize("seed", range(4))
def test_posts_are_exchanged_as_if_every_score_were_computed(seed):
    """Reference: the rule itself, one post at a time, with the score of every candidate."""
    draw = np.random.default_rng(seed)
    ways = np.abs(draw.uniform(0, 20, 60)[:, None] - draw.uniform(0, 20, 40)) + 0.5
    first = [0, 1, 2, 3][: seed + 1]
    chosen, best = list(first), float(posting._score(np.min(ways[first], axis=0)))
    for _ in range(posting._ROUNDS):
        improved = False
        for slot in range(len(chosen)):
            rest = np.min(np.delete(ways[chosen], slot, axis=0), axis=0, initial=np.inf)
            scores = posting._score(np.minimum(ways, rest))
            if np.min(scores) < best - 1e-9:
                chosen[slot], best, improved = int(np.argmin(scores)), float(np.min(scores)), True
        if not improved:
            break
    assert chosen != first
    assert posting._exchanged(list(first), ways) == chosen
    assert np.all(posting._score(ways) >= posting._LEAST_SCORE * np.max(ways, axis=1))


def test_walks_are_compared_in_parts_as_at_once(monkeypatch):
    places, targets = np.array([[0.0, 0.0], [3.0, 1.0]]), np.arange(14.0).reshape(7, 2)
    ground = WalkableFloor((((1.0, 1.0), (2.0, 1.0), (2.0, 2.0)),))
    whole = posting._ways(places, targets, ground, ground)
    monkeypatch.setattr(posting, "_CHUNK", 4)
    assert np.array_equal(posting._ways(places, targets, ground, ground), whole)
    assert whole.shape == (2, 7)


def test_too_few_posts_are_those_that_no_search_could_place():
    """Four stand 10 m apart in a row: two posts reach 5 m to both sides at best, so within 4.9 m four are needed."""
    row = [stand(f"P{k}", 10.0 * k, 0.0) for k in range(4)]

    assert [too_few(number, row, 4.9) for number in (1, 2, 3, 4, 5)] == [True] * 3 + [False] * 2
    assert [too_few(number, row, 5.0) for number in (1, 2)] == [True, False]
    assert too_few(1, row, 9.9)
    assert not too_few(1, row, 15.0)


def test_a_walk_that_is_enough_to_the_tolerance_is_not_too_few():
    """What is found may be 5 mm short of the true walk: so near the limit the search decides."""
    pair = [stand("Wren", 0.0, 0.0), stand("Moss", 10.0, 0.0)]

    assert not too_few(1, pair, 5.0 - 0.005)
    assert too_few(1, pair, 5.0 - 0.0101)


def test_a_walk_counts_where_it_leads_too():
    floor = WalkPath((0.0, 0.0), moves=(Move(start=4.0, end=20.0, facing=0.0, place=(20.0, 0.0)),))

    assert too_few(1, [Followed(who="Wren", floor=floor, start=0.0, end=32.0)], 9.0)
    assert not too_few(1, [Followed(who="Wren", floor=floor, start=0.0, end=4.0)], 9.0)


def test_amid_ground_that_is_closed_nobody_is_near_enough_however_many_there_are():
    """Wren stands 6 m from the nearest side of a square of 20 m by 12 m, Moss beside it."""
    square = ((-10.0, 0.0), (10.0, 0.0), (10.0, 12.0), (-10.0, 12.0))
    burns = [stand("Moss", 11.0, 6.0), stand("Wren", 0.0, 6.0)]

    assert too_deep(burns, [square], 5.98)
    assert not too_deep(burns, [square], 5.995)  # what is found may be 5 mm short
    assert not too_deep(burns[:1], [square], 0.5)
    assert not too_deep(burns, [], 0.5)
    corner = ((50.0, 0.0), (60.0, 0.0), (60.0, 9.0))
    assert too_deep(burns, [corner, square], 5.0)
