"""The cue list: the operators' cues, their numbers and codes, for any spreadsheet."""

import csv
import io
from dataclasses import replace

import pytest

from sequencer.outputs.exports import cue_list
from sequencer.outputs.exports.cue_list import CUE_COLUMNS, cue_list_csv
from sequencer.outputs.sheets.parts.run_cues import run_cues


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("cue-list"))


def rows(staged, *code_from):
    return list(csv.DictReader(io.StringIO(cue_list_csv(staged, *code_from))))


def seconds_of(code, rate):
    """By plain counting of frames, as RP 136 has it; not for drop-frame."""
    hours, minutes, seconds, frames = (int(each) for each in code.split(":"))
    return 3600 * hours + 60 * minutes + seconds + frames / rate


def test_every_run_cue_is_there_by_number_and_time(staged):
    table = rows(staged)
    cues = run_cues(staged)
    assert tuple(table[0]) == CUE_COLUMNS
    assert [row["cue"] for row in table] == [str(k + 1) for k in range(len(cues))]
    assert [row["label"] for row in table] == [cue.what for cue in cues]
    assert {"sound", "light", "sound and light"} == {row["department"] for row in table}
    for row, cue in zip(table, cues, strict=True):
        assert float(row["seconds"]) == pytest.approx(cue.seconds, abs=5e-4)
        for rate in (24, 25, 30):
            code = seconds_of(row[f"time code {rate}"], rate)
            assert code <= cue.seconds + 1e-6 < code + 1 / rate + 2e-6


def test_codes_begin_where_the_track_does(staged):
    plain, late = rows(staged), rows(staged, "01:00:00:00")
    for before, after in zip(plain, late, strict=True):
        assert seconds_of(after["time code 25"], 25) - seconds_of(before["time code 25"], 25) == pytest.approx(3600)  # fmt: skip
    assert late[0]["time code 29.97df"] == "01:00:00;00"


def test_a_rate_without_the_label_has_no_codes(staged):
    table = rows(staged, "00:01:00:00")  # drop-frame has none
    assert {row["time code 29.97df"] for row in table} == {""}
    assert table[0]["time code 30"] == "00:01:00:00"


def test_a_spreadsheet_runs_no_name(staged, monkeypatch):
    """A cue that begins with a name, as that of an entrance does."""
    (cue, *_) = run_cues(staged)
    monkeypatch.setattr(cue_list, "run_cues", lambda _: (replace(cue, what="=1+1 comes on"),))
    assert [row["label"] for row in rows(staged)] == ["'=1+1 comes on"]
