"""What a draft fills, and what of the show stays."""

from dataclasses import replace

import pytest

from sequencer.errors import InputError
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.planning.drafting.gaps.on_stage import LeftOpen
from sequencer.planning.drafting.gaps.skipped import Jump, Skipped, around_jump, jumps_of
from tests.songs import even_song

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


def test_the_others_dance_on_while_somebody_is_lit_and_that_one_misses_a_phrase_of_it():
    own = ground_of(WINGS, "s.yaml", even_song(96, sections="A"))
    whole = own.slots()
    (at,) = (slot for slot in whole if slot.start == 32)
    lit = replace(own, left=(LeftOpen(33.0, 37.0, ("Bo",)),))
    slots = lit.slots()
    assert at.end == 48
    assert [(s.start, s.end) for s in slots if 32 <= s.start < 48] == [(32, 40), (40, 48)]
    assert (slots[0].start, slots[-1].end) == (whole[0].start, whole[-1].end)
    assert sum(s.beats for s in slots) == sum(s.beats for s in whole)
    resting = {slots[k].start for k, who in lit.not_dancing(slots).items() if "Bo" in who}
    gone = {slots[k].start for k, who in lit.off(slots).items() if "Bo" in who}
    assert resting - gone == {32}
    assert lit.left_open() == ("0:16.5 to 0:18.5: Bo does not dance while being lit or put out",)


def test_nobody_dances_while_all_are_lit():
    own = ground_of(WINGS, "s.yaml", even_song(96, sections="A"))
    left = (LeftOpen(33.0, 41.0, ("Bo",)), LeftOpen(33.0, 41.0, ("Ash",)))
    slots = replace(own, left=left).slots()
    assert [(s.start, s.end) for s in slots if 16 <= s.start < 48] == [(16, 32), (41, 48)]


def jumping(at, beats=64, by=0.0):
    """A song in which one beat lasts twice as long as the others; all moved by so many seconds, as by a correction."""
    song = even_song(beats, sections="A")
    moved = [each + 0.5 * (k > at) + by for k, each in enumerate(song.beats)]
    return replace(song, beats=tuple(moved), downbeats=tuple(moved[::4]), duration=32.0)


@pytest.mark.parametrize(
    ("at", "by", "edge"),
    [
        (0, 0.0, "0:00.0 to "),
        (0, -0.2, "0:00.0 to "),
        (62, 0.0, " to 0:32.0 "),
        (62, 0.3, " to 0:32.0 "),
    ],
)
def test_what_is_open_at_an_end_of_the_song_is_told_within_it(at, by, edge):
    text = SHOW.split("timeline:", maxsplit=1)[0] + "timeline: []\n"
    own = ground_of(text, "s.yaml", jumping(at, by=by))
    (jump,) = jumps_of(own.base.tempo)
    (said,) = replace(own, skipped=(around_jump(jump, own.base.tempo),)).left_open()
    assert edge in said
    assert "-" not in said.split(": ")[0]
    assert "(0." not in said


@pytest.mark.parametrize(
    ("part", "said"),
    [
        ({}, "of this song"),
        ({"section": "A"}, "of section 'A'"),
        ({"span": ("5.1", "21.1")}, "from 5.1 to 21.1"),
    ],
)
def test_a_count_that_leaves_nothing_to_dance_is_refused_by_its_jumps_whoever_goes_off(part, said):
    own = ground_of(
        WINGS.replace("who: Bo", "who: all"), "s.yaml", even_song(96, sections="A"), **part
    )
    one, other = Jump(10.0, 11.0, 1.0, 0.5), Jump(40.0, 41.0, 1.0, 0.5)
    slow = [Skipped(20.0, 40.0), Skipped(40.0, 90.0)]
    for spans, times in (
        ([Skipped(0.0, 20.0, one), *slow], "once"),
        ([Skipped(0.0, 20.0, one), Skipped(2.0, 20.0, one), *slow, Skipped(40.0, 96.0, other)], "2 times"),
    ):  # fmt: skip
        with pytest.raises(InputError) as refused:
            replace(own, skipped=tuple(spans)).slots()
        assert refused.value.code == "count-jumps"
        assert f"the count {said} jumps {times}, nothing was found" in refused.value.what
    with pytest.raises(InputError) as refused:
        replace(own, skipped=(Skipped(0.0, 96.0),)).slots()
    assert refused.value.code == "nothing-to-fill"
