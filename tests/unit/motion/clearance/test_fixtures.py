from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.prisms import plane
from sequencer.geometry.regions import AudienceEdge, Post, Region, Scenery
from sequencer.motion.clearance import fixtures
from sequencer.motion.clearance.fixtures import encounters, lowest_wick
from sequencer.motion.clearance.grid import cells
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.performers.body_parts import PARTS, HandDeviation
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.hand_deviation import hand_deviations_of
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.timing.tempo import TempoMap
from tests.nothing_kept import nothing_kept


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


@pytest.mark.parametrize("start", range(0, 360, 45))
def test_a_wick_that_turns_within_one_cell_is_followed_down(dance, start):
    """Four loops a beat: where it is looked at first it may be level for a moment, at its top."""
    ada = dance.dancer(ratio=1.0, hand_radius=0.0, beats=0.25, start=float(start), tether=0.6)
    z = heads(ada, np.linspace(0, 1, 4001))[..., 2]
    found = met([ada], (plane(top=0.0),), "wicks", required=5.0)
    assert_allclose(found.distance, z.min() - 0.05, atol=0.005)


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


def over_floor(ada, deviation):
    """The told gap of a dancer whose hands may be off their drawn path by so much, and the drawn one."""
    work = dict.fromkeys(("left", "right"), (HandDeviation(-1.0, 33.0, deviation),))
    told = met([replace(ada, deviation=work)], (plane(top=0.0),), "wicks", required=5.0).distance[0]
    drawn = heads(ada, np.linspace(0, 32, 12_801))[..., 2].min() - ada.props["right"].wick_radius
    return told, drawn


def test_hand_work_is_taken_off_the_floor_gap(dance):
    """A little of it: the leeway is what holds."""
    told, drawn = over_floor(dance.dancer(tether=0.5), 0.1)
    assert_allclose(told, drawn - 0.1, atol=0.005)


@pytest.mark.parametrize("stature", [1.45, 1.7, 2.0])
@pytest.mark.parametrize("tether", [0.5, 0.6])
def test_an_arm_holds_what_hand_work_takes_off_the_floor_gap(dance, stature, tether):
    """Much of it: no wick is lower than shoulder − arm − tether − wick; lengths as the survey has them."""
    ada = dance.dancer(tether=tether, stature=stature, hand_radius=0.1)
    told, drawn = over_floor(ada, 0.9)
    hanging = (1440.7 - 684.3) / 1756.2 * stature - tether - 0.05
    assert drawn - 0.9 < hanging < drawn
    assert_allclose(told, hanging, atol=1e-6)
    assert (told < 0) == (stature == 1.45 and tether == 0.6)
    assert_allclose(lowest_wick(ada, "left"), hanging, atol=1e-12)


def test_a_drawing_lower_than_the_arm_lets_it_be_counts_as_it_stands(dance):
    """Its hand is out of reach, which is another finding; hand work does not bring it up again."""
    ada, given = dance.dancer(tether=0.5), {"ratio": 3.0, "hand_radius": 0.3, "up": -0.8}
    trajectories = {
        side: dance.trajectory_of("orbit", given, side=side, body=ada.body) for side in ada.props
    }
    ada = replace(ada, trajectories=trajectories)
    told, drawn = over_floor(ada, 0.4)
    assert drawn < lowest_wick(ada, "right")
    assert drawn < -0.05  # deeper than the wick is thick
    assert_allclose(told, drawn, atol=0.005)


def test_every_pattern_of_a_poi_of_half_a_metre_clears_the_floor():
    """At 1.70 m hand work alone takes no wick to the floor, whatever the pattern and the tempo."""
    body, poi = Body(stature=1.7), Prop(length=0.5, mass=0.2, wick_radius=0.05)
    tempo = TempoMap(np.arange(0.0, 40.0, 0.6), first=0, bars=(0,), metre=4)
    for name in patterns():
        trajectories = {}
        for side in ("left", "right"):
            law = law_for(name, {}, side=side, body=body, tether=0.5)
            span = Span(start=0.0, end=8.0, law=law, origin=0.0, kind="block", label=name)
            trajectories[side] = Trajectory((span,))
        ada = Dancer(
            name="Ada", body=body, props=dict.fromkeys(trajectories, poi), trajectories=trajectories,
            floor=WalkPath((0.0, 3.0)),
            deviation={side: hand_deviations_of(own, poi, tempo) for side, own in trajectories.items()},
        )  # fmt: skip
        found = encounters(
            (ada,), cells((ada,), 0, 8), (plane(top=0.0),), measure="wicks", required=np.zeros(1)
        )
        assert found.distance[0] > 0.1, name
        assert not len(found.spans.group), name


def test_wicks_are_measured_over_a_floor_only(dance):
    with pytest.raises(ValueError, match="above a floor"):
        met([dance.dancer()], (plane(bottom=3.0),), "wicks")


def test_how_far_a_place_is_off_is_looked_up_after_another_dance_there(dance, monkeypatch):
    """It depends on where somebody stands and walks alone: no more of it is computed, and it says the same."""
    walk = {"place": (0, 3), "moves": (Move(start=4, end=12, place=(2, 1.5), facing=1),)}
    post = Post(name="north", at=(1.5, 3.0)).prisms
    looked = []
    own = fixtures._Kernel._from_places

    def from_places(kernel, missing):
        looked.append(len(missing))
        return own(kernel, missing)

    monkeypatch.setattr(fixtures._Kernel, "_from_places", from_places)
    with nothing_kept():
        met([dance.dancer(tether=0.5, **walk)], post, "envelope")
        again = met([dance.dancer(tether=0.6, **walk)], post, "envelope")
        assert sum(looked) == 1
        met([dance.dancer(tether=0.5, **walk | {"place": (0, 3.25)})], post, "envelope")
        assert sum(looked) == 2
    with nothing_kept():
        fresh = met([dance.dancer(tether=0.6, **walk)], post, "envelope")
    assert (again.distance, again.at) == (fresh.distance, fresh.at)


def test_places_are_known_by_the_cells_that_they_are_of(dance):
    """Somebody who stands still, over fewer beats: the last slice begins alike and has fewer cells."""
    ada = dance.dancer(place=(0, 3))
    post = Post(name="north", at=(1.5, 3.0)).prisms

    def apart(end):
        return fixtures._Kernel([ada], cells([ada], 0, end), post, "place").apart()

    with nothing_kept():
        fresh = apart(24)
    with nothing_kept():
        apart(32)
        assert_allclose(apart(24), fresh, rtol=0, atol=0)
