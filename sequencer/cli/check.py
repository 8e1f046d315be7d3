"""`sequencer check`: every check on a show."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine
from sequencer.progress import Progress, within
from sequencer.shell_words import shell_path

if TYPE_CHECKING:
    from sequencer.tasks import Dancing


@click.command(epilog="Example: sequencer check shows/lantern_round.yaml")
@click.argument("show", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of a table.")
@click.option(
    "--mend",
    is_flag=True,
    help="First mend SHOW itself as far as it goes: joins, links, the dance, walks, burns, distances; smallest change "
    "first, each one tried; comments are kept.",
)
@click.option("--one", is_flag=True, help="With --mend: make one mend only, then check.")
@click.option("--recount", "corrections", metavar="KEY=VALUE", multiple=True,
              help="First correct the song's count (tempo=half, metre=3, one=0:12.4 …) and write all bars and beats of SHOW in the "
                   "new count: everything stays at its moment of the song. KEY alone: a correction that SHOW has, but its numbers "
                   "do not follow yet. Comments are kept; nothing is written if something cannot be renumbered.")  # fmt: skip
@click.option("--drawn", is_flag=True,
              help="Check poi and rope darts as drawn, with a margin for the hands, not as they can be flown: quicker the "
                   "first time, and stricter about distances.")  # fmt: skip
@click.option("--from", "start", metavar="MOMENT",
              help="Look only at what is danced from this moment on: bar.beat, m:ss or a section, such as 'refrain 2'.")  # fmt: skip
@click.option("--until", metavar="MOMENT", help="Look only at what is danced before this moment.")
@click.option("--danced", "runs", type=click.IntRange(1, 1_000_000), metavar="N",
              help="Also run the show, as drawn, N times with typical human errors and report how likely each conflict is.")  # fmt: skip
@click.option("--seed", type=click.IntRange(0), default=0, show_default=True,
              help="Random seed for --danced; the same seed gives the same result.")  # fmt: skip
@click.option("--jobs", type=click.IntRange(-1), metavar="N",
              help="Number of processes that work out the dances, and the runs of --danced (default: one for the "
                   "dances, all cores for the runs; -1: all cores). Helps large casts on four cores or more.")  # fmt: skip
@click.option("--cluster", metavar="ADDRESS",
              help="Run --danced on the Dask cluster with this scheduler.")  # fmt: skip
@click.pass_context
@allow_option
def check(
    ctx: click.Context,
    show: Path,
    as_json: bool,
    mend: bool,
    one: bool,
    corrections: tuple[str, ...],
    drawn: bool,
    start: str | None,
    until: str | None,
    runs: int | None,
    seed: int,
    jobs: int | None,
    cluster: str | None,
) -> None:
    """Run every check on SHOW: joins, tethers, reach, clearances, fire, crew.

    A poi's tether only pulls, so distances, pull and reach are those of the motion that can be flown; to work that out
    takes seconds to a minute the first time.
    With --from or --until only what is danced between them is staged and checked; fire, crew and the rest of
    the show are not.
    If it is interrupted, give the same command again to resume.
    Exits with status 0 if there is no STOP, with 1 if something must be mended first.
    """
    from sequencer import tasks

    if one and not mend:
        raise click.UsageError("--one says how many mends --mend makes; add --mend", ctx)
    _agree(ctx, runs=runs, cluster=cluster, jobs=jobs)
    part = tasks.PartOfShow(start=start, until=until) if (start, until) != (None, None) else None
    if part is not None and (mend or runs is not None or corrections):
        raise click.UsageError(
            "--from and --until look at a part: --mend, --recount and --danced need the whole show",
            ctx,
        )
    flown = not drawn
    dancing = _dancing(runs, seed, jobs, cluster)
    said: list[str] = []
    mended, begun = None, 0.0
    try:
        with ProgressLine() as progress:
            if corrections:
                begun = 0.1
                said = [_recounted(show, corrections, within(progress, 0.0, begun))]
            if mend:
                mending = within(progress, begun, 0.6)
                begun = 0.6
                mended = tasks.mend_show(show, one=one, flown=flown, progress=mending)
            checking = within(progress, begun, 1.0)
            report = tasks.check_show(
                show, flown=flown, dancing=dancing, part=part, jobs=jobs or 1, progress=checking
            )
    except KeyboardInterrupt as stop:
        mended = getattr(stop, "mended", mended)
        if dancing is not None:
            say("finished runs are saved; give the same command again to resume", err=True)
        if mended and mended.done:
            raise KeyboardInterrupt(_kept(len(mended.done))) from None
        raise
    if mended is not None:
        said += _mended_lines(mended.done, mended.left)
    for line in said:
        say(line, err=True)
    say(tasks.report_text(report, as_json=as_json, width=_width()))
    ctx.exit(0 if report.ok else 1)


def _dancing(
    runs: int | None, seed: int, jobs: int | None, cluster: str | None
) -> "Dancing | None":
    """The settings of --danced; None if it is not given."""
    from sequencer import tasks

    if runs is None:
        return None
    return tasks.Dancing(runs=runs, seed=seed, jobs=-1 if jobs is None else jobs, cluster=cluster)


def _agree(ctx: click.Context, *, runs: int | None, cluster: str | None, jobs: int | None) -> None:
    """Refuse options that do not go together."""
    if runs is None and cluster is not None:
        raise click.UsageError("--cluster distributes the runs of --danced; add --danced N", ctx)
    if jobs == 0:
        raise click.UsageError("--jobs must be 1 or more, or -1 for all cores", ctx)


def _mended_lines(done: tuple[str, ...], left: tuple[str, ...]) -> list[str]:
    """What --mend has written, what it could not mend, and whether it changed anything."""
    lines = [f"mended: {words}" for words in done] + [f"left: {words}" for words in left]
    if not done:
        lines.append(
            "nothing was changed: no mend was found for what is left" if left
            else "nothing was changed: there is nothing that --mend mends"
        )  # fmt: skip
    return lines


def _recounted(show: Path, corrections: tuple[str, ...], progress: Progress | None) -> str:
    """Do what --recount asks for, and say what it has written."""
    from sequencer import tasks

    done = tasks.recount_show(show, corrections, progress=progress)
    again = (
        f"; to have it drawn for this count: sequencer draft {shell_path(show)}"
        if done.drafted
        else ""
    )
    return (
        f"recounted: {done.changed} line{'' if done.changed == 1 else 's'} of {show} written in the new count; "
        f"all lies at the same moments of the song, and is danced by the new counts{again}"
    )


def _kept(mends: int) -> str:
    """What is said if the command is interrupted after some mends."""
    are = "1 mend is" if mends == 1 else f"{mends} mends are"
    return f"interrupted; {are} in the file, tried on the whole show: ask again to go on"


def _width() -> int:
    import shutil

    return max(60, min(shutil.get_terminal_size((100, 24)).columns, 140))
