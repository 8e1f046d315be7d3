"""Downwind: the sector behind a flame, worked by hand.

Stage frame: x to the audience's right, y upstage. Wind from upstage (180) blows towards the audience, down
the page; from stage left (90) it blows to stage right, towards smaller x.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sequencer.checks.fire.on_site.weather import DOWNWIND_HALF_ANGLE, is_downwind

FLAME = (0.0, 4.0)


@pytest.mark.parametrize(
    ("wind_from", "point", "inside"),
    [
        (180.0, (0.0, 0.0), True),
        (180.0, (0.0, 8.0), False),
        (180.0, (3.9, 0.0), True),
        (180.0, (4.1, 0.0), False),
        (90.0, (-5.0, 4.0), True),
        (90.0, (5.0, 4.0), False),
        (-90.0, (5.0, 4.0), True),
        (0.0, (0.0, 9.0), True),
        (0.0, (0.0, 4.0), True),  # where the flame itself stands
    ],
)
def test_a_point_downwind(wind_from, point, inside):
    assert is_downwind(FLAME, [point], wind_from + 180.0, far=None) is inside


def test_an_edge_is_met_between_its_corners_too():
    """Both corners lie outside the sector and farther than looked; the middle does not."""
    assert is_downwind(FLAME, [(-30.0, 0.0), (30.0, 0.0)], 0.0, far=5.0)
    assert not is_downwind(FLAME, [(-30.0, 0.0), (30.0, 0.0)], 0.0, far=3.9)
    assert not is_downwind(FLAME, [(-30.0, 0.0), (30.0, 0.0)], 180.0, far=5.0)


@given(
    st.floats(-720, 720), st.floats(-9, 9), st.floats(-9, 9), st.floats(-9, 9), st.floats(-9, 9),
    st.floats(0.5, 15),
)  # fmt: skip
def test_an_edge_meets_wherever_one_of_its_points_does(towards, ax, ay, bx, by, far):
    """Against brute force over 2001 points of the stretch: no point inside is ever missed."""
    ahead = (math.sin(math.radians(towards)), -math.cos(math.radians(towards)))

    def inside(x, y):
        away = math.hypot(x, y)
        if away > far:
            return False
        return (
            x * ahead[0] + y * ahead[1] >= away * math.cos(math.radians(DOWNWIND_HALF_ANGLE)) + 1e-9
        )

    points = [(ax + k / 2000 * (bx - ax), ay + k / 2000 * (by - ay)) for k in range(2001)]
    if any(inside(x, y) for x, y in points):
        assert is_downwind((0.0, 0.0), [(ax, ay), (bx, by)], towards, far=far)
