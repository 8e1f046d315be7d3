"""After how many beats a move is as it was at first, both hands and props together."""

from math import isfinite

from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.trajectories.trajectory import Trajectory

_MOST_ROUNDS = 64  # of one hand until the other is home with it
_CLOSE = 1e-6  # [beats]


def home_beats(dancer: Dancer) -> dict[float, float | None]:
    """Beats after which both hands are home, by the beat at which a move starts; None where they never are.

    An odd build comes home the wrong way round after one cycle: its law repeats after two.

    Parameters
    ----------
    dancer : Dancer
    """
    periods: dict[float, list[float]] = {}
    for trajectory in dancer.trajectories.values():
        for span in trajectory.spans if isinstance(trajectory, Trajectory) else ():
            if span.kind == "block":
                periods.setdefault(span.start, []).append(span.law.period)
    return {start: common_beats(*own) for start, own in periods.items()}


def common_beats(*periods: float) -> float | None:
    """The least beats that are whole rounds of every period [beats]; None if there are none, or very many."""
    if not periods or not all(map(isfinite, periods)):
        return None
    longest = max(periods)
    for rounds in range(1, _MOST_ROUNDS + 1):
        beats = rounds * longest
        if all(abs(beats - round(beats / each) * each) < _CLOSE for each in periods):
            return beats
    return None
