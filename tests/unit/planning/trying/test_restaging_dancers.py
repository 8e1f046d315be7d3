"""Two performers of a changed show, built without the others: as they are in the whole show, to the last digit.

Reference: the whole show staged again.
"""

from dataclasses import fields, replace

import numpy as np
import pytest

from sequencer.content_keys import content_key
from sequencer.errors import InputError
from sequencer.motion.clearance.nearest import closest
from sequencer.planning.trying.restaging import restaged, restaged_alone, restaged_dancers
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.nothing_kept import nothing_kept
from tests.songs import even_song

SONG = even_song(40)
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
  wide: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [4, 4]}}}
  deep: {spots: {Ash: {at: [-3, 3]}, Birch: {at: [0, 6]}, Cedar: {at: [3, 3]}}}
staging:
  - {formation: wide, from: 1.1}
  - {formation: deep, from: 4.1, beats: 8}
timeline:
  - {who: all, from: 2.1, pattern: extension, cycle: 2, beats: 8, timing: together}
  - {who: Birch, from: 4.1, pattern: two-beat-weave, cycle: 2, beats: 8}
  - {who: Ash, from: 5.1, pattern: static-spin, cycle: 1, beats: 8}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{who: Ash, from: 2.1, until: 6.1}, {who: Birch, from: 2.3, until: 5.1}]
