"""Which patterns and links can be flown with a passive prop, and what would do where they cannot; on request.

Each block of a hand is flown by itself (`motion.flown`), and each link from the flown motion before it to that after it, or
from or to a prop that hangs at rest (`motion.trajectories.flown_links`); two blocks that join without a link get a bridge of
half a beat of each. One finding for each cause: the same pattern at the same tempo, or a link between the same two in as
many beats, whoever dances it.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise
from math import degrees, inf, isfinite
from typing import NamedTuple, TypeVar

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.check import Check
from sequencer.checks.dance.feasible import SOFT_WAYS, limits_of, soft_words
from sequencer.checks.dance.flown_in_place import strained, touching
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding, Severity
from sequencer.geometry.bodies import Side
from sequencer.kept import content_key, recent, whole_code
from sequencer.motion.flown.flown_motion import LEAST_PULL, FlownLimits, FlownMotion, Flying
from sequencer.motion.flown.flyable import WouldFly, would_fly
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.periods import LOST
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.flown_figures import (
    FAR_TOO_SLOW,
    UNSETTLED,
    FlownFigures,
    FlyingHand,
)
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import lowest_tempo
from sequencer.motion.trajectories.flown_links import (
    FlownLink,
    HeadState,
    flown_link,
    hanging,
    state_in,
)
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.progress import Progress, stop_if_unwanted, within
from sequencer.staging.staged import Staged
from sequencer.timing.position import TOUCH
from sequencer.units import counted, length_words, rounded_down, rounded_up

T = TypeVar("T")
TRIED_BEATS = (1.0, 1.5, 2.0, 3.0, 4.0)  # [beats] of a link that are tried
_HALF = 0.5  # [beats] of each block that a bridge takes
_NEAR = 0.03  # of a tempo: what flies this little slower and this little faster can hardly be out of reach in between
_MOST_KEPT = 20_000  # links
_SAME = 1e-6  # share of a state by which two count as one
_PATTERNS, _LINKS = 0.3, 0.6  # of the progress; the rest is seeking what would do
_SOURCE = "docs/motion.md, section 7"
_NOT_CHECKED = (
    "As flown, how near a flame passes the own body was not looked at, nor what an arm, a wrist or a grip can do.",
)
_UNFLOWN = "As flown, links to and from a pattern that cannot be flown, or was not flown, were not looked at."
_STALLS = "As flown, stalls were not looked at: where a prop stops above the hand its tether is slack by nature."
_ENDLESS = (
    "As flown, patterns that do not repeat were not looked at, nor the links to and from them."
)


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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Hand:
    """One performer's hand with a passive prop."""

    show: Staged
    dancer: Dancer
    side: Side
    flyer: FlyingHand
    spans: tuple[Span, ...]

    @property
    def prop(self) -> Prop:
        return self.flyer.prop

    def law_of(self, span: Span) -> Callable[[float], Law]:
        """The law of a block for another tether [m], with the pattern placed as it is."""
        for block in self.show.blocks_of(self.dancer.name):
            if self.side in block.hands and abs(block.start - span.start) < TOUCH:
                parts = {side: (part.pattern, part.values) for side, part in block.hands.items()}
                tethers = {side: prop.length for side, prop in self.dancer.props.items()}
                return lambda tether: block_laws(
                    parts, timing=block.timing, direction=block.direction, cycle=block.cycle,
                    shift=block.shift, mirrored=block.mirrored, body=self.dancer.body,
                    tethers={**tethers, self.side: tether}, book=self.show.book,
                )[self.side]  # fmt: skip
        return lambda _tether: span.law


class _Block(NamedTuple):
    """A pattern as one hand flies it."""

    hand: _Hand
    span: Span
    figures: FlownFigures | None  # None if no search was made

    @property
    def flies(self) -> bool:
        return self.figures is not None and self.figures.flies

    @property
    def flying(self) -> Flying:
        return self.hand.flyer.flying(self.span.start, self.span.end)


