"""The run of the night on three pages: go or no-go, the steps, and the log. Lengths in points.

Each page is set in the largest type in which it fits on one page; a show that is too long for the smallest runs on.
"""

from collections.abc import Callable, Sequence
from functools import partial
from math import inf

from reportlab.platypus import Flowable, PageBreak, Spacer

from sequencer.outputs.sheets.page.elements import Cell, box, grid, head_cell, heading
from sequencer.outputs.sheets.page.letters import width
from sequencer.outputs.sheets.page.paper import (
    HAIR,
    INK,
    MIST,
    RULE,
    SMALL,
    SOFT,
    TEXT,
    TINY,
    Page,
)
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.ticks import TickRun
from sequencer.outputs.sheets.page.wording import NB, brief, clock
from sequencer.outputs.sheets.parts.cues import early_clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import opening, role_on_stop
from sequencer.safety.burns.handling import seconds_words
from sequencer.safety.run_of_night import MINUTE, NightStep, RunOfNight, run_of_the_night

_MOST_NAMES = 6  # of those who do a step
_TOGETHER = 10  # boxes that stay on one page
_ANSWERS = f"yes{NB}{NB}{NB}no{NB}{NB}{NB}________"
_ANSWER_ROOM = 82.0
_GO_SIZES = (11.0, TEXT, 10.0, 9.5, SMALL, 8.5, TINY)
_STEP_SIZES = (12.0, 11.0, TEXT, 10.0, 9.5, SMALL, 8.5, TINY)
_LOG_PADS = (8.0, 7.0, 6.0, 5.0, 4.0, 3.0, 2.0)
_CHANGES = 60.0  # room kept for the note on what has changed since the last print
_NO = "One no means no: nobody is lit. Anybody may say it, nobody overrules it. "
_IF_NO = (
    "No at the first check: the fuel stays shut; mend it, or put the act off. "
    "No at the second: soaked props go back to the fuel keeper, every can stays shut; mend it and ask the whole page "
    "again, dance without fire, or end the night. Write it in the log."
)


def night_sheet(edition: Edition) -> Sheet:
    """The pages from which the lead runs the night."""
    return Sheet(
        name="night", title="Run of the night", story=partial(_story, edition), narrow=True
    )


def _story(edition: Edition, page: Page) -> list[Flowable]:
    night = run_of_the_night(edition.staged, edition.plan)
    spare = _CHANGES if edition.before is not None else 0.0
    return [
        *_fitted(partial(_go_page, edition, night, page), _GO_SIZES, page, spare),
        PageBreak(),
        *_fitted(partial(_steps_page, edition, night, page), _STEP_SIZES, page),
        PageBreak(),
        *_fitted(partial(_log_page, edition, night, page), _LOG_PADS, page),
    ]


def _fitted(
    make: Callable[[float], list[Flowable]], sizes: Sequence[float], page: Page, spare: float = 0.0
) -> list[Flowable]:
    """A page in the first of the sizes in which it fits, else in the last."""
    for size in sizes:
        story = make(size)
        if stacked(story, page.inner) + spare <= page.tall:
            break
    return story


def stacked(story: Sequence[Flowable], room: float) -> float:
    """Height of flowables one below the other, at most."""
    return sum(
        part.wrap(room, inf)[1] + part.getSpaceBefore() + part.getSpaceAfter() for part in story
    )


def _go_page(edition: Edition, night: RunOfNight, page: Page, size: float) -> list[Flowable]:
    """Statements that must be true at the two checks, with room for an answer and initials."""
    room = page.inner
    first, last = (when_words(night, step.at) for step in (night.steps[0], night.steps[-1]))
    begins = night.begins or "____:____"
    story = opening(
        edition,
        room,
        kind=f"Run of the night · load-in {first} · song starts {begins} · all clear {last}",
        title="Go or no-go",
        facts=(),
        stop=role_on_stop(edition, "lead"),
        close=True,
    )
    consequence = [TextSpan(_NO, "Bold", size), TextSpan(_IF_NO, "Regular", size)]
    return [
        *story,
        Spacer(1, 4),
        _go_table(edition, night, room, size),
        *_people_table(edition, night, room, size),
        box([Prose(consequence)], room, ground=None, edge=INK),
    ]


