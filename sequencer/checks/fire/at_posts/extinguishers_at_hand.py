"""Extinguishers: enough of the right rating, on opposite sides, near, and outside every reach; the fuel has its own.

Those that stand ready for the fuel count neither toward the act's number nor its sides nor its distances, and those
of the act not for the fuel. One whose rating or contents are not stated counts as none. Inputs are plain records;
places in the stage frame [m]. Sources: the rules of the book in force; travel is measured along the walking path
(NFPA 10, read second-hand).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np

from sequencer.checks.check import Check
from sequencer.checks.fire.records import (
    PROGRESS,
    BeatReader,
    night_finding,
    rule_finding,
    where_lit,
)
from sequencer.checks.outcome import Outcome, place_text
from sequencer.facts.extinguishers import (
    Rating,
    allowed_travel,
    hazard_of_volume,
    is_water,
    parse_rating,
)
from sequencer.facts.profiles import Rule, Units
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.geometry.walking import NO_WAY, WalkableFloor
from sequencer.motion.clearance.to_posts import Followed, closest, farthest
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.safety.site_ground.guarding import Guarded, guarded_by
from sequencer.staging.staged import Staged


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedExtinguisher:
    """An extinguisher and where it stands."""

    place: tuple[float, float]  # [m, stage frame]
    rating: str | None  # as on its label; None: not stated
    kind: str | None  # what it is filled with; None: not stated
    guards: Guarded = "act"

    @property
    def blanks(self) -> str:
        """What is not stated about it, in words; empty if it counts."""
        given = {"rating": self.rating, "contents": self.kind}
        return " and ".join(word for word, value in given.items() if value is None)

    @property
    def rated(self) -> Rating | None:
        """Its rating; None if it is not stated, or cannot be read as one."""
        if self.rating is None:
            return None
        try:
            return parse_rating(self.rating)
        except ValueError:
            return None


@where_lit
def extinguishers(show: Staged) -> Outcome:
    """Extinguishers of a show: number, rating, and the walks to them.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan = safety_plan(show)
    venue, fire = show.show.venue, show.show.fire
    placed = tuple(
        PlacedExtinguisher(place=each.at, rating=each.rating, kind=each.kind, guards=guards)
        for each, guards in zip(venue.extinguishers, guarded_by(show), strict=True)
    )
    return Outcome(
        findings=(
            *unstated_findings(placed),
            *extinguisher_findings(
                placed, lit_at_once=plan.lit_at_once, book=plan.book, act=_middle(plan.followed)
            ),
            *travel_findings(
                placed,
                plan.followed,
                fuel_point=venue.fuel_station,
                fuel_volume=fire.fuel_on_site if fire else None,
                act_edge={dancer.name: dancer.reach for dancer in show.dancers},
                book=plan.book,
                clock=show,
                ground=plan.ground,
            ),
        )
    )


def unstated_findings(placed: Sequence[PlacedExtinguisher]) -> list[Finding]:
    """Extinguishers whose rating or contents are not stated: they count as none."""
    return [
        night_finding(
            "extinguisher-unstated",
            "stop",
            f"{each.blanks} of the extinguisher at {place_text(each.place)} not stated: it counts as none",
            "a blank is not zero: what is not stated counts as unmet",
            ("copy its label under venue, extinguishers: rating, such as 2-A:10-B:C, and kind",),
            where=each.place,
        )
        for each in placed
        if each.blanks
    ]


def extinguisher_findings(
    placed: Sequence[PlacedExtinguisher],
    *,
    lit_at_once: int,
    book: RuleBook,
    act: tuple[float, float],
) -> list[Finding]:
    """Too few extinguishers, of too small a rating, or all on one side of the act."""
    if not lit_at_once:
        return []
    placed = _of_the_act(placed)
    found = []
    for rule in book.all("extinguishers"):
        found += _too_few(placed, rule, lit_at_once)
    opposing = book.required("opposing-sides")
    if opposing and len(placed) > 1 and not any(opposed(placed, act)):
        found.append(
            rule_finding(
                "extinguishers-one-side",
                "warn",
                "all extinguishers of the act stand on one side of it",
                (
                    "move one to the opposite side, so that fire never blocks the way to all of them",
                ),
                opposing,
            )
        )
    return found


def _of_the_act(placed: Sequence[PlacedExtinguisher]) -> list[PlacedExtinguisher]:
    """Those that stand ready for the act, and of which it is known what they are."""
    return [each for each in placed if each.guards == "act" and not each.blanks]


def opposed(placed: Sequence[PlacedExtinguisher], act: tuple[float, float]) -> list[bool]:
    """For each pair of extinguishers, whether the act lies between them: their directions from it differ by 90° or more."""
    out = []
    for index, one in enumerate(placed):
        for other in placed[index + 1 :]:
            a = (one.place[0] - act[0], one.place[1] - act[1])
            b = (other.place[0] - act[0], other.place[1] - act[1])
            out.append(a[0] * b[0] + a[1] * b[1] <= 0 and hypot(*a) > 0 and hypot(*b) > 0)
    return out