class _Gap(NamedTuple):
    """What is to be bridged: a link, or the half beats about a border without one."""

    hand: _Hand
    start: float  # [show beats]
    end: float  # [show beats]
    before: Span
    after: Span
    flying: Flying
    linked: bool

    @property
    def beats(self) -> float:
        return self.end - self.start

    @property
    def label(self) -> str:
        """What is joined, in words."""
        if self.before.kind == "rest":
            return f"from rest into {self.after.label}"
        if self.after.kind == "rest":
            return f"{self.before.label} to rest"
        return f"{self.before.label} into {self.after.label}"

    def flown(self, beats: float | None = None) -> FlownLink:
        """Flown as it is, or as a link of so many beats between the two."""
        start, end = (
            (self.start, self.end) if beats is None else (self.before.end, self.after.start)
        )
        before, after = (_state_of(self.hand, span) for span in (self.before, self.after))
        return flown_link(
            lambda beat: before(start + beat),
            lambda beat: after(end + beat),
            self.beats if beats is None else beats,
            self.flying,
        )

    @property
    def content(self) -> bytes | None:
        """All that decides how it is flown; None if that is not known."""
        ends = []
        for span in (self.before, self.after):
            flying = self.hand.flyer.flying(span.start, span.end) if span.kind == "block" else None
            ends.append((span, flying))
        try:
            return content_key(whole_code(), ends, self.start, self.end, self.flying, self.linked)
        except TypeError:  # a law of another package
            return None

    @property
    def goes_on(self) -> bool:
        """Whether the two meet without a bridge, as flown."""
        if self.linked:
            return False
        border = self.before.end
        first, last = (
            _state_of(self.hand, span)(border).path for span in (self.before, self.after)
        )
        size = np.maximum(np.linalg.norm(first, axis=-1), 1.0)
        return bool(np.all(np.linalg.norm(last - first, axis=-1) <= _SAME * size))


def as_flown(show: Staged, *, progress: Progress | None = None) -> Outcome:
    """Findings on patterns and links with passive props: what reads soft, and what cannot be flown.

    Parameters
    ----------
    show : Staged
    progress : callable, optional
    """
    hands = list(_hands(show))
    if not hands:
        return Outcome()
    share = _PATTERNS + _LINKS
    patterns = _flown_blocks(hands, within(progress, 0.0, _PATTERNS))
    gaps, unflown = _gaps_between(hands, patterns.flown)
    findings = [*_soft(show, patterns.flown), *_too_slow(show, patterns.too_slow)]
    failed = _failed_gaps(gaps, within(progress, _PATTERNS, share))
    asked = within(progress, share, 1.0)
    grounded = _grouped((each for each in patterns.flown if not each.flies), _block_cause)
    causes: list[Callable[[], Finding]] = [
        *(partial(_unflyable, show, group) for group in grounded),
        *(partial(_unlinked, show, group) for group in _grouped(failed, _gap_cause)),
    ]
    for k, cause in enumerate(causes):
        if asked is not None:
            asked("seeking what would fly", k / len(causes))
        stop_if_unwanted()
        findings.append(cause())
    findings += [*strained(show), *touching(show)]
    more = sorted(patterns.left | ({_UNFLOWN} if unflown else set()))
    return Outcome(findings=tuple(findings), not_checked=(*_NOT_CHECKED, *more))


def _hands(show: Staged) -> Iterator[_Hand]:
    limits = limits_of(show)
    own = FlownLimits(hand_speed=limits.hand_speed, hand_acceleration=limits.hand_acceleration)
    for dancer in show.dancers:
        for side, prop in dancer.props.items():
            trajectory = dancer.trajectories[side]
            if prop.flexible and isinstance(trajectory, Trajectory):
                flyer = FlyingHand(
                    side=side, prop=prop, carriage=dancer.carriage, tempo=show.tempo, limits=own
                )
                yield _Hand(
                    show=show, dancer=dancer, side=side, flyer=flyer, spans=trajectory.spans
                )


