"""Landings of a whole show: the nearest of all heads to each thing, and the ground they may land on."""

import pytest
import shapely

from sequencer.motion.clearance.flown_area import flown_over
from sequencer.motion.clearance.let_go import FLIGHT_ERROR, flights_let_go
from sequencer.safety.site_ground.landings import landing_area, landing_places, landing_plan
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two lanterns
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 10 m}
  audience: [{name: rows, line: [[-12, -9], [12, -9]]}]
  scenery:
    - {name: hay, outline: [[6, 9], [8, 9], [8, 10]], height: 1 m}
    - {name: rock, outline: [[-6, 9], [-8, 9], [-8, 10]], height: 1 m, combustible: false}
  exits: [{name: slip, at: [9, -9], width: 3 m}]
  fuel_station: [11, 13]
  spin_off: [[10, 14], [12, 14], [12, 16]]
  gate: [14, 2]
cast:
  - {name: Wren, stature: 1.7 m, prop: {tether: 55 cm}}
  - {name: Moss, stature: 1.7 m, prop: {tether: 40 cm}}
formations:
  pair: {spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}
staging: [{formation: pair, from: 1.1}]
timeline: [{from: 1.1, pattern: three-beat-weave, beats: 16}]
fire: {fuel: lamp oil, lit: [{who: [Wren, Moss], from: 1.1, until: 5.1}]}
crew: [{name: Flint, post: [-2, 8], duty: spotter}]
"""


def show(text=SHOW):
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(40))


@pytest.fixture(scope="module")
def two():
    return show()


def test_everything_that_a_head_must_not_come_down_on_is_asked_for(two):
    places = landing_places(two.show)

    assert [(place, target.name, target.shape) for place, target in places] == [
        ("audience", "rows", "line"),
        ("post", "Flint", "point"),
        ("fuel", "the fuel point", "point"),
        ("fuel", "the spin-off zone", "area"),
        ("exit", "slip", "point"),
        ("gate", "the gate", "point"),
        ("combustible", "hay", "area"),  # not the rock, which does not burn
    ]


def test_the_nearest_of_all_heads_counts(two):
    plan = landing_plan(two)
    targets = [target for _, target in landing_places(two.show)]
    own = {dancer.name: flights_let_go([dancer], two.tempo, targets) for dancer in two.dancers}

    for k, found in enumerate(plan.nearest):
        least = min(alone.nearest[k][1].distance for alone in own.values())
        assert found.flight.distance == pytest.approx(least, abs=FLIGHT_ERROR)
        theirs = own[found.who].nearest[k][1].distance
        assert theirs == pytest.approx(least, abs=FLIGHT_ERROR)
    far = {name: alone.farthest[1].flight for name, alone in own.items()}
    assert far["Wren"] > far["Moss"]  # on the longer tether
    assert plan.farthest == own["Wren"].farthest
    assert plan.proven
    zone, point = sorted(plan.near("fuel"), key=lambda each: each.name, reverse=True)
    assert (zone.name, point.name) == ("the spin-off zone", "the fuel point")
    assert plan.near("fuel")[0].flight.distance == min(zone.flight.distance, point.flight.distance)


def test_the_ground_of_all_together_holds_that_of_each(two):
    whole = shapely.union_all([shapely.Polygon(ring) for ring in landing_area(two)])

    for dancer in two.dancers:
        for ring in flown_over(dancer, two.tempo):
            assert whole.buffer(1e-9).covers(shapely.Polygon(ring))


def test_who_is_lit_decides(two):
    only = show(SHOW.replace("[Wren, Moss], from", "[Moss], from"))

    assert landing_plan(only).farthest[0] == "Moss"
    assert {found.who for found in landing_plan(only).nearest} == {"Moss"}
    dark = show("\n".join(line for line in SHOW.splitlines() if not line.startswith("fire")))
    assert landing_plan(dark) is None
    assert landing_area(dark) == ()
