"""Who is there tonight: people of the show who are away, and who takes their part."""

from typing import Any, Literal, Self

from pydantic import Field, ValidationError, model_validator

from sequencer.show.file_records.field_kinds import Length, Name
from sequencer.show.file_records.performer_record import Held, Performer
from sequencer.show.file_records.record import Names, Record
from sequencer.units import QuantityError

_BODY = ("stature", "posture", "arm", "shoulder", "overhead", "birth_year")
_PROPS = ("prop", "left", "right")


class StandIn(Record):
    """Somebody who takes a part tonight. For a performer's part with their body; the props are the part's if none are given."""

    part: Name = Field(alias="for", description="the performer or crew member whose part it is")
    name: Name = Field(description="who takes it")
    stature: Length | None = Field(
        None, description="standing height, 0.8 to 2.6 m; for a performer's part"
    )
    posture: Literal["standing", "seated"] | None = Field(
        None, description="as for a performer; default: standing"
    )
    arm: Length | None = Field(None, description="as for a performer")
    shoulder: Length | None = Field(None, description="as for a performer")
    overhead: Length | None = Field(None, description="as for a performer")
    birth_year: int | None = Field(None, ge=1900, le=2100, description="rules set a minimum age")
    prop: Held | None = Field(None, description="if it is not the part's")
    left: Held | None = Field(None, description="the left hand's prop, if different")
    right: Held | None = Field(None, description="the right hand's prop, if different")

    @property
    def danced(self) -> tuple[str, ...]:
        """Keys that only a performer's part has."""
        return tuple(key for key in (*_BODY, *_PROPS) if getattr(self, key) is not None)

    @model_validator(mode="after")
    def _believed(self) -> Self:
        if self.stature is not None:
            kind = {} if self._holds() else {"prop": "poi"}
            _performer({"name": self.name, **self._body(), **self._holds(), **kind})
        return self

    def as_performer(self, part: Performer) -> Performer:
        """The performer who dances a part tonight, under the part's name."""
        # The part's own props, in the size that they have: the same poi in other hands.
        props = self._holds() or {str(side): prop for side, prop in part.props.items()}
        own = {"level": part.level, "repertoire": part.repertoire}
        return Performer.model_validate({"name": part.name, **self._body(), **props, **own})

    def _body(self) -> dict[str, Any]:
        return {key: getattr(self, key) for key in _BODY if getattr(self, key) is not None}

    def _holds(self) -> dict[str, Any]:
        return {key: getattr(self, key) for key in _PROPS if getattr(self, key) is not None}


def _performer(values: dict[str, Any]) -> None:
    """Refuse a body or props that no performer can have."""
    try:
        Performer.model_validate(values)
    except ValidationError as error:
        said = error.errors()[0]
        key = next(iter(said["loc"]), "prop")
        what = f"{key} of {values['name']}: {said['msg'].removeprefix('Value error, ')}"
        raise QuantityError(what, f"write {key}: {_described(str(key))}") from None


def _described(key: str) -> str:
    field = Performer.model_fields.get(key)
    return field.description or key if field else key


class Tonight(Record):
    """Who is there on one night; the show itself stays as it is."""

    away: Names = Field(
        (), description="performers and crew who are away: their parts fall out, nobody takes them"
    )
    stand_ins: tuple[StandIn, ...] = Field((), description="parts that somebody else takes tonight")

    def stand_in(self, part: str) -> StandIn | None:
        """Who takes a part; None if it is not taken by somebody else."""
        return next((each for each in self.stand_ins if each.part == part), None)
