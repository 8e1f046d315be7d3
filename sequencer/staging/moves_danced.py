"""What a performer dances at a beat, in words: a pattern, or the link between two."""

from sequencer.geometry.bodies import SIDES
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.staging.staged import Staged


def move_words(show: Staged, who: str, beat: float) -> str:
    """The move at a beat: "antispin-flower-3", "the link from butterfly into stall"; of hands that differ both; empty at rest.

    Parameters
    ----------
    show : Staged
        As drawn or as flown.
    who : str
    beat : float
    """
    (dancer,) = (each for each in show.dancers if each.name == who)
    found = []
    for side in SIDES:
        hand = dancer.trajectories.get(side)
        drawn = hand.drawn if isinstance(hand, FlownHand) else hand
        if isinstance(drawn, Trajectory):
            found.append(_words(drawn.spans, beat))
    return " / ".join(dict.fromkeys(each for each in found if each))


def _words(spans: tuple[Span, ...], beat: float) -> str:
    at = next((k for k, each in enumerate(spans) if each.start <= beat < each.end), None)
    if at is None or spans[at].kind == "rest":
        return ""
    if spans[at].kind == "block":
        return spans[at].label
    before = spans[at - 1].label if at else "rest"
    after = spans[at + 1].label if at + 1 < len(spans) else "rest"
    if before == "rest":
        return f"the link from rest into {after}"
    return f"the link from {before} {'to' if after == 'rest' else 'into'} {after}"
