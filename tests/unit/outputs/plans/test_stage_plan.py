"""Plan pictures: what they show, in metres, with letters that are there."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.regions import AudienceEdge, Post, Region, Scenery, Venue, rectangle
from sequencer.motion.performers.walks import Move
from sequencer.outputs.figures import write_figure
from sequencer.outputs.plans.plan_charts import (
    closest_chart,
    flame_map,
    flame_seconds,
)
from sequencer.outputs.plans.plan_extent import extent
from sequencer.outputs.plans.plan_style import fitted_names, shown
from sequencer.outputs.plans.stage_plan import PlanPicture, stage_plan
from sequencer.timing.tempo import TempoMap

VENUE = Venue(
    stage=rectangle(10, 8),
    audience=(AudienceEdge(line=((-20, -7), (20, -7)), name="front rows"),),
    scenery=(Scenery(name="tree", region=Region(((3, 6), (4, 6), (4, 7))), height=2),),
    posts=(Post(name="North", at=(-6, 5)),),
)
TEMPO = TempoMap.steady(120, beats=64)


def words(figure):
    return " ".join(
        text.get_text()
        for axes in figure.axes
        for text in (*axes.texts, axes.title, axes._left_title)
    ).replace("\u00a0", " ")


@pytest.fixture
def two(dance):
    walk = (Move(start=8, end=16, place=(1.2, 4), facing=1.0),)
    return [dance.dancer("Ada", (-2, 4), moves=walk), dance.dancer("Bo 火", (2.6, 4))]


def test_a_plan_names_everyone_and_the_closest_pair(two, tmp_path):
    figure = stage_plan(two, VENUE, 16.0, picture=PlanPicture(title="Plan", required=0.3))

    said = words(figure)
    for part in ("Ada", "Bo □", "tree", "North", "FRONT ROWS", "closest:", "required 0.30 m"):
        assert part in said
    write_figure(figure, tmp_path / "plan.png", dpi=50)
    assert (tmp_path / "plan.png").stat().st_size > 5000


def test_a_plan_is_to_scale(two):
    figure = stage_plan(two, VENUE, 0.0)
    figure.draw_without_rendering()
    across, up = (
        figure.axes[0].transData.transform([(0, 0), (1, 0)]),
        figure.axes[0].transData.transform([(0, 0), (0, 1)]),
    )

    assert_allclose(across[1, 0] - across[0, 0], up[1, 1] - up[0, 1], rtol=1e-6)


def test_everything_lies_in_the_picture(two):
    left, down, right, up = extent(two, VENUE)

    for x, y in (*VENUE.stage.outline, (-6, 5), (4, 7), (0, -7)):
        assert left < x < right
        assert down < y < up


def test_a_plan_of_nobody_and_nothing(dance):
    figure = stage_plan([], Venue(), 0.0, picture=PlanPicture(required=0.3))

    assert "closest" not in words(figure)
    alone = stage_plan([dance.dancer()], Venue(), 0.0, picture=PlanPicture(required=0.3))
    assert "closest" not in words(alone)


def test_flames_cover_what_they_burn_over(dance):
    """A head that stands still for 8 s with a flame of 0.35 m covers π·0.35² m² for 8 s."""
    ada = dance.dancer(
        "Ada", (0, 5), hand_radius=0.0, tether=1e-6, sides=("right",), lit=((0, 16),)
    )
    seconds, x, y = flame_seconds([ada], TEMPO, (-3, 2, 3, 8), start=0, end=32)

    assert_allclose(seconds.max(), 8.0, atol=0.05)
    assert_allclose(seconds.sum() * 0.01 / 8.0, np.pi * 0.35**2, rtol=0.05)
    head = ada.stage_points(0.0)[0][7]
    i, j = np.unravel_index(np.argmax(seconds), seconds.shape)
    assert abs(x[i] - head[0]) < 0.5
    assert abs(y[j] - head[1]) < 0.5


def test_a_map_of_flames_says_seconds(two, tmp_path):
    figure = flame_map(two, VENUE, TEMPO, start=0, end=8, per_beat=8, title="Flames")

    assert any("seconds" in axes.get_ylabel() for axes in figure.axes)
    write_figure(figure, tmp_path / "map.png", dpi=50)
    unlit = flame_map([], VENUE, TEMPO, start=0, end=2, per_beat=2)
    write_figure(unlit, tmp_path / "none.png", dpi=50)


def test_the_chart_marks_what_is_proven(two, tmp_path):
    figure = closest_chart(two, TEMPO, start=0, end=32, required=0.3, title="Closest")

    axes = figure.axes[0]
    assert "0.30 m" in words(figure)
    assert "Ada – Bo □" in words(figure)
    assert len(axes.patches) >= 1
    assert axes.get_xlabel() == "time [s]"
    write_figure(figure, tmp_path / "closest.svg")


def test_a_chart_needs_two(dance):
    with pytest.raises(ValueError, match="at least two"):
        closest_chart([dance.dancer()], TEMPO, start=0, end=8, required=0.3)


def test_names_are_told_apart():
    assert fitted_names(["Ada", "Bo", "Adam"]) == {"Ada": "1", "Bo": "B", "Adam": "Adam"}
    assert shown("Łø עברית 火\n") == "Łø עברית □\n"
