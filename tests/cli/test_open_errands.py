"""Drafts and print-outs of an open show: begun, told, stopped and taken over, on a real server asked over HTTP."""

import re
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.desk_client import desk, eventually, warm_desk

SHOW = """\
title: Small
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast:   # who is there
  - {name: Ash, stature: 1.7, prop: poi, repertoire: {known: [extension, wheel-spin, two-beat-weave, static-spin]}}
timeline: []
"""
LONG = SHOW.replace("repertoire: {known: [extension, wheel-spin, two-beat-weave, static-spin]}", "level: 4")  # fmt: skip


@pytest.fixture
def show(stage_folder, tmp_path):
    shutil.copy(stage_folder / "song.wav", tmp_path)
    path = tmp_path / "show.yaml"
    path.write_text(SHOW, encoding="utf-8")
    return path


def ended(page, kind, seconds=300):
    """An errand once it is over."""
    return eventually(lambda: (now := page.get(kind)[1])["state"] != "working" and now, seconds)  # fmt: skip


def drafted(page, **asked):
    """What a draft offers."""
    status, now = page.post("draft", **asked)
    assert (status, now["state"]) == (200, "working")
    now = ended(page, "draft")
    assert now["state"] == "done", now["error"]
    return now


def test_a_draft_is_shown_then_laid_as_one_step_and_is_that_of_the_command_line(show, tmp_path):
    other = tmp_path / "other.yaml"
    other.write_text(SHOW, encoding="utf-8")
    said = subprocess.run(
        [sys.executable, "-m", "sequencer", "draft", str(other)],
        check=True, capture_output=True, text=True,
    )  # fmt: skip
    with warm_desk(show) as own, own.page.events() as told:
        page = own.page
        now = drafted(page)
        offer = now["offer"]
        assert offer["words"] == said.stdout.splitlines()
        assert "as this tool weighs them" in offer["words"][1]
        assert offer["checked"] is offer["new"] is True
        assert {row["words"].partition(",")[0] for row in offer["rows"]} <= {"extension", "wheel-spin", "two-beat-weave", "static-spin"}  # fmt: skip
        assert next(row["position"] for row in offer["rows"]) == "1.1"
        assert any("variety" in line for line in offer["why"])
        assert page.get("show")[1]["text"] == SHOW  # nothing is done yet
        assert "text" not in offer

        status, state = page.post("draft/lay", number=now["number"])
        assert status == 200
        assert state["text"] == other.read_text(encoding="utf-8")
        assert state["undo"] == "draft a routine"
        assert page.get("draft")[1]["state"] == "none"
        assert page.post("draft/lay", number=now["number"])[0] == 409
        assert page.post("undo")[1]["text"] == SHOW
        states = [values["state"] for event, values in told if event == "errand"]
        assert states[0] == "working"
        assert states[-1] == "none"
        assert "done" in states
        words = {values.get("words") for event, values in told if event == "errand"}
        # Words come at most every fifth of a second: that the best is told, a longer draft shows below.
        assert words - {None} >= {"reading"}
    assert show.read_text(encoding="utf-8") == SHOW


def test_what_is_changed_while_a_draft_is_made_stays(show):
    with warm_desk(show) as own:
        page = own.page
        now = drafted(page)
        page.do(1, do="change-titles", values={"title": "Changed meanwhile"})
        assert page.get("draft")[1]["older"] is True
        status, state = page.post("draft/lay", number=now["number"])
        assert status == 200
        assert "title: Changed meanwhile" in state["text"]
        assert "drafted:" in state["text"]
        assert "# who is there" in state["text"]
        assert "drafted:" not in page.post("undo")[1]["text"]


def test_a_draft_over_what_was_written_meanwhile_is_refused_and_changes_nothing(show):
    with warm_desk(show) as own:
        page = own.page
        page.get("view")
        now = drafted(page)
        block = {"from": "3.1", "pattern": "two-beat-weave", "beats": 8}
        _, state = page.do(1, do="put-block", into=["timeline"], block=block)
        status, said = page.post("draft/lay", number=now["number"])
        assert status in {409, 422}
        assert said["error"]["message"]
        assert page.get("show")[1]["text"] == state["text"]
        assert page.get("draft")[1]["state"] == "done"  # it is still there to be looked at


