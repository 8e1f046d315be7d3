"""`sequencer rehearse`: the page that dances the show, and the count track."""

from pathlib import Path

import click

from sequencer.cli.progress_line import ProgressLine

_EXPORTS = ("page", "counts", "midi", "captions", "timetable")


@click.command(
    epilog="Example: sequencer rehearse shows/lantern_round.yaml --speed 100 --speed 70 --counts spoken"
)
@click.argument("show", type=click.Path(path_type=Path))
@click.option("--out", type=click.Path(path_type=Path), default=Path("exports"), show_default=True,
              help="Folder to write into; each show gets a folder of its own there.")  # fmt: skip
@click.option("--only", "parts", multiple=True, type=click.Choice(_EXPORTS),
              help="Write only this; give it again for more. All if left out.")  # fmt: skip
@click.option("--audio", type=click.Choice(["embed", "link", "none"]), default="embed",
              show_default=True, help="The song inside the page, beside it, or not at all.")  # fmt: skip
@click.option("--speed", "speeds", multiple=True, type=click.FloatRange(25, 200), default=(100.0,),
              help="Of the count track in percent, its pitch kept; give it again for more.")  # fmt: skip
@click.option("--song", "song", type=click.FloatRange(-80, 0), default=-9.0, show_default=True,
              help="Level of the song in the count track, in dB.")  # fmt: skip
@click.option("--click-only", is_flag=True, help="A count track without the song.")
@click.option("--counts", type=click.Choice(["pitched", "spoken", "none"]), default="pitched",
              show_default=True, help="Counts of the last four beats before a change.")  # fmt: skip
@click.option("--no-calls", is_flag=True, help="No three-note calls ahead of sections.")
@click.option("--split", is_flag=True, help="Song on the left, counts on the right.")
@click.option("--for", "who", multiple=True, metavar="NAME",
              help="Count only the changes of this performer; give it again for more.")  # fmt: skip
@click.pass_context
def rehearse(
    ctx: click.Context,
    show: Path,
    out: Path,
    parts: tuple[str, ...],
    audio: str,
    speeds: tuple[float, ...],
    song: float,
    click_only: bool,
    counts: str,
    no_calls: bool,
    split: bool,
    who: tuple[str, ...],
) -> None:
    """Write the rehearsal page of SHOW (one HTML file that dances it) and its count track (WAV).

    Beside them: cues for light and sound (MIDI), captions (WebVTT) and the timetable (CSV, JSON).
    A show with findings is written all the same, with the findings in the page; the status is then 1
    if something must be mended before it is danced.
    """
    from sequencer import tasks

    with ProgressLine() as progress:
        report, written = tasks.write_rehearsal(
            show,
            out,
            parts=parts or _EXPORTS,
            audio=audio,
            speeds=tuple(speed / 100 for speed in speeds),
            song=None if click_only else song,
            counts=counts,
            calls=not no_calls,
            split=split,
            who=who,
            progress=progress,
        )
    for path in written:
        click.echo(str(path))
    if not report.ok:
        click.echo(f"not to be danced yet: sequencer check {show} says why", err=True)
    ctx.exit(0 if report.ok else 1)
