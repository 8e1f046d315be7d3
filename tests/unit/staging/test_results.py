"""Results kept with a show: worked out once, and by no other show."""

import copy
import pickle
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace

import pytest

from sequencer.staging.results import Results, once_per_show


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Show:
    title: str
    results: Results = field(default_factory=Results, init=False, repr=False, compare=False)


@pytest.fixture
def counted():
    """A function of a show, and the shows for which it was worked out."""
    asked = []

    @once_per_show
    def letters(show):
        asked.append(show.title)
        return len(show.title) or None

    return letters, asked


def test_a_result_is_worked_out_once_for_each_show(counted):
    letters, asked = counted
    one, other = Show(title="Wren"), Show(title="Moss!")

    assert [letters(one), letters(other), letters(one), letters(other)] == [4, 5, 4, 5]
    assert asked == ["Wren", "Moss!"]


def test_nothing_is_a_result_too(counted):
    letters, asked = counted
    show = Show(title="")

    assert letters(show) is None
    assert letters(show) is None
    assert asked == [""]


def test_a_changed_show_starts_without_results(counted):
    letters, _ = counted
    show = Show(title="Wren")
    letters(show)

    assert letters(replace(show, title="Flint")) == 5
    assert letters(show) == 4


def test_results_do_not_travel_to_another_process(counted):
    """Some cannot be pickled, and each would be as long in coming as the work itself."""
    letters, _ = counted
    show = Show(title="Wren")
    letters(show)
    show.results["unpicklable"] = lambda: None

    assert pickle.loads(pickle.dumps(show)).results == {}  # noqa: S301 - our own bytes
    assert copy.deepcopy(show).results == {}
    assert pickle.loads(pickle.dumps(show)).title == "Wren"  # noqa: S301 - our own bytes


def test_an_error_is_not_kept():
    tries = []

    @once_per_show
    def works_the_second_time(show):
        tries.append(show)
        if len(tries) == 1:
            raise ValueError("not yet")
        return "done"

    show = Show(title="Wren")
    with pytest.raises(ValueError, match="not yet"):
        works_the_second_time(show)
    assert works_the_second_time(show) == "done"


def test_threads_that_ask_at_once_get_the_same_result():
    @once_per_show
    def fresh(_show):
        return object()

    show = Show(title="Wren")
    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(lambda _: fresh(show), range(64)))

    assert len({id(each) for each in found}) == 1
