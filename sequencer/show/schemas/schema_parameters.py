"""Values of the built-in patterns in the schema for editors: what may stand under `with` beside each of them."""

from dataclasses import replace
from typing import Any

from sequencer.motion.patterns.library import patterns
from sequencer.motion.patterns.parameters import Parameter
from sequencer.show.file_records.field_kinds import number_schema
from sequencer.units import ANGLES, LENGTHS

_RECORDS = ("Step", "Entry", "HandPart")  # that have a pattern and its values
_EXAMPLES = {"length": 30.0, "angle": 45.0, "ratio": 1.0, "count": 4.0}  # cm, °, 1, 1
_WRITTEN = {"length": (100.0, " cm"), "angle": (1.0, "°")}  # how many of which unit
_NUMBER = r"[-+]?(\d+(\.\d*)?|\.\d+)([eE][-+]?\d+)?"
_RATIO = rf"^\s*{_NUMBER}(\s*/\s*{_NUMBER})?\s*$"


def with_parameters(schema: dict[str, Any]) -> None:
    """Let a schema of show files mark a misspelt or impossible value of a built-in pattern, in place.

    Own patterns may have any values: no pattern of a show can take the name of a built-in one.
    """
    alike: dict[tuple[Parameter, ...], list[str]] = {}
    for name, pattern in patterns().items():
        bare = tuple(replace(each, default=None) for each in pattern.parameters)
        alike.setdefault(bare, []).append(name)
    rules = [
        {
            "if": {"properties": {"pattern": {"enum": names}}, "required": ["pattern"]},
            "then": {"properties": {"with": _values(parameters)}},
        }
        for parameters, names in alike.items()
    ]
    schema["$defs"]["PatternValues"] = {"allOf": rules}
    for record in _RECORDS:
        schema["$defs"][record]["allOf"] = [{"$ref": "#/$defs/PatternValues"}]


def _values(parameters: tuple[Parameter, ...]) -> dict[str, Any]:
    """What may stand under `with`."""
    names = [each.name for each in parameters]
    told = f"this pattern has no such value; it has {', '.join(names)}"
    return {
        "properties": {each.name: _value(each) for each in parameters},
        "propertyNames": {"enum": names, "errorMessage": told},
    }


def _value(one: Parameter) -> dict[str, Any]:
    """What may be written for one value."""
    if one.kind == "choice":
        written = [each for each in one.choices if not isinstance(each, str)]
        choices = [*one.choices, *(f"{each:{sign}}" for each in written for sign in "-+")]
        told = f"{one.name} must be one of {one.range_words}"
        return {"enum": choices, "description": one.help, "errorMessage": told}
    words = f"{one.help}; {one.range_words}"
    units = {"length": LENGTHS, "angle": ANGLES}.get(one.kind)
    pattern = "" if units else _RATIO
    form = number_schema(words, _example(one), units=units, pattern=pattern).json_schema
    whole = {"multipleOf": 1} if one.kind == "count" else {}
    return {**(form or {}), **whole, "minimum": one.low, "maximum": one.high}


def _example(one: Parameter) -> str:
    """A usual value, with its unit; of the range the nearest."""
    times, unit = _WRITTEN.get(one.kind, (1.0, ""))
    value = min(max(_EXAMPLES[one.kind], times * one.low), times * one.high)
    return f"{value:g}{unit}"
