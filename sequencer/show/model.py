"""The show: frozen records, one a heading of the show file. Lengths in metres, angles in degrees.

Places are (X, Y) in the stage frame: origin where the centre line meets the downstage edge, X to the
audience's right, Y upstage.
"""

from typing import Annotated, Any, Literal, Self

from pydantic import BeforeValidator, Field, ValidationInfo, field_validator, model_validator

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.props.prop import PropKind
from sequencer.show.drift_records import Drift
from sequencer.show.evening import Emergency, StopCall, Weather
from sequencer.show.field_kinds import (
    Beats,
    Date,
    Degrees,
    Duration,
    Length,
    Name,
    Shift,
    Speed,
    Volume,
    When,
)
from sequencer.show.prop_records import PropRecord
from sequencer.show.record import FilePoint, Names, Paths, Record
from sequencer.show.site import VenueRecord


class SectionMark(Record):
    """A section named by hand; it lasts until the next one."""

    start: When = Field(alias="from", description="where it starts")
    name: Name = Field(description="what you call it; equal names for parts that repeat")


class CorrectionRecord(Record):
    """What the performer knows better than the machine."""

    metre: Annotated[int, Field(ge=2, le=7)] | None = Field(None, description="beats a bar, 2 to 7")
    one: When | None = Field(
        None,
        description="a beat that is beat one of its bar, as m:ss.s or as bar.beat of what was heard",
    )
    tempo: Literal["half", "double"] | None = Field(
        None, description="count half as many, or twice as many beats as heard"
    )
    shift: Shift = Field(0.0, description="move all beats later (or earlier, if negative)")
    beats: str | None = Field(
        None,
        description="a file of beat times to use instead: taps or a table (CSV), or a MIDI file",
    )
    sections: tuple[SectionMark, ...] = Field((), description="borders and names of sections")


class TrackRecord(Record):
    """The song."""

    file: str = Field(min_length=1, description="path of the song, from the show file's folder")
    sha256: Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")] | None = Field(
        None, description="content hash of the cut that the show is made for"
    )
    corrections: CorrectionRecord = Field(
        CorrectionRecord(), description="hand corrections of what was heard"
    )


def _by_kind(value: Any) -> Any:
    """`prop: poi` says the same as `prop: {kind: poi}`."""
    return {"kind": value} if isinstance(value, str) else value


Held = Annotated[
    PropRecord, BeforeValidator(_by_kind, json_schema_input_type=PropRecord | PropKind)
]

# From and to what a body's measures are believed, over stature; design choices, wide of the survey's 5th and
# 95th percentiles (geometry/bodies.py), so that they catch a slip of the tape or of the unit and no person.
STATURES = (0.8, 2.6)  # [m]
SHARES = {"arm": (0.2, 0.6), "shoulder": (0.7, 0.9)}
SEATED_SHOULDER = (0.28, 0.41)  # of stature, over a seat of 0.40 … 0.65 m
SEATS = (0.40, 0.65)  # [m]
LIFT = 0.10  # of stature: a shoulder rises as the arm goes up, and measured lengths have errors


