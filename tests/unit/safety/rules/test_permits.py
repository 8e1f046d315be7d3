"""What makes a permit one: a number, an issuer, days and a place, for this show's place and night."""

import pytest

from sequencer.errors import InputError
from sequencer.safety.rules.permits import (
    NONE_RECORDED,
    permit_contradictions,
    permit_gaps,
    permit_that_holds,
    permit_words,
)
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document

WHOLE = (
    "{number: P-7, issued_by: fire office, from: 2027-06-01, until: 2027-06-30, place: the  YARD}"
)
SHOW = """\
title: A
night: {night}
track: {{file: a.ogg}}
venue: {{name: The Yard, stage: {{shape: round, width: 8 m}}, audience: [{{line: [[-5, -9], [5, -9]]}}]}}
cast: [{{name: Ada, stature: 1.7 m, prop: poi}}]
rules: {{permit: {permit}}}
"""


def read(permit=WHOLE, night="2027-06-19"):
    text = SHOW.format(permit=permit, night=night)
    if night is None:
        text = text.replace("night: None\n", "")
    return show_from_document(parse_document(text, "a.yaml")).show


def test_a_whole_permit_for_this_place_and_night_holds():
    show = read()

    assert permit_gaps(show) == ()
    assert permit_that_holds(show) is show.rules.permit
    assert permit_words(show) == "P-7, fire office, 2027-06-01 to 2027-06-30, the YARD"


@pytest.mark.parametrize("day", ["2027-06-01", "2027-06-30"])
def test_its_first_and_last_day_are_among_its_days(day):
    assert permit_that_holds(read(night=day)) is not None


@pytest.mark.parametrize(
    ("permit", "night", "gap"),
    [
        ("none needed on paper", "2027-06-19", "who issued it is not stated"),
        (WHOLE.replace("number: P-7, ", ""), "2027-06-19", "its number is not stated"),
        (WHOLE.replace("issued_by: fire office, ", ""), "2027-06-19", "who issued it is not stated"),
        (WHOLE.replace("from: 2027-06-01, ", ""), "2027-06-19", "its first day is not stated"),
        (WHOLE.replace("until: 2027-06-30, ", ""), "2027-06-19", "its last day is not stated"),
        (WHOLE.replace(", place: the  YARD", ""), "2027-06-19", "its place is not stated"),
        (WHOLE, None, "the night of the performance is not stated"),
        (WHOLE, "2027-05-31", "it starts on 2027-06-01, and the show is on 2027-05-31"),
        (WHOLE, "2027-07-01", "it ends on 2027-06-30, and the show is on 2027-07-01"),
        (WHOLE.replace("YARD", "quay"), "2027-06-19", "it is for the quay, and the show is at The Yard"),
        ("", "2027-06-19", NONE_RECORDED),
    ],
)  # fmt: skip
def test_each_gap_keeps_it_from_counting(permit, night, gap):
    show = read(permit, night)

    assert gap in permit_gaps(show)
    assert permit_that_holds(show) is None
    assert "P-7" not in permit_words(show) or "does not count yet" in permit_words(show)


def test_only_what_does_not_fit_the_show_contradicts_it():
    assert permit_contradictions(read("none needed on paper")) == ()
    assert permit_contradictions(read("")) == ()
    assert len(permit_contradictions(read(WHOLE.replace("YARD", "quay"), "2027-07-01"))) == 2


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("until: 2027-06-30", "until: 2027-05-30", "before it starts"),
        ("from: 2027-06-01", "from: 2027-06-31", "not a calendar date"),
        ("}", ", loosens: [audience-distanse]}", "audience-distance"),
    ],
)
def test_bad_permits_are_refused_where_they_stand(old, new, words):
    with pytest.raises(InputError, match=words) as refused:
        read(WHOLE.replace(old, new))
    assert refused.value.place.line == 6
