"""Paths on the sphere: every formula by differences or by a second way, every threshold at its edge."""

import numpy as np
import pytest
from numpy.polynomial import Polynomial
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.trajectories.one_link import sphere
from sequencer.motion.trajectories.one_link.sphere import (
    Ends,
    directions,
    moved,
    pointings,
    polynomial,
    quintics,
    sphere_candidates,
)

X, Y, Z = np.eye(3)


def drawn(seed, *shape):
    return np.random.default_rng(seed).normal(size=shape)


def unit(vectors):
    return vectors / np.sqrt((vectors**2).sum(axis=-1))[..., None]


def test_the_numbers_of_the_search():
    """This project's choices, typed here again: a changed one changes every link's path."""
    assert sphere.LEAST_COSINE == 0.35
    assert sphere.SPHERE_SAMPLES == 25
    assert sphere.LOOPS == (-1, 0, 1)


def test_a_quintic_is_the_one_through_both_ends():
    """The six conditions as a linear system, solved: no other way leads to the same numbers."""
    start, end = drawn(1, 2, 4, 3, 2)
    system = np.array(
        [
            [1, 0, 0, 0, 0, 0], [0, 1, 0, 0, 0, 0], [0, 0, 2, 0, 0, 0],
            [1, 1, 1, 1, 1, 1], [0, 1, 2, 3, 4, 5], [0, 0, 2, 6, 12, 20],
        ]
    )  # fmt: skip
    wanted = np.linalg.solve(system, np.concatenate((start, end), axis=1))
    assert_allclose(quintics(start, end), wanted, atol=1e-12)
    assert_allclose(quintics(start[0], end[0]), wanted[0], atol=1e-12)


def test_a_polynomial_and_its_rates_are_those_of_numpys_own():
    rows, x = drawn(2, 3, 6, 2), np.array([-0.4, 0.0, 0.3, 1.0, 1.7])
    for order, found in enumerate(polynomial(rows, x)):
        for n in range(3):
            for m in range(2):
                own = Polynomial(rows[n, :, m])
                assert_allclose(
                    found[n, :, m], own.deriv(order)(x) if order else own(x), atol=1e-11
                )


def test_a_pointing_is_the_pole_leant_over():
    """Level with the first row at (0, 0), a quarter round with the second, a quarter up with the pole."""
    frames = np.array([[Y, Z, X]])
    turns = np.array([[[0, 0], [np.pi / 2, 0], [0.3, np.pi / 2], [np.pi, -np.pi / 6]]])
    wanted = [Y, Z, X, -np.cos(np.pi / 6) * Y - 0.5 * X]
    assert_allclose(pointings(frames, turns)[0], wanted, atol=1e-15)


def differences(place, t, step):
    """Central first and second differences."""
    low, mid, high = place(t - step), place(t), place(t + step)
    return (high - low) / (2 * step), (high - 2 * mid + low) / step**2


@pytest.mark.parametrize("local", [False, True])
def test_rates_of_a_direction_are_its_differences(local):
    """Two paths over different numbers of beats; rates by beats, from places alone."""
    angles, x, beats = 0.7 * drawn(3, 2, 6, 2), np.linspace(0.1, 0.9, 7), np.array([0.8, 2.5])
    frames = np.linalg.qr(drawn(4, 2, 3, 3))[0]
    used = None if local else frames
    tether, rate, push = directions(used, angles, x, beats)
    for n in range(2):
        frame = np.eye(3) if local else frames[n]

        def place(t, n=n, frame=frame):
            alpha, psi = (Polynomial(angles[n, :, m])(t / beats[n]) for m in range(2))
            flat = np.cos(psi)[:, None] * (
                np.cos(alpha)[:, None] * frame[0] + np.sin(alpha)[:, None] * frame[1]
            )
            return flat + np.sin(psi)[:, None] * frame[2]

        t = x * beats[n]
        assert_allclose(tether[n], place(t), atol=1e-12)
        assert_allclose(rate[n], differences(place, t, 1e-5)[0], rtol=1e-6, atol=1e-7)
        assert_allclose(push[n], differences(place, t, 2e-4)[1], rtol=1e-5, atol=2e-5)


def test_rates_of_a_direction_by_hand():
    """Level round the pole: ω east, ω²r inwards; up a meridian: ψ' up; both and each speeding up alone."""
    value = np.array([[[0.0, 0.0], [0.0, np.pi / 3], [0.0, 0.0], [0.0, np.pi / 3]]])
    rate = np.array([[[2.0, 0.0], [2.0, 3.0], [0.0, 0.0], [0.0, 0.0]]])
    push = np.array([[[0.0, 0.0], [0.0, 0.0], [5.0, 7.0], [5.0, 7.0]]])
    _, first, second = (part[0] for part in moved(np.eye(3)[None], value, rate, push))
    s, c = np.sqrt(3) / 2, 0.5
    up, out = np.array([-s, 0, c]), np.array([c, 0, s])
    assert_allclose(first, [2 * Y, 3 * up + 2 * c * Y, 0 * Y, 0 * Y], atol=1e-12)
    coriolis = 4 * c * s * up - 12 * s * Y - (9 + 4 * c**2) * out
    wanted = [-4 * X, coriolis, 7 * Z + 5 * Y, 7 * up + 5 * c * Y]
    assert_allclose(second, wanted, atol=1e-12)


