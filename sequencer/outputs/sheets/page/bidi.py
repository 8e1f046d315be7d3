"""The order of letters on the page when right-to-left and left-to-right scripts meet.

Source: Unicode Standard Annex 9, Unicode Bidirectional Algorithm, rules P2–P3, W1–W7, N0–N2, I1–I2,
L1–L4. Explicit embedding, override and isolate characters are dropped before the rules apply, so the X
rules never apply; a name or a note on a sheet does not need them.
"""

import unicodedata

_CONTROLS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u061c")
_PAIRS = dict(zip("([{⁅⁽₍⌈⌊〈", ")]}⁆⁾₎⌉⌋〉", strict=True))
_CLOSERS = {close: opener for opener, close in _PAIRS.items()}
_MIRRORED = _PAIRS | _CLOSERS
for _one, _other in ("<>", "«»", "‹›", "≤≥", "⟨⟩"):
    _MIRRORED |= {_one: _other, _other: _one}


DIRECTION_MARKS = (
    "\u200e\u200f"  # left-to-right and right-to-left mark: they have a direction but no shape
)


def without_controls(text: str) -> str:
    """The text without embeddings, overrides and isolates."""
    return "".join(letter for letter in text if letter not in _CONTROLS)


def is_mixed(text: str) -> bool:
    """True where the order on the page differs from the order in memory."""
    return not text.isascii() and any(
        unicodedata.bidirectional(c) in {"R", "AL", "AN"} for c in text
    )


def base_level(text: str) -> int:
    """Level of a paragraph: 1 where its first letter with a direction runs right to left (P2, P3)."""
    for letter in text:
        kind = unicodedata.bidirectional(letter)
        if kind == "L":
            return 0
        if kind in {"R", "AL"}:
            return 1
    return 0


def levels(text: str, base: int) -> list[int]:
    """Embedding level of every letter of a paragraph; even runs left to right, odd right to left."""
    kinds = [unicodedata.bidirectional(letter) or "L" for letter in text]
    original = list(kinds)
    start = "R" if base else "L"
    _weak(kinds, start)
    _brackets(text, kinds, original, start)
    _neutral(kinds, start)
    found = []
    for kind in kinds:
        if base % 2 == 0:
            found.append(base + {"R": 1, "AN": 2, "EN": 2}.get(kind, 0))
        else:
            found.append(base + (1 if kind in {"L", "AN", "EN"} else 0))
    _trailing(original, found, base)
    return found


def visual_order(line_levels: list[int]) -> list[int]:
    """Indices of a line's letters from left to right (L2)."""
    order = list(range(len(line_levels)))
    odd = [level for level in line_levels if level % 2]
    if not odd:
        return order
    for level in range(max(line_levels), min(odd) - 1, -1):
        index = 0
        while index < len(order):
            if line_levels[order[index]] < level:
                index += 1
                continue
            stop = index
            while stop < len(order) and line_levels[order[stop]] >= level:
                stop += 1
            order[index:stop] = order[index:stop][::-1]
            index = stop
    return order


def apart(name: str) -> str:
    """A name isolated from its surroundings, so that its direction does not affect what follows."""
    return f"\u200e{name}\u200e" if is_mixed(name) else name


def mirrored(letter: str) -> str:
    """The letter as it looks in a right-to-left run (L4)."""
    return _MIRRORED.get(letter, letter)


def line_levels(text: str, paragraph: list[int], base: int) -> list[int]:
    """Levels of one line of a paragraph, its trailing white space set back to the base (L1)."""
    found = list(paragraph)
    _trailing([unicodedata.bidirectional(letter) or "L" for letter in text], found, base)
    return found


def _trailing(original: list[str], found: list[int], base: int) -> None:
    """Separators, and white space before them and at the end, take the base level (L1)."""
    run = True
    for index in range(len(found) - 1, -1, -1):
        if original[index] in {"B", "S"}:
            found[index], run = base, True
        elif original[index] in {"WS", "BN"} and run:
            found[index] = base
        else:
            run = False


