"""`sequencer open --share`: a real second server, asked as a phone asks it, and as somebody who means harm."""

import json
import re
import shutil
import time

import pytest

from tests.desk_client import Desk, DeskClient, eventually, warm_desk

HERE = "127.0.0.2"  # another address of this machine, as a network's would be


class Phone(DeskClient):
    """Asks a shared show."""

    def __init__(self, address):
        super().__init__(address)
        self.token = None

    def raw(self, method, path, body=None, *, secret=True, **headers):
        if secret and self.token:
            headers.setdefault("x_sequencer_guest", self.token)
        return super().raw(method, path, body, secret=False, **headers)

    def join(self, code):
        status, _, content = self.raw("POST", "/api/join", {"code": code})
        said = json.loads(content)
        self.token = said.get("token", self.token)
        return status, said


@pytest.fixture
def show(stage_folder, tmp_path):
    """A small show with its song, and a secret in a comment."""
    shutil.copy(stage_folder / "song.wav", tmp_path)
    path = tmp_path / "two.yaml"
    text = (stage_folder / "show.yaml").read_text(encoding="utf-8")
    path.write_text(text + "# the gate's number is 4711\n", encoding="utf-8")
    return path


@pytest.fixture
def shared(show):
    """The page of whoever plans, and a phone that has not joined yet."""
    with warm_desk(show, "--share-address", HERE) as own:
        said = eventually(lambda: own.page.get("share")[1])
        phone = Phone(said["address"] + "/#")
        phone.code = said["code"]
        yield own, phone


def test_a_phone_joins_by_the_code_and_sees_the_show(shared):
    own, phone = shared
    assert phone.raw("GET", "/")[0] == 200
    assert phone.get("show")[0] == 403
    assert phone.join(phone.code.lower().replace("-", " "))[0] == 200
    assert phone.get("show") == (
        200, {"file": "two.yaml", "revision": 1, "readable": True, "saved": True}
    )  # fmt: skip
    status, view = phone.get("view")
    assert status == 200
    assert [one["title"] for one in view["blocks"]] == ["two-beat-weave"]
    for path in ("findings", "song", "dance"):
        assert phone.get(path)[0] == 200
    own.page.do(1, do="change-titles", values={"title": "Three"})
    assert eventually(lambda: phone.get("view")[1].get("title") == "Three")


def test_where_no_show_is_begun_yet_a_phone_is_told_to_wait(tmp_path):
    with warm_desk(tmp_path / "new.yaml", "--share-address", HERE) as own:
        said = eventually(lambda: own.page.get("share")[1])
        phone = Phone(said["address"] + "/#")
        phone.join(said["code"])
        for path in ("view", "song", "dance", "track.mp3"):
            status, answer = phone.get(path)
            assert status == 409
            assert answer["error"]["message"].endswith("wait until whoever shares it has begun one")


def test_what_is_exposed_is_neither_the_text_nor_a_way_to_change_it(shared, tmp_path):
    own, phone = shared
    phone.join(phone.code)
    own.page.until_checked()
    all_of_it = b"".join(
        phone.raw("GET", f"/api/{path}")[2] for path in ("show", "view", "findings", "song", "dance")
    )  # fmt: skip
    for hidden in (
        "4711",
        "# the first",
        str(tmp_path),
        phone.code,
        own.page.secret,
        '"operation"',
    ):
        assert hidden.encode() not in all_of_it, hidden


def test_no_error_says_to_those_who_watch_where_a_file_lies(show, tmp_path):
    """A track that is missing, by its whole path, and a beat file: each error has a path, which whoever plans sees."""
    gone = tmp_path / "secret" / "gone.wav"
    text = show.read_text(encoding="utf-8")
    lost = text.replace("song.wav", str(gone))
    assert lost != text
    beats = text.replace("{metre: 4,", f"{{beats: {gone}, metre: 4,")
    with warm_desk(show, "--share-address", HERE) as own:
        said = eventually(lambda: own.page.get("share")[1])
        phone = Phone(said["address"] + "/#")
        phone.join(said["code"])
        for revision, wrong in ((1, lost), (2, beats)):
            assert (
                own.page.post(
                    "operations",
                    revision=revision,
                    anyway=True,
                    operation={"do": "replace-text", "text": wrong},
                )[0]
                == 200
            )
            eventually(lambda wrong=wrong: own.page.get("show")[1]["text"] == wrong)
            status, seen = own.page.get("view")
            assert status != 200
            assert "gone.wav" in json.dumps(seen)  # so that there is something to hide
            for path in ("show", "view", "song", "dance", "findings", "track.mp3"):
                status, _, content = phone.raw("GET", f"/api/{path}")
                for hidden in (str(tmp_path), "secret", "gone.wav", "line", "two.yaml:"):
                    assert hidden.encode() not in content, (path, hidden, content)
                if path in {"view", "dance"}:
                    assert status == 409
                    assert json.loads(content)["error"]["message"].endswith("sees why")


WRITING = ("operations", "preview", "undo", "redo", "save", "autosave", "outside", "copied", "count", "taps", "unshare")  # fmt: skip


