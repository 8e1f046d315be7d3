"""Where a show may read: below its folder, below its project's, and where the person at the machine allows it."""

import os

import pytest

from sequencer.allowed_places import VARIABLE, allow_for_now, is_allowed


@pytest.fixture(autouse=True)
def nothing_allowed(monkeypatch):
    monkeypatch.setenv(VARIABLE, "")


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "show" / "songs").mkdir(parents=True)
    (tmp_path / "show" / "songs" / "a.wav").touch()
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "b.wav").touch()
    return tmp_path / "show"


def test_below_its_folder_only(folder):
    assert is_allowed(folder / "songs" / "a.wav", folder)
    assert is_allowed(folder / "songs" / ".." / "songs" / "a.wav", folder)
    assert is_allowed((folder / "songs" / "a.wav").absolute(), folder)
    assert is_allowed(folder / "not-there.wav", folder)
    assert not is_allowed(folder / ".." / "elsewhere" / "b.wav", folder)
    assert not is_allowed(folder.parent / "elsewhere" / "b.wav", folder)
    assert not is_allowed(folder.with_name("show-too") / "c.wav", folder)


def test_links_are_followed_first(folder):
    try:
        (folder / "in.wav").symlink_to(folder / "songs" / "a.wav")
        (folder / "out.wav").symlink_to(folder.parent / "elsewhere" / "b.wav")
    except OSError:
        pytest.skip("no links here")
    assert is_allowed(folder / "in.wav", folder)
    assert not is_allowed(folder / "out.wav", folder)


def test_a_project_is_marked_by_a_file(folder):
    (folder.parent / ".sequencer").write_text(
        "/\n", encoding="utf-8"
    )  # what it holds opens nothing
    assert is_allowed(folder.parent / "elsewhere" / "b.wav", folder)
    assert not is_allowed(folder.parent.parent / "c.wav", folder)


def test_the_person_allows_folders_for_now(folder):
    allow_for_now((str(folder.parent / "elsewhere"),))
    assert is_allowed(folder.parent / "elsewhere" / "b.wav", folder)
    assert not is_allowed(folder.parent / "elsewhere-too" / "b.wav", folder)
    assert os.environ[VARIABLE]  # processes that are started from here know it too


def test_a_mark_among_downloads_or_at_home_opens_nothing(folder, monkeypatch):
    (folder.parent / ".sequencer").touch()
    assert is_allowed(folder.parent / "elsewhere" / "b.wav", folder)
    monkeypatch.setattr("platformdirs.user_downloads_dir", lambda: str(folder.parent))
    assert not is_allowed(folder.parent / "elsewhere" / "b.wav", folder)


def test_a_mark_in_its_own_folder_keeps_a_show_there(folder):
    (folder.parent / ".sequencer").touch()
    (folder / ".sequencer").touch()
    assert is_allowed(folder / "songs" / "a.wav", folder)
    assert is_allowed(folder / "songs" / "a.wav", folder / "songs")  # a show below reads all of it
    assert not is_allowed(folder.parent / "elsewhere" / "b.wav", folder)
    assert not is_allowed(folder.parent / "elsewhere" / "b.wav", folder / "songs")
