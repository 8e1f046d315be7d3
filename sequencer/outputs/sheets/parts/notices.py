"""Notices on the sheets: the caution on page one, the stop call, findings, cautions.

Lengths in points.
"""

from collections.abc import Sequence

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.facts.cautions import Reader, page_one
from sequencer.findings import Finding
from sequencer.outputs.sheets.page.elements import (
    SEVERITY_WORDS,
    Cell,
    box,
    facts_row,
    fitted,
    grid,
    heading,
    kicker,
)
from sequencer.outputs.sheets.page.letters import printable, width
from sequencer.outputs.sheets.page.marking import ChangesNote
from sequencer.outputs.sheets.page.own_type import joins
from sequencer.outputs.sheets.page.paper import (
    CUE,
    GAP,
    GIANT,
    HEAD,
    INK,
    LEAD_SIZE,
    PAPER,
    SMALL,
    SOFT,
    TEXT,
    TINY,
    TITLE,
)
from sequencer.outputs.sheets.page.pictograms import stop_mark
from sequencer.outputs.sheets.page.prose import Prose, TextSpan, one_line
from sequencer.outputs.sheets.page.wording import NB, clock_fine, listed
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import first_caution
from sequencer.safety.duties.on_stop import AT_ONCE, own_on_stop
from sequencer.safety.rules.circumstances import cautions_of
from sequencer.show.file_records.evening import Role
from sequencer.units import aloud

MOST_MOMENTS = 12  # listed for similar notes
NOTES_A_ROW = 6


def opening(
    edition: Edition,
    room: float,
    *,
    kind: str,
    title: str,
    facts: Sequence[tuple[str, str]],
    stop: str,
    badge: Flowable | None = None,
    close: bool = False,
) -> list[Flowable]:
    """The top of page one: what the sheet is, for whom, the stop call, the caution, the notice on missing letters.

    A page that has to hold much gets it `close`, in smaller type, with the caution that fire can kill.
    """
    sizes = (HEAD, LEAD_SIZE) if close else (GIANT, TITLE, HEAD, LEAD_SIZE)
    inner = room - (52 if badge is not None else 0)
    name: list[Flowable] = [kicker(kind), fitted(title, inner, sizes=sizes)]
    top: list[Flowable] = name
    beside = close and badge is not None and bool(facts)  # badge, name and facts in one row
    if badge is not None:
        cells: list[Cell] = [badge, name]
        widths = [52.0, inner]
        if beside:
            called = min(max(112.0, width(printable(title), "Poster") * HEAD + 8), 0.4 * room)
            widths = [42.0, called, room - 42.0 - called]
            name[:] = [kicker(kind), fitted(title, called, sizes=sizes)]
            cells = [badge, name, facts_row(facts, widths[2])]
        middle = ("VALIGN", (0, 0), (-1, 0), "MIDDLE")
        top = [grid([cells], widths, middle, pad=0, gutter=0, lines=False)]
    return [
        *top,
        Spacer(1, 3),
        *([facts_row(facts, room)] if facts and not beside else []),
        *_tonight(edition),
        *stop_bar(edition, stop, close=close),
        *(_close_caution(edition, room) if close else caution_box(room)),
        *letters_block(edition, room),
        ChangesNote(),
    ]


def _tonight(edition: Edition) -> list[Flowable]:
    """Who is away and who stands in."""
    words = edition.in_order(edition.tonight)
    return [Prose(TextSpan(words, "Bold", TEXT, INK), before=4, after=2)] if words else []


def caution_box(room: float) -> list[Flowable]:
    """The first notice on page one of every print-out."""
    return [
        Spacer(1, 5),
        box(
            [Prose(TextSpan(page_one(), "Bold", TEXT, INK), leading=1.3)],
            room,
            ground=None,
            edge=INK,
        ),
    ]


def _close_caution(edition: Edition, room: float) -> list[Flowable]:
    """The same in smaller type, and in a lit show that fire can kill."""
    spans = [TextSpan(page_one(), "Bold", SMALL)]
    if edition.is_lit:
        spans.append(TextSpan(f" {first_caution()[0]}", "Regular", SMALL))
    return [Spacer(1, 3), box([Prose(spans, leading=1.2)], room, ground=None, edge=INK)]


