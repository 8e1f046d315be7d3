"""A performer of the show file: body and props. Lengths in metres."""

from typing import Annotated, Any, Literal, Self

from pydantic import BeforeValidator, Field, ValidationInfo, field_validator, model_validator

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.props.prop import PropKind
from sequencer.show.file_records.field_kinds import Length, Name
from sequencer.show.file_records.prop_records import PropRecord
from sequencer.show.file_records.record import Names, Record
from sequencer.show.file_records.wishes import Repertoire, SkillLevel


def _by_kind(value: Any) -> Any:
    """`prop: poi` means the same as `prop: {kind: poi}`."""
    return {"kind": value} if isinstance(value, str) else value


Held = Annotated[
    PropRecord, BeforeValidator(_by_kind, json_schema_input_type=PropRecord | PropKind)
]

# Accepted range of a body's measurements, relative to stature; design choices, well outside the survey's 5th and 95th percentiles (geometry/bodies.py), so that they catch a misread tape or a wrong unit but exclude nobody.
STATURES = (0.8, 2.6)  # [m]
SHARES = {"arm": (0.2, 0.6), "shoulder": (0.7, 0.9)}
SEATED_SHOULDER = (0.28, 0.41)  # of stature, above a seat of 0.40 … 0.65 m
SEATS = (0.40, 0.65)  # [m]
LIFT = 0.10  # of stature: a shoulder rises as the arm goes up, and measurements have errors


class Performer(Record):
    """A performer. A prop may be just its kind, such as `prop: poi`; it then has the usual sizes."""

    name: Name = Field(description="as printed on the sheets")
    stature: Length = Field(description="standing height, 0.8 to 2.6 m")
    posture: Literal["standing", "seated"] = Field(
        "standing",
        description="seated: in a wheelchair; stature is still the standing height",
    )
    arm: Length | None = Field(
        None,
        description="measured from the top of the shoulder to the middle of the closed hand, arm straight; "
        "default: from the stature",
    )
    shoulder: Length | None = Field(
        None,
        description="measured height of the top of the shoulder, in the chair if seated; default: from the "
        "stature",
    )
    overhead: Length | None = Field(
        None,
        description="measured height of the closed hand, arm straight up, in the chair if seated; "
        "default: shoulder height plus arm",
    )
    prop: Held | None = Field(
        None, description="one in each hand, both alike: just the kind, or with sizes"
    )
    left: Held | None = Field(
        None, description="the left hand's prop, if different; given alone, the right hand is empty"
    )
    right: Held | None = Field(
        None, description="the right hand's prop, if different; given alone, the left hand is empty"
    )
    birth_year: Annotated[int, Field(ge=1900, le=2100)] | None = Field(
        None, description="rules set a minimum age"
    )
    level: SkillLevel | None = Field(
        None,
        description="1 to 5: `sequencer draft` may use every pattern up to this difficulty; default: 3, or none if "
        "`repertoire` says what is known",
    )
    repertoire: Repertoire | None = Field(
        None, description="patterns that `sequencer draft` may use"
    )
    notes: Names = Field(
        (), description="notes of one's own, printed on this performer's sheet and pocket card"
    )

    @field_validator("stature")
    @classmethod
    def _believed(cls, stature: float) -> float:
        low, high = STATURES
        if not low <= stature <= high:
            raise ValueError(f"{stature:g} m is outside {low:g} … {high:g} m")
        return stature

    @field_validator("arm", "shoulder")
    @classmethod
    def _of_this_body(cls, value: float | None, info: ValidationInfo) -> float | None:
        stature = info.data.get("stature")
        if value is None or stature is None:
            return value
        seated = info.data.get("posture") == "seated" and info.field_name == "shoulder"
        shares = SEATED_SHOULDER if seated else SHARES[str(info.field_name)]
        low, high = (
            share * stature + seat
            for share, seat in zip(shares, SEATS if seated else (0, 0), strict=True)
        )
        if not low <= value <= high:
            raise ValueError(
                f"{value:g} m is outside {low:.2f} … {high:.2f} m, the range for a stature of "
                f"{stature:.2f} m" + ", seated" * seated
            )
        return value

    @field_validator("overhead")
    @classmethod
    def _of_this_arm(cls, value: float | None, info: ValidationInfo) -> float | None:
        if value is None or not {"stature", "posture", "arm", "shoulder"} <= set(info.data):
            return value
        stature = info.data["stature"]
        body = Body(
            stature=stature,
            arm=info.data["arm"],
            shoulder_top=info.data["shoulder"],
            seated=info.data["posture"] == "seated",
        )
        if abs(value - body.overhead_grip) > LIFT * stature:
            raise ValueError(
                f"{value:g} m does not match a shoulder at {body.shoulder_height:.2f} m and an arm of "
                f"{body.arm_length:.2f} m, {body.overhead_grip:.2f} m together: they may differ by "
                f"{LIFT * stature:.2f} m"
            )
        return value

    @model_validator(mode="after")
    def _props(self) -> Self:
        if self.prop is None and self.left is None and self.right is None:
            raise ValueError("give a prop for both hands, or one for left, right or each")
        for side, prop in self.props.items():
            try:
                prop.held()
            except ValueError as error:
                raise ValueError(f"the {side} hand's {prop.kind}: {error}") from None
        return self

    @property
    def body(self) -> Body:
        """The performer's body, from stature and any further measurements."""
        return Body(
            stature=self.stature,
            arm=self.arm,
            shoulder_top=self.shoulder,
            grip_overhead=self.overhead,
            seated=self.posture == "seated",
        )

    def held(self, side: Side) -> PropRecord | None:
        """The prop in one hand, with the usual size if none is given; None if the hand is empty."""
        given, other = self._given(side), self._given("right" if side == "left" else "left")
        if given is None:
            return None
        return given.sized(self.stature, paired=other is not None and other.kind == given.kind)

    def _given(self, side: Side) -> PropRecord | None:
        return (self.left if side == "left" else self.right) or self.prop

    @property
    def props(self) -> dict[Side, PropRecord]:
        """Props in the hands, left hand first."""
        sides: tuple[Side, Side] = ("left", "right")
        held = {side: self.held(side) for side in sides}
        return {side: prop for side, prop in held.items() if prop is not None}
