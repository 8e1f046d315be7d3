"""`check --danced`: what is told, and that an interrupted call gives the same bytes in the end."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from sequencer.cli import main
from sequencer.outputs.report.as_danced import spread_words
from sequencer.tasks.kept_reports import AskedReport
from tests.repeated import at_length

SHOW = """\
title: Two
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: &poi {tether: 0.5}}
  - {name: Birch, stature: 1.7, prop: *poi}
formations:
  line:
    spots:
      Ash: {at: [-0.9, 5]}
      Birch: {at: [0.9, 5]}
staging:
  - {formation: line, from: 1.1}
timeline:
  - {from: 3.1, pattern: static-spin, timing: together, cycle: 1, beats: 8}
"""


@pytest.fixture(scope="module")
def show(stage_folder):
    path = stage_folder / "two.yaml"
    path.write_text(SHOW, encoding="utf-8")
    CliRunner().invoke(main, ["check", str(path)])  # the song is heard once for all
    return path


@pytest.fixture(scope="module")
def whole(show):
    """What 25 runs, in two parts, say that nobody interrupts; kept apart from the other tests' runs."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sequencer.checks.distances.drift_runs._store", lambda *_: None)
        patch.setattr(EXPLAINED, 0)
        return check(show, "--danced", "25", "--json", "--jobs", "1").stdout


EXPLAINED = "sequencer.checks.distances.conflict_groups.EXPLAINED"  # why a chance is what it is costs more than the runs


def check(show, *arguments):
    return CliRunner().invoke(main, ["check", str(show), *arguments])


def test_the_table_and_the_json_agree(show, monkeypatch):
    monkeypatch.setattr("sequencer.checks.distances.runs_again.TRIALS", 3)  # the same both times
    table = check(show, "--danced", "20", "--jobs", "1")
    told = json.loads(check(show, "--danced", "20", "--jobs", "1", "--json").stdout)
    danced = told["danced"]
    one = danced["chances"][0]

    assert danced["runs"] == one["runs"] == 20
    assert one["between"] == ["Ash", "Birch"]
    assert 0 < one["low"] < one["chance"] < one["high"] < 1
    assert one["matters"] in danced["spread"]
    assert set(one["who"]) <= {"Ash", "Birch"}
    assert (one["formation"], one["moves"]) == ("line", ["static-spin", "static-spin"])
    assert sum(one["slices"]) == one["conflicts"]
    assert "As danced: 20 runs, seed 0" in table.stdout
    assert f"{100 * one['chance']:.0f} %" in table.stdout
    assert f"{one['matters']}, {' and '.join(one['who'])}" in table.stdout
    assert "line, " in table.stdout
    assert (
        f"Chance that any two come too close in a run: {100 * danced['goes_wrong']:.0f} %"
        in table.stdout
    )
    first = danced["rehearse"][0]
    assert "Rehearse this first" in table.stdout
    assert f"{' and '.join(first['who'])}: {first['what'].split()[0]}" in " ".join(
        table.stdout.split()
    )
    assert [each["spread"] for each in danced["anything"]] == [1.0, 0.5, 2.0]
    assert danced["slips"] == 2 * 2 * 4  # each begins and ends a move, and can miss it in four ways
    assert danced["marks"]["room"] >= 0
    assert "too-close-as-danced" in {finding["code"] for finding in told["findings"]}
    assert check(show, "--json").stdout.count('"danced": null') == 1


def test_the_show_states_its_spread(show, tmp_path):
    steady = "drift: {place: 0, facing: 0, timing: 0 beats, tempo: 0 %, tether: 0 mm, hand: 0}\n"
    other = show.with_name("steady.yaml")
    other.write_text(SHOW + steady, encoding="utf-8")
    told = json.loads(check(other, "--danced", "3", "--jobs", "1", "--json").stdout)["danced"]

    assert set(told["spread"].values()) == {0.0}
    assert told["chances"] == []
    assert (told["pairs"], told["clear"]) == (1, 1)


