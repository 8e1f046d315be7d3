"""What a plan has on each subject that a rule can ask about: a number, words, or nothing stated.

Numbers are those of the checks: proven distances from their report, and walks, burns, fuel and heat from the same plans
that they judge. SI units; distances in the stage frame [m].
"""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.facts.fuels import Fuel
from sequencer.facts.pace import response_seconds, walk_words
from sequencer.facts.profiles import CountRule, Rule
from sequencer.findings import Clearance, Report
from sequencer.geometry.walking import NO_WAY, WalkableFloor, Ways
from sequencer.motion.clearance.to_posts import Farthest, Followed, closest, farthest
from sequencer.safety.burns.burning import known_fuel
from sequencer.safety.duties.carried import counted
from sequencer.safety.duties.watching import watchers_of
from sequencer.safety.rules.permits import permit_contradictions, permit_gaps, permit_words
from sequencer.safety.safety_plan import SafetyPlan, safety_plan
from sequencer.safety.site_ground.guarding import Guarded, guarded_by
from sequencer.safety.site_ground.radiant_heat import heat_plan
from sequencer.show.file_records.site import Extinguisher, extinguisher_words
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import flame_at_rest
from sequencer.timing.position import clock_text
from sequencer.units import rounded_down

_DUTIES: Mapping[str, tuple[str, ...]] = {
    "spotters": ("spotter",),
    "perimeter-guards": ("perimeter",),
    "fuel-keepers": ("fuel keeper",),
    "stewards": ("spotter", "perimeter", "fuel keeper", "lead"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """What a plan has on one subject."""

    value: float | None = None  # in the unit of the subject's rules, SI
    words: str = ""  # who, when and where; alone, if there is no number
    met: bool | None = None  # of what has no number: None where the checks alone tell
    blank: str = ""  # what is not stated
    by_hand: bool = False  # only a person can tell


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanCase:
    """A show, its safety plan, and what the checks found."""

    show: Staged
    plan: SafetyPlan
    report: Report

    @classmethod
    def of(cls, show: Staged, report: Report) -> "PlanCase":
        """The case of a lit show."""
        return cls(show=show, plan=safety_plan(show), report=report)

    def when(self, beat: float) -> str:
        """A moment as m:ss."""
        return moment(self.show.seconds(beat))

    @property
    def reach(self) -> dict[str, float]:
        """Reach of prop and flame from each body's axis [m]."""
        return {dancer.name: dancer.reach for dancer in self.show.dancers}


def moment(seconds: float) -> str:
    """A moment as m:ss, the second in progress, as on the sheets."""
    return clock_text(rounded_down(seconds), decimals=0)


def measured(case: PlanCase, rule: Rule) -> Measured:
    """What the plan has on the subject of a rule.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    kind = rule.kind
    if kind.name in _MEASURES:
        return _MEASURES[kind.name](case)
    if kind.name == "fuel-permit-volume":
        return _storage(case, rule)
    if kind.sort == "count":
        return _people(case, kind.name) if kind.name in _DUTIES else _carried(case, kind.name)
    return Measured(by_hand=True)


def heads_for(case: PlanCase, count: CountRule) -> int | None:
    """How many people a count is for: performers lit at once, or the audience; None if its size is not stated."""
    if count.of == "audience":
        return case.show.show.venue.audience_size
    return case.plan.lit_at_once


def _audience(case: PlanCase) -> Measured:
    edges = {edge.name for edge in case.show.show.venue.audience}
    return _nearest(case, lambda name: name in edges, "no distance was computed")


def _combustible(case: PlanCase) -> Measured:
    if not any(thing.combustible for thing in case.show.show.venue.scenery):
        return Measured(words="nothing combustible is entered", by_hand=True)
    return _nearest(case, lambda name: name.endswith(" (combustible)"), "no distance was computed")


def _nearest(case: PlanCase, about: Callable[[str], bool], none: str) -> Measured:
    """The smallest of the checks' proven distances to some things."""
    rows: list[Clearance] = [row for row in case.report.clearances if about(row.between[1])]
    if not rows:
        return Measured(blank=none)
    row = min(rows, key=lambda each: each.distance)
    thing = row.between[1].removesuffix(" (combustible)")
    return Measured(
        value=row.distance,
        words=f"{row.between[0]} to {thing}, {moment(row.at)}",
    )


def _ceiling(case: PlanCase) -> Measured:
    venue = case.show.show.venue
    if venue.ceiling is None:
        return Measured(blank="what is overhead")
    # Whether anybody comes under a lower part, the checks tell.
    lower = [f"{part.name} at {part.height:.2f} m" for part in venue.ceilings]
    if venue.ceiling == "open":
        return Measured(words=", ".join(["open sky", *lower]), met=None if lower else True)
    return Measured(value=float(venue.ceiling), words=", ".join(lower))


def _ceiling_margin(case: PlanCase) -> Measured:
    venue = case.show.show.venue
    if venue.ceiling is None:
        return Measured(blank="what is overhead")
    names = {ceiling.name for ceiling in case.show.venue.ceilings}
    if not names:
        return Measured(words="open sky", met=True)
    if venue.ceiling == "open":
        return _nearest(case, lambda name: name in names, "no distance was computed")
    height = float(venue.ceiling)
    lit = [dancer for dancer in case.show.dancers if dancer.lit]
    return Measured(
        value=min(height - dancer.overhead for dancer in lit), words="arm and prop straight up"
    )


def _roof(case: PlanCase) -> Measured:
    setting = case.show.show.venue.setting
    if setting is None:
        return Measured(blank="outdoors or indoors")
    return Measured(words=setting, met=True if setting == "outdoors" else None)


def _sprinklers(case: PlanCase) -> Measured:
    venue = case.show.show.venue
    if venue.setting != "indoors":
        return _roof(case)
    if venue.sprinklers is None:
        return Measured(blank="sprinklers")
    return Measured(words="yes" if venue.sprinklers else "none", met=venue.sprinklers)


def _people(case: PlanCase, kind: str) -> Measured:
    crew = [each for each in case.plan.crew if each.duty in _DUTIES[kind]]
    names = list({each.who.casefold(): each.who for each in crew}.values())
    return Measured(value=float(len(names)), words=", ".join(names))


def _carried(case: PlanCase, kind: str) -> Measured:
    carried = counted(item for post in case.show.show.crew for item in post.equipment)
    return Measured(value=float(carried.get(kind, 0)))


def _roles(_case: PlanCase) -> Measured:
    return Measured(words="one duty each")


def _walk(case: PlanCase) -> Measured:
    """The longest walk of a spotter to whom they watch: as the watch is planned, or from the nearest if that is farther."""
    plan = case.plan
    watched = [(burn, watchers_of(burn.who, plan.crew)) for burn in plan.followed]
    alone = list(dict.fromkeys(burn.who for burn, watchers in watched if not watchers))
    if alone:
        return Measured(words=f"nobody watches {', '.join(alone)}", met=False)
    places = [tuple(each.place for each in watchers) for _, watchers in watched]
    ways = {each: plan.ground.ways_to(each) for each in dict.fromkeys(places)}
    found = farthest(plan.followed, [ways[each] for each in places], np.inf)
    burn, worst, watchers = max(
        zip(plan.followed, found, (own for _, own in watched), strict=True),
        key=lambda each: each[1].distance,
    )
    if worst.distance >= NO_WAY:
        return Measured(words=f"no way on foot to {burn.who}", met=False)
    far, words = (
        worst.distance,
        f"{watchers[worst.post].who} to {burn.who}, {case.when(worst.beat)}",
    )
    if plan.watch.worst > far:
        watch = max(plan.watch.watches, key=lambda each: each.way)
        far, words = watch.way, f"{watch.spotter} to {watch.who}"
    return Measured(value=far, words=f"{words}: {walk_words(far).partition(': ')[2]}")


def _arrival(case: PlanCase) -> Measured:
    found = _walk(case)
    if found.value is None:
        return found
    return Measured(value=response_seconds(found.value), words=found.words)


def _guarding(case: PlanCase, what: Guarded) -> list[Extinguisher]:
    """Extinguishers that stand ready for the act or the fuel, and of which it is known what they are."""
    tools = zip(case.show.show.venue.extinguishers, guarded_by(case.show), strict=True)
    return [
        tool
        for tool, guards in tools
        if guards == what and tool.rating is not None and tool.kind is not None
    ]


def _extinguishers(case: PlanCase) -> Measured:
    if any(None in (tool.rating, tool.kind) for tool in case.show.show.venue.extinguishers):
        return Measured(blank="rating or contents of an extinguisher")
    kinds = Counter(extinguisher_words(tool) for tool in _guarding(case, "act"))
    if not kinds:
        return Measured(words="none at the act", met=False)
    words = "; ".join(f"{number} × {words}" for words, number in kinds.items())
    return Measured(words=f"{words} (at the act)")


def _sides(case: PlanCase) -> Measured:
    number = len(_guarding(case, "act"))
    return Measured(words=f"{number} at the act", met=None if number > 1 else False)


def _tool_walk(case: PlanCase) -> Measured:
    """The longest walk to an extinguisher: from a lit performer to the act's, from the fuel point to its own."""
    plan, venue = case.plan, case.show.show.venue
    act, fuel = _guarding(case, "act"), _guarding(case, "fuel")
    if not act:
        return Measured(words="none at the act", met=False)
    ways = plan.ground.ways_to([tool.at for tool in act])
    burn, worst = _extreme(plan.followed, farthest, ways)
    found = [(worst.distance, f"{burn.who}, {case.when(worst.beat)}")]
    if venue.fuel_station is not None:
        if not fuel:
            return Measured(words="none at the fuel point", met=False)
        walks = plan.ground.ways_to([tool.at for tool in fuel])(np.array([venue.fuel_station]))
        found.append((min(float(np.min(walks)), NO_WAY), "the fuel point"))
    far, words = max(found)
    if far >= NO_WAY:
        return Measured(words=f"no way on foot: {words}", met=False)
    return Measured(value=far, words=words)


def _tool_near(case: PlanCase) -> Measured:
    tools = _guarding(case, "act")
    if not tools:
        return Measured(words="none at the act", met=False)
    return _to_edge(case, WalkableFloor().ways_to([tool.at for tool in tools]))


def _fuel_to_flame(case: PlanCase) -> Measured:
    at = case.show.show.venue.fuel_station
    if at is None:
        return Measured(blank="the fuel point")
    return _to_edge(case, WalkableFloor().ways_to([at]))


def _to_edge(case: PlanCase, ways: Ways) -> Measured:
    """The smallest distance from the outer edge of prop and flame to the nearest of some places."""
    followed, reach = case.plan.followed, case.reach
    found = closest(followed, [ways] * len(followed), 0.0)
    gap, burn, near = min(
        (
            (near.distance - reach[burn.who], burn, near)
            for burn, near in zip(followed, found, strict=True)
        ),
        key=lambda each: each[0],
    )
    return Measured(value=max(gap, 0.0), words=f"{burn.who}, {case.when(near.beat)}")


def _extreme(
    followed: Sequence[Followed],
    search: Callable[[Sequence[Followed], Sequence[Ways], float], list[Farthest]],
    ways: Ways,
) -> tuple[Followed, Farthest]:
    found = search(followed, [ways] * len(followed), np.inf)
    return max(zip(followed, found, strict=True), key=lambda each: each[1].distance)


def _fuel_to_audience(case: PlanCase) -> Measured:
    import shapely

    venue = case.show.show.venue
    if venue.fuel_station is None:
        return Measured(blank="the fuel point")
    point = shapely.Point(venue.fuel_station)
    gaps = {
        edge.name: float(shapely.LineString(edge.line).distance(point)) for edge in venue.audience
    }
    name = min(gaps, key=gaps.__getitem__)
    return Measured(value=gaps[name], words=name)


def _upwind(case: PlanCase) -> Measured:
    venue = case.show.show.venue
    if venue.setting == "indoors":
        return Measured(words="indoors", met=True)
    if venue.fuel_station is None:
        return Measured(blank="the fuel point")
    if venue.wind_from is None:
        return Measured(blank="where the wind comes from")
    return Measured(words="by the wind entered")


def _fuel_each(case: PlanCase) -> Measured:
    plan = case.plan.fuel
    if plan is None or plan.unweighed:
        return Measured(blank="fuel in a wick")
    amounts = {who: plan.of(who) or 0.0 for who in case.show.show.names}
    most = max(amounts, key=amounts.__getitem__)
    return Measured(value=amounts[most], words=most)


def _fuel_on_site(case: PlanCase) -> Measured:
    fire = case.show.show.fire
    if fire is None or fire.fuel_on_site is None:
        return Measured(blank="fuel on site")
    return Measured(value=fire.fuel_on_site)


def _storage(case: PlanCase, rule: Rule) -> Measured:
    """Whether a storage permit is asked for: only a person can show it."""
    found, liquid = _fuel_on_site(case), _liquid(case)
    if found.value is None or liquid is None:
        return found
    group = "flammable" if liquid.flammable else "combustible"
    edge = rule.value.get(group) if isinstance(rule.value, Mapping) else None
    volume = f"{1000 * found.value:.2f} L of {group} liquid"
    if edge is None or found.value <= edge:
        return Measured(words=volume, met=True)
    return Measured(words=f"{volume}: show the storage permit", by_hand=True)


def _fuel_kind(case: PlanCase) -> Measured:
    liquid = _liquid(case)
    return Measured(blank="the fuel") if liquid is None else Measured(words=liquid.title)


def _liquid(case: PlanCase) -> Fuel | None:
    return known_fuel(case.show)


def _zone(case: PlanCase) -> Measured:
    if case.show.show.venue.spin_off is None:
        return Measured(blank="the spin-off zone")
    return Measured(words="drawn on the plan", by_hand=True)


def _flame(case: PlanCase) -> Measured:
    fire = case.show.show.fire
    if fire is None or fire.flame is None:
        return Measured(blank="height of the flame")
    props = [prop for dancer in case.show.show.cast for prop in dancer.props.values()]
    return Measured(
        value=max(flame_at_rest(prop, fire) for prop in props),
        words="the larger of stated and computed, at the peak",
    )


def _wind(case: PlanCase) -> Measured:
    venue = case.show.show.venue
    if venue.setting == "indoors":
        return Measured(words="indoors", met=True)
    return Measured(blank="gusts") if venue.wind is None else Measured(value=venue.wind)


def _age(case: PlanCase) -> Measured:
    show = case.show.show
    years = {dancer.name: dancer.birth_year for dancer in show.cast}
    born = [year for year in years.values() if year is not None]
    if len(born) < len(years) or not show.date:
        return Measured(blank="age of a performer" if show.date else "date of the show file")
    youngest = max(born)
    name = next(who for who, year in years.items() if year == youngest)
    # Born on the last day of that year: the least age it can be.
    return Measured(value=float(int(show.date[:4]) - youngest - 1), words=name)


def _share(case: PlanCase) -> Measured:
    burns = case.plan.burns
    if any(burn.burn is None for burn in burns):
        return Measured(blank="burning time")
    most = max(burns, key=lambda burn: burn.share())
    return Measured(value=most.share(), words=most.who)


def _flux(case: PlanCase) -> Measured:
    found = heat_plan(case.show)
    if found.unknown:
        return Measured(blank=f"soak or burning time of {', '.join(found.unknown)}")
    name = max(found.audience, key=found.audience.__getitem__)
    return Measured(value=found.audience[name], words=name)


def _permit(case: PlanCase) -> Measured:
    show = case.show.show
    if show.rules.permit is None:
        return Measured(blank="a permit")
    if permit_contradictions(show):
        return Measured(words=permit_words(show), met=False)
    if permit_gaps(show):
        return Measured(blank="; ".join(permit_gaps(show)))
    return Measured(words=permit_words(show), met=True)


def _forbidden(_case: PlanCase) -> Measured:
    return Measured(words="lit in the open air", met=False)


def _soaked(_case: PlanCase) -> Measured:
    return Measured(words="as planned in the run of the night", met=True)


def _stop_word(case: PlanCase) -> Measured:
    return Measured(words=f"“{case.show.show.stop_call.word}”", by_hand=True)


_MEASURES: Mapping[str, Callable[[PlanCase], Measured]] = {
    "audience-distance": _audience,
    "several-performers-extra": _audience,
    "combustible-distance": _combustible,
    "ceiling-height": _ceiling,
    "ceiling-margin": _ceiling_margin,
    "indoor-forbidden": _roof,
    "indoor-agreed": _roof,
    "sprinklers": _sprinklers,
    "roles-apart": _roles,
    "response-distance": _walk,
    "response-time": _arrival,
    "extinguishers": _extinguishers,
    "opposing-sides": _sides,
    "extinguisher-travel": _tool_walk,
    "extinguisher-near": _tool_near,
    "blanket-or-towels": lambda case: Measured(
        words=", ".join(
            f"{_carried(case, kind).value:.0f} {kind}" for kind in ("towels", "blankets")
        )
    ),
    "fuel-point-distance": _fuel_to_flame,
    "fuel-point-audience": _fuel_to_audience,
    "fuel-upwind": _upwind,
    "fuel-per-performer": _fuel_each,
    "fuel-on-site": _fuel_on_site,
    "fuel-refused": _fuel_kind,
    "fuel-warned": _fuel_kind,
    "spin-off-zone": _zone,
    "flame-height": _flame,
    "wind-warn": _wind,
    "wind-stop": _wind,
    "performer-age": _age,
    "burn-share": _share,
    "audience-flux": _flux,
    "permit": _permit,
    "fire-ban": _forbidden,
    "soak-seconds": _soaked,
    "spin-off-seconds": _soaked,
    "stop-word": _stop_word,
}
