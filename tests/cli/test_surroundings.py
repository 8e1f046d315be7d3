"""Where a command runs and what reads it: streams that are closed, full or left, other encodings, no settings, odd paths."""

import errno
import io
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from sequencer import __main__ as entry
from sequencer import cli, system_folders
from tests.cli.test_bad_input import assert_refused, run

from .conftest import SHOW

WORDS = [sys.executable, "-m", "sequencer"]
unix = pytest.mark.skipif(sys.platform == "win32", reason="streams are others there")


class Gone(io.StringIO):
    """A pipe whose reader has ended, or a full disk."""

    def __init__(self, number):
        super().__init__()
        self.number = number

    def write(self, _text):
        raise OSError(self.number, os.strerror(self.number))


def entered(monkeypatch, *words):
    """Status of a command as it is started from a shell, with a standard output that takes text only."""
    with monkeypatch.context() as patch:
        patch.setattr(sys, "argv", ["sequencer", *words])
        patch.setattr(sys, "stdout", io.TextIOWrapper(io.BytesIO(), encoding="utf-8"))
        with pytest.raises(SystemExit) as end:
            entry.main()
        sys.stdout.flush()
    return end.value.code or 0


@unix
def test_whoever_stops_reading_is_told_of_no_bug():
    going = subprocess.Popen(
        [*WORDS, "patterns", "--laws"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    )
    going.stdout.close()  # as `| head` does
    assert going.stderr.read() == b""
    assert going.wait() == 141
    going.stderr.close()


@pytest.mark.parametrize("words", [["--help"], ["check", "--help"], ["patterns", "--laws"]])
@pytest.mark.parametrize(
    ("number", "status", "line"),
    [(errno.EPIPE, 141, ""), (errno.ENOSPC, 2, "error: cannot write the output, the disk is full; free some space\n")],
)  # fmt: skip
def test_output_that_nobody_takes(monkeypatch, capsys, words, number, status, line):
    monkeypatch.setattr(sys, "stdout", Gone(number))
    with pytest.raises(SystemExit) as end:
        cli.main(words, prog_name="sequencer")
    assert end.value.code == status
    assert capsys.readouterr().err == line


@pytest.mark.parametrize(
    "words", [["check", "a", "\u202e"], ["\u202e"], ["check", "--\u202e"], ["check", "a", "--danced", "\u202e"], ["--\u202e"]]
)  # fmt: skip
def test_words_that_steer_a_terminal_are_written_out(words):
    result = run(*words)
    assert result.exit_code == 2
    assert "\\u202e" in result.output
    assert "\u202e" not in result.output


def test_a_pipe_that_breaks_elsewhere_is_a_bug(monkeypatch, tmp_path):
    def broken():
        raise BrokenPipeError(errno.EPIPE, "a process died")

    monkeypatch.setattr("sequencer.tasks.schema_text", broken)
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    result = run("new", "--schema")
    assert result.exit_code == 70
    assert result.output.startswith("bug in sequencer (BrokenPipeError); please report it and")


@pytest.mark.parametrize(
    ("number", "names", "said"),
    [
        (errno.ENOSPC, ("a\n.npy",), "write a\\n.npy, the disk is full; free some space"),
        (errno.EDQUOT, (), "write a temporary file, the disk quota is used up; delete what is no longer needed"),
        (errno.EIO, (b"x.wav",), "read or write x.wav, its disk reports a fault; look after that disk, and use another"),
    ],
)  # fmt: skip
def test_a_disk_that_takes_no_more_is_told_with_what_it_did_not_take(
    monkeypatch, number, names, said
):
    def full():
        raise OSError(number, os.strerror(number), *names)

    monkeypatch.setattr("sequencer.tasks.schema_text", full)
    result = run("new", "--schema")
    assert result.exit_code == 2
    assert result.output == f"error: cannot {said}\n"


@pytest.mark.parametrize("refusing", ["pathlib.Path.open", "tempfile.gettempdir"])
def test_a_fault_that_cannot_be_logged_is_told_all_the_same(monkeypatch, refusing):
    def broken():
        raise RuntimeError("made to break")

    def full(*_given, **_more):
        raise OSError(errno.ENOSPC, "no space")

    monkeypatch.setattr("sequencer.tasks.schema_text", broken)
    monkeypatch.setattr(refusing, full)
    result = run("new", "--schema")
    assert result.exit_code == 70
    assert result.output.startswith("bug in sequencer (RuntimeError); please report it; no log")


@unix
def test_closed_streams_have_a_stand_in_and_no_file_takes_their_number(tmp_path):
    """Else what a library writes to standard error would go into that file."""
    child = os.fork()
    if child == 0:  # what fails here ends with another status
        for number in range(3):
            os.close(number)
        sys.stdin = sys.stdout = sys.stderr = None
        entry._open_closed_streams()
        with (tmp_path / "show.yaml").open("wb") as file:
            fine = file.fileno() > 2 and sys.stderr.isatty() is False and sys.stdin.read() == ""
        os.write(2, b"a warning")
        os._exit(0 if fine else 1)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0
    assert (tmp_path / "show.yaml").read_bytes() == b""


@pytest.mark.parametrize("encoding", ["cp1252", "latin-1", "ascii"])
def test_letters_that_an_encoding_lacks_are_written_out(monkeypatch, encoding):
    out = io.TextIOWrapper(io.BytesIO(), encoding=encoding)
    monkeypatch.setattr(sys, "stdout", out)
    entry._write_out_strange_letters()
    sys.stdout.write("é ■ 火 \udcff\n")
    out.flush()
    said = out.buffer.getvalue().decode(encoding)
    assert said.replace("\\xe9", "é") == "é \\u25a0 \\u706b \\udcff\n"


@unix
def test_without_home_terminal_or_language_it_works(stage_folder):
    kept = {key: os.environ[key] for key in ("PYTHONPATH", "XDG_CACHE_HOME") if key in os.environ}
    bare = kept | {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    done = subprocess.run(
        [*WORDS, "check", str(stage_folder / "show.yaml"), "--drawn"],
        env=bare, capture_output=True, check=False,
    )  # fmt: skip
    assert done.returncode in {0, 1}, done.stderr
    assert len(done.stdout.splitlines()) > 5
    assert done.stderr == b""


@unix
def test_a_user_whom_the_system_does_not_know_has_no_home_and_nothing_is_kept(
    stage_folder, monkeypatch
):
    def unknown(_number):
        raise KeyError("getpwuid(): uid not found")

    for name in [each for each in os.environ if each == "HOME" or each.startswith("XDG_")]:
        monkeypatch.delenv(name)
    monkeypatch.setattr("pwd.getpwuid", unknown)
    monkeypatch.chdir(stage_folder)
    (stage_folder / ".sequencer").touch()
    for words in (["listen", "song.wav"], ["check", "show.yaml", "--drawn"], ["check", "show.yaml", "--danced", "2", "--drawn"]):  # fmt: skip
        result = run(*words)
        assert result.exit_code in {0, 1}, result.output
    assert system_folders.cache_folder().parent == Path(os.devnull)
    assert {"/", os.path.realpath(tempfile.gettempdir())} <= system_folders.crowded_folders()


@unix
@pytest.mark.skipif(sys.platform == "darwin", reason="names are UTF-8 there")
def test_paths_with_line_ends_dashes_and_bytes_that_are_no_text(
    stage_folder, tmp_path, monkeypatch
):
    folder = tmp_path / os.fsdecode(b"q\n \xfe")
    folder.mkdir()
    monkeypatch.chdir(folder)
    shutil.copy(stage_folder / "song.wav", "song.wav")
    name = os.fsdecode(b"- a\n\xff.yaml")
    Path(name).write_text(SHOW, encoding="utf-8")
    for verb, *more in (
        ["check", "--drawn"], ["practice"], ["rehearse", "--drawn", "--only", "timetable"], ["pack"], ["trace", "--drawn", "--rate", "1"],
    ):  # fmt: skip
        assert entered(monkeypatch, verb, *more, "--", name) in {0, 1}, verb
    made = {path.name for path in Path("exports").rglob("*") if path.is_file()}
    assert {"practice.html", "timetable.csv", "- a--.zip"} <= made
    assert_refused(run("new", os.fsdecode(b"n\xff.yaml"), "--track", "song.wav"), "are no text")
    assert_refused(
        run("check", os.fsdecode(b"none\xff\n.yaml")), "none\\udcff\\n.yaml: file not found"
    )
