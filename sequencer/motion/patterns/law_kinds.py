"""The kinds of law on which patterns are based: their parameters, and how to build each.

A kind turns plain values (metres, degrees, names) into a law of the family modules. Another package
can add kinds through the entry-point group `sequencer.laws`: each entry names a `LawKind`. Its code
counts among the formulas on which kept fits depend (`motion.fitting.kept_fits`).
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from math import radians
from typing import Any, Literal, TypeAlias

from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.transforms import Mirrored
from sequencer.motion.patterns import paths, planar, toroid, weaves
from sequencer.motion.patterns.parameters import Free, OffsetLimits, Parameter, ParameterValue
from sequencer.motion.patterns.placing import HANDS_APART
from sequencer.motion.patterns.stations import StationPoint
from sequencer.plugins import Plugin, extended

LAW_PLUGINS = "sequencer.laws"
DEFAULT_TETHER = (
    0.51  # [m] if neither pattern nor prop gives it: 0.30 of a stature of 1.70 m; common practice
)
ParameterValues: TypeAlias = Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class LawContext:
    """Body, prop and tempo for which a law is built."""

    side: Side
    body: Body
    beats: float  # of one hand cycle
    tether: float  # [m]


@dataclass(frozen=True, slots=True, kw_only=True)
class LawKind:
    """A parametric law."""

    name: str
    family: str
    parameters: tuple[Parameter, ...]
    build: Callable[[ParameterValues, LawContext], Law]
    cycle: Callable[[ParameterValues], float]  # default beats of one hand cycle
    turns: Callable[[ParameterValues], float]  # number of turns per hand cycle, for split timing
    opposite: Literal[
        "mirror", "turn", "way", "plane"
    ]  # how to build the second hand's law when it goes the opposite way
    stations: tuple[StationPoint, ...] = ()  # of a station pattern
    free: tuple[Free, ...] = ()  # parameters to try besides offsets, if the prop meets body or prop
    room: Callable[[ParameterValues], OffsetLimits] = lambda _values: OffsetLimits()  # for offsets

    def __repr__(self) -> str:
        names = ", ".join(parameter.name for parameter in self.parameters)
        return f"<LawKind {self.name}: {self.family}; {names}>"

    @property
    def content(self) -> bytes:
        """What stands for it in a content key: its name, if it is one of the kinds built in here.

        Raises
        ------
        TypeError
            If it is not: its code is another package's, or its stations are the show's own.
        """
        if self not in _BUILT_IN:
            raise TypeError(f"no content key of the law kind {self.name!r}")
        return self.name.encode()


def opposite_law(kind: LawKind, values: ParameterValues, wanted: LawContext) -> Law:
    """The second hand's law when the hands go in opposite directions.

    In the wall and the floor plane that is the mirror image of the other hand's law; where mirroring would
    keep the direction (wheel plane), the direction is reversed instead.
    """
    how = kind.opposite
    if how == "plane":
        how = "turn" if values["plane"] == "wheel" else "mirror"
    if how == "mirror":
        other: Side = "left" if wanted.side == "right" else "right"
        seen = LawContext(side=other, body=wanted.body, beats=wanted.beats, tether=wanted.tether)
        return Mirrored(
            kind.build(
                values if kind.name == "toroid" else _placed_for_mirror(values, wanted.side), seen
            )
        )
    return kind.build(reversed_way(values), wanted)


def _placed_for_mirror(values: ParameterValues, side: Side) -> dict[str, Any]:
    """The same values, shifted and turned so that the mirror image stays in its own hand's plane."""
    moved = dict(values)
    if "yaw" in moved:
        moved["yaw"] = -moved["yaw"]
    name = {"wall": "ahead", "floor": "up"}.get(str(values.get("plane")))
    if name is not None and name in moved:
        moved[name] += HANDS_APART if side == "right" else -HANDS_APART
    return moved


