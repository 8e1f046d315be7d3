"""A write killed before any of its steps leaves the old file or the new one, and nothing that stops the next run.

`benchmarks/kills.py` does the same with whole verbs.
"""

import sys

import pytest

from tests.killed import contents, faults_after, steps_of

HEAD = "from pathlib import Path\nfrom sequencer.files import making_folder, write_bytes, write_set, write_text\nfrom sequencer.show.text.file_text import DiskText, write_disk_text\n"
WRITES = {
    "text": "write_text(Path('a.yaml'), 'new ' * 900)",
    "bytes": "write_bytes(Path('deep/er/new.bin'), b'new' * 900)",
    "set": "write_set({Path(name): b'new' * 900 for name in ('a.yaml', 'b.pdf', 'c.pdf')})",
    "show": "write_disk_text(Path('link.yaml'), DiskText('new ' * 900, True))",
}
FOLDER = """
if not Path('new').exists():
    with making_folder(Path('new')) as scratch:
        (scratch / 'deep').mkdir()
        for name in ('a', 'deep/b'):
            (scratch / name).write_bytes(b'new' * 900)
"""
HALF = "out = open('a.yaml', 'w')\nout.write('new ' * 400)\nout.flush()\nos.fsync(out.fileno())\nout.write('new ' * 500)\nout.close()"

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="a process ends otherwise there")


@pytest.fixture
def start(tmp_path):
    folder = tmp_path / "start"
    folder.mkdir()
    for name in ("a.yaml", "b.pdf"):
        (folder / name).write_bytes(b"old" * 900)
    (folder / "link.yaml").symlink_to("a.yaml")
    return folder


def faults(start, place, code):
    steps, whole = steps_of(start, place, code)
    assert whole != contents(start)
    return steps, [
        fault
        for at in range(1, len(steps) + 1)
        for fault in faults_after(start, place, at, whole, code) or ()
    ]


@pytest.mark.parametrize("what", WRITES)
def test_the_old_file_or_the_new_one(start, tmp_path, what):
    steps, found = faults(start, tmp_path / "place", HEAD + WRITES[what])
    assert len(steps) >= 5
    assert found == []


def test_no_folder_or_a_whole_one(start, tmp_path):
    steps, found = faults(start, tmp_path / "place", HEAD + FOLDER)
    assert found == []
    assert steps.index("os.rename") > max(k for k, each in enumerate(steps) if each == "open")
    assert steps[: steps.index("os.rename")].count("fsync") >= 2  # its files are on the disk before


def test_a_file_that_is_written_in_place_is_seen(start, tmp_path):
    _, found = faults(start, tmp_path / "place", HALF)
    assert any("neither the old file nor the new one" in fault for fault in found)


@pytest.mark.parametrize("what", WRITES)
def test_it_is_on_the_disk_before_it_takes_the_name(start, tmp_path, what):
    steps, _ = steps_of(start, tmp_path / "place", HEAD + WRITES[what])
    assert steps.index("fsync") < steps.index("os.rename")
    assert steps.count("fsync") >= 2 * steps.count("os.rename")  # the file, and its folder
