"""Venues' outlines, heights and prisms at their limits, by hand."""

import numpy as np
import pytest
import shapely
from numpy.testing import assert_allclose

from sequencer.geometry.regions import (
    AudienceEdge,
    Ceiling,
    Post,
    Region,
    Scenery,
    Venue,
    rectangle,
    round_stage,
    thrust,
)


def test_stages_corner_by_corner():
    assert rectangle(8, 6).outline == ((-4, 0), (4, 0), (4, 6), (-4, 6))
    assert rectangle(8, 6).box == (-4, 0, 4, 6)
    assert thrust(10, 4, tongue_width=3, tongue_depth=2).outline == (
        (-1.5, 0), (1.5, 0), (1.5, 2), (5, 2), (5, 6), (-5, 6), (-5, 2), (-1.5, 2),
    )  # fmt: skip
    assert_allclose(
        round_stage(4, corners=4).outline, [(0, 0), (2, 2), (0, 4), (-2, 2)], atol=1e-12
    )
    assert len(round_stage(4).outline) == 72
    # a polygon of 72 corners inside its circle: within 1 − cos(2.5°) of the radius
    assert 1 - np.cos(np.radians(2.5)) < 2.4e-3 * 0.4


@pytest.mark.parametrize("value", [0.0, -1.0, 2000.0, float("nan")])
def test_sizes_lie_between_none_and_two_kilometres(value):
    calls = (
        (lambda: rectangle(value, 5), "width"), (lambda: rectangle(5, value), "depth"),
        (lambda: thrust(value, 5, tongue_width=1, tongue_depth=1), "width"),
        (lambda: thrust(5, value, tongue_width=1, tongue_depth=1), "depth"),
        (lambda: thrust(5, 5, tongue_width=value, tongue_depth=1), "tongue_width"),
        (lambda: thrust(5, 5, tongue_width=1, tongue_depth=value), "tongue_depth"),
        (lambda: round_stage(value), "diameter"),
    )  # fmt: skip
    for call, name in calls:
        with pytest.raises(ValueError, match=f"{name} must be 0 to 2000 m"):
            call()


def test_large_and_small_stages_are_stages():
    assert rectangle(1999.9, 0.01).box == (-999.95, 0.0, 999.95, 0.01)
    with pytest.raises(ValueError, match="narrower"):
        thrust(5, 5, tongue_width=5, tongue_depth=1)
    assert thrust(5, 5, tongue_width=4.999, tongue_depth=1).area == pytest.approx(25 + 4.999)


def test_a_coordinate_is_two_kilometres_at_most():
    for far in (2000.0, -2000.0):
        assert Region(((0, 0), (far, 0), (0, 1))).area == pytest.approx(1000)
        with pytest.raises(ValueError, match="more than 2000 m away"):
            Region(((0, 0), (1, 0), (0, 1.0001 * far)))


def test_an_outline_encloses_more_than_a_square_millimetre():
    with pytest.raises(ValueError, match="enclose an area"):
        Region(((0, 0), (1e-3, 0), (0, 1.9e-3)))
    assert Region(((0, 0), (1e-3, 0), (0, 2.1e-3))).area == pytest.approx(1.05e-6)


@pytest.mark.parametrize(
    ("points", "least"),
    [(((0, 0), (1, 0), (0, 0)), 3), (((0, 0),), 3), ((), 3)],
)
def test_corners_are_counted_without_the_last_that_is_the_first(points, least):
    count = len(set(points))
    with pytest.raises(ValueError, match=f"at least {least} corners are needed, got {count}"):
        Region(points)


def test_a_hole_has_three_corners_too_and_may_be_closed():
    hole = ((0.5, 0.5), (1, 0.5), (1, 1), (0.5, 0.5))
    region = Region(((0, 0), (2, 0), (2, 2), (0, 2)), (hole,))
    assert region.holes == (((0.5, 0.5), (1.0, 0.5), (1.0, 1.0)),)
    with pytest.raises(ValueError, match="hole: at least 3"):
        Region(((0, 0), (2, 0), (2, 2)), (hole[:2],))


