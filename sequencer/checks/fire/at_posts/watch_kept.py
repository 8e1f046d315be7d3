"""The watch over lit performers: a spotter watches them, sees them, and can reach them in time.

Places in the stage frame [m], time in beats. The limit is a distance on foot; a rule that gives a time is met at a slow
walk, the reaction counted, which is the safe side for a rescuer. A spotter must see a performer from the knee up.
Sources: Woods et al. 2015 (reaction); LaPlante and Kaeser 2007 (slow walk); the limit is a rule of the book in force.
"""

from collections.abc import Callable, Collection, Sequence
from dataclasses import replace
from math import dist

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, BeatReader, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.facts.pace import reactions, slow_walk, walk_words
from sequencer.facts.profiles import Rule
from sequencer.findings import Finding
from sequencer.geometry.certified import TOLERANCE
from sequencer.geometry.regions import Point
from sequencer.geometry.walking import NO_WAY, WalkableFloor, Ways
from sequencer.motion.clearance.to_posts import Farthest, Followed, beyond, closest, farthest
from sequencer.safety.duties.watching import Duty, WatchPlan, longest_walk, watchers_of
from sequencer.safety.safety_plan import (
    PLAN_PARTS,
    SafetyPlan,
    rewatched,
    safety_plan,
    watched_by_one,
)
from sequencer.safety.site_ground.post_ground import may_stand, proposed_posts
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged
from sequencer.units import rounded_down, rounded_up

NOT_CHECKED = "Crew are taken to walk at a published pace round scenery; people, props and cables in their way were not checked."

NOBODY = "nobody-watching"
_SPARE = 0.05  # [m] by which a proposed post is nearer than the limit
SIGHT_MARGIN = 0.05  # [m] by which a line of sight must clear what stands on the floor


