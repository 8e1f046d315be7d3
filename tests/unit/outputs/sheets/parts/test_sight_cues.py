"""What a spotter sees and hears at a moment: walks, patterns that end, sections; never a bar.

120 beats a minute from second 0: a bar is 2 s. Two sections of 24 s.
"""

import pytest

from sequencer.outputs.sheets.parts.sight_cues import last_seen, section_words, sight_of
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: One lantern
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast: [{name: Wren, stature: 1.7 m, prop: {tether: 55 cm}}]
formations:
  left: {spots: {Wren: {at: [-2, 4]}}}
  right side: {spots: {Wren: {at: [2, 4]}}}
staging:
  - {formation: left, from: 1.1}
  - {formation: right side, from: 13.1, beats: 8}
phrases:
  opening: [{pattern: two-beat-weave, beats: 16}]
timeline:
  - {from: 1.1, phrase: opening}
  - {from: 7.1, pattern: static-spin, beats: 8}
"""


@pytest.fixture(scope="module")
def lantern():
    song = even_song(96, sections={0.0: "verse", 24.0: "verse"})
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), song)


def test_a_formation_is_walked_into_and_then_stood_in(lantern):
    """From 13.1, the first beat of the second verse, in eight beats: 4 s, a sixth of it."""
    assert sight_of(lantern, 48.0) == "they walk into “right side”, verse 2 starts"
    assert sight_of(lantern, 56.0) == "they stand in “right side”, early in verse 2"
    assert sight_of(lantern, 52.0) == "they are halfway into “right side”, early in verse 2"
    assert sight_of(lantern, 49.0) == "they are on the way into “right side”, verse 2 starts"


def test_without_a_walk_the_pattern_is_seen_and_in_stillness_only_the_song_is_heard(lantern):
    """The spin lasts from beat 24 to 32; nothing is danced after it."""
    assert sight_of(lantern, 24.0) == "during the static spin, halfway through verse 1"
    assert sight_of(lantern, 40.0) == "late in verse 1"


@pytest.mark.parametrize(
    ("second", "words"),
    [
        (24.0, "verse 2 starts"),
        (25.8, "verse 2 starts"),
        (26.0, "early in verse 2"),
        (36.0, "halfway through verse 2"),
        (43.0, "late in verse 2"),
        (47.0, "verse 2 ends"),
        (-1.0, ""),
        (48.5, ""),
    ],
)
def test_a_section_is_heard_by_its_parts(lantern, second, words):
    """Of 24 s, 8 % are 1.92 s; the middle is from 8.4 to 15.6 s."""
    assert section_words(lantern, 2 * second) == words


def test_the_pattern_that_ends_is_what_was_seen_last(lantern):
    assert last_seen(lantern, "Wren", 16.0) == "the opening ends"
    assert (
        last_seen(lantern, "Wren", 32.0)
        == last_seen(lantern, "Wren", 35.0)
        == "the static spin ends"
    )
    assert last_seen(lantern, "Wren", 36.5) == ""
    assert last_seen(lantern, "Wren", 0.0) == ""
