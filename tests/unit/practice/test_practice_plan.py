"""The plan of a small show: what is due, who is behind, what the log says of it."""

from dataclasses import replace

import pytest

from sequencer.outputs.practice_pages.practice_words import behind_words, next_words
from sequencer.practice.exercises import exercises
from sequencer.practice.practice_plan import PracticeItem, practice_plan
from sequencer.practice.practice_steps import state_of
from tests.practice_show import made_show, run

JOIN = "extension into static-spin"


def well(title, who="Ada", **more):
    return run(who=who, what=title, tried=10, clean=10, **more)


def titles(plan):
    return [item.exercise.title for item in plan.items]


def test_a_plan_without_a_log():
    plan = practice_plan(made_show(), [], ("Ada",))
    assert titles(plan) == [
        JOIN, "static-spin into pro-bend-3", "pro-bend-3, two circles", "walk to deep in static-spin", "the whole show",
    ]  # fmt: skip
    assert {item.behind.next_step.words for item in plan.items[:-1]} == {"60 %, unlit"}
    assert (plan.done, plan.waiting, plan.weeks, plan.drifts, plan.spreads, plan.burns) == (
        (),
        0,
        (),
        (),
        (),
        (),
    )


def test_what_is_done_leaves_the_plan():
    """Bo's join is unlit in the show: at tempo it is done. Ada's is lit: fire comes last."""
    show, runs = made_show(), [well(JOIN), well(JOIN, "Bo")]
    assert JOIN not in titles(practice_plan(show, runs, ("Bo",)))
    plan = practice_plan(show, runs, ("Ada", "Bo"))
    item = next(item for item in plan.items if item.exercise.title == JOIN)
    assert [state.done for state in item.states] == [2, 2]
    assert item.behind.next_step.words == "100 %, lit"
    done = practice_plan(show, [*runs, well(JOIN, lit=True)], ("Ada", "Bo"))
    assert [item.exercise.title for item in done.done] == [JOIN]


def test_whoever_is_behind_is_told():
    plan = practice_plan(made_show(), [well(JOIN)], ("Ada", "Bo"))
    item = next(item for item in plan.items if item.exercise.title == JOIN)
    assert item.behind.exercise.who == "Bo"


@pytest.mark.parametrize("lit_first", [True, False])
def test_who_has_a_lit_step_left_is_behind_those_who_are_not_lit(lit_first):
    """All unlit steps came off: who is lit in it has one left, whoever stands first in the cast."""
    runs = [well("a into b"), well("a into b", "Bo")]
    join = replace(own_join(), title="a into b", lit=True)
    states = [
        state_of(join, runs),
        state_of(replace(join, who="Bo", lit=False), runs),
    ]
    item = PracticeItem(states=tuple(states if lit_first else states[::-1]))
    assert [state.done for state in item.states] == [2, 2]
    assert (item.behind.exercise.who, item.all_behind) == ("Ada", ("Ada",))
    assert item.behind.next_step.words == "100 %, lit"
    assert next_words(item) == "100 %, lit (Ada)"
    assert behind_words(item) == "Ada is behind: next 100 %, lit"


def own_join():
    return exercises(made_show(), "Ada")[0]


def test_no_more_than_fits_a_page(monkeypatch):
    monkeypatch.setitem(practice_plan.__globals__["_MOST"], "join", 1)
    plan = practice_plan(made_show(), [], ("Ada",))
    assert [each.exercise.kind for each in plan.items] == ["join", "build", "walk", "run"]
    assert plan.waiting == 1


def test_the_log_is_told_of_those_whose_plan_it_is():
    runs = [
        run(who="Bo", what=JOIN, drift=(0.0, -0.4), late=0.3),
        run(what="a move that was cut", tried=3, clean=3),
        run(burn=200.0, fuel="lamp-oil", lit=True),
    ]
    show = made_show()
    ada, bo = practice_plan(show, runs, ("Ada",)), practice_plan(show, runs, ("Bo",))
    assert (ada.outdated, bo.outdated) == (1, 0)
    assert [each.who for each in bo.spreads] == ["Bo"]
    assert ada.spreads == ()
    assert [each.who for each in ada.burns] == ["Ada"]
    assert bo.burns == ()
    assert ada.place is None
    off = {"drift": (0.3, 0.0)}
    five = practice_plan(show, [*[run(who="Bo", **off)] * 4, run(**off)], ("Ada",))
    assert five.place == pytest.approx((0.09 / 2) ** 0.5)  # of all together
