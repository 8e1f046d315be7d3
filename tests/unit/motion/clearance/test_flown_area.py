"""Outlines of the ground flown over, against flights of a projectile written out."""

import numpy as np
import pytest
import shapely

from sequencer.motion.clearance import flown_area as room
from sequencer.motion.clearance.flown_area import FLOWN_SLACK, GROWN, flown_over
from tests.unit.motion.clearance.thrown import CASES, STEADY, instants, thrown


@pytest.mark.parametrize("case", CASES)
def test_every_flight_lies_in_the_outline(case):
    dancer, tempo = CASES[case]
    beats = np.concatenate([instants(tempo, *span, 300) for span in dancer.lit])
    lines = shapely.linestrings(np.stack(thrown(dancer, tempo, beats), axis=-2))
    area = shapely.union_all([shapely.Polygon(ring) for ring in flown_over(dancer, tempo)])

    assert np.all(shapely.covers(area, lines.ravel()))


def test_an_outline_is_no_wider_than_it_says():
    dancer, tempo = CASES["poi"]
    release, landing = thrown(dancer, tempo, instants(tempo, 0.0, 12.0, 3000))
    lines = shapely.linestrings(np.stack([release, landing], axis=-2)).ravel()
    tree = shapely.STRtree(lines)
    corners = shapely.points([corner for ring in flown_over(dancer, tempo) for corner in ring])
    _, gaps = tree.query_nearest(corners, return_distance=True, all_matches=False)

    assert gaps.max() <= GROWN + 0.02
    assert gaps.min() > 0.0


def test_an_outline_holds_all_that_is_within_the_slack_of_a_flight():
    draw = np.random.default_rng(3)
    release = draw.uniform(-2, 2, (9, 2))
    landing = release + np.round(draw.uniform(-4, 4, (9, 2)), 1)
    release[:3, 0], landing[:3, 0] = 0.4 - 1e-9, 0.4 - 1e-9  # along the border of cells
    outlines = room._outlines(release, landing, FLOWN_SLACK)
    area = shapely.union_all([shapely.Polygon(ring) for ring in outlines])
    lines = shapely.linestrings(np.stack([release, landing], axis=-2)).ravel()

    assert area.covers(shapely.union_all(lines).buffer(FLOWN_SLACK))
    assert area.within(shapely.union_all(lines).buffer(GROWN + 0.01))


def test_who_is_never_lit_has_no_outline(dance):
    with pytest.raises(ValueError, match="Ada is never lit"):
        flown_over(dance.dancer(lit=()), STEADY)
