"""The edits that are tried for two who come too close: each with its value, words and cost by hand.

Costs are metres that places move: a place turned by a moves 2r·sin(a/2) (chord of a circle), one spread by
f moves (f − 1)·r; half a metre stands for a beat of shift and for a radian of facing.
"""

import math

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances.spacing import Conflict
from sequencer.planning.edits import danced_edits as danced
from sequencer.planning.edits import floor_edits as floor
from sequencer.planning.edits.space_edits import SpaceEdit
from sequencer.planning.mends import space_mends
from sequencer.staging.staged import Block
from tests.unit.planning.mends.test_space_mends import REACH, SPIN, spots, stage, text_of

WALK = text_of(
    "spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4]}}",
    SPIN,
    more="  there:\n    spots: {Ash: {at: [3, 4]}, Birch: {at: [3, 6]}}\n",
    walk="  - {formation: there, from: 4.1, beats: 16}\n",
)
LINE = text_of("shape: line\n    centre: [0, 4]\n    spacing: 2.01", SPIN)
CANON = text_of(spots(0.9), f"who: [Ash, Birch], from: 3.1, pattern: extension, {REACH}, canon: 1")


def conflict(start=8.0, end=32.0):
    return Conflict(
        first=0, second=1, start=start, end=end, distance=0.1, at=start, spans=((start, end),),
        parts=("head", "head"), where=(0.0, 4.0),
    )  # fmt: skip


@pytest.fixture(scope="module")
def placed():
    return stage(text_of(spots(0.9), SPIN))


def test_spots_are_spread_from_their_middle(placed):
    found = list(floor.widened(placed, conflict()))
    factors = [1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.75, 2.0]
    for factor, edit in zip(factors, found, strict=True):
        (ash, (x, y)), (birch, (u, v)) = edit.changes
        assert ash == ("formations", "close", "spots", "Ash", "at")
        assert birch == ("formations", "close", "spots", "Birch", "at")
        assert_allclose((x, u), (-0.05 - 0.95 * factor, -0.05 + 0.95 * factor), atol=0.0251)
        assert_allclose(np.array([x, u]) / 0.05, np.round(np.array([x, u]) / 0.05), atol=1e-6)
        assert y == v == 4
        assert edit.cost == pytest.approx((factor - 1) * 1.9)
    assert found[0].words == "spread close from its middle: neighbours 2.00 m apart, not 1.90 m"


def test_a_shape_is_spread_by_its_spacing_and_rounded_up():
    found = list(floor.widened(stage(LINE), conflict()))
    assert [edit.changes[0][1] for edit in found] == [
        2.15, 2.25, 2.35, 2.45, 2.65, 2.85, 3.05, 3.55, 4.05,
    ]  # fmt: skip
    assert found[0].changes[0][0] == ("formations", "close", "spacing")
    assert found[0].words == "spread close from its middle: neighbours 2.15 m apart, not 2.01 m"
    assert found[-1].cost == pytest.approx(2.01)


def test_a_shape_is_turned_about_its_centre():
    found = list(floor.turned(stage(LINE), conflict()))
    assert [edit.changes[0] for edit in found] == [
        (("formations", "close", "turn"), angle) for angle in (15, -15, 30, -30, 45, -45, 90)
    ]
    for edit in found:
        half = math.radians(abs(edit.changes[0][1])) / 2
        assert edit.cost == pytest.approx(2 * 2 * 1.005 * math.sin(half))
    assert found[1].words == "turn close 15° clockwise seen from above"
    assert found[0].words == "turn close 15° anticlockwise seen from above"
    assert list(floor.turned(stage(text_of(spots(0.9), SPIN)), conflict())) == []


def test_a_facing_is_turned_within_half_a_turn():
    turned = stage(text_of("spots: {Ash: {at: [-1, 4], facing: 160}, Birch: {at: [1, 4]}}", SPIN))
    found = list(floor.facings(turned, conflict()))
    where = [("formations", "close", "spots", who, "facing") for who in ("Ash", "Birch")]
    assert [edit.changes for edit in found] == [
        ((where[0], value),) for value in (175, 145, -170, 130, -155, 115)
    ] + [((where[1], value),) for value in (15, -15, 30, -30, 45, -45)]
    assert [edit.cost for edit in found[6:]] == pytest.approx(
        [math.pi / 24, math.pi / 24, math.pi / 12, math.pi / 12, math.pi / 8, math.pi / 8]
    )
    assert found[0].words == "turn Ash 15° anticlockwise (seen from above) in close"
    assert found[1].words == "turn Ash 15° clockwise (seen from above) in close"
    assert list(floor.facings(stage(LINE), conflict())) == []


