"""`sequencer unpack`: a show that somebody has mailed, in a new folder."""

from pathlib import Path

import click

from sequencer.cli.printing import say
from sequencer.shell_words import shell_path


@click.command(epilog="Example: sequencer unpack lantern_round.zip --out shows/from-wren")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--out", type=click.Path(path_type=Path), metavar="FOLDER",
              help="The new folder (default: named as FILE, here). If it is there already, nothing is written.")  # fmt: skip
def unpack(file: Path, out: Path | None) -> None:
    """Unpack FILE, which `sequencer pack` wrote, into a new folder.

    Every file in it is held against the hash that it was packed with. Nothing is overwritten, and what is unpacked reads no
    file outside its new folder.
    """
    from sequencer import tasks

    unpacked = tasks.unpack_show(file, out)
    folder, manifest = unpacked.path.parent, unpacked.manifest
    say(f"unpacked into {folder}:")
    for each in manifest.files:
        say(f"  {each.file}")
    check = f"sequencer check {shell_path(unpacked.path)}"
    if manifest.holds_song:
        say(f"next: {check}")
    else:
        song = manifest.song
        say(
            f"the song is not in it: put the same recording there as {folder / song.file}, then: {check}"
        )
        say(f"its sha256 is {song.sha256}")
