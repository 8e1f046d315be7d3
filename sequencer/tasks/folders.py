"""Analyse a folder of tracks at once, on all cores or on a cluster."""

from contextlib import AbstractContextManager, nullcontext
from pathlib import Path

from sequencer.errors import InputError, Place
from sequencer.files import AnyPath
from sequencer.progress import Progress
from sequencer.tasks.dancing import connected
from sequencer.timing.song import Song

_Results = tuple[tuple[Path, Song | InputError], ...]


def hear_folder(
    folder: AnyPath,
    *,
    again: bool = False,
    jobs: int = -1,
    cluster: str | None = None,
    progress: Progress | None = None,
) -> _Results:
    """Analyse every audio file of a folder, in order of name; subfolders are ignored.

    Parameters
    ----------
    folder : path
    again : bool
        Analyse again and ignore cached results.
    jobs : int
        Worker processes; -1 for one per core.
    cluster : str, optional
        Address of a Dask scheduler whose workers see the same folder.
    progress : callable, optional

    Returns
    -------
    results : tuple of (Path, Song or InputError)
        A file that cannot be used comes with the error; the others are analysed all the same.

    Raises
    ------
    InputError
        If the folder holds no audio file, or the cluster does not answer.
    """
    from sequencer.listening.hearing import heard_tracks, tracks_in

    paths = tracks_in(Path(folder))
    if not paths:
        raise InputError(
            "no-tracks",
            Place(str(folder)),
            "there is no audio file in this folder",
            "name a folder of wav, flac, ogg or mp3 files",
        )
    say = progress or (lambda _subject, _share: None)
    say(f"analysing {len(paths)} tracks", 0.0)
    found = []
    with connected(cluster), _backend(cluster):
        results = heard_tracks(paths, jobs=jobs, use_cache=not again)
        for number, pair in enumerate(results, start=1):
            found.append(pair)
            say(f"analysed {number} of {len(paths)}: {pair[0].name}", number / len(paths))
    return tuple(found)


def _backend(cluster: str | None) -> AbstractContextManager[object]:
    """The backend that does joblib's work; the cluster must be connected first."""
    import joblib

    return nullcontext() if cluster is None else joblib.parallel_config(backend="dask")


def chart_folder(results: _Results, charts: AnyPath) -> None:
    """Write a chart of each track into a folder, named after the track.

    Raises
    ------
    InputError
        If the folder cannot be written.
    """
    from sequencer.outputs.figures import write_figure
    from sequencer.outputs.song.song_chart import song_chart

    for path, song in results:
        if isinstance(song, Song):
            write_figure(song_chart(song), Path(charts) / f"{path.name}.png")


def folder_text(folder: AnyPath, results: _Results, *, as_json: bool) -> str:
    """The analysed songs, as JSON or as a table for people."""
    from sequencer.outputs.song import songs_table

    if as_json:
        return songs_table.songs_json(Path(folder), results)
    return songs_table.songs_text(results)
