import json
import math
from dataclasses import replace

import pytest

from sequencer.findings import Clearance, Finding, Report
from sequencer.outputs.report.printed import report_json, report_table
from sequencer.outputs.report.terminal import columns, fitted

FINDING_KEYS = {
    "code", "severity", "who", "start", "end", "position", "message", "remedies", "source",
}  # fmt: skip
CLEARANCE_KEYS = {"between", "distance", "required", "at", "error"}


def test_json_has_the_agreed_keys(rounds):
    read = json.loads(report_json(rounds.report()))

    assert {"show", "ok", "findings", "clearances"} <= set(read)
    assert read["show"] == "lantern-round.yaml"
    assert read["ok"] is False
    assert set(read["findings"][0]) >= FINDING_KEYS
    assert set(read["clearances"][0]) >= CLEARANCE_KEYS
    first = read["findings"][0]
    assert (first["code"], first["severity"], first["who"]) == (
        "too-close",
        "stop",
        ["Łucja", "Søren"],
    )
    assert (first["start"], first["end"], first["position"]) == (50.3, 52.0, "25.4")


def test_json_is_ok_without_a_stop(rounds):
    assert json.loads(report_json(rounds.report(stop=False)))["ok"] is True


def test_json_names_proven_bounds_and_has_no_infinity():
    one = Clearance(
        between=("A", "B"), distance=math.inf, required=0.3, at=0.0, error=math.inf, bound=True
    )
    read = json.loads(report_json(Report(show="x.yaml", clearances=(one,))))

    assert read["clearances"][0]["distance"] is None
    assert read["clearances"][0]["bound"] is True


def test_table_says_what_when_and_how_to_mend(rounds):
    table = report_table(rounds.report())

    assert table.startswith("lantern-round.yaml: DO NOT DANCE YET (1 stop, 1 note)")
    # and again where a long report ends
    assert table.endswith("DO NOT DANCE YET: 1 STOP above, each to be mended first\n")
    assert "DO NOT DANCE YET" not in report_table(rounds.report(stop=False))
    assert "STOP  0:50.3 (bar 25.4)" in table
    assert "mend: move Søren 0.4 m to stage left" in table
    assert table.index("too-close") < table.index("ends-turned-round")
    assert "0.12 m     0.30 m  under" in table
    assert "1 more stay clear by a proven bound" in table
    assert "Where the crew walk was not looked at." in table


def test_table_of_a_show_without_findings_says_as_entered():
    assert report_table(Report(show="x.yaml")) == (
        "x.yaml: no problems found in the show as entered\n"
    )


def test_a_warning_is_not_told_as_nothing(rounds):
    warn = replace(rounds.report().findings[0], severity="warn")
    table = report_table(Report(show="x.yaml", findings=(warn,)))

    assert table.startswith(
        "x.yaml: no STOP in the show as entered, but decide on the warnings first (1 warn)"
    )


def test_many_notes_of_one_kind_are_told_together(rounds):
    one = replace(
        rounds.report().findings[0], severity="note", code="near", message="a wick passes"
    )
    notes = tuple(replace(one, start=10.0 * k, who=(f"P{k}",)) for k in range(20))
    stops = tuple(replace(one, severity="stop", start=5.0 + k) for k in range(6))
    table = report_table(Report(show="x.yaml", findings=notes + stops))

    assert table.count("a wick passes") == 1 + len(stops)
    assert "and 19 more like it: P1 0:10.0; P2 0:20.0;" in table
    assert "7 more (--json lists each)" in " ".join(table.split())
    assert "more like it" not in report_table(Report(show="x.yaml", findings=notes[:3]))


@pytest.mark.parametrize("width", [20, 60, 72, 100, 200])
def test_no_line_is_wider_than_asked(rounds, width):
    long = Finding(
        code="x", severity="warn", who=("火" * 60,), start=None, end=None, position=None,
        message="word " * 80, remedies=("remedy " * 40,), source="source " * 30,
    )  # fmt: skip
    whole = rounds.report()
    table = report_table(
        Report(show="s.yaml", findings=(*whole.findings, long), clearances=whole.clearances),
        width=width,
    )

    assert "whole show" in table
    for line in table.splitlines()[1:]:
        assert len(line) <= max(width, 60)


@pytest.mark.parametrize(
    ("text", "expected"),
    [("abc", 3), ("火花", 4), ("e\u0301", 1), ("", 0)],
    ids=["latin", "wide", "combining", "empty"],
)
def test_columns_count_what_a_terminal_shows(text, expected):
    assert columns(text) == expected


@pytest.mark.parametrize("text", ["", "abc", "abcdefghijkl", "火花火花火花", "e\u0301" * 20])
def test_fitted_text_fills_its_room(text):
    assert columns(fitted(text, 9)) == 9