class _Patterns(NamedTuple):
    """All blocks of all hands, by what becomes of them."""

    flown: list[_Block]
    too_slow: list[_Block]  # so slow that no search was made; without figures
    left: set[str]  # sentences on what was not looked at


def _flown_blocks(hands: Sequence[_Hand], progress: Progress | None) -> _Patterns:
    asked = [(hand, span) for hand in hands for span in hand.spans if span.kind == "block"]
    out = _Patterns([], [], set())
    for k, (hand, span) in enumerate(asked):
        if progress is not None:
            progress("flying the patterns", k / len(asked))
        if not isfinite(span.law.period):
            out.left.add(_ENDLESS)
        elif hand.flyer.worth_flying(span, FAR_TOO_SLOW):
            figures = hand.flyer.figures(span)
            if figures is not None:
                out.flown.append(_Block(hand, span, figures))
        elif isfinite(_taut_from(hand, span)):
            out.too_slow.append(_Block(hand, span, None))
        else:
            out.left.add(_STALLS)
    return out


def _taut_from(hand: _Hand, span: Span) -> float:
    """The tempo from which the drawn tether is taut [beats/min]; inf if there is none, or none is proven."""
    try:
        return lowest_tempo(span.law, length=hand.prop.length).lowest
    except ValueError:  # nothing is proven about the law's third derivative
        return inf


def _gaps_between(hands: Sequence[_Hand], blocks: Sequence[_Block]) -> tuple[list[_Gap], bool]:
    """Every link and border between motions that can be flown, and whether any was left out."""
    flies = {id(each.span) for each in blocks if each.flies}
    out, left = [], False
    for hand in hands:
        for gap in _gaps_of(hand):
            ends = [span for span in (gap.before, gap.after) if span.kind == "block"]
            if all(id(span) in flies for span in ends):
                out.append(gap)
            else:
                left = True
    return out, left


def _gaps_of(hand: _Hand) -> Iterator[_Gap]:
    spans = hand.spans
    for before, link, after in zip(spans, spans[1:], spans[2:], strict=False):
        if link.kind == "link" and "block" in (before.kind, after.kind):
            yield _gap(hand, link.start, link.end, before, after, linked=True)
    for before, after in pairwise(spans):
        if before.kind == after.kind == "block":
            low, high = (min(_HALF, (each.end - each.start) / 2) for each in (before, after))
            border = before.end
            yield _gap(hand, border - low, border + high, before, after, linked=False)


def _gap(hand: _Hand, start: float, end: float, before: Span, after: Span, *, linked: bool) -> _Gap:
    beside = after if after.kind == "block" else before
    posture = hand.flyer.flying(beside.start, beside.end).posture
    flying = replace(hand.flyer.flying(start, end), posture=posture)
    return _Gap(hand, start, end, before, after, flying, linked)


def _state_of(hand: _Hand, span: Span) -> Callable[[float], HeadState]:
    """The flown head of a block or a rest at show beats."""
    if span.kind != "block":
        still = hanging(span.law, hand.prop.length)
        return lambda _beat: still
    motion: FlownMotion = flown_period(span.law, hand.flyer.flying(span.start, span.end))

    def at(beat: float) -> HeadState:
        own = (beat - span.origin) % span.law.period  # the same digits each time it comes round
        instant: Floats = np.array([own])
        return state_in(motion, span.law.at(instant).plane[0], own)

    return at


class _Failed(NamedTuple):
    """A link that cannot be flown as it is."""

    gap: _Gap
    link: FlownLink


def _fails(gap: _Gap) -> bool:
    """Whether a gap has to be bridged and cannot be."""
    return not gap.goes_on and bool(gap.flown().broken)


def _failed_gaps(gaps: Sequence[_Gap], progress: Progress | None) -> list[_Failed]:
    out = []
    for k, gap in enumerate(gaps):
        if progress is not None:
            progress("flying the links", k / len(gaps))
        stop_if_unwanted()
        fails = recent(
            "links that cannot be flown", gap.content, partial(_fails, gap), most=_MOST_KEPT,
            record=bool, restore=bool,
        )  # fmt: skip
        if fails:
            out.append(_Failed(gap, gap.flown()))
    return out


