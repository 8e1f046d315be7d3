"""`sequencer open`: a real server in a process of its own, asked over HTTP as a page asks it."""

import http.client
import json
import os
import shutil
import socket
import subprocess
import sys
import threading
import time

import numpy as np
import pytest

from tests.desk_client import Desk, desk, eventually

MADE_UP = """\
title: Two
track: {file: song.wav}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.55}}   # the first
timeline:
  - {from: 3.1, pattern: two-beat-weave, beats: 16}
"""


@pytest.fixture
def show(stage_folder, tmp_path):
    """The small show in a folder of its own, with its song."""
    for name in ("show.yaml", "song.wav"):
        shutil.copy(stage_folder / name, tmp_path / name)
    return tmp_path / "show.yaml"


@pytest.fixture
def silent(tmp_path):
    """A show whose track is not there."""
    path = tmp_path / "two.yaml"
    path.write_text(MADE_UP, encoding="utf-8")
    return path


def test_a_show_from_opening_to_saving(show):
    text = show.read_text(encoding="utf-8")
    with desk(show) as own:
        page = own.page
        with page.events() as told:
            _, state = page.get("show")
            assert (state["text"], state["saved"], state["readable"]) == (text, True, True)
            status, view = page.get("view")
            assert status == 200
            assert [one["title"] for one in view["blocks"]] == ["two-beat-weave"]
            assert view["blocks"][0]["entry"] == ["timeline", 0]

            status, state = page.do(1, do="stretch-block", at=["timeline", 0], beats=24)
            assert (status, state["revision"], state["saved"]) == (200, 2, False)
            assert "beats: 24" in state["text"]
            assert show.read_text(encoding="utf-8") == text
            found = page.until_checked()
            assert found["revision"] == 2
            assert isinstance(found["ok"], bool)
            assert page.get("view")[1]["blocks"][0]["end"] == 8 + 24

            status, state = page.post("save")
            assert (status, state["saved"]) == (200, True)
            assert show.read_text(encoding="utf-8") == state["text"]
            assert page.post("undo")[1]["text"] == text
            assert page.post("redo")[1]["text"] == state["text"]
            eventually(lambda: [1 for event, _ in told if event == "findings"])
        revisions = [said["revision"] for event, said in told if event == "show"]
        assert revisions == sorted(revisions)
        assert own.end()[0] == 130
    assert sorted(path.name for path in show.parent.iterdir()) == ["show.yaml", "song.wav"]


def test_findings_are_those_of_check_and_none_is_clear_before_it_was_looked_at(show):
    with show.open("a", encoding="utf-8") as more:
        more.write("  - {accent: 4.2}\n")
    checked = subprocess.run(
        [sys.executable, "-m", "sequencer", "check", str(show), "--json"],
        check=False, capture_output=True,
    )  # fmt: skip
    report = json.loads(checked.stdout)
    with desk(show) as own, own.page.events() as told:
        found = own.page.until_checked()
    fields = set(report["findings"][0])
    plain = [{key: one[key] for key in fields} for one in found["findings"]]
    assert plain == report["findings"]
    for key in ("ok", "clearances", "unseen", "cautions"):
        assert found[key] == report[key]
    steps = [said for event, said in told if event == "checks"]
    assert all(said["complete"] is (said["ok"] is not None) for said in steps)
    assert all(said["open"] == [] for said in steps if said["complete"])
    assert any(said["open"] for said in steps)


def test_who_may_not_ask_is_refused(silent):
    with desk(silent) as own:
        page = own.page
        good = page.host
        refused = [
            page.raw("GET", "/api/show", secret=False),
            page.raw("GET", "/api/show", secret=False, x_sequencer_secret="wrong"),  # noqa: S106
            page.raw("GET", f"/api/show?secret={page.secret}", secret=False),
            page.raw("GET", "/api/show", host="evil.example"),
            page.raw("GET", "/", host="evil.example", secret=False),
            page.raw("GET", "/", host=f"localhost:{good.split(':')[1]}", secret=False),
            page.raw("GET", "/api/show", origin="http://evil.example"),
            page.raw("GET", "/api/show", origin="null"),
            page.raw("GET", "/api/show", sec_fetch_site="cross-site"),
            page.raw("POST", "/api/save", {}, origin="https://" + good),
            page.raw("GET", "/page.js", origin="http://evil.example", secret=False),
        ]
        assert [status for status, _, _ in refused] == [403] * len(refused)
        assert all("two.yaml" not in content.decode() for _, _, content in refused)
        assert page.raw("GET", "/api/show", origin=f"http://{good}", sec_fetch_site="same-origin")[0] == 200  # fmt: skip
        status, headers, _ = page.raw("GET", "/", secret=False)
        assert status == 200
        policy = headers["content-security-policy"]
        assert policy.startswith("default-src 'none'; script-src 'self'")
        assert "unsafe" not in policy
        assert "http" not in policy
        assert page.secret not in str(headers)


