"""A practice log is read with its faults, each at its line and column; nothing is guessed."""

import datetime as dt

import pytest

from sequencer.errors import InputError, InputErrors
from sequencer.facts.burn_log import parse_burn_log
from sequencer.practice.log_reading import parse_practice_log, read_practice_log
from tests.practice_show import ground

HEAD = "date,performer,what,from,until,speed,lit,tried,clean,burn,ended,fuel,drift,late,note\n"
GOOD = (
    '2026-11-02,Ada,extension into static-spin,6.1,8.1,60%,no,8,6,,,,"40 cm downstage, 10 cm stage left",,"windy, cold"\n'
    "9.11.2026,bo,the whole show,,,100,yes,1,1,4:05,put out,lamp oil,,-0.25,\n"
)


def read(rows, head=HEAD, **more):
    return parse_practice_log(head + rows, "two.practice.csv", ground(**more))


def test_a_log_is_read():
    first, second = read(GOOD)

    assert (first.date, first.who, first.what) == (
        dt.date(2026, 11, 2),
        "Ada",
        "extension into static-spin",
    )
    assert (first.start, first.end, first.speed, first.lit) == (20.0, 28.0, 0.6, False)
    assert (first.tried, first.clean, first.note, first.line) == (8, 6, "windy, cold", 2)
    assert first.drift == pytest.approx((0.1, -0.4))
    assert first.late is None
    assert (second.date, second.who, second.lit) == (dt.date(2026, 11, 9), "Bo", True)
    assert (second.burn, second.burnt_out, second.fuel) == (245.0, False, "lamp-oil")
    assert (second.start, second.drift, second.late) == (None, None, -0.25)


def test_what_a_spreadsheet_makes_of_it_is_read():
    """A byte order mark, semicolons, commas in numbers, columns moved and added, empty lines, CRLF."""
    rows = "lit;who held;speed;clean;tried;performer;date;late\r\n;Cy;60,0;6;8;Ada;2026-11-02;0,5\r\n;;;;;;;\r\n"
    (one,) = parse_practice_log("\ufeff" + rows, "two.practice.csv", ground())

    assert (one.speed, one.late, one.tried, one.clean, one.lit) == (0.6, 0.5, 8, 6, False)


def test_who_timed_a_burn_was_lit():
    (one,) = read("2026-11-02,Ada,,,,,,,,4:05,,lamp oil,,,\n")
    assert one.lit


def test_a_solo_needs_no_name():
    (one,) = read("2026-11-02,,,,,60,,8,6,,,,,,\n", names=("Ada",))
    assert one.who == "Ada"


