"""Runs some code and kills it, as a power cut would, before one of the things that it does to a folder.

What a process does to files is heard by an audit hook (PEP 578): each file that it opens to write, names anew, takes away or
gives rights to, and each time it asks for the disk. Before the one asked for, the process ends at once, with no clean-up.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

# What lies beside a show while it is open, and is read by the next run or taken away.
WHILE_OPEN = (".journal", ".open")
CHILD = r"""
import os, sys
folder, at = os.path.realpath(sys.argv[1]), int(sys.argv[2])
seen = []

def step(what):
    seen.append(what)
    if len(seen) == at:
        os._exit(137)

def hook(event, given):
    if event == "open":
        path, _mode, flags = given
        if not isinstance(flags, int) or not flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT):
            return
    elif event in {"os.rename", "os.remove", "os.chmod", "os.mkdir", "os.link", "os.truncate"}:
        path = given[0]
    else:
        return
    if isinstance(path, (str, bytes, os.PathLike)) and os.path.realpath(os.fsdecode(path)).startswith(folder + os.sep):
        step(event)

fsync = os.fsync
def counted(handle):
    step("fsync")
    fsync(handle)
os.fsync = counted
sys.addaudithook(hook)
exec(sys.argv[3])
sys.stdout.write(" ".join(seen))
"""


def verb(*words: str) -> str:
    """Code that runs a verb, as if it were written in a terminal."""
    return (
        "from click.testing import CliRunner\nfrom sequencer.cli import main\n"
        f"result = CliRunner().invoke(main, {list(words)!r})\n"
        "assert result.exit_code in {0, 1}, result.output"
    )


def begun(folder: Path, at: int, code: str) -> subprocess.Popen:
    """A process that runs code in a folder, killed before its n-th step, 0 for never."""
    return subprocess.Popen(
        [sys.executable, "-c", CHILD, str(folder), str(at), code],
        cwd=folder, env={**os.environ, "PYTHONPATH": str(Path(__file__).parents[1])},
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip


BEGUN = begun  # benchmarks/kills.py begins processes in a quicker way


def run(folder: Path, at: int, code: str) -> tuple[int, str]:
    """Code run in a folder, killed before its n-th step, 0 for never: its status, and what it told."""
    process = BEGUN(folder, at, code)
    out, told = process.communicate()
    return process.returncode, told or out


def contents(folder: Path) -> dict[str, bytes]:
    """What the files of a folder hold, but those that were being written."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not any(each.startswith(".partial-") for each in path.parts)
    }


def steps_of(start: Path, place: Path, code: str) -> tuple[list[str], dict[str, bytes]]:
    """The steps of a run that nobody kills, and what the folder holds then."""
    folder = fresh(start, place)
    status, told = run(folder, 0, code)
    assert status == 0, told
    return told.split(), contents(folder)


def fresh(start: Path, place: Path) -> Path:
    """A copy of a folder."""
    shutil.rmtree(place, ignore_errors=True)
    shutil.copytree(start, place)
    return place


def faults_after(
    start: Path, place: Path, at: int, whole: dict[str, bytes], code: str
) -> list[str] | None:
    """What is wrong after a run was killed before one step, and another was let run to its end; empty if nothing is.

    None if it ended before, since this time it had less to do.
    """
    folder = fresh(start, place)
    status, told = run(folder, at, code)
    if status == 0 and len(told.split()) < at:
        return None
    if status != 137:
        return [f"step {at}: it was not killed but ended with {status}: {told}"]
    return _faults(start, folder, whole, code, f"step {at}")


def faults_at_random(
    start: Path, place: Path, seconds: float, whole: dict[str, bytes], code: str
) -> list[str] | None:
    """The same after a run was killed by SIGKILL at a moment after its start; None if it had ended."""
    folder = fresh(start, place)
    going = BEGUN(folder, 0, code)
    try:
        going.communicate(timeout=seconds)
    except subprocess.TimeoutExpired:
        going.kill()
        going.communicate()
        return _faults(start, folder, whole, code, f"after {seconds:.2f} s")
    return None


def _faults(start: Path, folder: Path, whole: dict[str, bytes], code: str, when: str) -> list[str]:
    before, now = contents(start), contents(folder)
    found = [
        f"{when}: {name} is neither the old file nor the new one"
        for name, content in now.items()
        if content not in {before.get(name), whole.get(name)} and not name.endswith(WHILE_OPEN)
    ]
    found += [f"{when}: {name} is lost" for name in before if name not in now]
    status, told = run(folder, 0, code)
    if status != 0:
        found.append(f"{when}: the next run ended with {status}: {told}")
    elif contents(folder) != whole:
        found.append(f"{when}: the next run made something else")
    return found