def test_another_machines_address_is_not_listened_to(silent):
    with desk(silent) as own:
        port = int(own.page.host.split(":")[1])
        others = {
            info[4][0] for info in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)
        }
        for address in [*(others - {"127.0.0.1"}), "127.0.0.2"]:
            connection = http.client.HTTPConnection(address, port, timeout=5)
            with pytest.raises(OSError):  # noqa: PT011 (refused, or no route)
                connection.request("GET", "/")


def test_what_is_no_question_is_refused_in_a_sentence(silent):
    with desk(silent) as own:
        page = own.page
        for body, said in [
            (b"not json", "no JSON"),
            (b"[]", "no object"),
            (b"[" * 100_000, "no JSON"),
            (b'{"revision": 1}', "'operation' is missing"),
            (b'{"operation": {"do": "x"}}', "'revision' is a whole number"),
            (b'{"revision": 1, "operation": {"do": "fly"}}', "there is no operation 'fly'"),
            (b'{"revision": 1, "operation": {"do": "replace-text", "text": "\\ud800"}}', "half a letter"),
        ]:  # fmt: skip
            status, _, content = page.raw("POST", "/api/operations", body, content_type="application/json")  # fmt: skip
            assert status == 400, body[:60]
            error = json.loads(content)
            assert said in error["error"]["message"]
            assert error["revision"] == 1
        assert page.raw("POST", "/api/operations", b"{}", content_type="text/plain")[0] == 400
        assert page.raw("GET", "/api/nothing")[0] == 404
        assert page.raw("GET", "/../show.yaml")[0] == 404
        assert page.raw("GET", "/..%2f..%2fpyproject.toml", secret=False)[0] == 404
        assert page.raw("GET", "/api/save")[0] == 405
        assert page.raw("POST", "/api/save", b"x" * 9_000_000, content_type="application/json")[0] == 400  # fmt: skip
        assert page.get("show")[1]["revision"] == 1


def test_a_missing_track_is_said_and_the_text_can_be_edited(silent):
    with desk(silent) as own:
        status, said = own.page.get("view")
        assert status == 404
        assert "cannot find the track 'song.wav'" in said["error"]["message"]
        assert own.page.raw("GET", "/api/track")[0] == 404
        status, state = own.page.do(1, do="change-titles", values={"title": "Three"})
        assert (status, state["readable"]) == (200, True)
        assert "title: Three" in state["text"]
        assert not own.page.get("findings")[1]["complete"]


def test_a_track_that_comes_later_is_heard_then(show):
    song = show.parent / "song.wav"
    song.rename(show.parent / "later.wav")
    with desk(show) as own:
        assert own.page.get("view")[0] == 404
        (show.parent / "later.wav").rename(song)
        assert eventually(lambda: own.page.get("view")[0] == 200)


def test_what_cannot_be_a_show_is_refused_and_changes_nothing(show):
    with desk(show) as own:
        page = own.page
        page.get("view")
        before = page.get("show")[1]["text"]
        status, said = page.do(1, do="change-block", at=["timeline", 0], values={"patern": "x"})
        assert status == 422
        assert "unknown key 'patern'" in said["error"]["message"]
        assert said["error"]["line"] is not None
        late = {"do": "stretch-block", "at": ["timeline", 0], "beats": 400}
        status, said = page.post("operations", revision=1, operation=late)
        assert (status, said["error"]["anyway"]) == (422, True)
        mine = "patterns:\n  toroid: {law: orbit}\n"
        (show.parent / "mine.yaml").write_text(mine, encoding="utf-8")
        taken = {"do": "set-pattern-files", "files": ["mine.yaml"]}
        status, refused = page.post("operations", revision=1, operation=taken)
        assert (status, refused["error"].get("anyway")) == (422, False)
        assert "show.yaml:" in said["error"]["message"]
        assert str(show.parent) not in said["error"]["message"]
        assert page.get("show")[1] == {**page.get("show")[1], "text": before, "revision": 1}
        # one edit right behind another is tried too, before the first is told to be staged
        assert page.do(1, do="change-titles", values={"title": "Quick"})[0] == 200
        assert page.post("operations", revision=2, operation=late)[0] == 422
        status, state = page.post("operations", revision=2, operation=late, anyway=True)
        assert (status, state["revision"]) == (200, 3)
        assert page.get("view")[0] == 422