def _weak(kinds: list[str], start: str) -> None:
    """Rules W1 to W7, in place."""
    _marks_and_numbers(kinds, start)
    for i in range(1, len(kinds) - 1):  # W4
        before, after = kinds[i - 1], kinds[i + 1]
        if kinds[i] == "ES" and before == after == "EN":
            kinds[i] = "EN"
        elif kinds[i] == "CS" and before == after and before in {"EN", "AN"}:
            kinds[i] = before
    _terminators(kinds)
    strong = start
    for i, kind in enumerate(kinds):  # W7
        if kind == "EN" and strong == "L":
            kinds[i] = "L"
        if kinds[i] in {"L", "R"}:
            strong = kinds[i]


def _marks_and_numbers(kinds: list[str], start: str) -> None:
    """Rules W1 to W3, in place."""
    previous = strong = start
    for i, kind in enumerate(kinds):
        if kind == "NSM":
            kinds[i] = previous
        elif kind == "EN" and strong == "AL":
            kinds[i] = "AN"
        if kind in {"L", "R", "AL"}:
            strong = kind
        previous = kinds[i]
    kinds[:] = ["R" if kind == "AL" else kind for kind in kinds]


def _terminators(kinds: list[str]) -> None:
    """Rules W5 and W6, in place."""
    i = 0
    while i < len(kinds):
        stop = i
        while stop < len(kinds) and kinds[stop] == "ET":
            stop += 1
        if stop > i:
            number = (i > 0 and kinds[i - 1] == "EN") or (stop < len(kinds) and kinds[stop] == "EN")
            kinds[i:stop] = ["EN" if number else "ON"] * (stop - i)
        i = max(stop, i + 1)
    kinds[:] = ["ON" if kind in {"ES", "CS"} else kind for kind in kinds]


def _direction(kind: str) -> str | None:
    return {"L": "L", "R": "R", "EN": "R", "AN": "R"}.get(kind)


def _pairs(text: str, kinds: list[str]) -> list[tuple[int, int]]:
    """Brackets that belong together (BD16)."""
    stack: list[tuple[str, int]] = []
    pairs = []
    for i, letter in enumerate(text):
        if kinds[i] != "ON":
            continue
        if letter in _PAIRS:
            if len(stack) == 63:
                break
            stack.append((_PAIRS[letter], i))
        elif letter in _CLOSERS:
            depth = next((d for d in range(len(stack) - 1, -1, -1) if stack[d][0] == letter), None)
            if depth is not None:
                pairs.append((stack[depth][1], i))
                del stack[depth:]
    return sorted(pairs)


def _brackets(text: str, kinds: list[str], original: list[str], embedding: str) -> None:
    """Rule N0, in place."""
    for opener, close in _pairs(text, kinds):
        inside = {_direction(kind) for kind in kinds[opener + 1 : close]} - {None}
        if not inside:
            continue
        chosen = embedding
        if embedding not in inside:
            before = (_direction(kind) for kind in reversed(kinds[:opener]))
            outside = next((direction for direction in before if direction), embedding)
            chosen = outside if outside in inside else embedding
        for i in (opener, close):
            kinds[i] = chosen
            following = i + 1
            while following < len(text) and original[following] == "NSM":
                kinds[following] = chosen
                following += 1


def _neutral(kinds: list[str], embedding: str) -> None:
    """Rules N1 and N2, in place."""
    i = 0
    while i < len(kinds):
        if _direction(kinds[i]):
            i += 1
            continue
        stop = i
        while stop < len(kinds) and not _direction(kinds[stop]):
            stop += 1
        before = _direction(kinds[i - 1]) if i else embedding
        after = _direction(kinds[stop]) if stop < len(kinds) else embedding
        kinds[i:stop] = [(before if before == after else embedding) or embedding] * (stop - i)
        i = stop
