"""All that follows from a show for fire and crew, worked out once for checks and for sheets."""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.geometry.walking import Ground
from sequencer.motion.following import Followed
from sequencer.show.burning import PlannedBurn, lit_at_once, planned_burns
from sequencer.show.fuel_plan import FuelPlan, Lighting, fuel_plan, lighting_order
from sequencer.show.house_rules import rules_of
from sequencer.show.staged import Staged
from sequencer.show.watch import Duty, WatchPlan, watch_plan

KNEE = 0.5  # [m] what is taller hides a performer from the knee up; a design choice
_SOAK = ("soak-seconds", "spin-off-seconds")


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyPlan:
    """Rules in force, burns, people and the watch."""

    book: RuleBook
    burns: tuple[PlannedBurn, ...]  # by start
    lit_at_once: int  # most performers lit at one moment
    crew: tuple[Duty, ...]
    followed: tuple[Followed, ...]  # one a burn, in the order of `burns`
    watch: WatchPlan
    each: int  # most performers that one spotter watches at once
    ground: Ground  # what is walked round
    tall: Ground  # what hides a performer
    fuel: FuelPlan | None
    lighting: tuple[Lighting, ...]  # by start


def safety_plan(show: Staged) -> SafetyPlan:
    """The plan of a staged show.

    Raises
    ------
    InputError
        If the show's own file of rules, or its log of burns, cannot be used.
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
    return SafetyPlan(
        book=book,
        burns=burns,
        lit_at_once=at_once,
        crew=crew,
        followed=followed,
        watch=watch_plan(followed, crew, each=each, ground=ground),
        each=each,
        ground=ground,
        tall=_ground(show, above=KNEE),
        fuel=fuel_plan(show, burns),
        lighting=lighting_order(burns),
    )


def refuel_seconds(book: RuleBook) -> float:
    """Time to soak and spin off [s] by the rules in force."""
    rules = [book.strictest(kind) for kind in _SOAK]
    return sum(rule.number for rule in rules if rule is not None)


def watched_by_one(book: RuleBook, heads: int) -> tuple[int, Rule | None]:
    """Most performers that one spotter watches at once, and the rule that says so."""
    rules: Sequence[Rule] = [rule for rule in book.all("spotters") if rule.count.each]
    if not rules:
        return max(heads, 1), None
    strictest = min(rules, key=lambda rule: rule.count.each or heads)
    return strictest.count.each or 1, strictest


def _ground(show: Staged, *, above: float) -> Ground:
    outlines = [each.outline for each in show.show.venue.scenery if each.height > above]
    return Ground(tuple(outlines))
