"""Values as a page reads them: errors with their parts, and JSON without what is no number."""

import json
import os
import traceback
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from sequencer.errors import InputError, InputErrors, written_out
from sequencer.system_folders import fault_log


def json_bytes(values: Any) -> bytes:
    """JSON, in UTF-8."""
    text = json.dumps(values, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    return text.encode("utf-8", "backslashreplace")


def error_values(error: InputError, path: str = "") -> dict[str, Any]:
    """An error with its parts; the file is told by its name alone.

    Parameters
    ----------
    error : InputError
    path : str
        The show file, whose folder is left out of the message.
    """
    first = error.errors[0] if isinstance(error, InputErrors) else error
    message = str(error)
    if path:
        message = message.replace(str(path), Path(path).name)
    several = error.errors if isinstance(error, InputErrors) else (error,)
    return {
        "code": first.code,
        "message": message,
        "said": "\n".join(plain_words(each, path) for each in several),
        "what": first.what,
        "why": first.why,
        "mend": first.mend,
        "line": first.place.line,
        "column": first.place.column,
    }


def plain_words(error: InputError, path: str = "") -> str:
    """An error as a page says it: without its code, and without a place in the show file, which the page does not show.

    Parameters
    ----------
    error : InputError
    path : str
        The show file; another file is named.
    """
    file, line, _ = error.place
    other = Path(file).suffix and Path(file).name != Path(path).name
    head = f"{Path(file).name}{f', line {line}' if line else ''}: " if other else ""
    if not (line or Path(file).suffix or file.startswith("operation")) and " " in file:
        head = f"{file}: "  # a field of a form, by its name
    return f"{written_out(head)}{error.sentence}"


def all_errors(error: InputError, path: str = "") -> list[dict[str, Any]]:
    """Each of several errors."""
    several = error.errors if isinstance(error, InputErrors) else (error,)
    return [error_values(each, path) for each in several]


def fault_values(error: Exception) -> dict[str, Any]:
    """A fault of our own, with its traceback in a log."""
    text = "".join(traceback.format_exception(error))
    log = fault_log(f"sequencer-open-{os.getpid()}.log", text)
    what = f"bug in sequencer ({type(error).__name__})"
    mend = "please report it" if log is None else f"please report it and attach {log}"
    return {
        "code": "fault", "message": f"{what}; {mend}", "what": what, "why": "", "mend": mend,
        "line": None, "column": None,
    }  # fmt: skip


def with_ids(findings: Sequence[dict[str, Any]]) -> list[dict[str, Any]]:
    """Findings with a name each, which stays the same from one check to the next while they do."""
    seen: dict[str, int] = {}
    out = []
    for said in findings:
        name = f"{said['code']} {' '.join(said['who'])} {said['position'] or ''}".strip()
        seen[name] = seen.get(name, 0) + 1
        out.append({"id": name if seen[name] == 1 else f"{name} #{seen[name]}", **said})
    return out
