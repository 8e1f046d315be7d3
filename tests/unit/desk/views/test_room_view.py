"""Where somebody new has room, as a page is told."""

from sequencer.desk.views.room_view import room_view
from sequencer.planning.new_spots import NewSpot
from tests.unit.planning.test_new_spots import OTHERS_LIT, PAIR, cast_in, ring


def told(formations, **venue):
    """What a page is told, by spots as the file says them."""
    tried = cast_in(formations, **venue)

    def as_said(spots):
        show = tried({})
        assert all(set(spot) <= {"at", "facing"} for spot in spots.values())
        return show

    return room_view(tried({}), "Cedar", as_said)


def test_where_there_is_room_is_said_by_what_it_keeps_of_the_picture(monkeypatch):
    monkeypatch.setattr("sequencer.planning.new_spots._too_close", lambda *_: set())
    wedge = {"Ash": (-4, 4, 30), "Birch": (0, 6, 0)}
    found = told({"one": wedge, "two": wedge})
    assert found == {
        "spots": {"one": {"at": [4, 4], "facing": 330}, "two": {"at": [4, 4], "facing": 330}},
        "short": [],
        "words": "Cedar is in the cast, and stands where there is room, mirrored to Ash in one and two.",
    }


def test_where_there_is_none_it_says_so_and_by_how_much():
    found = told({"one": {"Ash": (-1, 2, 0), "Birch": (1, 2, 0)}}, width=4, depth=4)
    assert found["short"] == ["one"]
    assert found["words"].startswith(
        "Cedar is in the cast. Nowhere on the stage is there room for Cedar in one: even where there is most, "
    )
    assert found["words"].endswith(" m are missing. Move others apart on the stage.")


def test_what_the_checks_still_find_is_not_called_room():
    # Whatever is tried, they stand on the others: `told` stages them where they were at first.
    found = told({"one": PAIR | {"Birch": (0, 1, 0)}})
    assert found["short"] == ["one"]
    assert (
        "In one, or on the way there, somebody comes too close: Findings tell who."
        in found["words"]
    )


def test_a_named_shape_without_room_is_told_and_so_is_where_there_is_room():
    tried = cast_in({"one": PAIR}, **ring(1.6))
    found = room_view(tried({}), "Cedar", lambda _: tried({}))
    assert found["short"] == ["one", "ring"]  # they stand on the edge of the stage in one
    found = room_view(tried({}), "Cedar", moved(tried))
    assert found["short"] == ["ring"]
    assert found["words"] == (
        "Cedar is in the cast, and stands where there is room, on the middle line in one. "
        "In ring, or on the way there, somebody comes too close: Findings tell who."
    )


def test_where_nothing_is_kept_of_the_picture_the_formation_is_named_if_another_has_no_room(
    monkeypatch,
):
    monkeypatch.setattr("sequencer.planning.new_spots._too_close", lambda *_: {"ring"})
    monkeypatch.setattr("sequencer.planning.new_spots._pictures", lambda _: iter(()))
    found = told({"one": PAIR, "two": PAIR}, **ring(1.6))
    assert found["words"].startswith(
        "Cedar is in the cast, and stands where there is room in one and two. In ring, "
    )


def test_it_is_said_where_others_burn_that_the_room_is_for_fire():
    tried = cast_in({"one": PAIR}, more=OTHERS_LIT)
    found = room_view(tried({}), "Cedar", moved(tried))
    assert found["words"].endswith(
        " Others burn in this show, so the room is measured as if Cedar burned too."
    )


def moved(tried):
    """Stages spots as the file says them."""
    return lambda spots: tried(
        {name: NewSpot(at=(*spot["at"],), facing=spot.get("facing", 0), how="") for name, spot in spots.items()}
    )  # fmt: skip
