"""Plans, strips, signs and marks: where things stand on paper."""

import math
from io import BytesIO

import pytest
from reportlab.pdfgen.canvas import Canvas

from sequencer.facts.signs import signs_for
from sequencer.outputs.sheets import signs
from sequencer.outputs.sheets.edition import Edition
from sequencer.outputs.sheets.formations import nearest, scene_of, ways_to
from sequencer.outputs.sheets.ground import meet
from sequencer.outputs.sheets.plan import StagePlan
from sequencer.outputs.sheets.scene import stage_outline, way_length
from sequencer.outputs.timeline_strip import TimelineStrip


@pytest.fixture(scope="module")
def edition(rounds, tmp_path_factory):
    return Edition(staged=rounds.show(tmp_path_factory.mktemp("plan")), report=rounds.report())


def drawn(flowable, *, room=500.0):
    canvas = Canvas(BytesIO(), pagesize=(600, 800))
    flowable.wrap(room, 700.0)
    flowable.drawOn(canvas, 20, 20)
    return flowable


def test_plan_puts_stage_left_to_the_right_and_upstage_up(edition):
    plan = drawn(StagePlan(scene_of(edition, 0), tall=400.0))
    (x0, y0), (x1, y1) = plan.at(0.0, 0.0), plan.at(2.0, 3.0)

    assert (x1 - x0) / 2.0 == pytest.approx(plan.scale)
    assert (y1 - y0) / 3.0 == pytest.approx(plan.scale)


def test_every_place_lies_on_the_drawing(edition):
    for index in range(3):
        plan = drawn(StagePlan(scene_of(edition, index), tall=300.0))
        for x, y, _ in plan.scene.spots.values():
            px, py = plan.at(x, y)
            assert 0 < px < plan.width
            assert 0 < py < plan.height


def test_labels_and_marks_of_a_plan_keep_clear_of_each_other(edition):
    plan = drawn(StagePlan(scene_of(edition, 1), tall=400.0))
    discs = [plan.at(*spot[:2]) for spot in plan.scene.spots.values()]
    around = [(x - 5, y - 5, x + 5, y + 5) for x, y in discs]
    labels = [box for box in plan.taken if not any(meet(box, disc) for disc in around)]

    assert len(labels) > 6
    clashes = sum(
        meet(a, b) for k, a in enumerate(labels) for b in labels[k + 1 :] if a[2] - a[0] > 18
    )
    assert clashes == 0


def test_a_walk_is_as_long_as_its_way(edition):
    ways = ways_to(edition.staged, edition.staged.standings[1])

    assert way_length(ways["Łucja"]) == pytest.approx(math.hypot(4.5, 0.5), abs=1e-6)
    assert ways_to(edition.staged, edition.staged.standings[0]) == {}


def test_nearest_place_of_a_formation(edition):
    assert nearest(edition.staged.standings[0], "Łucja") == "Søren, 3.0\u00a0m between places"


def test_outline_is_the_stage(edition):
    assert sorted(stage_outline(edition.staged)) == [(-6, 0), (-6, 9), (6, 0), (6, 9)]


def test_seconds_run_evenly_over_the_strip(edition):
    strip = drawn(TimelineStrip(edition))

    assert strip.x(0.0) == pytest.approx(strip.label_room)
    assert strip.x(edition.staged.song.duration) == pytest.approx(strip.width)
    assert strip.x(96.0) == pytest.approx((strip.x(0.0) + strip.x(192.0)) / 2)
    assert strip.x(-5.0) == strip.x(0.0)


def test_a_strip_of_many_lanes_splits_and_keeps_every_lane(rounds, tmp_path):
    text = rounds.crowd(performers=30, blocks=1, letters=12)
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report())
    strip = TimelineStrip(edition)
    _, tall = strip.wrap(500.0, 1e9)
    parts = strip.split(500.0, tall * 0.6)

    assert sum((part.names for part in parts), ()) == edition.staged.show.names
    assert all(part.wrap(500.0, 1e9)[1] < tall for part in parts)
    assert strip.split(500.0, 90.0) == []


@pytest.mark.parametrize("code", signs.CODES)
def test_every_sign_can_be_drawn(code):
    drawn(signs.SignMark(code, 40.0))

    assert signs.SignMark(code, 40.0).wrap(0, 0) == (40.0, 40.0)


def test_an_unknown_sign_is_refused():
    with pytest.raises(ValueError, match="code must be one of"):
        signs.draw_sign(Canvas(BytesIO()), "X999", 0, 0, 10)


def test_fuel_point_signs_are_there():
    """No open flame, no smoking, flammable material, extinguisher: by meaning, ISO 7010 (facts of signs)."""
    assert {sign.code for sign in signs_for("fuel point")} <= set(signs.CODES)
