"""Versions of a show as files beside it."""

import os
from unittest import mock

import pytest

from sequencer.desk.file.kept_versions import KeptVersions, spelled_name
from sequencer.errors import InputError
from sequencer.show.text.file_text import DiskText

FINDING = {
    "code": "too-close", "severity": "warn", "who": ["Ash"], "start": 1.0, "end": 2.0, "position": "1.3", "message": "near",
    "id": "too-close Ash", "mends": [], "as": "flown", "paths": [],
}  # fmt: skip


@pytest.fixture
def show(tmp_path):
    path = tmp_path / "mine.yaml"
    path.write_text("title: Mine\n", encoding="utf-8")
    return path


def test_a_version_is_a_whole_show_file_beside_the_show(show):
    kept = KeptVersions(show)
    kept.keep(" before  the rehearsal ", DiskText("title: Mine\r\n", marked=True))
    path = show.with_name("mine (before the rehearsal).yaml")
    assert path.read_bytes() == b"\xef\xbb\xbftitle: Mine\r\n"
    assert [each.name for each in kept.all()] == ["before the rehearsal"]
    assert kept.said("before the rehearsal") == DiskText("title: Mine\r\n", marked=True)
    assert {each.name for each in show.parent.iterdir()} == {show.name, path.name}


def test_none_is_overwritten_unless_that_is_wanted(show):
    kept = KeptVersions(show)
    kept.keep("duo", DiskText("a: 1\n"))
    for name in ("duo", "Duo"):
        with pytest.raises(InputError, match="there is a version “duo” already"):
            kept.keep(name, DiskText("b: 2\n"))
    assert kept.said("duo").text == "a: 1\n"
    kept.keep("duo", DiskText("b: 2\n"), replace=True)
    assert kept.said("duo").text == "b: 2\n"


@pytest.mark.parametrize("links", [True, False])
def test_a_file_that_comes_meanwhile_stays(show, links):
    path = show.with_name("mine (duo).yaml")
    path.write_text("somebody's", encoding="utf-8")
    kept = KeptVersions(show)
    refuse = mock.patch.object(os, "link", side_effect=PermissionError)
    with (
        mock.patch.object(KeptVersions, "all", return_value=[]),
        refuse if not links else mock.patch.object(os, "link", os.link),
        pytest.raises(InputError, match="already"),
    ):
        kept.keep("duo", DiskText("b: 2\n"))
    assert path.read_text(encoding="utf-8") == "somebody's"
    assert len(list(show.parent.iterdir())) == 2


def test_it_is_kept_where_there_are_no_links(show):
    with mock.patch.object(os, "link", side_effect=PermissionError):
        KeptVersions(show).keep("duo", DiskText("b: 2\n"))
    assert show.with_name("mine (duo).yaml").read_text(encoding="utf-8") == "b: 2\n"


def test_copies_made_by_hand_are_versions_and_other_files_are_not(show):
    for name in ("mine (2).yaml", "mine (a (b)).yaml", "mine (a) (b).yaml", "mine ().yaml", "mine.bak.yaml", "mine (x).yml", "yours (2).yaml"):  # fmt: skip
        show.with_name(name).write_text("a: 1\n", encoding="utf-8")
    assert sorted(each.name for each in KeptVersions(show).all()) == ["2", "a (b)"]


def test_what_the_checks_said_counts_for_the_same_text_only(show):
    kept = KeptVersions(show)
    kept.keep("duo", DiskText("a: 1\n"), {"findings": [FINDING], "unseen": ["the wind"]})
    found = kept.findings("duo", "a: 1\n")
    assert [(each.code, each.who, each.message) for each in found.findings] == [
        ("too-close", ("Ash",), "near")
    ]
    assert found.unseen == ("the wind",)
    assert kept.findings("duo", "a: 2\n") is None
    kept.keep("duo", DiskText("a: 1\n"), replace=True)  # not checked this time
    assert kept.findings("duo", "a: 1\n") is None
    kept.delete("duo")
    assert [each.name for each in show.parent.iterdir()] == [show.name]


@pytest.mark.parametrize(
    "name", ["", "  ", "a/b", "a\\b", "x" * 81, "a\tb\x00", "what?", "a) (b", "(a"]
)
def test_a_name_that_no_file_can_have_is_refused(name):
    with pytest.raises(InputError):
        spelled_name(name)


def test_a_version_that_is_not_there_is_said_so(show):
    kept = KeptVersions(show)
    for work in (kept.said, kept.delete):
        with pytest.raises(InputError, match="there is no version “duo”"):
            work("duo")


def test_a_full_disk_leaves_what_was_kept_and_says_what_helps(show):
    kept = KeptVersions(show)
    kept.keep("duo", DiskText("a: 1\n"))
    with mock.patch.object(os, "fsync", side_effect=OSError(28, "No space left on device")):
        for name, replace in (("duo", True), ("trio", False)):
            with pytest.raises(
                InputError, match="the disk is full; make room, or allow writing beside the show"
            ):
                kept.keep(name, DiskText("b: 2\n"), replace=replace)
    assert kept.said("duo").text == "a: 1\n"
    assert sorted(each.name for each in show.parent.iterdir()) == ["mine (duo).yaml", "mine.yaml"]


@pytest.mark.skipif(os.name == "nt", reason="modes of another system")
@pytest.mark.parametrize("links", [True, False])
def test_no_version_is_more_open_than_the_show(show, links):
    show.chmod(0o640)
    path = show.with_name("mine (duo).yaml")
    refuse = mock.patch.object(os, "link", side_effect=PermissionError)
    with refuse if not links else mock.patch.object(os, "link", os.link):
        KeptVersions(show).keep("duo", DiskText("a: 1\n"), {"findings": [], "unseen": []})
    for each in (path, show.with_name(".mine (duo).yaml.checked")):
        assert each.stat().st_mode & 0o777 == 0o640
    path.chmod(0o644)
    KeptVersions(show).keep("duo", DiskText("b: 2\n"), replace=True)
    assert path.stat().st_mode & 0o777 == 0o640
