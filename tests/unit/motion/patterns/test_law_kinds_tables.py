"""Every kind of law: its table of parameters as published, and what it hands to its family's function."""

from math import radians

import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.transforms import Mirrored
from sequencer.motion.patterns import law_kinds as module
from sequencer.motion.patterns.law_kinds import (
    DEFAULT_TETHER,
    LawContext,
    law_kinds,
    opposite_law,
    reversed_way,
)
from sequencer.motion.patterns.parameters import Free, OffsetLimits
from sequencer.motion.patterns.paths import body_turn, carry, swing, travelling
from sequencer.motion.patterns.planar import orbit
from sequencer.motion.patterns.toroid import toroid
from sequencer.motion.patterns.weaves import corkscrew, fountain, weave, windmill

BODY = Body(stature=1.7)
# Default, lowest, highest, as docs/motion.md, section 3, and the pages of the patterns print them.
OFFSET = dict.fromkeys(("across", "ahead", "up"), (0.0, -1.0, 1.0))
TETHER = {"tether": (None, 0.05, 3.0)}
PLANE = {"plane": ("wall", ("wall", "wheel", "floor"))}
TURN = {"turn": ("anticlockwise", ("anticlockwise", "clockwise"))}
WAY = {"way": ("forward", ("forward", "backward"))}
FROM = {"from": (-90.0, -360.0, 360.0)}
LAG, LEAD = {"lag": (0.0, -360.0, 360.0)}, {"lead": (0.0, -360.0, 360.0)}
YAW, WIDTH = {"yaw": (0.0, -90.0, 90.0)}, {"width": (1.0, 0.2, 1.5)}
RATIO, RADIUS = {"ratio": (1.0, -24.0, 24.0)}, {"hand_radius": (0.35, 0.0, 1.2)}
TABLES = {
    "orbit": RATIO | RADIUS | TETHER | LAG | PLANE | TURN | FROM | YAW,
    "isolation": RATIO | TETHER | LAG | PLANE | TURN | FROM | YAW,
    "toroid": {
        "lobes": (4, 1, 24), "bend": ("pro", ("iso", "pro", "anti")), "start": (1, (1, -1)),
        "begin": ("in", ("in", "out")), "hand_radius": (0.2, 0.01, 1.2),
    } | TETHER | PLANE | TURN | FROM,
    "weave": {"loops": (2, (2, 3))} | WAY | {"place": ("front", ("front", "behind", "overhead"))}
    | WIDTH | {"swing": (0.0, -90.0, 90.0)} | LEAD | TETHER,
    "windmill": TURN | WIDTH | {"lean": (20.0, 0.0, 60.0)} | LEAD | TETHER,
    "fountain": WAY | WIDTH | LEAD | TETHER,
    "corkscrew": TURN
    | {"loops": (4, 2, 16), "low": (5.0, -60.0, 80.0), "high": (90.0, 10.0, 110.0)} | TETHER,
    "swing": {"amplitude": (60.0, 1.0, 180.0), "plane": ("wheel", ("wall", "wheel"))} | TURN | TETHER,
    "carry": RADIUS | TETHER | PLANE | TURN | FROM,
    "travelling": {
        "shape": ("line", ("line", "box", "diamond", "infinity")), "size": (0.3, 0.02, 1.2),
        "loops": (4, -16, 16),
    } | LAG | TETHER | PLANE | TURN,
    "body-turn": WAY
    | {"loops": (8, 2, 32), "towards": ("own", ("own", "right", "left")), "apart": (0.0, -0.2, 0.6)}
    | TETHER,
}  # fmt: skip
KINDS = {
    "ratio": {"ratio", "width"},
    "count": {"lobes", "loops"},
    "length": {"across", "ahead", "up", "tether", "hand_radius", "size", "apart"},
    "angle": {"from", "lag", "lead", "yaw", "swing", "lean", "low", "high", "amplitude"},
}
# Family, and how the second hand goes the opposite way.
FAMILIES = {
    "orbit": ("planar orbit", "plane"), "isolation": ("planar orbit", "plane"),
    "toroid": ("toroid", "plane"), "weave": ("weave", "way"), "windmill": ("weave", "mirror"),
    "fountain": ("weave", "way"), "corkscrew": ("weave", "mirror"), "swing": ("swing", "plane"),
    "carry": ("carry", "plane"), "travelling": ("composite hand path", "plane"),
    "body-turn": ("body turn", "way"),
}  # fmt: skip
# Values to try, approved: what the search over props, statures and patterns chose (docs/motion.md, 3.7).
RADII = Free("hand_radius", (1.0, 0.75, 0.5, 0.3), (), True)
YAWS = Free("yaw", (0.0, 30.0, 45.0), (), False)
STAFF = ("staff",)
FREE = {
    "orbit": (RADII, YAWS), "isolation": (YAWS,), "carry": (RADII,), "swing": (),
    "toroid": (Free("begin", ("in", "out")), RADII, Free("from", (-90.0, 90.0, 0.0, -45.0))),
    "weave": (
        Free("swing", (75.0, 60.0, 90.0), STAFF), Free("lead", (135.0, 150.0, 90.0), STAFF),
        Free("width", (1.0, 1.15, 0.8)), Free("lead", (0.0, -45.0)), Free("swing", (0.0, 30.0, 60.0)),
    ),
    "windmill": (
        Free("lean", (20.0, 0.0, 40.0)), Free("width", (1.0, 1.2, 0.8)),
        Free("lead", (0.0, 45.0), STAFF),
    ),
    "fountain": (Free("width", (1.0, 0.75, 0.5)), Free("lead", (0.0, 90.0), STAFF)),
    "corkscrew": (Free("low", (5.0, 30.0, 45.0, 60.0)),),
    "travelling": (Free("size", (1.0, 0.75, 0.5), (), True),),
    "body-turn": (Free("towards", ("own", "right")), Free("apart", (0.0, 0.1, 0.2))),
}  # fmt: skip
# Lowest and highest offsets across, ahead and up, approved: within them a pattern still fits its name.
ROOMS = {
    "toroid": ((-0.48, 0.48), (-0.66, 0.36), (-0.48, 0.48)),
    "windmill": ((-0.2, 0.2), (-0.15, 0.15), (-0.15, 0.3)),
    "corkscrew": ((-0.2, 0.3), (-0.2, 0.4), (-0.2, 0.3)),
    "body-turn": ((-0.2, 0.2), (-0.2, 0.3), (-0.3, 0.3)),
}
USUAL_ROOM = ((-0.2, 0.4), (-0.3, 0.4), (-0.4, 0.3))
WEAVE_ROOMS = {
    "front": ((-0.15, 0.15), (-0.15, 0.5), (-0.3, 0.3)),
    "behind": ((-0.15, 0.15), (-0.45, 0.15), (-0.3, 0.3)),
    "overhead": ((-0.15, 0.15), (-0.3, 0.3), (-0.2, 0.3)),
}


