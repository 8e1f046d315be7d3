"""Fit text to terminal columns, in any script."""

import unicodedata


def columns(text: str) -> int:
    """Terminal columns of a text: wide letters take two, combining marks none."""
    return sum(
        0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1
        for c in text
    )


def fitted(text: str, room: int) -> str:
    """Text cut or padded to exactly `room` columns."""
    if columns(text) > room:
        while text and columns(text) > room - 1:
            text = text[:-1]
        text += "…"
    return text + " " * (room - columns(text))
