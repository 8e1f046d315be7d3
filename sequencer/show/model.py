"""The show: frozen records, one for each heading of the show file. Lengths in metres, angles in degrees.

Places are (X, Y) in the stage frame: origin where the centre line meets the downstage edge, X to the
audience's right, Y upstage.
"""

from typing import Annotated, Any, Literal, Self

from pydantic import BeforeValidator, Field, model_validator

from sequencer.show.file_records.drift_records import Drift
from sequencer.show.file_records.entrance_record import Entrance
from sequencer.show.file_records.evening import Emergency, Permit, StopCall, Weather
from sequencer.show.file_records.field_kinds import (
    Beats,
    CycleLength,
    Date,
    Degrees,
    Duration,
    Length,
    Name,
    PhraseBeat,
    Shift,
    Speed,
    StopLength,
    Volume,
    When,
    Words,
)
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.file_records.record import FilePoint, Names, Paths, Record
from sequencer.show.file_records.site import VenueRecord
from sequencer.show.file_records.step_kinds import MAKING, STEP_KINDS, applies
from sequencer.show.file_records.tonight_record import Tonight
from sequencer.show.file_records.wishes import DraftMark, Wishes
from sequencer.units import counted

TempoWords = Literal["half", "double", "constant", "constant half", "constant double"]


class SectionMark(Record):
    """A section named by hand; it lasts until the next one."""

    start: When = Field(alias="from", description="where it starts")
    name: Name = Field(description="its name; give parts that repeat the same name")


class SteadyRecord(Record):
    """A steady count of one's own, as tapping along gives it."""

    tempo: Annotated[float, Field(ge=20, le=400)] = Field(
        description="beats a minute", examples=["119.97"]
    )
    at: When = Field(description="a one, as m:ss.s of the track", examples=["0:12.345"])


class CorrectionRecord(Record):
    """Corrections by a performer to the detected beats."""

    metre: Annotated[int, Field(ge=2, le=7)] | None = Field(
        None, description="beats per bar, 2 to 7"
    )
    one: When | None = Field(
        None,
        description="a beat that is the first of its bar, as m:ss.s or as bar.beat of the detected count",
    )
    tempo: TempoWords | None = Field(
        None,
        description="count half or twice as many beats as were detected; `constant`: one tempo through the whole song, "
        "where the detected beats slip",
    )
    shift: Shift = Field(0.0, description="move all beats later (or earlier, if negative)")
    beats: str | None = Field(
        None,
        description="a file of beat times to use instead: taps or a table (CSV), or a MIDI file",
    )
    steady: SteadyRecord | None = Field(
        None, description="beats at one tempo to use instead, as tapping along gives them"
    )
    sections: tuple[SectionMark, ...] = Field(
        (), description="boundaries and names of the sections"
    )


class TrackRecord(Record):
    """The song."""

    file: str = Field(
        min_length=1, description="path of the song, relative to the show file's folder"
    )
    sha256: Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")] | None = Field(
        None, description="content hash of the cut that the show was made for"
    )
    corrections: CorrectionRecord = Field(
        CorrectionRecord(), description="manual corrections to the detected beats"
    )


class FormationSpot(Record):
    """Where one performer stands in a formation."""

    at: FilePoint = Field(description="[X, Y] on the stage")
    facing: Degrees = Field(0.0, description="0 faces the audience; anticlockwise seen from above")


class Formation(Record):
    """Positions of the cast: each given by name, or a named shape to fill."""

    spots: dict[Name, FormationSpot] | None = Field(None, description="one position per performer")
    shape: (
        Literal[
            "line", "wedge", "diamond", "circle", "box", "stagger", "face to face", "back to back"
        ]
        | None
    ) = Field(None, description="a named shape")
    centre: FilePoint | None = Field(None, description="centre of the shape")
    spacing: Length | None = Field(None, description="between neighbours in the shape")
    turn: Degrees = Field(0.0, description="rotates the whole shape, anticlockwise seen from above")
    order: Names | None = Field(
        None, description="who takes which position, in order; default: shortest walks"
    )
    drafted: DraftMark | None = Field(
        None,
        description="written by `sequencer draft`, which may replace it; remove this key, or change the entry, to keep it",
    )

    @model_validator(mode="after")
    def _either(self) -> Self:
        if (self.spots is None) == (self.shape is None):
            raise ValueError("give either spots, or a shape with centre and spacing")
        if self.shape is not None and (self.centre is None or self.spacing is None):
            raise ValueError(f"a {self.shape} needs a centre and a spacing")
        return self


