"""`draw`: every picture of a show in every kind of file, and what it refuses."""

import pytest
from click.testing import CliRunner
from pypdf import PdfReader

from sequencer.cli import main

TWO = """\
title: Two
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue:
  stage: {shape: thrust, width: 12 m, depth: 6 m, tongue_width: 5 m, tongue_depth: 4 m}
  audience: [{name: front, line: [[-12, -9], [12, -9]]}, {name: bank, line: [[-12, -9], [-12, 4]]}]
cast:
  - {name: Ash, stature: 1.7, prop: &poi {tether: 0.5}}
  - {name: Birch, stature: 1.7, prop: *poi}
formations:
  line: {shape: line, centre: [0, 7], spacing: 3}
  pair: {shape: face to face, centre: [0, 7], spacing: 2}
staging:
  - {formation: line, from: 1.1}
  - {formation: pair, from: 4.1, beats: 8}
timeline:
  - {from: 3.1, pattern: static-spin, timing: together, cycle: 1, beats: 24}
"""


def draw(*arguments):
    return CliRunner().invoke(main, ["draw", *map(str, arguments)])


@pytest.fixture(scope="module")
def show(stage_folder):
    path = stage_folder / "drawn.yaml"
    path.write_text(TWO, encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("kind", "begins"), [("png", b"\x89PNG"), ("svg", b"<?xml"), ("pdf", b"%PDF")]
)
def test_every_picture_in_every_kind(show, tmp_path, kind, begins):
    result = draw(show, "--as", kind, "--out", tmp_path)

    assert result.exit_code == 0, result.output
    written = sorted((tmp_path / "drawn").iterdir())
    assert [path.name.partition("-")[0].partition(".")[0] for path in written] == [
        "closest", "flames", "formations", "plan", "song",
    ]  # fmt: skip
    for path in written:
        assert path.read_bytes().startswith(begins)
        assert str(path) in result.stdout
    if kind == "pdf":
        (plan,) = (path for path in written if path.name.startswith("plan"))
        said = PdfReader(plan).pages[0].extract_text()
        for word in ("Ash", "Birch", "FRONT", "closest", "metres"):
            assert word in said


def test_a_plan_for_each_moment(show, tmp_path):
    result = draw(
        show, "plan", "--at", "3.2+1/2", "--at", "0:12.5", "--out", tmp_path, "--as", "svg"
    )

    assert result.exit_code == 0, result.output
    assert sorted(path.name for path in (tmp_path / "drawn").iterdir()) == [
        "plan-0m12.5.svg", "plan-3.2+1-2.svg",
    ]  # fmt: skip


def test_the_same_picture_twice_is_the_same_file(show, tmp_path):
    for name in ("one", "two"):
        draw(show, "plan", "formations", "--as", "svg", "--at", "5.1", "--out", tmp_path / name)
    for path in (tmp_path / "one" / "drawn").iterdir():
        assert path.read_bytes() == (tmp_path / "two" / "drawn" / path.name).read_bytes()


def test_one_performer_has_no_closest_pair(stage_folder, tmp_path):
    result = draw(stage_folder / "show.yaml", "--out", tmp_path)

    assert result.exit_code == 0, result.output
    assert "not drawn: closest" in result.stderr
    assert len(list((tmp_path / "show").iterdir())) == 4


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["plan", "--at", "99.1"], "outside the track"),
        (["plan", "--at", "3.7"], "4 beats"),
        (["plan", "--at", "chorus of none"], "no section"),
        (["flames", "--from", "5.1", "--until", "4.1"], "not after the start"),
        (["plot"], "plot"),
        (["--as", "bmp"], "bmp"),
    ],
)
def test_what_cannot_be_drawn_is_refused(show, tmp_path, arguments, says):
    result = draw(show, *arguments, "--out", tmp_path)

    assert result.exit_code == 2
    assert says in result.stderr
    assert "Traceback" not in result.output
    assert not list(tmp_path.rglob("*.*"))
