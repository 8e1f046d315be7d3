"""`sequencer draft`: a routine proposed for the song."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine
from sequencer.shell_words import shell_path


@click.command(epilog="Example: sequencer draft shows/mine.yaml --why")
@click.argument("show", type=click.Path(path_type=Path))
@click.option(
    "--why", is_flag=True, help="Also print what each part of the cost is, and what is danced when."
)
@click.option("--another", is_flag=True,
              help="Draft the next best routine that differs in at least a third of its material.")  # fmt: skip
@click.option("--section", metavar="NAME", help="Draft only this section; everything else stays.")
@click.option("--seed", type=click.IntRange(0), default=0, show_default=True,
              help="The same seed gives the same routine; another one breaks ties in another way.")  # fmt: skip
@click.option("--print", "only_print", is_flag=True,
              help="Print the show file with the routine; SHOW itself is not changed.")  # fmt: skip
@allow_option
def draft(
    show: Path, why: bool, another: bool, section: str | None, seed: int, only_print: bool
) -> None:
    """Fill the gaps of SHOW with a routine for its song, and check it.

    Uses `level` and `repertoire` in the cast, and `wishes`. What you wrote yourself is never changed; what was drafted
    before is marked in the file (`drafted`) and drafted anew. Change such an entry, or take its mark away, and it is yours.
    Only a routine that the checks find clean is written; if you interrupt it, the best one so far is, and says so.
    """
    from sequencer import tasks

    try:
        with ProgressLine() as progress:
            made = tasks.draft_show(
                show,
                section=section,
                another=another,
                seed=seed,
                write=not only_print,
                progress=progress,
            )
    except KeyboardInterrupt as stop:
        left = getattr(stop, "draft", None)
        if left is None or only_print:
            raise
        if not getattr(stop, "written", False):
            raise KeyboardInterrupt(
                f"interrupted; {show} is as it was, with the routine that was drafted before"
            ) from None
        raise KeyboardInterrupt(
            f"interrupted; the best routine so far is in {show}, but was not checked: run sequencer check {shell_path(show)}"
        ) from None
    if only_print:
        say(made.text, nl=False)
    say(tasks.draft_words(made, why=why), err=only_print)
