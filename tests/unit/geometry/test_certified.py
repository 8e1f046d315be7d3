import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.certified import Sample, search


def lipschitz(function, slope):
    def evaluate(rows, centre, half, enough):
        value = function(rows, centre)
        return Sample(value, value - slope * half, value + slope * half, rows * 10)

    return evaluate


def run(evaluate, *, group=(0,), start=(0.0,), end=(10.0,), required=(-np.inf,), **options):
    return search(
        evaluate,
        group=np.array(group),
        start=np.array(start, dtype=float),
        end=np.array(end, dtype=float),
        required=np.array(required, dtype=float),
        **options,
    )


def test_minimum_of_a_parabola():
    found = run(lipschitz(lambda _, t: (t - 3.7) ** 2, 20.0))

    assert_allclose(found.value, 0.0, atol=0.005)
    assert_allclose(found.at, 3.7, atol=0.1)
    assert found.lower[0] <= found.value[0] <= found.lower[0] + 0.005
    assert len(found.spans.group) == 0


def test_a_dip_of_a_thousandth_is_found():
    dip = 7.123456789
    found = run(
        lipschitz(lambda _, t: np.minimum(1.0, np.abs(t - dip) * 1000.0), 1000.0), required=(0.5,)
    )

    assert_allclose(found.value, 0.0, atol=0.005)
    assert len(found.spans.group) == 1
    assert_allclose(found.spans.start, dip - 0.0005, atol=1e-5)
    assert_allclose(found.spans.end, dip + 0.0005, atol=1e-5)


def test_groups_keep_apart():
    level = np.array([1.0, 2.0, 3.0])
    found = run(
        lipschitz(lambda r, t: level[r] + 0.1 * np.sin(t), 0.1),
        group=(1, 0, 1),
        start=(0, 0, 20),
        end=(10, 10, 30),
        required=(1.95, 0.0),
    )

    assert_allclose(found.value, [1.9, 0.9], atol=0.005)
    assert list(found.row) == [1, 0]
    assert list(found.label) == [10, 0]
    assert set(found.spans.group) == {0}


def test_a_hair_under_the_requirement_is_under():
    found = run(lipschitz(lambda _, t: 1.0 + np.abs(t - 5.0), 1.0), required=(1.0 + 1e-6,))

    assert len(found.spans.group) == 1
    assert found.spans.start[0] <= 5.0 <= found.spans.end[0]


def test_nothing_to_search():
    found = run(lipschitz(lambda _, t: t, 1.0), group=np.zeros(0, int), start=(), end=())

    assert np.isinf(found.value[0])
    assert found.evaluations == 0


@pytest.mark.parametrize(("value", "slope"), [(np.nan, 1.0), (1.0, np.nan)])
def test_what_is_no_bound_is_refused(value, slope):
    with pytest.raises(ValueError, match="nothing is proven"):
        run(lipschitz(lambda _, t: t * 0 + value, slope))


def test_bounds_that_do_not_tighten_are_refused():
    def evaluate(rows, centre, half, enough):
        value = np.ones(len(rows))
        return Sample(value, value - 1.0, value + 1.0, rows)

    with pytest.raises(ValueError, match="do not tighten"):
        run(evaluate, end=(1e-9,), tolerance=0.1)


def test_what_is_known_spares_work():
    evaluate = lipschitz(lambda _, t: 2.0 + np.sin(5 * t), 5.0)
    fresh = run(evaluate)
    known = run(evaluate, best=np.array([0.5]))

    assert known.evaluations < fresh.evaluations
    assert known.value[0] == 0.5
    assert known.row[0] == -1
