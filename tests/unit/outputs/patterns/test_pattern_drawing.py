"""Drawn thin, flown thick: which paths a drawing holds, and in which views."""

import numpy as np
import pytest
from matplotlib.collections import LineCollection
from numpy.testing import assert_allclose

from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_drawing import DRAWN, VIEWS, drawn, pattern_figure


def legend(figure):
    return figure._supxlabel.get_text()


@pytest.fixture(scope="module")
def weave():
    return one_pattern("three-beat-weave")


def test_thick_is_flown_and_thin_is_drawn_in_every_view(weave):
    figure = pattern_figure(weave)
    beats = drawn(weave).beats
    law, flown = weave.laws["right"].at(beats), weave.flown["right"].flight(beats)
    for axes, view in zip(figure.axes[:4], VIEWS, strict=True):
        thin = [line for line in axes.lines if len(line.get_xdata()) == len(beats)]
        (line,) = (one for one in thin if one.get_linestyle() == "-")
        assert_allclose(line.get_xydata(), view.flat(law.head(0.51)))
        trail = next(each for each in axes.collections if isinstance(each, LineCollection))
        ends = np.array([piece[0] for piece in trail.get_segments()])
        assert_allclose(ends, view.flat(flown.head)[:-1], atol=2e-3)  # the hand's spline
        # told apart without colour: by width
        assert line.get_linewidth() < min(trail.get_linewidths())
        dashed = [one for one in thin if one.get_linestyle() != "-"]
        assert len({one.get_linewidth() for one in dashed}) == 2  # the hand, drawn and flown
    assert legend(figure).endswith("thick: as flown    thin: as drawn")
    assert "reads clean" in " ".join(text.get_text() for text in figure.texts).replace("\n", " ")


def test_a_drawing_is_as_it_was_where_nothing_is_flown(weave):
    for one in (one_pattern("three-beat-weave", prop="club"), weave):
        shown = drawn(one)
        assert shown.law is None
        assert_allclose(shown.motion.hand, one.laws["right"].at(shown.beats).hand, atol=0)
    figure = pattern_figure(one_pattern("three-beat-weave", prop="club"))
    assert "as flown" not in legend(figure)


def test_a_left_hand_of_its_own_is_told_from_the_right_without_colour():
    figure = pattern_figure(one_pattern("reverse-two-beat-weave"))
    figure.canvas.draw()
    assert legend(figure).endswith("thin: as drawn (left hand: dotted)")
    box = figure._supxlabel.get_window_extent()
    assert figure.bbox.x0 <= box.x0
    assert box.x1 <= figure.bbox.x1
    beats = drawn(one_pattern("reverse-two-beat-weave")).beats
    for axes in figure.axes[:4]:
        thin = [
            line
            for line in axes.lines
            if line.get_color() == DRAWN and len(line.get_xdata()) == len(beats)
        ]
        assert len(thin) == 4  # head and hand of each side
        assert sum(line.get_linestyle() == "-" for line in thin) == 1  # the right head alone
