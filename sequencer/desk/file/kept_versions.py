"""Versions of a show that a person kept by a name: whole show files beside the show, `mine (the name).yaml`.

A copy that somebody made by hand and named so is a version as well; each can be opened, checked and printed by itself. What
the checks said of one when it was kept lies beside it (`.mine (the name).yaml.checked`), and counts only for the very same text;
whether it still holds depends on the program and on the files that the show names (`report_ground`).
"""

import datetime as dt
import json
import os
import unicodedata
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

from sequencer.desk.file.report_ground import report_ground
from sequencer.desk.file.step_journal import text_sum
from sequencer.errors import InputError, Place
from sequencer.file_names import refused_letter
from sequencer.files import replacing, telling, write_text
from sequencer.findings import Finding, restored_row
from sequencer.show.text.file_text import DiskText, disk_text, write_disk_text

LONGEST_NAME = 80  # letters
_FORMAT = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptVersion:
    """A version as the folder has it."""

    name: str
    path: Path
    time: str  # ISO 8601, with the zone: when it was written


@dataclass(frozen=True, slots=True)
class KeptFindings:
    """A complete report that was kept with a version."""

    findings: tuple[Finding, ...]
    unseen: tuple[str, ...]
    time: str  # when it was kept
    holds: bool  # whether the same checks would say the same now; False where that cannot be known


class KeptVersions:
    """The versions of a show file.

    Parameters
    ----------
    show : Path
    """

    def __init__(self, show: Path) -> None:
        self._show = show

    def __repr__(self) -> str:
        return f"<KeptVersions of {self._show.name}>"

    def all(self) -> list[KeptVersion]:
        """All versions, the newest first."""
        found = []
        with suppress(OSError):
            for path in self._show.parent.iterdir():
                name = self._name(path)
                if name is not None:
                    with suppress(OSError):
                        found.append((path.stat().st_mtime, name, path))
        return [
            KeptVersion(name=name, path=path, time=_clock(time))
            for time, name, path in sorted(found, key=lambda each: (-each[0], each[1]))
        ]

    def said(self, name: str) -> DiskText:
        """What a version says.

        Raises
        ------
        InputError
            If there is no version of that name, or it cannot be read.
        """
        return disk_text(self._known(name).path)

    def findings(self, name: str, text: str) -> KeptFindings | None:
        """What the checks said of a version when it was kept; None if it was not checked, or was changed since."""
        path = _checked_place(self._known(name).path)
        with suppress(OSError, ValueError, KeyError, TypeError):
            said = json.loads(path.read_text(encoding="utf-8"))
            if said["checked"] == _FORMAT and said["sum"] == text_sum(text):
                found = tuple(finding_from_values(each) for each in said["findings"])
                ground = report_ground(self._show, text)
                holds = ground is not None and said.get("ground") == ground
                return KeptFindings(
                    found, tuple(map(str, said["unseen"])), str(said["time"]), holds
                )
        return None

    def keep(
        self,
        name: str,
        said: DiskText,
        report: Mapping[str, Any] | None = None,
        *,
        replace: bool = False,
    ) -> KeptVersion:
        """Keep a text by a name.

        Parameters
        ----------
        name : str
        said : DiskText
        report : mapping, optional
            What the checks said of this very text, all of them: `findings` and `unseen`.
        replace : bool
            Whether a version of that name may be replaced.

        Raises
        ------
        InputError
            If the name cannot be a file's, there is such a version already, or it cannot be written.
        """
        name = spelled_name(name)
        known = next((each for each in self.all() if _same(each.name, name)), None)
        if known is not None and not replace:
            raise _there(known.name)
        path = known.path if known is not None else self._show.with_name(f"{self._show.stem} ({name}){self._show.suffix}")  # fmt: skip
        try:
            with telling(path):
                _checked_place(path).unlink(missing_ok=True)
            if known is not None:
                _no_more_open_than(self._show, path)
                write_disk_text(path, said)
            else:
                _write_new(path, said, name, self._show)
        except InputError as error:
            if error.code != "cannot-write":
                raise
            raise InputError(
                "cannot-write", Place(path.name), error.what, "make room, or allow writing beside the show"
            ) from error  # fmt: skip
        if report is not None:
            with suppress(InputError):  # the version is whole without it
                values = _report_values(said.text, report)
                values["ground"] = report_ground(self._show, said.text)
                checked = _checked_place(path)
                with telling(checked):
                    checked.touch(mode=0o600)
                    checked.chmod(path.stat().st_mode & 0o777)
                write_text(checked, json.dumps(values))
        return next(each for each in self.all() if each.path == path)

    def delete(self, name: str) -> None:
        """Take a version away.

        Raises
        ------
        InputError
            If there is none, or the folder cannot be written to.
        """
        path = self._known(name).path
        with telling(path):
            path.unlink()
        with suppress(OSError):
            _checked_place(path).unlink()

    def _known(self, name: str) -> KeptVersion:
        found = next((each for each in self.all() if each.name == name), None)
        if found is None:
            raise InputError(
                "no-version", Place(self._show.name), f"there is no version “{name}”",
                "look at the list again: its file may have been renamed or taken away",
            )  # fmt: skip
        return found

    def _name(self, path: Path) -> str | None:
        start, end = f"{self._show.stem} (", f"){self._show.suffix}"
        whole = unicodedata.normalize("NFC", path.name)
        if not (whole.startswith(start) and whole.endswith(end)):
            return None
        name = whole[len(start) : len(whole) - len(end)]
        return name if name.strip() and _balanced(name) else None


