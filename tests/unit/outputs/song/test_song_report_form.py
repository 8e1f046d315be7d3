"""The form of a song as it is told: in lines, as a tree, on the chart, in a file to start from."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from sequencer.outputs.song.song_chart import song_chart
from sequencer.outputs.song.song_report import form_text, song_json, song_summary
from sequencer.show.document import parse_document
from sequencer.show.starter import starter_text
from sequencer.timing.song import Section
from tests.songs import even_song, silent_song


def song():
    """Bars of two seconds: 8 of A, 20 of B, 8 of B again but fuller, 4 of A; bar 21 may begin a part."""
    sections = (
        Section(start=0, end=16, label="A"),
        Section(start=16, end=56, label="B", confidence=0.93),
        Section(start=56, end=72, label="B", variant=1, confidence=0.51, energy=0.8),
        Section(start=72, end=80, label="A", confidence=0.7),
    )
    return replace(even_song(160), sections=sections, turns=((40.0, 0.24),))


def test_lines_say_bars_eights_and_how_sure_a_border_is():
    heading, a, b, again, end, also = form_text(song())

    assert heading.split() == ["section", "from", "to", "bars", "eights", "begins", "energy"]
    assert a.split() == ["A", "1", "0:00.0", "0:16.0", "1–8", "4", "low"]
    assert b.split()[2:] == ["0:16.0", "0:56.0", "9–28", *["4", "+", "2", "+", "4"], "sure", "low"]
    assert again.split()[:3] == ["B", "2", "(B')"]
    assert again.split()[5:8] == ["29–36", "4", "perhaps"]
    assert "sure" in end
    assert also == "a part may also begin at bar 21 (24%)"


def test_several_possible_borders_are_listed():
    more = replace(song(), turns=((40.0, 0.24), (32.0, 0.2), (48.0, 0.3)))

    assert form_text(more)[-1] == "a part may also begin at bar 21 (24%), 17 (20%) or 25 (30%)"


def test_a_song_of_one_part_is_said_to_be():
    said = "one part from beginning to end: nothing in it stands out as a new one"

    assert form_text(even_song(64))[-1] == said
    assert said not in song_summary(silent_song())
    assert said not in song_summary(song())


def test_the_tree_in_json():
    told = json.loads(song_json(song(), Path("song.ogg")))

    assert [part["mark"] for part in told["form"]] == ["A", "B", "B'", "A"]
    assert [part["bars"] for part in told["form"]] == [[1, 8], [9, 28], [29, 36], [37, 40]]
    assert [part["border"] for part in told["form"]] == ["sure", "sure", "perhaps", "sure"]
    groups = told["form"][1]["groups"]
    assert [len(group["phrases"]) for group in groups] == [4, 2, 4]
    assert [group["turn"] for group in groups] == [0, 0, 0.24]
    assert groups[2]["phrases"][0] == {"number": 7, "start": 40, "end": 44, "counts": 8}
    assert told["form"][1]["turns"] == [{"bar": 21, "confidence": 0.24}]
    assert told["turns"] == [{"start": 40, "confidence": 0.24}]
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


def test_a_file_to_start_from_says_it_beside_each_section():
    text = starter_text(song(), track="song.ogg", title="T", date="2026-01-01")

    marks = [line for line in text.splitlines() if "name:" in line and "energy" in line]
    assert [line.split("energy ")[1] for line in marks] == [
        "0.00",
        "0.00, a new part for sure, perhaps another from 21.1",
        "0.80, B', perhaps a new part",
        "0.00, a new part for sure",
    ]
    sections = parse_document(text, "s.yaml").values["track"]["corrections"]["sections"]
    assert [(row["from"], row["name"]) for row in sections] == [
        ("1.1", "A"), ("9.1", "B"), ("29.1", "B"), ("37.1", "A"),
    ]  # fmt: skip
