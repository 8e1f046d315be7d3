"""What NumPy spends most of its time on calling, as plain loops: made into machine code before they are used.

Each of these does what its caller does with arrays, number by number in the same order, so that every digit is the same
(`small_code.py` says when which is used); as Python they run too, a thousand times slower. After a change here
`python -m sequencer.motion.flown.small_code` makes the machine code anew.

Source: as for what they do the work of: `link_gaps` and `even_splines`.
"""

from collections.abc import Sequence
from math import inf, isnan, sqrt
from types import FunctionType

from sequencer.arrays import Floats

_TINY = 1e-12


def pair_gaps(
    hand: Floats, tether: Floats, wide: Floats, rods: Floats, starts: Floats, axes: Floats,
    radii: Floats, least: Floats, n: int, k: int, m: int, r: int,
) -> None:  # fmt: skip
    """Smallest gap of each of n props from m bodies over k samples, into `least`; as `link_gaps.least_gaps`.

    Parameters
    ----------
    hand, tether, wide : ndarray, shape (n·k·3,) [m and 1]
    rods : ndarray, shape (r·5,) [1 and m]
        Along, across, low, high, radius of each.
    starts, axes : ndarray, shape (m·k·3,) [m]
    radii : ndarray, shape (m,) [m]
    least : ndarray, shape (n,) [m]
    n, k, m, r : int
        Props, samples, bodies, rods of a prop.
    """
    for p in range(n):
        least[p] = inf
        for b in range(m):
            for q in range(r):
                along, across, low, high = (
                    rods[5 * q], rods[5 * q + 1], rods[5 * q + 2], rods[5 * q + 3],
                )  # fmt: skip
                nearest = inf
                for s in range(k):
                    i, j = 3 * (p * k + s), 3 * (b * k + s)
                    hx, hy, hz = hand[i], hand[i + 1], hand[i + 2]
                    ux, uy, uz = tether[i], tether[i + 1], tether[i + 2]
                    if across != 0.0 or along != 1.0:
                        ux, uy, uz = along * ux, along * uy, along * uz
                    if across != 0.0:
                        ux, uy, uz = (
                            ux + across * wide[i],
                            uy + across * wide[i + 1],
                            uz + across * wide[i + 2],
                        )
                    ax, ay, az = axes[j], axes[j + 1], axes[j + 2]
                    lx, ly, lz = starts[j], starts[j + 1], starts[j + 2]
                    length = ax * ax + az * az + ay * ay
                    length = max(length, _TINY)
                    fx, fy, fz = hx - lx, hy - ly, hz - lz
                    far = fx * fx + fz * fz + fy * fy
                    foot = fx * ax + fz * az + fy * ay
                    lean = ux * ax + uz * az + uy * ay
                    level = (ux * hx + uz * hz + uy * hy) - (ux * lx + uz * lz + uy * ly)
                    if low == high:
                        place = low
                        spot = (foot + low * lean) / length
                        spot = 0.0 if spot < 0.0 else (min(spot, 1.0))
                    else:
                        steep = length - lean * lean
                        steep = max(steep, _TINY)
                        place = (lean * foot - level * length) / steep
                        place = low if place < low else (min(place, high))
                        spot = (foot + place * lean) / length
                        spot = 0.0 if spot < 0.0 else (min(spot, 1.0))
                        place = spot * lean - level
                        place = low if place < low else (min(place, high))
                    square = far + place * (place + 2.0 * level)
                    square = square + spot * (spot * length - 2.0 * (place * lean + foot))
                    if square < nearest or isnan(square):  # what is no number stays none
                        nearest = square
                gap = sqrt(max(nearest, 0.0)) - (radii[b] + rods[5 * q + 4])
                if gap < least[p] or isnan(gap):
                    least[p] = gap


def spline_values(
    coefficients: Floats, beats: Floats, tables: Floats, folds: Floats, scales: Floats,
    work: Floats, values: Floats, n: int, spans: int, first: int, count: int,
) -> None:  # fmt: skip
    """Derivatives of a spline over even knots at n places, into `values`; as `even_splines.together`.

    Parameters
    ----------
    coefficients : ndarray, shape ((spans + 5)·3,) [m]
    beats : ndarray, shape (n,) [spans]
        Counted from the start of the first span.
    tables : ndarray, shape (5·36,) [1]
        Of each order the coefficients of x^m in B_j, rows of six.
    folds : ndarray, shape (5·6,) [1]
        Of each order by what it folds onto the coefficients.
    scales : ndarray, shape (5,) [beats^order]
    work : ndarray, shape (12,) [1]
        Room for what lies between.
    values : ndarray, shape (count·n·3,) [m per beat^order]
    n, spans, first, count : int
        Places, spans, the first order and how many.
    """
    for i in range(n):
        place = beats[i]
        span = 0
        if place >= spans - 1:
            span = spans - 1
        elif place > 0.0:
            span = int(place)
        x = place - span
        x = 0.0 if x < 0.0 else (min(x, 1.0))
        for o in range(count):
            into_pieces(x, tables, folds, work, first + o)
            to = 3 * (o * n + i)
            for j in range(6):
                share, at = work[6 + j] / scales[first + o], 3 * (span + j)
                for axis in range(3):
                    part = share * coefficients[at + axis]
                    values[to + axis] = part if j == 0 else values[to + axis] + part


def into_pieces(x: float, tables: Floats, folds: Floats, work: Floats, order: int) -> None:
    """A derivative of the six pieces of the B-spline at a place of a span, into the second half of `work`."""
    low = 5 - order
    for j in range(low + 1):
        own = tables[36 * order + 6 * low + j]
        for m in range(low - 1, -1, -1):
            own = own * x + tables[36 * order + 6 * m + j]
        work[j] = own
    for j in range(6):
        share = work[j]
        if order:
            share = 0.0
            for f in range(order + 1):
                if 0 <= j - f <= low:
                    share += folds[6 * order + f] * work[j - f]
        work[6 + j] = share


SMALL_LOOPS: Sequence[FunctionType] = (pair_gaps, into_pieces, spline_values)  # type: ignore[assignment]  # in this order they use each other
