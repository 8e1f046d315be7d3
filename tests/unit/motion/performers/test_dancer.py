from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.body_parts import PARTS, HandDeviation
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop


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


class Held:
    """A trajectory whose hand follows place + speed·t + push·t²/2 in the body frame, tether along `tether`."""

    def __init__(self, place, speed=(0, 0, 0), push=(0, 0, 0), *, spin=0.0, until=1.0):
        self.place, self.speed, self.push = (np.array(v, float) for v in (place, speed, push))
        self.spin, self.until = spin, until

    def at(self, beats):
        t = np.asarray(beats, float)[..., None]
        zero = np.zeros_like(t)
        angle = self.spin * t
        tether = np.concatenate([np.cos(angle), np.sin(angle), zero], axis=-1)
        aside = np.concatenate([-np.sin(angle), np.cos(angle), zero], axis=-1)
        return Motion(
            hand=self.place + self.speed * t + self.push * t**2 / 2,
            hand_rate=self.speed + self.push * t,
            hand_acceleration=self.push + zero,
            tether=tether,
            tether_rate=self.spin * aside,
            tether_acceleration=-(self.spin**2) * tether,
            plane=np.array([0.0, 0.0, 1.0]) + 0 * tether,
        )

    def pieces(self, start, end):
        beats = np.linspace(start, end, 101)
        state = self.at(beats)
        bounds = Bounds(
            hand_speed=np.linalg.norm(state.hand_rate, axis=-1).max(),
            hand_acceleration=np.linalg.norm(self.push),
            turn_rate=abs(self.spin),
            turn_acceleration=self.spin**2,
            hand_reach=np.hypot(*state.hand[:, :2].T).max(),
        )
        return ((start, end, bounds),)


def measured(ada, start, end):
    """Largest speed and acceleration of each point, by differences of places alone."""
    beats = np.linspace(start, end, 40_001)
    points = ada.stage_points(beats)[0]
    step = beats[1] - beats[0]
    speed = np.linalg.norm(np.diff(points, axis=1), axis=-1).max(axis=1) / step
    push = points[:, ::40]
    push = np.diff(push, 2, axis=1) / (40 * step) ** 2
    return speed, np.linalg.norm(push, axis=-1).max(axis=1)


HAND, HEAD, REAR_END = 6, 7, 9  # of the right side
# What moves; the span looked at; the point that it carries; and which of both its term makes up.
DOMINANT = {
    "centripetal": (Held((0.7, 0, 1)), {"facing": 40.0}, (1.9, 2.1), HAND, "acceleration"),
    "turning faster": (Held((0.7, 0, 1)), {"facing": 0.02}, (0.8, 0.9), HAND, "acceleration"),
    "Coriolis": (
        Held((-6.0, 0, 1), (3, 0, 0)), {"facing": 3.0}, (1.996, 2.004), HAND, "acceleration",
    ),
    "walking faster": (Held((0, 0, 1)), {"place": (3, 0)}, (0.8, 0.9), HAND, "acceleration"),
    "the hand": (Held((0, 0, 1), push=(0, 0, 5.0)), {}, (0, 0.1), HAND, "acceleration"),
    "far head, turning": (Held((0, 0, 1)), {"facing": 40.0}, (1.9, 2.1), HEAD, "acceleration"),
    "head on its tether": (Held((0, 0, 1), spin=5.0), {}, (0, 1), HEAD, "acceleration"),
    "rear end": (Held((0, 0, 1), spin=5.0), {}, (0, 1), REAR_END, "acceleration"),
    "shoulder, turning": (Held((0, 0, 1)), {"facing": 40.0}, (1.9, 2.1), 5, "acceleration"),
    "turn": (Held((0.7, 0, 1)), {"facing": 9.0}, (1.95, 2.05), HAND, "speed"),
    "walk": (Held((0, 0, 1)), {"place": (3, 0)}, (1.95, 2.05), HAND, "speed"),
    "hand's speed": (Held((0, 0, 1), (0, 0, 2.0)), {}, (0, 1), HAND, "speed"),
    "head's speed": (Held((0, 0, 1), spin=5.0), {}, (0, 1), HEAD, "speed"),
    "rear end's speed": (Held((0, 0, 1), spin=5.0), {}, (0, 1), REAR_END, "speed"),
    "far head's speed": (Held((0, 0, 1)), {"facing": 9.0}, (1.95, 2.05), HEAD, "speed"),
    "shoulder's speed": (Held((0, 0, 1)), {"facing": 9.0}, (1.95, 2.05), 5, "speed"),
}  # fmt: skip


