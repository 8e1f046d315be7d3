"""Common to all headings of a show file: the frozen base record, points, and lists of names."""

from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, WithJsonSchema

from sequencer.show.file_records.field_kinds import Coordinate, Name

FilePoint = tuple[Coordinate, Coordinate]


def _listed(value: Any) -> Any:
    return [value] if isinstance(value, str) else value


_ONE_OR_MORE = WithJsonSchema(
    {"anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}]}
)
Names = Annotated[tuple[Name, ...], BeforeValidator(_listed), _ONE_OR_MORE]
Paths = Annotated[tuple[str, ...], BeforeValidator(_listed), _ONE_OR_MORE]


class Record(BaseModel):
    """Base of all headings: frozen, no unknown keys."""

    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True, defer_build=True)