def travel_findings(
    placed: Sequence[PlacedExtinguisher],
    followed: Sequence[Followed],
    *,
    fuel_point: tuple[float, float] | None,
    fuel_volume: float | None = None,
    act_edge: Mapping[str, float],
    book: RuleBook,
    clock: BeatReader,
    ground: WalkableFloor,
) -> list[Finding]:
    """Walks to an extinguisher that are longer than a rule allows.

    Parameters
    ----------
    placed : sequence of PlacedExtinguisher
    followed : sequence of Followed
        Each burn with its performer's path over the floor.
    fuel_point : tuple of float, optional
        [m, stage frame]
    fuel_volume : float, optional
        Fuel on site [m³].
    act_edge : mapping of performer to float
        Reach of prop and flame from the body's axis [m].
    book : RuleBook
    clock : BeatReader
    ground : WalkableFloor
        Obstacles that are walked round.
    """
    if not followed:
        return []
    everything, placed = placed, _of_the_act(placed)
    found = []
    travel = book.strictest("extinguisher-travel")
    if travel is not None and placed:
        ways = ground.ways_to([each.place for each in placed])
        for burn, worst in zip(
            followed, farthest(followed, [ways] * len(followed), travel.number), strict=True
        ):
            if worst.spans:
                start, end = worst.spans[0][0], worst.spans[-1][1]
                found.append(
                    Finding(
                        code="extinguisher-far",
                        severity="stop",
                        who=(burn.who,),
                        start=clock.seconds(start),
                        end=clock.seconds(end),
                        position=clock.position(start),
                        message=f"{burn.who} is {worst.distance:.2f} m on foot from the nearest "
                        f"extinguisher; {travel.number:.2f} m allowed",
                        remedies=(f"place one within {travel.number:.1f} m of {_at(worst.place)}",),
                        source=f"{travel.citation} Along the walking path: NFPA 10 "
                        "[B3; read second-hand]",
                        where=worst.place,
                    )
                )
    if travel is not None and fuel_point is not None:
        own = [each for each in everything if each.guards == "fuel"]
        found += _fuel_point_travel(ground, own, fuel_point, fuel_volume, travel)
    near = book.strictest("extinguisher-near")
    if near is not None and placed:
        found += _none_near(placed, followed, act_edge, near)
    return [*found, *_in_reach(everything, followed, act_edge, clock)]


def _too_few(placed: Sequence[PlacedExtinguisher], rule: Rule, heads: int) -> list[Finding]:
    required = rule.extinguishers
    groups = required.units
    if required.rating is not None:
        groups = (Units(required.count.for_heads(heads), "", required.rating), *groups)
    taken: dict[int, int] = {}  # extinguisher → slot; one extinguisher fills one slot
    slots = [group for group in groups for _ in range(group.count)]
    empty = [slot for slot in range(len(slots)) if not _filled(slot, slots, placed, taken, set())]
    found = []
    for group in groups:
        short = sum(slots[slot] is group for slot in empty)
        if not short:
            continue
        kind = f"{group.kind} " if group.kind else ""
        unlike = sorted(
            {each.rating for each in placed if each.rating and _meets(each, group) is None}
        )
        doubt = f"; {', '.join(unlike)} cannot be compared: ask the authority" if unlike else ""
        found.append(
            rule_finding(
                "extinguishers-few",
                "stop",
                f"{group.count - short} of {group.count} {kind}"
                f"{'extinguisher' if group.count == 1 else 'extinguishers'} of {group.rating} or better{doubt}",
                (f"add {short} under venue, extinguishers, with place and rating",),
                rule,
            )
        )
    return found


def _filled(
    slot: int,
    slots: Sequence[Units],
    placed: Sequence[PlacedExtinguisher],
    taken: dict[int, int],
    tried: set[int],
) -> bool:
    """Find an extinguisher for a slot, moving others if need be (augmenting path of a matching)."""
    for index, each in enumerate(placed):
        if index in tried or not _meets(each, slots[slot]):
            continue
        tried.add(index)
        if index not in taken or _filled(taken[index], slots, placed, taken, tried):
            taken[index] = slot
            return True
    return False


def _meets(each: PlacedExtinguisher, group: Units) -> bool | None:
    """Whether an extinguisher is of the kind and rating required; None if the ratings cannot be compared."""
    if each.blanks:
        return False
    if group.kind == "water" and not is_water(each.kind or ""):
        return False
    rated = each.rated
    return rated.meets(group.rating) if rated else None


