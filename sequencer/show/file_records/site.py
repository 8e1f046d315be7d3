"""The site of a show: stage, audience, scenery and the positions in the safety plan. Lengths in metres.

Places are (X, Y) in the stage frame: origin where the centre line meets the downstage edge, X to the
audience's right, Y upstage.
"""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from sequencer.show.file_records.field_kinds import Area, Bearing, Duration, Length, Name, Speed
from sequencer.show.file_records.record import FilePoint, Record


class Stage(Record):
    """Where performers may stand."""

    shape: Literal["rectangle", "round", "thrust"] | None = Field(
        None, description="standard shape"
    )
    width: Length | None = Field(None, description="width, or the diameter of a round stage")
    depth: Length | None = Field(None, description="depth from the downstage edge upstage")
    tongue_width: Length | None = Field(
        None, description="thrust: width of the part that projects into the audience"
    )
    tongue_depth: Length | None = Field(
        None, description="thrust: depth from its downstage edge to the main stage"
    )
    outline: tuple[FilePoint, ...] | None = Field(
        None, min_length=3, description="corners in order"
    )
    holes: tuple[tuple[FilePoint, ...], ...] = Field(
        (), description="areas that are not part of the stage"
    )

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

    line: tuple[FilePoint, ...] = Field(min_length=2, description="corners of the edge, in order")
    name: Name = Field("audience", description="what to call this edge")
    floor: tuple[FilePoint, ...] | None = Field(
        None,
        min_length=3,
        description="corners of the floor that the audience stands on behind it; what must be kept clear of flames is "
        "taken off before people are counted",
    )


class SceneryRecord(Record):
    """An object on or near the stage that flames must keep away from."""

    name: Name = Field(description="what to call it")
    outline: tuple[FilePoint, ...] = Field(
        min_length=3, description="corners on the plan, in order"
    )
    height: Length = Field(description="height of its top above the floor")
    combustible: bool = Field(True, description="false only for stone, steel and the like")


class CeilingRecord(Record):
    """A lower part of the ceiling, or something overhead: a balcony, a beam, a branch."""

    name: Name = Field(description="what to call it")
    outline: tuple[FilePoint, ...] = Field(
        min_length=3, description="corners on the plan, in order"
    )
    height: Length = Field(description="height of its underside above the floor")


class SafetyPoint(Record):
    """An item of the safety plan and its position."""

    name: Name = Field(description="what to call it")
    at: FilePoint = Field(description="position")


class Exit(SafetyPoint):
    """An exit for the audience."""

    width: Length | None = Field(None, description="clear width at its narrowest point")
    way: tuple[FilePoint, ...] = Field(
        (),
        description="points that the way to it leads through, from the audience on; default: the shortest way "
        "round scenery",
    )


class FireLane(Record):
    """The lane kept clear for fire engine and ambulance."""

    line: tuple[FilePoint, ...] = Field(
        min_length=2, description="its centre line, from the gate on, corners in order"
    )
    width: Length | None = Field(None, description="clear width")


class Extinguisher(Record):
    """An extinguisher and its position."""

    at: FilePoint = Field(description="position")
    rating: Name | None = Field(None, description="rating on its label, such as 2-A:10-B:C")
    kind: Literal["water", "foam", "powder", "co2", "wet chemical"] | None = Field(
        None, description="its contents"
    )
    guards: Literal["act", "fuel"] | None = Field(
        None,
        description="what it stands ready for: the act or the fuel; default: whichever it is nearer to",
    )


def extinguisher_words(tool: Extinguisher) -> str:
    """Contents and rating of an extinguisher as printed; what the file does not say is "not stated"."""
    return f"{tool.kind or 'contents not stated'}, {tool.rating or 'rating not stated'}"


class VenueRecord(Record):
    """The venue and its limits."""

    name: Name = Field("unnamed place", description="printed on every sheet")
    setting: Literal["outdoors", "indoors"] | None = Field(
        None, description="in the open or under a roof"
    )
    stage: Stage = Field(description="where performers may stand")
    audience: tuple[AudienceLine, ...] = Field(
        min_length=1, description="every edge of the audience"
    )
    ceiling: Length | Literal["open"] | None = Field(
        None, description="height, or open if there is none"
    )
    ceilings: tuple[CeilingRecord, ...] = Field(
        (), description="lower parts of the ceiling, each over a region"
    )
    scenery: tuple[SceneryRecord, ...] = Field(
        (), description="objects that flames must keep away from"
    )
    exits: tuple[Exit, ...] = Field((), description="exits")
    audience_size: Annotated[int, Field(ge=0, le=1_000_000)] | None = Field(
        None, description="maximum size of the audience"
    )
    audience_area: Area | None = Field(
        None,
        description="floor area for the audience, without exits and areas kept clear; default: from the floors "
        "drawn under `audience`",
    )
    leave_in: Duration = Field(
        300.0, gt=0, description="time within which everyone must be able to leave"
    )
    extinguishers: tuple[Extinguisher, ...] = Field((), description="positions and ratings")
    fuel_station: FilePoint | None = Field(
        None, description="where fuel is kept and wicks are soaked"
    )
    spin_off: tuple[FilePoint, ...] | None = Field(
        None,
        min_length=3,
        description="corners of the zone, closed to the public, where wicks are soaked and spun off",
    )
    fire_lane: FireLane | None = Field(
        None, description="lane kept clear for fire engine and ambulance"
    )
    gate: FilePoint | None = Field(
        None, description="where fire engine and ambulance enter the site"
    )
    wind: Speed | None = Field(None, description="gusts measured or forecast at prop height")
    wind_from: Bearing | None = Field(
        None,
        description="where the wind comes from: audience, upstage, stage left, stage right, or degrees "
        "as for a facing",
    )
    sprinklers: bool | None = Field(None, description="indoors: is the room sprinklered?")
