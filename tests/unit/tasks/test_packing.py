"""A show packed into one file: what is in it, and that it comes out as it went in."""

import hashlib
import json
import os
import sys
import zipfile
from pathlib import Path

import pytest

from sequencer.errors import InputError
from sequencer.packed_files import write_archive
from sequencer.tasks.packing import pack_show, unpack_show
from tests.cli.conftest import SHOW

# Of one archive, written down once: what is packed on another day, system or version is the same.
KNOWN = "879e071542804a22b26e518cd298457f8f90a6aee1ca7f1e6941a93f0906dd0c"
SONG = b"RIFF" + bytes(range(256)) * 40


@pytest.fixture(autouse=True)
def nothing_allowed(monkeypatch):
    monkeypatch.setenv("SEQUENCER_ALLOW", "")


@pytest.fixture
def folder(tmp_path):
    """A project: a show below, what it names partly beside it and partly elsewhere in the project."""
    shows = tmp_path / "shows"
    (shows / "kept").mkdir(parents=True)
    (tmp_path / "music").mkdir()
    (tmp_path / ".sequencer").touch()
    (tmp_path / "music" / "song.wav").write_bytes(SONG)
    (tmp_path / "burns.csv").write_bytes(b"elsewhere\n")
    (shows / "kept" / "burns.csv").write_bytes(b"burns\n")
    (shows / "kept" / "hall.yaml").write_bytes(b"hall\n")
    (shows / "moves.yaml").write_bytes(b"patterns: {}\n")
    (shows / "private.txt").write_bytes(b"of nobody's business\n")
    return shows


def written(folder, text, name="mine.yaml"):
    path = folder / name
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def full(song="../music/song.wav"):
    """A show that names a file of every kind."""
    return SHOW.replace("song.wav", song).replace(
        "metre: 4, one: 0:00.5", "beats: kept/taps.txt"
    ) + (
        "rules: {file: [kept/hall.yaml, ./kept/hall.yaml]}\npattern_files: [moves.yaml]  # mine\n"
        "fire: {fuel: lamp-oil, burns: kept/burns.csv}\ntype_file: kept/type.ttf\n"
    )


def held(path):
    with zipfile.ZipFile(path) as archive:
        return {each.filename: archive.read(each) for each in archive.infolist()}


def test_all_that_a_show_names_is_in_it_and_nothing_else(folder):
    for name in ("taps.txt", "type.ttf"):
        (folder / "kept" / name).write_bytes(name.encode())
    show = written(folder, full())
    before = show.read_bytes()
    packed = pack_show(show, folder / "out")
    assert packed.path == folder / "out" / "mine" / "mine.zip"
    files = held(packed.path)
    assert list(files) == [
        "manifest.json", "kept/burns.csv", "kept/hall.yaml", "kept/taps.txt", "kept/type.ttf", "mine.yaml", "moves.yaml", "song.wav",
    ]  # fmt: skip
    assert files["song.wav"] == SONG
    said = full("song.wav").encode()
    assert files["mine.yaml"] == said  # the song lies beside it now; comments stay
    assert show.read_bytes() == before
    told = json.loads(files["manifest.json"])
    assert told["show"] == "mine.yaml"
    assert {each["file"]: each["sha256"] for each in told["files"]} == {
        name: hashlib.sha256(content).hexdigest() for name, content in files.items() if name != "manifest.json"
    }  # fmt: skip
    assert [each["bytes"] for each in told["files"]] == [len(each) for each in files.values()][1:]


def test_it_is_the_same_to_the_byte_whenever_and_wherever_it_is_packed(folder, tmp_path):
    show = written(folder, SHOW.replace("song.wav", "../music/song.wav"))
    first = pack_show(show, folder / "out").path.read_bytes()
    os.utime(show, (1, 1))
    (tmp_path / "music" / "song.wav").chmod(0o600)
    assert pack_show(show, folder / "elsewhere").path.read_bytes() == first
    assert hashlib.sha256(first).hexdigest() == KNOWN


def test_it_comes_out_as_it_went_in(folder, tmp_path):
    for name in ("taps.txt", "type.ttf"):
        (folder / "kept" / name).write_bytes(name.encode())
    packed = pack_show(written(folder, full()), folder / "out").path
    unpacked = unpack_show(packed, tmp_path / "theirs")
    files = held(packed)
    del files["manifest.json"]
    root = tmp_path / "theirs"
    assert {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in root.rglob("*") if path.is_file() and path.name != ".sequencer"
    } == files  # fmt: skip
    again = pack_show(unpacked.path, folder / "again").path
    assert again.read_bytes() == packed.read_bytes()  # from the other end