class Staging(Record):
    """A formation, and the walk that leads to it."""

    formation: Name = Field(description="a name under `formations`")
    start: When = Field(
        alias="from",
        description="when the walk starts; for the first entry, when the formation begins",
    )
    beats: Beats | None = Field(
        None, description="duration of the walk in beats; not given for the first entry"
    )
    path: Literal["straight", "curved"] | None = Field(
        None,
        description="decides nothing: a way through points (`via`) is a curve, any other is straight. Still read; a note says "
        "where it says otherwise",
    )
    via: dict[Name, tuple[FilePoint, ...]] = Field(
        default_factory=dict, description="points through which a performer walks"
    )
    drafted: DraftMark | None = Field(
        None,
        description="written by `sequencer draft`, which may replace it; remove this key, or change the entry, to keep it",
    )


class HandPart(Record):
    """One hand's pattern, if the two hands differ."""

    pattern: Name = Field(description="a name that `sequencer patterns` lists")
    parameters: dict[str, Any] = Field(
        default_factory=dict,
        alias="with",
        description="the pattern's parameters, used as written; a position or size left out is fitted to body and props",
    )


StopKind = Literal["rest", "hold"]


class Step(Record):
    """A block: a pattern for a number of beats, a stop, or a phrase. Inside a phrase it follows the previous step."""

    pattern: Name | None = Field(None, description="a name that `sequencer patterns` lists")
    phrase: Name | None = Field(None, description="a phrase defined under `phrases`")
    parameters: dict[str, Any] = Field(
        default_factory=dict,
        alias="with",
        description="the pattern's parameters, used as written; a position or size left out is fitted to body and props",
    )
    left: HandPart | None = Field(None, description="the left hand's pattern, if different")
    right: HandPart | None = Field(None, description="the right hand's pattern, if different")
    hands: Literal["both", "left", "right"] = Field("both", description="who spins")
    timing: Literal["together", "split", "quarter"] = Field(
        "split",
        description="timing of the second hand: in phase, half a turn or a quarter turn apart",
    )
    direction: Literal["same", "opposite"] = Field(
        "same", description="direction of the second hand"
    )
    cycle: CycleLength | None = Field(None, description="beats per hand cycle, at least 1/8")
    shift: float = Field(0.0, ge=-64, le=64, description="start this many beats into the pattern")
    beats: Beats | None = Field(None, description="how long")
    cycles: Beats | None = Field(None, description="duration in hand cycles")
    repeat: Annotated[int, Field(ge=1, le=1000)] = Field(1, description="number of times in a row")
    mirrored: bool = Field(False, description="left and right swapped")
    link: bool = Field(False, description="true: a computed transition instead of a pattern")
    rest: StopLength | None = Field(
        None,
        description="stop for this many beats, props hanging still; coming to rest and starting again take part of them",
    )
    hold: StopLength | None = Field(
        None,
        description="stop for this many beats with the hands where the pattern before leaves them: a poi hangs from "
        "the still hand, any other prop stands still",
    )
    accent: PhraseBeat | None = Field(
        None,
        description="a beat of the phrase, counted from 1, that must be hit: something begins on it",
    )
    note: Annotated[Words, Field(max_length=2000)] = Field("", description="printed on the sheet")
    cue: Annotated[Words, Field(max_length=80)] = Field(
        "",
        description="a word or two to say or think as it begins, printed large on the sheet and on the pocket card",
    )
    drafted: DraftMark | None = Field(
        None,
        description="written by `sequencer draft`, which may replace it; remove this key, or change the entry, to keep it",
    )

    @property
    def stop(self) -> StopKind | None:
        """Which kind of stop it is; None if it is none."""
        return "rest" if self.rest is not None else "hold" if self.hold is not None else None

    @property
    def kind(self) -> str:
        """What it is: one of STEP_KINDS."""
        made = ((kind, getattr(self, name)) for kind, names in STEP_KINDS.items() for name in names)
        return next(kind for kind, given in made if given is not None and given is not False)

    def _lost(self) -> list[str]:
        """Keys that do not apply to what it is, in the order of the fields."""
        kind = self.kind
        lost = {name for name in self.model_fields_set if not applies(name, kind)}
        if kind != "accent":
            lost -= MAKING  # `link: false` beside a pattern says nothing
        return [
            field.alias or name for name, field in type(self).model_fields.items() if name in lost
        ]

    @model_validator(mode="after")
    def _one_thing(self) -> Self:
        own = self.left is not None or self.right is not None
        things = [self.pattern, self.phrase, own or None, self.link or None, self.stop, self.accent]
        if sum(each is not None for each in things) != 1:
            raise ValueError(
                "give one of pattern, phrase, link, rest, hold, accent, or left and right with a pattern each"
            )
        if self.beats is not None and self.cycles is not None:
            raise ValueError("give beats or cycles, not both")
        if self.link and self.beats is None:
            raise ValueError("a link needs a length in beats")
        lost = [key for key in self._lost() if key != "cycles"]  # of a stop: said below
        if lost and self.kind != "accent":
            raise ValueError(
                f"{lost[0]} does not apply to a {self.kind}; write it next to the pattern it is for"
            )
        return self

    @model_validator(mode="after")
    def _stops(self) -> Self:
        given = self.model_fields_set
        if self.accent is not None and (lost := self._lost()):
            raise ValueError(f"{min(lost)} does not apply to an accent, which takes no time")
        if self.stop is None:
            return self
        if self.cycles is not None:
            raise ValueError(f"a {self.stop} is counted in beats, not in cycles")
        length = self.rest if self.stop == "rest" else self.hold
        if length is True and not given & {"beats", "until"}:
            raise ValueError(f"a {self.stop} needs a length in beats, such as {self.stop}: 4")
        if length is not True and given & {"beats", "until"}:
            raise ValueError(f"give the length of the {self.stop} once")
        return self

    @property
    def stop_beats(self) -> float | None:
        """How long a stop is, as written beside `rest`, `hold` or `beats` [beats]; None if only `until` says it."""
        length = self.rest if self.rest is not None else self.hold
        return self.beats if length is None or length is True else length


