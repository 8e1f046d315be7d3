"""Work in several processes: results in the order of the items, as in one. Real processes: test_working_out."""

import pytest

from sequencer.workers import in_workers


@pytest.mark.parametrize(("jobs", "backend"), [(1, None), (2, "threading"), (-1, "threading")])
def test_results_come_in_the_order_of_the_items(jobs, backend):
    found = in_workers(lambda item: item * item, [3, 1, 2], jobs=jobs, backend=backend)
    assert list(found) == [9, 1, 4]


def test_one_process_does_one_item_after_the_other_as_they_are_asked_for():
    done = []
    found = in_workers(lambda item: done.append(item) or item, [1, 2], jobs=1)
    assert next(found) == 1
    assert done == [1]
