"""A show file on disk: what is written is the file itself, wherever its name leads, and only what was changed is other."""

import os
import stat
import sys

import pytest

from sequencer.show.text.file_text import DiskText, disk_text, write_disk_text

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "real" / "show.yaml"
    path.parent.mkdir()
    path.write_bytes(b"\xef\xbb\xbftitle: One\r\n# mine\r\n")
    path.chmod(0o640)
    return path


def test_a_link_stays_one_and_its_file_is_written(file, tmp_path):
    link, again = tmp_path / "link.yaml", tmp_path / "again.yaml"
    link.symlink_to("real/show.yaml")
    again.symlink_to(link)
    said = disk_text(again)
    write_disk_text(again, DiskText(said.text.replace("One", "Two"), said.marked))
    assert (link.is_symlink(), again.is_symlink()) == (True, True)
    assert file.read_bytes() == b"\xef\xbb\xbftitle: Two\r\n# mine\r\n"
    assert stat.S_IMODE(file.stat().st_mode) == 0o640


def test_a_second_name_keeps_the_old_text(file, tmp_path):
    """As docs/strangers.md says: a new file takes the name, so that a power cut leaves the old one or the new one."""
    os.link(file, tmp_path / "backup.yaml")
    write_disk_text(file, DiskText("title: Two\n"))
    assert file.read_bytes() == b"title: Two\n"
    assert disk_text(tmp_path / "backup.yaml").text == "title: One\r\n# mine\r\n"


def test_a_link_to_nowhere_gets_a_file_there(tmp_path):
    (tmp_path / "link.yaml").symlink_to("new.yaml")
    write_disk_text(tmp_path / "link.yaml", DiskText("title: Two\n"))
    assert (tmp_path / "link.yaml").is_symlink()
    assert (tmp_path / "new.yaml").read_bytes() == b"title: Two\n"