# Words


class _Place(NamedTuple):
    """Where something is danced."""

    hand: _Hand
    start: float  # [show beats]
    end: float  # [show beats]


def _soft(show: Staged, blocks: Sequence[_Block]) -> Iterator[Finding]:
    soft = [(each, each.figures) for each in blocks if each.figures and each.figures.soft]
    for group in _grouped(soft, lambda each: each[0].span.label):
        said = soft_words(
            max(figures.head_most for _, figures in group),
            max(figures.head_rms for _, figures in group),
        )
        own = [each for each, _ in group]
        label = own[0].span.label
        yield _finding(show, "reads-soft", "note", _places_of(own), label, said, SOFT_WAYS)


def _too_slow(show: Staged, blocks: Sequence[_Block]) -> Iterator[Finding]:
    for group in _grouped(blocks, _block_cause):
        label, tempo = group[0].span.label, group[0].flying.tempo
        taut = max(_taut_from(each.hand, each.span) for each in group)
        said = (
            f"is far too slow to fly at {tempo:.0f} beats a minute: as drawn the tether is taut only from {taut:.0f} "
            "beats a minute on, and no way to fly it this slowly was sought"
        )
        ways = (f"give the cycle {rounded_down(tempo / taut, 2):.2f} of its beats or less",)
        yield _finding(show, "cannot-be-flown", "warn", _places_of(group), label, said, ways)


def _unflyable(show: Staged, group: Sequence[_Block]) -> Finding:
    """That a pattern cannot be flown at its tempo, and what would do."""
    label, tempo = group[0].span.label, group[0].flying.tempo
    places = _places_of(group)
    flown = [(each, each.figures) for each in group if each.figures is not None]
    worst, figures = max(flown, key=lambda one: (len(one[1].broken), -one[1].least_pull))
    if any(each.unsettled for _, each in flown):
        said = _unsettled_words(f"at {tempo:.0f} beats a minute")
        return _finding(show, "flight-not-found", "note", places, label, said, ())
    would = _would_fly_for(group, worst)
    if would.slower and would.faster and would.faster - would.slower <= 2.0 * _NEAR * tempo:
        said = (
            f"no way to fly it at {tempo:.0f} beats a minute was found, but at {would.slower:.0f} and at "
            f"{would.faster:.0f} it flies: most likely it can be flown"
        )
        return _finding(show, "flight-not-found", "note", places, label, said, ())
    limits = _limit_words(_Limits.of(figures), worst.flying.limits)
    said = f"cannot be flown at {tempo:.0f} beats a minute: {limits}; {would_words(would)}"
    ways = _ways(would, tempo) or ("choose another pattern, or one with a smaller hand_radius",)
    return _finding(show, "cannot-be-flown", "warn", places, label, said, ways)


def _would_fly_for(group: Sequence[_Block], worst: _Block) -> WouldFly:
    """The tempi and tethers at which every hand of a group flies, sought from the worst."""
    found = would_fly(worst.hand.law_of(worst.span), worst.flying)
    others = [each for each in group if each is not worst]
    return WouldFly(
        *(
            value
            if value is not None and all(_flies(each, name, value) for each in others)
            else None
            for name, value in found._asdict().items()
        )
    )


def _flies(block: _Block, name: str, value: float) -> bool:
    """Whether a block flies at another tempo, or with another tether."""
    flying, length = block.flying, block.hand.prop.length
    if name in ("slower", "faster"):
        flying = replace(flying, tempo=value)
    else:
        flying, length = replace(flying, prop=replace(flying.prop, length=value)), value
    return not flown_period(block.hand.law_of(block.span)(length), flying).broken


