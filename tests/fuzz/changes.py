"""Changes to a file as a slip, a merge or an attacker makes them: to its letters, its words, its tree or one value.

Every change is drawn by a seeded generator: a case is known by its seed and made again from it.
"""

import json
import re
from functools import lru_cache
from random import Random

LETTERS = [
    *"{}[]:,&*#?|-<>=!%@`'\"\\ \n\t0123456789.eE+-/~",
    "\x00", "\x01", "\x1b", "\x85", "\u2028", "\u202e", "\ufeff", "é", "½", "漢", "🔥", "\r", "\r\n", "\t\n", "---\n", "...\n",
]  # fmt: skip
WORDS = [
    "", "~", "null", "true", "no", "0", "-0", "-1", "1e999", "-1e-999", "nan", ".inf", "NaN m", "1 m", "-3 m", "0 m", "1e9 km",
    "12 parsecs", "½ m", "1,5 m", "1.5m", "5 ft 7 in", "1:02", "0:00", "-0:01", "99:99.99", "1.1", "0.0", "9999999.1", "1.99", "3.1+1/2",
    "3.1+1/0", "2..5", "all", "Ash", "nobody", "rest", "lit", "&a b", "*a", "!!int x", "!!python/object:os.system x", "<<", "{", "[", "[]", "{}",
    "[1, [2, [3]]]", "{a: {b: {c: d}}}", "x" * 3000, "9" * 400, "-" * 50, "\u202etxt", "'\\e[31m'", '"\\0"', "two-beat-weave", "iso-bend-3",
    "../x", "/dev/zero", "song.wav", "12 s", "3 min", "45°", "0.1 l", "-20 degC", "red", "1/3", "10%",
]  # fmt: skip
NUMBERS = ("9" * 400, "9" * 5000, "0" * 400 + "1", "1" + "0" * 30, "²", "٣", "1e400")
VALUES = [
    *WORDS,
    None,
    [],
    {},
    [None],
    {"": None},
    {"a": {"b": []}},
    ["1 m"] * 40,
    [[0, 0]] * 3,
    {"at": [0, 0]},
    {"from": "1.1"},
]


def changed_text(text: str, seed: int) -> str:
    """A text with one to four changes at one of the four levels."""
    draw = Random(seed)  # noqa: S311 (no secret: a case is made again from its seed)
    level = draw.choice((_letters, _words, _lines, _tree, _tree))
    for _ in range(draw.randint(1, 4)):
        text = level(text, draw)
    return _number(text, draw) if seed % 11 == 0 else text


def changed_bytes(content: bytes, seed: int) -> bytes:
    """Bytes of a file with one to four changes: flipped, lost, repeated, or a number of its head replaced."""
    draw = Random(seed)  # noqa: S311 (no secret: a case is made again from its seed)
    out = bytearray(content)
    head = min(len(out), 64)
    for _ in range(draw.choice((1, 1, 2, 4))):
        at = draw.randrange(min(head, len(out)) if draw.random() < 0.6 else len(out)) if out else 0
        kind = draw.randrange(5)
        if kind == 0 and out:
            out[at] = draw.choice((0, 1, 0x7F, 0x80, 0xFF, draw.randrange(256)))
        elif kind == 1:
            del out[at : at + draw.choice((1, 2, 4, 100, len(out)))]
        elif kind == 2:
            out[at:at] = draw.randbytes(draw.choice((1, 2, 4, 60)))
        elif kind == 3:
            width = draw.choice((2, 4))
            number = draw.choice((0, 1, 2**31 - 1, 2**32 - 1, draw.randrange(2**32))) % 2 ** (
                8 * width
            )
            out[at : at + width] = number.to_bytes(width, draw.choice(("little", "big")))
        else:
            out[at:at] = out[at : at + draw.choice((8, 200))] * draw.choice((1, 3))
    return bytes(out)


def _letters(text: str, draw: Random) -> str:
    at = draw.randrange(len(text) + 1)
    kind = draw.randrange(3)
    if kind == 0:
        return text[:at] + draw.choice(LETTERS) + text[at:]
    end = at + draw.choice((1, 2, 10, 200))
    return text[:at] + (draw.choice(LETTERS) if kind == 1 else "") + text[end:]


def _words(text: str, draw: Random) -> str:
    found = list(re.finditer(r"[^\s,:{}\[\]]+", text))
    if not found:
        return text
    one = draw.choice(found)
    put = draw.choice(WORDS) if draw.random() < 0.7 else draw.choice(found)[0]
    return text[: one.start()] + put + text[one.end() :]


def _number(text: str, draw: Random) -> str:
    """A number, wherever it stands in a word, becomes one that is larger than any, or of other digits."""
    found = list(re.finditer(r"\d+", text))
    if not found:
        return text
    one = draw.choice(found)
    return text[: one.start()] + draw.choice(NUMBERS) + text[one.end() :]


def _lines(text: str, draw: Random) -> str:
    lines = text.split("\n")
    k = draw.randrange(len(lines))
    kind = draw.randrange(4)
    if kind == 0:
        lines[k:k] = [lines[draw.randrange(len(lines))]]
    elif kind == 1:
        del lines[k]
    elif kind == 2:
        lines[k] = " " * draw.randrange(1, 5) + lines[k]
    else:
        lines[k] = lines[k][draw.randrange(1, 5) :]
    return "\n".join(lines)


def _tree(text: str, draw: Random) -> str:
    """Written anew as JSON, which is YAML, with one value taken out, moved, repeated or replaced."""
    values = _values(text)
    if values is None:
        return _letters(text, draw)
    found = [place for place in places(values) if place]
    if not found:
        return _letters(text, draw)
    path = draw.choice(found)
    holder = value_at(values, path[:-1])
    kind = draw.randrange(5)
    if kind == 0:
        del holder[path[-1]]
    elif kind == 1:
        holder[path[-1]] = draw.choice(VALUES)
    elif kind == 2:
        holder[path[-1]] = json.loads(json.dumps(value_at(values, draw.choice(found))))
    elif kind == 3 and isinstance(holder, list):
        holder.append(json.loads(json.dumps(holder[path[-1]])))
    elif isinstance(holder, dict):
        holder[draw.choice(("", "form", "file", "who", "beats", "name", "with"))] = draw.choice(
            VALUES
        )
    return json.dumps(values, ensure_ascii=False, indent=1)


def _values(text: str):
    """What a file says, as plain values; None if it is no YAML."""
    try:  # what was written anew before: nothing in it is a number
        return json.loads(text, parse_int=str, parse_float=str)
    except (ValueError, RecursionError):
        said = _said(text)
        return None if said is None else json.loads(said)


@lru_cache(maxsize=16)  # most cases start from the same few files
def _said(text: str) -> str | None:
    from sequencer.errors import InputError
    from sequencer.show.text.document import parse_document

    try:
        return json.dumps(parse_document(text, "x.yaml").values)
    except (InputError, ValueError, RecursionError):
        return None


def places(value, path=()):
    """Paths to all parts of plain values, the whole first."""
    yield path
    if isinstance(value, dict):
        for key, each in value.items():
            yield from places(each, (*path, key))
    elif isinstance(value, list):
        for k, each in enumerate(value):
            yield from places(each, (*path, k))


def value_at(value, path):
    """The part at a path."""
    for key in path:
        value = value[key]
    return value
