"""`sequencer open` where there is no show yet, and where its song is missing: on a real server asked over HTTP."""

import json
import shutil

import pytest
from click.testing import CliRunner

from sequencer.cli import main
from tests.desk_client import Desk, desk, eventually, warm_desk

WREN = {"name": "Wren", "stature": "1.70 m", "prop": "poi", "level": 2}
MOSS = {"name": "Moss: the 2nd", "stature": "5 ft 7 in", "prop": "staff", "level": 3}


@pytest.fixture
def folder(stage_folder, tmp_path):
    """A folder in which there is a song, and nothing else."""
    (tmp_path / "songs").mkdir()
    shutil.copy(stage_folder / "song.wav", tmp_path / "songs" / "tune.wav")
    return tmp_path


def begun(page, **given):
    """The state once the first text is taken, or the errand that failed."""
    asked = {"title": "First", "track": "songs/tune.wav", "cast": [WREN], "floor": ["8 m", "8 m"]}
    status, now = page.post("begin", **{**asked, **given})
    assert (status, now["state"]) == (200, "working"), now
    now = eventually(lambda: (said := page.get("begin")[1])["state"] != "working" and said, 120)
    return page.post("begin/take", number=now["number"])[1] if now["state"] == "done" else now


def test_a_show_is_begun_from_a_form(folder):
    path = folder / "mine.yaml"
    with warm_desk(path) as own:
        page = own.page
        state = page.get("show")[1]
        assert (state["text"], state["readable"], state["saved"]) == ("", False, True)
        now = page.get("begin")[1]
        assert (now["title"], now["track"], now["songs"]) == ("Mine", None, ["songs/tune.wav"])
        assert not path.exists()
        state = begun(page, cast=[WREN, MOSS], floor=["12 m", "30 ft"])
        assert state["saved"] is state["readable"] is True
        assert path.read_text(encoding="utf-8") == state["text"]
        values = state["values"]
        assert values["title"] == "First"
        assert values["track"]["file"] == "songs/tune.wav"
        assert [each["name"] for each in values["cast"]] == ["Wren", "Moss: the 2nd"]
        assert values["cast"][1]["stature"] == "5 ft 7 in"
        assert values["venue"]["stage"]["depth"] == "30 ft"
        assert values["timeline"] == []
        view = page.get("view")
        assert view[0] == 200
        assert set(view[1]["standings"][0]["spots"]) == {"Wren", "Moss: the 2nd"}
        assert (
            page.post("begin", track="songs/tune.wav", cast=[WREN], floor=["8 m", "8 m"])[0] == 409
        )
        assert page.get("show")[1]["undo"] is None
        status, said = page.post("undo")
        assert (status, said["error"]["code"]) == (409, "nothing-to-undo")
        assert page.get("show")[1]["text"] == state["text"]


def emptied(page):
    """The show, once somebody has taken its whole text out."""
    revision = page.get("show")[1]["revision"]
    operation = {"do": "replace-text", "text": ""}
    return page.post("operations", revision=revision, operation=operation, anyway=True)[1]


def test_a_show_that_was_begun_is_never_begun_over(folder):
    path = folder / "mine.yaml"
    asked = {"track": "songs/tune.wav", "cast": [WREN], "floor": ["8 m", "8 m"]}
    with warm_desk(path) as own:
        page = own.page
        assert page.get("show")[1]["new"] is True
        text = begun(page)["text"]
        assert page.get("show")[1]["new"] is False
        state = emptied(page)
        assert (state["text"], state["new"], state["undo"]) == ("", False, "edit the text")
        status, said = page.post("begin", **asked)
        assert status == 409
        assert "press Undo to get it back" in said["error"]["message"]
        own.process.kill()
        own.process.wait()
    assert path.read_text(encoding="utf-8") == text
    with warm_desk(path) as own:
        page = own.page
        state = page.get("show")[1]
        assert (state["text"], state["new"], state["saved"]) == ("", False, False)
        assert page.post("begin", **asked)[0] == 409
        assert page.post("undo")[1]["text"] == text
        own.end()
    assert path.read_text(encoding="utf-8") == text


