"""Safety people: who watches each lit performer, and whether help arrives in time.

Inputs are plain records; places in the stage frame [m], time in beats. A response is the reaction of
one who watches plus the way at a walking approach.
Sources: Woods et al. 2015 (reaction); EN ISO 13855:2010 (approach speed); the limit is a rule of the
book in force.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import dist
from typing import Protocol

from sequencer.facts.pace import reach_in, reactions, response_seconds, speeds
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.motion.following import Farthest, Followed, Ways, farthest, straight_ways

SPARE = 0.05  # [m] by which a proposed post is nearer than the limit asks


class Clock(Protocol):
    """What turns beats into seconds and bar.beat."""

    def seconds(self, beat: float) -> float:
        """Second of the track."""
        ...

    def position(self, beat: float) -> str:
        """bar.beat as text."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """A person of the crew and one thing they do."""

    who: str
    place: tuple[float, float]  # [m, stage frame]
    duty: str  # spotter, perimeter, fuel keeper, lead
    watches: tuple[str, ...] = ()  # empty: everybody


WaysTo = Callable[[Sequence[tuple[float, float]]], Ways]


def watch_findings(
    followed: Sequence[Followed],
    crew: Sequence[Duty],
    *,
    limit: Rule,
    clock: Clock,
    ways_to: WaysTo = straight_ways,
) -> list[Finding]:
    """Lit performers whom nobody watches, or whom no watcher reaches in time.

    Parameters
    ----------
    followed : sequence of Followed
        Each burn with its performer's way over the floor.
    crew : sequence of Duty
    limit : Rule
        Longest response.
    clock : Clock
    ways_to : callable
        Makes ways to posts; straight where nothing stands between.
    """
    found = []
    watched: list[Followed] = []
    posts: list[list[Duty]] = []
    for burn in followed:
        own = watchers_of(burn.who, crew)
        if own:
            watched.append(burn)
            posts.append(own)
        else:
            found.append(_nobody(burn, crew, clock))
    reach = reach_in(limit.number)
    ways = [ways_to([each.place for each in own]) for own in posts]
    for burn, own, worst in zip(watched, posts, farthest(watched, ways, reach), strict=True):
        if worst.spans:
            remedies = _remedies(burn, own, worst, reach, watched, posts, ways_to)
            found.append(_out_of_reach(burn, own[worst.post], worst, limit, clock, remedies))
    return found


def watchers_of(who: str, crew: Sequence[Duty]) -> list[Duty]:
    """Spotters who watch a performer; one who watches themselves watches nobody."""
    return [
        each
        for each in crew
        if each.duty == "spotter"
        and each.who.casefold() != who.casefold()
        and (not each.watches or who in each.watches or "all" in each.watches)
    ]


def role_findings(
    crew: Sequence[Duty], cast: Sequence[str], *, lit: Sequence[str], apart: Rule | None
) -> list[Finding]:
    """People with more than one role: a spotter does nothing else."""
    duties: dict[str, list[str]] = {}
    names: dict[str, str] = {}
    for each in crew:
        names.setdefault(each.who.casefold(), each.who)
        duties.setdefault(each.who.casefold(), []).append(each.duty)
    performers = {name.casefold() for name in cast}
    burning = {name.casefold() for name in lit}
    found = []
    for key, own in duties.items():
        roles = list(dict.fromkeys(own))
        if key in performers:
            roles.append("lit performer" if key in burning else "performer")
        if len(roles) < 2:
            continue
        # Two crew roles of which none is spotting are a rule's matter; fire and spotting never mix.
        serious = key in burning or "spotter" in roles
        found.append(
            Finding(
                code="crew-doubles",
                severity="stop" if serious else "warn",
                who=(names[key],),
                start=None,
                end=None,
                position=None,
                message=f"{names[key]} is {' and '.join(roles)}: one person, one role",
                remedies=(f"name another person as {roles[0]}", f"take {names[key]} off one role"),
                source=apart.citation if apart else "one person, one role: common practice",
            )
        )
    return found


def number_findings(
    crew: Sequence[Duty], *, lit_at_once: int, book: RuleBook, audience: int | None = None
) -> list[Finding]:
    """Too few people for a rule; each person counts once, for one duty."""
    asked = (
        ("spotters", ("spotter",), "spotter"),
        ("perimeter-guards", ("perimeter",), "perimeter guard"),
        ("fuel-keepers", ("fuel keeper",), "fuel keeper"),
        ("stewards", ("spotter", "perimeter", "fuel keeper", "lead"), "steward"),
    )
    found = []
    for kind, duties, word in asked:
        needed = book.needed(kind, lit_at_once, audience)
        if needed is None or lit_at_once == 0:
            continue
        number, rule = needed
        have = len({each.who.casefold() for each in crew if each.duty in duties})
        if have >= number:
            continue
        missing = number - have
        remedies = [f"add {missing} {_plural(word, missing)} to the crew"]
        if rule.count.each and kind == "spotters" and have * rule.count.each > 0:
            remedies.append(f"light at most {have * rule.count.each} at once")
        found.append(
            Finding(
                code="too-few-safety",
                severity="stop",
                who=(),
                start=None,
                end=None,
                position=None,
                message=f"{have} {_plural(word, have)} for {lit_at_once} lit at once; "
                f"the rule asks for {number}",
                remedies=tuple(remedies),
                source=rule.citation,
            )
        )
    return found


def _nobody(burn: Followed, crew: Sequence[Duty], clock: Clock) -> Finding:
    spotters = [each.who for each in crew if each.duty == "spotter"]
    remedies = [f"let {name} watch {burn.who} too" for name in spotters[:1]]
    remedies.append(f"add a spotter who watches {burn.who}")
    return Finding(
        code="nobody-watching",
        severity="stop",
        who=(burn.who,),
        start=clock.seconds(burn.start),
        end=clock.seconds(burn.end),
        position=clock.position(burn.start),
        message=f"{burn.who} is lit and no spotter watches",
        remedies=tuple(remedies),
        source="at least one spotter at every lit performance: North American fire-arts guidelines "
        "2.1 [A36; read]",
        where=_spot(burn, burn.start),
    )


def _out_of_reach(
    burn: Followed,
    post: Duty,
    worst: Farthest,
    limit: Rule,
    clock: Clock,
    remedies: tuple[str, ...],
) -> Finding:
    start, end = worst.spans[0][0], worst.spans[-1][1]
    return Finding(
        code="post-out-of-reach",
        severity="stop",
        who=(burn.who, post.who),
        start=clock.seconds(start),
        end=clock.seconds(end),
        position=clock.position(start),
        message=f"{burn.who} is {worst.distance:.2f} m from {post.who}, the nearest who watches, "
        f"at {clock.position(worst.beat)}: {response_seconds(worst.distance):.1f} s to arrive, "
        f"{limit.number:g} s allowed ({reach_in(limit.number):.2f} m)",
        remedies=remedies,
        source=f"{limit.citation} Reaction: {reactions()['visual'].source.citation}. "
        f"Approach: {speeds()['approach'].source.citation}.",
        where=worst.place,
    )


def _remedies(
    burn: Followed,
    own: Sequence[Duty],
    worst: Farthest,
    reach: float,
    watched: Sequence[Followed],
    posts: Sequence[Sequence[Duty]],
    ways_to: WaysTo,
) -> tuple[str, ...]:
    """Moving the nearest post, if that is proven to cover all it watches; else one post more."""
    post = own[worst.post]
    gap = dist(post.place, worst.place)
    step = worst.distance - reach + SPARE
    found = []
    if gap > step:
        moved = (
            post.place[0] + (worst.place[0] - post.place[0]) * step / gap,
            post.place[1] + (worst.place[1] - post.place[1]) * step / gap,
        )
        if _covers(post, moved, burn, reach, watched, posts, ways_to):
            found.append(
                f"move {post.who} {step:.2f} m to [{moved[0]:.2f}, {moved[1]:.2f}]: everybody "
                "they watch is then in reach"
            )
    if not found:
        found.append(
            f"move {post.who} at least {step:.2f} m toward [{worst.place[0]:.1f}, "
            f"{worst.place[1]:.1f}]; another post must then cover what they leave"
        )
    found.append(
        f"add a spotter for {burn.who} within {reach:.1f} m of [{worst.place[0]:.1f}, "
        f"{worst.place[1]:.1f}], outside every reach"
    )
    return tuple(found)


def _covers(
    post: Duty,
    moved: tuple[float, float],
    burn: Followed,
    reach: float,
    watched: Sequence[Followed],
    posts: Sequence[Sequence[Duty]],
    ways_to: WaysTo,
) -> bool:
    """True if, with one post moved, nobody whom it watches is out of reach who was not before."""
    concerned = [i for i, own in enumerate(posts) if post in own]
    after = [
        ways_to([moved if each == post else each.place for each in posts[i]]) for i in concerned
    ]
    before = [ways_to([each.place for each in posts[i]]) for i in concerned]
    burns = [watched[i] for i in concerned]
    for each, old, new in zip(
        burns, farthest(burns, before, reach), farthest(burns, after, reach), strict=True
    ):
        if new.spans and (each == burn or not old.spans):
            return False
    return True


def _spot(burn: Followed, beat: float) -> tuple[float, float]:
    place = burn.floor.at(beat).place
    return float(place[0]), float(place[1])


def _plural(word: str, number: int) -> str:
    return word if number == 1 else f"{word}s"
