"""An archive from a stranger: what may not be in it, and that nothing is written of one that is refused."""

import io
import os
import struct
import sys
import zipfile
import zlib

import pytest

from sequencer.errors import InputError
from sequencer.packed_files import PackedFile
from sequencer.packed_reading import Archive, opened_archive
from sequencer.tasks.packing import unpack_show
from tests.made_archives import (
    DEVICE,
    FILES,
    LINK,
    PIPE,
    SHOW,
    Entry,
    archive,
    entries,
    manifest,
    told_of,
    with_entry,
)


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def refused(folder, content, says):
    path = folder / "mailed.zip"
    path.write_bytes(content)
    with pytest.raises(InputError, match=says) as caught:
        unpack_show(path, folder / "new")
    assert names(folder) == ["mailed.zip"]
    assert str(caught.value).startswith(str(path))
    assert str(caught.value).isprintable()
    assert len(str(caught.value)) < len(str(path)) + 700
    assert "~/evil" not in str(caught.value)


def renamed(name):
    """An archive whose rules lie elsewhere, and whose show and list say so."""
    files = {key: value for key, value in FILES.items() if key != "rules.yaml"}
    files["show.yaml"] = SHOW.replace("rules.yaml", f'"{name}"').encode()
    return archive(entries(files | {name: b"rules: []\n"}))


def test_an_honest_archive_is_unpacked(tmp_path):
    (tmp_path / "mailed.zip").write_bytes(archive(entries()))
    unpacked = unpack_show(tmp_path / "mailed.zip", tmp_path / "new")
    assert unpacked.path == tmp_path / "new" / "show.yaml"
    held = {path.name: path.read_bytes() for path in (tmp_path / "new").iterdir()}
    assert held.pop(".sequencer")
    assert held == FILES


def test_what_another_packer_makes_of_the_same_files_is_taken_too(tmp_path):
    with zipfile.ZipFile(tmp_path / "mailed.zip", "w") as out:
        for name, content in (FILES | {"manifest.json": manifest()}).items():
            out.writestr(name, content)
    assert unpack_show(tmp_path / "mailed.zip", tmp_path / "new").path.read_text() == SHOW


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("../rules.yaml", "leads out of its folder"), ("a/../../rules.yaml", "leads out of its folder"),
        ("/rules.yaml", "root of a disk"), ("C:/rules.yaml", "not every system takes the letter :"),
        ("a\\\\..\\\\rules.yaml", "not every system takes the letter"), ("a//rules.yaml", "empty"), ("./rules.yaml", "empty"),
        (".sequencer", "begins with a point"), ("a/.sequencer", "begins with a point"), (".git/config", "begins with a point"),
        ("con.yaml", "name of a device"), ("a/Aux.yaml", "name of a device"), ("COM1", "name of a device"),
        ("lpt¹.txt", "name of a device"), ("conin$.csv", "name of a device"), ("rules.yaml.", "ends with a point"),
        ("rules.yaml ", "with a space"), ("rules\u202elmay.yaml", "letters that nobody sees"), ("rules.yaml:x", "the letter :"),
        ("a\ttb.yaml", "nobody sees"), *((f"a{letter}b.yaml", "nobody sees") for letter in "\u034f\u115f\u17b4\u180b\u2800\u3164\ufe0f\uffa0\U000e0100"), ("r" * 201 + ".yaml", "too long"), ("a/" * 200 + "b.yaml", "too long"),
        ("rules.lnk", "no file of a show"), ("desktop.ini", "no file of a show"), ("rules.zip", "no file of a show"),
        ("run.exe", "no file of a show"), ("rules.yaml.url", "no file of a show"), ("rules", "no file of a show"),
    ],
)  # fmt: skip
def test_a_name_that_leads_elsewhere_or_means_something(tmp_path, name, says):
    refused(tmp_path, renamed(name), says)


@pytest.mark.parametrize("mode", [LINK, DEVICE, PIPE, 0o040755, 0o140755, 0o060666])
def test_only_files(tmp_path, mode):
    rows = with_entry(entries(), b"rules.yaml", mode=mode)
    refused(tmp_path, archive(rows), "not a file but a link, a folder or a device")


