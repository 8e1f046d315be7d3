"""`sequencer rehearse`: the page that dances the show, and the count track."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say
from sequencer.cli.progress_line import ProgressLine
from sequencer.shell_words import shell_path

_EXPORTS = ("page", "counts", "midi", "captions", "timetable")
_RATES = (
    "24",
    "25",
    "29.97df",
    "30",
)  # as in `sequencer.timing.timecode`, which is not needed for --help


@click.command(
    epilog="Example: sequencer rehearse shows/lantern_round.yaml --speed 100 --speed 70 --counts spoken"
)
@click.argument("show", type=click.Path(path_type=Path))
@click.option("--out", type=click.Path(path_type=Path), default=Path("exports"), show_default=True,
              help="Output folder; each show gets its own subfolder.")  # fmt: skip
@click.option("--only", "parts", multiple=True, type=click.Choice((*_EXPORTS, "timecode")),
              help="Write only this part; can be repeated (default: everything but time code).")  # fmt: skip
@click.option("--audio", type=click.Choice(["embed", "link", "none"]), default="embed",
              show_default=True, help="Embed the song in the page, link to it, or leave it out.")  # fmt: skip
@click.option("--speed", "speeds", multiple=True, type=click.FloatRange(25, 200), default=(100.0,),
              help="Speed of the count track in percent, at the same pitch; can be repeated.")  # fmt: skip
@click.option("--song", "song", type=click.FloatRange(-80, 0), default=-9.0, show_default=True,
              help="Level of the song in the count track, in dB.")  # fmt: skip
@click.option("--click-only", is_flag=True, help="Leave the song out of the count track.")
@click.option("--counts", type=click.Choice(["pitched", "spoken", "none"]), default="pitched",
              show_default=True, help="How the four beats before a change are counted; spoken: five, six, seven, eight.")  # fmt: skip
@click.option("--no-calls", is_flag=True, help="Leave out the three-note calls before sections.")
@click.option(
    "--split", is_flag=True, help="Put the song on the left channel and the counts on the right."
)
@click.option("--drawn", is_flag=True,
              help="Dance poi and rope darts as drawn, not as they can be flown: quicker the first time.")  # fmt: skip
@click.option("--from", "start", metavar="MOMENT",
              help="Only what is danced from this moment on: bar.beat, m:ss or a section, such as 'refrain 2'.")  # fmt: skip
@click.option("--until", metavar="MOMENT", help="Only what is danced before this moment.")
@click.option("--for", "who", multiple=True, metavar="NAME",
              help="Count only this performer's changes; can be repeated.")  # fmt: skip
@click.option(
    "--small",
    is_flag=True,
    help="Write count tracks as MP3, small enough for phones, instead of WAV.",
)
@click.option("--each", is_flag=True,
              help="Write a count track for every performer, of their changes (with --for: for each of those).")  # fmt: skip
@click.option("--timecode", "timecodes", multiple=True, type=click.Choice(_RATES),
              help="Write time code at this frame rate as well (part timecode; there 25 unless you say); can be repeated.")  # fmt: skip
@click.option("--code-from", metavar="CODE", default="00:00:00:00", show_default=True,
              help="Time code at which the track begins, such as 01:00:00:00.")  # fmt: skip
@click.pass_context
@allow_option
def rehearse(
    ctx: click.Context,
    show: Path,
    out: Path,
    parts: tuple[str, ...],
    audio: str,
    speeds: tuple[float, ...],
    song: float,
    click_only: bool,
    counts: str,
    no_calls: bool,
    split: bool,
    who: tuple[str, ...],
    drawn: bool,
    start: str | None,
    until: str | None,
    small: bool,
    each: bool,
    timecodes: tuple[str, ...],
    code_from: str,
) -> None:
    """Write the rehearsal page of SHOW (one HTML file that dances it) and its count track (WAV).

    Also written: cues for lighting and sound (MIDI), captions (WebVTT) and the timetable (CSV, JSON); with --timecode,
    linear time code as a sound (WAV) and MIDI time code, for desks that follow the track.
    The page needs a check: a show with findings is written too, with the findings on the page, and the
    command exits with status 1 if something must be mended before the show is danced. Without the page
    nothing is checked. Poi and rope darts are danced as they can be flown, as drawn on demand. With --from or --until
    the page repeats that part, and only what is danced in it is checked.
    """
    from sequencer import tasks

    part = None
    if start is not None or until is not None:
        part = tasks.PartOfShow(start=start, until=until)

    with ProgressLine() as progress:
        report, written = tasks.write_rehearsal(
            show,
            out,
            parts=(
                *(parts or _EXPORTS),
                *(["timecode"] if timecodes and "timecode" not in parts else []),
            ),
            small=small,
            each=each,
            timecodes=timecodes or ("25",),
            code_from=code_from,
            audio=audio,
            speeds=tuple(speed / 100 for speed in speeds),
            song=None if click_only else song,
            counts=counts,
            calls=not no_calls,
            split=split,
            who=who,
            flown=not drawn,
            part=part,
            progress=progress,
        )
    for path in written:
        say(str(path))
    ready = report is None or report.ok
    if report is None:
        say(
            f"not checked here: `sequencer check {shell_path(show)}` says whether it can be danced",
            err=True,
        )
    if not ready:
        say(f"do not dance this yet: run `sequencer check {shell_path(show)}` to see why", err=True)
    ctx.exit(0 if ready else 1)
