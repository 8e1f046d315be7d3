"""A type file of the user's own, for letters that the sheets' type lacks.

Whether it may be embedded stands in its OS/2 table, fsType: bit 1 forbids it, bit 8 forbids taking only the
letters that are used (which is what is done here), bit 9 allows bitmaps alone. Source: OpenType
specification, OS/2 table (from memory). Letters are set one by one: scripts whose letters join or change
place (Arabic, Devanagari and their kin) come out unjoined, and the sheets say so.
"""

import hashlib
import struct
import unicodedata
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from sequencer.errors import InputError, Place

_RESTRICTED, _WHOLE_ONLY, _BITMAPS_ONLY = 0x0002, 0x0100, 0x0200
_SHARED = 0x000C  # print and preview, or edit: with either set, bit 1 does not forbid
_JOINED = ("ARABIC", "SYRIAC", "MONGOLIAN", "DEVANAGARI", "BENGALI", "GURMUKHI", "GUJARATI", "ORIYA", "TAMIL",
           "TELUGU", "KANNADA", "MALAYALAM", "SINHALA", "MYANMAR", "KHMER", "TIBETAN", "NKO")  # fmt: skip


@dataclass(frozen=True)
class OwnType:
    """A TrueType file that was read."""

    path: str
    content: bytes
    rights: int  # fsType

    @property
    def forbidden(self) -> str:
        """Why it may not be embedded; empty if it may."""
        if self.rights & _RESTRICTED and not self.rights & _SHARED:
            return "its licence bits forbid embedding"
        if self.rights & _WHOLE_ONLY:
            return "its licence bits forbid taking only the letters used"
        if self.rights & _BITMAPS_ONLY:
            return "its licence bits allow bitmaps alone"
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
            raise _unusable(self.path, f"it is no TrueType file with outlines ({error})") from error


def read_type(path: Path) -> OwnType:
    """A type file, checked so far that it can be set.

    Raises
    ------
    InputError
        If it is missing or no TrueType file with outlines.
    """
    try:
        content = path.read_bytes()
    except OSError as error:
        raise _unusable(str(path), error.strerror or "it cannot be read") from error
    if content[:4] not in {b"\x00\x01\x00\x00", b"true"}:
        raise _unusable(str(path), "it is no TrueType file with outlines")
    try:
        own = OwnType(str(path), content, _rights(content))
    except (struct.error, ValueError) as error:
        raise _unusable(str(path), "its tables cannot be read") from error
    if not own.forbidden:
        own.widths  # noqa: B018 - reads the file whole, so that a fault is told now and not on page nine
    return own


def joins(letters: str) -> bool:
    """Whether any of the letters belongs to a script that is written joined."""
    return any(unicodedata.name(letter, "").startswith(_JOINED) for letter in letters)


def _rights(content: bytes) -> int:
    (count,) = struct.unpack(">H", content[4:6])
    for k in range(count):
        tag, _, start, long = struct.unpack(">4sLLL", content[12 + 16 * k : 28 + 16 * k])
        if tag == b"OS/2" and long >= 10:
            return int(struct.unpack(">H", content[start + 8 : start + 10])[0])
    return 0  # no table, no restriction: as readers of type take it


def _unusable(path: str, why: str) -> InputError:
    return InputError(
        "type-file-not-usable",
        Place(path),
        "this type file cannot be used",
        "name a TrueType file (.ttf) with the letters of your names",
        why,
    )
