"""`sequencer draw`: the pictures of a show."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine

_PICTURES = ("plan", "formations", "flames", "closest", "song")


@click.command(epilog="Example: sequencer draw shows/lantern_round.yaml plan --at 25.1 --as svg")
@click.argument("show", type=click.Path(path_type=Path))
@click.argument("pictures", metavar="[PICTURE]...", nargs=-1, type=click.Choice(_PICTURES))
@click.option("--at", "moments", multiple=True, metavar="WHEN",
              help="Moment to draw the plan at, such as 25.1, 1:02.5 or refrain; can be repeated.")  # fmt: skip
@click.option("--from", "start", metavar="WHEN", help="Start of the flames and closest pictures.")
@click.option("--until", metavar="WHEN", help="End of the flames and closest pictures.")
@click.option("--as", "kind", type=click.Choice(["png", "svg", "pdf"]), default="png",
              show_default=True, help="File format.")  # fmt: skip
@click.option("--seen-from", type=click.Choice(["audience", "performers"]), default="audience", show_default=True,
              help="The side from which formations are drawn.")  # fmt: skip
@click.option("--out", type=click.Path(path_type=Path), default=Path("exports"), show_default=True,
              help="Output folder; each show gets its own subfolder.")  # fmt: skip
@allow_option
def draw(
    show: Path,
    pictures: tuple[str, ...],
    moments: tuple[str, ...],
    start: str | None,
    until: str | None,
    kind: str,
    seen_from: str,
    out: Path,
) -> None:
    """Draw pictures of SHOW: each PICTURE you name, or all of them.

    \b
    plan        the stage from above at a moment (--at); by default, when two performers are closest
    formations  small plans of all formations, in order, with names and walks
    flames      map of how long a flame is over each spot
    closest     distance between the closest two over the song, and where it is too small
    song        beats, sections and energy as detected
    """  # noqa: D301 (click's mark that keeps lines apart)
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
                turned=seen_from == "performers",
            ),
            progress=progress,
        )
    for path in written:
        say(str(path))
    for words in left:
        say(f"not drawn: {words}", err=True)
