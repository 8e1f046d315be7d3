"""`sequencer patterns`: the vocabulary, and one pattern's card, build steps and drawing."""

from pathlib import Path
from typing import Literal, get_args

import click

from sequencer.cli.progress_line import ProgressLine

_PropKind = Literal["poi", "rope dart", "staff", "club", "fan", "hoop"]
PROPS = get_args(_PropKind)


@click.command(
    epilog="Example: sequencer patterns pro-bend-3 --steps --draw exports/pro-bend-3.pdf"
)
@click.argument("name", required=False)
@click.option("--from", "file", type=click.Path(path_type=Path),
              help="A file of patterns, or a show file, whose patterns come on top.")  # fmt: skip
@click.option("--family", help="Only patterns of this family.")
@click.option("--find", "containing", metavar="TEXT", help="Only patterns that speak of this.")
@click.option("--hardest", type=click.IntRange(1, 5), help="Only patterns up to this difficulty.")
@click.option(
    "--set", "settings", multiple=True, metavar="KEY=VALUE", help="A parameter of the pattern."
)
@click.option("--stature", metavar="LENGTH",
              help="Of who dances it, such as 1.62m or 5'4\"; 1.70 m if not said (three bodies where all "
              "patterns are drawn).")  # fmt: skip
@click.option("--tempo", type=click.FloatRange(1, 1000), default=100.0, show_default=True,
              help="Beats a minute.")  # fmt: skip
@click.option("--prop", type=click.Choice(PROPS),
              help="Only patterns for this prop; with NAME what it is danced with, in its usual size for the "
              "body (poi if not said), one in each hand that usually holds one.")  # fmt: skip
@click.option("--timing", type=click.Choice(["together", "split", "quarter"]), default="split",
              show_default=True, help="Of the two hands.")  # fmt: skip
@click.option("--direction", type=click.Choice(["same", "opposite"]), default="same",
              show_default=True, help="Of the two hands.")  # fmt: skip
@click.option("--steps", is_flag=True, help="Its build steps, station by station (toroids).")
@click.option("--draw", type=click.Path(path_type=Path),
              help="Draw it, its build steps, or all of them as different bodies dance them, into a PNG, SVG "
              "or PDF file.")  # fmt: skip
@click.option("--page", type=click.Path(path_type=Path),
              help="Write the page that dances it, station by station, into an HTML file.")  # fmt: skip
@click.option("--joins", is_flag=True, help="Which pattern joins which, as a matrix.")
@click.option("--laws", is_flag=True, help="Kinds of law that patterns of your own may use.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of text.")
@click.pass_context
def patterns(
    ctx: click.Context,
    name: str | None,
    file: Path | None,
    family: str | None,
    containing: str | None,
    hardest: int | None,
    settings: tuple[str, ...],
    stature: str | None,
    tempo: float,
    prop: _PropKind | None,
    timing: Literal["together", "split", "quarter"],
    direction: Literal["same", "opposite"],
    steps: bool,
    draw: Path | None,
    page: Path | None,
    joins: bool,
    laws: bool,
    as_json: bool,
) -> None:
    """List the vocabulary, or show the card of the pattern NAME."""
    from sequencer.tasks import vocabulary

    _check_name(ctx, name)
    asked = vocabulary.PatternOptions(
        settings=settings, stature=stature, tempo=tempo, prop=prop or "poi", timing=timing,
        direction=direction, file=file,
    )  # fmt: skip
    if page is not None and name is not None:
        vocabulary.write_page(name, page, asked)
        click.echo(f"wrote {page}", err=True)
    if draw is not None:
        with ProgressLine() as progress:
            if joins:
                vocabulary.draw_joins(draw, file=file)
            elif name is not None:
                vocabulary.draw(name, draw, asked, steps=steps)
            else:
                vocabulary.draw_all(
                    draw, asked, family=family, containing=containing, hardest=hardest,
                    progress=progress,
                )  # fmt: skip
        click.echo(f"wrote {draw}", err=True)
    if joins:
        click.echo(vocabulary.joins_text(file=file, as_json=as_json), nl=False)
    elif laws:
        click.echo(vocabulary.laws_text(as_json=as_json), nl=False)
    elif name is None:
        listed = vocabulary.list_text(
            family=family,
            containing=containing,
            hardest=hardest,
            prop=prop,
            file=file,
            as_json=as_json,
        )
        click.echo(listed, nl=False)
    elif steps:
        click.echo(vocabulary.steps_text(name, asked, as_json=as_json), nl=False)
    else:
        click.echo(vocabulary.card_text(name, asked, as_json=as_json), nl=False)


def _check_name(ctx: click.Context, name: str | None) -> None:
    """Refuse options of one pattern without its NAME, and those of all with one."""
    given = ctx.params
    if name is None and (given["settings"] or given["steps"] or given["page"]):
        raise click.UsageError("--set, --steps and --page need the NAME of a pattern", ctx)
    if name is None and given["stature"] and not given["draw"]:
        raise click.UsageError("--stature needs the NAME of a pattern, or --draw", ctx)
    for option in ("joins", "laws"):
        if name is not None and given[option]:
            raise click.UsageError(f"--{option} is not of one pattern; leave NAME out", ctx)
