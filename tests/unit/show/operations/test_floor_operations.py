"""Spots, formations, walks: which lines change, and what is refused."""

from sequencer.show.operations.floor_operations import (
    ChangeWalk,
    DeleteFormation,
    DeleteWalk,
    MoveSpot,
    PutWalk,
    RenameFormation,
    SetFormation,
    SetWay,
)
from tests.unit.show.operations.duo import SHOW, lines, refused


def test_a_spot_moves_and_turns():
    assert lines(MoveSpot(formation="wide", who="Ash", at=("3 ft", -1.25)))[1] == (
        "+  wide: {spots: {Ash: {at: [3 ft, -1.25]}, Birch: {at: [2, 4], facing: 90}}}"
    )
    assert (
        "Ash: {at: [1, 2], facing: 45}"
        in lines(MoveSpot(formation="wide", who="Ash", at=(1, 2), facing=45))[1]
    )
    assert "'row' is a line, so nobody has a spot" in refused(
        MoveSpot(formation="row", who="Ash", at=(1, 2))
    )
    assert "there is no 'far' under formations" in refused(
        MoveSpot(formation="far", who="Ash", at=(1, 2))
    )
    assert "'Elm' is not in the cast" in refused(MoveSpot(formation="wide", who="Elm", at=(1, 2)))


def test_formations_are_set_renamed_and_deleted():
    new = SetFormation(
        name="ring", formation={"shape": "circle", "centre": [0, 4], "spacing": "3 m"}
    )
    assert lines(new) == ["+  ring: {shape: circle, centre: [0, 4], spacing: 3 m}"]
    bare = SHOW[: SHOW.index("formations:")]
    assert lines(new, bare) == [
        "+",
        "+formations:",
        "+  ring: {shape: circle, centre: [0, 4], spacing: 3 m}",
    ]
    other = SetFormation(
        name="row", formation={"shape": "line", "centre": [0, 5], "spacing": "3 m"}
    )
    assert lines(other)[1] == "+  row: {shape: line, centre: [0, 5], spacing: 3 m}"
    told = lines(RenameFormation(old="row", new="a row"))
    assert [line[:14] for line in told] == [
        "-  row: {shape",
        "+  a row: {sha",
        "-  - {formatio",
        "+  - {formatio",
    ]
    assert "there is already a 'wide'" in refused(RenameFormation(old="row", new="wide"))
    assert "there is no formation 'row'" in refused(DeleteFormation(name="row"))  # it is taken
    spare = SHOW.replace("  - {formation: row, from: 9.1, beats: 8, via: {Ash: [[0, 3]]}}\n", "")
    assert len(lines(DeleteFormation(name="row"), spare)) == 1


def test_walks_are_put_changed_and_deleted():
    walk = PutWalk(formation="wide", start="20.1", beats=8, via={"Ash": ((0, 1), ("2 ft", 3))})
    assert lines(walk) == [
        "+  - {formation: wide, from: 20.1, beats: 8, via: {Ash: [[0, 1], [2 ft, 3]]}}"
    ]
    assert lines(PutWalk(formation="wide", start="5.1", beats=4, path="curved", before=1)) == [
        "+  - {formation: wide, from: 5.1, beats: 4, path: curved}"
    ]
    assert "there is no formation 'far'" in refused(PutWalk(formation="far", start="20.1"))
    assert "beats: 6, via" in lines(ChangeWalk(number=1, values={"beats": 6}))[1]
    assert lines(DeleteWalk(number=0)) == ["-  - {formation: wide, from: 1.1}"]
    assert "there is no entry 3 of the staging" in refused(DeleteWalk(number=2))


def test_ways_lead_through_points_or_straight():
    assert lines(SetWay(number=1, who="Birch", points=((1, 1),)))[1].endswith(
        "via: {Ash: [[0, 3]], Birch: [[1, 1]]}}"
    )
    assert (
        lines(SetWay(number=0, who="Ash", points=((1, 1),)))[1]
        == "+  - {formation: wide, from: 1.1, via: {Ash: [[1, 1]]}}"
    )
    assert (
        lines(SetWay(number=1, who="Ash", points=()))[1]
        == "+  - {formation: row, from: 9.1, beats: 8}"
    )
    assert lines(SetWay(number=1, who="Birch", points=())) == []
