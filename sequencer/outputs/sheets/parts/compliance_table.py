"""The compliance table on paper: the essence for page one, and every rule in force with its source. Lengths in points."""

from collections.abc import Sequence

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import (
    INK,
    PAPER,
    SMALL,
    SOFT,
    STROKE,
    TEXT,
    TINY,
)
from sequencer.outputs.sheets.page.prose import Prose, TextSpan, one_line
from sequencer.outputs.sheets.page.wording import closed_up, plural
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety.compliance import ComplianceRow, Verdict, tally

FIRST_ROWS = 22  # on page one, at most, besides rules that are not met or not stated
MOST_UNMET = 14  # of those on page one; the rest is counted
ESSENCE = {  # in the order in which an officer asks, with a short name
    "permit": "permit",
    "audience-distance": "audience to flame",
    "landing-audience": "landing near the audience",
    "let-go": "let-go range",
    "audience-flux": "heat at the audience",
    "combustible-distance": "combustibles to flame",
    "flame-height": "flame height",
    "flame": "flame at rest",
    "reach": "reach, flame at its peak",
    "spotters": "spotters",
    "response-distance": "walk of a spotter",
    "response-time": "time until a spotter arrives",
    "post-flux": "heat at the nearest post",
    "perimeter-guards": "perimeter guards",
    "fuel-keepers": "fuel keepers",
    "extinguishers": "extinguishers",
    "extinguisher-travel": "walk to an extinguisher",
    "fuel-point-distance": "fuel point to flame",
    "fuel-on-site": "fuel on site",
    "wind-stop": "gusts",
    "burn-share": "share of burning time",
    "performer-age": "age of a performer",
}
_ORDER = {subject: place for place, subject in enumerate(ESSENCE)}
_WORDS: dict[Verdict, str] = {
    "met": "MET",
    "not met": "NOT MET",
    "not stated": "NOT STATED",
    "confirm": "CONFIRM",
    "told": "",
}
_MEANS = "“Met” means: as entered. Rounded to the safe side. Wording, sources by key and how each was read: “Rules in force”, in the plan packet."
_MARK = 66.0  # width


class VerdictMark(Flowable):  # type: ignore[misc]
    """A verdict by shape and word: a tick, a dark field, a broken frame, or a box to tick by hand."""

    def __init__(self, verdict: Verdict) -> None:
        super().__init__()
        self.verdict, self.words = verdict, _WORDS[verdict]

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """One line high."""
        self.width, self.height = _MARK - 6, 13.0
        return self.width, self.height

    def draw(self) -> None:
        """Put it on the page."""
        canvas, wide = self.canv, self.width
        if self.verdict == "told":
            return
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(STROKE)
        if self.verdict == "not met":
            canvas.setFillColor(INK)
            canvas.roundRect(0, -0.5, wide, 13, 2, stroke=0, fill=1)
            one_line(
                canvas, wide / 2, 3, TextSpan(self.words, "Bold", SMALL, PAPER), align="centre"
            )
            return
        if self.verdict == "not stated":
            canvas.setDash(2.5, 1.8)
            canvas.rect(0.5, 0, wide - 1, 12.5, stroke=1, fill=0)
            canvas.setDash()
            one_line(canvas, wide / 2, 3, TextSpan(self.words, "Bold", TINY, INK), align="centre")
            return
        if self.verdict == "confirm":
            canvas.rect(1, 1.5, 9, 9, stroke=1, fill=0)
        else:
            canvas.setLineWidth(1.6)
            canvas.lines([(1, 6, 4, 2.5), (4, 2.5, 10, 10.5)])
        one_line(canvas, 14, 3, TextSpan(self.words, "Bold", SMALL, INK))


def compliance_block(edition: Edition, room: float) -> list[Flowable]:
    """The essence for page one: what is not met or not stated first, then what an officer asks for."""
    rows = edition.compliance
    if not rows:
        return []
    strict = [row for row in rows if row.decides]
    open_ = [row for row in strict if row.verdict in {"not met", "not stated"}]
    open_.sort(key=lambda row: (row.verdict != "not met", _rank(row)))
    rest = [row for row in strict if row not in open_ and row.subject in ESSENCE]
    rest.sort(key=_rank)
    chosen = [*open_[:MOST_UNMET], *rest[: max(FIRST_ROWS - len(open_[:MOST_UNMET]), 8)]]
    count = tally(rows)
    words = ", ".join(f"{number} {_said(verdict)}" for verdict, number in count.items())
    return [
        heading("What is asked, and what this plan has", level=2, before=4),
        Prose(TextSpan(f"{plural(sum(count.values()), 'rule')} in force: {words}.", "Bold", SMALL)),
        _table(chosen, room),
        Prose(TextSpan(_MEANS, "Regular", TINY, SOFT), before=2),
    ]


