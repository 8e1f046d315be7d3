import math
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.dance.travel import CHECK, TravelLimits, peaks, travel
from sequencer.geometry.bodies import Body
from sequencer.motion.performers.walks import Move
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.timing.tempo import TempoMap
from tests.songs import even_song

TEMPO = TempoMap.steady(120, beats=64)
WALKED = """\
title: Walked
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast: [{name: Ada, stature: 1.70 m, prop: poi}]
formations:
  left: {spots: {Ada: {at: [-2, 4]}}}
  right: {spots: {Ada: {at: [2, 4]}}}
staging:
  - {formation: left, from: 1.1}
  - {formation: right, from: 5.1, beats: 16}
"""


def walker(dance, length, *, beats=8, facing=0.0, through=()):
    move = Move(start=4, end=4 + beats, place=(length, 3), facing=facing, through=through)
    return dance.dancer("Ada", (0, 3), moves=(move,)), move


def test_peak_of_a_straight_walk(dance):
    """Minimum jerk: 15/8 of the mean speed; 3 m in 4 s peaks at 1.406 m/s."""
    ada, move = walker(dance, 3.0)

    speed, turn = peaks(ada, move, TEMPO)
    assert_allclose(speed, 15 / 8 * 3 / 4, rtol=0.006)
    assert speed >= 15 / 8 * 3 / 4
    assert_allclose(turn, 0, atol=1e-9)
    assert travel([ada], TEMPO).findings == ()


def test_too_fast_a_walk_is_told_with_the_beats_it_needs(dance):
    ada, _ = walker(dance, 6.0)
    (finding,) = travel([ada], TEMPO).findings

    assert (finding.code, finding.severity) == ("walks-too-fast", "warn")
    assert finding.start == 2.0
    beats = float(finding.remedies[0].split()[3])
    assert travel([walker(dance, 6.0, beats=beats)[0]], TEMPO).findings == ()
    assert travel([walker(dance, 6.0, beats=beats - 1)[0]], TEMPO).findings


def test_too_fast_a_turn_is_told(dance):
    ada, move = walker(dance, 0.0, facing=2 * math.pi, beats=4)
    (finding,) = travel([ada], TEMPO).findings

    assert finding.code == "turns-too-fast"
    assert_allclose(peaks(ada, move, TEMPO)[1], 15 / 8 * math.pi, rtol=0.006)
    assert travel([ada], TEMPO, TravelLimits(turn_rate=7.0)).findings == ()


def test_curves_are_never_told_too_slow(dance):
    ada, move = walker(dance, 2.0, through=((0.2, 5.0), (1.8, 1.0)), facing=1.0)
    stand = ada.floor.at(np.linspace(4, 12, 400_001))

    speed, turn = peaks(ada, move, TEMPO)
    true = np.hypot(*stand.place_rate.T).max() * 2
    assert true <= speed <= true * 1.01
    assert np.abs(stand.facing_rate).max() * 2 <= turn


def test_the_fastest_beat_counts(dance):
    """Half the walk at 60, half at 240 beats a minute: the speed is that of the faster half."""
    times = np.concatenate([np.arange(9.0), 8 + 0.25 * np.arange(1, 20)])
    ada, move = walker(dance, 2.0)
    slow = peaks(ada, move, TempoMap.steady(60))[0]

    assert_allclose(peaks(ada, move, TempoMap(times))[0], 4 * slow, rtol=0.01)


@pytest.mark.parametrize("given", [{"speed": 0}, {"turn_rate": float("nan")}])
def test_absurd_limits_are_refused(given):
    with pytest.raises(ValueError, match=next(iter(given))):
        TravelLimits(**given)


def seated(dancer):
    return replace(dancer, body=Body(stature=1.7, seated=True), carriage=None)


def test_a_wheelchair_that_moves_while_props_are_held_is_noted(dance):
    """Once a performer; nobody who stands, stays, or holds nothing."""
    ada, move = walker(dance, 3.0)
    later = Move(start=20, end=28, place=(3, 3), facing=1.0)
    rolling = seated(dance.dancer("Ada", (0, 3), moves=(move, later)))
    (note,) = travel([rolling], TEMPO).findings

    assert (note.code, note.severity, note.who) == ("wheels-without-hands", "note", ("Ada",))
    assert "at 2.1, and 1 more time, while" in note.message
    assert "time," not in travel([seated(ada)], TEMPO).findings[0].message
    assert travel([ada], TEMPO).findings == ()
    assert travel([seated(dance.dancer("Ada", (0, 3)))], TEMPO).findings == ()
    assert travel([replace(seated(ada), props={}, trajectories={})], TEMPO).findings == ()


def test_who_sits_rolls(dance):
    ada, _ = walker(dance, 6.0)

    assert "Ada rolls at up to" in travel([seated(ada)], TEMPO).findings[0].message


@pytest.mark.parametrize(
    ("said", "notes"),
    [
        ("", []),
        (", path: straight", []),
        (", via: {Ada: [[0, 5]]}", []),
        (", path: curved, via: {Ada: [[0, 5]]}", []),
        (", path: curved", ["is written as curved, but leads through no points"]),
        (", path: straight, via: {Ada: [[0, 5]]}", ["is written as straight, but Ada walks through points"]),
    ],
)  # fmt: skip
def test_a_way_that_is_written_otherwise_than_its_points_is_noted_and_danced_by_them(said, notes):
    def show(said):
        text = WALKED.replace("beats: 16", f"beats: 16{said}")
        return staged(show_from_document(parse_document(text, "s.yaml")), even_song(beats=64))

    found = [each for each in CHECK.run(show(said)).findings if each.code == "path-says-nothing"]
    assert [each.severity for each in found] == ["note"] * len(notes)
    assert all(words in each.message for words, each in zip(notes, found, strict=True))
    without = said.replace(", path: straight", "").replace(", path: curved", "")
    assert show(said).dancers[0].floor == show(without).dancers[0].floor
