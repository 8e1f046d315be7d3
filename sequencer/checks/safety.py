"""All checks of fire, crew and house rules on one staged show: its records in, findings out."""

import datetime as dt
from collections.abc import Sequence

from sequencer.checks.crew import (
    Duty,
    WaysTo,
    number_findings,
    role_findings,
    watch_findings,
)
from sequencer.checks.equipment import (
    Placed,
    carried_findings,
    counted,
    extinguisher_findings,
    fuel_point_findings,
    travel_findings,
)
from sequencer.checks.fire import Cut, burn_findings
from sequencer.checks.rules import Night, rule_findings
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.motion.following import Followed, straight_ways
from sequencer.show.burning import PlannedBurn, known_fuel, lit_at_once, planned_burns
from sequencer.show.house_rules import rules_of
from sequencer.show.staged import Staged

SOAK = ("soak-seconds", "spin-off-seconds")


def safety_findings(show: Staged) -> list[Finding]:
    """Findings of fire, crew and house rules.

    Raises
    ------
    InputError
        If the show's own file of rules cannot be used.
    ValueError
        If the fuel or the rule profile is not known.
    """
    book = rules_of(show)
    burns = planned_burns(show, refuel_seconds=refuel_seconds(book))
    at_once, _ = lit_at_once(burns)
    if not burns:
        return role_findings(
            crew_of(show), show.show.names, lit=(), apart=book.asked("roles-apart")
        )
    return [
        *fire(show, book, burns),
        *crew(show, book, burns, at_once),
        *equipment(show, book, burns, at_once),
        *rule_findings(night_of(show, burns), book),
    ]


def refuel_seconds(book: RuleBook) -> float:
    """Time to soak and spin off [s] by the rules in force."""
    rules = [book.strictest(kind) for kind in SOAK]
    return sum(rule.number for rule in rules if rule is not None)


def fire(show: Staged, book: RuleBook, burns: Sequence[PlannedBurn]) -> list[Finding]:
    """Burns against burning time."""
    share = _needed(book, "burn-share")
    own = show.show.fire.reserve if show.show.fire else share.number
    if own < share.number:
        share = Rule(
            kind=share.kind,
            value=own,
            printed=f"at most {own:g} of the burning time, fire, reserve",
            profile="this show",
            source=share.source,
            mark="as entered",
        )
    positions = [show.position(burn.start) for burn in burns]
    return burn_findings(burns, share=share, cuts=cuts_of(show), positions=positions)


def crew(show: Staged, book: RuleBook, burns: Sequence[PlannedBurn], at_once: int) -> list[Finding]:
    """People: numbers, roles, watch and response."""
    people = crew_of(show)
    lit = tuple(dict.fromkeys(burn.who for burn in burns))
    return [
        *number_findings(people, lit_at_once=at_once, book=book),
        *role_findings(people, show.show.names, lit=lit, apart=book.asked("roles-apart")),
        *watch_findings(
            followed_of(show, burns),
            people,
            limit=_needed(book, "response-time"),
            clock=show,
            ways_to=ways_of(show),
        ),
        *_bare_posts(show),
    ]


def equipment(
    show: Staged, book: RuleBook, burns: Sequence[PlannedBurn], at_once: int
) -> list[Finding]:
    """Things: towels, blankets, extinguishers, the fuel point."""
    venue = show.show.venue
    followed = followed_of(show, burns)
    placed = tuple(
        Placed(place=each.at, rating=each.rating, kind=each.kind) for each in venue.extinguishers
    )
    reach = {dancer.name: dancer.reach for dancer in show.dancers}
    carried = counted(item for post in show.show.crew for item in post.equipment)
    found = [
        *carried_findings(carried, lit_at_once=at_once, book=book),
        *extinguisher_findings(placed, lit_at_once=at_once, book=book, act=_middle(show, burns)),
        *travel_findings(
            placed,
            followed,
            fuel_point=venue.fuel_station,
            act_edge=reach,
            book=book,
            clock=show,
            ways_to=ways_of(show),
        ),
        *fuel_point_findings(
            venue.fuel_station,
            followed,
            act_edge=reach,
            audience={line.name: line.line for line in venue.audience},
            book=book,
            clock=show,
        ),
    ]
    rule = book.strictest("fuel-point-distance")
    if venue.fuel_station is None and rule is not None:
        found.append(
            Finding(
                code="not-recorded",
                severity="warn",
                who=(),
                start=None,
                end=None,
                position=None,
                message="the fuel point is not recorded; a blank counts as unmet",
                remedies=("write it under venue, fuel_station",),
                source=rule.citation,
            )
        )
    return found


