"""Printed pages against approved pictures, tile by tile.

The pictures were looked at, in colour and in grey, when they were approved; they detect change and prove
nothing: what the pages must say is tested in tests/unit/outputs/sheets. To approve a new look, delete the
picture, run this test once (it writes the picture and fails), look at it, and commit it.
"""

from pathlib import Path

import pytest

from sequencer.outputs.sheets import write_sheets

PICTURES = Path(__file__).parent / "pictures"
PAGES = [
    ("safety", 0),
    ("safety", 3),
    ("performer-lucja", 0),
    ("performer-lucja", 1),
    ("operator", 1),
    ("formation-book", 2),
    ("plan-packet", 1),
    ("card-lucja", 0),
    ("fuel", 0),
    ("night", 0),
    ("night", 1),
    ("build-steps", 0),
]


@pytest.fixture(scope="module")
def printed(rounds, tmp_path_factory):
    folder = tmp_path_factory.mktemp("golden")
    write_sheets(rounds.show(folder), rounds.report(), folder / "out")
    return folder / "out"


@pytest.mark.parametrize(("sheet", "page"), PAGES, ids=[f"{s}-{p + 1}" for s, p in PAGES])
def test_page_looks_as_approved(printed, pages, sheet, page):
    actual = pages.picture(printed / f"lantern-round-{sheet}.pdf", page=page)
    golden = PICTURES / f"{sheet}-{page + 1}.png"
    if not golden.exists():
        PICTURES.mkdir(exist_ok=True)
        actual.save(golden, optimize=True)
        pytest.fail(f"{golden.name} was missing; look at the new picture before you commit it")

    assert pages.worst_tile(actual, golden) < 0.05


def test_a_lost_line_is_seen(printed, pages):
    """The measure itself: a page with one short line painted out is not the approved one."""
    actual = pages.picture(printed / "lantern-round-safety.pdf")
    actual.paste(255, (40, 150, 240, 162))

    assert pages.worst_tile(actual, PICTURES / "safety-1.png") > 0.05
