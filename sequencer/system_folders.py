"""Folders of the person at this machine; there may be no home folder, and no room for temporary files."""

import os
from contextlib import suppress
from pathlib import Path

_NOWHERE = (
    Path(os.devnull) / "sequencer"
)  # nothing is found below it, and nothing can be made there


def cache_folder() -> Path:
    """Where what was worked out is kept; where nobody has a home folder, a place below which nothing can be kept."""
    from platformdirs import user_cache_path

    try:
        return user_cache_path("sequencer")
    except RuntimeError:  # a user whom the system does not know, as containers have them
        return _NOWHERE


def from_home(path: Path) -> Path:
    """A path whose `~` stands for a home folder; as it is where that is nobody's."""
    try:
        return path.expanduser()
    except RuntimeError:
        return path


def crowded_folders() -> set[str]:
    """Folders into which things from elsewhere are put: home, downloads, desktop, documents, temporary files; links followed."""
    import tempfile

    import platformdirs

    found: set[str] = set()
    for place in (
        Path.home, tempfile.gettempdir, platformdirs.user_downloads_dir, platformdirs.user_desktop_dir, platformdirs.user_documents_dir,
    ):  # fmt: skip
        with suppress(OSError, RuntimeError):  # there is none
            found.add(os.path.realpath(place()))
    return found | {Path(each).anchor for each in (*found, str(Path(os.sep).resolve()))}


def fault_log(name: str, text: str) -> Path | None:
    """A log of a fault of ours among the temporary files, with some text added; None if it cannot be written."""
    import tempfile

    try:
        log = Path(tempfile.gettempdir()) / name
        with log.open("a", encoding="utf-8", errors="replace") as out:
            out.write(text)
    except OSError:  # this too where no folder is left in which anything can be written
        return None
    return log