def reversed_way(values: ParameterValues) -> dict[str, ParameterValue]:
    """The same values with the direction reversed."""
    other = {
        "anticlockwise": "clockwise",
        "clockwise": "anticlockwise",
        "forward": "backward",
        "backward": "forward",
    }
    return {
        name: other[value] if name in ("turn", "way") else value for name, value in values.items()
    }


def offset_of(values: ParameterValues) -> tuple[float, float, float]:
    """The performer's offset of a centre."""
    return values["across"], values["ahead"], values["up"]


# Parameters shared by several kinds
HAND_RADIUS = Parameter(
    name="hand_radius", kind="length", default=0.35, low=0.0, high=1.2,
    help="radius of the hand's circle; at most the arm's length",
)  # fmt: skip
TETHER = Parameter(
    name="tether", kind="length", default=None, low=0.05, high=3.0,
    help="hand to the centre of the head",
)  # fmt: skip
PLANE = Parameter(
    name="plane", kind="choice", default="wall", choices=("wall", "wheel", "floor"),
    help="plane of the hand's circle",
)  # fmt: skip
TURN = Parameter(
    name="turn", kind="choice", default="anticlockwise", choices=("anticlockwise", "clockwise"),
    help="direction of the hand as the performer sees it; from above for the floor plane, from the "
    "performer's right for the wheel plane (clockwise is forward)",
)  # fmt: skip
FROM = Parameter(
    name="from", kind="angle", default=-90.0, low=-360.0, high=360.0,
    help="where the hand starts: 0 is to the performer's right (wheel plane: ahead), -90 the bottom",
)  # fmt: skip
LAG = Parameter(
    name="lag", kind="angle", default=0.0, low=-360.0, high=360.0,
    help="angle of the tether ahead of the outward direction at the start",
)  # fmt: skip
WAY = Parameter(
    name="way", kind="choice", default="forward", choices=("forward", "backward"),
    help="forward: the top of the loop goes forward",
)  # fmt: skip
YAW = Parameter(
    name="yaw", kind="angle", default=0.0, low=-90.0, high=90.0,
    help="turns the plane about the vertical through the circle's centre, to the performer's left",
)  # fmt: skip
WIDTH = Parameter(
    name="width", kind="ratio", default=1.0, low=0.2, high=1.5,
    help="how far the hand goes from side to side (front and back, down and up); 1 is normal",
)  # fmt: skip
LEAD = Parameter(
    name="lead", kind="angle", default=0.0, low=-360.0, high=360.0,
    help="angle of the prop ahead of its usual direction at the start; with 90 a staff crosses upright",
)  # fmt: skip
OFFSET = (
    Parameter(name="across", kind="length", default=0.0, low=-1.0, high=1.0,
              help="moves the centre away from the middle of the body"),
    Parameter(name="ahead", kind="length", default=0.0, low=-1.0, high=1.0,
              help="moves the centre forward"),
    Parameter(name="up", kind="length", default=0.0, low=-1.0, high=1.0,
              help="moves the centre up"),
)  # fmt: skip


