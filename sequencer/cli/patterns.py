"""`sequencer patterns`: the vocabulary, and one pattern's card, build steps and drawing."""

from pathlib import Path
from typing import Literal, get_args

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine

_PropKind = Literal["poi", "rope dart", "staff", "club", "fan", "hoop"]
PROPS = get_args(_PropKind)


@click.command(
    epilog="Example: sequencer patterns pro-bend-3 --steps --draw exports/pro-bend-3.pdf"
)
@click.argument("name", required=False)
@click.option("--from", "file", type=click.Path(path_type=Path),
              help="Pattern file or show file whose patterns are added.")  # fmt: skip
@click.option("--family", help="Only patterns of this family.")
@click.option(
    "--find",
    "containing",
    metavar="TEXT",
    help="Only patterns whose name or summary contains TEXT.",
)
@click.option("--hardest", type=click.IntRange(1, 5), help="Only patterns up to this difficulty.")
@click.option(
    "--set", "settings", multiple=True, metavar="KEY=VALUE", help="A parameter of the pattern."
)
@click.option("--stature", metavar="LENGTH",
              help="Height of the performer, such as 1.62m or 5'4\" (default: 1.70 m; three bodies when all "
              "patterns are drawn).")  # fmt: skip
@click.option("--tempo", type=click.FloatRange(1, 1000), default=100.0, show_default=True,
              help="Beats per minute.")  # fmt: skip
@click.option("--prop", type=click.Choice(PROPS),
              help="Only patterns for this prop; with NAME, the prop to dance it with, in its usual size for the "
              "body (default: poi), one in each hand that usually holds one.")  # fmt: skip
@click.option("--timing", type=click.Choice(["together", "split", "quarter"]), default="split",
              show_default=True, help="Timing of the two hands.")  # fmt: skip
@click.option("--direction", type=click.Choice(["same", "opposite"]), default="same",
              show_default=True, help="Direction of the two hands.")  # fmt: skip
@click.option("--steps", is_flag=True, help="Print its build steps, station by station (toroids).")
@click.option("--draw", type=click.Path(path_type=Path),
              help="Draw the pattern, its build steps (--steps), or, without NAME, all patterns on bodies of "
              "several sizes, into a PNG, SVG or PDF file.")  # fmt: skip
@click.option("--booklet", type=click.Path(path_type=Path),
              help="Write a pupil's booklet of it (PDF): what to learn first, its steps, common faults, how to practise.")  # fmt: skip
@click.option("--page", type=click.Path(path_type=Path),
              help="Write an HTML page that dances it, station by station.")  # fmt: skip
@click.option("--joins", is_flag=True, help="Print a matrix of which pattern joins which.")
@click.option("--laws", is_flag=True, help="List the kinds of law that your own patterns may use.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of text.")
@click.pass_context
@allow_option
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
    booklet: Path | None,
    page: Path | None,
    joins: bool,
    laws: bool,
    as_json: bool,
) -> None:
    """List the vocabulary, or show the card of the pattern NAME."""
    from sequencer.tasks import vocabulary

    _check_name(ctx, name)
    options = vocabulary.PatternOptions(
        settings=settings, stature=stature, tempo=tempo, prop=prop or "poi", timing=timing,
        direction=direction, file=file,
    )  # fmt: skip
    if page is not None and name is not None:
        vocabulary.write_page(name, page, options)
        say(f"wrote {page}", err=True)
    if booklet is not None and name is not None:
        vocabulary.write_booklet(name, booklet, options)
        say(f"wrote {booklet}", err=True)
    if draw is not None:
        with ProgressLine() as progress:
            if joins:
                vocabulary.draw_joins(draw, file=file)
            elif name is not None:
                vocabulary.draw(name, draw, options, steps=steps)
            else:
                vocabulary.draw_all(
                    draw, options, family=family, containing=containing, hardest=hardest,
                    progress=progress,
                )  # fmt: skip
        say(f"wrote {draw}", err=True)
    if joins:
        say(vocabulary.joins_text(file=file, as_json=as_json), nl=False)
    elif laws:
        say(vocabulary.laws_text(as_json=as_json), nl=False)
    elif name is None:
        listed = vocabulary.list_text(
            family=family,
            containing=containing,
            hardest=hardest,
            prop=prop,
            file=file,
            as_json=as_json,
        )
        say(listed, nl=False)
    elif steps:
        say(vocabulary.steps_text(name, options, as_json=as_json), nl=False)
    else:
        with ProgressLine() as progress:
            card = vocabulary.card_text(name, options, as_json=as_json, progress=progress)
        say(card, nl=False)


def _check_name(ctx: click.Context, name: str | None) -> None:
    """Reject options for one pattern given without NAME, and options for all patterns given with it."""
    given = ctx.params
    if name is None and any(given[each] for each in ("settings", "steps", "booklet", "page")):
        raise click.UsageError(
            "--set, --steps, --booklet and --page need the NAME of a pattern", ctx
        )
    if name is None and given["stature"] and not given["draw"]:
        raise click.UsageError("--stature needs the NAME of a pattern, or --draw", ctx)
    for option in ("joins", "laws"):
        if name is not None and given[option]:
            raise click.UsageError(f"--{option} covers all patterns; leave NAME out", ctx)