def test_a_vector_too_short_gives_way_at_a_millionth():
    """At any depth of the arrays; exactly a millionth still gives way."""
    rows = np.array(
        [[2e-6, 0, 0], [0, 1e-6, 0], [0, 0, 0.9e-6], [0, 0, 0], [0, 3, 4], [0.3, 0, 0.4]]
    )
    wanted = [X, Z, Z, Z, [0, 0.6, 0.8], [0.6, 0, 0.8]]
    instead = np.broadcast_to(Z, rows.shape)
    assert_allclose(sphere._unit(rows, instead), wanted, atol=1e-12)
    deep = np.stack((rows, rows[::-1]))
    found = sphere._unit(deep, np.broadcast_to(Z, deep.shape))
    assert_allclose(found, [wanted, wanted[::-1]], atol=1e-12)


def test_a_frame_looks_towards_the_first_tether():
    """Gram and Schmidt by hand; a right-handed frame with the pole last."""
    pole = np.array([Z, X, [0.6, 0.8, 0]])
    towards = np.array([[0.6, 0, 0.8], [0.5, 0, -2.0], [1.0, 0, 0]])
    found = sphere._frames(pole, towards)
    wanted = [[X, Y, Z], [-Z, Y, X], [[0.8, -0.6, 0], -Z, [0.6, 0.8, 0]]]
    assert_allclose(found, wanted, atol=1e-12)


@pytest.mark.parametrize(
    ("pole", "first"),
    [
        (Z, X), (Y, X), (X, Y), ([0.6, 0.8, 0], [0.8, -0.6, 0]), ([0.8, 0.6, 0], [-0.6, 0.8, 0]),
        ([-0.8, 0.6, 0], [0.6, 0.8, 0]), ([-0.6, 0, 0.8], [0.8, 0, 0.6]),
        ([0.7, 0, np.sqrt(0.51)], Y), ([np.nextafter(0.7, 0), 0, np.sqrt(0.51)], [np.sqrt(0.51), 0, -0.7]),
        ([0.0, 0.75, np.sqrt(1 - 0.75**2)], X),
    ],
)  # fmt: skip
def test_a_frame_about_the_tether_itself_takes_an_axis_across(pole, first):
    """The x axis unless the pole is within 0.7 of it, then y, less what lies along the pole."""
    pole = np.array([pole])
    frame = sphere._frames(pole, pole)[0]
    assert_allclose(frame, [first, np.cross(pole[0], first), pole[0]], atol=1e-12)


def test_poles_in_their_order():
    """Both turning axes, their sum and difference, across both tethers, and the three axes of the body.

    Where two axes cancel out, or the tethers are one, the first axis stands in.
    """
    tether = np.array([[X, Y], [X, X]])
    axis = np.array([[Y, X], [Y, Y]])
    zero = np.zeros((2, 2, 3))
    poles = sphere._poles(Ends(tether, zero, zero, axis))
    half = np.sqrt(0.5)
    wanted = [
        [Y, Y], [X, Y], [[half, half, 0], Y], [[-half, half, 0], Y], [Z, Y], [X, X], [Y, Y], [Z, Z],
    ]  # fmt: skip
    assert_allclose(np.array(poles), wanted, atol=1e-12)


def test_no_coordinate_in_a_frame_is_a_negative_zero():
    """The azimuth of (−1, −0) is −π and not π: the path would wind the other way round."""
    found = sphere._turned(np.eye(3)[None, None], np.array([[[-1.0, -0.0, -0.0]]]))
    assert found.tolist() == [[[[-1.0, 0.0, 0.0]]]]
    assert not np.signbit(found[..., 1:]).any()


def test_angles_are_those_whose_differences_the_tether_has():
    """A path of known azimuth and elevation: back from direction, rate and acceleration to the angles."""
    value = np.array([[0.4, -0.6], [2.5, 0.9], [-3.0, 0.1]])
    rate, push = drawn(5, 2, 3, 2)
    local = [part[0] for part in moved(np.eye(3)[None], value[None], rate[None], push[None])]
    cosine = np.cos(value[:, 1])
    wanted = np.stack((value, rate, push), axis=1)
    assert_allclose(sphere._angles(local, cosine), wanted, atol=1e-12)
    deep = [part.reshape(3, 1, 1, 3) for part in local]
    assert_allclose(sphere._angles(deep, cosine.reshape(3, 1, 1))[:, 0, 0], wanted, atol=1e-12)


