"""Build steps of what is flown: where the head really is at each station."""

import numpy as np
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from numpy.testing import assert_allclose

from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_cards import steps_text
from sequencer.outputs.patterns.pattern_records import station_record
from sequencer.outputs.patterns.pattern_steps import steps_pages
from sequencer.outputs.station_picture import flat
from tests.repeated import at_length


@pytest.fixture
def raised():
    """A toroid whose flown motion is the drawing, 10 cm higher."""
    place = {"hand_radius": 0.2, "across": 0.1, "ahead": 0.0, "from": -90.0}
    one, higher = (one_pattern("iso-bend-4", {**place, "up": up}) for up in (0.0, 0.1))
    vars(one)["flown_laws"] = higher.laws
    vars(one)["flown"] = {}
    return one


def test_the_head_is_marked_where_it_flies(raised):
    (figure,) = steps_pages(raised)
    stations = raised.stations()
    pictures = figure.axes
    assert len(pictures) == len(stations) - 1 == 8
    for axes, station in zip(pictures, stations, strict=False):
        balls = [
            line.get_xydata()[0] for line in axes.lines if line.get_markerfacecolor() == "white"
        ]
        head = station.hand + 0.51 * station.tether + np.array([0.0, 0.0, 0.1])
        assert min(np.linalg.norm(ball - flat(head)) for ball in balls) < 1e-9
    words = " ".join(text.get_text() for text in figure.texts).replace("\n", " ")
    assert words.count("flown: 10 cm off") == 8
    assert "Open ball: where the head really flies." in words


def test_the_steps_tell_how_far_it_is(raised):
    assert steps_text(raised).count("as flown, the head is 10 cm off the drawing") == 9
    station = raised.stations()[2]
    head = station.hand + 0.51 * station.tether + np.array([0.0, 0.0, 0.1])
    assert_allclose(station_record(raised, station)["flown_head"], head, atol=1e-9)


def test_a_hand_that_comes_later_has_no_mark(raised):
    """The left hand is half a turn on at the beat of a station: it is not there."""
    station = raised.stations("left")[0]
    assert raised.flown_head(station, "left") is None


def test_nothing_is_marked_where_nothing_is_flown():
    one = one_pattern("iso-bend-4", prop="club")
    assert "as flown" not in steps_text(one)
    assert station_record(one, one.stations()[0])["flown_head"] is None
    (figure,) = steps_pages(one)
    assert "Open ball" not in " ".join(text.get_text() for text in figure.texts)


@pytest.mark.parametrize(
    "name", ["pro-bend-3", "pro-bend-4", *at_length("anti-bend-5", "pro-bend-6")]
)
def test_all_steps_stand_on_one_page_in_type_that_can_be_read(name):
    """Odd toroids: one row for each step of the first round, with a second picture where the second round differs."""
    one = one_pattern(name)
    (figure,) = steps_pages(one)
    FigureCanvasAgg(figure).draw()
    lobes = int(one.values("right")["lobes"])
    assert len(figure.axes) == 2 * lobes + (lobes if lobes % 2 else 0)
    boxes = [(text.get_text(), text.get_window_extent()) for text in figure.texts]
    assert min(text.get_fontsize() for text in figure.texts) >= 9
    frames = [axes.get_window_extent() for axes in figure.axes]
    for k, (words, box) in enumerate(boxes):
        assert box.x1 < figure.bbox.width, words
        assert box.y0 > 0, words
        for other in (*(each for _, each in boxes[k + 1 :]), *frames):
            wide = min(box.x1, other.x1) - max(box.x0, other.x0)
            tall = min(box.y1, other.y1) - max(box.y0, other.y0)
            assert wide < 2 or tall < 3, words
