"""No text of a show, of a file of patterns, or of a file of rules may steer a terminal, whatever it is for."""

import json
from pathlib import Path

import pytest

from sequencer.errors import InputError, InputErrors
from sequencer.show.pattern_book import book_from_document, book_from_file
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.show.unseen_texts import unseen_texts

SHOW = """\
title: Two lanterns
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-6, -6], [6, -6]]}]
cast: [{name: Wren, stature: 1.7 m, prop: {tether: 55 cm}}]
patterns:
  petal: {law: orbit, set: {ratio: -3}, why: quick, summary: a petal, notes: turn, source: common practice, family: flowers}
timeline:
  - {from: 17.10, pattern: toroid, with: {lobes: 3, plane: wall}, beats: 8}
"""
SIGNS = {"\\e[31m": "control characters", "\\u202etxet": "reverse the direction of text"}


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize(
    "old", ["song.ogg", "quick", "a petal", "turn", "common practice", "flowers", "wall", "ratio"]
)
def test_a_text_in_a_show_is_refused_with_its_place(old, sign):
    before = SHOW[: SHOW.index(old)]
    place = f"{before.count(chr(10)) + 1}:{len(before) - before.rfind(chr(10))}"
    text = SHOW.replace(old, f'"{old}{sign}"', 1)
    with pytest.raises(InputError) as caught:
        show_from_document(parse_document(text, "s.yaml"))
    said = str(caught.value)
    assert said.startswith(f"s.yaml:{place}: ")
    assert SIGNS[sign] in said
    assert said.isprintable()


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("key", ["family", "why", "summary", "notes", "source"])
def test_a_text_in_a_file_of_patterns_is_refused_with_its_place(tmp_path: Path, key, sign):
    text = f'patterns:\n  petal:\n    law: orbit\n    set: {{ratio: -3}}\n    {key}: "a{sign}"\n'
    (tmp_path / "p.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(InputError, match=SIGNS[sign]) as caught:
        book_from_file(tmp_path / "p.yaml")
    assert caught.value.place == (str(tmp_path / "p.yaml"), 5, len(key) + 7)
    named = parse_document("pattern_files: [p.yaml]\n", str(tmp_path / "s.yaml"))
    with pytest.raises(InputError, match=SIGNS[sign]) as caught:
        book_from_document(named)
    assert caught.value.place.file.endswith("p.yaml")


def test_a_file_of_patterns_answers_for_its_patterns_only(tmp_path: Path):
    """A show may be given as one; what else it says is not told of."""
    text = 'title: "a\\e[31m"\npatterns:\n  petal: {law: orbit, set: {ratio: -3}, why: "two\\nlines"}\n'
    (tmp_path / "p.yaml").write_text(text, encoding="utf-8")
    assert book_from_file(tmp_path / "p.yaml")["petal"].why == "two\nlines"


def test_all_are_told_at_once():
    text = SHOW.replace("quick", '"\\e"').replace("turn", '"\\0"')
    with pytest.raises(InputErrors) as caught:
        show_from_document(parse_document(text, "s.yaml"))
    assert [
        text[text.index("petal:") :][each.place.column - 3 :][:4] for each in caught.value.errors
    ] == ['"\\e"', '"\\0"']


@pytest.mark.parametrize("letter", ["\u202e", "\u2066", "\x85", "\x1b", "\x7f", "\0"])
@pytest.mark.parametrize("form", ["raw", "json", "block"])
def test_no_way_of_writing_brings_one_past_the_reader(letter, form):
    """YAML refuses most where they stand as such, and takes each by its number."""
    forms = {"raw": f"a: x{letter}y z\n", "json": f"a: {json.dumps(f'x{letter}y z')}\n", "block": f"a: |\n  x{letter}y z\n"}  # fmt: skip
    try:
        document = parse_document(forms[form], "s.yaml")
    except InputError as error:
        assert error.code == "not-yaml"  # noqa: PT017 (either is good)
        return
    held = letter in document.values["a"]
    assert [each.code for each in unseen_texts(document)] == ["unseen-letter"] * held
