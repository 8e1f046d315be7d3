"""The rows of a performer's sheet: when, how many counts, what; only what changes is said. Lengths in points."""

import textwrap
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from reportlab.lib.colors import Color
from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell
from sequencer.outputs.sheets.page.letters import Face
from sequencer.outputs.sheets.page.paper import FLAME, INK, MIST, PAPER, SMALL, SOFT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    NB,
    clock,
    facing_words,
    number,
    place_words,
    plural,
)
from sequencer.outputs.sheets.parts.cues import Cue, bar_words, cues_of, early_clock
from sequencer.outputs.sheets.parts.dance_rows.changed_lines import change_words
from sequencer.outputs.sheets.parts.dance_rows.folding import (
    CueLine,
    folded,
    onward_words,
    walk_words,
)
from sequencer.outputs.sheets.parts.dance_rows.handling_words import (
    first_move,
    lighting_lines,
    putting_out_lines,
    waiting_words,
)
from sequencer.outputs.sheets.parts.dance_rows.move_words import MoveWords, told_moves
from sequencer.outputs.sheets.parts.edition import Edition

_TIME, _BAR, _COUNT = 48.0, 36.0, 48.0  # widths of columns
_SHORT_TIME = 4  # letters of a time that stands in full size
_LONG_TIME = 14.0  # [pt] of a longer one
_INLINE_NOTE, _NOTE_PIECE = 240, 600  # letters: longer notes get rows of their own, in pieces
_LIT_BAR = 3.5
_LEADING = 1.14
_HEADED_KINDS = frozenset(
    {"move", "link", "wait", "stop", "walk"}
)  # of rows that can begin a section
_HEADS = ("time", "bar", "count", "what you do; only what changes is said")
_LINK_WORDS = "   14 +2: 14, then link in 2"
_LIT_WORDS = "   bar at left: lit"
Stood: TypeAlias = tuple[str, str]  # place and facing, in words


@dataclass(frozen=True, slots=True)
class RowType:
    """Sizes of type of a sheet's rows."""

    lead: float  # times and counts
    name: float  # of a move
    said: float  # what is said of it
    pad: float  # above and below a row
    headed: bool = (
        True  # sections have rows of their own; else their name stands in the first of theirs
    )


ROW_TYPES = (
    RowType(lead=17.0, name=14.0, said=12.0, pad=2.8),
    RowType(lead=15.0, name=13.0, said=11.0, pad=2.0),
    RowType(lead=13.5, name=12.0, said=10.0, pad=1.4),
    RowType(lead=12.0, name=11.0, said=9.5, pad=0.9),
)
CLOSEST_ROWS = RowType(lead=12.0, name=11.0, said=9.5, pad=0.9, headed=False)


def cue_table(edition: Edition, who: str, room: float, sizes: RowType) -> Flowable:
    """Every cue of a performer as one row; a section's first move stays with its heading."""
    written = _Written(edition, told_moves(edition.staged, who), sizes)
    lines = folded(cues_of(edition.staged, who))
    key = _LINK_WORDS if any(map(counted_link, lines)) else ""
    key += _LIT_WORDS if any(line.cue.lit for line in lines) else ""
    heads = [*_HEADS[:3], _HEADS[3] + key]
    rows: list[list[Cell]] = [[head_cell(words) for words in heads]]
    style: list[tuple[object, ...]] = [
        ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK),
        ("LEFTPADDING", (0, 0), (0, -1), 7),
    ]
    section = begun = ""
    stood: Stood | None = None
    known: set[Stood] = set()
    kept: int | None = None  # first of the rows that stay with the next move
    for line in lines:
        cue = line.cue
        if cue.section != section and edition.staged.seconds(cue.start) >= -0.01:
            section = begun = cue.section
            if sizes.headed:
                rows.append([written.section(cue), "", "", ""])
                style += _section_style(len(rows) - 1)
                kept = len(rows) - 1 if kept is None else kept
        head = begun if not sizes.headed and cue.kind in _HEADED_KINDS else ""
        rows.append(written.row(line, stood, known, head))
        n = len(rows) - 1
        if head:
            style.append(("LINEABOVE", (0, n), (-1, n), 1.2, INK))
            begun = ""
        stood = stood_at(line) or stood
        known |= {stood} if stood is not None else set()
        _mark_changes(edition, who, line, rows[n])
        rows += [["", "", "", note] for note in written.long_notes(cue)]
        if cue.kind in {"light", "out"}:
            style += _fire_style(n, light=cue.kind == "light")
            if cue.kind == "light":
                kept = n if kept is None else kept
            elif kept is not None:  # a section may begin with it
                style.append(("NOSPLIT", (0, kept), (0, n)))
                kept = None
            continue
        if cue.lit:
            style.append(("LINEBEFORE", (0, n), (0, len(rows) - 1), _LIT_BAR, FLAME))
        if kept is not None and cue.kind != "walk":
            style.append(("NOSPLIT", (0, kept), (0, n)))
            kept = None
    widths = [_TIME, _BAR, _COUNT, room - _TIME - _BAR - _COUNT]
    return grid(rows, widths, *style, repeat=1, pad=sizes.pad, gutter=5.0)


