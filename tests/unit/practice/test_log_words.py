"""What is typed after a run, in whatever order, as the cells of a line."""

import pytest

from sequencer.errors import InputError
from sequencer.practice.log_words import typed_run

NAMES = ("Ada", "Ada Lee", "Bo")


@pytest.mark.parametrize(
    ("text", "cells"),
    [
        ("Ada 25.1 60% 6/8", {"performer": "Ada", "from": "25.1", "speed": "60", "clean": "6", "tried": "8"}),
        ("ada lee: 25.1-27.1, 6 of 8 clean", {"performer": "Ada Lee", "from": "25.1", "until": "27.1", "clean": "6", "tried": "8"}),
        ("the whole show 100 % 1/1 lit burn 4:05 put out", {
            "what": "the whole show", "speed": "100", "clean": "1", "tried": "1", "lit": "yes", "burn": "4:05", "ended": "put out"}),
        ("Bo 3.1 unlit 40 cm downstage, 10cm stage left late 0.5 beats", {
            "performer": "Bo", "from": "3.1", "lit": "no", "drift": "40 cm downstage, 10cm stage left", "late": "0.5"}),
        ("3.1 early 0.25 on 2026-11-02 note burn 3/4, all of it", {
            "from": "3.1", "late": "-0.25", "date": "2026-11-02", "note": "burn 3/4, all of it"}),
        ("burn 245s", {"burn": "245"}),
        ("Bo 25.1-27.1 at 60%, 6 clean of 8, drifted 40 cm downstage, 28.11.2026", {
            "performer": "Bo", "from": "25.1", "until": "27.1", "speed": "60", "clean": "6", "tried": "8", "drift": "40 cm downstage",
            "date": "28.11.2026"}),
        ("the whole show on place on 1.2.2026", {"what": "the whole show", "drift": "0", "date": "1.2.2026"}),
        ("at 3.1 on my spot", {"from": "3.1", "drift": "0"}),
        ("Ada\u00a06.1\u00a0\n", {"performer": "Ada", "from": "6.1"}),  # spaces of other kinds
    ],
)  # fmt: skip
def test_a_line_is_understood(text, cells):
    assert typed_run(text, NAMES) == cells


@pytest.mark.parametrize(
    ("text", "column", "says"),
    [
        ("Zed 25.1 6/8", 1, "'Zed' is not understood"),
        ("Ada 25.1 sixty 6/8", 10, "'sixty' is not understood"),
        ("Ada 25.1 6/8 7/8", 14, "clean is said twice"),
        ("Ada 25.1 late 0.5 early 0.5", 19, "early is said twice"),
        ("Ada 25.1 40 cm", 10, "'40' is not understood"),
        ("Adam 25.1", 1, "'Adam' is not understood"),
    ],
)
def test_what_is_not_understood_is_told_with_its_column(text, column, says):
    with pytest.raises(InputError) as told:
        typed_run(text, NAMES)
    assert told.value.place == ("--log", 1, column)
    assert says in str(told.value)
