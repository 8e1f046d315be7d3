"""A stretch sought again in its place: rates by the chain rule, limits by differences in the stage frame, ends as they were."""

from functools import cache
from types import SimpleNamespace

import numpy as np
import pytest
import sympy
from numpy.testing import assert_allclose
from scipy.interpolate import make_interp_spline

from sequencer.motion.flown.body_space import NOWHERE, Room
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.flown_path import flown_eased as module
from sequencer.motion.trajectories.flown_path.flown_eased import StrainedStretch, by_time, eased
from sequencer.motion.trajectories.flown_path.flown_hand import Course
from sequencer.motion.trajectories.flown_path.flown_making import Ground
from tests.unit.motion.trajectories.flown_path.test_flown_hand import LENGTH, WALKING, circling
from tests.unit.motion.trajectories.forward import GRAVITY

PROP = Prop(length=LENGTH, mass=0.2, wick_radius=0.05)
START, END = 3.0, 9.0
LIMIT = 9.5  # [m/s²]; the walk takes this hand, whose circle is slow, to 11


def hurried(beats):
    """A tempo that rises and falls."""
    return 1.7 + 0.1 * np.sin(0.8 * beats)


GROUND = Ground(WALKING.to_stage, WALKING.to_body, hurried)


def stretch(**more):
    given = {"limits": FlownLimits(hand_speed=99.0, hand_acceleration=LIMIT)} | more
    return StrainedStretch(
        start=START, end=END, courses=[Course(0.0, 12.0, standing, flown=True)], prop=PROP,
        ground=GROUND, **given,
    )  # fmt: skip


def standing(beats):
    """The circling head, and the hand that it takes standing still at 100 beats a minute, drag left out."""
    head, step = circling(beats)[0], 1e-3
    bent = (circling(beats + step)[0] - 2 * head + circling(beats - step)[0]) / step**2
    pulled = bent * (100.0 / 60.0) ** 2 + GRAVITY
    return head, head + LENGTH * pulled / np.linalg.norm(pulled, axis=-1, keepdims=True)


@cache
def found():
    return eased(stretch())


def in_seconds(course, start=START, end=END):
    """Head and hand in the stage frame as splines of seconds, and the seconds, by scipy; the tempo integrated."""
    beats = np.linspace(start, end, 4801)
    seconds = np.concatenate(
        [[0.0], np.cumsum(np.diff(beats) / hurried((beats[1:] + beats[:-1]) / 2))]
    )
    paths = [GROUND.to_stage(beats, each) for each in course(beats)]
    return [make_interp_spline(seconds, path, k=5) for path in paths], seconds


def test_rates_by_time_are_those_of_the_chain_rule():
    """A count b(t) = log(1 + t): p = exp(−b), and sines of it, differentiated by sympy."""
    t, b = sympy.symbols("t b")
    at = 0.7
    rates = [float(sympy.diff(sympy.exp(-b), b, n).subs(b, sympy.log(1 + at))) for n in range(4)]
    factors = by_time(np.array(rates)[:, None])[..., 0]
    for path in (sympy.sin(3 * b), b**4, sympy.exp(b / 2)):
        own = [float(sympy.diff(path, b, k).subs(b, sympy.log(1 + at))) for k in range(5)]
        for n in range(5):
            wanted = sympy.diff(path.subs(b, sympy.log(1 + t)), t, n).subs(t, at)
            assert factors[n] @ own == pytest.approx(float(wanted))


def test_a_steady_tempo_scales_every_rate():
    factors = by_time(np.array([[1.7], [0.0], [0.0], [0.0]]))[..., 0]
    assert_allclose(factors, np.diag(1.7 ** np.arange(5)))


def test_what_was_flown_standing_still_is_over_its_limit_and_what_is_found_is_not():
    """The hand that the law of motion gives the head, walked and at the tempo of the moment, differentiated by scipy."""

    def pushed(course):
        (head, _), seconds = in_seconds(course)
        pulled = head.derivative(2)(seconds) + GRAVITY  # drag is under 1 % here
        size = np.linalg.norm(pulled, axis=-1, keepdims=True)
        hand = make_interp_spline(seconds, head(seconds) + LENGTH * pulled / size, k=5)
        inner = slice(100, -100)
        return np.linalg.norm(hand.derivative(2)(seconds), axis=-1)[inner].max()

    assert pushed(standing) > 1.1 * LIMIT
    assert pushed(found().at) < 1.02 * LIMIT


