"""Who stands in the line from a spotter to whom they watch: by hand on the plan."""

import json
import re

import numpy as np
import pytest

from sequencer.checks.fire.at_posts.lines_of_sight import (
    LOOK,
    OUT_OF_SIGHT,
    between,
    hidden_spans,
    lines_of_sight,
)
from tests.sites import site


@pytest.mark.parametrize(
    ("other", "hides"),
    [
        ((0.0, 5.0), True),
        ((0.24, 5.0), True),  # half the breadth, 0.25 m, beside the line
        ((0.26, 5.0), False),
        ((0.0, 11.0), False),  # behind who is watched
        ((0.0, -1.0), False),  # behind the spotter
    ],
)
def test_a_body_in_the_line_hides_the_middle_of_another(other, hides):
    """The line from [0, 0] to [0, 10]."""
    found = between((0.0, 0.0), np.array([[0.0, 10.0]]), np.array([[other]]), np.array([0.25]))

    assert found.shape == (1, 1)
    assert bool(found[0, 0]) is hides


def test_runs_of_looks():
    assert hidden_spans(np.array([True, True, False, True])) == [(0, 1), (3, 3)]
    assert hidden_spans(np.array([False, False])) == []


# Rowan at [0, 14]: Moss stands on the line to Wren, 5 m before her.
LINE = (
    ("Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}", "Wren: {at: [0, 1]}, Moss: {at: [0, 6]}"),
    ("post: [0, 9]", "post: [0, 14]"),
)


def test_who_is_hidden_for_long_is_found_and_the_post_that_is_told_sees_both():
    (found,) = lines_of_sight(site(*LINE)).findings

    assert (found.code, found.severity) == ("sight-hidden", "warn")
    assert found.who == ("Wren", "Rowan", "Moss")
    assert found.message.startswith("Moss stands between Rowan and Wren for ")
    assert found.end - found.start > 160  # from the first of them alight to the last one out
    place = re.search(r"to (\[.*\]):", found.remedies[0])[1]
    assert lines_of_sight(site(LINE[0], ("post: [0, 9]", f"post: {place}"))).findings == ()
    assert json.loads(place) != [0, 14]


@pytest.mark.parametrize(("beside", "found"), [(0.2, 1), (0.3, 0)])
def test_a_step_aside_is_enough(beside, found):
    """Halfway along the line it runs through [0, 6]; Moss, 1.8 m tall, is half a breadth of 0.26 m wide."""
    moved = (LINE[0][0], LINE[0][1].replace("Moss: {at: [0, 6]}", f"Moss: {{at: [{beside}, 6]}}"))

    assert len(lines_of_sight(site(moved, LINE[1])).findings) == found


@pytest.mark.parametrize(("beats", "found"), [(4, 0), (64, 1)])
def test_who_only_walks_past_hides_nobody_for_long(beats, found):
    """Moss walks 2 m across the line, at a stride or, in 32 s, so slowly that he is in it for longer than 3 s.

    120 beats a minute. In the middle of a minimum-jerk walk the speed is 15/8 of the mean.
    """
    width = 2 * 0.5104 / 2 * 1.8 / 1.7562  # over the shoulders of somebody 1.8 m tall
    crossing = width / (2 / (beats / 2) * 15 / 8)
    walk = (
        ("Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}",
         ("Wren: {at: [0, 1]}, Moss: {at: [-1, 6]}}}\n"
         "  past: {spots: {Wren: {at: [0, 1]}, Moss: {at: [1, 6]}}}")),
        ("  - {formation: pair, from: 1.1}\n",
         f"  - {{formation: pair, from: 1.1}}\n  - {{formation: past, from: 9.1, beats: {beats}}}\n"),
        LINE[1],
    )  # fmt: skip

    assert (crossing > OUT_OF_SIGHT + LOOK) is bool(found)
    assert len(lines_of_sight(site(*walk)).findings) == found
