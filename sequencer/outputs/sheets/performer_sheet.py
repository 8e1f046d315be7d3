"""A performer's sheet: what to do, when and where, in type that can be read in the dark. Lengths in points."""

import textwrap
from collections.abc import Sequence
from functools import partial
from math import floor
from typing import TypeAlias

from reportlab.lib.colors import Color
from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.page.elements import (
    Cell,
    Disc,
    LitMark,
    grid,
    head_cell,
    heading,
)
from sequencer.outputs.sheets.page.letters import Face, printable, width
from sequencer.outputs.sheets.page.paper import (
    CUE,
    FLAME,
    HEAD,
    INK,
    MIST,
    PAPER,
    SMALL,
    SOFT,
    TEXT,
    Page,
)
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    NB,
    brief,
    clock,
    facing_words,
    number,
    place_words,
    plural,
    span_seconds,
)
from sequencer.outputs.sheets.parts.cues import (
    Cue,
    bar_words,
    burns_of,
    cues_of,
    early_clock,
    late_clock,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.folding import CueLine, folded, onward_words, walk_words
from sequencer.outputs.sheets.parts.formation_plans import formation_plans
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.hand_words import hand_lines, together_words
from sequencer.outputs.sheets.parts.handling_words import (
    first_move,
    lighting_lines,
    putting_out_lines,
    waiting_words,
)
from sequencer.outputs.sheets.parts.holding import held_words
from sequencer.outputs.sheets.parts.notices import (
    cautions_block,
    doing_on_stop,
    findings_block,
    notes_block,
    opening,
)
from sequencer.outputs.sheets.parts.timeline_strip import TimelineStrip
from sequencer.outputs.words.place_words import new_places
from sequencer.outputs.words.posture_words import block_posture
from sequencer.outputs.words.stop_words import stop_words
from sequencer.safety.burning import burn_time
from sequencer.staging.staged import Block

TIME, COUNT, NAME = 61.0, 48.0, 14.0  # widths of two columns; type size of a pattern's name
DARK = 12.0  # type of what is read in the dark
LONG_HANDS = 110  # letters: longer words for the hands are printed once, then referred to
INLINE_NOTE, NOTE_PIECE = 240, 600  # letters: longer notes get separate rows, in pieces
_LINK = "link"
Stood: TypeAlias = tuple[str, str]  # place and facing, in words


def performer_sheet(edition: Edition, who: str) -> Sheet:
    """One performer's pages."""
    return Sheet(
        name=f"performer-{edition.file_part(who)}",
        title=f"Performer’s sheet: {edition.person(who)}",
        story=partial(_story, edition, who),
    )


def _story(edition: Edition, who: str, page: Page) -> list[Flowable]:
    room = page.inner
    story = opening(
        edition,
        room,
        kind="Performer’s sheet",
        title=edition.person(who),
        facts=_facts(edition, who),
        stop=doing_on_stop(edition, who, "performer"),
        badge=Disc(str(edition.number_of(who)), 40),
    )
    story += findings_block(
        edition, edition.findings_for(who), room, title="Before you dance: findings about you"
    )
    story += [Spacer(1, 8), TimelineStrip(edition, focus=who, lanes=False)]
    story += [CondPageBreak(190), heading("What you do"), cue_table(edition, who, room)]
    story += formation_plans(edition, page, focus=who, across=3)
    story += cautions_block(edition, "performer", room)
    about_them = [
        f for f in edition.findings_for(who) if f.who
    ]  # those about the whole show are on the safety sheet
    story += notes_block(edition, about_them, room, named=False)
    return story


def _listed(cell: Cell) -> list[Flowable]:
    return list(cell) if isinstance(cell, list) else []


def changed_mark(*, light: bool = False, lines: int = 1) -> Prose:
    """The mark beside a changed line; with the number of changes if there are several."""
    words = "CHANGED" if lines == 1 else f"CHANGED ×{lines}"
    return Prose(TextSpan(words, "Bold", SMALL, PAPER if light else INK), role="TD")


def _facts(edition: Edition, who: str) -> list[tuple[str, str]]:
    staged = edition.staged
    dancer = next(d for d in staged.show.cast if d.name == who)
    burns = burns_of(staged, who)
    lit = "not lit in this show"
    if burns:
        lit = "\n".join(
            f"{early_clock(b.alight_s)}{NB}–{NB}{late_clock(b.out_s)}" for b in burns[:4]
        )
        if len(burns) > 4:
            lit += f"\nand {len(burns) - 4} more"
    facts = [("Lit", lit)]
    time = burn_time(staged, who)
    if burns and time is not None:
        share = edition.staged.show.fire.reserve if edition.staged.show.fire else 1.0
        basis = {"measured": "timed", "stated": "stated, not timed"}.get(
            time.basis, "default: time your own"
        )
        facts.append(
            (
                f"Wick burns ({basis})",
                f"{span_seconds(floor(time.seconds))}, plan at most {span_seconds(floor(share * time.seconds))}",
            )
        )
    facts.append(("Props", "\n".join(held_words(dancer, short=True))))
    first = next(iter(cues_of(staged, who)), None)
    if first is not None:
        facts.append(("Start", place_words(*first.spot[:2])))
    return facts


def cue_table(edition: Edition, who: str, room: float) -> Flowable:
    """Every cue of a performer as one row."""
    wide = room - TIME - COUNT
    widths = [TIME, COUNT, wide]
    heads = ("time", "count", "what you do, where you stand and face")
    rows: list[list[Cell]] = [[head_cell(words) for words in heads]]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    entries = folded(cues_of(edition.staged, who))
    first_seen: dict[str, Cue] = {}
    section = None
    stood: Stood | None = None
    for index, entry in enumerate(entries):
        cue = entry.cue
        if cue.section != section:
            section = cue.section
            rows.append([Prose(_section_words(edition, cue), role="TH"), "", ""])
            n = len(rows) - 1
            style += [
                ("SPAN", (0, n), (-1, n)),
                ("BACKGROUND", (0, n), (-1, n), MIST),
                ("LEFTPADDING", (0, n), (0, n), 6),
                ("TOPPADDING", (0, n), (-1, n), 1),
                ("BOTTOMPADDING", (0, n), (-1, n), 2),
                ("NOSPLIT", (0, n), (0, n + 1)),
            ]
        rows.append(_row(edition, who, entry, _next_words(entries, index), first_seen, wide, stood))
        stood = stood_at(entry) or stood
        n = len(rows) - 1
        if edition.changes is not None:
            new = sum(edition.changes.is_new_cue(who, each) for each in entry.cues)
            if new:
                mark = changed_mark(light=cue.kind == "light", lines=new)
                rows[n][0] = [*_listed(rows[n][0]), mark]
        rows += [["", "", note] for note in note_rows(edition, cue)]
        if cue.kind in {"light", "out"}:
            style += [("VALIGN", (0, n), (-1, n), "MIDDLE")]
            style += [("LEFTPADDING", (0, n), (0, n), 6), ("RIGHTPADDING", (0, n), (0, n), 1)]
            style += [("TOPPADDING", (0, n), (-1, n), 4), ("BOTTOMPADDING", (0, n), (-1, n), 5)]
            style.append(
                ("BACKGROUND", (0, n), (-1, n), FLAME)
                if cue.kind == "light"
                else ("BOX", (0, n), (-1, n), 1.6, INK)
            )
    return grid(rows, widths, *style, repeat=1, pad=2.5)


def _section_words(edition: Edition, cue: Cue) -> list[TextSpan]:
    staged = edition.staged
    if staged.seconds(cue.start) < -0.01:
        return [TextSpan("before the track", "Bold", CUE, INK)]
    return [
        TextSpan(cue.section or "outside the song", "Bold", CUE, INK),
        TextSpan(f"   from {clock(staged.seconds(cue.start))}", "Regular", TEXT, SOFT),
    ]


def _next_words(entries: Sequence[CueLine], index: int) -> str:
    """What comes after a line and everything folded into it."""
    end = max(
        cue.end for cue in entries[index].cues if cue.kind != "walk" or entries[index].cue is cue
    )
    for later in entries[index + 1 :]:
        if (
            later.cue.kind not in {"light", "out", "accent"}
            and (later.cue.kind != "walk" or later.cue.coming is not None)
            and later.cue.start >= end - 1e-6
        ):
            return _title(later.cue)
    return "end of the show"


def _title(cue: Cue) -> str:
    if cue.kind == "wait":
        return "wait in the wings" if cue.in_wings else "rest"
    if cue.kind == "walk":
        return "walk" if cue.coming is None else "COME ON" if cue.coming.on else "GO OFF"
    if cue.kind == "accent":
        return "HIT"
    if cue.kind == "stop":
        return f"stop for {plural(_counted(cue), 'beat')}"
    if cue.block is None:
        return cue.kind
    return _LINK if cue.block.link else cue.block.title


def _row(
    edition: Edition,
    who: str,
    entry: CueLine,
    after: str,
    first_seen: dict[str, Cue],
    room: float,
    stood: Stood | None,
) -> list[Cell]:
    staged = edition.staged
    cue = entry.cue
    ink: Color = PAPER if cue.kind == "light" else INK
    seconds = staged.seconds(cue.start)
    bar = f"bar {bar_words(staged, cue)}" if seconds > 0.01 else "track starts"
    if cue.kind == "light":  # anywhere between two beats
        bar = "lighting" if seconds >= 0.0 else "before\nthe track"
    time: Cell = [
        Prose(TextSpan(early_clock(seconds), "Poster", HEAD, ink), leading=1.05, role="TD"),
        Prose(TextSpan(bar, "Bold", DARK if len(bar) < 10 else TEXT, ink), leading=1.15, role="TD"),
    ]
    if cue.kind in {"light", "out"}:
        return _fire_row(edition, entry, time, ink)
    time.append(LitMark("LIT" if cue.lit else "OUT", lit=cue.lit, tall=15.0))
    if cue.kind == "accent":
        return [time, "", [_words(_title(cue), "Bold", NAME), *_noted(edition, cue)]]
    count: Cell = [
        Prose(TextSpan(number(_counted(cue)), "Poster", HEAD, INK), leading=1.05, role="TD"),
        Prose(TextSpan(_cycles(cue), "Regular", TEXT, SOFT), leading=1.15, role="TD"),
    ]
    words = _title(cue)
    if cue.block is None or cue.kind == "stop":
        words = words[0].upper() + words[1:]
    title = _words(words, "Bold", NAME)
    share = max(0.3 * room, min(width(printable(words), "Bold") * NAME + 9, 0.5 * room))
    top = grid([[title, _where(entry, stood)]], [share, room - share], pad=0, lines=False)
    what: list[Flowable] = [top]
    tail: list[TextSpan] = []
    if cue.kind == "stop":
        what += _stop(edition, who, cue)
    elif cue.block is not None:
        lines, tail = _block(edition, who, cue.block, first_seen, cue)
        what += lines
    elif cue.kind == "wait":
        what += _rest(edition, cue)
    if cue.kind != "walk":
        what.append(_then(edition, entry, after, tail))
    return [time, count, what]


def _fire_row(edition: Edition, entry: CueLine, time: Cell, ink: Color) -> list[Cell]:
    cue = entry.cue
    burn = cue.burn
    if burn is None:
        raise ValueError(f"a cue of kind {cue.kind!r} without a burn")
    title = "FLAMES ON" if cue.kind == "light" else "FLAMES OUT"
    words = (lighting_lines if cue.kind == "light" else putting_out_lines)(edition, burn)
    lines = [Prose(TextSpan(title, "Poster", HEAD, ink), leading=1.1, role="TD")]
    lines += [Prose(TextSpan(line, "Bold", CUE, ink), leading=1.16, role="TD") for line in words]
    if entry.then:
        then = f"then  {_then_words(edition, entry)}"
        lines.append(Prose(TextSpan(then, "Bold", DARK, ink), role="TD"))
    return [time, "", lines]


def _counted(cue: Cue) -> float:
    """Beats to count; a rest is given to a quarter beat, because it may begin anywhere before the first bar."""
    return round(4 * cue.beats) / 4 if cue.kind == "wait" else cue.beats


def _cycles(cue: Cue) -> str:
    unit = "beat" if abs(cue.beats - 1) < 1e-9 else "beats"
    if cue.block is None or cue.block.link or cue.block.stop or not cue.block.cycle:
        return unit
    cycles = cue.beats / cue.block.cycle
    if abs(cycles - round(cycles)) < 1e-6 and cycles >= 1.5 and cue.block.cycle > 1:
        return f"{unit}\n{round(cycles)} cycles of {number(cue.block.cycle)}"
    return unit


def _rest(edition: Edition, cue: Cue) -> list[Flowable]:
    if not cue.lit:
        return [_words("arms down, props still")]
    return [_words(f"you are lit: {_lit_rest(edition, cue)}", "Bold")]


def _stop(edition: Edition, who: str, cue: Cue) -> list[Flowable]:
    """What a performer does at a stop that is written."""
    if cue.block is None:
        raise ValueError("a stop without its block")
    dancer = next((d for d in edition.staged.dancers if d.name == who), None)
    how: list[Flowable] = [_words(stop_words(cue.block, dancer))]
    if cue.lit:
        how += _rest(edition, cue)
    if cue.block.note and len(cue.block.note) <= INLINE_NOTE:
        how.append(_words(edition.in_order(cue.block.note), "Italic"))
    return how


def _noted(edition: Edition, cue: Cue) -> list[Flowable]:
    return [_words(edition.in_order(cue.note), "Italic")] if cue.note else []


def _lit_rest(edition: Edition, cue: Cue) -> str:
    """How lit props are kept at rest."""
    if cue.burn is None or cue.waiting is None:
        return "props still, flames clear of your hands and legs"
    first = first_move(edition, cue.burn)
    until = "until you are out" if cue.waiting == "last" or first is None else f"until {first}"
    words = waiting_words(edition, cue.burn, until)
    return words[0].lower() + words[1:]


def _words(text: str, face: Face = "Regular", size: float = DARK, colour: Color = INK) -> Prose:
    return Prose(TextSpan(text, face, size, colour), leading=1.16, role="TD")


def _block(
    edition: Edition, who: str, block: Block, first_seen: dict[str, Cue], cue: Cue
) -> tuple[list[Prose], list[TextSpan]]:
    dancer = next((d for d in edition.staged.dancers if d.name == who), None)
    paragraphs: list[list[TextSpan]] = []
    hands = hand_lines(dancer, block)
    key = "".join(label + words for label, words in hands)
    first = first_seen.setdefault(key, cue)
    if first is not cue and len(key) > LONG_HANDS:
        staged = edition.staged
        back = (
            f"hands as at {clock(staged.seconds(first.start))}, bar {staged.position(first.start)}"
        )
        paragraphs.append([TextSpan(back, "Bold", DARK)])
    else:
        for label, words in hands:
            paragraphs.append(
                [TextSpan(f"{label}  ", "Bold", DARK), TextSpan(words, "Regular", DARK)]
            )
    places = new_places(dancer, edition.staged.blocks_of(who)) if dancer is not None else {}
    if place := places.get(block.start):
        paragraphs.append(
            [
                TextSpan("where  ", "Bold", DARK),
                TextSpan(place.replace(" cm", f"{NB}cm"), "Regular", DARK),
            ]
        )
    if posture := block_posture(block, dancer):
        paragraphs.append([TextSpan("body  ", "Bold", DARK), TextSpan(posture, "Regular", DARK)])
    extra = [
        f"“{brief(block.phrase)}”" if block.phrase and block.phrase not in block.title else "",
        together_words(block),
    ]
    extra += ["mirrored: left and right are already swapped here"] if block.mirrored else []
    extra += [f"start {plural(block.shift, 'beat')} into the pattern"] if block.shift else []
    tail = [TextSpan("; ".join(filter(None, extra)), "Regular", DARK, SOFT)] if any(extra) else []
    if block.note and len(block.note) <= INLINE_NOTE:
        tail.append(TextSpan(("; " if tail else "") + edition.in_order(block.note), "Italic", DARK))
    return [Prose(spans, leading=1.16, role="TD") for spans in paragraphs], tail


def note_rows(edition: Edition, cue: Cue) -> list[Prose]:
    """A long note as separate rows, each short enough for any page."""
    note = cue.block.note if cue.block is not None else ""
    if len(note) <= INLINE_NOTE:
        return []
    pieces = [
        piece
        for paragraph in note.splitlines()
        for piece in textwrap.wrap(paragraph, NOTE_PIECE, break_long_words=True) or [""]
    ]
    return [_words(edition.in_order(piece), "Italic") for piece in pieces]


def _then(edition: Edition, entry: CueLine, after: str, tail: list[TextSpan]) -> Prose:
    """The last line of a row: timing and direction of the hands, and what follows before the next row."""
    words = _then_words(edition, entry)
    lead = f"{'   ' if tail else ''}{'then' if words else 'next'}  "
    following = f"{words}, into {after}" if words else after
    spans = [*tail, TextSpan(lead, "Bold", DARK, SOFT), TextSpan(following, "Bold", DARK, INK)]
    return Prose(spans, leading=1.16, role="TD")


def _then_words(edition: Edition, entry: CueLine) -> str:
    parts = []
    for cue in entry.then:
        position = bar_words(edition.staged, cue)
        what = "link" if cue.kind == "link" else "rest"
        words = f"{what}{NB}{plural(_counted(cue), 'beat')}"
        if cue.kind == "wait":
            words += f" from bar{NB}{position}"
        said = entry.cue.kind in {"light", "out"} and cue.waiting is not None
        if cue.kind == "wait" and cue.lit and not said:
            words += f", {_lit_rest(edition, cue)}"
        note = cue.block.note if cue.block is not None else ""
        parts.append(words + (f", {edition.in_order(note)}" if note else ""))
    return ", ".join(parts)


def stood_at(entry: CueLine) -> Stood | None:
    """Where a line leaves its performer, as place and facing in words; None if it does not say."""
    cue = entry.walk or entry.cue
    if cue.kind in {"light", "out", "end", "accent"}:
        return None
    if cue.onward is not None:
        return place_words(*cue.onward.place), facing_words(cue.spot[2])
    x, y, facing = cue.spot
    return place_words(x, y), facing_words(facing)


def _where(entry: CueLine, stood: Stood | None) -> Prose:
    """Where to stand and face; for a walk, the way there."""
    cue = entry.cue
    walk = cue if cue.kind == "walk" else entry.walk
    if walk is not None:
        lead = "" if walk is cue else f"{_title(walk).lower()}  "
        spans = [TextSpan(lead, "Bold", DARK), TextSpan(walk_words(walk), "Regular", DARK)]
        return Prose(spans if lead else spans[1:], leading=1.16, role="TD")
    if cue.onward is not None:
        return _words(onward_words(cue.onward), "Bold")
    x, y, facing = cue.spot
    if stood is not None and stood == stood_at(entry):
        return _words("same place, same facing", "Regular")
    place = f"{'walking, then ' if cue.walking else ''}{place_words(x, y)}"
    face = f"; face {facing_words(facing)}"
    return Prose(
        [TextSpan(place, "Bold", DARK), TextSpan(face, "Regular", DARK)], leading=1.16, role="TD"
    )
