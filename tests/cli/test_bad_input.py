"""Whatever a user gives: one clear line, exit status 2, nothing lost."""

import json
import os
import sys
from functools import cache

import numpy as np
import pytest
import soundfile as sf
from click.testing import CliRunner

from sequencer.cli import main

from .conftest import RATE, SHOW, click_track


def run(*arguments):
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


def assert_refused(result, says):
    assert result.exit_code == 2, result.output
    assert "Traceback" not in result.output
    lines = [line for line in result.stderr.splitlines() if not line.endswith(" …")]  # progress
    assert len(lines) == 1
    assert says in lines[0]
    assert result.stdout == ""
    return lines[0]


def written(folder, text, name="bad.yaml"):
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_the_small_show_can_be_checked(stage_folder):
    result = run("check", stage_folder / "show.yaml", "--json")
    assert result.exit_code in {0, 1}, result.output


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        ("song.wav", "none.wav", 3, "cannot find the track 'none.wav'"),
        ("two-beat-weave", "two-beat-wave", 11, "'two-beat-wave' is not known; did you mean"),
        ("beats: 16", "beats: 16, with: {way: sideways}", 11, "way"),
        ("beats: 16", "beats: 160", 11, "the track ends at"),
        ("from: 3.1", "from: 3.7", 11, "bar 3 has 4 beats"),
        ("tether: 0.55", "tether: -1 m", 9, "outside"),
        ("tether: 0.55", "tether: nan", 9, "is not a number"),
        ("pattern: two-beat-weave", "pattern: toroid, with: {lobes: 0}", 11, "lobes"),
        ("pattern: two-beat-weave", "pattern: toroid, with: {lobes: 1, bend: anti}", 11, "lobe"),
        ("pattern: two-beat-weave", "pattern: orbit, with: {hand_radius: 1.1 m}", 11, "arm"),
        ("metre: 4", "metre: 9", 4, "metre"),
        ("one: 0:00.5", "one: 9:00.0", 4, "outside the track"),
        ("{shape: rectangle, width: 12 m, depth: 10 m}",
         "{outline: [[0, 0], [4, 4], [4, 0], [0, 4]]}", 6, "cross"),
        ("[[-12, -9], [12, -9]]", "[[-12, -9], [-12, -9]]", 7, "0.00 m long"),
        ("title: Small", "title: Small\ndate: 2026-13-45", 2, "not a calendar date"),
        ("from: 3.1", "from: 3.1+1/0", 11, "denominator of 0"),
        ("beats: 16", "beats: 16, cycle: 0.001", 11, "cycle: 0.001 beats is outside 1/8 … 100000"),
        ("beats: 16", "beats: 16, cycle: 0", 11, "cycle: 0 beats is outside 1/8 … 100000"),
        ("beats: 16", "beats: 0", 11, "beats: 0 beats is not more than 0"),
        ("beats: 16", "beats: 100001", 11, "beats: 100001 beats is more than 100000"),
        ("{from: 3.1", "{who: [], from: 3.1", 11, "at least 1"),
        ("name: Ash", 'name: "A\u202Esh"', 9, "direction of text"),
        ("depth: 10 m", "depth: 900 m", 6, "outside 0.001 … 500 m"),
        ("{tether: 0.55}", "poy", 9, "'poi', 'rope dart', 'staff'"),
        ("stature: 1.7", "stature: 0.7", "9:26", "stature: 0.7 m is outside 0.8 … 2.6 m"),
        ("stature: 1.7", "stature: 1.7, posture: lying", "9:40",
         "posture 'lying' must be 'standing' or 'seated'"),
        ("stature: 1.7", "stature: 2.7", "9:26", "stature: 2.7 m is outside 0.8 … 2.6 m"),
        ("stature: 1.7,", "stature: 1.7, arm: 68 cm, shoulder: 1.39, overhead: 2.4 m,", "9:69",
         "overhead: 2.4 m does not match a shoulder at 1.39 m and an arm of 0.68 m"),
        ("stature: 1.7,", "stature: 1.7, arm: 1.2,", "9:36", "arm: 1.2 m is outside 0.34 … 1.02 m"),
        ("{tether: 0.55}", "{kind: staff, grip: 1.4 m}", 9, "1.4 m from the rear end, but the length is only 1.02 m"),
    ],
)  # fmt: skip
def test_a_show_that_cannot_be_used(stage_folder, old, new, line, says):
    assert old in SHOW
    path = written(stage_folder, SHOW.replace(old, new))
    said = assert_refused(run("check", path), says)
    assert said.startswith(f"error: {path}:{line}")
    assert path.read_text(encoding="utf-8") == SHOW.replace(old, new)