def _section_style(n: int) -> list[tuple[object, ...]]:
    return [
        ("SPAN", (0, n), (-1, n)),
        ("BACKGROUND", (0, n), (-1, n), MIST),
        ("TOPPADDING", (0, n), (-1, n), 1.5),
        ("BOTTOMPADDING", (0, n), (-1, n), 2),
    ]


def _fire_style(n: int, *, light: bool) -> list[tuple[object, ...]]:
    ground: tuple[object, ...] = (
        ("BACKGROUND", (0, n), (-1, n), FLAME) if light else ("BOX", (0, n), (-1, n), 1.6, INK)
    )
    return [
        ("SPAN", (2, n), (3, n)),
        ("VALIGN", (0, n), (1, n), "MIDDLE"),
        ("RIGHTPADDING", (0, n), (1, n), 1),
        ("RIGHTPADDING", (2, n), (2, n), 6),
        ("TOPPADDING", (0, n), (-1, n), 3),
        ("BOTTOMPADDING", (0, n), (-1, n), 3),
        ground,
    ]


def _mark_changes(edition: Edition, who: str, line: CueLine, row: list[Cell]) -> None:
    """Say what is other on a row than in the last print: as it was, and as it is."""
    if words := change_words(edition, who, line):
        ink = PAPER if line.cue.kind == "light" else INK
        mark = Prose(
            [
                TextSpan("NEW" if words == "new" else "CHANGED  ", "Bold", SMALL, ink),
                TextSpan("" if words == "new" else edition.in_order(words), "Regular", SMALL, ink),
            ],
            role="TD",
        )
        mark.is_aside = True
        last = -1 if row[-1] else -2  # a row of fire spans its last two columns
        row[last] = [*row[last], mark]


def stood_at(line: CueLine) -> Stood | None:
    """Where a line leaves its performer, as place and facing in words; None if it does not say."""
    cue = line.walk or line.cue
    if cue.kind in {"light", "out", "end", "accent"}:
        return None
    if cue.onward is not None:
        return place_words(*cue.onward.place), facing_words(cue.spot[2])
    x, y, facing = cue.spot
    return place_words(x, y), facing_words(facing)


def counted_link(line: CueLine) -> Cue | None:
    """The link right after a move, if its counts are all there is to say of it."""
    first = line.then[0] if line.then and line.cue.kind == "move" else None
    if first is None or first.kind != "link" or (first.block is not None and first.block.note):
        return None
    return first


def is_counted(cue: Cue) -> bool:
    """Whether it is whole counts long, or halves."""
    return abs(2 * cue.beats - round(2 * cue.beats)) < 1e-6


def _title(cue: Cue) -> str:
    if cue.kind == "wait":
        return "Wait in the wings" if cue.in_wings else "Rest"
    if cue.kind == "walk":
        return "Walk" if cue.coming is None else "COME ON" if cue.coming.on else "GO OFF"
    if cue.kind == "stop":
        return f"Stop for {plural(cue.beats, 'beat')}"
    if cue.block is None:
        return cue.kind.capitalize()
    return "link" if cue.block.link else cue.block.title


