"""`sequencer draw`: the pictures of a show."""

from pathlib import Path

import click

from sequencer.cli.progress_line import ProgressLine

_PICTURES = ("plan", "formations", "flames", "closest", "song")


@click.command(epilog="Example: sequencer draw shows/lantern_round.yaml plan --at 25.1 --as svg")
@click.argument("show", type=click.Path(path_type=Path))
@click.argument("pictures", metavar="[PICTURE]...", nargs=-1, type=click.Choice(_PICTURES))
@click.option("--at", "moments", multiple=True, metavar="WHEN",
              help="Moment of the plan, such as 25.1, 1:02.5 or refrain; give it again for more.")  # fmt: skip
@click.option("--from", "start", metavar="WHEN", help="Where flames and closest start.")
@click.option("--until", metavar="WHEN", help="Where flames and closest end.")
@click.option("--as", "kind", type=click.Choice(["png", "svg", "pdf"]), default="png",
              show_default=True, help="Kind of file.")  # fmt: skip
@click.option("--out", type=click.Path(path_type=Path), default=Path("exports"), show_default=True,
              help="Folder to write into; each show gets a folder of its own there.")  # fmt: skip
def draw(
    show: Path,
    pictures: tuple[str, ...],
    moments: tuple[str, ...],
    start: str | None,
    until: str | None,
    kind: str,
    out: Path,
) -> None:
    """Draw SHOW: every PICTURE named, or all of them.

    \b
    plan        the stage from above at a moment (--at); left out, where two come closest
    formations  every formation in turn, small
    flames      how long a flame is over each spot
    closest     distance of the closest two over the song, and where it is too small
    song        beats, sections and energy as heard
    """  # noqa: D301 (click's own mark for lines that stay apart)
    from sequencer.tasks import pictures as drawn

    with ProgressLine() as progress:
        written, left = drawn.draw_show(
            show,
            out,
            drawn.PictureOptions(
                pictures=drawn.picture_names(pictures),
                moments=moments,
                start=start,
                until=until,
                kind=kind,
            ),
            progress=progress,
        )
    for path in written:
        click.echo(str(path))
    for words in left:
        click.echo(f"not drawn: {words}", err=True)
