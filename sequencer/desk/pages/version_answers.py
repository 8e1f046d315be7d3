"""What a page asks of an open show's versions: list, keep, go back to one, delete, and compare any two texts."""

import asyncio
from collections.abc import Mapping
from dataclasses import asdict
from functools import lru_cache
from typing import Any

from sequencer.desk.file.kept_versions import KeptVersion, KeptVersions
from sequencer.desk.show_server import ShowServer
from sequencer.errors import InputError, Place
from sequencer.findings import SEVERITIES
from sequencer.show.text.file_text import DiskText, disk_text

_FILE, _NOW = "file", "now"
_STALE = "was checked when it was kept, but the program, the song or another file that it reads may have changed since"


class VersionAnswers:
    """Answers about the versions of an open show.

    Parameters
    ----------
    server : ShowServer
    """

    def __init__(self, server: ShowServer) -> None:
        self._server = server
        self._kept = KeptVersions(server.opened.path)

    def __repr__(self) -> str:
        return f"<VersionAnswers of {self._server.opened.path.name}>"

    async def list_values(self) -> dict[str, Any]:
        """All versions, the newest first, each with what differs from the show as it is now."""
        now = DiskText(self._server.opened.text, self._server.opened.marked)
        file = self._server.opened.path.name
        return {
            "revision": self._server.opened.revision,
            "versions": await asyncio.to_thread(
                lambda: [self._values(each, now, file) for each in self._kept.all()]
            ),
        }

    def _values(self, version: KeptVersion, now: DiskText, file: str) -> dict[str, Any]:
        out = {"name": version.name, "file": version.path.name, "time": version.time}
        try:
            said = self._kept.said(version.name)
        except InputError as error:
            return {
                **out,
                "line": f"it cannot be read: {error.what}",
                "same": False,
                "checked": None,
                "holds": False,
            }
        found = self._kept.findings(version.name, said.text)
        severities = None if found is None else [one.severity for one in found.findings]
        return {
            **out,
            "line": _line(said, now, file),
            "same": said == now,
            "checked": None
            if severities is None
            else {each: severities.count(each) for each in SEVERITIES},
            "holds": found is not None and found.holds,
        }

    async def keep(self, name: str, *, replace: bool) -> dict[str, Any]:
        """Keep the show as it is now by a name; what the checks say of it is kept along, if all have answered."""
        said = DiskText(self._server.opened.text, self._server.opened.marked)
        report = self._report_now()
        await asyncio.to_thread(self._kept.keep, name, said, report, replace=replace)
        return await self.list_values()

    async def delete(self, name: str) -> dict[str, Any]:
        """Take a version away."""
        await asyncio.to_thread(self._kept.delete, name)
        return await self.list_values()

    async def go_back(self, name: str, revision: int) -> dict[str, Any]:
        """Make the show what a version says, as one step."""
        said = await asyncio.to_thread(self._kept.said, name)
        return await self._server.replace_text(
            said.text, f"go back to the version “{name}”", revision
        )

    async def go_back_to_step(self, step: int, revision: int) -> dict[str, Any]:
        """Make the show what it was after a step, as one step more."""
        side = self._side(f"step:{step}")
        return await self._server.replace_text(side["text"], f"go back to {side['name']}", revision)

    async def compare(self, old: str, new: str) -> bytes:
        """Two texts compared: `now`, `file` (as it is on disk), `version:NAME` or `step:NUMBER` each."""
        # Read here, in the server's loop, where nobody takes a step meanwhile.
        sides = [self._side(each) for each in (old, new)]
        return await self._server.link.ask("compare", old=sides[0], new=sides[1])  # type: ignore[no-any-return]

    def _side(self, which: str) -> dict[str, Any]:
        opened = self._server.opened
        kind, _, rest = which.partition(":")
        if which == _NOW:
            report_now = self._report_now()
            return {
                "name": "the show now",
                "text": opened.text,
                "marked": opened.marked,
                "report": report_now,
            }
        if which == _FILE:
            there = disk_text(opened.path)
            return {
                "name": "the file as it was saved",
                "text": there.text,
                "marked": there.marked,
                "report": None,
            }
        if kind == "version":
            said = self._kept.said(rest)
            found = self._kept.findings(rest, said.text)
            report = None
            if found is not None and found.holds:
                report = {
                    "findings": [asdict(one) for one in found.findings],
                    "unseen": found.unseen,
                }
            out = {
                "name": f"the version “{rest}”",
                "text": said.text,
                "marked": said.marked,
                "report": report,
            }
            return out if found is None or found.holds else {**out, "unchecked": _STALE}
        if kind == "step" and rest.isdigit() and int(rest) <= len(opened.edits.all_steps):
            words = "the show as it was opened"
            if int(rest):
                words = (
                    f"the show after step {rest} ({opened.edits.all_steps[int(rest) - 1].words})"
                )
            text = opened.edits.after(int(rest))
            return {"name": words, "text": text, "marked": opened.marked, "report": None}
        raise InputError(
            "bad-request", Place("request"), f"there is no text {which!r}",
            "compare 'now', 'file', 'version:NAME' or 'step:NUMBER'",
        )  # fmt: skip

    def _report_now(self) -> Mapping[str, Any] | None:
        """What the checks say of the text as it is now, if all have answered."""
        checks = self._server.link.checks
        if checks.report is None or checks.revision != self._server.opened.revision:
            return None
        return {"findings": checks.report["findings"], "unseen": checks.report["unseen"]}


@lru_cache(maxsize=64)
def _line(said: DiskText, now: DiskText, file: str) -> str:
    """What differs from one text to another, in one line; as it is written, since nothing is staged for a list."""
    from sequencer.desk.views.compared_view import comparison_view

    old, new = ({"name": "", "text": each.text, "marked": each.marked} for each in (said, now))
    return str(comparison_view(old, new, None, file)["line"])
