"""What the crew carries: towels, blankets and buckets, counted from their lists."""

import re
from collections.abc import Iterable, Mapping

_WORDS = {"towels": "towel", "blankets": "blanket", "buckets": "bucket"}
_LEADING = re.compile(r"^\s*(\d+)\s*[x×]?\s+")


def counted(equipment: Iterable[str]) -> Mapping[str, int]:
    """Number of towels, blankets and buckets in a list: `3 damp towels` counts three."""
    total = dict.fromkeys(_WORDS, 0)
    for item in equipment:
        match = _LEADING.match(item)
        number = int(match[1]) if match else 1
        for kind, word in _WORDS.items():
            if word in item.casefold():
                total[kind] += number
    return total
