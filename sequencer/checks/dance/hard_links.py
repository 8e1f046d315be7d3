"""Links that ask for more than the show's limits: by the second, proven over every moment of each link.

A link that the file writes is a stop; one that fills a gap, or bridges two blocks that cannot be blended, is told as well.
The turning acceleration alone has a limit by the beat, which the tool sets.
"""

from collections.abc import Collection
from contextlib import suppress
from dataclasses import dataclass
from math import pi

from sequencer.checks.dance.feasible import LIMIT_ERROR, beyond_words
from sequencer.checks.dance.proven import Hand, spare_reach
from sequencer.checks.fault_kinds import PROP_TURNS, PULL, REACH, TWIST, WICK_SPEED
from sequencer.content_keys import content_key
from sequencer.findings import Figure, Finding, Severity
from sequencer.geometry.bodies import Body, Side
from sequencer.kept import recent
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.least_values import Least
from sequencer.motion.props.peaks import SoughtOn, peak_beyond, pulling, twisting, wick_speed
from sequencer.motion.trajectories.one_link.link_law import LinkLaw
from sequencer.motion.trajectories.one_link.link_limits import REACH_SLACK, LinkLimits
from sequencer.motion.trajectories.one_link.link_words import out_of_reach, pace_breach
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Span, Trajectory
from sequencer.staging.staged import Staged
from sequencer.timing.position import TOUCH
from sequencer.units import counted

_MET = 1 + 1e-9  # of a limit: a value that equals it keeps it
_MOST_LINKS = 20_000  # of which it is kept which limits they break
_SHARE = LIMIT_ERROR / 2  # of a limit, to which the largest wick speed, pull or twist is sought
_STRAINS = (WICK_SPEED, PULL, TWIST)
_SOURCE = "docs/motion.md, section 5; this show's limits"


def links_too_hard(
    show: Staged, dancer: Dancer, unjoined: Collection[tuple[Side, float]]
) -> list[Finding]:
    """Links that exceed the limits: those written in the show, those that fill gaps, and bridges between blocks.

    Parameters
    ----------
    show : Staged
    dancer : Dancer
    unjoined : collection of tuple of Side and float
        Hand and beat of the borders that are told already.
    """
    found = []
    for side, trajectory in dancer.trajectories.items():
        if not isinstance(trajectory, Trajectory):
            continue
        spans, reaches = trajectory.spans, spare_reach(show)[Hand(dancer.name, side)]
        around = _around(show, dancer, side)
        for k, span in enumerate(spans):
            if isinstance(span.law, LinkLaw):
                way = _Way(show, dancer, side, span.start, span.end, spans[k - 1], spans[k + 1])
                why = _too_far(dancer.body, reaches[k].least) or way.known(span.law, around)
                if why:
                    found.append(way.finding(*why))
        for blend, before, after in zip(trajectory.blends, spans, spans[1:], strict=False):
            low, high = blend.boundary - blend.half, blend.boundary + blend.half
            told = any(on == side and abs(at - blend.boundary) <= TOUCH for on, at in unjoined)
            if blend.bridge is None or told:
                continue
            way = _Way(show, dancer, side, low, high, before, after)
            if why := way.known(blend.bridge, around):
                found.append(way.finding(*why))
    return found


_Why = tuple[str, Figure]  # what is broken, in words and in numbers


def _around(show: Staged, dancer: Dancer, side: Side) -> bytes | None:
    """A key of all but a link and its tempo that decides which limits it breaks; None if there is none."""
    limits = show.show.limits
    most = (
        limits.turns, limits.hand_speed, limits.hand_acceleration, limits.head_speed, limits.pull,
        limits.torque,
    )  # fmt: skip
    with suppress(TypeError):
        return content_key(dancer.props[side], most)
    return None


def _too_far(body: Body, left: Least) -> _Why | None:
    """How far the hand is out of reach on a link; None if it is not, proven on the moved body."""
    if left.value >= -REACH_SLACK:
        return None
    far, arm = body.arm_length - left.value, body.arm_length
    return out_of_reach(far, arm), Figure(quantity=REACH, value=far, limit=arm, unit="m")


