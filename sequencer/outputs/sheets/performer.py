"""A performer's sheet: what to do, when, where, in type that is read in the dark. Lengths in points."""

import textwrap
from collections.abc import Sequence
from functools import partial

from reportlab.lib.colors import Color
from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.blocks import (
    Cell,
    Disc,
    LitMark,
    box,
    grid,
    head_cell,
    heading,
)
from sequencer.outputs.sheets.cues import Cue, cues_of
from sequencer.outputs.sheets.edition import Edition
from sequencer.outputs.sheets.formations import formation_plans
from sequencer.outputs.sheets.furniture import Sheet
from sequencer.outputs.sheets.hands import hand_lines, together_words
from sequencer.outputs.sheets.letters import Face
from sequencer.outputs.sheets.notices import (
    cautions_block,
    findings_block,
    notes_block,
    opening,
)
from sequencer.outputs.sheets.paper import (
    CUE,
    FLAME,
    HEAD,
    INK,
    LEAD,
    MIST,
    PAPER,
    SMALL,
    SOFT,
    TEXT,
    Page,
)
from sequencer.outputs.sheets.prose import Prose, Span
from sequencer.outputs.sheets.wording import (
    NB,
    brief,
    clock,
    facing_words,
    metres,
    number,
    place_words,
    plural,
    span_seconds,
)
from sequencer.outputs.timeline_strip import TimelineStrip
from sequencer.show.burning import burn_time
from sequencer.show.staged import Block

TIME, COUNT, LIT = 66.0, 58.0, 46.0  # columns beside the two wide ones
INLINE_NOTE, NOTE_PIECE = 240, 600  # letters: longer notes get rows of their own, in pieces
_LINK = "computed link"


def performer_sheet(edition: Edition, who: str) -> Sheet:
    """One performer's pages."""
    return Sheet(
        name=f"performer-{edition.file_part(who)}",
        title=f"Performer’s sheet: {who}",
        story=partial(_story, edition, who),
    )


def _story(edition: Edition, who: str, page: Page) -> list[Flowable]:
    room = page.inner
    story = opening(
        edition,
        room,
        kind="Performer’s sheet",
        title=who,
        facts=_facts(edition, who),
        stop="You: stop the props, kneel or step away from people, put the flame out. Do not run.",
        badge=Disc(str(edition.number_of(who)), 40),
    )
    story += _changes_box(edition, who, room)
    story += findings_block(
        edition, edition.findings_for(who), room, title="Before you dance: findings about you"
    )
    story += [Spacer(1, 8), TimelineStrip(edition, focus=who, lanes=False)]
    story += [CondPageBreak(190), heading("What you do"), cue_table(edition, who, room)]
    story += formation_plans(edition, page, focus=who)
    story += notes_block(edition, edition.findings_for(who), room, named=False)
    story += cautions_block(edition, "performer", room)
    return story


def _changes_box(edition: Edition, who: str, room: float) -> list[Flowable]:
    """What differs from the last print, where one is given."""
    if edition.changes is None:
        return []
    new, gone = edition.changes.counts(who)
    words = f"Against {edition.changes.said}: nothing changed for you."
    if new or gone:
        words = f"Against {edition.changes.said}: {plural(new, 'line')} new or changed, marked CHANGED; {gone} gone."
    return [Spacer(1, 5), box([Prose(Span(words, "Bold", TEXT))], room)]


def _listed(cell: Cell) -> list[Flowable]:
    return list(cell) if isinstance(cell, list) else []


def changed_mark(*, light: bool = False) -> Prose:
    """The word beside a line that differs from the last print."""
    return Prose(Span("CHANGED", "Bold", SMALL, PAPER if light else INK), role="TD")


def _facts(edition: Edition, who: str) -> list[tuple[str, str]]:
    staged = edition.staged
    dancer = next(d for d in staged.show.cast if d.name == who)
    burns = staged.lit_of(who)
    lit = "not lit in this show"
    if burns:
        lit = "\n".join(
            f"{clock(staged.seconds(b.start))}{NB}–{NB}{clock(staged.seconds(b.end))}"
            for b in burns[:4]
        )
        if len(burns) > 4:
            lit += f"\nand {len(burns) - 4} more"
    facts = [("Lit", lit)]
    time = burn_time(staged, who)
    if burns and time is not None:
        share = edition.staged.show.fire.reserve if edition.staged.show.fire else 1.0
        basis = {"measured": "timed", "stated": "stated, not timed"}.get(
            time.basis, "by default, time your own"
        )
        facts.append(
            (
                f"Wick burns ({basis})",
                f"{span_seconds(time.seconds)}, plan at most {span_seconds(share * time.seconds)}",
            )
        )
    props = {(p.tether, p.head_mass) for p in (dancer.held("left"), dancer.held("right"))}
    facts.append(
        (
            "Props",
            "\n".join(
                f"{metres(t, decimals=2)} tether, {1000 * m:.0f}\u00a0g" for t, m in sorted(props)
            ),
        )
    )
    first = next(iter(cues_of(staged, who)), None)
    if first is not None:
        facts.append(("Start", place_words(*first.spot[:2])))
    return facts