def test_a_canon_stays_a_canon():
    """From one beat: half a beat, one and a half, two and three; none at all would be no canon."""
    found = list(danced.canons(stage(CANON), conflict()))
    assert [(edit.changes[0][1], edit.cost) for edit in found] == [
        (1.5, 0.25), (0.5, 0.25), (2, 0.5), (3, 1.0),
    ]  # fmt: skip
    assert found[0].changes[0][0] == ("timeline", 0, "canon")
    assert found[2].words == "set the canon of extension to 2 beats instead of 1"
    assert list(danced.canons(stage(text_of(spots(0.9), SPIN)), conflict())) == []


def test_one_of_two_who_share_an_entry_is_shifted_in_a_copy(placed):
    found = list(danced.shifts(placed, conflict()))
    assert [edit.insertions[0][2]["who"] for edit in found] == ["Ash"] * 6 + ["Birch"] * 6
    by = [0.5, -0.5, 1, -1, 2, -2]
    assert [edit.insertions[0][2]["shift"] for edit in found] == by * 2
    assert [edit.cost for edit in found[:6]] == [0.25, 0.25, 0.5, 0.5, 1.0, 1.0]
    assert [edit.words.split(" static-spin")[0] for edit in found[:3]] == [
        "let Ash start 0.5 beats further into",
        "let Ash start 0.5 beats earlier in",
        "let Ash start 1 beat further into",
    ]
    assert found[0].changes == ((("timeline", 0, "who"), ["Birch"]),)
    path, index, copied = found[0].insertions[0]
    assert (path, index) == (("timeline",), 1)
    assert (copied["from"], copied["pattern"], copied["beats"]) == ("3.1", "static-spin", "24")


def test_an_entry_of_one_alone_is_shifted_itself():
    alone = stage(
        text_of(spots(0.9), f"who: Ash, shift: 1, {SPIN}}}\n  - {{who: Birch, shift: 1, {SPIN}")
    )
    found = list(danced.shifts(alone, conflict()))
    assert [edit.changes for edit in found] == [
        ((("timeline", k, "shift"), value),) for k in (0, 1) for value in (1.5, 0.5, 2, 0, 3, -1)
    ]
    assert all(edit.insertions == () for edit in found)
    assert list(danced.shifts(alone, conflict(0.0, 8.0))) == []
    assert list(danced.shifts(alone, conflict(32.0, 40.0))) == []


def test_a_mirrored_one_stays_mirrored_in_a_copy():
    both = stage(text_of(spots(0.9), f"mirror: [Ash, Birch], {SPIN}"))
    edit = next(danced.shifts(both, conflict()))
    assert edit.changes == (
        (("timeline", 0, "who"), ["Birch"]),
        (("timeline", 0, "mirror"), ["Birch"]),
    )
    assert edit.insertions[0][2]["mirror"] == "Ash"


def test_a_tether_is_shortened_to_thirty_centimetres_at_least(placed):
    found = list(danced.tethers(placed, conflict()))
    assert [edit.changes[0][1]["tether"] for edit in found] == [0.4, 0.35, 0.3] * 2
    assert [edit.cost for edit in found] == pytest.approx([0.2, 0.4, 0.6] * 2)
    assert [edit.changes[0][0] for edit in found[2:4]] == [("cast", 0, "prop"), ("cast", 1, "prop")]
    assert found[0].words == "Ash's tethers at 0.40 m (now 0.45 m)"


def test_another_plane_for_one_costs_less_than_for_all(placed):
    found = list(danced.planes(placed, conflict()))
    assert {edit.cost for edit in found if edit.words.startswith("let everyone")} == {2.25}
    assert {edit.cost for edit in found if not edit.words.startswith("let everyone")} == {1.5}
    planes = [edit.changes[0][1]["plane"] for edit in found if edit.words.startswith("let every")]
    block = placed.blocks_of("Ash")[0]
    pattern = placed.book["static-spin"]
    choices = next(p.choices for p in pattern.parameters if p.name == "plane")
    now = pattern.values(block.hands["right"].values)["plane"]
    assert planes == [plane for plane in choices if plane != now] * 2