class Entry(Step):
    """A block, stop, phrase or accent on the timeline: who dances it, and from when."""

    who: Names = Field(("all",), min_length=1, description="names, or all")
    start: When | None = Field(
        None,
        alias="from",
        description="when it starts; default: the end of these performers' previous block",
    )
    until: When | None = Field(None, description="when it ends")
    canon: Beats | None = Field(
        None, description="each performer starts this many beats after the one named before them"
    )
    mirror: Names = Field((), description="performers who dance it with left and right swapped")
    accent: When | None = Field(
        None,
        description="a moment that must be hit: a pattern, a stop or a cycle of a pattern begins on it",
    )

    @model_validator(mode="after")
    def _length(self) -> Self:
        if self.until is not None and (self.beats is not None or self.cycles is not None):
            raise ValueError("give one of beats, cycles and until")
        if self.until is not None and self.repeat > 1:
            raise ValueError("until and repeat cannot be combined; leave one out")
        return self


class LitSpan(Record):
    """Performers who are lit together, and when."""

    who: Names = Field(("all",), description="names, or all")
    start: When = Field(alias="from", description="when they are all alight and the burn begins")
    until: When = Field(description="when putting out begins")
    lit_by: Name | None = Field(
        None, description="who lights them; default: `fire`, `handling`, `lit_by`"
    )
    lit_at: FilePoint | None = Field(
        None, description="where they are lit; default: where they stand when the burn begins"
    )
    put_out_by: Name | None = Field(
        None, description="who puts them out; default: the spotter who watches them then"
    )
    props: Literal["same", "second set"] = Field(
        "same",
        description="second set: a relight with another set of props, soaked beforehand, instead of the hot ones",
    )


