"""Mends of a join that fails, each verified by computing the join again, ranked by beats lost.

For a join that is the wrong way round: a second cycle of the block before, a start at an out, the
neighbouring even lobe number, a stall to reverse (a short link), the next block spun the other way.
Otherwise: a shift of the next block, or a link.
Source: docs/motion.md, section 5.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite
from typing import Any

import numpy as np

from sequencer.motion.patterns.law_kinds import reversed_way
from sequencer.motion.trajectories.boundary import Boundary
from sequencer.motion.trajectories.joining import Verdict, gap_between, shifts_of, shortest_link


@dataclass(frozen=True, slots=True, kw_only=True)
class Remedy:
    """A verified mend of a join."""

    words: str
    beats_lost: float
    change: str  # "extend", "before", "after", "both", "shift" or "link": what to edit
    values: Mapping[str, Any]  # parameters to set, or beats


def remedies_for(boundary: Boundary, verdict: Verdict | None = None) -> list[Remedy]:
    """Verified mends of a boundary that does not join, fewest beats lost first.

    Parameters
    ----------
    boundary : Boundary
    verdict : Verdict, optional
        Verdict on the boundary, if already known.

    Returns
    -------
    remedies : list of Remedy
        Empty if it joins, or if none was found.
    """
    known = verdict or boundary.verdict()
    if known.kind == "joins":
        return []
    found: list[Remedy | None] = []
    if known.kind == "wrong way round":
        found += [
            _second_cycle(boundary),
            _start_at_out(boundary),
            *_even_neighbours(boundary),
            _other_way(boundary),
            _shift(boundary),
        ]
    else:
        found += [_shift(boundary), _second_cycle(boundary), _other_way(boundary)]
    found.append(_link(boundary, stall=known.kind == "wrong way round"))
    return sorted((r for r in found if r is not None), key=lambda remedy: remedy.beats_lost)


def _second_cycle(boundary: Boundary) -> Remedy | None:
    before = boundary.before
    if not boundary.joins(before.end(extra=before.cycle), boundary.after.start()):
        return None
    return Remedy(
        words=f"dance a second cycle of {before.name} ({before.cycle:g} more beats)",
        beats_lost=before.cycle,
        change="extend",
        values={"beats": before.beats + before.cycle},
    )


def _start_at_out(boundary: Boundary) -> Remedy | None:
    before, after = boundary.before, boundary.after
    if before.kind != "toroid" or not before.open("begin") or before.values["begin"] == "out":
        return None
    changed = {**before.parameters, "begin": "out"}
    if not boundary.starts(changed):
        return None
    end = before.end(changed)
    if boundary.joins(end, after.start()):
        return Remedy(
            words=f"start {before.name} at an out (begin: out)",
            beats_lost=0.0, change="before", values={"begin": "out"},
        )  # fmt: skip
    if after.kind == "toroid" and after.open("begin"):
        follows = {**after.parameters, "begin": "out"}
        if boundary.joins(end, after.start(follows)):
            return Remedy(
                words=f"start both {before.name} and the {after.name} after it at an out (begin: out)",
                beats_lost=0.0, change="both", values={"begin": "out"},
            )  # fmt: skip
    return None


def _even_neighbours(boundary: Boundary) -> list[Remedy]:
    before = boundary.before
    if before.kind != "toroid" or not before.open("lobes") or before.values["lobes"] % 2 == 0:
        return []
    found = []
    odd = int(before.values["lobes"])
    for lobes in (odd + 1, odd - 1):
        for cycle in (before.cycle, before.cycle * lobes / odd):  # same length, else same pace
            beats = before.beats * cycle / before.cycle
            if _fits(boundary, {**before.parameters, "lobes": lobes}, cycle, beats):
                found.append(
                    Remedy(
                        words=f"dance {before.name} with {lobes} lobes, {cycle:g} beats a cycle "
                        f"({beats:g} beats in all)",
                        beats_lost=abs(beats - before.beats),
                        change="before",
                        values={"lobes": lobes, "cycle": cycle, "beats": beats},
                    )
                )
                break
    return found


def _fits(boundary: Boundary, parameters: Mapping[str, Any], cycle: float, beats: float) -> bool:
    try:
        law = boundary.before.build(parameters, cycle)
    except ValueError:  # such a bend has no so few lobes
        return False
    if boundary.earlier is not None and not boundary.joins(
        boundary.earlier(), law.at(np.zeros(()))
    ):
        return False
    return boundary.joins(law.at(np.array(beats)), boundary.after.start())


def _other_way(boundary: Boundary) -> Remedy | None:
    after = boundary.after
    changed: dict[str, Any]
    if after.kind == "toroid" and after.open("start"):
        value = -int(after.values["start"])
        changed = {"start": value}
        words = f"start {after.name} with the opposite spin sense (start: {value})"
    else:
        name = next((name for name in ("turn", "way") if after.open(name)), None)
        if name is None:
            return None
        changed = {name: reversed_way({name: after.values[name]})[name]}
        words = f"spin {after.name} the other way ({name}: {changed[name]})"
    if not boundary.joins(boundary.before.end(), after.start({**after.parameters, **changed})):
        return None
    return Remedy(words=words, beats_lost=0.0, change="after", values=changed)


def _shift(boundary: Boundary) -> Remedy | None:
    law = boundary.after.law
    shifts = shifts_of(law)
    fits = gap_between(boundary.before.end(), law.at(shifts), boundary.space.length).within(
        boundary.tolerances
    )
    if not np.any(fits):
        return None
    shift = float(shifts[np.argmax(fits)])
    if shift == 0.0:
        return None
    return Remedy(
        words=f"start {boundary.after.name} {shift:g} {'beat' if shift == 1 else 'beats'} further into the pattern (add to shift)",
        beats_lost=0.0, change="shift", values={"shift": shift},
    )  # fmt: skip


def _link(boundary: Boundary, *, stall: bool) -> Remedy | None:
    beats, _ = shortest_link(
        boundary.before.end(), boundary.after.start(), space=boundary.space, limits=boundary.limits,
    )  # fmt: skip
    if not isfinite(beats):
        return None
    what = "stall to reverse, in a link" if stall else "put a link"
    return Remedy(
        words=f"{what} of {beats:g} {'beat' if beats == 1 else 'beats'} before {boundary.after.name}",
        beats_lost=beats, change="link", values={"beats": beats},
    )  # fmt: skip
