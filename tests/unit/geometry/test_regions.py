import numpy as np
import pytest
from numpy.testing import assert_allclose
from shapely import Point

from sequencer.geometry.regions import (
    AudienceEdge,
    Ceiling,
    Post,
    Region,
    Scenery,
    rectangle,
    round_stage,
    thrust,
)

SQUARE = ((0, 0), (2, 0), (2, 2), (0, 2))


def test_standard_stages():
    assert_allclose(rectangle(8, 6).area, 48)
    assert_allclose(thrust(10, 4, tongue_width=4, tongue_depth=3).area, 52)
    assert_allclose(round_stage(8).area, np.pi * 16, rtol=0.002)
    assert_allclose(round_stage(8).box[1], 0.0, atol=0.01)


def test_holes_and_points():
    region = Region(SQUARE, (((0.5, 0.5), (1, 0.5), (1, 1)),))

    assert_allclose(region.area, 3.875)
    assert region.polygon.covers(Point(0.1, 0.1))
    assert region.polygon.covers(Point(0, 0))
    assert not region.polygon.covers(Point(0.9, 0.6))


def test_a_closed_ring_is_the_same():
    assert Region((*SQUARE, SQUARE[0])) == Region(SQUARE)


@pytest.mark.parametrize(
    ("outline", "match"),
    [
        (((0, 0), (2, 2), (2, 0), (0, 2)), "cross or touch itself"),
        (((0, 0), (1, 0), (2, 0)), "cross or touch|enclose an area"),
        (((0, 0), (1, 0)), "at least 3"),
        (((0, 0), (1, 0), (1, float("nan"))), "finite"),
        (((0, 0), (6000, 0), (6000, 4000)), "millimetres"),
        (((0, 0, 1), (1, 0, 1), (1, 1, 1)), "two finite numbers"),
    ],
)
def test_bad_outlines_are_refused(outline, match):
    with pytest.raises(ValueError, match=match):
        Region(outline)


@pytest.mark.parametrize(
    ("make", "match"),
    [
        (lambda: rectangle(0, 5), "width"),
        (lambda: rectangle(5, float("inf")), "depth"),
        (lambda: thrust(4, 4, tongue_width=5, tongue_depth=1), "narrower"),
        (lambda: Ceiling(height=-2), "height"),
        (lambda: Scenery(name="wall", region=rectangle(1, 1), height=0), "height"),
        (lambda: Post(name="north", at=(0, 0), radius=-1), "radius"),
        (lambda: Post(name="north", at=(0, float("nan"))), "finite"),
        (lambda: AudienceEdge(line=((0, 0),)), "at least 2"),
    ],
)
def test_bad_records_are_refused(make, match):
    with pytest.raises(ValueError, match=match):
        make()
