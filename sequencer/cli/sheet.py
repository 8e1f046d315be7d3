"""`sequencer sheet`: the printed run sheets."""

from pathlib import Path

import click

from sequencer.cli.progress_line import ProgressLine


@click.command(epilog="Example: sequencer sheet shows/lantern_round.yaml --paper letter")
@click.argument("show", type=click.Path(path_type=Path))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path("exports"),
    show_default=True,
    help="Folder to write into; each show gets a folder of its own there.",
)
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True)
@click.option(
    "--since",
    type=click.Path(path_type=Path),
    help="The show file of the last print: what differs from it is marked on every sheet.",
)
@click.pass_context
def sheet(ctx: click.Context, show: Path, out: Path, paper: str, since: Path | None) -> None:
    """Print the run sheets of SHOW as PDF, for performers, crew, operators and the authority.

    Ends with status 1 if something must be mended before the show is danced; the sheets say so too.
    """
    from sequencer import tasks

    gone: list[Path] = []
    with ProgressLine() as progress:
        report, written = tasks.print_sheets(
            show, out, paper=paper, since=since, progress=progress, removed=gone.append
        )
    for path in written:
        click.echo(str(path))
    for path in gone:
        click.echo(f"removed {path}: of the last print, and of nobody in this show", err=True)
    if not report.ok:
        click.echo(f"not to be danced yet: sequencer check {show} says why", err=True)
    ctx.exit(0 if report.ok else 1)
