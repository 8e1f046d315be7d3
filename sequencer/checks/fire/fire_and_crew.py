"""All checks of fire, crew and house rules on one staged show: its records in, findings out."""

import datetime as dt
from dataclasses import replace

from sequencer.checks.fire.audience_room import Crowd, crowd_findings
from sequencer.checks.fire.burning_time import Cut, burn_findings
from sequencer.checks.fire.crew import number_findings, role_findings
from sequencer.checks.fire.equipment import carried_findings, counted
from sequencer.checks.fire.fuel_point import fuel_point_findings
from sequencer.checks.fire.heat import Wicks, flame_findings, glow_findings
from sequencer.checks.fire.records import Night, night_finding
from sequencer.checks.fire.rules import rule_findings
from sequencer.checks.fire.tools import Placed, extinguisher_findings, travel_findings
from sequencer.checks.fire.watch_kept import plan_findings, sight_findings, watch_findings
from sequencer.checks.fire.weather import Surroundings, downwind_findings
from sequencer.checks.outcome import Outcome
from sequencer.facts.combustion import burnt_heat_release
from sequencer.facts.profiles import Rule
from sequencer.findings import Finding
from sequencer.safety.burning import known_fuel
from sequencer.safety.safety_plan import (
    SafetyPlan,
    proposed_posts,
    refuel_rules,
    safety_plan,
    watched_by_one,
)
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import resting_flame

MENDED_BY_POSTS = ("nobody-watching", "post-out-of-reach", "sight-blocked")


NO_AUDIENCE = "How many people watch, and their ways in and out, were not looked at."
EXITS = "Exits and floor are simple flow arithmetic: ways to the exits, steps and prams were not looked at."
NOT_CHECKED = (
    "Crew walk at a published pace, round scenery; people, props and cables in their way are not in it.",
    "Glow is a point source's: smoke, sparks and flames turned by the wind were not looked at.",
    NO_AUDIENCE,
    "Whether the texts of the rules have changed since they were read was not looked at.",
)


def safety(show: Staged) -> Outcome:
    """Findings of fire, crew and house rules, and what was not looked at.

    Raises
    ------
    InputError
        As `safety_findings`.
    """
    unseen: tuple[str, ...] = NOT_CHECKED
    if show.show.venue.audience_size is not None:
        unseen = tuple(EXITS if words == NO_AUDIENCE else words for words in NOT_CHECKED)
    return Outcome(findings=tuple(safety_findings(show)), not_checked=unseen if show.lit else ())


def safety_findings(show: Staged) -> list[Finding]:
    """Findings of fire, crew and house rules.

    Raises
    ------
    InputError
        If the show's own file of rules, or its log of burns, cannot be used.
    """
    plan = safety_plan(show)
    if not plan.burns:
        apart = plan.book.asked("roles-apart")
        return role_findings(plan.crew, show.show.names, lit=(), apart=apart)
    return [
        *fire(show, plan),
        *heat(show, plan),
        *crew(show, plan),
        *equipment(show, plan),
        *rule_findings(night_of(show, plan), plan.book),
        *downwind_findings(
            show.show.venue.wind_from, night_of(show, plan), around(show, plan), plan.book
        ),
        *crowd_findings(crowd_of(show)),
        *_few_callers(show, plan),
        *_nearer_audience(show, plan),
    ]


