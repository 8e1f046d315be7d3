"""A hand through a whole show: proven bounds, the law of motion in the stage frame, walks and changes of tempo."""

from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.integrate import cumulative_trapezoid

from sequencer.geometry.bodies import Body
from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.trajectories.flown_path import flown_hand as flown_hand_module
from sequencer.motion.trajectories.flown_path.flown_hand import Course, FlownHand
from sequencer.motion.trajectories.flown_path.flown_making import Ground, flown_hand
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.unit.motion.trajectories.forward import GRAVITY, off_its_path

LENGTH, DRAG = 0.5, 0.03  # [m], [1/m]
BODY = Body(stature=1.75)
DRAWN = Trajectory(
    (Span(start=0.0, end=12.0, law=rest("right", BODY, LENGTH), origin=0.0, kind="rest", label="rest"),)
)  # fmt: skip
TURN, RADIUS = np.pi, 0.6  # [rad a beat], [m]
TEMPO = 100.0 / 60.0  # [beats/s]


def eased(beats):
    """A count of its own that is at rest at beats 0 and 12, to the second derivative."""
    span = np.clip(beats, 0.0, 12.0)
    return span - 12.0 / (2 * np.pi) * np.sin(2 * np.pi * span / 12.0)


def circling(beats):
    """A head on a leaning circle that gathers speed from rest and comes back to it, and a hand above its middle."""
    phase = TURN * eased(beats)
    zero = np.zeros_like(phase)
    ring = np.stack([np.cos(phase), np.sin(phase), 0.3 * np.sin(phase)], axis=-1)
    middle = np.array([0.2, 0.4, 1.3])
    return middle + RADIUS * ring, middle + np.stack([zero, zero, zero + 0.3], axis=-1)


def hanging(beats):
    """A head at rest, and the hand above it."""
    head = np.broadcast_to([0.2, 0.4, 0.8], (len(beats), 3)).copy()
    return head, head + np.array([0.0, 0.0, LENGTH])


def standing(beats_a_second=lambda beats: np.full(beats.shape, TEMPO)):
    return Ground(lambda _, points: points.copy(), lambda _, points: points.copy(), beats_a_second)


def walked(beats):
    """A place and a facing, shape (n, 2) and (n,), that stand still only at beats 0 and 12."""
    count = eased(beats)
    place = np.stack([0.5 * np.sin(0.7 * count), 0.4 * np.cos(0.5 * count)], axis=-1)
    return place, 0.8 * np.sin(0.6 * count)


def spun(points, facing):
    cos, sin = np.cos(facing), np.sin(facing)
    x, y = points[..., 0], points[..., 1]
    return np.stack([cos * x - sin * y, sin * x + cos * y, points[..., 2]], axis=-1)


def to_stage(beats, points):
    place, facing = walked(beats)
    out = spun(points, facing)
    out[..., :2] += place
    return out


def to_body(beats, points):
    place, facing = walked(beats)
    out = points.copy()
    out[..., :2] -= place
    return spun(out, -facing)


WALKING = Ground(to_stage, to_body, standing().beats_a_second)


@cache
def flown(ground=None, kind=circling, drag=DRAG):
    return flown_hand(
        [Course(0.0, 12.0, kind, flown=True)],
        length=LENGTH,
        drag=drag,
        drawn=DRAWN,
        ground=ground or standing(),
    )


@cache
def broken():
    """Flown at first, then two drawn courses that meet neither each other nor what is flown."""
    return flown_hand(
        [
            Course(0.0, 4.1, circling, flown=True),
            Course(4.1, 8.0, lambda beats: _drawn(beats, 1.0), flown=False),
            Course(8.0, 12.0, lambda beats: _drawn(beats, -2.0), flown=False),
        ],
        length=LENGTH,
        drag=DRAG,
        drawn=DRAWN,
        ground=WALKING,
    )


def _drawn(beats, rate):
    """A prop that turns about a hand on a circle, near to where the flown one is at beat 4."""
    head, hand = circling(np.full_like(beats, 4.1))
    way = spun((head - hand) / np.linalg.norm(head - hand, axis=-1, keepdims=True), rate * beats)
    held = hand + 0.1 * np.stack([np.cos(beats), np.sin(beats), 0 * beats], axis=-1)
    return held + LENGTH * way, held


