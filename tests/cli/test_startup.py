"""`--help` answers without loading what is heavy, and every verb has an example."""

import subprocess
import sys
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from sequencer.cli import main

HEAVY = (
    "librosa",
    "numba",
    "matplotlib",
    "pandas",
    "reportlab",
    "scipy",
    "numpy",
    "pydantic",
    "ruamel",
)
VERBS = sorted(main.list_commands(click.Context(main)))


@pytest.mark.parametrize("verb", ["", *VERBS])
def test_help_loads_nothing_heavy(verb):
    code = (
        "import sys\nfrom sequencer.cli import main\n"
        f"try: main({[verb, '--help'] if verb else ['--help']!r}, prog_name='sequencer')\n"
        "except SystemExit: pass\n"
        f"print([m for m in {HEAVY!r} if m in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stderr.strip() == "[]"
    assert "Usage: sequencer" in done.stdout


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_shows_an_example(verb):
    out = CliRunner().invoke(main, [verb, "--help"]).output
    assert f"Example: sequencer {verb}" in out


def test_an_unknown_verb_is_bad_input():
    result = CliRunner().invoke(main, ["lissten"])
    assert result.exit_code == 2
    assert "listen" in result.output


def test_our_own_fault_is_70_with_a_log(monkeypatch):
    from sequencer import tasks

    def broken():
        raise RuntimeError("made to break")

    monkeypatch.setattr(tasks, "schema_text", broken)
    result = CliRunner().invoke(main, ["new", "--schema"])
    assert result.exit_code == 70
    line = result.output.strip()
    assert line.startswith("bug in sequencer (RuntimeError); please report it and attach ")
    assert "Traceback" not in line
    log = line.rsplit(" ", 1)[-1]
    assert "made to break" in Path(log).read_text(encoding="utf-8")


def test_an_interruption_is_130(monkeypatch):
    from sequencer import tasks

    def interrupted():
        raise KeyboardInterrupt

    monkeypatch.setattr(tasks, "schema_text", interrupted)
    result = CliRunner().invoke(main, ["new", "--schema"])
    assert result.exit_code == 130
    assert "interrupted" in result.output