def test_no_folder_either(tmp_path):
    refused(tmp_path, archive(with_entry(entries(), b"rules.yaml", marks=0x10)), "not a file")
    refused(tmp_path, archive([*entries(), Entry(b"empty/", b"")]), "a part of it is empty")


@pytest.mark.parametrize(
    "name", ["rules.yaml", "RULES.yaml", "Rules.Yaml", "show.yaml/x.yaml", "Manifest.JSON"]
)
def test_two_files_that_are_one_to_some_system(tmp_path, name):
    rows = [*entries(), Entry(name.encode(), b"rules: [1]\n")]
    refused(tmp_path, archive(rows), "would lie over another file")


def test_two_ways_to_write_an_accent_are_one(tmp_path):
    two = {"caf\u00e9.yaml": b"a", "cafe\u0301.yaml": b"b"}
    refused(tmp_path, archive(entries(FILES | two)), "would lie over another file")


def test_bombs(tmp_path):
    files = FILES | {"rules.yaml": bytes(4_000_000)}
    huge = with_entry(entries(files), b"rules.yaml", method=8)
    assert len(archive(huge)) < 50_000
    for claimed in (None, 10, len(zlib.compress(bytes(4_000_000), 9)) - 6):
        bomb = archive(with_entry(huge, b"rules.yaml", size=claimed))
        refused(tmp_path, bomb, "is compressed")
    stored = with_entry(entries(), b"song.wav", size=2**32 - 2)
    refused(tmp_path, archive(stored), "is compressed")


def test_a_file_that_grows_beyond_its_claim_is_written_no_further(tmp_path):
    claimed = PackedFile(**told_of("a", b"abc"))
    with pytest.raises(InputError, match="not what its list says"):
        Archive("x.zip", None, None)._copy(claimed, io.BytesIO(bytes(5_000_000)), tmp_path / "a")
    assert (tmp_path / "a").stat().st_size == 0


def test_more_files_than_any_show_names(tmp_path):
    many = {f"{k}.yaml": b"" for k in range(199)}
    refused(tmp_path, archive(entries(FILES | many)), "more than 200 files")
    refused(tmp_path, archive(entries(FILES | many), count=5), "as many files as it says")


def test_files_over_one_another(tmp_path):
    rows = entries()
    at = archive(rows).index(b"PK\3\4", 10)
    refused(tmp_path, archive(with_entry(rows, b"song.wav", lies_at=at)), "lie over one another")
    refused(
        tmp_path, archive(with_entry(rows, b"song.wav", lies_at=at + 5)), "lie over one another"
    )
    refused(
        tmp_path, archive(with_entry(rows, b"song.wav", lies_at=2**32 - 2)), "before or between"
    )


def test_names_told_in_two_ways(tmp_path):
    refused(
        tmp_path,
        archive(with_entry(entries(), b"rules.yaml", own_name=b"../a.yaml")),
        "own list says",
    )
    refused(
        tmp_path,
        archive(with_entry(entries(), b"rules.yaml", name=b"rules.yaml\0.exe")),
        "not told in one way",
    )
    unicode_path = b"\x75\x70\x0f\x00\x01\x00\x00\x00\x00../rules.y"
    refused(
        tmp_path,
        archive(with_entry(entries(), b"rules.yaml", extra=unicode_path, name=b"x.yaml")),
        "more is said",
    )


@pytest.mark.parametrize("flags", [0x0800, 0])
def test_names_that_are_no_text(tmp_path, flags):
    rows = [*entries(), Entry(b"caf\xe9.yaml", b"", flags=flags)]
    refused(tmp_path, archive(rows), "damaged|not told in one way")


@pytest.mark.parametrize("flags", [1, 0x02, 0x04, 0x08, 0x20, 0x40, 0x1000, 0x2000])
def test_secrets(tmp_path, flags):
    refused(tmp_path, archive(with_entry(entries(), b"rules.yaml", flags=flags)), "encrypted, or")


@pytest.mark.parametrize("method", [8, 9, 12, 14, 93, 99])
def test_nothing_is_compressed(tmp_path, method):
    rows = with_entry(entries(), b"rules.yaml", method=method)
    refused(tmp_path, archive(rows), "is compressed")


@pytest.mark.parametrize("place", range(8))
def test_a_file_says_of_itself_what_the_list_says(tmp_path, place):
    for value in (0, 1, 99):
        rows = with_entry(entries(), b"rules.yaml", own={place: value})
        if archive(rows) != archive(entries()):
            refused(tmp_path, archive(rows), "not what the archive's own list says|damaged")


