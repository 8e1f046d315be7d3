"""Places, facings, times and counts in stage language.

Stage left and right are the performer's when facing the audience: stage left is +X, upstage is +Y.
A facing of 0 faces the audience and grows anticlockwise from above, towards stage left. Common practice.
"""

import re
import unicodedata
from collections.abc import Iterable

from sequencer.outputs.sheets.page.bidi import apart
from sequencer.timing.position import clock_text
from sequencer.units import rounded_down, rounded_up

NB = "\u00a0"  # keeps a number and its unit on one line
_UNIT = re.compile(r"(?<=\d) (?=(?:kW/m²|m/s|min|m²|m|cm|s|g|L|%|years)\b|%|m²)")
_FACINGS = (
    "the audience",
    "front, half to stage left",
    "stage left",
    "back, half to stage left",
    "upstage, back to the audience",
    "back, half to stage right",
    "stage right",
    "front, half to stage right",
)


def metres(value: float, *, decimals: int = 1) -> str:
    """A length, such as 2.5 m; never -0.0."""
    shown = f"{abs(value) if round(value, decimals) == 0 else value:.{decimals}f}"
    return f"{shown.replace('-', '−')}{NB}m"


def at_most(value: float, *, decimals: int = 1) -> str:
    """A length that must not be understated, such as a walk, a reach or a flame: rounded up."""
    return metres(rounded_up(value, decimals), decimals=decimals)


def at_least(value: float, *, decimals: int = 1) -> str:
    """A length that must not be overstated, such as what is kept clear of people: rounded down, never below 0."""
    return metres(rounded_down(max(value, 0.0), decimals), decimals=decimals)


def closed_up(words: str) -> str:
    """Words in which each number stays on one line with its unit."""
    return _UNIT.sub(NB, words)


def place_words(x: float, y: float) -> str:
    """Where a spot is, from the centre line and the downstage edge."""
    if abs(x) < 0.05:
        across = "on the centre line"
    else:
        across = f"{metres(abs(x))} to stage{NB}{'left' if x > 0 else 'right'}"
    if abs(y) < 0.05:
        return f"{across}, at the front edge"
    return (
        f"{across}, {metres(abs(y))}{NB}upstage"
        if y > 0
        else f"{across}, {metres(abs(y))} in front of the edge"
    )


def facing_words(degrees: float) -> str:
    """Which way a facing looks."""
    turned = degrees % 360.0
    eighth = round(turned / 45.0)
    off = turned - 45.0 * eighth
    words = _FACINGS[eighth % 8]
    if abs(off) < 7.5:
        return words
    signed = (turned + 180.0) % 360.0 - 180.0
    towards = "left" if signed > 0 else "right"
    return f"{abs(signed):.0f}° to stage{NB}{towards} of the audience"


def wind_words(degrees: float) -> str:
    """Where a wind comes from, by the sides of the stage; `degrees` as for a facing."""
    words = facing_words(degrees).removesuffix(", back to the audience")
    return words.replace("front, half to", "the audience and").replace(
        "back, half to", "upstage and"
    )


def clock(seconds: float) -> str:
    """m:ss, rounded down so that a cue is never read too late; the second is the one in progress."""
    return clock_text(max(0.0, float(int(seconds + 1e-6))), decimals=0)


def clock_fine(seconds: float) -> str:
    """m:ss.s, for people who watch a display."""
    return clock_text(seconds)


def span_seconds(seconds: float) -> str:
    """A length of time, such as 98 s or 2 min 05 s."""
    whole = round(seconds)
    if whole < 120:
        return f"{whole}{NB}s"
    return f"{whole // 60}{NB}min {whole % 60:02d}{NB}s"


def number(value: float) -> str:
    """A count without needless decimals; common fractions as fractions."""
    whole, rest = divmod(round(value * 960), 960)
    if rest == 0:
        return str(whole)
    parts = {480: "½", 240: "¼", 720: "¾", 320: "⅓", 640: "⅔", 120: "⅛"}
    if rest in parts:
        return f"{whole or ''}{parts[rest]}"
    return f"{value:.2f}".rstrip("0").rstrip(".")


def plural(count: float, one: str, many: str | None = None) -> str:
    """A count and its noun."""
    word = one if 0 < count <= 1 + 1e-9 else (many or one + "s")
    return f"{number(count)}{NB}{word}"


def listed(names: Iterable[str], *, most: int | None = None) -> str:
    """Names as in a sentence: A, B and C; beyond `most` the rest is counted."""
    names = [brief(name) for name in names]
    if most is not None and len(names) > most:
        return f"{', '.join(names[:most])} and {len(names) - most} more"
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"


def number_spans(numbers: Iterable[int]) -> str:
    """Numbers in ascending order, three or more in a row by the first and the last: 1, 2, 4–7."""
    spans: list[list[int]] = []
    for number in numbers:
        if spans and number == spans[-1][-1] + 1:
            spans[-1].append(number)
        else:
            spans.append([number])
    return ", ".join(
        f"{span[0]}–{span[-1]}" if len(span) > 2 else ", ".join(map(str, span)) for span in spans
    )


def brief(name: str, *, most: int = 44) -> str:
    """A name for a table, cut if it is very long; the number beside it identifies it, and the title has it in full."""
    return apart(name if len(name) <= most else name[: most - 1].rstrip() + "…")


def slug(text: str, *, longest: int = 48) -> str:
    """Part of a file name that is valid on every system: ASCII if a letter has a base letter, else its code number."""
    plain = []
    for letter in unicodedata.normalize("NFKD", text.casefold()):
        if unicodedata.combining(letter):
            continue
        if letter.isascii():
            plain.append(letter if letter.isalnum() else "-")
        else:
            plain.append(_LATIN.get(letter) or (f"u{ord(letter):x}" if letter.isalnum() else "-"))
    cut = re.sub(r"-+", "-", "".join(plain)).strip("-")[:longest].strip("-")
    reserved = re.fullmatch(r"con|prn|aux|nul|com\d|lpt\d", cut)
    return f"{cut}-" if reserved else cut or "unnamed"


_LATIN = {
    "ł": "l",
    "ø": "o",
    "đ": "d",
    "ð": "d",
    "þ": "th",
    "æ": "ae",
    "œ": "oe",
    "ı": "i",
    "ħ": "h",
}
