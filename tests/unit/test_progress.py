"""The progress of a part within the whole; and work that is stopped: at its next step, in its own thread only, and never by mistake for an error."""

import threading

import numpy as np
import pytest

from sequencer.geometry.certified import Sample, search
from sequencer.kept import kept_each
from sequencer.progress import Stopped, stop_if_unwanted, stoppable, within


def test_work_goes_on_until_it_is_unwanted():
    unwanted = []
    stop_if_unwanted()
    with stoppable(lambda: bool(unwanted)):
        stop_if_unwanted()
        unwanted.append(True)
        with pytest.raises(Stopped):
            stop_if_unwanted()
    stop_if_unwanted()


@pytest.mark.parametrize("unwanted", [(True, False), (False, True)])
def test_one_of_several_contexts_is_enough(unwanted):
    outer, inner = unwanted
    with stoppable(lambda: outer), stoppable(lambda: inner), pytest.raises(Stopped):
        stop_if_unwanted()


def test_what_handles_errors_does_not_stop_it():
    assert not issubclass(Stopped, Exception)


def test_another_thread_goes_on():
    said = []

    def other():
        stop_if_unwanted()
        said.append("went on")

    with stoppable(lambda: True):
        thread = threading.Thread(target=other)
        thread.start()
        thread.join(60)
    assert said == ["went on"]


def test_a_search_stops_between_levels():
    levels = []

    def evaluate(_rows, t, half, _enough):
        levels.append(len(t))
        value = np.abs(t - 0.123)
        return Sample(value, value - 9 * half, value + 9 * half, np.zeros(len(t), dtype=np.int64))

    whole = {"group": np.zeros(1, dtype=np.int64), "start": np.zeros(1), "end": np.ones(1), "required": np.full(1, -np.inf)}  # fmt: skip
    search(evaluate, **whole)
    assert len(levels) > 3
    levels.clear()
    with stoppable(lambda: len(levels) >= 2), pytest.raises(Stopped):
        search(evaluate, **whole)
    assert len(levels) == 2


def test_nothing_is_computed_to_be_kept_once_it_is_unwanted():
    with stoppable(lambda: True), pytest.raises(Stopped):
        kept_each("never", [(1,)], lambda _: pytest.fail("computed"), record=str, restore=str)


def test_a_part_goes_from_its_start_to_its_end():
    told = []
    part = within(lambda subject, share: told.append((subject, share)), 0.2, 0.6)
    for share in (0.0, 0.5, 1.0, 1.7, -1.0):
        part("a", share)
    assert [subject for subject, _ in told] == ["a"] * 5
    assert [share for _, share in told] == pytest.approx([0.2, 0.4, 0.6, 0.6, 0.2])


def test_nobody_watches_a_part_of_what_nobody_watches():
    assert within(None, 0.2, 0.6) is None
