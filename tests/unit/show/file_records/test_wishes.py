import re

import pytest

from sequencer.errors import InputError
from sequencer.show.file_records.wishes import Repertoire, Wishes, meant_by, words_for_nothing
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.wish_faults import wish_faults
from sequencer.staging.timeline import staged
from tests.songs import even_song

FAMILIES = {
    "two-beat-weave": "weave",
    "antispin-flower-3": "orbit",
    "inspin-flower-2": "orbit",
    "weave": "x",
}
SHOW = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 8 m, depth: 8 m}, audience: [{line: [[-8, -6], [8, -6]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: poi, CAST}
wishes: {WISHES}
"""


def read(cast="level: 3", wishes=""):
    text = SHOW.replace("CAST", cast).replace("WISHES", wishes)
    return show_from_document(parse_document(text, "s.yaml"))


def test_a_word_means_a_family_then_a_pattern_then_a_word_of_names():
    assert meant_by("two-beat-weave", FAMILIES) == ("two-beat-weave",)
    assert meant_by("weave", FAMILIES) == ("two-beat-weave",)  # not the pattern of that name
    assert meant_by("orbit", FAMILIES) == ("antispin-flower-3", "inspin-flower-2")
    assert meant_by("flower", FAMILIES) == ("antispin-flower-3", "inspin-flower-2")
    assert meant_by("flow", FAMILIES) == ()


def test_stops_and_counts_are_told_apart():
    wishes = Wishes.model_validate(
        {
            "moves": {"hybrid": "2", "stop": ["before refrain", "before end"]},
            "character": {"A": "calm"},
        }
    )
    assert wishes.counted == {"hybrid": 2}
    assert wishes.stops == ("refrain", "end")
    assert Wishes.model_validate({"moves": {"stop": "2"}}).stops == 2
    assert Wishes().stops == 0


@pytest.mark.parametrize(
    ("cast", "wishes", "says"),
    [
        ("level: 6", "", r"s\.yaml:5:\d+: level '6' must be less than or equal to 5"),
        ("repertoire: {knows: [line]}", "", r"unknown key 'knows'.*known"),
        ("level: 2", "moves: {line: 0}", r"s\.yaml:6:\d+: .*line: 0 times is outside"),
        ("level: 2", "moves: {line: before refrain}", "only a stop has a place"),
        ("level: 2", "moves: {stop: refrain}", "neither a number of times nor a place"),
        ("level: 2", "moves: {stop: [refrain]}", "write `before` and the name of a section"),
        ("level: 2", "character: {A: loud}", "must be 'calm' or 'full'"),
        ("level: 2", "lead: Birch", r"s\.yaml:6:16: 'Birch' is not in the cast"),
    ],
)
def test_what_is_wrong_is_told_with_its_place(cast, wishes, says):
    with pytest.raises(InputError, match=says):
        read(cast, wishes)


@pytest.mark.parametrize(
    ("cast", "wishes", "says"),
    [
        (
            "repertoire: {known: [line, lin]}",
            "",
            r"s\.yaml:5:\d+: no pattern is called 'lin'.*line",
        ),
        ("repertoire: {never: [weev]}", "", "no pattern is called 'weev'"),
        (
            "level: 2",
            "moves: {pro-bend-33: 1}",
            r"s\.yaml:6:31: no pattern is called 'pro-bend-33'",
        ),
    ],
)
def test_words_that_mean_no_pattern_are_refused_once_patterns_are_known(cast, wishes, says):
    with pytest.raises(InputError, match=says):
        staged(read(cast, wishes), even_song(32))


@pytest.mark.parametrize(
    ("cast", "wishes", "says"),
    [
        ("level: 2", "moves: {stop: before X}", r"s\.yaml:6:\d+: the song has no section 'X' to stop before; write one of: A 1, B, A 2, A"),
        ("level: 2", "moves: {stop: [before B, before A 3]}", r"s\.yaml:6:\d+: the song has no section 'A 3'.*did you mean 'A 2'"),
        ("level: 2", "character: {a: calm}", r"s\.yaml:6:\d+: the song has no section 'a'"),
        ("repertoire: {never: [weave]}", "moves: {weave: 1}", r"s\.yaml:6:\d+: weave is wished once, but \w+, who leads, never"),
        ("repertoire: {never: [two-beat-weave]}", "moves: {weave: 2}", None),
        ("level: 2", "moves: {stop: [before A, before A 2, before B]}, character: {B: full}", None),
    ],
)  # fmt: skip
def test_what_a_song_or_a_performer_cannot_bring_is_a_fault_of_the_wish_alone(cast, wishes, says):
    """The show can be staged: only a draft depends on its wishes."""
    song = even_song(48, sections={0.0: "A", 8.0: "B", 16.0: "A"})
    file = read(cast, wishes)
    show = staged(file, song)
    found = [str(fault) for fault in wish_faults(file, show.book, show.song)]
    assert len(found) == (0 if says is None else 1)
    assert says is None or re.match(says, found[0])


def test_words_for_nothing_are_given_with_their_paths():
    found = list(
        words_for_nothing(
            [None, Repertoire(known=("weave",), learning=("x", "no"))],
            Wishes(moves={"stop": 1, "nor": 2}),
            FAMILIES,
        )
    )
    assert found == [
        (("cast", 1, "repertoire", "learning", 1), "no"),
        (("wishes", "moves", "nor"), "nor"),
    ]
