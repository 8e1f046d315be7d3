"""Inks, hatches and fonts that all plan pictures share: distinct in grey print and without colour."""

from functools import cache
from typing import Any

PLAN_INK = "#1b1b1b"
PLAN_SOFT = "#6b6b6b"
PLAN_FAINT = "#c9c9c9"
PLAN_PAPER = "#ffffff"
PLAN_FLOOR = "#f4f1ea"
PLAN_FLAME = "#e69f00"  # orange and blue of Okabe and Ito's palette for all kinds of colour vision
COOL = "#0072b2"
STOP = "#b2182b"


def shown(text: str) -> str:
    """Text with an empty box for each letter that the picture's font lacks, so that nothing vanishes unnoticed."""
    known = _letters()
    return "".join(c if ord(c) in known or c == "\n" else "□" for c in text)


@cache
def _letters() -> frozenset[int]:
    from matplotlib import font_manager
    from matplotlib.ft2font import FT2Font

    font: Any = FT2Font(font_manager.findfont("DejaVu Sans"))
    return frozenset(font.get_charmap())


def fitted_names(names: list[str]) -> dict[str, str]:
    """A short mark for each name: as many first letters as make them distinct, at most four."""
    out = {}
    for k, name in enumerate(names):
        for length in range(1, 5):
            mark = name[:length]
            if sum(other.startswith(mark) for other in names) == 1:
                break
        else:
            mark = str(k + 1)
        out[name] = shown(mark)
    return out
