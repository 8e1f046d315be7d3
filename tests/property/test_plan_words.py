"""No two words of a plan lie on one another, however many stand on it, and none lies off it."""

import itertools

import numpy as np
import pytest
from hypothesis import Phase, example, given, settings
from hypothesis import strategies as st

from sequencer.geometry.regions import (
    AudienceEdge,
    Post,
    Region,
    Scenery,
    Venue,
    rectangle,
    round_stage,
    thrust,
)
from sequencer.outputs.plans.formation_strip import FormationTaken, formation_strip
from sequencer.outputs.plans.stage_plan import PlanPicture, stage_plan
from sequencer.timing.tempo import TempoMap

HOLED = Region(((-9, 0), (9, 0), (9, 12), (-9, 12)), holes=(((-1, 5), (1, 5), (1, 7), (-1, 7)),))
STAGES = [
    rectangle(16, 12),
    thrust(14, 6, tongue_width=6, tongue_depth=5),
    round_stage(16),
    HOLED,
    None,
]
AUDIENCES = [
    (AudienceEdge(line=((-14, -8), (14, -8)), name="front rows"),),
    (
        AudienceEdge(line=((-4, -6), (4, -6)), name="front"),
        AudienceEdge(line=((-10, -6), (-10, 4)), name="left bank"),
        AudienceEdge(line=((10, -6), (10, 4)), name="right bank"),
    ),
    (
        AudienceEdge(
            line=tuple(
                (14 * float(np.cos(a)), 8 + 14 * float(np.sin(a)))
                for a in np.linspace(-3.0, 3.0, 40)
            ),
            name="ring",
        ),
    ),
]
NAMES = ("Wren", "Moss", "Juniper of the long shore", "Sable", "Łucja", "Bo", "Wren-Marie")


def boxes(figure):
    """Every word that is drawn, with its box in pixels."""
    figure.draw_without_rendering()
    found = []
    for axes in figure.axes:
        if not axes.get_visible():
            continue
        titles = (axes.title, axes._left_title, axes.xaxis.label, axes.yaxis.label)
        found += [
            (text.get_text(), text.get_window_extent(), axes)
            for text in (*axes.texts, *titles)
            if text.get_visible() and text.get_text()
        ]
    if figure._suptitle is not None:
        found.append((figure._suptitle.get_text(), figure._suptitle.get_window_extent(), None))
    found += [("legend", legend.get_window_extent(), None) for legend in figure.legends]
    return found


def assert_apart(figure):
    """No word lies on another or is cut off; returns the words."""
    found = boxes(figure)
    for (one, a, _), (other, b, _) in itertools.combinations(found, 2):
        across = min(a.x1, b.x1) - max(a.x0, b.x0)
        up = min(a.y1, b.y1) - max(a.y0, b.y0)
        assert across <= 0.5 or up <= 0.5, f"{one!r} lies on {other!r}"
    whole = figure.bbox
    for text, box, _ in found:
        assert box.x0 >= -1, f"{text!r} is cut off"
        assert box.y0 >= -1, f"{text!r} is cut off"
        assert box.x1 <= whole.x1 + 1, f"{text!r} is cut off"
        assert box.y1 <= whole.y1 + 1, f"{text!r} is cut off"
    return {text for text, _, _ in found}


def cast_of(dance, places):
    return [
        dance.dancer(
            f"{NAMES[k % len(NAMES)]} {k}" if k >= len(NAMES) else NAMES[k], place, facing=0.7 * k
        )
        for k, place in enumerate(places)
    ]


PLACES = st.lists(
    st.tuples(
        st.floats(-7, 7).map(lambda v: round(v, 1)), st.floats(0.5, 11).map(lambda v: round(v, 1))
    ),
    min_size=1,
    max_size=40,
)