class StopBar(Flowable):  # type: ignore[misc]
    """The stop call, on a dark field; its words are common practice unless the show agrees on others."""

    def __init__(self, lines: Sequence[TextSpan], word: str) -> None:
        super().__init__()
        self.description = [word, *(line.text for line in lines)]
        self.word = "STOP" if width(printable(word), "Poster") * 12.5 > 33 else word
        self.prose = Prose([TextSpan(s.text, s.face, s.size, PAPER) for s in lines], leading=1.25)

    def wrap(self, room: float, tall: float) -> tuple[float, float]:
        """As high as its words."""
        self.width = room
        _, high = self.prose.wrap(room - 70, tall)
        self.height = max(high + 12, 46)
        return self.width, self.height

    def draw(self) -> None:
        """Put it on the page."""
        canvas = self.canv
        canvas.setFillColor(INK)
        canvas.rect(0, 0, self.width, self.height, stroke=0, fill=1)
        stop_mark(canvas, 10, self.height / 2 - 19, 38, PAPER)
        one_line(
            canvas,
            29,
            self.height / 2 - 4,
            TextSpan(self.word, "Poster", 12.5, INK),
            align="centre",
        )
        self.prose.drawOn(canvas, 60, (self.height - self.prose.height) / 2)


def stop_bar(edition: Edition, doing: str, *, close: bool = False) -> list[Flowable]:
    """The stop call and what the reader does on it."""
    size = TEXT if close else CUE
    call = edition.staged.show.stop_call
    word, sign = edition.in_order(call.word), edition.in_order(call.signal)
    return [
        Spacer(1, 5),
        StopBar(
            [
                TextSpan(f"{callers_words(edition)}: ", "Bold", size),
                TextSpan(f"shout “{word}” three times, {sign}. {AT_ONCE}\n", "Regular", size),
                TextSpan(doing, "Bold", TEXT),
            ],
            call.word,
        ),
    ]


def callers_words(edition: Edition) -> str:
    """Who may give the stop call."""
    callers = edition.staged.show.stop_call.callers
    if "all" in callers:
        return "Anyone may call it"
    return (
        f"Called by {edition.in_order(listed(callers, most=6))}; anyone who sees danger tells them"
    )


def doing_on_stop(edition: Edition, who: str | None, role: Role) -> str:
    """What a reader does on the stop call: as agreed in the show, otherwise as is usual."""
    does = own_on_stop(edition.staged.show, edition.plan.lit_at_once, who, role)
    return f"You: {edition.in_order('; '.join(does))}."


def role_on_stop(edition: Edition, role: Role) -> str:
    """What the only member of the crew with a duty does on the stop call; where there are several, any of them."""
    names = [post.name for post in edition.staged.show.crew if post.duty == role]
    return doing_on_stop(edition, names[0] if len(names) == 1 else None, role)


def findings_block(
    edition: Edition, findings: Sequence[Finding], room: float, *, title: str
) -> list[Flowable]:
    """What must or should be mended, as rows: severity, when, what, and how to mend it."""
    grave = [finding for finding in findings if finding.severity != "note"]
    if not grave:
        return []
    rows: list[list[Cell]] = []
    for finding in grave:
        body = [Prose(TextSpan(edition.in_order(finding.message), "Bold", TEXT))]
        if finding.remedies:
            body.append(Prose(TextSpan(edition.in_order(_mend(finding)), "Regular", TEXT)))
        tail = " · ".join(filter(None, (listed(finding.who, most=6), finding.source)))
        if tail:
            body.append(Prose(TextSpan(tail, "Regular", TINY, SOFT)))
        when = (
            _when(finding, edition).replace(" ", "\n", 1)
            if finding.start is not None
            else "whole show"
        )
        rows.append([SeverityMark(finding.severity), Prose(TextSpan(when, "Bold", TEXT)), body])
    return [
        CondPageBreak(90),
        heading(title, level=2),
        grid(rows, [44, 96, room - 140]),
    ]


