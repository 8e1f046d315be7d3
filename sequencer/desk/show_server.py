"""An open show between its file, its checks and its pages: one change at a time, told to all."""

import asyncio
from collections.abc import AsyncGenerator, Callable, Iterator, Mapping, Sequence
from dataclasses import asdict
from functools import lru_cache, partial
from pathlib import Path
from typing import Any

from sequencer.desk.connection.page_events import PageEvents
from sequencer.desk.connection.page_values import all_errors, error_values
from sequencer.desk.file.kept_draft import KeptDraft
from sequencer.desk.file.kept_switch import KeptSwitch
from sequencer.desk.file.last_switch import SwitchMemory
from sequencer.desk.file.line_merge import changed_lines
from sequencer.desk.file.made_files import MadeFiles
from sequencer.desk.file.opened_file import OpenedFile
from sequencer.desk.file.show_operations import with_everybody
from sequencer.desk.processes.errand import DoneErrand, Errand
from sequencer.desk.processes.errand_process import ErrandWork
from sequencer.desk.processes.worker_link import AnswerError, WorkerLink
from sequencer.errors import InputError, Place
from sequencer.show.operations.merging import conflict_place
from sequencer.show.pattern_book import PATTERN_EXISTS

DRAFT = "draft"  # the errand that proposes a routine
SWITCH = "switch"  # what is kept of who is there
PRINT = "print"  # the errand that makes files
_LOOK = 60.0  # [s] for which a page waits for a staging