def test_there_is_no_room_for_more(tmp_path):
    path = struct.pack("<HHBL", 0x7075, 17, 1, zlib.crc32(b"rules.yaml")) + b"../evil.yaml"
    for extra in (path, struct.pack("<HH", 0x9999, 4) + b"evil", struct.pack("<HHQ", 1, 8, 10)):
        # From CPython 3.13 on zipfile itself takes the path for the name, which is not what stands beside the file then.
        refused(
            tmp_path,
            archive(with_entry(entries(), b"rules.yaml", extra=extra)),
            "more is said|not told in one way" if extra is path else "more is said",
        )
        own = archive(with_entry(entries(), b"rules.yaml", own_extra=extra))
        refused(tmp_path, own, "not what the archive's own list says")
    comment = archive(with_entry(entries(), b"rules.yaml", comment=b"evil"))
    refused(tmp_path, comment, "more is said")
    said = archive(with_entry(entries(), b"manifest.json", content=manifest() + b" " * 1_000_000))
    refused(tmp_path, said, "manifest.json says more than there is to say")


def test_the_show_lies_at_the_top(tmp_path):
    files = FILES | {"a/show.yaml": SHOW.encode()}
    del files["show.yaml"]
    rows = entries(files, show="a/show.yaml")
    refused(tmp_path, archive(rows), "the show that its list names is not in it")


def test_nothing_before_and_nothing_behind(tmp_path):
    refused(tmp_path, archive(entries(), before=b"#!/bin/sh\n"), "before or between")
    between = with_entry(entries(), b"show.yaml", padding=b"h")
    refused(tmp_path, archive(between), "before or between")
    refused(tmp_path, archive(entries(), behind=b"more"), "damaged")
    refused(tmp_path, archive(entries(), comment=b"hello"), "damaged")
    refused(tmp_path, archive(entries()) + archive(entries()), "before or behind")
    rows = with_entry(entries(), b"song.wav", extra=b"PK\x06\x07" + bytes(16))
    refused(tmp_path, archive(rows), "more than 4 GB")


@pytest.mark.parametrize(
    "end", [{"sign": b"PK\5\7"}, {"disk": 1}, {"first": 1}, {"here": 3}, {"comment": 1}, {"length": 5}, {"at": 5}]
)  # fmt: skip
def test_an_end_that_lies(tmp_path, end):
    refused(tmp_path, archive(entries(), end=end), "damaged|before or behind")


def test_a_list_that_would_fill_the_memory(tmp_path):
    extra = struct.pack("<HH", 0x9999, 60_000) + bytes(60_000)
    rows = [Entry(f"{k}.yaml".encode(), b"", extra=extra) for k in range(10)]
    refused(tmp_path, archive([*entries(), *rows]), "more than 200 files")


@pytest.mark.parametrize("share", [0.0, 0.1, 0.5, 0.9, 0.99])
def test_half_an_archive(tmp_path, share):
    whole = archive(entries())
    refused(tmp_path, whole[: int(share * len(whole))], "damaged")


def test_no_archive_at_all(tmp_path):
    refused(tmp_path, b"PK\5\6" + bytes(18), "no manifest.json")
    refused(tmp_path, SHOW.encode(), "damaged, or no archive of a show")
    refused(tmp_path, archive(entries()[1:]), "no manifest.json")


