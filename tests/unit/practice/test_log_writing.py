"""Lines are added and nothing is lost: all that was there stays to the byte, whatever a person has made of the table."""

import errno
import threading
from pathlib import Path

import pytest

from sequencer.errors import InputError
from sequencer.practice.log_reading import parse_practice_log
from sequencer.practice.log_writing import added_to, append_runs
from sequencer.practice.logged_run import LOG_COLUMNS
from tests.practice_show import ground

ROW = {
    "date": "2026-11-30",
    "performer": "Ada",
    "speed": "60",
    "tried": "8",
    "clean": "6",
    "note": "windy, cold",
}


def test_a_log_is_begun():
    text = added_to(None, [ROW], "log.csv")
    assert text == ",".join(LOG_COLUMNS) + '\n2026-11-30,Ada,,,,60,,8,6,,,,,,"windy, cold"\n'
    assert added_to("", [ROW], "log.csv") == text


@pytest.mark.parametrize(
    ("before", "line"),
    [
        ("date,performer,speed,tried,clean,note\n2026-11-02,Bo,60,8,6,\n", '2026-11-30,Ada,60,8,6,"windy, cold"\n'),
        # no line end after the last line; own columns; another order; CRLF, semicolons and a byte order mark
        ("note,who held,date,performer,speed,tried,clean\nx,Cy,2026-11-02,Bo,60,8,6", '\n"windy, cold",,2026-11-30,Ada,60,8,6\n'),
        ("\ufeffdate;performer;speed;tried;clean;note\r\n", "2026-11-30;Ada;60;8;6;windy, cold\r\n"),
        # a line with a slip stays, for a person to mend
        ("date,performer,speed,tried,clean,note\nsometime,Zed,,,,\n", '2026-11-30,Ada,60,8,6,"windy, cold"\n'),
    ],
)  # fmt: skip
def test_what_was_there_stays_to_the_letter(before, line):
    assert added_to(before, [ROW], "log.csv") == before + line


def test_a_value_without_a_column_is_not_dropped(tmp_path):
    path = tmp_path / "log.csv"
    path.write_text("date,performer,speed,tried,clean\n", encoding="utf-8")
    with pytest.raises(
        InputError, match="no column 'note' to write this into; add ,note to its end"
    ):
        append_runs(path, [ROW])
    assert path.read_text(encoding="utf-8") == "date,performer,speed,tried,clean\n"


FULL = {**dict.fromkeys(LOG_COLUMNS, ""), "date": "2026-11-30", "performer": "Ada", "what": "a into b", "from": "6.1", "until": "8.1",
        "speed": "60", "lit": "no", "tried": "8", "clean": "6"}  # fmt: skip


@pytest.mark.parametrize(
    ("header", "more", "says"),
    [
        ("date,performer,what,speed,tried,clean", {}, "2026-11-30,Ada,a into b,60,8,6"),
        ("date,performer,from,until,speed,tried,clean", {}, "2026-11-30,Ada,6.1,8.1,60,8,6"),
        ("date,performer,from,speed,tried,clean", {}, None),  # nobody would know of what it was
        ("date,performer,speed,tried,clean", {}, None),
        ("date,performer,what,speed,tried,clean", {"lit": "yes"}, None),
        ("date,performer,what,speed,tried,clean", {"what": ""}, None),
        ("date,performer,what,tried,clean", {}, None),
    ],
)
def test_a_short_header_takes_what_can_be_known_from_the_rest(header, more, says):
    if says is None:
        with pytest.raises(InputError, match="to write this into"):
            added_to(f"{header}\n", [{**FULL, **more}], "log.csv")
    else:
        assert added_to(f"{header}\n", [{**FULL, **more}], "log.csv") == f"{header}\n{says}\n"


def test_a_log_that_cannot_be_written_is_told_without_advice_that_does_not_help(
    tmp_path, monkeypatch
):
    def full(_self, _content):
        raise OSError(errno.ENOSPC, "")

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(InputError, match="the disk is full; the log lies beside the show") as told:
        append_runs(tmp_path / "log.csv", [ROW])
    assert "--out" not in str(told.value)


def test_a_log_that_is_open_in_a_spreadsheet_is_left_alone(tmp_path):
    path = tmp_path / "log.csv"
    append_runs(path, [ROW])
    before = path.read_bytes()
    (tmp_path / ".~lock.log.csv#").touch()
    with pytest.raises(InputError, match="open in a spreadsheet"):
        append_runs(path, [ROW])
    assert path.read_bytes() == before


def test_a_spreadsheet_marks_the_real_file(tmp_path):
    (tmp_path / "far").mkdir()
    far, path = tmp_path / "far" / "real.csv", tmp_path / "log.csv"
    path.symlink_to(far)
    append_runs(path, [ROW])
    before = far.read_bytes()
    (tmp_path / "far" / ".~lock.real.csv#").touch()
    with pytest.raises(InputError, match=r"open in a spreadsheet.*delete \.~lock\.real\.csv#"):
        append_runs(path, [ROW])
    assert far.read_bytes() == before


@pytest.mark.parametrize(
    ("rows", "line", "column"),
    [
        ('2026-11-02,Bo,60,8,6,"felt good\n', 2, 22),
        ('2026-11-02,Bo,60,8,6,"a\nb"\n2026-11-02,Bo,60,8,6,"felt good', 4, 22),
        ('2026-11-02,"Bo,60,8,6,\n2026-11-03,Bo,60,8,6,\n', 2, 12),
    ],
)
def test_an_open_quote_swallows_no_new_line(rows, line, column):
    before = f"date,performer,speed,tried,clean,note\n{rows}"
    for used in (
        lambda: added_to(before, [ROW], "log.csv"),
        lambda: parse_practice_log(before, "log.csv", ground()),
    ):
        with pytest.raises(InputError, match="opened here and never closed") as told:
            used()
        assert told.value.place == ("log.csv", line, column)


def test_a_closed_quote_may_hold_a_line_end():
    before = 'date,performer,speed,tried,clean,note\n2026-11-02,Bo,60,8,6,"say ""hm""\nagain"\n'
    assert added_to(before, [ROW], "log.csv").startswith(before)


def test_a_link_stays_a_link(tmp_path):
    (tmp_path / "far").mkdir()
    far, path = tmp_path / "far" / "log.csv", tmp_path / "log.csv"
    far.write_text("date,performer,speed,tried,clean,note\n", encoding="utf-8")
    path.symlink_to(far)
    append_runs(path, [ROW])
    assert path.is_symlink()
    assert far.read_text(encoding="utf-8").count("\n") == 2


def test_two_who_write_at_once_both_stand_there(tmp_path):
    path = tmp_path / "log.csv"
    rows = [{**ROW, "note": f"line {k}"} for k in range(16)]
    threads = [threading.Thread(target=append_runs, args=(path, [row])) for row in rows]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    lines = path.read_text(encoding="utf-8").splitlines()
    assert sorted(line.rpartition(",")[2] for line in lines[1:]) == sorted(
        row["note"] for row in rows
    )
