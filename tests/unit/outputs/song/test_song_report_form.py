"""The form of a song as it is told: in lines, as a tree, on the chart, in a file to start from."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from sequencer.outputs.song.song_chart import song_chart
from sequencer.outputs.song.song_report import form_text, song_json, song_summary
from sequencer.show.starter import starter_text
from sequencer.show.text.document import parse_document
from sequencer.timing.song import Section
from tests.songs import even_song, silent_song


def song():
    """Bars of two seconds: 8 of A, 20 of B, 8 of B again but fuller, 4 of A; bar 21 may begin a part."""
    sections = (
        Section(start=0, end=16, label="A"),
        Section(start=16, end=56, label="B", confidence=0.93),
        Section(start=56, end=72, label="B", variant=1, confidence=0.51, energy=0.8),
        Section(start=72, end=80, label="A", confidence=0.83),
    )
    return replace(even_song(160), sections=sections, turns=((40.0, 0.34),))


def test_lines_say_bars_eights_and_how_sure_a_border_is():
    heading, a, b, again, end, also = form_text(song())

    assert heading.split() == ["section", "from", "to", "bars", "eights", "begins", "energy"]
    assert a.split() == ["A", "1", "0:00.0", "0:16.0", "1–8", "4", "low"]
    assert b.split()[2:] == ["0:16.0", "0:56.0", "9–28", *["4", "+", "2", "+", "4"], "sure", "low"]
    assert again.split()[:3] == ["B", "2", "(B')"]
    assert again.split()[5:8] == ["29–36", "4", "perhaps"]
    assert "sure" in end
    assert also == "a part may also begin at bar 21 (34%)"


def test_columns_are_as_wide_as_what_is_in_them():
    """A long name, and a part of a group after each bar or two: no column runs into the next."""
    sections = (
        Section(start=0, end=240, label="A long name of a part", confidence=0.83),
        Section(start=240, end=320, label="B", confidence=0.9, energy=0.8),
    )
    turns = tuple((t, 0.4) for t in (4.0, 16.0, 20.0, 36.0, 200.0))
    heading, a, b, *_ = form_text(replace(even_song(640), sections=sections, turns=turns))

    for column, (first, second) in {
        "from": ("0:00.0", "4:00.0"), "to": ("4:00.0", "5:20.0"), "bars": ("1–120", "121–160"),
    }.items():  # fmt: skip
        end = heading.index(column) + len(column)
        assert (a[:end].split()[-1], b[:end].split()[-1]) == (first, second)
    start = heading.index("eights")
    assert a[start:].startswith("1 + 3 + 1 + … (60 eights)  ")
    assert b[start:].startswith("4 + 4 + 4 + 4 + 4  ")
    begins = heading.index("begins")
    assert b[begins:].startswith("sure")


def test_many_fours_are_counted():
    (row,) = form_text(even_song(4 * 96 + 8))[1:2]

    assert " 12 × 4 + 1 " in row


def test_of_many_possible_borders_the_likeliest_are_named():
    shares = (0.2, 0.21, 0.22, 0.23, 0.24, 0.25, 0.26, 0.19)
    whole = replace(even_song(160), turns=tuple((8.0 * (k + 1), s) for k, s in enumerate(shares)))

    assert form_text(whole)[-1] == (
        "a part may also begin at bar 9 (21%), 13 (22%), 17 (23%), 21 (24%), 25 (25%), 29 (26%), "
        "and at 2 less likely places"
    )


def test_several_possible_borders_are_listed():
    more = replace(song(), turns=((32.0, 0.2), (40.0, 0.24), (48.0, 0.3)))

    assert form_text(more)[-1] == "a part may also begin at bar 17 (20%), 21 (24%) or 25 (30%)"


def test_a_song_of_one_part_is_said_to_be():
    said = "one part from beginning to end: nothing in it stands out as a new one"

    assert form_text(even_song(64))[-1] == said
    assert said not in song_summary(silent_song())
    assert said not in song_summary(song())


def test_where_nothing_was_looked_at_it_is_said():
    """Seven bars are too few to look for parts; eight are not; a beat that ends early is told."""
    said = "taken as one part: the counted stretch is too short to look for others"
    partly = replace(even_song(64), unsteady=((32.0, 90.0),))

    assert form_text(even_song(28))[-1] == said
    assert form_text(even_song(32))[-1] != said
    assert "nothing with a steady beat in it stands out" in form_text(partly)[-1]


def test_the_tree_in_json():
    told = json.loads(song_json(song(), Path("song.ogg")))

    assert [part["mark"] for part in told["form"]] == ["A", "B", "B'", "A"]
    assert [part["bars"] for part in told["form"]] == [[1, 8], [9, 28], [29, 36], [37, 40]]
    assert [part["border"] for part in told["form"]] == ["sure", "sure", "perhaps", "sure"]
    groups = told["form"][1]["groups"]
    assert [len(group["phrases"]) for group in groups] == [4, 2, 4]
    assert [group["turn"] for group in groups] == [0, 0, 0.34]
    assert groups[2]["phrases"][0] == {"number": 7, "start": 40, "end": 44, "counts": 8}
    assert told["form"][1]["turns"] == [{"bar": 21, "confidence": 0.34}]
    assert told["turns"] == [{"start": 40, "confidence": 0.34}]
    assert told["sections"][2]["mark"] == "B'"


@pytest.mark.parametrize(
    ("style", "moments"), [("-", {0.0, 16.0, 72.0}), ("--", {56.0}), (":", {40.0})]
)
def test_the_chart_tells_sure_borders_from_possible_ones(style, moments):
    axes = song_chart(song()).axes[0]

    drawn = {float(line.get_xdata()[0]) for line in axes.lines if line.get_linestyle() == style} | {
        float(path.vertices[0][0])
        for lines in axes.collections
        if style == ":" and lines.get_linestyle()[0][1] and hasattr(lines, "get_segments")
        for path in lines.get_paths()
    }
    assert moments <= drawn
    assert not drawn & ({0.0, 16.0, 40.0, 56.0, 72.0} - moments)


def marks_of(text):
    """What stands beside each section of a file to start from, from its energy on."""
    marks = [line for line in text.splitlines() if "name:" in line and "energy" in line]
    return [line.split("energy ")[1] for line in marks]


def test_a_file_to_start_from_says_it_beside_each_section():
    text = starter_text(song(), track="song.ogg", title="T", date="2026-01-01")

    assert marks_of(text) == [
        "0.00",
        "0.00; surely a new part; another may begin at 0:40.0",
        "0.80; B again, but varied (B'); perhaps not a new part",
        "0.00; surely a new part",
    ]
    turns = tuple((20.0 + 4 * k, share) for k, share in enumerate((0.3, 0.2, 0.21, 0.22, 0.25)))
    many = replace(song(), turns=turns)
    text = starter_text(many, track="song.ogg", title="T", date="2026-01-01")
    assert (
        marks_of(text)[1]
        == "0.00; surely a new part; another may begin at 0:20.0, 0:28.0, 0:32.0 or 0:36.0"
    )
    sections = parse_document(text, "s.yaml").values["track"]["corrections"]["sections"]
    assert [(row["from"], row["name"]) for row in sections] == [
        ("1.1", "A"), ("9.1", "B"), ("29.1", "B"), ("37.1", "A"),
    ]  # fmt: skip
