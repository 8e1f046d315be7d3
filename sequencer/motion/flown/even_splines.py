"""Evenly spaced splines of degree 5: values, derivatives, and proven bounds between knots.

A curve over n spans has n + 5 coefficients; on span k it is Σ_j B_j(x)·c_{k+j}, x from 0 to 1, with the six pieces B_j
of the cardinal B-spline. Derivatives are splines of the differences of the coefficients, divided by the step, one degree
lower for each; a B-spline's pieces are positive and sum to 1, so on a span every value lies within the convex hull of
the coefficients that count there. Four continuous derivatives.
Source: C. de Boor, A Practical Guide to Splines, 1978, chapters IX to XI (from memory); a test compares scipy.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from math import comb, floor
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.motion.flown.small_code import SmallCode, address, small_code_for

DEGREE = 5


@cache
def _powers(degree: int) -> Floats:
    """Coefficients of x^m in B_j on one span, shape (degree + 1, degree + 1) [m, j]."""
    table: Floats = np.ones((1, 1))
    for p in range(1, degree + 1):
        raised: Floats = np.zeros((p + 1, p + 1))
        # B_j^p = ((x + p − j)·B_{j−1}^{p−1} + (j + 1 − x)·B_j^{p−1})/p, in the numbering of one span
        for j in range(p + 1):
            if j > 0:
                raised[:-1, j] += (p - j) * table[:, j - 1]
                raised[1:, j] += table[:, j - 1]
            if j < p:
                raised[:-1, j] += (j + 1) * table[:, j]
                raised[1:, j] -= table[:, j]
        table = raised / p
    return table


def pieces(places: Floats, order: int = 0) -> Floats:
    """The six pieces of the B-spline on one span, or a derivative of theirs.

    Parameters
    ----------
    places : ndarray, shape (n,) [1]
        0 at the start of the span, 1 at its end.
    order : int
        0 to 5.

    Returns
    -------
    pieces : ndarray, shape (n, 6) [1 per span^order]

    Notes
    -----
    Source: de Boor's recurrence; derivatives by differences of the coefficients. Exact to rounding.
    """
    low = DEGREE - order
    # by Horner's rule, not as a matrix product, whose last digit depends on what is worked out together
    table, x = _powers(low), np.asarray(places, dtype=np.float64)[:, None]
    own: Floats = np.empty((len(places), low + 1))
    own[:] = table[low]
    for row in table[low - 1 :: -1] if low else ():
        own *= x
        own += row
    if not order:
        return own
    out: Floats = np.zeros((len(places), DEGREE + 1))
    for i, times in enumerate(_folds(order)):
        out[:, i : i + low + 1] += times * own
    return out


@lru_cache(maxsize=4096)
def _pieces_at(place: float) -> Floats:
    """`pieces` of orders 0 to 4 at one place, shape (5, 6): links begin and end at few places of their spans."""
    return np.concatenate([pieces(np.array([place]), order) for order in range(DEGREE)])


@lru_cache(maxsize=256)
def _powers_of(step: float) -> Floats:
    """A step's powers of 0 to 4, shape (5, 1)."""
    return np.array([[step**order] for order in range(DEGREE)])


@cache
def _to_bernstein(degree: int) -> Floats:
    """Bernstein points on one span of control points, shape (degree + 1, degree + 1).

    Σ a_m·x^m has the points b_i = Σ_m C(i, m)/C(degree, m)·a_m.
    """
    rows = [[comb(i, m) / comb(degree, m) for m in range(degree + 1)] for i in range(degree + 1)]
    return np.asarray(np.array(rows) @ _powers(degree))


@cache
def _folds(order: int) -> tuple[float, ...]:
    """By what a derivative of the order folds onto the coefficients: the binomials of a difference."""
    return tuple(float((-1) ** (order - i) * comb(order, i)) for i in range(order + 1))


