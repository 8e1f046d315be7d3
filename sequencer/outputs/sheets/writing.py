"""Write all sheets of a show to files, atomically, plus one file with all of them."""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import cast

from reportlab.platypus import Flowable

from sequencer.findings import Report
from sequencer.outputs.sheets.added_sheets import added_sheets
from sequencer.outputs.sheets.book import book_sheet
from sequencer.outputs.sheets.card import card_sheet
from sequencer.outputs.sheets.fuel_sheet import fuel_sheet
from sequencer.outputs.sheets.night_sheet import night_sheet
from sequencer.outputs.sheets.operator_sheet import operator_sheet
from sequencer.outputs.sheets.packet import packet_sheet
from sequencer.outputs.sheets.page.letters import with_type
from sequencer.outputs.sheets.page.marking import marked
from sequencer.outputs.sheets.page.own_type import read_type
from sequencer.outputs.sheets.page.paper import PAPER_SIZES, Page, PaperName
from sequencer.outputs.sheets.page.wording import slug
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet, document_bytes
from sequencer.outputs.sheets.performer_sheet import performer_sheet
from sequencer.outputs.sheets.post_sheet import post_sheet
from sequencer.outputs.sheets.print_list import write_print
from sequencer.outputs.sheets.safety_sheet import safety_sheet
from sequencer.outputs.sheets.steps_sheet import steps_sheet, toroids
from sequencer.staging.staged import Staged


def write(
    staged: Staged,
    report: Report,
    out: Path,
    *,
    paper: str,
    since: Staged | None = None,
    since_report: Report | None = None,
    progress: Callable[[str, float], None] | None = None,
    removed: Callable[[Path], None] | None = None,
) -> list[Path]:
    """See `sequencer.outputs.sheets.write_sheets`."""
    if paper not in PAPER_SIZES:
        raise ValueError(f"paper must be one of {', '.join(PAPER_SIZES)}, got {paper!r}")
    before = None
    if since is not None:
        before = Edition(staged=since, report=since_report or Report(show=since.file))
    user_type = None
    if staged.show.type_file is not None:
        user_type = read_type(Path(staged.file).parent / staged.show.type_file)
    edition = Edition(staged=staged, report=report, before=before, own_type=user_type)
    size = cast("PaperName", paper)
    show = slug(Path(staged.file).stem)
    sheets = sheets_of(edition)
    files = [(out / "all-sheets.pdf", sheets, staged.show.title)]
    files += [
        (out / f"{show}-{s.name}.pdf", [s], f"{staged.show.title}: {s.title}") for s in sheets
    ]
    # every page is made before anything is written, so that a fault leaves the old set intact
    made = []
    total = 2 * len(sheets)
    with with_type(user_type):
        for number, (path, part, title) in enumerate(files):
            if progress is not None:
                progress("printing sheets", (len(sheets) + number - 1) / total if number else 0.0)
            made.append((path, document_bytes(part, edition, size, title)))
    gone = write_print(out, {path.name: content for path, content in made})
    for path in gone:
        if removed is not None:
            removed(path)
    return [path for path, _ in made]


def sheets_of(edition: Edition) -> list[Sheet]:
    """Every sheet of a show, in print order, with unique names."""
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
    sheets += added_sheets(edition, [sheet.name for sheet in sheets])
    return sheets if edition.before is None else _marked(sheets, edition.before)


def _marked(sheets: Sequence[Sheet], before: Edition) -> list[Sheet]:
    """The sheets with change bars, each compared with the last print for the same reader."""
    old = {_reader(sheet): sheet for sheet in sheets_of(before)}
    return [
        replace(sheet, story=partial(_story, sheet, old.get(_reader(sheet)), before))
        for sheet in sheets
    ]


def _story(sheet: Sheet, old: Sheet | None, before: Edition, page: Page) -> list[Flowable]:
    return marked(
        sheet.story(page),
        None if old is None else old.story(page),
        against=before.issue,
        room=page.inner,
    )


def _reader(sheet: Sheet) -> str:
    """A sheet's name without a post's number, which may have changed since the last print."""
    return re.sub(r"^post-\d+-", "post-", sheet.name)