def brief_notes(edition: Edition, findings: Sequence[Finding]) -> list[Flowable]:
    """Notes from the checks for somebody who dances: what and when; mends and sources are for whoever plans."""
    alike: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.severity == "note":
            alike.setdefault(finding.message, []).append(finding)
    if not alike:
        return []
    lines = [_note_line(edition, words, group, named=False) for words, group in alike.items()]
    return [heading("Notes from the checks", level=2, before=GAP / 2), *lines]


def in_two_columns(notes: list[Flowable], room: float) -> list[Flowable]:
    """The same notes side by side below their heading."""
    above, lines = notes[:1], notes[1:]
    if len(lines) < 2:
        return notes
    half = (len(lines) + 1) // 2
    columns: list[Cell] = [lines[:half], lines[half:]]
    return [*above, grid([columns], [room / 2] * 2, pad=0, lines=False, by_cell=True)]


def notes_block(
    edition: Edition, findings: Sequence[Finding], room: float, *, named: bool = True
) -> list[Flowable]:
    """Notes from the checks, at the end of a sheet: similar notes once, with all their times."""
    alike: dict[tuple[str, str], dict[str, list[Finding]]] = {}
    for finding in findings:
        if finding.severity == "note":
            group = alike.setdefault((_mend(finding), finding.source), {})
            group.setdefault(finding.message, []).append(finding)
    if not alike:
        return []
    rows: list[list[Cell]] = []
    for (mend, source), group in alike.items():
        body = [_note_line(edition, words, group[words], named=named) for words in group]
        tail = " · ".join(filter(None, (mend, source)))
        last = [Prose(TextSpan(edition.in_order(tail), "Regular", TINY, SOFT))] if tail else []
        mark: Cell = SeverityMark("note")
        for start in range(0, len(body), NOTES_A_ROW):  # so that a long group breaks across pages
            part = body[start : start + NOTES_A_ROW]
            rows.append([mark, [*part, *(last if start + NOTES_A_ROW >= len(body) else [])]])
            mark = ""
    return [CondPageBreak(70), heading("Notes from the checks"), grid(rows, [44, room - 44], pad=2)]


def _note_line(
    edition: Edition, words: str, findings: Sequence[Finding], *, named: bool
) -> Flowable:
    """The text of a note, and every time at which it applies."""
    moments = [
        _when(f, edition)
        + (f" {listed(f.who, most=3)}" if named and f.who and f.start is not None else "")
        for f in findings[:MOST_MOMENTS]
    ]
    if len(findings) > MOST_MOMENTS:
        moments.append(f"and {len(findings) - MOST_MOMENTS} more")
    return Prose(
        [
            TextSpan(f"{edition.in_order(words)}  ", "Regular", TINY + 0.5),
            TextSpan("; ".join(moments), "Bold", TINY + 0.5),
        ]
    )


def _mend(finding: Finding) -> str:
    return f"Mend: {'; or '.join(finding.remedies)}" if finding.remedies else ""


def _when(finding: Finding, edition: Edition) -> str:
    if finding.start is None:
        return "whole show"
    return clock_fine(finding.start) + (
        f" {aloud(finding.position, edition.report.bars, f'bar{NB}')}"
        if finding.position and finding.start >= 0.0
        else ""
    )


class SeverityMark(Flowable):  # type: ignore[misc]
    """The severity of a finding, by shape and word."""

    def __init__(self, severity: str) -> None:
        super().__init__()
        self.severity = severity

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """One line high."""
        self.width, self.height = 36.0, 14.0
        return self.width, self.height

    def draw(self) -> None:
        """Put it on the page."""
        canvas = self.canv
        words = SEVERITY_WORDS[self.severity]
        if self.severity == "stop":
            canvas.setFillColor(INK)
            canvas.roundRect(0, -1, 34, 14, 2, stroke=0, fill=1)
            one_line(canvas, 17, 3, TextSpan(words, "Bold", SMALL, PAPER), align="centre")
            return
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.1 if self.severity == "warn" else 0.5)
        canvas.roundRect(0, -1, 34, 14, 2, stroke=1, fill=0)
        one_line(
            canvas,
            17,
            3,
            TextSpan(words, "Bold" if self.severity == "warn" else "Regular", SMALL, INK),
            align="centre",
        )


