"""The scripts of docs/examples run as they stand, use nothing but the face, and are short."""

import ast
import importlib
import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

import sequencer

ROOT = Path(__file__).parents[2]
SCRIPTS = sorted((ROOT / "docs" / "examples").glob("*.py"))
PNG = b"\x89PNG\r\n\x1a\n"  # source: PNG specification, 5.2


def entry_points():
    text = (ROOT / "docs" / "example_package" / "pyproject.toml").read_text(encoding="utf-8")
    groups = tomllib.loads(text)["project"]["entry-points"]
    return [(group, value) for group, entries in groups.items() for value in entries.values()]


@pytest.mark.parametrize(("group", "value"), entry_points())
def test_the_example_package_names_what_there_is(group, value, monkeypatch):
    """Installed and used it is in tests/cli/test_example_package.py, where it can be built."""
    monkeypatch.syspath_prepend(ROOT / "docs" / "example_package")
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    module, name = value.split(":")
    assert getattr(importlib.import_module(module), name)
    assert f"`{group}`" in (ROOT / "docs" / "library.md").read_text(encoding="utf-8")


def run(script, *arguments):
    done = subprocess.run(
        [sys.executable, "-W", "error", script, *arguments],
        cwd=ROOT, capture_output=True, text=True, encoding="utf-8", check=False,
        env={**os.environ, "PYTHONIOENCODING": "utf-8"},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_there_are_three():
    assert [script.stem for script in SCRIPTS] == ["clearance_study", "pattern_curve", "song_bars"]


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda script: script.stem)
def test_a_script_is_short_and_uses_the_face_alone(script):
    text = script.read_text(encoding="utf-8")
    assert len(text.splitlines()) < 40
    assert text.count("\n# %% ") >= 3
    imported = [
        node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Import | ast.ImportFrom)
    ]
    names = set()
    for node in imported:
        home = getattr(node, "module", "") or ""
        assert not home.startswith("sequencer."), home
        assert "pyplot" not in home
        names |= {alias.name for alias in node.names if home == "sequencer"}
    assert names
    assert names <= set(sequencer.__all__)


def test_the_pattern_s_curve(tmp_path):
    said = run("docs/examples/pattern_curve.py", str(tmp_path / "curve.png"))
    assert said.startswith("<ComposedLaw of 4 phases, repeats every 4 beats>\n")
    assert "head at most" in said
    assert (tmp_path / "curve.png").read_bytes().startswith(PNG)


def test_the_clearance_study():
    said = run("docs/examples/clearance_study.py", "shows/salt_wind.yaml")
    show = sequencer.stage(ROOT / "shows" / "salt_wind.yaml")
    near = sequencer.distances(show).pairs[0]
    assert f"{near.distance:.3f}" in said
    for name in show.song.section_names():
        assert f"\n{name} " in said


def test_the_clearance_study_of_a_solo_show_ends_in_one_line():
    said = run("docs/examples/clearance_study.py", "shows/night_ferry.yaml").splitlines()
    assert len(said) == 2
    assert said[0].startswith("<Staged Night Ferry: 1 in the cast")
    assert said[1] == "There is one performer, Isa: no pair to measure."


def test_the_song_s_bars(tmp_path):
    track = ROOT / "audio_samples" / "cinder_ferry.ogg"
    said = run("docs/examples/song_bars.py", str(track), str(tmp_path / "bars.png"))
    assert said.startswith("<Song cinder_ferry.ogg: ")
    for name in sequencer.hear(track).section_names():
        assert f"\n{name} " in said
    assert (tmp_path / "bars.png").read_bytes().startswith(PNG)
