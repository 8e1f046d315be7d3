"""The audience: whether it has room to stand and can leave in time.

Simple flow arithmetic with the largest exit assumed lost; not an evacuation study. An exit near or behind the fire, or
with something in its way, is not counted (`exits`). Inputs are plain values. Sources: flows and floor space of
`facts.crowd`; the share of the exits that counts is the open-air guides'.
"""

from dataclasses import dataclass

from sequencer.checks.check import Check
from sequencer.checks.fire.records import (
    BLANK,
    MISSING,
    PROGRESS,
    blank_finding,
    night_finding,
    where_lit,
)
from sequencer.checks.outcome import Outcome
from sequencer.facts.crowd import exit_capacity, floor_capacity, flows, narrowest_exit
from sequencer.facts.sources import cited, data, source
from sequencer.findings import Finding, Severity
from sequencer.safety.safety_plan import PLAN_PARTS
from sequencer.safety.site_ground.audience_floor import audience_floor
from sequencer.safety.site_ground.ways_out import ways_out
from sequencer.staging.staged import Staged
from sequencer.units import counted

EXITS = "The time to leave is simple arithmetic with the widths of the exits that count: steps and prams were not checked."
ONE_EXIT = 60  # people for whom one exit is enough
_ONE_EXIT = "one exit for at most 60 people: Approved Document B, from memory"
NO_FLOOR = "Whether the audience has room to stand was not checked: no floor area is recorded."


@dataclass(frozen=True, slots=True, kw_only=True)
class Crowd:
    """What a show records about its audience; None where it records nothing."""

    people: int | None = None
    area: float | None = None  # [m²] to stand on
    widths: tuple[float, ...] = ()  # [m] clear width of each exit that counts
    not_counted: tuple[str, ...] = ()  # exits with a width that does not count
    leave_in: float = 300.0  # [s]

    def leaving(self, *, lost: bool) -> int:
        """Number of people who can leave in time at the default flow; `lost`: without the largest exit."""
        return exit_capacity(self.widths, minutes=self.leave_in / 60, discount_largest=lost)


@where_lit
def audience_room(show: Staged) -> Outcome:
    """Whether the audience of a lit show has room and can leave in time.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    venue, exits = show.show.venue, ways_out(show)
    crowd = Crowd(
        people=venue.audience_size,
        area=audience_floor(show),
        widths=tuple(each.width for each in exits if each.counted and each.width is not None),
        not_counted=tuple(each.name for each in exits if each.width and not each.counted),
        leave_in=venue.leave_in,
    )
    return Outcome(
        findings=tuple(crowd_findings(crowd)),
        not_checked=(EXITS, *((NO_FLOOR,) if crowd.people and crowd.area is None else ())),
    )


def crowd_findings(crowd: Crowd) -> list[Finding]:
    """Too many people for the exits or the floor, and an audience whose size is not recorded."""
    if crowd.people is None:
        return [
            blank_finding(
                "the size of the audience is not recorded", "venue, audience_size", source("K1")
            )
        ]
    return [*_exits(crowd, crowd.people), *_floor(crowd, crowd.people)]


def _exits(crowd: Crowd, people: int) -> list[Finding]:
    if not (crowd.widths or crowd.not_counted):
        return []  # that none is recorded, `exits` finds
    flow = flows()["default"]
    time = f"{crowd.leave_in / 60:g} min"
    rate = f"{flow.per_metre_minute:g} people a minute for each metre"
    if crowd.not_counted:
        rate += f"; not counted: {', '.join(crowd.not_counted)}"
    all_open, one_lost = crowd.leaving(lost=False), crowd.leaving(lost=True)
    usable = [width for width in crowd.widths if width >= narrowest_exit()]
    if narrow := sum(width < narrowest_exit() for width in crowd.widths):
        rate += f"; {counted(narrow, 'exit')} narrower than {narrowest_exit():g} m not counted"
    if len(usable) == 1 and ONE_EXIT < people <= all_open:
        return [
            night_finding(
                "exits-too-narrow",
                "warn",
                f"{people} people watch and one exit counts: nobody can leave if it is lost ({rate})",
                _ONE_EXIT,
                (f"let at most {ONE_EXIT} in", "open another exit, away from the first"),
            )
        ]
    if people <= one_lost:
        return []
    remedies = [f"let at most {one_lost} in"] if one_lost else []
    remedies.append("open another exit, or a wider one")
    if people > all_open:
        message = (
            f"{people} people watch; only {all_open} can leave in {time}, every exit open ({rate})"
        )
        return [_finding("exits-too-narrow", "stop", message, flow.source.key, tuple(remedies))]
    message = (
        f"{people} people watch; only {one_lost} can leave in {time}, largest exit lost ({rate})"
    )
    return [_finding("exits-too-narrow", "warn", message, flow.source.key, tuple(remedies))]


def _floor(crowd: Crowd, people: int) -> list[Finding]:
    if crowd.area is None or people <= floor_capacity(crowd.area):
        return []
    most = floor_capacity(crowd.area, kind="standing")
    table = {entry["name"]: entry for entry in data("crowd.json")["floor_space"]}
    over = people > most
    space = table["standing" if over else "outdoors"]
    return [
        _finding(
            "audience-crowded",
            "stop" if over else "warn",
            f"{people} people on {crowd.area:g} m²: at {space['area']:g} m² a person it holds "
            f"{most if over else floor_capacity(crowd.area)}",
            space["source"],
            (f"let at most {floor_capacity(crowd.area)} in", "give the audience more floor"),
        )
    ]


def _finding(
    code: str, severity: Severity, message: str, key: str, remedies: tuple[str, ...]
) -> Finding:
    origin = source(key)
    return night_finding(code, severity, message, cited(origin, origin.mark), remedies)


CHECK = Check(
    name="audience-room",
    run=audience_room,
    codes={
        **BLANK,
        "audience-crowded": ("stop", "warn"),
        "exits-too-narrow": ("stop", "warn"),
    },
    cautions=MISSING,
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
