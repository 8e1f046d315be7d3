"""Plans, strips, signs and marks: where things stand on paper."""

import math
from io import BytesIO

import pypdf
import pytest
import shapely
from reportlab.pdfgen.canvas import Canvas

from sequencer.facts.signs import signs_for
from sequencer.outputs.sheets.page import pictograms
from sequencer.outputs.sheets.page.free_room import overlap
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import nearest, scene_of, ways_to
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.outputs.sheets.parts.stage_plans.scene import stage_outline, way_length, window
from sequencer.outputs.sheets.parts.timeline_strip import TimelineStrip
from sequencer.timing.form import song_form


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


SIDES = """
  audience:
    - {line: [[-9, -6], [9, -6]], name: quay side}
    - {line: [[11, -6], [11, 13]], name: ramp side}
    - {line: [[-10, 16], [3, 14]], name: wall top}
    - {line: [[-60, -6], [-60, 13]], name: far bank}
"""


def with_sides(rounds):
    return rounds.ROUND.replace(
        "  audience:\n    - {line: [[-9, -6], [9, -6]], name: audience}\n", SIDES[1:]
    )


def test_every_audience_line_is_on_every_plan(rounds, tmp_path):
    """An edge of the audience that a plan leaves out is where somebody is burnt: drawn, or named at the frame."""
    text = with_sides(rounds)
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report())
    edges = edition.staged.show.venue.audience

    for index in range(3):
        for crew in (True, False):
            scene = scene_of(edition, index, crew=crew)
            view = shapely.box(*window(scene))
            stage = shapely.Polygon(stage_outline(edition.staged))

            assert not shapely.LineString(edges[3].line).intersects(view)
            for edge in edges[:3]:
                line = shapely.LineString(edge.line)
                assert line.intersection(view).distance(stage) == pytest.approx(
                    line.distance(stage)
                )
            out = BytesIO()
            canvas = Canvas(out, pagesize=(600, 800))
            plan = StagePlan(scene, tall=190.0, wide=170.0)
            plan.wrap(170.0, 700.0)
            plan.drawOn(canvas, 20, 20)
            canvas.save()
            words = " ".join(pypdf.PdfReader(out).pages[0].extract_text().split())
            for edge in edges:
                assert edge.name.upper() in words
            assert "FAR BANK, 49 m further" in words.replace("\u00a0", " ")
            assert "ramp side 5.0 m" in words.replace("\u00a0", " ")


def test_no_performers_name_is_lost_on_a_small_plan(rounds, tmp_path):
    edition = Edition(staged=rounds.show(tmp_path, with_sides(rounds)), report=rounds.report())
    for index in range(3):
        out = BytesIO()
        canvas = Canvas(out, pagesize=(600, 800))
        plan = StagePlan(scene_of(edition, index), tall=190.0, wide=180.0)
        plan.wrap(180.0, 700.0)
        plan.drawOn(canvas, 20, 20)
        canvas.save()
        words = pypdf.PdfReader(out).pages[0].extract_text()
        assert "Łucja" in words
        assert "Søren" in words


@pytest.mark.parametrize("focus", ["Łucja", None])
def test_a_line_over_words_leads_only_to_ones_own_name_or_where_names_are_not_told_above(
    edition, monkeypatch, focus
):
    """Every line would run over words, and no name has room at its disc."""
    led = []
    monkeypatch.setattr(StagePlan, "_name_at_disc", lambda *_: False)
    monkeypatch.setattr(StagePlan, "_are_crossed", lambda _plan, _disc, ends: [True] * len(ends))
    monkeypatch.setattr(StagePlan, "_thread", lambda _plan, _canvas, disc, *_: led.append(disc))
    plan = drawn(StagePlan(scene_of(edition, 0, focus=focus), tall=400.0))
    if focus is None:
        assert len(led) == len(plan.places) == 4
    else:
        assert led == [plan.places[focus]]


