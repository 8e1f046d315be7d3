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
    help="Output folder; each show gets its own subfolder.",
)
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True)
@click.option(
    "--since",
    type=click.Path(path_type=Path),
    help="The show file you printed last: every sheet marks what has changed since.",
)
@click.pass_context
def sheet(ctx: click.Context, show: Path, out: Path, paper: str, since: Path | None) -> None:
    """Print the run sheets of SHOW as PDF: for performers, crew, operators and the authority.

    Exits with status 1 if something must be mended before the show is danced; the sheets say so too.
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
        click.echo(
            f"removed {path}: left over from the last print, for somebody no longer in this show",
            err=True,
        )
    if not report.ok:
        click.echo(f"do not dance this yet: run `sequencer check {show}` to see why", err=True)
    ctx.exit(0 if report.ok else 1)