@pytest.mark.parametrize("token", ["guest", "secret"])
def test_no_writing_route_answers_there(shared, token):
    """Not even to who knows the secret of whoever plans."""
    own, phone = shared
    phone.join(phone.code)
    more = {"x_sequencer_secret": own.page.secret} if token == "secret" else {}  # noqa: S105
    body = {"revision": 1, "operation": {"do": "change-titles", "values": {"title": "Hacked"}}}
    for name in WRITING:
        for method in ("POST", "PUT", "PATCH", "DELETE"):
            assert phone.raw(method, f"/api/{name}", body, **more)[0] == 405, (method, name)
        assert phone.raw("GET", f"/api/{name}", **more)[0] == 404
    for name in ("history", "schema", "share", "patterns", "track", "checks"):
        assert phone.raw("GET", f"/api/{name}", **more)[0] == 404
    state = own.page.get("show")[1]
    assert (state["revision"], state["saved"]) == (1, True)


def test_a_phone_cannot_ask_the_server_of_whoever_plans(shared):
    own, phone = shared
    phone.join(phone.code)
    assert own.page.raw("GET", "/api/show", secret=False, x_sequencer_guest=phone.token)[0] == 403
    assert own.page.raw("GET", "/api/share", secret=False)[0] == 403


@pytest.mark.parametrize(
    "path",
    ["/../page.js", "/%2e%2e/page.js", "/watch/page.js", "/built-from.txt", "/page.js%00", "//etc/passwd", "/.", "/api/../api/show"],
)  # fmt: skip
def test_paths_lead_nowhere_else(shared, path):
    _, phone = shared
    phone.join(phone.code)
    status, _, content = phone.raw("GET", path)
    assert status in {400, 404}
    assert b"root:" not in content


def test_another_host_or_origin_is_refused(shared):
    _, phone = shared
    phone.join(phone.code)
    for headers in ({"host": "evil.example:4848"}, {"host": "localhost"}, {"origin": "http://evil.example"}):  # fmt: skip
        assert phone.raw("GET", "/api/show", **headers)[0] == 403
        assert phone.raw("POST", "/api/join", {"code": phone.code}, **headers)[0] == 403


def test_guessing_is_slowed_and_told_in_words(shared):
    _, phone = shared
    for _ in range(5):
        status, said = phone.join("AAAA-AAAA")
        assert (status, said["error"]["message"]) == (403, "this is not the code")
    assert said["error"]["wait"] == 60
    status, headers, content = phone.raw("POST", "/api/join", {"code": phone.code})
    assert status == 429
    assert 0 < int(headers["retry-after"]) <= 60
    assert "wait" in json.loads(content)["error"]["message"]


@pytest.mark.parametrize(
    "body",
    [b"", b"[]", b"null", b"{", b'{"code": 7}', b'{"code": null}', b'{"code": ["A"]}', b"[" * 900, b"x" * 200_000, b"\xff\xfe"],
)  # fmt: skip
def test_what_is_no_code_is_a_wrong_one(shared, body):
    _, phone = shared
    status, _, content = phone.raw("POST", "/api/join", body)
    assert (status, json.loads(content)["error"]["code"]) == (403, "not-let-in")


def test_who_watches_is_counted_and_told_and_sharing_can_be_ended(shared):
    own, phone = shared
    phone.join(phone.code)
    with own.page.events() as told:
        connection = _stream(phone)
        eventually(
            lambda: any(event == "share" and values["watching"] == 1 for event, values in told)
        )
        assert own.page.get("share")[1]["watching"] == 1
        connection.close()
        # Something else may be told after it: what is found of the show, say.
        eventually(
            lambda: [values for event, values in told if event == "share"][-1]["watching"] == 0, 20
        )
        assert own.page.post("unshare")[0] == 200
        eventually(lambda: own.page.get("share")[1]["over"])
    eventually(lambda: _refuses(phone))
    assert own.page.get("show")[0] == 200, "whoever plans goes on"


def _stream(phone):
    import http.client

    connection = http.client.HTTPConnection(phone.host, timeout=30)
    connection.request("GET", "/api/events", headers={"x-sequencer-guest": phone.token})
    answer = connection.getresponse()
    assert answer.status == 200
    assert answer.read(4)
    return connection


def _refuses(phone):
    try:
        return phone.raw("GET", "/api/show")[0] == 403
    except OSError:
        return True


def test_watchers_do_not_keep_the_server(show):
    with warm_desk(show, "--share-address", HERE, "--stay", "1") as own:
        said = eventually(lambda: own.page.get("share")[1])
        phone = Phone(said["address"] + "/#")
        phone.join(said["code"])
        connection = _stream(phone)
        with own.page.events():
            time.sleep(0.5)
        own.process.wait(30)
        assert own.process.returncode == 0
        connection.close()


def test_the_terminal_says_what_is_exposed(show):
    own = Desk(show, "--share-address", HERE)
    eventually(lambda: own.page.get("share")[1])
    address = own.page.get("share")[1]["address"]
    said = ""
    while "It ends with this program" not in said:
        said += (line := own.process.stderr.readline())
        assert line, said
    own.end()
    assert address in said
    assert re.search(r"code to join: [2-9A-Z]{4}-[2-9A-Z]{4}", said)
    assert "Nothing is encrypted" in said
    assert "nobody can change anything" in said


def test_off_by_default_and_refused_where_it_is_not_safe(show):
    with warm_desk(show) as own:
        assert own.page.get("share")[1] is None
    status, said = Desk(show, "--share-address", "8.8.8.8").end()
    assert status == 2
    assert "can be reached from the internet" in said
    status, said = Desk(show, "--share-address", "10.255.254.253").end()
    assert status == 2
    assert "nothing can be shared on 10.255.254.253" in said
