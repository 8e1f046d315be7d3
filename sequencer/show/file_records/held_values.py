"""Values of one kind wherever they stand in what a show file says."""

from collections.abc import Iterator, Mapping
from typing import TypeVar

from sequencer.kept import recent
from sequencer.show.file_records.record import Record

_MOST_RECORDS = 20_000  # whose values are kept
_Kind = TypeVar("_Kind")
_OF_NO_PARTS = frozenset((str, int, float, bool, type(None)))


def held_values(value: object, kind: type[_Kind]) -> Iterator[_Kind]:
    """All values of a kind in a record, a list or a mapping, in the order of the file's fields."""
    if isinstance(value, kind):
        yield value
    elif type(value) in _OF_NO_PARTS:  # most of what there is
        return
    elif isinstance(value, Record):
        yield from _of_record(value, kind)
    elif isinstance(value, Mapping):
        for each in value.values():
            yield from held_values(each, kind)
    elif isinstance(value, list | tuple):
        for each in value:
            yield from held_values(each, kind)


def _of_record(record: Record, kind: type[_Kind]) -> tuple[_Kind, ...]:
    """Those of a record's fields, looked for once: an edit of the file leaves most records the same objects."""

    def work() -> tuple[Record, tuple[_Kind, ...]]:
        fields = [getattr(record, name) for name in type(record).model_fields]
        return record, tuple(each for own in fields for each in held_values(own, kind))

    # The record is held, so that its id stays its own.
    return recent("held values", (id(record), kind), work, most=_MOST_RECORDS)[1]
