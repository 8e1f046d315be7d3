"""What is told of patterns and links as flown: which limit is missed, by how much, and what would do; once for each cause."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from math import degrees
from typing import NamedTuple, TypeVar

from sequencer.checks.dance.feasible import SOFT_WAYS, soft_words
from sequencer.checks.dance.flown_blocks import FlownBlock, ShowHand, taut_from
from sequencer.checks.dance.flown_gaps import FailedGap, FlownGap
from sequencer.checks.fault_kinds import (
    FLOWN_PULL,
    HAND_ACCELERATION,
    HAND_SPEED,
    OFF_DRAWING,
    REACH,
    TAUT_TEMPO,
)
from sequencer.findings import Figure, Finding, Severity
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.flown.flown_motion import LEAST_PULL, FlownLimits, Flying
from sequencer.motion.flown.flyable import WouldFly, would_fly
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.periods import LOST
from sequencer.motion.performers.flown_figures import UNSETTLED, FlownFigures
from sequencer.motion.trajectories.flown_path.flown_links import FlownLink
from sequencer.progress import Progress, stop_if_unwanted
from sequencer.staging.staged import Staged
from sequencer.units import counted, length_words, rounded_down, rounded_up

T = TypeVar("T")
TRIED_BEATS = (1.0, 1.5, 2.0, 3.0, 4.0)  # [beats] of a link that are tried
_NEAR = 0.03  # of a tempo: what flies this little slower and this little faster can hardly be out of reach in between
SECTION_FLOWN = "docs/motion.md, section 7"


class _Limits(NamedTuple):
    """Figures of what was flown, by limit."""

    least_pull: float  # in the head's weights
    hand_speed: float  # [m/s]
    hand_acceleration: float  # [m/s²]
    spare_reach: float  # [m]
    tether_off: float  # [rad]
    broken: tuple[str, ...]

    @classmethod
    def of(cls, flown: FlownFigures | FlownLink) -> "_Limits":
        """The figures of a pattern or a link."""
        off = flown.tether_off if isinstance(flown, FlownFigures) else 0.0
        return cls(
            flown.least_pull, flown.hand_speed, flown.hand_acceleration, flown.spare_reach, off,
            flown.broken,
        )  # fmt: skip


class FlownPlace(NamedTuple):
    """Where something is danced."""

    hand: ShowHand
    start: float  # [show beats]
    end: float  # [show beats]


def soft_findings(show: Staged, blocks: Sequence[FlownBlock]) -> Iterator[Finding]:
    """One note for each pattern that reads soft.

    Parameters
    ----------
    show : Staged
    blocks : sequence of FlownBlock
        What was flown.
    """
    soft = [(each, each.figures) for each in blocks if each.figures and each.figures.soft]
    for group in grouped(soft, lambda each: each[0].span.label):
        said = soft_words(
            max(figures.head_most for _, figures in group),
            max(figures.head_rms for _, figures in group),
        )
        own = [each for each, _ in group]
        label = own[0].span.label
        yield _finding(show, "reads-soft", "note", places_of(own), label, said, SOFT_WAYS)


def too_slow_findings(show: Staged, blocks: Sequence[FlownBlock]) -> Iterator[Finding]:
    """One for each pattern and tempo that is far too slow for a search.

    Parameters
    ----------
    show : Staged
    blocks : sequence of FlownBlock
        Those that were not flown.
    """
    for group in grouped(blocks, block_cause):
        label, tempo = group[0].span.label, group[0].flying.tempo
        taut = max(taut_from(each.hand, each.span) for each in group)
        figure = tempo_figure(tempo, taut)
        said = (
            f"is far too slow to fly at {tempo:.0f} beats a minute: as drawn the tether is taut only from {taut:.0f} "
            "beats a minute on, and no way to fly it this slowly was sought"
        )
        ways = (f"give the cycle {rounded_down(tempo / taut, 2):.2f} of its beats or less",)
        places = places_of(group)
        yield _finding(show, "too-slow-to-fly", "warn", places, label, said, ways, (figure,))


def tempo_figure(tempo: float, taut: float) -> Figure:
    """A tempo, and the least that keeps the drawn tether taut [beats/min]."""
    return Figure(quantity=TAUT_TEMPO, value=tempo, limit=taut, unit="beats/min", least=True)


def unflyable(
    show: Staged, group: Sequence[FlownBlock], progress: Progress | None = None
) -> Finding:
    """That a pattern cannot be flown at its tempo, and what would do.

    Parameters
    ----------
    show : Staged
    group : sequence of FlownBlock
        Of one cause.
    progress : callable, optional
    """
    label, tempo = group[0].span.label, group[0].flying.tempo
    places = places_of(group)
    flown = [(each, each.figures) for each in group if each.figures is not None]
    worst, figures = max(flown, key=lambda one: (len(one[1].broken), -one[1].least_pull))
    if any(each.unsettled for _, each in flown):
        said = _unsettled_words(f"at {tempo:.0f} beats a minute")
        return _finding(show, "flight-not-found", "note", places, label, said, ())
    would = _would_fly_for(group, worst, progress)
    if would.slower and would.faster and would.faster - would.slower <= 2.0 * _NEAR * tempo:
        said = (
            f"no way to fly it at {tempo:.0f} beats a minute was found, but at {would.slower:.0f} and at "
            f"{would.faster:.0f} it flies: most likely it can be flown"
        )
        return _finding(show, "flight-not-found", "note", places, label, said, ())
    limits = limit_words(figures, worst.flying.limits)
    said = f"cannot be flown at {tempo:.0f} beats a minute: {limits}; {would_words(would)}"
    ways = _ways(would, tempo) or ("choose another pattern, or one with a smaller hand_radius",)
    missed = missed_figures(figures, worst.flying)
    return _finding(show, "cannot-be-flown", "warn", places, label, said, ways, missed)


def _would_fly_for(
    group: Sequence[FlownBlock], worst: FlownBlock, progress: Progress | None
) -> WouldFly:
    """The tempi and tethers at which every hand of a group flies, sought from the worst."""

    def told(share: float) -> None:
        stop_if_unwanted()
        if progress is not None:
            progress(f"seeking what would fly instead of {worst.span.label}", share)

    found = would_fly(worst.hand.law_of(worst.span), worst.flying, told)
    others = [each for each in group if each is not worst]
    return WouldFly(
        *(
            value
            if value is not None and all(_flies(each, name, value) for each in others)
            else None
            for name, value in found._asdict().items()
        )
    )


def _flies(block: FlownBlock, name: str, value: float) -> bool:
    """Whether a block flies at another tempo, or with another tether."""
    flying, length = block.flying, block.hand.prop.length
    if name in ("slower", "faster"):
        flying = replace(flying, tempo=value)
    else:
        flying, length = replace(flying, prop=replace(flying.prop, length=value)), value
    return not flown_period(block.hand.law_of(block.span)(length), flying).broken


def limit_words(flown: FlownFigures | FlownLink, limits: FlownLimits) -> str:
    """The limits that are not held, each with its value; of a slack tether nothing else would mean anything."""
    seen = _Limits.of(flown)
    if "pull" in seen.broken and seen.least_pull <= 0.0:
        return "the tether would go slack"
    words = {
        "pull": f"the tether would pull with only {seen.least_pull:.2f} of the head's weight, and needs {LEAST_PULL:g}",
        "speed": f"the hand would have to move at {over_limit(seen.hand_speed, limits.hand_speed, 1)} m/s, "
        f"the limit is {limits.hand_speed:g}",
        "acceleration": "the hand would have to accelerate at "
        f"{over_limit(seen.hand_acceleration, limits.hand_acceleration, 0)} m/s², the limit is {limits.hand_acceleration:g}",
        "reach": f"the hand would be {length_words(seen.spare_reach)} out of reach",
        "pattern": f"the tether would be {degrees(seen.tether_off):.0f}° off its drawing, and no more than "
        f"{degrees(LOST):.0f}° shows the pattern",
    }
    return "; ".join(words[name] for name in seen.broken)


def missed_figures(flown: FlownFigures | FlownLink, flying: Flying) -> tuple[Figure, ...]:
    """The limits that are not held, in numbers.

    Parameters
    ----------
    flown : FlownFigures or FlownLink
    flying : Flying
        Who flies it.
    """
    seen, limits, arm = _Limits.of(flown), flying.limits, flying.body.arm_length
    known = {
        "pull": Figure(
            quantity=FLOWN_PULL, value=seen.least_pull, limit=LEAST_PULL, unit="head weights", least=True
        ),
        "speed": Figure(
            quantity=HAND_SPEED, value=seen.hand_speed, limit=limits.hand_speed, unit="m/s"
        ),
        "acceleration": Figure(
            quantity=HAND_ACCELERATION, value=seen.hand_acceleration,
            limit=limits.hand_acceleration, unit="m/s²",
        ),
        "reach": Figure(quantity=REACH, value=arm - seen.spare_reach, limit=arm, unit="m"),
        "pattern": Figure(
            quantity=OFF_DRAWING, value=degrees(seen.tether_off), limit=degrees(LOST), unit="°"
        ),
    }  # fmt: skip
    return tuple(known[name] for name in seen.broken if name in known)


def over_limit(value: float, limit: float, least: int) -> str:
    """A value over its limit, with as many places as show that it is.

    Parameters
    ----------
    value, limit : float
        In the same unit.
    least : int
        Places that are given anyhow.
    """
    shown = (n for n in range(least, 3) if round(value, n) > limit)
    return f"{value:.{next(shown, 3)}f}"


def would_words(would: WouldFly) -> str:
    """At which tempi and with which tethers a pattern flies, in words.

    Parameters
    ----------
    would : WouldFly
    """
    tempi = [f"{each:.0f}" for each in (would.slower, would.faster) if each is not None]
    tethers = [f"{100 * each:.0f}" for each in (would.shorter, would.longer) if each is not None]
    ways = [
        *([f"{' or '.join(tempi)} beats a minute"] if tempi else ()),
        *([f"a tether of {' or '.join(tethers)} cm"] if tethers else ()),
    ]
    return f"{' or '.join(ways)} would do" if ways else "no tempo or tether near these would do"


def _ways(would: WouldFly, tempo: float) -> tuple[str, ...]:
    """What makes a pattern fly, as one changes a show."""
    ways = []
    if would.slower is not None:
        times = rounded_up(tempo / would.slower, 2)
        ways.append(
            f"give the cycle {times:.2f} times its beats: as at {would.slower:.0f} a minute"
        )
    if would.faster is not None:
        times = rounded_down(tempo / would.faster, 2)
        ways.append(f"give the cycle {times:.2f} of its beats: as at {would.faster:.0f} a minute")
    ways += [
        f"use a tether of {100 * each:.0f} cm"
        for each in (would.shorter, would.longer)
        if each is not None
    ]
    return tuple(ways)


def unlinked(show: Staged, group: Sequence[FailedGap], progress: Progress | None = None) -> Finding:
    """That a link cannot be flown in its beats, and in how many it can.

    Parameters
    ----------
    show : Staged
    group : sequence of FailedGap
        Of one cause.
    progress : callable, optional
    """
    gap = group[0].gap
    places = link_places(group)
    beats = counted(gap.beats, "beat")
    if any(each.link.residual > UNSETTLED for each in group):
        said = _unsettled_words(f"in {beats}")
        return _finding(show, "flight-not-found", "note", places, gap.label, said, ())
    worst = max(group, key=lambda each: sum(each.link.missed().values()))
    limits = limit_words(worst.link, worst.gap.flying.limits)
    tried, enough = _tried(gap), None
    for k, beats_tried in enumerate(tried):
        stop_if_unwanted()
        if progress is not None:
            progress(f"seeking what would fly for {gap.label}", k / len(tried))
        if all(not each.gap.flown(beats_tried).broken for each in group):
            enough = beats_tried
            break
    if gap.linked:
        said = f"cannot be flown in {beats} ({limits})"
    else:
        said = f"cannot be flown without a link, half a beat of each for the change ({limits})"
    if enough is None:
        *some, last = (f"{n:g}" for n in sorted(tried))
        said += f"; nor in {', '.join(some)} or {last} beats"
        rest = "rest" in (gap.before.kind, gap.after.kind)
        ways: tuple[str, ...] = (
            f"change the shift of {'the pattern' if rest else 'one of the two'}, or mirror it",
            f"put {'another' if rest else 'a'} pattern between them that both can be joined to",
        )
    else:
        words = counted(enough, "beat")
        said += f"; {words if gap.linked else f'a link of {words}'} would do"
        ways = (_room_words(gap, words),)
    missed = missed_figures(worst.link, worst.gap.flying)
    return _finding(show, "link-cannot-be-flown", "warn", places, gap.label, said, ways, missed)


def _tried(gap: FlownGap) -> list[float]:
    """Lengths of a link that are tried: longer ones first, each time the shortest that flies."""
    longer = [n for n in TRIED_BEATS if n > gap.beats or not gap.linked]
    return longer + [n for n in TRIED_BEATS if n < gap.beats and n not in longer]


def _room_words(gap: FlownGap, beats: str) -> str:
    if gap.before.kind == "rest":
        return f"leave {beats} free before it, so that the link from rest is as long"
    if gap.after.kind == "rest":
        return f"leave {beats} free after it, so that the link to rest is as long"
    return f"put a link of {beats} between the two"


def _unsettled_words(when: str) -> str:
    return (
        f"whether it can be flown {when} is not known: the search did not converge; "
        "the drawn path with its margin stands in for it"
    )


# Causes and places


def block_cause(each: FlownBlock) -> tuple[object, ...]:
    """What blocks of one cause have in common: the pattern and the tempo."""
    return each.span.label, each.flying.tempo


def gap_cause(each: FailedGap) -> tuple[object, ...]:
    """What links of one cause have in common: what they join, and their beats."""
    gap = each.gap
    return gap.linked, gap.label, round(gap.beats, 6)


def grouped(each: Iterable[T], cause: Callable[[T], object]) -> list[list[T]]:
    """What has one cause together, in the order in which causes first come.

    Parameters
    ----------
    each : iterable
    cause : callable
    """
    groups: dict[object, list[T]] = {}
    for one in each:
        groups.setdefault(cause(one), []).append(one)
    return list(groups.values())


def places_of(group: Sequence[FlownBlock]) -> list[FlownPlace]:
    """Where some blocks are danced.

    Parameters
    ----------
    group : sequence of FlownBlock
    """
    return [FlownPlace(each.hand, each.span.start, each.span.end) for each in group]


def link_places(group: Sequence[FailedGap]) -> list[FlownPlace]:
    """Where some links are danced.

    Parameters
    ----------
    group : sequence of FailedGap
    """
    return [FlownPlace(each.gap.hand, each.gap.start, each.gap.end) for each in group]


def _finding(
    show: Staged,
    code: str,
    severity: Severity,
    places: Sequence[FlownPlace],
    label: str,
    said: str,
    ways: Sequence[str],
    figures: tuple[Figure, ...] = (),
) -> Finding:
    first = min(places, key=lambda each: each.start)
    names = [each.name for each in show.dancers]
    sides: dict[str, list[Side]] = {}
    for each in places:
        own = sides.setdefault(each.hand.dancer.name, [])
        if each.hand.side not in own:
            own.append(each.hand.side)
    count = len({round(each.start, 6) for each in places})
    where = f" ({count} places)" if count > 1 else ""
    return Finding(
        code=code,
        severity=severity,
        who=tuple(sorted(sides, key=names.index)),
        start=show.seconds(first.start),
        end=show.seconds(first.end),
        position=show.position(round(first.start * 16) / 16),
        message=f"{label}, {hands_words(sides)}{where}: {said}",
        remedies=tuple(ways),
        source=SECTION_FLOWN,
        figures=figures,
        hands=tuple(side for side in SIDES if any(side in own for own in sides.values())),
    )


def hands_words(sides: Mapping[str, Sequence[Side]]) -> str:
    """Whose hands, in words: names are left out where all use the same.

    Parameters
    ----------
    sides : mapping
        Hands by name.
    """
    by_hands: dict[str, list[str]] = {}
    for name, own in sides.items():
        by_hands.setdefault("both hands" if len(own) > 1 else f"{own[0]} hand", []).append(name)
    if len(by_hands) == 1:
        return next(iter(by_hands))
    return ", ".join(f"{hands} of {' and '.join(names)}" for hands, names in by_hands.items())