def rates_of(hand, beats):
    """Sizes of the hand's first three derivatives and of the tether's first two, by central differences."""
    step = 2e-5
    plus, here, minus = (hand.at(beats + k * step) for k in (1, 0, -1))

    def slope(name):
        return (getattr(plus, name) - getattr(minus, name)) / (2 * step)

    found = [slope(f"hand{each}") for each in ("", "_rate", "_acceleration")]
    found += [slope("tether"), slope("tether_rate")]
    return here, found


@pytest.mark.parametrize("made", [flown, lambda: flown(WALKING), broken], ids=["stands", "walks", "broken"])  # fmt: skip
def test_bounds_of_pieces_are_never_below_what_is_sampled(made):
    """Source: central differences at 40 instants of every piece; 1e-4 for their rounding."""
    hand = made()
    pieces = hand.pieces(0.0, 12.0)
    beats = np.stack([np.linspace(a, b, 42)[1:-1] for a, b, _ in pieces])
    here, found = rates_of(hand, beats.ravel())
    sizes = [np.linalg.norm(each, axis=-1).reshape(beats.shape).max(axis=1) for each in found]
    names = ("hand_speed", "hand_acceleration", "hand_jerk", "turn_rate", "turn_acceleration")
    for name, size in zip(names, sizes, strict=True):
        proven = np.array([getattr(bounds, name) for _, _, bounds in pieces])
        assert np.all(size <= proven + 1e-4 + 1e-6 * proven), name
        assert np.median(proven / np.maximum(size, 0.1)) < 1.5  # and not far above it
    reach = np.linalg.norm(here.hand[:, :2], axis=-1).reshape(beats.shape).max(axis=1)
    assert np.all(reach <= [bounds.hand_reach for _, _, bounds in pieces])


def tethered(apart, step):
    """A hand at rest and a head at control points (n, 3) from it, however long that makes the tether."""
    head = EvenSpline(start=0.0, step=step, coefficients=apart)
    return FlownHand(
        head=head, hand=replace(head, coefficients=0.0 * apart), length=LENGTH, drawn=DRAWN, courses=(),
        pull=np.zeros(1),
        most_pull=np.zeros(1),
    )  # fmt: skip


def turned_more_than_proven(hand):
    """How much more the tether turns, and is bent, than the bounds of its pieces allow, as shares; at 200 instants of each."""
    worst = []
    for low, high, bounds in hand.pieces(hand.head.start, hand.head.end):
        here = hand.at(np.linspace(low, high, 200)[1:-1])
        for rate, most in (
            (here.tether_rate, bounds.turn_rate),
            (here.tether_acceleration, bounds.turn_acceleration),
        ):
            worst.append(np.linalg.norm(rate, axis=-1).max() / most)
    return max(worst)


def test_a_head_that_passes_in_a_straight_line_turns_the_tether_as_is_proven():
    """Its acceleration is 0, so the tether's is all of its changing length: sin 2φ and cos² φ of (v/m)² across and along."""
    places = 0.02 * (np.arange(205) - 102.0)
    line = np.stack([places, 0.0 * places + 0.3, 0.0 * places], axis=-1)
    assert turned_more_than_proven(tethered(line, 1 / 96)) <= 1.0


@pytest.mark.parametrize("seed", range(6))
def test_wild_tethers_are_bounded_span_by_span(monkeypatch, seed):
    """Drawn control points, so far apart that much happens on each span."""
    monkeypatch.setattr(flown_hand_module, "_PER_PIECE", 1)
    points = np.array([1.0, 0.0, 0.0]) + np.random.default_rng(seed).normal(0.0, 0.5, (45, 3))
    assert turned_more_than_proven(tethered(points, 0.25)) <= 1.0


@pytest.mark.parametrize("asked", [(0.0, 12.0), (3.3, 7.05), (5.0, 5.01), (-2.0, 14.0)])
def test_pieces_follow_each_other_and_cover_what_is_asked(asked):
    """Source: the interface of a trajectory (`PropTrajectory.pieces`)."""
    pieces = flown().pieces(*asked)
    assert (pieces[0][0], pieces[-1][1]) == asked
    for before, after in pairwise(pieces):
        assert before[1] == after[0]
    assert all(low < high for low, high, _ in pieces)