def test_an_audience_may_stand_all_around():
    """A closed line keeps its last corner: each side is a wall."""
    ring = AudienceEdge(line=((0, 0), (1, 0), (1, 1), (0, 0)))
    assert [wall.corners.tolist() for wall in ring.prisms] == [
        [[0, 0], [1, 0]], [[1, 0], [1, 1]], [[1, 1], [0, 0]],
    ]  # fmt: skip
    assert len(AudienceEdge(line=((0, 0), (1, 0))).prisms) == 1
    assert ring.name == "audience"


def test_heights_of_things():
    box = rectangle(2, 1)
    thing = Scenery(name="arch", region=box, height=3.0, bottom=2.0)
    assert [(one.bottom, one.top) for one in thing.prisms] == [(2.0, 3.0)]
    assert Scenery(name="x", region=box, height=1999.9).combustible
    assert Scenery(name="x", region=box, height=0.01).bottom == 0.0
    for height, bottom in ((2.0, 2.0), (1.0, 2.0), (2000.0, 0.0), (0.0, 0.0)):
        with pytest.raises(ValueError, match="height must be over"):
            Scenery(name="x", region=box, height=height, bottom=bottom)


def test_ceilings_over_all_and_over_a_region():
    whole = Ceiling(height=4.0)
    assert [(one.bottom, one.top) for one in whole.prisms] == [(4.0, 1e4)]
    part = Ceiling(height=4.0, region=rectangle(2, 1))
    assert [(one.bottom, one.top) for one in part.prisms] == [(4.0, 1e4)]
    assert part.prisms[0].corners.tolist() == [[-1, 0], [1, 0], [1, 1], [-1, 1]]
    assert Ceiling(height=1999.9).name == "ceiling"
    for height in (0.0, 2000.0, float("nan")):
        with pytest.raises(ValueError, match="height must be 0 to 2000 m"):
            Ceiling(height=height)


def test_posts_stand_upright():
    post = Post(name="north", at=(1, 2))
    assert (post.at, post.radius) == ((1.0, 2.0), 0.3)
    assert post.prisms[0].corners.tolist() == [[1, 2]]
    assert Post(name="thin", at=(0, 0), radius=0.0).radius == 0.0
    assert Post(name="thick", at=(0, 0), radius=1999.9).radius == 1999.9
    for radius in (-0.001, 2000.0):
        with pytest.raises(ValueError, match="radius must not be negative"):
            Post(name="north", at=(0, 0), radius=radius)
    assert Venue().stage is None
    assert Venue().ceilings == Venue().audience == Venue().scenery == Venue().posts == ()


def test_the_outside_of_a_stage_is_all_but_it():
    """Twenty kilometres square, less the stage; no piece overlaps the stage."""
    stage = rectangle(8, 6)
    pieces = [shapely.Polygon(one.corners) for one in stage.outside()]
    assert sum(piece.area for piece in pieces) == pytest.approx(4e8 - 48, abs=1e-4)
    assert max(piece.intersection(stage.polygon).area for piece in pieces) < 1e-6
    assert {(one.bottom, one.top) for one in stage.outside()} == {(-1e4, 1e4)}
    assert [(one.bottom, one.top) for one in stage.prisms()] == [(-1e4, 1e4)]


def test_every_piece_runs_anticlockwise_whichever_way_the_outline_does():
    for outline in (
        ((0, 0), (2, 0), (2, 2), (1, 0.5)),
        ((1, 0.5), (2, 2), (2, 0), (0, 0)),
        ((0, 2), (2, 2), (2, 0)),
    ):
        for piece in Region(outline).prisms():
            x, y = piece.corners.T
            assert np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)) > 0


def test_a_dent_of_a_billionth_is_still_convex():
    for dent, pieces in ((0.5e-9, 1), (4e-9, 2)):
        found = Region(((0, 0), (1, dent), (2, 0), (2, 2), (0, 2))).prisms()
        assert (len(found) == 1) == (pieces == 1)


def test_why_an_outline_is_refused_is_said_in_plain_words():
    with pytest.raises(ValueError, match=r"self-intersection at \(1 1\)"):
        Region(((0, 0), (2, 2), (2, 0), (0, 2)))
