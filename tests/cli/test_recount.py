"""`check --recount`: the count of a show changed from the command line."""

import shutil

import pytest
from click.testing import CliRunner

from sequencer.cli import main

from .conftest import SHOW


def run(*arguments):
    return CliRunner().invoke(main, [str(each) for each in arguments])


@pytest.fixture
def show(stage_folder, tmp_path):
    """The small show, with its song beside it."""
    shutil.copy(stage_folder / "song.wav", tmp_path)
    path = tmp_path / "show.yaml"
    path.write_text(SHOW, encoding="utf-8")
    return path


def test_the_count_is_changed_and_the_show_checked_in_it(show):
    result = run("check", "--drawn", "--recount", "tempo=half", show)

    assert result.exit_code in (0, 1)
    assert "recounted: 2 lines" in result.stderr
    text = show.read_text(encoding="utf-8")
    assert "tempo: half" in text
    assert "{from: 2.1, pattern: two-beat-weave, beats: 8}" in text


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--recount", "pace=half"), "'pace' is no correction"),
        (("--recount", "tempo"), "no correction 'tempo'"),
        (("--recount", "tempo=half", "--from", "3.1"), "need the whole show"),
    ],
)
def test_what_is_refused_leaves_the_file_as_it_is(show, arguments, words):
    result = run("check", "--drawn", *arguments, show)

    assert result.exit_code == 2
    assert words in result.stderr
    assert show.read_text(encoding="utf-8") == SHOW
