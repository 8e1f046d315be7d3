"""Sequences of random operations through the desk's own code: text, journal, trials and checks; shared by a test and a benchmark.

Each sequence opens a show file, does operations as a page sends them, takes some back and does them again, lets go in the middle as
a process that is killed, opens it anew, and at last takes everything back. After it, what the checks have said step by step is held
against a worker that stages and checks the last text with nothing kept.
"""

import random
from contextlib import suppress
from dataclasses import dataclass, field

from sequencer.desk.file.opened_file import OpenedFile
from sequencer.desk.processes.show_worker import ShowWorker, _Wanted
from sequencer.errors import InputError
from sequencer.planning.open_show import MENDS
from sequencer.progress import Stopped
from sequencer.show.operations.operation import json_of
from sequencer.show.text.document import parse_document
from tests.made_operations import Draw
from tests.nothing_kept import nothing_kept
from tests.operation_oracle import text_of
from tests.property.test_edits import SHOW, SONG

MOST_TRIES = 200  # operations that are drawn, most of which the song refuses


class HeardWorker(ShowWorker):
    """The desk's worker with a song that needs no track; it stops before mends, and where it is told to."""

    def __init__(self, path):
        super().__init__(str(path), pipe=None)
        self.said, self.until = {}, None

    def _heard(self, _read, _progress):
        self._song = SONG
        return SONG

    def _send(self, message):
        kind, _, said = message
        if kind != "answer":
            return
        self.said[said["check"]] = {key: said[key] for key in ("findings", "clearances", "unseen")}
        if self.until is not None and len(self.said) >= self.until:
            raise Stopped
        if list(said["left"]) == [MENDS]:
            raise Stopped

    def look(self, text, run, until=None):
        """What the checks say of a text, or the first of them."""
        self.said, self.until = {}, until
        with suppress(Stopped):
            self._check(_Wanted(run, run, text))
        return self.said


@dataclass
class SequenceTold:
    """What became of a sequence."""

    done: int = 0
    refused: int = 0
    kinds: list = field(default_factory=list)
    findings: int = 0
    alike: bool = False


def _let_go(opened):
    """As a process that is killed: only what is on disk stays."""
    opened._hold.let_go()


def sequence(seed, path, operations=5):
    """One sequence on a show file that is written anew; the file is the same to the byte after it.

    Raises
    ------
    AssertionError
        If a text is lost, or undo does not lead to the first bytes.
    """
    draw = random.Random(seed)  # noqa: S311  # no secret
    made, told = Draw(draw), SequenceTold()
    first = SHOW.replace("\n", "\r\n") if draw.random() < 0.3 else SHOW
    path.write_bytes(first.encode())
    opened, worker = OpenedFile(path), HeardWorker(path)
    worker._staged(opened.text)
    for _ in range(MOST_TRIES):
        if told.done >= operations:
            break
        operation = made.one(text_of(parse_document(opened.text, path.name).values))
        before = opened.text
        try:
            text, words = opened.planned(json_of(operation), opened.revision)
            worker._staged(text)  # the trial
        except InputError:
            told.refused += 1
            assert opened.text == before
            continue
        opened.take(text, words)
        if opened.text == before:
            continue  # it was so already
        told.done += 1
        told.kinds.append(operation.KIND)
        worker.look(opened.text, told.done, until=draw.choice((1, 4, 12, None)))
        opened = _between(draw, opened, path)
    said = worker.look(opened.text, told.done + 1)
    with nothing_kept():
        alone = HeardWorker(path).look(opened.text, 1)
    told.alike = said == alone and bool(said)
    told.findings = sum(len(each["findings"]) for each in said.values())
    texts = [opened.edits.after(k) for k in range(len(opened.edits.all_steps) + 1)]
    while opened.edits.done:
        opened.undo()
        assert opened.text == texts[len(opened.edits.done)]
    assert opened.text == first
    opened.save()
    assert path.read_bytes() == first.encode()
    opened.close()
    return told


def _between(draw, opened, path):
    """Back and forth, saved, or killed and opened anew: what it says stays."""
    text = opened.text
    what = draw.choice(("go on", "go on", "back and forth", "save", "killed"))
    if what == "back and forth" and opened.edits.done:
        for _ in range(draw.randint(1, len(opened.edits.done))):
            opened.undo()
        while opened.edits.undone:
            opened.redo()
    elif what == "save":
        opened.save()
    elif what == "killed":
        steps = [each.words for each in opened.edits.done]
        _let_go(opened)
        opened = OpenedFile(path)
        assert [each.words for each in opened.edits.done] == steps
    assert opened.text == text
    return opened
