"""Dancers taken from an earlier staging: only those whose dance is the same, and then the same to the digit.

Reference: the same show staged from nothing.
"""

from dataclasses import fields

import numpy as np
import pytest

from sequencer import kept
from sequencer.errors import InputError
from sequencer.planning.trying.restaging import changed_values, restaged
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SONG = even_song(24)
SHOW = """\
title: Three
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
  - {name: Cedar, stature: 1.8, prop: poi}
formations:
  wide:
    spots: {Ash: {at: [-4, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [4, 4]}}
staging:
  - {formation: wide, from: 1.1}
patterns:
  slow: {law: orbit, set: {ratio: 1}}
phrases:
  both:
    - {pattern: extension, cycle: 2, beats: 4, timing: together}
timeline:
  - {who: [Ash, Birch], from: 2.1, phrase: both}
  - {who: Cedar, from: 2.1, pattern: slow, cycle: 2, beats: 4}
  - {who: Birch, from: 4.1, pattern: two-beat-weave, cycle: 2, beats: 4}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{who: Ash, from: 1.1, until: 4.1}]
"""
EVERYONE = {"Ash", "Birch", "Cedar"}
EDITS = {  # what is changed, and whose dance the change can touch
    "a spot": (("formations", "wide", "spots", "Ash", "at"), [-3.5, 4.5], set()),
    "a title": (("title",), "Four", set()),
    "a prop": (("cast", 1, "prop", "tether"), 0.55, {"Birch"}),
    "a stature": (("cast", 0, "stature"), 1.72, {"Ash"}),
    "a block": (("timeline", 2, "cycle"), 4, {"Birch"}),
    "a block's beats": (("timeline", 1, "beats"), 8, {"Cedar"}),
    "a phrase of two": (("phrases", "both", 0, "timing"), "split", {"Ash", "Birch"}),
    "a parameter": (("timeline", 1, "with"), {"hand_radius": 0.2}, {"Cedar"}),
    "a shift": (("timeline", 1, "shift"), 1, {"Cedar"}),
    "a note": (("timeline", 1, "note"), "smile", set()),
    "a hand": (("timeline", 1, "hands"), "left", {"Cedar"}),
    "a mirror": (("timeline", 0, "mirror"), ["Birch"], {"Birch"}),
    "a canon": (("timeline", 0, "canon"), 2, {"Birch"}),
    "who dances": (("timeline", 2, "who"), "Cedar", {"Birch", "Cedar"}),
    "a stop": (("timeline", 2), {"who": "Birch", "from": "4.1", "rest": 4}, {"Birch"}),
    "a hand without a prop": (
        ("cast", 1),
        {"name": "Birch", "stature": 1.6, "right": {"tether": 0.5}},
        {"Birch"},
    ),
    "a torque": (("limits",), {"torque": 2}, set()),
    "a burn": (("fire", "lit", 0, "until"), "4.3", {"Ash"}),
    "a fuel": (("fire", "flame"), 0.35, EVERYONE),
    "no fire": (("fire",), None, EVERYONE),
    "a limit within which hands fly": (("limits",), {"hand_acceleration": 60}, EVERYONE),
    "a pattern of the show": (("patterns", "slow", "set", "ratio"), 2, EVERYONE),
    "a tempo": (("track", "corrections"), {"shift": 0.05}, EVERYONE),
    "a metre": (("track", "corrections"), {"metre": 3}, EVERYONE),
}


@pytest.fixture(scope="module")
def before():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), SONG)


@pytest.mark.parametrize("name", EDITS)
def test_a_changed_show_is_that_staged_from_nothing(before, name):
    path, value, touched = EDITS[name]
    document = before.read.document
    values = changed_values(document.values, [(path, value)])
    after = restaged(before, [(path, value)])
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(kept, "_RECENT", {})  # no dancer, law or tempo of this process is taken
        anew = staged(
            show_from_document(type(document)(**{**_parts(document), "values": values})), SONG
        )
    beats = np.linspace(-1.0, 30.0, 200)
    taken = set()
    for old, one, two in zip(before.dancers, after.dancers, anew.dancers, strict=True):
        assert (one.name, one.lit, one.props, one.floor) == (
            two.name,
            two.lit,
            two.props,
            two.floor,
        )
        assert one.deviation == two.deviation
        for side, trajectory in one.trajectories.items():
            assert np.array_equal(trajectory.at(beats).hand, two.trajectories[side].at(beats).hand)
            assert np.array_equal(
                trajectory.at(beats).tether, two.trajectories[side].at(beats).tether
            )
            if trajectory is old.trajectories[side]:
                taken.add(one.name)
    assert taken == EVERYONE - touched
    for one, two in zip(_every_block(after), _every_block(anew), strict=True):
        assert _fields(one) == _fields(two)


