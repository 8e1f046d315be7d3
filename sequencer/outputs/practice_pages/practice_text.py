"""A practice plan on the screen."""

import textwrap

from sequencer.outputs.practice_pages.practice_words import (
    ADVICE,
    WEEK_HEADS,
    PlanEdition,
    checked_words,
    item_words,
    last_weeks,
    loops_words,
    next_words,
    nothing_left,
    span_text,
    told_lines,
    tries_words,
    week_cells,
)
from sequencer.outputs.report.terminal import columns, fitted
from sequencer.shell_words import shell_path, shell_word
from sequencer.units import counted

_INDENT = " " * 4
_HEADS = ("loop", "next", "clean")


def plan_text(edition: PlanEdition, *, width: int = 100, page: str = "") -> str:
    """The plan as text, to fit one screen.

    Parameters
    ----------
    edition : PlanEdition
    width : int
        Columns of the terminal.
    page : str
        Where the plan was written as a page.
    """
    lines = [
        edition.title,
        *filter(None, [checked_words(edition)]),
        "",
        *_table(edition, width),
        "",
    ]
    lines += _wrapped(_counted(edition), width)
    lines += _wrapped(ADVICE, width)
    if any(item.exercise.lit for item in edition.plan.items):
        lines += _wrapped("Lit only with an experienced spotter: unlit mastery first.", width)
    lines += ["", *_log_lines(edition, width)]
    if page:
        lines += ["", *_page_lines(edition, page)]
    return "\n".join(lines) + "\n"


def _table(edition: PlanEdition, width: int) -> list[str]:
    items = edition.plan.items
    if not items:
        return [nothing_left(edition.plan)]
    cells = [
        (span_text(edition.show, item.exercise), next_words(item), tries_words(item.behind))
        for item in items
    ]
    loop, step, tries = (max(map(columns, column)) for column in zip(_HEADS, *cells, strict=True))
    room = max(width - loop - step - tries - 10, 20)

    def row(number: str, title: str, each: tuple[str, str, str]) -> str:
        told = f"{fitted(each[0], loop)}  {fitted(each[1], step)}  {each[2]}"
        return f"{number:>2}  {fitted(title, room)}  {told}"

    lines = [row("", "what", _HEADS)]
    for k, (item, each) in enumerate(zip(items, cells, strict=True), start=1):
        lead = _INDENT + "  "
        lines.append(row(str(k), item.exercise.title, each))
        lines += textwrap.wrap(
            item_words(edition, item), width, initial_indent=lead, subsequent_indent=lead
        )
    return lines


def _counted(edition: PlanEdition) -> str:
    plan = edition.plan
    words = [f"{counted(len(plan.done), 'exercise')} done" if plan.done else "nothing done yet"]
    if plan.waiting:
        words.append(f"{plan.waiting} more come when these are done")
    return f"{'; '.join(words)}."


def _log_lines(edition: PlanEdition, width: int) -> list[str]:
    plan = edition.plan
    lines = []
    if weeks := last_weeks(plan):
        rows = [WEEK_HEADS, *(week_cells(week) for week in weeks)]
        sizes = [max(len(row[k]) for row in rows) for k in range(len(WEEK_HEADS))]
        lines += [
            "  ".join(f"{cell:>{size}}" for cell, size in zip(row, sizes, strict=True))
            for row in rows
        ]
    lines += [line for each in told_lines(edition) for line in _wrapped(each, width, "- ")]
    example = plan.items[0].exercise if plan.items else None
    if example is not None:
        name = f"{example.who} " if len(edition.show.show.names) > 1 else ""
        loop = f"{edition.show.position(example.start)}-{edition.show.position(example.end)}"
        said = f"{name}{loop} 60% 6/8"
        lines += [
            "After each:",
            f"  sequencer practice {shell_path(edition.show_path)} --log {shell_word(said)}",
        ]
        lines += _wrapped(
            "(6 of 8 clean at 60 %); add lit, burn 4:05, 40 cm downstage, late 0.5 or note … where they apply. "
            f"The log is {edition.log_path}: any spreadsheet opens it.", width, "  ",
        )  # fmt: skip
    return lines


def _page_lines(edition: PlanEdition, page: str) -> list[str]:
    return [f"To print, and to open the loops: {page}", *filter(None, [loops_words(edition)])]


def _wrapped(text: str, width: int, lead: str = "") -> list[str]:
    return textwrap.wrap(text, width, initial_indent=lead, subsequent_indent=" " * len(lead))