def test_a_text_that_is_no_show_is_kept_as_text_until_it_is_mended(silent):
    silent.write_text("title: [\n", encoding="utf-8")
    with desk(silent) as own:
        _, state = own.page.get("show")
        assert not state["readable"]
        assert state["values"] is None
        assert [fault["line"] for fault in state["faults"]] == [2]
        assert own.page.get("view")[0] == 422
        assert own.page.do(1, do="change-titles", values={"title": "x"})[0] == 422
        status, state = own.page.do(1, do="replace-text", text=MADE_UP)
        assert (status, state["readable"]) == (200, True)
        assert own.page.do(2, do="change-titles", values={"title": "x"})[0] == 200


def test_two_pages_at_once(silent):
    with desk(silent) as own:
        one, two = own.page, own.page
        with one.events() as told, two.events():
            assert one.do(1, do="change-titles", values={"title": "Mine"})[0] == 200
            status, state = two.do(
                1, do="change-person", group="cast", name="Ash", values={"stature": "1.6 m"}
            )
            assert status == 200
            assert "title: Mine" in state["text"]
            assert "1.6 m" in state["text"]
            status, said = two.do(1, do="change-titles", values={"title": "Yours"})
            assert (status, said["error"]["code"]) == (409, "conflict")
            assert said["revision"] == 3
            assert one.post("undo", revision=2)[0] == 409
            assert one.post("undo", revision=3)[1]["text"].count("1.6 m") == 0
            eventually(lambda: [1 for event, said in told if event == "show" and said["revision"] == 4])  # fmt: skip


def test_the_file_changed_in_an_editor_meanwhile(silent):
    with desk(silent) as own, own.page.events() as told:
        page = own.page
        page.do(1, do="change-titles", values={"title": "Here"})
        silent.write_text(MADE_UP.replace("beats: 16", "beats: 8"), encoding="utf-8")
        state = eventually(lambda: (s := page.get("show")[1])["revision"] > 2 and s)
        assert "title: Here" in state["text"]
        assert "beats: 8" in state["text"]
        assert state["outside"] is None

        silent.write_text(MADE_UP.replace("title: Two", "title: There"), encoding="utf-8")
        state = eventually(lambda: (s := page.get("show")[1])["outside"] and s)
        assert "title: Here" in state["text"]
        assert "title: There" in state["outside"]["text"]
        (place,) = state["outside"]["conflicts"]
        assert place["place"] == "title"
        lines = state["outside"]["lines"][0]
        assert lines["in"] == ["title: There"]
        assert lines["out"] == [state["text"].splitlines()[lines["line"] - 1]]
        status, said = page.post("save")
        assert (status, said["error"]["code"]) == (409, "outside")
        assert "title: There" in silent.read_text(encoding="utf-8")
        assert page.post("outside", take="neither")[0] == 400
        status, state = page.post("outside", take="mine")
        assert (status, state["outside"]) == (200, None)
        assert "title: Here" in state["text"]
        assert "title: There" in page.post("undo")[1]["text"]
        page.post("redo")
        assert page.post("save")[0] == 200
        assert "title: Here" in silent.read_text(encoding="utf-8")
        assert {"outside", "notice"} <= {event for event, _ in told}


def test_a_second_server_is_refused_and_a_killed_one_leaves_no_hold(silent):
    with desk(silent) as own:
        second = Desk(silent)
        status, said = second.end()
        assert status == 2
        assert f"open already, in process {own.process.pid}" in said
        own.process.kill()
        own.process.wait()
        with desk(silent) as again:
            assert again.page.get("show")[0] == 200


def test_a_folder_that_cannot_be_written_keeps_the_journal_in_the_cache(silent):
    if os.geteuid() == 0:
        pytest.skip("root may write everywhere; tests/unit/desk has this without permissions")
    silent.parent.chmod(0o500)
    try:
        with desk(silent) as own:
            _, state = own.page.do(1, do="change-titles", values={"title": "x"})
            assert state["kept"]["where"] == "cache"
            status, said = own.page.post("save")
            assert (status, said["error"]["code"]) == (503, "cannot-write")
    finally:
        silent.parent.chmod(0o700)