def where_words(line: CueLine, stood: Stood | None, known: Collection[Stood]) -> str:
    """Where to stand and face, if that is new; for a walk the way there, and of a place that is known its name and where it is."""
    cue = line.cue
    walk = cue if cue.kind == "walk" else line.walk
    same_facing = stood is not None and stood[1] == facing_words((walk or cue).spot[2])
    if walk is not None:
        lead = "" if walk is cue else f"{_title(walk).lower()} "
        if stood_at(line) in known and walk.coming is None and not walk.via:
            place = place_words(*walk.spot[:2])
            return f"{lead}{plural(walk.beats, 'beat')} to {walk.formation}, {place}"
        return f"{lead}{walk_words(walk, facing=not same_facing)}"
    if cue.onward is not None:
        return onward_words(cue.onward)
    if stood is not None and stood == stood_at(line):
        return ""
    x, y, facing = cue.spot
    place = f"{'walking, then ' if cue.walking else ''}{place_words(x, y)}"
    return place if same_facing else f"{place}; face {facing_words(facing)}"


@dataclass(frozen=True, slots=True)
class _Written:
    """The cells of one performer's rows, in one size of type."""

    edition: Edition
    told: Mapping[int, MoveWords]
    sizes: RowType

    def section(self, cue: Cue) -> Prose:
        """The heading of a section."""
        spans = [
            TextSpan(cue.section or "outside the song", "Bold", self.sizes.said, INK),
            TextSpan(
                f"   from {clock(self.edition.staged.seconds(cue.start))}", "Regular", SMALL, SOFT
            ),
        ]
        return Prose(spans, leading=_LEADING, role="TH")

    def row(
        self, line: CueLine, stood: Stood | None, known: Collection[Stood], head: str = ""
    ) -> list[Cell]:
        """One line of the sheet; with `head`, the name of the section that begins with it."""
        cue = line.cue
        if cue.kind in {"light", "out"}:
            return self._fire(line)
        time, bar = self._time(cue), self._bar(cue)
        if cue.kind == "accent":
            note = f"  {self.edition.in_order(cue.note)}" if cue.note else ""
            return [
                time,
                bar,
                "",
                [self._prose(self._span("HIT", "Poster", name=True), self._span(note, "Italic"))],
            ]
        words = self.told.get(id(cue.block), MoveWords())
        lines = [self._move(line, words, where_words(line, stood, known), head)]
        lines += [
            self._prose(self._span(f"{label}  ", "Bold", SOFT), self._span(said))
            for label, said in (("hands", words.where), ("body", words.body))
            if said
        ]
        return [time, bar, self._count(line), lines]

    def long_notes(self, cue: Cue) -> list[Prose]:
        """A long note as separate rows, each short enough for any page."""
        note = cue.block.note if cue.block is not None else ""
        if len(note) <= _INLINE_NOTE:
            return []
        pieces = [
            piece
            for paragraph in note.splitlines()
            for piece in textwrap.wrap(paragraph, _NOTE_PIECE, break_long_words=True) or [""]
        ]
        return [self._prose(self._span(self.edition.in_order(piece), "Italic")) for piece in pieces]

    def _move(self, line: CueLine, words: MoveWords, place: str, head: str) -> Prose:
        """A move's name, the cue word, what is new about it, and what follows before the next line."""
        cue, in_order = line.cue, self.edition.in_order
        spans = [TextSpan(f"{head}:  ", "Poster", self.sizes.name, SOFT)] if head else []
        spans.append(self._span(_title(cue), "Bold", name=True))
        if words.cue:
            spans.append(self._span(f"  “{in_order(words.cue)}”", "Poster", name=True))
        said = [in_order(each) for each in words.whole]
        if cue.kind in {"wait", "stop"}:
            said.append(self._rest(cue))
        if said := list(filter(None, said)):
            spans.append(self._span(f"  {'; '.join(said)}"))
        if words.note and len(words.note) <= _INLINE_NOTE:
            spans.append(self._span(f"  {in_order(words.note)}", "Italic"))
        if place:
            spans.append(self._span(f"  {in_order(place)}", "Bold"))
        if then := self._then(line):
            spans += [self._span("  then ", "Bold", SOFT), self._span(then, "Bold")]
        return self._prose(*spans)

    def _fire(self, line: CueLine) -> list[Cell]:
        cue = line.cue
        burn = cue.burn
        if burn is None:
            raise ValueError(f"a cue of kind {cue.kind!r} without a burn")
        is_light = cue.kind == "light"
        ink: Color = PAPER if is_light else INK
        words = (lighting_lines if is_light else putting_out_lines)(self.edition, burn)
        title = "FLAMES ON" if is_light else "FLAMES OUT"
        lines = [Prose(TextSpan(title, "Poster", self.sizes.lead, ink), leading=1.1, role="TD")]
        lines += [self._prose(self._span(each, "Bold", ink)) for each in words]
        if then := self._then(line):
            lines.append(self._prose(self._span(f"then {then}", "Bold", ink)))
        bar: Cell = "" if is_light else self._bar(cue)  # lighting is between two beats
        return [self._time(cue, ink), bar, lines, ""]

    def _time(self, cue: Cue, ink: Color = INK) -> Prose:
        words = early_clock(self.edition.staged.seconds(cue.start))
        size = (
            min(self.sizes.lead, _LONG_TIME) if len(words) > _SHORT_TIME else self.sizes.lead
        )  # never broken
        return Prose(TextSpan(words, "Poster", size, ink), leading=1.05, role="TD")

    def _bar(self, cue: Cue) -> Cell:
        """bar.beat, where it can be counted."""
        position = bar_words(self.edition.staged, cue)
        if self.edition.staged.seconds(cue.start) <= 0.01 or "+" in position:
            return ""
        return Prose(TextSpan(position, "Bold", self.sizes.said), leading=1.25, role="TD")

    def _count(self, line: CueLine) -> Cell:
        """Counts, where they are whole or halves, and those of the link after it."""
        cue = line.cue
        if not is_counted(cue):
            return ""
        spans = [TextSpan(number(cue.beats), "Poster", self.sizes.lead)]
        if link := counted_link(line):
            spans.append(self._span(f" +{number(link.beats)}", "Bold", SOFT))
        return Prose(spans, leading=1.05, role="TD")

    def _then(self, line: CueLine) -> str:
        """What follows a move before the next line: a link, a short rest; the rest at the end is no news."""
        parts = []
        for cue in line.then:
            if cue is counted_link(line) or self._is_end(line, cue):
                continue
            words = "link" if cue.kind == "link" else "rest"
            words += f"{NB}{number(cue.beats)}" if is_counted(cue) else ""
            if cue.kind == "wait":
                words += f" from {self.edition.staged.aloud(round(4 * cue.start) / 4)}"
            said = line.cue.kind in {"light", "out"} and cue.waiting is not None
            if cue.kind == "wait" and cue.lit and not said:
                words += f", {self._lit_rest(cue)}"
            note = cue.block.note if cue.block is not None else ""
            parts.append(words + (f", {self.edition.in_order(note)}" if note else ""))
        return ", ".join(parts)

    def _is_end(self, line: CueLine, cue: Cue) -> bool:
        """Whether it is the rest at the end of the track, unlit or while one is put out."""
        staged = self.edition.staged
        done = staged.seconds(cue.end) >= staged.song.duration - 0.01
        return cue.kind == "wait" and done and (not cue.lit or line.cue.kind == "out")

    def _rest(self, cue: Cue) -> str:
        """How a rest is spent."""
        if cue.lit:
            return f"you are lit: {self._lit_rest(cue)}"
        return "" if cue.in_wings or cue.kind == "stop" else "arms down, props still"

    def _lit_rest(self, cue: Cue) -> str:
        """How lit props are kept at rest."""
        if cue.burn is None or cue.waiting is None:
            return "props still, flames clear of your hands and legs"
        first = first_move(self.edition, cue.burn)
        until = "until you are out" if cue.waiting == "last" or first is None else f"until {first}"
        words = waiting_words(self.edition, cue.burn, until)
        return words[0].lower() + words[1:]

    def _span(
        self, text: str, face: Face = "Regular", ink: Color = INK, *, name: bool = False
    ) -> TextSpan:
        return TextSpan(text, face, self.sizes.name if name else self.sizes.said, ink)

    @staticmethod
    def _prose(*spans: TextSpan) -> Prose:
        return Prose(spans, leading=_LEADING, role="TD")
