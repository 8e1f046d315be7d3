"""A typed line is completed by the show: the exercise, the loop, the day, the fuel."""

import pytest

from sequencer.errors import InputError
from sequencer.practice.log_words import typed_run
from sequencer.practice.practice_log_rows import completed_row, said_of
from tests.practice_show import ground, made_show, run


def row(text):
    asked = ground()
    return completed_row(made_show(), typed_run(text, asked.names), asked)


def test_the_exercise_is_known_by_where_its_loop_begins():
    found = row("Ada 6.1 60% 6/8")
    assert found["what"] == "extension into static-spin"
    assert (found["date"], found["from"], found["until"], found["lit"]) == (
        "2026-11-30",
        "6.1",
        "8.1",
        "no",
    )
    assert (
        row("Ada 7.3 60% 6/8")["what"] == "extension into static-spin"
    )  # its loop holds the moment
    assert row("Ada 14.1-18.1 60% 6/8")["what"] == "pro-bend-3, two circles"
    assert row("Ada the whole show 100% 1/1")["what"] == "the whole show"
    assert row("Ada 1.1 60% 6/8")["what"] == ""


def test_what_is_left_out_is_filled_in():
    assert row("Ada 6.1 6/8")["speed"] == "100"
    burnt = row("Ada the whole show lit burn 4:05")
    assert (burnt["fuel"], burnt["speed"]) == ("lamp oil", "")
    assert row("Ada the whole show burn 4:05")["lit"] == "yes"


def test_two_exercises_that_begin_together_are_told_apart():
    with pytest.raises(
        InputError, match=r"2 exercises of Ada begin at 14\.1; write 14\.1-16\.1 .* or 14\.1-18\.1 "
    ):
        row("Ada 14.1 60% 6/8")


def test_how_far_it_is_now_is_said():
    rows = [row("Ada 6.1 60% 6/8")]
    runs = [run(what=rows[0]["what"], speed=0.6, tried=8, clean=6)]
    assert said_of(made_show(), rows, runs) == [
        "extension into static-spin: next 60 %, unlit, 6 of the last 8 clean so far"
    ]
    assert said_of(made_show(), [row("Ada 1.1 note warm-up")], []) == []
    bo = [run(who="Bo", what=rows[0]["what"], tried=10, clean=8)]
    assert said_of(made_show(), [row("Bo 6.1 100% 8/10")], bo) == [
        "extension into static-spin: done"
    ]
