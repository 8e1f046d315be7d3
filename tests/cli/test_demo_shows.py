"""The three shows that come with the project, through the command line, on their own track.

The two clean ones must stay clean; in the faulty one, the faults planted in it are found, each with a
way out, and nothing else stands against it. What is planted is written in the show's own comments.
Source of the track's count: audio_samples/cinder_ferry.truth.json, exact by construction.
"""

import csv
import hashlib
import io
import json
from pathlib import Path

import numpy as np
import pdfplumber
import pytest
from click.testing import CliRunner

from sequencer import tasks
from sequencer.cli import main
from sequencer.planning import offers
from sequencer.show.reading import ReadShow
from sequencer.tasks import shows as show_tasks
from sequencer.tasks.kept_reports import AskedReport, report_from_record, report_record

ROOT = Path(__file__).parents[2]
SHOWS = ROOT / "shows"
TRACK = ROOT / "audio_samples" / "cinder_ferry.ogg"
CLEAN = ("lantern_round", "night_ferry", "salt_wind")
OUTPUTS = ROOT / "tests" / "golden" / "outputs"
WORDED = ("message", "remedies", "source", "unseen", "cautions")  # may be said better
PLANTED = {
    "wrong-way-round": ["Clay"],
    "tether-slack": ["Birch"],
    "too-close": ["Ash", "Birch"],
    "burns-out": ["Ash"],
    "post-out-of-reach": ["Clay", "Gale"],
}


def _run(*arguments):
    return CliRunner().invoke(main, [str(a) for a in arguments], catch_exceptions=False)


@pytest.fixture(scope="module", autouse=True)
def each_show_once():
    """Each show is staged and checked once, whichever of the commands here asks for it.

    Reports that other tests have left on disk are not looked at.
    """
    shows, reports = {}, {}
    stage, check = show_tasks.stage_show, offers.checked_with_mends

    def stage_show(path, *, without_track=False, part=None, jobs=1, flown=False, progress=None):
        assert part is None
        file = path.document.file if isinstance(path, ReadShow) else str(path)
        if file not in shows:
            shows[file] = stage(path, without_track=without_track, progress=progress)
        return shows[file]

    def checked_with_mends(show, **more):
        if show.file not in reports:
            reports[show.file] = check(show, **more)
        return reports[show.file]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(show_tasks, "stage_show", stage_show)
        patch.setattr(offers, "checked_with_mends", checked_with_mends)
        patch.setattr(AskedReport, "known", lambda _asked: None)
        patch.setattr(AskedReport, "of", lambda _asked, show, check: check(show))
        yield reports


def test_a_kept_report_is_the_computed_one_to_the_last_digit(each_show_once, reports):
    """Compared as they are printed by the interpreter: every digit, and tuples where there were tuples."""
    assert len(reports) == len(each_show_once)
    for report in each_show_once.values():
        again = report_from_record(json.loads(json.dumps(report_record(report))))
        assert again == report
        for name in ("findings", "clearances", "not_checked", "cautions"):
            assert list(map(repr, getattr(again, name))) == list(map(repr, getattr(report, name)))


@pytest.fixture(scope="module")
def reports():
    """Exit status and parsed report of each show, checked once."""
    found = {}
    for name in (*CLEAN, "wrong_turns"):
        result = _run("check", SHOWS / f"{name}.yaml", "--json")
        found[name] = result.exit_code, json.loads(result.stdout)
    return found


@pytest.mark.parametrize("name", CLEAN)
def test_nothing_stands_against_the_clean_shows(reports, name):
    status, report = reports[name]

    assert status == 0
    assert report["ok"] is True
    # no authority has permitted a show that is made up: its sheets are drafts
    assert [f["code"] for f in report["findings"] if f["severity"] != "note"] == ["no-permit"]


@pytest.mark.parametrize("name", CLEAN)
def test_every_distance_of_a_clean_show_is_kept(reports, name):
    rows = reports[name][1]["clearances"]

    assert rows
    assert all(row["distance"] >= row["required"] for row in rows)
    assert all(0 <= row["error"] <= 0.005 for row in rows)  # what docs promise: 5 mm


def test_every_planted_fault_is_found_with_a_way_out(reports):
    status, report = reports["wrong_turns"]
    stops = [f for f in report["findings"] if f["severity"] == "stop"]

    assert status == 1
    assert report["ok"] is False
    assert {f["code"]: f["who"] for f in stops} == PLANTED
    assert len(stops) == len(PLANTED)  # each once, and nothing else
    for finding in stops:
        assert finding["remedies"], finding["code"]
        assert finding["source"], finding["code"]


def test_planted_faults_are_found_where_they_are(reports):
    """Bars as written in the show: joins in 5, the walk in 13 to 16, fire and posts from the start."""
    bars = {
        f["code"]: int(f["position"].split(".")[0])
        for f in reports["wrong_turns"][1]["findings"]
        if f["severity"] == "stop"
    }

    assert bars["wrong-way-round"] == 5
    assert 5 <= bars["tether-slack"] < 9
    assert 13 <= bars["too-close"] < 17


