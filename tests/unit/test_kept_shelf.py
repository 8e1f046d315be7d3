"""Small results in one record of a kind: found again to the last digit, and never anything else.

Reference: the function called without a shelf.
"""

import json
import math

import pytest

from sequencer import kept_shelf
from sequencer.kept_shelf import Shelf

EXACT = [0.1, -0.0, 5e-324, 1.7976931348623157e308, math.inf, 2 / 3]


class Disk:
    """Records by kind, as the processes of one user find them; counts what is written."""

    def __init__(self):
        self.records, self.written = {}, []

    def shelf(self):
        return Shelf(self.records.get, self.write)

    def write(self, kind, text):
        self.records[kind] = text
        self.written.append(kind)


def ask(shelf, keys, *, kind="values", answer=None, restore=lambda record: record):
    """Results of some keys, and the indices of those that were computed."""
    computed = []

    def work(missing):
        computed.extend(missing)
        return [answer if answer is not None else [keys[k]] for k in missing]

    found = shelf.results(kind, keys, work, lambda result: result, restore)
    return found, computed


def test_the_next_process_finds_every_digit_and_computes_nothing():
    disk = Disk()
    first = disk.shelf()
    assert ask(first, EXACT) == ([[x] for x in EXACT], list(range(6)))
    first.put_away()
    found, computed = ask(disk.shelf(), EXACT)
    assert computed == []
    assert [math.copysign(1.0, x) for (x,) in found] == [math.copysign(1.0, x) for x in EXACT]
    assert [x for (x,) in found] == EXACT


def test_only_what_is_missing_is_computed_and_each_lands_in_its_place():
    disk = Disk()
    shelf = disk.shelf()
    ask(shelf, [2.0, 4.0])
    shelf.put_away()
    assert ask(disk.shelf(), [1.0, 2.0, 3.0, 4.0]) == ([[1.0], [2.0], [3.0], [4.0]], [0, 2])


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (0.0, -0.0),
        (1, 1.0),
        (1, True),
        ("1", b"1"),
        ((1, (2, 3)), ((1, 2), 3)),
        (0.1, 0.1 + 2**-56),
    ],
)
def test_keys_that_differ_in_a_digit_or_a_kind_share_nothing(one, other):
    shelf = Disk().shelf()
    ask(shelf, [one], answer="one")
    assert ask(shelf, [other], answer="other") == (["other"], [0])
    assert ask(shelf, [one], kind="other values", answer="third") == (["third"], [0])
    assert ask(shelf, [one]) == (["one"], [])


def test_what_has_no_plain_key_or_cannot_be_written_is_computed_each_time():
    disk = Disk()
    for _ in range(2):
        shelf = disk.shelf()
        assert ask(shelf, [None, object(), 1.0], answer={1, 2})[1] == [0, 1, 2]
        shelf.put_away()
    assert disk.written == []


def test_nothing_is_written_where_nothing_is_new():
    disk = Disk()
    for _ in range(3):
        shelf = disk.shelf()
        ask(shelf, [1.0, 2.0])
        shelf.put_away()
    assert disk.written == ["values"]


@pytest.mark.parametrize("damage", ["", "no such thing", "\n\n", "{}", None])
def test_a_record_that_is_none_is_computed_again(damage):
    disk = Disk()
    shelf = disk.shelf()
    ask(shelf, [1.0])
    shelf.put_away()
    name, _ = disk.records["values"].split(" ", 1)
    disk.records["values"] = f"{name} [1.0" if damage is None else damage
    assert ask(disk.shelf(), [1.0]) == ([[1.0]], [0])


def test_a_result_that_cannot_be_restored_is_computed_and_replaced():
    disk = Disk()
    shelf = disk.shelf()
    ask(shelf, [1.0], answer="text")
    shelf.put_away()
    shelf = disk.shelf()
    assert ask(shelf, [1.0], answer=3.5, restore=float) == ([3.5], [0])
    shelf.put_away()
    assert ask(disk.shelf(), [1.0], restore=float) == ([3.5], [])


def test_what_was_used_last_stays_and_the_record_stays_small(monkeypatch):
    """Room for five: of ten, asked for two at a time, the last five are left, and what is used again goes last."""
    line = len(kept_shelf._name(1.0)) + len(json.dumps([1.0]))
    monkeypatch.setattr(kept_shelf, "MOST_ON_SHELF", 5 * line)
    disk = Disk()
    for low in range(0, 10, 2):
        shelf = disk.shelf()
        ask(shelf, [float(low), low + 1.0])
        shelf.put_away()
    assert len(disk.records["values"]) <= 5 * (line + 2)
    shelf = disk.shelf()
    assert ask(shelf, [5.0]) == ([[5.0]], [])
    ask(shelf, [0.0])
    shelf.put_away()
    kept = disk.shelf()
    assert ask(kept, [5.0, 0.0, 9.0, 8.0])[1] == []
    assert ask(kept, [1.0, 2.0, 3.0, 4.0])[1] == [0, 1, 2, 3]


def test_more_than_there_is_room_for_is_computed_and_not_kept(monkeypatch):
    monkeypatch.setattr(kept_shelf, "MOST_ON_SHELF", 80)
    disk = Disk()
    shelf = disk.shelf()
    many = [k / 7 for k in range(50)]
    assert ask(shelf, many)[0] == [[x] for x in many]
    shelf.put_away()
    assert len(disk.records["values"]) <= 90
