"""Where in the plan a conflict is: scenes of two performers, and what falls into which."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.checks.distances.removed_errors import ConflictPlace
from sequencer.checks.distances.scenes import by_scene, histogram, scene_edges
from sequencer.motion.performers.slips import move_starts
from sequencer.motion.performers.walks import Move


def test_scenes_begin_with_walks_sections_and_moves(dance, dancing):
    """A walk from 10 to 14, a section at 20; Bo's link at 30 leads into what begins at 32."""
    ada = dance.dancer("Ada", moves=[Move(start=10, end=14, place=(1, 1), facing=0)])
    bo = dancing("Bo", ("block", 0, 30, "a"), ("link", 30, 32, "link"), ("block", 32, 48, "b"))

    assert scene_edges(ada, bo, (0, 48), sections=[20.0]) == (0, 10, 14, 20, 30, 48)
    assert move_starts(bo) == [0, 30]


def test_what_goes_on_as_it_is_begins_no_scene(dance, dancing):
    ada = dance.dancer("Ada")
    bo = dancing("Bo", ("block", 0, 16, "a"), ("block", 16, 32, "a"), ("block", 32, 48, "b"))
    assert scene_edges(ada, bo, (0, 48)) == (0, 32, 48)


def test_edges_within_a_beat_are_one(dance):
    """Walks come first: a section half a beat after the start of one begins nothing."""
    ada = dance.dancer("Ada", moves=[Move(start=10, end=14, place=(1, 1), facing=0)])
    edges = scene_edges(ada, dance.dancer("Bo"), (0, 30), sections=[10.5, 13.4, 15.0, 29.5])
    assert edges == (0, 10, 14, 15, 30)


def test_two_at_rest_are_so_through_all_sections(dance, dancing):
    """Sections at 14, 20 and 40: both rest from 12 to 36, Bo walks from 18 to 22."""
    parts = (("block", 0, 12, "a"), ("rest", 12, 36, "rest"), ("block", 36, 48, "b"))
    ada, bo = dancing("Ada", *parts), dancing("Bo", *parts)
    sections = [14.0, 20.0, 40.0]
    assert scene_edges(ada, bo, (0, 48), sections=sections) == (0, 12, 36, 40, 48)
    spins = dancing("Cy", ("block", 0, 48, "a"))
    assert scene_edges(ada, spins, (0, 48), sections=sections) == (0, 12, 14, 20, 36, 40, 48)
    walking = replace(bo.floor, moves=(Move(start=18, end=22, place=(1, 1), facing=0),))
    walks = replace(bo, floor=walking)
    assert scene_edges(ada, walks, (0, 48), sections=sections) == (0, 12, 18, 20, 22, 36, 40, 48)


@pytest.mark.parametrize(
    ("parts", "edges"),
    [
        ([("rest", 0, 1, "rest")], (0, 48)),
        ([("rest", -3, -2, "rest")], (0, 48)),
        ([("rest", 60, 61, "rest")], (0, 48)),
        ([("rest", 15, 16, "rest"), ("block", 16, 48, "a")], (0, 15, 16, 20, 40, 48)),
        ([("block", 0, 16, "a"), ("rest", 16, 17, "rest")], (0, 14, 16, 48)),
        ([("block", 0, 16, "a"), ("block", 16, 17, "a")], (0, 14, 20, 40, 48)),
    ],
)
def test_who_rests_does_so_before_the_first_span_and_after_the_last(dancing, parts, edges):
    ada, bo = dancing("Ada", *parts), dancing("Bo", *parts)
    assert scene_edges(ada, bo, (0, 48), sections=[14.0, 20.0, 40.0]) == edges


EDGES = (0.0, 8.0, 16.0, 40.0)


@pytest.mark.parametrize(
    ("spells", "found"),
    [
        ([(2, 3), (6, 7)], {0: [(2, 3), (6, 7)]}),
        ([(2, 3), (12, 13)], {0: [(2, 3)], 1: [(12, 13)]}),
        ([(5, 20)], {0: [(5, 8)], 1: [(8, 16)], 2: [(16, 20)]}),  # in two formations and a walk
        ([(5, 8.4)], {0: [(5, 8)]}),  # the rest is 0.4 beats of lateness
        ([(7.8, 8.3)], {1: [(7.8, 8.3)]}),  # where it lasts longer
        ([(5, 5.2), (8.2, 8.4)], {0: [(5, 5.2), (8.2, 8.4)]}),  # the last of it, late
        ([(7.5, 7.7), (12, 12.2)], {1: [(7.5, 7.7), (12, 12.2)]}),  # the first of it, early
        ([(8.2, 8.4)], {1: [(8.2, 8.4)]}),  # nothing to belong to
        ([(-0.5, 0.2), (39.9, 40.5)], {0: [(-0.5, 0.2)], 2: [(39.9, 40.5)]}),
    ],
)
def test_a_conflict_is_where_most_of_it_is(spells, found):
    assert by_scene(spells, EDGES) == found


def test_nothing_is_lost_and_nothing_is_counted_twice():
    """Random spells: each lies, with all that is a beat or longer of it, in some scene, and in order."""
    draw = np.random.default_rng(1)
    for _ in range(200):
        cuts = np.sort(draw.uniform(0, 40, 2 * draw.integers(1, 6))).reshape(-1, 2)
        found = by_scene([tuple(each) for each in cuts.tolist()], EDGES)
        parts = [part for scene in sorted(found) for part in found[scene]]
        assert parts == sorted(parts)
        assert len(parts) >= len(cuts)
        for low, high in cuts:
            held = sum(min(b, high) - max(a, low) for a, b in parts if a < high and b > low)
            assert high - low - 2 < held <= high - low + 1e-9


def test_a_histogram_counts_every_moment_once():
    assert histogram([3.0, 3.9, 4.0, 7.2, 8.0], 3.0, 8.0) == (1.0, (2, 1, 0, 0, 2))
    assert histogram([0.0, 31.0, 33.0], 0.0, 33.0) == (3.0, (1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 2))
    assert histogram([5.0], 5.0, 5.0) == (1.0, (1,))
    draw = np.random.default_rng(2).uniform(3, 90, 500)
    width, counts = histogram(draw.tolist(), 3.0, 90.0)
    want, _ = np.histogram(draw, bins=3.0 + width * np.arange(len(counts) + 1))
    assert counts == tuple(want)
    assert len(counts) <= 16


@pytest.mark.parametrize("seed", range(40))
def test_who_meets_well_inside_a_scene_meets_there(seed):
    """Whatever spells there are besides: so that one instant there is enough (`ConflictPlace.inside`)."""
    draw = np.random.default_rng(seed)
    cuts = np.sort(draw.uniform(0, 40, 2 * draw.integers(1, 6)))
    spells = [(float(a), float(b)) for a, b in cuts.reshape(-1, 2)]
    found = by_scene(spells, EDGES)
    for scene in range(3):
        low, high = ConflictPlace(
            pair=("Ada", "Bo"), scene=scene, edges=EDGES, window=(1.5, 39.0)
        ).inside
        if any(max(start, low) < min(end, high) for start, end in spells):
            assert scene in found
