"""Build steps of what is flown: where the head really is at each station."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_cards import steps_text
from sequencer.outputs.patterns.pattern_drawing import VIEWS
from sequencer.outputs.patterns.pattern_records import station_record
from sequencer.outputs.patterns.pattern_steps import steps_figure


@pytest.fixture
def raised():
    """A toroid whose flown motion is the drawing, 10 cm higher."""
    place = {"hand_radius": 0.2, "across": 0.1, "ahead": 0.0, "from": -90.0}
    one, higher = (one_pattern("iso-bend-4", {**place, "up": up}) for up in (0.0, 0.1))
    vars(one)["flown_laws"] = higher.laws
    vars(one)["flown"] = {}
    return one


def test_the_head_is_marked_where_it_flies(raised):
    figure = steps_figure(raised)
    stations = raised.stations()
    pictures = figure.axes
    assert len(pictures) == len(stations) == 9
    for axes, station in zip(pictures, stations, strict=True):
        (ball,) = (line for line in axes.lines if line.get_markerfacecolor() == "white")
        head = station.hand + 0.51 * station.tether + np.array([0.0, 0.0, 0.1])
        assert_allclose(ball.get_xydata()[0], VIEWS[0].flat(head), atol=1e-9)
    words = " ".join(text.get_text() for text in figure.texts).replace("\n", " ")
    assert words.count("flown: 10 cm off") == 9
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
    figure = steps_figure(one)
    assert "Open ball" not in " ".join(text.get_text() for text in figure.texts)
