import numpy as np

from sequencer.tasks.spacing_mending import _bounded, _staged, mended_spacing
from sequencer.timing.song import Section, Song

SONG = Song(
    track="song.ogg", sha256="0" * 64, duration=24.0, tempo=120.0, metre=4,
    beats=tuple(float(t) for t in 0.5 * np.arange(48)),
    downbeats=tuple(float(t) for t in 2.0 * np.arange(12)),
    sections=(Section(start=0.0, end=24.0, label="A"),),
)  # fmt: skip
SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 8 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: &poi {tether: 0.45}}
  - {name: Birch, stature: 1.7, prop: *poi}
formations:
  close:  # too close on purpose
    FORMATION
staging:
  - {formation: close, from: 1.1}
timeline:
  - {from: 3.1, pattern: extension, cycle: 2, beats: 24, timing: together}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{from: 1.1, until: 11.1}]
"""
SPOTS = "spots: {Ash: {at: [-1, 4]}, Birch: {at: [APART, 4]}}"


def mended(formation):
    return mended_spacing(SHOW.replace("FORMATION", formation), "s.yaml", SONG)


def test_spots_are_moved_until_nobody_is_too_close():
    spaced = mended(SPOTS.replace("APART", "0.9"))

    assert spaced.left == ()
    assert len(spaced.done) >= 1
    assert "moved" in spaced.done[0]
    assert spaced.done[0].endswith("in close")
    assert "# too close on purpose" in spaced.text
    again = mended_spacing(spaced.text, "s.yaml", SONG)
    assert again.done == ()
    assert again.text == spaced.text


def test_what_is_roomy_is_left_alone():
    spaced = mended(SPOTS.replace("APART", "3"))

    assert (spaced.done, spaced.left) == ((), ())
    assert spaced.text == SHOW.replace("FORMATION", SPOTS.replace("APART", "3"))


def test_named_shapes_are_told_not_moved():
    spaced = mended("shape: line\n    centre: [0, 4]\n    spacing: 1.9")

    assert spaced.done == ()
    assert spaced.left[0].startswith("Ash and Birch, ")


def test_a_move_never_brings_anyone_too_near_to_something_else():
    """Birch could go upstage but for the edge, Ash downstage but for the fence: both aside, then."""
    text = SHOW.replace("FORMATION", SPOTS.replace("APART", "0.9")).replace(
        "audience: [{line: [[-7, -9], [7, -9]]}]",
        "audience: [{line: [[-30, -6.3], [30, -6.3]]}]",
    )
    spaced = mended_spacing(text, "s.yaml", SONG)
    show = _staged(spaced.text, "s.yaml", SONG)

    assert _bounded(show) <= _bounded(_staged(text, "s.yaml", SONG))