def test_it_ends_with_the_last_page(silent):
    with desk(silent, "--stay", "1") as own:
        time.sleep(2.5)
        assert own.process.poll() is None, "no page has come yet"
        with own.page.events():
            time.sleep(2.5)
            assert own.process.poll() is None
            own.page.do(1, do="change-titles", values={"title": "Not saved"})
        own.process.wait(30)
        assert own.process.returncode == 0
        assert "the rest is in its journal" in own.process.stderr.read()


KILLS = 12  # benchmarks/kills.py kills more often


def test_killed_at_any_instant_it_loses_nothing(silent):
    """What was answered is there again; of what was under way, it is there whole or not at all."""
    draw = np.random.default_rng(5)
    answered = under_way = "Two"
    steps = 0
    for round_ in range(10 * KILLS):
        if round_ >= KILLS and steps > 2 * KILLS:
            break
        with desk(silent) as own:
            page = own.page
            _, state = page.get("show")
            assert _title(state["text"]) in {answered, under_way}
            answered = _title(
                state["text"]
            )  # it may be what was under way: then that is what counts
            revision = state["revision"]
            killing = threading.Timer(draw.uniform(0.0, 0.3), own.process.kill)
            killing.start()
            for k in range(10_000):
                under_way = f"Round {round_} step {k}"
                try:
                    status, state = page.do(
                        revision, do="change-titles", values={"title": under_way}
                    )
                    assert status == 200
                    revision, answered = state["revision"], under_way
                    steps += 1
                    if draw.random() < 0.2:
                        page.post("save")
                except (OSError, http.client.HTTPException):
                    break
            killing.join()
            own.process.wait(60)
    assert steps > 2 * KILLS, "it was killed while something was done"
    with desk(silent) as own:
        text = own.page.get("show")[1]["text"]
        assert _title(text) in {answered, under_way}
        assert own.page.post("save")[0] == 200
    assert silent.read_text(encoding="utf-8") == text
    assert text == MADE_UP.replace("title: Two", f"title: {_title(text)}")


def _title(text):
    return text.partition("\n")[0].removeprefix("title: ")


def test_a_hostile_show_is_text_like_any_other(silent):
    nasty = "<script>alert(1)</script>"
    silent.write_text(
        MADE_UP.replace("title: Two", f"title: '{nasty}'").replace("song.wav", "/etc/passwd"),
        encoding="utf-8",
    )
    with desk(silent) as own:
        status, headers, content = own.page.raw("GET", "/api/show")
        assert status == 200
        assert headers["content-type"] == "application/json"
        assert headers["x-content-type-options"] == "nosniff"
        assert json.loads(content)["values"]["title"] == nasty
        status, _, content = own.page.raw("GET", "/api/track")
        assert status != 200
        assert b"root:" not in content
        assert nasty.encode() not in own.page.raw("GET", "/")[2]


def test_the_track_can_be_asked_for_in_parts(show):
    song = (show.parent / "song.wav").read_bytes()
    with desk(show) as own:
        status, headers, content = own.page.raw("GET", "/api/track")
        assert (status, content == song) == (200, True)
        assert headers["content-type"] in {"audio/x-wav", "audio/wav"}
        status, headers, content = own.page.raw("GET", "/api/track", range="bytes=100-199")
        assert (status, content == song[100:200]) == (206, True)
        assert own.page.raw("GET", "/api/track.mp3")[1]["content-type"] == "audio/mpeg"


def test_the_dance_is_that_of_the_rehearsal_page(show):
    with desk(show) as own:
        status, dance = own.page.get("dance?flown=0")
        assert status == 200
        assert [one["name"] for one in dance["cast"]] == ["Ash"]
        assert dance["revision"] == 1
        assert dance["keys"]
        status, song = own.page.get("song")
        assert (status, len(song["downbeats"]) > 10) == (200, True)


def test_a_port_that_is_taken_is_bad_input(silent):
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        status, said = Desk(silent, "--port", str(other.getsockname()[1])).end()
    assert status == 2
    assert "cannot be used" in said
    assert not (silent.parent / f".{silent.name}.open").exists()