def _every_block(show):
    return [*show.blocks, *show.stops]


def _fields(block):
    return {each.name: getattr(block, each.name) for each in fields(block)}


def test_a_cycle_left_open_follows_the_limits_though_its_step_is_the_same():
    """Reference: the same show staged from nothing."""
    text = SHOW.replace("two-beat-weave, cycle: 2,", "three-beat-weave,")
    first = staged(show_from_document(parse_document(text, "s.yaml")), SONG)
    after = restaged(first, [(("limits",), {"turns": 1.5})])
    slow = text + "limits: {turns: 1.5}\n"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(kept, "_RECENT", {})
        anew = staged(show_from_document(parse_document(slow, "s.yaml")), SONG)
    cycles = [[block.cycle for block in show.blocks] for show in (first, after, anew)]
    assert cycles[1] == cycles[2] != cycles[0]


def test_a_changed_step_leaves_the_blocks_of_the_others(before):
    """The same objects, so that their text and their fits are found again."""
    after = restaged(before, [(("timeline", 2, "shift"), 1)])
    same = [one is two for one, two in zip(before.blocks, after.blocks, strict=True)]
    assert same == [one.path != ("timeline", 2) for one in before.blocks]


def test_with_a_pattern_file_nothing_is_taken(before, tmp_path):
    (tmp_path / "more.yaml").write_text(
        "patterns: {wide: {law: orbit, set: {ratio: 1}}}\n", encoding="utf-8"
    )
    text = SHOW.replace("patterns:\n", "pattern_files: [more.yaml]\npatterns:\n")
    read = show_from_document(parse_document(text, str(tmp_path / "s.yaml")))
    first = staged(read, SONG)
    second = staged(read, SONG, before=first)
    for one, two in zip(first.dancers, second.dancers, strict=True):
        assert one.trajectories["right"] is not two.trajectories["right"]


def test_a_pattern_file_that_is_left_out_is_missed(tmp_path):
    (tmp_path / "more.yaml").write_text(
        "patterns: {wide: {law: orbit, set: {ratio: 1}}}\n", encoding="utf-8"
    )
    text = SHOW.replace("patterns:\n", "pattern_files: [more.yaml]\npatterns:\n").replace(
        "pattern: slow", "pattern: wide"
    )
    first = staged(show_from_document(parse_document(text, str(tmp_path / "s.yaml"))), SONG)
    with pytest.raises(InputError, match="pattern 'wide' is not known"):
        restaged(first, [(("pattern_files",), None)])


def _parts(document):
    return {name: getattr(document, name) for name in ("file", "values", "places", "keys")}


def test_a_changed_block_leaves_the_laws_of_the_others(before):
    """The same objects, so that what is known of them, bounds and keys, is found again; the changed one's is new."""
    path, value, _ = EDITS["a block"]
    after = restaged(before, [(path, value)])

    def laws(show):
        (birch,) = (dancer for dancer in show.dancers if dancer.name == "Birch")
        spans = birch.trajectories["right"].spans
        return [span.law for span in spans if span.kind == "block"]

    (first, second), (same, changed) = laws(before), laws(after)
    assert same is first
    assert changed is not second


def test_a_performer_of_whom_the_file_says_the_same_keeps_body_and_props(before):
    """As objects, by which links and reaches are known after an edit; new ones where the file says something else."""
    show = before
    held = {one.name: (one.body, one.props["left"]) for one in show.dancers}

    def after(*change):
        return {one.name: (one.body, one.props["left"]) for one in restaged(show, [change]).dancers}

    same = after(("timeline", 2, "cycle"), 4)
    assert all(same[name][k] is held[name][k] for name in EVERYONE for k in range(2))
    taller = after(("cast", 1, "stature"), 1.63)
    assert {name for name in EVERYONE if taller[name][0] is held[name][0]} == EVERYONE - {"Birch"}
    assert taller["Birch"][0].stature == 1.63
    brighter = after(("fire", "flame"), "0.5 m")
    assert brighter["Ash"][1].flame_reach > held["Ash"][1].flame_reach