def test_what_is_unpacked_reads_nothing_above_its_folder(folder, tmp_path):
    """The folder above is a project of the reader's own, in which a show may read all."""
    packed = pack_show(
        written(folder, SHOW.replace("song.wav", "../music/song.wav")), folder / "out"
    ).path
    theirs = unpack_show(packed, folder / "theirs").path
    theirs.write_bytes(theirs.read_bytes() + b"type_file: ../private.txt\n")
    with pytest.raises(InputError, match="lies outside the folder"):
        pack_show(theirs, folder / "again")
    (folder / "theirs" / ".sequencer").unlink()  # it is that mark which keeps it there
    pack_show(theirs, folder / "again")


def test_nothing_is_overwritten(folder, tmp_path):
    packed = pack_show(
        written(folder, SHOW.replace("song.wav", "../music/song.wav")), folder / "out"
    ).path
    for make in (
        lambda path: path.mkdir(),
        lambda path: path.touch(),
        lambda path: path.symlink_to("nowhere"),
    ):
        make(tmp_path / "theirs")
        with pytest.raises(InputError, match="nothing is overwritten"):
            unpack_show(packed, tmp_path / "theirs")
        there = tmp_path / "theirs"
        there.rmdir() if there.is_dir() else there.unlink()


def test_the_hash_of_a_song_that_is_not_packed(folder, tmp_path):
    show = written(folder, SHOW.replace("song.wav", "../music/song.wav"))
    packed = pack_show(show, folder / "out", with_song=False)
    files = held(packed.path)
    digest = hashlib.sha256(SONG).hexdigest()
    assert list(files) == ["manifest.json", "mine.yaml"]
    assert files["mine.yaml"].decode() == SHOW.replace("0:00.5}", f"0:00.5}}\n  sha256: {digest}")
    told = json.loads(files["manifest.json"])
    assert told["song"] == {"file": "song.wav", "sha256": digest}
    assert not unpack_show(packed.path, tmp_path / "theirs").manifest.holds_song
    (tmp_path / "theirs" / "song.wav").write_bytes(SONG)
    assert pack_show(tmp_path / "theirs" / "mine.yaml", folder / "again").manifest.holds_song


def test_line_ends_and_byte_order_mark_stay(folder):
    text = (
        b"\xef\xbb\xbf"
        + SHOW.replace("song.wav", "../music/song.wav").replace("\n", "\r\n").encode()
    )
    said = held(pack_show(written(folder, text), folder / "out").path)["mine.yaml"]
    assert said == text.replace(b"../music/", b"")


@pytest.mark.skipif(sys.platform == "win32", reason="no such names there")
def test_names_that_another_system_does_not_take(folder):
    (folder / "a:b.wav").write_bytes(SONG)
    (folder / "con.csv").write_bytes(b"one\n")
    (folder / ".hall.yaml").write_bytes(b"two\n")
    (folder / "HALL.yaml").write_bytes(b"three\n")
    text = SHOW.replace("song.wav", "'a:b.wav'") + (
        "fire: {fuel: lamp-oil, burns: con.csv}\nrules: {file: [.hall.yaml, HALL.yaml, ../burns.csv, kept/burns.csv]}\n"
    )
    files = held(pack_show(written(folder, text, "my show?.yaml"), folder / "out").path)
    assert files["my show-.yaml"].decode() == text.replace("'a:b.wav'", "'a-b.wav'").replace(
        "con.csv", "file-con.csv"
    ).replace(".hall.yaml, HALL.yaml, ../burns.csv", "hall.yaml, HALL-2.yaml, burns.csv")
    assert files["burns.csv"] == b"elsewhere\n"
    assert files["kept/burns.csv"] == b"burns\n"
    assert files["HALL-2.yaml"] == b"three\n"


def refused(folder, text, says, name="mine.yaml"):
    with pytest.raises(InputError, match=says) as caught:
        pack_show(written(folder, text, name), folder / "out")
    assert not (folder / "out").exists()
    return caught.value


