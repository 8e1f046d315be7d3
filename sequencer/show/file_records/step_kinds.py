"""What a step can be, and which of its fields apply to which kind of it."""

from collections.abc import Mapping
from types import MappingProxyType

# Each kind with the fields that make it one, in the order in which a step is looked at.
STEP_KINDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "pattern": ("pattern",), "hands": ("left", "right"), "phrase": ("phrase",), "link": ("link",),
        "rest": ("rest",), "hold": ("hold",), "accent": ("accent",),
    }
)  # fmt: skip
# Pairs that exclude each other.
NEVER_TOGETHER = (
    ("beats", "cycles"), ("until", "beats"), ("until", "cycles"), ("until", "repeat"),
)  # fmt: skip
MAKING = frozenset(name for names in STEP_KINDS.values() for name in names)
_OF_A_PATTERN = frozenset({"parameters", "hands", "timing", "direction", "cycle", "shift"})
_OF_AN_ACCENT = frozenset({"accent", "who", "note"})
# Read, since files say it, but nothing comes of it: hands have parameters of their own, a link has no sides.
_IDLE = frozenset({("hands", "parameters"), ("link", "mirrored")})


def applies(field: str, kind: str) -> bool:
    """Whether a step of a kind may say a field.

    Parameters
    ----------
    field : str
        Name of a field of Step or Entry, which is not always its key in the file.
    kind : str
        Of STEP_KINDS.
    """
    if kind == "accent":
        return field in _OF_AN_ACCENT
    if field in MAKING:
        return field in STEP_KINDS[kind]
    if field in _OF_A_PATTERN:
        return kind in {"pattern", "hands"} or (field == "hands" and kind in {"rest", "hold"})
    return field != "cycles" or kind not in {"rest", "hold"}


def is_of_use(field: str, kind: str) -> bool:
    """Whether a field may be said, and something comes of it: parameters as in `applies`."""
    return applies(field, kind) and (kind, field) not in _IDLE
