"""What `draw` does: write the pictures of a show, one file each."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.errors import InputError, Place
from sequencer.files import AnyPath
from sequencer.progress import Progress
from sequencer.staging.staged import Staged
from sequencer.tasks.shows import stage_show
from sequencer.timing.position import parse_moment

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_PICTURES = ("plan", "formations", "flames", "closest", "song")


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureOptions:
    """Which pictures of a show."""

    pictures: tuple[str, ...] = _PICTURES
    moments: tuple[str, ...] = ()  # of the plans; empty: when two are closest
    start: str | None = None  # of the flames and the closest pair; the song's start
    until: str | None = None
    kind: str = "png"  # or "svg", "pdf"
    turned: bool = False  # formations seen from the performers' side


def draw_show(
    path: AnyPath, out: AnyPath, options: PictureOptions, *, progress: Progress | None = None
) -> tuple[list[Path], list[str]]:
    """Draw a show into its own folder in `out`; returns the files, and what could not be drawn and why.

    Raises
    ------
    InputError
        If the show or its track cannot be used, a moment is not valid, or the folder cannot be written.
    """
    from sequencer.outputs.figures import write_figure

    show = stage_show(path, without_track=True, progress=progress)
    say = progress or (lambda _subject, _share: None)
    span = _span(show, options)
    plans = [(text, _beat(show, text, "--at")) for text in options.moments]
    written: list[Path] = []
    left: list[str] = []

    def keep(name: str, figure: "Figure") -> None:
        target = Path(out) / Path(path).stem / f"{name}.{options.kind}"
        write_figure(figure, target)
        written.append(target)

    for k, picture in enumerate(options.pictures):
        say(f"drawing {picture}", k / len(options.pictures))
        if picture == "plan":
            for text, beat in plans or [_closest_moment(show, span)]:
                keep(f"plan-{_file_part(text)}", _plan(show, beat))
        elif picture == "formations":
            keep(picture, _formations(show, turned=options.turned))
        elif picture == "closest" and len(show.dancers) < 2:
            left.append("closest: a solo has no closest pair")
        else:
            keep(picture, _DRAWN[picture](show, span))
    return written, left


def _plan(show: Staged, beat: float) -> "Figure":
    from sequencer.outputs.plans.site_marks import site_marks
    from sequencer.outputs.plans.stage_plan import PlanPicture, stage_plan
    from sequencer.timing.position import clock_text

    title = f"{show.show.title}: {show.position(beat)}, {clock_text(show.seconds(beat))}"
    picture = PlanPicture(title=title, required=_required(show), site=site_marks(show))
    return stage_plan(show.dancers, show.venue, beat, picture=picture)


def _formations(show: Staged, *, turned: bool) -> "Figure":
    from sequencer.outputs.plans.formation_strip import FormationTaken, formation_strip

    taken = [
        FormationTaken(name=each.formation, walk=each.walk, start=max(each.start, 0.0))
        for each in show.standings
    ]
    return formation_strip(
        show.dancers, show.venue, show.tempo, taken, title=show.show.title, turned=turned
    )


def _flames(show: Staged, span: tuple[float, float]) -> "Figure":
    from sequencer.outputs.plans.plan_charts import flame_map

    return flame_map(
        show.dancers, show.venue, show.tempo, start=span[0], end=span[1],
        title=f"{show.show.title}: where flames are",
    )  # fmt: skip


def _closest(show: Staged, span: tuple[float, float]) -> "Figure":
    from sequencer.outputs.plans.plan_charts import closest_chart

    return closest_chart(
        show.dancers, show.tempo, start=span[0], end=span[1], required=_required(show),
        title=f"{show.show.title}: the closest two",
    )  # fmt: skip


def _song(show: Staged, _span: tuple[float, float]) -> "Figure":
    from sequencer.outputs.song.song_chart import song_chart

    return song_chart(show.song)


_DRAWN: "dict[str, Callable[[Staged, tuple[float, float]], Figure]]" = {
    "flames": _flames,
    "closest": _closest,
    "song": _song,
}


def _required(show: Staged) -> float:
    from sequencer.checks.distances.rule_distances import required_distances

    return required_distances(show).performers


def _closest_moment(show: Staged, span: tuple[float, float]) -> tuple[str, float]:
    """The beat at which two performers are closest; the start for a solo, or if nobody comes near."""
    from sequencer.motion.clearance.approach import approaches

    beat = max(span[0], 0.0)
    if len(show.dancers) > 1:
        found = approaches(show.dancers, *span, required=_required(show))
        near = min(range(len(found.distance)), key=lambda k: float(found.distance[k]))
        beat = float(found.at[near])
    beat = round(16 * beat) / 16
    return show.position(beat), beat


def _span(show: Staged, options: PictureOptions) -> tuple[float, float]:

    start, end = show.span
    if options.start is not None:
        start = _beat(show, options.start, "--from")
    if options.until is not None:
        end = _beat(show, options.until, "--until")
    if end <= start:
        raise InputError(
            "ends-before-start", Place("--until"), "this is not after the start", "choose a later moment"
        )  # fmt: skip
    return start, end


def _beat(show: Staged, text: str, option: str) -> float:
    """Beat coordinate of a moment given on the command line."""
    from sequencer.staging.entries.moments import beat_of

    try:
        moment = parse_moment(text)
        return beat_of(moment, show.song, show.tempo)
    except ValueError as error:
        raise InputError(
            "no-such-moment", Place(option), str(error),
            "write bar.beat (17.3), m:ss.s of the track (1:02.5) or a section (verse 2)",
        ) from error  # fmt: skip


def _file_part(text: str) -> str:
    """A moment as part of a file name that is valid on every system."""
    swapped = text.strip().translate(str.maketrans(":/\\ ", "m---"))
    return "".join(c for c in swapped if c.isalnum() or c in ".+-_") or "moment"


def picture_names(pictures: Sequence[str]) -> tuple[str, ...]:
    """The requested pictures, each once; all if none is named."""
    return tuple(dict.fromkeys(pictures)) or _PICTURES