"""
SPLIT = {
    "who": "Ash", "from": "2.1", "pattern": "extension", "cycle": 2, "beats": 8, "timing": "together",
    "shift": 0.5,
}  # fmt: skip
EDITS = {
    "shift": ([(("timeline", 1, "shift"), 0.5)], ()),
    "split": ([(("timeline", 0, "who"), ["Birch", "Cedar"])], [(("timeline",), 1, SPLIT)]),
    "tether": ([(("cast", 0, "prop"), {"tether": 0.4})], ()),
    "plane": ([(("timeline", 0, "with"), {"plane": "wheel"})], ()),
    "place": ([(("formations", "deep", "spots", "Ash", "at"), [-2, 3.5])], ()),
    "way": ([(("staging", 1, "via"), {"Birch": [[1, 5]]})], ()),
    "both": ([(("timeline", 1, "shift"), 1), (("staging", 1, "beats"), 6)], ()),
}


@pytest.fixture(scope="module")
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), SONG)


def content(dancer):
    parts = {side: own.content for side, own in dancer.trajectories.items()}
    return (
        dancer.name, dancer.floor, dancer.lit, dancer.props, dancer.deviation,
        content_key(dancer.body, parts, dancer.carriage),
    )  # fmt: skip


@pytest.mark.parametrize("name", EDITS)
def test_they_are_those_of_the_whole_show(show, name):
    changes, more = EDITS[name]
    with nothing_kept():
        whole = restaged(show, changes, more)
    for _ in range(2):  # found, then looked up
        pair = restaged_dancers(show, (0, 1), changes, more)
        assert [content(one) for one in pair] == [content(one) for one in whole.dancers[:2]]
    (last,) = restaged_dancers(show, (2,), changes, more)
    assert content(last) == content(whole.dancers[2])


@pytest.mark.parametrize("name", ["shift", "split", "tether", "plane"])
def test_around_a_beat_they_are_as_close_as_in_the_whole_show(show, name):
    """Ash and Birch dance from beat 4, and Birch two patterns in a row, which are blended around beat 12."""
    changes, more = EDITS[name]
    whole = restaged(show, changes, more).dancers[:2]
    for beat in (4.3, 7.0, 11.7):
        pair = restaged_dancers(show, (0, 1), changes, more, at=beat)
        found, expected = (closest(*each, [beat]) for each in (pair, whole))
        assert found.distance == expected.distance
        assert np.array_equal(found.point, expected.point)
    for beat in (11.8, 11.95, 12.0, 12.2, 12.3, 19.7):
        (birch,) = restaged_dancers(show, (1,), changes, more, at=beat)
        for one, two in zip(birch.stage_points([beat]), whole[1].stage_points([beat]), strict=True):
            assert np.array_equal(one, two)


@pytest.mark.parametrize("beat", [2.0, 4.2, 11.8, 14.0, 16.2, 23.8, 30.0])
def test_where_a_link_or_a_rest_decides_nothing_is_said(show, beat):
    assert restaged_dancers(show, (0, 1), *EDITS["shift"], at=beat) is None


def test_a_change_of_a_kept_song_or_floor_is_not_taken_for_another(show):
    """What is looked up is of the same dance, but stands where this show has it."""
    changes, more = EDITS["shift"]
    moved = restaged(show, EDITS["place"][0])
    first = restaged_dancers(show, (0,), changes, more)[0]
    second = restaged_dancers(moved, (0,), changes, more)[0]
    assert first.trajectories["left"] is second.trajectories["left"]
    assert (first.floor, second.floor) == (show.dancers[0].floor, moved.dancers[0].floor)
    faster = staged(show.read, even_song(40, tempo=100))
    third = restaged_dancers(faster, (0,), changes, more)[0]
    assert content(third) == content(restaged(faster, changes, more).dancers[0])


def test_a_change_that_does_not_fit_is_refused(show):
    with pytest.raises(InputError, match="give one of"):
        restaged_dancers(show, (0, 1), [(("timeline", 1, "until"), "2.1")])
    with pytest.raises(ValueError, match="there is no"):
        restaged_dancers(show, (0, 1), [(("timeline", 9, "shift"), 1)])


def vars_of(block):
    return {each.name: getattr(block, each.name) for each in fields(block)}


@pytest.mark.parametrize("name", [each for each in EDITS if each not in {"place", "way"}])
@pytest.mark.parametrize("fly", [True, False])
def test_one_alone_is_as_in_the_whole_show_and_so_are_all_blocks(show, name, fly):
    steps = [EDITS[name], ([(("timeline", 0, "shift"), 0.25)], ())]
    with nothing_kept():
        first = restaged(show, *EDITS[name], fly=fly)
        whole = restaged(first, *steps[1], fly=fly)
    alone = restaged_alone(show, steps, "Birch", fly=fly)
    assert [each.name for each in alone.dancers] == ["Birch"]
    standing = replace(alone.dancers[0], floor=whole.dancers[1].floor)
    assert content(standing) == content(whole.dancers[1])
    assert [vars_of(each) for each in alone.blocks] == [vars_of(each) for each in whole.blocks]
    assert (alone.stops, alone.lit) == (whole.stops, whole.lit)
    assert (alone.read.document.values, alone.tempo) == (whole.read.document.values, whole.tempo)


def test_a_fault_of_a_walk_is_told_where_this_file_has_it(show):
    """The dance is looked up, as another file dances the same; its lines are not."""
    shift = (("timeline", 1, "shift"), 0.75)
    lines = []
    for more in ("", "\n\n"):
        text = SHOW.replace("timeline:", f"{more}timeline:").replace("staging:", f"{more}staging:")
        own = staged(show_from_document(parse_document(text, "s.yaml")), SONG)
        restaged(own, [shift])
        with pytest.raises(InputError) as refused:
            restaged(own, [shift, (("staging", 1, "from"), "99.1")])
        lines.append(refused.value.place.line)
    assert lines[1] == lines[0] + 2


def test_nobody_is_alone_in_a_show_without_its_file(show):
    with pytest.raises(ValueError, match="does not remember its file"):
        restaged_alone(replace(show, read=None), [], "Ash")


def test_at_an_instant_own_points_are_those_of_many_beats_wherever_somebody_stands(show):
    beats = np.array([5.0, 9.3, 12.01])
    for dancer in (show.dancers[1], replace(show.dancers[1], floor=show.dancers[2].floor)):
        many = dancer.stage_points(beats)
        for k, beat in enumerate(beats):
            for _ in range(2):  # found, then looked up
                for one, all_of_them in zip(dancer.stage_points([beat]), many, strict=True):
                    assert np.abs(one[:, 0] - all_of_them[:, k]).max() < 1e-14
            assert dancer.stage_points(beat)[0].shape == (10, 3)


def test_other_props_or_another_dance_have_points_of_their_own(show):
    own = show.dancers[1].stage_points([13.3])[0]
    (longer,) = restaged_dancers(show, (1,), [(("cast", 1, "prop"), {"tether": 0.6})])
    (later,) = restaged_dancers(show, (1,), EDITS["shift"][0])
    for other in (longer, later):
        with nothing_kept():
            expected = other.stage_points([13.3])[0]
        assert np.array_equal(other.stage_points([13.3])[0], expected)
        assert not np.allclose(own, expected)
