"""A pocket card: one sheet, printed on one side, cut once and folded into a booklet of eight A7 pages.

The eight panels run round the sheet: page 1 is at the lower right, 2 to 5 along the top from right to
left (upside down), 6 and 7 at the lower left, 8 beside page 1; the cut separates the two middle columns. A4 gives
A7 (74 by 105 mm); Letter gives 70 by 108 mm. Common practice. Lengths in points.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from reportlab.platypus import Flowable, PageBreak

from sequencer.facts.cautions import page_one
from sequencer.outputs.sheets.page.elements import LitMark, fitted, grid, kicker
from sequencer.outputs.sheets.page.letters import Face, clipped
from sequencer.outputs.sheets.page.marking import ChangesNote
from sequencer.outputs.sheets.page.paper import (
    CUE,
    HEAD,
    INK,
    LEAD_SIZE,
    MIST,
    PAPER,
    RULE,
    SMALL,
    SOFT,
    TEXT,
    TINY,
    Page,
)
from sequencer.outputs.sheets.page.pictograms import stop_mark
from sequencer.outputs.sheets.page.prose import Prose, TextSpan, one_line
from sequencer.outputs.sheets.page.wording import brief, number, place_words
from sequencer.outputs.sheets.parts.cues import (
    Cue,
    bar_words,
    burns_of,
    cues_of,
    early_clock,
    late_clock,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet, stripes
from sequencer.outputs.sheets.parts.handling_words import (
    first_move,
    lighter_words,
    putter_words,
    waiting_words,
)
from sequencer.safety.circumstances import cautions_of
from sequencer.safety.on_stop import own_on_stop
from sequencer.staging.staged import Coming

PANELS = 8
_PAD = 21.0  # margin of a panel: the edge that home printers cannot print, and room for a thumb
_FOOT = 15.0
_TOP = ((0, 5), (1, 4), (2, 3), (3, 2))  # column and page of the upper row, which is upside down
_LOW = ((0, 6), (1, 7), (2, 8), (3, 1))


@dataclass(frozen=True, slots=True)
class _Style:
    """How roomy a card is; the first setting that fits one sheet is used."""

    time: float
    title: float
    pad: float
    brief: bool  # give a place only if it is new


_SHORT = 4.0  # [beats] shorter rests are left out
_STYLES = (
    _Style(HEAD, LEAD_SIZE, 2.5, brief=False),
    _Style(HEAD, LEAD_SIZE, 2.0, brief=True),
    _Style(LEAD_SIZE, CUE, 1.2, brief=True),
)


def card_sheet(edition: Edition, who: str) -> Sheet:
    """One performer's card; as many sheets as the cues need."""
    return Sheet(
        name=f"card-{edition.file_part(who)}",
        title=f"Pocket card: {who}",
        story=partial(_story, edition, who),
        wide=True,
        plain=True,
    )


def _story(edition: Edition, who: str, page: Page) -> list[Flowable]:
    inner = page.width / 4 - 2 * _PAD
    tall = page.height / 2 - 2 * _PAD - _FOOT
    back = _back(edition, who)
    fitting, rest = _fitting(back, _cautions(edition), inner, tall)
    back[-1:-1] = fitting  # before the folding hint
    columns: list[list[Flowable]] = []
    for style in _STYLES:
        columns = packed([*_cues(edition, who, inner, style), *rest], inner, tall)
        if len(columns) <= PANELS - 2:
            break
    panels = [_front(edition, who, inner)]
    panels += columns[: PANELS - 2]
    panels += [[] for _ in range(PANELS - 1 - len(panels))]
    panels.append(back)
    more = columns[PANELS - 2 :]
    sheets = [panels] + [more[k : k + PANELS] for k in range(0, len(more), PANELS)]
    story: list[Flowable] = []
    for index, panels in enumerate(sheets):
        story += [PageBreak()] if index else []
        story.append(Fold(edition, who, panels, page, sheet=index + 1, sheets=len(sheets)))
    return story


