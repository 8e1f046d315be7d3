"""Lines of sight: whether another performer stands between a spotter and whom they watch, and for how long.

Places in the stage frame [m], time in beats. A performer is hidden while the line from the post to the middle of
their body passes through another's trunk, as wide as the shoulders with hanging arms. It is looked for every half
second of a watch, so what is shorter may be missed; only what lasts is found.
Sources: a spotter watches (North American fire-arts guidelines 2.1 [A36; read]); how long somebody may be out of
sight is a design choice.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, where_lit
from sequencer.checks.outcome import Outcome, place_text
from sequencer.findings import Finding
from sequencer.geometry.regions import Point
from sequencer.motion.performers.dancer import Dancer
from sequencer.safety.duties.watching import Watch
from sequencer.safety.safety_plan import PLAN_PARTS, SafetyPlan, safety_plan
from sequencer.safety.site_ground.post_ground import posts_round
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged

LOOK = 0.5  # [s] between two looks
OUT_OF_SIGHT = 3.0  # [s] for which a performer who burns may be out of sight; a design choice
NOT_SEEN = "Whether crew, props in motion, smoke or darkness hide a performer was not checked."


@dataclass(frozen=True, slots=True, kw_only=True)
class Hidden:
    """A span in which one performer hides another from the spotter who watches them."""

    watch: Watch
    behind: tuple[str, ...]  # who stands in between
    start: float  # [s]
    end: float  # [s] the last look at which they are hidden


@where_lit
def lines_of_sight(show: Staged) -> Outcome:
    """Lit performers whom another performer hides from their spotter for longer than a moment.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    return _outcome(show, mends=True)


@where_lit
@once_per_show_with(*PLAN_PARTS)
def _unmended(show: Staged) -> Outcome:
    """The same, without seeking a better post."""
    return _outcome(show, mends=False)


def _outcome(show: Staged, *, mends: bool) -> Outcome:
    plan = safety_plan(show)
    posts = {duty.who: duty.place for duty in plan.crew}
    found = list(_hidden(show, plan.watch.watches, posts))
    better = {}
    if mends:
        for name in dict.fromkeys(each.watch.spotter for each in found):
            better[name] = _clear_post(show, plan, name)
    return Outcome(
        findings=tuple(_finding(show, each, better.get(each.watch.spotter)) for each in found),
        not_checked=(NOT_SEEN,),
    )


def hidden_spans(hidden: Bools) -> list[tuple[int, int]]:
    """First and last index of each run of true values."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], hidden, [False]]).astype(int)))
    return [(int(low), int(high) - 1) for low, high in edges.reshape(-1, 2)]


def between(post: Point, target: Floats, others: Floats, radius: Floats) -> Bools:
    """Which others stand in the line from a post to somebody.

    Parameters
    ----------
    post : Point
        [m, stage frame]
    target : ndarray, shape (n, 2) [m, stage frame]
        Places of who is watched.
    others : ndarray, shape (m, n, 2) [m, stage frame]
        Places of each other.
    radius : ndarray, shape (m,) [m]
        Half the breadth of each other.

    Returns
    -------
    between : ndarray, shape (m, n) [1]
        True where it is so.

    Notes
    -----
    Source: distance of a point from a line, by the cross product.
    """
    line = target - post
    length = np.maximum(np.hypot(line[:, 0], line[:, 1]), 1e-9)
    away = others - post
    along = (away[..., 0] * line[:, 0] + away[..., 1] * line[:, 1]) / length
    beside = np.abs(away[..., 0] * line[:, 1] - away[..., 1] * line[:, 0]) / length
    return np.asarray((along > 0) & (along < length) & (beside < radius[:, None]))


def _hidden(show: Staged, watches: Sequence[Watch], posts: Mapping[str, Point]) -> Iterator[Hidden]:
    for watch in watches:
        start, end = show.seconds(watch.start), show.seconds(watch.end)
        seconds = np.linspace(start, end, max(int(np.ceil((end - start) / LOOK)), 1) + 1)
        beats = np.asarray(show.tempo.beats_from_seconds(seconds), dtype=np.float64)
        who = [dancer for dancer in show.dancers if dancer.name != watch.who]
        (target,) = (dancer for dancer in show.dancers if dancer.name == watch.who)
        if not who:
            continue
        inside = between(
            posts[watch.spotter],
            target.floor.at(beats).place,
            np.stack([dancer.floor.at(beats).place for dancer in who]),
            np.array([dancer.body.half_breadth for dancer in who]),
        )
        for low, high in hidden_spans(np.any(inside, axis=0)):
            if seconds[high] - seconds[low] > OUT_OF_SIGHT:
                names = _names(who, inside[:, low : high + 1])
                yield Hidden(
                    watch=watch, behind=names, start=float(seconds[low]), end=float(seconds[high])
                )


def _names(who: Sequence[Dancer], inside: Bools) -> tuple[str, ...]:
    return tuple(each.name for each, any_ in zip(who, np.any(inside, axis=1), strict=True) if any_)


def _clear_post(show: Staged, plan: SafetyPlan, name: str) -> Point | None:
    """A place near a spotter's post from which they see everybody whom they watch."""
    duty = next(each for each in plan.crew if each.who == name)
    own = plan.watch.of(name)
    return next(
        (
            place
            for place in posts_round(show, duty, within=3.0)
            if not any(_hidden(show, own, {name: place}))
        ),
        None,
    )


def _finding(show: Staged, each: Hidden, better: Point | None) -> Finding:
    watch, first = each.watch, float(show.tempo.beats_from_seconds(each.start))
    names = " and ".join(each.behind)
    mends = [f"let somebody else watch {watch.who} then, under crew, watches"]
    if better is not None:
        mends.insert(
            0, f"move {watch.spotter} to {place_text(better)}: they then see all whom they watch"
        )
    return Finding(
        code="sight-hidden",
        severity="warn",
        who=(watch.who, watch.spotter, *each.behind),
        start=each.start,
        end=each.end,
        position=show.position(first),
        message=f"{names} stand{'s' if len(each.behind) == 1 else ''} between {watch.spotter} and {watch.who} "
        f"for {each.end - each.start:.0f} s; {OUT_OF_SIGHT:g} s at most",
        remedies=tuple(mends),
        source="a spotter watches: North American fire-arts guidelines 2.1 [A36; read]; how long: design choice",
    )


CHECK = Check(
    name="lines-of-sight",
    run=lines_of_sight,
    codes={"sight-hidden": ("warn",)},
    depends_on=("bodies", *PLAN_PARTS),
    progress=PROGRESS,
    unmended=_unmended,
)
