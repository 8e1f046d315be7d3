"""Planes and directions: frames by plane geometry, written anew; words by angles set by hand."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.motion.patterns.planes import (
    PLANES,
    TURNS,
    WAYS,
    Frame,
    as_vector,
    frame_of,
    plane_axis,
    plane_words,
    wheel_axis,
)

X, Y, Z = np.eye(3)
# The viewer's right and up (module's head): the performer; from the performer's right; from above.
VIEWERS = {"wall": (X, Z), "wheel": (Y, Z), "floor": (X, Y)}
# Their cross products by hand: right × up is what turns anticlockwise for that viewer.
AXES = {"wall": -Y, "wheel": X, "floor": Z}


def test_names_and_their_order():
    assert PLANES == ("wall", "wheel", "floor")
    assert TURNS == ("anticlockwise", "clockwise")
    assert WAYS == ("forward", "backward")


@pytest.mark.parametrize("plane", VIEWERS)
@pytest.mark.parametrize(("turn", "sense"), [("anticlockwise", 1.0), ("clockwise", -1.0)])
@pytest.mark.parametrize("start", [0.0, 0.7, -np.pi / 2, 2.5])
def test_a_frame_starts_outward_and_goes_along(plane, turn, sense, start):
    """Outward at its angle; along is the derivative of outward by the angle, the way it turns."""
    right, up = VIEWERS[plane]
    frame = frame_of(plane, turn, start)
    assert_allclose(frame.outward, np.cos(start) * right + np.sin(start) * up, atol=1e-15)
    assert_allclose(frame.along, sense * (np.cos(start) * up - np.sin(start) * right), atol=1e-15)
    assert_allclose(frame.axis, sense * AXES[plane], atol=1e-15)


@pytest.mark.parametrize("plane", VIEWERS)
def test_an_axis_has_no_minus_zero(plane):
    for turn, sense in (("anticlockwise", 1.0), ("clockwise", -1.0)):
        axis = plane_axis(plane, turn)
        assert axis == tuple(sense * AXES[plane])
        assert "-0.0" not in repr(axis)


def test_the_wheel_goes_forward_about_minus_x():
    """The top of a wheel that goes forward: ω × z = y only where ω points along −x."""
    assert wheel_axis("forward") == (-1.0, 0.0, 0.0)
    assert wheel_axis("backward") == (1.0, 0.0, 0.0)
    assert_allclose(np.cross(wheel_axis("forward"), Z), Y)


def test_a_yawed_frame_is_turned_about_the_vertical():
    """Against scipy's rotation about z."""
    own = frame_of("wheel", "clockwise", 0.4)
    turned, about = own.yawed(0.9), Rotation.from_euler("z", 0.9)
    for name in ("outward", "along", "axis"):
        assert_allclose(getattr(turned, name), about.apply(getattr(own, name)), atol=1e-15)
    skew = Frame(np.array([1.0, 2.0, 3.0]), Y, Z).yawed(np.pi / 2)
    assert_allclose(skew.outward, [-2.0, 1.0, 3.0], atol=1e-15)  # by hand


def test_what_is_not_a_name_is_refused():
    with pytest.raises(ValueError, match="plane must be one of wall, wheel, floor, got 'roof'"):
        frame_of("roof", "clockwise", 0.0)
    with pytest.raises(ValueError, match="turn must be one of anticlockwise, clockwise"):
        frame_of("wall", "forward", 0.0)
    with pytest.raises(ValueError, match="way must be forward or backward, got 'up'"):
        wheel_axis("up")


def test_a_vector_is_three_plain_numbers():
    found = as_vector(np.array([1, 2, 3]))
    assert found == (1.0, 2.0, 3.0)
    assert [type(value) for value in found] == [float] * 3


def leant(degrees, first, second):
    """A direction that many degrees from the first towards the second."""
    a = np.radians(degrees)
    return np.cos(a) * first + np.sin(a) * second


@pytest.mark.parametrize(
    ("n", "words"),
    [
        (leant(9.9, -X, Z), "wheel plane, forward"),
        (leant(10.1, -X, Z), "wheel plane, forward, tilted 10° towards floor plane, anticlockwise from above"),
        (leant(11.4, X, -Z), "wheel plane, backward, tilted 11° towards floor plane, clockwise from above"),
        (leant(34.9, -Y, X), "wall plane, anticlockwise, tilted 35° towards wheel plane, backward"),
        (leant(35.1, -Y, X), "between wall plane, anticlockwise and wheel plane, backward"),
        (leant(40.0, Y, -X), "between wall plane, clockwise and wheel plane, forward"),
        (leant(40.0, Z, -Y), "between floor plane, anticlockwise from above and wall plane, anticlockwise"),
        (leant(20.0, -Z, Y), "floor plane, clockwise from above, tilted 20° towards wall plane, clockwise"),
        (X * (1 + 1e-12), "wheel plane, backward"),
    ],
)  # fmt: skip
def test_words_turn_at_ten_and_at_thirty_five_degrees(n, words):
    assert plane_words(n) == words


def test_the_audience_sees_both_words_of_the_wall_plane_the_other_way_round():
    n = leant(20.0, -Z, Y)
    assert plane_words(n, eye="audience") == (
        "floor plane, clockwise from above, tilted 20° towards wall plane, anticlockwise"
    )
    assert plane_words(leant(5.0, -Y, X), eye="audience") == "wall plane, clockwise"