def _go_table(edition: Edition, night: RunOfNight, room: float, size: float) -> Flowable:
    first, second = (when_words(night, at) for at in (night.first_go, night.second_go))
    rows: list[list[Cell]] = [
        [
            head_cell(words)
            for words in ("", "all must be true", f"first, {first}", f"second, {second}")
        ]
    ]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    group = ""
    for number, line in enumerate(night.go, start=1):
        spans = [TextSpan(edition.in_order(line.asks), "Regular", size)]
        if line.if_no:
            spans.append(TextSpan(f"  No: {line.if_no}.", "Italic", size))
        label = line.group if line.group != group else ""
        group = line.group
        rows.append(
            [
                Prose(TextSpan(label or " ", "Bold", size), leading=1.15, role="TD"),
                Prose(spans, leading=1.15, role="TD"),
                *(_answer(asked, size) for asked in (line.first, line.second)),
            ]
        )
        style += [
            ("BACKGROUND", (column, number), (column, number), MIST)
            for column, asked in ((2, line.first), (3, line.second))
            if not asked
        ]
    by = [Prose(TextSpan("asked at, by", "Bold", size), leading=1.15, role="TD")]
    rows.append(["", by, *(_blank("____:____  ________", size) for _ in range(2))])
    labels = {line.group for line in night.go}
    label_room = max(width(label, "Bold") for label in labels) * size + 7.0
    widths = [label_room, room - label_room - 2 * _ANSWER_ROOM, _ANSWER_ROOM, _ANSWER_ROOM]
    return grid(rows, widths, *style, repeat=1, pad=1.6, gutter=5.0)


def _answer(asked: bool, size: float) -> Prose:
    return _blank(_ANSWERS if asked else " ", size)


def _blank(words: str, size: float) -> Prose:
    """Something to write on; as high as the line beside it."""
    return Prose(TextSpan(words, "Regular", min(size, SMALL), SOFT), leading=1.15, role="TD")


def _people_table(edition: Edition, night: RunOfNight, room: float, size: float) -> list[Flowable]:
    """Everybody who is asked by name at the second check, in two columns."""
    if not night.people:
        return []
    half = (len(night.people) + 1) // 2
    cells: list[list[Cell]] = [
        [
            Prose(TextSpan(brief(edition.in_order(line), most=60), "Bold", size), leading=1.15, role="TD"),
            _answer(True, size),
        ]
        for line in night.people
    ]  # fmt: skip
    cells += [["", ""]] * (2 * half - len(cells))
    rows: list[list[Cell]] = [
        [*left, *right] for left, right in zip(cells[:half], cells[half:], strict=True)
    ]
    name = room / 2 - _ANSWER_ROOM
    title = f"By name at the second check, {when_words(night, night.second_go)}"
    return [
        heading(title, level=2, before=5),
        grid(rows, [name, _ANSWER_ROOM] * 2, pad=1.6, gutter=5.0, by_cell=True),
    ]


def _steps_page(edition: Edition, night: RunOfNight, page: Page, size: float) -> list[Flowable]:
    """A row for each step, with its boxes one after the other."""
    room = page.inner
    widths = [7.2 * size, room - 7.2 * size]
    rows: list[list[Cell]] = [[head_cell(word) for word in ("when", "who, what, and what to tick")]]
    ticked: set[str] = set()  # in the act: what holds for each putting out is printed once
    for step in _joined(night):
        fresh = [line for line in step.checks if line not in ticked]
        boxes = [edition.in_order(line) for line in fresh]
        ticked |= set(fresh) if step.position is not None else set()
        what = TickRun(boxes[:_TOGETHER], size, title=_title(edition, step))
        rows.append([_when(night, step, size), what])
        rows += [
            ["", TickRun(boxes[k : k + _TOGETHER], size)]
            for k in range(_TOGETHER, len(boxes), _TOGETHER)
        ]
    style = [
        ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK),
        ("LINEBELOW", (0, 1), (-1, -1), HAIR, RULE),
    ]
    hint = "Times before the song are suggestions: adjust them to the place, but keep this order."
    return [
        heading("Step by step", before=0),
        grid(rows, widths, *style, repeat=1, pad=1.4, gutter=6.0, lines=False),
        Prose(TextSpan(hint, "Regular", SMALL, SOFT), before=3),
    ]


