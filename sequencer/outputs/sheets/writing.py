"""Write all sheets of a show to files, atomically, plus one file with all of them."""

import hashlib
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import cast

from reportlab.platypus import Flowable

from sequencer.findings import Report
from sequencer.outputs.sheets.added_sheets import SHEET_PLUGINS, added_sheets
from sequencer.outputs.sheets.book import book_sheet
from sequencer.outputs.sheets.card import card_sheet
from sequencer.outputs.sheets.choosing import (
    SheetChoice,
    kinds_asked,
    nothing_asked,
    people_asked,
)
from sequencer.outputs.sheets.crew_reading import crew_reading_sheet
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
from sequencer.outputs.sheets.phone_page import phone_page
from sequencer.outputs.sheets.post_sheet import post_sheet
from sequencer.outputs.sheets.print_list import write_print
from sequencer.outputs.sheets.safety_sheet import safety_sheet
from sequencer.outputs.sheets.steps_sheet import steps_sheet, toroids
from sequencer.plugins import plugins
from sequencer.show.model import Show
from sequencer.staging.staged import Staged

_POST_NAME = 32  # letters of a name in the name of a post's sheet
_LAID_OUT = 0.8  # of the work, when all sheets are in their common file


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetKind:
    """One kind of sheet: which of them a show gets, and its row in docs/sheets.md."""

    name: str  # of its sheets, or what their names begin with
    each: str = ""  # the rest of a name, where there are several: "NAME"
    reader: str
    holds: str
    sheets: Callable[[Edition], list[Sheet]]  # none where a show needs none
    pack: bool = False  # carried on the night
    carried_by: tuple[str, ...] = ()  # duties of the crew that carry it, where it is nobody's own


def write(
    staged: Staged,
    report: Report,
    out: Path,
    *,
    paper: str,
    since: Staged | None = None,
    since_report: Report | None = None,
    choice: SheetChoice | None = None,
    flown: bool = False,
    turned: bool = False,
    phone: bool = False,
    progress: Callable[[str, float], None] | None = None,
    removed: Callable[[Path, str], None] | None = None,
    outdated: Callable[[Path], None] | None = None,
) -> list[Path]:
    """See `sequencer.outputs.sheets.write_sheets`."""
    if paper not in PAPER_SIZES:
        raise ValueError(f"paper must be one of {', '.join(PAPER_SIZES)}, got {paper!r}")
    edition = _edition(staged, report, since, since_report, flown=flown, turned=turned)
    user_type = edition.own_type
    size = cast("PaperName", paper)
    show = slug(Path(staged.file).stem)
    asked = choice or SheetChoice()
    sheets = sheets_of(edition, asked)
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
    if phone:
        made.append((out / f"{show}-formations.html", phone_page(edition).encode()))
    changes = write_print(
        out,
        {path.name: content for path, content in made},
        covers=partial(_covers, asked, f"{show}-"),
        show=_digest(staged),
    )
    tell_removed, tell_outdated = removed or _nothing, outdated or _nothing
    for path in changes.removed:
        tell_removed(path, _why_removed(staged, path.name.removeprefix(f"{show}-"), sheets))
    for path in changes.outdated:
        tell_outdated(path)
    return [path for path, _ in made]


def _edition(
    staged: Staged,
    report: Report,
    since: Staged | None,
    since_report: Report | None,
    *,
    flown: bool,
    turned: bool,
) -> Edition:
    before = None
    if since is not None:
        report_before = since_report or Report(show=since.file)
        before = Edition(staged=since, report=report_before, flown=flown, turned=turned)
    user_type = None
    if staged.show.type_file is not None:
        user_type = read_type(Path(staged.file).parent / staged.show.type_file)
    return Edition(
        staged=staged, report=report, before=before, own_type=user_type, flown=flown, turned=turned
    )


def _nothing(*_told: object) -> None:
    """Nobody listens."""


def _why_removed(staged: Staged, name: str, sheets: Sequence[Sheet]) -> str:
    """Why a sheet of an earlier print is taken away, in words that follow its name.

    The sheet of somebody who is away goes too: it must not be handed by mistake to whoever is there.
    """
    name = name.removesuffix(".pdf")
    post = re.sub(r"^post-\d+-", "post-", name)
    if post in {_reader(sheet) for sheet in sheets}:
        return "the post has another number now, and its sheet is printed anew"
    stem = re.sub(r"^(post|performer|card)-", "", post)
    tonight = None if staged.read is None else staged.read.written.tonight
    for who in () if tonight is None else tonight.away:
        if stem in {slug(who), slug(who, longest=_POST_NAME)}:
            return f"{who} is away tonight; print again when they are back"
    return "left over from an earlier print, for somebody or something no longer in this show"


def _digest(staged: Staged) -> str:
    """Of the show file and the track: what a sheet was printed from."""
    content = f"{staged.show.model_dump_json()} {staged.song.sha256}"
    return hashlib.sha256(content.encode()).hexdigest()


def sheets_of(edition: Edition, choice: SheetChoice | None = None) -> list[Sheet]:
    """The sheets of a show that are asked for, in print order, with unique names; default: every one.

    Raises
    ------
    InputError
        If a kind or a name is not known, or there is no such sheet in the show.
    """
    asked = choice or SheetChoice()
    sheets = [sheet for _, sheet in _chosen(edition, asked)]
    if not sheets:
        raise nothing_asked(asked, edition.staged.file)
    return sheets if edition.before is None else _marked(sheets, edition.before)


