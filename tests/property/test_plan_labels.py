"""Nothing on a plan lies over anything else, however crowded: any cast, any places, names of any length.

Read back from the PDF with pdfplumber, which knows nothing of how the plan was drawn.
"""

import re
from io import BytesIO
from math import hypot

import pdfplumber
from hypothesis import HealthCheck, Phase, example, given, settings
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from sequencer.findings import Report
from sequencer.outputs.sheets.page.free_room import free_place, is_free, overlap
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import scene_of
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan

PLACE = st.tuples(st.floats(-7, 7), st.floats(0.2, 9))
SHOW = """
title: Crowd
track: {{file: a.ogg}}
venue:
  stage: {{shape: rectangle, width: 16 m, depth: 10 m}}
  audience:
    - {{name: "{edge}", line: [[-9, {front}], [9, {front}]]}}
    - {{name: side, line: [[10, -3], [10, 9]]}}
  scenery: [{{name: "{edge}", outline: [[-1, 4], [1, 4], [1, 5], [-1, 5]], height: 2 m}}]
  exits: [{{name: gate, at: [9, 3]}}]
  gate: [6, 8]
  fire_lane: {{line: [[6, 8], [12, 8]]}}
  spin_off: [[-8, 8], [-6, 8], [-6, 10]]
  extinguishers: [{{at: [-7.5, 2]}}, {{at: [-7.4, 2.1]}}, {{at: [0, 4]}}]
  fuel_station: [-7, 9]
  wind_from: 40
cast:
{cast}
formations:
  One:
    spots:
{spots}
staging: [{{formation: One, from: "1.1"}}]
fire: {{fuel: lamp oil, lit: [{{who: all, from: "3.1", until: "9.1"}}]}}
crew:
  - {{name: "Guard {edge}", post: [-7.5, 2], equipment: [damp towel]}}
  - {{name: Second, post: [7, 2], equipment: [damp towel]}}
"""


def show_of(rounds, folder, places, letters, front):
    names = [(f"P{k} " + "Wolfenbrand " * 20)[:letters].strip() for k in range(1, len(places) + 1)]
    return rounds.show(
        folder,
        SHOW.format(
            edge=("front row of many " * 12)[: letters + 5].strip(),
            front=front,
            cast="\n".join(
                f'  - {{name: "{n}", stature: 1.7 m, prop: {{tether: 0.5 m}}}}' for n in names
            ),
            spots="\n".join(
                f'      "{n}": {{at: [{x:.3f}, {y:.3f}], facing: {k * 37 % 360}}}'
                for k, (n, (x, y)) in enumerate(zip(names, places, strict=True))
            ),
        ),
        name="plan.yaml",
    )


def gap(box, at):
    """Distance of a box from a point."""
    return hypot(max(box[0] - at[0], at[0] - box[2], 0.0), max(box[1] - at[1], at[1] - box[3], 0.0))


def clashes(page):
    """Pairs of letters of different words whose boxes share more than a hair."""
    words = page.extract_words(use_text_flow=False, keep_blank_chars=True, x_tolerance=1.5)
    boxes = [(w["x0"], w["top"] + 1.2, w["x1"], w["bottom"] - 1.2, w["text"]) for w in words]
    return [
        (a[4], b[4])
        for k, a in enumerate(boxes)
        for b in boxes[k + 1 :]
        if overlap(a[:4], b[:4]) and min(a[2], b[2]) - max(a[0], b[0]) > 0.6
    ]


@settings(
    max_examples=20,
    deadline=None,
    phases=(Phase.explicit, Phase.generate),
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@example(places=[(0.0, 1.0)], letters=200, size=(150.0, 120.0), own=False, front=-8.0)
@example(places=[(6.24, 3.49)], letters=3, size=(150.0, 120.0), own=False, front=-8.0)
@given(
    places=st.lists(PLACE, min_size=1, max_size=40),
    letters=st.sampled_from([3, 12, 40, 200]),
    size=st.sampled_from([(150.0, 120.0), (180.0, 190.0), (500.0, 400.0)]),
    own=st.booleans(),
    front=st.sampled_from([-8.0, -1.5]),
)
def test_no_words_of_a_plan_lie_over_others_and_names_stand_by_their_own(
    rounds, tmp_path, places, letters, size, own, front
):
    show = show_of(rounds, tmp_path, places, letters, front)
    edition = Edition(staged=show, report=Report(show="plan.yaml"))
    focus = show.show.names[-1] if own else None
    wide, tall = size
    plan = StagePlan(scene_of(edition, 0, focus=focus, dimensions=not own), tall=tall, wide=wide)
    out = BytesIO()
    canvas = Canvas(out, pagesize=(wide + 40, tall + 80))
    plan.wrap(wide, 1e9)
    plan.drawOn(canvas, 20, 20)
    canvas.save()
    with pdfplumber.open(out) as document:
        page = document.pages[0]
        letters_outside = [
            c["text"] for c in page.chars if c["x0"] < 19 or c["x1"] > wide + 21 or c["size"] < 7.99
        ]
        numbers = [
            "".join(
                c["text"]
                for c in page.chars
                if c["x0"] < x + 20 + r
                and c["x1"] > x + 20 - r
                and abs((c["top"] + c["bottom"]) / 2 - (tall + 80 - 20 - y)) < r
            )
            for (x, y), r in ((at, plan.disc - 1.5) for at in plan.places.values())
        ]

        names = {
            plan.scene.staged.show.names[int(found[1]) - 1]: (
                w["x0"] - 21, w["chars"][0]["matrix"][5] - 22.5, w["x1"] - 19, w["chars"][0]["matrix"][5] - 13.5
            )
            for w in page.extract_words(keep_blank_chars=True, x_tolerance=1.5, return_chars=True)
            if (found := re.match(r"P(\d+)( |$)", w["text"])) and int(found[1]) <= len(places)
        }  # fmt: skip
        assert clashes(page) == []
        assert letters_outside == []
    for name, box in names.items():
        apart = {other: gap(box, at) for other, at in plan.places.items()}
        assert apart[name] == min(apart.values()), f"{name} stands nearer to another's circle"
    half = plan.disc
    discs = [(x - half, y - half, x + half, y + half) for x, y in plan.places.values()]
    assert not any(overlap(a, b) for k, a in enumerate(discs) for b in discs[k + 1 :])
    assert len(discs) == len(places) or plan.left_out
    cast = show.show.names
    assert numbers == [str(cast.index(name) + 1) for name in plan.places]


@given(
    st.lists(st.tuples(st.floats(0, 90), st.floats(0, 90), st.floats(1, 40), st.floats(1, 40)), max_size=12),
    st.tuples(st.floats(-20, 120), st.floats(-20, 120)),
    st.tuples(st.floats(1, 60), st.floats(1, 60)),
)  # fmt: skip
def test_a_place_that_is_found_is_free(boxes, near, size):
    area = (0.0, 0.0, 100.0, 100.0)
    taken = [(x, y, x + w, y + h) for x, y, w, h in boxes]
    middle = free_place(near, size, area, taken)

    if middle is not None:
        x, y = middle
        assert is_free(
            (x - size[0] / 2, y - size[1] / 2, x + size[0] / 2, y + size[1] / 2), area, taken
        )
    elif not taken:
        raise AssertionError("an empty drawing has room")
