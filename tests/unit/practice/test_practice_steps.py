"""How far somebody is, counted by hand: the last ten tries, eight clean; lit three of three, and only after tempo."""

from dataclasses import replace

import pytest

from sequencer.practice.exercises import Exercise
from sequencer.practice.practice_steps import state_of, steps_of
from tests.practice_show import run

JOIN = Exercise(
    kind="join", title="a into b", who="Ada", start=20.0, end=28.0, hardness=0.5, why="", lit=True, also=((60.0, 72.0),)
)  # fmt: skip


def tries(*rows):
    """Lines of (day, speed, lit, tried, clean)."""
    return [
        run(day, speed=speed, lit=lit, tried=tried, clean=clean, what="A into B", line=k)
        for k, (day, speed, lit, tried, clean) in enumerate(rows)
    ]


SLOW_WELL, TEMPO_WELL = (2, 0.6, False, 10, 8), (3, 1.0, False, 10, 8)


def test_the_steps_are_slow_tempo_lit():
    words = [step.words for step in steps_of(JOIN)]
    assert words == ["60 %, unlit", "100 %, unlit", "100 %, lit"]
    assert [step.words for step in steps_of(replace(JOIN, lit=False))] == words[:2]
    whole = replace(JOIN, kind="run")
    assert [step.words for step in steps_of(whole)] == ["80 %, unlit", "100 %, unlit", "100 %, lit"]


@pytest.mark.parametrize(
    ("rows", "done", "counted"),
    [
        ([], 0, (0, 0)),
        ([(2, 0.6, False, 8, 8)], 0, (8, 8)),  # too few tries, however well
        ([SLOW_WELL], 1, (0, 0)),
        ([(2, 0.6, False, 10, 7)], 0, (10, 7)),
        # the newest lines count, as many as hold ten tries: 4 of 4 and 6 of 8, not the 0 of 20 before
        ([(2, 0.6, False, 20, 0), (3, 0.6, False, 8, 6), (4, 0.6, False, 4, 4)], 1, (0, 0)),
        ([(2, 0.6, False, 8, 6), (3, 0.6, False, 4, 4), (4, 0.6, False, 20, 0)], 0, (20, 0)),
        ([(2, 0.7, False, 10, 8)], 1, (0, 0)),  # a speed between two steps is the slower one's
        ([(2, 0.55, False, 10, 10)], 0, (0, 0)),
        ([TEMPO_WELL], 2, (0, 0)),  # at tempo shows slow
        ([(3, 1.0, False, 10, 2)], 0, (0, 0)),  # but what fails at tempo says nothing of slow
        ([SLOW_WELL, (3, 1.0, False, 6, 3)], 1, (6, 3)),
        ([(4, 1.0, True, 3, 3)], 0, (0, 0)),  # fire shows nothing of what comes first without it
        ([TEMPO_WELL, (4, 1.0, True, 3, 2)], 2, (3, 2)),
        ([TEMPO_WELL, (4, 1.0, True, 3, 3)], 3, (0, 0)),
    ],
)
def test_the_next_step_follows_from_the_log(rows, done, counted):
    state = state_of(JOIN, tries(*rows))
    assert state.done == done
    assert (state.tried, state.clean) == counted
    assert state.next_step == (steps_of(JOIN)[done] if done < 3 else None)


def test_a_line_is_of_an_exercise_by_its_name_or_else_by_its_loop():
    well = {"speed": 0.6, "tried": 10, "clean": 8}
    own = [
        (run(what="a into b", **well), 1),
        (run(what="a into c", start=20.0, **well), 0),  # its name says what it was
        (run(start=20.5, end=27.5, **well), 1),
        (run(start=60.0, end=72.0, **well), 1),  # where it is danced again
        (run(start=60.0, end=68.0, **well), 0),  # its loop is longer there
        (run(start=24.0, end=28.0, **well), 0),
        (run(start=20.0, end=29.0, **well), 0),  # another loop that begins there
        (run(start=20.0, **well), 0),  # nobody knows of which
        (run(who="Bo", what="a into b", **well), 0),
    ]
    for line, done in own:
        assert state_of(JOIN, [line]).done == done
    assert state_of(JOIN, [own[0][0]]).last == own[0][0].date


@pytest.mark.parametrize(
    ("what", "start", "end", "counts"),
    [
        ("the whole show", None, None, True),
        ("The Whole Show", 20.0, 200.0, True),
        ("", 19.0, 204.0, True),  # and more
        ("", 20.5, 199.5, True),
        ("", 20.0, 28.0, False),  # two bars from the show's first on
        ("the whole show", 20.0, 28.0, False),  # it says itself that it was not
        ("the whole show", 24.0, None, False),
        ("", 21.0, 200.0, False),
        ("", 20.0, 199.0, False),
        ("", 20.0, None, False),
    ],
)
def test_a_loop_is_no_run_of_the_whole_show(what, start, end, counts):
    whole = replace(JOIN, kind="run", title="the whole show", start=20.0, end=200.0, also=())
    runs = [run(what=what, start=start, end=end, tried=3, clean=3)]
    assert state_of(whole, runs).done == (2 if counts else 0)
