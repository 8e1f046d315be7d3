"""The run of the night: from load-in to the end of the fire watch, with boxes to tick. Lengths in points."""

from functools import partial

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import CUE, HAIR, HEAD, INK, RULE, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.ticks import ticked
from sequencer.outputs.sheets.page.wording import NB, brief, clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.emergency import emergency_block
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import cautions_block, doing_on_stop, opening
from sequencer.safety.run_of_night import MINUTE, NightStep, RunOfNight, calling, run_of_the_night

_TOGETHER = 6  # boxes, or names, that stay on one page with their step
_STOP = "You: decide whether to go on, to end, or to clear the place; {}."


def night_sheet(edition: Edition) -> Sheet:
    """The pages from which the lead runs the night."""
    return Sheet(name="night", title="Run of the night", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    night = run_of_the_night(edition.staged, edition.plan)
    begins = night.begins or "write in: ____"
    facts = [("Song starts", begins), ("Load-in", _when(night, night.steps[0].at))]
    last = night.steps[-1]
    called = edition.in_order(calling(edition.staged.show.emergency.caller))
    facts.append(("All clear", _when(night, last.at)))
    story = opening(
        edition,
        room,
        kind="Run of the night",
        title=edition.title,
        facts=facts,
        stop=doing_on_stop(edition, None, "lead", _STOP.format(called)),
    )
    story += _go_block(edition, night, room)
    story += _steps_block(edition, night, room)
    story += stop_block(edition, night, room)
    story += emergency_block(edition, room)
    story += _log_block(night, room)
    story += cautions_block(edition, "safety", room)
    return story


def _go_block(edition: Edition, night: RunOfNight, room: float) -> list[Flowable]:
    """Lines that must all be true, with a column for each of the two times they are checked."""
    rows: list[list[Cell]] = [[head_cell("all must be true"), head_cell("before soaking"), head_cell("before lighting")]]  # fmt: skip
    rows += [
        [Prose(TextSpan(edition.in_order(line), "Regular", CUE), role="TD"), ticked(""), ticked("")]
        for line in night.go
    ]
    widths = [room - 170.0, 85.0, 85.0]
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [
        CondPageBreak(120),
        heading("Go or no-go"),
        Prose(TextSpan("One no means no. Anybody may say it.", "Bold", TEXT), after=3),
        grid(rows, widths, style, repeat=1, pad=2),
    ]


def _steps_block(edition: Edition, night: RunOfNight, room: float) -> list[Flowable]:
    """A row for the step, and one for each box under it, so that a long list breaks between boxes."""
    widths = [92.0, room * 0.22]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [
        [head_cell(word) for word in ("when", "who", "what, and what to tick")]
    ]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    for step in night.steps:
        lines = [ticked(edition.in_order(line)) for line in step.checks]
        rows.append([*_head(edition, night, step), [_what(edition, step), *lines[:_TOGETHER]]])
        rows += [["", "", line] for line in lines[_TOGETHER:]]
        style.append(("LINEBELOW", (0, len(rows) - 1), (-1, len(rows) - 1), HAIR, RULE))
        first, last = len(rows) - 1 - max(len(lines) - _TOGETHER, 0), len(rows) - 1
        style += [("BOTTOMPADDING", (0, row), (-1, row), 0) for row in range(first, last)]
        style += [("TOPPADDING", (0, row), (-1, row), 0) for row in range(first + 1, last + 1)]
    hint = "Times before the song are suggestions: adjust them to the place, but keep this order."
    tail = Prose(TextSpan(hint, "Regular", SMALL, SOFT), before=3)
    table = grid(rows, widths, *style, repeat=1, pad=2, lines=False)
    return [CondPageBreak(150), heading("Step by step"), table, tail]


def _head(edition: Edition, night: RunOfNight, step: NightStep) -> list[Cell]:
    """When a step happens, and who does it."""
    when: list[Flowable] = [
        Prose(TextSpan(_when(night, step.at), "Poster", HEAD), leading=1.1, role="TD")
    ]
    if step.position is not None:
        when.append(Prose(TextSpan(f"bar {step.position}", "Bold", TEXT), role="TD"))
    if step.until is not None:
        when.append(
            Prose(TextSpan(f"until {_when(night, step.until)}", "Regular", TEXT), role="TD")
        )
    names = [brief(edition.in_order(name)) for name in step.who[:_TOGETHER]]
    if len(step.who) > _TOGETHER:
        names.append(f"and {len(step.who) - _TOGETHER} more")
    return [when, Prose(TextSpan("\n".join(names), "Bold", TEXT), role="TD")]


def _what(edition: Edition, step: NightStep) -> Prose:
    return Prose(TextSpan(edition.in_order(step.what), "Bold", CUE), leading=1.2, role="TD")


def stop_block(edition: Edition, night: RunOfNight, room: float) -> list[Flowable]:
    """What everybody does on the stop call."""
    rows: list[list[Cell]] = [
        [
            Prose(TextSpan(brief(edition.in_order(part.role)), "Bold", CUE), role="TD"),
            Prose(TextSpan(edition.in_order("\n".join(part.does)), "Regular", TEXT), role="TD"),
        ]
        for part in night.stop
    ]
    return [
        CondPageBreak(150),
        heading("On the stop call"),
        grid(rows, [room * 0.25, room * 0.75], pad=1.5),
    ]


def _log_block(night: RunOfNight, room: float) -> list[Flowable]:
    rows: list[list[Cell]] = [
        [
            Prose(TextSpan(line, "Regular", TEXT), role="TD"),
            Prose(TextSpan(" ", "Regular", CUE), role="TD"),
        ]
        for line in night.log
    ]
    return [
        CondPageBreak(150),
        heading("After-show log"),
        grid(rows, [room * 0.5, room * 0.5], pad=3),
    ]


def _when(night: RunOfNight, seconds: float) -> str:
    """Clock time if the show states when it begins; otherwise minutes and seconds from the song's start."""
    known = night.clock(seconds)
    if known is not None:
        within = 0.0 <= seconds < 60 * MINUTE and seconds % MINUTE
        return known if within else known[:5]
    if seconds <= -MINUTE:
        return f"−{-seconds / MINUTE:.0f}{NB}min"
    return clock(seconds) if seconds >= 0 else f"−{clock(-seconds)}"