def test_another_cut_of_the_song_is_refused(stage_folder):
    path = written(stage_folder, SHOW.replace("song.wav", f"song.wav\n  sha256: {'0' * 64}"))
    assert_refused(run("check", path), "not the cut that the show was made for")


@pytest.mark.parametrize("verb", ["check", "sheet", "trace"])
def test_a_show_that_is_not_there(stage_folder, verb):
    assert_refused(run(verb, stage_folder / "none.yaml"), "file not found")
    assert_refused(run(verb, stage_folder), "this is a folder")


def audio(folder, kind):
    path = folder / f"{kind}.wav"
    song = click_track(20.0)
    if kind == "missing":
        return path
    if kind == "folder":
        path.mkdir(exist_ok=True)
    elif kind == "empty":
        path.write_bytes(b"")
    elif kind == "text":
        path = folder / "text.mp3"
        path.write_text("this is no song\n" * 100, encoding="utf-8")
    elif kind == "headless":
        sf.write(path, song, RATE)
        path.write_bytes(path.read_bytes()[:30])
    elif kind == "not-a-number":
        song[RATE : RATE + 100] = np.nan
        sf.write(path, song, RATE, subtype="FLOAT")
    elif kind == "silent":
        sf.write(path, 0 * song, RATE)
    elif kind == "cut":
        path = folder / "cut.ogg"
        sf.write(path, song, RATE)
        path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])
    elif kind == "one-second":
        sf.write(path, song[:RATE], RATE)
    return path


@pytest.mark.parametrize(
    "kind",
    [
        "missing",
        "folder",
        "empty",
        "text",
        "headless",
        "not-a-number",
        "one-second",
        "silent",
        "cut",
    ],
)
def test_audio_that_cannot_be_heard(tmp_path, kind):
    path = audio(tmp_path, kind)
    assert_refused(run("listen", path), path.name)


def test_noise_is_no_song_to_start_from(tmp_path):
    noise = np.random.default_rng(3).normal(0, 0.1, RATE * 10)
    sf.write(tmp_path / "still.wav", noise, RATE)
    result = run("new", tmp_path / "s.yaml", "--track", tmp_path / "still.wav")
    assert result.exit_code == 2, result.output
    assert "beat" in result.stderr
    assert not (tmp_path / "s.yaml").exists()


def test_new_never_replaces_a_file_unasked(stage_folder):
    path = written(stage_folder, "mine", "mine.yaml")
    assert_refused(run("new", path, "--track", stage_folder / "song.wav"), "already exists")
    assert path.read_text(encoding="utf-8") == "mine"


def test_what_new_writes_can_be_checked(stage_folder):
    path = stage_folder / "ein Lied, 火 ø.yaml"
    made = run(
        "new", path, "--no-draft", "--track", stage_folder / "song.wav", "--title", 'Said "so": 火'
    )
    assert made.exit_code == 0, made.output
    result = run("check", path)
    assert result.exit_code in {0, 1}, result.output


def test_exports_that_cannot_be_written(stage_folder, tmp_path):
    (tmp_path / "exports").write_text("a file in the way", encoding="utf-8")
    assert_refused(
        run("sheet", stage_folder / "show.yaml", "--out", tmp_path / "exports"), "cannot write"
    )
    assert (tmp_path / "exports").read_text(encoding="utf-8") == "a file in the way"