def _fitting(
    fixed: Sequence[Flowable], lines: Sequence[Flowable], room: float, tall: float
) -> tuple[list[Flowable], list[Flowable]]:
    """Lines that still fit on a panel with its present content, and the rest."""
    left = tall - sum(part.wrap(room, tall)[1] + (part.getSpaceAfter() or 0) for part in fixed)
    fitting = 0
    for line in lines:
        left -= line.wrap(room, tall)[1] + (line.getSpaceAfter() or 0)
        if left < 0:
            break
        fitting += 1
    return list(lines[:fitting]), list(lines[fitting:])


def packed(blocks: Sequence[Flowable], room: float, tall: float) -> list[list[Flowable]]:
    """Blocks in columns of a given height, in order; a block taller than a column is split."""
    columns: list[list[Flowable]] = [[]]
    left = tall
    waiting = list(blocks)
    while waiting:
        block = waiting.pop(0)
        _, high = block.wrap(room, tall)
        if high > tall and (parts := block.split(room, tall)):
            waiting = [*parts, *waiting]
            continue
        if high > left and columns[-1]:
            columns.append([])
            left = tall
        columns[-1].append(block)
        left -= high
    return columns


def _cues(edition: Edition, who: str, room: float, style: _Style) -> list[Flowable]:
    """What goes on the card: no walks, links or short rests; a place only if it is new."""
    cues = [
        cue
        for cue in cues_of(edition.staged, who)
        if (cue.kind not in {"walk", "link"} or cue.coming is not None)
        and not (cue.kind == "wait" and cue.beats < _SHORT and cue.onward is None)
    ]
    blocks, before = [], ""
    for cue in cues:
        place = place_words(*(cue.spot[:2] if cue.onward is None else cue.onward.place))
        blocks.append(
            _cue(edition, cue, room, style, "" if place == before and style.brief else place)
        )
        if cue.still or cue.kind == "move":
            before = place
    return blocks


def _cue(edition: Edition, cue: Cue, room: float, style: _Style, place: str) -> Flowable:
    staged = edition.staged
    titles = {
        "wait": _wait_words(cue),
        "walk": _coming_words(cue.coming),
        "accent": "HIT",
        "light": "FLAMES ON",
        "out": "FLAMES OUT",
        "end": "END",
    }
    title = titles.get(cue.kind) or (cue.block.title if cue.block else cue.kind)
    strong = cue.kind in {"light", "out", "end"}
    face: Face = "Poster" if strong else "Bold"
    body = [Prose(TextSpan(brief(title, most=60), face, style.title), leading=1.1, role="TD")]
    if cue.kind == "accent":
        if cue.note:
            body.append(Prose(TextSpan(edition.in_order(cue.note), "Regular", TEXT), role="TD"))
    elif not strong:
        how = [TextSpan(f"{number(round(4 * cue.beats) / 4)} beats  ", "Bold", TEXT)]
        how += [TextSpan(place, "Regular", TEXT, SOFT)] if place else []
        body.append(Prose(how, leading=1.12, role="TD"))
    body += [
        Prose(TextSpan(line, "Bold", TEXT), leading=1.12, role="TD")
        for line in _handled(edition, cue)
    ]
    time: list[Flowable] = [
        Prose(
            TextSpan(early_clock(staged.seconds(cue.start)), "Poster", style.time),
            leading=1.05,
            role="TD",
        )
    ]
    if not strong:
        bar = bar_words(staged, cue) if staged.seconds(cue.start) > 0.01 else "track starts"
        time.append(Prose(TextSpan(bar, "Regular", TEXT), leading=1.1, role="TD"))
    ground = [("BACKGROUND", (0, 0), (-1, -1), MIST)] if strong else []
    return grid([[time, body]], [50, room - 50], *ground, pad=style.pad, gutter=4)


def _wait_words(cue: Cue) -> str:
    if cue.onward is not None:
        return f"get round behind the stage{f' to {cue.onward.side}' if cue.onward.side else ''}"
    return "wait in the wings" if cue.in_wings else "rest"


