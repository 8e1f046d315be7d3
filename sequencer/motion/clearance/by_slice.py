"""Searches by slice of time: what is found in a slice is kept, and only slices that changed are searched.

A slice is searched on its own, so what is found there is the same whatever else is searched, and whatever was
kept. The smallest value of a whole show is that of its slices, and spans that touch at the edge of a slice are one.
"""

from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.geometry.certified import CertifiedMinima, Sample, Spans, joined_spans
from sequencer.kept import recent_each
from sequencer.motion.clearance.grid import Cells

_CELLS = 8192  # searched together, to limit memory
_STEP = 0.05  # [m] to which a known value is rounded up
_MOST_KEPT = 300_000  # results of slices: those of 200 performers, three times over

SliceKey = Callable[[int, int], Hashable | None]
SliceSample = Callable[[Ints, Ints, Floats], Sample]
SliceSearch = Callable[[Ints, Ints, Ints, Floats, Floats], CertifiedMinima]


class _InSlice(NamedTuple):
    """What was found in one slice."""

    value: float  # inf if nothing was found below what was known
    at: float  # [beats]
    label: int  # −1 if nothing was found
    spans: tuple[tuple[float, float], ...]  # [beats]


_NOTHING = _InSlice(np.inf, np.nan, -1, ())


def _record(found: _InSlice) -> list[Any]:
    nothing = found.label < 0 and not found.spans and np.isinf(found.value) and np.isnan(found.at)
    return [] if nothing else list(found)


