"""`sequencer listen`: what is heard in a song."""

from pathlib import Path

import click

from sequencer.cli.progress import Progress


@click.command(epilog="Example: sequencer listen my-song.mp3 --chart exports/my-song.png")
@click.argument("track", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of a summary.")
@click.option(
    "--chart", type=click.Path(path_type=Path), help="Draw what was heard into this PNG file."
)
@click.option("--clicks", type=click.Path(path_type=Path),
              help="Write the track with a click on every beat into this WAV file.")  # fmt: skip
@click.option("--tap", "taps", type=click.Path(path_type=Path),
              help="Beats of your own: seconds, one a line, a CSV table, or a MIDI file.")  # fmt: skip
@click.option("--again", is_flag=True, help="Hear it anew, even if it was heard before.")
def listen(
    track: Path,
    as_json: bool,
    chart: Path | None,
    clicks: Path | None,
    taps: Path | None,
    again: bool,
) -> None:
    """Hear beats, bars, tempo, sections and energy in TRACK (wav, flac, ogg, mp3)."""
    from sequencer import tasks

    with Progress() as progress:
        song = tasks.hear_song(track, taps=taps, again=again, progress=progress)
        if chart is not None:
            tasks.draw_song(song, chart)
        if clicks is not None:
            tasks.click_song(song, track, clicks)
    click.echo(tasks.song_text(song, track, as_json=as_json))