def _coming_words(coming: Coming | None) -> str:
    if coming is None:
        return "walk"
    side = f"{' from' if coming.on else ' to'} {coming.side}" if coming.side else ""
    return f"{'come on' if coming.on else 'go off'}{side}"


def _handled(edition: Edition, cue: Cue) -> list[str]:
    """Who lights and puts out, how lit props wait, and by when they are out."""
    burn = cue.burn
    if burn is None:
        return []
    if cue.kind == "light":
        first = first_move(edition, burn)
        wait = [waiting_words(edition, burn, f"until {first}")] if first is not None else []
        return [lighter_words(edition, burn), *wait]
    if cue.kind == "out":
        return [f"{putter_words(edition, burn)} by {late_clock(burn.out_s)}"]
    return []


def _front(edition: Edition, who: str, room: float) -> list[Flowable]:
    staged = edition.staged
    burns = burns_of(staged, who)
    lit = "\n".join(f"{early_clock(b.alight_s)} – {late_clock(b.out_s)}" for b in burns[:3])
    words = f"version {brief(staged.show.version, most=20)}, {staged.show.date or 'no date'}"
    issue = Prose(TextSpan(words, "Regular", SMALL))
    issue.is_constant = True  # differs in every print, so it is not marked as a change
    parts: list[Flowable] = []
    if edition.stops:
        parts.append(_Warning(f"DO NOT DANCE YET ({len(edition.stops)})"))
    if edition.is_draft:
        parts.append(Prose(TextSpan("DRAFT – no permit that counts", "Bold", SMALL), after=2))
    parts += [
        kicker(f"No. {edition.number_of(who)}"),
        fitted(brief(edition.person(who), most=36), room, sizes=(HEAD + 4, HEAD, LEAD_SIZE)),
        Prose(TextSpan(brief(edition.title, most=40), "Bold", TEXT), before=2),
        *(
            [Prose(TextSpan(edition.in_order(edition.tonight), "Bold", SMALL))]
            if edition.tonight
            else []
        ),
        issue,
        Prose(
            TextSpan(
                f"{brief(edition.track, most=30)}\nsha256 {edition.track_hash}",
                "Regular",
                TINY,
                SOFT,
            ),
            after=4,
        ),
    ]
    mark = LitMark("LIT" if burns else "OUT", lit=bool(burns))
    mark.spaceAfter = 4
    parts.append(mark)
    parts.append(
        Prose(TextSpan(lit or "not lit in this show", "Poster", LEAD_SIZE), leading=1.15, after=4)
    )
    parts.append(Prose(TextSpan(page_one(), "Bold", TINY), leading=1.2))
    parts.append(ChangesNote())
    return parts


def _cautions(edition: Edition) -> list[Flowable]:
    """What a pocket card holds besides the cues; whatever does not fit on the back follows the cues."""
    cautions = cautions_of(edition.staged, edition.report.conditions, reader="pocket")
    words = [f"– {caution.short}" for caution in cautions]
    if not words:
        return []
    # a heading never stands alone at the foot of a panel
    first = [TextSpan("Remember\n", "Poster", LEAD_SIZE), TextSpan(words[0], "Regular", SMALL)]
    return [
        Prose(first, leading=1.2, after=1),
        *(Prose(TextSpan(line, "Regular", SMALL), leading=1.15, after=1) for line in words[1:]),
    ]


def _back(edition: Edition, who: str) -> list[Flowable]:
    call = edition.staged.show.stop_call
    does = "; ".join(own_on_stop(edition.staged.show, edition.plan.lit_at_once, who, "performer"))
    stop = brief(f"Three times “{call.word}”, {call.signal}. You: {does}.", most=260)
    card = edition.staged.show.emergency
    urgent = (
        ("Emergency", card.number),
        ("Meet", card.meeting_point),
        ("First aider", card.first_aider),
    )
    contacts = [f"{word}: {entered}" for word, entered in urgent if entered]
    hint = (
        "Print single-sided at 100 %. Fold into eight, cut along the line between the two inner columns, "
        "fold into a booklet."
    )
    return [
        _Stop(),
        Prose(TextSpan(edition.in_order(stop), "Bold", TEXT + 1), leading=1.2, before=4, after=6),
        *(
            Prose(TextSpan(edition.in_order(brief(line, most=90)), "Bold", TEXT), after=3)
            for line in contacts
        ),
        Prose(TextSpan(hint, "Italic", TINY, SOFT)),
    ]


