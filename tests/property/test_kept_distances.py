"""Distances after an edit of one performer, where all that did not change is kept, against a search from nothing.

Reference: the same search with nothing kept; every number is compared to its last digit.
"""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.checks.distances.keeping_clear import clearance
from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.posture import Posture
from sequencer.geometry.prisms import plane
from sequencer.geometry.regions import AudienceEdge, Post, Region, Scenery, Venue
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.fixtures import encounters
from sequencer.motion.clearance.grid import cells
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.timing.tempo import TempoMap
from tests.nothing_kept import nothing_kept

BEATS = 34.0
TEMPO = TempoMap.steady(120, beats=64)
STAGE = Region(outline=((-1.0, 0.0), (4.0, 0.0), (4.0, 6.0), (-1.0, 6.0)))
POLE = Scenery(
    name="pole",
    region=Region(outline=((0.9, 4.9), (1.1, 4.9), (1.0, 5.1))),
    height=2.0,
    combustible=False,
)
VENUE = Venue(
    stage=STAGE,
    audience=(AudienceEdge(line=((-9.0, -5.0), (9.0, -5.0))),),
    scenery=(POLE,),
    posts=(Post(name="Ivy", at=(4.5, 3.0)),),
)


def walked(dancer, draw):
    """One place dragged, on a show of several."""
    k = draw.integers(0, len(dancer.floor.moves) + 1)
    x, y = draw.uniform(-0.8, 0.8, 2).round(2)
    if k == 0:
        return replace(dancer, floor=replace(dancer.floor, place=(float(x), float(y))))
    moves = list(dancer.floor.moves)
    at = moves[k - 1].place
    through = ((float(at[0] + 1), float(at[1] + y)),) if draw.random() < 0.5 else ()
    moves[k - 1] = replace(
        moves[k - 1], place=(float(at[0] + x), float(at[1] + y)), through=through
    )
    return replace(dancer, floor=replace(dancer.floor, moves=tuple(moves)))


def danced(dancer, draw):
    """A block cut out of a side's only law, and started at another moment of it."""
    side = sorted(dancer.trajectories)[draw.integers(0, 2)]
    (span, *_) = dancer.trajectories[side].spans
    low = float(draw.integers(2, 46)) / 2
    high = low + float(draw.integers(2, 12))
    spans = (
        replace(span, end=low),
        replace(span, start=low, end=high, origin=float(draw.uniform(0, 4))),
        replace(span, start=high, end=600.0),
    )
    return replace(dancer, trajectories={**dancer.trajectories, side: Trajectory(spans)})


def lit(dancer, draw):
    low = float(draw.uniform(0, 24))
    return replace(dancer, lit=((low, low + float(draw.uniform(1, 9))),))


def deviating(dancer, draw):
    low = round(float(draw.uniform(0, 24)), 1)
    own = HandDeviation(low, low + float(draw.uniform(1, 9)), float(draw.uniform(0, 0.2)))
    return replace(dancer, deviation={"left": (own,)})


def leaning(dancer, draw):
    low = round(float(draw.uniform(1, 24)), 1)
    held = HeldPosture(low, low + 3.0, Posture(turn=float(draw.uniform(0.1, 0.3)), lean=0.04))
    upright = HeldPosture(low + 4.5, low + 5.0, Posture())
    return replace(dancer, carriage=Carriage(body=dancer.body, held=(held, upright)))


EDITS = (walked, walked, danced, danced, lit, deviating, leaning)


def numbers(cast):
    """All that is found of a cast, without rounding."""
    found = approaches(cast, 0.5, BEATS, required=0.6)
    grid = cells(cast, 0.5, BEATS)
    floor = encounters(
        cast, grid, (plane(top=0.0),), measure="wicks", required=np.full(len(cast), 0.3)
    )
    post = encounters(cast, grid, POLE.prisms, measure="parts", required=np.full(len(cast), 0.2))
    return [
        value.tolist()
        for each in (found, floor, post)
        for value in (
            each.distance, each.at, each.part, each.spans.group, each.spans.start, each.spans.end,
        )
    ]  # fmt: skip


def said(cast):
    """All that the check says of them."""
    requirements = Requirements(performers=0.6, scenery=0.2, floor=0.3, post=0.2)
    found = clearance(cast, TEMPO, VENUE, requirements, start=0.0, end=BEATS)
    return found.findings, found.clearances, found.things


def same(one, other):
    return all(
        np.array_equal(np.array(a, float), np.array(b, float), equal_nan=True)
        for a, b in zip(one, other, strict=True)
    )


@pytest.mark.parametrize("seed", range(4))
def test_an_edit_of_one_performer_finds_what_a_search_from_nothing_finds(dance, seed):
    draw = np.random.default_rng(seed)
    cast = dance.random_cast(3, seed=seed, beats=int(BEATS), spacing=2.0)
    numbers(cast)
    k = draw.integers(0, len(cast))
    cast[k] = EDITS[draw.integers(0, len(EDITS))](cast[k], draw)
    kept = numbers(cast)
    with nothing_kept():
        assert same(kept, numbers(cast))


@pytest.mark.parametrize(("first", "then"), [(1.0, 0.7), (0.7, 1.0), (np.inf, 0.8)])
def test_another_requirement_finds_what_a_search_from_nothing_finds(dance, first, then):
    """It decides which cells are searched, so what was found for one says nothing on another."""
    cast = dance.random_cast(3, seed=0, beats=32, spacing=3.0)
    approaches(cast, 0.5, 32.0, required=first)
    kept = approaches(cast, 0.5, 32.0, required=then)
    with nothing_kept():
        anew = approaches(cast, 0.5, 32.0, required=then)
    assert np.array_equal(kept.distance, anew.distance)
    assert np.array_equal(kept.at, anew.at)
    assert np.array_equal(kept.spans.start, anew.spans.start)


@pytest.mark.parametrize("seed", range(2))
def test_the_check_says_what_a_check_from_nothing_says(dance, seed):
    draw = np.random.default_rng(seed)
    cast = dance.random_cast(3, seed=seed, beats=int(BEATS), spacing=2.0)
    said(cast)
    k = draw.integers(0, len(cast))
    cast[k] = EDITS[draw.integers(0, len(EDITS))](cast[k], draw)
    kept = said(cast)
    with nothing_kept():
        assert kept == said(cast)
