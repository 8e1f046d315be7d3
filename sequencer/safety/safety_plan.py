"""Everything about fire and crew that follows from a show, computed once for checks and sheets."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.safety.burns.burning import PlannedBurn, lit_at_once, planned_burns, put_out
from sequencer.safety.burns.fuel_plan import FuelPlan, Lighting, fuel_plan, lighting_order
from sequencer.safety.burns.handling import SAME_PLACE, HandlingTimes, handling_times, walk_seconds
from sequencer.safety.duties.watching import Duty, WatchPlan, longest_walk, watch_plan
from sequencer.safety.rules.house_rules import rules_of
from sequencer.staging.results import Part, once_per_show_with
from sequencer.staging.staged import Staged

KNEE = 0.5  # [m] anything taller hides a performer from the knee up; a design choice
PLAN_PARTS: tuple[Part, ...] = (
    "places",
    "burns",
    "venue",
    "crew",
    "fire",
)  # that a safety plan depends on
_SOAK = ("soak-seconds", "spin-off-seconds")
_ROUNDS = 4  # at most, until who watches and who puts out agree


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyPlan:
    """Rules in force, burns, crew and watches."""

    book: RuleBook
    burns: tuple[PlannedBurn, ...]  # by start
    handling: HandlingTimes
    lit_at_once: int  # largest number of performers lit at once
    crew: tuple[Duty, ...]
    # one per burn, in the order of `burns`, from the start of lighting until the flame is out
    followed: tuple[Followed, ...]
    watch: WatchPlan
    each: int  # maximum number of performers that one spotter watches at once
    ground: WalkableFloor  # obstacles to walk round
    tall: WalkableFloor  # obstacles that hide a performer
    fuel: FuelPlan | None
    lighting: tuple[Lighting, ...]  # by start


@once_per_show_with(*PLAN_PARTS)
def safety_plan(show: Staged) -> SafetyPlan:
    """The safety plan of a staged show.

    Raises
    ------
    InputError
        If the show's rules file or burn log cannot be used.
    ValueError
        If the fuel or the rule profile is not known.
    """
    book = rules_of(show)
    ground = _ground(show, above=0.0)
    crew = tuple(
        Duty(who=post.name, place=post.post, duty=post.duty, watches=post.watches)
        for post in show.show.crew
    )
    lit = planned_burns(show, refuel_seconds=refuel_seconds(book), ground=ground)
    burns, followed, watch = _watched(show, lit, crew, book, ground)
    at_once, _ = lit_at_once(burns)
    return SafetyPlan(
        book=book,
        burns=burns,
        handling=handling_times(show.show.fire),
        lit_at_once=at_once,
        crew=crew,
        followed=followed,
        watch=watch,
        each=watched_by_one(book, at_once)[0],
        ground=ground,
        tall=_ground(show, above=KNEE),
        fuel=fuel_plan(show, burns),
        lighting=lighting_order(burns),
    )


def _watched(
    show: Staged,
    lit: Sequence[PlannedBurn],
    crew: Sequence[Duty],
    book: RuleBook,
    ground: WalkableFloor,
) -> tuple[tuple[PlannedBurn, ...], tuple[Followed, ...], WatchPlan]:
    """Burns with their ends, and who watches them from the first wick alight until the last flame is out.

    Who puts a performer out is who watches them then, and how long that takes decides how long they are watched:
    both are found in turn, until they agree.
    """
    floors = {dancer.name: dancer.floor for dancer in show.dancers}
    limit = longest_walk(book)
    seconds = handling_times(show.show.fire).put_out
    places = [floors[burn.who].place_at(burn.end) for burn in lit]
    named = [burn.put_out_by for burn in lit]
    walk = walk_seconds(ground)
    burns = put_out(lit, [burn.who for burn in lit], places, seconds=seconds, walk=walk)
    for _ in range(_ROUNDS):
        followed = _followed(show, burns, floors)
        each, _rule = watched_by_one(book, lit_at_once(burns)[0])
        watch = watch_plan(
            followed, crew, each=each, limit=limit[0] if limit else 0.0, ground=ground
        )
        by = [own or _watching(watch, burn) for own, burn in zip(named, lit, strict=True)]
        before, burns = burns, put_out(lit, by, places, seconds=seconds, walk=walk)
        if [burn.out_s for burn in before] == [burn.out_s for burn in burns]:
            break
    return burns, followed, watch


def _watching(watch: WatchPlan, burn: PlannedBurn) -> str | None:
    """The spotter who watches a performer when putting out begins."""
    then = [
        each
        for each in watch.watches
        if each.who == burn.who and each.start <= burn.end <= each.end
    ]
    return max(then, key=lambda each: each.start).spotter if then else None


def _followed(
    show: Staged, burns: Sequence[PlannedBurn], floors: Mapping[str, WalkPath]
) -> tuple[Followed, ...]:
    """Each burn with its performer's path, from the first wick alight until the flame is out.

    Of two burns of one performer that overlap, which the checks find, the second is followed from the end of the first.
    """
    later: dict[int, PlannedBurn] = {}
    last: dict[str, int] = {}
    for index, burn in enumerate(burns):
        if burn.who in last:
            later[last[burn.who]] = burn
        last[burn.who] = index
    begins: dict[str, float] = {}
    out = []
    for index, burn in enumerate(burns):
        start = max(_beat(show, burn.alight_s), begins.get(burn.who, -math.inf))
        end = _beat(show, burn.out_s)
        if index in later:
            end = min(end, later[index].start)
        begins[burn.who] = end
        out.append(
            Followed(
                who=burn.who,
                floor=_from_lighting(show, burn, floors[burn.who]),
                start=min(start, burn.start),
                end=max(end, burn.end),
            )
        )
    return tuple(out)


def _from_lighting(show: Staged, burn: PlannedBurn, floor: WalkPath) -> WalkPath:
    """The path of a performer who is lit away from their place: from there to it, and on as in the show."""
    place = floor.place_at(burn.start)
    if burn.lit_at is None or math.dist(burn.lit_at, place) < SAME_PLACE:
        return floor
    stand = floor.at(burn.start)
    start = _beat(show, burn.start_s - burn.wait_s)
    onward = tuple(move for move in floor.moves if move.start >= burn.start)
    if start >= burn.start or any(move.start < burn.start < move.end for move in floor.moves):
        return floor
    facing = float(stand.facing)
    way = Move(start=start, end=burn.start, place=place, facing=facing)
    return WalkPath(burn.lit_at, facing, (way, *onward), floor.off)


def _beat(show: Staged, seconds: float) -> float:
    return float(show.tempo.beats_from_seconds(seconds))


def rewatched(plan: SafetyPlan, crew: Sequence[Duty]) -> WatchPlan:
    """The watch of a plan with another crew."""
    limit = longest_walk(plan.book)
    return watch_plan(
        plan.followed,
        crew,
        each=plan.each,
        limit=limit[0] if limit else 0.0,
        ground=plan.ground,
    )


def refuel_seconds(book: RuleBook) -> float:
    """Time to soak and spin off [s] under the rules in force."""
    return sum(rule.number for rule in refuel_rules(book))


def refuel_rules(book: RuleBook) -> tuple[Rule, ...]:
    """The rules in force on soaking and spinning off."""
    rules = (book.strictest(kind) for kind in _SOAK)
    return tuple(rule for rule in rules if rule is not None)


def watched_by_one(book: RuleBook, heads: int) -> tuple[int, Rule | None]:
    """Maximum number of performers that one spotter watches at once, and the rule that sets it."""
    rules: Sequence[Rule] = [rule for rule in book.all("spotters") if rule.count.each]
    if not rules:
        return max(heads, 1), None
    strictest = min(rules, key=lambda rule: rule.count.each or heads)
    return strictest.count.each or 1, strictest


def _ground(show: Staged, *, above: float) -> WalkableFloor:
    outlines = [each.outline for each in show.show.venue.scenery if each.height > above]
    return WalkableFloor(tuple(outlines))
