"""Where hands' circles lie: the rules in the module's head, worked out by hand for two radii."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.placing import circle_centre

BODY = Body(stature=1.7)
ARM, HALF, HEIGHT = BODY.arm_length, BODY.half_shoulder, BODY.shoulder_height


def leg(hypotenuse, other):
    return np.sqrt(max(hypotenuse**2 - other**2, 0.0))


@pytest.mark.parametrize("radius", [0.0, 0.3, 0.55, 0.64])
@pytest.mark.parametrize(("side", "sign"), [("right", 1), ("left", -1)])
def test_centres_by_the_rules(side, sign, radius):
    behind = 0.14 if side == "left" else 0.0
    free = leg(0.95 * ARM, radius)
    outward = 0.14 * (1 - radius / ARM)
    beside = min(BODY.half_breadth + 0.12 - HALF, free)
    ahead = min(0.25, max(leg(0.95 * ARM, beside) - radius, 0.0))
    expected = {
        ("wall", False): (sign * HALF, min(0.8 * ARM, free) - behind, HEIGHT),
        ("wall", True): (
            sign * (HALF + outward), min(0.9 * ARM, leg(0.97 * ARM, radius + outward)), HEIGHT,
        ),
        ("floor", False): (sign * HALF, 0.0, HEIGHT + free - behind),
        ("wheel", False): (sign * (HALF + beside), ahead, HEIGHT),
    }  # fmt: skip
    for (plane, bends), centre in expected.items():
        assert_allclose(circle_centre(plane, side, BODY, radius, bends=bends), centre, atol=1e-12)
        moved = circle_centre(plane, side, BODY, radius, (0.1, 0.2, -0.3), bends=bends)
        assert_allclose(moved - centre, (sign * 0.1, 0.2, -0.3), atol=1e-12)


def test_a_circle_wider_than_the_arm_is_refused():
    assert circle_centre("wall", "right", BODY, ARM) is not None
    for radius, words in (
        (ARM * 1.001, "at most the arm's"),
        (-0.01, "0 or more"),
        (np.nan, "0 or more"),
        (np.inf, "0 or more"),
    ):
        with pytest.raises(ValueError, match=words):
            circle_centre("wall", "right", BODY, radius)


@pytest.mark.parametrize("plane", ["wheel", "floor"])
def test_only_in_the_wall_plane_does_a_bent_circle_lie_elsewhere(plane):
    """The module's head names toroids at the wall plane alone."""
    for side in ("left", "right"):
        bent = circle_centre(plane, side, BODY, 0.3, bends=True)
        assert_allclose(bent, circle_centre(plane, side, BODY, 0.3), rtol=0)
