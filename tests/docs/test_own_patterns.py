"""The file of patterns that the page shows is one that the commands and a show take."""

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from sequencer.cli import main

PAGE = Path(__file__).parents[2] / "docs" / "own-patterns.md"
SHOWN = re.search(
    r"```yaml\n(# my-moves\.yaml\n.*?)```", PAGE.read_text(encoding="utf-8"), re.DOTALL
)[1]


def run(*arguments):
    return CliRunner().invoke(main, ["patterns", *map(str, arguments)])


@pytest.fixture
def moves(tmp_path):
    path = tmp_path / "my-moves.yaml"
    path.write_text(SHOWN, encoding="utf-8")
    return path


def test_each_command_of_the_page_works(moves, tmp_path):
    assert "small flower" in run("--from", moves, "--find", "flower").stdout
    drawing = tmp_path / "flower.svg"
    drawn = run("small flower", "--from", moves, "--draw", drawing)
    assert drawn.exit_code == 0
    assert "difficulty 2 of 5 (the hand goes against the prop)" in drawn.stdout
    assert drawing.stat().st_size > 10_000
    steps = json.loads(run("slow cube", "--from", moves, "--steps", "--json").stdout)
    assert [step["place"] for step in steps] == ["bottom", "right", "top", "left", "bottom"]


def test_what_is_for_a_prop_is_listed(moves):
    """The page's own pattern stands for three props; the others, silent, for all."""
    listed = {
        prop: {
            record["name"]: record["props"]
            for record in json.loads(run("--from", moves, "--prop", prop, "--json").stdout)
        }
        for prop in ("fan", "staff", "rope dart")
    }
    assert listed["fan"]["small flower"] == ["poi", "club", "fan"]
    assert "small flower" not in listed["staff"]
    assert "two ways" in listed["staff"]
    assert "two ways" not in listed["rope dart"]
    assert "slow cube" in listed["rope dart"]
    assert "stall" in run("--find", "stall").stdout
    assert run("--prop", "staff", "--find", "stall").stdout == "no pattern matches\n"


def test_the_card_tells_what_it_is_danced_with(moves):
    assert "danced with: poi, club, fan\n" in run("small flower", "--from", moves).stdout
    card = json.loads(run("small flower", "--from", moves, "--json").stdout)
    assert (card["props"], card["prop"]) == (["poi", "club", "fan"], "poi")


def test_laws_are_listed_with_their_parameters():
    laws = json.loads(run("--laws", "--json").stdout)
    assert {"orbit", "toroid", "weave", "carry"} <= set(laws)
    assert "ratio" in {parameter["name"] for parameter in laws["orbit"]}
    assert "toroid (toroid)" in run("--laws").stdout


def test_a_page_and_a_trace_of_a_pattern_of_ones_own(moves, tmp_path):
    page = tmp_path / "page.html"
    assert run("two ways", "--from", moves, "--page", page).exit_code == 0
    assert "a flower on the left" in page.read_text(encoding="utf-8")
    asked = ["trace", "--pattern", "slow cube", "--from", str(moves), "--per-beat", "4"]
    rows = CliRunner().invoke(main, asked).stdout.splitlines()
    assert len(rows) == 1 + 8 + 1


def test_the_matrix_knows_them_too(moves):
    names = json.loads(run("--from", moves, "--joins", "--json").stdout)["names"]
    assert names[-3:] == ["small flower", "two ways", "slow cube"]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("title: x\n", "1:1: this file has no patterns"),
        ("- a\n", "1:1: this file has no patterns"),
        ("patterns:\n", "1:1: there is no pattern under this heading"),
        ("title: x\npatterns: {}\n", "2:1: there is no pattern under this heading"),
        ("", "this file is empty; write patterns under the heading `patterns:`"),
        ("patterns: [a]\n", "1:11: patterns must be names, each with a record"),
        ("patterns:\n  mine: {law: orbitt}\n", "2:9: pattern 'mine': law 'orbitt' is not known"),
        ("patterns:\n  toroid: {law: orbit}\n", "2:11: pattern 'toroid' already exists"),
        ("patterns:\n  m: {law: orbit, set: {ratio: fast}}\n", "2:6: pattern 'm': ratio"),
        ("pattern_files: [gone.yaml]\n", "1:17: there is no pattern file 'gone.yaml'"),
        ("patterns: {\n", "this is not YAML"),
    ],
)
def test_a_file_that_cannot_be_used_is_refused_where_it_stands(tmp_path, text, says):
    path = tmp_path / "moves.yaml"
    path.write_text(text, encoding="utf-8")
    result = run("--from", path)
    assert result.exit_code == 2
    assert len(result.stderr.splitlines()) == 1
    assert says in result.stderr
