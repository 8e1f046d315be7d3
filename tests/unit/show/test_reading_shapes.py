"""A value of another shape than it may have, in each place where a show takes a quantity: one line with its place."""

import pytest

from sequencer.errors import InputError, InputErrors
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.tasks.shows import stage_show
from tests.songs import even_song

SHOW = """\
title: Small
track: {file: song.wav, corrections: {metre: 4, one: 0:00.5}}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, birth_year: 1990, prop: {tether: 0.55, fuel_mass: 40 g}}
fire: {fuel: lamp-oil, burn: {time: 240 s, measured: false}}
timeline:
  - {from: 3.1, pattern: pro-bend-3, with: {hand_radius: 25 cm}, beats: 16}
"""
QUANTITIES = (
    "width: 12 m", "stature: 1.7", "tether: 0.55", "fuel_mass: 40 g", "time: 240 s", "hand_radius: 25 cm", "beats: 16", "from: 3.1",
    "birth_year: 1990", "one: 0:00.5", "metre: 4", "title: Small", "name: Ash", "pattern: pro-bend-3", "fuel: lamp-oil",
)  # fmt: skip
SHAPES = {
    "empty": "",
    "list": "[12, m]",
    "mapping": "{length: 0.55}",
    "lists": "[[[]]]",
    "true": "true",
}


def read(text):
    """Read and staged: some values mean nothing before the song is known."""
    return stage_show(show_from_document(parse_document(text, "show.yaml")), song=even_song(96))


def test_the_show_itself_can_be_read():
    assert [dancer.name for dancer in read(SHOW).dancers] == ["Ash"]


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_another_shape_is_told_with_its_place(quantity):
    assert quantity in SHOW
    key = quantity.partition(":")[0]
    line = SHOW[: SHOW.index(quantity)].count("\n") + 1
    for shape in SHAPES.values():
        text = SHOW.replace(quantity, f"{key}: {shape}", 1)
        try:
            read(text)
        except (InputError, InputErrors) as error:
            told = error.errors if isinstance(error, InputErrors) else (error,)
            assert all(each.place.line == line and str(each).isprintable() for each in told), told
        else:
            assert shape in {"", "true"}, shape  # as if the key were not there, or a name


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [("title:\ntrack: {file: a}\n", 1, 7), ("\n? title\n:  # later\n\n\ntrack: 1\n", 3, 2), ("é: {title: , b: 1}\n", 1, 11)],
)  # fmt: skip
def test_what_is_left_empty_stands_behind_its_colon(text, line, column):
    """Not where the next thing begins: there the parser notices it."""
    document = parse_document(text, "show.yaml")
    path = ("é", "title") if "é" in text else ("title",)
    place = document.place(*path)
    assert (place.line, place.column) == (line, column)


@pytest.mark.parametrize(
    "fault",
    [
        "set: text",
        "set: [1]",
        "set: {ratio: [1]}",
        "law: [orbit]",
        "defaults: 3",
        "room: 1",
        "needs: {a: b}",
    ],
)
def test_a_pattern_of_another_shape(fault):
    """An own pattern of the show, with each of its keys in turn."""
    text = f"{SHOW}patterns:\n  mine: {{law: orbit, set: {{ratio: 3}}, {fault}}}\n"
    if fault.startswith(("set", "law")):
        text = f"{SHOW}patterns:\n  mine: {{{fault}{', law: orbit' if fault[0] == 's' else ''}}}\n"
    with pytest.raises(InputError) as told:
        read(text)
    assert told.value.place.line == 12
    assert str(told.value).isprintable()