@pytest.mark.parametrize(
    ("row", "column", "says"),
    [
        (",Ada,,,,60,,8,6,,,,,,", 1, "the date is missing"),
        ("2026-12-01,Ada,,,,60,,8,6,,,,,,", 1, "2026-12-01 is still to come"),
        ("1999-12-31,Ada,,,,60,,8,6,,,,,,", 1, "too long ago"),
        ("2026-02-30,Ada,,,,60,,8,6,,,,,,", 1, "there is no 2026-02-30"),
        ("11/02/2026,Ada,,,,60,,8,6,,,,,,", 1, "which is the day and which the month"),
        ("Monday,Ada,,,,60,,8,6,,,,,,", 1, "'Monday' is not a date"),
        ("2026-11-02,Adda,,,,60,,8,6,,,,,,", 12, "'Adda' is not in the cast of this show; did you mean 'Ada'"),
        ("2026-11-02,,,,,60,,8,6,,,,,,", 12, "the performer is missing"),
        ("2026-11-02,Ada,,6.9,,60,,8,6,,,,,,", 17, "6.9"),
        ("2026-11-02,Ada,,600.1,,60,,8,6,,,,,,", 17, "outside the track"),
        ("2026-11-02,Ada,,2. Nov,,60,,8,6,,,,,,", 17, "keeps as text"),
        ("2026-11-02,Ada,,8.1,6.1,60,,8,6,,,,,,", 21, "6.1 is not after 8.1"),
        ("2026-11-02,Ada,,,,6,,8,6,,,,,,", 19, "'6' is not a speed in percent"),
        ("2026-11-02,Ada,,,,slow,,8,6,,,,,,", 19, "'slow' is not a speed"),
        ("2026-11-02,Ada,,,,,,8,6,,,,,,", 19, "the speed is missing"),
        ("2026-11-02,Ada,,,,60,maybe,8,6,,,,,,", 22, "'maybe' is not understood here; write yes or no"),
        ("2026-11-02,Ada,,,,60,,8,,,,,,,", 25, "'tried' is 8, and 'clean' is empty"),
        ("2026-11-02,Ada,,,,60,,,6,,,,,,", 23, "'clean' is 6, and 'tried' is empty"),
        ("2026-11-02,Ada,,,,60,,6,8,,,,,,", 25, "8 were clean of 6 tried"),
        ("2026-11-02,Ada,,,,60,,8.5,6,,,,,,", 23, "'8.5' is not a count of tries"),
        ("2026-11-02,Ada,,,,,,,,four,,,,,", 23, "'four' is not a burning time"),
        ("2026-11-02,Ada,,,,,,,,240,,,,,", 28, "the fuel of this burn is missing"),
        ("2026-11-02,Ada,,,,,no,,,240,,lamp oil,,,", 20, "a burn was timed, and 'lit' says no"),
        ("2026-11-02,Ada,,,,,,,,240,,kerosine,,,", 28, "kerosine"),
        ("2026-11-02,Ada,,,,,,,,240,blown,lamp oil,,,", 27, "'blown' is not understood here"),
        ("2026-11-02,Ada,,,,,,,,,,,40 cm,,", 26, "how far and which way"),
        ("2026-11-02,Ada,,,,,,,,,,,,soon,", 27, "'soon' is not a number of beats"),
        ("2026-11-02,Ada,,,,60,,,,,,,,,", 23, "nothing was run on this line"),
        ("2026-11-02,Ada,,,,60,,8,6,,,,,,windy, cold", None, "this line has 16 cells"),
    ],
)  # fmt: skip
def test_a_fault_is_told_at_its_place(row, column, says):
    with pytest.raises(InputError) as told:
        read(GOOD + row + "\n")
    assert told.value.place == ("two.practice.csv", 4, column)
    assert says in str(told.value)
    assert "\n" not in str(told.value)


def test_every_faulty_line_is_told():
    with pytest.raises(InputErrors) as told:
        read("2026-11-02,Zed,,,,60,,8,6,,,,,,\n" + GOOD + "2026-13-01,Zed,,,,60,,8,6,,,,,,\n")
    places = [(each.place.line, each.place.column) for each in told.value.errors]
    assert places == [(2, 12), (5, 1), (5, 12)]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("fuel,burn\n", "no column date and performer"),
        ("", "no column date and performer"),
        ("date,performer,lit,Lit\n", "the column 'lit' twice"),
    ],
)
def test_what_is_no_log_is_refused(text, says):
    with pytest.raises(InputError, match=says):
        parse_practice_log(text, "two.practice.csv", ground())


def test_files_that_cannot_be_read(tmp_path):
    path = tmp_path / "two.practice.csv"
    assert read_practice_log(path, ground()) == ()
    path.write_bytes("date,performer\n2026-11-02,Ad\xe4\n".encode("latin-1"))
    with pytest.raises(InputError, match="not UTF-8"):
        read_practice_log(path, ground())
    path.unlink()
    path.mkdir()
    with pytest.raises(InputError, match="cannot be read"):
        read_practice_log(path, ground())


def test_the_log_is_a_log_of_burns_too():
    """The show may name it under `burns`: lines without a burn are passed over, those with one are read."""
    (burn,) = parse_burn_log(HEAD + GOOD, "two.practice.csv")
    assert (burn.performer, burn.seconds, burn.burnt_out, burn.fuel) == (
        "bo",
        245.0,
        False,
        "lamp-oil",
    )
    with pytest.raises(
        InputError, match="not a burning time"
    ):  # in a log of burns alone a gap is a fault
        parse_burn_log("date,performer,fuel,burn\n2026-11-02,Ada,lamp oil,\n", "burns.csv")
