"""The place of a show file as geometry, and as the rehearsal page draws it."""

import pytest
from shapely import Point

from sequencer.errors import InputError
from sequencer.findings import Report
from sequencer.outputs.rehearsal.page_data import show_document
from tests.unit.staging.test_timeline import SHOW, stage

HOLE = "holes: [[[2, 5], [3, 5], [3, 6], [2, 6]]]"
STAGES = {
    "rectangle": "{shape: rectangle, width: 10 m, depth: 8 m}",
    "round": "{shape: round, width: 10 m}",
    "thrust": "{shape: thrust, width: 10 m, depth: 4 m, tongue_width: 5 m, tongue_depth: 4 m}",
    "outline": "{outline: [[-5, 0], [5, 0], [5, 8], [-5, 8]]}",
}


def shown(text):
    assert STAGES["rectangle"] in SHOW
    return stage(SHOW.replace(STAGES["rectangle"], text))


@pytest.mark.parametrize("shape", STAGES)
def test_a_hole_is_no_stage_whatever_the_shape(shape):
    whole, holed = shown(STAGES[shape]), shown(STAGES[shape][:-1] + f", {HOLE}}}")

    assert whole.venue.stage.polygon.covers(Point(2.5, 5.5))
    assert not holed.venue.stage.polygon.covers(Point(2.5, 5.5))
    assert whole.venue.stage.area - holed.venue.stage.area == pytest.approx(1.0)


@pytest.mark.parametrize("shape", STAGES)
def test_the_page_draws_the_stage_that_is_checked(shape):
    show = shown(STAGES[shape][:-1] + f", {HOLE}}}")
    place = show_document(show, Report(show="s.yaml"))["place"]

    assert place["outline"] == [[round(x, 3), round(y, 3)] for x, y in show.venue.stage.outline]
    assert place["holes"] == [[[2, 5], [3, 5], [3, 6], [2, 6]]]


def test_a_hole_off_the_stage_is_refused():
    with pytest.raises(
        InputError, match=r"s\.yaml:4:\d+: an outline must not cross or touch itself"
    ):
        shown(STAGES["round"][:-1] + ", holes: [[[20, 5], [21, 5], [21, 6]]]}")