TETHERS = unit(
    np.array([[[1.0, 0.2, -0.3], [0.2, 1.0, 0.4]], [[0.3, -0.8, 0.5], [-0.9, 0.4, 0.2]]])
)
BEATS = np.array([1.5, 0.7])


def ends(spin=(2.0, -3.0)):
    """Two pairs that turn about an axis each, and speed up along and across the path."""
    axis = unit(np.cross(TETHERS, drawn(6, 2, 2, 3)))
    rate = np.array(spin)[:, None, None] * np.cross(axis, TETHERS)
    square = np.sum(rate * rate, axis=-1)[..., None]
    across = np.cross(axis, TETHERS) - 0.5 * axis
    return Ends(TETHERS, rate, across - square * TETHERS, axis)


def test_every_candidate_meets_both_ends():
    """Direction, rate and acceleration at both ends, for eight poles and three numbers of loops each."""
    own = ends()
    found = list(sphere_candidates(own, BEATS))
    assert len(found) == 24
    met = 0
    for way in found:
        parts = directions(way.frames, way.angles, np.array([0.0, 1.0]), BEATS)
        for part, wanted in zip(parts, (own.tether, own.rate, own.acceleration), strict=True):
            usable = np.isfinite(way.peak)
            met += usable.sum()
            assert_allclose(way.angles[usable, 0, 0], 0.0, atol=1e-9)  # counted from the first
            assert_allclose(part[usable], wanted[usable], atol=1e-8)
    assert met > 60


def test_candidates_are_a_loop_apart_around_the_winding_of_their_rates():
    """The middle one's azimuth comes nearest to the mean of both rates times the beats."""
    own = ends((9.0, -14.0))
    found = list(sphere_candidates(own, BEATS))
    for pole in range(8):
        three = found[3 * pole : 3 * pole + 3]
        turned = np.array([way.angles[:, :, 0].sum(axis=1) - way.angles[:, 0, 0] for way in three])
        assert_allclose(np.diff(turned, axis=0), 2 * np.pi, atol=1e-8)
        start, end = (
            np.stack([Polynomial(row).deriv()(x) for row in three[1].angles[:, :, 0]])
            for x in (0.0, 1.0)
        )
        usable = np.isfinite(three[1].peak)
        assert np.all(np.abs(turned[1] - (start + end) / 2)[usable] <= np.pi + 1e-9)
        assert_array_equal(three[0].frames, three[2].frames)


def test_a_peak_is_the_largest_acceleration_of_25_looks():
    """By second differences of the places; without peaks it is nothing."""
    own = ends()
    found = list(sphere_candidates(own, BEATS))
    bare = list(sphere_candidates(own, BEATS, peaks=False))
    x = np.arange(25) / 24
    step = 1e-4
    for way, plain in zip(found, bare, strict=True):
        places = [
            pointings(way.frames, polynomial(way.angles, x + k * step)[0]) for k in (-1, 0, 1)
        ]
        second = (places[0] - 2 * places[1] + places[2]) / (step * BEATS[:, None, None]) ** 2
        peak = np.sqrt((second**2).sum(axis=-1)).max(axis=1)
        usable = np.isfinite(way.peak)
        assert_allclose(way.peak[usable], peak[usable], rtol=1e-4)
        assert_array_equal(plain.peak, np.where(usable, 0.0, np.inf))
        assert_array_equal(plain.angles, way.angles)


@pytest.mark.parametrize("which", [0, 1])
@pytest.mark.parametrize(
    ("level", "usable"),
    [(0.35, True), (np.nextafter(0.35, 0), False), (0.36, True), (0.0, False)],
)
def test_a_pole_too_near_to_an_end_is_not_used(level, usable, which):
    """About the z axis, 0.35 from it is still allowed, at either end; at the pole itself nothing divides by 0."""
    tether = np.array([[X, X]])
    tether[0, which] = [level, 0, np.sqrt(1 - level**2)]
    zero = np.zeros((1, 2, 3))
    own = Ends(tether, zero, zero, np.array([[Y, Y]]))
    about_z = list(sphere_candidates(own, np.ones(1)))[21:]
    assert_array_equal([np.isfinite(way.peak[0]) for way in about_z], [usable] * 3)
    assert all(np.isfinite(way.angles).all() for way in about_z)


def test_by_default_peaks_are_sampled():
    """Half a turn about the pole in a beat at rest at both ends: by hand the peak of π·(10x³ − 15x⁴ + 6x⁵)."""
    tether = np.array([[X, -X]])
    zero = np.zeros((1, 2, 3))
    way = list(sphere_candidates(Ends(tether, zero, zero, np.array([[Z, Z]])), np.ones(1)))[1]
    x = np.arange(25) / 24
    turn, curve = 30 * x**2 - 60 * x**3 + 30 * x**4, 60 * x - 180 * x**2 + 120 * x**3
    assert way.peak[0] == pytest.approx(np.hypot(np.pi * curve, (np.pi * turn) ** 2).max())
