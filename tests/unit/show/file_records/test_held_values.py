from pydantic import Field

from sequencer.show.file_records import held_values as module
from sequencer.show.file_records.held_values import held_values
from sequencer.show.file_records.record import Record
from sequencer.show.model import Step


class Row(Record):
    number: int
    inner: tuple["Row", ...] = ()
    named: dict[str, "Row"] = Field(default_factory=dict)


def test_values_of_a_kind_in_the_order_of_the_fields():
    rows = [Row(number=1, inner=(Row(number=2),), named={"b": Row(number=3), "a": Row(number=4)})]
    assert list(held_values(rows, int)) == [1, 2, 3, 4]
    assert list(held_values({"one": rows[0].inner, "two": "text"}, Row)) == [Row(number=2)]
    assert list(held_values(rows, str)) == list(held_values("text", Step)) == []


def test_a_record_is_looked_through_once(monkeypatch):
    """By the object: an equal one is another."""
    looked = []
    own = module.held_values

    def seen(value, kind):
        looked.append(value)
        return own(value, kind)

    row = Row(number=1, inner=(Row(number=2),))
    assert list(held_values([row], int)) == [1, 2]
    monkeypatch.setattr(module, "held_values", seen)
    assert list(own([row], int)) == [1, 2]
    assert looked == [row]  # in its list, and no further
    looked.clear()
    assert list(own([row.model_copy(update={"number": 5})], int)) == [5, 2]
    assert len(looked) > 1
