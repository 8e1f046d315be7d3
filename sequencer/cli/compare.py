"""`sequencer compare`: what changed from one show file to another."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine


@click.command(
    epilog="Example: sequencer compare 'shows/mine (before the rehearsal).yaml' shows/mine.yaml"
)
@click.argument("old", type=click.Path(path_type=Path))
@click.argument("new", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of text.")
@allow_option
def compare(old: Path, new: Path, as_json: bool) -> None:
    """Print what changed from the show file OLD to the show file NEW, eight by eight.

    Moves that are put, gone, moved, stretched or danced differently, by whom; spots and walks, by how much; then cast, props,
    place, fire, crew and the count; last in which comments and spellings the files differ. Nothing that differs is left out.
    Findings are compared too where `sequencer check` has looked at both files as they stand. A show that cannot be danced as it
    is written is compared entry by entry.
    """
    import shutil

    from sequencer import tasks

    with ProgressLine() as progress:
        comparison = tasks.compare_shows(old, new, progress=progress)
    width = max(60, min(shutil.get_terminal_size((100, 24)).columns, 140))
    say(tasks.comparison_words(comparison, as_json=as_json, width=width))
