"""What a plan says: links that open the loop, drifts, burns, and lines that a person may put into the show."""

import json
from dataclasses import replace
from urllib.parse import parse_qs

import pytest

from sequencer.outputs.practice_pages.practice_page import practice_page
from sequencer.outputs.practice_pages.practice_text import plan_text
from sequencer.outputs.practice_pages.practice_values import plan_json
from sequencer.outputs.practice_pages.practice_words import (
    burn_line,
    item_words,
    loop_address,
    next_words,
    told_lines,
    tries_words,
)
from tests.practice_show import edition, made_show, run

JOIN = "extension into static-spin"
CANON = "pro-bend-3, two circles"
DRIFTED = [
    run(who="Bo", what=CANON, drift=(0.0, -0.4), tried=2, clean=1, late=0.3),
    run(who="Bo", what=CANON, drift=(0.0, -0.3)),
    run(who="Bo", what=CANON, drift=(0.1, -0.5)),
]


def test_a_link_opens_the_loop_slowed():
    item = edition().plan.items[0]
    page, _, asked = loop_address(made_show(), item.exercise, item.behind.next_step).partition("#")
    assert page == "rehearsal.html"
    assert parse_qs(asked) == {"from": ["6.1"], "until": ["8.1"], "speed": ["60"], "for": ["Ada"]}
    named = replace(item.exercise, who="Zoë & Co #1")
    assert parse_qs(loop_address(made_show(), named, item.behind.next_step).partition("#")[2])[
        "for"
    ] == ["Zoë & Co #1"]


def test_a_drift_is_told_where_it_happens():
    lines = told_lines(edition(DRIFTED))
    assert f"Bo drifts 40 cm downstage in the canon, {CANON} (3 of 3 measured runs)" in lines
    assert not any("late" in line for line in lines)  # measured once
    whole = edition(DRIFTED).plan
    waits = replace(whole, items=(), later=whole.items)  # no room for it on the page
    assert told_lines(replace(edition(DRIFTED), plan=waits)) == lines
    late = told_lines(edition([run(late=0.5), run(late=0.25), run(late=0.3)]))
    assert late == ["Ada is 0.35 beats late on average (3 measured runs)"]


def test_signs_that_steer_a_terminal_are_written_out():
    what = "\x1b[31mred\u202egnp"
    plan = edition([run(what=what, drift=(0.0, -0.4))] * 3)
    for text in (plan_text(plan), practice_page(plan)):
        assert r"\x1b[31mred\u202egnp" in text
        assert all(each.isprintable() or each == "\n" for each in text)
    text = plan_json(plan)
    assert all(each.isprintable() or each == "\n" for each in text)
    assert json.loads(text)["drifts"][0]["what"] == what


def test_a_burn_is_told_against_what_the_show_counts_on():
    plan = edition([run(burn=200.0, fuel="lamp-oil"), run(burn=230.5, fuel="lamp-oil")]).plan
    assert burn_line(plan.burns[0]) == (
        "Ada: 2 burns timed, median 3:35, shortest 3:20; count on 3:20. TOO LONG: the show counts on 4:00 (stated)"
    )


def test_a_show_that_must_be_mended_is_not_danced_lit():
    unchecked, clean, faulty = (
        plan_text(replace(edition(), checked=each)).splitlines()[1] for each in (None, True, False)
    )
    assert unchecked == "Not checked here: sequencer check two.yaml says whether it can be danced."
    assert clean == ""
    assert faulty.startswith("DO NOT DANCE THIS LIT YET")
    show = replace(made_show(), show=made_show().show.model_copy(update={"fire": None}))
    unlit = plan_text(replace(edition(), show=show, checked=False)).splitlines()[1]
    assert unlit.startswith("DO NOT DANCE THIS YET")


def test_drifts_for_which_there_is_no_room_are_counted():
    runs = [run(what=what, drift=(0.0, -0.4)) for what in "abcde" for _ in range(3)]
    lines = told_lines(edition(runs))
    assert lines[3] == "and 2 more drifts: --json has all"
    assert not any("more drift" in line for line in told_lines(edition(runs[:9])))


def test_an_item_says_who_why_and_where():
    first, *_ = edition().plan.items
    assert item_words(edition(), first).startswith(
        "everybody; a link of 2 beats; it asks 75 % of your limits"
    )
    alone = edition(who=("Bo",))
    words = {item.exercise.title: item_words(alone, item) for item in alone.plan.items}
    assert words[CANON].endswith("always dance two; in canon")
    behind = edition([run(what=JOIN, tried=10, clean=10)]).plan.items[0]
    assert next_words(behind) == "60 %, unlit (Bo)"
    tried = edition([run(what=JOIN, speed=0.6, tried=8, clean=6)], who=("Ada",)).plan.items[0]
    assert tries_words(tried.behind) == "6 of 8"


@pytest.mark.parametrize("width", [80, 100])
def test_a_plan_fits_the_screen(width):
    text = plan_text(
        edition([*DRIFTED, run(what="cut", tried=1, clean=1)]),
        width=width,
        page="out/two/practice.html",
    )
    lines = text.splitlines()
    assert max(map(len, lines)) <= width
    assert lines[0] == "Practice: Two, version 1"
    assert len(lines) <= 40
    assert '--log "Ada 6.1-8.1 60% 6/8"' in text
    assert "1 line of the log is about what is no longer in the show" in text.replace("\n  ", " ")
    assert (
        "The loops need rehearsal.html beside it: sequencer rehearse two.yaml --only page" in text
    )
    assert "rehearsal.html" not in plan_text(
        replace(edition(), loops="there"), page="out/two/practice.html"
    )
    older = plan_text(replace(edition(), loops="older"), page="out/two/practice.html")
    assert "rehearsal.html is older than the show, write it anew" in older


def test_a_plan_as_json_has_every_figure():
    told = json.loads(plan_json(edition(DRIFTED)))
    assert told["exercises"][0]["title"] == JOIN
    assert (told["exercises"][0]["start"], told["exercises"][0]["end"]) == (
        10.0,
        14.0,
    )  # beats 20 and 28
    assert [each["name"] for each in told["exercises"][0]["who"]] == ["Ada", "Bo"]
    assert told["drifts"][0]["mean"] == pytest.approx([0.1 / 3, -0.4], abs=1e-6)
    assert told["spreads"][0]["timing_about_mean"] is None  # of one run
    assert told["weeks"][0]["monday"] == "2026-11-30"
