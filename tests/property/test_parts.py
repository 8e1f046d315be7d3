"""A part of a show says what the whole show says of it: states to the last digit, findings word for word.

Findings that a check gives once for a whole show, at the place where they are worst, may stand elsewhere in the whole show:
then the part has one more of a code that the whole show has.
"""

from functools import cache
from pathlib import Path

import numpy as np
import pytest

import sequencer
from sequencer.checks.dance import as_flown
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import check_named
from sequencer.checks.suite import OF_A_PART, checked
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.tasks import PartOfShow, stage_show

SHOWS = Path(__file__).parents[2] / "shows"
# Given once a performer and pattern, or once for what comes nearest in the whole show.
ONCE = {"another-cycle", "flame-near-body", "flown-not-drawn", "hits-floor", "off-stage", "scenery-too-close", "audience-too-close", "post-in-reach", "ceiling-too-low"}  # fmt: skip
IN_PLACE = {
    "strained-as-flown",
    "hits-body-as-flown",
    "props-meet-as-flown",
}  # each told in its place
PARTS = [
    ("wrong_turns", "4.1", "9.1"),
    ("wrong_turns", "11.3", "16.1"),
    ("night_ferry", "refrain 1", "verse 2"),
    ("night_ferry", "48.2", "58.1"),
    ("night_ferry", None, "5.1"),
    ("salt_wind", "0:20", "0:45.5"),
    ("salt_wind", "14.3", None),
    ("lantern_round", "25.1", "33.1"),
]


@cache
def whole(name):
    return sequencer.stage(SHOWS / f"{name}.yaml")


@cache
def said_of(name):
    show = whole(name)
    return sum((check_named(check).outcome(show) for check in OF_A_PART), Outcome())


def part(name, start, until):
    return stage_show(SHOWS / f"{name}.yaml", part=PartOfShow(start=start, until=until))


@pytest.mark.parametrize(("name", "start", "until"), PARTS)
def test_everybody_moves_in_a_part_as_in_the_whole_show(name, start, until):
    show, own = whole(name), part(name, start, until)
    beats = np.linspace(own.part.low, own.part.high, 401)
    assert own.part.low <= own.part.start < own.part.end <= own.part.high
    for a, b in zip(show.dancers, own.dancers, strict=True):
        assert np.array_equal(a.floor.at(beats).place, b.floor.at(beats).place)
        for side, way in a.trajectories.items():
            one, other = way.at(beats), b.trajectories[side].at(beats)
            assert np.array_equal(one.hand, other.hand), (a.name, side)
            assert np.array_equal(one.tether, other.tether), (a.name, side)
            assert np.array_equal(one.plane, other.plane), (a.name, side)


@pytest.mark.parametrize(("name", "start", "until"), PARTS)
def test_a_part_finds_what_the_whole_show_finds_in_it(name, start, until):
    own = part(name, start, until)
    low, high = own.seconds(own.part.start), own.seconds(own.part.end)
    every = said_of(name).findings
    inside = [f for f in every if f.start is not None and low <= f.start and f.end <= high]
    report = checked(own)
    found = [(f.code, f.severity, f.who, f.start, f.end, f.message) for f in report.findings]
    for f in inside:
        if f.code in ONCE:
            assert (f.code, f.who) in [(one[0], one[2]) for one in found], f
        else:
            assert (f.code, f.severity, f.who, f.start, f.end, f.message) in found, f
    known = {(f.code, f.severity, f.who, f.start, f.end, f.message) for f in every}
    for one in found:
        assert one in known or one[0] in ONCE or not low <= one[3] <= one[4] <= high, one
    assert report.part.startswith("bar")
    assert report.not_checked[0].startswith(f"Only {report.part} of the show were looked at")
    assert len(own.blocks) < len(whole(name).blocks)


@pytest.mark.parametrize(("name", "start", "until"), [PARTS[1], PARTS[3]])
def test_a_part_is_flown_as_in_the_whole_show(name, start, until):
    """Head and hand to a billionth of a millimetre; what is told of the flight word for word, for what lies within."""
    show, own = whole(name), part(name, start, until)
    beats = np.linspace(own.part.start, own.part.end, 801)
    for a, b in zip(flown_show(show).staged.dancers, flown_show(own).staged.dancers, strict=True):
        for side, way in a.trajectories.items():
            for path in ("head", "hand"):
                one, other = (getattr(each, path).at(beats) for each in (way, b.trajectories[side]))
                assert np.abs(one - other).max() < 1e-12, (a.name, side, path)
    low, high = own.seconds(own.part.start), own.seconds(own.part.end)

    def within(findings):
        return {
            (each.code, each.who, each.message)
            for each in findings
            if each.code in IN_PLACE and low <= each.start and each.end <= high
        }

    report = checked(own, flown=True)
    assert within(report.findings) == within(as_flown.CHECK.outcome(show).findings)
    assert not any("as drawn" in each for each in report.not_checked[:1])
    assert any("as flown" in each for each in report.not_checked)


def test_what_cannot_be_flown_is_told_of_a_part_only_where_it_is_in_it():
    """The pattern of wrong_turns that is far too slow begins before this part and goes on in it; none of it is in the other."""
    told = {
        start: [
            each.code for each in checked(part("wrong_turns", start, until), flown=True).findings
        ]
        for start, until in (("6.1", "8.1"), ("14.1", "16.1"))
    }
    assert "too-slow-to-fly" in told["6.1"]
    assert "too-slow-to-fly" not in told["14.1"]


def test_the_parts_hold_findings():
    """So that the comparison is one of something."""
    held = 0
    for name, start, until in PARTS:
        own = part(name, start, until)
        low, high = own.seconds(own.part.start), own.seconds(own.part.end)
        held += sum(
            f.start is not None and low <= f.start and f.end <= high for f in said_of(name).findings
        )
    assert held >= 5