def _orbit(values: ParameterValues, wanted: LawContext) -> Law:
    return planar.orbit(
        ratio=values["ratio"],
        hand_radius=values["hand_radius"],
        plane=values["plane"],
        turn=values["turn"],
        start=radians(values["from"]),
        lag=radians(values["lag"]),
        yaw=radians(values["yaw"]),
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _orbit_cycle(values: ParameterValues) -> float:
    return max(planar.petals(values["ratio"]), 1.0) if values["hand_radius"] else 1.0


def _isolation(values: ParameterValues, wanted: LawContext) -> Law:
    return _orbit({**values, "hand_radius": wanted.tether / 2, "ratio": values["ratio"]}, wanted)


def _toroid(values: ParameterValues, wanted: LawContext) -> Law:
    return toroid.toroid(
        lobes=values["lobes"],
        bend=values["bend"],
        start=values["start"],
        hand_radius=values["hand_radius"],
        plane=values["plane"],
        turn=values["turn"],
        place=radians(values["from"]),
        begin=values["begin"],
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _weave(values: ParameterValues, wanted: LawContext) -> Law:
    return weaves.weave(
        loops=values["loops"],
        way=values["way"],
        place=values["place"],
        width=values["width"],
        swing=radians(values["swing"]),
        lead=radians(values["lead"]),
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _windmill(values: ParameterValues, wanted: LawContext) -> Law:
    return weaves.windmill(
        turn=values["turn"],
        width=values["width"],
        lean=radians(values["lean"]),
        lead=radians(values["lead"]),
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _fountain(values: ParameterValues, wanted: LawContext) -> Law:
    return weaves.fountain(
        way=values["way"],
        width=values["width"],
        lead=radians(values["lead"]),
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _corkscrew(values: ParameterValues, wanted: LawContext) -> Law:
    return weaves.corkscrew(
        turn=values["turn"],
        loops=values["loops"],
        low=radians(values["low"]),
        high=radians(values["high"]),
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _swing(values: ParameterValues, wanted: LawContext) -> Law:
    return paths.swing(
        amplitude=radians(values["amplitude"]),
        plane=values["plane"],
        turn=values["turn"],
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _carry(values: ParameterValues, wanted: LawContext) -> Law:
    return paths.carry(
        hand_radius=values["hand_radius"],
        plane=values["plane"],
        turn=values["turn"],
        start=radians(values["from"]),
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _travelling(values: ParameterValues, wanted: LawContext) -> Law:
    return paths.travelling(
        shape=values["shape"],
        size=values["size"],
        loops=values["loops"],
        plane=values["plane"],
        turn=values["turn"],
        lead=radians(values["lag"]),
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


def _body_turn(values: ParameterValues, wanted: LawContext) -> Law:
    return paths.body_turn(
        way=values["way"],
        loops=values["loops"],
        towards=values["towards"],
        apart=values["apart"],
        beats=wanted.beats,
        side=wanted.side,
        body=wanted.body,
        offset=offset_of(values),
    )


_WEAVE_ROOMS: Mapping[str, OffsetLimits] = {
    "front": OffsetLimits(across=(-0.15, 0.15), ahead=(-0.15, 0.5), up=(-0.3, 0.3)),
    "behind": OffsetLimits(across=(-0.15, 0.15), ahead=(-0.45, 0.15), up=(-0.3, 0.3)),
    "overhead": OffsetLimits(across=(-0.15, 0.15), ahead=(-0.3, 0.3), up=(-0.2, 0.3)),
}  # the hand must still go to both sides, and cross where the pattern's name says


def _loops(default: int, low: int, high: int) -> Parameter:
    return Parameter(name="loops", kind="count", default=default, low=low, high=high,
                     help="turns of the prop per hand cycle")  # fmt: skip


def one_turn(values: ParameterValues) -> float:
    """One turn per hand cycle: split timing is half a cycle."""
    del values
    return 1.0


def _two(values: ParameterValues) -> float:
    del values
    return 2.0


def _four(values: ParameterValues) -> float:
    del values
    return 4.0


# Values to try, found by a search over props, statures and patterns (docs/motion.md, section 3.7).
HAND_RADII = Free("hand_radius", (1.0, 0.75, 0.5, 0.3), share=True)
_YAWS = Free("yaw", (0.0, 30.0, 45.0))
_LOBES_LIE = (Free("begin", ("in", "out")), HAND_RADII, Free("from", (-90.0, 90.0, 0.0, -45.0)))

RATIO = Parameter(
    name="ratio", kind="ratio", default=1.0, low=-24.0, high=24.0,
    help="turns of the prop per turn of the hand, as seen in the room; negative: against the hand",
)  # fmt: skip

_BUILT_IN = (
    LawKind(
        name="orbit", family="planar orbit", build=_orbit, cycle=_orbit_cycle,
        turns=one_turn, opposite="plane",
        parameters=(RATIO, HAND_RADIUS, TETHER, LAG, PLANE, TURN, FROM, YAW, *OFFSET),
        free=(HAND_RADII, _YAWS),
    ),
    LawKind(
        name="isolation", family="planar orbit", build=_isolation,
        cycle=lambda values: max(planar.petals(values["ratio"]), 1.0),
        turns=one_turn, opposite="plane",
        parameters=(RATIO, TETHER, LAG, PLANE, TURN, FROM, YAW, *OFFSET),
        free=(_YAWS,),
    ),
    LawKind(
        name="toroid", family="toroid", build=_toroid, cycle=lambda values: float(values["lobes"]),
        turns=one_turn, opposite="plane",
        parameters=(
            Parameter(name="lobes", kind="count", default=4, low=1, high=24,
                      help="loops against the hand per hand cycle"),
            Parameter(name="bend", kind="choice", default="pro", choices=("iso", "pro", "anti"),
                      help="how the prop's plane bends (anti needs at least 2 lobes)"),
            Parameter(name="start", kind="choice", default=1, choices=(1, -1),
                      help="direction of the first in: along the hand's motion, or against it"),
            Parameter(name="begin", kind="choice", default="in", choices=("in", "out"),
                      help="whether it starts at an in, or at the out half a lobe later"),
            Parameter(name="hand_radius", kind="length", default=0.2, low=0.01, high=1.2,
                      help="radius of the hand's circle; at most the arm's length"),
            TETHER, PLANE, TURN, FROM, *OFFSET,
        ),
        free=_LOBES_LIE,
        room=lambda _values: OffsetLimits(across=(-0.48, 0.48), ahead=(-0.66, 0.36), up=(-0.48, 0.48)),
    ),
    LawKind(
        # split: half a loop in the two-beat weave, one and a half in the three-beat weave, so that the second hand's crossing loop comes between the first hand's two same-side loops
        name="weave", family="weave", build=_weave, cycle=lambda values: float(values["loops"]),
        turns=lambda values: 2.0 if values["loops"] == 2 else 1.0, opposite="way",
        parameters=(
            Parameter(name="loops", kind="choice", default=2, choices=(2, 3),
                      help="2: one on each side; 3: two on the hand's own side, one across"),
            WAY,
            Parameter(name="place", kind="choice", default="front",
                      choices=("front", "behind", "overhead"), help="where the hand crosses"),
            WIDTH,
            Parameter(name="swing", kind="angle", default=0.0, low=-90.0, high=90.0,
                      help="how far the plane turns, towards the wall plane (overhead: the floor "
                      "plane), while the hand crosses"),
            LEAD, TETHER, *OFFSET,
        ),
        free=(
            Free("swing", (75.0, 60.0, 90.0), props=("staff",)),
            Free("lead", (135.0, 150.0, 90.0), props=("staff",)),
            Free("width", (1.0, 1.15, 0.8)),
            Free("lead", (0.0, -45.0)),
            Free("swing", (0.0, 30.0, 60.0)),
        ),
        room=lambda values: _WEAVE_ROOMS[values["place"]],
    ),
    LawKind(
        # split: the second hand is half a loop ahead or one and a half behind, whichever has the props point outward where the hands pass each other
        name="windmill", family="weave", build=_windmill, cycle=_two,
        turns=lambda values: 2.0 if values["turn"] == "clockwise" else 2 / 3, opposite="mirror",
        parameters=(
            TURN, WIDTH,
            Parameter(name="lean", kind="angle", default=20.0, low=0.0, high=60.0,
                      help="lean of the plane, in the direction of the hand, while it passes overhead"),
            LEAD, TETHER, *OFFSET,
        ),
        free=(
            Free("lean", (20.0, 0.0, 40.0)),
            Free("width", (1.0, 1.2, 0.8)),
            Free("lead", (0.0, 45.0), props=("staff",)),
        ),
        room=lambda _values: OffsetLimits(across=(-0.2, 0.2), ahead=(-0.15, 0.15), up=(-0.15, 0.3)),
    ),
    LawKind(
        name="fountain", family="weave", build=_fountain, cycle=_two,
        turns=_two, opposite="way", parameters=(WAY, WIDTH, LEAD, TETHER, *OFFSET),
        free=(Free("width", (1.0, 0.75, 0.5)), Free("lead", (0.0, 90.0), props=("staff",))),
    ),
    LawKind(
        name="corkscrew", family="weave", build=_corkscrew,
        cycle=lambda values: float(values["loops"]), turns=one_turn,  # split: one hand up, one down
        opposite="mirror", parameters=(
            TURN, _loops(4, 2, 16),
            Parameter(name="low", kind="angle", default=5.0, low=-60.0, high=80.0,
                      help="angle of the arm above level at its lowest"),
            Parameter(name="high", kind="angle", default=90.0, low=10.0, high=110.0,
                      help="angle of the arm above level at its highest"),
            TETHER, *OFFSET,
        ),
        free=(Free("low", (5.0, 30.0, 45.0, 60.0)),),
        room=lambda _values: OffsetLimits(across=(-0.2, 0.3), ahead=(-0.2, 0.4), up=(-0.2, 0.3)),
    ),
    LawKind(
        name="swing", family="swing", build=_swing, cycle=_two,
        turns=one_turn, opposite="plane",
        parameters=(
            Parameter(name="amplitude", kind="angle", default=60.0, low=1.0, high=180.0,
                      help="angle to either side of hanging; 180 stops at the top"),
            Parameter(name="plane", kind="choice", default="wheel", choices=("wall", "wheel"),
                      help="plane of the swing"),
            TURN, TETHER, *OFFSET,
        ),
    ),
    LawKind(
        name="carry", family="carry", build=_carry, cycle=_four,
        turns=one_turn, opposite="plane",
        parameters=(HAND_RADIUS, TETHER, PLANE, TURN, FROM, *OFFSET),
        free=(HAND_RADII,),
    ),
    LawKind(
        name="travelling", family="composite hand path", build=_travelling,
        cycle=lambda values: float(abs(values["loops"])),
        turns=one_turn, opposite="plane",
        parameters=(
            Parameter(name="shape", kind="choice", default="line", choices=paths.PATH_SHAPES,
                      help="the hand's path"),
            Parameter(name="size", kind="length", default=0.3, low=0.02, high=1.2,
                      help="half the width of the path"),
            Parameter(name="loops", kind="count", default=4, low=-16, high=16,
                      help="turns of the prop per hand cycle; negative against the hand"),
            LAG, TETHER, PLANE, TURN, *OFFSET,
        ),
        free=(Free("size", (1.0, 0.75, 0.5), share=True),),
    ),
    LawKind(
        name="body-turn", family="body turn", build=_body_turn,
        cycle=lambda values: float(values["loops"]), turns=lambda values: float(values["loops"]),
        opposite="way", parameters=(
            WAY, _loops(8, 2, 32),
            Parameter(name="towards", kind="choice", default="own", choices=paths.TOWARDS,
                      help="side of the spin, to which the body turns: the hand's own side, or one side "
                      "for both hands, with the other side's hand in the plane nearer to the body"),
            Parameter(name="apart", kind="length", default=0.0, low=-0.2, high=0.6,
                      help="how much farther from the middle of the body the spin is than usual"),
            TETHER, *OFFSET,
        ),
        free=(Free("towards", ("own", "right")), Free("apart", (0.0, 0.1, 0.2))),
        room=lambda _values: OffsetLimits(across=(-0.2, 0.2), ahead=(-0.2, 0.3), up=(-0.3, 0.3)),
    ),
)  # fmt: skip


@cache
def law_kinds() -> dict[str, LawKind]:
    """Every kind of law by name: the built-in ones, then those of other packages.

    Raises
    ------
    InputError
        If another package's entry is not a `LawKind`, or uses an existing name.
    """
    return extended({kind.name: kind for kind in _BUILT_IN}, LAW_PLUGINS, _added)


def _added(plugin: Plugin) -> dict[str, LawKind]:
    kind = plugin.load()
    if not isinstance(kind, LawKind):
        raise TypeError(f"expected a LawKind, got {type(kind).__name__}")
    return {kind.name: kind}
