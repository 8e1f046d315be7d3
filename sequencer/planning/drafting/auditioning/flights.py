"""Whether moves, and the passages between them, can be flown with a prop that only pulls; looked at once a routine wants them."""

from collections.abc import Iterator, Sequence
from math import isfinite

import numpy as np

from sequencer.checks.dance.flown_blocks import FlownBlock, ShowHand, hands_of, taut_from
from sequencer.checks.dance.flown_gaps import gaps_between
from sequencer.kept import kept_each
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.flown_figures import FAR_TOO_SLOW
from sequencer.motion.performers.hand_deviation import LARGE
from sequencer.motion.props.tension import leaves
from sequencer.motion.trajectories.trajectory import Span
from sequencer.planning.drafting.auditioning.candidates import (
    Audition,
    DraftMove,
    audition_show,
    dancing_alone,
    move_contents,
)
from sequencer.timing.tempo import TempoMap
from sequencer.units import counted

_BEATS = 16  # of an audition
_LOOKS = 200  # at its widest
_UNFLOWN = "cannot be flown"


def grounded(moves: Sequence[DraftMove], stage: Audition) -> list[str]:
    """What keeps each of some moves from being flown; empty texts where nothing does.

    Parameters
    ----------
    moves : sequence of DraftMove
        That passed their auditions as drawn.
    stage : Audition

    Returns
    -------
    said : list of str
        Kept by their content.
    """
    fits = [stage.fit(move) for move in moves]
    return kept_each(
        "moves as flown",
        [
            (*each, len(stage.together) > 1, stage.room)
            for each in move_contents(moves, fits, stage)
        ],
        lambda missing: [_grounded(moves[k], stage) for k in missing],
        record=str,
        restore=str,
    )


def _grounded(move: DraftMove, stage: Audition) -> str:
    dancer = dancing_alone(move.pattern, *stage.laws(move), stage, beats=float(_BEATS))
    tempo = TempoMap.steady(stage.tempo[1], beats=_BEATS)
    return unflown(dancer, stage, tempo) or outreaching(dancer, stage, tempo)


def outreaching(dancer: Dancer, stage: Audition, tempo: TempoMap) -> str:
    """Which hand of a performer in a group takes more room than there is, in words; empty if none.

    Places in a formation that is drafted are as far apart as arms and props reach; in one that is written they may be farther. A
    block that is not flown is widened by its hand work, and where that is large it goes beyond the reach: where all dance it, they
    come too close to each other.

    Parameters
    ----------
    dancer : Dancer
        Dancing an audition.
    stage : Audition
    tempo : TempoMap
        Of the audition.
    """
    if len(stage.together) < 2:
        return ""
    room = max(dancer.reach, stage.room)
    for hand in hands_of(audition_show([dancer], tempo, stage.show)):
        drawn = [span for span in hand.spans if not hand.flyer.worth_flying(span, FAR_TOO_SLOW)]
        most = max((_hand_work(hand, span, tempo) for span in drawn), default=0.0)
        if most > LARGE and _farthest(hand, drawn) + most > room:
            return f"{dancer.name}: takes {100 * most:.0f} cm of hand work, more than there is room for in a group"
    return ""


def _hand_work(hand: ShowHand, span: Span, tempo: TempoMap) -> float:
    """How far the hand has to leave its path in a block as drawn [m]."""
    pace = 60.0 * tempo.fastest(span.start, span.end)
    start, end = span.start - span.origin, span.end - span.origin
    return leaves(span.law, length=hand.prop.length, tempo=pace, start=start, end=end)


def _farthest(hand: ShowHand, spans: Sequence[Span]) -> float:
    """How far hand and prop go from the body's axis in some blocks as drawn, at the looks [m]."""
    beats = np.concatenate([np.linspace(span.start, span.end, _LOOKS) for span in spans])
    motion = hand.dancer.trajectories[hand.side].at(beats)
    places = np.concatenate([motion.hand, motion.head(hand.prop.length)])
    return float(np.max(np.hypot(places[:, 0], places[:, 1]))) + hand.prop.hot_radius


def unflown(dancer: Dancer, stage: Audition, tempo: TempoMap) -> str:
    """What of a performer's dance cannot be flown, in words; empty if all can.

    Parameters
    ----------
    dancer : Dancer
        Dancing an audition.
    stage : Audition
    tempo : TempoMap
        Blocks and links are flown at the fastest of their beats.
    """
    hands = list(hands_of(audition_show([dancer], tempo, stage.show)))
    blocks: list[FlownBlock] = []
    for hand in hands:
        for block, why in _blocks(hand):
            if why:
                return why
            blocks.append(block)
    for gap in gaps_between(hands, blocks)[0]:
        if not gap.surely_flies:
            return f"{gap.label}: {_UNFLOWN} in {counted(gap.beats, 'beat')}"
    return ""


def unflown_rest(dancer: Dancer, stage: Audition, tempo: float, *, begins: bool) -> str:
    """Which link out of rest, or into rest, of a performer's dance cannot be flown, in words; empty if all can.

    Parameters
    ----------
    dancer : Dancer
        Dancing an audition between two rests.
    stage : Audition
    tempo : float
        [beats/min]
    begins : bool
        Whether the links out of rest are looked at, and not those into it.
    """
    hands = list(hands_of(audition_show([dancer], TempoMap.steady(tempo, beats=16), stage.show)))
    blocks = [block for hand in hands for block, why in _blocks(hand) if not why]
    for gap in gaps_between(hands, blocks)[0]:
        still = gap.before if begins else gap.after
        if still.kind == "rest" and not gap.surely_flies:
            return f"{gap.label}: {_UNFLOWN} in {counted(gap.beats, 'beat')}"
    return ""


def _blocks(hand: ShowHand) -> Iterator[tuple[FlownBlock, str]]:
    """The blocks of a hand that are flown, and what is held against each; stalls and what does not repeat are left out."""
    for span in hand.spans:
        if span.kind != "block" or not isfinite(span.law.period):
            continue
        if hand.flyer.worth_flying(span, FAR_TOO_SLOW):
            block = FlownBlock(hand, span, hand.flyer.figures(span))
            yield block, "" if block.flies else f"{span.label}: {_UNFLOWN} at this tempo"
        elif hand.flyer.whirls(span):
            yield FlownBlock(hand, span, None), f"{span.label}: turns far too fast"
        elif isfinite(taut_from(hand, span)):
            yield FlownBlock(hand, span, None), f"{span.label}: far too slow to fly"