class Performer(Record):
    """A performer. A prop may be its kind alone, such as `prop: poi`: then it has the usual sizes."""

    name: Name = Field(description="as it is printed on the sheets")
    stature: Length = Field(description="body height standing, 0.8 to 2.6 m")
    posture: Literal["standing", "seated"] = Field(
        "standing",
        description="seated: in a wheelchair; the stature is the height standing all the same",
    )
    arm: Length | None = Field(
        None,
        description="measured, from the top of the shoulder to the middle of the closed hand, arm straight; "
        "from the stature if not said",
    )
    shoulder: Length | None = Field(
        None,
        description="measured height of the top of the shoulder, in the chair of who is seated; from the "
        "stature if not said",
    )
    overhead: Length | None = Field(
        None,
        description="measured height of the closed hand, arm straight up, in the chair of who is seated; "
        "shoulder and arm together if not said",
    )
    prop: Held | None = Field(
        None, description="one in each hand, both alike: its kind alone, or with sizes"
    )
    left: Held | None = Field(
        None, description="the left hand's prop, where it differs; alone: the right hand is empty"
    )
    right: Held | None = Field(
        None, description="the right hand's prop, where it differs; alone: the left hand is empty"
    )
    birth_year: Annotated[int, Field(ge=1900, le=2100)] | None = Field(
        None, description="rules ask for a least age"
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
                f"{value:g} m is outside {low:.2f} … {high:.2f} m, all that fits a stature of "
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
                f"{value:g} m does not go with a shoulder at {body.shoulder_height:.2f} m and an arm of "
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
        """The performer's body, from stature and what was measured besides."""
        return Body(
            stature=self.stature,
            arm=self.arm,
            shoulder_top=self.shoulder,
            grip_overhead=self.overhead,
            seated=self.posture == "seated",
        )

    def held(self, side: Side) -> PropRecord | None:
        """The prop in one hand, with the usual size where none is said; None where it is empty."""
        own, other = self._said(side), self._said("right" if side == "left" else "left")
        if own is None:
            return None
        return own.sized(self.stature, paired=other is not None and other.kind == own.kind)

    def _said(self, side: Side) -> PropRecord | None:
        return (self.left if side == "left" else self.right) or self.prop

    @property
    def props(self) -> dict[Side, PropRecord]:
        """What the hands hold, the left one first."""
        sides: tuple[Side, Side] = ("left", "right")
        held = {side: self.held(side) for side in sides}
        return {side: prop for side, prop in held.items() if prop is not None}


class FormationSpot(Record):
    """Where one performer stands in a formation."""

    at: FilePoint = Field(description="[X, Y] on the stage")
    facing: Degrees = Field(0.0, description="0 faces the audience; anticlockwise from above")


class Formation(Record):
    """Places of the cast: each named, or a named shape that is filled."""

    spots: dict[Name, FormationSpot] | None = Field(None, description="one place a performer")
    shape: (
        Literal[
            "line", "wedge", "diamond", "circle", "box", "stagger", "face to face", "back to back"
        ]
        | None
    ) = Field(None, description="a named shape")
    centre: FilePoint | None = Field(None, description="centre of the shape")
    spacing: Length | None = Field(None, description="between neighbours in the shape")
    turn: Degrees = Field(0.0, description="turns the whole shape, anticlockwise from above")
    order: Names | None = Field(
        None, description="who takes which place; shortest ways if not said"
    )

    @model_validator(mode="after")
    def _either(self) -> Self:
        if (self.spots is None) == (self.shape is None):
            raise ValueError("give either spots, or a shape with centre and spacing")
        if self.shape is not None and (self.centre is None or self.spacing is None):
            raise ValueError(f"a {self.shape} needs a centre and a spacing")
        return self


class Staging(Record):
    """A formation taken at a moment, by walking for some beats before it is reached."""

    formation: Name = Field(description="a name under `formations`")
    start: When = Field(
        alias="from", description="when the walk starts; the first entry: from when"
    )
    beats: Beats | None = Field(None, description="beats of the walk; left out in the first entry")
    path: Literal["straight", "curved"] | None = Field(None, description="way of the walk")
    via: dict[Name, tuple[FilePoint, ...]] = Field(
        default_factory=dict, description="points that a performer passes on the way"
    )


class HandPart(Record):
    """What one hand does, where the two differ."""

    pattern: Name = Field(description="a name that `sequencer patterns` lists")
    parameters: dict[str, Any] = Field(
        default_factory=dict,
        alias="with",
        description="the pattern's own parameters, danced as written; place and size left out are found for body and props",
    )


_OF_A_PATTERN = {
    "parameters": "with",
    "hands": "hands",
    "timing": "timing",
    "direction": "direction",
    "cycle": "cycle",
    "shift": "shift",
}  # fields of a step that mean nothing without a pattern, with their keys


class Step(Record):
    """A block: a pattern for some beats, or a phrase. Inside a phrase it follows the one before."""

    pattern: Name | None = Field(None, description="a name that `sequencer patterns` lists")
    phrase: Name | None = Field(None, description="a phrase defined under `phrases`")
    parameters: dict[str, Any] = Field(
        default_factory=dict,
        alias="with",
        description="the pattern's own parameters, danced as written; place and size left out are found for body and props",
    )
    left: HandPart | None = Field(None, description="the left hand's own pattern")
    right: HandPart | None = Field(None, description="the right hand's own pattern")
    hands: Literal["both", "left", "right"] = Field("both", description="who spins")
    timing: Literal["together", "split", "quarter"] = Field(
        "split", description="the second hand in phase, half a turn or a quarter turn apart"
    )
    direction: Literal["same", "opposite"] = Field(
        "same", description="the second hand's direction"
    )
    cycle: Beats | None = Field(None, ge=0.125, description="beats of one hand cycle, at least 1/8")
    shift: float = Field(0.0, ge=-64, le=64, description="start this many beats into the pattern")
    beats: Beats | None = Field(None, description="how long")
    cycles: Beats | None = Field(None, description="how long, in hand cycles")
    repeat: Annotated[int, Field(ge=1, le=1000)] = Field(1, description="times in a row")
    mirrored: bool = Field(False, description="left and right changed over")
    link: bool = Field(False, description="true: a computed bridge instead of a pattern")
    note: Annotated[str, Field(max_length=2000)] = Field("", description="printed on the sheet")

    @model_validator(mode="after")
    def _one_thing(self) -> Self:
        own = self.left is not None or self.right is not None
        things = [self.pattern is not None, self.phrase is not None, own, self.link]
        if sum(things) != 1:
            raise ValueError(
                "give one of pattern, phrase, link, or left and right with a pattern each"
            )
        if self.beats is not None and self.cycles is not None:
            raise ValueError("give beats or cycles, not both")
        if self.link and self.beats is None:
            raise ValueError("a link needs its beats")
        lost = [key for name, key in _OF_A_PATTERN.items() if name in self.model_fields_set]
        if lost and (self.link or self.phrase is not None):
            raise ValueError(
                f"{lost[0]} says nothing of a {'link' if self.link else 'phrase'}; "
                "write it beside the pattern that it is for"
            )
        return self


class Entry(Step):
    """A block or phrase on the timeline: who dances it, and from when."""

    who: Names = Field(("all",), min_length=1, description="names, or all")
    start: When | None = Field(
        None,
        alias="from",
        description="when; where the last block of these performers ended if not said",
    )
    until: When | None = Field(None, description="how long: up to this moment")
    canon: Beats | None = Field(
        None, description="each performer starts this many beats after the one named before"
    )
    mirror: Names = Field((), description="those who dance it left and right changed over")

    @model_validator(mode="after")
    def _length(self) -> Self:
        if self.until is not None and (self.beats is not None or self.cycles is not None):
            raise ValueError("give one of beats, cycles and until")
        if self.until is not None and self.repeat > 1:
            raise ValueError("until and repeat do not go together; leave one out")
        return self


class LitSpan(Record):
    """Who burns, from when to when."""

    who: Names = Field(("all",), description="names, or all")
    start: When = Field(alias="from", description="when it is lit")
    until: When = Field(description="when it is put out")


class BurnRecord(Record):
    """How long a soaked wick burns."""

    time: Duration = Field(description="your own timed burn, with this fuel and wick")
    measured: bool = Field(description="true only if you timed it yourself")

    @model_validator(mode="after")
    def _burns(self) -> Self:
        if not self.time > 0:
            raise ValueError("a burning time of 0 s is no burn; time your own wick")
        return self


class Fire(Record):
    """Fuel, burn time and who is lit when."""

    fuel: Name = Field(description="as `docs/sources.md` lists it; read your own data sheet")
    burn: BurnRecord | None = Field(None, description="timed burn")
    burns: str | None = Field(
        None, description="a log of your timed burns (CSV) to use instead, from this file's folder"
    )
    flame: Length = Field(0.45, description="flame beyond the wick at rest; watch a real burn")
    reserve: float = Field(
        0.8, gt=0, le=1, description="share of the burn time that may be planned"
    )
    fuel_on_site: Volume | None = Field(None, description="all the fuel that is brought along")
    lit: tuple[LitSpan, ...] = Field((), description="who burns when")


class CrewMember(Record):
    """A safety person, where they stand and what they do."""

    name: Name = Field(description="as it is printed on the sheets")
    post: FilePoint = Field(description="[X, Y] where they stand")
    duty: Literal["spotter", "perimeter", "fuel keeper", "lead"] = Field(
        "spotter", description="a person has one duty"
    )
    watches: Names = Field((), description="performers this person watches; all if not said")
    equipment: Names = Field((), description="damp towel, fire blanket, extinguisher, bucket …")


class Limits(Record):
    """What is asked of a performer at most, and what a join may leave to the blend."""

    hand_speed: Speed = Field(6.0, description="fastest that a hand may move")
    hand_acceleration: float = Field(
        80.0, gt=0, description="m/s², hardest start or stop of a hand"
    )
    turns: float = Field(2.5, gt=0, description="most turns of a prop in a second")
    head_speed: Speed = Field(20.0, description="fastest that a wick may move")
    pull: float = Field(60.0, gt=0, description="N, hardest pull of one prop")
    torque: float = Field(
        8.0, gt=0, description="N·m, hardest twist of one hand, with what is rigid"
    )
    own_body: Length = Field(0.05, description="a burning wick nearer to the own body is noted")
    join_hand: Length = Field(0.15, description="how far two hand places of a join may be apart")
    join_tether: Degrees = Field(20.0, description="how far two tethers of a join may be apart")
    join_axis: Degrees = Field(20.0, description="how far two turning axes of a join may be apart")
    join_rate: tuple[float, float] = Field(
        (0.8, 1.25), description="slowest and fastest turning after a join, against before"
    )

    @model_validator(mode="after")
    def _sound(self) -> Self:
        low, high = self.join_rate
        if not 0 < low <= 1 <= high:
            raise ValueError("join_rate must hold 1 between its two ratios, such as [0.8, 1.25]")
        if not (0 < self.join_tether <= 90 and 0 < self.join_axis <= 90):
            raise ValueError("join_tether and join_axis must be above 0 and at most 90 degrees")
        return self


class Rules(Record):
    """What the show is held to."""

    profile: Names = Field(
        ("default",),
        min_length=1,
        description="rule profiles, see `docs/sources.md`; the strictest rule of all holds",
    )
    file: Paths = Field((), description="your own rules on top, YAML files")
    permit: Name | None = Field(None, description="reference of the permit for this place and date")
    authority: Name | None = Field(None, description="who decides")
    between_performers: Length | None = Field(None, description="least distance of two performers")
    audience: Length | None = Field(None, description="least distance of a flame from the audience")


class Show(Record):
    """A whole show file."""

    title: Name = Field(description="printed on every sheet")
    version: Name = Field("1", description="printed on every sheet; raise it with every change")
    date: Date | None = Field(None, description="date of this version, YYYY-MM-DD")
    begins: Annotated[str, Field(pattern=r"^([01]\d|2[0-3]):[0-5]\d$")] | None = Field(
        None, description="clock time at which the song starts on the night, HH:MM"
    )
    type_file: str | None = Field(
        None,
        description="a TrueType file for letters that the sheets’ own type lacks, from this file’s folder",
    )
    track: TrackRecord = Field(description="the song")
    venue: VenueRecord = Field(description="the place and its limits")
    cast: tuple[Performer, ...] = Field(min_length=1, max_length=500, description="who performs")
    formations: dict[Name, Formation] = Field(
        default_factory=dict, description="places of the cast, by a name of yours"
    )
    staging: tuple[Staging, ...] = Field((), description="which formation is taken when")
    patterns: dict[Name, dict[str, Any]] = Field(
        default_factory=dict,
        description="patterns of your own: a law with what is set for good, or a list of stations",
    )
    pattern_files: tuple[Annotated[str, Field(min_length=1)], ...] = Field(
        (), description="files of patterns to use here, paths from this file's folder"
    )
    phrases: dict[Name, tuple[Step, ...]] = Field(
        default_factory=dict, description="blocks in a row, by a name of yours, to be used again"
    )
    timeline: tuple[Entry, ...] = Field((), description="who dances what, from when")
    fire: Fire | None = Field(None, description="left out: nothing burns")
    crew: tuple[CrewMember, ...] = Field((), description="safety people")
    stop_call: StopCall = Field(StopCall(), description="the call that stops the act")
    emergency: Emergency = Field(Emergency(), description="the emergency card")
    weather: Weather = Field(Weather(), description="weather in which nothing is lit")
    limits: Limits = Field(
        Limits(), description="what is asked of a performer at most, and what a join may leave"
    )
    rules: Rules = Field(Rules(), description="what the show is held to")
    drift: Drift = Field(Drift(), description="how far people are from the plan, as danced")

    def __repr__(self) -> str:
        return (
            f"<Show {self.title}, version {self.version}: {len(self.cast)} in the cast, "
            f"{len(self.timeline)} entries>"
        )

    def __str__(self) -> str:
        return repr(self)

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the cast, in the order of the file."""
        return tuple(dancer.name for dancer in self.cast)
