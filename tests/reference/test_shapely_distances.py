"""Distances on the plan against shapely (GEOS), an independent geometry library."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.prisms import Prism, walls
from sequencer.geometry.regions import Region, thrust
from sequencer.geometry.segments import segment_segment

shapely = pytest.importorskip("shapely")

BENT = Region(((0, 0), (4, 0), (4, 3), (2, 1), (0, 3)), (((1.0, 0.3), (1.5, 0.3), (1.2, 0.6)),))


def on_floor(points):
    return np.concatenate([points, np.zeros((*points.shape[:-1], 1))], axis=-1)


@pytest.mark.parametrize("region", [BENT, thrust(10, 4, tongue_width=4, tongue_depth=3)])
@pytest.mark.parametrize("inside", [True, False])
def test_points_and_regions(region, inside):
    points = np.random.default_rng(0).uniform(-4, 8, (3000, 2))
    prisms = region.prisms() if inside else region.outside()
    whole = region.polygon if inside else shapely.box(-1e4, -1e4, 1e4, 1e4) - region.polygon

    ours = np.min([prism.nearest(on_floor(points))[0] for prism in prisms], axis=0)

    assert_allclose(ours, shapely.distance(whole, shapely.points(points)), atol=1e-9)


def test_segments_on_the_plan():
    draw = np.random.default_rng(1).uniform(-2, 2, (4, 4000, 2))
    ours = segment_segment(*on_floor(draw))[0]
    lines = [shapely.linestrings(np.stack(pair, axis=1)) for pair in (draw[:2], draw[2:])]

    assert_allclose(ours, shapely.distance(*lines), atol=1e-9)


def test_segments_and_regions():
    start, end = on_floor(np.random.default_rng(2).uniform(-3, 7, (2, 1500, 2)))
    ours = np.min([p.nearest_of_segment(start, end)[0] for p in BENT.prisms()], axis=0)
    lines = shapely.linestrings(np.stack([start[:, :2], end[:, :2]], axis=1))

    assert_allclose(ours, shapely.distance(BENT.polygon, lines), atol=1e-8)


def test_points_and_lines():
    line = np.array([(-5.0, -2.0), (5.0, -2.0), (8.0, 4.0)])
    points = np.random.default_rng(3).uniform(-8, 8, (2000, 2))
    ours = np.min([wall.nearest(on_floor(points))[0] for wall in walls(line)], axis=0)

    assert_allclose(
        ours, shapely.distance(shapely.LineString(line), shapely.points(points)), atol=1e-9
    )


def test_levels_are_the_farthest_corner():
    prism = Prism(np.asarray(BENT.polygon.convex_hull.exterior.coords)[:-1][::-1], 0.5, 2.0)
    n = np.random.default_rng(4).normal(size=(200, 3))
    corners = np.array([(x, y, z) for x, y in prism.corners for z in (0.5, 2.0)])

    assert_allclose(prism.level(n), np.max(n @ corners.T, axis=1), atol=1e-12)
