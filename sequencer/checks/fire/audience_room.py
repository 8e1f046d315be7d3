"""The audience: whether it has room to stand and can leave in time.

Simple flow arithmetic with the largest exit assumed lost; not an evacuation study. Inputs are plain values. Sources:
flows and floor space of `facts.crowd`; the share of the exits that counts is the open-air guides'.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from sequencer.checks.check import Check
from sequencer.checks.fire.records import BLANK, MISSING, PROGRESS, night_finding, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.facts.crowd import exit_capacity, floor_capacity, flows
from sequencer.facts.sources import cited, data, source
from sequencer.findings import Finding, Severity
from sequencer.staging.staged import Staged

NOT_COUNTED = "The size of the audience, and its ways in and out, were not checked."
EXITS = "Exits and floor space are simple arithmetic: ways to the exits, steps and prams were not checked."


@dataclass(frozen=True, slots=True, kw_only=True)
class Crowd:
    """What a show records about its audience; None where it records nothing."""

    people: int | None = None
    area: float | None = None  # [m²] to stand on
    exits: Mapping[str, float | None] = field(default_factory=dict)  # [m] clear width by name
    leave_in: float = 300.0  # [s]

    @property
    def widths(self) -> tuple[float, ...]:
        """Recorded widths [m]."""
        return tuple(width for width in self.exits.values() if width is not None)

    def leaving(self, *, lost: bool) -> int:
        """Number of people who can leave in time at the default flow; `lost`: without the largest exit."""
        return exit_capacity(self.widths, minutes=self.leave_in / 60, discount_largest=lost)


@where_lit
def audience_room(show: Staged) -> Outcome:
    """Whether the audience of a lit show has room and can leave in time."""
    venue = show.show.venue
    crowd = Crowd(
        people=venue.audience_size,
        area=venue.audience_area,
        exits={place.name: place.width for place in venue.exits},
        leave_in=venue.leave_in,
    )
    return Outcome(
        findings=tuple(crowd_findings(crowd)),
        not_checked=(NOT_COUNTED if crowd.people is None else EXITS,),
    )


def crowd_findings(crowd: Crowd) -> list[Finding]:
    """Too many people for the exits or the floor, and figures that are not recorded."""
    if crowd.people is None:
        return []
    return [*_exits(crowd, crowd.people), *_floor(crowd, crowd.people)]


def _exits(crowd: Crowd, people: int) -> list[Finding]:
    blank = [name for name, width in crowd.exits.items() if width is None]
    if not crowd.exits or blank:
        what = f"width of {', '.join(blank)}" if crowd.exits else "the audience's way out"
        return [
            _finding("not-recorded", "stop", f"{what} is not recorded; a blank counts as unmet",
                     "K1", ("write it under venue, exits, width",))
        ]  # fmt: skip
    flow = flows()["default"]
    time = f"{crowd.leave_in / 60:g} min"
    rate = f"{flow.per_metre_minute:g} people a minute for each metre"
    all_open, one_lost = crowd.leaving(lost=False), crowd.leaving(lost=True)
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
    depends_on=("burns", "venue"),
    progress=PROGRESS,
)
