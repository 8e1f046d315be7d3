"""Records of the search in `search`: the pattern to fit, and the parameters found."""

from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field, replace
from math import inf
from typing import Any, NamedTuple

from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.blocks import Direction, Timing, block_laws
from sequencer.motion.patterns.library import HandLaw, Pattern, find
from sequencer.motion.patterns.parameters import Parameter, ParameterValue
from sequencer.motion.props.prop import Prop

GOOD = 0.05  # [m] from the performer's body and the other prop, beyond which more has no value
LEAST_MARGIN = 0.026  # [m] below which a pattern does not fit: 2 cm plus the error of the proofs
REACH_SPARE = 0.01  # [m] of the arm


@dataclass(frozen=True, kw_only=True)
class Dance:
    """The pattern to fit: both hands' patterns as in a show, not mirrored.

    Parameters
    ----------
    parts : mapping of side to (pattern, parameters)
    timing, direction
        As in `block_laws`.
    cycle : float
        Beats of one hand cycle.
    tempo : (float, float)
        Slowest and fastest [beats a minute].
    body : Body
    props : mapping of side to Prop
    book : mapping, optional
        Patterns to use instead of the built-in ones.
    torque : float
        Maximum torque of a hand on a rigid prop [N·m].
    """

    parts: Mapping[Side, tuple[str, Mapping[str, object]]]
    timing: Timing = "split"
    direction: Direction = "same"
    cycle: float
    tempo: tuple[float, float]
    body: Body
    props: Mapping[Side, Prop]
    book: Mapping[str, Pattern] | None = None
    torque: float = 8.0

    @property
    def sides(self) -> tuple[Side, ...]:
        """The hands in use."""
        return tuple(side for side in SIDES if side in self.parts)

    def laws(self, values: Mapping[Side, Mapping[str, ParameterValue]]) -> dict[Side, Law]:
        """The laws with additional parameters set.

        Raises
        ------
        ValueError
            If a pattern or a parameter is not known, or out of range.
        """
        parts = {
            side: (name, {**values.get(side, {}), **given})
            for side, (name, given) in self.parts.items()
        }
        return block_laws(
            parts,
            timing=self.timing,
            direction=self.direction,
            cycle=self.cycle,
            body=self.body,
            tethers={side: prop.length for side, prop in self.props.items()},
            book=self.book,
        )

    def open(self, side: Side) -> dict[str, Parameter]:
        """Parameters of this side's law that are not set."""
        name, given = self.parts[side]
        pattern = find(name, self.book)
        own = {p.name for p in pattern.hand(side).kind.parameters}
        return {p.name: p for p in pattern.parameters if p.name not in given and p.name in own}

    def values(self, side: Side) -> dict[str, Any]:
        """All values of one hand's law: defaults plus those set."""
        name, given = self.parts[side]
        return find(name, self.book).values(given, side)

    @property
    def rounded(self) -> "Dance":
        """The same with tempi rounded to the beat per minute and the cycle to a millionth of a beat: the key of a fit."""
        slowest, fastest = (float(max(round(tempo), 1)) for tempo in self.tempo)
        return replace(self, cycle=round(self.cycle, 6), tempo=(slowest, fastest))

    @property
    def key(self) -> Hashable:
        """Everything a fit depends on, to look it up in this process; a pattern is known by itself."""
        parts = [
            (side, repr(given), find(name, self.book)) for side, (name, given) in self.parts.items()
        ]
        return (
            *parts,
            *self.props.items(),
            self.timing,
            self.direction,
            self.cycle,
            self.tempo,
            self.body,
            self.torque,
        )

    @property
    def question(self) -> str:
        """Everything a fit depends on, as text."""
        parts = {
            side: (
                name,
                sorted((k, str(v)) for k, v in given.items()),
                _pattern_text(find(name, self.book), side),
            )
            for side, (name, given) in sorted(self.parts.items())
        }
        props = {side: replace(prop, flame_reach=0.0) for side, prop in sorted(self.props.items())}
        return repr(
            (
                parts,
                self.timing,
                self.direction,
                self.cycle,
                self.tempo,
                self.body,
                props,
                self.torque,
            )
        )


class Margins(NamedTuple):
    """Margins at the samples [m, m, m, m/s²]; inf if there is nothing to keep clear of."""

    body: float
    other: float
    reach: float
    pull: float

    @property
    def least(self) -> float:
        """The smallest margin; reach counts only if less than a centimetre of it is left."""
        short = self.reach - REACH_SPARE
        return min(self.body, self.other, short if short < 0 else inf)


AMPLE = Margins(inf, inf, inf, inf)


@dataclass(frozen=True, kw_only=True)
class Fit:
    """Fitted parameters.

    Parameters
    ----------
    values : mapping of side to parameters
        Values that differ from the pattern's defaults.
    posture : Posture
    margins : Margins
    """

    values: Mapping[Side, Mapping[str, ParameterValue]] = field(default_factory=dict)
    posture: Posture = UPRIGHT
    margins: Margins = AMPLE

    @property
    def fits(self) -> bool:
        """Whether all required margins are met."""
        return self.margins.least >= LEAST_MARGIN and self.margins.pull > 0


def _pattern_text(pattern: Pattern, side: Side) -> str:
    """A pattern's definition of one hand's law, the same text in every process."""

    def hand(law: HandLaw) -> tuple[object, ...]:
        return law.kind.name, sorted(law.fixed.items()), law.kind.stations

    own = [(p.name, p.default) for p in pattern.parameters]
    return repr((hand(pattern.hand(side)), own, pattern.offset_limits))
