"""A hand's points at an instant: found again only for the same beat, in the same shape."""

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.own_points import own_points
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span
from tests.nothing_kept import nothing_kept

BODY = Body(stature=1.7)
POI = Prop(length=0.55, mass=0.2, wick_radius=0.05)
SHAPES = [(), (1,), (1, 1)]


def hand():
    law = law_for("extension", {}, side="right", body=BODY)
    block = Span(start=0.0, end=8.0, kind="block", origin=0.0, label="extension", law=law)
    return assembled([block], rest("right", BODY, POI))


@pytest.mark.parametrize("shapes", [SHAPES, SHAPES[::-1]])
def test_one_beat_has_points_of_the_shape_it_is_given_in(shapes):
    """A number, a list of it and a table of it are the same bytes."""
    own, carriage = hand(), Carriage(body=BODY)
    beats = np.array([3.3, 4.1])
    many = own_points("right", POI, own, carriage, beats)
    with nothing_kept():
        for shape in (*shapes, *shapes):  # found, then looked up
            for k, beat in enumerate(beats):
                at = own_points("right", POI, own, carriage, np.full(shape, beat))
                for one, every in zip(at, many, strict=True):
                    assert one.place.shape == one.rate.shape == (*shape, 3)
                    assert np.allclose(one.place, every.place[k], rtol=0, atol=1e-14)
                    assert np.allclose(one.rate, every.rate[k], rtol=0, atol=1e-13)