@where_lit
def watch(show: Staged) -> Outcome:
    """The watch over every lit performer of a show.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    return _outcome(show, posts=True)


@where_lit
@once_per_show_with(*PLAN_PARTS)
def _without_posts(show: Staged) -> Outcome:
    """The same, without seeking places for posts."""
    return _outcome(show, posts=False)


def _outcome(show: Staged, *, posts: bool) -> Outcome:
    plan = safety_plan(show)
    limit = longest_walk(plan.book)
    watched = watch_findings(
        plan.followed,
        plan.crew,
        limit=limit,
        clock=show,
        ground=plan.ground,
        allowed=(lambda duty, place: may_stand(show, duty, place)) if posts else None,
    )
    watched += assigned_findings(plan.watch, limit=limit, clock=show, known=watched)
    sights = sight_findings(plan.followed, plan.crew, tall=plan.tall, clock=show)
    _, rule = watched_by_one(plan.book, plan.lit_at_once)
    alone = {each.who[0] for each in watched if each.code == NOBODY}
    found = [*watched, *sights]
    return Outcome(
        findings=(
            *(_with_posts(show, found, limit) if posts else found),
            *plan_findings(plan.watch, each=plan.each, rule=rule, clock=show, unwatched=alone),
        ),
        not_checked=(NOT_CHECKED,),
    )


def _with_posts(
    show: Staged, found: list[Finding], limit: tuple[float, Rule] | None
) -> list[Finding]:
    """The findings, each with posts that keep the limit as one more mend, if there are such."""
    if not found:
        return []
    plan = safety_plan(show)
    posting = proposed_posts(show, plan, within=limit[0] if limit else None)
    if posting is None or not _kept(plan, posting.places, limit[0] if limit else NO_WAY):
        return found
    places = ", ".join(f"[{_exact(x)}, {_exact(y)}]" for x, y in posting.places)
    word = "spotter" if len(posting.places) == 1 else "spotters"
    mend = (
        f"post {len(posting.places)} {word} at {places}, nobody more than a "
        f"{walk_words(posting.way)}"
    )
    return [replace(each, remedies=(*each.remedies, mend)) for each in found]


def _kept(plan: SafetyPlan, places: Sequence[Point], limit: float) -> bool:
    """Whether spotters at some places watch everybody within a walk, as many at once as each may."""
    crew = [each for each in plan.crew if each.duty != "spotter"]
    crew += [
        Duty(who=f"spotter {k}", place=place, duty="spotter") for k, place in enumerate(places)
    ]
    watch = rewatched(plan, crew)
    return not watch.unwatched and all(each.way <= limit for each in watch.watches)


def _exact(value: float) -> str:
    """A coordinate to 1 cm, for which alone the walk is promised; never as -0.0."""
    return f"{round(value, 2) + 0.0:g}"


def watch_findings(
    followed: Sequence[Followed],
    crew: Sequence[Duty],
    *,
    limit: tuple[float, Rule] | None,
    clock: BeatReader,
    ground: WalkableFloor,
    allowed: Callable[[Duty, Point], bool] | None = lambda _duty, _place: True,
) -> list[Finding]:
    """Lit performers whom nobody watches, or who are too long a walk from every spotter of theirs.

    Parameters
    ----------
    followed : sequence of Followed
        Each burn with its performer's path over the floor.
    crew : sequence of Duty
    limit : (float, Rule), optional
        Longest walk [m], and the rule that sets it; None if no rule does.
    clock : BeatReader
    ground : WalkableFloor
        Obstacles that the crew walk round.
    allowed : callable, optional
        Whether somebody of the crew may be sent to a place; None if no such place is to be sought.
    """
    found = []
    watched: list[Followed] = []
    posts: list[list[Duty]] = []
    for burn in followed:
        watchers = watchers_of(burn.who, crew)
        if watchers:
            watched.append(burn)
            posts.append(watchers)
        else:
            found.append(_nobody(burn, crew, clock))
    if limit is None:
        return found
    reach = limit[0]
    places = [tuple(each.place for each in some) for some in posts]
    known = {each: ground.ways_to(each) for each in dict.fromkeys(places)}  # shared by many burns
    ways = [known[each] for each in places]
    longest = farthest(watched, ways, reach)
    within = [not worst.spans for worst in longest]
    for burn, watchers, worst in zip(watched, posts, longest, strict=True):
        if worst.spans:
            remedies = _remedies(
                burn, watchers, worst, reach, watched, posts, within, ground, allowed
            )
            found.append(_out_of_reach(burn, watchers[worst.post], worst, limit, clock, remedies))
    return found


def assigned_findings(
    plan: WatchPlan,
    *,
    limit: tuple[float, Rule] | None,
    clock: BeatReader,
    known: Sequence[Finding] = (),
) -> list[Finding]:
    """Watches in which the spotter is farther away than allowed, though another one, who is not free, is near enough.

    Parameters
    ----------
    plan : WatchPlan
    limit : (float, Rule), optional
        Longest walk [m], and the rule that sets it; None if no rule does.
    clock : BeatReader
    known : sequence of Finding
        Performers of these are already reported.
    """
    if limit is None:
        return []
    told = {each.who[0] for each in known}
    most, rule = limit
    return [
        Finding(
            code="post-out-of-reach",
            severity="stop",
            who=(watch.who, watch.spotter),
            start=clock.seconds(watch.start),
            end=clock.seconds(watch.end),
            position=clock.position(watch.start),
            message=f"{watch.spotter}, who watches {watch.who} then, is up to {rounded_up(watch.way, 2):.2f} m away "
            f"({walk_words(watch.way)}); {rounded_down(most, 2):.2f} m allowed, and whoever is nearer is not free",
            remedies=(
                f"move {watch.spotter} nearer to {watch.who}",
                f"add a spotter for {watch.who}",
            ),
            source=_walk_source(rule),
        )
        for watch in plan.watches
        if watch.way - TOLERANCE > most and watch.who not in told
    ]


def sight_findings(
    followed: Sequence[Followed], crew: Sequence[Duty], *, tall: WalkableFloor, clock: BeatReader
) -> list[Finding]:
    """Moments at which scenery hides a lit performer from all of their spotters.

    Parameters
    ----------
    followed : sequence of Followed
        Each burn with its performer's path over the floor.
    crew : sequence of Duty
    tall : WalkableFloor
        Obstacles that hide a performer above the knee.
    clock : BeatReader
    """
    if not tall.obstacles:
        return []
    found = []
    for burn in followed:
        watchers = watchers_of(burn.who, crew)
        if not watchers:
            continue
        gaps = tall.sight_to([each.place for each in watchers])

        def best(places: Floats, gaps: Ways = gaps) -> Floats:
            return np.asarray(np.max(gaps(places), axis=1, keepdims=True))

        (worst,) = closest([burn], [best], SIGHT_MARGIN)
        if worst.spans:
            start, end = worst.spans[0][0], worst.spans[-1][1]
            found.append(
                Finding(
                    code="sight-blocked",
                    severity="stop",
                    who=(burn.who, *(each.who for each in watchers)),
                    start=clock.seconds(start),
                    end=clock.seconds(end),
                    position=clock.position(start),
                    message=f"scenery hides {burn.who} from everybody who watches them, "
                    f"{clock.at_aloud(worst.beat)}",
                    remedies=("move a post to where the line is free", "add a spotter there"),
                    source="a spotter watches: North American fire-arts guidelines 2.1 [A36; "
                    "read]; seen from the knee up: design choice",
                    where=worst.place,
                )
            )
    return found


def plan_findings(
    plan: WatchPlan,
    *,
    each: int,
    rule: Rule | None,
    clock: BeatReader,
    unwatched: Collection[str] = (),
) -> list[Finding]:
    """Lit performers for whom no spotter is free, and the hand-overs of the watch.

    Parameters
    ----------
    plan : WatchPlan
    each : int
        Most performers that one spotter watches at once.
    rule : Rule, optional
        The rule that sets this number.
    clock : BeatReader
    unwatched : collection of str
        Performers already reported as watched by nobody.
    """
    origin = rule.citation if rule else "one spotter, one performer: common practice"
    found = [
        Finding(
            code="watch-overloaded",
            severity="stop",
            who=(who,),
            start=clock.seconds(start),
            end=clock.seconds(end),
            position=clock.position(start),
            message=f"no spotter is free for {who}: each watches at most {each} at once",
            remedies=(f"let another spotter watch {who}", "light fewer at once"),
            source=origin,
        )
        for who, start, end in plan.unwatched
        if who not in unwatched
    ]
    found += [
        Finding(
            code="watch-handed-over",
            severity="note",
            who=(hand_over.who, hand_over.giver, hand_over.taker),
            start=clock.seconds(hand_over.beat),
            end=None,
            position=clock.position(hand_over.beat),
            message=f"{hand_over.taker} takes over from {hand_over.giver}, watching {hand_over.who}: announce it",
            source="common practice",
        )
        for hand_over in plan.hand_overs
    ]
    return found


def _nobody(burn: Followed, crew: Sequence[Duty], clock: BeatReader) -> Finding:
    spotters = [each.who for each in crew if each.duty == "spotter"]
    remedies = [f"let {name} watch {burn.who} too" for name in spotters[:1]]
    remedies.append(f"add a spotter who watches {burn.who}")
    return Finding(
        code=NOBODY,
        severity="stop",
        who=(burn.who,),
        start=clock.seconds(burn.start),
        end=clock.seconds(burn.end),
        position=clock.position(burn.start),
        message=f"{burn.who} is lit and no spotter is watching",
        remedies=tuple(remedies),
        source="at least one spotter at every lit performance: North American fire-arts guidelines "
        "2.1 [A36; read]",
        where=_spot(burn, burn.start),
    )


def _out_of_reach(
    burn: Followed,
    post: Duty,
    worst: Farthest,
    limit: tuple[float, Rule],
    clock: BeatReader,
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
        message=_reach_words(burn, post, worst, limit, clock),
        remedies=remedies,
        source=_walk_source(limit[1]),
        where=worst.place,
    )


def _walk_source(rule: Rule) -> str:
    """The rule; one that gives a time with the walk and the reaction by which it is judged."""
    if rule.kind.name == "response-distance":
        return rule.citation
    return (
        f"{rule.citation} Judged at a slow walk: {slow_walk().source.citation}. "
        f"Reaction: {reactions()['visual'].source.citation}."
    )


def _reach_words(
    burn: Followed, post: Duty, worst: Farthest, limit: tuple[float, Rule], clock: BeatReader
) -> str:
    when = clock.at_aloud(worst.beat)
    most, rule = limit
    if worst.distance >= NO_WAY:
        return f"none of their spotters can walk to {burn.who} {when}"
    timed = rule.kind.name == "response-time"
    allowed = f" ({rule.number:g} s at a slow walk)" if timed else ""
    return (
        f"{burn.who} is {rounded_up(worst.distance, 2):.2f} m from {post.who}, their nearest spotter, {when} "
        f"({walk_words(worst.distance)}); {rounded_down(most, 2):.2f} m allowed{allowed}"
    )


def _remedies(
    burn: Followed,
    watchers: Sequence[Duty],
    worst: Farthest,
    reach: float,
    watched: Sequence[Followed],
    posts: Sequence[Sequence[Duty]],
    within: Sequence[bool],
    ground: WalkableFloor,
    allowed: Callable[[Duty, Point], bool] | None,
) -> tuple[str, ...]:
    """Move the nearest post, if it may stand there and is proven to cover everybody it watches; or add a post."""
    post = watchers[worst.post]
    gap = dist(post.place, worst.place)
    step = worst.distance - reach + _SPARE
    found = []
    barred = False
    if gap > step and allowed is not None:
        moved = (
            post.place[0] + (worst.place[0] - post.place[0]) * step / gap,
            post.place[1] + (worst.place[1] - post.place[1]) * step / gap,
        )
        barred = not allowed(post, (round(moved[0], 2), round(moved[1], 2)))
        if not barred and _covers(post, moved, burn, reach, watched, posts, within, ground):
            found.append(
                f"move {post.who} {rounded_up(step, 2):.2f} m to [{moved[0]:.2f}, {moved[1]:.2f}]: everybody "
                "they watch is then in reach"
            )
    if not found and not barred:
        found.append(
            f"move {post.who} at least {rounded_up(step, 2):.2f} m toward [{worst.place[0]:.1f}, "
            f"{worst.place[1]:.1f}]; another post must then cover the rest"
        )
    found.append(
        f"add a spotter for {burn.who} within {rounded_down(reach, 1):.1f} m of [{worst.place[0]:.1f}, "
        f"{worst.place[1]:.1f}], outside every reach and not amid the performers"
    )
    return tuple(found)


def _covers(
    post: Duty,
    moved: tuple[float, float],
    burn: Followed,
    reach: float,
    watched: Sequence[Followed],
    posts: Sequence[Sequence[Duty]],
    within: Sequence[bool],
    ground: WalkableFloor,
) -> bool:
    """Whether moving one post brings a burn within reach, and none that is within reach out of it."""
    known: dict[tuple[Point, ...], Ways] = {}

    def ways_of(i: int) -> Ways:
        places = tuple(moved if each == post else each.place for each in posts[i])
        if places not in known:
            known[places] = ground.ways_to(places)
        return known[places]

    # Equal burns have equal posts, so the first of them stands for all. It decides most cases alone.
    own = watched.index(burn)
    if beyond([burn], [ways_of(own)], reach)[0]:
        return False
    kept = [i for i, watchers in enumerate(posts) if within[i] and post in watchers]
    # The last moment of a burn that is left behind shows it before anything is proven.
    for i in kept:
        ends = np.array([watched[i].start, watched[i].end])
        if np.any(np.min(ways_of(i)(watched[i].floor.at(ends).place), axis=1) > reach):
            return False
    return not any(beyond([watched[i] for i in kept], [ways_of(i) for i in kept], reach))


def _spot(burn: Followed, beat: float) -> tuple[float, float]:
    place = burn.floor.at(beat).place
    return float(place[0]), float(place[1])


CHECK = Check(
    name="watch",
    run=watch,
    codes={
        NOBODY: ("stop",),
        "post-out-of-reach": ("stop",),
        "sight-blocked": ("stop",),
        "watch-handed-over": ("note",),
        "watch-overloaded": ("stop",),
    },
    cautions={NOBODY: "crew-short"},
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
    unmended=_without_posts,
)