class BurnRecord(Record):
    """Burning time of a soaked wick."""

    time: Duration = Field(description="burning time that you measured with this fuel and wick")
    measured: bool = Field(description="true only if you timed it yourself")

    @model_validator(mode="after")
    def _burns(self) -> Self:
        if not self.time > 0:
            raise ValueError("a burning time must be above 0 s; time your own wick")
        return self


class Handling(Record):
    """How long props are handled before and after a burn, by whom and how; for one performer's props together."""

    light: Duration | None = Field(
        None, gt=0, description="time to light one performer's props, as timed"
    )
    put_out: Duration | None = Field(
        None, gt=0, description="time to put out one performer's props, as timed"
    )
    cool: Duration | None = Field(
        None, gt=0, description="time until a wick that was put out is cold, as timed"
    )
    swap: Duration | None = Field(
        None, gt=0, description="time to lay down one set of props and pick up another, as timed"
    )
    waiting: Literal["hanging", "on the ground", "swinging"] | None = Field(
        None,
        description="how lit props are kept until the burn begins; default: hanging still, the worst case",
    )
    lit_by: Name | None = Field(None, description="who lights the props: a lighter or the lead")


class Fire(Record):
    """Fuel, burning time and who is lit when."""

    fuel: Name = Field(description="a name listed in `docs/sources.md`; read your own data sheet")
    burn: BurnRecord | None = Field(None, description="timed burn")
    burns: str | None = Field(
        None,
        description="a log of your timed burns (CSV) to use instead, relative to this file's folder",
    )
    flame: Length | None = Field(
        None, description="flame length beyond the wick at rest, at its peak; watch a real burn"
    )
    reserve: float = Field(
        0.8, gt=0, le=1, description="fraction of the burning time that may be planned"
    )
    fuel_on_site: Volume | None = Field(None, description="all the fuel brought to the site")
    lit: tuple[LitSpan, ...] = Field((), description="who is lit, and when")
    handling: Handling = Field(Handling(), description="lighting, waiting, putting out and cooling")


class CrewMember(Record):
    """A member of the safety crew: position and duty."""

    name: Name = Field(description="as printed on the sheets")
    post: FilePoint = Field(description="[X, Y] where they stand")
    duty: Literal["spotter", "perimeter", "fuel keeper", "lighter", "lead"] = Field(
        "spotter", description="each person has one duty"
    )
    watches: Names = Field((), description="performers this person watches; default: all")
    equipment: Names = Field((), description="damp towel, fire blanket, extinguisher, bucket …")


class Limits(Record):
    """Limits on what a performer can do, and tolerances within which patterns join without a link."""

    hand_speed: Speed = Field(6.0, description="maximum speed of a hand")
    hand_acceleration: float = Field(80.0, gt=0, description="m/s², maximum acceleration of a hand")
    turns: float = Field(2.5, gt=0, description="maximum turns of a prop per second")
    head_speed: Speed = Field(20.0, description="maximum speed of a wick")
    pull: float = Field(60.0, gt=0, description="N, maximum pull of one prop")
    torque: float = Field(8.0, gt=0, description="N·m, maximum torque of one hand on a rigid prop")
    own_body: Length = Field(
        0.05, description="a burning wick nearer to the performer's body than this is noted"
    )
    join_hand: Length = Field(
        0.15, description="maximum distance between the hand positions at a join"
    )
    join_tether: Degrees = Field(20.0, description="maximum angle between the tethers at a join")
    join_axis: Degrees = Field(20.0, description="maximum angle between the turning axes at a join")
    join_rate: tuple[float, float] = Field(
        (0.8, 1.25), description="range of the turning rate after a join, relative to before"
    )

    @model_validator(mode="after")
    def _sound(self) -> Self:
        low, high = self.join_rate
        if not 0 < low <= 1 <= high:
            raise ValueError("join_rate must have 1 between its two ratios, such as [0.8, 1.25]")
        if not (0 < self.join_tether <= 90 and 0 < self.join_axis <= 90):
            raise ValueError("join_tether and join_axis must be above 0 and at most 90 degrees")
        return self


