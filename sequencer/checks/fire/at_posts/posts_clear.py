"""Crew posts: each where its duty is, and none in an exit, on the fire lane, in scenery or in the crowd.

That none lies inside the reach of anybody's prop and flame is found with the distances (`post-in-reach`), for every
post. Places in the stage frame [m]. Sources: as `safety.post_ground`.
"""

from collections.abc import Mapping

from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, where_lit
from sequencer.checks.outcome import Outcome, place_text
from sequencer.findings import Finding, Severity
from sequencer.safety.duties.watching import Duty
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.safety.site_ground.post_ground import (
    FAR_OFF,
    FROM_EDGE,
    FROM_FUEL,
    IN_CROWD,
    PostFault,
    PostFaultKind,
    free_post,
    post_faults,
)
from sequencer.safety.site_ground.site_lines import LANE_WIDTH
from sequencer.staging.staged import Staged
from sequencer.units import rounded_up

NO_WIDTH = (
    f"The width of the fire lane is not stated: posts on it were sought {LANE_WIDTH:g} m wide, assumed, not measured "
    "(Approved Document B, table 13.1; from memory)."
)
_KEPT_FREE = "exits, aisles and fire lanes are kept free: common practice"
_CHOICE = "design choice"
_GUARDS = (
    "guards keep the audience from the stage: North American fire-arts guidelines 2.1 [A36; read]; the distance: "
    "design choice"
)
_KEEPER = (
    "a steward guards the fuel: juggling society, Dublin [A37; read]; the distance: design choice"
)
# Code, severity, what is said of the person, and source, by what is wrong.
_TOLD: Mapping[PostFaultKind, tuple[str, Severity, str, str]] = {
    "far off": (
        "post-far-off", "stop",
        f"is {{apart}} from stage, audience and fuel, over {FAR_OFF:g} m: a slip of the pen?", _CHOICE,
    ),
    "scenery": ("post-in-scenery", "stop", "stands inside {what}", "geometry"),
    "exit": ("post-in-exit", "stop", "stands in the exit {what}; its width is not counted", _KEPT_FREE),
    "way": (
        "post-in-exit", "stop", "stands in the way to the exit {what}; its width is not counted", _KEPT_FREE
    ),
    "reckoned way": ("post-in-exit", "warn", "stands in the shortest way to the exit {what}", _KEPT_FREE),
    "lane": ("post-in-lane", "stop", "stands on the fire lane", _KEPT_FREE),
    "crowd": ("post-in-crowd", "stop", "is {apart} beyond {what}, in the crowd", _KEPT_FREE),
    "lead in crowd": ("post-in-crowd", "warn", "is {apart} beyond {what}, in the crowd", _KEPT_FREE),
    "guard in crowd": (
        "post-in-crowd", "stop",
        f"is {{apart}} beyond {{what}}, in the crowd; a guard is at most {IN_CROWD:g} m in it", _GUARDS,
    ),
    "far from edge": (
        "guard-away", "warn",
        f"is {{apart}} from {{what}}, the nearest edge to guard; {FROM_EDGE:g} m at most", _GUARDS,
    ),
    "far from fuel": (
        "keeper-away", "stop",
        f"is {{apart}} from the fuel point; its keeper stays within {FROM_FUEL:g} m", _KEEPER,
    ),
}  # fmt: skip


@where_lit
def posts(show: Staged) -> Outcome:
    """Every crew post of a lit show: where its duty is, and in nobody's way.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    found: list[Finding] = []
    for duty in safety_plan(show).crew:
        faults = post_faults(show, duty, duty.place)
        if faults:
            better = free_post(show, duty)
            found += [_finding(duty, fault, better) for fault in faults]
    lane = show.show.venue.fire_lane
    assumed = lane is not None and lane.width is None
    return Outcome(findings=tuple(found), not_checked=(NO_WIDTH,) if assumed else ())


def _finding(duty: Duty, fault: PostFault, better: tuple[float, float] | None) -> Finding:
    code, severity, words, origin = _TOLD[fault.kind]
    apart = f"{rounded_up(fault.distance, 2):.2f} m"
    mend = f"move {duty.who} away from there"
    if better is not None:
        mend = f"move {duty.who} to {place_text(better)}"
    return Finding(
        code=code,
        severity=severity,
        who=(duty.who,),
        start=None,
        end=None,
        position=None,
        message=f"{duty.who}, posted at {place_text(duty.place)}, {words.format(what=fault.what, apart=apart)}",
        remedies=(mend,),
        source=origin,
        where=duty.place,
    )


CHECK = Check(
    name="posts",
    run=posts,
    codes={
        "guard-away": ("warn",),
        "keeper-away": ("stop",),
        "post-far-off": ("stop",),
        "post-in-crowd": ("stop", "warn"),
        "post-in-exit": ("stop", "warn"),
        "post-in-lane": ("stop",),
        "post-in-scenery": ("stop",),
    },
    of_fuel=("keeper-away",),
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
