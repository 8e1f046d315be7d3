"""Errors carry their parts and survive the way back from a worker process."""

import pickle

import pytest

from sequencer.errors import InputError, InputErrors, Place


def test_one_line_with_place_reason_and_mend():
    error = InputError(
        "bad", Place("s.yaml", 3, 7), "'x' is odd", "write an even one", "pairs are needed"
    )
    assert str(error) == "s.yaml:3:7: 'x' is odd (pairs are needed); write an even one [bad]"


@pytest.mark.parametrize("place", [Place("a"), Place("a", 2), Place("a", 2, 9)])
def test_errors_come_back_from_a_pickle(place):
    one = InputError("code", place, "what", "mend", "why")
    back = pickle.loads(pickle.dumps(one))  # noqa: S301 (our own bytes)
    assert (str(back), back.place, back.code) == (str(one), place, "code")
    both = pickle.loads(pickle.dumps(InputErrors([one, one])))  # noqa: S301
    assert str(both) == f"{one}\n{one}"


def test_nobody_elses_value_ends_a_line():
    error = InputError("odd", Place("a\nb.zip"), "it says 'x\ny'", "write\nz", "since\nw")
    assert str(error) == r"a\nb.zip: it says 'x\ny' (since\nw); write\nz [odd]"