@settings(max_examples=12, phases=(Phase.explicit, Phase.generate))  # shrinking takes minutes
@example(places=[(0.0, 1.0), (0.0, 11.0)], stage=STAGES[0], audience=AUDIENCES[1])
@given(places=PLACES, stage=st.sampled_from(STAGES), audience=st.sampled_from(AUDIENCES))
def test_words_of_a_plan_stay_apart(dance, places, stage, audience):
    venue = Venue(
        stage=stage,
        audience=audience,
        scenery=(Scenery(name="fountain", region=Region(((2, 7), (3, 7), (3, 9))), height=2.0),),
        posts=(Post(name="Rowan", at=(0, -1)), Post(name="Tarn", at=(-8, 8))),
    )
    picture = PlanPicture(title="A show with a title of some length", required=0.3)
    cast = cast_of(dance, places)
    figure = stage_plan(cast, venue, 3.0, picture=picture)

    said = assert_apart(figure)
    if len(places) > 12:
        assert {str(k + 1) for k in range(len(places))} <= said, "every performer keeps a number"
    else:
        names = {
            each.rpartition(": ")[2] for each in said
        }  # with the mark where it is not beside it
        assert {each.name[:24] for each in cast} <= names, "every performer keeps a name"


def test_a_name_is_nearer_to_its_own_mark_than_to_any_other(dance):
    """Twelve in rows of 1.5 m: whoever reads a name looks at the right circle, or reads which one it is."""
    draw = np.random.default_rng(2)
    names = [
        "Wren",
        "Moss",
        "Juniper",
        "Sable",
        "Ashley",
        "Hazelnut",
        "Linden",
        "Flint",
        "Brook",
        "Tarn",
        "Iris",
        "Cleo",
    ]
    cast = [
        dance.dancer(name, (1.6 * (k % 4) - 2 + float(x), 2.5 + 1.5 * (k // 4) + float(y)))
        for k, (name, (x, y)) in enumerate(
            zip(names, draw.uniform(-0.3, 0.3, (12, 2)), strict=True)
        )
    ]
    venue = Venue(stage=rectangle(16, 12), audience=AUDIENCES[0])
    figure = stage_plan(cast, venue, 0.0, picture=PlanPicture(props=False))
    figure.draw_without_rendering()
    (axes,) = figure.axes
    at = {each.name: axes.transData.transform(each.floor.place) for each in cast}
    named = {text.get_text(): text.get_window_extent() for text in axes.texts}

    assert all(name in named or any(said.endswith(f": {name}") for said in named) for name in names)
    for name in at.keys() & named.keys():
        box = named[name]
        apart = {
            other: np.hypot(max(box.x0 - x, x - box.x1, 0), max(box.y0 - y, y - box.y1, 0))
            for other, (x, y) in at.items()
        }
        assert apart[name] == min(apart.values())


@pytest.mark.parametrize("n", [1, 2, 12, 13, 40])
def test_words_of_a_heap_of_people_stay_apart(dance, n):
    """All in one place: a bad plan, but one that must be read to be mended."""
    venue = Venue(stage=rectangle(10, 8), audience=AUDIENCES[0])
    figure = stage_plan(
        cast_of(dance, [(0.0, 4.0)] * n), venue, 0.0, picture=PlanPicture(required=0.3)
    )

    said = assert_apart(figure)
    if n > 12:
        assert {str(k + 1) for k in range(n)} <= said


@pytest.mark.parametrize("n", [1, 12, 40])
def test_words_of_a_strip_stay_apart(dance, n):
    side = int(np.ceil(np.sqrt(n)))
    places = [(2.0 * (k % side) - side + 1, 1.0 + 1.6 * (k // side)) for k in range(n)]
    rows = [
        FormationTaken(
            name=f"formation {k} with a name", walk=4.0 * k - 2.0 * bool(k), start=4.0 * k
        )
        for k in range(5)
    ]
    figure = formation_strip(
        cast_of(dance, places),
        Venue(stage=rectangle(16, 12), audience=AUDIENCES[0]),
        TempoMap.steady(120, beats=64),
        rows,
        title="A show",
    )

    assert_apart(figure)
