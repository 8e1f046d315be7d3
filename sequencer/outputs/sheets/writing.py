"""Write all sheets of a show to files, atomically, plus one file with all of them."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
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
from sequencer.outputs.sheets.page.drawn_pages import DrawnPages
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

_LAID_OUT = 0.8  # of the work, when all sheets are in their common file


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetKind:
    """One kind of sheet: which of them a show gets, and its row in docs/sheets.md."""

    name: str  # of its sheets, or what their names begin with
    each: str = ""  # the rest of a name, where there are several: "NAME"
    reader: str
    holds: str
    sheets: Callable[[Edition], list[Sheet]]  # none where a show needs none


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
    drawn = (
        DrawnPages()
    )  # each sheet is laid out once, for the file with all of them and for its own
    say = partial(progress or (lambda _subject, _share: None), "printing sheets")
    say(0.0)

    def begun(number: int) -> None:
        say(_LAID_OUT * number / len(sheets))

    with with_type(user_type):
        for number, (path, part, title) in enumerate(files):
            if number:
                say(_LAID_OUT + (1.0 - _LAID_OUT) * (number - 1) / len(sheets))
            made.append(
                (path, document_bytes(part, edition, size, title, drawn, None if number else begun))
            )
    gone = write_print(out, {path.name: content for path, content in made})
    for path in gone:
        if removed is not None:
            removed(path)
    return [path for path, _ in made]


def sheets_of(edition: Edition) -> list[Sheet]:
    """Every sheet of a show, in print order, with unique names."""
    sheets = [sheet for kind in SHEET_KINDS for sheet in kind.sheets(edition)]
    sheets += added_sheets(edition, [sheet.name for sheet in sheets])
    return sheets if edition.before is None else _marked(sheets, edition.before)


def _posts(edition: Edition) -> list[Sheet]:
    return [post_sheet(edition, number + 1) for number in range(len(edition.staged.show.crew))]


def _fuel(edition: Edition) -> list[Sheet]:
    return [fuel_sheet(edition)] if edition.is_lit else []


def _book(edition: Edition) -> list[Sheet]:
    grouped = len(edition.staged.show.names) > 1 and edition.staged.standings
    return [book_sheet(edition)] if grouped else []


def _performers(edition: Edition) -> list[Sheet]:
    return [performer_sheet(edition, who) for who in edition.staged.show.names]


def _cards(edition: Edition) -> list[Sheet]:
    return [card_sheet(edition, who) for who in edition.staged.show.names]


def _steps(edition: Edition) -> list[Sheet]:
    return [steps_sheet(edition)] if toroids(edition) else []


SHEET_KINDS: tuple[SheetKind, ...] = (
    SheetKind(
        name="safety",
        reader="safety lead and crew",
        holds="who burns when and where, who watches and how soon they arrive, hand-overs, posts, close "
        "passes, hazards, equipment",
        sheets=lambda edition: [safety_sheet(edition)],
    ),
    SheetKind(
        name="night",
        reader="everybody on the night",
        holds="the run of the night with boxes to tick, go or no-go",
        sheets=lambda edition: [night_sheet(edition)],
    ),
    SheetKind(
        name="post",
        each="N-NAME",
        reader="one post of the crew",
        holds="duty, whom to watch and when, how far away, with what equipment; a plan whenever the watch changes "
        "or somebody new comes within 3 m",
        sheets=_posts,
    ),
    SheetKind(
        name="operator",
        reader="sound and light",
        holds="every cue with time code at 24, 25, 29.97 drop-frame and 30 frames a second",
        sheets=lambda edition: [operator_sheet(edition)],
    ),
    SheetKind(
        name="fuel",
        reader="the fuel station",
        holds="what to soak for whom, in the order of lighting; relights; order of work; signs",
        sheets=_fuel,
    ),
    SheetKind(
        name="formation-book",
        reader="the captain",
        holds="a plan for each change, who walks how far, in how many counts",
        sheets=_book,
    ),
    SheetKind(
        name="performer",
        each="NAME",
        reader="a performer",
        holds="every cue in large type: time, bar.beat, counts, pattern with planes and directions as they "
        "see them, where to stand and face, which points to walk past, lit or out; links and rests up to "
        "eight beats are printed with the move before them; a plan for each formation",
        sheets=_performers,
    ),
    SheetKind(
        name="card",
        each="NAME",
        reader="a performer's pocket",
        holds="the same in brief, on one side of one sheet that folds into eight A7 pages",
        sheets=_cards,
    ),
    SheetKind(
        name="build-steps",
        reader="teachers",
        holds="the stations of each toroid in the show, drawn",
        sheets=_steps,
    ),
    SheetKind(
        name="plan-packet",
        reader="the authority",
        holds="site plan to scale, distances, performers and props, fuel, burns, crew, every rule in force "
        "with its source, cautions, lines to sign",
        sheets=lambda edition: [packet_sheet(edition)],
    ),
)  # in the order of one print job


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