@pytest.mark.parametrize(
    ("made", "most"), [(lambda: flown(WALKING), 1e-6), (broken, 1e-3)], ids=["walks", "broken"]
)
def test_rates_are_the_derivatives(made, most):
    """Source: central differences, to a share of the largest; a jump has huge rates of higher order."""
    hand, beats = made(), np.linspace(0.4, 11.6, 700)
    here, found = rates_of(hand, beats)
    stated = [here.hand_rate, here.hand_acceleration, None, here.tether_rate, here.tether_acceleration]  # fmt: skip
    for own, difference in zip(stated, found, strict=True):
        if own is not None:
            near = most * max(1.0, float(np.abs(own).max()))
            assert_allclose(own, difference, atol=near)
    assert_allclose(np.linalg.norm(here.tether, axis=-1), 1.0, atol=1e-12)
    assert_allclose(np.sum(here.tether * here.plane, axis=-1), 0.0, atol=1e-12)


@pytest.mark.parametrize("ground", [None, WALKING], ids=["stands", "walks"])
def test_the_tether_keeps_its_length(ground):
    """Source: a tether does not stretch; 0.2 mm between knots (module docstring: under 1 mm)."""
    hand, beats = flown(ground), np.linspace(0.0, 12.0, 5000)
    apart = np.linalg.norm(hand.head.at(beats) - hand.hand.at(beats), axis=-1)
    assert_allclose(apart, LENGTH, atol=2e-4)


def test_before_and_after_it_stays():
    hand = flown()
    outside = hand.at(np.array([-3.0, 15.0]))
    ends = hand.at(np.array([0.0, 12.0]))
    assert_allclose(outside.hand, ends.hand, atol=0)
    assert_allclose(outside.tether, ends.tether, atol=0)
    assert_allclose(outside.hand_rate, 0.0, atol=1e-9)


def strays(hand, ground, seconds_of):
    """Largest distance [m] of the head from its path from beat 3 to beat 7, in the stage frame."""
    knots = np.linspace(2.0, 8.0, 1201)
    held, head = (ground.to_stage(knots, own.at(knots)) for own in (hand.hand, hand.head))
    span = seconds_of(np.array([3.0, 7.0]))
    return off_its_path(seconds_of(knots), held, head, span=span, length=LENGTH, drag=DRAG)


@pytest.mark.parametrize("ground", [standing(), WALKING], ids=["stands", "walks and turns"])
def test_the_hand_keeps_the_head_on_its_path(ground):
    """Source: scipy's DOP853 in the stage frame; 1 mm over four beats."""
    hand = flown(ground)
    assert strays(hand, ground, lambda beats: beats / TEMPO) < 1e-3


def quickening(beats):
    """A tempo that grows from 100 to 130 beats a minute."""
    return TEMPO * (1.0 + 0.15 * (1.0 + np.tanh((beats - 5.0) / 2.0)))


def test_the_hand_keeps_the_head_on_its_path_while_the_tempo_changes():
    """The same by the tempo itself, beats turned into seconds by the trapezium rule."""
    ground = Ground(to_stage, to_body, quickening)
    fine = np.linspace(0.0, 12.0, 24_001)
    seconds = cumulative_trapezoid(1.0 / quickening(fine), fine, initial=0.0)
    error = strays(flown(ground), ground, lambda beats: np.interp(beats, fine, seconds))
    assert error < 1e-3


def test_a_change_of_tempo_gives_the_hand_no_jerk():
    """From 90 to 120 beats a minute from one beat to the next: no more than the faster tempo's own acceleration by a half."""

    def steps(beats):
        return np.where(beats < 6.0, 1.5, 2.0)

    hand = flown(standing(steps))
    even = flown(standing(lambda beats: np.full(beats.shape, 2.0)))
    beats = np.linspace(4.0, 8.0, 2001)
    most = [np.linalg.norm(own.hand.at(beats, 2), axis=-1).max() for own in (hand, even)]
    assert most[0] < 1.5 * most[1]


