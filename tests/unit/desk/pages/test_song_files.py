"""Songs beside a show, by their paths, and brought in from elsewhere."""

import pytest

from sequencer.desk.pages import song_files
from sequencer.desk.pages.song_files import brought_song, song_path, songs_beside, written_path
from sequencer.errors import InputError
from tests.in_a_thread import run_apart


def test_songs_lie_in_the_folder_and_one_below(tmp_path):
    for name in ("b.mp3", "A.OGG", ".hidden.wav", "notes.txt", "more/c.flac", "more/deep/d.wav", ".x/e.wav"):  # fmt: skip
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(b"x")
    (tmp_path / "folder.wav").mkdir()
    assert songs_beside(tmp_path) == ["A.OGG", "b.mp3", "more/c.flac"]
    assert songs_beside(tmp_path / "nowhere") == []


def test_a_path_is_below_the_show_or_wherever_it_leads(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    song = tmp_path / "s.ogg"
    song.write_bytes(b"x")
    shows = tmp_path / "shows"
    shows.mkdir()
    for words in ("../s.ogg", str(song), " ~/s.ogg "):
        assert written_path(song_path(words, shows), shows) == "../s.ogg"
    for words in ("", "t.ogg", "..", "~nobody-of-that-name/s.ogg"):
        with pytest.raises(InputError) as told:
            song_path(words, shows)
        assert told.value.code == "no-track"


def brought(name, parts, folder):
    async def given():
        for part in parts:
            yield part

    return run_apart(brought_song(name, given(), folder))


@pytest.mark.parametrize(
    ("name", "what"),
    [
        ("q" * 300 + ".ogg", "too long"),
        ("鼓" * 70 + ".ogg", "too long"),
        ("a\nb.ogg", "cannot have '\\\\n'"),
        ("a\x07.ogg", "cannot have '\\\\x07'"),
        ("a\u202eggo.ogg", "cannot have '\\\\u202e'"),
        ("a\0.ogg", "cannot have"),
        ("who?.ogg", "cannot have"),
        ("a\ud800.ogg", "cannot have"),
    ],
)
def test_a_name_that_no_file_should_have_is_refused(tmp_path, name, what):
    with pytest.raises(InputError, match=what) as told:
        brought(name, [b"abc"], tmp_path)
    assert told.value.code == "bad-name"
    assert list(tmp_path.iterdir()) == []


def test_the_longest_name_and_its_number_can_be_written(tmp_path):
    name = "q" * (song_files.LONGEST_SONG_NAME - 4) + ".ogg"
    assert brought(name, [b"abc"], tmp_path) == name
    assert brought(name, [b"other"], tmp_path) == name[:-4] + " 2.ogg"
    with pytest.raises(InputError, match="too long"):
        brought("q" + name, [b"abc"], tmp_path)


def test_a_song_is_brought_whole_or_not_at_all(tmp_path, monkeypatch):
    assert brought("s.ogg", [b"ab", b"c"], tmp_path) == "s.ogg"
    assert (tmp_path / "s.ogg").read_bytes() == b"abc"
    assert brought("C:\\music\\s.ogg", [b"abc"], tmp_path) == "s.ogg"
    assert brought("s.ogg", [b"other"], tmp_path) == "s 2.ogg"
    assert brought("s.ogg", [b"other"], tmp_path) == "s 2.ogg"
    monkeypatch.setattr(song_files, "LARGEST_SONG", 4)
    with pytest.raises(InputError, match="larger than"):
        brought("large.ogg", [b"abc", b"de"], tmp_path)

    async def breaks_off():
        yield b"ab"
        raise EOFError

    with pytest.raises(EOFError):
        run_apart(brought_song("half.ogg", breaks_off(), tmp_path))
    assert sorted(each.name for each in tmp_path.iterdir()) == ["s 2.ogg", "s.ogg"]
