"""The last switch of who is there, on disk as long as somebody is away: listed again when the show is next opened.

It lies beside the journal (`.mine.yaml.switch`) with the whole texts before and after it, which no journal has once the show is saved.
"""

import json
from collections.abc import Mapping
from contextlib import suppress
from typing import Any

from sequencer.desk.file.kept_beside import KeptBeside
from sequencer.desk.file.last_switch import LastSwitch
from sequencer.desk.file.step_journal import read_journal, text_sum
from sequencer.errors import InputError

_REPORTED = ("findings", "unseen")  # all that is compared of a report
_SAID = ("after", "tonight", "reports")


class KeptSwitch(KeptBeside):
    """The last switch of a show; forgotten once everybody is there."""

    def keep(self, last: LastSwitch) -> None:
        """Put a switch on disk, in place of the one before; where nothing can be written it is forgotten with the program."""
        reports = [
            None if each is None else {key: each[key] for key in _REPORTED}
            for each in (last.report_before, last.report_after)
        ]
        said = {"after": last.after, "tonight": last.tonight, "reports": reports}
        with suppress(InputError, OSError):
            self._file.begin(last.before, {**said, "sum": _sum(last.before, said)})

    def found(self) -> LastSwitch | None:
        """The switch that is kept, if it is whole; its revision is none of the texts that are to come."""
        try:
            entries, _, damaged = read_journal(self._file.path)
            first, line = entries
            if damaged or _sum(first["disk"], line) != line["sum"]:
                return None
            before, after = map(_report, line["reports"])
            return LastSwitch(
                before=first["disk"], after=line["after"], tonight=line["tonight"], revision=0,
                report_before=before, report_after=after,
            )  # fmt: skip
        except (InputError, KeyError, TypeError, ValueError, AttributeError, RecursionError):
            return None


def _report(said: Any) -> Mapping[str, Any] | None:
    return None if said is None else {key: list(said[key]) for key in _REPORTED}


def _sum(before: str, said: Mapping[str, Any]) -> str:
    """A sum over all that is kept."""
    return text_sum(json.dumps([before, *(said[key] for key in _SAID)]))
