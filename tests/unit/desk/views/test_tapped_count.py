"""What a person is told of their taps, and whether what is offered makes the count go with them."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.desk.views.tapped_count import level_after, tapped_count
from sequencer.show.model import CorrectionRecord
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.counted_song import as_counted
from tests.songs import even_song

SHOW = """\
title: One
track: {{file: song.ogg, corrections: {corrections}}}
venue:
  stage: {{shape: rectangle, width: 14 m, depth: 9 m}}
  audience: [{{line: [[-7, -9], [7, -9]]}}]
cast:
  - {{name: Ash, stature: 1.7, prop: {{tether: 0.45}}}}
timeline: []
"""


@pytest.fixture
def song():
    return even_song(96, start=1.0, duration=50.0)


def counted_by(song, values):
    """The song with corrections as a file says them; and their record."""
    said = ", ".join(f"{key}: {_yaml(own)}" for key, own in values.items() if own is not None)
    read = show_from_document(parse_document(SHOW.format(corrections="{" + said + "}"), "s.yaml"))
    return as_counted(read, song)[0], read.show.track.corrections


def _yaml(value):
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {own}" for key, own in value.items()) + "}"
    return str(value)


def taps_on(beats, *, early=0.0, sway=0.004):
    return (np.asarray(beats) - early + np.random.default_rng(2).normal(0, sway, len(beats))).tolist()  # fmt: skip


def nearest(taps, beats):
    beats = np.asarray(beats)
    return [float(np.abs(beats - tap).min()) for tap in taps]


@pytest.mark.parametrize("before", [{}, {"tempo": "double"}, {"shift": "40 ms", "metre": 3}])
def test_what_is_offered_puts_the_beats_where_the_taps_are(song, before):
    """Each way of tapping, on a count with and without corrections: after the offer every tap is on a beat of its level."""
    now, record = counted_by(song, before)
    beats = np.asarray(now.beats)
    gap = float(np.median(np.diff(beats)))
    downbeat = now.beats.index(now.downbeats[0])
    ways = {
        "early": beats[8:40] - 0.06, "between": beats[8:40] + gap / 2,
        "second": beats[downbeat + 8 : downbeat + 56 : 2], "odd": beats[downbeat + 9 : downbeat + 57 : 2],
    }  # fmt: skip
    if before.get("tempo") != "double":
        ways["twice"] = np.sort(np.concatenate([beats[8:40], beats[8:40] + gap / 2]))
    for way, row in ways.items():
        found = tapped_count(taps_on(row), now, record, 0.01)
        offer = found["offers"][0]
        after, _ = counted_by(song, {**before, **offer["values"]})
        assert max(nearest(row, after.beats)) < 0.02, way
        wanted = {"second": 2, "odd": 2, "twice": 0.5}.get(way, 1)
        assert after.tempo == pytest.approx(now.tempo / wanted, rel=0.01), way


def test_halving_counts_from_the_ones_also_after_a_pickup(song):
    """The first one is the second beat of the track: who taps on the ones and threes taps on what halving leaves."""
    late = replace(song, downbeats=song.beats[1::4])
    offer = tapped_count(taps_on(late.beats[9:57:2]), late, CorrectionRecord(), 0.01)["offers"][0]
    assert offer["values"] == {"tempo": "half"}
    after, _ = counted_by(late, offer["values"])
    assert max(nearest(late.beats[9:57:2], after.beats)) < 1e-6


def test_taps_at_another_tempo_offer_a_steady_count(song):
    taps = taps_on(2.0 + 0.61 * np.arange(40), early=0.0)
    found = tapped_count(taps, song, CorrectionRecord(), 0.01)
    assert found["match"] is None
    assert found["fit"]["tempo"] == pytest.approx(60 / 0.61, rel=1e-3)
    after, _ = counted_by(song, {**found["offers"][0]["values"]})
    assert max(nearest(taps, after.beats)) < 0.02
    assert min(nearest(after.downbeats, [taps[0]])) < 0.02
    assert after.beats[0] < 0.61
    assert after.beats[-1] > 50.0 - 0.61


def test_strokes_set_the_phase_of_a_steady_count(song):
    strokes = 2.0 + 0.61 * np.arange(60)
    heard = replace(song, onsets=tuple(strokes), onset_strengths=(1.0,) * 60)
    found = tapped_count(taps_on(strokes[:40], early=0.05), heard, CorrectionRecord(), 0.01)
    offer = found["offers"][0]
    assert "strokes" in offer["words"]
    after, _ = counted_by(song, offer["values"])
    assert max(nearest(strokes[:40], after.beats)) < 0.012


def test_who_taps_on_the_beat_is_told_so_and_offered_nothing(song):
    found = tapped_count(taps_on(song.beats[8:40], early=0.012), song, CorrectionRecord(), 0.01)
    assert found["offers"] == []
    said = " ".join(found["words"])
    assert "every beat of the count as it is" in said
    assert "12 ms early" in said or "11 ms early" in said or "13 ms early" in said
    assert "sway" in said
    assert "does not say how late" not in said


def test_what_is_not_known_is_said(song):
    found = tapped_count(taps_on(song.beats[8:40]), song, CorrectionRecord(), None)
    assert any("does not say how late its sound comes out" in words for words in found["words"])
    wild = np.sort(np.random.default_rng(1).uniform(2, 40, 30)).tolist()
    found = tapped_count(wild, song, CorrectionRecord(), 0.01)
    assert found["offers"] == []
    assert any("start over" in words for words in found["words"])


def test_taps_outside_the_track_are_none(song):
    with pytest.raises(ValueError, match="tap at least 8"):
        tapped_count([*range(60, 90)], song, CorrectionRecord())


@pytest.mark.parametrize(
    ("now", "wanted", "level"),
    [(None, "half", "half"), (None, "double", "double"), ("half", "double", None), ("double", "half", None),
     ("half", "half", "none"), ("double", "double", "none")],
)  # fmt: skip
def test_levels(now, wanted, level):
    assert level_after(now, wanted) == level
