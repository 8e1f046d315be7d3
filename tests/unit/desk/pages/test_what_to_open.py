"""What somebody means to open: a show, a folder, a song, or a name that is still to be a show."""

import pytest

from sequencer.desk.pages.what_to_open import what_to_open
from sequencer.errors import InputError

SHOW = "title: Mine\ntrack: {file: song.ogg}\n"


@pytest.fixture
def folder(tmp_path, monkeypatch):
    folder = tmp_path / "Night Ferry"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


def test_a_show_is_opened_by_its_name_with_its_ending_or_without(folder):
    assert what_to_open(folder / "mine.yaml") == (folder / "mine.yaml", None)
    assert what_to_open(folder / "mine") == (folder / "mine.yaml", None)
    (folder / "notes").write_text("none", encoding="utf-8")
    assert what_to_open(folder / "notes") == (
        folder / "notes",
        None,
    )  # it is there: it is told that it is no show


def test_a_folder_means_its_show_or_a_new_one_of_its_name(folder):
    assert what_to_open(folder) == (folder / "Night Ferry.yaml", None)
    (path, _) = what_to_open(None)
    assert path.resolve() == folder / "Night Ferry.yaml"
    (folder / "mine.yaml").write_text(SHOW, encoding="utf-8")
    (folder / "mine (before the rehearsal).yaml").write_text(SHOW, encoding="utf-8")
    (folder / "moves.yaml").write_text("patterns: {}\n", encoding="utf-8")
    (folder / ".mine.yaml.journal").write_text("{}", encoding="utf-8")
    (folder / "track.yaml").mkdir()
    assert what_to_open(folder, folder / "song.ogg") == (folder / "mine.yaml", folder / "song.ogg")
    (folder / "other (duo).yaml").write_text(SHOW, encoding="utf-8")
    with pytest.raises(
        InputError,
        match=r"several shows in this folder: 'mine.yaml', 'other \(duo\).yaml'; name one",
    ) as told:
        what_to_open(folder)
    assert told.value.code == "several-shows"


def test_a_song_means_the_show_of_its_name_beside_it(folder):
    song = folder / "ferry.ogg"
    song.write_bytes(b"OggS")
    assert what_to_open(song) == (folder / "ferry.yaml", song)
    (folder / "ferry.yaml").write_text(SHOW, encoding="utf-8")
    assert what_to_open(song) == (folder / "ferry.yaml", None)
    assert what_to_open(folder / "gone.ogg") == (folder / "gone.ogg", None)
