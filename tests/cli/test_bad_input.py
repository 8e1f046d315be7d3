"""Whatever a user gives: one clear line, exit status 2, nothing lost."""

import os
import sys

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
        ("song.wav", "none.wav", 3, "no track 'none.wav'"),
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
        ("title: Small", "title: Small\ndate: 2026-13-45", 2, "no day of the calendar"),
        ("from: 3.1", "from: 3.1+1/0", 11, "divided by nothing"),
        ("beats: 16", "beats: 16, cycle: 0.001", 11, "0.125"),
        ("{from: 3.1", "{who: [], from: 3.1", 11, "at least 1"),
        ("name: Ash", 'name: "A\u202Esh"', 9, "direction of writing"),
        ("depth: 10 m", "depth: 900 m", 6, "outside 0.001 … 500 m"),
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
    assert_refused(run("check", path), "another cut")


@pytest.mark.parametrize("verb", ["check", "sheet", "trace"])
def test_a_show_that_is_not_there(stage_folder, verb):
    assert_refused(run(verb, stage_folder / "none.yaml"), "there is no such file")
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
    assert_refused(run("new", path, "--track", stage_folder / "song.wav"), "there already")
    assert path.read_text(encoding="utf-8") == "mine"


def test_what_new_writes_can_be_checked(stage_folder):
    path = stage_folder / "ein Lied, 火 ø.yaml"
    made = run("new", path, "--track", stage_folder / "song.wav", "--title", 'Said "so": 火')
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
        (["trace", "--pattern", "toroid", "--set", "lobes"], "KEY=VALUE"),
        (["trace", "--pattern", "toroid", "--set", "lobes=0"], "lobes"),
        (["trace", "--pattern", "toroid", "--beats", "0"], "--beats"),
        (["sheet", "x.yaml", "--paper", "a9"], "--paper"),
        (["new"], "SHOW is missing"),
    ],
)
def test_options_that_make_no_sense(arguments, says):
    result = run(*arguments)
    assert result.exit_code == 2
    assert says in result.stderr
    assert "Traceback" not in result.output
