"""A show dances patterns from files beside it; what is wrong in such a file is named there."""

from click.testing import CliRunner

from sequencer.cli import main

from .conftest import SHOW

MOVES = "patterns:\n  close flower: {law: orbit, set: {ratio: -3, hand_radius: 0.25}}\n"


def check(path):
    return CliRunner().invoke(main, ["check", str(path), "--json"])


def show_with(folder, moves):
    (folder / "moves.yaml").write_text(moves, encoding="utf-8")
    text = SHOW.replace("two-beat-weave", "close flower") + "pattern_files: [moves.yaml]\n"
    path = folder / "own.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def test_a_show_dances_a_pattern_of_a_file(stage_folder):
    result = check(show_with(stage_folder, MOVES))
    assert result.exit_code in {0, 1}, result.output


def test_a_fault_in_the_file_is_named_in_the_file(stage_folder):
    result = check(show_with(stage_folder, MOVES.replace("ratio", "ration")))
    assert result.exit_code == 2
    assert f"{stage_folder / 'moves.yaml'}:2:17:" in result.stderr
    assert "did you mean ratio?" in result.stderr


def test_a_file_that_is_not_there(stage_folder):
    path = show_with(stage_folder, MOVES)
    (stage_folder / "moves.yaml").unlink()
    result = check(path)
    assert result.exit_code == 2
    assert f"{path}:12:17: there is no pattern file 'moves.yaml'" in result.stderr


def test_a_file_without_patterns_is_told_as_such(stage_folder):
    """Whatever else it holds: else its patterns would only be unknown later."""
    result = check(show_with(stage_folder, "root:*:19000:0:99999:7:::\n"))
    assert result.exit_code == 2
    assert f"{stage_folder / 'moves.yaml'}:1:1: this file has no patterns" in result.stderr
    assert "19000" not in result.stderr
    assert (
        "moves.yaml:1:1: there is no pattern"
        in check(show_with(stage_folder, "patterns:\n")).stderr
    )
    result = check(show_with(stage_folder, MOVES.replace("patterns:", "moves:")))
    assert "has no patterns; write them under the heading `patterns:`" in result.stderr
