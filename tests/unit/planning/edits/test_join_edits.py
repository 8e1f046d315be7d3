"""Joins mended in the show file: cheapest change first, comments kept, the rest of the show unmoved."""

import pytest

from sequencer.planning.edits.join_edits import failing
from sequencer.planning.mending import mended_dance
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

HEAD = """\
# A show with comments.
title: Long
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-6, -9], [6, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.4 m}}  # short poi
formations:
  alone:
    spots: {Ash: {at: [0, 4]}}
staging:
  - {formation: alone, from: 1.1}
"""
SONG = even_song(480, tempo=100)


def stage(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), SONG)


def mend(timeline):
    text = HEAD + timeline
    mended = mended_dance(text, "s.yaml", SONG)
    assert failing(stage(mended.text)) == [] or mended.left
    return mended


def test_a_clean_show_is_left_alone():
    text = HEAD + "timeline:\n  - {from: 3.1, pattern: toroid, beats: 8, timing: together}\n"
    mended = mended_dance(text, "s.yaml", SONG)
    assert mended.text == text
    assert mended.done == mended.left == ()


def test_an_odd_build_is_mended_at_no_cost():
    mended = mend(
        """\
timeline:
  # the first build
  - {from: 3.1, pattern: toroid, with: {lobes: 3}, beats: 3, timing: together}  # odd
  - {pattern: toroid, with: {lobes: 3}, beats: 6, timing: together}
"""
    )
    assert mended.left == ()
    assert len(mended.done) == 1
    for comment in ("# A show with comments.", "# short poi", "# the first build", "# odd"):
        assert comment in mended.text
    after = stage(mended.text).blocks
    assert [(b.start, b.end) for b in after] == [(8, 11), (11, 17)]


def test_a_link_is_an_entry_of_its_own_and_moves_nothing():
    mended = mend(
        """\
timeline:
  - {from: 3.1, pattern: windmill, beats: 8}  # high
  - {pattern: corkscrew, beats: 8}  # flat
  - {from: 8.1, pattern: static-spin, beats: 4}
"""
    )
    assert mended.left == ()
    assert "link: true" in mended.text
    assert "# high" in mended.text
    assert "# flat" in mended.text
    blocks = stage(mended.text).blocks
    assert [b.link for b in blocks] == [False, True, False, False]
    assert [b.start for b in blocks if not b.link] == [8, 16, 28]


def test_a_phrase_is_mended_inside():
    mended = mend(
        """\
timeline:
  - {from: 3.1, phrase: turns, repeat: 4}
phrases:
  turns:
    - {pattern: pro-bend-3, beats: 3, timing: together}
"""
    )
    assert mended.left == ()
    assert "phrase: turns, repeat: 4" in mended.text
    assert mended.text.count("pattern: pro-bend-3") == 1, (
        "mended in the phrase, for every time it is danced"
    )


def test_a_shift_is_written():
    mended = mend(
        """\
timeline:
  - {from: 3.1, pattern: static-spin, beats: 4}
  - {pattern: static-spin, shift: 0.5, beats: 4}
"""
    )
    assert mended.left == ()
    assert len(mended.done) == 1


def test_what_cannot_be_mended_is_told():
    """A burn that is too long, in a song with one section and a dance of one block: nowhere to put it out."""
    text = """\
timeline:
  - {from: 1.1, pattern: static-spin, beats: 32}
fire:
  fuel: kerosene
  burn: {time: 10 s, measured: true}
  flame: 0.3 m
  lit: [{who: Ash, from: 1.1, until: 9.1}]
"""
    mended = mend(text)
    assert mended.done == ()
    assert any(words.startswith("Ash, 1.1: burns-out; tried") for words in mended.left)
    assert mended.text == HEAD + text


@pytest.fixture(scope="module")
def long_timeline():
    """Twenty-five blocks in four rounds, three odd builds among them."""
    rows = [
        "timeline:",
        "  - {from: 3.1, pattern: static-spin, beats: 8, timing: together}  # opens",
    ]
    rounds = [
        "  - {pattern: extension, beats: 8, cycle: 1, timing: together}",
        "  - {pattern: antispin-flower-4, beats: 8, timing: together}",
        "  - {pattern: toroid, with: {lobes: LOBES}, beats: BEATS, timing: together}  # build N",
        "  - {pattern: toroid, with: {lobes: 4}, beats: 8, timing: together}",
        "  - {pattern: two-beat-weave, beats: 8}",
        "  - {pattern: three-beat-weave, beats: 9}",
    ]
    for n in range(4):
        lobes, beats = (3, 3) if n in (0, 1, 3) else (4, 8)
        whole = "\n".join(rounds).replace("LOBES", str(lobes)).replace("BEATS", str(beats))
        rows.append(whole.replace("build N", f"build {n}"))
    return "\n".join(rows) + "\n"


def test_a_long_show_with_three_odd_builds_comes_out_clean(long_timeline):
    text = HEAD + long_timeline
    show = stage(text)
    assert len(show.blocks) >= 25
    kinds = [meeting.judged().verdict.kind for meeting in failing(show)]
    assert kinds.count("wrong way round") >= 3

    mended = mended_dance(text, "s.yaml", SONG)

    assert mended.left == ()
    assert failing(stage(mended.text)) == []
    for n in range(4):
        assert f"# build {n}" in mended.text
    assert "# opens" in mended.text
    again = mended_dance(mended.text, "s.yaml", SONG)
    assert again.text == mended.text