def test_one_performer_errs_by_their_own(show, monkeypatch):
    """Birch's places are told beside everybody's, and are what is drawn: all others stand still."""
    other = show.with_name("own.yaml")
    own = "drift: {place: 0, facing: 0, hand: 0, timing: 0, missed: 0, people: {Birch: {place: 60 cm}}}\n"
    other.write_text(SHOW + own, encoding="utf-8")
    monkeypatch.setattr(EXPLAINED, 0)
    told = json.loads(check(other, "--danced", "8", "--jobs", "1", "--json").stdout)["danced"]

    assert told["own"]["Birch"]["place"] == 0.6
    assert told["own"]["Birch"]["tether"] == told["spread"]["tether"]
    assert set(told["own"]) == {"Birch"}
    assert (told["missed"], told["slips"]) == (0, 0)
    assert told["chances"]


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("drift: {place: -1 cm}", "place"),
        ("drift: {facing: nan}", "facing"),
        ("drift: {tempo: 50 %}", "tempo"),
        ("drift: {timing: 3}", "timing"),
        ("drift: {places: 3 cm}", "did you mean"),
        ("drift: {missed: 120 %}", "missed"),
        ("drift: {marks: -1 cm}", "marks"),
        ("drift: {people: {Ashe: {place: 3 cm}}}", "'Ashe' is not in the cast"),
        ("drift: {people: {Ash: {place: -3 cm}}}", "place"),
    ],
)
def test_absurd_spreads_are_refused_at_their_place(show, line, says):
    other = show.with_name("absurd.yaml")
    other.write_text(SHOW + line + "\n", encoding="utf-8")
    result = check(other, "--danced", "3")

    assert result.exit_code == 2
    assert says in result.stderr
    assert f"absurd.yaml:{len(SHOW.splitlines()) + 1}:" in result.stderr


@pytest.mark.parametrize(
    "arguments", [["--danced", "0"], ["--danced", "5", "--jobs", "0"], ["--cluster", "tcp://x:1"]]
)
def test_what_does_not_go_together_is_refused(show, arguments):
    assert check(show, *arguments).exit_code == 2


# The call strikes itself, its workers too, at a moment that is known: once a part is kept, or in the middle of
# writing it. A shell that runs the tests in its background lets them ignore SIGINT, and whatever they start.
CUT_OFF = """\
import os, signal, sys
from pathlib import Path
signal.signal(signal.SIGINT, signal.default_int_handler)
how, when = sys.argv.pop(1), sys.argv.pop(1)
plain_text, plain_replace = Path.write_text, Path.replace

def strike():
    Path.write_text, Path.replace = plain_text, plain_replace
    os.killpg(os.getpgid(0), signal.Signals[how])

def write_text(path, text, **more):
    if "danced" not in path.parts:
        return plain_text(path, text, **more)
    plain_text(path, text[: len(text) // 2], **more)
    strike()
    return plain_text(path, text, **more)

def replace(path, target):
    plain_replace(path, target)
    if "danced" in path.parts:
        strike()

if when == "in the writing":
    Path.write_text = write_text
else:
    Path.replace = replace
from sequencer.__main__ import main
main()
"""


@pytest.mark.skipif(sys.platform == "win32", reason="POSIX signals")
@pytest.mark.parametrize(
    ("how", "when", "jobs"),
    [
        ("SIGINT", "after a part", "2"),
        ("SIGKILL", "in the writing", "1"),
        *at_length(("SIGINT", "in the writing", "1")),
    ],
)
def test_a_call_that_is_cut_off_ends_as_if_it_had_not_been(
    show, whole, tmp_path, monkeypatch, how, when, jobs
):
    """Really interrupted, by a signal to the process and its workers; then asked for again."""
    heard = Path(os.environ["XDG_CACHE_HOME"], "sequencer", "heard")
    (tmp_path / "sequencer").mkdir()
    (tmp_path / "sequencer" / "heard").symlink_to(heard)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.setattr(EXPLAINED, 0)
    parts = tmp_path / "sequencer" / "danced"
    asked = ["--json", "--danced", "25", "--jobs", jobs]
    stopped = subprocess.run(
        [sys.executable, "-c", CUT_OFF, how, when, "check", str(show), *asked],
        capture_output=True,
        check=False,
        start_new_session=True,
    )
    interrupted = how == "SIGINT"
    assert stopped.returncode == (130 if interrupted else -9), stopped.stderr
    assert stopped.stdout == b""
    assert b"Traceback" not in stopped.stderr
    assert (b"finished runs are saved" in stopped.stderr) == interrupted
    # What is written when Ctrl-C is pressed is written to its end; what a kill leaves is not believed.
    assert len(list(parts.rglob("0*.json"))) == (1 if interrupted else 0)
    assert len(list(parts.rglob(".partial-*"))) == (0 if interrupted else 1)

    resumed = check(show, *asked)
    assert resumed.exit_code in {0, 1}
    assert resumed.stdout == whole
    assert (
        len(list(parts.rglob("0*.json"))) == 4
    )  # 20 and 5 runs; 20 at half the spread and at twice
    assert not list(parts.rglob(".partial-*"))


