"""The blocks of every hand with a passive prop, each flown by itself, and what became of it.

What a hand's blocks come to is kept by all that decides how its performer flies, so after an edit only those of changed
performers are looked at.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from math import inf, isfinite
from typing import NamedTuple

from sequencer.checks.dance.dancer_case import limits_of
from sequencer.geometry.bodies import Side
from sequencer.kept import recent
from sequencer.motion.flown.flown_motion import FlownLimits, Flying
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.flown_figures import (
    FAR_TOO_SLOW,
    FlownFigures,
    FlyingHand,
    figures_record,
    flying_hand,
    restored_figures,
)
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import lowest_tempo
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.progress import Progress, stop_if_unwanted
from sequencer.staging.in_flight.flown_show import performer_key
from sequencer.staging.staged import ShowPart, Staged
from sequencer.timing.position import TOUCH

MOST_HANDS = 256  # of which is remembered what their blocks and links come to
_STALLS = "As flown, stalls were not looked at: where a prop stops above the hand its tether is slack by nature."
_ENDLESS = (
    "As flown, patterns that do not repeat were not looked at, nor the links to and from them."
)
_WHIRLS = "As flown, patterns that turn far faster than anyone can dance were not looked at."
# What becomes of a block.
_FLOWN, _SLOW, _STALL, _NO_PERIOD, _WHIRL = "flown", "slow", "stall", "endless", "whirl"
_NOT_LOOKED_AT = {_STALL: _STALLS, _NO_PERIOD: _ENDLESS, _WHIRL: _WHIRLS}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ShowHand:
    """One performer's hand with a passive prop."""

    show: Staged
    dancer: Dancer
    side: Side
    flyer: FlyingHand
    spans: tuple[Span, ...]

    @property
    def key(self) -> bytes | None:
        """All that decides how it flies; None if that is not known."""
        return performer_key(self.show, self.dancer)

    @property
    def prop(self) -> Prop:
        """What it holds."""
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


class FlownBlock(NamedTuple):
    """A pattern as one hand flies it."""

    hand: ShowHand
    span: Span
    figures: FlownFigures | None  # None if no search was made

    @property
    def flies(self) -> bool:
        """Whether it holds every limit."""
        return self.figures is not None and self.figures.flies

    @property
    def flying(self) -> Flying:
        """Who flies it with what."""
        return self.hand.flyer.flying(self.span.start, self.span.end)


def hands_of(show: Staged) -> Iterator[ShowHand]:
    """Every hand with a passive prop.

    Parameters
    ----------
    show : Staged
    """
    limits = limits_of(show)
    own = FlownLimits(hand_speed=limits.hand_speed, hand_acceleration=limits.hand_acceleration)
    for dancer in show.dancers:
        for side, prop in dancer.props.items():
            trajectory = dancer.trajectories[side]
            if prop.flexible and isinstance(trajectory, Trajectory):
                flyer = flying_hand(
                    side=side, prop=prop, carriage=dancer.carriage, tempo=show.tempo, limits=own
                )
                yield ShowHand(
                    show=show, dancer=dancer, side=side, flyer=flyer, spans=trajectory.spans
                )


class FlownBlocks(NamedTuple):
    """All blocks of all hands, by what becomes of them."""

    flown: list[FlownBlock]
    too_slow: list[FlownBlock]  # so slow that no search was made; without figures
    left: set[str]  # sentences on what was not looked at

    def within(self, part: ShowPart) -> "FlownBlocks":
        """Those that are danced in a part of a show, if only for some beats."""
        flown, slow = (
            [each for each in some if part.overlaps(each.span.start, each.span.end)]
            for some in (self.flown, self.too_slow)
        )
        return self._replace(flown=flown, too_slow=slow)


class _Verdict(NamedTuple):
    """What becomes of a block."""

    kind: str
    figures: FlownFigures | None = None


def flown_blocks(hands: Sequence[ShowHand], progress: Progress | None) -> FlownBlocks:
    """Every block flown by itself.

    Parameters
    ----------
    hands : sequence of ShowHand
    progress : callable, optional
    """
    out = FlownBlocks([], [], set())
    for k, hand in enumerate(hands):
        key = hand.key
        verdicts = recent(
            "blocks as flown", None if key is None else ("blocks as flown", key, hand.side),
            partial(_verdicts, hand, progress, k, len(hands)), most=MOST_HANDS,
            record=lambda own: [
                [each.kind, each.figures and figures_record(each.figures)] for each in own
            ],
            restore=lambda record: [
                _Verdict(kind, figures and restored_figures(figures)) for kind, figures in record
            ],
        )  # fmt: skip
        blocks = [span for span in hand.spans if span.kind == "block"]
        for span, (kind, figures) in zip(blocks, verdicts, strict=True):
            if figures is not None:
                out.flown.append(FlownBlock(hand, span, figures))
            elif kind == _SLOW:
                out.too_slow.append(FlownBlock(hand, span, None))
            elif kind != _FLOWN:
                out.left.add(_NOT_LOOKED_AT[kind])
    return out


def _verdicts(hand: ShowHand, progress: Progress | None, done: int, of: int) -> list[_Verdict]:
    blocks = [span for span in hand.spans if span.kind == "block"]
    out = []
    for k, span in enumerate(blocks):
        if progress is not None:
            progress("flying the patterns", (done + k / len(blocks)) / of)
        stop_if_unwanted()
        if not isfinite(span.law.period):
            out.append(_Verdict(_NO_PERIOD))
        elif hand.flyer.whirls(span):
            out.append(_Verdict(_WHIRL))
        elif hand.flyer.worth_flying(span, FAR_TOO_SLOW):
            out.append(_Verdict(_FLOWN, hand.flyer.figures(span)))
        else:
            out.append(_Verdict(_SLOW if isfinite(taut_from(hand, span)) else _STALL))
    return out


def flies(hand: ShowHand, span: Span) -> bool:
    """Whether a block flies by itself; one of which no search is made does not.

    Parameters
    ----------
    hand : ShowHand
    span : Span
        A block of it.
    """
    if not (isfinite(span.law.period) and hand.flyer.worth_flying(span, FAR_TOO_SLOW)):
        return False
    figures = hand.flyer.figures(span)
    return figures is not None and figures.flies


def taut_from(hand: ShowHand, span: Span) -> float:
    """The tempo from which the drawn tether is taut [beats/min]; inf if there is none, or none is proven."""
    try:
        return lowest_tempo(span.law, length=hand.prop.length).lowest
    except ValueError:  # nothing is proven about the law's third derivative
        return inf
