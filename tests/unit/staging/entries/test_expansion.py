"""The timeline written out: phrases, repeats, canon, mirror, overlaps, the track's end."""

import pytest

from sequencer.errors import InputError
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.expansion import expanded
from sequencer.staging.entries.moments import Moments
from tests.songs import even_song

HEAD = """\
title: Three
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-6, -6], [6, -6]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.55}}
  - {name: Birch, stature: 1.7, prop: {tether: 0.55}}
  - {name: Cedar, stature: 1.7, prop: {tether: 0.55}}
phrases:
  swing: [{pattern: weave, beats: 4}, {pattern: orbit, cycles: 2, mirrored: true}]
  long: [{phrase: swing, repeat: 2}, {link: true, beats: 2}]
timeline:
"""


def song(seconds=60.0):
    sections = {0.0: "verse", 16.5: "refrain", 32.6: "verse"}
    return even_song(110, start=0.5, duration=seconds, sections=sections)


def blocks(timeline):
    read = show_from_document(parse_document(HEAD + timeline, "s.yaml"))
    heard = song()
    return expanded(
        read, Moments(read, heard, heard.tempo_map()), lambda _name, _parameters: 3.0
    ).blocks


def spans(found, who="Ash"):
    return [(b.start, b.end, b.title, b.mirrored) for b in found if b.who == who]


def test_blocks_follow_each_other_when_no_moment_is_given():
    found = blocks("  - {pattern: weave, beats: 8}\n  - {pattern: orbit, cycles: 2}\n")
    assert spans(found, "Cedar") == [(0, 8, "weave", False), (8, 14, "orbit", False)]


def test_phrases_open_with_their_repeats_and_mirrors():
    found = blocks("  - {who: Ash, phrase: long, from: 2.1, mirror: Ash}\n")
    assert spans(found) == [
        (4, 8, "weave", True), (8, 14, "orbit", False),
        (14, 18, "weave", True), (18, 24, "orbit", False),
        (24, 26, "link", True),
    ]  # fmt: skip


def test_a_repeated_pattern_goes_on_rather_than_starting_again():
    assert spans(blocks("  - {pattern: orbit, cycles: 1, repeat: 3}\n")) == [(0, 9, "orbit", False)]


def test_a_canon_follows_the_order_of_who():
    found = blocks("  - {who: [Cedar, Ash], pattern: weave, beats: 8, canon: 4}\n")
    assert spans(found, "Cedar")[0][:2] == (0, 8)
    assert spans(found, "Ash")[0][:2] == (4, 12)
    assert spans(found, "Birch") == []


def test_sections_give_moments_and_snap_to_the_beat():
    found = blocks("  - {pattern: weave, from: refrain, until: end of refrain}\n")
    assert spans(found) == [(32, 64, "weave", False)]


def test_one_hand_may_spin_while_the_other_does_something_else():
    found = blocks(
        "  - {who: Ash, pattern: weave, hands: left, beats: 8}\n"
        "  - {who: Ash, from: 1.1, pattern: orbit, hands: right, beats: 4}\n"
    )
    assert [sorted(b.hands) for b in found] == [["left"], ["right"]]


@pytest.mark.parametrize(
    ("timeline", "where", "says"),
    [
        ("  - {pattern: a, beats: 8}\n  - {pattern: b, from: 2.4, beats: 4}\n", 15,
         r"Ash's b starts at 2\.4, while a from 1\.1 on \(line 14 of the file\) runs to 3\.1"),
        ("  - {pattern: a, from: 27.1, beats: 90}\n", 14, r"runs to 49\.3, the track ends at 30\.4"),
        ("  - {pattern: a, from: 80.1, beats: 1}\n", 14, "80.1 is outside the track"),
        ("  - {pattern: a, from: chorus, beats: 1}\n", 14, "no section 'chorus'"),
        ("  - {pattern: a, from: verse, beats: 1}\n", 14, "no section 'verse'; it has 2 of them: write verse 1 or verse 2"),
        ("  - {pattern: a, from: 3.5, beats: 1}\n", 14, "bar 3 has 4 beats"),
        ("  - {pattern: a, from: 3.1, until: 2.1}\n", 14, "not after the start"),
        ("  - {pattern: a}\n", 14, "no length"),
        ("  - {phrase: swing, beats: 3}\n", 14, "as long as its steps"),
        ("  - {phrase: swing, until: 9.1}\n", 14, "lasts 10 beats, but until allows 32"),
    ],
)  # fmt: skip
def test_what_does_not_fit_is_named(timeline, where, says):
    with pytest.raises(InputError, match=says) as caught:
        blocks(timeline)
    assert caught.value.place.line == where


def test_a_phrase_hands_its_note_to_the_block_that_opens_it():
    found = blocks("  - {who: Ash, from: 1.1, phrase: long, note: go}")

    assert [b.note for b in found] == ["go", "", "", "", ""]


@pytest.mark.parametrize(
    "key", ["shift: 1", "timing: together", "cycle: 4", "with: {way: backward}"]
)
@pytest.mark.parametrize("thing", ["phrase: swing", "link: true, beats: 2"], ids=["phrase", "link"])
def test_what_only_a_pattern_has_is_refused_elsewhere(thing, key):
    with pytest.raises(InputError, match="write it next to the pattern"):
        blocks(f"  - {{who: Ash, from: 1.1, {thing}, {key}}}")
