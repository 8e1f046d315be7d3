"""What a file of sheets holds thousands of, written at once: the same bytes as reportlab's general way.

Source: reportlab's `PDFDictionary.format` and `PDFTextObject`, whose results these repeat; a test compares them.
"""

from dataclasses import dataclass
from typing import Any

from reportlab.lib.rl_accel import escapePDF, fp_str
from reportlab.pdfbase import pdfdoc
from reportlab.pdfbase.pdfmetrics import getFont


class StructElement(pdfdoc.PDFObject):  # type: ignore[misc]
    """One element of a document's structure: content number `index` of a page, in a role.

    `alternative` is what is read aloud in its place.
    """

    def __init__(self, role: str, parent: Any, page: Any, index: int, alternative: str) -> None:
        self._role, self._index, self._alternative = role, index, alternative
        self._parent, self._page = parent, page  # references

    def format(self, document: Any) -> bytes:
        """The element as it is written."""
        number = document.idToObjectNumberAndVersion
        said = b""
        if self._alternative:
            said = b"/Alt " + pdfdoc.PDFString(self._alternative).format(document) + b" "
        parent, page = number[self._parent.name], number[self._page.name]
        rest = (
            f"/K {self._index} /P {parent[0]} {parent[1]} R /Pg {page[0]} {page[1]} R "
            f"/S {self._role} /Type /StructElem\n>>"
        )
        return b"<<\n" + said + rest.encode("ascii")


@dataclass(slots=True)
class TextState:
    """The type that a canvas sets."""

    font: str
    size: float
    leading: float


def is_quick(font: str) -> bool:
    """Whether `text_code` sets a type: one that is embedded letter by letter, and not shaped."""
    known = getFont(font)
    return bool(known._dynamicFont and not known.shapable)  # noqa: SLF001 - reportlab has no public name


def text_code(document: Any, x: float, y: float, text: str, state: TextState) -> str:
    """Code that sets one line of text, in a type that `is_quick`."""
    font = getFont(state.font)
    parts: list[str] = []
    current = -1
    for subset, letters in font.splitString(text, document):
        if subset != current:
            name = font.getSubsetInternalName(subset, document)
            parts.append(f"{name} {fp_str(state.size)} Tf {fp_str(state.leading)} TL")
            current = subset
        parts.append(f"({escapePDF(letters)}) Tj")
    return f"BT 1 0 0 1 {fp_str(x, y)} Tm {' '.join(parts)} T* ET"
