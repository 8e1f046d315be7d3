"""How close every two performers of a show come, with the proof's error: distances by themselves, no verdict."""

from dataclasses import dataclass, fields
from math import inf, nan
from typing import TYPE_CHECKING

import numpy as np

from sequencer.arrays import as_number
from sequencer.geometry.certified import TOLERANCE
from sequencer.motion.clearance.approach import Approaches, approaches
from sequencer.motion.clearance.nearest import closest
from sequencer.staging.entries.moments import beat_of
from sequencer.staging.staged import Staged
from sequencer.timing.position import parse_moment
from sequencer.units import counted

if TYPE_CHECKING:
    import pandas as pd

_ROUNDING = 1e-3  # [beats] by which the ends of the show are rounded where they are printed


@dataclass(frozen=True, slots=True, kw_only=True)
class Distance:
    """The smallest distance of two performers."""

    first: str
    second: str
    distance: float  # [m] between the surfaces of body, prop or flame; negative where they overlap
    error: float  # [m] the true one is no more than this below
    bound: bool  # whether `distance` is a lower bound only, as of a pair that never comes near
    beats: float  # [beats] when; 0 is bar 1 beat 1
    seconds: float  # [s] of the track
    position: str  # bar.beat
    first_part: str  # empty for a lower bound
    second_part: str
    x: float  # [m, stage frame] where on the plan; NaN for a lower bound
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Distances:
    """The smallest distance of every two performers between two moments of a show."""

    pairs: tuple[Distance, ...]  # the closest first
    start: float  # [beats]
    end: float  # [beats]

    def __repr__(self) -> str:
        least = f", the closest {self.pairs[0].distance:.3f} m" if self.pairs else ""
        pairs = counted(len(self.pairs), "pair")
        return f"<Distances of {pairs}{least}, beats {self.start:g} … {self.end:g}>"

    def to_frame(self) -> "pd.DataFrame":
        """One pair a row, the closest first.

        Returns
        -------
        frame : DataFrame
            `first`, `second`, `distance` and `error` [m], `bound`, `beats`, `seconds`, `position`
            (bar.beat), `first_part`, `second_part`, `x` and `y` [m, stage frame].
        """
        import pandas as pd

        names = [field.name for field in fields(Distance)]
        return pd.DataFrame(
            [[getattr(p, name) for name in names] for p in self.pairs], columns=names
        )


def show_distances(
    show: Staged,
    start: float | str | None = None,
    end: float | str | None = None,
    *,
    within: float = inf,
) -> Distances:
    """Smallest distances of every two performers of a staged show.

    Parameters
    ----------
    show : Staged
    start, end : float or str, optional
        From when to when: beats (0 is bar 1 beat 1), or a moment as in a show file ("17.1", "1:02.5",
        "end of verse 2"); the whole show if not given.
    within : float
        A pair that never comes this near [m] gets a lower bound only, which is quicker.

    Raises
    ------
    ValueError
        If a moment is none of this song, a beat is outside the show, the end is not after the start, or
        `within` is not positive.
    TypeError
        If a moment is neither a number nor text, or `within` is not a number.
    """
    if not as_number("within", within, "m") > 0:
        raise ValueError(f"within must be positive, got {within!r}")
    first, last = show.span
    first = first if start is None else _beat(show, "start", start)
    last = last if end is None else _beat(show, "end", end)
    if not last > first:
        raise ValueError(f"the end must come after the start, got beats {first:g} … {last:g}")
    if len(show.dancers) < 2:
        return Distances(pairs=(), start=first, end=last)
    found = approaches(show.dancers, first, last, required=within)
    pairs = (_pair(show, found, k) for k in range(len(found.first)))
    ordered = sorted(pairs, key=lambda pair: (pair.distance, pair.first, pair.second))
    return Distances(pairs=tuple(ordered), start=first, end=last)


def _beat(show: Staged, name: str, moment: float | str) -> float:
    if isinstance(moment, str):
        return beat_of(parse_moment(moment), show.song, show.tempo)
    beat = as_number(name, moment, "beats")
    first, last = show.span
    if not first - _ROUNDING <= beat <= last + _ROUNDING:  # also catches nan
        raise ValueError(
            f"{name} must be within the show, beats {first:.3f} … {last:.3f}, got {moment!r}"
        )
    return min(max(beat, first), last)


def _pair(show: Staged, found: Approaches, k: int) -> Distance:
    first, second = show.dancers[found.first[k]], show.dancers[found.second[k]]
    beat = float(found.at[k])  # noqa: PD008 (no data frame)
    bound = bool(found.dismissed[k])
    parts, (x, y) = ("", ""), (nan, nan)
    if not bound:
        near = closest(first, second, np.array([beat]))
        parts = first.part_name(int(near.part[0, 0])), second.part_name(int(near.part[0, 1]))
        x, y = near.point[0, :, :2].mean(axis=0).tolist()
    return Distance(
        first=first.name,
        second=second.name,
        distance=float(found.distance[k]),
        error=0.0 if bound else TOLERANCE,
        bound=bound,
        beats=beat,
        seconds=show.seconds(beat),
        position=show.position(round(16 * beat) / 16),
        first_part=parts[0],
        second_part=parts[1],
        x=x,
        y=y,
    )
