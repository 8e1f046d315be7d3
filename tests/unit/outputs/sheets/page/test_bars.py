"""A row of a table that is taller than a page goes on over the next ones, with all its words and the table's head."""

import io

import pdfplumber
import pytest
from reportlab.platypus import SimpleDocTemplate

from sequencer.outputs.sheets.page.elements import grid, head_cell
from sequencer.outputs.sheets.page.prose import Prose, TextSpan

ROOM, TALL = 400.0, 640.0  # [pt] of the test's pages


def printed(*rows, tall=TALL):
    """The words of each page on which a table is printed."""
    cells = [[Prose(TextSpan(words)) for words in row] for row in rows]
    head = [head_cell("Who"), head_cell("What")]
    out = io.BytesIO()
    document = SimpleDocTemplate(
        out, pagesize=(ROOM + 40, tall + 40),
        leftMargin=14, rightMargin=14, topMargin=14, bottomMargin=14,
    )  # fmt: skip
    document.build([grid([head, *cells], [ROOM * 0.5, ROOM * 0.5], repeat=1)])
    with pdfplumber.open(io.BytesIO(out.getvalue())) as pdf:
        return [page.extract_text().split() for page in pdf.pages]


@pytest.mark.parametrize("before", [0, 3])
def test_a_row_that_no_page_has_room_for_is_cut(before):
    names = [f"Performer{k:03d}" for k in range(250)]
    pages = printed(*[("Ash", "first")] * before, (", ".join(names), "overlap"), ("Birch", "last"))

    assert len(pages) > 2
    assert all(page[:2] == ["Who", "What"] for page in pages)
    told = [word.rstrip(",") for page in pages for word in page]
    assert [word for word in told if word.startswith("Performer")] == names
    assert told.count("overlap") == told.count("last") == 1


def test_a_lying_page_has_room_for_less():
    """One row is taller than it, and less than an upright one: it begins on the page before, and no other row is cut."""
    long, short = (" ".join(f"w{k}" for k in range(n)) for n in (220, 160))
    pages = printed((short, "1"), (long, "2"), (short, "3"), tall=420)

    words = [[word for word in page if word.startswith("w")] for page in pages]
    assert [each for page in words for each in page] == [*short.split(), *long.split(), *short.split()]  # fmt: skip
    assert len(words) == 3
    assert words[0][:160] == words[2] == short.split()


def test_any_other_row_stays_whole():
    """Thirty rows of 250 points each: two on a page, and none of them cut."""
    names = " ".join(f"w{k}" for k in range(110))
    pages = printed(*[(names, str(k)) for k in range(6)])

    for page in pages:
        words = [word for word in page if word.startswith("w")]
        assert words[0] == "w0"
        assert words[-1] == "w109"
