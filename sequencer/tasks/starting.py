"""What `new` does, and a page that begins a show: a show file to start from."""

import datetime as dt
import os
from collections.abc import Sequence
from pathlib import Path, PurePath
from typing import TYPE_CHECKING

from sequencer.errors import InputError, Place
from sequencer.files import AnyPath, write_text
from sequencer.given_files import is_there
from sequencer.progress import Progress, within
from sequencer.shell_words import shell_path
from sequencer.tasks import schema_files, songs

if TYPE_CHECKING:
    from sequencer.show.starter import StarterDancer
    from sequencer.timing.song import Song

_HEARD = 0.5  # of the progress


def start_show(
    show: AnyPath,
    track: AnyPath,
    *,
    title: str | None = None,
    force: bool = False,
    draft: bool = True,
    progress: Progress | None = None,
) -> str:
    """Write a show file to start from.

    Parameters
    ----------
    show, track : path
    title : str, optional
        Default: from the file's name.
    force : bool
        Whether existing files are overwritten.
    draft : bool
        Whether a routine of level 2 is drafted into it; otherwise it has one easy pattern for each section.
    progress : callable, optional

    Returns
    -------
    said : str
        What the draft leaves out, leaves open or cannot fly, line by line, as `draft` says it; if none could be made, why; else empty.

    Raises
    ------
    InputError
        If the file or its schema exists already, has the name of a song, or the track has no steady beat.
    KeyboardInterrupt
        If drafting is interrupted; the file is written all the same, with the best routine so far or with easy patterns.
    """
    show, track = Path(show), Path(track)
    _refuse_song(show, track)
    if is_there(show) and not force:
        raise InputError(
            "file-exists",
            Place(str(show)),
            "this file already exists",
            "choose another name, or add --force",
        )
    for named in (show, track):
        _refuse_bytes(named)
    schema = show.with_suffix(".schema.json")
    if os.path.lexists(schema) and not force:
        raise InputError(
            "file-exists",
            Place(str(schema)),
            "this file already exists, and the new show’s schema for editors would go there",
            "choose another name for the show, move this file away, or add --force",
        )
    song = songs.hear_song(track, progress=within(progress, 0.0, _HEARD if draft else 1.0))
    text = _begun(song, show, track, title=title, blocks=True)
    said = ""
    if draft:
        from sequencer.planning.drafting.draft_search import drafted_show
        from sequencer.planning.drafting.why import shortfalls

        try:
            bare = _begun(song, show, track, title=title, blocks=False)
            drafted = drafted_show(bare, str(show), song, progress=within(progress, _HEARD, 1.0))
            text, said = drafted.text, "\n".join(shortfalls(drafted))
        except InputError as error:
            said = (
                f"no routine could be drafted: {error.what}; {error.mend}; "
                "one easy pattern is laid into each section instead"
            )
        except KeyboardInterrupt as stop:
            best = getattr(stop, "draft", None)
            _write(show, text if best is None else best.text)
            schema_files.write_schema(show)
            holds = (
                "an easy pattern in each section"
                if best is None
                else "the best routine so far, not checked"
            )
            raise KeyboardInterrupt(f"interrupted; {show} is written, with {holds}") from None
    _write(show, text)
    schema_files.write_schema(show)
    return said


def _refuse_song(show: Path, track: Path) -> None:
    """A show is never written over a song, under whichever name or link it is given."""
    from sequencer.listening.signal.audio import is_audio_name

    try:
        into = Path(os.path.realpath(show))
        same = show.samefile(track)
    except (OSError, ValueError):  # one of them is not there, or cannot be: that is told below
        same = False
    if same or is_audio_name(show) or is_audio_name(into):
        raise InputError(
            "show-is-song", Place(str(show)), "this is a song, where the show is to be written",
            f"name the show first: sequencer new {shell_path(show.with_suffix('.yaml'))} --track {shell_path(track)}",
        )  # fmt: skip


def _refuse_bytes(path: Path) -> None:
    """A show names its song and its schema, and is a text."""
    if any("\ud800" <= letter <= "\udfff" for letter in path.name):
        raise InputError(
            "name-not-text", Place(str(path)), "its name has bytes that are no text (UTF-8), so that no show can name it",
            "rename it",
        )  # fmt: skip


def _write(show: Path, text: str) -> None:
    """Write the show; where its name is a link, into the file that the link leads to."""
    write_text(Path(os.path.realpath(show)), _for_editors(text, show))


def _for_editors(text: str, show: Path) -> str:
    """The text with the line by which an editor finds the schema beside the show."""
    return f"# yaml-language-server: $schema={show.with_suffix('.schema.json').name}\n{text}"


def begun_show(
    show: AnyPath,
    track: AnyPath,
    *,
    title: str | None = None,
    cast: "Sequence[StarterDancer]",
    floor: tuple[str, str],
    progress: Progress | None = None,
) -> str:
    """The text of a show in which nothing is danced yet; nothing is written.

    Parameters
    ----------
    show, track : path
        Where the show file is going to be, and its song.
    title : str, optional
        Default: from the file's name.
    cast : sequence of StarterDancer
    floor : (str, str)
        Width and depth of the stage, as the file says them.
    progress : callable, optional

    Raises
    ------
    InputError
        If the track cannot be heard or has no steady beat, or what is said of somebody cannot be so.
    """
    from sequencer.show.reading import show_from_document
    from sequencer.show.text.document import parse_document

    show, track = Path(show), Path(track)
    song = songs.hear_song(track, progress=progress)
    text = _begun(song, show, track, title=title, blocks=False, cast=cast, floor=floor)
    show_from_document(parse_document(text, str(show)))
    return text


def _begun(
    song: "Song",
    show: Path,
    track: Path,
    *,
    title: str | None,
    blocks: bool,
    cast: "Sequence[StarterDancer]" = (),
    floor: tuple[str, str] | None = None,
) -> str:
    from sequencer.show.starter import USUAL_FLOOR, starter_text

    try:
        return starter_text(
            song,
            track=from_folder(track, show.parent),
            title=title or usual_title(show),
            date=dt.datetime.now(tz=dt.UTC).astimezone().date().isoformat(),
            blocks=blocks,
            cast=cast,
            floor=floor or USUAL_FLOOR,
        )
    except ValueError as error:
        raise InputError(
            "no-steady-beat",
            Place(str(track)),
            str(error),
            "use a track with a beat, or supply your own beats",
        ) from error


def from_folder(track: Path, folder: Path) -> str:
    """Path of the track as written in a show file: relative to its folder, with forward slashes."""
    try:
        relative = os.path.relpath(track.resolve(), folder.resolve())
    except ValueError:  # another drive on Windows
        return track.resolve().as_posix()
    return PurePath(relative).as_posix()


def usual_title(show: Path) -> str:
    """A title made of the name of a show file."""
    return show.stem.replace("_", " ").replace("-", " ").strip().capitalize() or "Untitled"
