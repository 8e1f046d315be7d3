"""`sequencer pack`: a show and all that it names in one file, to be mailed."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say


@click.command(epilog="Example: sequencer pack shows/lantern_round.yaml --without-song")
@click.argument("show", type=click.Path(path_type=Path))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path("exports"),
    show_default=True,
    help="Output folder; each show gets its own subfolder.",
)
@click.option("--without-song", is_flag=True,
              help="Leave the song out: whoever gets the show needs the same recording, and is told by its hash if it is another.")  # fmt: skip
@allow_option
def pack(show: Path, out: Path, without_song: bool) -> None:
    """Pack SHOW into one file that can be mailed, with its song and every other file that it names.

    It is a plain zip archive: the same show makes the same file, to the byte. SHOW itself stays as it is. `sequencer unpack`
    opens it safely.
    """
    from sequencer import tasks

    packed = tasks.pack_show(show, out, with_song=not without_song)
    files = packed.manifest.files
    size = sum(each.bytes for each in files)
    many = "1 file" if len(files) == 1 else f"{len(files)} files"
    say(f"wrote {packed.path}: {many}, {_size(size)}")
    for each in files:
        say(f"  {each.file}")
    if without_song:
        song = packed.manifest.song
        say(f"without the song: whoever gets it needs {song.file}, this very recording")


def _size(bytes_: int) -> str:
    return f"{bytes_ / 1e6:.1f} MB" if bytes_ >= 100_000 else f"{max(1, round(bytes_ / 1e3))} kB"
