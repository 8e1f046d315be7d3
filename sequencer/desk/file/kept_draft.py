"""A draft that is offered and not yet put in, on disk: offered again when the show is next opened, however the program ended.

It lies beside the journal (`.mine.yaml.draft`) with the whole text that it is for, since that text may be in no journal any more
once the show is saved; it goes once it is put in or given up.
"""

from collections.abc import Mapping
from contextlib import suppress
from typing import Any, NamedTuple

from sequencer.desk.file.kept_beside import KeptBeside
from sequencer.desk.file.step_journal import read_journal, text_sum
from sequencer.errors import InputError


class OfferedDraft(NamedTuple):
    """A draft as it was offered."""

    given: dict[str, Any]  # what was asked for, with the text that it is for as `base`
    result: dict[str, Any]  # as `draft_errand.draft_offer` gives it


class KeptDraft(KeptBeside):
    """The draft of a show that is offered; forgotten once it is put in, or given up."""

    def keep(self, given: Mapping[str, Any], result: Mapping[str, Any]) -> None:
        """Put a draft on disk, in place of the one before; where nothing can be written it is only on the page."""
        asked = {key: value for key, value in given.items() if key not in {"base", "text", "path"}}
        line = {"asked": asked, "result": dict(result), "sum": _sum(given["base"], result)}
        with suppress(InputError, OSError):
            self._file.begin(given["base"], line)

    def offered(self) -> OfferedDraft | None:
        """The draft that is kept, if it is whole; else it is taken away: one that was half written was never offered."""
        try:
            entries, _, damaged = read_journal(self._file.path)
        except InputError:
            return None
        if not entries:
            return None
        try:
            first, line = entries
            base, result = first["disk"], line["result"]
            whole = not damaged and _sum(base, result) == line["sum"]
            asked = line["asked"]
            given = {key: asked[key] for key in ("section", "span", "another", "seed")}
        except (KeyError, TypeError, ValueError, AttributeError, RecursionError):
            whole = False
        if not whole:
            self.forget()
            return None
        return OfferedDraft({**given, "base": base}, result)


def _sum(base: str, result: Mapping[str, Any]) -> str:
    return text_sum(base) + text_sum(result["text"])
