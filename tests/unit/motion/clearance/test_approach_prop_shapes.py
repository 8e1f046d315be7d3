"""Certified distances of casts with all kinds of props, against plain sampling of the same bodies."""

from math import radians

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.geometry.prisms import plane
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.fixtures import encounters
from sequencer.motion.clearance.grid import cells
from sequencer.motion.performers.body_parts import N_FRONT, N_POINTS
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory

FLAME = 0.25
POI = Prop(length=0.6, mass=0.2, wick_radius=0.05, flame_reach=FLAME)
STAFF = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04, flame_reach=FLAME)
CLUB = Prop(kind="club", length=0.45, behind=0.1, mass=0.35, wick_radius=0.04, flame_reach=FLAME)
FAN = Prop(
    kind="fan",
    length=0.4,
    mass=0.5,
    wicks=5,
    spread=radians(120),
    wick_radius=0.03,
    flame_reach=FLAME,
)
HOOP = Prop(kind="hoop", length=0.85, mass=0.6, wicks=4, wick_radius=0.03, flame_reach=FLAME)
KINDS = {prop.kind: prop for prop in (POI, STAFF, CLUB, FAN, HOOP)}


def held(dance, name, place, props, *, ratio=3.0, facing=0.0, lit=((0.0, 64.0),)):
    body = Body(stature=1.7)
    given = {"ratio": ratio, "hand_radius": 0.3, "plane": "wall"}
    return Dancer(
        name=name,
        body=body,
        props=props,
        trajectories={
            side: dance.trajectory_of("orbit", given, side=side, body=body, end=64.0)
            for side in props
        },
        floor=WalkPath(place, facing),
        lit=lit,
    )


@pytest.mark.parametrize("kind", sorted(KINDS))
@pytest.mark.parametrize("other", ["poi", "staff"])
def test_pairs_of_all_kinds(dance, kind, other):
    ada = held(dance, "Ada", (0.0, 3.0), {"right": KINDS[kind]})
    bo = held(dance, "Bo", (1.9, 3.2), dict.fromkeys(("left", "right"), KINDS[other]), ratio=-2.0)
    found = approaches((ada, bo), 0.0, 8.0, required=0.5)
    beats = np.linspace(0.0, 8.0, 8001)
    sampled = dance.sampled_distance(ada, bo, beats)
    assert abs(found.distance[0] - sampled.min()) <= 0.005 + 1e-9
    under = np.zeros(len(beats), bool)
    for low, high in zip(found.spans.start, found.spans.end, strict=True):
        under |= (beats >= low) & (beats <= high)
    assert not np.any((sampled < 0.5) & ~under)
    assert not np.any((sampled > 0.506) & under)


def test_points_behind_the_hand_cost_only_those_who_have_them(dance):
    poi = [held(dance, n, (2.0 * k, 3.0), {"right": POI}) for k, n in enumerate("ab")]
    assert cells(poi, 0.0, 4.0).points == N_FRONT
    mixed = [*poi, held(dance, "c", (6.0, 3.0), {"left": STAFF})]
    assert cells(mixed, 0.0, 4.0).points == N_POINTS
    # and the answer for the others is the same
    one = approaches(poi, 0.0, 8.0, required=3.0)
    two = approaches(mixed, 0.0, 8.0, required=3.0)
    assert one.distance[0] == pytest.approx(two.distance[0], abs=0.005)


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_wicks_over_the_floor(dance, kind):
    """A level floor: the lowest wick, sampled, and an empty hand or a knob never burns."""
    ada = held(dance, "Ada", (0.0, 3.0), {"left": KINDS[kind]})
    grid = cells((ada,), 0.0, 8.0)
    beats = np.linspace(0.0, 8.0, 8001)
    lowest = ada.wick_places(beats)["left"][..., 2].min()
    for measure, more in (("wicks", 0.0), ("flames", FLAME)):
        found = encounters(
            (ada,), grid, (plane(top=0.0),), measure=measure, required=np.array([5.0])
        )
        told = found.distance[0]
        true = lowest - KINDS[kind].wick_radius - more
        assert told <= true + 0.005
        if not KINDS[kind].ball[1]:  # a wide prop's ball is on the conservative side
            assert told >= true - 0.005


def test_part_names(dance):
    def names(prop):
        ada = held(dance, "Ada", (0.0, 3.0), {"right": prop})
        return [ada.part_name(k) for k in (5, 6, 8)]

    assert names(POI)[:2] == ["right tether", "right head"]
    assert names(STAFF) == ["right staff", "right head", "right rear head"]
    assert names(CLUB) == ["right club", "right head", "right knob"]
    assert names(FAN)[:2] == ["right fan", "right fan"]
    assert names(HOOP)[:2] == ["right hoop", "right hoop"]


def test_a_knob_and_an_empty_hand_do_not_burn(dance):
    """A club that hangs still: a ceiling is measured from its head, though the knob is nearer."""
    body = Body(stature=1.7)
    law = rest("right", body, CLUB.length)
    still = Trajectory((Span(start=0.0, end=8.0, law=law, origin=0.0, kind="rest", label="rest"),))
    ada = Dancer(
        name="Ada", body=body, props={"right": CLUB}, trajectories={"right": still},
        floor=WalkPath((0.0, 3.0)), lit=((0.0, 8.0),),
    )  # fmt: skip
    hand = float(law.at(np.array(0.0)).hand[2])
    found = encounters(
        (ada,), cells((ada,), 0.0, 8.0), (plane(bottom=3.0),), measure="flames",
        required=np.array([9.0]),
    )  # fmt: skip
    assert found.distance[0] == pytest.approx(3.0 - (hand - 0.45) - CLUB.hot_radius, abs=0.005)
    assert found.part[0] == 6
