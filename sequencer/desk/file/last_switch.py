"""The last switch of who is there tonight: the show before and after it, with what the checks said of either."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

Report = Mapping[str, Any]  # a whole report, as a page reads it


@dataclass(frozen=True, slots=True, kw_only=True)
class LastSwitch:
    """What the last switch led from and to."""

    before: str  # the show file's text
    after: str
    tonight: Any  # what stands under `tonight` after it; None if nothing
    revision: int  # of the text after it; 0 if that is none of this program
    report_before: Report | None  # None: not all checks had answered
    report_after: Report | None = None


class SwitchMemory:
    """Notices when a text says of another person that they are there, away or replaced.

    It does not matter by which way: a switch of the page, Undo, an editor. Of a show that says so from the beginning the switch
    is the one that was kept, or else from everybody to those who are there.

    Parameters
    ----------
    kept : LastSwitch, optional
        The last one when the show was last open.
    everybody : callable
        A show's text with everybody there; None if there is none.
    """

    def __init__(
        self,
        kept: LastSwitch | None = None,
        everybody: Callable[[str], str | None] = lambda _text: None,
    ) -> None:
        self.last: LastSwitch | None = None
        self._kept, self._everybody = kept, everybody
        self._text: tuple[int, str, Any] | None = None  # the newest that is a show

    def __repr__(self) -> str:
        return f"<SwitchMemory: {'nothing switched' if self.last is None else self.last.revision}>"

    def take(self, revision: int, text: str, tonight: Any, report: Report | None) -> None:
        """Take the newest text, if it is a show.

        Parameters
        ----------
        revision : int
        text : str
        tonight : plain value
            What stands under `tonight`; None if nothing.
        report : mapping, optional
            The whole report on the text that was taken before, if its checks were done.
        """
        self.checked(report)
        tonight = tonight or None
        known, self._text = self._text, (revision, text, tonight)
        if known is None:
            self.last = self._from_the_beginning(revision, text, tonight)
        if known is None or known[2] == tonight:
            return
        last = self.last
        if last is not None and last.revision == known[0] and last.report_after is None:
            # Two switches in a row, too quick for the checks: they are told as one.
            self.last = replace(last, after=text, tonight=tonight, revision=revision)
        else:
            self.last = LastSwitch(
                before=known[1], after=text, tonight=tonight, revision=revision, report_before=report
            )  # fmt: skip

    def _from_the_beginning(self, revision: int, text: str, tonight: Any) -> LastSwitch | None:
        if tonight is None:
            return None
        kept = self._kept
        if kept is not None and kept.tonight == tonight:
            return replace(kept, revision=revision) if kept.after == text else kept
        before = self._everybody(text)
        if before is None:
            return None
        return LastSwitch(
            before=before, after=text, tonight=tonight, revision=revision, report_before=None
        )

    def checked(self, report: Report | None) -> None:
        """Take the whole report on the newest text."""
        last = self.last
        if report is None or last is None or self._text is None or last.report_after is not None:
            return
        if last.revision == self._text[0]:
            self.last = replace(last, report_after=report)
