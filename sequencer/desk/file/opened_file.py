"""A show file that is open: its text through all steps, its journal, and what happens to the file meanwhile.

The text here is what counts. The file is written when it is saved; until then the journal holds every step, and a process that
dies leaves it for the next one. Whoever else changes the file is never overwritten unseen.
"""

import datetime as dt
import os
from collections.abc import Callable, Mapping
from contextlib import suppress
from itertools import chain, count
from pathlib import Path
from typing import Any

from sequencer.desk.file.edited_text import EditedText
from sequencer.desk.file.file_on_disk import Hold, cache_place, can_write_beside
from sequencer.desk.file.show_operations import ReadText, both_changes, done_on, read_text
from sequencer.desk.file.step_journal import StepJournal, read_journal, text_sum
from sequencer.errors import InputError, Place
from sequencer.show.operations.merging import MergeConflict
from sequencer.show.text.file_text import DiskText, disk_text, write_disk_text
from sequencer.show.text.text_change import TextChange
from sequencer.show.text.text_steps import TextStep

OUTSIDE = "changed outside"
_BEFORE_CACHE = "what was done so far"


class OpenedFile:
    """A show file under people's hands; one thread at a time.

    Parameters
    ----------
    path : Path
    new : bool
        Whether it may be missing: then its text is empty, until a show is begun.

    Raises
    ------
    InputError
        If it cannot be read, or another process has it open.
    """

    def __init__(self, path: Path, *, new: bool = False) -> None:
        self._new = new
        self.path = path.resolve()  # what is written is the file itself, not a link to it
        self.autosave = False
        self.recovered: str | None = None
        self.trouble: str | None = None  # why steps are not on disk
        self.outside: DiskText | None = None  # the file as others changed it, where both did
        self.conflicts: tuple[MergeConflict, ...] = ()  # what stands against taking that over
        beside = can_write_beside(self.path)
        self._begun = False  # the journal
        self._marked = False
        self._disk: str | None = None  # what the file says, as far as is known; None if it is gone
        self._hold = Hold(self._place("open", beside=beside), self.path)
        try:
            self._recover(beside=beside)
        except BaseException:
            self._hold.let_go()
            raise

    def __repr__(self) -> str:
        return f"<OpenedFile {self.path.name}, {self.edits!r}>"

    # --- what it says ---

    @property
    def text(self) -> str:
        """The text as it is now."""
        return self.edits.text

    @property
    def revision(self) -> int:
        """Raised by every step, back and forth alike."""
        return self.edits.revision

    @property
    def read(self) -> ReadText:
        """What the text says, or what is wrong with it."""
        return read_text(self.text, self.path.name)

    @property
    def saved(self) -> bool:
        """Whether the file says the same; a show that was never begun needs no file."""
        if self._disk is None:
            return self._new and not self.text
        return self._disk == self.text

    @property
    def marked(self) -> bool:
        """Whether the file begins with a byte order mark."""
        return self._marked

    @property
    def kept_where(self) -> str:
        """Where steps are kept: in a journal "beside" the file or in the user's "cache", or in "memory" only."""
        if self.trouble is not None:
            return "memory"
        return "beside" if self._journal.path.parent == self.path.parent else "cache"

    # --- what is done ---

    def planned(self, operation: Mapping[str, Any], revision: int) -> tuple[str, str]:
        """The text that an operation makes, and what it does in words; nothing is done yet.

        Parameters
        ----------
        operation : mapping
            As JSON.
        revision : int
            Of the text on which it was made; if another one stands now, both are brought together.

        Raises
        ------
        InputError
            If it is refused, or touches what has been changed since.
        """
        base = self.edits.at(revision)
        if base is None:
            raise self._conflict("this was done on a text of too long ago")
        after, words = done_on(base, self.path.name, operation)
        return self.together(base, after), words

    def together(self, base: str, after: str) -> str:
        """A change of a text, together with what has become of that text meanwhile; nothing is done yet.

        Parameters
        ----------
        base, after : str
            The text as it was once, and what was made of it.

        Raises
        ------
        InputError
            If both changed one place.
        """
        if base == self.text:
            return after
        both = both_changes(base, after, self.text, self.path.name)
        merged = both.text
        if merged is None:
            raise self._conflict("what this touches has been changed meanwhile", both.why)
        if (fault := read_text(merged, self.path.name).fault) is not None and self.read.is_show:
            raise self._conflict(
                "together with what was changed meanwhile this is no show", fault.what
            )
        return merged

    def take(self, text: str, words: str) -> None:
        """A text that was planned, as a step."""
        if text == self.text:
            return
        self._keep(_entry(self.edits.step(text, words, _now()), text))
        self._save_at_once()

    @property
    def to_undo(self) -> TextStep | None:
        """The step that undo takes back; None if there is none, or nothing of the show would be left."""
        done = self.edits.done
        begun = len(done) == 1 and self.text.strip() and not self.edits.after(0).strip()
        return None if not done or begun else done[-1]

    def undo(self) -> None:
        """Take the last step back, but for the one that began the show.

        Raises
        ------
        InputError
            If there is none.
        """
        self._turn("undo", lambda: self.to_undo is not None and self.edits.undo())

    def redo(self) -> None:
        """Do again what was undone last.

        Raises
        ------
        InputError
            If there is nothing.
        """
        self._turn("redo", self.edits.redo)

    def _turn(self, way: str, turn: Callable[[], bool]) -> None:
        if not turn():
            raise InputError(
                f"nothing-to-{way}", Place(self.path.name), f"there is nothing to {way}", "go on"
            )
        self._keep({way: True, "sum": text_sum(self.text)})
        self._save_at_once()

    # --- the file ---

    def save(self) -> None:
        """Write the file.

        Raises
        ------
        InputError
            If it was changed outside where it was changed here too, or cannot be written.
        """
        self.look()
        if self.outside is not None:
            raise InputError(
                "outside", Place(self.path.name), "the file was changed outside, where it was changed here too",
                "look at both, and say which holds",
            )  # fmt: skip
        try:
            write_disk_text(self.path, DiskText(self.text, self._marked))
        except InputError as error:
            raise InputError(
                "cannot-write", Place(str(self.path)), error.what,
                "make room, or allow writing there, and save again: nothing is lost",
            ) from error  # fmt: skip
        self._disk = self.text
        if self._begun:
            self._keep({"saved": True})

    def look(self) -> str | None:
        """Look at the file, and take over what others changed in it.

        Returns
        -------
        words : str or None
            What has happened; None if nothing has.
        """
        try:
            found = disk_text(self.path)
        except InputError as error:
            if error.code == "no-file":
                known, self._disk = self._disk, None
                return None if known is None else "the file is gone; saving writes it again"
            return f"{error.what}; {error.mend}"
        if found.text == self._disk:
            self.outside = None
            return None
        if found.text == self.text:
            self._known_on_disk(found)
            return "the file says now what is here"
        return self._taken_over(found)

    def settle(self, take: str, text: str = "") -> None:
        """Say which of both holds, where the file was changed outside and here.

        Parameters
        ----------
        take : {"mine", "theirs", "text"}
            "mine" is the text here; with "text" it is another one.
        text : str
            That one.

        Raises
        ------
        InputError
            If there is nothing to settle.
        """
        if self.outside is None:
            raise InputError(
                "nothing-to-settle",
                Place(self.path.name),
                "the file was not changed outside",
                "go on",
            )
        found, mine = self.outside, self.text
        self.take(found.text, OUTSIDE)  # so that neither is lost: undo leads to each
        self._known_on_disk(found)
        if take != "theirs":
            self.take(mine if take == "mine" else text, "kept over the change outside")
        self._save_at_once()

    def close(self) -> None:
        """Let go of the file; the journal stays if anything is not saved."""
        if self.saved and self.outside is None and self._begun:
            self._journal.remove()
        self._hold.let_go()

    def _taken_over(self, found: DiskText) -> str:
        base = self._disk if self._disk is not None else self.text
        both = both_changes(base, self.text, found.text, self.path.name)
        merged = both.text
        mine_untouched = self.text == base
        if merged is not None and not mine_untouched and self.read.is_show:
            merged = merged if read_text(merged, self.path.name).is_show else None
        if merged is None:
            self.outside, self.conflicts = found, both.conflicts
            return "the file was changed outside, where it was changed here too: both are kept; say which holds"
        self.take(merged, OUTSIDE)
        self._known_on_disk(found)
        self._save_at_once()
        return (
            "the file was changed outside, and the change is taken over"
            if mine_untouched
            else "the file was changed outside; that and what was done here are brought together"
        )

    def _known_on_disk(self, found: DiskText) -> None:
        self._disk, self._marked, self.outside = found.text, found.marked, None
        if self._begun:
            self._keep({"saved": True} if found.text == self.text else {"disk": found.text})

    def _save_at_once(self) -> None:
        """Save after a step, if that is wanted; what hinders it is told with the state."""
        if self.autosave and self.outside is None and not self.saved:
            with suppress(InputError):
                self.save()

    # --- the journal ---

    def place_of(self, kind: str) -> Path:
        """Where something that belongs to the show lies while it is open: beside it, or in the user's cache.

        Parameters
        ----------
        kind : str
            The end of its name.
        """
        return self._place(kind, beside=can_write_beside(self.path))

    def _place(self, kind: str, *, beside: bool) -> Path:
        if beside:
            return self.path.with_name(f".{self.path.name}.{kind}")
        return cache_place(self.path, kind)

    def _recover(self, *, beside: bool) -> None:
        found: DiskText | None = None
        missing: InputError | None = None
        try:
            found = disk_text(self.path)
        except InputError as error:
            missing = error
        self._marked = found is not None and found.marked
        self._disk = None if found is None else found.text
        self._journal = StepJournal(self._place("journal", beside=beside))
        for place in self._journals():
            entries, size, damaged = read_journal(place)
            if entries and self._replayed(place, entries, size, damaged=damaged):
                if found is not None:
                    self.look()
                return
        if missing is not None and not (self._new and missing.code == "no-file"):
            raise missing
        self.edits = EditedText("" if found is None else found.text)

    def _journals(self) -> list[Path]:
        """Journals that there are, the newest first."""
        places = [self.path.with_name(f".{self.path.name}.journal")]
        with suppress(InputError):
            places.append(cache_place(self.path, "journal"))
        return sorted(
            (place for place in places if place.is_file()), key=lambda each: -each.stat().st_mtime
        )

    def _replayed(
        self, place: Path, entries: list[dict[str, Any]], size: int, *, damaged: bool
    ) -> bool:
        """Go through the steps of a journal; whether it is one."""
        first, *rest = entries
        if not isinstance(first.get("disk"), str):
            return False
        self.edits, known = EditedText(first["disk"]), first["disk"]
        whole = True
        for entry in rest:
            try:
                known = _replay(self.edits, entry, known)
            except (KeyError, TypeError, ValueError, OverflowError, RecursionError):
                whole = False
                break
        self._journal, self._begun = StepJournal(place), True
        disk, self._disk = self._disk, known
        if damaged or not whole:
            with suppress(OSError):
                place.rename(_free_name(place.with_name(f"{place.name}-damaged")))
            self._begin_again()
        else:
            self._journal.go_on(size)
        if self.text not in {known, disk}:
            self.recovered = "what was not saved when this show was last open came back" + (
                "; part of its journal could not be read, and is kept beside it" if damaged or not whole else ""
            )  # fmt: skip
        if disk is None:  # else looking at the file notes in the journal what it says
            self._disk = None
        return True

    def _keep(self, entry: Mapping[str, Any]) -> None:
        """Put a step on disk; if that cannot be, say why and try again with the next."""
        try:
            if self._begun and self._journal.stands:
                self._journal.add(entry)
            else:
                self._begin_again()
            self.trouble = None
        except InputError as error:
            self._keep_in_cache(error)

    def _begin_again(self) -> None:
        """Begin the journal with the file as it is known, and the steps that lead to the text."""
        steps = EditedText(self._disk or "")
        self._begun = True
        disk = steps.text
        if disk == self.text:
            self._journal.begin(disk)
        else:
            step = steps.step(self.text, self._so_far(), _now())
            self._journal.begin(disk, _entry(step, self.text))

    def _so_far(self) -> str:
        return self.edits.done[-1].words if len(self.edits.done) == 1 else _BEFORE_CACHE

    def _keep_in_cache(self, error: InputError) -> None:
        before = self._journal
        try:
            if self._journal.path.parent != self.path.parent:
                raise error
            self._journal = StepJournal(cache_place(self.path, "journal"))
            self._begin_again()
            self.trouble = None
        except InputError:
            self._journal = before
            self.trouble = f"{error.what}: what is done now is lost if this ends; make room, or allow writing beside the show"

    def _conflict(self, what: str, why: str = "") -> InputError:
        return InputError(
            "conflict",
            Place(self.path.name),
            what,
            "look at the show as it is now, and do it again",
            why,
        )