@dataclass(frozen=True, kw_only=True, eq=False)
class EvenSpline:
    """A curve in space over evenly spaced knots.

    Parameters
    ----------
    start : float
        Of the first span [beats].
    step : float
        Of every span [beats].
    coefficients : ndarray, shape (spans + 5, 3) [m]
    periodic : bool
        Whether it repeats after its last span; then the last five coefficients are the first five.
    """

    start: float
    step: float
    coefficients: Floats
    periodic: bool = False

    @property
    def spans(self) -> int:
        """Spans between knots."""
        return len(self.coefficients) - DEGREE

    @property
    def end(self) -> float:
        """Where the last span ends [beats]."""
        return self.start + self.spans * self.step

    def at(self, beats: Floats, order: int = 0) -> Floats:
        """Values or a derivative, shape (..., 3) [m per beat^order]; a curve that does not repeat stops at its ends.

        Parameters
        ----------
        beats : ndarray, shape (...) [beats]
        order : int
            0 to 4.
        """
        return self.among(beats, range(order, order + 1))[0]

    def among(self, beats: Floats, orders: range) -> list[Floats]:
        """Several derivatives, each as `at` gives it.

        Parameters
        ----------
        beats : ndarray, shape (...) [beats]
        orders : range
        """
        return together((self,), beats, orders)[0]

    def on_each_span(self, share: float, order: int = 0) -> Floats:
        """A derivative at the same place of every span, shape (spans, 3), as `at` gives it to rounding; no span is looked for.

        Parameters
        ----------
        share : float
            Of each span, from its start.
        order : int
            0 to 5.
        """
        rows = (pieces(np.array([share]), order)[0] / self.step**order).tolist()
        values = rows[0] * self.coefficients[: self.spans]
        for j in range(1, DEGREE + 1):
            values += rows[j] * self.coefficients[j : j + self.spans]
        return np.asarray(values)

    def path_at(self, beat: float) -> Floats:
        """Its value and first four derivatives at one beat, as `at` gives them, shape (5, 3) [m per beat^order].

        Parameters
        ----------
        beat : float
        """
        place = (beat - self.start) / self.step
        if self.periodic:
            place %= self.spans
        span = int(min(max(floor(place), 0), self.spans - 1))
        within = _pieces_at(min(max(place - span, 0.0), 1.0)) / _powers_of(self.step)
        rows = self.coefficients[span : span + DEGREE + 1]
        values = within[:, :1] * rows[0]
        for j in range(1, DEGREE + 1):
            values += within[:, j : j + 1] * rows[j]
        return np.asarray(values)

    def controls(self, order: int) -> Floats:
        """Control points of a derivative on each span, shape (spans, 6 − order, 3) [m per beat^order]."""
        differences = np.diff(self.coefficients, n=order, axis=0) / self.step**order
        taken = np.arange(self.spans)[:, None] + np.arange(DEGREE + 1 - order)
        return np.asarray(differences[taken])

    def bernstein(self, order: int) -> Floats:
        """Bernstein points of a derivative on each span, shape (spans, 6 − order, 3) [m per beat^order].

        It lies in their hull, which is much narrower than that of the control points; the first and the last are its values at
        the ends.
        """
        own = np.ascontiguousarray(
            (np.diff(self.coefficients, n=order, axis=0) / self.step**order).T
        )
        table = _to_bernstein(DEGREE - order)
        points: Floats = np.empty((len(table), 3, self.spans))  # in rows, which are quick to add up
        part: Floats = np.empty((3, self.spans))
        for i, row in enumerate(table.tolist()):
            first, *others = (j for j, share in enumerate(row) if share)
            np.multiply(row[first], own[:, first : first + self.spans], out=points[i])
            for j in others:
                np.multiply(row[j], own[:, j : j + self.spans], out=part)
                points[i] += part
        return points.transpose(2, 0, 1)

    def largest(self, order: int) -> Floats:
        """Proven bound on the size of a derivative on each span, shape (spans,) [m per beat^order]: of its `controls`."""
        points = np.diff(self.coefficients, n=order, axis=0) / self.step**order
        sizes = np.linalg.norm(points, axis=-1)  # each counts on several spans
        most = sizes[: self.spans]
        for j in range(1, DEGREE + 1 - order):
            most = np.maximum(most, sizes[j : j + self.spans])
        return np.asarray(most)

    def finer(self, times: int) -> "EvenSpline":
        """The same curve over spans divided into equal parts: tighter bounds, the same values.

        Parameters
        ----------
        times : int
            Parts of each span, a power of 2.
        """
        curve = self
        while times > 1:
            curve = _halved(curve)
            times //= 2
        return curve