def test_a_walk_is_bent_by_a_point_half_way_to_its_left_and_right():
    """Ash walks 6 m along x; Birch 2 m along y: their lefts are +y and −x."""
    found = list(floor.ways(stage(WALK), conflict(12.0, 28.0)))
    assert len(found) == 6 * 8
    first = [dict(edit.changes[0][1]) for edit in found[:8]]
    ash, birch = ([[0.0, 4.5]], [[0.0, 3.5]]), ([[2.5, 5.0]], [[3.5, 5.0]])
    assert first[:4] == [{"Ash": ash[0]}, {"Ash": ash[1]}, {"Birch": birch[0]}, {"Birch": birch[1]}]
    assert first[4:] == [{"Ash": a, "Birch": b} for a in ash for b in birch]
    assert [edit.cost for edit in found[:8]] == [0.5] * 4 + [1.0] * 4
    assert found[0].changes[0][0] == ("staging", 1, "via")
    assert found[0].words == "walking to there at 4.1, send Ash by [0, 4.5] (via)"
    assert list(floor.ways(stage(WALK), conflict(28.0, 32.0))) == []
    assert list(floor.ways(stage(WALK), conflict(0.0, 12.0))) == []


@pytest.mark.parametrize("angle", np.linspace(0, 330, 12))
def test_half_way_lies_aside_at_a_right_angle(angle):
    """Independent of the direction of the walk: the mid point plus `aside` to the left (complex numbers)."""
    here = complex(1.0, -2.0)
    ahead = 3.0 * complex(math.cos(math.radians(angle)), math.sin(math.radians(angle)))
    expected = here + ahead / 2 + 0.7 * 1j * ahead / 3.0
    there = here + ahead
    found = floor._half_way((here.real, here.imag, 0.0), (there.real, there.imag, 0.0), 0.7)
    assert_allclose(found, (expected.real, expected.imag), atol=0.0251)
    assert_allclose(np.array(found) / 0.05, np.round(np.array(found) / 0.05), atol=1e-6)


def test_formations_between_are_those_held_walked_to_or_left():
    show = stage(WALK)
    names = {
        (low, high): [one.formation for one in floor._formations_between(show, low, high)]
        for low, high in ((0, 12), (0, 13), (12, 28), (28, 32), (29, 32))
    }
    assert names[0, 12] == ["close"]
    assert names[0, 13] == ["close", "there"]
    assert "there" in names[12, 28]
    assert names[29, 32] == names[28, 32] == ["there"]


def test_blocks_that_only_touch_a_conflict_are_not_danced_in_it(placed):
    def within(start, end) -> list[Block]:
        return danced._danced(placed, conflict(start, end), "Ash")

    assert len(within(8.0, 9.0)) == len(within(31.0, 40.0)) == len(within(7.0, 8.1)) == 1
    assert within(4.0, 8.0) == within(32.0, 40.0) == []


def test_the_order_is_that_of_the_cost(placed):
    for kind in space_mends.edits_by_kind(placed, conflict(), span=(0.0, 48.0), required=0.3):
        costs = [edit.cost for edit in kind]
        assert costs == sorted(costs)


@pytest.mark.parametrize("kind", ["shift", "canon", "tether", "plane"])
def test_what_is_danced_changes_with_those_kinds_alone(kind):
    def edit(name):
        return SpaceEdit(kind=name, words="", cost=0.0, changes=())

    assert edit(kind).of_trajectories
    assert not any(edit(k).of_trajectories for k in ("place", "way", "widen", "turn", "facing"))


def test_a_path_is_bent_by_half_metres_up_to_three():
    found = list(floor.ways(stage(WALK), conflict(12.0, 28.0)))
    alone = [edit.cost for edit in found if len(edit.changes[0][1]) == 1]
    assert sorted(set(alone)) == [0.5, 1.0, 1.5, 2.0, 2.5, 3.0]
    assert len(alone) == 6 * 4


@pytest.mark.parametrize(("far", "walks"), [(0.4, False), (0.6, True), (1.4, True)])
def test_only_who_walks_more_than_half_a_metre_can_be_sent_round(far, walks):
    text = WALK.replace("Birch: {at: [3, 6]}", f"Birch: {{at: [3, {4 + far}]}}")
    found = list(floor.ways(stage(text), conflict(12.0, 28.0)))
    assert any("Birch" in edit.changes[0][1] for edit in found) == walks
