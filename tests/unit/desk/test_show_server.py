"""A draft that was offered when the show was last open: offered again, whatever was done and saved since; what an answer says it followed."""

import sys

import pytest

from sequencer.desk.file.kept_draft import KeptDraft
from sequencer.desk.file.opened_file import OpenedFile
from sequencer.desk.processes.worker_link import WorkerLink
from sequencer.desk.show_server import DRAFT, ShowServer
from sequencer.show.text.text_change import TextChange
from sequencer.show.text.text_steps import TextSteps
from tests.in_a_thread import run_apart

SHOW = """\
title: Small
track: {file: song.wav}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: poi}
timeline:
  - {from: 1.1, pattern: extension, beats: 4}
"""
DRAFTED = SHOW + "  - {from: 3.1, pattern: wheel-spin, beats: 8}\n"
OFFERED = "a draft that was not put in yet is offered again under Draft"


@pytest.fixture
def path(tmp_path, monkeypatch):
    """A show with a draft that is offered, in a program whose checks do nothing."""
    monkeypatch.setattr(WorkerLink, "_begin", lambda _self: None)
    monkeypatch.setattr(WorkerLink, "_put", lambda _self, _message: None)
    path = tmp_path / "mine.yaml"
    path.write_text(SHOW, encoding="utf-8")
    given = {"section": None, "span": None, "another": False, "seed": 0, "base": SHOW, "text": SHOW}
    draft_file(path).keep(given, {"text": DRAFTED, "rows": [], "checked": True})
    return path


def draft_file(path):
    return KeptDraft(path.with_name(".mine.yaml.draft"))


def work_and_save(path, text):
    opened = OpenedFile(path)
    opened.take(text, "work")
    opened.save()
    opened.close()  # in order: no journal is left
    assert not path.with_name(".mine.yaml.journal").exists()


def opened_again(path, then=lambda _server: None):
    """What is said of the draft, the draft itself, and what comes of something else."""

    async def run():
        server = ShowServer(OpenedFile(path))
        try:
            draft = server.errands.get(DRAFT)
            return server.opened.recovered, draft and (draft.given, draft.result), then(server)
        finally:
            server.opened.close()

    return run_apart(run())


def both(server):
    draft = server.errands[DRAFT]
    return server.opened.together(draft.given["base"], draft.result["text"])


def test_a_draft_is_offered_again_after_work_was_saved_and_the_program_ended_in_order(path):
    work_and_save(path, SHOW.replace("Small", "Larger"))
    for _ in range(2):  # until it is put in or given up
        words, (given, result), text = opened_again(path, both)
        assert words == OFFERED
        assert (given["base"], result["text"]) == (SHOW, DRAFTED)
        assert text == DRAFTED.replace("Small", "Larger")


def test_a_draft_that_cannot_be_put_in_any_more_stays_and_says_so(path):
    work_and_save(path, SHOW + "  - {from: 3.1, pattern: two-beat-weave, beats: 8}\n")
    words, (_, result), _ = opened_again(path)
    assert words == (
        f"{OFFERED}, but cannot be put into the show as it is now: "
        "what this touches has been changed meanwhile"
    )
    assert result["text"] == DRAFTED
    work_and_save(path, SHOW)
    words, _, text = opened_again(path, both)
    assert (words, text) == (OFFERED, DRAFTED)


def test_a_draft_that_was_put_in_is_not_offered_again(path):
    """The program was killed after the step, and before the draft was taken away."""
    work_and_save(path, DRAFTED.replace("Small", "Larger"))
    assert opened_again(path)[:2] == (None, None)
    assert draft_file(path).offered() is None


@pytest.mark.parametrize("steps", [10, 40])
@pytest.mark.parametrize("drafted", [True, False], ids=["a draft", "no draft"])
def test_opening_goes_through_each_step_once(path, monkeypatch, steps, drafted):
    opened = OpenedFile(path)
    for k in range(steps):
        opened.take(SHOW.replace("Small", f"Small {k}"), "work")
    opened._hold.let_go()  # as if it was killed: the journal stays
    if not drafted:
        draft_file(path).forget()
    done = []
    on = TextChange.on
    monkeypatch.setattr(TextChange, "on", lambda self, text: done.append(self) or on(self, text))
    monkeypatch.setattr(TextSteps, "after", lambda _self, number: done.append(number))
    words, draft, _ = opened_again(path)
    assert (draft is not None) == drafted
    assert (OFFERED in words) == drafted
    assert len(done) == steps


@pytest.mark.skipif(sys.platform == "win32", reason="links of POSIX systems")
@pytest.mark.parametrize("away", [True, False])
@pytest.mark.parametrize("kind", ["link", "notes"])
@pytest.mark.parametrize("end", ["switch", "draft", "journal"])
def test_opening_a_show_touches_nothing_of_somebody_else(path, end, kind, away):
    path.with_name(".mine.yaml.draft").unlink()
    text = SHOW + "tonight: {away: [Ash]}\n" if away else SHOW
    path.write_text(text, encoding="utf-8")
    precious = path.with_name("precious.txt")
    precious.write_text("what somebody wrote\n", encoding="utf-8")
    foreign = path.with_name(f".mine.yaml.{end}")
    if kind == "link":
        foreign.symlink_to("precious.txt")
    else:
        foreign.write_text("what somebody wrote\n", encoding="utf-8")

    def switch(server):
        server._remember(server._switches.take, 0, text, {"away": ["Ash"]} if away else None, None)
        server.opened.take(text + "# done\n", "work")
        server.opened.save()

    opened_again(path, switch)
    assert foreign.is_symlink() is (kind == "link")
    for each in (foreign, precious):
        assert each.read_text(encoding="utf-8") == "what somebody wrote\n"


# --- the revision that an answer followed ---


def revisions(path, *works):
    """What each of some works answers: the revision that stood before it, and the one after."""

    async def run():
        server = ShowServer(OpenedFile(path))
        try:
            answers = [await work(server) for work in works]
            return [(each["before"], each["revision"]) for each in answers]
        finally:
            server.opened.close()

    return run_apart(run())


def titled(title, revision):
    operation = {"do": "change-titles", "values": {"title": title}}
    return lambda server: server.do(operation, revision, anyway=True)


def test_an_answer_says_which_revision_stood_when_its_turn_came(path):
    assert revisions(
        path,
        titled("Larger", 1),
        titled("Larger", 1),  # of a page that has not heard of it: nothing is left to change
        lambda server: server.turn("undo", None),
        lambda server: server.turn("redo", 3),
        lambda server: server.save(),
    ) == [(1, 2), (2, 2), (2, 3), (3, 4), (4, 4)]


def test_a_save_that_takes_over_what_the_file_says_came_after_the_revision_before_that(path):
    async def save(server):
        path.write_text(SHOW.replace("Small", "By somebody else"), encoding="utf-8")
        return await server.save()

    assert revisions(path, titled("Small", 1), save) == [(1, 1), (1, 2)]
