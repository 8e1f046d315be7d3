"""What somebody means to open: a show, a folder, a song, or a name that is still to be a show."""

import errno
import os
from pathlib import Path

import pytest

from sequencer.desk.pages.what_to_open import what_to_open
from sequencer.errors import InputError
from sequencer.show.text import file_text
from sequencer.show.text.file_text import LARGEST

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
    (folder / "._mine.yaml").write_bytes(b"\0\5\x16\7")  # as some systems put beside a file
    (folder / ".other.yaml").write_text(SHOW, encoding="utf-8")
    (folder / "track.yaml").mkdir()
    assert what_to_open(folder, folder / "song.ogg") == (folder / "mine.yaml", folder / "song.ogg")
    (folder / "other (duo).yaml").write_text(SHOW, encoding="utf-8")
    with pytest.raises(
        InputError,
        match=r"several shows in this folder: 'mine.yaml', 'other \(duo\).yaml'; type ",
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


def refused(*given):
    """The line that is told, and its code."""
    with pytest.raises(InputError) as told:
        what_to_open(*given)
    assert "\n" not in str(told.value)
    return told.value.code, told.value.sentence


def test_a_show_with_the_short_ending_is_found_by_its_name_and_by_its_song(folder):
    song = folder / "ferry.ogg"
    song.write_bytes(b"OggS")
    (folder / "ferry.yml").write_text(SHOW, encoding="utf-8")
    assert what_to_open(folder / "ferry") == (folder / "ferry.yml", None)
    assert what_to_open(song) == (folder / "ferry.yml", None)
    (folder / "ferry.yaml").mkdir()
    assert what_to_open(folder / "ferry") == (folder / "ferry.yml", None), "a folder is no show"
    (folder / "ferry.yaml").rmdir()
    (folder / "ferry.yaml").write_text(SHOW, encoding="utf-8")
    for given in (folder / "ferry", song):
        code, said = refused(given)
        assert code == "several-shows"
        assert "several shows of the name 'ferry': 'ferry.yaml', 'ferry.yml'; type " in said
    assert what_to_open(folder / "ferry.yml") == (folder / "ferry.yml", None)


@pytest.mark.parametrize(
    "written",
    [
        "\ufefftrack: {file: song.ogg}\n".encode(),
        b'"track": {file: song.ogg}\n',
        b"'track' : {file: song.ogg}\n",
        b'{"title": "Mine", "track": {"file": "song.ogg"}}',
        b"  title: Mine\n  track: {file: song.ogg}\n",
        b"title: Mine\rtrack: {file: song.ogg}\r",
        b"title: [broken\ntrack: {file: song.ogg}\n",
        b"title: [broken\n'track' : {file: song.ogg}\n",
    ],
    ids=["marked", "quoted", "apostrophes", "json", "indented", "cr", "broken", "broken-quoted"],
)
def test_a_show_is_recognised_however_it_is_written(folder, written):
    (folder / "mine.yaml").write_bytes(written)
    assert what_to_open(folder) == (folder / "mine.yaml", None)


def test_a_heading_below_another_makes_no_show(folder):
    for other in ("moves:\n  track: none\n", "- track\n", "# track\npatterns: {}\n"):
        (folder / "moves.yaml").write_text(other, encoding="utf-8")
        assert what_to_open(folder) == (folder / "Night Ferry.yaml", None)


@pytest.mark.parametrize(
    ("written", "why"),
    [
        (b"", "this file is empty"),
        (b"# my show\n", "this file is empty"),
        (b"\0" * 64, "this is not YAML: the letter U+0000"),
        (SHOW.encode("utf-16"), "this is not UTF-8 text"),
        (b"title: [Mine\ncast: {", "this is not YAML"),
        (b"title: Mine\ncast: []\n", "it has the heading 'cast', as shows do, but no 'track'"),
        (b"#" * (LARGEST + 1), "this file is larger than 4 MB"),
        (b"# a\n" * 100_001, "too long to be looked through"),
    ],
    ids=["empty", "comment", "zeros", "utf-16", "broken", "half", "too-large", "long"],
)
def test_no_second_show_is_begun_beside_a_file_that_may_be_one(folder, written, why):
    (folder / "mine.yml").write_bytes(written)
    code, said = refused(None)
    assert code == "unsure-show"
    assert f"there may be a show in this folder already: 'mine.yml' ({why}" in said
    assert "; type `sequencer open mine.yml` to open it, or " in said
    assert what_to_open(folder / "mine.yml") == (folder / "mine.yml", None)
    (folder / "mine (before the rehearsal).yaml").write_text(SHOW, encoding="utf-8")
    assert refused(None)[0] == "unsure-show", "an old version is not taken for the show"
    (folder / "ours.yaml").write_text(SHOW, encoding="utf-8")
    assert what_to_open(folder) == (folder / "ours.yaml", None)


def test_no_second_show_is_begun_beside_a_file_that_may_not_be_read(folder, monkeypatch):
    (folder / "mine.yaml").write_text(SHOW, encoding="utf-8")

    def forbidden(path, _most):
        raise PermissionError(errno.EACCES, "Permission denied", str(path))

    monkeypatch.setattr(file_text, "given_bytes", forbidden)
    code, said = refused(folder)
    assert code == "unsure-show"
    assert "'mine.yaml' (this file cannot be read (Permission denied))" in said


def test_the_file_of_the_folders_name_is_itself_what_would_be_begun(folder):
    (folder / "Night Ferry.yaml").write_text("", encoding="utf-8")
    assert what_to_open(folder) == (folder / "Night Ferry.yaml", None)
    (folder / "mine.yaml").write_text("", encoding="utf-8")
    assert refused(folder)[0] == "unsure-show"


def test_a_link_that_leads_nowhere_is_told_and_nothing_is_begun_in_its_place(folder):
    (folder / "mine.yaml").symlink_to("gone/mine.yaml")
    assert "'mine.yaml' (a link that leads nowhere)" in refused(None)[1]
    (folder / "mine.ogg").write_bytes(b"OggS")
    for given in ("mine", "mine.yaml", "mine.ogg"):
        code, said = refused(folder / given)
        assert code == "lost-link"
        assert "this is a link to 'gone/mine.yaml', and nothing can be opened there" in said
    (folder / "lost").symlink_to("gone/mine.yaml")
    assert refused(folder / "lost")[0] == "lost-link", "and no 'lost.yaml' is begun"
    (folder / "gone").mkdir()
    (folder / "gone" / "mine.yaml").write_text(SHOW, encoding="utf-8")
    assert what_to_open(folder) == (folder / "mine.yaml", None)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes among files here")
def test_a_pipe_is_never_waited_for(folder):
    os.mkfifo(folder / "mine.yaml")
    assert "'mine.yaml' (this file cannot be read" in refused(folder)[1]


def test_a_name_with_a_dot_is_a_name(folder):
    assert what_to_open(folder / "mine.v2") == (folder / "mine.v2.yaml", None), "it is begun"
    (folder / "mine.v2.yml").write_text(SHOW, encoding="utf-8")
    assert what_to_open(folder / "mine.v2") == (folder / "mine.v2.yml", None)
    (folder / "notes.txt.yaml").write_text(SHOW, encoding="utf-8")
    assert what_to_open(folder / "notes.txt") == (folder / "notes.txt.yaml", None)


@pytest.mark.parametrize("name", ["gone.ogg", "gone.txt", "gone.json", "gone.yalm", "gone.ymal"])
def test_no_show_is_begun_of_another_files_name_or_a_slip(folder, name):
    assert what_to_open(folder / name) == (folder / name, None)


def test_the_folder_of_a_show_whose_whole_name_is_given_is_made_with_it(folder):
    path = folder / "shows" / "new.yaml"
    assert what_to_open(path) == (path, None)
    (folder / "file").write_text("", encoding="utf-8")
    assert refused(folder / "file" / "new.yaml")[0] == "no-folder"


@pytest.mark.parametrize("name", ["folder", "folder.v2", "gone.ogg"])
def test_a_show_in_a_folder_that_is_missing_is_told(folder, name):
    code, said = refused(folder / "missing" / name)
    assert code == "no-folder"
    assert said == (
        f"there is no folder '{folder / 'missing'}' that can be opened; check the path, or make the folder first"
    )


@pytest.mark.parametrize("name", ["m" * 300 + ".yaml", "mi\0ne.yaml"])
def test_a_name_that_no_file_can_have_is_told(folder, name):
    code, said = refused(folder / name)
    assert (code, said.startswith("this file cannot be read (")) == ("cannot-read", True)


def test_no_show_is_begun_where_nobody_may_see_whether_one_is_there(folder, monkeypatch):
    def forbidden(path):
        raise PermissionError(errno.EACCES, "Permission denied", str(path))

    monkeypatch.setattr(Path, "lstat", forbidden)
    assert refused(folder / "mine.yaml") == (
        "cannot-read", "this file cannot be read (Permission denied); check the path",
    )  # fmt: skip


def test_of_several_shows_it_is_told_what_to_type_for_each(folder, monkeypatch):
    for name in ("mine.yaml", "mine copy.yaml", "mine.packed.yaml", "-mine.yaml"):
        (folder / name).write_text(SHOW, encoding="utf-8")
    assert refused(None)[1] == (
        "there are several shows in this folder: '-mine.yaml', 'mine copy.yaml', 'mine.packed.yaml', 'mine.yaml'; "
        'type `sequencer open ./-mine.yaml` or `sequencer open "mine copy.yaml"` or `sequencer open mine.packed.yaml` '
        "or `sequencer open mine.yaml`"
    )
    assert what_to_open(folder / "mine") == (folder / "mine.yaml", None)
    assert what_to_open(folder / "mine.packed") == (folder / "mine.packed.yaml", None)
    monkeypatch.chdir(folder.parent)
    assert (
        '`sequencer open "Night Ferry/mine.yaml"`' in refused(folder.relative_to(folder.parent))[1]
    )
    for number in range(5):
        (folder / f"one {number}.yaml").write_text(SHOW, encoding="utf-8")
    said = refused(folder)[1]
    assert "'mine.yaml', 'one 0.yaml' and 4 more; type " in said
    assert said.count("`sequencer open ") == 5


def test_a_folder_that_cannot_be_looked_through_is_told(folder, monkeypatch):
    def forbidden(path):
        raise PermissionError(errno.EACCES, "Permission denied", str(path))

    monkeypatch.setattr(Path, "iterdir", forbidden)
    code, said = refused(folder)
    assert (code, "cannot be looked through (Permission denied)" in said) == ("cannot-read", True)
    assert what_to_open(folder / "mine.yaml") == (folder / "mine.yaml", None)