def together(curves: Sequence[EvenSpline], beats: Floats, orders: range) -> list[list[Floats]]:
    """Derivatives of curves that share their knots, curve by curve, each as `EvenSpline.at` gives it.

    Parameters
    ----------
    curves : sequence of EvenSpline
    beats : ndarray, shape (...) [beats]
    orders : range
    """
    first = curves[0]
    place = (np.asarray(beats, dtype=np.float64) - first.start) / first.step
    if first.periodic:
        place = np.mod(place, first.spans)
    flat = place.ravel()
    code = small_code_for(100.0 + 1.5 * len(flat) * len(orders) * len(curves))
    tabled = orders.step == 1 and orders.start >= 0 and orders.stop <= DEGREE and first.spans > 0
    if code is not None and tabled:
        return [
            [
                np.asarray(own.reshape(*place.shape, 3))
                for own in _compiled(code, curve, flat, orders)
            ]
            for curve in curves
        ]
    span = np.clip(np.floor(flat), 0, first.spans - 1).astype(np.int64)
    share = np.clip(flat - span, 0.0, 1.0)
    taken = [[curve.coefficients[span + j] for j in range(DEGREE + 1)] for curve in curves]
    part: Floats = np.empty((len(flat), 3))
    out: list[list[Floats]] = [[] for _ in curves]
    for order in orders:
        within = pieces(share, order) / first.step**order
        for own, rows in zip(taken, out, strict=True):
            values = within[:, :1] * own[0]
            for j in range(1, DEGREE + 1):
                np.multiply(within[:, j : j + 1], own[j], out=part)
                values += part
            rows.append(np.asarray(values.reshape(*place.shape, 3)))
    return out


def _compiled(code: SmallCode, curve: EvenSpline, places: Floats, orders: range) -> Floats:
    """Derivatives at places [spans], shape (orders, n, 3), by machine code: those of `together` in every digit."""
    own, fixed = np.ascontiguousarray(curve.coefficients, dtype=np.float64), _fixed_for(curve.step)
    values: Floats = np.empty((len(orders), len(places), 3))
    code.spline_values(
        own, places, *fixed.places,
        np.empty(2 * DEGREE + 2), values, len(places), len(own) - DEGREE, orders.start, len(orders),
    )  # fmt: skip
    return values


class _Fixed(NamedTuple):
    """What the machine code needs besides: `_powers` and `_folds` of orders 0 to 4, in rows of six, and a step's powers."""

    arrays: tuple[Floats, Floats, Floats]
    places: tuple[int, ...]  # where they lie


@lru_cache(maxsize=256)
def _fixed_for(step: float) -> _Fixed:
    tables: Floats = np.zeros((DEGREE, DEGREE + 1, DEGREE + 1))
    folds: Floats = np.zeros((DEGREE, DEGREE + 1))
    for order in range(DEGREE):
        low = DEGREE - order
        tables[order, : low + 1, : low + 1] = _powers(low)
        folds[order, : order + 1] = _folds(order)
    arrays = tables, folds, np.array([step**order for order in range(DEGREE)])
    return _Fixed(arrays, tuple(map(address, arrays)))


def _halved(curve: EvenSpline) -> EvenSpline:
    """Knots inserted in the middle of every span: c_{2i} and c_{2i+1} from the even and odd binomials of 6 over 32."""
    c = curve.coefficients
    binomial = np.array([comb(DEGREE + 1, k) for k in range(DEGREE + 2)]) / 2**DEGREE
    even = sum(binomial[2 * k] * c[3 - k : len(c) - k] for k in range(4))
    odd = sum(binomial[2 * k + 1] * c[2 - k : len(c) - k] for k in range(3))
    fine: Floats = np.empty((2 * len(even) + len(odd) - len(even), 3))
    fine[0::2], fine[1::2] = odd[: len(fine[0::2])], even
    return EvenSpline(
        start=curve.start, step=curve.step / 2, coefficients=fine[: 2 * curve.spans + DEGREE],
        periodic=curve.periodic,
    )  # fmt: skip


