"""Certified clearance of a whole show: performers from each other and from all that stands still.

Distances are proven to 5 mm for the plan as drawn, with the leeway of each block's hand work. People drift:
`checks.distances.drift` says how likely each conflict is as danced.
"""

from collections.abc import Sequence

from sequencer.checks.check import Check
from sequencer.checks.distances.boundaries import boundaries
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.distances.spacing import spacing
from sequencer.checks.outcome import Outcome
from sequencer.geometry.regions import Venue
from sequencer.motion.performers.dancer import Dancer
from sequencer.staging.staged import Staged
from sequencer.timing.tempo import TempoMap

_NOT_CHECKED = (
    "Heads that come loose, sparks and dripping fuel were not looked at.",
    "Elbows are bounded by all they can reach; costumes and hair were not looked at.",
)


def distances(show: Staged) -> Outcome:
    """All distances of a show, and what stands against it.

    Raises
    ------
    InputError
        If the show's own file of rules cannot be used.
    """
    start, end = show.span
    return clearance(
        show.dancers, show.tempo, show.venue, required_distances(show), start=start, end=end
    )


def clearance(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    venue: Venue,
    requirements: Requirements,
    *,
    start: float,
    end: float,
) -> Outcome:
    """All distances of a show between two beats, and what stands against it.

    Parameters
    ----------
    dancers : sequence of Dancer
        With names that differ.
    tempo : TempoMap
    venue : Venue
    requirements : Requirements
    start, end : float
        Beats between which the show runs.

    Returns
    -------
    outcome : Outcome

    Raises
    ------
    ValueError
        If two names are equal, the span is empty, or a bound is not finite.
    """
    names = [dancer.name for dancer in dancers]
    if len(set(names)) < len(names):
        raise ValueError(f"names of performers must differ, got {names}")
    if not dancers:
        return Outcome(not_checked=("No performer: no distance was looked at.",))
    return (
        spacing(dancers, tempo, requirements, start=start, end=end)
        + boundaries(dancers, tempo, venue, requirements, start=start, end=end)
        + Outcome(not_checked=(_held(dancers), *_NOT_CHECKED))
    )


def _held(dancers: Sequence[Dancer]) -> str:
    """What the distances hold for."""
    most = max(
        (each.size for dancer in dancers for own in dancer.deviation.values() for each in own),
        default=0.0,
    )
    work = f" and each block's hand work (up to {100 * most:.0f} cm a hand)" if most else ""
    return f"Distances hold for the plan as drawn{work}; drift of people and tempo is not in them."


CHECK = Check(
    name="distances",
    run=distances,
    codes={
        "audience-on-stage": ("stop",),
        "audience-too-close": ("stop",),
        "ceiling-too-low": ("stop",),
        "hits-floor": ("warn",),
        "off-stage": ("stop",),
        "post-in-reach": ("stop",),
        "scenery-too-close": ("stop",),
        "too-close": ("stop",),
    },
    progress="checking distances",
    share=0.4,
)
