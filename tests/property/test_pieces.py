"""A show file read in pieces says the same as read as a whole: values, places, and what is said of faults.

Reference: the same text parsed in one go, with `tree_in_pieces` switched off.
"""

import random
from pathlib import Path

import pytest

from sequencer.errors import InputError
from sequencer.show.text import document, pieces
from sequencer.show.text.document import parse_document

SHOWS = sorted((Path(__file__).parents[2] / "shows").glob("*.yaml"))
LETTERS = " \t\n-:,{}[]#'\"&*|>%@?!~.a1é"
LINES = ("- {a: 1}", "  - b", "c:", "    d: |", "---", "...", "%YAML 1.2", "- - e", "? f", "&g", "*g", '"', "title: x")  # fmt: skip


def told(text):
    try:
        found = parse_document(text, "s.yaml")
    except InputError as error:
        return str(error)
    return found.values, dict(found.places), dict(found.keys)


def as_a_whole(text, monkeypatch):
    with monkeypatch.context() as patched:
        patched.setattr(document, "tree_in_pieces", lambda _: None)
        return told(text)


def damaged(text, draw):
    """A text with some letters and lines put in, taken out or moved."""
    for _ in range(draw.randint(1, 3)):
        at = draw.randrange(len(text))
        kind = draw.randrange(5)
        if kind == 0:
            text = text[:at] + draw.choice(LETTERS) + text[at:]
        elif kind == 1:
            text = text[:at] + text[at + draw.choice((1, 1, 3, 80)) :]
        elif kind == 2:
            lines = text.split("\n")
            k = draw.randrange(len(lines))
            lines[k] = " " * draw.randrange(7) + lines[k].lstrip()
            text = "\n".join(lines)
        elif kind == 3:
            lines = text.split("\n")
            lines.insert(draw.randrange(len(lines)), " " * draw.randrange(5) + draw.choice(LINES))
            text = "\n".join(lines)
        else:
            lines = text.split("\n")
            lines.insert(draw.randrange(len(lines)), lines[draw.randrange(len(lines))])
            text = "\n".join(lines)
    return text


@pytest.mark.parametrize("path", SHOWS, ids=lambda path: path.stem)
def test_the_shows_are_read_in_pieces_and_say_the_same(path, monkeypatch):
    text = path.read_text(encoding="utf-8")

    assert document.tree_in_pieces(text) is not None
    assert told(text) == as_a_whole(text, monkeypatch)


def test_a_damaged_show_says_the_same(monkeypatch):
    draw = random.Random(7)  # noqa: S311  # no secret
    text = SHOWS[-1].read_text(encoding="utf-8")
    faults = 0
    for _ in range(250):
        now = damaged(text, draw)
        whole = as_a_whole(now, monkeypatch)
        faults += isinstance(whole, str)
        assert told(now) == whole, now
    assert 40 < faults < 210  # both kinds occur


def test_a_text_whose_lines_end_in_two_letters_is_read_in_pieces(monkeypatch):
    text = SHOWS[0].read_text(encoding="utf-8").replace("\n", "\r\n")

    assert document.tree_in_pieces(text) is not None
    assert told(text) == as_a_whole(text, monkeypatch)


@pytest.mark.parametrize(
    "text",
    [
        "a: &b 1\nc: *b\n",  # a name of one piece, used in another
        'a: "x\nb: y"\nc: 1\n',  # quotes over what looks like a heading
        "a: {b: 1,\nc: 2}\n",  # a bracket over it
        "a: 1\n...\nb: 2\n",  # two documents
        "a: 1\n---\n  b: 2\n",
        "a: 1\n...\n  b: 2\n",
        "a: 1\n--- {b: 2}\n",
        "%YAML 1.1\n---\na: yes\nb: 2\n",
        "a: 1\na: 2\n",  # a key twice, in two pieces
        "\ufeffa: 1\nb: 2\n",
        "a: 1\rb: 2\n",
        "? a\n: 1\nb: 2\n",
        "a:\n- 1\n- 2\nb: |\n  c: 1\n- 3\n",
        "{a: 1}: 2\nb: 3\n",  # a key in brackets
        "[a]: 2\nb: 3\n",
    ],
)
def test_what_spans_pieces_is_read_as_a_whole(text, monkeypatch):
    assert told(text) == as_a_whole(text, monkeypatch)


@pytest.mark.parametrize("text", ['{"a": 1,\n "b": [1]\n}\n', "# as written anew\n[1,\n2]\n"])
def test_what_is_written_in_brackets_is_not_parsed_twice(text, monkeypatch):
    def parsed(_chunk):
        raise AssertionError("parsed as a piece")

    monkeypatch.setattr(pieces, "composed", parsed)
    assert pieces.tree_in_pieces(text) is None


@pytest.mark.parametrize(("limit", "reached"), [("MOST_VALUES", 9), ("DEEPEST", 4)])
def test_what_is_larger_or_deeper_than_any_show_is_read_as_a_whole(limit, reached, monkeypatch):
    """The whole says it with its place."""
    text = "a:\n  b:\n    c: [1, 2, 3, 4]\nd: 1\n"
    monkeypatch.setattr(pieces, limit, reached)
    assert pieces.tree_in_pieces(text) is not None
    monkeypatch.setattr(pieces, limit, reached - 1)
    assert pieces.tree_in_pieces(text) is None
