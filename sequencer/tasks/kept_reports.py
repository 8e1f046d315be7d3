"""Reports of show files, kept by all that they depend on: an unchanged show is not checked again.

A report depends on the text of the show file and the name it is asked by, on the files that the show names
(its song, beats, burn log, patterns and rules), on what was heard in the song, on the year for a show
without a date, and on the code. A show is checked each time
where another package adds something, and where one of these files cannot be read.
"""

import datetime as dt
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sequencer import content_keys, kept, plugins
from sequencer.allowed_places import is_allowed
from sequencer.digests import sha256_of_file
from sequencer.findings import Clearance, Finding, Report, restored_row
from sequencer.listening import cache as song_cache
from sequencer.show.text.file_text import file_text
from sequencer.units import BarLengths

if TYPE_CHECKING:
    from sequencer.show.model import Show
    from sequencer.show.reading import ReadShow
    from sequencer.staging.staged import Staged

_NAMES, _REPORT, _VERDICT = "names of files in a show", "report", "verdict"  # kinds of kept results
_Content = tuple[str, *tuple[str | bytes | int, ...]]  # the song's SHA-256 first


class AskedReport:
    """A question for the report of a show file, as the file and those that it names are at this moment.

    Parameters
    ----------
    path : Path
    flown : bool
        Whether the report is that of the show as flown too.
    text : str, optional
        What the show file is taken to say, where that is not written yet.

    Raises
    ------
    InputError
        If the show file cannot be read; as `read_show`.
    """

    def __init__(self, path: Path, *, flown: bool = False, text: str | None = None) -> None:
        self._path, self._flown = path, flown
        self._text = None if text is None else text.removeprefix("\ufeff")
        self.read: ReadShow | None = None  # the show, if it had to be read for its files' names
        self._content = self._now()

    def known(self) -> Report | None:
        """The report if it was kept; None if there is none."""
        content = self._content_with_song()
        if content is None:
            return None
        found = kept.known(_REPORT, content, restore=report_from_record)
        return found[0] if found else None

    def verdict(self) -> bool | None:
        """Whether the checks found no STOP: of the report, or of one that was danced too; None if none was kept."""
        report = self.known()
        content = self._content_with_song()
        if report is not None or content is None:
            return None if report is None else report.ok
        found = kept.known(_VERDICT, content, restore=_as_verdict)
        return found[0] if found else None

    def keep_verdict(self, show: "Staged", report: Report) -> None:
        """Keep whether a report has no STOP that holds more than was asked for: dancing a show with errors adds none.

        Parameters
        ----------
        show : Staged
            As it was checked; staged from the same file after the question was asked.
        report : Report
        """
        content = self._content_with_song() if self._holds(show) else None
        if content is not None:
            kept.keep(_VERDICT, content, report.ok, record=lambda ok: [ok])

    def of(self, show: "Staged", check: Callable[["Staged"], Report]) -> Report:
        """The report of the show as it was staged: known, or from a check and then kept.

        Parameters
        ----------
        show : Staged
            Staged from the same file after the question was asked.
        check : callable
            Checks a staged show.
        """
        content = self._content_with_song() if self._holds(show) else None
        found = () if content is None else kept.known(_REPORT, content, restore=report_from_record)
        if found:
            return found[0]
        report = check(show)
        if content is not None and self._now() == self._content:
            kept.keep(_REPORT, content, report, record=report_record)
        return report

    def _holds(self, show: "Staged") -> bool:
        """Whether nothing has changed since the question was asked: else it is not known what was staged."""
        if self._content is None or show.heard is None or self._now() != self._content:
            return False
        return song_cache.load(self._content[0], track=show.heard.track) == show.heard

    def _content_with_song(self) -> tuple[str | bytes | int, ...] | None:
        heard = None if self._content is None else song_cache.entry(self._content[0])
        return None if self._content is None or heard is None else (*self._content, heard)

    def _now(self) -> _Content | None:
        """All that the report depends on, but what was heard in the song; None if it is not to be kept."""
        if plugins.any_installed():
            return None
        text = file_text(self._path) if self._text is None else self._text
        code = content_keys.whole_code()
        names = kept.known(_NAMES, (code, text), restore=_as_names)
        if not names:
            self.read = _read(text, self._path)
            names = (names_in(self.read.show),)
            kept.keep(_NAMES, (code, text), names[0], record=list)
        folder = self._path.parent
        if not all(is_allowed(folder / name, folder) for name in names[0][1:]):
            return None  # reading the show says so
        try:
            digests = [sha256_of_file(folder / name) for name in names[0]]
        except (OSError, ValueError):
            return None
        if not is_allowed(folder / names[0][0], folder) and digests[0] not in text:
            return None  # nor is its content named
        year = dt.datetime.now(tz=dt.UTC).year
        others: tuple[str | bytes | int, ...] = (
            code, str(self._path), text, year, "flown" if self._flown else "drawn", *digests[1:],
        )  # fmt: skip
        return (digests[0], *others)


def _read(text: str, path: Path) -> "ReadShow":
    from sequencer.show.reading import show_from_document
    from sequencer.show.text.document import parse_document

    return show_from_document(parse_document(text, str(path)))


def _as_names(record: list[object]) -> tuple[str, ...]:
    return tuple(str(name) for name in record)


def _as_verdict(record: list[object]) -> bool:
    (ok,) = record
    if not isinstance(ok, bool):
        raise TypeError(ok)
    return ok


def names_in(show: "Show") -> tuple[str, ...]:
    """Every file that a check of the show reads, relative to the show file; the song first."""
    beats = show.track.corrections.beats
    burns = show.fire.burns if show.fire is not None else None
    others = (*show.pattern_files, *show.rules.file)
    return (show.track.file, *(name for name in (beats, burns) if name is not None), *others)


def report_record(report: Report) -> dict[str, Any]:
    """A report as JSON values.

    Raises
    ------
    ValueError
        If the show was danced: that is kept elsewhere.
    """
    if report.danced is not None:
        raise ValueError("a report of a danced show is not kept")
    return {
        "show": report.show,
        "findings": [asdict(each) for each in report.findings],
        "clearances": [asdict(each) for each in report.clearances],
        "not_checked": report.not_checked,
        "cautions": report.cautions,
        "conditions": sorted(report.conditions),
        "fuel_codes": sorted(report.fuel_codes),
        "blank_codes": sorted(report.blank_codes),
        "bars": [report.bars.metre, report.bars.others],
    }


def report_from_record(record: dict[str, Any]) -> Report:
    """The inverse of `report_record`.

    Raises
    ------
    KeyError, TypeError, ValueError
        If the record is not a report.
    """
    return Report(
        show=record["show"],
        findings=tuple(restored_row(Finding, each) for each in record["findings"]),
        clearances=tuple(restored_row(Clearance, each) for each in record["clearances"]),
        not_checked=tuple(record["not_checked"]),
        cautions=tuple(record["cautions"]),
        conditions=frozenset(record["conditions"]),
        fuel_codes=frozenset(record["fuel_codes"]),
        blank_codes=frozenset(record["blank_codes"]),
        bars=BarLengths(
            metre=record["bars"][0], others=tuple((bar, beats) for bar, beats in record["bars"][1])
        ),
    )