@pytest.mark.skipif(sys.platform == "win32" or os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_without_permission(stage_folder, tmp_path):
    tmp_path.chmod(0o500)
    assert_refused(run("sheet", stage_folder / "show.yaml", "--out", tmp_path), "no permission")


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["trace"], "give either SHOW or --pattern"),
        (["trace", "--pattern", "toroyd"], "toroid"),
        (["trace", "--pattern", "toroid", "--drawn"], "--drawn is for a SHOW"),
        (["trace", "--pattern", "toroid", "--set", "lobes"], "KEY=VALUE"),
        (["trace", "--pattern", "toroid", "--set", "lobes=0"], "lobes"),
        (["trace", "--pattern", "toroid", "--beats", "0"], "--beats"),
        (["sheet", "x.yaml", "--paper", "a9"], "--paper"),
        (["sheet", "x.yaml", "--all", "--only", "post"], "leave out --for and --only"),
        (["new"], "SHOW is missing"),
    ],
)
def test_options_that_make_no_sense(arguments, says):
    result = run(*arguments)
    assert result.exit_code == 2
    assert says in result.stderr
    assert "Traceback" not in result.output


GROUP = """\
title: Group
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
  scenery: [{name: crate, outline: [[-0.5, 6], [0.5, 6], [0.5, 7], [-0.5, 7]], height: 2 m, combustible: false}]
cast:
  - {name: Ash, stature: 1.7, prop: &poi {tether: 0.5}}
  - {name: Birch, stature: 1.7, prop: *poi}
formations:
  a: {spots: {Ash: {at: [-3, 3]}, Birch: {at: [3, 3]}}}
  b: {spots: {Ash: {at: [-3, 8]}, Birch: {at: [3, 8]}}}
staging:
  - {formation: a, from: 1.1}
  - {formation: b, from: 4.1, beats: 16}
timeline:
  - {from: 3.1, pattern: static-spin, timing: together, cycle: 1, beats: 24}
"""
SPOTS = "{spots: {Ash: {at: [-3, 3]}, Birch: {at: [3, 3]}}}"
STAGE = "{shape: rectangle, width: 12 m, depth: 10 m}"
CRATE = "[[-0.5, 6], [0.5, 6], [0.5, 7], [-0.5, 7]]"


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        (STAGE, "{outline: [[0, 0], [4, 4], [4, 0], [0, 4]]}", 6, "cross"),
        (STAGE, "{outline: [[0, 0], [4, 0], [8, 0]]}", 6, "outline"),
        (STAGE, STAGE[:-1] + ", holes: [[[-1, 4], [1, 6], [1, 4], [-1, 6]]]}", 6, "cross"),
        (STAGE, STAGE[:-1] + ", holes: [[[8, 4], [9, 4], [9, 6]]]}", 6, "hole lies outside"),
        (STAGE, STAGE[:-1] + ", holes: [[[-6, 0], [6, 0], [6, 10], [-6, 10]]]}", 6, "outline"),
        (STAGE, "{shape: thrust, width: 4, depth: 9, tongue_width: 6, tongue_depth: 3}", 6, "narrower"),
        ("width: 12 m", "width: .nan", 6, "is not a number"),
        ("width: 12 m", "width: .inf", 6, "is not a number"),
        ("width: 12 m", "width: -12 m", 6, "outside"),
        ("width: 12 m", "width: 12000", 6, "is it in mm?"),
        ("[[-12, -9], [12, -9]]", "[[-12, -9]]", 7, "at least 2"),
        (CRATE, "[[-0.5, 6], [0.5, 7], [0.5, 6], [-0.5, 7]]", 8, "cross"),
        ("height: 2 m", "height: .nan", 8, "is not a number"),
        ("[3, 8]", "[3000, 8]", 14, "is it in mm?"),
        ("[3, 8]", "[.nan, 8]", 14, "is not a number"),
        (", Birch: {at: [3, 8]}", "", 14, "no position for 'Birch'"),
        ("Birch: {at: [3, 8]}", "Birch: {at: [3, 8]}, Clay: {at: [0, 0]}", 14, "not in the cast"),
        (SPOTS, "{shape: line, centre: [0, 4], spacing: 3, order: [Ash]}", 13, "no position for 'Birch'"),
        (SPOTS, "{shape: line, centre: [0, 4], spacing: 3, order: [Ash, Birch, Ash]}", 13, "appears twice"),
        (SPOTS, "{shape: line, centre: [0, 4], spacing: 0}", 13, "outside"),
        ("beats: 16}", "beats: 16, via: {Clay: [[0, 6]]}}", 17, "not in the cast"),
        ("beats: 16}", "beats: 900}", 17, "after the end of the show"),
        ("  scenery:", "  ceilings: [{name: beam, outline: [[0, 0], [4, 4], [4, 0], [0, 4]], height: 3}]\n  scenery:", 8, "cross"),
    ],
)  # fmt: skip
def test_a_place_that_cannot_be(stage_folder, old, new, line, says):
    assert old in GROUP
    path = written(stage_folder, GROUP.replace(old, new))
    said = assert_refused(run("check", path), says)
    assert said.startswith(f"error: {path}:{line}")