def test_where_all_was_taken_out_and_saved_a_step_leads_back(folder):
    path = folder / "mine.yaml"
    with warm_desk(path) as own:
        page = own.page
        text = begun(page)["text"]
        emptied(page)
        assert page.post("save")[1]["saved"] is True
        assert path.read_text(encoding="utf-8") == ""
        state = page.get("show")[1]
        assert state["new"] is False, "undo would bring it back"
        assert page.post("undo")[1]["text"] == text
        page.post("redo")
        own.end()
    with warm_desk(path) as own:
        assert own.page.get("show")[1]["new"] is True, "empty, and nothing leads back"


def test_a_show_that_is_not_begun_leaves_nothing(folder):
    path = folder / "mine.yaml"
    with desk(path) as own:
        own.page.get("begin")
        status, said = own.end()
    assert status == 130
    assert "Traceback" not in said
    assert sorted(each.name for each in folder.iterdir()) == ["songs"]


def test_a_song_on_the_command_line_is_suggested(folder):
    song = folder / "songs" / "tune.wav"
    with warm_desk(folder / "mine.yaml", "--track", str(song)) as own:
        assert own.page.get("begin")[1]["track"] == "songs/tune.wav"
        state = begun(own.page)
        assert state["values"]["track"]["file"] == "songs/tune.wav"
    status, said = Desk(folder / "mine.yaml", "--track", str(song)).end()
    assert status == 2
    assert "this show is there already, and names its song" in said
    status, said = Desk(folder / "other.yaml", "--track", "none.ogg").end()
    assert status == 2
    assert "there is no such song" in said
    status, said = Desk(folder / "no-show.txt").end()
    assert status == 2
    assert "file not found" in said


def test_what_is_wrong_in_the_form_is_said_and_nothing_is_written(folder):
    (folder / "noise.ogg").write_bytes(b"no sound at all")
    with warm_desk(folder / "mine.yaml") as own:
        page = own.page
        asked = {"track": "songs/tune.wav", "cast": [WREN], "floor": ["8 m", "8 m"]}
        for given, said in [
            ({"track": "nothing.ogg"}, "there is no such file"),
            ({"track": " "}, "no song is chosen"),
            ({"track": "songs"}, "this is a folder"),
            ({"cast": []}, "nobody dances yet"),
            ({"cast": [WREN, WREN]}, "two are called Wren"),
            ({"cast": [{**WREN, "name": " "}]}, "somebody has no name"),
            ({"cast": [{**WREN, "prop": "sword"}]}, "'prop' is one of"),
            ({"cast": [{**WREN, "level": 9}]}, "'level' is 1 to 5"),
            ({"floor": ["8 m"]}, "a width and a depth"),
            (
                {"cast": [WREN, {**MOSS, "name": "Moss", "stature": "3 m"}]},
                "Moss's height: 3 m is outside",
            ),
            ({"cast": [{**WREN, "stature": "tall\nevil: true"}]}, "Wren's height: "),
            ({"floor": ["8 m", "deep"]}, "The floor's depth: "),
        ]:
            status, answer = page.post("begin", **{**asked, **given})
            assert status in {400, 404, 422}, given
            assert said in answer["error"]["message"]
        failed = begun(page, track="noise.ogg")
        assert failed["state"] == "failed"
        assert "noise.ogg" in failed["error"]["message"]
        assert page.get("show")[1]["text"] == ""
    assert not (folder / "mine.yaml").exists()