def _numbered(value: Any) -> Any:
    """`permit: KC-1234` means the same as `permit: {number: KC-1234}`."""
    return {"number": value} if isinstance(value, str) else value


class Rules(Record):
    """Rules that apply to the show."""

    profile: Names = Field(
        ("default",),
        min_length=1,
        description="rule profiles, see `docs/sources.md`; the strictest rule applies",
    )
    file: Paths = Field((), description="files of your own rules (YAML), added to the profiles")
    permit: Annotated[
        Permit | None, BeforeValidator(_numbered, json_schema_input_type=Permit | str | None)
    ] = Field(None, description="the permit for this place and date")
    authority: Name | None = Field(None, description="who decides")
    between_performers: Length | None = Field(
        None, description="minimum distance between two performers"
    )
    audience: Length | None = Field(
        None, description="minimum distance of a flame from the audience"
    )


class Show(Record):
    """A complete show file."""

    title: Name = Field(description="printed on every sheet")
    version: Name = Field("1", description="printed on every sheet; raise it with every change")
    date: Date | None = Field(None, description="date of this version, YYYY-MM-DD")
    night: Date | None = Field(None, description="date of the performance, YYYY-MM-DD")
    begins: Annotated[str, Field(pattern=r"^([01]\d|2[0-3]):[0-5]\d$")] | None = Field(
        None, description="clock time at which the song starts on the night, HH:MM"
    )
    type_file: str | None = Field(
        None,
        description="a TrueType font for characters missing from the sheets’ built-in font, relative to this file’s folder",
    )
    track: TrackRecord = Field(description="the song")
    venue: VenueRecord = Field(description="the venue and its limits")
    cast: tuple[Performer, ...] = Field(min_length=1, max_length=500, description="who performs")
    formations: dict[Name, Formation] = Field(
        default_factory=dict, description="positions of the cast; you choose the names"
    )
    staging: tuple[Staging, ...] = Field((), description="when each formation is taken")
    entrances: tuple[Entrance, ...] = Field(
        (), description="who comes on from the wings or goes off, and when; default: all are on"
    )
    patterns: dict[Name, dict[str, Any]] = Field(
        default_factory=dict,
        description="your own patterns: a law with fixed parameters, or a list of stations",
    )
    pattern_files: tuple[Annotated[str, Field(min_length=1)], ...] = Field(
        (), description="pattern files to use, relative to this file's folder"
    )
    phrases: dict[Name, tuple[Step, ...]] = Field(
        default_factory=dict,
        description="named sequences of blocks that can be reused; you choose the names",
    )
    timeline: tuple[Entry, ...] = Field((), description="who dances what, and when")
    wishes: Wishes = Field(Wishes(), description="what `sequencer draft` should bring")
    fire: Fire | None = Field(None, description="if left out, nothing is lit")
    crew: tuple[CrewMember, ...] = Field((), description="safety people")
    tonight: Tonight | None = Field(
        None,
        description="who is away on one night, and who takes their part; default: everybody is there",
    )
    stop_call: StopCall = Field(StopCall(), description="the call that stops the act")
    emergency: Emergency = Field(Emergency(), description="the emergency card")
    weather: Weather = Field(Weather(), description="weather in which nothing is lit")
    limits: Limits = Field(
        Limits(), description="limits on what a performer can do, and tolerances of a join"
    )
    rules: Rules = Field(Rules(), description="rules that apply to the show")
    drift: Drift = Field(
        Drift(), description="how far people deviate from the plan, for `check --danced`"
    )

    def __repr__(self) -> str:
        return (
            f"<Show {self.title}, version {self.version}: {len(self.cast)} in the cast, "
            f"{counted(len(self.timeline), 'entry', 'entries')}>"
        )

    def __str__(self) -> str:
        return repr(self)

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the cast, in the order of the file."""
        return tuple(dancer.name for dancer in self.cast)
