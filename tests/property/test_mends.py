"""Mends found with everything looked up are those found from nothing, to the last letter.

Reference: the same file mended with nothing kept, neither in memory nor on disk.
"""

import random

import pytest

from sequencer.planning.mending import mended_spacing
from sequencer.planning.mends.space_mends import words_for
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.nothing_kept import nothing_kept
from tests.songs import even_song

SONG = even_song(24)
SHOW = """\
title: Three
track: {{file: song.ogg}}
venue:
  stage: {{shape: rectangle, width: 12 m, depth: 8 m}}
  audience: [{{line: [[-6, -9], [6, -9]]}}]
cast:
  - {{name: Ash, stature: 1.7, prop: {{tether: 0.45}}}}
  - {{name: Birch, stature: 1.6, prop: {{tether: 0.4}}}}
  - {{name: Cedar, stature: 1.8, prop: {{tether: 0.45}}}}
formations:
  near: {{spots: {{Ash: {{at: [-2, 4]}}, Birch: {{at: [{birch:.2f}, 4]}}, Cedar: {{at: [3, {cedar:.1f}]}}}}}}
staging:
  - {{formation: near, from: 1.1}}
timeline:
  - {{who: [Ash, Birch], from: 2.1, pattern: {one}, cycle: 2, beats: 4, timing: together}}
  - {{who: Cedar, from: 2.1, pattern: {two}, cycle: 1, beats: 4, shift: {shift}}}
"""


def drawn(seed):
    draw = random.Random(seed)  # noqa: S311 (no secret)
    return SHOW.format(
        birch=draw.uniform(-0.9, -0.5),
        cedar=draw.uniform(3.0, 5.0),
        one=draw.choice(["extension", "static-spin"]),
        two=draw.choice(["static-spin", "two-beat-weave"]),
        shift=draw.choice([0, 0.5]),
    )


def found_in(text):
    show = staged(show_from_document(parse_document(text, "s.yaml")), SONG)
    mended = mended_spacing(text, "s.yaml", SONG)
    return words_for(show), mended


@pytest.mark.parametrize("seed", range(2))
def test_mends_looked_up_are_those_found_from_nothing(seed):
    text = drawn(seed)
    with nothing_kept():
        anew = found_in(text)
        again = found_in(text)  # with what the first has left in memory
    assert again == anew
    assert anew[1].done, "something is mended"
    assert anew[0], "and offered in words"