def test_labels_and_marks_of_a_plan_keep_clear_of_each_other(edition):
    plan = drawn(StagePlan(scene_of(edition, 1), tall=400.0))
    discs = [plan.at(*spot[:2]) for spot in plan.scene.spots.values()]
    around = [(x - 5, y - 5, x + 5, y + 5) for x, y in discs]
    labels = [box for box in plan.taken if not any(overlap(box, disc) for disc in around)]

    assert len(labels) > 6
    clashes = sum(
        overlap(a, b) for k, a in enumerate(labels) for b in labels[k + 1 :] if a[2] - a[0] > 18
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


def test_the_strip_marks_the_fours_of_a_section(edition, monkeypatch):
    """Short strokes where a group of four eights begins inside a section, and nowhere else."""
    lines = []
    monkeypatch.setattr(Canvas, "line", lambda _, *ends: lines.append(ends))
    song = edition.staged.song

    strip = drawn(TimelineStrip(edition))

    inside = {strip.x(group.start) for part in song_form(song) for group in part.groups[1:]}
    assert inside
    strokes = [(x, round(y1 - y0, 3)) for x, y0, x1, y1 in lines if x == x1]
    assert {x for x, tall in strokes if tall == 3} == inside


def test_a_strip_of_many_lanes_splits_and_keeps_every_lane(rounds, tmp_path):
    text = rounds.crowd(performers=30, blocks=1, letters=12)
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report())
    strip = TimelineStrip(edition)
    _, tall = strip.wrap(500.0, 1e9)
    parts = strip.split(500.0, tall * 0.6)

    assert sum((part.names for part in parts), ()) == edition.staged.show.names
    assert all(part.wrap(500.0, 1e9)[1] < tall for part in parts)
    assert strip.split(500.0, 90.0) == []


@pytest.mark.parametrize("code", pictograms.CODES)
def test_every_sign_can_be_drawn(code):
    drawn(pictograms.SignMark(code, 40.0))

    assert pictograms.SignMark(code, 40.0).wrap(0, 0) == (40.0, 40.0)


def test_an_unknown_sign_is_refused():
    with pytest.raises(ValueError, match="code must be one of"):
        pictograms.draw_sign(Canvas(BytesIO()), "X999", 0, 0, 10)


def test_fuel_point_signs_are_there():
    """No open flame, no smoking, flammable material, extinguisher: by meaning, ISO 7010 (facts of signs)."""
    assert {sign.code for sign in signs_for("fuel point")} <= set(pictograms.CODES)


SITE = """
  fire_lane: {line: [[12, 2], [7, 2]], width: 4 m}
  gate: [12, 2]
  spin_off: [[-11, 8], [-9, 8], [-9, 9.5], [-11, 9.5]]
  wind: 3 m/s"""


@pytest.mark.parametrize(
    ("spot", "width", "said", "unsaid"),
    [
        # the nearest of the flames, 火花 at [4.5, 2.5], is hypot(4.5, 3.5) = 5.7 m off, her reach not taken off
        ("[9, 6]", "", "lane gate, does not count", "lane gate,-"),
        ("[14, -9]", ", width: 3 m", "lane gate", "does not count"),
    ],
)
def test_a_site_plan_shows_lane_gate_zone_ways_and_rings(
    rounds, tmp_path, spot, width, said, unsaid
):
    text = rounds.ROUND.replace("\n  wind: 3 m/s", SITE)
    text = text.replace("lane gate, at: [9, 6]", f"lane gate, at: {spot}{width}")
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report())
    scene = scene_of(edition, 0, dimensions=True)
    out = BytesIO()
    canvas = Canvas(out, pagesize=(600, 800))
    plan = StagePlan(scene, tall=500.0)
    plan.wrap(500.0, 700.0)
    plan.drawOn(canvas, 20, 20)
    canvas.save()
    words = pypdf.PdfReader(out).pages[0].extract_text().replace("\u00a0", " ")

    for part in ("fire lane 4.0 m", "spin-off zone", "gate", "6.10 m: no flame, no audience", said):
        assert part in words
    assert unsaid not in words
    left, low, right, high = window(scene)
    for x, y in ((12, 2), (-11, 9.5), tuple(float(v) for v in spot[1:-1].split(","))):
        assert left < x < right
        assert low < y < high


def test_a_changed_lane_or_gate_is_a_changed_plan(rounds, tmp_path):
    """What the sheets compare to mark a plan as changed since the last print."""

    def told(text):
        folder = tmp_path / str(len(list(tmp_path.iterdir())))
        folder.mkdir()
        edition = Edition(staged=rounds.show(folder, text), report=rounds.report())
        return StagePlan(scene_of(edition, 0), tall=300.0).description

    whole = rounds.ROUND.replace("\n  wind: 3 m/s", SITE)
    assert told(whole) == told(whole)
    for old, new in (
        ("width: 4 m}", "width: 3 m}"),
        ("gate: [12, 2]", "gate: [12, 3]"),
        ("[-9, 9.5]", "[-9, 9]"),
    ):
        assert old in whole
        assert told(whole) != told(whole.replace(old, new))
