"""The stop call, the emergency card and the weather of a show file."""

import pytest

from sequencer.errors import InputError
from sequencer.safety.duties.on_stop import agreed_on_stop, stop_call
from sequencer.show.file_records.evening import Emergency, StopCall, Weather
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document

SHOW = """\
title: A
track: {{file: a.ogg}}
venue:
  stage: {{shape: round, width: 8 m}}
  audience: [{{line: [[-5, -9], [5, -9]]}}]
  {venue}
cast: [{{name: Ada, stature: 1.7 m, prop: {{tether: 50 cm}}}}]
crew: [{{name: Bo, post: [0, 9]}}]
{rest}
"""


def read(rest="", venue="wind: 2 m/s"):
    return show_from_document(parse_document(SHOW.format(rest=rest, venue=venue), "a.yaml")).show


def test_what_is_agreed_takes_the_place_of_what_is_usual():
    show = read("stop_call: {word: Halt, does: {spotter: [run], Ada: [kneel, put out]}}")
    said = {each.role: each.does for each in stop_call(1, show.stop_call)}

    assert said["spotter"] == ("run",)
    assert said["Ada"] == ("kneel", "put out")
    assert said["operator"] == {each.role: each.does for each in stop_call(1)}["operator"]
    assert agreed_on_stop(show.stop_call, "Ada", "performer") == ("kneel", "put out")
    assert agreed_on_stop(show.stop_call, "Bo", "spotter") == ("run",)
    assert agreed_on_stop(show.stop_call, "Bo", "lead") == ()


@pytest.mark.parametrize(
    ("rest", "code", "words"),
    [
        ("stop_call: {callers: [Adda]}", "unknown-person", "'Ada'"),
        ("stop_call: {does: {spoter: [run]}}", "unknown-person", "'spotter'"),
        ("stop_call: {word: " + 41 * "a" + "}", "bad-value", "40 characters"),
        ("emergency: {nummber: 112}", "unknown-key", "number"),
        ("weather: {gusts: brisk}", "bad-value", "m/s"),
    ],
)
def test_bad_input_is_told_with_its_place(rest, code, words):
    with pytest.raises(InputError) as error:
        read(rest)

    assert error.value.code == code
    assert words in f"{error.value.what} {error.value.mend} {error.value.why}"
    assert error.value.place.line == 9


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("upstage", 180.0),
        ("Stage left", 90.0),
        ("stage right", -90.0),
        ("audience", 0.0),
        ("45", 45.0),
    ],
)
def test_a_wind_comes_from_a_side_or_an_angle(text, degrees):
    assert read(venue=f"wind_from: {text}").venue.wind_from == degrees


def test_a_wind_from_nowhere_is_refused():
    with pytest.raises(InputError, match="not a direction"):
        read(venue="wind_from: north-ish")


def test_every_line_of_the_card_is_there_with_or_without_an_entry():
    assert len(Emergency().lines) == len(Emergency(number="112", gate="east").lines) == 11
    assert ("Emergency number here", "112") in Emergency(number="112").lines
    assert all(entered is None for _, entered in Emergency().lines)


def test_weather_limits_are_lines_that_must_be_true():
    weather = Weather(rain="rain since soaking", lightning="thunder heard.", other=("any fog",))

    assert weather.lines == ("No rain since soaking.", "No thunder heard.", "No fog.")
    assert StopCall().word == "STOP"
