"""`patterns NAME` for a body: card, JSON, drawing, steps and page agree; the contact sheet; bad statures."""

import json
import re

import pytest
from click.testing import CliRunner
from pypdf import PdfReader

from sequencer.cli import main
from sequencer.outputs.patterns.one_pattern import OnePattern


def patterns(*arguments):
    return CliRunner().invoke(main, ["patterns", *map(str, arguments)])


@pytest.fixture
def as_drawn(monkeypatch):
    """Whatever is not about how it is flown."""
    monkeypatch.setattr(OnePattern, "flown", {})


def test_card_and_json_tell_how_it_is_flown():
    told = patterns("three-beat-weave").stdout
    flown = json.loads(patterns("three-beat-weave", "--json").stdout)["hands"]["right"]["flown"]
    assert f"as flown: reads {flown['reads']}" in told
    assert f"head typically {100 * flown['head_off_rms_m']:.0f} cm off the drawing" in told
    assert f"pull {flown['least_pull_n']:.1f} to {flown['pull_n']:.1f} N" in told


@pytest.mark.usefixtures("as_drawn")
def test_the_card_is_of_who_dances_it():
    usual = patterns("pro-bend-4").stdout
    assert "danced by someone 1.70 m tall with poi of 51 cm at 100 beats a minute" in usual
    assert "hand circle 10 cm (usually 20 cm)" in usual
    assert "    ahead        " in usual
    small = patterns("pro-bend-4", "--stature", "5'1\"", "--tempo", "90", "--timing", "together")
    assert small.exit_code == 0, small.output
    assert "1.55 m tall with poi of 46 cm at 90 beats a minute, same time" in small.stdout
    given = patterns("pro-bend-4", "--set", "tether=45cm", "--set", "hand_radius=15cm").stdout
    assert "poi of 45 cm" in given
    assert "hand circle " not in given
    pair = patterns("static-spin", "--prop", "staff", "--stature", "1.8 m").stdout
    assert "1.80 m tall with a pair of staffs of 108 cm" in pair


@pytest.mark.usefixtures("as_drawn")
def test_json_holds_the_fit_and_its_windows():
    card = json.loads(patterns("pro-bend-4", "--json").stdout)
    fit = card["fit"]
    assert fit["fits"] is True
    assert set(fit["values"]) == {"left", "right"}
    assert fit["values"]["right"]["hand_radius"] == 0.1
    assert set(fit["posture_degrees"]) == {"turn", "lean", "side", "nod", "tilt"}
    for window in fit["windows"].values():
        assert window["low"] <= window["best"] <= window["high"]
    assert 0.02 < fit["margins"]["body_m"] < 0.1
    assert fit["opens"] == []


@pytest.mark.usefixtures("as_drawn")
def test_why_it_does_not_fit_and_what_opens_it():
    told = patterns("two-beat-weave", "--set", "ahead=-0.3").stdout
    assert re.search(r"does not fit: the prop still goes \d cm into your own body", told)
    assert "it would fit with ahead left for the tool to choose" in told
    assert "range of each parameter" not in told


@pytest.mark.usefixtures("as_drawn")
def test_steps_drawing_and_page_are_of_the_same_dance(tmp_path):
    page, drawing = tmp_path / "it.html", tmp_path / "it.svg"
    told = patterns(
        "iso-bend-3", "--stature", "1.7", "--steps", "--draw", drawing, "--page", page
    )  # fmt: skip
    assert told.exit_code == 0, told.output
    assert "hand at 4 o’clock" in told.stdout.split("  2  count")[0]
    assert "for someone 1.70 m tall with poi of 51 cm" in page.read_text(encoding="utf-8")
    assert drawing.read_bytes().startswith(b"<?xml")


def test_the_contact_sheet(tmp_path):
    path, again = tmp_path / "all.pdf", tmp_path / "again.pdf"
    for each in (path, again):
        told = patterns("--draw", each, "--family", "carry")
        assert told.exit_code == 0, told.output
    said = PdfReader(path).pages[0].extract_text()
    for word in ("carry", "1.50 m", "1.70 m", "1.95 m", "poi of 58 cm"):
        assert word in said
    assert path.read_bytes() == again.read_bytes()
    one = patterns("--draw", tmp_path / "one.png", "--family", "carry", "--stature", "1.62m")
    assert one.exit_code == 0, one.output
    assert (
        patterns("--draw", tmp_path / "x.pdf", "--family", "toroid", "--prop", "fan").exit_code == 2
    )


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["extension", "--stature", "3 m"], "0.8 to 2.6 m"),
        (["extension", "--stature", "tall"], "number with a unit"),
        (["extension", "--stature", "170 kg"], "kg"),
        (["--stature", "1.7"], "--stature needs the NAME"),
        (["extension", "--set", "beats=0"], "beats must be"),
        (["--draw", "all.bmp"], "not a picture format"),
    ],
)
def test_what_cannot_be_is_refused(arguments, says, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    result = patterns(*arguments)
    assert result.exit_code == 2
    assert says in result.stderr
    assert "Traceback" not in result.output
    assert not list(tmp_path.iterdir())
