"""All sheets of a show to files: each whole or not at all, and one more with all of them."""

from collections.abc import Callable
from pathlib import Path
from typing import cast

from sequencer.files import write_bytes
from sequencer.findings import Report
from sequencer.outputs.sheets.book import book_sheet
from sequencer.outputs.sheets.card import card_sheet
from sequencer.outputs.sheets.edition import Edition
from sequencer.outputs.sheets.fuel import fuel_sheet
from sequencer.outputs.sheets.furniture import Sheet, document_bytes
from sequencer.outputs.sheets.night import night_sheet
from sequencer.outputs.sheets.operator import operator_sheet
from sequencer.outputs.sheets.packet import packet_sheet
from sequencer.outputs.sheets.paper import SIZES, PaperName
from sequencer.outputs.sheets.performer import performer_sheet
from sequencer.outputs.sheets.post import post_sheet
from sequencer.outputs.sheets.safety import safety_sheet
from sequencer.outputs.sheets.steps import steps_sheet, toroids
from sequencer.outputs.sheets.wording import slug
from sequencer.show.staged import Staged


def write(
    staged: Staged,
    report: Report,
    out: Path,
    *,
    paper: str,
    since: Staged | None = None,
    progress: Callable[[str, float], None] | None = None,
) -> list[Path]:
    """See `sequencer.outputs.sheets.write_sheets`."""
    if paper not in SIZES:
        raise ValueError(f"paper must be one of {', '.join(SIZES)}, got {paper!r}")
    edition = Edition(staged=staged, report=report, before=since)
    size = cast("PaperName", paper)
    show = slug(Path(staged.file).stem)
    sheets = sheets_of(edition)
    files = [(out / "all-sheets.pdf", sheets, staged.show.title)]
    files += [
        (out / f"{show}-{s.name}.pdf", [s], f"{staged.show.title}: {s.title}") for s in sheets
    ]
    # every page is made before the first file is replaced, so that a fault leaves the old set whole
    made = []
    total = 2 * len(sheets)
    for number, (path, part, title) in enumerate(files):
        if progress is not None:
            progress("printing sheets", (len(sheets) + number - 1) / total if number else 0.0)
        made.append((path, document_bytes(part, edition, size, title)))
    for path, content in made:
        write_bytes(path, content)
    return [path for path, _ in made]


def sheets_of(edition: Edition) -> list[Sheet]:
    """Every sheet of a show, in the order of one print job; no two of one name."""
    show = edition.staged.show
    sheets = [safety_sheet(edition), night_sheet(edition)]
    sheets += [post_sheet(edition, number) for number in range(1, len(show.crew) + 1)]
    sheets += [operator_sheet(edition)]
    sheets += [fuel_sheet(edition)] if edition.is_lit else []
    sheets += [book_sheet(edition)] if len(show.names) > 1 and edition.staged.standings else []
    sheets += [performer_sheet(edition, who) for who in show.names]
    sheets += [card_sheet(edition, who) for who in show.names]
    sheets += [steps_sheet(edition)] if toroids(edition) else []
    sheets += [packet_sheet(edition)]
    return sheets