def test_the_kinds_and_their_order():
    assert list(law_kinds())[: len(TABLES)] == list(TABLES)
    assert module.LAW_PLUGINS == "sequencer.laws"
    assert DEFAULT_TETHER == 0.51


@pytest.mark.parametrize("name", TABLES)
def test_a_kind_has_the_parameters_of_its_table(name):
    kind, table = law_kinds()[name], TABLES[name] | OFFSET
    assert [p.name for p in kind.parameters] == list(table)
    for parameter in kind.parameters:
        default, *limits = table[parameter.name]
        assert parameter.default == default
        assert type(parameter.default) is type(default)
        if len(limits) == 1:
            assert (parameter.kind, parameter.choices) == ("choice", limits[0])
        else:
            assert parameter.name in KINDS[parameter.kind]
            assert [parameter.low, parameter.high] == limits
        assert parameter.help
    assert (kind.family, kind.opposite) == FAMILIES[name]
    assert kind.free == FREE[name]
    assert kind.stations == ()


@pytest.mark.parametrize("name", TABLES)
def test_a_kind_has_the_room_of_its_table(name):
    if name == "weave":
        found = {place: law_kinds()[name].room({"place": place}) for place in WEAVE_ROOMS}
        expected = WEAVE_ROOMS
    else:
        found = {name: law_kinds()[name].room({})}
        expected = {name: ROOMS.get(name, USUAL_ROOM)}
    for place, (across, ahead, up) in expected.items():
        assert found[place] == OffsetLimits(across=across, ahead=ahead, up=up)