def check_choice(show: Show, file: str, *, only: Sequence[str], for_whom: Sequence[str]) -> None:
    """Find out before a long check whether what is asked for can be printed at all.

    Parameters
    ----------
    show : Show
    file : str
        Name of the show file, for display.
    only : sequence of str
        Kinds of sheets.
    for_whom : sequence of str
        Performers and crew members.

    Raises
    ------
    InputError
        If a kind or a name is not known.
    """
    people_asked(show, for_whom, file)
    if not plugins(SHEET_PLUGINS):  # whose sheets' names are not known yet
        kinds_asked(only, [kind.name for kind in SHEET_KINDS], file)


def _chosen(edition: Edition, choice: SheetChoice) -> list[tuple[str, Sheet]]:
    """The kind of each sheet that is asked for, and the sheet."""
    show = edition.staged.show
    every = [(kind.name, sheet) for kind in SHEET_KINDS for sheet in kind.sheets(edition)]
    added = added_sheets(edition, [sheet.name for _, sheet in every])
    every += [(sheet.name, sheet) for sheet in added]
    known = dict.fromkeys([*(kind.name for kind in SHEET_KINDS), *(name for name, _ in every)])
    only = kinds_asked(choice.only, list(known), edition.staged.file)
    people = people_asked(show, choice.for_whom, edition.staged.file)
    duties = {post.duty for post in show.crew if post.name in people}
    carried = {kind.name for kind in SHEET_KINDS if duties & set(kind.carried_by)}
    at_home = {kind.name for kind in SHEET_KINDS if not kind.pack}
    return [
        (kind, sheet)
        for kind, sheet in every
        if (not only or kind in only)
        and (not people or sheet.who in people or kind in carried)
        and not (choice.pack and kind in at_home)
    ]


def _covers(choice: SheetChoice, prefix: str, name: str) -> bool:
    """Whether a print replaces a file of an earlier one: every sheet of its kind was asked for."""
    if choice.is_everything:
        return True
    kind = _kind_of(name.removeprefix(prefix).removesuffix(".pdf"))
    if choice.for_whom or not name.startswith(prefix):
        return False
    if choice.only:
        return kind in {asked.casefold() for asked in choice.only}
    return kind in {each.name for each in SHEET_KINDS if each.pack}


def _kind_of(name: str) -> str:
    """The kind of a sheet by its name; a sheet of another package is a kind by itself."""
    for kind in SHEET_KINDS:
        if kind.each and name.startswith(f"{kind.name}-"):
            return kind.name
    return name


def _posts(edition: Edition) -> list[Sheet]:
    staged = edition.staged
    return [post_sheet(edition, staged.post_number(post.name)) for post in staged.show.crew]


def _fuel(edition: Edition) -> list[Sheet]:
    return [fuel_sheet(edition)] if edition.is_lit else []


def _book(edition: Edition) -> list[Sheet]:
    grouped = len(edition.staged.show.names) > 1 and edition.staged.standings
    return [book_sheet(edition)] if grouped else []


def _performers(edition: Edition) -> list[Sheet]:
    return [replace(performer_sheet(edition, who), who=who) for who in edition.staged.show.names]


def _cards(edition: Edition) -> list[Sheet]:
    return [replace(card_sheet(edition, who), who=who) for who in edition.staged.show.names]


def _steps(edition: Edition) -> list[Sheet]:
    return [steps_sheet(edition)] if toroids(edition) else []


SHEET_KINDS: tuple[SheetKind, ...] = (
    SheetKind(
        name="safety",
        reader="the safety lead",
        holds="who burns when and where, who watches and how soon they arrive, hand-overs, posts, close "
        "passes, hazards, equipment",
        sheets=lambda edition: [safety_sheet(edition)],
        pack=True,
        carried_by=("lead",),
    ),
    SheetKind(
        name="night",
        reader="the lead on the night",
        holds="three pages: go or no-go with names and initials, the steps with boxes to tick, the log",
        sheets=lambda edition: [night_sheet(edition)],
        pack=True,
        carried_by=("lead",),
    ),
    SheetKind(
        name="crew-reading",
        reader="everybody at a post, before the act",
        holds="what everybody does on the stop call, emergency card, checks, signs, cautions",
        sheets=lambda edition: [crew_reading_sheet(edition)],
        pack=True,
        carried_by=("spotter", "perimeter", "fuel keeper", "lighter", "lead"),
    ),
    SheetKind(
        name="post",
        each="N-NAME",
        reader="one post of the crew, in the dark",
        holds="one page, nothing on it below 14 pt: stop call, where to stand, and for each moment its time, what is "
        "seen or heard, what to do, and a small plan from the post’s own side",
        sheets=_posts,
        pack=True,
    ),
    SheetKind(
        name="operator",
        reader="sound and light",
        holds="every cue with time code at 24, 25, 29.97 drop-frame and 30 frames a second",
        sheets=lambda edition: [operator_sheet(edition)],
        pack=True,
    ),
    SheetKind(
        name="fuel",
        reader="the fuel station",
        holds="what to soak for whom, in the order of lighting; relights; order of work; signs",
        sheets=_fuel,
        pack=True,
        carried_by=("fuel keeper",),
    ),
    SheetKind(
        name="card",
        each="NAME",
        reader="a performer's pocket",
        holds="the performer's cues in brief, on one side of one sheet that folds into eight A7 pages",
        sheets=_cards,
        pack=True,
    ),
    SheetKind(
        name="performer",
        each="NAME",
        reader="a performer, in rehearsal",
        holds="every cue in large type: time, bar.beat, counts, pattern with planes and directions as they "
        "see them, where to stand and face, which points to walk past, lit or out; links and rests up to "
        "eight beats are printed with the move before them; a plan for each formation",
        sheets=_performers,
    ),
    SheetKind(
        name="formation-book",
        reader="the captain",
        holds="a plan for each change, who walks how far, in how many counts",
        sheets=_book,
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
    old = {_reader(sheet): sheet for _, sheet in _chosen(before, SheetChoice())}
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
