"""Whether somebody has seen the tour of the page: kept for the user, since a page's own memory ends with its address."""

from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from sequencer.desk.show_server import ShowServer
from sequencer.system_folders import cache_folder


def _mark() -> Path:
    return cache_folder() / "open" / "tour-seen"


async def tour_values(_server: ShowServer, _given: Mapping[str, Any]) -> dict[str, Any]:
    """Whether it was seen."""
    return {"seen": _mark().is_file()}


async def tour_seen(_server: ShowServer, _given: Mapping[str, Any]) -> dict[str, Any]:
    """It was seen, or put away: it does not come by itself again."""
    with suppress(OSError):  # then it comes once more
        _mark().parent.mkdir(parents=True, exist_ok=True)
        _mark().touch()
    return {"seen": True}
