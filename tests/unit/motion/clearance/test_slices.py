"""Keys of slices of time: what decides a dancer's motion in a slice changes its key, and nothing else does."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from sequencer.content_keys import content_key
from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.clearance import slices
from sequencer.motion.clearance.slices import SLICE_BEATS, key_at, slice_edges, slice_keys
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.drifting import DriftedTrajectory
from sequencer.motion.performers.walks import Move
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.timing.position import TOUCH
from tests.nothing_kept import nothing_kept

EDGES = slice_edges(0.0, 96.0)  # six slices
MOVES = tuple(
    Move(start=start, end=start + 6.0, place=(k + 1.0, 3.0), facing=0.0)
    for k, start in enumerate((20.0, 52.0, 84.0))
)


@pytest.fixture
def ada(dance):
    return dance.dancer(moves=MOVES, lit=((8.0, 40.0),), end=96.0)


def changed(one, other):
    """Slices whose keys differ."""
    keys = zip(slice_keys(one, EDGES), slice_keys(other, EDGES), strict=True)
    return [k for k, (a, b) in enumerate(keys) if a != b]


def walking(dancer, k, **more):
    moves = list(dancer.floor.moves)
    moves[k] = replace(moves[k], **more)
    return replace(dancer, floor=replace(dancer.floor, moves=tuple(moves)))


def test_slices_are_whole_multiples_clipped():
    assert slice_edges(3.5, 40.0).tolist() == [3.5, 16.0, 32.0, 40.0]
    assert slice_edges(16.0, 32.0).tolist() == [16.0, 32.0]
    assert slice_edges(-5.0, 1.0).tolist() == [-5.0, 0.0, 1.0]
    assert slice_edges(17.0, 18.0).tolist() == [17.0, 18.0]
    assert SLICE_BEATS == 16.0  # approved: results of the shows that come with it hang on it


def test_a_dragged_place_changes_the_walks_to_and_from_it_and_the_standing_between(ada):
    """Walks in beats 20 to 26, 52 to 58 and 84 to 90."""
    assert changed(ada, walking(ada, 0, place=(1.3, 3.0))) == [1, 2, 3]
    assert changed(ada, walking(ada, 1, place=(2.3, 3.0))) == [3, 4, 5]
    assert changed(ada, walking(ada, 2, place=(3.3, 3.0))) == [5]
    assert changed(ada, walking(ada, 2, through=((2.5, 3.5),))) == [5]
    assert changed(ada, walking(ada, 0, facing=0.2)) == [1, 2, 3]
    assert changed(ada, replace(ada, floor=replace(ada.floor, place=(0.5, 3.0)))) == [0, 1]
    assert changed(ada, replace(ada, floor=replace(ada.floor, facing=0.5))) == [0, 1]
    assert changed(ada, walking(ada, 1, start=51.0)) == [3]


def test_flames_and_deviation_change_the_slices_they_run_in(ada):
    assert changed(ada, replace(ada, lit=((8.0, 41.0),))) == [2]
    assert changed(ada, replace(ada, lit=((9.0, 40.0),))) == [0]
    assert changed(ada, replace(ada, lit=((8.0, 40.0), (70.0, 71.0)))) == [4]
    own = replace(ada, deviation={"left": (HandDeviation(30.0, 34.0, 0.1),)})
    assert changed(ada, replace(ada, deviation={"left": ()})) in ([], [0, 1, 2, 3, 4, 5])
    wider = replace(ada, deviation={"left": (HandDeviation(30.0, 34.0, 0.2),)})
    other = replace(ada, deviation={"right": (HandDeviation(30.0, 34.0, 0.1),)})
    later = replace(ada, deviation={"left": (HandDeviation(30.0, 33.0, 0.1),)})
    assert changed(own, wider) == [1, 2]
    assert set(changed(own, other)) >= {1, 2}
    assert changed(own, later) == [2]


def test_a_block_changes_the_slices_it_runs_in(ada):
    (span,) = ada.trajectories["left"].spans

    def cut(origin, low=36.0, high=44.0):
        spans = (
            replace(span, end=low),
            replace(span, start=low, end=high, origin=origin),
            replace(span, start=high),
        )
        return replace(ada, trajectories={**ada.trajectories, "left": Trajectory(spans)})

    assert changed(cut(0.7), cut(0.9)) == [2]
    # What follows is a span that starts later, so all slices after it have another key.
    assert changed(cut(0.7), cut(0.7, high=50.0)) == [2, 3, 4, 5]
    left, right = ada.trajectories["left"], cut(0.5).trajectories["left"]
    one = replace(ada, trajectories={"left": left, "right": right})
    other = replace(ada, trajectories={"left": right, "right": left})
    assert 2 in changed(one, other)  # which hand dances what


def test_a_slice_is_known_by_the_spans_and_blends_that_decide_it(ada):
    (span,) = ada.trajectories["left"].spans
    spans = (
        replace(span, end=36.0),
        replace(span, start=36.0, end=44.0, origin=0.7),
        replace(span, start=44.0),
    )
    own = Trajectory(spans)
    assert min(blend.half for blend in own.blends) > 10 * TOUCH
    for blend in own.blends:
        for at in (blend.boundary - blend.half, blend.boundary + blend.half):
            for off in (-2.0, -0.5, 0.0, 0.5, 2.0):
                edges = np.array([8.0, at + off * TOUCH, 90.0])
                for key, *between in zip(
                    slices._trajectory_keys(own, edges), edges[:-1], edges[1:], strict=True
                ):
                    part = own.part(*between)
                    parts = [content_key(each) for each in (*part.spans, *part.blends)]
                    assert key == slices._hashed(tuple(parts))


def test_a_posture_changes_the_slices_it_is_held_in(ada):
    def leaning(turn):
        held = (
            HeldPosture(34.0, 40.0, Posture(turn=turn, lean=0.05)),
            HeldPosture(44.0, 45.0, Posture()),
            HeldPosture(60.0, 61.0, Posture(lean=0.05)),
        )
        return replace(ada, carriage=Carriage(body=ada.body, held=held))

    assert set(changed(leaning(0.1), leaning(0.2))) >= {2}
    assert 5 not in changed(leaning(0.1), leaning(0.2))
    assert changed(ada, leaning(0.1)) == [0, 1, 2, 3, 4, 5]  # its column is higher throughout


def test_body_and_props_count_in_every_slice(ada, dance):
    assert changed(ada, replace(ada, body=Body(stature=1.71))) == [0, 1, 2, 3, 4, 5]
    props = {**ada.props, "left": replace(ada.props["left"], flame_reach=0.4)}
    assert changed(ada, replace(ada, props=props)) == [0, 1, 2, 3, 4, 5]
    same = dance.dancer("Bo", moves=MOVES, lit=((8.0, 40.0),), end=96.0)
    assert changed(ada, same) == []  # whoever dances it


def test_what_has_no_content_has_no_key(ada):
    drifted = {
        side: DriftedTrajectory(own, 0.1, 0.0, 1.0, (0.0, 0.0, 0.0))
        for side, own in ada.trajectories.items()
    }
    own = replace(ada, trajectories=drifted)
    assert slice_keys(own, EDGES) == (None,) * 6
    assert key_at(own, 3.0) is None


def test_an_instant_has_the_key_of_its_slice(ada):
    one = slice_keys(ada, np.array([16.0, 32.0]))[0]
    assert key_at(ada, 17.5) == key_at(ada, 31.9) == one
    assert key_at(ada, 15.9) != one
    assert key_at(ada, 16.0) is None  # it lies in two


def test_keys_are_the_same_when_nothing_is_kept(ada):
    known = slice_keys(ada, EDGES)
    with nothing_kept():
        assert slice_keys(ada, EDGES) == known


def test_a_span_runs_in_the_slices_that_it_overlaps_and_not_where_it_touches():
    draw = np.random.default_rng(5)
    edges = slice_edges(3.5, 200.0)
    spots = np.concatenate([edges, draw.uniform(-20, 230, 60)])
    spans = [tuple(sorted(draw.choice(spots, 2))) for _ in range(400)]
    running = slices._running(spans, edges)
    for low, high, found in zip(edges[:-1], edges[1:], running, strict=True):
        assert found == [m for m, (a, b) in enumerate(spans) if a < high and b > low]
    assert slices._running([], edges) == [[] for _ in edges[1:]]


def test_an_instant_has_the_key_of_its_slice_among_those_given(ada):
    keys = slice_keys(ada, EDGES)
    for k, (low, high) in enumerate(pairwise(EDGES.tolist())):
        assert key_at(ada, low + 0.01, EDGES) == key_at(ada, high - 0.01, EDGES) == keys[k]
        assert key_at(ada, low, EDGES) is None  # it lies in two, or where none is
        assert key_at(ada, high, EDGES) is None
    assert key_at(ada, EDGES[0] - 1.0, EDGES) is None
    assert key_at(ada, EDGES[-1] + 1.0, EDGES) is None
