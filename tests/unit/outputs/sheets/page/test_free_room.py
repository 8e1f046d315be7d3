"""Boxes found by where they lie: the same answers as from every box, and few of many looked at."""

from hypothesis import given, settings
from hypothesis import strategies as st

from sequencer.outputs.sheets.page import free_room
from sequencer.outputs.sheets.page.free_room import Boxes, is_free

AREA = (0.0, 0.0, 400.0, 300.0)
CORNER = st.tuples(
    st.one_of(st.sampled_from([-32.0, 0.0, 32.0, 64.0, 96.0]), st.floats(-50, 420)),
    st.one_of(st.sampled_from([-32.0, 0.0, 32.0, 64.0, 96.0]), st.floats(-50, 320)),
)
BOX = st.builds(
    lambda at, size: (at[0], at[1], at[0] + size[0], at[1] + size[1]),
    CORNER,
    st.tuples(st.sampled_from([0.0, 9.0, 32.0, 90.0]), st.sampled_from([0.0, 9.0, 32.0])),
)


@settings(max_examples=300, deadline=None)
@given(box=BOX, others=st.lists(BOX, max_size=12))
def test_room_is_as_free_as_among_all_boxes(box, others):
    boxes = Boxes(others[:4])
    for each in others[4:]:
        boxes.append(each)

    assert list(boxes) == others
    assert len(boxes) == len(others)
    assert is_free(box, AREA, boxes) is is_free(box, AREA, others)
    shared = [
        each
        for each in others
        if each[0] <= box[2] and box[0] <= each[2] and each[1] <= box[3] and box[1] <= each[3]
    ]
    assert set(shared) <= set(boxes.near(box))


def test_of_many_boxes_only_those_near_are_looked_at(monkeypatch):
    """A field of 40 by 30 marks 20 pt apart: at a mark's own place at most the marks of four squares of 32 pt."""
    looked = []
    overlap = free_room.overlap
    monkeypatch.setattr(free_room, "overlap", lambda *two: looked.append(two) or overlap(*two))
    marks = [(20.0 * k, 20.0 * j, 20.0 * k + 5, 20.0 * j + 5) for k in range(40) for j in range(30)]

    assert is_free((410.0, 308.0, 417.0, 316.0), (0.0, 0.0, 800.0, 600.0), Boxes(marks))
    assert 0 < len(looked) <= 16