def test_a_dask_cluster_gives_the_same(show, tmp_path, monkeypatch):
    distributed = pytest.importorskip("distributed")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    with distributed.LocalCluster(
        n_workers=1, threads_per_worker=1, processes=False, dashboard_address=None
    ) as cluster:
        address = cluster.scheduler_address
        asked = ["--danced", "20", "--json", "--cluster", address]
        handed = check(show, *asked)
    assert handed.exit_code in {0, 1}, handed.output
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "own"))
    assert handed.stdout == check(show, "--danced", "20", "--json", "--jobs", "1").stdout


def test_a_cluster_that_does_not_answer_is_named(show, monkeypatch):
    pytest.importorskip("distributed")
    monkeypatch.setattr("sequencer.tasks.dancing.PATIENCE", "1s")
    result = check(show, "--danced", "5", "--cluster", "tcp://127.0.0.1:9")

    assert result.exit_code == 2
    assert "no Dask scheduler answers" in result.stderr
    assert "Traceback" not in result.output


def test_without_dask_the_extra_is_named(show, monkeypatch):
    monkeypatch.setitem(sys.modules, "distributed", None)
    result = check(show, "--danced", "5", "--cluster", "tcp://127.0.0.1:9")

    assert result.exit_code == 2
    assert 'pip install "sequencer[dask]"' in result.stderr


def test_another_pattern_in_a_file_is_danced_anew(stage_folder, monkeypatch):
    """Runs that are kept are those of the patterns as they are, not as they were."""
    monkeypatch.setattr(EXPLAINED, 0)
    moves = stage_folder / "danced-moves.yaml"
    path = stage_folder / "two-moves.yaml"
    text = SHOW.replace("pattern: static-spin", "pattern: mine")
    path.write_text(text + "pattern_files: [danced-moves.yaml]\n", encoding="utf-8")
    told = []
    for radius in (0.05, 0.4):
        moves.write_text(
            f"patterns:\n  mine: {{law: orbit, set: {{ratio: 1, hand_radius: {radius}}}}}\n",
            encoding="utf-8",
        )
        found = json.loads(check(path, "--danced", "4", "--jobs", "1", "--json").stdout)
        told.append(found["danced"]["chances"])
    assert told[0] != told[1]


def test_what_a_log_measured_is_drawn(stage_folder, monkeypatch):
    """One ends up 40 cm downstage five times, one four times only, which is too few; where the show says it, that counts."""
    from sequencer import tasks

    monkeypatch.setattr(EXPLAINED, 0)
    path = stage_folder / "practised.yaml"
    path.write_text(SHOW, encoding="utf-8")
    first, second = tasks.stage_show(path).show.names[:2]
    log = stage_folder / "practised.practice.csv"
    lines = [f"2026-11-02,{who},100%,40 cm downstage" for who in (*[first] * 5, *[second] * 4)]
    log.write_text("\n".join(["date,performer,speed,drift", *lines, ""]), encoding="utf-8")
    dancing = tasks.Dancing(runs=2, jobs=1)
    told = tasks.check_show(path, flown=False, dancing=dancing).danced
    assert {name: own["place"] for name, own in told.own.items()} == {
        first: pytest.approx(0.4 / 2**0.5)  # in each of x and y, about the plan
    }
    assert told.by_log == (first,)
    assert told.spread["place"] == 0.15
    assert f"{first} (by the practice log): places 0.283" in spread_words(told)
    path.write_text(f"{SHOW}drift: {{people: {{{first}: {{place: 0.2}}}}}}\n", encoding="utf-8")
    told = tasks.check_show(path, flown=False, dancing=dancing).danced
    assert told.own[first]["place"] == 0.2
    assert told.by_log == ()
    log.write_text(log.read_text(encoding="utf-8").replace("100%", "fast"), encoding="utf-8")
    result = check(path, "--danced", "2", "--jobs", "1")
    assert result.exit_code == 2
    assert f"{log}:2:" in result.stderr
    log.unlink()


def test_a_show_that_was_danced_has_been_checked(show, stage_folder):
    path = stage_folder / "danced_once.yaml"
    path.write_text(f"{SHOW}# once\n", encoding="utf-8")
    assert AskedReport(path, flown=True).verdict() is None
    result = check(path, "--danced", "2", "--jobs", "1")
    assert AskedReport(path, flown=True).verdict() is (result.exit_code == 0)
