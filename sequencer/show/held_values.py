"""Values of one kind wherever they stand in what a show file says."""

from collections.abc import Iterator, Mapping
from typing import TypeVar

from pydantic import BaseModel

_Kind = TypeVar("_Kind")
_OF_NO_PARTS = frozenset((str, int, float, bool, type(None)))


def held_values(value: object, kind: type[_Kind]) -> Iterator[_Kind]:
    """All values of a kind in a record, a list or a mapping, in the order of the file's fields."""
    if isinstance(value, kind):
        yield value
    elif type(value) in _OF_NO_PARTS:  # most of what there is
        return
    elif isinstance(value, BaseModel):
        for name in type(value).model_fields:
            yield from held_values(getattr(value, name), kind)
    elif isinstance(value, Mapping):
        for each in value.values():
            yield from held_values(each, kind)
    elif isinstance(value, list | tuple):
        for each in value:
            yield from held_values(each, kind)
