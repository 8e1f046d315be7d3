"""The look that all sheets share: paper, margins, type scale and colours. Lengths in points.

The colours are distinct in grey as well (relative luminance from 0.01 to 0.87), and nothing is conveyed by
colour alone. Accents: vermilion and blue of the palette of Okabe and Ito, Color Universal Design, 2008,
darkened so that white print is legible on them (from memory).
"""

from dataclasses import dataclass
from typing import Final, Literal

from reportlab.lib.colors import Color, HexColor, white
from reportlab.lib.pagesizes import A4, LETTER, landscape
from reportlab.lib.units import mm

PaperName = Literal["a4", "letter"]
PAPER_SIZES: Final = {"a4": A4, "letter": LETTER}

INK: Final[Color] = HexColor("#15171C")
SOFT: Final[Color] = HexColor("#565B66")  # secondary words; contrast on white 6.9 : 1
RULE: Final[Color] = HexColor("#B9BDC6")
MIST: Final[Color] = HexColor("#ECEEF2")  # fields behind words
FLAME: Final[Color] = HexColor("#C2410C")  # lit
WATCH: Final[Color] = HexColor("#0A5C99")  # safety crew
PAPER: Final[Color] = white

# type scale [pt]; nothing below TINY is ever printed
TINY, SMALL, TEXT, CUE, LEAD_SIZE, HEAD, TITLE, GIANT = 8.0, 9.0, 10.5, 12.5, 15.0, 20.0, 30.0, 44.0
# Least type on a page that is read at arm's length in the dark; a design choice.
DARK_SIZE: Final = 14.0

PAGE_MARGIN: Final = 14 * mm
# Of a page in large type; printers leave up to 6 mm blank (common practice).
NARROW_MARGIN: Final = 8 * mm
GAP: Final = 4 * mm  # between blocks
HEADER: Final = 13 * mm
FOOTER: Final = 11 * mm
LARGE_FOOT: Final = 25.0
HAIR: Final = 0.5
STROKE: Final = 1.0


@dataclass(frozen=True, slots=True)
class Page:
    """One page's size and the frame that sheets may fill [pt]."""

    width: float
    height: float
    banner: float = (
        0.0  # height of the warning bar: below the header, or above the foot in large type
    )
    large: bool = False  # no header, and a foot in large type
    narrow: bool = False  # narrow margins left and right; with large type, all round

    @classmethod
    def of(
        cls,
        paper: PaperName,
        *,
        wide: bool = False,
        banner: float = 0.0,
        large: bool = False,
        narrow: bool = False,
    ) -> "Page":
        """A page of the given paper, portrait or landscape.

        Raises
        ------
        ValueError
            If the paper is not known.
        """
        if paper not in PAPER_SIZES:
            raise ValueError(f"paper must be one of {', '.join(PAPER_SIZES)}, got {paper!r}")
        width, height = landscape(PAPER_SIZES[paper]) if wide else PAPER_SIZES[paper]
        return cls(width, height, banner, large, narrow or large)

    @property
    def left(self) -> float:
        """Left edge of the frame."""
        return NARROW_MARGIN if self.narrow else PAGE_MARGIN

    @property
    def inner(self) -> float:
        """Width of the frame."""
        return self.width - 2 * self.left

    @property
    def bottom(self) -> float:
        """Lower edge of the frame."""
        if self.large:
            return NARROW_MARGIN + LARGE_FOOT + self.banner
        return PAGE_MARGIN * 0.6 + FOOTER

    @property
    def top(self) -> float:
        """Upper edge of the frame."""
        if self.large:
            return self.height - NARROW_MARGIN
        return self.height - PAGE_MARGIN * 0.6 - HEADER - self.banner

    @property
    def tall(self) -> float:
        """Height of the frame."""
        return self.top - self.bottom
