"""Certified clearance of a whole show: between performers, and from performers to everything that stands still.

Distances are proven to 5 mm for the plan as drawn, with a margin for each block's hand work. People drift:
`checks.distances.drift` estimates how likely each conflict is as danced.
"""

from collections.abc import Callable, Sequence

from sequencer.checks.check import Check
from sequencer.checks.distances.boundaries import boundaries
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.distances.spacing import spacing
from sequencer.checks.outcome import Outcome
from sequencer.geometry.regions import Venue
from sequencer.motion.performers.dancer import Dancer
from sequencer.staging.in_flight.flown_show import is_flown
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged
from sequencer.timing.tempo import TempoMap

_NOT_CHECKED = (
    "Sparks and dripping fuel were not checked.",
    "Elbows count wherever they can be; costumes and hair were not checked.",
)


def distances(show: Staged) -> Outcome:
    """All distances of a show, and the findings on them.

    Raises
    ------
    InputError
        If the show's own file of rules cannot be used.
    """
    start, end = show.span
    return _together(
        show.dancers,
        lambda: spacing(show.dancers, show.tempo, required_distances(show), start=start, end=end),
        lambda: boundaries_of(show),
    )


@once_per_show
def boundaries_of(show: Staged) -> Outcome:
    """Distances of a show's performers from everything that stands still, and the findings on them.

    Raises
    ------
    InputError
        If the show's own file of rules cannot be used.
    """
    start, end = show.span
    return boundaries(
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
    """All distances of a show between two beats, and the findings on them.

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
    return _together(
        dancers,
        lambda: spacing(dancers, tempo, requirements, start=start, end=end),
        lambda: boundaries(dancers, tempo, venue, requirements, start=start, end=end),
    )


def _together(
    dancers: Sequence[Dancer], apart: Callable[[], Outcome], still: Callable[[], Outcome]
) -> Outcome:
    """Distances of performers from each other and from what stands still, with what they cover."""
    names = [dancer.name for dancer in dancers]
    if len(set(names)) < len(names):
        raise ValueError(f"names of performers must differ, got {names}")
    if not dancers:
        return Outcome(not_checked=("No performers: no distances were checked.",))
    return apart() + still() + Outcome(not_checked=(_scope(dancers), *_NOT_CHECKED))


def _scope(dancers: Sequence[Dancer]) -> str:
    """What the distances cover."""
    most = max(
        (
            each.size
            for dancer in dancers
            for blocks in dancer.deviation.values()
            for each in blocks
        ),
        default=0.0,
    )
    if any(is_flown(dancer) for dancer in dancers):
        stands = f"; where that cannot be, for the plan as drawn and its hand work (up to {100 * most:.0f} cm a hand)"
        return (
            f"Distances hold for the motion as flown{stands if most else ''}; "
            "drift of people and tempo is left out."
        )
    work = f" and each block's hand work (up to {100 * most:.0f} cm a hand)" if most else ""
    flies = any(prop.flexible for dancer in dancers for prop in dancer.props.values())
    unflown = " Whether poi and rope darts can be flown like this was not looked at: `sequencer check` without --drawn does."
    return (
        f"Distances hold for the plan as drawn{work}; drift of people and tempo is left out."
        f"{unflown if flies else ''}"
    )


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
