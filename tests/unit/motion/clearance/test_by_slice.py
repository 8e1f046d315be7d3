"""What is found by slices of time is what is found at once, and only slices that changed are searched.

Rows are plain functions of time here, known through exact bounds; the reference is their smallest value on a fine grid.
"""

from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer import kept
from sequencer.geometry.certified import CertifiedMinima, Sample, Spans, search
from sequencer.motion.clearance import by_slice
from sequencer.motion.clearance.by_slice import SlicedSearch
from tests.next_process import next_process
from tests.nothing_kept import nothing_kept

INF = np.inf


@pytest.fixture(autouse=True)
def nothing_known():
    with nothing_kept():
        yield


def grid(slices, each):
    """Cells one beat long."""
    cuts = np.arange(slices + 1) * each
    edges = np.arange(slices * each + 1.0)
    return SimpleNamespace(cuts=cuts, start=edges[:-1], end=edges[1:])


class Waves:
    """Rows that are a shift plus a wave whose shift differs from slice to slice; what is asked of them is written down."""

    def __init__(self, levels, each=8, required=1.0, tolerance=0.005, **more):
        self.levels, self.each = np.array(levels, float), each
        self.searched, self.sampled = [], []
        n, slices = self.levels.shape
        self.grid = grid(slices, each)
        self.sliced = SlicedSearch(
            grid=self.grid, gap=np.repeat(self.levels - 0.5, each, axis=1), required=np.full(n, required),
            tolerance=tolerance, key=self.key, sample=self.sample, search=self.search, **more,
        )  # fmt: skip

    def key(self, row, s):
        return (row, s, self.levels[row, s])

    def at(self, row, beats, cell):
        return self.levels[row, cell // self.each] + 0.5 * np.sin(2.1 * beats + row)

    def sample(self, row, cell, beats):
        self.sampled += list(zip(row.tolist(), cell.tolist(), beats.tolist(), strict=True))
        value = self.at(row, beats, cell)
        return Sample(value, value, value, row)

    def search(self, row, cell, group, required, best):
        self.searched.append((row, cell, group, required, best))

        def evaluate(r, centre, half, _enough):
            value = self.at(row[r], centre, cell[r])
            return Sample(value, value - 1.05 * half, value + 1.05 * half, row[r])

        return search(
            evaluate, group=group, start=self.grid.start[cell], end=self.grid.end[cell],
            required=required, best=best, tolerance=0.005, apart=True,
        )  # fmt: skip

    def looked_at(self):
        """Rows and slices that were searched."""
        return sorted({
            (int(r), int(c) // self.each) for row, cell, *_ in self.searched
            for r, c in zip(row, cell, strict=True)
        })  # fmt: skip


def dense(waves):
    beats = np.linspace(0, len(waves.grid.start), 200_001)[:-1] + 1e-6
    cell = np.floor(beats).astype(int)
    return [waves.at(np.full(len(beats), k), beats, cell) for k in range(len(waves.levels))]


LEVELS = [[1.2, 1.9, 1.1, 4.0], [1.4, 3.0, 1.45, 1.3], [5.0, 6.0, 7.0, 8.0]]


def test_the_smallest_of_all_slices_and_spans_below_the_requirement():
    waves = Waves(LEVELS)
    found = waves.sliced.found()
    for k, values in enumerate(dense(waves)):
        under = values < 1.0
        if not under.any():
            continue
        assert values.min() - 1e-9 <= found.value[k] <= values.min() + 0.005
        cell = np.array([int(found.at[k])])
        assert found.value[k] == waves.at(k, found.at[k], cell)[0]
        assert found.label[k] == k
        beats = np.linspace(0, 32, 200_001)[:-1][under]
        of = found.spans.group == k
        inside = np.zeros(len(beats), bool)
        for low, high in zip(found.spans.start[of], found.spans.end[of], strict=True):
            inside |= (beats >= low - 1e-9) & (beats <= high + 1e-9)
        assert inside.all()
    assert (found.value[2], found.label[2]) == (INF, -1)
    assert np.isnan(found.at[2])
    assert found.evaluations > 0


def test_only_a_slice_that_changed_is_searched_again():
    first = Waves(LEVELS)
    before = first.sliced.found()
    again = Waves(LEVELS)
    same = again.sliced.found()
    assert (again.searched, again.sampled, same.evaluations) == ([], [], 0)
    for name in ("value", "at", "label"):
        assert_array_equal(getattr(same, name), getattr(before, name))
    changed = [list(row) for row in LEVELS]
    changed[0][0] = 1.21
    other = Waves(changed)
    kept = other.sliced.found()
    assert other.looked_at() == [(0, 0)]
    with nothing_kept():
        anew = Waves(changed).sliced.found()
    for name in ("value", "at", "label"):
        assert_array_equal(getattr(kept, name), getattr(anew, name))
    for name in ("group", "start", "end"):
        assert_array_equal(getattr(kept.spans, name), getattr(anew.spans, name))


def test_the_next_process_finds_the_slices_of_the_last_one_to_the_last_digit(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.setenv("LOCALAPPDATA", str(tmp_path))
    with nothing_kept():
        anew = Waves(LEVELS).sliced.found()
    for looked_at in ([(0, 0), (0, 2), (1, 0), (1, 2), (1, 3)], []):
        with next_process(), kept.shelf("show"):
            waves = Waves(LEVELS)
            found = waves.sliced.found()
        assert set(looked_at) <= set(waves.looked_at())
        assert bool(waves.sampled) == bool(looked_at)
        for name in ("value", "at", "label"):
            assert_array_equal(getattr(found, name), getattr(anew, name))
        for name in ("group", "start", "end"):
            assert_array_equal(getattr(found.spans, name), getattr(anew.spans, name))
    assert waves.searched == []


def test_without_a_key_nothing_is_kept():
    waves = Waves(LEVELS)
    waves.key = lambda *_: None
    for _ in range(2):
        waves.searched.clear()
        sliced = SlicedSearch(
            grid=waves.grid, gap=waves.sliced.gap, required=np.full(3, 1.0), tolerance=0.005,
            key=waves.key, sample=waves.sample, search=waves.search,
        )  # fmt: skip
        assert sliced.found().evaluations > 0
        assert waves.looked_at()


def test_cells_beyond_the_requirement_are_searched_where_they_may_hold_less():
    """Reach says 0.2, the least is 0.7: of the slices whose reach says 0.55 and 0.9 only the first can hold less."""
    waves = Waves([[0.7, 1.05, 1.4]], required=0.3)
    waves.at = lambda row, beats, cell: (
        np.array([1.0, 0.95, 0.92])[cell // 8] + 0.3 * np.sin(2.1 * beats + row)
    )
    found = waves.sliced.found()
    assert waves.looked_at() == [(0, 0), (0, 1)]
    least = min(
        float(waves.at(0, beats, beats.astype(int)).min())
        for beats in (np.linspace(0, 16, 100_001)[:-1],)
    )
    assert least - 1e-9 <= found.value[0] <= least + 0.005
    _, _, _, required, best = waves.searched[1]
    assert set(required) == {-INF}  # no spans are sought there
    assert best[0] >= found.value[0]
    assert best[0] == pytest.approx(0.05 * np.ceil(best[0] / 0.05 - 1e-9))
    assert best[0] - 0.05 < 0.7 + 1e-9


def test_slices_are_searched_below_a_rounded_sample():
    """No slice is searched below more than its row's nearest sample, rounded up to 5 cm."""
    waves = Waves(LEVELS)
    waves.sliced.found()
    row, _, group, _, best = waves.searched[0]
    for r, g in zip(row, group, strict=True):
        nearest = min(
            float(waves.at(k, beat, np.array([c]))[0]) for k, c, beat in waves.sampled if k == r
        )
        assert nearest <= best[g] < nearest + 0.05 + 1e-9
    assert {beat - cell for _, cell, beat in waves.sampled} == {0.5}


def test_without_minima_only_what_is_below_the_requirement_is_told():
    waves = Waves([[1.2, 1.9], [1.5, 1.49], [1.45, 4.0]], minima=False)
    found = waves.sliced.found()
    assert found.value[0] == pytest.approx(0.7, abs=0.006)
    assert found.value[1] == INF or found.value[1] < 1.0
    assert np.all((found.value < 1.0) == (found.label >= 0))
    assert np.all(np.isnan(found.at) == (found.label < 0))
    assert all(best.max() <= 1.0 for *_, best in waves.searched)
    assert set(found.spans.group.tolist()) >= {0, 2}


def test_of_equal_values_the_earliest_slice_and_spans_join_at_its_edge():
    def given(row, cell, group, _required, best):
        n = len(best)
        return CertifiedMinima(
            value=np.full(n, 0.25), at=np.array([float(cell[group == g][0]) for g in range(n)]),
            row=np.zeros(n, int), label=np.arange(n), lower=np.zeros(n), evaluations=n,
            spans=Spans(group=np.arange(n), start=np.array([2.0 * g for g in range(n)]), end=np.array([2.0 * g + 2 for g in range(n)])),
        )  # fmt: skip

    sliced = SlicedSearch(
        grid=grid(2, 2), gap=np.zeros((1, 4)), required=np.ones(1), tolerance=0.005,
        key=lambda *key: key, search=given,
        sample=lambda row, _cell, beats: Sample(*[np.full(len(beats), 0.25)] * 3, row),
    )  # fmt: skip
    found = sliced.found()
    assert (found.value[0], found.at[0], found.label[0]) == (0.25, 0.0, 0)
    assert (found.spans.start.tolist(), found.spans.end.tolist()) == ([0.0], [4.0])


def test_a_sample_counts_where_the_search_finds_no_less():
    """The search is told 0.3, the sample 0.26 rounded up, and finds nothing: the sample stays."""

    def nothing(_row, _cell, _group, _required, best):
        n = len(best)
        assert_allclose(best, 0.3)
        none = np.zeros(0)
        return CertifiedMinima(
            value=best, at=np.full(n, np.nan), row=np.full(n, -1), label=np.full(n, -1),
            lower=best, spans=Spans(group=none.astype(int), start=none, end=none), evaluations=n,
        )  # fmt: skip

    sliced = SlicedSearch(
        grid=grid(1, 4), gap=np.zeros((1, 4)), required=np.ones(1), tolerance=0.005,
        key=lambda *key: key, search=nothing,
        sample=lambda row, _cell, beats: Sample(*[np.where(beats > 1, 0.26, 0.4)] * 3, row + 7),
    )  # fmt: skip
    found = sliced.found()
    assert (found.value[0], found.label[0]) == (0.26, 7)
    assert found.at[0] == 1.5


def test_a_limited_number_of_cells_is_searched_together(monkeypatch):
    monkeypatch.setattr(by_slice, "_CELLS", 20)
    few = Waves(LEVELS)
    parts = few.sliced.found()
    assert len(few.searched) > 1
    assert all(len(row) <= 20 for row, *_ in few.searched)
    with nothing_kept():
        monkeypatch.setattr(by_slice, "_CELLS", 10_000)
        whole = Waves(LEVELS).sliced.found()
    assert_array_equal(parts.value, whole.value)
    assert_array_equal(parts.at, whole.at)
    assert_array_equal(parts.spans.start, whole.spans.start)


def test_a_slice_that_may_only_hold_as_much_is_not_searched():
    """The least is 0.71, rounded up 0.75: a slice whose reach says 0.72 cannot hold less, one that says 0.7 can."""

    def searched(gap):
        waves = Waves([[0.7, 1.0]], required=0.3)
        waves.at = lambda _row, beats, cell: np.where(cell < 8, 0.71, 0.9) + 0.0 * beats
        sliced = SlicedSearch(
            grid=waves.grid, gap=np.repeat([[0.2, gap]], 8, axis=1), required=np.array([0.3]),
            tolerance=0.005, key=lambda *_: None, sample=waves.sample, search=waves.search,
        )  # fmt: skip
        assert sliced.found().value[0] == 0.71
        return waves.looked_at()

    assert searched(0.72) == [(0, 0)]
    assert searched(0.7055) == [(0, 0)]  # by less than the tolerance
    assert searched(0.7) == [(0, 0), (0, 1)]


def test_another_requirement_or_tolerance_is_another_result():
    for required, tolerance, again in (
        (1.0, 0.005, 1),
        (0.9, 0.005, 1),
        (0.9, 0.01, 1),
        (0.9, 0.01, 0),
    ):
        waves = Waves(LEVELS, required=required, tolerance=tolerance)
        waves.sliced.found()
        assert (len(waves.searched) > 0) == bool(again)