@pytest.mark.parametrize(
    ("name", "values", "cycle", "turns"),
    [
        ("orbit", {"ratio": -3.0, "hand_radius": 0.2}, 4.0, 1.0),
        ("orbit", {"ratio": 1.5, "hand_radius": 0.2}, 1.0, 1.0),
        ("orbit", {"ratio": 4.0, "hand_radius": 0.2}, 3.0, 1.0),
        ("orbit", {"ratio": -3.0, "hand_radius": 0.0}, 1.0, 1.0),
        ("isolation", {"ratio": -3.0}, 4.0, 1.0),
        ("isolation", {"ratio": 1.0}, 1.0, 1.0),
        ("toroid", {"lobes": 5}, 5.0, 1.0),
        ("weave", {"loops": 2}, 2.0, 2.0),
        ("weave", {"loops": 3}, 3.0, 1.0),
        ("windmill", {"turn": "clockwise"}, 2.0, 2.0),
        ("windmill", {"turn": "anticlockwise"}, 2.0, 2 / 3),
        ("fountain", {}, 2.0, 2.0),
        ("corkscrew", {"loops": 6}, 6.0, 1.0),
        ("swing", {}, 2.0, 1.0),
        ("carry", {}, 4.0, 1.0),
        ("travelling", {"loops": -5}, 5.0, 1.0),
        ("body-turn", {"loops": 6}, 6.0, 6.0),
    ],
)
def test_beats_and_turns_of_a_cycle(name, values, cycle, turns):
    """A beat for each petal, lobe or loop; a pendulum two, a carry four; the comments beside the table say
    what split timing makes of the turns."""
    kind = law_kinds()[name]
    assert kind.cycle(values) == cycle
    assert kind.turns(values) == turns


HELD = {"across": 0.07, "ahead": 0.11, "up": -0.05}
WHO = {"beats": 3.5, "side": "left", "body": BODY, "offset": (0.07, 0.11, -0.05)}
PLACED = {"plane": "wheel", "turn": "clockwise", "from": 20.0}
SPUN = {"plane": "wheel", "turn": "clockwise", "start": radians(20.0)}
BUILT = [
    (
        "orbit",
        {"ratio": 2.0, "hand_radius": 0.2, "lag": 30.0, "yaw": 10.0, **PLACED},
        orbit,
        {"ratio": 2.0, "hand_radius": 0.2, "lag": radians(30.0), "yaw": radians(10.0), **SPUN},
    ),
    (
        "isolation",
        {"ratio": 2.0, "lag": 30.0, "yaw": 10.0, **PLACED},
        orbit,
        {"ratio": 2.0, "hand_radius": 0.25, "lag": radians(30.0), "yaw": radians(10.0), **SPUN},
    ),
    (
        "toroid",
        {"lobes": 3, "bend": "anti", "start": -1, "begin": "out", "hand_radius": 0.3, **PLACED},
        toroid,
        {
            "lobes": 3, "bend": "anti", "start": -1, "begin": "out", "hand_radius": 0.3,
            "plane": "wheel", "turn": "clockwise", "place": radians(20.0),
        },
    ),
    (
        "weave",
        {"loops": 3, "way": "backward", "place": "behind", "width": 0.7, "swing": 30.0, "lead": 40.0},
        weave,
        {
            "loops": 3, "way": "backward", "place": "behind", "width": 0.7, "swing": radians(30.0),
            "lead": radians(40.0),
        },
    ),
    (
        "windmill",
        {"turn": "clockwise", "width": 0.7, "lean": 30.0, "lead": 40.0},
        windmill,
        {"turn": "clockwise", "width": 0.7, "lean": radians(30.0), "lead": radians(40.0)},
    ),
    (
        "fountain",
        {"way": "backward", "width": 0.7, "lead": 40.0},
        fountain,
        {"way": "backward", "width": 0.7, "lead": radians(40.0)},
    ),
    (
        "corkscrew",
        {"turn": "clockwise", "loops": 5, "low": 10.0, "high": 70.0},
        corkscrew,
        {"turn": "clockwise", "loops": 5, "low": radians(10.0), "high": radians(70.0)},
    ),
    (
        "swing",
        {"amplitude": 50.0, "plane": "wall", "turn": "clockwise"},
        swing,
        {"amplitude": radians(50.0), "plane": "wall", "turn": "clockwise"},
    ),
    ("carry", {"hand_radius": 0.3, **PLACED}, carry, {"hand_radius": 0.3, **SPUN}),
    (
        "travelling",
        {"shape": "box", "size": 0.2, "loops": -3, "plane": "wheel", "turn": "clockwise", "lag": 30.0},
        travelling,
        {
            "shape": "box", "size": 0.2, "loops": -3, "plane": "wheel", "turn": "clockwise",
            "lead": radians(30.0),
        },
    ),
    (
        "body-turn",
        {"way": "backward", "loops": 5, "towards": "right", "apart": 0.05},
        body_turn,
        {"way": "backward", "loops": 5, "towards": "right", "apart": 0.05},
    ),
]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "values", "family", "given"), BUILT, ids=[name for name, *_ in BUILT]
)
def test_a_kind_hands_its_values_on_in_radians(name, values, family, given):
    """Every value differs from its default, so that none can be forgotten or changed over."""
    wanted = LawContext(side="left", body=BODY, beats=3.5, tether=0.5)
    assert law_kinds()[name].build({**values, **HELD}, wanted) == family(**given, **WHO)


