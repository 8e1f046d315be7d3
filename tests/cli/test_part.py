"""`check` and `rehearse` on a part of a show: what is said, exit status, and options that do not go together."""

import json

import pytest
from click.testing import CliRunner

from sequencer.cli import main

SHOW = "shows/wrong_turns.yaml"


def run(*arguments):
    return CliRunner().invoke(main, list(arguments))


def test_a_part_is_named_and_so_is_what_was_not_looked_at():
    found = run("check", SHOW, "--from", "4.1", "--until", "9.1")
    assert found.exit_code == 1
    first = found.output.splitlines()[0]
    assert first.startswith(f"{SHOW}, bars 4.1 to 9.1 only: DO NOT DANCE IT YET")
    assert first.endswith("the rest was not looked at")
    assert "Only bars 4.1 to 9.1 of the show were looked at" in " ".join(found.output.split())
    assert "wrong-way-round" in found.output
    assert "burns-out" not in found.output


def test_json_holds_the_part():
    found = run("check", SHOW, "--until", "3.1", "--json")
    assert json.loads(found.output)["part"] == "bars 1.1 to 3.1"
    assert found.exit_code == 0


@pytest.mark.parametrize("option", [("--mend",), ("--danced", "3")])
def test_a_part_is_neither_mended_nor_danced(option):
    found = run("check", SHOW, "--from", "4.1", *option)
    assert found.exit_code == 2
    assert "need the whole show" in found.output


@pytest.mark.parametrize("command", ["check", "rehearse"])
def test_a_moment_that_is_not_there_is_refused_in_one_line(command):
    found = run(command, SHOW, "--from", "chorus 9")
    assert found.exit_code != 0
    said = str(found.exception) + found.output
    assert "--from: the song has no section 'chorus 9'" in said


def test_the_page_of_a_part_repeats_it(tmp_path):
    found = run(
        "rehearse",
        SHOW,
        "--out",
        str(tmp_path),
        "--only",
        "page",
        "--audio",
        "none",
        "--from",
        "4.1",
        "--until",
        "6.1",
    )
    assert found.exit_code == 1, found.output  # its part has a STOP
    (page,) = tmp_path.rglob("*.html")
    text = page.read_text("utf-8")
    assert '"part":[' in text.replace(" ", "")
    assert "bars 4.1 to 6.1" in text


def test_the_counts_of_a_part_begin_four_beats_before_it(tmp_path):
    import soundfile

    for start in ((), ("--from", "4.1", "--until", "6.1")):
        run(
            "rehearse",
            SHOW,
            "--out",
            str(tmp_path / str(len(start))),
            "--only",
            "counts",
            "--click-only",
            *start,
        )
    whole, part = (next((tmp_path / each).rglob("*.wav")) for each in ("0", "4"))
    assert soundfile.info(part).duration == pytest.approx(12 * 60 / 100, abs=0.3)
    assert soundfile.info(whole).duration > 100
