"""What the commands on songs do, and the song of a show: heard, or known from before."""

from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.digests import sha256_of_file
from sequencer.errors import InputError, Place
from sequencer.files import AnyPath
from sequencer.given_files import is_there
from sequencer.progress import Progress

if TYPE_CHECKING:
    from sequencer.show.reading import ReadShow
    from sequencer.timing.song import Song


def hear_song(
    track: AnyPath,
    *,
    taps: AnyPath | None = None,
    again: bool = False,
    progress: Progress | None = None,
) -> "Song":
    """Beats, bars, sections and energy of a track; from the cache if it was analysed before.

    Parameters
    ----------
    track : path
    taps : path, optional
        The user's own beats, which replace the detected ones.
    again : bool
        Analyse again and ignore the cached result.
    progress : callable, optional

    Raises
    ------
    InputError
        If the file cannot be used as a song, or the given beats do not fit it.
    """
    from sequencer.listening.hearing import hear

    song = hear(Path(track), progress=progress, use_cache=not again)
    if taps is None:
        return song
    from sequencer.timing.corrections import corrected
    from sequencer.timing.taps import given_count

    try:
        return corrected(song, given_count(Path(taps)))
    except ValueError as error:
        raise InputError(
            "taps-do-not-fit", Place(str(taps)), str(error), "tap along to this exact track"
        ) from error


def click_song(song: "Song", track: AnyPath, path: AnyPath) -> None:
    """Write the track with a click on every beat, as WAV.

    Raises
    ------
    InputError
        If the track cannot be read, or the folder cannot be written.
    """
    from sequencer.outputs.sound.clicked import write_clicked

    write_clicked(song, Path(track), Path(path))


def song_text(song: "Song", track: AnyPath, *, as_json: bool) -> str:
    """The analysed song, as JSON or as a summary for people."""
    from sequencer.outputs.song import song_report

    if as_json:
        return song_report.song_json(song, Path(track))
    return song_report.song_summary(song)


def draw_song(song: "Song", chart: AnyPath) -> None:
    """Write the chart of a song, as PNG, SVG or PDF by the file's extension."""
    from sequencer.outputs.figures import write_figure
    from sequencer.outputs.song.song_chart import song_chart

    write_figure(song_chart(song), Path(chart))


def song_of(
    read: "ReadShow",
    *,
    known: "Song | None" = None,
    without_track: bool = False,
    progress: Progress | None = None,
) -> "Song":
    """The analysed track of a show that has been read.

    Parameters
    ----------
    read : ReadShow
    known : Song, optional
        Heard before; taken if it is the show's.
    without_track : bool
        If the track is missing, use the cached analysis with the hash that the show names.
    progress : callable, optional

    Raises
    ------
    InputError
        If the track is not there, cannot be used, or is not the cut that the show was made for.
    """
    if known is not None and _is_its_song(read, known, without_track=without_track):
        song = known
    else:
        song = analysed(read, without_track=without_track, progress=progress)
    refuse_another_cut(read, song.sha256)
    return song


def refuse_another_cut(read: "ReadShow", sha256: str) -> None:
    """Refuse a song that is not the recording whose hash a show names.

    Raises
    ------
    InputError
        If it is another, `another-cut`.
    """
    pinned = read.show.track.sha256
    if pinned is not None and pinned != sha256:
        raise read.fault(
            "another-cut", ("track", "sha256"), "the track is not the cut that the show was made for",
            f"use the old file, or recheck every block and write {sha256}",
        )  # fmt: skip


def track_of(read: "ReadShow") -> Path:
    """Where the track of a show lies."""
    return Path(read.document.file).parent / read.show.track.file


def analysed(read: "ReadShow", *, without_track: bool, progress: Progress | None) -> "Song":
    """The analysed track of a show, whichever cut it is."""
    track = track_of(read)
    if is_there(track):
        return hear_song(track, progress=progress)
    if without_track and (known := _cached_song(read.show.track.sha256, track)) is not None:
        return known
    raise read.fault(
        "no-track", ("track", "file"), f"cannot find the track {read.show.track.file!r} next to the show file",
        "write its path relative to the show file",
    )  # fmt: skip


def _is_its_song(read: "ReadShow", song: "Song", *, without_track: bool) -> bool:
    track = track_of(read)
    try:
        return song.track == track.name and song.sha256 == sha256_of_file(track)
    except FileNotFoundError:
        return without_track and song.sha256 == read.show.track.sha256
    except OSError:
        return False


def _cached_song(sha256: str | None, track: Path) -> "Song | None":
    from sequencer.listening import cache

    return None if sha256 is None else cache.load(sha256, track=track.name)
