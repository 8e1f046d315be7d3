"""What may come next. Reference: the check of joins on a show in which each pattern stands there."""

import pytest

from sequencer.checks.dance import joins
from sequencer.motion.trajectories.joining import VERDICTS
from sequencer.planning.next_patterns import next_patterns
from sequencer.planning.trying.restaging import restaged
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
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
  - {name: Birch, stature: 1.6, prop: {kind: staff}}
formations:
  apart: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4]}}}
staging: [{formation: apart, from: 1.1}]
timeline:
  - {who: Ash, from: 2.1, pattern: extension, beats: 8}
"""
OF_JOINS = {"does-not-join", "needs-a-link", "needs-a-shift", "wrong-way-round", "link-too-hard"}


def staged_show(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(64, tempo=100.0))


@pytest.fixture(scope="module")
def show():
    return staged_show(SHOW)


def codes_with(show, pattern):
    entry = {"who": "Ash", "pattern": pattern, "beats": 8}
    after = restaged(show, [], [(("timeline",), 1, entry)])
    return {one.code for one in joins.CHECK.outcome(after).findings} & OF_JOINS


def test_each_verdict_is_that_of_the_check(show):
    found = [one for one in next_patterns(show, ["Ash"], 12.0) if one.suits]
    assert len(found) > 50
    for one in found:
        codes = codes_with(show, one.pattern.name)
        assert (one.verdict == "joins") is (not codes), one.pattern.name
        assert (one.verdict == "wrong way round") is ("wrong-way-round" in codes), one.pattern.name
        assert (one.verdict == "cannot join") is ("does-not-join" in codes), one.pattern.name
    assert {"joins", "needs a link", "wrong way round"} <= {one.verdict for one in found}


def test_what_joins_comes_first_and_what_does_not_suit_last(show):
    found = next_patterns(show, ["Ash"], 12.0)
    places = [(not one.suits, VERDICTS.index(one.verdict)) for one in found]
    assert places == sorted(places)
    assert found[0].verdict == "joins"
    staff = next_patterns(show, ["Birch"], 12.0)
    assert {one.suits for one in staff} == {True, False}
    assert all("staff" in one.pattern.props for one in staff if one.suits)


def test_where_nothing_stands_before_there_is_no_verdict(show):
    for found in (next_patterns(show, ["Ash"]), next_patterns(show, ["Birch"], 12.0)):
        assert {one.verdict for one in found} == {None}
        assert len(found) == len(show.book)


def test_somebody_who_is_not_there_is_refused(show):
    with pytest.raises(ValueError, match="'Cedar' is not in the cast"):
        next_patterns(show, ["Cedar"], 12.0)
