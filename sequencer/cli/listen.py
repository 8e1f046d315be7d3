"""`sequencer listen`: beats, sections and energy of a song, or of a folder of songs."""

from pathlib import Path

import click

from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine
from sequencer.given_files import is_given_folder


@click.command(epilog="Example: sequencer listen my-song.mp3 --chart exports/my-song.png")
@click.argument("track", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of a summary.")
@click.option("--chart", type=click.Path(path_type=Path),
              help="Draw a chart into this file (.png, .svg or .pdf); for a folder of tracks, into this folder.")  # fmt: skip
@click.option("--clicks", type=click.Path(path_type=Path),
              help="Write the track with a click on every beat to this WAV file.")  # fmt: skip
@click.option("--tap", "taps", type=click.Path(path_type=Path),
              help="Use your own beats: a text file with one time in seconds per line, a CSV table or a MIDI file.")  # fmt: skip
@click.option("--again", is_flag=True, help="Analyse again and ignore the cached result.")
@click.option("--jobs", type=click.IntRange(-1), default=-1, metavar="N",
              help="Number of tracks of a folder to analyse in parallel (default: all cores).")  # fmt: skip
@click.option("--cluster", metavar="ADDRESS",
              help="Analyse a folder on the Dask cluster with this scheduler.")  # fmt: skip
@click.pass_context
def listen(
    ctx: click.Context,
    track: Path,
    as_json: bool,
    chart: Path | None,
    clicks: Path | None,
    taps: Path | None,
    again: bool,
    jobs: int,
    cluster: str | None,
) -> None:
    """Find the beats, bars, tempo, sections and energy of TRACK (wav, flac, ogg, mp3).

    TRACK may be a folder: every track in it is analysed, and listed in one table.
    """
    if jobs == 0:
        raise click.UsageError("--jobs must be 1 or more; leave it out to use all cores", ctx)
    if is_given_folder(track):
        if clicks is not None or taps is not None:
            raise click.UsageError("--clicks and --tap work on a single track; name the file", ctx)
        status = _listen_to_all(track, as_json, chart, again=again, jobs=jobs, cluster=cluster)
        ctx.exit(status)
    if cluster is not None:
        raise click.UsageError("--cluster only works on a folder of tracks", ctx)
    from sequencer import tasks

    with ProgressLine() as progress:
        song = tasks.hear_song(track, taps=taps, again=again, progress=progress)
        if chart is not None:
            tasks.draw_song(song, chart)
        if clicks is not None:
            tasks.click_song(song, track, clicks)
    say(tasks.song_text(song, track, as_json=as_json))


def _listen_to_all(
    folder: Path, as_json: bool, charts: Path | None, *, again: bool, jobs: int, cluster: str | None
) -> int:
    """Exit status: 0 if every track was analysed, 1 if some files could not be used, 2 if none could."""
    from sequencer import tasks
    from sequencer.errors import InputError

    with ProgressLine() as progress:
        results = tasks.hear_folder(
            folder, again=again, jobs=jobs, cluster=cluster, progress=progress
        )
        if charts is not None:
            tasks.chart_folder(results, charts)
    unusable = [error for _, error in results if isinstance(error, InputError)]
    for error in unusable:
        say(f"error: {error}", err=True)
    say(tasks.folder_text(folder, results, as_json=as_json))
    return 0 if not unusable else 1 if len(unusable) < len(results) else 2
