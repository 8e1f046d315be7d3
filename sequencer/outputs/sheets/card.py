"""A pocket card: one sheet, printed on one side, cut once and folded into a booklet of eight A7 pages.

The eight panels run round the sheet: page 1 is at the lower right, 2 to 5 along the top from right to
left (upside down), 6 and 7 at the lower left, 8 beside page 1; the cut separates the two middle columns. A4 gives
A7 (74 by 105 mm); Letter gives 70 by 108 mm. Common practice. Lengths in points.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from reportlab.platypus import Flowable, PageBreak

from sequencer.facts.cautions import page_one
from sequencer.outputs.sheets.page.elements import LitMark, fitted, grid, kicker
from sequencer.outputs.sheets.page.letters import Face
from sequencer.outputs.sheets.page.marking import ChangesNote
from sequencer.outputs.sheets.page.paper import (
    CUE,
    HEAD,
    LEAD_SIZE,
    MIST,
    SMALL,
    SOFT,
    TEXT,
    TINY,
    Page,
)
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, brief, number
from sequencer.outputs.sheets.parts.card_panels import (
    PANEL_FOOT,
    PANEL_PAD,
    PANELS,
    Fold,
    RuledPanel,
    StopSign,
    Warned,
    high,
)
from sequencer.outputs.sheets.parts.cues import (
    Cue,
    bar_words,
    burns_of,
    cues_of,
    early_clock,
    late_clock,
)
from sequencer.outputs.sheets.parts.dance_rows.folding import CueLine, folded
from sequencer.outputs.sheets.parts.dance_rows.handling_words import (
    first_move,
    lighter_words,
    putter_words,
    waiting_words,
)
from sequencer.outputs.sheets.parts.dance_rows.move_words import MoveWords, told_moves
from sequencer.outputs.sheets.parts.dance_rows.performer_rows import (
    Stood,
    counted_link,
    is_counted,
    stood_at,
    where_words,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.safety.duties.on_stop import own_on_stop
from sequencer.safety.rules.circumstances import cautions_of
from sequencer.staging.staged import Coming


@dataclass(frozen=True, slots=True)
class _Style:
    """How roomy a card is; the first setting that fits one sheet is used."""

    time: float
    title: float
    said: float
    pad: float


_STRONG = ("light", "out", "end")
_SHORT = 4.0  # [beats] shorter rests are left out
_TIME = 40.0  # width of the times
_STYLES = (
    _Style(HEAD, LEAD_SIZE, TEXT, 3.0),
    _Style(LEAD_SIZE, CUE, SMALL, 2.0),
    _Style(LEAD_SIZE, CUE, TINY, 1.0),
    _Style(CUE, TEXT, TINY, 0.5),
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
    inner = page.width / 4 - 2 * PANEL_PAD
    tall = page.height / 2 - 2 * PANEL_PAD - PANEL_FOOT
    columns, back = _laid_out(edition, who, inner, tall)
    panels = [_front(edition, who, inner), *columns[: PANELS - 2]]
    while len(panels) < PANELS - 1:  # nothing is left blank without a use
        panels.append([RuledPanel(inner, tall, "Your notes")])
    panels.append(back)
    more = columns[PANELS - 2 :]
    sheets = [panels] + [more[k : k + PANELS] for k in range(0, len(more), PANELS)]
    for sheet in sheets[1:]:
        sheet += [[RuledPanel(inner, tall, "Your notes")] for _ in range(PANELS - len(sheet))]
    story: list[Flowable] = []
    for index, panels in enumerate(sheets):
        story += [PageBreak()] if index else []
        story.append(Fold(edition, who, panels, page, sheet=index + 1, sheets=len(sheets)))
    return story


def _laid_out(
    edition: Edition, who: str, inner: float, tall: float
) -> tuple[list[list[Flowable]], list[Flowable]]:
    """The panels between front and back, and the back: in the largest type that one sheet can hold, else in the smallest.

    What to remember stands together, on the back or after the cues, if it can; else its first lines after the cues.
    """
    cautions = cautions_of(edition.staged, edition.report.conditions, reader="pocket")
    words = [caution.short for caution in cautions]
    before = list(range(len(words) + 1))
    before = [0, *reversed(before[1:])]  # how many stand after the cues
    cues: list[Flowable] = []
    for style in _STYLES:
        cues = [*_cues(edition, who, inner, style), *_own_notes(edition, who)]
        for count in before:
            back = _back(edition, who)
            back[-1:-1] = _listed("Remember", words[count:], SMALL)  # before the folding hint
            if sum(map(partial(high, inner), back)) > tall:
                continue
            first = _listed("Remember", words[:count], SMALL)
            told = not_alone(packed(cues, inner, tall), inner, tall)
            apart = [*told, *(packed(first, inner, tall) if first else [])]
            columns = apart if len(apart) <= PANELS - 2 else packed([*cues, *first], inner, tall)
            if len(columns) <= PANELS - 2:
                return columns, back
    rest = _listed("Remember", words, SMALL)
    told = not_alone(packed(cues, inner, tall), inner, tall)
    return [*told, *packed(rest, inner, tall)], _back(edition, who)


def packed(blocks: Sequence[Flowable], room: float, tall: float) -> list[list[Flowable]]:
    """Blocks in columns of a given height, in order; a block taller than a column is split."""
    columns: list[list[Flowable]] = [[]]
    left = tall
    waiting = list(blocks)
    while waiting:
        block = waiting.pop(0)
        _, needed = block.wrap(room, tall)
        if needed > tall and (parts := block.split(room, tall)):
            waiting = [*parts, *waiting]
            continue
        if needed > left and columns[-1]:
            columns.append([])
            left = tall
        columns[-1].append(block)
        left -= needed + (block.getSpaceAfter() or 0)
    return columns


def not_alone(columns: Sequence[list[Flowable]], room: float, tall: float) -> list[list[Flowable]]:
    """Columns of which the last holds more than one block, if the one before can spare one: nobody turns over for "END"."""
    none: list[Flowable] = []
    *before, first, last = [none, *map(list, columns)]
    if len(last) == 1 and len(first) > 2 and high(room, first[-1]) + high(room, last[0]) <= tall:
        last.insert(0, first.pop())
    return [each for each in (*before, first, last) if each]


def _cues(edition: Edition, who: str, room: float, style: _Style) -> list[Flowable]:
    """The lines of the sheet in brief, without short rests: links stand with the move before them."""
    told = told_moves(edition.staged, who)
    blocks: list[Flowable] = []
    stood: Stood | None = None
    known: set[Stood] = set()
    cues = cues_of(edition.staged, who)
    for line in folded(cues):
        cue = line.cue
        if not (cue.kind == "wait" and cue.beats < _SHORT and cue.onward is None):
            place = "" if cue.kind in _STRONG else where_words(line, stood, known)
            words = told.get(id(cue.block), MoveWords())
            blocks.append(_cue(edition, line, room, style, words, place))
        stood = stood_at(line) or stood
        known |= {stood} if stood is not None else set()
    blocks += [
        _cue(edition, CueLine(cue=cue), room, style, MoveWords(), "")
        for cue in cues
        if cue.kind == "end"
    ]
    return blocks


def _cue(
    edition: Edition, line: CueLine, room: float, style: _Style, words: MoveWords, place: str
) -> Flowable:
    staged, cue = edition.staged, line.cue
    titles = {
        "wait": _wait_words(cue),
        "walk": _coming_words(cue.coming),
        "accent": "HIT",
        "light": "FLAMES ON",
        "out": "FLAMES OUT",
        "end": "END",
    }
    title = titles.get(cue.kind) or (cue.block.title if cue.block else cue.kind)
    strong = cue.kind in _STRONG
    head = [TextSpan(brief(title, most=60), "Poster" if strong else "Bold", style.title)]
    if words.cue:
        head.append(TextSpan(f"  “{edition.in_order(words.cue)}”", "Poster", style.title))
    counts, said = _counts(line), "; ".join(words.brief)
    if counts and not said:
        head.append(TextSpan(f"  {counts}", "Bold", style.said))
    body = [Prose(head, leading=1.1, role="TD")]
    lines: list[list[tuple[str, Face]]] = [
        [(f"{counts}  ", "Bold"), (said, "Regular")] if said else [],
        [(place, "Bold")],
        [(cue.note, "Regular")],
    ]
    lines[2:2] = [[(each, "Bold")] for each in _handled(edition, cue)]
    for parts in lines:
        spans = [TextSpan(edition.in_order(text), face, style.said) for text, face in parts if text]
        if spans:
            body.append(Prose(spans, leading=1.1, role="TD"))
    clock = early_clock(staged.seconds(cue.start))
    time: list[Flowable] = [Prose(TextSpan(clock, "Poster", style.time), leading=1.05, role="TD")]
    position = bar_words(staged, cue)
    if not strong and staged.seconds(cue.start) > 0.01 and "+" not in position:
        time.append(Prose(TextSpan(position, "Regular", style.said), leading=1.1, role="TD"))
    ground = [("BACKGROUND", (0, 0), (-1, -1), MIST)] if strong else []
    wide = _TIME * style.time / LEAD_SIZE
    return grid([[time, body]], [wide, room - wide], *ground, pad=style.pad, gutter=3)


def _counts(line: CueLine) -> str:
    """Counts of a line, and those of the link after it."""
    cue = line.cue
    if cue.kind not in {"move", "stop", "wait"} or not is_counted(cue):
        return ""
    link = counted_link(line)
    return f"{number(cue.beats)}{f'{NB}+{number(link.beats)}' if link else ''}"


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
        parts.append(Warned(f"DO NOT DANCE YET ({len(edition.stops)})"))
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


def _own_notes(edition: Edition, who: str) -> list[Flowable]:
    """Notes of one's own, under their heading."""
    dancer = next(each for each in edition.staged.show.cast if each.name == who)
    return _listed("Your notes", [edition.in_order(note) for note in dancer.notes], TEXT)


def _listed(title: str, lines: Sequence[str], size: float) -> list[Flowable]:
    """Lines under a heading, which never stands alone at the foot of a panel."""
    if not lines:
        return []
    first = [
        TextSpan(f"{title}\n", "Poster", CUE),
        TextSpan(f"– {lines[0]}", "Regular", size),
    ]
    more = [
        Prose(TextSpan(f"– {line}", "Regular", size), leading=1.1, after=1) for line in lines[1:]
    ]
    return [Prose(first, leading=1.15, after=1), *more]


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
        StopSign(),
        Prose(TextSpan(edition.in_order(stop), "Bold", TEXT + 1), leading=1.2, before=4, after=6),
        *(
            Prose(TextSpan(edition.in_order(brief(line, most=90)), "Bold", TEXT), after=3)
            for line in contacts
        ),
        Prose(TextSpan(hint, "Italic", TINY, SOFT)),
    ]
