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


def test_a_letter_that_turns_a_line_is_written_out_wherever_the_error_is_told():
    name = "a\u202eb"
    error = InputError(
        "odd", Place("a.yaml", 1), f"spots.{name}: {name!r} is odd", f"not {name}", name
    )
    parts = (str(error), error.sentence, error.what, error.mend, error.why)
    assert not any("\u202e" in part for part in parts)
    assert error.what == r"spots.a\u202eb: 'a\u202eb' is odd"


def test_of_a_name_that_nobody_reads_the_middle_is_left_out():
    error = InputError("odd", Place("a.yaml"), f"name {'x' * 401!r} is too long", "shorten it")
    assert error.sentence == f"name '{'x' * 59}…{'x' * 29}' is too long; shorten it"
    usual = f"there is no file '/{'x' * 118}'"  # a path of a usual length is told whole
    assert InputError("odd", Place("a.yaml"), usual, "name it").sentence == f"{usual}; name it"
