"""Formations over a whole song: seen, walkable, alike where the song returns."""

from itertools import pairwise

import pytest

from sequencer.checks.dance.travel import TravelLimits
from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.regions import Venue, rectangle
from sequencer.planning.drafting.grouping.formation_plan import FormationPart, formation_plan
from sequencer.planning.drafting.grouping.standing_room import standing_room
from sequencer.planning.drafting.grouping.where_to_stand import fitting_formations, group_walk
from sequencer.timing.tempo import TempoMap

NAMES = ("Ash", "Bo", "Cy", "Di")
TEMPO = TempoMap.steady(120.0, beats=400)
PARTS = tuple(
    FormationPart(label=label, start=32.0 * k, end=32.0 * k + 32.0, loudness=loud, walk=16.0)
    for k, (label, loud) in enumerate(
        [("verse", 0.2), ("refrain", 0.95), ("verse", 0.2), ("refrain", 0.95), ("end", 0.6)]
    )
)


@pytest.fixture(scope="module")
def formations():
    room = standing_room(
        Venue(stage=rectangle(16, 11)),
        reach=1.3,
        girth=0.0,
        audience=0.0,
        required=Requirements(),
    )
    return fitting_formations(NAMES, [1.3] * 4, required=0.3, room=room)


def planned(formations, *, parts=PARTS, walking=0.9):
    return formation_plan(
        parts, formations, walking=dict.fromkeys(NAMES, walking), required=0.3, tempo=TEMPO
    )


def test_everybody_is_seen_and_every_walk_is_clear_and_slow_enough(formations) -> None:
    steps = planned(formations)
    assert steps is not None
    assert [step.start for step in steps] == [part.start for part in PARTS]
    for step in steps:
        assert not step.formation.hidden
    for before, after in pairwise(steps):
        walk = group_walk(before.formation.spots, after.formation.spots, dict.fromkeys(NAMES, 0.9))
        assert walk.longest > 0
        assert walk.nearest >= 0.3
        assert 0 < after.beats <= 16
        assert walk.longest * 15 / 8 * 2.0 / after.beats <= TravelLimits().speed + 1e-9
    assert steps[0].beats == 0


def test_parts_that_return_stand_alike_and_the_loud_ones_in_front_shapes(formations) -> None:
    steps = planned(formations)
    assert steps[0].formation == steps[2].formation
    assert steps[1].formation == steps[3].formation
    assert steps[1].formation.name in {"line", "wedge"}
    assert steps[0].formation.name in {"circle", "diamond", "face to face"}


def test_nobody_walks_to_the_same_shape_a_little_wider(formations) -> None:
    alike = tuple(
        FormationPart(label="ab"[k % 2], start=p.start, end=p.end, loudness=0.7, walk=16.0)
        for k, p in enumerate(PARTS)
    )
    staggers = [each for each in formations if each.name == "stagger"]
    assert len(staggers) > 1
    steps = planned(staggers, parts=alike)
    assert {step.beats for step in steps} == {0}
    for before, after in pairwise(planned(formations, parts=alike)):
        assert after.beats == 0 or before.formation.name != after.formation.name


def test_a_wider_reach_on_walks_leaves_wider_formations_or_none(formations) -> None:
    wide = planned(formations, walking=1.25)
    if wide is not None:
        for before, after in pairwise(wide):
            walk = group_walk(
                before.formation.spots, after.formation.spots, dict.fromkeys(NAMES, 1.25)
            )
            assert walk.longest == 0 or walk.nearest >= 0.3
    # so wide that even standing still on the way would be too near: only staying is left
    stay = planned(formations, walking=5.0)
    assert stay is not None
    assert len({step.formation.name for step in stay}) == 1
    assert {step.beats for step in stay} == {0}


def test_without_time_to_walk_all_stay(formations) -> None:
    hurried = tuple(
        FormationPart(label=p.label, start=p.start, end=p.end, loudness=p.loudness, walk=0.0)
        for p in PARTS
    )
    steps = planned(formations, parts=hurried)
    assert len({id(step.formation) for step in steps}) == 1


def test_whoever_is_hidden_is_so_for_short_parts_alone(formations) -> None:
    from dataclasses import replace

    covered = [replace(f, hidden=(("Ash", "Bo"),)) for f in formations]
    assert planned(covered) is None
    short = tuple(replace(p, end=p.start + 16.0) for p in PARTS)
    assert planned(covered, parts=short) is not None
    assert planned([]) is None
    assert planned(formations, parts=()) is None
