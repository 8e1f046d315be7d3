"""Run cues: every moment at which sound or light does, or expects, something, in the order of the track."""

from dataclasses import dataclass

from sequencer.outputs.sheets.page.wording import listed, number_spans, plural
from sequencer.outputs.words.entrance_words import comings_words, only_entrances
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.safety_plan import safety_plan
from sequencer.staging.staged import Staged, Standing

_ORDER = {"start": -1, "song": 0, "out": 1, "lit": 2, "stage": 3, "end": 4}


@dataclass(frozen=True, slots=True, kw_only=True)
class RunCue:
    """One moment at which sound or light does, or expects, something."""

    seconds: float
    position: str  # bar.beat; empty if there is no beat
    what: str
    who: str
    kind: str  # start, song, stage, lit, out, end


def run_cues(staged: Staged) -> tuple[RunCue, ...]:
    """Track, sections, formations, entrances and exits, and flames in the order of the track.

    Parameters
    ----------
    staged : Staged
    """
    cues = [RunCue(seconds=0.0, position="", what="track starts", who="sound", kind="start")]
    for section, name in zip(staged.song.sections, staged.song.section_names(), strict=True):
        beat = float(staged.tempo.beats_from_seconds(section.start))
        position = staged.position(beat) if section.start > 0 else ""
        cues.append(
            RunCue(
                seconds=section.start, position=position, what=f"section: {name}", who="light",
                kind="song",
            )
        )  # fmt: skip
    for standing in staged.standings:
        cues += _floor(staged, standing)
    cues += _flames(staged)
    cues.append(
        RunCue(
            seconds=staged.song.duration, position="", what="track ends", who="sound", kind="end"
        )
    )
    return tuple(sorted(cues, key=lambda cue: (round(cue.seconds, 4), _ORDER[cue.kind], cue.what)))


def _floor(staged: Staged, standing: Standing) -> list[RunCue]:
    """A walk to a formation, and who comes on or goes off, once for all who do so at once."""
    found = []
    if standing.start > standing.walk and not only_entrances(standing):
        what = f"walk to {standing.formation}, {plural(standing.start - standing.walk, 'beat')}"
        found.append(_at(staged, standing.walk, what))
    spans = dict.fromkeys((each.start, each.end) for each in standing.comings)
    for start, end in spans:
        own = [each for each in standing.comings if (each.start, each.end) == (start, end)]
        found.append(_at(staged, start, f"{comings_words(own)}, {plural(end - start, 'beat')}"))
    return found


def _flames(staged: Staged) -> list[RunCue]:
    """Lighting, all alight, putting out and all out, each once for everybody to whom it happens at that moment."""
    moments: dict[tuple[str, float], list[PlannedBurn]] = {}
    for burn in safety_plan(staged).burns:
        for what, seconds in (
            ("FLAMES ON", burn.alight_s),
            ("burn begins", burn.start_s),
            ("putting out starts", burn.end_s),
            ("FLAMES OUT", burn.out_s),
        ):
            if seconds >= 0.0:  # what is before the track stands in the standing orders
                moments.setdefault((what, round(seconds, 3)), []).append(burn)
    names = staged.show.names
    found = []
    for (what, seconds), burns in moments.items():
        who = sorted({burn.who for burn in burns}, key=names.index)
        numbers = number_spans(staged.number_of(name) for name in who)
        listing = listed(who, most=3) if len(who) < len(names) else "all"
        beat = {"burn begins": burns[0].start, "putting out starts": burns[0].end}.get(what)
        found.append(
            RunCue(
                seconds=seconds,
                position="" if beat is None else staged.position(beat),
                what=f"{what}: {listing} ({numbers})",
                who="both",
                kind="lit" if what in {"FLAMES ON", "burn begins"} else "out",
            )
        )
    return found


def _at(staged: Staged, beat: float, what: str) -> RunCue:
    return RunCue(
        seconds=max(staged.seconds(beat), 0.0), position=staged.position(beat), what=what,
        who="light", kind="stage",
    )  # fmt: skip
