"""Where the beat of the song is uncertain while someone dances: a person has to listen there."""

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.staging.staged import Staged
from sequencer.timing.position import clock_text

_MEND = (
    "play it with clicks (`sequencer listen --clicks`), count along, and enter the beats by "
    "hand where they are wrong"
)


def listen_again(show: Staged) -> Outcome:
    """Bars and spans with an uncertain beat while someone dances; beats entered by hand are trusted."""
    song = show.song
    ends = (*song.downbeats[1:], max(song.beats[-1:], default=song.duration))
    spans = [
        (song.downbeats[a - 1], ends[b - 1], f"bar {a}" if a == b else f"bars {a}–{b}")
        for a, b in song.unsure_bars()
    ]
    found = [
        Finding(
            code="listen-here",
            severity="note",
            who=(),
            start=start,
            end=end,
            position=show.position(float(show.tempo.beats_from_seconds(start))),
            message=f"the beat is uncertain in {bars}, where someone is dancing",
            remedies=(_MEND,),
            source="this track, as analysed",
        )
        for start, end, bars in spans
        if _danced(show, start, end)
    ]
    found += [
        Finding(
            code="no-steady-beat",
            severity="warn",
            who=(),
            start=start,
            end=end,
            position=show.position(float(show.tempo.beats_from_seconds(start))),
            message=(
                f"no steady beat was found from {clock_text(start)} to {clock_text(end)}, where "
                "someone is dancing: the beats there are evenly spaced guesses"
            ),
            remedies=(_MEND,),
            source="this track, as analysed",
        )
        for start, end in song.unsteady
        if _danced(show, start, end)
    ]
    return Outcome(findings=tuple(found))


def _danced(show: Staged, start: float, end: float) -> bool:
    return any(
        show.seconds(block.start) < end - 1e-6 and show.seconds(block.end) > start + 1e-6
        for block in show.blocks
    )


CHECK = Check(
    name="listen-again",
    run=listen_again,
    codes={"listen-here": ("note",), "no-steady-beat": ("warn",)},
    depends_on=("trajectories",),
    progress="checking fire and crew",
)
