"""One performer whose dance is checked: the limits that are set for it, and findings about its spans."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sequencer.findings import Figure, Finding, Severity
from sequencer.geometry.bodies import Side
from sequencer.kept import recent
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.patterns.library import Pattern, cycle_beats
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.flown_figures import FlownFigures, flying_hand
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.staging.staged import Block, Staged

SECTION_FEASIBLE = "docs/motion.md, section 6"
_MOST_BLOCKS = 40_000  # whose usual cycle is kept


@dataclass(frozen=True, slots=True, kw_only=True)
class FeasibilityLimits:
    """The most that a performer is expected to do without a finding; this project's figures."""

    hand_speed: float = 6.0  # [m/s]
    hand_acceleration: float = 80.0  # [m/s²]
    turns: float = 2.5  # [turns/s]; common practice is 0.8 to 2
    head_speed: float = 20.0  # [m/s] of a wick; two turns a second at 1.15 m are 14.5 m/s
    pull: float = 60.0  # [N] in one hand
    torque: float = 8.0  # [N·m] of one hand, with what is rigid; what a wrist can give: docs/motion.md, section 6
    own_body_near: float = 0.05  # [m] between a lit wick and the body; noted below this
    drawn_off: float = 0.25  # [m] of hand work; above this a block is flown, to see how it reads


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DancerCase:
    """One performer in one show, and how findings about them are made."""

    show: Staged
    dancer: Dancer
    limits: FeasibilityLimits
    fly: bool = True  # whether it is sought how blocks are flown

    def trajectory(self, side: Side) -> Trajectory:
        """What a hand is drawn to do."""
        trajectory = self.dancer.trajectories[side]
        if not isinstance(trajectory, Trajectory):
            raise ValueError(f"{self.dancer.name}: the {side} hand has no trajectory of spans")
        return trajectory

    def flown(self, span: Span, side: Side) -> FlownFigures | None:
        """A block as flown; None where the search would hardly end well, or none is wanted."""
        if not self.fly:
            return None
        hand = flying_hand(
            side=side,
            prop=self.dancer.props[side],
            carriage=self.dancer.carriage,
            tempo=self.show.tempo,
            limits=FlownLimits(
                hand_speed=self.limits.hand_speed, hand_acceleration=self.limits.hand_acceleration
            ),
        )
        return hand.figures(span) if span.kind == "block" and hand.worth_flying(span) else None

    def finding(
        self,
        code: str,
        severity: Severity,
        span: Span,
        message: str,
        remedies: Sequence[str],
        *,
        at: float | None = None,
        figures: Sequence[Figure] = (),
        hands: tuple[Side, ...] = (),
    ) -> Finding:
        """A finding on a span; from `at` [beats] on, or from its start."""
        beat = span.start if at is None else at
        return Finding(
            code=code,
            severity=severity,
            who=(self.dancer.name,),
            start=self.show.seconds(beat),
            end=self.show.seconds(span.end),
            position=self.show.position(round(beat * 16) / 16),
            message=message,
            remedies=tuple(remedies),
            source=SECTION_FEASIBLE,
            figures=tuple(figures),
            hands=hands,
        )


def limits_of(show: Staged) -> FeasibilityLimits:
    """The limits that the show sets for its performers."""
    limits = show.show.limits
    return FeasibilityLimits(
        hand_speed=limits.hand_speed,
        hand_acceleration=limits.hand_acceleration,
        turns=limits.turns,
        head_speed=limits.head_speed,
        pull=limits.pull,
        torque=limits.torque,
        own_body_near=limits.own_body,
    )


def usual_cycle_of(block: Block, book: Mapping[str, Pattern]) -> float:
    """The cycle that the book gives a block's patterns, the longest of its hands [beats]."""

    def work() -> tuple[object, float]:
        hands = block.hands.values()
        usual = max(cycle_beats(part.pattern, part.parameters, book) for part in hands)
        return (block, book), usual  # held, so that their ids stay their own

    return recent("usual cycles", (id(block), id(book)), work, most=_MOST_BLOCKS)[1]
