"""Flame height against what the show states, and radiant heat at the audience and at the crew's posts.

Low radiant heat does not make a distance safe; the distance of the rules applies as well. A spotter is dressed for it and
can step back, so a post is warned of where bystanders would be protected, and stopped where bare skin bears it for 15 s.
Sources: `safety.radiant_heat`; the limit at the audience is a rule of the book in force, those at a post are 24 CFR 51.
"""

from collections.abc import Mapping, Sequence

from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, needed, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.facts.heat_criteria import heat_criteria
from sequencer.facts.profiles import Rule
from sequencer.facts.radiation import seconds_to_pain
from sequencer.findings import Finding
from sequencer.safety.duties.watching import Duty
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.safety.site_ground.radiant_heat import Wicks, heat_plan
from sequencer.staging.staged import Staged
from sequencer.units import rounded_down, rounded_up

NOT_CHECKED = (
    "Heat is that of a point source: smoke, sparks and flames bent by the wind were not checked."
)
UNDERSTATED = 1.05  # [1] a stated flame may be this much below the computed one
POINT_SOURCE = "Point source: US NRC, NUREG-1805 sheet 05.1 [C17; read]"


@where_lit
def heat(show: Staged) -> Outcome:
    """Flames of a show, and their radiant heat at audience and crew.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan, found = safety_plan(show), heat_plan(show)
    stated = show.show.fire.flame if show.show.fire else None
    return Outcome(
        findings=(
            *flame_findings(found.wicks, stated=stated),
            *glow_findings(
                found.audience, tuple(found.wicks), limit=needed(plan.book, "audience-flux")
            ),
            *post_findings(plan.crew, found.posts),
        ),
        not_checked=(NOT_CHECKED,),
    )


def flame_findings(wicks: Mapping[str, Wicks], *, stated: float | None) -> list[Finding]:
    """Flames computed to be higher at their peak than the show states.

    Parameters
    ----------
    wicks : mapping of performer to Wicks
    stated : float, optional
        Flame over the wick at rest [m].
    """
    if stated is None:
        return []
    high = {who: each for who, each in wicks.items() if each.peak > stated * UNDERSTATED}
    if not high:
        return []
    tallest = max(high.values(), key=lambda each: each.peak)
    peak = f"{rounded_up(tallest.peak, 2):.2f} m"
    return [
        Finding(
            code="flame-understated",
            severity="warn",
            who=tuple(high),
            start=None,
            end=None,
            position=None,
            message=f"the show states a flame of {stated:.2f} m; soaked mass and burning time give "
            f"{rounded_up(tallest.mean, 2):.2f} m on the mean and {peak} at the peak: all distances use the larger figure",
            remedies=(f"watch a real burn at its peak and write the larger figure: flame: {peak}",),
            source="Heskestad 1984, Fire Safety Journal 7:25 [HESK; read second-hand]; poor for wicks; peak over mean "
            "heat 1.5: design choice",
        )
    ]


def glow_findings(
    audience: Mapping[str, float], who: tuple[str, ...], *, limit: Rule
) -> list[Finding]:
    """Audience edges where all flames together give more heat than people can bear.

    Parameters
    ----------
    audience : mapping of name to float
        Radiant heat at each edge [W/m²].
    who : tuple of str
        Performers whose flames give it.
    limit : Rule
        Most radiant heat.
    """
    return [
        Finding(
            code="audience-heat",
            severity="stop",
            who=who,
            start=None,
            end=None,
            position=None,
            message=f"up to {_kilowatts(flux)} of heat at {name}; {limit.number / 1000:.2f} allowed",
            remedies=(
                "move the act and the audience apart",
                "light fewer or smaller wicks at once",
            ),
            source=f"{limit.citation} {POINT_SOURCE}",
        )
        for name, flux in audience.items()
        if flux > limit.number
    ]


def post_findings(crew: Sequence[Duty], fluxes: Sequence[float]) -> list[Finding]:
    """Posts at which the heat of all flames together may hurt.

    Parameters
    ----------
    crew : sequence of Duty
    fluxes : sequence of float
        Radiant heat at the post of each [W/m²].
    """
    criteria = heat_criteria()
    ease, pain = criteria["bystanders"], criteria["pain-15-s"]
    return [
        Finding(
            code="post-heat",
            severity="stop" if flux > pain.flux else "warn",
            who=(duty.who,),
            start=None,
            end=None,
            position=None,
            message=f"up to {_kilowatts(flux)} of heat at the post of {duty.who}, with every flame at its peak and at its "
            f"nearest: bare skin hurts after {rounded_down(seconds_to_pain(flux)):.0f} s",
            remedies=(
                f"move the post of {duty.who} away from the flames",
                "cover skin, with cloth that does not melt",
            ),
            source=f"{pain.effect}, 4.73 kW/m²; {ease.effect}, 1.42 kW/m²: {ease.source.citation}. {POINT_SOURCE}. "
            "Time to pain: HSL/2004/04 [D2; read second-hand]",
            where=duty.place,
        )
        for duty, flux in zip(crew, fluxes, strict=True)
        if flux > ease.flux
    ]


def _kilowatts(flux: float) -> str:
    return f"{rounded_up(flux / 1000, 2):.2f} kW/m²"


CHECK = Check(
    name="heat",
    run=heat,
    codes={
        "audience-heat": ("stop",),
        "flame-understated": ("warn",),
        "post-heat": ("stop", "warn"),
    },
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
