"""What can be read back from a printed page: its letters, their sizes and boxes, and its look."""

import numpy as np
import pdfplumber
import pypdfium2
from PIL import Image

SMALLEST = 8.0  # [pt]
EDGE = 20.0  # [pt] nothing is printed closer to the paper's edge


def faults(path, *, pages=None):
    """Letters too small, too near the edge, or over one another, as (page, kind, letter, …).

    Two letters overlap where the middle three fifths of their boxes share a third of the narrower one:
    accents and descenders reach into a neighbouring line's box without touching its letters.
    """
    found = []
    with pdfplumber.open(path) as pdf:
        for number, page in enumerate(pdf.pages):
            if pages is None or number in pages:
                found += [(number + 1, *fault) for fault in _page_faults(page)]
    return found


def _page_faults(page):
    letters = sorted((c for c in page.chars if c["text"].strip()), key=lambda c: c["top"])
    for index, one in enumerate(letters):
        if one["size"] < SMALLEST - 0.01:
            yield "small", one["text"], one["size"]
        if (
            one["x0"] < EDGE
            or one["x1"] > page.width - EDGE
            or one["top"] < EDGE
            or one["bottom"] > page.height - EDGE
        ):
            yield "outside", one["text"], one["x0"], one["top"]
        for later in range(index + 1, len(letters)):
            other = letters[later]
            if other["top"] > one["bottom"]:
                break
            if _over(one, other):
                yield "overlap", one["text"], other["text"], round(one["x0"]), round(one["top"])


def _over(one, other):
    wide = min(one["x1"], other["x1"]) - max(one["x0"], other["x0"])
    if wide <= 0.5:
        return False
    inner = [(c["top"] + 0.2 * c["size"], c["bottom"] - 0.2 * c["size"]) for c in (one, other)]
    tall = min(inner[0][1], inner[1][1]) - max(inner[0][0], inner[1][0])
    narrow = min(one["x1"] - one["x0"], other["x1"] - other["x0"])
    return wide > 0.35 * narrow and tall > 0.18 * min(one["size"], other["size"])


def text_of(path, page=None, *, panel=None):
    """Words of a file, of one page, or of a part of one (shares of width and height from the top left).

    In the order in which they were written: cell by cell, where there is a table.
    """
    document = pypdfium2.PdfDocument(path)
    if panel is not None:
        left, top, right, bottom = panel
        wide, tall = document[page].get_size()
        part = document[page].get_textpage()
        return part.get_text_bounded(
            left * wide, (1 - bottom) * tall, right * wide, (1 - top) * tall
        )
    chosen = range(len(document)) if page is None else [page]
    return "\n".join(document[number].get_textpage().get_text_range() for number in chosen)


def picture(path, *, page=0, dpi=72):
    """A page in grey."""
    return pypdfium2.PdfDocument(path)[page].render(scale=dpi / 72).to_pil().convert("L")


def worst_tile(actual, golden, *, tile=16):
    """Share of changed pixels in the tile that changed most; must stay below 0.05.

    By tile, because a lost line is 0.1 % of a page and a third of its tile.
    """
    expected = Image.open(golden).convert("L")
    assert actual.size == expected.size
    changed = np.abs(np.asarray(actual, int) - np.asarray(expected, int)) > 32
    padded = np.pad(changed, [(0, -n % tile) for n in changed.shape])
    return padded.reshape(len(padded) // tile, tile, -1, tile).mean(axis=(1, 3)).max()
