"""`sequencer trace`: positions over time, for other tools."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine


@click.command(
    epilog="Example: sequencer trace --pattern toroid --set lobes=4 --set bend=pro --beats 4 --per-beat 96"
)
@click.argument("show", type=click.Path(path_type=Path), required=False)
@click.option("--rate", type=click.FloatRange(0, 10_000, min_open=True), default=60.0, show_default=True,
              help="Rows per second.")  # fmt: skip
@click.option("--drawn", is_flag=True,
              help="Leave out where a passive prop of SHOW can be flown, which takes seconds to a minute the first time.")  # fmt: skip
@click.option(
    "--pattern", help="Trace one pattern of one hand, in the body frame, instead of a show."
)
@click.option("--from", "file", type=click.Path(path_type=Path),
              help="Pattern file or show file in which --pattern is also looked up.")  # fmt: skip
@click.option(
    "--set", "settings", multiple=True, metavar="KEY=VALUE", help="A parameter of the pattern."
)
@click.option("--beats", type=click.FloatRange(0, 100_000, min_open=True),
              help="Length of the pattern in beats (default: one hand cycle).")  # fmt: skip
@click.option("--per-beat", type=click.IntRange(1, 100_000), default=24, show_default=True,
              help="Rows per beat of the pattern.")  # fmt: skip
@click.option("--tempo", type=click.FloatRange(1, 1000), default=100.0, show_default=True,
              help="Beats per minute, for the times of a pattern.")  # fmt: skip
@click.pass_context
@allow_option
def trace(
    ctx: click.Context,
    show: Path | None,
    rate: float,
    drawn: bool,
    pattern: str | None,
    file: Path | None,
    settings: tuple[str, ...],
    beats: float | None,
    per_beat: int,
    tempo: float,
) -> None:
    """Write the positions of every hand and prop of SHOW over time as CSV, in the stage frame.

    The head is the wick farthest along a prop; where a show holds props with more wicks (staffs, fans,
    hoops) the columns head2_x, head2_y, head2_z and so on follow. Hand and head are as drawn; the columns
    flown_… say where they really go with a poi, whose tether only pulls. Of a pattern [m, body frame] they are empty
    if it cannot be flown; of a show what is drawn stands in there.
    """
    from sequencer import tasks

    if (show is None) == (pattern is None):
        raise click.UsageError("give either SHOW or --pattern NAME", ctx)
    if drawn and show is None:
        raise click.UsageError("--drawn is for a SHOW; a pattern's trace holds both anyway", ctx)
    if pattern is not None:
        rows = tasks.trace_pattern(
            pattern, settings, beats=beats, per_beat=per_beat, tempo=tempo, file=file
        )
        say(rows, nl=False)
        return
    if show is not None:
        with ProgressLine() as progress:
            say(tasks.trace_show(show, rate=rate, flown=not drawn, progress=progress), nl=False)
