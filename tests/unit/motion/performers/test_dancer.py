from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.parts import PARTS
from sequencer.motion.performers.walks import Move, WalkPath


def test_facing_the_audience(dance):
    """Body y is −Y and body x is −X: the right hand is on the audience's left."""
    ada = dance.dancer("Ada", (1.0, 4.0), hand_radius=0.0)
    points, _ = ada.stage_points(0.0)

    left, right = points[2], points[5]
    assert left[0] > 1.0 > right[0]
    assert_allclose(left[1], 4.0, atol=1e-12)
    hand = ada.trajectories["right"].at(np.array(0.0)).hand
    assert_allclose(points[6], [1.0 - hand[0], 4.0 - hand[1], hand[2]], atol=1e-12)


def test_a_quarter_turn_anticlockwise_faces_the_audiences_right(dance):
    """From facing the audience (−Y), a quarter turn anticlockwise seen from above faces +X."""
    ada = dance.dancer("Ada", (0.0, 0.0), facing=np.pi / 2, hand_radius=0.0)
    hand = ada.trajectories["right"].at(np.array(0.0)).hand
    points, _ = ada.stage_points(0.0)

    assert_allclose(points[6, :2], [hand[1], -hand[0]], atol=1e-12)


def test_rates_are_derivatives(dance):
    moves = (Move(start=2, end=8, place=(1, 4), facing=3.0, through=((1, 2.5),)),)
    ada = dance.dancer(moves=moves, plane="wheel")
    beats = np.linspace(0, 12, 60_001)
    points, rates = ada.stage_points(beats)

    assert_allclose(np.gradient(points, beats, axis=1)[:, 2:-2], rates[:, 2:-2], atol=1e-4)


def test_no_speed_or_acceleration_exceeds_its_bound(dance):
    moves = (Move(start=2, end=5, place=(1, 4), facing=6.0, through=((1, 2.5),)),)
    ada = dance.dancer(moves=moves, plane="wheel", ratio=-3.0)
    pieces = ada.pieces(0, 8)
    for k in range(len(pieces.speed)):
        beats = np.linspace(pieces.edges[k], pieces.edges[k + 1], 4001)
        points, rates = ada.stage_points(beats)
        push = np.gradient(rates, beats, axis=1)[:, 1:-1]
        assert np.all(np.linalg.norm(rates, axis=-1).max(axis=1) <= pieces.speed[k] + 1e-9)
        assert np.all(np.linalg.norm(push, axis=-1).max(axis=1) <= pieces.acceleration[k] + 1e-3)
        radii = ada.radii(points, np.ones(len(beats), bool))
        place = ada.floor.at(beats).place
        for part, radius in zip(PARTS, radii, strict=True):
            for end in (part.start, part.end):
                away = np.hypot(*(points[end, :, :2] - place).T) + radius
                assert np.all(away <= pieces.reach[k] + 1e-9), part.name


def test_flames_only_while_lit(dance):
    ada = dance.dancer(flame=0.3, lit=((2.0, 4.0),))
    beats = np.array([1.0, 2.0, 3.0, 4.0, 5.0])
    radii = ada.radii(ada.stage_points(beats)[0], ada.is_lit(beats))

    assert_allclose(radii[3], [0.05, 0.35, 0.35, 0.35, 0.05])


def test_a_side_without_a_prop_lies_in_the_body(dance):
    ada = dance.dancer(sides=("right",))
    points, rates = ada.stage_points(np.linspace(0, 4, 9))
    radii = ada.radii(points, np.ones(9, bool))

    assert_allclose(points[2:5], points[1:2].repeat(3, axis=0))
    assert_allclose(rates[2:5], 0)
    assert_allclose(radii[1:4], ada.body.half_breadth)


def test_reach(dance):
    body = Body.of_survey("man", 95)
    bare = Dancer(name="Bo", body=body, props={}, trajectories={}, floor=WalkPath((0, 0)))

    assert bare.reach == body.half_breadth
    ada = dance.dancer(tether=0.6, flame=0.3)
    assert_allclose(ada.reach, ada.body.half_shoulder + ada.body.arm_length + 0.6 + 0.05 + 0.3)


def test_others_keep_clear_of_the_whole_chair(dance):
    """Body and reach of who is seated are those of the column, not of the shoulders."""
    body = Body(stature=1.7, seated=True)
    bare = Dancer(name="Bo", body=body, props={}, trajectories={}, floor=WalkPath((0, 0)))
    ada = replace(dance.dancer(tether=0.2), body=body, carriage=None)
    points = ada.stage_points(np.linspace(0, 4, 9))[0]

    assert bare.reach == body.girth > body.half_breadth
    assert_allclose(ada.radii(points, np.ones(9, bool))[0], body.girth)
    assert_allclose(points[1, :, 2], body.column.end[2])
    assert np.all(bare.pieces(0, 4).reach == body.girth)
    assert replace(bare, name="Cy").pieces(0, 4).drawn.min() == body.girth


def test_what_does_not_fit_is_refused(dance):
    ada = dance.dancer()
    with pytest.raises(ValueError, match="every prop needs a trajectory"):
        Dancer(name="Bo", body=ada.body, props=ada.props, trajectories={}, floor=ada.floor)
    with pytest.raises(ValueError, match="end after it starts"):
        dance.dancer(lit=((4.0, 4.0),))
    with pytest.raises(ValueError, match="end must come after start"):
        ada.pieces(3, 3)