def cue_table(edition: Edition, who: str, room: float) -> Flowable:
    """Every cue of a performer as one row."""
    wide = room - TIME - COUNT - LIT
    widths = [TIME, COUNT, wide * 0.6, wide * 0.4, LIT]
    rows: list[list[Cell]] = [
        [
            head_cell("time"),
            head_cell("count"),
            head_cell("what you do"),
            head_cell("stand and face"),
            head_cell("fire"),
        ]
    ]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    cues = [cue for cue in cues_of(edition.staged, who) if cue.kind != "end"]
    nexts = _next_words(cues)
    section = None
    for index, cue in enumerate(cues):
        if cue.section != section:
            section = cue.section
            rows.append([Prose(_section_words(edition, cue), role="TH"), "", "", "", ""])
            n = len(rows) - 1
            style += [
                ("SPAN", (0, n), (-1, n)),
                ("BACKGROUND", (0, n), (-1, n), MIST),
                ("LEFTPADDING", (0, n), (0, n), 6),
                ("NOSPLIT", (0, n), (0, n + 1)),
            ]
        rows.append(_row(edition, who, cue, nexts[index]))
        n = len(rows) - 1
        if edition.changes is not None and edition.changes.is_new_cue(who, cue):
            rows[n][1] = [*_listed(rows[n][1]), changed_mark(light=cue.kind == "light")]
            style += [("LINEBEFORE", (0, n), (0, n), 4, INK), ("LEFTPADDING", (0, n), (0, n), 7)]
        for note in note_rows(edition, cue):
            rows.append(["", note, "", "", ""])
            style += [("SPAN", (1, len(rows) - 1), (-1, len(rows) - 1))]
        if cue.kind in {"light", "out"}:
            style += [("SPAN", (2, n), (3, n)), ("VALIGN", (0, n), (-1, n), "MIDDLE")]
            if cue.kind == "light":
                style += [
                    ("BACKGROUND", (0, n), (-1, n), FLAME),
                    ("LEFTPADDING", (0, n), (0, n), 6),
                ]
            else:
                style += [("BOX", (0, n), (-1, n), 1.6, INK), ("LEFTPADDING", (0, n), (0, n), 6)]
    return grid(rows, widths, *style, repeat=1, pad=5)


def _section_words(edition: Edition, cue: Cue) -> list[Span]:
    staged = edition.staged
    return [
        Span(cue.section or "outside the song", "Bold", CUE, INK),
        Span(f"   from {clock(staged.seconds(cue.start))}", "Regular", TEXT, SOFT),
    ]


def _next_words(cues: Sequence[Cue]) -> list[str]:
    words = [_title(cue) for cue in cues]
    following = []
    for index, cue in enumerate(cues):
        after = next(
            (
                words[later]
                for later in range(index + 1, len(cues))
                if cues[later].kind in {"move", "link", "wait"}
                and cues[later].start >= cue.end - 1e-6
            ),
            "end of the show",
        )
        following.append(after)
    return following


def _title(cue: Cue) -> str:
    if cue.kind == "wait":
        return "rest"
    if cue.kind == "walk":
        return "walk"
    if cue.block is None:
        return cue.kind
    return _LINK if cue.block.link else cue.block.title


def _row(edition: Edition, who: str, cue: Cue, after: str) -> list[Cell]:
    staged = edition.staged
    ink: Color = PAPER if cue.kind == "light" else INK
    bar = (
        f"bar {staged.position(cue.start)}" if staged.seconds(cue.start) > 0.01 else "track starts"
    )
    time: Cell = [
        Prose(Span(clock(staged.seconds(cue.start)), "Poster", HEAD, ink), leading=1.1, role="TD"),
        Prose(Span(bar, "Bold", CUE if len(bar) < 10 else TEXT, ink), role="TD"),
    ]
    if cue.kind in {"light", "out"}:
        return _fire_row(edition, who, cue, time, ink)
    count: Cell = [
        Prose(Span(number(_counted(cue)), "Poster", HEAD, INK), leading=1.1, role="TD"),
        Prose(Span(_cycles(cue), "Regular", TEXT, SOFT), role="TD"),
    ]
    mark = LitMark("LIT" if cue.lit else "OUT", lit=cue.lit)
    return [time, count, _what(edition, who, cue, after), _where(cue), mark]


