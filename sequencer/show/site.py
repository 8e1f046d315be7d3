"""The site of a show: stage, audience, scenery and places of the safety plan. Lengths in metres.

Places are (X, Y) in the stage frame: origin where the centre line meets the downstage edge, X to the
audience's right, Y upstage.
"""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from sequencer.show.field_kinds import Area, Bearing, Duration, Length, Name, Speed
from sequencer.show.record import FilePoint, Record


class Stage(Record):
    """Where performers may stand."""

    shape: Literal["rectangle", "round", "thrust"] | None = Field(
        None, description="standard shape"
    )
    width: Length | None = Field(None, description="across, or the diameter of a round stage")
    depth: Length | None = Field(None, description="from the downstage edge upstage")
    tongue_width: Length | None = Field(
        None, description="thrust: across the part amid the audience"
    )
    tongue_depth: Length | None = Field(
        None, description="thrust: from its downstage edge to the rest"
    )
    outline: tuple[FilePoint, ...] | None = Field(None, min_length=3, description="corners in turn")
    holes: tuple[tuple[FilePoint, ...], ...] = Field((), description="parts that are no stage")

    @model_validator(mode="after")
    def _either(self) -> Self:
        if (self.shape is None) == (self.outline is None):
            raise ValueError("give either a shape (with width and depth) or an outline")
        if self.shape is not None and self.width is None:
            raise ValueError(f"a {self.shape} stage needs a width")
        if self.shape in {"rectangle", "thrust"} and self.depth is None:
            raise ValueError(f"a {self.shape} stage needs a depth")
        if self.shape == "thrust" and (self.tongue_width is None or self.tongue_depth is None):
            raise ValueError("a thrust stage needs tongue_width and tongue_depth")
        return self


class AudienceLine(Record):
    """An edge that the audience does not cross."""

    line: tuple[FilePoint, ...] = Field(min_length=2, description="corners of the edge, in turn")
    name: Name = Field("audience", description="what to call this edge")


class SceneryRecord(Record):
    """A thing on or by the stage that a flame must keep away from."""

    name: Name = Field(description="what to call it")
    outline: tuple[FilePoint, ...] = Field(min_length=3, description="corners on the plan, in turn")
    height: Length = Field(description="from the floor to its top")
    combustible: bool = Field(True, description="false only for stone, steel and the like")


class CeilingRecord(Record):
    """A lower part of the ceiling, or what hangs over a part of the place: a balcony, a beam, a branch."""

    name: Name = Field(description="what to call it")
    outline: tuple[FilePoint, ...] = Field(min_length=3, description="corners on the plan, in turn")
    height: Length = Field(description="from the floor to its underside")


class SafetyPoint(Record):
    """A thing of the safety plan and where it stands."""

    name: Name = Field(description="what to call it")
    at: FilePoint = Field(description="where it is")


class Exit(SafetyPoint):
    """A way out."""

    width: Length | None = Field(None, description="clear width at its narrowest")


class Extinguisher(Record):
    """An extinguisher and where it stands."""

    at: FilePoint = Field(description="where it stands")
    rating: Name = Field("2-A:10-B:C", description="what its label says")
    kind: Literal["water", "foam", "powder", "co2", "wet chemical"] = Field(
        "foam", description="what it is filled with"
    )


class VenueRecord(Record):
    """The place and its limits."""

    name: Name = Field("unnamed place", description="printed on every sheet")
    setting: Literal["outdoors", "indoors"] = Field(
        "outdoors", description="under the sky or a roof"
    )
    stage: Stage = Field(description="where performers may stand")
    audience: tuple[AudienceLine, ...] = Field(
        min_length=1, description="every edge of the audience"
    )
    ceiling: Length | Literal["open"] = Field("open", description="height, or open for the sky")
    ceilings: tuple[CeilingRecord, ...] = Field(
        (), description="lower parts of the ceiling, each over a region"
    )
    scenery: tuple[SceneryRecord, ...] = Field(
        (), description="things that a flame must keep away from"
    )
    exits: tuple[Exit, ...] = Field((), description="ways out")
    audience_size: Annotated[int, Field(ge=0, le=1_000_000)] | None = Field(
        None, description="most people who watch"
    )
    audience_area: Area | None = Field(
        None, description="floor that they stand on, without ways out and what is kept free"
    )
    leave_in: Duration = Field(300.0, gt=0, description="time in which all must be able to leave")
    extinguishers: tuple[Extinguisher, ...] = Field((), description="where they stand, and which")
    fuel_station: FilePoint | None = Field(
        None, description="where fuel is kept and wicks are soaked"
    )
    wind: Speed | None = Field(None, description="gusts measured or forecast at prop height")
    wind_from: Bearing | None = Field(
        None,
        description="where the wind comes from: audience, upstage, stage left, stage right, or degrees "
        "as of a facing",
    )
    sprinklers: bool | None = Field(None, description="indoors: is the room sprinklered?")