@cache
def found_in_the_group(stage_folder):
    """Codes of the findings about the group as it is."""
    clean = json.loads(
        run("check", written(stage_folder, GROUP, "g.yaml"), "--json", "--drawn").stdout
    )
    return {finding["code"] for finding in clean["findings"]}


LIT = "fire: {fuel: kerosene, flame: 0.3 m, lit: [{from: 3.1, until: 9.1}]}\n"


@pytest.mark.parametrize(
    ("changes", "code", "who"),
    [
        ([("[-3, 8]", "[-9, 8]")], "off-stage", "Ash"),
        ([(STAGE, STAGE[:-1] + ", holes: [[[-4, 5], [-2, 5], [-2, 6], [-4, 6]]]}")], "off-stage", "Ash"),
        ([("Birch: {at: [3, 3]}", "Birch: {at: [-3, 3]}")], "too-close", "Ash"),
        ([("beats: 16}", "beats: 16, via: {Birch: [[0, 6.5]]}}")], "scenery-too-close", "Birch"),
        ([("[[-12, -9], [12, -9]]", "[[-6, 4], [6, 4]]")], "audience-on-stage", None),
        (
            [
                ("  scenery:", "  ceilings: [{name: balcony, outline: [[-5, 1], [-1, 1], [-1, 5], [-5, 5]], height: 2.6}]\n  scenery:"),
                ("timeline:", LIT + "timeline:"),
            ],
            "ceiling-too-low",
            "Ash",
        ),
    ],
)  # fmt: skip
def test_what_can_be_but_must_not_is_found(stage_folder, changes, code, who):
    text = GROUP
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    assert code not in found_in_the_group(stage_folder)
    result = run("check", written(stage_folder, text, "b.yaml"), "--json", "--drawn")
    assert result.exit_code == 1, result.output
    found = [one for one in json.loads(result.stdout)["findings"] if one["code"] == code]
    assert found
    assert who is None or {name for one in found for name in one["who"]} >= {who}
    if code == "ceiling-too-low":
        assert {name for one in found for name in one["who"]} == {"Ash"}, "Birch is under the sky"


@pytest.mark.parametrize("stage", [STAGE, "{shape: round, width: 12 m}"])
def test_a_cast_of_one(stage_folder, stage):
    text = SHOW.replace(STAGE, stage)
    assert text.count("stature") == 1
    result = run(
        "check", written(stage_folder, text, "one.yaml"), "--json", "--danced", "3", "--jobs", "1"
    )

    assert result.exit_code in {0, 1}, result.output
    told = json.loads(result.stdout)
    assert told["danced"]["pairs"] == 0
    assert any("One performer only" in line for line in told["unseen"])