def _fire_row(edition: Edition, who: str, cue: Cue, time: Cell, ink: Color) -> list[Cell]:
    staged = edition.staged
    if cue.kind == "light":
        burn = next(b for b in staged.lit_of(who) if abs(b.start - cue.start) < 1e-6)
        planned = staged.seconds(burn.end) - staged.seconds(burn.start)
        words = f"Out at {clock(staged.seconds(burn.end))}, after {span_seconds(planned)}"
        title = "LIGHT UP"
    else:
        title, words = "PUT OUT", "Smother, check it is out, hand over"
    return [
        time,
        "",
        [
            Prose(Span(title, "Poster", HEAD, ink), leading=1.1, role="TD"),
            Prose(Span(words, "Bold", CUE, ink), role="TD"),
        ],
        "",
        "" if cue.kind == "light" else LitMark("OUT", lit=False),
    ]


def _counted(cue: Cue) -> float:
    """Beats to count; a rest to a quarter of a beat, for it may begin anywhere before the first bar."""
    return round(4 * cue.beats) / 4 if cue.kind == "wait" else cue.beats


def _cycles(cue: Cue) -> str:
    unit = "beat" if abs(cue.beats - 1) < 1e-9 else "beats"
    if cue.block is None or cue.block.link or not cue.block.cycle:
        return unit
    cycles = cue.beats / cue.block.cycle
    if abs(cycles - round(cycles)) < 1e-6 and cycles >= 1.5 and cue.block.cycle > 1:
        return f"{unit}\n{round(cycles)} cycles of {number(cue.block.cycle)}"
    return unit


def _what(edition: Edition, who: str, cue: Cue, after: str) -> list[Flowable]:
    if cue.kind == "walk":
        way = f"to {cue.formation}, in {plural(cue.beats, 'beat')}"
        return [_words("Walk", "Bold", LEAD), _words(way)]
    if cue.block is not None:
        return [*_block(edition, who, cue.block), _then(after)]
    lines = [_words("Rest", "Bold", LEAD), _words("arms hang, props still")]
    if cue.lit:
        lines.append(_words("you are lit: hold the flames off your legs", "Bold"))
    return [*lines, _then(after)]


def _words(text: str, face: Face = "Regular", size: float = CUE, colour: Color = INK) -> Prose:
    return Prose(Span(text, face, size, colour), leading=1.2, role="TD")


def _block(edition: Edition, who: str, block: Block) -> list[Prose]:
    dancer = next((d for d in edition.staged.dancers if d.name == who), None)
    lines = [_words(_LINK.capitalize() if block.link else block.title, "Bold", LEAD)]
    for label, words in hand_lines(dancer, block):
        both = [Span(f"{label}  ", "Bold", CUE), Span(words, "Regular", CUE)]
        lines.append(Prose(both, leading=1.2, role="TD"))
    extra = [together_words(block)]
    extra += ["mirrored: left and right changed over"] if block.mirrored else []
    extra += [f"start {plural(block.shift, 'beat')} into the pattern"] if block.shift else []
    extra += [f"phrase “{brief(block.phrase)}”"] if block.phrase else []
    text = "; ".join(filter(None, extra))
    lines += [_words(text, colour=SOFT)] if text else []
    if block.note and len(block.note) <= INLINE_NOTE:
        lines.append(_words(edition.said(block.note), "Italic"))
    return lines


def note_rows(edition: Edition, cue: Cue) -> list[Prose]:
    """A long note as rows of their own, each short enough to stand on any page."""
    note = cue.block.note if cue.block is not None else ""
    if len(note) <= INLINE_NOTE:
        return []
    pieces = [
        piece
        for paragraph in note.splitlines()
        for piece in textwrap.wrap(paragraph, NOTE_PIECE, break_long_words=True) or [""]
    ]
    return [_words(edition.said(piece), "Italic") for piece in pieces]


def _then(after: str) -> Prose:
    return Prose(
        [Span("next  ", "Bold", CUE, SOFT), Span(after, "Bold", CUE, INK)],
        leading=1.2,
        role="TD",
        before=2,
    )


def _where(cue: Cue) -> list[Flowable]:
    x, y, facing = cue.spot
    lead = "walking, then " if cue.walking else ""
    lines: list[Flowable] = [
        Prose(Span(f"{lead}{place_words(x, y)}", "Bold", CUE), leading=1.2, role="TD"),
        Prose(Span(f"face {facing_words(facing)}", "Regular", CUE), leading=1.2, role="TD"),
    ]
    if cue.formation:
        lines.append(Prose(Span(cue.formation, "Regular", TEXT, SOFT), role="TD"))
    return lines
