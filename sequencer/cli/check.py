"""`sequencer check`: every check on a show."""

from pathlib import Path

import click

from sequencer.cli.progress import Progress


@click.command(epilog="Example: sequencer check shows/lantern_round.yaml")
@click.argument("show", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of a table.")
@click.option(
    "--mend",
    is_flag=True,
    help="First mend joins and distances in SHOW itself, cheapest change first; comments stay.",
)
@click.pass_context
def check(ctx: click.Context, show: Path, as_json: bool, mend: bool) -> None:
    """Run every check on SHOW: joins, tethers, reach, clearances, fire, crew.

    Ends with status 0 if nothing stands against the show, with 1 if something must be mended first.
    """
    from sequencer import tasks

    with Progress() as progress:
        mended = tasks.mend_show(show, progress=progress) if mend else None
        report = tasks.check_show(show, progress=progress)
    for words in mended.done if mended else ():
        click.echo(f"mended: {words}", err=True)
    click.echo(tasks.report_text(report, as_json=as_json, width=_width()))
    ctx.exit(0 if report.ok else 1)


def _width() -> int:
    import shutil

    return max(60, min(shutil.get_terminal_size((100, 24)).columns, 140))