def fire(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """Burns against burning time."""
    share = _needed(plan, "burn-share")
    own = show.show.fire.reserve if show.show.fire else share.number
    capped: list[Finding] = []
    if own > share.number:
        capped.append(
            night_finding(
                "limit-capped", "warn",
                f"fire, reserve: {own:.0%} of the burning time is above what the rules allow; "
                f"{share.number:.0%} holds", share.citation,
                (f"write reserve: {share.number:g} or less, or bring the authority's own rule",),
            )
        )  # fmt: skip
    if own < share.number:
        share = Rule(
            kind=share.kind,
            value=own,
            printed=f"at most {own:g} of the burning time, fire, reserve",
            profile="this show",
            source=share.source,
            mark="as entered",
        )
    positions = [show.position(burn.start) for burn in plan.burns]
    cuts = cuts_of(show)
    return [
        *capped,
        *burn_findings(
            plan.burns, share=share, cuts=cuts, positions=positions, refuel=refuel_rules(plan.book)
        ),
    ]


def heat(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """Flames and their glow."""
    stated = show.show.fire.flame if show.show.fire else 0.0
    wicks = wicks_of(show, plan)
    edges = {line.name: line.line for line in show.show.venue.audience}
    return [
        *flame_findings(wicks, stated=stated),
        *glow_findings(plan.followed, wicks, edges, limit=_needed(plan, "audience-flux")),
    ]


def wicks_of(show: Staged, plan: SafetyPlan) -> dict[str, Wicks]:
    """What each performer burns; those whose soak or burning time is not known are left out."""
    liquid = known_fuel(show)
    found: dict[str, Wicks] = {}
    if liquid is None or liquid.heat_of_combustion is None:
        return found
    burning = {burn.who: burn.burn for burn in plan.burns if burn.burn is not None}
    for dancer, record in zip(show.dancers, show.show.cast, strict=True):
        burn = burning.get(dancer.name)
        props = record.props.values()
        if burn is None or any(prop.fuel_mass is None for prop in props):
            continue
        mass = sum(prop.fuel or 0.0 for prop in props)
        flames = [resting_flame(prop, liquid, burn.seconds) or 0.0 for prop in props]
        watts = burnt_heat_release(
            mass, heat_of_combustion=liquid.heat_of_combustion.highest, seconds=burn.seconds
        )
        hot = max((prop.hot_radius for prop in dancer.props.values()), default=0.0)
        found[dancer.name] = Wicks(heat=float(watts), reach=dancer.reach - hot, flame=max(flames))
    return found


def crew(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """People: numbers, roles, watch, sight and response."""
    lit = tuple(dict.fromkeys(burn.who for burn in plan.burns))
    _, rule = watched_by_one(plan.book, plan.lit_at_once)
    watched = watch_findings(
        plan.followed,
        plan.crew,
        limit=_needed(plan, "response-time"),
        clock=show,
        ground=plan.ground,
    )
    people = [
        *number_findings(
            plan.crew,
            lit_at_once=plan.lit_at_once,
            book=plan.book,
            audience=show.show.venue.audience_size,
        ),
        *watched,
        *sight_findings(plan.followed, plan.crew, tall=plan.tall, clock=show),
    ]
    return [
        *_with_posts(show, plan, people),
        *role_findings(plan.crew, show.show.names, lit=lit, apart=plan.book.asked("roles-apart")),
        *plan_findings(
            plan.watch,
            each=plan.each,
            rule=rule,
            clock=show,
            said={each.who[0] for each in watched if each.code == "nobody-watching"},
        ),
        *_bare_posts(show),
    ]


def _with_posts(show: Staged, plan: SafetyPlan, found: list[Finding]) -> list[Finding]:
    """The same findings; those that other posts would mend tell where the best ones are."""
    if not any(each.code in MENDED_BY_POSTS for each in found):
        return found
    posting = proposed_posts(show, plan)
    if posting is None:
        return found
    places = ", ".join(f"[{x:.1f}, {y:.1f}]" for x, y in posting.places)
    word = "spotter" if len(posting.places) == 1 else "spotters"
    said = (
        f"{len(posting.places)} {word} at {places} reach everybody within "
        f"{posting.response:.1f} s ({posting.way:.1f} m)"
    )
    return [
        replace(each, remedies=(*each.remedies, said)) if each.code in MENDED_BY_POSTS else each
        for each in found
    ]


def equipment(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """Things: towels, blankets, extinguishers, the fuel point."""
    venue = show.show.venue
    placed = tuple(
        Placed(place=each.at, rating=each.rating, kind=each.kind) for each in venue.extinguishers
    )
    reach = {dancer.name: dancer.reach for dancer in show.dancers}
    carried = counted(item for post in show.show.crew for item in post.equipment)
    found = [
        *carried_findings(carried, lit_at_once=plan.lit_at_once, book=plan.book),
        *extinguisher_findings(
            placed, lit_at_once=plan.lit_at_once, book=plan.book, act=_middle(plan)
        ),
        *travel_findings(
            placed,
            plan.followed,
            fuel_point=venue.fuel_station,
            fuel_volume=show.show.fire.fuel_on_site if show.show.fire else None,
            act_edge=reach,
            book=plan.book,
            clock=show,
            ground=plan.ground,
        ),
        *fuel_point_findings(
            venue.fuel_station,
            plan.followed,
            act_edge=reach,
            audience={line.name: line.line for line in venue.audience},
            book=plan.book,
            clock=show,
        ),
    ]
    rule = plan.book.strictest("fuel-point-distance")
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


def night_of(show: Staged, plan: SafetyPlan) -> Night:
    """What the show records about its place and evening."""
    venue, fire_ = show.show.venue, show.show.fire
    year = _year(show)
    return Night(
        indoors=venue.setting == "indoors",
        open_sky=venue.ceiling == "open",
        sprinklers=venue.sprinklers,
        permit=show.show.rules.permit,
        wind=venue.wind,
        gust_limit=show.show.weather.gusts,
        fuel=known_fuel(show),
        fuel_on_site=fire_.fuel_on_site if fire_ else None,
        fuel_of={} if plan.fuel is None else {who: plan.fuel.of(who) for who in show.show.names},
        fuel_prepared=None if plan.fuel is None else plan.fuel.prepared,
        unweighed=() if plan.fuel is None else plan.fuel.unweighed,
        flame=fire_.flame if fire_ else None,
        ages={
            # born on the last day of that year: the least age it can be
            each.name: None if each.birth_year is None else year - each.birth_year - 1
            for each in show.show.cast
        },
        burns=bool(plan.burns),
    )


def around(show: Staged, plan: SafetyPlan) -> Surroundings:
    """What lies round the places that are held while lit."""
    venue = show.show.venue
    flames: dict[str, list[tuple[float, float]]] = {}
    for burn in plan.followed:
        own = flames.setdefault(burn.who, [])
        for beat in (burn.start, burn.end):
            x, y = burn.floor.at(beat).place
            own.append((float(x), float(y)))
        own += [
            standing.spots[burn.who][:2]
            for standing in show.standings
            if burn.who in standing.spots
            and standing.start < burn.end
            and standing.end > burn.start
        ]
    return Surroundings(
        flames={who: sorted(set(own)) for who, own in flames.items()},
        fuel_point=venue.fuel_station,
        audience={line.name: line.line for line in venue.audience},
        scenery={each.name: each.outline for each in venue.scenery if each.combustible},
    )


def crowd_of(show: Staged) -> Crowd:
    """What the show records about its audience."""
    venue = show.show.venue
    return Crowd(
        people=venue.audience_size,
        area=venue.audience_area,
        exits={place.name: place.width for place in venue.exits},
        leave_in=venue.leave_in,
    )


def _few_callers(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """A stop call that not everybody may give."""
    callers = show.show.stop_call.callers
    rule = plan.book.asked("stop-word")
    if "all" in callers or rule is None:
        return []
    return [
        night_finding(
            "stop-call-kept", "warn", f"only {', '.join(callers)} may stop the act; whoever sees danger first may "
            "be another", f"{rule.citation}; anyone of the crew calls it: common practice",
            ("write callers: all",),
        )
    ]  # fmt: skip


def _needed(plan: SafetyPlan, kind: str) -> Rule:
    rule = plan.book.strictest(kind)
    if rule is None:
        raise ValueError(f"no rule in force says anything of {kind}")
    return rule


def _nearer_audience(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """A distance to the audience that the show sets below its rules, by a recorded permit."""
    rules = show.show.rules
    asked, used = plan.book.audience_distance(plan.lit_at_once)
    if rules.audience is None or rules.permit is None or rules.audience >= asked:
        return []
    return [
        Finding(
            code="limit-loosened",
            severity="note",
            who=(),
            start=None,
            end=None,
            position=None,
            message=f"audience to prop and flame: {rules.audience:.2f} m instead of {asked:.2f} m, by "
            f"reference {rules.permit}",
            source=" ".join(rule.citation for rule in used),
        )
    ]


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


def _middle(plan: SafetyPlan) -> tuple[float, float]:
    """Middle of the places at which performers are lit [m, stage frame]."""
    places = [
        each.floor.at(beat).place for each in plan.followed for beat in (each.start, each.end)
    ]
    return (
        float(sum(place[0] for place in places) / len(places)),
        float(sum(place[1] for place in places) / len(places)),
    )


def _year(show: Staged) -> int:
    """Year of the show's own date, so that the same file gives the same verdict; else this year's."""
    if show.show.date:
        return int(show.show.date[:4])
    return dt.datetime.now(tz=dt.UTC).year
