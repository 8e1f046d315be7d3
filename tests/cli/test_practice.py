"""`practice`: what is written down, what is told, and that nothing is lost by bad input."""

import json
import os

import pytest
from click.testing import CliRunner

from sequencer.cli import main


@pytest.fixture(scope="module")
def show(stage_folder):
    """The small solo in a folder of its own, so that its log is too."""
    path = stage_folder / "practised.yaml"
    path.write_text((stage_folder / "show.yaml").read_text(encoding="utf-8"), encoding="utf-8")
    return path


def practise(show, *arguments):
    return CliRunner().invoke(
        main, ["practice", str(show), "--out", str(show.with_name("out")), *arguments]
    )


@pytest.fixture
def log(show):
    path = show.with_name("practised.practice.csv")
    yield path
    path.unlink(missing_ok=True)


def test_from_the_plan_to_the_log_and_back(show, log):
    plan = practise(show)
    assert plan.exit_code == 0, plan.output
    assert "Practice for Ash: Small, version 1" in plan.stdout
    page = show.with_name("out") / "practised" / "practice.html"
    assert str(page) in plan.stdout
    assert "the whole show" in page.read_text(encoding="utf-8")
    assert not log.exists()
    assert "The loops need rehearsal.html" in plan.stdout
    page.with_name("rehearsal.html").touch()
    assert "rehearsal.html" not in practise(show).stdout
    os.utime(page.with_name("rehearsal.html"), (0, 0))
    assert "rehearsal.html is older than the show" in practise(show).stdout

    written = practise(
        show, "--log", "the whole show 80% 2/2", "--log", "the whole show 100% 1/2 note gusts"
    )
    assert written.exit_code == 0, written.output
    assert "next 100 %, unlit, 1 of the last 2 clean so far" in written.stdout
    lines = log.read_text(encoding="utf-8").splitlines()
    assert len(lines) == 3
    assert lines[2].endswith(",gusts")
    told = json.loads(practise(show, "--json").stdout)
    assert [week["tried"] for week in told["weeks"]] == [4]
    assert told["exercises"][-1]["who"][0]["steps_done"] == 1


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("--log", "Zed 3.1 6/8"), "--log:1:1: 'Zed' is not understood"),
        (("--log", "3.1 6/8", "--log", "3.1 9/8"), "9 were clean of 8 tried"),
        (("--log", "3.1 6/8 on 2126-01-01"), "2126-01-01 is still to come"),
        (("--for", "Zed"), "'Zed' is not in the cast"),
        (("--log", "3.1 6/8", "--json"), "leave it out with --log"),
    ],
)
def test_bad_input_writes_nothing(show, log, arguments, says):
    result = practise(show, *arguments)
    assert result.exit_code == 2
    assert says in result.stderr
    assert not log.exists()


def test_what_is_written_down_steers_no_terminal(show, log):
    result = practise(show, "--log", "note \x1b[31mred\u202egnp")
    assert result.exit_code == 0, result.output
    assert r"\x1b[31mred\u202egnp" in result.stdout
    assert "\u202e" in log.read_text(encoding="utf-8")


def test_a_slip_in_an_old_line_loses_no_new_one(show, log):
    before = "date,performer,what,from,speed,lit,tried,clean\nyesterday,Ash,,,60,,8,6\n2026-11-02,Zed,,,60,,8,6\n"
    log.write_text(before, encoding="utf-8")
    result = practise(show, "--log", "3.1 60% 6/8 on 2026-11-03")
    assert result.exit_code == 2
    assert log.read_text(encoding="utf-8") == f"{before}2026-11-03,Ash,,3.1,60,no,8,6\n"
    assert "written into" in result.stdout
    faults = [line.removeprefix("error: ") for line in result.stderr.splitlines()]
    assert [fault.split(" ")[0] for fault in faults] == [f"{log}:2:1:", f"{log}:3:12:"]
    again = practise(show)
    assert again.exit_code == 2
    assert "'Zed' is not in the cast of this show" in again.stderr
