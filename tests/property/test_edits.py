"""A show that is changed step by step says the same as one staged and checked from nothing, to the last digit.

Reference: the same file, with nothing kept: neither an earlier staging, nor results in memory or on disk. More
sequences, on a larger show: `python benchmarks/edits.py`.
"""

import random

import pytest

from sequencer import kept
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import checks
from sequencer.checks.suite import checked, reported
from sequencer.errors import InputError
from sequencer.planning.open_show import OpenShow
from sequencer.planning.trying.restaging import changed_values
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import Document, parse_document
from sequencer.staging.timeline import staged
from tests.next_process import next_process
from tests.nothing_kept import nothing_kept
from tests.songs import even_song

SONG = even_song(44)
SHOW = """\
title: Three
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
  scenery: [{name: post, outline: [[-0.3, 9], [0.3, 9], [0.3, 9.6], [-0.3, 9.6]], height: 3 m}]
  fuel_station: [12, 12]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
  - {name: Cedar, stature: 1.8, prop: {tether: 0.45}}
formations:
  wide: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [4, 4]}}}
  deep: {spots: {Ash: {at: [-3, 3]}, Birch: {at: [0, 6]}, Cedar: {at: [3, 3]}}}
staging:
  - {formation: wide, from: 1.1}
  - {formation: deep, from: 5.1, beats: 8}
phrases:
  both:
    - {pattern: extension, cycle: 2, beats: 6, timing: together}
    - {pattern: two-beat-weave, beats: 6}
timeline:
  - {who: [Ash, Birch], from: 2.1, phrase: both}
  - {who: Cedar, from: 2.1, pattern: static-spin, cycle: 1, beats: 8}
  - {who: Cedar, from: 5.1, pattern: two-beat-weave, beats: 6}
  - {who: Cedar, rest: 6}
  - {who: [Ash, Birch, Cedar], from: 8.1, phrase: both}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{who: Ash, from: 2.1, until: 6.1}, {who: Cedar, from: 3.1, until: 9.1}]
crew:
  - {name: Ivy, post: [-8, 6], duty: spotter}
rules: {}
"""
KINDS = {  # of an edit: where, and what may be written there
    "block": [(("timeline", 1, "beats"), [4, 6, 8, 10]), (("timeline", 2, "pattern"), ["two-beat-weave", "extension", "pro-bend-4", "anti-bend-3"]),
              (("timeline", 1, "shift"), [0, 0.5, 1]), (("timeline", 2, "cycle"), [2, 3, 4])],
    "stop": [(("timeline", 3), [{"who": "Cedar", "rest": 6}, {"who": "Cedar", "rest": 4}, {"who": "Cedar", "hold": 4},
                                {"who": "Cedar", "accent": "5.2"}, {"who": "Cedar", "link": True, "beats": 6}])],
    "parameters": [(("timeline", 1, "with"), [{}, {"hand_radius": 0.1}, {"across": 0, "ahead": 0, "up": 0}]),
                   (("phrases", "both", 0, "with"), [{}, {"hand_radius": 0.35, "across": 0, "ahead": 0, "up": 0}])],
    "phrase used twice": [(("phrases", "both", 0, "beats"), [4, 6]), (("phrases", "both", 0, "timing"), ["together", "split"]),
                          (("phrases", "both", 1, "pattern"), ["two-beat-weave", "static-spin"])],
    "spot": [(("formations", "wide", "spots", "Birch", "at"), [[0, 4], [-1.5, 4], [0.5, 3.5]]),
             (("formations", "deep", "spots", "Ash", "at"), [[-3, 3], [-1.2, 5]])],
    "facing": [(("formations", "deep", "spots", "Cedar", "facing"), [0, 45, 180])],
    "way": [(("staging", 1, "via"), [{"Ash": [[-4, 3.5]]}, {"Birch": [[0.5, 5]]}]), (("staging", 1, "beats"), [6, 8, 10])],
    "tempo": [(("track", "corrections"), [{"metre": 4}, {"shift": 0.05}, {"metre": 3}])],
    "prop": [(("cast", 0, "prop", "tether"), [0.45, 0.5]), (("cast", 2, "prop"), [{"tether": 0.45}, "staff", "fan", "hoop"])],
    "performer": [(("cast", 1, "stature"), [1.6, 1.65])],
    "lit span": [(("fire", "lit", 0, "until"), ["6.1", "5.3"]), (("fire", "lit", 1, "from"), ["3.1", "4.1"])],
    "flame": [(("fire", "flame"), [0.3, 0.4])],
    "crew": [(("crew", 0, "post"), [[-8, 6], [-4, 8], [6, 6]])],
    "venue": [(("venue", "audience", 0, "line"), [[[-7, -9], [7, -9]], [[-7, -2], [7, -2]]]),
              (("venue", "stage", "width"), ["14 m", "8 m"])],
    "who": [(("timeline", 1, "who"), ["Cedar", "Ash"]), (("timeline", 4, "who"), [["Ash", "Birch", "Cedar"], ["Birch", "Ash"]])],
    "mirror": [(("timeline", 4, "mirror"), ["Birch", "all", []])],
    "fuel": [(("fire", "fuel"), ["kerosene", "lamp-oil"])],
    "limits": [(("limits",), [{}, {"hand_speed": 3}, {"own_body": "8 cm"}])],
    "weather": [(("weather",), [{}, {"gusts": 6}])],
    "title": [(("title",), ["Three", "Trio"])],
    "rules": [(("rules", "between_performers"), [0.5, 1.5])],
}  # fmt: skip