def crew_of(show: Staged) -> list[Duty]:
    """The crew as the checks see it."""
    return [
        Duty(who=post.name, place=post.post, duty=post.duty, watches=post.watches)
        for post in show.show.crew
    ]


def followed_of(show: Staged, burns: Sequence[PlannedBurn]) -> list[Followed]:
    """Every burn with its performer's way over the floor."""
    floors = {dancer.name: dancer.floor for dancer in show.dancers}
    return [
        Followed(who=burn.who, floor=floors[burn.who], start=burn.start, end=burn.end)
        for burn in burns
    ]


def cuts_of(show: Staged) -> list[Cut]:
    """Section borders and block borders at which a flame may be put out, by time."""
    found: dict[float, Cut] = {}
    song = show.song
    for section, name in zip(song.sections, song.section_names(), strict=True):
        beat = round(float(show.tempo.beats_from_seconds(section.start)))
        seconds = show.seconds(beat)
        if 0 <= seconds <= song.duration:
            found[round(seconds, 3)] = Cut(
                seconds=seconds, position=show.position(beat), label=name
            )
    for block in show.blocks:
        seconds = show.seconds(block.start)
        found.setdefault(
            round(seconds, 3),
            Cut(seconds=seconds, position=show.position(block.start), label=block.title),
        )
    return [found[key] for key in sorted(found)]


def night_of(show: Staged, burns: Sequence[PlannedBurn]) -> Night:
    """What the show records about its place and evening."""
    venue, fire_ = show.show.venue, show.show.fire
    year = _year(show)
    return Night(
        indoors=venue.setting == "indoors",
        sprinklers=venue.sprinklers,
        permit=show.show.rules.permit,
        wind=venue.wind,
        fuel=known_fuel(show),
        fuel_on_site=fire_.fuel_on_site if fire_ else None,
        flame=fire_.flame if fire_ else None,
        ages={
            # born on the last day of that year: the least age it can be
            each.name: None if each.birth_year is None else year - each.birth_year - 1
            for each in show.show.cast
        },
        burns=bool(burns),
    )


def ways_of(_show: Staged) -> WaysTo:
    """Walking ways over this stage."""
    return straight_ways


def _needed(book: RuleBook, kind: str) -> Rule:
    rule = book.strictest(kind)
    if rule is None:
        raise ValueError(f"no rule in force says anything of {kind}")
    return rule


def _bare_posts(show: Staged) -> list[Finding]:
    return [
        Finding(
            code="post-without-equipment",
            severity="warn",
            who=(post.name,),
            start=None,
            end=None,
            position=None,
            message=f"{post.name} stands by as {post.duty} with nothing in hand",
            remedies=("give a damp towel or a fire blanket, under equipment",),
            source="damp towel ready at each spotter: Kansas City MO §26-319 [A1; read]; "
            "common practice",
            where=post.post,
        )
        for post in show.show.crew
        if post.duty == "spotter" and not post.equipment
    ]


def _middle(show: Staged, burns: Sequence[PlannedBurn]) -> tuple[float, float]:
    """Middle of the places at which performers are lit [m, stage frame]."""
    floors = {dancer.name: dancer.floor for dancer in show.dancers}
    places = [floors[burn.who].at(beat).place for burn in burns for beat in (burn.start, burn.end)]
    return (
        float(sum(place[0] for place in places) / len(places)),
        float(sum(place[1] for place in places) / len(places)),
    )


def _year(show: Staged) -> int:
    """Year of the show's own date, so that the same file gives the same verdict; else this year's."""
    if show.show.date:
        return int(show.show.date[:4])
    return dt.datetime.now(tz=dt.UTC).year
