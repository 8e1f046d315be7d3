"""Weeks counted by hand; Monday 2 November 2026 to Sunday 8, a gap, and the week of 16 November."""

import datetime as dt

import pytest

from sequencer.practice.practice_weeks import weeks_of
from tests.practice_show import run


def test_weeks_follow_each_other_without_a_gap():
    runs = [
        run(2, tried=8, clean=6, drift=(0.3, -0.4), speed=0.6),
        run(8, tried=2, clean=1, lit=True),
        run(8, drift=(0.0, 0.1)),
        run(16, tried=5, clean=5, speed=0.98),
    ]
    first, empty, last = weeks_of(runs)

    assert (first.monday, first.days, first.tried, first.clean, first.lit) == (
        dt.date(2026, 11, 2),
        2,
        10,
        7,
        2,
    )
    assert first.share == pytest.approx(0.7)
    assert (first.at_tempo, empty.at_tempo, last.at_tempo) == (2, 0, 5)
    assert first.drift == pytest.approx(0.3)  # of 0.5 and 0.1
    assert (empty.monday, empty.days, empty.tried, empty.share) == (
        dt.date(2026, 11, 9),
        0,
        0,
        None,
    )
    assert (last.monday, last.share, last.drift) == (dt.date(2026, 11, 16), 1.0, None)
    assert weeks_of([]) == ()


def test_weeks_end_today():
    weeks = weeks_of([run(2, tried=1)], dt.date(2026, 11, 30))
    assert [(week.monday.day, week.days) for week in weeks] == [
        (2, 1),
        (9, 0),
        (16, 0),
        (23, 0),
        (30, 0),
    ]
    assert len(weeks_of([run(30, tried=1)], dt.date(2026, 11, 2))) == 1
    assert weeks_of([], dt.date(2026, 11, 30)) == ()