class ShowServer:
    """What a page can ask of an open show.

    Parameters
    ----------
    opened : OpenedFile
    track : Path, optional
        The song that was named for a show that is to be begun.
    """

    def __init__(self, opened: OpenedFile, *, track: Path | None = None) -> None:
        self.opened = opened
        self.suggested_track = track
        self.events = PageEvents()
        # How the show is shared, and how that is ended; None while nobody shares it.
        self.sharing: tuple[Callable[[], dict[str, Any]], Callable[[str], None]] | None = None
        self._changing = asyncio.Lock()
        self._tried: str | None = None  # the newest text that a trial has put on its song
        self.link = WorkerLink(opened.path, self.events.tell)
        self._kept_switch = KeptSwitch(opened.place_of(SWITCH))
        everybody = partial(with_everybody, file=opened.path.name)
        self._switches = SwitchMemory(self._kept_switch.found(), everybody)
        self.errands: dict[str, Errand] = {}  # the newest of each kind
        self._kept_draft = KeptDraft(opened.place_of(DRAFT))
        self._bring_back_draft()
        self.made = MadeFiles()
        self._hand_over()

    def __repr__(self) -> str:
        return f"<ShowServer of {self.opened!r}, {self.events!r}>"

    # --- what the show says ---

    def state(self) -> dict[str, Any]:
        """The show as it is now, with its text."""
        return {
            **self.summary(), "text": self.opened.text, "values": self.opened.read.values
        }  # fmt: skip

    def summary(self) -> dict[str, Any]:
        """The same without its text."""
        opened = self.opened
        fault = opened.read.fault
        outside = opened.outside
        return {
            "file": opened.path.name,
            "folder": str(opened.path.parent),
            "revision": opened.revision,
            "readable": fault is None,
            "faults": [] if fault is None else all_errors(fault, opened.path.name),
            "saved": opened.saved,
            "autosave": "file" if opened.autosave else "journal",
            "undo": opened.to_undo.words if opened.to_undo else None,
            "redo": opened.edits.undone[-1].words if opened.edits.undone else None,
            "kept": {"where": opened.kept_where, "message": opened.trouble},
            "outside": None
            if outside is None
            else {
                "text": outside.text,
                "message": "the file was changed outside, where it was changed here too",
                "conflicts": [
                    {**asdict(one), "path": list(one.path), "place": conflict_place(one)}
                    for one in opened.conflicts
                ],
                "lines": _lines_between(opened.text, outside.text),
            },
            "recovered": opened.recovered,
            "new": self.is_new,
            "track_there": self._track_there(),
        }  # fmt: skip

    @property
    def is_new(self) -> bool:
        """Whether a show can be begun here: no text, here or on disk, and no step that leads to one."""
        opened = self.opened
        steps = bool(opened.edits.all_steps)
        return not opened.text.strip() and opened.saved and opened.outside is None and not steps

    def _track_there(self) -> bool:
        """Whether the song is where the file says; also where the text is no show, and nothing says where."""
        show = self.opened.read.show
        return show is None or (self.opened.path.parent / show.track.file).is_file()

    def history(self) -> dict[str, Any]:
        """All steps, and how many of them are done."""
        edits = self.opened.edits
        steps = edits.all_steps
        return {
            "at": len(edits.done),
            "steps": [{"words": step.words, "time": step.time} for step in steps],
        }

    async def switched(self) -> dict[str, Any] | None:
        """What the last switch of who is there changed; None if there was none since the show was opened."""
        checks = self.link.checks
        if checks.revision == self.opened.revision:
            self._remember(self._switches.checked, checks.report)
        last = self._switches.last
        if last is None:
            return None
        sides = {"before": last.before, "after": last.after}
        reports = [
            None if each is None else {"findings": each["findings"], "unseen": each["unseen"]}
            for each in (last.report_before, last.report_after)
        ]
        values = await self.link.ask("switched", **sides, reports=reports)
        return {"revision": last.revision, "now": self.opened.revision, **values}

    def _remember(self, take: Callable[..., None], *given: object) -> None:
        """Let the memory of switches take something, and keep on disk what it knows after it."""
        before = self._switches.last
        take(*given)
        last = self._switches.last
        if last is None or last.tonight is None:  # everybody is there
            self._kept_switch.forget()
        elif last is not before:
            self._kept_switch.keep(last)

    def share(self) -> dict[str, Any] | None:
        """How the show is shared with watchers; None if it is not."""
        return None if self.sharing is None else self.sharing[0]()

    def unshare(self) -> None:
        """Share it no longer."""
        if self.sharing is not None:
            self.sharing[1]("it is shared no longer")

    def stream(self) -> AsyncGenerator[bytes, None]:
        """A page's stream of events, with how things are first."""
        return self.events.stream(self._how_things_are)

    def _how_things_are(self) -> Iterator[tuple[str, Mapping[str, Any]]]:
        checks = self.link.checks
        yield "show", {**self.summary(), "words": ""}
        if checks.staged is not None:
            yield "staged", {"revision": checks.revision, "error": checks.error}
        yield "checks", self.link.checks_values()

    # --- errands ---

    def _bring_back_draft(self) -> None:
        """Offer the draft again that was offered when the show was last open."""
        found = self._kept_draft.offered()
        if found is None:
            return
        words = "a draft that was not put in yet is offered again under Draft"
        try:
            both = self.opened.together(found.given["base"], found.result["text"])
        except InputError as error:
            both, words = "", f"{words}, but cannot be put into the show as it is now: {error.what}"
        if both == self.opened.text:  # it was put in, or somebody wrote the same
            self._kept_draft.forget()
            return
        self.errands[DRAFT] = DoneErrand(found.given, found.result)
        before = self.opened.recovered
        self.opened.recovered = words if before is None else f"{before}; {words}"

    def begin_errand(self, kind: str, work: ErrandWork, given: Mapping[str, Any]) -> None:
        """Begin long work in a process of its own; an older one of its kind is given up."""
        self._end_errand(kind)
        if kind == DRAFT:
            self._kept_draft.forget()
        self.errands[kind] = Errand(work, given, lambda errand: self._told(kind, errand))
        self._told(kind, self.errands[kind])

    @property
    def is_writing(self) -> bool:
        """Whether files are being made that somebody waits for, with or without a page."""
        errand = self.errands.get(PRINT)
        return errand is not None and errand.state == "working"

    def drop_errand(self, kind: str) -> None:
        """Give up an errand, and forget what came of it."""
        self._end_errand(kind)
        if kind == DRAFT:
            self._kept_draft.forget()
        self.events.tell("errand", {"kind": kind, "state": "none"})

    def _end_errand(self, kind: str) -> None:
        if (errand := self.errands.pop(kind, None)) is not None:
            errand.end()

    def _told(self, kind: str, errand: Errand) -> None:
        if kind == DRAFT and errand.state == "done":
            self._kept_draft.keep(errand.given, errand.result)  # on disk before it is told
        self.events.tell("errand", {"kind": kind, **errand.values()})

    # --- what is done ---

    async def do(
        self, operation: Mapping[str, Any], revision: int, *, anyway: bool = False
    ) -> dict[str, Any]:
        """Do an operation.

        Parameters
        ----------
        operation : mapping
        revision : int
            Of the text that the page showed.
        anyway : bool
            Do it even if the show can then not be staged.

        Raises
        ------
        InputError
            If it is refused.
        AnswerError
            If the show could not be staged with it.
        """
        async with self._changing:
            text, words = await asyncio.to_thread(self.opened.planned, operation, revision)
            if not anyway and self._can_be_staged:
                await self._try(text)
            return await self._changed(words, self.opened.take, text, words)

    async def bring(self, base: str, text: str, words: str) -> dict[str, Any]:
        """A text that was made from an earlier one, as one step; what was changed meanwhile stays.

        Raises
        ------
        InputError
            If both changed one place.
        AnswerError
            If the show could not be staged with both.
        """
        async with self._changing:
            both = await asyncio.to_thread(self.opened.together, base, text)
            if self._can_be_staged:
                await self._try(both)
            return await self._changed(words, self.opened.take, both, words)

    async def preview(self, operation: Mapping[str, Any], revision: int) -> dict[str, Any]:
        """The lines that an operation would change."""
        text, words = await asyncio.to_thread(self.opened.planned, operation, revision)
        return {
            "revision": self.opened.revision, "words": words,
            "lines": changed_lines(self.opened.text, text),
        }  # fmt: skip

    async def count(
        self, operation: Mapping[str, Any], revision: int, hold: Sequence[float] | None = None
    ) -> Any:
        """The count of the song that an operation would come to, and what it would move; nothing is done.

        With `hold` the sections of the file begin at these seconds of the song, whatever the count.
        """
        text, _ = await asyncio.to_thread(self.opened.planned, operation, revision)
        return await self.link.ask("count", text=text, hold=hold)

    async def turn(self, way: str, revision: int | None) -> dict[str, Any]:
        """Undo or redo, if the page has seen the show as it is."""
        async with self._changing:
            self._seen(revision)
            return await self._changed(way, self.opened.undo if way == "undo" else self.opened.redo)

    async def replace_text(self, text: str, words: str, revision: int) -> dict[str, Any]:
        """Another text in the place of the one that the page has seen, as one step; whatever it says."""
        async with self._changing:
            self._seen(revision)
            return await self._changed(words, self.opened.take, text, words)

    async def save(self) -> dict[str, Any]:
        """Write the file."""
        async with self._changing:
            return await self._changed("save", self.opened.save)

    async def save_at_once(self, *, wanted: bool) -> dict[str, Any]:
        """Whether the file is written with every step."""
        async with self._changing:
            self.opened.autosave = wanted
            if wanted and self.opened.outside is None and not self.opened.saved:
                return await self._changed("save", self.opened.save)
            return await self._changed("save", lambda: None)

    async def settle(self, take: str, text: str) -> dict[str, Any]:
        """Say which text holds, where the file was changed outside and here."""
        async with self._changing:
            return await self._changed("changed outside", self.opened.settle, take, text)

    async def look(self) -> None:
        """Look at the file, which something has changed."""
        async with self._changing:
            before = self.opened.revision, self.opened.saved, self.opened.outside
            words = await asyncio.to_thread(self.opened.look)
            if (self.opened.revision, self.opened.saved, self.opened.outside) == before:
                return
            if self.opened.revision != before[0]:
                self._hand_over()
            self.events.tell("show", {**self.summary(), "words": "changed outside"})
            if words:
                kind = "outside" if self.opened.outside is not None else "notice"
                self.events.tell(kind, {"message": words, "severity": "note"})

    def files_beside(self) -> list[Path]:
        """The files that the show names, its track first."""
        from sequencer.tasks.kept_reports import names_in

        show = self.opened.read.show
        return [] if show is None else [self.opened.path.parent / name for name in names_in(show)]

    def look_beside(self) -> None:
        """Stage and check anew, since a file that the show names has come, gone or changed."""
        self.link.look_anew()
        self.events.tell("show", {**self.summary(), "words": ""})
        self.events.tell("checks", self.link.checks_values())

    async def staged(self) -> None:
        """Wait until the show as it is now is staged.

        Raises
        ------
        AnswerError
            If it cannot be, or that takes too long.
        """
        fault = self.opened.read.fault
        if fault is not None:
            raise AnswerError(error_values(fault, self.opened.path.name))
        try:
            checks = await self.link.until_staged(self.opened.revision, _LOOK)
        except TimeoutError:
            raise AnswerError(_TOO_LONG) from None
        if not checks.staged and checks.error is not None:
            raise AnswerError(checks.error)

    def end(self, message: str) -> None:
        """Tell the pages, and end the checks and the hold of the file."""
        self.events.end(message)
        if self.link.checks.revision == self.opened.revision:
            self._remember(self._switches.checked, self.link.checks.report)
        for kind in list(self.errands):
            self._end_errand(kind)
        self.link.end()
        self.opened.close()

    def _seen(self, revision: int | None) -> None:
        """Refuse what was done on another text than the one that stands."""
        if revision is not None and revision != self.opened.revision:
            raise InputError(
                "conflict", Place(self.opened.path.name), "the show has been changed meanwhile",
                "look at it as it is now, and do it again",
            )  # fmt: skip

    @property
    def _can_be_staged(self) -> bool:
        """Whether the show as it is now is known to go on its song: then it is to stay so."""
        return bool(self.link.checks.staged) or self.opened.text == self._tried

    async def _try(self, text: str) -> None:
        error = await self.link.trial(text)
        if error is not None:
            # A name that a pattern has already is never another one: nothing done later helps but another name.
            raise AnswerError({**error, "anyway": error["code"] != PATTERN_EXISTS})
        self._tried = text

    async def _changed(
        self, words: str, change: Callable[..., None], *given: object
    ) -> dict[str, Any]:
        before = self.opened.revision
        trouble = self.opened.trouble
        try:
            await asyncio.to_thread(change, *given)
        finally:
            self.opened.recovered = (
                None if self.opened.revision != before else self.opened.recovered
            )
            if self.opened.revision != before:
                self._hand_over()
            self.events.tell("show", {**self.summary(), "words": words})
        if self.opened.trouble and self.opened.trouble != trouble:
            self.events.tell("notice", {"message": self.opened.trouble, "severity": "warn"})
        return {**self.state(), "before": before}

    def _hand_over(self) -> None:
        """Give the newest text to the checks."""
        read = self.opened.read
        if read.is_show:
            revision, text = self.opened.revision, self.opened.text
            tonight = read.values.get("tonight")
            self._remember(self._switches.take, revision, text, tonight, self.link.checks.report)
            self.link.text(self.opened.revision, self.opened.text)
        else:
            self.link.unreadable(self.opened.revision)
        self.events.tell("checks", self.link.checks_values())


@lru_cache(maxsize=2)  # told with every event while nobody has said which of both holds
def _lines_between(here: str, there: str) -> list[dict[str, Any]]:
    return changed_lines(here, there)


_TOO_LONG = {
    "code": "staging", "message": "the show is still being put on its song; ask again",
    "what": "the show is still being put on its song", "why": "", "mend": "ask again",
    "line": None, "column": None,
}  # fmt: skip
