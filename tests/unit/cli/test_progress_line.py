"""The progress line: on a terminal alone, one line that is wiped at the end."""

import io

import pytest

from sequencer.cli import progress_line
from sequencer.cli.progress_line import ProgressLine


class Terminal(io.StringIO):
    def isatty(self):
        return True


class ClosedPipe(Terminal):
    tried = 0

    def write(self, _text):
        self.tried += 1
        raise BrokenPipeError


@pytest.fixture
def clock(monkeypatch):
    """A clock that the test moves."""
    now = [50.0]
    monkeypatch.setattr(progress_line.time, "monotonic", lambda: now[0])
    return now


def test_what_is_done_how_much_and_how_long_it_takes(monkeypatch, clock):
    terminal = Terminal()
    monkeypatch.setattr("sys.stderr", terminal)
    with ProgressLine() as progress:
        for k in range(6):
            progress("printing sheets", 0.1 * k)
            clock[0] += 4.0
    written = terminal.getvalue()
    lines = [line.rstrip() for line in written.split("\r")]
    assert "\n" not in written
    assert lines[1] == "printing sheets …   0%"
    assert lines[4] == "printing sheets …  30%"
    assert lines[6] == "printing sheets …  50%, about 20 s left"
    assert lines[7:] == ["", ""]  # wiped


def test_a_shorter_line_covers_the_longer_one(monkeypatch):
    terminal = Terminal()
    monkeypatch.setattr("sys.stderr", terminal)
    progress = ProgressLine()
    progress("a long subject", 0.0)
    progress("short", 0.5)
    first, second = terminal.getvalue().split("\r")[1:]
    assert len(second) == len(first)


def test_nothing_is_told_where_nobody_watches(monkeypatch):
    pipe = io.StringIO()
    monkeypatch.setattr("sys.stderr", pipe)
    with ProgressLine() as progress:
        progress("checking joins", 0.2)
    assert pipe.getvalue() == ""


def test_a_closed_pipe_is_no_error(monkeypatch):
    closed = ClosedPipe()
    monkeypatch.setattr("sys.stderr", closed)
    with ProgressLine() as progress:
        progress("checking joins", 0.2)
    assert closed.tried
