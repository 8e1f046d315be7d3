"""`sequencer practice`: what to work at next, and the log of what was practised."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine


@click.command(
    epilog='Example: sequencer practice shows/lantern_round.yaml --for Wren --log "25.1 60% 6/8"'
)
@click.argument("show", type=click.Path(path_type=Path))
@click.option("--for", "for_whom", metavar="NAME", multiple=True,
              help="Only this performer's plan; may be repeated.")  # fmt: skip
@click.option("--log", "lines", metavar="TEXT", multiple=True,
              help='Write down what was run: "Wren 25.1 60% 6/8" (6 of 8 clean, from bar 25 on), with lit, burn 4:05, put out, '
                   "40 cm downstage, late 0.5 (beats), the whole show, a date or note … where they apply; may be repeated.")  # fmt: skip
@click.option("--out", type=click.Path(path_type=Path), default=Path("exports"), show_default=True,
              help="Output folder; each show gets its own subfolder.")  # fmt: skip
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of text.")
@allow_option
def practice(
    show: Path, for_whom: tuple[str, ...], lines: tuple[str, ...], out: Path, as_json: bool
) -> None:
    """Plan what to practise of SHOW: hard joins, odd builds, walks while spinning, and the whole of it.

    Each exercise is slow first, then at tempo, both unlit, and lit last. The plan is printed, and written as a page from
    which each loop opens on the rehearsal page, slowed and repeated; on paper it is one sheet with room to write.
    With --log it writes down what was run instead, into SHOW.practice.csv beside the show, a table that any spreadsheet opens.
    From that log follow the next plan, progress by the week, and what it says of burning times and of drift: with a line for
    the show, which you put in yourself.
    """
    import shutil

    from sequencer import tasks

    if lines and as_json:
        raise click.UsageError("--json prints the plan: leave it out with --log")
    with ProgressLine() as progress:
        if lines:
            told = tasks.log_practice(show, lines, for_whom=for_whom, progress=progress)
        else:
            width = max(60, min(shutil.get_terminal_size((100, 24)).columns, 140))
            told = tasks.plan_practice(
                show, out, for_whom=for_whom, as_json=as_json, width=width, progress=progress
            )
    say(told.text, nl=False)
    if told.fault is not None:
        raise told.fault
