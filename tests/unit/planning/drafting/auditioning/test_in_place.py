"""Moves in their places in a song whose beat sways."""

import numpy as np
import pytest

from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.auditioning.flights import grounded
from sequencer.planning.drafting.auditioning.in_place import MoveInPlace, strained, sways
from sequencer.planning.drafting.auditioning.passages import MoveLaws
from sequencer.planning.drafting.costing.auditions import _stages
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.timing.tempo import TempoMap
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 8 m, depth: 8 m}, audience: [{line: [[-8, -6], [8, -6]]}]}
cast: [{name: Ash, stature: 1.7, prop: poi}]
timeline: []
"""


def count(tempos):
    """A song whose beats have these tempos [beats/min]."""
    return TempoMap(np.concatenate([[0.0], np.cumsum(60.0 / np.array(tempos, dtype=float))]))


HOLDS_BACK = count([134.0] * 24 + [64.0] + [134.0] * 20)


@pytest.fixture(name="poi", scope="module")
def _poi():
    ground = ground_of(SHOW, "s.yaml", even_song(33, tempo=132.0, sections={0.0: "A"}))
    return MoveLaws(_stages(ground, [(64.0, 136.0)])[0][0])


def dances(start, end):
    return [
        MoveInPlace(
            move=DraftMove(
                pattern=name, timing="together", direction="same", cycle=cycle, usual=False
            ),
            start=start,
            end=end,
        )
        for name, cycle in (("wheel-antispin-4", 4.0), ("static-spin", 1.0))
    ]


def test_a_beat_sways_where_its_fastest_is_a_third_quicker_than_its_slowest():
    tempo = count([100.0] * 8 + [132.0] * 8 + [135.0] * 8)
    assert not sways(tempo, 0.0, 16.0)
    assert sways(tempo, 0.0, 24.0)
    assert not sways(tempo, 8.0, 24.0)


def test_of_more_than_one_person_somebody_is_strained_sooner():
    tempo = count([100.0] * 8 + [114.0] * 8 + [116.0] * 8)
    assert not sways(tempo, 0.0, 16.0, people=2)
    assert sways(tempo, 0.0, 24.0, people=2)
    assert not sways(tempo, 0.0, 24.0)


def test_what_flies_at_a_steady_tempo_may_strain_a_hand_where_the_song_holds_back(poi):
    """Both fly at every steady tempo; a hand that goes far has to hurry after a beat of twice the length, one that stands does not."""
    moves = [each.move for each in dances(0.0, 16.0)]
    assert grounded(moves, poi.stage) == ["", ""]
    far, still = strained(dances(16.0, 30.0), poi, HOLDS_BACK)
    assert far == "hand_acceleration"
    assert still == ""
    assert strained(dances(0.0, 14.0), poi, HOLDS_BACK) == [
        "",
        "",
    ]  # what comes later is not looked at
    # Where it lies in the song and how the song goes on does not matter.
    later = count([120.0] * 5 + [134.0] * 8 + [64.0] + [134.0] * 5 + [90.0] * 4)
    assert strained(dances(5.0, 19.0), poi, later)[0] == far
