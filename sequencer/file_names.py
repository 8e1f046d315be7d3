"""What a file beside a show can be called so that every system takes it, and nobody is deceived by how it looks."""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from pathlib import PurePosixPath

_REFUSED = '<>:"/\\|?*'  # letters that a file's name cannot have on every system
_LONGEST = 200  # bytes of one name: file systems take 255
_LONGEST_PATH = 400  # letters of folders and name: some systems take 1,000 with all that is above
# Letters that count as printable and show nothing: fillers, joiners, choices of form, and the empty pattern of braille.
# Source: Unicode's Default_Ignorable_Code_Point, without what `str.isprintable` refuses already, and U+2800; from memory.
_HIDDEN = re.compile(
    "[\u034f\u115f\u1160\u17b4\u17b5\u180b-\u180f\u2800\u3164\ufe00-\ufe0f\uffa0\U000e0100-\U000e01ef]"
)
# Names of devices on Windows, whatever follows a point. Source: its documentation on naming files, from memory.
_DEVICES = re.compile(
    r"(con|prn|aux|nul|conin\$|conout\$|clock\$|(com|lpt)[0-9¹²³]) *(\..*)?", re.IGNORECASE
)


def refused_letter(name: str) -> str | None:
    """The first letter that no file's name should have; None if all are good.

    Line breaks, control characters and letters that turn the direction of text are refused, and letters that mean something else
    in a path on some system.
    """
    return next((each for each in name if each in _REFUSED or not each.isprintable()), None)


def unfit_path(path: str) -> str | None:
    """Why a path of folders and a name, as `songs/mine.ogg`, cannot lie in a folder on every system; None if it can.

    It must lead downwards only, and to a file that nobody overlooks: names that begin with a point are refused.
    """
    if not path.isprintable() or _HIDDEN.search(path):
        return "it has letters that nobody sees"
    if len(path) > _LONGEST_PATH:
        return "it is too long"
    if path.startswith("/"):
        return "it begins at the root of a disk"
    return next((why for part in path.split("/") if (why := _unfit_part(part)) is not None), None)


def _unfit_part(name: str) -> str | None:
    letter = refused_letter(name)
    faults = (
        (name == "..", "it leads out of its folder"),
        (not name or name.startswith("."), "a part of it is empty, or begins with a point"),
        (letter is not None, f"not every system takes the letter {letter}"),
        (name != name.strip() or name.endswith("."), "a part of it begins or ends with a space, or ends with a point"),
        (_DEVICES.fullmatch(name), "on Windows that is the name of a device"),
        (len(name.encode("utf-8", "surrogatepass")) > _LONGEST, "a part of it is too long"),
    )  # fmt: skip
    return next((why for wrong, why in faults if wrong), None)


def one_to_all(path: str) -> str:
    """A path as systems compare it that tell neither capitals nor how an accent is composed."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", path).casefold())


def clashing(paths: Iterable[str]) -> Iterator[str]:
    """Those of some paths that cannot lie in one folder with an earlier one: one name to some system, or a file below a file."""
    files: set[str] = set()
    folders: set[str] = set()
    for path in paths:
        own = one_to_all(path)
        above = {str(each) for each in PurePosixPath(own).parents} - {"."}
        if own in files | folders or above & files:
            yield path
        files.add(own)
        folders |= above


def fitting_name(name: str, taken: Iterable[str] = ()) -> str:
    """A name that every system takes, as near to a given one as can be, and unlike those that are taken."""
    letters = "".join(
        "-" if refused_letter(each) else each for each in _HIDDEN.sub("", name)
    ).strip(" .")
    stem, suffix = PurePosixPath(letters or "file").stem, PurePosixPath(letters).suffix[:20]
    stem = stem.encode("utf-8", "ignore")[:120].decode("utf-8", "ignore").strip(" .") or "file"
    if _DEVICES.fullmatch(stem):
        stem = f"file-{stem}"
    known = {one_to_all(each) for each in taken}
    names = (f"{stem}{number}{suffix}" for number in ("", *(f"-{k}" for k in range(2, 10_000))))
    return next(each for each in names if one_to_all(each) not in known)
