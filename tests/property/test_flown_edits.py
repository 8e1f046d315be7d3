"""A show changed step by step says as flown what one built anew says, to the last digit.

Reference: the same file with hands, slices, distances, touches, links and periods of this process built anew; searches are
known by all that they are given, and are not repeated.
"""

import random
from contextlib import contextmanager

import numpy as np
import pytest

from sequencer import kept
from sequencer.checks.suite import checked
from sequencer.errors import InputError
from sequencer.motion.trajectories.flown_path import hand_slices
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.planning.open_show import OpenShow
from sequencer.planning.trying.restaging import changed_values
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import Document, parse_document
from sequencer.staging.in_flight import flown_show as module
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.timeline import staged
from tests.next_process import next_process
from tests.songs import even_song

SONG = even_song(56)
SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.7, right: {tether: 0.45}}
formations:
  wide: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [2, 4]}}}
  deep: {spots: {Ash: {at: [-2, 3]}, Birch: {at: [2, 6], facing: 60}}}
staging:
  - {formation: wide, from: 1.1}
  - {formation: deep, from: 6.1, beats: 8}
timeline:
  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 8}
  - {who: Ash, from: 9.1, pattern: static-spin, cycle: 1, beats: 12}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{who: Ash, from: 2.1, until: 12.1}]
"""
KINDS = {
    "block": [(("timeline", 0, "beats"), [8, 10, 12]), (("timeline", 1, "beats"), [8, 12, 14])],
    "spot": [(("formations", "deep", "spots", "Birch", "at"), [[2, 6], [1, 5]])],
    "facing": [(("formations", "deep", "spots", "Ash", "facing"), [0, 90])],
    "walk": [(("staging", 1, "beats"), [8, 6])],
    "lit span": [(("fire", "lit", 0, "until"), ["12.1", "7.3"])],
    "limits": [(("limits",), [{}, {"hand_acceleration": 60}])],
    "title": [(("title",), ["Two", "Duo"])],
}  # fmt: skip


@contextmanager
def built_anew():
    """A context in which only searches are known."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(kept, "_RECENT", {})
        for room in (hand_slices, module):
            patch.setattr(room, "kept_on_disk", lambda _key, work, **_: work())
        patch.setattr(hand_slices, "known_on_disk", lambda _key, **_: ())
        yield


def staged_anew(document, values):
    fresh = Document(document.file, values, document.places, document.keys)
    return staged(show_from_document(fresh), SONG)


def same_paths(one, other):
    """Whether every hand of two shows flies the same splines."""
    pairs = [
        (dancer.trajectories[side], beside.trajectories[side])
        for dancer, beside in zip(one.staged.dancers, other.staged.dancers, strict=True)
        for side in dancer.trajectories
    ]
    assert any(isinstance(hand, FlownHand) for hand, _ in pairs)
    return all(
        np.array_equal(hand.head.coefficients, own.head.coefficients)
        and np.array_equal(hand.hand.coefficients, own.hand.coefficients)
        and np.array_equal(hand.pull, own.pull)
        for hand, own in pairs
        if isinstance(hand, FlownHand)
    )


def same(said, anew):
    return (
        said.findings == anew.findings
        and said.clearances == anew.clearances
        and said.not_checked == anew.not_checked
    )


@pytest.mark.parametrize("seed", range(3))
def test_edits_end_as_a_show_built_anew(seed):
    draw = random.Random(seed)  # noqa: S311  # no secret
    planned = OpenShow(staged(show_from_document(parse_document(SHOW, "s.yaml")), SONG))
    values = planned.show.read.document.values
    for kind in draw.choices(sorted(KINDS), k=3):
        path, choices = draw.choice(KINDS[kind])
        change = (path, draw.choice(choices))
        try:
            planned.change([change])
        except InputError:
            continue
        values = changed_values(values, [change])
        said = checked(planned.show, flown=True)
    document = planned.show.read.document
    with built_anew():
        show = staged_anew(document, values)
        anew = checked(show, flown=True)
        assert same_paths(flown_show(planned.show), flown_show(show))
    assert same(said, anew)
    for _ in range(2):  # the second finds on disk and on the shelf what the first has kept
        with next_process(), kept.shelf(document.file):
            later = staged_anew(document, values)
            assert same(checked(later, flown=True), anew)
            assert same_paths(flown_show(later), flown_show(show))