def _free_name(path: Path) -> Path:
    """The path, or one with a number behind it: whatever has the name stays."""
    names = (path.with_name(f"{path.name}-{number}") for number in count(2))
    return next(each for each in chain([path], names) if not os.path.lexists(each))


def _replay(edits: EditedText, entry: Mapping[str, Any], known: str) -> str:
    """Do a step of a journal again; what the file said after it."""
    if "step" in entry:
        start, length = int(entry["at"]), int(entry["out"])
        change = TextChange(start, edits.text[start : start + length], str(entry["in"]))
        text = change.on(edits.text)
        if text_sum(text) != entry["sum"]:
            raise ValueError("this is another text")
        edits.step(text, str(entry["step"]), str(entry["time"]))
    elif "undo" in entry or "redo" in entry:
        (edits.undo if "undo" in entry else edits.redo)()
        if text_sum(edits.text) != entry["sum"]:
            raise ValueError("this is another text")
    elif "disk" in entry:
        return str(entry["disk"])
    elif "saved" in entry:
        return edits.text
    return known


def _entry(step: TextStep, text: str) -> dict[str, Any]:
    change = step.change
    return {
        "step": step.words, "time": step.time, "at": change.start, "out": len(change.old),
        "in": change.new, "sum": text_sum(text),
    }  # fmt: skip


def _now() -> str:
    return dt.datetime.now(tz=dt.UTC).astimezone().isoformat(timespec="seconds")
