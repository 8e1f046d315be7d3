"""Entrances and exits: who comes on from the wings and who goes off into them, and when."""

from typing import Literal, Self

from pydantic import Field, model_validator

from sequencer.show.file_records.field_kinds import Beats, When
from sequencer.show.file_records.record import FilePoint, Names, Record
from sequencer.timing.position import Moment

WingSide = Literal["stage left", "stage right", "upstage"]


class Entrance(Record):
    """Performers who come on from the wings, or go off into them; whoever comes on first is in the wings until then."""

    who: Names = Field(min_length=1, description="names, or all")
    comes_on: When | None = Field(None, description="when they begin to walk on")
    goes_off: When | None = Field(None, description="when they begin to walk off")
    beats: Beats = Field(description="duration of the walk in beats")
    side: WingSide | None = Field(
        None,
        description="the side on which they wait, level with where they come to or go from, 1 m off the stage",
    )
    at: FilePoint | None = Field(
        None, description="[X, Y] where they wait, off the stage, instead of a side"
    )

    @property
    def on(self) -> bool:
        """Whether they come on; else they go off."""
        return self.comes_on is not None

    @property
    def moment(self) -> Moment:
        """When they begin to walk."""
        return next(each for each in (self.comes_on, self.goes_off) if each is not None)

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if (self.comes_on is None) == (self.goes_off is None):
            raise ValueError("give either comes_on or goes_off")
        if (self.side is None) == (self.at is None):
            raise ValueError("give either a side (stage left, stage right, upstage) or at")
        if self.at is not None and len(self.who) > 1:
            raise ValueError("at is one place, so give each person an entry of their own")
        return self
