"""What a pattern of one's own can say, for forms: the keys of each way to write one, and the values of each law."""

from collections.abc import Iterable
from typing import Any

from sequencer.motion.patterns.law_kinds import law_kinds
from sequencer.motion.patterns.parameters import Parameter
from sequencer.motion.patterns.station_kind import STATION_PARAMETERS
from sequencer.motion.props.prop import PROP_KINDS

_FIXED = "values that are fixed for good"
_OPEN = "values that stay open, with what they are if nothing else is said"
_SPAN = {"type": "array", "prefixItems": [{}, {}]}
_ANGLE = {"type": "string"}

# Of every pattern; what else it says depends on how it is written.
_COMMON: dict[str, Any] = {
    "summary": {"type": "string", "description": "what it is, in a line"},
    "difficulty": {"enum": [1, 2, 3, 4, 5], "default": 3, "description": "1 (first moves) to 5"},
    "why": {"type": "string", "description": "what is hard about it"},
    "cycle": {"type": "string", "description": "beats of one hand cycle"},
    "needs": {
        "anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}],
        "description": "patterns to learn first",
    },
    "props": {
        "type": "array", "items": {"enum": [*PROP_KINDS]},
        "description": "what it is for; every kind of prop if none is chosen",
    },
    "notes": {"type": "string", "description": "stance, arms, what to watch"},
    "room": {
        "properties": {
            "across": {**_SPAN, "description": "away from the middle of the body"},
            "ahead": {**_SPAN, "description": "forward"},
            "up": {**_SPAN, "description": "up"},
        },
        "description": "how far its centre may be moved and it still be the same move: lengths around 0, such as -5 cm and 30 cm",
    },
    "family": {"type": "string", "description": "under which word it is listed and wished for"},
    "source": {"type": "string", "description": "where it is from", "default": "common practice"},
}  # fmt: skip


def pattern_form() -> dict[str, Any]:
    """Schemas for a form about a pattern of one's own.

    Returns
    -------
    form : dict
        `ways`: of each way to write one (a law for both hands, a law for each, station by station) the record's
        schema and the keys that make it one; `laws`: the schema of each law's values, by its name; `stations`:
        that of the values of stations.
    """
    laws = law_kinds()
    law = {"enum": [*laws], "label": "motion", "description": "how hand and prop move"}
    fixed, left_open = {"description": _FIXED, "law": True}, {"description": _OPEN, "law": True}
    hand = {"properties": {"law": law, "set": fixed}, "required": ["law"]}
    stations = {
        "type": "array",
        "items": {"properties": {"hand": _ANGLE, "bend": _ANGLE, "phase": _ANGLE}},
        "description": "hand: its angle round the circle; bend: of the plane of the prop; phase: of the prop, 180 in and 0 out; "
        "all in degrees, at least three stations, the last as the first",
    }  # fmt: skip
    return {
        "ways": {
            "law": _way(["law"], {"law": law, "set": fixed, "defaults": left_open}),
            "hands": _way(["left", "right"], {
                "left": {**hand, "description": "what the left hand does"},
                "right": {**hand, "description": "what the right hand does"},
                "defaults": left_open,
            }),
            "stations": _way(["stations"], {"stations": stations, "set": fixed, "defaults": left_open}),
        },
        "laws": {name: _values(kind.parameters) for name, kind in laws.items()},
        "stations": _values(STATION_PARAMETERS),
    }  # fmt: skip


def _way(required: list[str], own: dict[str, Any]) -> dict[str, Any]:
    return {"properties": {**own, **_COMMON}, "required": required}


def _values(parameters: Iterable[Parameter]) -> dict[str, Any]:
    return {"properties": {each.name: _value(each) for each in parameters}}


def _value(each: Parameter) -> dict[str, Any]:
    if each.kind == "choice":
        return {"enum": [*each.choices], "default": each.default, "description": each.help}
    words = f"{each.help}; {each.range_words}" if each.help else each.range_words
    as_usual = "as the prop" if each.default is None else f"{each.default:g}"
    return {"type": "string", "description": words, "examples": [as_usual]}