@pytest.mark.parametrize("case", DOMINANT)
def test_each_term_of_a_bound_is_there_and_no_larger_than_it_must_be(case):
    """Where one term is all that moves a point, the bound is what is measured, to a few per cent.

    Source: acceleration in a turning frame, a + α×ρ + ω×(ω×ρ) + 2ω×v, any mechanics textbook; measured
    here by differences of places. Moves follow the minimum-jerk law, whose peak rate and acceleration
    lie at the middle and at a fifth of the move.
    """
    trajectory, change, span, point, which = DOMINANT[case]
    ends = {"place": (0.0, 0.0), "facing": 0.0, **change}
    ada = Dancer(
        name="Ada",
        body=Body(stature=1.7),
        props={"right": Prop(kind="staff", length=0.7, behind=0.5, mass=0.8, wick_radius=0.04)},
        trajectories={"right": trajectory},
        floor=WalkPath((0.0, 0.0), 0.0, (Move(start=0.0, end=4.0, **ends),)),
    )
    pieces = ada.pieces(*span)
    speed, push = measured(ada, *span)
    found = (speed if which == "speed" else push)[point]

    assert found <= getattr(pieces, which)[:, point].max() * (1 + 1e-6) + 1e-6
    assert getattr(pieces, which)[:, point].max() <= 1.06 * found
    assert np.all(speed <= pieces.speed.max(axis=0) * (1 + 1e-6) + 1e-9)
    assert np.all(push <= pieces.acceleration.max(axis=0) * (1 + 1e-6) + 1e-4)


def test_terms_add_up_where_all_point_the_same_way():
    """Turning fast and walking, with the hand far out and running outwards: all terms at once."""
    ada = Dancer(
        name="Ada",
        body=Body(stature=1.7),
        props={"right": Prop(length=0.9, mass=0.2, wick_radius=0.05)},
        trajectories={"right": Held((0.2, 0.1, 1), (0.3, 0.4, 0.1), (0.3, -0.2, 0.5), spin=-4.0)},
        floor=WalkPath((0.0, 0.0), 0.0, (Move(start=0.0, end=2.0, place=(2, 1), facing=7.0),)),
    )
    for start in np.arange(0.0, 2.0, 0.25):
        pieces = ada.pieces(start, start + 0.25)
        speed, push = measured(ada, start, start + 0.25)
        assert np.all(speed <= pieces.speed[0] + 1e-9)
        assert np.all(push <= pieces.acceleration[0] + 1e-4)


@pytest.mark.parametrize(
    ("across", "length", "reach"),
    [
        # hand far out: hand, prop, wick and flame
        (0.75, 0.6, 0.75 + 0.6 + 0.05 + 0.2),
        # hand at the axis and a short prop: half the shoulders, the arm's thickness and its elbow
        (0.0, 0.1, (415.7 / 2 / 1756.2 + 0.065 / 1.756) * 1.7 + 684.3 / 1756.2 * 1.7 / 2),
    ],
    ids=["prop", "elbow"],
)
def test_reach_is_that_of_the_prop_or_of_the_elbow(across, length, reach):
    """Sizes from the body's documented proportions; an elbow leaves its arm by half of it at most."""
    work = (HandDeviation(0.0, 1.0, 0.07),)
    ada = Dancer(
        name="Ada",
        body=Body(stature=1.7),
        props={"right": Prop(length=length, mass=0.2, wick_radius=0.05, flame_reach=0.2)},
        trajectories={"right": Held((across, 0, 1), (0, 0, 0.5))},
        floor=WalkPath((0.0, 0.0)),
        deviation={"right": work},
    )
    pieces = ada.pieces(0.0, 2.0)

    assert_allclose(pieces.edges, [0, 1, 2])
    assert_allclose(pieces.drawn, reach, rtol=1e-4)
    assert_allclose(pieces.reach, [reach + 0.07, reach], rtol=1e-4)
    assert_allclose(pieces.hand_speed, [[0, 0.5]] * 2)


@pytest.mark.parametrize(
    ("bent", "share"),
    [(Posture(side=-0.08), 0.99), (Posture(turn=0.3, lean=0.06, side=-0.05), 0.15)],
    ids=["about the axis farthest off", "all three"],
)
def test_a_shoulder_that_sways_moves_no_faster_than_its_bound(dance, bent, share):
    """A posture taken up in one beat: differences of the shoulder's place; a side bend has the longest lever."""
    body = Body(stature=1.7)
    held = (HeldPosture(0, 1, Posture()), HeldPosture(2, 3, bent))
    ada = replace(dance.dancer(hand_radius=0.0), body=body, carriage=Carriage(body=body, held=held))
    pieces = ada.pieces(1.0, 2.0)
    speed, push = measured(ada, 1.0, 2.0)

    for point in (2, 5):
        assert share * pieces.speed[0, point] < speed[point] <= pieces.speed[0, point]
        assert 0.9 * share * pieces.acceleration[0, point] < push[point]
        assert push[point] <= pieces.acceleration[0, point]
    assert np.all(pieces.hand_speed[0] >= speed[[2, 5]])
