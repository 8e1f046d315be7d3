"""How full a stretch is among all stretches of the song."""

import numpy as np
import pytest
from scipy.stats import rankdata

from sequencer.errors import InputError
from sequencer.planning.drafting.gaps.draft_ground import ground_of, shares_below
from tests.songs import even_song


def test_places_are_mean_ranks():
    """Outside reference: scipy.stats.rankdata, average ranks."""
    rng = np.random.default_rng(5)
    values = rng.integers(0, 9, 40) / 10
    assert shares_below(values, values) == pytest.approx((rankdata(values) - 1) / 39)


def test_one_stretch_alone_has_the_place_that_it_has_in_the_whole_song():
    song = [0.1, 0.5, 0.66, 0.2, 0.9]
    assert shares_below([0.66], song)[0] == shares_below(song, song)[2] == 0.75


def test_an_even_song_is_in_the_middle_throughout():
    assert shares_below([0.4] * 5, [0.4] * 5).tolist() == [0.5] * 5
    assert shares_below([0.4], [0.4]).tolist() == [0.5]


def test_a_stretch_between_two_of_the_song_lies_between_their_places():
    assert shares_below([0.3, -1.0, 2.0], [0.2, 0.4, 0.6]) == pytest.approx([0.25, 0.0, 1.0])


SHOW = """\
title: T
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast: [{name: Ash, stature: 1.7, prop: poi}]
timeline:
  - {from: 1.1, pattern: two-beat-weave, beats: 8, drafted: true}
  - {from: 5.1, pattern: windmill, beats: 8, drafted: true}
  - {from: 13.1, pattern: two-beat-weave, beats: 8}
"""


def ground(span):
    return ground_of(SHOW, "s.yaml", even_song(96, sections="A"), span=span)


def test_only_a_stretch_is_drafted_and_what_stands_outside_stays():
    own = ground(("4.3", "9.1"))
    assert own.is_part
    assert own.span == (14.0, 32.0)
    assert own.keep == (0,)  # drafted before, but outside
    assert [each["from"] for each in own.values["timeline"]] == ["1.1", "13.1"]
    slots = own.slots()
    assert slots[0].start == 16  # from 14 on two beats are left of an eight: too few
    assert slots[-1].end == 32
    assert not own.drafts_formations


def test_a_stretch_without_room_says_so():
    with pytest.raises(InputError, match=r"from 6\.1 to 6\.3 there is no gap of 6 beats or more"):
        ground(("6.1", "6.3")).slots()
    with pytest.raises(InputError, match="has no section"):
        ground(("6.1", "nowhere"))
    with pytest.raises(InputError, match="there is no gap"):
        ground(("9.1", "4.1")).slots()


WINGS = """\
title: T
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast: [{name: Ash, stature: 1.7, prop: poi}, {name: Bo, stature: 1.7, prop: poi}]
formations: {pair: {spots: {Ash: {at: [-2, 4]}, Bo: {at: [2, 4]}}}}
staging: [{formation: pair, from: 1.1}]
timeline: []
entrances:
  - {who: Bo, comes_on: 5.1, beats: 8, side: stage left}
  - {who: Bo, goes_off: 17.1, beats: 8, side: stage left}
"""


def test_the_others_dance_on_while_somebody_is_off_the_stage_or_on_the_way():
    own = ground_of(WINGS, "s.yaml", even_song(96, sections="A"))
    slots = own.slots()
    assert (slots[0].start, slots[-1].end) == (0, 95)
    off = own.off(slots)
    assert {name for each in off.values() for name in each} == {"Bo"}
    on = [slot for k, slot in enumerate(slots) if k not in off]
    assert min(slot.start for slot in on) >= 24  # on at beat 16, there at 24
    assert max(slot.end for slot in on) <= 64
    assert own.left_open() == ()
    assert own.who_stops(0, 8) == [{"who": ["Ash"]}]
    assert own.who_stops(32, 40) == [{}]


def test_nothing_is_drafted_while_nobody_is_on_the_stage():
    both = WINGS.replace("who: Bo", "who: all")
    own = ground_of(both, "s.yaml", even_song(96, sections="A"))
    slots = own.slots()
    assert (slots[0].start, slots[-1].end) == (24, 64)
    assert own.off(slots) == {}
    first, last = own.left_open()
    assert first == "0:00.0 to 0:12.0: nobody is on the stage then"
    assert last.endswith(": nobody is on the stage then")
    assert own.who_stops(0, 8) == []
    with pytest.raises(InputError, match=r"s\.yaml:9:3.* anybody is on the stage"):
        ground_of(both, "s.yaml", even_song(96, sections="A"), span=("1.1", "6.1")).slots()


def test_a_draft_of_formations_wants_spots_for_those_who_come_on():
    text = WINGS.replace("staging: [{formation: pair, from: 1.1}]\n", "")
    with pytest.raises(InputError, match="no formation says where anybody stands"):
        ground_of(text, "s.yaml", even_song(96, sections="A")).slots()
