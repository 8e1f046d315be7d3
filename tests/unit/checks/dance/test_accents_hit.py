"""Accents: hit where a pattern, a stop or a cycle begins on them, missed elsewhere."""

import pytest

from sequencer.checks.dance.accents_hit import CHECK, ON_THE_ACCENT, nearest_beginning
from tests.stopped_show import EXTENSION, stopped_show

LINK = "{link: true, beats: 2}"


def missed(*entries, **more):
    show = stopped_show(*entries, **more)
    return [(f.position, f.message, f.remedies) for f in CHECK.outcome(show).findings]


@pytest.mark.parametrize(
    ("at", "why"),
    [
        ("3.1", "the pattern begins"),
        ("3.3", "a cycle of two beats begins"),
        ("4.3", "another"),
        ("5.1", "the stop begins"),
        ("7.1", "the second pattern begins"),
        ("3.1+1/8", "within an eighth of a beat"),
    ],
)
def test_an_accent_is_hit_where_something_begins(at, why):
    assert not missed(EXTENSION, "{rest: 8}", EXTENSION, f"{{accent: {at}}}"), why


@pytest.mark.parametrize("at", ["3.2", "4.4", "5.3", "6.4", "3.1+1/4", "9.1"])
def test_an_accent_is_missed_where_nothing_begins(at):
    """Within a cycle, within a stop, more than an eighth off, and where the last pattern has ended."""
    assert len(missed(EXTENSION, "{rest: 8}", EXTENSION, f"{{accent: {at}}}")) == 1


def test_a_shift_moves_the_cycles_and_a_link_begins_nothing():
    shifted = EXTENSION.replace("beats", "shift: 0.5, beats")
    assert not missed(shifted, "{accent: 3.2+1/2}")
    assert missed(shifted, "{accent: 3.3}")
    assert missed(EXTENSION, LINK, EXTENSION.replace("8", "6"), "{accent: 5.1}")


def test_the_words_name_the_nearest_beginning_and_by_how_much():
    ((position, said, ways),) = missed(EXTENSION, "{rest: 4}", EXTENSION, "{accent: 5.2}")
    assert position == "5.2"
    assert (
        said == "nothing begins on this accent; the nearest beginning, at 5.1, is 1 beat before it"
    )
    assert ways[0] == "begin what begins there 1 beat later"
    assert ways[-1] == "move the accent to 5.1"


def test_where_to_move_an_accent_is_told_as_it_is_to_be_written():
    """The sentence tells it as it can be counted, the mend to the part of a beat that the file needs."""
    entry = EXTENSION.replace("beats: 8", "beats: 8.0625")
    ((_, said, ways),) = missed(entry, EXTENSION, "{accent: 5.2}")
    assert "the nearest beginning, just after 5.1, is" in said
    assert ways[-1] == "move the accent to 5.1+1/16"
    assert not missed(entry, EXTENSION, f"{{accent: {ways[-1].split()[-1]}}}")


def test_an_accent_of_nobody_who_dances_is_missed_without_a_place():
    ((_, said, _),) = missed("{accent: 5.2}")
    assert said == "nothing begins on this accent"


def test_the_nearest_beginning_equals_the_one_found_by_going_through_all():
    show = stopped_show(
        EXTENSION, "{hold: 4}", EXTENSION.replace("beats", "shift: 0.3, beats"), "{accent: 5.2}"
    )
    starts = [8, 10, 12, 14, 16, 20, 21.7, 23.7, 25.7, 27.7]  # written out by hand
    for k in range(60, 300):
        beat = k / 10
        (accent,) = show.accents
        object.__setattr__(accent, "beat", beat)
        found = nearest_beginning(show, accent)
        assert abs(found - beat) == pytest.approx(min(abs(beat - each) for each in starts))


def test_the_tolerance_is_the_one_that_is_stated():
    assert ON_THE_ACCENT == 0.125
    (finding,) = CHECK.outcome(stopped_show(EXTENSION, "{accent: 3.2}")).findings
    assert "within 0.125 of a beat" in finding.source
    assert (finding.code, finding.severity, finding.who) == ("accent-missed", "warn", ("Ash",))


@pytest.mark.parametrize(("cycle", "is_missed"), [(1, True), (1.75, True), (2, False)])
def test_a_cycle_too_short_to_be_seen_hits_no_accent(cycle, is_missed):
    """On each of these accents a cycle begins that started at 3.1."""
    short = EXTENSION.replace("cycle: 2", f"cycle: {cycle}")
    assert f"cycle: {cycle}" in short
    at = {1: "4.2", 1.75: "4.4", 2: "4.3"}[cycle]
    assert bool(missed(short, f"{{accent: {at}}}")) == is_missed
