"""Everything about fire and crew that follows from a show, computed once for checks and sheets."""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed
from sequencer.safety.burning import PlannedBurn, lit_at_once, planned_burns
from sequencer.safety.fuel_plan import FuelPlan, Lighting, fuel_plan, lighting_order
from sequencer.safety.house_rules import rules_of
from sequencer.safety.watching import Duty, WatchPlan, watch_plan
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


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyPlan:
    """Rules in force, burns, crew and watches."""

    book: RuleBook
    burns: tuple[PlannedBurn, ...]  # by start
    lit_at_once: int  # largest number of performers lit at once
    crew: tuple[Duty, ...]
    followed: tuple[Followed, ...]  # one per burn, in the order of `burns`
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
    burns = planned_burns(show, refuel_seconds=refuel_seconds(book))
    at_once, _ = lit_at_once(burns)
    crew = tuple(
        Duty(who=post.name, place=post.post, duty=post.duty, watches=post.watches)
        for post in show.show.crew
    )
    floors = {dancer.name: dancer.floor for dancer in show.dancers}
    followed = tuple(
        Followed(who=burn.who, floor=floors[burn.who], start=burn.start, end=burn.end)
        for burn in burns
    )
    each, _ = watched_by_one(book, at_once)
    ground = _ground(show, above=0.0)
    limit = book.strictest("response-time")
    return SafetyPlan(
        book=book,
        burns=burns,
        lit_at_once=at_once,
        crew=crew,
        followed=followed,
        watch=watch_plan(
            followed, crew, each=each, limit=limit.number if limit else 0.0, ground=ground
        ),
        each=each,
        ground=ground,
        tall=_ground(show, above=KNEE),
        fuel=fuel_plan(show, burns),
        lighting=lighting_order(burns),
    )


def rewatched(plan: SafetyPlan, crew: Sequence[Duty]) -> WatchPlan:
    """The watch of a plan with another crew."""
    limit = plan.book.strictest("response-time")
    return watch_plan(
        plan.followed,
        crew,
        each=plan.each,
        limit=limit.number if limit else 0.0,
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
