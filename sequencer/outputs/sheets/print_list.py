"""What was printed into a folder: a list kept beside the sheets, so that old ones can be taken away.

Only a file that this list names, and that still is what was written, is ever removed: a sheet that somebody
changed or brought is theirs.
"""

import hashlib
import json
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from sequencer.files import write_set

PRINT_LIST_NAME = ".printed.json"


def write_print(folder: Path, contents: Mapping[str, bytes]) -> list[Path]:
    """Write the files of one print, and remove those of the one before that are not among them.

    Parameters
    ----------
    folder : Path
        Made if missing.
    contents : mapping of file name to bytes

    Returns
    -------
    removed : list of Path
        By name.

    Raises
    ------
    InputError
        If the folder cannot be written; then nothing is changed.
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
    """Names and digests of the last print; none where the list is missing or is no list of ours."""
    try:
        files = json.loads(path.read_text(encoding="utf-8"))["files"]
        return {
            str(name): str(digest)
            for name, digest in files.items()
            if Path(name).name == name and name.endswith(".pdf")
        }
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}
