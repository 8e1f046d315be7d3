"""A list of what was printed into a folder, stored beside the sheets, so that old ones can be removed.

Only a file that is on this list and unchanged since it was written is ever removed: a sheet that somebody
edited or added is left alone.
"""

import hashlib
import json
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from sequencer.files import write_set

PRINT_LIST_NAME = ".printed.json"


def write_print(folder: Path, contents: Mapping[str, bytes]) -> list[Path]:
    """Write the files of one print, and remove files of the previous print that are no longer in it.

    Parameters
    ----------
    folder : Path
        Created if missing.
    contents : mapping of file name to bytes

    Returns
    -------
    removed : list of Path
        By name.

    Raises
    ------
    InputError
        If the folder cannot be written; nothing is changed then.
    """
    before = _listed(folder / PRINT_LIST_NAME)
    now = {name: hashlib.sha256(content).hexdigest() for name, content in contents.items()}
    listed = json.dumps({"files": now}, indent=1, ensure_ascii=False) + "\n"
    write_set(
        {
            **{folder / name: content for name, content in contents.items()},
            folder / PRINT_LIST_NAME: listed.encode("utf-8"),
        }
    )
    removed = []
    for name in sorted(set(before) - set(now)):
        path = folder / name
        with suppress(OSError):
            if hashlib.sha256(path.read_bytes()).hexdigest() == before[name]:
                path.unlink()
                removed.append(path)
    return removed


def _listed(path: Path) -> dict[str, str]:
    """Names and digests of the last print; empty if the list is missing or is not one of ours."""
    try:
        files = json.loads(path.read_text(encoding="utf-8"))["files"]
        return {
            str(name): str(digest)
            for name, digest in files.items()
            if Path(name).name == name and name.endswith(".pdf")
        }
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}