@pytest.mark.parametrize(
    ("said", "says"),
    [
        (b"", "manifest.json cannot be used"),
        (b"{", "manifest.json cannot be used"),
        (b"[" * 100_000, "manifest.json cannot be used"),
        (b'{"format": ' + b"9" * 9000 + b"}", "manifest.json cannot be used"),
        (b"\xff\xfe", "manifest.json cannot be used"),
        (manifest(format="sequencer show 2"), "manifest.json cannot be used: format"),
        (manifest(more=1), "manifest.json cannot be used: Extra inputs"),
        (manifest(**{"\nnext: sequencer check ~/evil.yaml\n": 1}), "manifest.json cannot be used: Extra inputs"),
        (manifest(song=told_of("song.wav", b"", **{"x" * 5000: 1})), "manifest.json cannot be used: song: Extra inputs"),
        (manifest(files=[]), "manifest.json cannot be used: files"),
        (manifest(show="other.yaml"), "the show that its list names is not in it"),
        (manifest(files=[told_of(name, FILES[name]) for name in ("show.yaml", "song.wav")]), "not in its list"),
        (manifest(FILES | {"more.yaml": b""}), "is in its list, but not in it"),
        (manifest(files=[*(told_of(*each) for each in FILES.items()), told_of("show.yaml", b"")]), "names a file twice"),
        (manifest(song=told_of("song.wav", b"other")), "says two things of the song"),
        (manifest(song=told_of("../song.wav", b"other")), "its song is called '../song.wav'"),
        (manifest(song=told_of("rules.yaml", FILES["rules.yaml"])), "the song, and the show does not"),
    ],
)  # fmt: skip
def test_a_list_that_lies(tmp_path, said, says):
    refused(tmp_path, archive(with_entry(entries(), b"manifest.json", content=said)), says)


@pytest.mark.parametrize("name", sorted(FILES))
def test_a_file_that_is_another(tmp_path, name):
    content = FILES[name]
    others = [told_of(*each) for each in FILES.items() if each[0] != name]
    longer = told_of(name, content, bytes=len(content) + 1)
    for told, says in (
        (told_of(name, content[:-1] + b"!"), "not what its list says"),
        (longer, "not as long"),
    ):
        said = manifest(
            files=[*others, told],
            song=told if name == "song.wav" else told_of("song.wav", FILES["song.wav"]),
        )
        refused(tmp_path, archive(with_entry(entries(), b"manifest.json", content=said)), says)


def test_a_file_that_the_show_does_not_name(tmp_path):
    refused(
        tmp_path,
        archive(entries(FILES | {"more.yaml": b""})),
        "'more.yaml' is in it, but the show does not name it",
    )


@pytest.mark.parametrize(
    "name", ["../private.yaml", "/etc/passwd", "other.yaml", "a/../rules.yaml"]
)
def test_a_show_that_names_what_is_not_in_it(tmp_path, name):
    said = SHOW.replace("rules.yaml", name).encode()
    refused(
        tmp_path,
        archive(entries(FILES | {"show.yaml": said})),
        "the show does not name it|not in it",
    )


@pytest.mark.parametrize(
    "said", [b"\xff\xfe", b"a: [", b"- a\n", b"track: 5\n", b"a: b\n" * 900_000]
)
def test_a_show_that_cannot_be_read(tmp_path, said):
    refused(
        tmp_path, archive(entries(FILES | {"show.yaml": said})), "cannot be read|does not name it"
    )


def test_a_song_that_is_not_in_it_is_known_by_its_hash(tmp_path):
    files = {name: content for name, content in FILES.items() if name != "song.wav"}
    song = told_of("song.wav", FILES["song.wav"])
    refused(tmp_path, archive(entries(files, song=song)), "does not name the recording")
    named = SHOW.replace("song.wav", f"song.wav, sha256: {song['sha256']}").encode()
    (tmp_path / "mailed.zip").write_bytes(archive(entries(files | {"show.yaml": named}, song=song)))
    unpacked = unpack_show(tmp_path / "mailed.zip", tmp_path / "new")
    assert not unpacked.manifest.holds_song
    assert names(tmp_path / "new") == [".sequencer", "rules.yaml", "show.yaml"]


@pytest.mark.skipif(sys.platform == "win32", reason="no such files there")
def test_devices_and_pipes(tmp_path):
    os.mkfifo(tmp_path / "pipe.zip")
    for path in ("/dev/zero", "/dev/null", tmp_path / "pipe.zip", tmp_path):
        with pytest.raises(InputError, match="cannot be read"), opened_archive(path):
            pass
    with pytest.raises(InputError, match="file not found"), opened_archive(tmp_path / "none.zip"):
        pass


def test_a_huge_file_is_refused_unread(tmp_path):
    with (tmp_path / "mailed.zip").open("wb") as file:
        file.truncate(3 * 10**9)
        file.seek(0, io.SEEK_END)
        file.write(archive(entries()))
    with pytest.raises(InputError, match="larger than 2 GB"):
        unpack_show(tmp_path / "mailed.zip", tmp_path / "new")