def test_the_line_keeps_its_length_and_lies_along_the_force():
    """Newton's second law in the stage frame, drag included, by scipy's derivatives of the head alone."""
    (head, hand), seconds = in_seconds(found().at)
    seconds = seconds[50:-50]
    rate = head.derivative()(seconds)
    drag = 0.5 * 1.2 * 0.47 * np.pi * PROP.wick_radius**2 / PROP.mass
    pulled = head.derivative(2)(seconds) + GRAVITY
    pulled = pulled + drag * np.linalg.norm(rate, axis=-1, keepdims=True) * rate
    way = pulled / np.linalg.norm(pulled, axis=-1, keepdims=True)
    assert_allclose(hand(seconds), head(seconds) + LENGTH * way, atol=1e-3)


def test_its_ends_are_as_they_were():
    """Place, velocity and acceleration by beats, by differences on either side."""
    step = 1e-3
    for border, sign in ((START, 1.0), (END, -1.0)):
        beats = border + sign * step * np.arange(4)
        old, new = standing(beats)[0], found().at(beats)[0]
        assert_allclose(new, old, atol=1e-6)
        # a fourth derivative that agrees leaves fifth powers: nothing to be seen of third differences
        assert_allclose(np.diff(new, n=2, axis=0), np.diff(old, n=2, axis=0), atol=2e-8)


def test_it_stays_near_what_was_flown():
    beats = np.linspace(START, END, 200)
    off = np.linalg.norm(found().at(beats)[0] - standing(beats)[0], axis=-1)
    assert 1e-4 < off.max() < 0.15


def test_a_limit_that_cannot_be_held_is_missed_by_less_than_before():
    """A circle of this size takes 5 m/s² and more at any tempo near it."""
    hard = eased(stretch(limits=FlownLimits(hand_speed=99.0, hand_acceleration=1.0)))
    inner = np.linspace(START + 1.5, END - 1.5, 800)

    def pushed(places):
        _, hand = places(inner)
        bent = np.gradient(np.gradient(hand, inner, axis=0), inner, axis=0)[5:-5]
        return np.linalg.norm(bent, axis=-1).max()

    assert pushed(hard.at) < 0.9 * pushed(standing)


@pytest.mark.parametrize("moving", [False, True])
def test_bodies_and_what_moves_are_kept_clear_of_where_they_are_in_the_body_frame(moving):
    """A ball beside the head's path half way, in the body's frame, that the path found without it touches."""
    middle = 0.5 * (START + END)
    head = found().at(np.array([middle]))[0][0]
    way = head - [0.2, 0.4, 1.3]
    ball = np.array([*2 * [*(head + 0.09 * way / np.linalg.norm(way))], 0.05])

    def gap(course):
        beats = np.linspace(middle - 0.5, middle + 0.5, 400)
        off = np.linalg.norm(course.at(beats)[0] - ball[:3], axis=-1)
        return off.min() - PROP.wick_radius - ball[6]

    assert gap(found()) < -5e-3
    room = Room(NOWHERE.numbers.copy(), ball[None])
    room.numbers[3] = PROP.wick_radius
    more = {"room": room}
    if moving:
        near = np.concatenate([ball[:6], [ball[6] + PROP.wick_radius]])
        more = {"mates": lambda beats: np.broadcast_to(near, (len(beats), 1, 7))}
    assert gap(eased(stretch(**more))) > -2e-3


@pytest.mark.parametrize(("missed", "tried"), [(0.2, [12, 24]), (1.5, [12])])
def test_more_knots_are_tried_only_where_a_limit_is_missed_by_little(monkeypatch, missed, tried):
    asked = []
    monkeypatch.setattr(
        module, "_problem", lambda _stretch, knots: asked.append(knots) or (0, 0, 0)
    )
    path = iter("ab")
    monkeypatch.setattr(
        module,
        "held_to_limits",
        lambda *_: SimpleNamespace(
            missed=lambda: {"pull": missed / len(asked)}, unknown=next(path)
        ),
    )
    assert module._sought(None) == "ab"[len(tried) - 1], "what misses by less"
    assert asked == tried


def test_limits_are_looked_at_where_the_hand_s_acceleration_has_its_corners():
    """A path with one coefficient moved: the largest acceleration is at a knot, and falls steeply on both sides."""
    own = stretch(limits=FlownLimits(hand_speed=99.0, hand_acceleration=1.0))
    count = 72
    step = (END - START) / count
    _, unknown, _ = module._problem(own, 12)
    unknown[count // 2] += 2e-3
    path = module._Eased(own, unknown, step)
    beats = np.linspace(START, END, 32 * count + 1)
    size = np.linalg.norm(path.flight(beats).hand_acceleration, axis=-1)
    assert size.argmax() % 32 == 0, "at a knot"
    assert size.max() > 1.02 * size[2::4].max(), "eight looks beside them would miss it"
    assert path.missed()["acceleration"] == pytest.approx(size.max() - 1.0, rel=1e-9)
