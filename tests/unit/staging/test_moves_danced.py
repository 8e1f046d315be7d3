"""The move at a beat, as a captain would name it."""

import pytest

from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.moves_danced import move_words
from tests.unit.checks.dance.solo import stage

LINES = """\
  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 8, timing: together}
  - {link: true, beats: 2}
  - {pattern: two-beat-weave, cycle: 2, beats: 8, timing: together}
"""


@pytest.mark.parametrize("fly", [False, True])
def test_a_pattern_or_the_link_between_two(fly):
    show = stage(LINES)
    if fly:
        show = flown_show(show).staged
    spans = show.dancers[0].trajectories["left"]
    spans = (spans.drawn if fly else spans).spans
    words = {
        span.kind + span.label: move_words(show, "Ash", (span.start + span.end) / 2)
        for span in spans
    }
    assert words["blockstatic-spin"] == "static-spin"
    assert words["blocktwo-beat-weave"] == "two-beat-weave"
    assert move_words(show, "Ash", 17.0) == "the link from static-spin into two-beat-weave"
    assert move_words(show, "Ash", spans[1].start + 0.1) == "the link from rest into static-spin"
    assert move_words(show, "Ash", spans[-2].end - 0.1) == "the link from two-beat-weave to rest"
    assert move_words(show, "Ash", spans[0].start) == ""


def test_hands_that_dance_different_moves_are_both_named():
    line = "  - {from: 3.1, left: {pattern: static-spin}, right: {pattern: extension}, cycle: 1, beats: 8, timing: together}\n"
    show = stage(line)
    assert move_words(show, "Ash", 10.0) == "static-spin / extension"
