"""Findings of both hands of a performer that say the same: told once."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from sequencer.findings import Figure, Finding
from sequencer.geometry.bodies import SIDES


def merged(findings: Iterable[Finding]) -> list[Finding]:
    """Findings that differ only by hand are given once.

    Parameters
    ----------
    findings : iterable of Finding
        Of each performer those of one hand, then those of the other.
    """
    kept: dict[tuple[object, ...], Finding] = {}
    for finding in findings:
        text = finding.message.replace(", left hand:", ", {} hand:")
        text = text.replace(", right hand:", ", {} hand:")
        key = (finding.code, finding.severity, finding.who, finding.end, text.split(":")[0])
        other = kept.get(key)
        if other is None or "both hands" in other.message:
            kept.setdefault(key, finding)
        elif other.message != finding.message:
            first = other if (other.start or 0.0) <= (finding.start or 0.0) else finding
            both = first.message.replace(", left hand:", ", both hands:")
            both = both.replace(", right hand:", ", both hands:")
            kept[key] = replace(
                first,
                message=both,
                figures=_worst((*other.figures, *finding.figures)),
                hands=SIDES,
            )
    return list(kept.values())


def _worst(figures: Sequence[Figure]) -> tuple[Figure, ...]:
    """Of each quantity the figure that breaks its limit most."""
    found: dict[str, Figure] = {}
    for each in figures:
        if each.quantity not in found or each.beyond > found[each.quantity].beyond:
            found[each.quantity] = each
    return tuple(found.values())