def _joined(night: RunOfNight) -> list[NightStep]:
    """The steps; hand-overs of one moment are one step."""
    out: list[NightStep] = []
    for step in night.steps:
        alike = bool(out) and not (out[-1].checks or step.checks or out[-1].until or step.until)
        if alike and step.position is not None and step.position == out[-1].position:
            before = out[-1]
            out[-1] = NightStep(
                at=before.at,
                until=None,
                who=tuple(dict.fromkeys((*before.who, *step.who))),
                what=f"{before.what}; {step.what}",
                position=before.position,
                source=before.source,
            )
        else:
            out.append(step)
    return out


def _when(night: RunOfNight, step: NightStep, size: float) -> list[Flowable]:
    when: list[Flowable] = [
        Prose(TextSpan(when_words(night, step.at), "Poster", size + 1.5), leading=1.1, role="TD")
    ]
    if step.until is not None:
        until = f"until {when_words(night, step.until)}"
        when.append(
            Prose(TextSpan(until, "Regular", max(size - 1.0, TINY)), leading=1.1, role="TD")
        )
    return when


def _title(edition: Edition, step: NightStep) -> str:
    """Who does a step, unless it says so itself, and what they do."""
    what = edition.in_order(step.what)
    if not step.who or step.who[0] in step.what:
        return what
    names = [brief(edition.in_order(name), most=24) for name in step.who[:_MOST_NAMES]]
    if len(step.who) > _MOST_NAMES:
        names.append(f"{len(step.who) - _MOST_NAMES} more")
    return f"{', '.join(names)}: {what}"


def _log_page(edition: Edition, night: RunOfNight, page: Page, pad: float) -> list[Flowable]:
    """What is written down: rounds of the fire watch, burns, and the rest."""
    room = page.inner
    story: list[Flowable] = [heading("Log", before=0)]
    if night.rounds:
        dark = max(burn.out_s for burn in edition.plan.burns)
        rows = [
            [f"{at / MINUTE:.0f}{NB}min", when_words(night, dark + at), "", "", "", ""]
            for at in night.rounds
        ]
        heads = ("after the last flame", "planned", "at", "name", "initials", "what was found")
        shares = (0.16, 0.13, 0.1, 0.19, 0.12, 0.3)
        story += [heading("Fire watch", level=2, before=4), _table(heads, rows, shares, room, pad)]
    if edition.plan.burns:
        heads = ("burn of", "from", "planned", "lasted", "put out, or burnt out", "by")
        shares = (0.24, 0.12, 0.12, 0.12, 0.22, 0.18)
        rows = [
            [
                f"{edition.number_of(burn.who)} {brief(burn.who, most=28)}",
                early_clock(burn.alight_s),
                seconds_words(burn.flame_s),
                "",
                "",
                "",
            ]
            for burn in edition.plan.burns
        ]
        story += [heading("Burns", level=2, before=8), _table(heads, rows, shares, room, pad)]
    lines = [[line, ""] for line in night.log]
    story += [
        heading("The night", level=2, before=8),
        _table((), lines, (0.38, 0.62), room, 1.8 * pad),
    ]
    return story


def _table(
    heads: Sequence[str],
    rows: Sequence[Sequence[str]],
    shares: Sequence[float],
    room: float,
    pad: float,
) -> Flowable:
    """Rows of short words, with cells to write in."""
    cells: list[list[Cell]] = [[head_cell(word) for word in heads]] if heads else []
    cells += [
        [Prose(TextSpan(word or " ", "Bold" if not k else "Regular", TEXT), role="TD") for k, word in enumerate(row)]
        for row in rows
    ]  # fmt: skip
    style = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)] if heads else []
    widths = [room * share for share in shares]
    return grid(cells, widths, *style, repeat=1 if heads else 0, pad=pad)


def when_words(night: RunOfNight, seconds: float) -> str:
    """Clock time if the show states when it begins; otherwise minutes before or after, and the song's own time in it."""
    known = night.clock(seconds)
    # with seconds as long as anything burns: "until" the minute in which something starts is no time
    last = max(
        [step.until or step.at for step in night.steps if step.position is not None], default=0.0
    )
    if known is not None:
        return known if 0.0 <= seconds <= last else known[:5]
    if seconds <= -MINUTE:
        return f"−{-seconds / MINUTE:.0f}{NB}min"
    if seconds > last:
        return f"+{seconds / MINUTE:.0f}{NB}min"
    return clock(seconds) if seconds >= 0 else f"−{clock(-seconds)}"