def test_the_opposite_way_is_a_mirror_or_the_way_back():
    """In wall and floor plane the mirror, moved by the 14 cm between two hands' planes and turned back by the
    yaw; in the wheel plane the turn reversed; docs/motion.md, section 3."""
    orbits = law_kinds()["orbit"]
    values = {
        "ratio": 2.0, "hand_radius": 0.2, "lag": 30.0, "yaw": 10.0, "turn": "clockwise", "from": 20.0,
        **HELD,
    }  # fmt: skip
    given = {
        "ratio": 2.0, "hand_radius": 0.2, "lag": radians(30.0), "turn": "clockwise",
        "start": radians(20.0), "beats": 3.5, "body": BODY,
    }  # fmt: skip
    for side, other, away in (("left", "right", -0.14), ("right", "left", 0.14)):
        wanted = LawContext(side=side, body=BODY, beats=3.5, tether=0.5)
        for plane, offset in (
            ("wall", (0.07, 0.11 + away, -0.05)),
            ("floor", (0.07, 0.11, -0.05 + away)),
        ):
            found = opposite_law(orbits, {**values, "plane": plane}, wanted)
            own = orbit(**given, plane=plane, yaw=radians(-10.0), side=other, offset=offset)
            assert found == Mirrored(own)
        found = opposite_law(orbits, {**values, "plane": "wheel"}, wanted)
        back = {**given, "turn": "anticlockwise"}
        same = orbit(
            **back, plane="wheel", yaw=radians(10.0), side=side, offset=(0.07, 0.11, -0.05)
        )
        assert found == same


def test_a_toroid_s_mirror_is_not_moved_and_a_weave_goes_back():
    wanted = LawContext(side="left", body=BODY, beats=3.5, tether=0.5)
    values = {
        "lobes": 3, "bend": "pro", "start": -1, "begin": "out", "hand_radius": 0.3, "plane": "wall",
        "turn": "clockwise", "from": 20.0, **HELD,
    }  # fmt: skip
    own = toroid(
        lobes=3, bend="pro", start=-1, begin="out", hand_radius=0.3, plane="wall", turn="clockwise",
        place=radians(20.0), **{**WHO, "side": "right"},
    )  # fmt: skip
    assert opposite_law(law_kinds()["toroid"], values, wanted) == Mirrored(own)
    values = {"way": "backward", "width": 0.7, "lead": 40.0, **HELD}
    back = fountain(way="forward", width=0.7, lead=radians(40.0), **WHO)
    assert opposite_law(law_kinds()["fountain"], values, wanted) == back
    mill = {"turn": "clockwise", "width": 0.7, "lean": 30.0, "lead": 40.0, **HELD}
    own = windmill(
        turn="clockwise", width=0.7, lean=radians(30.0), lead=radians(40.0),
        **{**WHO, "side": "right"},
    )  # fmt: skip
    assert opposite_law(law_kinds()["windmill"], mill, wanted) == Mirrored(own)


def test_only_turn_and_way_are_reversed():
    given = {"turn": "clockwise", "way": "forward", "name": "clockwise", "lag": 3.0}
    back = {"turn": "anticlockwise", "way": "backward", "name": "clockwise", "lag": 3.0}
    assert reversed_way(given) == back
    assert reversed_way(reversed_way(given)) == given


def test_an_isolation_s_hand_goes_round_half_its_tether():
    wanted = LawContext(side="right", body=BODY, beats=3.5, tether=0.5)
    values = {"ratio": 1.0, "lag": 0.0, "yaw": 0.0, **PLACED, **HELD}
    law = law_kinds()["isolation"].build(values, wanted)
    assert law.hand.arms[0].vector == pytest.approx(
        (0.0, 0.25 * 0.93969262, 0.25 * 0.34202014)  # cos and sin of 20°, from a table
    )


def test_a_kind_says_what_it_is():
    assert repr(law_kinds()["carry"]) == (
        "<LawKind carry: carry; hand_radius, tether, plane, turn, from, across, ahead, up>"
    )