class _Warning(Flowable):  # type: ignore[misc]
    """The warning that the show has a STOP, on a dark field with stripes."""

    def __init__(self, words: str) -> None:
        super().__init__()
        self.words = words

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        self.width = room
        return room, 20.0

    def draw(self) -> None:
        canvas = self.canv
        canvas.setFillColor(INK)
        canvas.rect(0, 3, self.width, 16, stroke=0, fill=1)
        stripes(canvas, 0, 3, 14, 16)
        stripes(canvas, self.width - 14, 3, 14, 16)
        words = clipped(self.words, "Bold", SMALL, self.width - 32)
        one_line(canvas, self.width / 2, 8, TextSpan(words, "Bold", SMALL, PAPER), align="centre")


class _Stop(Flowable):  # type: ignore[misc]
    """The stop mark."""

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        self.width = room
        return room, 50.0

    def draw(self) -> None:
        stop_mark(self.canv, 0, 0, 48, INK)
        one_line(self.canv, 24, 18.5, TextSpan("STOP", "Poster", 16, PAPER), align="centre")


class Fold(Flowable):  # type: ignore[misc]
    """Eight panels on one sheet."""

    def __init__(
        self,
        edition: Edition,
        who: str,
        panels: Sequence[Sequence[Flowable]],
        page: Page,
        *,
        sheet: int,
        sheets: int,
    ) -> None:
        super().__init__()
        self.edition, self.who, self.panels, self.page = edition, who, panels, page
        self.sheet, self.sheets = sheet, sheets

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """The whole sheet."""
        self.width, self.height = self.page.width, self.page.height
        return self.width, self.height

    def draw(self) -> None:
        """Put the panels on the page."""
        canvas = self.canv
        wide, tall = self.width / 4, self.height / 2
        for column, panel in _LOW:
            canvas.saveState()
            canvas.translate(column * wide, 0)
            self._panel(canvas, panel, wide, tall)
            canvas.restoreState()
        for column, panel in _TOP:
            canvas.saveState()
            canvas.translate((column + 1) * wide, 2 * tall)
            canvas.rotate(180)
            self._panel(canvas, panel, wide, tall)
            canvas.restoreState()
        self._folds(canvas, wide, tall)

    def _panel(self, canvas: Any, number: int, wide: float, tall: float) -> None:
        content = self.panels[number - 1] if number <= len(self.panels) else []
        top = tall - _PAD
        for part in content:
            _, high = part.wrap(wide - 2 * _PAD, top)
            top -= high
            part.drawOn(canvas, _PAD, top)
            top -= getattr(part, "spaceAfter", 0) or 0
        page = (self.sheet - 1) * PANELS + number
        words = f"{self.edition.number_of(self.who)}  {brief(self.who, most=18)} · page {page} of {self.sheets * PANELS}"
        one_line(
            canvas, _PAD, _PAD + 5, TextSpan(words, "Regular", TINY, SOFT), room=wide - 2 * _PAD
        )

    def _folds(self, canvas: Any, wide: float, tall: float) -> None:
        canvas.begin_artifact()
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.5)
        canvas.setDash(3, 3)
        for column in (1, 2, 3):
            canvas.line(column * wide, 0, column * wide, 2 * tall)
        canvas.line(0, tall, wide, tall)
        canvas.line(3 * wide, tall, 4 * wide, tall)
        canvas.setDash()
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.0)
        canvas.line(wide, tall, 3 * wide, tall)
        canvas.end_tag()