def test_a_song_is_brought_in_and_never_overwrites_another(folder):
    song = (folder / "songs" / "tune.wav").read_bytes()
    with warm_desk(folder / "mine.yaml") as own:

        def bring(name, content):
            status, _, said = own.page.raw("POST", f"/api/song-file?name={name}", content)
            return status, json.loads(said)

        assert bring("tune.wav", song) == (200, {"file": "tune.wav"})
        assert bring("tune.wav", song) == (200, {"file": "tune.wav"})
        assert bring("..%2F..%2Ftune.wav", song[:-2]) == (200, {"file": "tune 2.wav"})
        assert (folder / "tune.wav").read_bytes() == song
        assert bring("tune.exe", song)[0] == 422
        assert bring("q" * 300 + ".ogg", song)[0] == 422
        assert bring("a%0Ab.ogg", song)[0] == 422
        assert bring(".wav", song)[0] == 422
        assert bring("", song)[0] == 422
        assert own.page.raw("POST", "/api/song-file?name=x.wav", song, secret=False)[0] == 403
        assert own.page.get("begin")[1]["songs"] == ["tune 2.wav", "tune.wav", "songs/tune.wav"]
        own.end()
    assert sorted(each.name for each in folder.iterdir()) == ["songs", "tune 2.wav", "tune.wav"]


def test_a_missing_song_is_chosen(folder):
    path = folder / "mine.yaml"
    with warm_desk(path) as own:
        begun(own.page)
        own.end()
    text = path.read_text(encoding="utf-8")
    (folder / "songs").rename(folder / "elsewhere")
    with warm_desk(path) as own:
        page = own.page
        assert page.get("show")[1]["track_there"] is False
        assert page.raw("GET", "/api/track")[0] == 404
        status, said = page.post("track", file="nowhere.wav", revision=1)
        assert (status, "there is no such file" in said["error"]["message"]) == (404, True)
        status, state = page.post("track", file=page.get("begin")[1]["songs"][0], revision=1)
        assert status == 200, state
        assert state["text"] == text.replace("songs/tune.wav", "elsewhere/tune.wav")
        assert state["undo"] == "take tune.wav as the song"
        assert state["track_there"] is True
        assert page.raw("GET", "/api/track")[0] == 200
        other = folder / "other.wav"
        other.write_bytes((folder / "elsewhere" / "tune.wav").read_bytes() + b"\0\0")
        _, state = page.post("track", file="other.wav", revision=2)
        pinned = state["values"]["track"]["sha256"]
        assert pinned not in text
        assert len(pinned) == 64
        assert page.get("view")[0] == 200


def test_the_tour_is_seen_once(folder, monkeypatch, tmp_path_factory):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
    with warm_desk(folder / "mine.yaml") as own:
        assert own.page.get("tour")[1] == {"seen": False}
        assert own.page.post("tour")[1] == {"seen": True}
    with warm_desk(folder / "mine.yaml") as own:
        assert own.page.get("tour")[1] == {"seen": True}


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (".", "there may be a show in this folder already: 'lost.yaml' (a link that leads nowhere), 'mine.yml' (this file is empty); type `sequencer open lost.yaml` or `sequencer open mine.yml` to open one of them, or"),
        ("missing/folder", "there is no folder 'missing' that can be opened; check the path, or make the folder first"),
        ("lost", "this is a link to 'nowhere.yaml', and nothing can be opened there; put the file back there"),
        ("songs", "there are several shows in this folder: 'a copy.yaml', 'a.yaml'; type `sequencer open \"songs/a copy.yaml\"` or"),
    ],
    ids=["unsure", "missing", "lost", "several"],
)  # fmt: skip
def test_what_cannot_be_begun_is_one_line_and_leaves_all_as_it_was(
    folder, monkeypatch, given, said
):
    monkeypatch.chdir(folder)
    (folder / "mine.yml").write_bytes(b"")
    for name in ("a.yaml", "a copy.yaml"):
        (folder / "songs" / name).write_text("track: {file: tune.wav}\n", encoding="utf-8")
    (folder / "lost.yaml").symlink_to("nowhere.yaml")
    before = sorted(folder.rglob("*"))
    result = CliRunner().invoke(main, ["open", given, "--no-browser"])
    assert result.exit_code == 2
    assert said in result.output
    assert result.output.count("\n") == 1
    assert sorted(folder.rglob("*")) == before


def test_the_help_names_the_new_option():
    said = CliRunner().invoke(main, ["open", "--help"]).output
    assert "--track" in said
