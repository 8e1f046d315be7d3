import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.prisms import plane
from sequencer.geometry.regions import AudienceEdge, Post, Region, Scenery
from sequencer.motion.cells import cells
from sequencer.motion.floor import Move
from sequencer.motion.parts import PARTS
from sequencer.motion.surroundings import encounters


def met(cast, prisms, measure, required=0.3, **options):
    grid = cells(cast, 0, 32)
    return encounters(
        cast, grid, prisms, measure=measure, required=np.full(len(cast), required), **options
    )


def heads(ada, beats):
    return ada.stage_points(beats)[0][[4, 7]]


def test_ceiling_and_floor(dance):
    ada = dance.dancer(tether=0.6, flame=0.3, lit=((0, 32),))
    z = heads(ada, np.linspace(0, 32, 12_801))[..., 2]

    above = met([ada], (plane(bottom=4.0),), "flames", required=5.0)
    below = met([ada], (plane(top=0.0),), "wicks", required=5.0)

    assert_allclose(above.distance, 4.0 - z.max() - 0.35, atol=0.005)
    assert_allclose(below.distance, z.min() - 0.05, atol=0.005)
    assert PARTS[above.part[0]].kind == "head"


def test_envelope_and_audience(dance):
    ada = dance.dancer(
        place=(0, 9), moves=(Move(start=4, end=12, place=(2, 7.5), facing=1),), lit=((0, 32),)
    )
    line = AudienceEdge(line=((-20, 0), (20, 0)))
    found = met([ada], line.prisms, "envelope", required=6.096, only_lit=True)

    reach = max(ada.reach, ada.pieces(0, 32).reach.max())
    assert_allclose(found.distance, 7.5 - reach, atol=0.005)
    assert len(found.spans.start) == 1
    assert 4 < found.spans.start[0] < 12


def test_unlit_is_not_asked(dance):
    ada = dance.dancer(place=(0, 1), lit=())
    line = AudienceEdge(line=((-20, 0), (20, 0)))
    found = met([ada], line.prisms, "envelope", required=6.096, only_lit=True)

    assert np.isinf(found.distance[0])
    assert len(found.spans.start) == 0


def test_parts_and_scenery(dance):
    """Against bent scenery of 1.2 m, parts as they move; reference by sampling capsule points."""
    ada = dance.dancer(place=(0, 3), ratio=-2.0, lit=((8, 20),))
    region = Region(((0.9, 2), (2.5, 2), (2.5, 4), (1.6, 3)))
    piece = Scenery(name="tree", region=region, height=1.2)
    found = met([ada], piece.prisms, "parts", required=0.3)

    beats = np.linspace(0, 32, 1601)
    points = ada.stage_points(beats)[0]
    radii = ada.radii(points, ada.is_lit(beats))
    least = np.inf
    for k, part in enumerate(PARTS):
        for share in np.linspace(0, 1, 41):
            spot = points[part.start] * (1 - share) + points[part.end] * share
            for prism in piece.prisms:
                least = min(least, np.min(prism.nearest(spot)[0] - radii[k]))
    assert_allclose(found.distance, least, atol=0.012)
    assert len(found.spans.start) >= 1


def test_posts_and_places(dance):
    ada = dance.dancer(place=(0, 3))
    post = Post(name="north", at=(1.5, 3.0))
    found = met([ada], post.prisms, "envelope", required=0.3)
    bare = met([ada], post.prisms, "place", required=2.0)

    assert found.distance[0] < 0
    assert_allclose(bare.distance, 1.5, atol=0.005)


def test_far_things_are_bounded_not_sampled(dance):
    ada = dance.dancer(place=(0, 3))
    found = met([ada], Post(name="north", at=(100, 3)).prisms, "parts")

    assert found.bound[0]
    assert found.evaluations == 0
    assert 90 < found.distance[0] < 100


def test_nothing_to_keep_away_from_is_refused(dance):
    with pytest.raises(ValueError, match="at least one"):
        met([dance.dancer()], (), "parts")
