"""Shows made by a grammar, the published schema of the show file, as strategies of Hypothesis.

What is drawn has the shape that the schema allows, more or less: its names are those of a small cast, its numbers lie at
and beside the ends of what is allowed, and in one show of three one value is of another kind. So much of what is drawn gets
past the shape, and meets the checks behind it.
"""

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from tests.fuzz.changes import VALUES, places, value_at

SCHEMA = Path(__file__).parents[2] / "docs" / "show.schema.json"
WORDS = (
    "Wren", "Moss", "all", "front", "pair", "refrain", "two-beat-weave", "extension", "iso-bend-3", "rest", "13.1", "30.1", "1.1", "4",
    "2.1+1/2", "0:30", "5 s", "3 m", "50 cm", "45°", "kerosene", "poi", "staff", "spotter", "lit", "song.ogg", "2026-05-02",
)  # fmt: skip
MOST_ENTRIES = 3
_ODD = st.sampled_from(VALUES)


@cache
def schema() -> dict[str, Any]:
    """The schema of the show file."""
    return json.loads(SCHEMA.read_text(encoding="utf-8"))


@cache
def headings() -> dict[str, st.SearchStrategy[Any]]:
    """What each heading of a show file may hold."""
    return {name: _of(own) for name, own in schema()["properties"].items()}


@st.composite
def shows(draw: st.DrawFn, base: dict[str, Any], most: int = 3) -> dict[str, Any]:
    """A show with some of its headings, or single entries under them, drawn by the grammar.

    Parameters
    ----------
    base : mapping
        A show that is taken, as plain values.
    most : int
        Headings that are drawn anew.
    """
    values = json.loads(json.dumps(base))
    names = st.lists(st.sampled_from(sorted(headings())), min_size=1, max_size=most, unique=True)
    for name in draw(names):
        new = draw(headings()[name])
        own = values.get(name)
        if isinstance(own, list) and isinstance(new, list) and draw(st.booleans()):
            values[name] = own + new  # the timeline, say, with entries more
        elif isinstance(own, dict) and isinstance(new, dict) and draw(st.booleans()):
            values[name] = own | new
        else:
            values[name] = new
    if draw(st.integers(0, 2)) == 0:
        path = draw(st.sampled_from([each for each in places(values) if each]))
        value_at(values, path[:-1])[path[-1]] = draw(_ODD)
    return values


def _of(own: Any) -> st.SearchStrategy[Any]:
    """Values of a part of the schema."""
    return st.deferred(lambda: _values(json.dumps(own, sort_keys=True)))


@cache
def _values(written: str) -> st.SearchStrategy[Any]:
    own = json.loads(written)
    if "$ref" in own:
        return _of(schema()["$defs"][own["$ref"].rsplit("/", 1)[1]])
    if "const" in own:
        return st.just(own["const"])
    if "enum" in own:
        return st.sampled_from(own["enum"])
    for key in ("anyOf", "allOf", "oneOf"):
        if key in own:
            return st.one_of([_of(each) for each in own[key]])
    kind = own.get("type")
    makers = {
        "object": _object, "array": _array, "string": _string, "integer": _integer, "number": _number,
        "boolean": lambda _: st.booleans(), "null": lambda _: st.none(),
    }  # fmt: skip
    kinds = [kind] if isinstance(kind, str) else list(kind or ("string", "number"))
    return st.one_of([makers[each](own) for each in kinds])


def _object(own: dict[str, Any]) -> st.SearchStrategy[Any]:
    fields = {name: _of(each) for name, each in own.get("properties", {}).items()}
    needed = {name: fields.pop(name) for name in own.get("required", ()) if name in fields}
    more = own.get("additionalProperties")
    if not fields and not needed and isinstance(more, dict):
        names = _of(own["propertyNames"]) if "propertyNames" in own else st.sampled_from(WORDS)
        return st.dictionaries(names.filter(lambda name: isinstance(name, str)), _of(more), max_size=MOST_ENTRIES)  # fmt: skip

    @st.composite
    def drawn(draw: st.DrawFn) -> dict[str, Any]:
        out = {name: draw(each) for name, each in needed.items()}
        if fields:
            chosen = st.lists(st.sampled_from(sorted(fields)), max_size=MOST_ENTRIES, unique=True)
            out |= {name: draw(fields[name]) for name in draw(chosen)}
        return out

    return drawn()


def _array(own: dict[str, Any]) -> st.SearchStrategy[Any]:
    if "prefixItems" in own:
        return st.tuples(*map(_of, own["prefixItems"])).map(list)
    least = own.get("minItems", 0)
    most = min(own.get("maxItems", MOST_ENTRIES), max(least, MOST_ENTRIES))
    return st.lists(_of(own.get("items", {})), min_size=least, max_size=most)


def _string(own: dict[str, Any]) -> st.SearchStrategy[Any]:
    if "pattern" not in own:
        return st.one_of(*[st.sampled_from(WORDS)] * 8, st.text(max_size=12))
    # Of its words those that a show is written in first, then any.
    known = [word for word in WORDS if re.fullmatch(own["pattern"].strip("^$"), word)]
    plain = st.from_regex(own["pattern"], fullmatch=True, alphabet=st.characters(codec="ascii"))
    any_word = st.one_of(*[plain] * 4, st.from_regex(own["pattern"], fullmatch=True))
    return st.one_of(*[st.sampled_from(known)] * 6, any_word) if known else any_word


def _integer(own: dict[str, Any]) -> st.SearchStrategy[Any]:
    low, high = own.get("minimum", -3), own.get("maximum", 40)
    return st.one_of(*[st.integers(low, high)] * 6, st.sampled_from([low, low - 1, high, high + 1]))


def _number(own: dict[str, Any]) -> st.SearchStrategy[Any]:
    low = own.get("minimum", own.get("exclusiveMinimum", -20))
    high = own.get("maximum", own.get("exclusiveMaximum", 20))
    beside = [low, high, low - 1e-9, high + 1e-9, 0, -0.0, 1e-300, 1e300]
    return st.one_of(*[st.floats(low, high, allow_nan=False)] * 12, st.sampled_from(beside))
