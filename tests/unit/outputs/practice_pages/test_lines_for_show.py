"""Lines that a person may put into the show: only what it does not say already, and nothing of it gets lost."""

import pytest

from sequencer.outputs.practice_pages.lines_for_show import show_lines
from sequencer.practice.practice_plan import practice_plan
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from tests.practice_show import SHOW, made_show, run

LOG = "two.practice.csv"
OFF = {"drift": (0.3, 0.0), "late": 0.3}


def lines(runs, more=""):
    show = show_from_document(parse_document(f"{SHOW}{more}", "two.yaml")).show
    return show_lines(show, practice_plan(made_show(), runs, ("Ada", "Bo")), LOG)


def test_lines_for_the_show_are_offered():
    """Five places 0.3 m off in x: √(0.09/2) = 21 cm in each direction; five timings of 0.3 beats."""
    runs = [*[run(**OFF)] * 4, run(who="Bo", **OFF), run(burn=200.0, fuel="lamp-oil")]
    drift, burns = lines(runs)
    assert drift.startswith("`drift: {place: 21 cm, timing: 0.30 beats}`, from which")
    assert burns.startswith("under `fire:` the line `burns: two.practice.csv`")
    as_it_is = {"drift": (0.15, 0.15), "late": 0.1}
    assert lines([*[run(**as_it_is)] * 4, run(who="Bo", **as_it_is)]) == []
    show = show_from_document(parse_document(f"{SHOW}{drift.split('`')[1]}\n", "two.yaml")).show
    assert (show.drift.place, show.drift.timing) == (0.21, 0.3)


def test_one_who_was_measured_says_nothing_of_the_others():
    assert lines([run(**OFF)] * 9) == []


@pytest.mark.parametrize(
    ("drift", "told"),
    [
        ("{missed: 1 %, people: {Bo: {place: 30 cm}}}", "under `drift:` `place: 21 cm` and `timing: 0.30 beats`, from"),
        ("{place: 21 cm}", "under `drift:` `timing: 0.30 beats`, from"),
    ],
)  # fmt: skip
def test_what_the_show_says_besides_stays(drift, told):
    (line,) = lines([*[run(**OFF)] * 4, run(who="Bo", **OFF)], f"drift: {drift}\n")
    assert line.startswith(told)
    assert line.endswith("; all else there stays")


@pytest.mark.parametrize(
    ("stated", "told"),
    [
        ("{place: 10 cm}", ["under `drift:`, `people:`, Ada: `place: 21 cm`, as measured"]),
        ("{place: 10 cm, timing: 0.1}", ["under `drift:`, `people:`, Ada: `place: 21 cm` and `timing: 0.30 beats`, as measured"]),
        ("{place: 21 cm}", []),  # as measured
        ("{hand: 5 cm}", []),  # place and timing come from the log
    ],
)  # fmt: skip
def test_who_is_stated_otherwise_is_told(stated, told):
    found = lines([run(**OFF)] * 5, f"drift: {{people: {{Ada: {stated}}}}}\n")
    assert [line.partition(";")[0] for line in found] == told
    assert lines([run(**OFF)] * 4, f"drift: {{people: {{Ada: {stated}}}}}\n") == []