def _fuel_point_travel(
    ground: WalkableFloor,
    placed: Sequence[PlacedExtinguisher],
    fuel_point: tuple[float, float],
    fuel_volume: float | None,
    travel: Rule,
) -> list[Finding]:
    """Whether an extinguisher of its own, for liquids, stands near enough to the fuel point, and is large enough."""
    for_liquids = [each for each in placed if not each.blanks and each.rated and each.rated.b]
    if not for_liquids:
        have = "none of those that stand ready for it is rated for class B"
        if not placed:
            have = "none stands ready for it, and those of the act do not count"
        return [
            rule_finding(
                "fuel-extinguisher-missing",
                "stop",
                f"the fuel point has no extinguisher of its own: {have}",
                (f"place a class B extinguisher by {place_text(fuel_point)}, guards: fuel",),
                travel,
                where=fuel_point,
            )
        ]
    walks = ground.ways_to([each.place for each in for_liquids])(np.array([fuel_point]))[0]
    walk = float(walks.min())
    if walk > travel.number:
        gap = f"is {walk:.2f} m on foot from" if walk < NO_WAY else "has no way on foot to"
        return [
            rule_finding(
                "extinguisher-far",
                "stop",
                f"the fuel point {gap} its nearest extinguisher; {travel.number:.2f} m allowed",
                ("place a class B extinguisher by the fuel point",),
                travel,
                where=fuel_point,
            )
        ]
    if fuel_volume is None or any(
        _reaches(each, float(way), fuel_volume)
        for each, way in zip(for_liquids, walks, strict=True)
    ):
        return []
    hazard = hazard_of_volume(fuel_volume)
    return [
        Finding(
            code="extinguisher-small",
            severity="warn",
            who=(),
            start=None,
            end=None,
            position=None,
            message=f"no extinguisher of the fuel point is rated for {fuel_volume * 1000:.3g} L ({hazard} hazard) at "
            f"its distance",
            remedies=("place a larger class B one nearer", "bring less fuel"),
            source="NFPA 10, class B table (light hazard read second-hand [B2], the rest from memory)",
            where=fuel_point,
        )
    ]


def _reaches(each: PlacedExtinguisher, way: float, volume: float) -> bool:
    """Whether an extinguisher's class B rating allows the walk; other rating schemes pass here."""
    rated = each.rated
    if rated is None or rated.scheme != "UL":
        return True  # `extinguishers-few` reports that they cannot be compared
    allowed = allowed_travel(rated, volume)
    return allowed is not None and way <= allowed.distance


def _none_near(
    placed: Sequence[PlacedExtinguisher],
    followed: Sequence[Followed],
    act_edge: Mapping[str, float],
    near: Rule,
) -> list[Finding]:
    """Whether the nearest extinguisher is too far from the edge of the act, the ground under every reach."""
    ways = WalkableFloor().ways_to([each.place for each in placed])
    gaps = [
        found.distance - act_edge.get(burn.who, 0.0)
        for burn, found in zip(
            followed, closest(followed, [ways] * len(followed), 0.0), strict=True
        )
    ]
    gap = max(min(gaps), 0.0)
    if gap <= near.number:
        return []
    return [
        rule_finding(
            "extinguisher-far",
            "stop",
            f"the nearest extinguisher is {gap:.2f} m from the act; {near.number:.2f} m allowed",
            (f"move one {gap - near.number:.2f} m nearer",),
            near,
        )
    ]


def _in_reach(
    placed: Sequence[PlacedExtinguisher],
    followed: Sequence[Followed],
    act_edge: Mapping[str, float],
    clock: BeatReader,
) -> list[Finding]:
    """Extinguishers inside the reach of prop and flame, where nobody can fetch them."""
    found = []
    for each in placed:
        ways = [WalkableFloor().ways_to([each.place])] * len(followed)
        for burn, near in zip(followed, closest(followed, ways, 0.0), strict=True):
            inside = act_edge.get(burn.who, 0.0) - near.distance
            if inside > 0:
                found.append(
                    Finding(
                        code="extinguisher-in-reach",
                        severity="stop",
                        who=(burn.who,),
                        start=clock.seconds(near.beat),
                        end=None,
                        position=clock.position(near.beat),
                        message=f"the extinguisher at {place_text(each.place)} stands "
                        f"{inside:.2f} m inside the reach of {burn.who}'s prop and flame",
                        remedies=(f"move it {inside:.2f} m outward",),
                        source="geometry: nobody can fetch it there",
                        where=each.place,
                    )
                )
    return found


def _middle(followed: Sequence[Followed]) -> tuple[float, float]:
    """Middle of the places at which performers are lit [m, stage frame]."""
    places = [each.floor.at(beat).place for each in followed for beat in (each.start, each.end)]
    return (
        float(sum(place[0] for place in places) / len(places)),
        float(sum(place[1] for place in places) / len(places)),
    )


def _at(place: tuple[float, float]) -> str:
    return f"{place_text(place)}, outside every reach and not amid the performers"


CHECK = Check(
    name="extinguishers",
    run=extinguishers,
    codes={
        "extinguisher-far": ("stop",),
        "extinguisher-in-reach": ("stop",),
        "extinguisher-small": ("warn",),
        "extinguisher-unstated": ("stop",),
        "extinguishers-few": ("stop",),
        "extinguishers-one-side": ("warn",),
        "fuel-extinguisher-missing": ("stop",),
    },
    cautions={"extinguisher-unstated": "missing"},
    of_fuel=("fuel-extinguisher-missing",),
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
)
