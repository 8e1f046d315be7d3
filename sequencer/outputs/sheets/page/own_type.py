"""The user's type file, for letters that the sheets' type lacks.

Its OS/2 table, fsType, says whether it may be embedded: bit 1 forbids it, bit 8 forbids subsetting (which is
what is done here), bit 9 allows bitmaps only. Source: OpenType
specification, OS/2 table (from memory). Letters are set one by one: scripts whose letters join or
reorder (Arabic, Devanagari and their relatives) come out unjoined, and the sheets say so.
"""

import hashlib
import struct
import unicodedata
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from sequencer.errors import InputError, Place
from sequencer.given_files import given_bytes

_RESTRICTED, _WHOLE_ONLY, _BITMAPS_ONLY = 0x0002, 0x0100, 0x0200
_LARGEST = 60_000_000  # bytes of a type file; those of all Chinese letters have 20
_SHARED = 0x000C  # print and preview, or edit: if either is set, bit 1 does not forbid embedding
_JOINED = ("ARABIC", "SYRIAC", "MONGOLIAN", "DEVANAGARI", "BENGALI", "GURMUKHI", "GUJARATI", "ORIYA", "TAMIL",
           "TELUGU", "KANNADA", "MALAYALAM", "SINHALA", "MYANMAR", "KHMER", "TIBETAN", "NKO")  # fmt: skip


@dataclass(frozen=True)
class OwnType:
    """A TrueType file in memory."""

    path: str
    content: bytes
    rights: int  # fsType

    @property
    def forbidden(self) -> str:
        """Why it may not be embedded; empty if it may."""
        if self.rights & _RESTRICTED and not self.rights & _SHARED:
            return "its licence bits forbid embedding"
        if self.rights & _WHOLE_ONLY:
            return "its licence bits forbid subsetting"
        if self.rights & _BITMAPS_ONLY:
            return "its licence bits allow bitmaps only"
        return ""

    @cached_property
    def name(self) -> str:
        """Name under which reportlab knows it; registers it the first time."""
        from reportlab.pdfbase import pdfmetrics

        name = f"OwnType-{hashlib.sha256(self.content).hexdigest()[:12]}"
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(self._font(name))
        return name

    @cached_property
    def widths(self) -> dict[int, float]:
        """Width of each letter at size 1."""
        from reportlab.pdfbase import pdfmetrics

        found = pdfmetrics.getFont(self.name).face.charWidths
        return {code: width / 1000 for code, width in found.items()}

    def _font(self, name: str) -> Any:
        from io import BytesIO

        from reportlab.pdfbase.ttfonts import TTFError, TTFont

        try:
            return TTFont(name, BytesIO(self.content))
        except (TTFError, struct.error, KeyError, IndexError, ValueError) as error:
            raise _unusable(
                self.path, f"it is not a TrueType file with outlines ({error})"
            ) from error


def read_type(path: Path) -> OwnType:
    """A type file, checked to be usable.

    Raises
    ------
    InputError
        If it is missing or not a TrueType file with outlines.
    """
    try:
        content = given_bytes(path, _LARGEST)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "it cannot be read"
        raise _unusable(str(path), reason) from error
    if content[:4] not in {b"\x00\x01\x00\x00", b"true"}:
        raise _unusable(str(path), "it is not a TrueType file with outlines")
    try:
        user_type = OwnType(str(path), content, _rights(content))
    except (struct.error, ValueError) as error:
        raise _unusable(str(path), "its tables cannot be read") from error
    if not user_type.forbidden:
        user_type.widths  # noqa: B018 - reads the whole file, so that a fault is reported now and not on page nine
    return user_type


def joins(letters: str) -> bool:
    """Whether any of the letters belongs to a script that is written joined."""
    return any(unicodedata.name(letter, "").startswith(_JOINED) for letter in letters)


def _rights(content: bytes) -> int:
    (count,) = struct.unpack(">H", content[4:6])
    for k in range(count):
        tag, _, start, long = struct.unpack(">4sLLL", content[12 + 16 * k : 28 + 16 * k])
        if tag == b"OS/2" and long >= 10:
            return int(struct.unpack(">H", content[start + 8 : start + 10])[0])
    return 0  # no table means no restriction, as other software reads it


def _unusable(path: str, why: str) -> InputError:
    return InputError(
        "type-file-not-usable",
        Place(path),
        "this type file cannot be used",
        "use a TrueType file (.ttf) that has the letters of your names",
        why,
    )
