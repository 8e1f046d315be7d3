"""A steady tempo found in beats that were heard: one grid through all of them, whatever slips they have.

Beats that slip by half a beat for a while still lie on the grid of half beats: its interval is found first, and which of its
two phases is the beat is the majority's.
"""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats

ON_GRID = 0.035  # [s] a beat this near to the grid lies on it
_RANGE = 0.015  # share of the interval that is searched on either side of the usual one
_TURN = 0.05  # of a half beat: how far two neighbouring intervals of the search part over all beats
_CHUNK = 256  # intervals tried at once


@dataclass(frozen=True, slots=True)
class SteadyGrid:
    """Beats at one tempo: at `start` and every `interval` before and after it."""

    start: float  # [s]
    interval: float  # [s]

    def times(self, low: float, high: float) -> Floats:
        """Its beats from `low` to `high` [s], both included, shape (n,)."""
        first = np.ceil((low - self.start) / self.interval - 1e-9)
        last = np.floor((high - self.start) / self.interval + 1e-9)
        return np.asarray(self.start + self.interval * np.arange(first, last + 1))

    def away(self, times: Floats) -> Floats:
        """How far each moment is from the nearest beat [s], with its sign."""
        turns = (times - self.start) / self.interval
        return np.asarray((turns - np.round(turns)) * self.interval)

    def holds(self, times: Floats) -> Bools:
        """Which of these moments lie on the grid."""
        return np.asarray(np.abs(self.away(times)) <= ON_GRID)

    def moved(self) -> "SteadyGrid":
        """The grid half a beat later."""
        return SteadyGrid(self.start + self.interval / 2, self.interval)


def steady_grid(times: Floats, weights: Floats | None = None) -> SteadyGrid | None:
    """The beats at one tempo that most of these agree with.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
        Beats as they were heard, rising; some may be missing, too many, or half a beat off.
    weights : ndarray, shape (n,) [1], optional
        How sure each is; default: all the same.

    Returns
    -------
    grid : SteadyGrid or None
        None of fewer than eight beats.

    Notes
    -----
    Source: the interval whose half-beat phases are most concentrated (mean resultant length: K. V. Mardia, P. E. Jupp, Directional
    Statistics, Wiley 2000), then least squares over the beats that lie on it. Says nothing of how well the grid fits: `holds` does.
    """
    if len(times) < 8:
        return None
    weight = np.ones(len(times)) if weights is None else np.asarray(weights, np.float64) + 1e-6
    usual = float(np.median(np.diff(times)))
    grid = _grid_at(times, weight, _interval(times, weight, usual))
    for _ in range(3):
        on = grid.holds(times)
        if on.sum() < 4:
            break
        grid = _fitted(times[on], weight[on], grid)
    return grid


def _interval(times: Floats, weight: Floats, usual: float) -> float:
    """The interval at which the half-beat phases are most concentrated [s]."""
    span = float(times[-1] - times[0])
    step = _TURN * usual / 2 * usual / max(span, usual)  # of the interval
    tried = usual + np.arange(-int(_RANGE * usual / step), int(_RANGE * usual / step) + 1) * step
    found = np.concatenate(
        [
            np.abs(np.exp(4j * np.pi * (times - times[0]) / part[:, None]) @ weight)
            for part in np.array_split(tried, max(1, len(tried) // _CHUNK))
        ]
    )
    return float(tried[np.argmax(found)])


def _grid_at(times: Floats, weight: Floats, interval: float) -> SteadyGrid:
    """The grid of this interval, in the half-beat phase that more of the beats have."""
    turn = np.angle(np.sum(weight * np.exp(4j * np.pi * (times - times[0]) / interval)))
    early = SteadyGrid(float(times[0] + turn / (4 * np.pi) * interval), interval)
    late = early.moved()
    shares = [float(weight[grid.holds(times)].sum()) for grid in (early, late)]
    return early if shares[0] >= shares[1] else late


def _fitted(times: Floats, weight: Floats, grid: SteadyGrid) -> SteadyGrid:
    """Least squares over beats that lie on a grid."""
    number = np.round((times - grid.start) / grid.interval)
    if np.ptp(number) < 1:
        return grid
    slope, start = np.polyfit(number, times, 1, w=np.sqrt(weight))
    return SteadyGrid(float(start), float(slope))
