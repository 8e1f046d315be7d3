"""The run of the night on three pages, read back from the PDF: the checks, the steps, the log."""

import re

import pypdf
import pytest

from sequencer.outputs.sheets.night_sheet import night_sheet, when_words
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.safety.run_of_night import run_of_the_night


@pytest.fixture(scope="module")
def printed(rounds, tmp_path_factory):
    return next(p for p in rounds.printed(tmp_path_factory)[1] if p.name.endswith("night.pdf"))


def plain(text):
    return " ".join(text.replace("\u00a0", " ").split())


def test_the_night_is_three_pages_each_with_its_own_matter(printed, pages):
    go, steps, log = (plain(pages.text_of(printed, number)) for number in range(3))

    assert len(pypdf.PdfReader(printed).pages) == 3
    for words in (
        "Go or no-go",
        "One no means no",
        "soaked props go back",
        "Weather",
        "Equipment",
        "Sound",
        "Fuel",
    ):
        assert words in go, words
    assert "Step by step" in steps
    assert "load in" in steps
    assert "hand the venue back" in steps
    assert "smother; never spin the flame out" in steps
    for words in (
        "Fire watch",
        "initials",
        "0 min",
        "10 min",
        "20 min",
        "30 min",
        "1 Łucja",
        "stops called",
    ):
        assert words in log, words
    assert log.count("2 Søren") == 2  # a row for each burn


def test_everybody_is_on_page_one_by_name_with_room_for_initials(printed, pages):
    go = plain(pages.text_of(printed, 0))

    for words in ("S1 Ewa, spotter: on post", "S3 Mira, lead: on post", "S4 Ada, fuel keeper: on post",
                  "________, first aider: there", "________, caller: phone tested", "Łucja, performer: ready"):  # fmt: skip
        assert f"{words} yes no ____" in go, words
    assert "Extinguisher 2 of 2 (water, 2-A)" in go


def test_its_times_are_those_of_the_steps(rounds, tmp_path, pages):
    """Song at 21:40: the first check 75 min before it, the second 5 min before, when everybody has been sent to their post."""
    text = f'{rounds.ROUND}begins: "21:40"\n'
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(stop=False))
    path = tmp_path / "night.pdf"
    path.write_bytes(document_bytes([night_sheet(edition)], edition, "letter", "night"))
    go, steps, _ = (plain(pages.text_of(path, number)) for number in range(3))

    assert "first, 20:25" in go
    assert "second, 21:35" in go
    assert "20:25 lead: first go or no-go" in steps
    assert "21:35 lead: second go or no-go" in steps
    assert "21:30 spotter, perimeter: to the posts" in steps
    # what starts and ends within one minute is told by the second
    assert not re.search(r"\b(\d\d:\d\d):\d\d until \1(?!:)", steps)
    assert pages.faults(path) == []


def test_what_is_after_the_song_does_not_look_like_a_clock(rounds, tmp_path):
    edition = Edition(staged=rounds.show(tmp_path), report=rounds.report(stop=False))
    night = run_of_the_night(edition.staged, edition.plan)
    words = [when_words(night, step.at).replace("\u00a0", " ") for step in night.steps]

    assert words[0] == "−120 min"
    assert words[-1] == "+33 min"  # the last flame goes out at 2:56, half an hour before
    assert not any(re.fullmatch(r"[3-9]\d:\d\d", each) for each in words)
    assert "0:00" in words


def test_a_dark_show_has_its_three_pages_too(rounds, tmp_path, pages):
    text = rounds.ROUND[: rounds.ROUND.index("fire:")] + rounds.ROUND[rounds.ROUND.index("crew:") :]
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(stop=False))
    path = tmp_path / "night.pdf"
    path.write_bytes(document_bytes([night_sheet(edition)], edition, "a4", "night"))
    words = plain(pages.text_of(path))

    assert len(pypdf.PdfReader(path).pages) == 3
    assert "Floor dry and lit" in words
    assert "Fire watch" not in words
    assert "soaked props counted" not in words.lower()
