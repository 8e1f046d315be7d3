"""Letters that steer a terminal or turn a line around: texts from elsewhere may not hold them, and none is ever printed."""

import re

# Control characters but tab and line ends, DEL, and those of Latin-1, by which some terminals are steered too.
# Source: ISO/IEC 6429, from memory.
_CONTROLS = "".join(map(chr, (*range(9), 11, 12, *range(14, 32), *range(0x7F, 0xA0))))
# Embeddings, overrides and isolates, and their ends. Source: Unicode's annex 9, explicit formatting characters, from memory.
_TURNERS = "".join(map(chr, (*range(0x202A, 0x202F), *range(0x2066, 0x206A))))
_STEERING = re.compile(rf"[{re.escape(_CONTROLS + _TURNERS)}]|\r(?!\n)")


def steering_fault(text: str) -> str | None:
    """Why nobody may write a text: what it must not contain; None if it is good.

    Parameters
    ----------
    text : str
        Tabs and line ends are good; a carriage return is not, since what follows it is printed over what stands there.
    """
    if text.isprintable():
        return None
    if any(letter in text for letter in _TURNERS):
        return "must not contain characters that reverse the direction of text"
    if any(letter in text for letter in f"\r{_CONTROLS}"):
        return "must not contain control characters"
    return None


def seen_text(text: str) -> str:
    r"""A text to be printed, in which letters that steer a terminal or turn a line around are written out, as `\u001b`.

    Parameters
    ----------
    text : str
        Tabs and line ends stay, a carriage return only before one. JSON stays JSON, and says the same.
    """
    return _STEERING.sub(lambda found: f"\\u{ord(found[0]):04x}", text)
