"""The text of a show file, and what can be wrong with it before it is read as YAML."""

from pathlib import Path

from sequencer.errors import InputError, Place

_LARGEST_FILE = 4_000_000  # bytes


def file_text(path: Path) -> str:
    """Text of a show file.

    Raises
    ------
    InputError
        If the file does not exist, cannot be read, is not UTF-8 text, or is larger than any show.
    """
    place = Place(str(path))
    try:
        if path.is_dir():
            raise InputError(
                "not-a-file", place, "this is a folder", "give the path of a show file in it"
            )
        if path.stat().st_size > _LARGEST_FILE:
            raise InputError(
                "too-large",
                place,
                f"this file is larger than {_LARGEST_FILE // 1_000_000} MB",
                "give the path of a show file",
            )
        return path.read_text(encoding="utf-8-sig")
    except FileNotFoundError as error:
        raise InputError("no-file", place, "file not found", "check the path") from error
    except UnicodeDecodeError as error:
        line = path.read_bytes()[: error.start].count(b"\n") + 1
        raise InputError(
            "not-text", Place(str(path), line), "this is not UTF-8 text", "save it as UTF-8"
        ) from error
    except OSError as error:
        raise InputError(
            "cannot-read", place, f"this file cannot be read ({error.strerror})", "check the path"
        ) from error
