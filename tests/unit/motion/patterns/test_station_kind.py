"""Station patterns as a kind: rows read in degrees, loops counted by hand, values handed on."""

from math import radians

import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.law_kinds import LawContext
from sequencer.motion.patterns.parameters import Free, OffsetLimits
from sequencer.motion.patterns.station_kind import station_kind
from sequencer.motion.patterns.stations import StationPoint, station_law

ROWS = [
    {"hand": 0, "bend": "10 deg", "phase": 180}, {"hand": 90, "bend": 90, "phase": 360},
    {"hand": 360.0, "bend": 10, "phase": 900},
]  # fmt: skip
POINTS = tuple(
    StationPoint(hand=h, bend=b, phase=p)
    for h, b, p in ((0.0, 10.0, 180.0), (90.0, 90.0, 360.0), (360.0, 10.0, 900.0))
)


def test_a_kind_of_stations():
    kind = station_kind(ROWS)
    assert kind.stations == POINTS
    assert kind.cycle({}) == 2.0  # (900 − 180) / 360
    assert kind.turns({}) == 1.0
    assert (kind.name, kind.family, kind.opposite) == ("stations", "station pattern", "plane")
    assert [p.name for p in kind.parameters] == [
        "hand_radius", "tether", "plane", "turn", "from", "across", "ahead", "up",
    ]  # fmt: skip
    radius = kind.parameters[0]
    assert (radius.kind, radius.default, radius.low, radius.high) == ("length", 0.2, 0.01, 1.2)
    assert kind.free == (Free("hand_radius", (1.0, 0.75, 0.5, 0.3), (), True),)
    assert kind.room({}) == OffsetLimits()


def test_its_law_takes_every_value():
    body = Body(stature=1.7)
    values = {
        "hand_radius": 0.3, "plane": "wheel", "turn": "clockwise", "from": 20.0, "across": 0.07,
        "ahead": 0.11, "up": -0.05,
    }  # fmt: skip
    wanted = LawContext(side="left", body=body, beats=3.5, tether=0.5)
    assert station_kind(tuple(ROWS)).build(values, wanted) == station_law(
        POINTS, hand_radius=0.3, plane="wheel", turn="clockwise", start=radians(20.0), beats=3.5,
        side="left", body=body, offset=(0.07, 0.11, -0.05),
    )  # fmt: skip


def test_angles_up_to_a_hundred_turns():
    rows = [dict(row) for row in ROWS]
    rows[-1] = {"hand": 36000, "bend": 10, "phase": 35820.0}
    rows[0]["phase"] = -36000 + 180  # both ends of what may be written
    rows[1]["phase"] = 0
    kind = station_kind(rows)
    assert kind.stations[-1].hand == 36000.0
    rows[0] = {"hand": -36000, "bend": 10, "phase": -36000}
    rows[-1] = {"hand": 36000, "bend": 10, "phase": 36000}
    assert station_kind(rows).cycle({}) == 200.0
    for name, value in (("hand", 36000.5), ("phase", -36000.5)):
        wrong = [dict(row) for row in rows]
        wrong[-1 if value > 0 else 0][name] = value
        with pytest.raises(ValueError, match=f"{name} must be -36000 … 36000 degrees"):
            station_kind(wrong)


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ("stations", "must be a list of rows"),
        ({"hand": 0}, "must be a list of rows"),
        ([ROWS[0], 3, ROWS[2]], "station 2 must give hand, bend and phase"),
        ([ROWS[0], ROWS[1], {**ROWS[2], "more": 1}], "station 3 must give hand, bend and phase"),
        ([{"hand": 0, "bend": 0}], "station 1 must give"),
        (ROWS[:2], "at least 3 stations"),
        ([ROWS[0], {**ROWS[1], "bend": "steep"}, ROWS[2]], "bend: 'steep' is not a number"),
    ],
)
def test_what_is_no_list_of_stations(rows, words):
    with pytest.raises(ValueError, match=words):
        station_kind(rows)