def test_what_cannot_be_packed(folder):
    error = refused(folder, SHOW, "there is no file 'song.wav'")
    assert error.place.line == 3
    refused(folder, SHOW.replace("song.wav", "/etc/hostname"), "lies outside the folder")
    refused(folder, SHOW.replace("song.wav", "../../x.wav"), "lies outside the folder")
    (folder / "song").write_bytes(SONG)
    refused(folder, SHOW.replace("song.wav", "song"), "a file called 'song' is not mailed")
    refused(folder, "title: [", "not YAML")


def test_a_file_that_changes_while_it_is_packed(folder, monkeypatch):
    show = written(folder, SHOW.replace("song.wav", "../music/song.wav"))
    listed = pack_show(show, folder / "out").manifest
    song = folder.parent / "music" / "song.wav"
    for content in (SONG[:-1] + b"!", SONG[:-1], SONG + b"more"):
        song.write_bytes(content)
        files = {
            "mine.yaml": held(folder / "out" / "mine" / "mine.zip")["mine.yaml"],
            "song.wav": song,
        }
        if content.startswith(SONG):  # what was listed is all there
            write_archive(folder / "again.zip", listed, files)
            continue
        with pytest.raises(InputError, match="changed while it was packed"):
            write_archive(folder / "new.zip", listed, files)
        assert not (folder / "new.zip").exists()
    assert (folder / "again.zip").read_bytes() == (
        folder / "out" / "mine" / "mine.zip"
    ).read_bytes()


def test_too_much_for_one_file(folder, monkeypatch):
    monkeypatch.setattr("sequencer.packed_files.LARGEST_PACKED", 5_000)
    refused(folder, SHOW.replace("song.wav", "../music/song.wav"), "add --without-song")


def test_the_new_folder_is_named_as_the_archive_where_one_can_be(folder, tmp_path, monkeypatch):
    packed = pack_show(written(folder, SHOW.replace("song.wav", "../music/song.wav")), folder).path
    monkeypatch.chdir(tmp_path)
    assert unpack_show(packed).path == Path("mine/mine.yaml")
    for name in (".zip", "aux.zip", "mine .zip", "\u202e.zip"):
        (tmp_path / name).write_bytes(packed.read_bytes())
        with pytest.raises(InputError, match="name one with --out"):
            unpack_show(name)


def pinned(digest):
    said = SHOW.replace("song.wav", "../music/song.wav")
    return said.replace("track:\n", f"track:\n  sha256: {digest}\n")


def test_the_recording_that_the_show_names_is_not_replaced_by_what_lies_there(folder):
    other = hashlib.sha256(b"the right cut").hexdigest()
    with pytest.raises(InputError, match="not the cut that the show was made for") as caught:
        pack_show(written(folder, pinned(other)), folder / "out", with_song=False)
    assert caught.value.code == "another-cut"
    assert caught.value.place.line == 3
    assert not (folder / "out").exists()


def test_without_the_song_it_need_not_be_there_if_the_show_names_it(folder):
    show = written(folder, pinned(hashlib.sha256(SONG).hexdigest()))
    there = pack_show(show, folder / "out", with_song=False)
    assert (
        there.path.read_bytes() == pack_show(show, folder / "b", with_song=False).path.read_bytes()
    )
    said = held(there.path)["mine.yaml"].decode()
    assert said == show.read_text().replace("../music/", "")  # no line more or less
    (folder.parent / "music" / "song.wav").unlink()
    without = pack_show(show, folder / "again", with_song=False)
    assert without.path.read_bytes() == there.path.read_bytes()
    assert not unpack_show(without.path, folder / "theirs").manifest.holds_song
    with pytest.raises(InputError, match="there is no file"):
        pack_show(show, folder / "more")
    written(folder, SHOW.replace("song.wav", "../music/song.wav"))
    with pytest.raises(InputError, match="there is no file"):
        pack_show(show, folder / "more", with_song=False)


@pytest.mark.parametrize(
    ("name", "packed"),
    [("mine", "mine.yaml"), ("café ½.yaml", "café ½.yaml"), ("a\ufe0fb.yaml", "ab.yaml"), ("mine.v2", "mine.v2.yaml"), ("manifest.json", "manifest.json.yaml"), ("..yaml", "yaml.yaml")],
)  # fmt: skip
def test_what_is_packed_can_be_unpacked_whatever_the_show_is_called(folder, name, packed):
    show = written(folder, SHOW.replace("song.wav", "../music/song.wav"), name)
    made = pack_show(show, folder / "out")
    assert made.manifest.show == packed
    assert unpack_show(made.path, folder / "theirs").path.read_bytes() == held(made.path)[packed]
