"""When both hands of a move are home."""

from math import inf

import pytest

from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.home_beats import common_beats, home_beats
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Home
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast: [{name: Ash, stature: 1.7, prop: {tether: 0.45}}]
patterns:
  odd build: {law: toroid, set: {lobes: 3, bend: pro}, cycle: 4}
timeline:
  - {from: 2.1, pattern: two-beat-weave, beats: 8}
  - {from: 6.1, pattern: odd build, beats: 8}
"""


def test_an_odd_build_is_home_after_two_cycles():
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(48))
    assert home_beats(show.dancers[0]) == {4: 2, 20: 8}


@pytest.mark.parametrize(
    ("periods", "beats"),
    [((2, 2), 2), ((4, 2), 4), ((4, 6), 12), ((2.5, 1.5), 7.5), ((2, inf), None), ((1, 2**0.5), None), ((), None)],
)  # fmt: skip
def test_hands_are_home_together_after_whole_rounds_of_both(periods, beats):
    assert common_beats(*periods) == beats