def through(points: Floats, *, start: float, step: float) -> EvenSpline:
    """The repeating spline through points at its knots.

    Parameters
    ----------
    points : ndarray, shape (spans, 3) [m]
        At `start` and every `step` after it.
    start, step : float
        [beats]

    Notes
    -----
    Source: at a knot the pieces are 1, 26, 66, 26, 1 over 120; solved by discrete Fourier transform. Exact to rounding.
    """
    count = len(points)
    weights: Floats = np.zeros(count)
    np.add.at(weights, np.arange(DEGREE) % count, pieces(np.zeros(1))[0, :DEGREE])
    # The value at knot k is Σ_j w_j·c_{k+j}: a correlation.
    spectrum = np.conj(np.fft.rfft(weights))
    solved = np.fft.irfft(np.fft.rfft(points, axis=0) / spectrum[:, None], n=count, axis=0)
    return EvenSpline(start=start, step=step, coefficients=closed(solved), periodic=True)


def between(
    points: Floats, *, start: float, step: float, first: Floats, last: Floats
) -> EvenSpline:
    """The spline through points at its knots with given first and second derivatives at both ends.

    Parameters
    ----------
    points : ndarray, shape (spans + 1, 3) [m]
    start, step : float
        [beats]
    first, last : ndarray, shape (2, 3) [m/beat and m/beat²]

    Notes
    -----
    Source: interpolation with derivatives at the ends, de Boor chapter XIII; solved as a band. Exact to rounding.
    """
    from scipy.linalg.lapack import dgbtrs

    load: Floats = np.zeros((len(points) + DEGREE - 1, 3), order="F")
    load[0], load[1], load[-1], load[-2] = first[0], first[1], last[0], last[1]
    load[2:-2] = points
    if not np.isfinite(load).all():
        raise ValueError("a spline through what is no number")
    band, pivots = _factored(len(points), step)
    solved, failed = dgbtrs(band, _HALF, _HALF, load, pivots, overwrite_b=True)
    if failed:
        raise ValueError(f"the spline's equations cannot be solved ({failed})")
    return EvenSpline(start=start, step=step, coefficients=np.ascontiguousarray(solved))


_HALF = DEGREE - 1  # diagonals on either side


@lru_cache(maxsize=32)
def _factored(points: int, step: float) -> tuple[Floats, Ints]:
    """The equations of `between`, factored: the same for every curve over as many knots."""
    from scipy.linalg.lapack import dgbtrf

    count = points + DEGREE - 1
    rows = [pieces(np.zeros(1), order)[0, :DEGREE] / step**order for order in range(3)]
    band: Floats = np.zeros((3 * _HALF + 1, count))  # with room for what comes of the pivots
    # rows: first and second derivative at the start, all values, second and first derivative at the end
    order_of = np.array([1, 2, *[0] * points, 2, 1])
    knot_of = np.array([0, 0, *range(points), points - 1, points - 1])
    columns = knot_of[:, None] + np.arange(DEGREE)
    band[2 * _HALF + np.arange(count)[:, None] - columns, columns] = np.stack(rows)[order_of]
    found, pivots, failed = dgbtrf(band, _HALF, _HALF)
    if failed:
        raise ValueError(f"the spline's equations cannot be solved ({failed})")
    return found, pivots


def at_knot(derivatives: Floats, step: float) -> Floats:
    """The five coefficients that count at a knot, from a curve's value and first four derivatives there.

    Parameters
    ----------
    derivatives : ndarray, shape (5, 3) [m per beat^order]
    step : float
        [beats]

    Returns
    -------
    coefficients : ndarray, shape (5, 3) [m]

    Notes
    -----
    Source: the pieces' derivatives at a knot, solved. Exact to rounding.
    """
    rows = np.stack([pieces(np.zeros(1), order)[0, :DEGREE] for order in range(DEGREE)])
    scaled = derivatives * (step ** np.arange(DEGREE))[:, None]
    return np.asarray(np.linalg.solve(rows, scaled))


def closed(coefficients: Floats) -> Floats:
    """Coefficients of one period with the first five once more at the end."""
    again = np.arange(len(coefficients) + DEGREE) % len(coefficients)
    return np.asarray(coefficients[again])
