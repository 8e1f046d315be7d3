"""`sequencer sheet`: the pack unless something else is asked for; and what is asked for that there is not."""

import pytest
from click.testing import CliRunner

from sequencer import tasks
from sequencer.cli import main
from sequencer.findings import Report


@pytest.mark.parametrize(
    ("options", "asked"),
    [
        ([], {"pack": True, "only": (), "for_whom": ()}),
        (["--all"], {"pack": False, "only": (), "for_whom": ()}),
        (["--for", "Wren", "--for", "Flint"], {"pack": False, "only": (), "for_whom": ("Wren", "Flint")}),
        (["--only", "post", "--for", "Flint"], {"pack": False, "only": ("post",), "for_whom": ("Flint",)}),
    ],
)  # fmt: skip
def test_what_is_asked_for_is_printed_and_what_is_left_is_told(
    monkeypatch, tmp_path, options, asked
):
    """The library's own choice is tested in tests/unit/outputs/sheets/test_choosing.py."""
    old = [tmp_path / f"small-{k}.pdf" for k in range(5)]
    got = {}

    def print_sheets(show, out, *, removed, outdated, progress, **given):
        got.update(given)
        removed(tmp_path / "small-gone.pdf", "Gone is away tonight")
        for path in old:
            outdated(path)
        return Report(show=str(show)), [tmp_path / "all-sheets.pdf"]

    monkeypatch.setattr(tasks, "print_sheets", print_sheets)
    result = CliRunner().invoke(main, ["sheet", "small.yaml", *options])

    assert result.exit_code == 0
    assert {name: got[name] for name in asked} == asked
    assert result.stdout == f"{tmp_path / 'all-sheets.pdf'}\n"
    assert "small-gone.pdf: Gone is away tonight" in result.stderr
    assert "small-0.pdf, small-1.pdf, small-2.pdf and 2 more" in result.stderr
    assert "--all prints every sheet" in result.stderr


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (["--for", "Asch"], "nobody in the cast or crew is called 'Asch': did you mean Ash"),
        (["--only", "posts"], "there is no kind of sheet 'posts': did you mean post"),
    ],
)
def test_an_unknown_name_is_refused_before_the_song_is_heard(
    stage_folder, tmp_path, monkeypatch, options, says
):
    def unwanted(*_):
        raise AssertionError("staged")

    monkeypatch.setattr(tasks.shows, "stage_show", unwanted)
    show, out = stage_folder / "show.yaml", tmp_path / "out"
    result = CliRunner().invoke(main, ["sheet", str(show), "--out", str(out), *options])

    assert result.exit_code == 2
    assert says in result.stderr
    assert not out.exists()
