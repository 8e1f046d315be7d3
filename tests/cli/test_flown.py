"""`check`, as flown: what is told as a table and as JSON, and what Ctrl-C leaves. Links are made up: they are tested elsewhere."""

import json
from types import SimpleNamespace

import pytest
from click.testing import CliRunner

from sequencer.api import check as api_check
from sequencer.checks import suite
from sequencer.checks.dance import as_flown, flown_gaps
from sequencer.cli import main
from sequencer.cli.progress_line import ProgressLine
from sequencer.outputs.exports import folder
from sequencer.staging.in_flight import flown_show
from tests.nothing_kept import nothing_kept

SHOW = """\
title: One
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.5}}
timeline:
  - {from: 3.1, pattern: static-spin, timing: together, cycle: 1, beats: 8}
"""


@pytest.fixture
def show(stage_folder, monkeypatch):
    path = stage_folder / "flown.yaml"
    path.write_text(SHOW, encoding="utf-8")
    monkeypatch.setattr(
        flown_gaps,
        "flown_link",
        lambda _before, _after, beats, _flying: SimpleNamespace(
            broken=() if beats >= 3.0 else ("speed",), residual=1e-7, least_pull=0.5, hand_speed=7.2,
            hand_acceleration=50.0, spare_reach=0.1, missed=lambda: {"speed": 0.2},
        ),
    )  # fmt: skip
    # where hands really go is worked out elsewhere, and tested there
    monkeypatch.setattr(suite, "flown_show", lambda show, *_: SimpleNamespace(staged=show))
    monkeypatch.setattr(as_flown, "strained", lambda *_, **__: ())
    monkeypatch.setattr(as_flown, "touching", lambda *_, **__: ())
    with nothing_kept():
        yield path


def check(show, *arguments):
    return CliRunner().invoke(main, ["check", str(show), *arguments])


def test_the_table_and_the_json_tell_what_cannot_be_flown(show):
    told = json.loads(check(show, "--json").stdout)
    links = [each for each in told["findings"] if each["code"] == "link-cannot-be-flown"]
    table = " ".join(check(show).stdout.split())

    assert [each["who"] for each in links] == [["Ash"], ["Ash"]]  # from rest and to rest
    for each in links:
        assert (
            "cannot be flown in 2 beats (the hand would have to move at 7.2 m/s, the limit is 6)"
            in each["message"]
        )
        assert each["message"].endswith("3 beats would do")
        assert each["message"] in table
    assert any("As flown" in each for each in told["unseen"])


def test_of_the_drawing_alone_nothing_is_told_of_flights(show):
    told = json.loads(check(show, "--drawn", "--json").stdout)
    assert not any("flown" in each["code"] for each in told["findings"])
    assert not any("As flown" in each for each in told["unseen"])
    codes = {each.code for each in api_check(show).findings}
    assert "link-cannot-be-flown" in codes
    assert "link-cannot-be-flown" not in {
        each.code for each in api_check(show, flown=False).findings
    }


def test_progress_says_what_is_flown(show, monkeypatch):
    heard = []
    monkeypatch.setattr(
        ProgressLine, "__call__", lambda _line, what, share: heard.append((what, share))
    )
    check(show)
    assert [what for what in dict(heard) if "fl" in what] == [
        "flying the patterns", "flying the links", "seeking what would fly for from rest into static-spin",
        "seeking what would fly for static-spin to rest",
    ]  # fmt: skip
    assert all(0.0 <= share <= 1.0 for _, share in heard)


def test_an_interrupted_call_says_that_nothing_is_lost(show, monkeypatch):
    def struck(*_asked):
        raise KeyboardInterrupt

    monkeypatch.setattr(flown_gaps, "flown_link", struck)
    result = check(show)
    assert result.exit_code != 0
    assert "what was worked out so far is kept: ask again to go on" in result.stderr
    assert "Traceback" not in result.output


def test_a_page_as_flown_tells_what_was_found_of_that_and_can_be_asked_for_the_drawing(
    show, tmp_path, monkeypatch
):
    for module in (folder, flown_show):
        monkeypatch.setattr(module, "flown_show", lambda show, *_: SimpleNamespace(staged=show))
    asked = ["rehearse", str(show), "--only", "page", "--audio", "none", "--out", str(tmp_path)]
    pages = {}
    for name, more in (("drawn", ["--drawn"]), ("flown", [])):
        CliRunner().invoke(main, [*asked, *more])
        pages[name] = (tmp_path / "flown" / "rehearsal.html").read_text(encoding="utf-8")
    for word in ('"link-cannot-be-flown"', '"drawnDeviation"'):
        assert (word in pages["flown"], word in pages["drawn"]) == (True, False)


def test_who_asks_for_more_is_not_told_less(show):
    """The show danced with errors is checked as flown too; of what is looked at as drawn that is said."""
    danced = json.loads(check(show, "--danced", "1", "--jobs", "1", "--json").stdout)
    assert "link-cannot-be-flown" in {each["code"] for each in danced["findings"]}
    for more in (("--from", "3.1"), ("--drawn",)):
        told = json.loads(check(show, *more, "--json").stdout)
        assert any("can be flown like this was not looked at" in each for each in told["unseen"])
