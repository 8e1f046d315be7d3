"""Versions of an open show and comparisons, over HTTP; `sequencer compare` on files."""

import json
import shutil
from urllib.parse import quote

import pytest
from click.testing import CliRunner

from sequencer.cli import main
from sequencer.desk.file.kept_versions import KeptVersions
from sequencer.show.text.file_text import DiskText
from tests.cli.test_open import MADE_UP
from tests.desk_client import warm_desk


@pytest.fixture
def show(stage_folder, tmp_path):
    """The small show in a folder of its own, with its song."""
    for name in ("show.yaml", "song.wav"):
        shutil.copy(stage_folder / name, tmp_path / name)
    return tmp_path / "show.yaml"


def run(*arguments):
    return CliRunner().invoke(main, arguments)


def compared(page, old, new="now"):
    status, values = page.get(f"compare?old={quote(old)}&new={quote(new)}")
    assert status == 200, values
    return values


def words(values):
    return [each["words"] for each in values["changes"]]


def test_a_version_is_kept_compared_and_taken_back_as_one_step(show):
    text = show.read_text(encoding="utf-8")
    with warm_desk(show) as own:
        page = own.page
        page.until_checked()
        status, listed = page.post("versions", name="before the rehearsal")
        (version,) = listed["versions"]
        assert status == 200
        assert version["file"] == "show (before the rehearsal).yaml"
        assert (version["line"], version["same"]) == ("the same, letter by letter", True)
        assert set(version["checked"]) == {"stop", "warn", "note"}
        assert version["holds"]
        assert (show.parent / version["file"]).read_text(encoding="utf-8") == text

        page.do(1, do="stretch-block", at=["timeline", 0], beats=24)
        page.do(2, do="put-block", into=["timeline"], block={"from": "10.1", "pattern": "windmill", "beats": 8})  # fmt: skip
        _, listed = page.get("versions")
        assert listed["versions"][0]["line"] == "2 changes in what is danced"

        page.until_checked()
        values = compared(page, "version:before the rehearsal")
        assert words(values) == [
            "two-beat-weave: 24 beats instead of 16",
            "windmill, 8 beats, is new",
        ]
        assert [row["bar"] for row in values["eights"]] == [3, 9]
        assert values["changes"][1]["who"] == ["Ash"]
        assert values["findings"]["unknown"] == []
        assert values["findings"]["line"].startswith("findings: ")
        step = compared(page, "step:1", "step:2")
        assert words(step) == ["windmill, 8 beats, is new"]
        assert step["findings"]["unknown"]
        assert compared(page, "file")["changes"] == values["changes"]
        assert compared(page, "now")["identical"]

        status, state = page.post("versions/take", name="before the rehearsal", revision=3)
        assert (status, state["text"], state["revision"]) == (200, text, 4)
        assert state["undo"] == "go back to the version “before the rehearsal”"
        status, state = page.post("undo")
        assert "windmill" in state["text"]
        assert page.post("versions/take", name="before the rehearsal", revision=4)[0] == 409
        status, state = page.post("versions/take", step=0, revision=5)
        assert (status, state["text"]) == (200, text)


def test_what_cannot_be_done_with_a_version_is_said_in_a_sentence(tmp_path):
    path = tmp_path / "two.yaml"
    path.write_text(MADE_UP, encoding="utf-8")
    with warm_desk(path) as own:
        page = own.page
        assert page.post("versions", name="duo")[0] == 200
        status, error = page.post("versions", name="Duo")
        assert (status, error["error"]["code"]) == (409, "version-there")
        assert page.post("versions", name="Duo", replace=True)[0] == 200
        assert [each["name"] for each in page.get("versions")[1]["versions"]] == ["duo"]
        status, error = page.post("versions", name="a/b")
        assert (status, error["error"]["code"]) == (422, "bad-name")
        for where, given in (("versions/delete", {}), ("versions/take", {"revision": 1})):
            status, error = page.post(where, name="trio", **given)
            assert (status, error["error"]["code"]) == (404, "no-version")
        assert page.post("versions", name=3)[0] == 400
        for old in ("step:9", "version:", "then", ""):
            assert page.get(f"compare?old={old}&new=now")[0] in (400, 404)

        # without its song the show is compared as it is written
        page.do(1, do="stretch-block", at=["timeline", 0], beats=24)
        values = compared(page, "version:duo")
        assert words(values) == ["two-beat-weave from 3.1: beats 24 instead of 16"]
        assert "song.wav" in values["faults"][0]
        page.do(2, do="replace-text", text="a: [1")
        values = compared(page, "version:duo")
        assert values["faults"]
        assert values["changes"]

        assert page.post("versions/delete", name="duo")[1]["versions"] == []
    assert [each.name for each in tmp_path.iterdir() if "(" in each.name] == []