@pytest.mark.parametrize("push", [0.5, 3.0])
def test_who_walks_faster_and_faster_leans_the_tether(push):
    """At rest in a frame that accelerates by a, a plumb line leans by atan(a/g) (any mechanics text)."""

    def moved(beats, points, way):
        seconds = (beats - 6.0) / TEMPO
        return points + way * np.outer(0.5 * push * seconds**2, [1.0, 0.0, 0.0])

    ground = Ground(
        lambda beats, points: moved(beats, points, 1.0),
        lambda beats, points: moved(beats, points, -1.0),
        standing().beats_a_second,
    )
    hand = flown(ground, hanging, 0.0)
    tether = hand.at(np.linspace(3.0, 9.0, 50)).tether
    lean = np.arctan(push / GRAVITY[2])
    assert_allclose(
        tether, np.broadcast_to([-np.sin(lean), 0.0, -np.cos(lean)], (50, 3)), atol=1e-6
    )
    assert hand.least_pull(hand.courses[0]) <= np.hypot(push, GRAVITY[2]) / GRAVITY[2]


def test_pull_of_a_prop_at_rest_is_its_weight_and_unknown_where_the_drawing_stands_in():
    """Source: a weight at rest pulls with its weight."""
    hand = flown_hand(
        [Course(0.0, 6.0, hanging, flown=True), Course(6.0, 12.0, hanging, flown=False)],
        length=LENGTH,
        drag=DRAG,
        drawn=DRAWN,
        ground=standing(),
    )
    own = hand.pull[: len(hand.pull) // 2]
    assert_allclose(own, 1.0, atol=1e-6)
    assert hand.least_pull(hand.courses[0]) == pytest.approx(1.0)
    assert np.all(np.isinf(hand.pull[len(hand.pull) // 2 + 1 :]))
    assert_allclose(hand.most_pull[: len(own)], 1.0, atol=1e-6)
    assert np.all(hand.most_pull[len(hand.pull) // 2 + 1 :] == 0.0)


def test_what_is_not_flown_is_as_drawn():
    """Source: a drawing that stands in is passed through at every knot."""
    hand = broken()
    knots = hand.head.start + np.arange(hand.head.spans + 1) * hand.head.step
    own = knots[(knots > 5.1) & (knots < 8.0)]  # the first beat leads the hand there
    head, held = _drawn(own, 1.0)
    assert_allclose(hand.head.at(own), head, atol=1e-9)
    assert_allclose(hand.hand.at(own), held, atol=1e-9)


@pytest.mark.parametrize("flown_first", [True, False])
def test_a_hand_that_leans_does_not_jump_back_to_what_stands_in(flown_first):
    """Who gathers speed leans the tether; where the drawing stands in, the hand comes upright within a beat.

    By a minimum-jerk step, whose acceleration is at most 5.8 times its height (T. Flash, N. Hogan, 1985).
    """
    push = 3.0  # [m/s²]

    def moved(beats, points, way):
        return points + way * np.outer(0.5 * push * ((beats - 6.0) / TEMPO) ** 2, [1.0, 0.0, 0.0])

    hand = flown_hand(
        [Course(0.0, 6.0, hanging, flown=flown_first), Course(6.0, 12.0, hanging, flown=not flown_first)],
        length=LENGTH,
        drag=0.0,
        drawn=DRAWN,
        ground=Ground(
            lambda beats, points: moved(beats, points, 1.0),
            lambda beats, points: moved(beats, points, -1.0),
            standing().beats_a_second,
        ),
    )  # fmt: skip
    beats = np.linspace(3.0, 9.0, 3001)
    lean = LENGTH * np.sin(np.arctan(push / GRAVITY[2]))
    assert np.linalg.norm(hand.hand.at(beats, 2), axis=-1).max() < 1.3 * 5.8 * lean
    apart = np.linalg.norm(hand.head.at(beats) - hand.hand.at(beats), axis=-1)
    assert_allclose(apart, LENGTH, atol=2e-4)
    way = 1.0 if flown_first else -1.0
    far = hand.hand.at(np.array([6.0 - 2.0 * way, 6.0 + 1.1 * way]))
    assert_allclose(far[:, 0] - 0.2, [lean, 0.0], atol=1e-6)


def test_a_drawing_beside_it_does_not_shake_a_flown_hand():
    """A drawn link meets what is flown to the second derivative only: its third must not reach over the border."""

    def kinked(beats):
        own = flown()
        bend = np.outer(5.0 * np.clip(beats - 6.0, 0.0, 0.3) ** 3, [1.0, 0.0, 0.0])
        return own.head.at(beats) + bend, own.hand.at(beats) + bend

    hand = flown_hand(
        [Course(0.0, 6.0, circling, flown=True), Course(6.0, 12.0, kinked, flown=False)],
        length=LENGTH,
        drag=DRAG,
        drawn=DRAWN,
        ground=standing(),
    )
    knots = np.arange(5 * 96, 6 * 96) / 96
    assert_allclose(hand.hand.at(knots), flown().hand.at(knots), atol=1e-6)


def test_courses_that_do_not_follow_each_other_are_refused():
    with pytest.raises(ValueError, match="follow"):
        flown_hand(
            [Course(0.0, 4.0, hanging, flown=True), Course(4.5, 8.0, hanging, flown=True)],
            length=LENGTH,
            drag=DRAG,
            drawn=DRAWN,
            ground=standing(),
        )


def test_the_same_courses_make_the_same_hand():
    one, other = flown.__wrapped__(WALKING), flown.__wrapped__(WALKING)
    assert one.head.coefficients.tobytes() == other.head.coefficients.tobytes()
    assert one.hand.coefficients.tobytes() == other.hand.coefficients.tobytes()


def test_pushes_are_bounds_on_second_derivatives():
    """Never below what the spline itself says at a hundred places of a span, and above by no more than three hundredths."""
    hand = flown(standing(quickening))
    shares = (np.arange(100) + 0.5) / 100
    beats = hand.head.start + (np.arange(hand.head.spans)[:, None] + shares) * hand.head.step
    seen = np.linalg.norm(hand.hand.at(beats, 2), axis=-1) * quickening(beats) ** 2
    most = seen.max(axis=1)
    assert most.max() > 10.0
    bound = hand.pushes(quickening)
    assert np.all(bound >= most)
    inner = slice(96, -96)  # at its ends the hand is set still
    assert_allclose(bound[inner], most[inner], rtol=0.03, atol=1e-3 * most[inner].max())
    (course,) = hand.courses
    assert hand.hand_acceleration(course, quickening) == bound.max()


def test_the_tempo_of_a_span_is_its_own_where_the_tempo_changes_at_a_knot():
    def stepped(beats):
        return np.where(beats < 5.0, 1.6, 1.7)

    fast = flown().fastest(stepped)
    assert fast[5 * 96 - 1] == 1.6
    assert fast[5 * 96] == 1.7


@pytest.mark.parametrize(("hand", "tether"), [(3, 3), (2, 2), (1, 0), (0, 1), (1, 3)])
def test_a_line_is_a_part_of_the_state(hand, tether):
    made = flown(Ground(to_stage, to_body, standing().beats_a_second))
    beats = np.linspace(1.0, 11.0, 301)
    seen = made.at(beats)
    own = (seen.hand, seen.hand_rate, seen.hand_acceleration)[:hand]
    way = (seen.tether, seen.tether_rate, seen.tether_acceleration)[:tether]
    line = made.line(beats, hand, tether)
    assert len(line) == hand + tether
    for part, expected in zip(line, (*own, *way), strict=True):
        assert np.abs(expected).max() > 0.1
        assert_allclose(part, expected, rtol=1e-12, atol=1e-12 * np.abs(expected).max())


def test_all_that_decides_a_hand_decides_its_content():
    """So that what is kept of one is never taken for another."""
    hand = flown_hand(
        [Course(0.0, 12.0, circling, True)],
        length=LENGTH,
        drag=DRAG,
        drawn=DRAWN,
        ground=standing(),
    )
    moved = replace(hand.head, coefficients=hand.head.coefficients + 1e-9)
    later = Span(start=0.0, end=13.0, law=DRAWN.spans[0].law, origin=0.0, kind="rest", label="rest")
    others = [
        replace(hand, head=moved),
        replace(hand, hand=replace(hand.hand, coefficients=hand.hand.coefficients + 1e-9)),
        replace(hand, length=LENGTH + 1e-9),
        replace(hand, drawn=Trajectory((later,))),
        replace(hand, courses=(Course(0.0, 12.0, circling, False),)),
        replace(hand, pull=hand.pull + 1e-9),
    ]
    own = [each.content for each in (hand, *others)]
    assert len(set(own)) == len(own)
    assert replace(hand).content == hand.content
