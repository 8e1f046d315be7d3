"""When one performer of a changed show says something of the whole, and which results hold in both.

A verdict of one performer that is not the whole show's would pass over a change that mends, or call one free of harm.
Reference: the whole show staged again, with nothing handed on.
"""

from dataclasses import replace

import pytest

from sequencer.checks.dance import feasible
from sequencer.planning.trying.one_performer import (
    changed_alone,
    faults_alone,
    of_the_dance,
    share_results,
)
from sequencer.planning.trying.restaging import restaged
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.results import OfPerformer
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
formations:
  wide: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [4, 4]}}}
staging: [{formation: wide, from: 1.1}]
timeline:
  - {who: all, from: 2.1, pattern: extension, cycle: 2, beats: 8}
  - {who: Birch, from: 4.1, pattern: extension, cycle: 8, beats: 8}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{who: Ash, from: 2.1, until: 6.1}]
"""
SLACK = (("timeline", 1, "cycle"), 8)  # so slow that tethers hang
MENDED = (("timeline", 1, "cycle"), 2)
SHIFTED = (("timeline", 1, "shift"), 0.5)  # other paths in the same beats, danced as exactly
BLOCK = {"who": "Birch", "from": "7.1", "pattern": "extension", "beats": 4}
LIT = {"who": "Birch", "from": "2.1", "until": "3.1"}


@pytest.fixture(scope="module")
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(40))


OF_THE_DANCE = [
    [([MENDED], ())],
    [((), [(("timeline",), 1, BLOCK)])],
    [([(("phrases", "waltz", 0, "beats"), 4)], ()), ([MENDED], ())],
    [],
]
OF_MORE = [
    [([(("fire", "lit", 0, "until"), "4.1")], ())],
    [([(("cast", 1, "prop"), {"tether": 0.4})], ())],
    [([(("staging", 0, "from"), "1.2")], ())],
    [((), [(("fire", "lit"), 1, LIT)])],  # put in
    [([MENDED, (("fire", "lit", 0, "until"), "4.1")], ())],  # beside the dance
    [([MENDED], ()), ([], [(("fire", "lit"), 1, LIT)])],  # in a later step
]


@pytest.mark.parametrize("steps", OF_THE_DANCE)
def test_a_change_of_the_dance_may_be_settled_by_one(steps):
    assert of_the_dance(steps)


@pytest.mark.parametrize("steps", OF_MORE)
def test_a_change_of_anything_else_is_for_the_whole_show(show, steps):
    """Who burns, who puts them out and where they stand concerns the others too."""
    assert not of_the_dance(steps)
    assert changed_alone(show, steps, "Birch", fly=False) is None


def test_a_change_of_the_dance_is_looked_at_alone(show):
    alone = changed_alone(show, [([MENDED], ())], "Birch", fly=False)
    assert [each.name for each in alone.dancers] == ["Birch"]
    assert changed_alone(show, [([MENDED], ())], "Nobody", fly=False) is None


def given(show):
    """A show with one result about each performer, and one about the whole."""
    own = replace(show)
    for dancer in own.dancers:
        own.results[OfPerformer("something", dancer.name)] = f"of {dancer.name}"
    own.results["whole"] = "of the whole"
    return own


def shared(known, show):
    """About whom results of one show are taken for results of another."""
    share_results(known, show)
    assert "whole" not in show.results
    return {key.who for key in show.results if getattr(key, "what", None) == "something"}


def test_results_are_shared_of_those_who_dance_the_same(show):
    known = given(show)
    assert shared(known, restaged(known, [])) == {"Ash", "Birch"}
    other = restaged(known, [SHIFTED])
    assert other.dancers[1].deviation == known.dancers[1].deviation
    assert shared(known, other) == {"Ash"}  # Birch dances something else


def test_what_another_dance_was_found_to_be_is_not_taken_for_this_one(show):
    """Birch hangs slack as the show is, and no longer once the block is quicker: told after the other was."""
    faults = faults_alone(feasible.CHECK, changed_alone(show, [([SLACK], ())], "Birch", fly=False))
    slack = {each.code for each in faults if each.who == ("Birch",)}
    assert "tether-slack" in slack
    known = replace(show)
    faults_alone(feasible.CHECK, known)
    after = restaged(known, [MENDED])
    share_results(known, after)
    own = [each for each in faults_alone(feasible.CHECK, after) if each.who == ("Birch",)]
    fresh = restaged(show, [MENDED])
    assert own == [each for each in faults_alone(feasible.CHECK, fresh) if each.who == ("Birch",)]
    assert "tether-slack" not in {each.code for each in own}


def test_results_are_not_shared_where_a_hand_may_stray_further(show):
    """The same paths, danced less exactly: how close a prop comes is another figure."""
    known = given(show)
    ash, birch = known.dancers
    first, *others = birch.deviation["left"]
    further = first._replace(size=first.size + 0.1)
    strays = replace(birch, deviation={**birch.deviation, "left": (further, *others)})
    assert strays.trajectories is birch.trajectories
    assert shared(known, replace(known, dancers=(ash, strays))) == {"Ash"}
    alike = replace(birch, deviation=dict(birch.deviation))
    assert shared(known, replace(known, dancers=(ash, alike))) == {"Ash", "Birch"}


def test_what_a_show_knows_already_stays(show):
    known, own = given(show), replace(show)
    own.results[OfPerformer("something", "Ash")] = "found here"
    share_results(known, own)
    assert own.results[OfPerformer("something", "Ash")] == "found here"
    assert own.results[OfPerformer("something", "Birch")] == "of Birch"
