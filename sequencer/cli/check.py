"""`sequencer check`: every check on a show."""

from pathlib import Path

import click

from sequencer.cli.progress_line import ProgressLine
from sequencer.progress import within


@click.command(epilog="Example: sequencer check shows/lantern_round.yaml")
@click.argument("show", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of a table.")
@click.option(
    "--mend",
    is_flag=True,
    help="First mend joins and distances in SHOW itself, smallest change first; comments are kept.",
)
@click.option("--flown", is_flag=True,
              help="Also check which patterns and links can be flown with poi and rope darts, and what would do where they "
                   "cannot.")  # fmt: skip
@click.option("--from", "start", metavar="MOMENT",
              help="Look only at what is danced from this moment on: bar.beat, m:ss or a section, such as 'refrain 2'.")  # fmt: skip
@click.option("--until", metavar="MOMENT", help="Look only at what is danced before this moment.")
@click.option("--danced", "runs", type=click.IntRange(1, 1_000_000), metavar="N",
              help="Also run the show N times with typical human errors and report how likely each conflict is.")  # fmt: skip
@click.option("--seed", type=click.IntRange(0), default=0, show_default=True,
              help="Random seed for --danced; the same seed gives the same result.")  # fmt: skip
@click.option("--jobs", type=click.IntRange(-1), metavar="N",
              help="Number of processes that work out the dances, and the runs of --danced (default: one for the "
                   "dances, all cores for the runs; -1: all cores). Helps large casts on four cores or more.")  # fmt: skip
@click.option("--cluster", metavar="ADDRESS",
              help="Run --danced on the Dask cluster with this scheduler.")  # fmt: skip
@click.pass_context
def check(
    ctx: click.Context,
    show: Path,
    as_json: bool,
    mend: bool,
    flown: bool,
    start: str | None,
    until: str | None,
    runs: int | None,
    seed: int,
    jobs: int | None,
    cluster: str | None,
) -> None:
    """Run every check on SHOW: joins, tethers, reach, clearances, fire, crew.

    With --from or --until only what is danced between them is staged and checked, as in the whole show; fire, crew
    and the rest of the show are not.
    If --danced or --flown is interrupted, give the same command again to resume.
    Exits with status 0 if there is no STOP, with 1 if something must be mended first.
    """
    from sequencer import tasks

    _agree(ctx, runs=runs, cluster=cluster, flown=flown, jobs=jobs)
    part = None
    if start is not None or until is not None:
        if mend or flown or runs is not None:
            raise click.UsageError(
                "--from and --until look at a part: --mend, --flown and --danced need the whole show",
                ctx,
            )
        part = tasks.PartOfShow(start=start, until=until)
    dancing = None
    if runs is not None:
        dancing = tasks.Dancing(
            runs=runs, seed=seed, jobs=-1 if jobs is None else jobs, cluster=cluster
        )
    mended, begun = None, 0.0
    try:
        with ProgressLine() as progress:
            if mend:
                begun = 0.6
                mended = tasks.mend_show(show, progress=within(progress, 0.0, begun))
            checking = within(progress, begun, 1.0)
            report = tasks.check_show(
                show, flown=flown, dancing=dancing, part=part, jobs=jobs or 1, progress=checking
            )
    except KeyboardInterrupt as stop:
        mended = getattr(stop, "mended", mended)
        if flown or dancing is not None:
            saved = "what was flown is saved" if dancing is None else "finished runs are saved"
            click.echo(f"{saved}; give the same command again to resume", err=True)
        if mended and mended.done:
            raise KeyboardInterrupt(_kept(len(mended.done))) from None
        raise
    for words in mended.done if mended else ():
        click.echo(f"mended: {words}", err=True)
    for words in mended.left if mended else ():
        click.echo(f"left: {words}", err=True)
    click.echo(tasks.report_text(report, as_json=as_json, width=_width()))
    ctx.exit(0 if report.ok else 1)


def _agree(
    ctx: click.Context, *, runs: int | None, cluster: str | None, flown: bool, jobs: int | None
) -> None:
    """Refuse options that do not go together."""
    if runs is None and cluster is not None:
        raise click.UsageError("--cluster distributes the runs of --danced; add --danced N", ctx)
    if runs is not None and flown:
        raise click.UsageError(
            "--danced dances the show as drawn: ask for it and --flown one at a time", ctx
        )
    if jobs == 0:
        raise click.UsageError("--jobs must be 1 or more, or -1 for all cores", ctx)


def _kept(mends: int) -> str:
    """What is said if the command is interrupted after some mends."""
    are = "1 mend is" if mends == 1 else f"{mends} mends are"
    return f"interrupted; {are} in the file, tried on the whole show: ask again to go on"


def _width() -> int:
    import shutil

    return max(60, min(shutil.get_terminal_size((100, 24)).columns, 140))
