"""Printed pages against approved pictures, tile by tile.

The pictures were looked at, in colour and in grey, when they were approved; they detect change and prove
nothing: what the pages must say is tested in tests/unit/outputs/sheets. To approve a new look, delete the
picture, run this test once (it writes the picture and fails), look at it, and commit it.
"""

from pathlib import Path

import pytest

from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.writing import SHEET_KINDS

PICTURES = Path(__file__).parent / "pictures"
LOOKED_AT = {
    "safety": (0, 3),
    "night": (0, 1),
    "operator": (1,),
    "formation-book": (1, 3),
    "performer": (0, 1),
    "plan-packet": (1,),
}  # of the first sheet of a kind; its first page where nothing is said
PAGES = [(kind.name, page) for kind in SHEET_KINDS for page in LOOKED_AT.get(kind.name, (0,))]


@pytest.fixture(scope="module")
def printed(rounds, tmp_path_factory):
    show, files = rounds.printed(tmp_path_factory)
    edition = Edition(staged=show, report=rounds.report())
    first = {kind.name: next(iter(kind.sheets(edition)), None) for kind in SHEET_KINDS}
    return {
        kind: files[0].with_name(f"lantern-round-{sheet.name}.pdf")
        for kind, sheet in first.items()
        if sheet is not None
    }


@pytest.mark.parametrize(("kind", "page"), PAGES, ids=[f"{k}-{p + 1}" for k, p in PAGES])
def test_page_looks_as_approved(printed, pages, kind, page):
    actual = pages.picture(printed[kind], page=page)
    golden = PICTURES / f"{printed[kind].stem.removeprefix('lantern-round-')}-{page + 1}.png"
    if not golden.exists():
        PICTURES.mkdir(exist_ok=True)
        actual.save(golden, optimize=True)
        pytest.fail(f"{golden.name} was missing; look at the new picture before you commit it")

    assert pages.worst_tile(actual, golden) < 0.05


def test_a_lost_line_is_seen(printed, pages):
    """The measure itself: a page with one short line painted out is not the approved one."""
    actual = pages.picture(printed["safety"])
    actual.paste(255, (40, 150, 240, 162))

    assert pages.worst_tile(actual, PICTURES / "safety-1.png") > 0.05