def test_a_stretch_is_drafted_alone_and_another_one_is_another(show):
    with warm_desk(show) as own:
        page = own.page
        now = drafted(page, span=["5.1", "9.1"])
        assert [row["position"] for row in now["offer"]["rows"]] == ["5.1"]
        _, state = page.post("draft/lay", number=now["number"])
        assert state["undo"] == "draft a routine from 5.1 to 9.1"
        blocks = page.get("view")[1]["blocks"]
        assert blocks[0]["start"] == 16
        assert 24 < max(one["end"] for one in blocks) <= 32

        laid = [row["words"] for row in now["offer"]["rows"]]
        first = drafted(page, span=["5.1", "9.1"], another=True)["offer"]["rows"]
        assert [row["words"] for row in first] != laid
        again = drafted(page, span=["5.1", "9.1"], another=True)["offer"]["rows"]
        assert again != first

        page.post("draft", span=["2.1", "2.3"])
        now = ended(page, "draft")
        assert now["state"] == "failed"
        assert "from 2.1 to 2.3 there is no gap of 6 beats or more" in now["error"]["message"]
        page.post("draft", section="nowhere")
        assert "the song has no section 'nowhere'" in ended(page, "draft")["error"]["message"]


def test_what_cannot_be_drafted_is_told_in_the_sentence_of_the_command_line(show):
    text = SHOW.replace("known: [", "never: [weave], known: [windmil, ")
    show.write_text(text, encoding="utf-8")
    said = subprocess.run(
        [sys.executable, "-m", "sequencer", "draft", str(show)],
        check=False, capture_output=True, text=True,
    )  # fmt: skip
    with desk(show) as own:
        own.page.post("draft")
        now = ended(own.page, "draft")
        assert now["state"] == "failed"
        assert now["error"]["message"] in said.stderr
        assert "did you mean 'windmill'" in now["error"]["message"]
        for asked in ({"section": 3}, {"span": ["1.1"]}, {"another": "yes"}, {"seed": -1}, {"section": "a", "span": ["1.1", "2.1"]}):  # fmt: skip
            assert own.page.post("draft", **asked)[0] == 400
        own.page.do(1, do="replace-text", text="title: [\n")
        assert own.page.post("draft")[0] == 422
        assert own.page.post("sheets")[0] == 422


def test_a_draft_is_given_up_at_once_and_stopped_with_the_best_so_far(show):
    show.write_text(LONG, encoding="utf-8")
    with warm_desk(show) as own:
        page = own.page
        page.post("draft")
        eventually(lambda: page.get("draft")[1]["share"] > 0)
        assert page.post("draft/stop")[1]["state"] == "none"
        status, state = page.do(1, do="change-titles", values={"title": "Quick"})
        assert (status, state["revision"]) == (200, 2)

        page.post("draft")
        eventually(lambda: page.get("draft")[1]["words"].startswith("best routine: cost"), 200)
        assert page.post("draft/stop", keep=True)[1]["stopping"]
        now = ended(page, "draft")
        if now["offer"]["checked"]:
            pytest.skip("this machine was quicker than the stop")
        assert now["state"] == "done"
        assert any(line.startswith("NOT checked") for line in now["offer"]["words"])
        state = page.post("draft/lay", number=now["number"])[1]
        assert state["undo"] == "draft a routine, not checked"

        page.post("draft")
        page.post("draft/stop", keep=True)  # before there is any routine
        now = ended(page, "draft")
        assert now["state"] == "stopped"
        assert now["words"] == "stopped before there was anything to show"


