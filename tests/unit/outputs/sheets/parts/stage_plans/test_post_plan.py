"""The small plan of a post: whose a name is, where the post is, and what is behind it, for any places of anybody."""

import math
from io import BytesIO

import pdfplumber
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from sequencer.outputs.sheets.page.free_room import overlap
from sequencer.outputs.sheets.page.paper import DARK_SIZE
from sequencer.outputs.sheets.parts.stage_plans.post_plan import PlanMark, PostPlan, PostScene

WIDE, TALL = 220.0, 95.0
STAGE = ((-8.0, 0.0), (8.0, 0.0), (8.0, 12.0), (-8.0, 12.0))
PLACES = st.tuples(st.floats(-9, 9), st.floats(-3, 13))
NAMES = ("Wren", "Moss", "Juniper", "Sable", "Bartholomew")


def scene(own, watched=(), crew=(), others=(), things=()):
    marks = [
        PlanMark(kind="performer", at=at, words=str(k), name=NAMES[k - 1])
        for k, at in enumerate(watched, start=1)
    ]
    marks.append(PlanMark(kind="you", at=own, words="YOU"))
    marks += [PlanMark(kind="crew", at=at, words="S2 BROOK") for at in crew]
    marks += [PlanMark(kind=kind, at=at) for kind, at in things]
    marks += [PlanMark(kind="other", at=at) for at in others]
    return PostScene(stage=STAGE, audience=(((-14, -8), (14, -8)),), marks=tuple(marks))


def apart(box, x, y):
    """Distance of a point from a box."""
    return math.hypot(max(box[0] - x, x - box[2], 0.0), max(box[1] - y, y - box[3], 0.0))


@settings(max_examples=60)
@example((0.0, -0.5), [(0.0, 4.0)], [], [(5.8, 4.0)], 95.0)  # a ring at the end of the name
@given(
    PLACES,
    st.lists(PLACES, min_size=1, max_size=4),
    st.lists(PLACES, max_size=1),
    st.lists(PLACES, max_size=4),
    st.floats(74, 300),
)
def test_a_name_is_nearer_to_its_own_mark_than_to_any_other(own, watched, crew, others, tall):
    """By a measure of this test's own: the middle of every mark from the box of the name."""
    exits = [("exit", (-20.0, -12.0)), ("extinguisher", (8.0, 5.0))]
    plan = PostPlan(scene(own, watched, crew, others, exits), wide=WIDE, tall=tall)
    boxes = [each.name_box for each in plan.placed if each.name_box is not None]

    for each in plan.placed:
        if each.name_box is None:
            continue
        mine = apart(each.name_box, each.x, each.y)
        for other in plan.placed:
            if other is not each:
                assert mine < apart(each.name_box, other.x, other.y), (each.name, other.mark)
    everything = [*(each.box for each in plan.placed), *boxes]
    for k, box in enumerate(everything):
        assert min(box) >= 0
        assert box[2] <= WIDE
        assert box[3] <= tall
        assert not any(overlap(box, other) for other in everything[k + 1 :])


def test_four_in_a_row_all_have_their_names():
    plan = PostPlan(scene((0.0, -0.5), [(-5.7, 4.5), (-1.9, 4.5), (1.9, 4.5), (5.7, 4.5)]), wide=WIDE, tall=160.0)  # fmt: skip

    assert [each.name for each in plan.placed if each.name] == ["Wren", "Moss", "Juniper", "Sable"]


def test_where_there_is_no_room_a_name_is_left_out_and_the_number_stays():
    crowd = [(0.1 * k, 4.0) for k in range(4)]
    plan = PostPlan(scene((0.0, 3.0), crowd), wide=90.0, tall=74.0)

    assert len([each for each in plan.placed if each.mark.kind == "performer"]) >= 2
    assert len([each for each in plan.placed if each.name]) < 4


@pytest.mark.parametrize("own", [(0.0, -0.5), (-3.0, 2.0), (7.9, -4.0)])
def test_the_post_is_at_the_bottom_and_what_is_behind_it_is_never_drawn_ahead(own):
    behind = [
        ("extinguisher", (own[0] + 0.5, own[1] - 1.0)),
        ("exit", (own[0] - 0.3, own[1] - 9.0)),
    ]
    plan = PostPlan(scene(own, [(0.0, 9.0)], things=behind), wide=WIDE, tall=TALL)
    you = next(each for each in plan.placed if each.mark.kind == "you")

    assert you.box[1] < TALL / 10
    for each in plan.placed:
        if each.mark.kind in {"extinguisher", "exit"}:
            assert each.y <= you.y
        else:
            assert each.y >= you.y


def test_nothing_on_a_plan_is_smaller_than_the_pages_least_type():
    out = BytesIO()
    canvas = Canvas(out, pagesize=(400, 300))
    marks = scene((0.0, -0.5), [(-3, 4), (3, 8)], [(6.3, 9.3)], [(5, 2)], [("exit", (-16, -12))])
    PostPlan(marks, wide=WIDE, tall=TALL).drawOn(canvas, 50, 50)
    canvas.save()
    with pdfplumber.open(out) as pdf:
        letters = pdf.pages[0].chars

    assert {round(each["size"], 2) for each in letters} == {DARK_SIZE}
    words = "".join(each["text"] for each in letters)
    assert all(name in words for name in ("YOU", "Wren", "Moss", "S2 BROOK"))
