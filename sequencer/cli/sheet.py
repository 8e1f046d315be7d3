"""`sequencer sheet`: the printed run sheets."""

from pathlib import Path
from typing import Literal

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine
from sequencer.shell_words import shell_path

_MOST_NAMED = 3  # outdated sheets


@click.command(epilog="Example: sequencer sheet shows/lantern_round.yaml --for Wren --paper letter")
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
    "--for",
    "for_whom",
    metavar="NAME",
    multiple=True,
    help="Only what this performer or crew member carries; may be repeated.",
)
@click.option(
    "--only",
    metavar="KIND",
    multiple=True,
    help="Only sheets of this kind, such as post or plan-packet; may be repeated.",
)
@click.option("--all", "everything", is_flag=True, help="Every sheet, not only the pack.")
@click.option("--seen-from", type=click.Choice(["audience", "performers"]), default="audience", show_default=True,
              help="The side from which formations are drawn.")  # fmt: skip
@click.option(
    "--phone",
    is_flag=True,
    help="Also write the formations for phones: one small page, no network needed.",
)
@click.option("--drawn", is_flag=True,
              help="Check poi and rope darts as drawn, not as they can be flown: quicker the first time.")  # fmt: skip
@click.option(
    "--since",
    type=click.Path(path_type=Path),
    help="The show file you printed last: every sheet marks what has changed since.",
)
@click.pass_context
@allow_option
def sheet(
    ctx: click.Context,
    show: Path,
    out: Path,
    paper: str,
    for_whom: tuple[str, ...],
    only: tuple[str, ...],
    everything: bool,
    seen_from: Literal["audience", "performers"],
    phone: bool,
    drawn: bool,
    since: Path | None,
) -> None:
    """Print the run sheets of SHOW as PDF: the pack that is carried on the night, or the sheets you ask for.

    The pack holds the sheets of the safety lead, of every post, of the fuel station and of sound and light, and a pocket
    card for each performer. On demand come performers' sheets for rehearsal, the formation book, build steps and the
    plan packet for the authority.

    Exits with status 1 if something must be mended before the show is danced; the sheets say so too.
    """
    from sequencer import tasks

    if everything and (for_whom or only):
        raise click.UsageError("--all prints every sheet: leave out --for and --only, or --all")
    gone: list[tuple[Path, str]] = []
    old: list[Path] = []
    with ProgressLine() as progress:
        report, written = tasks.print_sheets(
            show,
            out,
            paper=paper,
            since=since,
            pack=not (everything or for_whom or only),
            only=only,
            for_whom=for_whom,
            flown=not drawn,
            turned=seen_from == "performers",
            phone=phone,
            progress=progress,
            removed=lambda path, why: gone.append((path, why)),
            outdated=old.append,
        )
    for path in written:
        say(str(path))
    for path, why in gone:
        say(f"removed {path}: {why}", err=True)
    if old:
        names = ", ".join(path.name for path in old[:_MOST_NAMED])
        more = f" and {len(old) - _MOST_NAMED} more" if len(old) > _MOST_NAMED else ""
        say(
            f"not printed anew, and of an earlier version of the show: {names}{more} in {old[0].parent}; "
            "--all prints every sheet",
            err=True,
        )
    if not report.ok:
        say(f"do not dance this yet: run `sequencer check {shell_path(show)}` to see why", err=True)
    ctx.exit(0 if report.ok else 1)