def test_sheets_are_those_of_the_show_on_the_page(show):
    with show.open("w", encoding="utf-8") as out:
        out.write(SHOW.replace("timeline: []", "timeline:\n  - {from: 3.1, pattern: two-beat-weave, beats: 16}"))  # fmt: skip
    with desk(show) as own:
        page = own.page
        names = [each["name"] for each in page.get("printable")[1]["kinds"]]
        assert {"safety", "night", "card", "performer", "plan-packet"} <= set(names)
        page.do(1, do="change-titles", values={"title": "Never saved"})
        status, now = page.post("sheets", only=["performer"], people=["ash"], paper="letter")
        assert (status, now["state"]) == (200, "working")
        now = ended(page, "print")
        assert now["state"] == "done", now["error"]
        assert now["unsaved"] is True
        folder = show.parent / "exports" / "show"
        assert now["folder"] == str(folder)
        assert [each["name"] for each in now["made"]["files"]] == ["all-sheets.pdf", "show-performer-ash.pdf"]  # fmt: skip
        assert now["made"]["ok"] is True
        status, headers, content = page.raw("GET", now["made"]["files"][1]["address"], secret=False)
        assert (status, headers["content-type"]) == (200, "application/pdf")
        assert content == (folder / "show-performer-ash.pdf").read_bytes()
        assert headers["content-disposition"].startswith("inline")
        address = now["made"]["files"][1]["address"]
        assert page.raw("GET", address + "?save")[1]["content-disposition"].startswith("attachment")
        assert page.raw("GET", address.replace("/made/", "/made/x"), secret=False)[0] == 404
        assert page.raw("GET", address.rpartition("/")[0] + "/all-sheets.pdf")[0] == 404
        assert page.raw("GET", address, secret=False, host="evil.example")[0] == 403
        if (reader := shutil.which("pdftotext")) is not None:
            pdf = folder / "show-performer-ash.pdf"
            text = subprocess.run([reader, pdf, "-"], check=True, capture_output=True, text=True)
            assert "Never saved" in text.stdout
        assert "Never saved" not in show.read_text(encoding="utf-8")

        page.post("sheets", people=["Nobody"])
        now = ended(page, "print")
        assert now["state"] == "failed"
        assert "nobody in the cast or crew is called 'Nobody'" in now["error"]["message"]
        for asked in ({"paper": "a5"}, {"only": "card"}, {"everything": True, "only": ["card"]}, {"drawn": 1}):  # fmt: skip
            assert page.post("sheets", **asked)[0] == 400


def test_what_must_not_be_danced_is_printed_and_says_so(show):
    text = SHOW.replace("[[-12, -9], [12, -9]]", "[[-12, 3.4], [12, 3.4]]")
    text = text.replace("timeline: []", "timeline:\n  - {from: 3.1, pattern: two-beat-weave, beats: 16}")  # fmt: skip
    show.write_text(text, encoding="utf-8")
    with warm_desk(show) as own:
        own.page.post("sheets", only=["safety"])
        now = ended(own.page, "print")
        assert now["made"]["ok"] is False
        assert (show.parent / "exports" / "show" / "show-safety.pdf").is_file()


def test_rehearsal_page_and_exports_and_a_stop(show):
    text = SHOW.replace("timeline: []", "timeline:\n  - {from: 3.1, pattern: two-beat-weave, beats: 16}")  # fmt: skip
    show.write_text(text, encoding="utf-8")
    with desk(show) as own:
        page = own.page
        folder = show.parent / "exports" / "show"
        page.post("rehearsal", parts=["page", "counts", "midi", "captions", "timetable"])
        assert page.post("print/stop")[1]["state"] == "none"
        assert not folder.exists() or not [one for one in folder.iterdir() if "partial" in one.name]
        page.post("rehearsal", parts=["counts", "midi", "captions", "timetable"], speeds=[1.0, 0.7])
        now = ended(page, "print")
        assert now["state"] == "done", now["error"]
        names = [each["name"] for each in now["made"]["files"]]
        assert names == ["counts.wav", "counts-70.wav", "cues.mid", "captions.vtt", "timetable.csv", "timetable.json", "cue-list.csv"]  # fmt: skip
        assert now["made"]["ok"] is None
        page.post("rehearsal", parts=["counts", "timecode"], small=True, each=True, timecodes=["30"], code_from="01:00:00:00")  # fmt: skip
        now = ended(page, "print")
        made = {each["name"]: each["address"] for each in now["made"]["files"]}
        assert [name.partition(".")[2] for name in made] == ["mp3", "wav", "mid"]
        status, headers, _ = page.raw("GET", next(iter(made.values())), secret=False)
        assert (status, headers["content-type"]) == (200, "audio/mpeg")
        page.post("rehearsal", parts=["page"])
        now = ended(page, "print")
        assert now["made"]["ok"] is True
        status, headers, content = page.raw("GET", now["made"]["files"][0]["address"], secret=False)
        assert status == 200
        assert headers["content-security-policy"].startswith("sandbox allow-scripts")
        assert re.search(rb"<title>[^<]*Small", content)
        for asked in ({}, {"parts": ["film"]}, {"parts": ["counts"], "speeds": [9]}, {"parts": ["counts"], "counts": "loud"}, {"parts": ["timecode"], "timecodes": ["26"]}, {"parts": ["timecode"], "code_from": "1:00"}):  # fmt: skip
            assert page.post("rehearsal", **asked)[0] == 400