def _limit_words(seen: _Limits, limits: FlownLimits) -> str:
    """The limits that are not held, each with its value; of a slack tether nothing else would mean anything."""
    if "pull" in seen.broken and seen.least_pull <= 0.0:
        return "the tether would go slack"
    words = {
        "pull": f"the tether would pull with only {seen.least_pull:.2f} of the head's weight, and needs {LEAST_PULL:g}",
        "speed": f"the hand would have to move at {_over(seen.hand_speed, limits.hand_speed, 1)} m/s, "
        f"the limit is {limits.hand_speed:g}",
        "acceleration": "the hand would have to accelerate at "
        f"{_over(seen.hand_acceleration, limits.hand_acceleration, 0)} m/s², the limit is {limits.hand_acceleration:g}",
        "reach": f"the hand would be {length_words(seen.spare_reach)} out of reach",
        "pattern": f"the tether would be {degrees(seen.tether_off):.0f}° off its drawing, and no more than "
        f"{degrees(LOST):.0f}° shows the pattern",
    }
    return "; ".join(words[name] for name in seen.broken)


def _over(value: float, limit: float, least: int) -> str:
    """A value over its limit, with as many places as show that it is."""
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


def _unlinked(show: Staged, group: Sequence[_Failed]) -> Finding:
    """That a link cannot be flown in its beats, and in how many it can."""
    gap = group[0].gap
    places = [_Place(each.gap.hand, each.gap.start, each.gap.end) for each in group]
    beats = counted(gap.beats, "beat")
    if any(each.link.residual > UNSETTLED for each in group):
        said = _unsettled_words(f"in {beats}")
        return _finding(show, "flight-not-found", "note", places, gap.label, said, ())
    worst = max(group, key=lambda each: sum(each.link.missed().values()))
    limits = _limit_words(_Limits.of(worst.link), worst.gap.flying.limits)
    enough = next(
        (n for n in _tried(gap) if all(not each.gap.flown(n).broken for each in group)), None
    )
    if gap.linked:
        said = f"cannot be flown in {beats} ({limits})"
    else:
        said = f"cannot be flown without a link, half a beat of each for the change ({limits})"
    if enough is None:
        *some, last = (f"{n:g}" for n in sorted(_tried(gap)))
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
    return _finding(show, "link-cannot-be-flown", "warn", places, gap.label, said, ways)


def _tried(gap: _Gap) -> list[float]:
    """Lengths of a link that are tried: longer ones first, each time the shortest that flies."""
    longer = [n for n in TRIED_BEATS if n > gap.beats or not gap.linked]
    return longer + [n for n in TRIED_BEATS if n < gap.beats and n not in longer]


def _room_words(gap: _Gap, beats: str) -> str:
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


def _block_cause(each: _Block) -> tuple[object, ...]:
    return each.span.label, each.flying.tempo


def _gap_cause(each: _Failed) -> tuple[object, ...]:
    gap = each.gap
    return gap.linked, gap.label, round(gap.beats, 6)


def _grouped(each: Iterable[T], cause: Callable[[T], object]) -> list[list[T]]:
    groups: dict[object, list[T]] = {}
    for one in each:
        groups.setdefault(cause(one), []).append(one)
    return list(groups.values())


def _places_of(group: Sequence[_Block]) -> list[_Place]:
    return [_Place(each.hand, each.span.start, each.span.end) for each in group]


def _finding(
    show: Staged,
    code: str,
    severity: Severity,
    places: Sequence[_Place],
    label: str,
    said: str,
    ways: Sequence[str],
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
        source=_SOURCE,
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


CHECK = Check(
    name="as-flown",
    run=as_flown,
    codes={
        "cannot-be-flown": ("warn",),
        "flight-not-found": ("note",),
        "hits-body-as-flown": ("warn",),
        "link-cannot-be-flown": ("warn",),
        "props-meet-as-flown": ("warn",),
        "reads-soft": ("note",),
        "strained-as-flown": ("warn",),
    },
    depends_on=("trajectories", "bodies", "places"),
    progress="flying the show",
    on_request=True,
    replaces=("flown-not-drawn",),
)
