"""How far somebody ended up from their place, in the words of the stage: "40 cm downstage, 10 cm stage left".

Stage frame [m]: X to the audience's right, which is stage left, as the performer faces the audience; Y upstage.
"""

import re

from sequencer.units import LENGTHS, length_words, quantity

_MOST = 20.0  # [m] more is no drift
_WAYS = {
    "upstage": (0.0, 1.0),
    "downstage": (0.0, -1.0),
    "stage left": (1.0, 0.0),
    "stage right": (-1.0, 0.0),
}
_WAY = r"(?:up|down)stage|stage[ -](?:left|right)"
ONE_WAY = rf"\d[\d.,]*\s*(?:cm|mm|m|ft|in)?\s*(?:{_WAY})"
_ONE = re.compile(
    rf"\s*(\d[\d.,]*\s*(?:cm|mm|m|ft|in)?)\s*({_WAY})\s*(?:,|and\b|\+)?", re.IGNORECASE
)
_NEAR = 0.5  # of the larger part: a smaller one is not told


def drift_of(text: str) -> tuple[float, float]:
    """A drift from its words.

    Parameters
    ----------
    text : str
        One or two lengths, each with its way: `40 cm downstage`, `0.3 m upstage, 10 cm stage left`; `0` for none.

    Returns
    -------
    drift : tuple of float
        X and Y [m, stage frame].

    Raises
    ------
    ValueError
        If it is none.
    """
    if re.fullmatch(r"0(?:\.0*)?\s*(?:cm|m)?", text.strip()):
        return 0.0, 0.0
    x = y = 0.0
    at = 0
    while at < len(text):
        match = _ONE.match(text, at)
        if match is None:
            raise ValueError(
                f"{text!r} does not say how far and which way: upstage, downstage, stage left or stage right"
            )
        size = quantity(match[1].strip(), LENGTHS, default="m")
        if size > _MOST:
            raise ValueError(f"{match[1].strip()} is farther than {_MOST:g} m")
        way = _WAYS[match[2].casefold().replace("-", " ")]
        x, y = x + size * way[0], y + size * way[1]
        at = match.end()
    return x, y


def drift_words(drift: tuple[float, float]) -> str:
    """A drift in words; a part less than half of the other is left out.

    Parameters
    ----------
    drift : tuple of float
        X and Y [m, stage frame].
    """
    x, y = drift
    parts = [
        (abs(y), "upstage" if y > 0 else "downstage"),
        (abs(x), "stage left" if x > 0 else "stage right"),
    ]
    parts.sort(key=lambda each: -each[0])
    most = parts[0][0]
    told = [f"{length_words(size)} {way}" for size, way in parts if size >= _NEAR * most > 0]
    return " and ".join(told) or "on the spot"