def cautions_block(
    edition: Edition,
    reader: Reader,
    room: float,
    *,
    whole: bool = False,
    columns: int = 2,
    small: bool = False,
) -> list[Flowable]:
    """All cautions for a reader: in full, with who decides, or in short, in some columns; small beside something else."""
    chosen = cautions_of(edition.staged, edition.report.conditions, reader=reader)
    if not chosen:
        return []
    cells: list[list[Cell]] = []
    for caution in chosen:
        spans = [TextSpan(caution.short, "Regular", TINY if small else SMALL, INK)]
        if whole:
            decides = f"  Decides: {caution.defers_to}."
            spans = [
                TextSpan(caution.text, "Regular", SMALL, INK),
                TextSpan(decides, "Italic", TINY, SOFT),
            ]
        cells.append([Prose(TextSpan(str(caution.number), "Bold", SMALL, SOFT)), Prose(spans)])
    if whole:
        table = grid(cells, [22, room - 22], pad=1.2, gutter=4.0)
        return [CondPageBreak(90), heading("Cautions"), table]
    column = room / columns - 8
    stacks = [
        grid(part, [18, column - 18], pad=0.8, gutter=4.0, lines=False)
        for part in _columns(cells, columns, column - 18)
    ]
    tail = "Shortened; in full, with who decides, on the safety crew sheet and in the plan packet."
    return [
        CondPageBreak(max(stack.wrap(column, 1e9)[1] for stack in stacks) + 56),
        heading("Cautions", level=2, before=4) if small or columns > 2 else heading("Cautions"),
        grid([stacks], [room / len(stacks)] * len(stacks), pad=0, lines=False, by_cell=True),
        Prose(TextSpan(tail, "Regular", TINY, SOFT), before=2),
    ]


def _columns(cells: list[list[Cell]], count: int, room: float) -> list[list[list[Cell]]]:
    """Rows in columns of about equal height."""
    high = [max(part.wrap(room, 1e9)[1] for part in row[1:]) + 1.6 for row in cells]
    out: list[list[list[Cell]]] = [[]]
    done, share = 0.0, sum(high) / count
    for row, tall in zip(cells, high, strict=True):
        if done + tall / 2 > share * len(out) and out[-1] and len(out) < count:
            out.append([])
        out[-1].append(row)
        done += tall
    return [part for part in out if part]


def letters_block(edition: Edition, room: float) -> list[Flowable]:
    """A notice if names contain letters that the type lacks."""
    type_lines = _own_type_lines(edition)
    missing = edition.missing_letters()
    if not missing:
        return [Spacer(1, 5), box(type_lines, room)] if type_lines else []
    codes = ", ".join(f"U+{ord(letter):04X}" for letter in missing[:12])
    more = f" and {len(missing) - 12} more" if len(missing) > 12 else ""
    words = (
        f"The type of this print-out lacks some letters of this show ({codes}{more}); each is printed as its "
        "code, such as ‹U+706B›. Use the numbers to identify performers and posts. Write the names in by hand, "
        "or put a spelling in Latin, Greek, Cyrillic or Hebrew letters, or a type file with these letters "
        "(key type_file), in the show file."
    )
    return [
        Spacer(1, 5),
        box(
            [
                Prose(
                    [
                        TextSpan("Letters missing. ", "Bold", SMALL),
                        TextSpan(words, "Regular", SMALL),
                    ]
                ),
                *type_lines,
            ],
            room,
        ),
    ]


def _own_type_lines(edition: Edition) -> list[Flowable]:
    """Lines about the user's type file."""
    user_type = edition.own_type
    if user_type is None:
        return []
    lines = []
    if user_type.forbidden:
        lines.append(f"The type file was left out: {user_type.forbidden}.")
    elif joins(edition.own_letters):
        lines.append(
            "Some names are in a script with joined letters; here the letters are printed separately."
        )
    return [Prose(TextSpan(line, "Bold", SMALL)) for line in lines]
