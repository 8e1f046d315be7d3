"""A list of what was printed into a folder, stored beside the sheets, so that old ones can be removed.

Only a file that is on this list and unchanged since it was written is ever removed: a sheet that somebody
edited or added is left alone. A print of some sheets leaves the others of an earlier print as they are.
"""

import hashlib
import json
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from sequencer.files import write_set

PRINT_LIST_NAME = ".printed.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintChanges:
    """What became of the files of an earlier print that this one did not write; by name."""

    removed: tuple[Path, ...]
    outdated: tuple[Path, ...]  # left alone, and printed from another show than this


def write_print(
    folder: Path,
    contents: Mapping[str, bytes],
    *,
    covers: Callable[[str], bool] = lambda _name: True,
    show: str = "",
) -> PrintChanges:
    """Write the files of one print, and remove those of earlier prints that it replaces by nothing.

    Parameters
    ----------
    folder : Path
        Created if missing.
    contents : mapping of file name to bytes
    covers : callable
        Whether this print holds, under its name or another, all that there is to print in the place of an earlier
        file, by its name; default: of every file.
    show : str
        A digest of the show that is printed.

    Raises
    ------
    InputError
        If the folder cannot be written; nothing is changed then.
    """
    before, shows = _listed(folder / PRINT_LIST_NAME)
    now = {name: hashlib.sha256(content).hexdigest() for name, content in contents.items()}
    gone = sorted(name for name in before if name not in now and covers(name))
    left = {name: digest for name, digest in before.items() if name not in now and name not in gone}
    of = {**{name: shows.get(name, "") for name in left}, **dict.fromkeys(now, show)}
    listed = json.dumps({"files": {**left, **now}, "shows": of}, indent=1, ensure_ascii=False)
    write_set(
        {
            **{folder / name: content for name, content in contents.items()},
            folder / PRINT_LIST_NAME: f"{listed}\n".encode(),
        }
    )
    removed = [folder / name for name in gone if _is_unchanged(folder / name, before[name])]
    for path in removed:
        with suppress(OSError):
            path.unlink()
    return PrintChanges(
        removed=tuple(path for path in removed if not path.exists()),
        outdated=tuple(
            folder / name for name in sorted(left) if of[name] != show and (folder / name).exists()
        ),
    )


def _is_unchanged(path: Path, digest: str) -> bool:
    with suppress(OSError):
        return hashlib.sha256(path.read_bytes()).hexdigest() == digest
    return False


def _listed(path: Path) -> tuple[dict[str, str], dict[str, str]]:
    """Digests of earlier prints' files, and of the shows they are of; empty if the list is missing or not one of ours."""
    try:
        record = json.loads(path.read_text(encoding="utf-8"))
        files = {
            str(name): str(digest)
            for name, digest in record["files"].items()
            if Path(name).name == name and name.endswith(".pdf")
        }
        shows = {str(name): str(digest) for name, digest in record.get("shows", {}).items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}, {}
    return files, shows