def test_the_last_stroke_is_where_the_show_ends():
    """The group is lit to 79.1, which the score puts on its last stroke."""
    truth = json.loads(TRACK.with_suffix(".truth.json").read_text(encoding="utf-8"))
    show = tasks.stage_show(SHOWS / "lantern_round.yaml")

    assert {span.end for span in show.lit} == {78 * 4.0}
    assert show.seconds(78 * 4.0) == pytest.approx(
        truth["last_stroke"], abs=0.07
    )  # mir_eval's beat window
    counted = np.asarray(show.song.beats)
    apart = [np.abs(counted - beat).min() for beat in truth["beats"]]
    assert max(apart) < 0.07


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_sheets_name_show_and_cut(tmp_path, paper):
    """Page sizes: ISO 216 (210 × 297 mm) and ANSI A (8.5 × 11 in), in points of 1/72 in."""
    result = _run("sheet", SHOWS / "night_ferry.yaml", "--out", tmp_path, "--paper", paper)
    size = {"a4": (595.3, 841.9), "letter": (612.0, 792.0)}[paper]
    digest = hashlib.sha256(TRACK.read_bytes()).hexdigest()
    papers = sorted((tmp_path / "night_ferry").glob("*.pdf"))

    assert result.exit_code == 0
    assert len(papers) >= 3  # everything in one, the performer's, the crew's
    for path in papers:
        with pdfplumber.open(path) as document:
            for page in document.pages:
                sheet = sorted((float(page.width), float(page.height)))  # some lie across
                assert sheet == pytest.approx(list(size), abs=1)
            text = document.pages[0].extract_text()
        assert "Night Ferry" in text, path.name
        assert digest[:8] in text, path.name


def test_the_trace_is_whole_and_never_jumps():
    """Header as docs fix it; no hand or head moves farther in 1/60 s than 15 m/s allow.

    15 m/s is twice the speed of a 45 cm prop at two turns a second (6 m/s) and of the arm (1.5 m/s).
    """
    result = _run("trace", SHOWS / "night_ferry.yaml", "--rate", "60", "--drawn")
    rows = list(csv.DictReader(io.StringIO(result.stdout)))

    assert result.exit_code == 0
    assert result.stdout.splitlines()[0] == (
        "seconds,beat,performer,side,hand_x,hand_y,hand_z,head_x,head_y,head_z,"
        "sense_x,sense_y,sense_z,lit"
    )
    for side in ("left", "right"):
        own = [row for row in rows if row["side"] == side]
        seconds = np.array([float(row["seconds"]) for row in own])
        assert np.allclose(np.diff(seconds), 1 / 60, atol=1e-6)
        for point in ("hand", "head"):
            place = np.array([[float(row[f"{point}_{axis}"]) for axis in "xyz"] for row in own])
            step = np.linalg.norm(np.diff(place, axis=0), axis=1)
            assert step.max() < 15 / 60
        lit = np.array([row["lit"] == "1" for row in own])
        assert lit.any()
        assert not lit[-1]


MENDS = {  # what the faulty show's comments say, each fault's own
    "too-close": (
        "{formation: swapped, from: 13.1, beats: 16}",
        "{formation: swapped, from: 13.1, beats: 16, via: {Ash: [[0, 3]], Birch: [[0, 6.2]]}}",
    ),
    "wrong-way-round": ("timing: together, beats: 3}", "timing: together, beats: 6}"),
    "tether-slack": ("pattern: extension, cycle: 12,", "pattern: extension, cycle: 2,"),
    "burns-out": ("{who: Ash, from: 1.1, until: 79.1}", "{who: Ash, from: 1.1, until: 33.1}"),
    "post-out-of-reach": ("post: [-9.5, 11]", "post: [-7.37, 10.68]"),
}


def test_the_mends_in_the_comments_clear_the_faulty_show(tmp_path):
    text = (SHOWS / "wrong_turns.yaml").read_text(encoding="utf-8")
    for wrong, right in MENDS.values():
        assert text.count(wrong) == 1
        text = text.replace(wrong, right)
    text = text.replace("../audio_samples/cinder_ferry.ogg", TRACK.as_posix())
    (tmp_path / "mended.yaml").write_text(text, encoding="utf-8")

    result = _run("check", tmp_path / "mended.yaml", "--json")

    assert [
        f["code"] for f in json.loads(result.stdout)["findings"] if f["severity"] != "note"
    ] == ["no-permit"]
    assert result.exit_code == 0


def _unworded(value):
    """A report without its worded texts; of the mends, how many there are stays."""
    if isinstance(value, dict):
        return {
            key: len(part) if key == "remedies" else _unworded(part)
            for key, part in value.items()
            if key == "remedies" or key not in WORDED
        }
    return [_unworded(part) for part in value] if isinstance(value, list) else value


def _approved(name, text):
    """The approved text of that name; a missing one is written, and the test fails once."""
    path = OUTPUTS / name
    if not path.exists():
        path.write_text(text, encoding="utf-8", newline="\n")
        pytest.fail(f"{name} was missing and has been written: read it, then commit it")
    return path.read_text(encoding="utf-8")


@pytest.mark.parametrize("name", [*CLEAN, "wrong_turns"])
def test_the_report_is_unchanged(reports, name):
    """Change detectors: what a change of the house's rooms or words must leave as it was."""
    report = {**reports[name][1], "show": name}

    text = json.dumps(_unworded(report), indent=1) + "\n"
    assert text == _approved(f"{name}.json", text)


@pytest.mark.parametrize("name", [*CLEAN, "wrong_turns"])
def test_the_trace_is_unchanged(name):
    text = _run("trace", SHOWS / f"{name}.yaml", "--rate", "1", "--drawn").stdout
    assert text == _approved(f"{name}.trace.csv", text)


@pytest.mark.parametrize("name", [*CLEAN, "wrong_turns"])
def test_cues_and_timetable_are_unchanged(name, tmp_path):
    only = [word for part in ("midi", "timetable") for word in ("--only", part)]
    _run("rehearse", SHOWS / f"{name}.yaml", *only, "--out", tmp_path)
    with (tmp_path / name / "timetable.csv").open(encoding="utf-8", newline="") as file:
        timetable = file.read()
    cues = (tmp_path / name / "cues.mid").read_bytes().hex("\n", 32) + "\n"
    assert timetable == _approved(f"{name}.timetable.csv", timetable)
    assert cues == _approved(f"{name}.mid.hex", cues)