def _restored(record: Sequence[Any]) -> _InSlice:
    if not record:
        return _NOTHING
    value, at, label, spans = record
    return _InSlice(value, at, label, tuple((start, end) for start, end in spans))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RowMinima:
    """What was found in all slices of n rows of cells."""

    value: Floats  # (n,) inf if nothing was found
    at: Floats  # (n,) [beats]
    label: Ints  # (n,) −1 if nothing was found
    spans: Spans  # group is the row
    evaluations: int  # number of intervals examined; none for what was kept


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SlicedSearch:
    """Rows of cells, such as pairs of performers, and how they are searched.

    Attributes
    ----------
    key
        `key(row, slice)` returns a content key of all that a result depends on in a slice, beside the numbers given
        here; None to keep nothing.
    sample
        `sample(row, cell, beats)` returns the distances at instants in cells.
    search
        `search(row, cell, group, required, best)` searches cells of rows, and returns what it finds of each group.
        What it finds of a group must not depend on the others.
    """

    grid: Cells
    gap: Floats  # (n, c) [m] lower bound of the distance in each cell; inf if it is not to be searched
    required: Floats  # (n,) [m] spans below it are sought
    tolerance: float  # [m] largest error of a distance
    key: SliceKey
    sample: SliceSample
    search: SliceSearch
    minima: bool = True  # false if distances above the requirement do not matter
    spans_only: bool = False  # true if distances below it do not matter either, but only the spans
    # Rows share their states at an instant, so what is searched together is near in time.
    by_time: bool = True

    def found(self) -> RowMinima:
        """Smallest distance of each row, and the spans below its requirement."""
        near = self.gap < self.required[:, None]
        if self.spans_only:  # no smallest distance is sought in them, and they are the same without
            nothing = np.full(len(near), -np.inf)
            return self._by_slice(near, self._search("spans", self.required, nothing))
        # Slices are searched below a common value, but a rounded one: so that they are not searched again because
        # the smallest distance elsewhere changed a little.
        first = self._by_slice(near, self._sample())
        known = _rounded(first.value)
        if not self.minima:
            known = np.minimum(known, self.required)
        found = self._by_slice(near, self._search("near", self.required, known))
        found = _smaller(found, first)
        if not self.minima:
            return _below(found, self.required)
        # Cells beyond the requirement that may hold less.
        known = _rounded(found.value)
        beyond = ~near & (self.gap < np.where(np.isfinite(known), known, -np.inf)[:, None])
        least = np.where(np.isfinite(known), found.value - self.tolerance, -np.inf)
        cuts = self.grid.cuts
        some = np.logical_or.reduceat(beyond & (self.gap < least[:, None]), cuts[:-1], axis=1)
        beyond &= np.repeat(some, np.diff(cuts), axis=1)
        none = np.full(len(near), -np.inf)
        return _smaller(found, self._by_slice(beyond, self._search("beyond", none, known)))

    def _by_slice(self, want: Bools, look: "_Look") -> RowMinima:
        """Look at the cells that are wanted; of equal values the earliest slice's."""
        if not np.any(want):
            return _joined(len(want), [], [], 0)
        some = np.logical_or.reduceat(want, self.grid.cuts[:-1], axis=1)
        if self.by_time:
            at, row = np.nonzero(some.T)
        else:
            row, at = np.nonzero(some)
        evaluations = 0

        def work(missing: list[int]) -> list[_InSlice]:
            nonlocal evaluations
            out: list[_InSlice] = []
            for part in self._parts(want, row[missing], at[missing]):
                which = [missing[i] for i in part]
                cells = [self._cells(want, row[k], at[k]) for k in which]
                more, found = look.work(row[which], cells)
                evaluations += more
                out += found
            return out

        keys = [self._key(look, k, s) for k, s in zip(row.tolist(), at.tolist(), strict=True)]
        found = recent_each(
            "slices", keys, work, most=_MOST_KEPT, record=_record, restore=_restored
        )
        return _joined(len(want), row.tolist(), found, evaluations)

    def _sample(self) -> "_Look":
        """At the middles of a few cells: how near they come at least."""

        def work(row: Ints, cells: list[Ints]) -> tuple[int, list[_InSlice]]:
            few = [own[len(own) // 4 :: len(own) // 2 + 1] for own in cells]
            group = np.repeat(np.arange(len(row)), [len(own) for own in few])
            cell = np.concatenate(few)
            at = 0.5 * (self.grid.start + self.grid.end)[cell]
            order = np.lexsort((group, at))
            found = self.sample(row[group[order]], cell[order], at[order])
            out = [_NOTHING] * len(row)
            for g, when, value, label in zip(
                group[order].tolist(), at[order].tolist(), found.value.tolist(),
                found.label.tolist(), strict=True,
            ):  # fmt: skip
                if value < out[g].value:
                    out[g] = _InSlice(value, when, label, ())
            return len(cell), out

        return _Look("sample", np.zeros(len(self.gap)), np.zeros(len(self.gap)), work)

    def _search(self, what: str, required: Floats, known: Floats) -> "_Look":
        """Proven, for distances below what is known of each row."""

        def work(row: Ints, cells: list[Ints]) -> tuple[int, list[_InSlice]]:
            group = np.repeat(np.arange(len(row)), [len(own) for own in cells])
            cell = np.concatenate(cells)
            if self.by_time:
                order = np.lexsort((group, cell))
                cell, group = cell[order], group[order]
            found = self.search(row[group], cell, group, required[row], known[row])
            return found.evaluations, _apart(found, len(row))

        return _Look(what, required, known, work)

    def _key(self, look: "_Look", row: int, at: int) -> Hashable | None:
        own = self.key(row, at)
        # The requirement of the row decides which cells are looked at, whatever is sought in them.
        numbers = float(self.required[row]), float(look.required[row]), float(look.known[row])
        return None if own is None else (look.what, own, numbers, self.tolerance)

    def _cells(self, want: Bools, row: int, at: int) -> Ints:
        low, high = self.grid.cuts[at : at + 2]
        return np.asarray(low + np.flatnonzero(want[row, low:high]))

    def _parts(self, want: Bools, row: Ints, at: Ints) -> Iterator[list[int]]:
        """Some results at a time, in order, with a limited number of cells; never a part of one."""
        size = np.add.reduceat(want, self.grid.cuts[:-1], axis=1, dtype=np.int64)[row, at]
        part: list[int] = []
        total = 0
        for i, own in enumerate(size.tolist()):
            if part and total + own > _CELLS:
                yield part
                part, total = [], 0
            part.append(i)
            total += own
        if part:
            yield part


class _Look(NamedTuple):
    """A way to look at cells, and the numbers that its results depend on."""

    what: str
    required: Floats  # (n,) [m]
    known: Floats  # (n,) [m]
    # for some rows and the cells of a slice of each: how many intervals were examined, and what was found
    work: Callable[[Ints, list[Ints]], tuple[int, list[_InSlice]]]


def _rounded(value: Floats) -> Floats:
    return np.asarray(np.ceil(value / _STEP) * _STEP)


def _apart(found: CertifiedMinima, groups: int) -> list[_InSlice]:
    """What was found of each group."""
    spans: list[list[tuple[float, float]]] = [[] for _ in range(groups)]
    own = found.spans
    for g, *span in zip(own.group.tolist(), own.start.tolist(), own.end.tolist(), strict=True):
        spans[g].append((span[0], span[1]))
    value = np.where(found.row >= 0, found.value, np.inf)
    columns = (value.tolist(), found.at.tolist(), found.label.tolist(), map(tuple, spans))
    return [_InSlice(*each) for each in zip(*columns, strict=True)]


def _joined(n: int, row: list[int], found: list[_InSlice], evaluations: int) -> RowMinima:
    """What was found in the slices of n rows, in order of time."""
    value, at = np.full(n, np.inf), np.full(n, np.nan)
    label = np.full(n, -1, dtype=np.int64)
    for k, each in zip(row, found, strict=True):
        if each.value < value[k]:
            value[k], at[k], label[k] = each.value, each.at, each.label
    spans = [(k, *span) for k, each in zip(row, found, strict=True) for span in each.spans]
    group, start, end = np.array(spans).reshape(-1, 3).T
    return RowMinima(
        value=value,
        at=at,
        label=label,
        spans=joined_spans([(group.astype(np.int64), start, end)]),
        evaluations=evaluations,
    )


def _below(found: RowMinima, required: Floats) -> RowMinima:
    """What was found, without distances that are not below the requirement."""
    hit = found.value < required
    return replace(
        found,
        value=np.where(hit, found.value, np.inf),
        at=np.where(hit, found.at, np.nan),
        label=np.where(hit, found.label, -1),
    )


def _smaller(first: RowMinima, later: RowMinima) -> RowMinima:
    """The smaller value of each row in two searches; of equal ones the first, and the spans of the first."""
    better = later.value < first.value
    return RowMinima(
        value=np.where(better, later.value, first.value),
        at=np.where(better, later.at, first.at),
        label=np.where(better, later.label, first.label),
        spans=first.spans,
        evaluations=first.evaluations + later.evaluations,
    )