def from_nothing(document, values):
    """The report of a show with some values, staged and checked with nothing kept."""
    fresh = Document(document.file, values, document.places, document.keys)
    with nothing_kept():
        return checked(staged(show_from_document(fresh), SONG))


def in_next_process(document, values):
    """The report of a show with some values, checked by a process that finds on disk what earlier ones kept."""
    fresh = Document(document.file, values, document.places, document.keys)
    with next_process(), kept.shelf(document.file):
        return checked(staged(show_from_document(fresh), SONG))


def edit(planned, values, kind, draw):
    """The values of an open show after an edit of a kind, drawn at random; as they were if it is refused."""
    path, choices = draw.choice(KINDS[kind])
    change = (path, draw.choice(choices))
    try:
        planned.change([change])
    except InputError:  # a block runs into the next one
        return values
    return changed_values(values, [change])


def said_of(planned):
    """The report that an open show's answers make, put in the order of the checks."""
    outcomes = {each.check: each.outcome for each in planned.answers(flown=False, mends=False)}
    whole = sum((outcomes[check.name] for check in checks() if not check.on_request), Outcome())
    return reported(planned.show, whole)


def same(said, anew):
    """Whether two reports say the same, finding by finding, to the last digit."""
    return (
        said.findings == anew.findings
        and said.clearances == anew.clearances
        and said.not_checked == anew.not_checked
    )


def sequence(seed, first):
    """A show after a few edits drawn at random, looked at after each, not always to the end: the report, and the values."""
    draw = random.Random(seed)  # noqa: S311  # no secret
    planned, values = OpenShow(first), first.read.document.values
    for kind in draw.choices(sorted(KINDS), k=draw.randint(2, 5)):
        for _ in zip(
            range(draw.randint(0, 18)), planned.answers(flown=False, mends=False), strict=False
        ):
            pass
        values = edit(planned, values, kind, draw)
    return said_of(planned), values


def test_an_edit_of_every_kind_says_what_a_check_from_nothing_says():
    draw = random.Random(5)  # noqa: S311  # no secret
    planned = OpenShow(first_show())
    values = planned.show.read.document.values
    for kind in KINDS:
        values = edit(planned, values, kind, draw)
        said = said_of(planned)
        if kind in ("phrase used twice", "tempo", "prop", "rules"):  # from nothing takes a second
            assert same(said, from_nothing(planned.show.read.document, values)), kind


def first_show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), SONG)


@pytest.mark.parametrize("seed", [1])
def test_a_sequence_of_edits_ends_as_a_check_from_nothing(seed):
    show = first_show()
    in_next_process(show.read.document, show.read.document.values)
    said, values = sequence(seed, show)
    anew = from_nothing(show.read.document, values)
    assert same(said, anew)
    assert same(in_next_process(show.read.document, values), anew)


def test_what_is_written_in_the_file_decides_what_is_offered_even_if_the_dance_is_the_same():
    """An extension with too long a tether: with its place left open other tethers fit than with the place written."""
    long = SHOW.replace("stature: 1.8, prop: {tether: 0.45}", "stature: 1.5, prop: {tether: 0.8}")
    planned = OpenShow(staged(show_from_document(parse_document(long, "s.yaml")), SONG))
    values = planned.show.read.document.values
    said_of(planned)
    before = planned.show.dancers[2].trajectories
    place = {"hand_radius": 0.35, "across": 0.0, "ahead": 0.0, "up": 0.0}
    change = (("phrases", "both", 0, "with"), place)
    after = planned.change([change]).dancers[2].trajectories

    assert all(after[side].content == own.content for side, own in before.items())
    assert same(
        said_of(planned), from_nothing(planned.show.read.document, changed_values(values, [change]))
    )