@dataclass(frozen=True, slots=True)
class _Way:
    """One hand's way from one span to another: a link that is written or fills a gap, or a bridge between two blocks."""

    show: Staged
    dancer: Dancer
    side: Side
    start: float  # [beats]
    end: float  # [beats]
    before: Span
    after: Span

    def known(self, law: LinkLaw, around: bytes | None) -> _Why | None:
        """The same as `broken`: an edit leaves most links as they were, and the same objects."""
        tempo = self.show.tempo
        paces = tempo.fastest(self.start, self.end), tempo.slowest(self.start, self.end)
        key = None if around is None else (id(law), around, paces)
        # The law is held, so that its id stays its own.
        _, why = recent("limits broken", key, lambda: (law, self.broken(law)), most=_MOST_LINKS)
        return why

    def broken(self, law: LinkLaw) -> _Why | None:
        """The limit of the show that the way breaks; None if none.

        Pace and turns by the law's bounds; wick speed, pull and twist by a search, wherever its bounds do not settle it.
        """
        limits, pace = self.show.show.limits, self.show.tempo.fastest(self.start, self.end)
        most = LinkLimits(
            turn_rate=2 * pi * limits.turns / pace * _MET,
            hand_speed=limits.hand_speed / pace * _MET,
            hand_acceleration=limits.hand_acceleration / pace**2 * _MET,
        )
        breach = pace_breach(most, law, beats_per_second=pace)
        if breach is None:
            return self._strained(law)
        quantity, value, limit, unit, words = breach
        return words, Figure(quantity=quantity, value=value, limit=limit, unit=unit)

    def _strained(self, law: LinkLaw) -> _Why | None:
        """The limit of wick speed, of pull or of twist that the way breaks; None if none.

        As in a pattern, one over its limit by less than `LIMIT_ERROR` keeps it; one over it by half as much again is told.
        """
        limits, tempo = self.show.show.limits, self.show.tempo
        prop = self.dancer.props[self.side]
        # Force and torque are the size of λ²·M + W with the tempo λ: convex in λ², so largest at an end.
        tempos = {tempo.fastest(self.start, self.end), tempo.slowest(self.start, self.end)}
        asked: list[tuple[str, str, SoughtOn, float, str]] = [
            (WICK_SPEED, "a wick would move too fast", wick_speed, limits.head_speed, "m/s"),
            (PULL, "the prop would pull too hard", pulling, limits.pull, "N"),
        ]
        if not prop.flexible:  # a line hangs from the hand, which twists nothing
            asked.append(
                (TWIST, "the hand would have to twist too hard", twisting, limits.torque, "N·m")
            )
        for quantity, what, sought, most, unit in asked:
            met = most * (1 + LIMIT_ERROR)
            found = [
                peak_beyond(
                    sought, law, law.parts, prop=prop, beats_per_second=each, most=met, share=_SHARE
                )
                for each in tempos
            ]
            value = max((each for each in found if each is not None), default=None)
            if value is not None:
                figure = Figure(quantity=quantity, value=value, limit=most, unit=unit)
                return f"{what} ({beyond_words(value, most)} {unit}, limit {most:g})", figure
        return None

    @property
    def written(self) -> bool:
        """Whether the show file writes it as a link."""
        own = self.show.blocks_of(self.dancer.name)
        return any(block.link and abs(block.start - self.start) <= TOUCH for block in own)

    def finding(self, why: str, figure: Figure) -> Finding:
        """The finding that the way breaks a limit."""
        reach = figure.quantity == REACH
        beats = counted(round(self.end - self.start, 3), "beat")
        # what is only a warning in a pattern is none worse in a link
        hard = reach or (self.written and figure.quantity not in _STRAINS)
        severity: Severity = "stop" if hard else "warn"
        first = ("if a block next to it is out of reach, mend that first",) if reach else ()
        return Finding(
            code="link-too-hard",
            severity=severity,
            who=(self.dancer.name,),
            start=self.show.seconds(self.start),
            end=self.show.seconds(self.end),
            position=self.show.position(self.start),
            message=f"from {self.before.label} to {self.after.label}, {self.side} hand, in {beats}: {why}",
            remedies=(*first, *self._too_fast_beside(figure), *self._ways_out()),
            source=_SOURCE,
            figures=(figure,),
            hands=(self.side,),
        )

    def _too_fast_beside(self, figure: Figure) -> tuple[str, ...]:
        """That a pattern beside it must turn slower: a link turns as fast as what it leads from and to."""
        if figure.quantity != PROP_TURNS:
            return ()
        pace, most = self.show.tempo.fastest(self.start, self.end), figure.limit * 2 * pi
        fast = [
            span.label
            for span in (self.before, self.after)
            if span.kind == "block" and span.law.bounds().turn_rate * pace > most * _MET
        ]
        return tuple(
            f"give the cycle of {label} more beats: it turns too fast itself"
            for label in dict.fromkeys(fast)
        )

    def _ways_out(self) -> tuple[str, ...]:
        """What can be done; only a link that is written can be given more beats."""
        if self.written:
            shifted = self.after if self.after.kind == "block" else self.before
            of = f"change the shift of {shifted.label}"
            return (
                "give the link another number of beats",
                of if shifted.kind == "block" else "write another pattern beside it",
            )
        if self.before.kind == self.after.kind == "block":
            if self.end - self.start <= 2 * BLEND_HALF_WIDTH + TOUCH:
                return (f"put a link between {self.before.label} and {self.after.label}",)
            return (
                f"end {self.before.label} earlier, so that the way has more beats",
                f"change the shift of {self.after.label}",
                "write a rest there",
            )
        stop = self.before if self.before.kind == "rest" else self.after
        stops = [
            each
            for each in self.show.stops_of(self.dancer.name)
            if each.start <= self.end + TOUCH and each.end >= self.start - TOUCH
        ]
        if self.after.kind == "rest":
            ways = [
                f"end {self.before.label} 2 beats earlier, or where the prop is easier to stop",
                f"write a link of 3 or 4 beats before the {stop.label}",
            ]
        else:
            ways = [
                f"change the shift of {self.after.label}",
                f"write a link of 3 or 4 beats after the {stop.label}",
            ]
        return (f"make the {stop.label} longer", *ways) if stops else tuple(ways)
