"""A typed line is completed by the show: the exercise, the loop, the day, the fuel."""

from dataclasses import replace

import pytest

from sequencer.errors import InputError, Place
from sequencer.practice.exercises import exercises
from sequencer.practice.log_reading import run_of
from sequencer.practice.log_words import typed_run
from sequencer.practice.practice_log_rows import completed_row, said_of
from sequencer.practice.practice_plan import practice_plan
from sequencer.practice.practice_steps import state_of
from tests.practice_show import ground, made_show

JOIN = "extension into static-spin"


def row(text):
    asked = ground()
    return completed_row(made_show(), typed_run(text, asked.names), asked)


def logged(text):
    """The line that a typed one becomes."""
    return run_of(row(text), ground(), lambda _name: Place("--log"))


def test_the_exercise_is_known_by_its_loop():
    found = row("Ada 6.1 60% 6/8")
    assert found["what"] == JOIN
    assert [found[name] for name in ("date", "from", "until", "lit")] == [
        "2026-11-30",
        "6.1",
        "8.1",
        "no",
    ]
    assert row("Ada 14.1-18.1 60% 6/8")["what"] == "pro-bend-3, two circles"
    assert row("Ada 6.2-8.1 60% 6/8")["what"] == ""  # a beat beside it
    assert row("Ada the whole show 100% 1/1")["what"] == "the whole show"
    whole = exercises(made_show(), "Ada")[-1]
    span = f"{made_show().position(whole.start)}-{made_show().position(whole.end)}"
    assert row(f"Ada {span} 100% 1/1")["what"] == "the whole show"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Ada 6.1-18.1 100% 10/10", f"that loop is none of the plan's; write 6.1-8.1 for {JOIN}"),
        ("Ada 7.3 60% 6/8", f"that loop is none of the plan's; write 6.1-8.1 for {JOIN}"),
        ("Ada 2.1-4.1 100% 3/3", "that loop is none of the plan's; write such as "),
        ("Ada the whole show 2.1-4.1 100% 3/3", "that was not all of it; write 2.1-18.1 for the whole show"),
        ("Ada 60% 6/8", f"it names no loop; write such as 6.1-8.1 for {JOIN}"),
    ],
)  # fmt: skip
def test_a_loop_that_is_no_exercise_counts_for_none_and_that_is_said(text, says):
    line = logged(text)
    assert line.what in {"", "the whole show"}
    (said,) = said_of(made_show(), [line], [line])
    assert said.startswith(f"Ada: this counts for no exercise, {says}")
    assert not [each for each in exercises(made_show(), "Ada") if state_of(each, [line]).tried]
    plan = practice_plan(made_show(), [line], ("Ada",))
    assert (plan.done, {item.behind.done for item in plan.items}) == ((), {0})
    assert plan.uncounted == 1


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
    new = [logged("Ada 6.1 60% 6/8")]
    assert said_of(made_show(), new, new) == [
        f"{JOIN}: next 60 %, unlit, 6 of the last 8 clean so far"
    ]
    assert said_of(made_show(), [logged("Ada 1.1 note warm-up")], []) == []
    bo = [logged("Bo 6.1 100% 8/10")]
    assert said_of(made_show(), bo, bo) == [f"{JOIN}: done"]


def test_one_loop_of_two_exercises_counts_for_both(monkeypatch):
    own = exercises(made_show(), "Ada")
    both = (own[0], replace(own[0], title="another"), *own[1:])
    monkeypatch.setitem(completed_row.__globals__, "exercises", lambda _show, _who: both)
    line = logged("Ada 6.1 60% 6/8")
    assert (line.what, line.start, line.end) == ("", own[0].start, own[0].end)
    said = said_of(made_show(), [line], [line])
    assert [each.partition(":")[0] for each in said] == [JOIN, "another"]
