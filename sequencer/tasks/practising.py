"""What `practice` does: the plan of what to work at next, and lines for the log beside the show."""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from sequencer.errors import InputError, Place, written_out
from sequencer.files import AnyPath, write_text
from sequencer.progress import Progress
from sequencer.tasks.kept_reports import AskedReport
from sequencer.tasks.practice_logs import ground_of, practice_log_of
from sequencer.tasks.shows import stage_show

if TYPE_CHECKING:
    from sequencer.practice.logged_run import LoggedRun
    from sequencer.practice.practice_plan import PracticePlan
    from sequencer.staging.staged import Staged


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeTold:
    """What a call of `practice` says and has written."""

    text: str
    page: Path | None = None  # the plan to print
    fault: InputError | None = None  # in older lines of the log; the new ones are written


def plan_practice(
    path: AnyPath,
    out: AnyPath,
    *,
    for_whom: Sequence[str] = (),
    as_json: bool = False,
    width: int = 100,
    today: dt.date | None = None,
    progress: Progress | None = None,
) -> PracticeTold:
    """The practice plan of a show by its log; as a page it is written into the show's own folder in `out`.

    Parameters
    ----------
    path, out : path
    for_whom : sequence of str
        Performers; everybody if empty.
    as_json : bool
        Whether the text is JSON.
    width : int
        Columns of the terminal.
    today : date, optional
        The day after which nothing can have been run; default: today.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show, its track or the log cannot be used, a name is not in the show, or the folder cannot be written.
    """
    from sequencer.outputs.practice_pages.practice_page import practice_page
    from sequencer.outputs.practice_pages.practice_text import plan_text
    from sequencer.outputs.practice_pages.practice_values import plan_json
    from sequencer.outputs.practice_pages.practice_words import PAGE_OF_LOOPS, PlanEdition
    from sequencer.practice.log_reading import read_practice_log
    from sequencer.practice.practice_plan import practice_plan

    show = stage_show(path, without_track=True, progress=progress)
    log = practice_log_of(path)
    who = _parts(show, for_whom)
    ground = ground_of(show, today)
    runs = read_practice_log(log, ground)
    folder = Path(out) / Path(path).stem
    plan: PracticePlan = practice_plan(show, runs, who, today=ground.today)
    edition = PlanEdition(
        show=show, plan=plan, show_path=str(path), log_path=str(log), log_name=log.name,
        loops=_loops(folder / PAGE_OF_LOOPS, Path(path)), checked=_checked(Path(path)),
    )  # fmt: skip
    page = folder / _page_name(show, for_whom)
    write_text(page, practice_page(edition))
    text = plan_json(edition) if as_json else plan_text(edition, width=width, page=str(page))
    return PracticeTold(text=text, page=page)


def log_practice(
    path: AnyPath,
    lines: Sequence[str],
    *,
    for_whom: Sequence[str] = (),
    today: dt.date | None = None,
    progress: Progress | None = None,
) -> PracticeTold:
    """Write what was run into the log beside a show, all lines or none; faults in older lines come with the answer.

    Parameters
    ----------
    path : path
    lines : sequence of str
        As they are typed: "Wren 25.1 60% 6/8".
    for_whom : sequence of str
        Whose they are where a line names nobody.
    today : date, optional
        Of lines that name no day; default: today.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show or its track cannot be used, a line is not understood, or the log cannot be written; then nothing is.
    """
    from sequencer.practice.log_reading import read_practice_log, run_of
    from sequencer.practice.log_words import OPTION, typed_run
    from sequencer.practice.log_writing import append_runs
    from sequencer.practice.practice_log_rows import completed_row, said_of

    show = stage_show(path, without_track=True, progress=progress)
    log = practice_log_of(path)
    _parts(show, for_whom)
    ground = ground_of(show, today)
    rows: list[Mapping[str, str]] = []
    new: list[LoggedRun] = []
    for line in lines:
        cells = typed_run(line, ground.names)
        if "performer" not in cells and len(for_whom) == 1:
            cells["performer"] = for_whom[0]
        row = completed_row(show, cells, ground)
        new.append(run_of(row, ground, lambda _name: Place(OPTION)))
        rows.append(row)
    append_runs(log, rows)
    written = [
        written_out(f"written into {log}: {', '.join(cell for cell in row.values() if cell)}")
        for row in rows
    ]
    try:
        runs = read_practice_log(log, ground)
    except InputError as error:  # what was run must not be lost for a slip in an older line
        return PracticeTold(text="\n".join(written) + "\n", fault=error)
    return PracticeTold(text="\n".join([*written, *said_of(show, new, runs)]) + "\n")


def _parts(show: "Staged", names: Sequence[str]) -> tuple[str, ...]:
    """The parts of some people; everybody's if none is named."""
    from sequencer.show.reading import nearest

    parts = [show.part_of(name) for name in names]
    for name, part in zip(names, parts, strict=True):
        if part not in show.show.names:
            raise InputError(
                "unknown-performer", Place("--for"), f"{name!r} is not in the cast", nearest(name, list(show.show.names))
            )  # fmt: skip
    return tuple(name for name in show.show.names if name in parts or not parts)


def _checked(path: Path) -> bool | None:
    """Whether the checks found no STOP in the show as it stands; None if they have not looked at it."""
    return AskedReport(path, flown=True).verdict()


def _loops(page: Path, show: Path) -> Literal["there", "older", "missing"]:
    """Whether the rehearsal page is there, and written after the last change of the show."""
    try:
        return "older" if page.stat().st_mtime < show.stat().st_mtime else "there"
    except OSError:
        return "missing"


def _page_name(show: "Staged", for_whom: Sequence[str]) -> str:
    """The page's own name: by number, since a name may hold what a file name cannot."""
    if not for_whom:
        return "practice.html"
    numbers = "-".join(str(show.number_of(show.part_of(name))) for name in for_whom)
    return f"practice-{numbers}.html"