def test_two_files_are_compared_by_the_command(show):
    other = show.with_name("show (long).yaml")
    text = show.read_text(encoding="utf-8").replace("beats: 16}", "beats: 24}   # longer")
    other.write_text(text.replace("stature: 1.7", "stature: 1.75"), encoding="utf-8")
    result = run("compare", str(show), str(other))
    assert result.exit_code == 0
    lines = result.output.splitlines()
    assert lines[0] == (
        "show (long).yaml, compared with show.yaml: 1 change in what is danced, 1 change in the cast, "
        "1 change in comments and spelling"
    )
    assert "  bar 3   ≠ 3.1 Ash: two-beat-weave: 24 beats instead of 16" in lines
    assert "          ≠ Ash: stature 1.75 instead of 1.7" in lines
    assert "          + the comment “longer” is new" in lines
    assert (
        "Findings: show.yaml has not been checked as it stands; check it to compare them" in lines
    )

    for path in (show, other):
        run("check", str(path))
    result = run("compare", "--json", str(show), str(other))
    values = json.loads(result.output)
    assert values["findings"]["unknown"] == []
    assert values["line"] == (
        "1 change in what is danced, 1 change in the cast, 1 change in comments and spelling"
    )


def test_a_file_with_a_byte_order_mark_is_spelled_otherwise(show):
    marked = show.with_name("marked.yaml")
    marked.write_bytes(b"\xef\xbb\xbf" + show.read_bytes())
    result = run("compare", str(show), str(marked))
    assert result.exit_code == 0
    assert "marked.yaml, compared with show.yaml: only comments or spelling differ" in result.output
    said = " ".join(result.output.split())
    assert "the invisible mark at the start of the file (a byte order mark) is new" in said
    again = run("compare", str(marked), str(marked))
    assert "the same, letter by letter" in again.output


def test_bad_input_of_the_command_is_one_line(show):
    result = run("compare", str(show), str(show.with_name("none.yaml")))
    assert result.exit_code == 2
    assert "file not found" in result.stderr
    result = run("compare", str(show), str(show))
    assert result.output.strip() == "show.yaml, compared with show.yaml: the same, letter by letter"


FINDING = {"code": "too-close", "severity": "warn", "who": ["Ash"], "start": 1.0, "end": 2.0, "position": "1.3", "message": "near"}  # fmt: skip


@pytest.fixture
def kept(show):
    """The small show with a version of it that was kept with a report."""
    said = DiskText(show.read_text(encoding="utf-8"))
    KeptVersions(show).keep("duo", said, {"findings": [FINDING], "unseen": []})
    return show


def holds(path):
    found = KeptVersions(path).findings("duo", path.read_text(encoding="utf-8"))
    assert [each.code for each in found.findings] == ["too-close"]  # what was said then is known
    return found.holds


def test_a_report_holds_for_the_program_and_the_files_that_it_was_made_with(kept, monkeypatch):
    assert holds(kept)
    with monkeypatch.context() as other:
        other.setattr("sequencer.content_keys.whole_code", lambda: b"another program")
        assert not holds(kept)
    with monkeypatch.context() as other:
        other.setattr("sequencer.plugins.any_installed", lambda: True)
        assert not holds(kept)
    assert holds(kept)
    with (kept.parent / "song.wav").open("ab") as song:
        song.write(b"\0\0")
    assert not holds(kept)
    (kept.parent / "song.wav").unlink()
    assert not holds(kept)


def test_findings_are_not_compared_with_a_report_that_may_not_hold(kept):
    place = kept.with_name(".show (duo).yaml.checked")
    said = json.loads(place.read_text(encoding="utf-8"))
    del said["ground"]  # as an earlier program kept it
    place.write_text(json.dumps(said), encoding="utf-8")
    assert not holds(kept)
    with warm_desk(kept) as own:
        page = own.page
        page.until_checked()
        _, listed = page.get("versions")
        assert (listed["versions"][0]["checked"]["warn"], listed["versions"][0]["holds"]) == (1, False)  # fmt: skip
        page.do(1, do="stretch-block", at=["timeline", 0], beats=24)
        page.until_checked()
        found = compared(page, "version:duo")["findings"]
        assert (found["changes"], found["same"]) == ([], 0)
        assert found["unknown"] == [
            "the version “duo” was checked when it was kept, but the program, the song or another file that it reads may have changed since"
        ]


def test_a_byte_order_mark_is_told_as_in_a_terminal(show):
    """Some editors put it at the start of a file; nobody sees it."""
    copy = show.with_name("show (from elsewhere).yaml")
    copy.write_bytes(b"\xef\xbb\xbf" + show.read_bytes())
    with warm_desk(show) as own:
        (version,) = own.page.get("versions")[1]["versions"]
        assert not version["same"]
        values = compared(own.page, "version:from elsewhere")
        assert words(values) == [
            "the invisible mark at the start of the file (a byte order mark) is gone"
        ]
        assert version["line"] == values["line"]
        assert not values["identical"]
        assert values["says_the_same"]
        assert compared(own.page, "file")["identical"]
