"""The vocabulary as a page lists it: what it is, and how it joins what stands before a place."""

from collections.abc import Mapping
from math import isfinite
from typing import Any

from sequencer.errors import InputError, Place
from sequencer.motion.patterns.parameters import Parameter
from sequencer.planning.next_patterns import NextPattern, next_patterns
from sequencer.staging.staged import Staged
from sequencer.units import counted


def pattern_list(show: Staged, given: Mapping[str, Any]) -> dict[str, Any]:
    """Every pattern as JSON values, what joins first.

    Parameters
    ----------
    show : Staged
    given : mapping
        `who`, names with commas between them, and `at`, a beat; all of the cast, and nowhere, if left out.

    Raises
    ------
    InputError
        If somebody is not in the cast, or the beat is none.
    """
    who = [name for name in str(given.get("who", "")).split(",") if name]
    try:
        at = float(given["at"]) if "at" in given else None
        found = next_patterns(show, who or show.show.names, at)
    except ValueError as error:
        raise InputError(
            "bad-request", Place("patterns"), str(error), "see docs/desk.md"
        ) from error
    return {"patterns": [_row(one) for one in found]}


def _row(one: NextPattern) -> dict[str, Any]:
    pattern = one.pattern
    return {
        "name": pattern.name,
        "family": pattern.family,
        "summary": pattern.summary,
        "difficulty": pattern.difficulty,
        "props": list(pattern.props),
        "suits": one.suits,
        "cycle": round(one.cycle, 6),
        "verdict": one.verdict,
        "shift": one.shift,
        "link_beats": one.link_beats if isfinite(one.link_beats) else None,
        "words": _words(one),
        "parameters": [_parameter(each) for each in pattern.parameters],
    }


def _words(one: NextPattern) -> str:
    """How it joins, as a dancer would say it."""
    if one.verdict is None:
        return "nothing stands before it"
    if one.verdict == "joins after a shift":
        return f"joins if it starts {counted(one.shift, 'beat')} into the pattern"
    if one.verdict == "needs a link":
        return f"needs a link of {counted(one.link_beats, 'beat')}"
    return one.verdict


def _parameter(each: Parameter) -> dict[str, Any]:
    return {
        "name": each.name, "kind": each.kind, "unit": each.unit, "default": each.default,
        "low": each.low, "high": each.high, "choices": list(each.choices), "help": each.help,
    }  # fmt: skip