def spelled_name(name: str) -> str:
    """A version's name as its file has it.

    Raises
    ------
    InputError
        If no file can be called so on every system.
    """
    name = unicodedata.normalize("NFC", " ".join(name.split()))
    what = None
    if not name:
        what = "a version needs a name"
    elif len(name) > LONGEST_NAME:
        what = f"a version's name has at most {LONGEST_NAME} letters"
    elif wrong := refused_letter(name):
        what = f"a version's name is part of a file's name, which cannot have {wrong!r}"
    elif not _balanced(name):
        what = "the brackets in this name do not go together"
    if what is not None:
        raise InputError("bad-name", Place("name of the version"), what, "choose another name")
    return name


def finding_from_values(values: Mapping[str, Any]) -> Finding:
    """A finding from the JSON values by which pages know it."""
    own = {each.name for each in fields(Finding)}
    return restored_row(Finding, {key: value for key, value in values.items() if key in own})


def _report_values(text: str, report: Mapping[str, Any]) -> dict[str, Any]:
    own = {each.name for each in fields(Finding)}
    return {
        "checked": _FORMAT,
        "sum": text_sum(text),
        "time": _clock(dt.datetime.now(tz=dt.UTC).timestamp()),
        "findings": [{key: each[key] for key in each if key in own} for each in report["findings"]],
        "unseen": list(report["unseen"]),
    }


def _no_more_open_than(show: Path, path: Path) -> None:
    """Let nobody read or write a file who may not do so with the show file; a show that is not saved yet says nothing."""
    with telling(path), suppress(FileNotFoundError):
        path.chmod(path.stat().st_mode & show.stat().st_mode & 0o777)


def _write_new(path: Path, said: DiskText, name: str, show: Path) -> None:
    """Write a file where there is none yet; if one has come meanwhile, it stays as it is."""
    scratch = path.with_name(f".{path.name}.new-{os.getpid()}")
    try:
        with telling(path), suppress(FileNotFoundError):
            mode = show.stat().st_mode & 0o777
            scratch.touch(mode=0o600)  # before a word is in it
            scratch.chmod(mode)
        write_disk_text(scratch, said)
        with telling(path):
            try:
                os.link(scratch, path)
            except FileExistsError:
                raise _there(name) from None
            except (
                OSError
            ):  # a file system without links: the name is taken first, and the text put there whole
                try:
                    path.touch(mode=scratch.stat().st_mode & 0o777, exist_ok=False)
                    path.chmod(scratch.stat().st_mode & 0o777)
                except FileExistsError:
                    raise _there(name) from None
                with replacing(path) as place:
                    place.write_bytes(scratch.read_bytes())
    finally:
        with suppress(OSError):
            scratch.unlink()


def _there(name: str) -> InputError:
    return InputError(
        "version-there", Place("name of the version"), f"there is a version “{name}” already",
        "choose another name, or replace that one",
    )  # fmt: skip


def _checked_place(path: Path) -> Path:
    return path.with_name(f".{path.name}.checked")


def _same(one: str, other: str) -> bool:
    """Whether two names are one on a system that does not tell capitals apart."""
    return one.casefold() == other.casefold()


def _balanced(name: str) -> bool:
    depth = 0
    for letter in name:
        depth += (letter == "(") - (letter == ")")
        if depth < 0:
            return False
    return depth == 0


def _clock(time: float) -> str:
    return dt.datetime.fromtimestamp(time, tz=dt.UTC).astimezone().isoformat(timespec="seconds")
