"""`sequencer check`: every check on a show."""

from pathlib import Path

import click

from sequencer.cli.progress_line import ProgressLine


@click.command(epilog="Example: sequencer check shows/lantern_round.yaml")
@click.argument("show", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of a table.")
@click.option(
    "--mend",
    is_flag=True,
    help="First mend joins and distances in SHOW itself, cheapest change first; comments stay.",
)
@click.option("--danced", "runs", type=click.IntRange(1, 1_000_000), metavar="N",
              help="Also dance it N times with errors that people make, and tell the chance of each conflict.")  # fmt: skip
@click.option("--seed", type=click.IntRange(0), default=0, show_default=True,
              help="Which errors are drawn; the same number draws the same.")  # fmt: skip
@click.option("--jobs", type=click.IntRange(-1), default=-1, metavar="N",
              help="Processes that dance it; all cores if left out.")  # fmt: skip
@click.option("--cluster", metavar="ADDRESS",
              help="Hand the runs to the Dask cluster whose scheduler is there.")  # fmt: skip
@click.pass_context
def check(
    ctx: click.Context,
    show: Path,
    as_json: bool,
    mend: bool,
    runs: int | None,
    seed: int,
    jobs: int,
    cluster: str | None,
) -> None:
    """Run every check on SHOW: joins, tethers, reach, clearances, fire, crew.

    With --danced, an interrupted call is taken up where it was when the same command is given again.
    Ends with status 0 if nothing stands against the show, with 1 if something must be mended first.
    """
    from sequencer import tasks

    if runs is None and cluster is not None:
        raise click.UsageError("--cluster hands out the runs of --danced; give --danced N too", ctx)
    if jobs == 0:
        raise click.UsageError("--jobs is 1 or more, or left out for all cores", ctx)
    dancing = None
    if runs is not None:
        dancing = tasks.Dancing(runs=runs, seed=seed, jobs=jobs, cluster=cluster)
    try:
        with ProgressLine() as progress:
            mended = tasks.mend_show(show, progress=progress) if mend else None
            report = tasks.check_show(show, dancing=dancing, progress=progress)
    except KeyboardInterrupt:
        if dancing is not None:
            click.echo("runs danced are kept: the same command goes on where it was", err=True)
        raise
    for words in mended.done if mended else ():
        click.echo(f"mended: {words}", err=True)
    for words in mended.left if mended else ():
        click.echo(f"left: {words}", err=True)
    click.echo(tasks.report_text(report, as_json=as_json, width=_width()))
    ctx.exit(0 if report.ok else 1)


def _width() -> int:
    import shutil

    return max(60, min(shutil.get_terminal_size((100, 24)).columns, 140))
