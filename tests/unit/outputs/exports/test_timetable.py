"""The timeline as CSV and JSON."""

import csv
import io
import json

import pytest

from sequencer.outputs.exports.timetable import (
    TIMETABLE_COLUMNS,
    timetable,
    timetable_csv,
    timetable_json,
)


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("timetable"))


def test_every_block_burn_section_and_formation_has_a_row(staged):
    rows = timetable(staged)
    kinds = [row["kind"] for row in rows]

    assert kinds.count("block") + kinds.count("link") == len(staged.blocks)
    assert kinds.count("lit") == len(staged.lit)
    assert kinds.count("section") == len(staged.song.sections)
    assert kinds.count("formation") == len(staged.standings)
    assert [row["start"] for row in rows] == sorted(row["start"] for row in rows)


def test_seconds_and_positions_agree(staged):
    row = next(row for row in timetable(staged) if row["kind"] == "block" and row["from"] == "25.1")

    assert row["start"] == pytest.approx(0.5 + 24 * 4 * 0.5)  # bar 25 at 120 beats a minute
    assert row["until"] == "33.1"


def test_csv_and_json_say_the_same(staged):
    table = list(csv.DictReader(io.StringIO(timetable_csv(staged))))
    whole = json.loads(timetable_json(staged))

    assert tuple(table[0]) == TIMETABLE_COLUMNS
    assert len(table) == len(whole["rows"])
    assert [float(row["start"]) for row in table] == [row["start"] for row in whole["rows"]]


def test_a_spreadsheet_runs_no_name(rounds, tmp_path):
    text = rounds.ROUND.replace("Søren", '"=1+1"')
    table = csv.DictReader(io.StringIO(timetable_csv(rounds.show(tmp_path, text))))

    assert {row["who"] for row in table if "1+1" in row["who"]} == {"'=1+1"}