def rules_block(edition: Edition, room: float) -> list[Flowable]:
    """Every rule in force: asked, this plan, met or not, margin, text and source."""
    rows = [row for row in edition.compliance if row.profile]
    told = [row for row in edition.compliance if not row.profile]
    if not rows:
        return []
    widths = [_MARK, room * 0.25, room * 0.24]
    widths.append(room - sum(widths))
    cells: list[list[Cell]] = [
        [
            head_cell(word)
            for word in ("met", "subject, asked", "this plan, margin", "text and source")
        ]
    ]
    for row, before in zip(rows, ["", *(row.profile for row in rows)], strict=False):
        cells.append(
            [
                VerdictMark(row.verdict),
                _two(row.what, row.asked if row.asked != row.text else ""),
                _plan_cell(row),
                Prose(
                    [
                        TextSpan(
                            "" if row.profile == before else f"{row.profile}\n", "Bold", SMALL
                        ),
                        TextSpan(f"{closed_up(row.text)}  ", "Regular", SMALL),
                        TextSpan(
                            " · ".join(filter(None, (row.note, row.source))), "Regular", TINY, SOFT
                        ),
                    ],
                    role="TD",
                ),
            ]
        )
    cells += [
        [
            VerdictMark(row.verdict),
            _two(row.what, "no rule asks for it"),
            _plan_cell(row),
            Prose(TextSpan(row.source, "Regular", TINY, SOFT), role="TD"),
        ]
        for row in told
    ]
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [
        CondPageBreak(120),
        heading("Rules in force"),
        Prose(
            TextSpan(
                "What each text asks, as entered, and what this plan has. A subject that no text mentions is not thereby "
                "allowed. The authority for the place decides.",
                "Regular",
                TEXT,
            ),
            after=4,
        ),
        grid(cells, widths, style, repeat=1, pad=2.5),
    ]


def confirm_block(edition: Edition, room: float) -> list[Flowable]:
    """What only a person can tell, each with a box, and room for initials and time."""
    rows = [row for row in edition.compliance if row.verdict == "confirm"]
    if not rows:
        return []
    widths = [_MARK, room * 0.5, room * 0.2]
    widths.append(room - sum(widths))
    cells: list[list[Cell]] = [
        [head_cell(word) for word in ("", "only a person can confirm", "initials", "time")]
    ]
    for row in rows:
        is_bare = row.text[:1].isdigit()  # a length or a time, which says nothing by itself
        asked = f"{row.what}: {row.asked or row.text}" if is_bare else row.text
        words = [TextSpan(closed_up(asked), "Regular", TEXT)]
        if row.has:
            words.append(TextSpan(f"  ({closed_up(row.has)})", "Regular", SMALL))
        cells.append([VerdictMark("confirm"), Prose(words, role="TD"), "", ""])
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [
        CondPageBreak(110),
        heading("Confirm by hand"),
        grid(cells, widths, style, repeat=1, pad=4),
    ]


def _table(rows: Sequence[ComplianceRow], room: float) -> Flowable:
    widths = [_MARK, room * 0.222, room * 0.172, 0.0, 60.0, 34.0]
    widths[3] = room - sum(widths)
    cells: list[list[Cell]] = [
        [head_cell(word) for word in ("", "subject", "asked", "this plan", "margin", "source")]
    ]
    cells += [
        [
            VerdictMark(row.verdict),
            Prose(TextSpan(ESSENCE.get(row.subject, row.what), "Regular", SMALL), role="TD"),
            Prose(TextSpan(closed_up(row.asked) or "–", "Regular", SMALL), role="TD"),
            _plan_cell(row, margin=False),
            Prose(TextSpan(closed_up(row.margin), "Regular", SMALL), role="TD"),
            Prose(TextSpan(row.source_key, "Regular", TINY, SOFT), role="TD"),
        ]
        for row in rows
    ]
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return grid(cells, widths, style, pad=1.0, gutter=6.0)


def _plan_cell(row: ComplianceRow, *, margin: bool = True) -> Prose:
    """What the plan has, in bold its number; under it what the checks found, unless a margin beside it says it."""
    number, _, words = closed_up(row.has).partition(" (")
    spans = [TextSpan(number, "Bold", SMALL)]
    if words:
        spans.append(TextSpan(f" ({words}", "Regular", SMALL))
    if margin and row.margin:
        spans.append(TextSpan(f"\n{closed_up(row.margin)}", "Regular", SMALL, SOFT))
    told = row.verdict == "not stated" or (not margin and row.margin.startswith("−"))
    if row.why and not told:
        spans.append(TextSpan(f"\n{row.why}", "Regular", TINY, INK))
    return Prose(spans, role="TD")


def _two(first: str, second: str) -> Prose:
    spans = [TextSpan(first, "Regular", SMALL)]
    if second:
        spans.append(TextSpan(f"\n{closed_up(second)}", "Bold", SMALL))
    return Prose(spans, role="TD")


def _rank(row: ComplianceRow) -> int:
    return _ORDER.get(row.subject, len(_ORDER))


def _said(verdict: Verdict) -> str:
    return "to be confirmed by a person" if verdict == "confirm" else verdict
