"""`sequencer new`: write a show file to start from."""

from pathlib import Path

import click

from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine
from sequencer.shell_words import shell_path

_EXAMPLE = "sequencer new shows/mine.yaml --track my-song.mp3"


@click.command(epilog=f"Example: {_EXAMPLE}")
@click.argument("show", type=click.Path(path_type=Path), required=False)
@click.option("--track", type=click.Path(path_type=Path), help="The song.")
@click.option("--title", help="Title of the show (default: from the file name).")
@click.option("--force", is_flag=True, help="Overwrite SHOW and its schema if they exist.")
@click.option("--draft/--no-draft", default=True, show_default=True,
              help="Draft a routine of level 2, or lay one easy pattern into each section.")  # fmt: skip
@click.option(
    "--schema",
    is_flag=True,
    help="Print the JSON Schema of a show file, for editors; with SHOW, write that show's with its names beside it.",
)
@click.pass_context
def new(
    ctx: click.Context,
    show: Path | None,
    track: Path | None,
    title: str | None,
    force: bool,
    draft: bool,
    schema: bool,
) -> None:
    """Write a commented show file SHOW, divided into the sections of the track, with a routine to start from.

    If SHOW is a song, its show is written beside it, under the song's name.
    """
    from sequencer import tasks

    if schema and show is not None:
        say(str(tasks.write_schema(show)))
        return
    if schema:
        say(tasks.schema_text())
        return
    if show is not None and track is None:
        show, track = _beside_its_song(show)
    if show is None or track is None:
        missing = "SHOW" if show is None else "--track"
        raise click.UsageError(f"{missing} is missing; for example: {_EXAMPLE}", ctx)
    with ProgressLine() as progress:
        said = tasks.start_show(
            show, track, title=title, force=force, draft=draft, progress=progress
        )
    if said:
        say(said, err=True)
    schema_file = show.with_suffix(".schema.json").name
    say(
        f"wrote {show}, and {schema_file} beside it for editors; next: sequencer check {shell_path(show)}"
    )


def _beside_its_song(given: Path) -> tuple[Path, Path | None]:
    """The show that is meant and its song, where nothing but a path is given."""
    from sequencer.desk.pages.what_to_open import what_to_open
    from sequencer.listening.signal.audio import is_audio_name

    return (what_to_open(given)[0], given) if is_audio_name(given) else (given, None)