@pytest.mark.skipif(sys.platform == "win32", reason="signals of Unix")
@pytest.mark.parametrize("how", ["SIGTERM", "SIGHUP", "SIGINT"])
def test_a_program_that_is_ended_leaves_nothing_behind(show, how):
    with desk(show) as own:
        own.page.post("draft")
        status, said = own.end(getattr(signal, how))
    assert status in {130, 143, 129}
    assert "Traceback" not in said
    assert sorted(path.name for path in show.parent.iterdir()) == ["show.yaml", "song.wav"]


def test_the_browser_gets_a_ticket_and_nothing_that_lasts(show, tmp_path):
    """The address with which a browser is started opens the page once; the secret is not in it."""
    seen = tmp_path / "seen"
    asks = tmp_path / "browser.sh"
    asks.write_text(f'#!/bin/sh\nprintf "%s" "$1" > "{seen}.part" && mv "{seen}.part" "{seen}"\n')
    asks.chmod(0o755)
    command = [sys.executable, "-m", "sequencer", "open", str(show)]
    import os

    process = subprocess.Popen(
        command, stdout=subprocess.PIPE, text=True, env={**os.environ, "BROWSER": f"{asks} %s"}
    )
    try:
        from tests.desk_client import DeskClient

        page = DeskClient(process.stdout.readline().strip())
        address = eventually(lambda: seen.is_file() and seen.read_text())
        assert page.secret not in address
        ticket = address.partition("#ticket=")[2]
        assert len(ticket) > 30
        assert page.raw("GET", "/api/show", secret=False, x_sequencer_secret=ticket)[0] == 403
        assert page.raw("POST", "/enter", {"ticket": "x" * 43}, secret=False)[0] == 403
        assert page.raw("POST", "/enter", {"ticket": ticket}, secret=False, origin="http://evil.example")[0] == 403  # fmt: skip
        assert page.raw("POST", "/enter", {"ticket": ticket}, secret=False, sec_fetch_site="cross-site")[0] == 403  # fmt: skip
        status, _, content = page.raw("POST", "/enter", {"ticket": ticket}, secret=False)
        assert status == 200
        assert page.secret in content.decode()
        assert page.raw("POST", "/enter", {"ticket": ticket}, secret=False)[0] == 403
    finally:
        process.kill()
        process.wait()
        process.stdout.close()
    assert Path(show).exists()


def test_a_draft_that_was_not_put_in_is_offered_again_after_a_kill(show):
    with warm_desk(show) as own:
        offered = drafted(own.page)
        own.page.post("operations", revision=own.page.get("show")[1]["revision"], operation={"do": "change-titles", "values": {"title": "Larger"}})  # fmt: skip
        own.process.kill()
        own.process.wait()
    with warm_desk(show) as own:
        page = own.page
        state = page.get("show")[1]
        assert "title: Larger" in state["text"]
        assert "a draft that was not put in yet is offered again under Draft" in state["recovered"]
        again = page.get("draft")[1]
        assert (again["state"], again["older"]) == ("done", True)
        assert again["offer"] == offered["offer"]
        status, laid = page.post("draft/lay", number=again["number"])
        assert status == 200
        assert "title: Larger" in laid["text"]
        assert laid["text"].count("drafted") > 0
        assert not show.with_name(".show.yaml.draft").exists()
    with warm_desk(show) as own:
        assert own.page.get("draft")[1]["state"] == "none"
