"""Links between patterns, and between patterns and rest, as one hand flies them: the second step of flown.py."""

import time
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache, partial
from typing import Any, NamedTuple

import numpy as np

from sequencer.geometry.posture import UPRIGHT
from sequencer.motion.flown.flown_motion import Flying
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.patterns.library import patterns
from sequencer.motion.trajectories.flown_path.flown_links import (
    FlownLink,
    StateAt,
    flown_link,
)

try:
    from sequencer.motion.trajectories.one_link.head_states import HeadState, hanging, state_in
except ImportError:  # of an older version, which is compared with this one
    from sequencer.motion.trajectories.flown_path.flown_links import HeadState, hanging, state_in
from sequencer.motion.trajectories.rests import rest
from sequencer.outputs.patterns.one_pattern import one_pattern

TEMPO = 100.0  # [beats a minute]
LENGTHS = (1.0, 2.0, 3.0, 4.0)  # [beats] of a link between patterns
REST_LENGTHS = (1.0, 1.5, 2.0, 3.0, 4.0)  # [beats] of a link from or to rest
SEED = 20_261


class Flown(NamedTuple):
    """A pattern's right hand as it is flown."""

    name: str
    period: FlownPeriod

    @property
    def flies(self) -> bool:
        """Whether it holds its limits."""
        return not self.period.broken

    @property
    def flying(self) -> Flying:
        """Who flies it, upright, as links are flown."""
        return replace(self.period.flying, posture=UPRIGHT)

    def state(self, beat: float) -> HeadState:
        """The head at one of its beats; beat 0 is where it starts and, after a period, ends."""
        plane = self.period.law.at(np.array([beat])).plane[0]
        return state_in(self.period, plane, beat)


def vocabulary(names: Sequence[str]) -> list[Flown]:
    """The right hands of patterns with a period and a passive prop of the usual length."""
    out = []
    for name in names:
        one = one_pattern(name, tempo=TEMPO)
        if "right" in one.flown:
            out.append(Flown(name, one.flown["right"]))
    usual = Counter(each.period.flying.prop for each in out).most_common(1)[0][0]
    return [each for each in out if each.period.flying.prop == usual]


def tried(
    before: StateAt, after: StateAt, lengths: Sequence[float], flying: Flying
) -> tuple[float | None, FlownLink]:
    """The fewest beats in which a link holds every limit, None if in none of them, and the last link that was tried."""
    for beats in lengths:
        link = flown_link(before, after, beats, flying)
        if not link.broken:
            return beats, link
    return None, link


def pair_figures(flown: Sequence[Flown], pairs: int) -> dict[str, Any]:
    """Links of a drawn sample of ordered pairs, split by whether both patterns fly."""
    possible = [(a, b) for a in flown for b in flown if a is not b]
    drawn = np.random.default_rng(SEED).permutation(len(possible))[:pairs].tolist()
    rows = []
    for k in drawn:
        first, last = possible[k]
        start = time.process_time()
        beats, link = tried(first.state, last.state, LENGTHS, first.flying)
        rows.append(
            {
                "from": first.name,
                "to": last.name,
                "both_fly": first.flies and last.flies,
                "beats": beats,
                "broken": [] if beats else list(link.broken),
                "missed": {
                    limit: round(share, 3) for limit, share in link.missed().items() if not beats
                },
                "loops": time.process_time() - start,
            }
        )
    return {
        "possible": len(possible),
        "both fly": _summary([row for row in rows if row["both_fly"]], LENGTHS),
        "others": _summary([row for row in rows if not row["both_fly"]], LENGTHS),
        "rows": rows,
    }


def rest_figures(flown: Sequence[Flown]) -> dict[str, Any]:
    """Links from rest into each pattern, and out of each to rest."""
    rows = []
    for each in flown:
        hang = _hanging(each.flying)
        ways: dict[str, tuple[StateAt, StateAt]] = {
            "from rest": (hang, each.state),
            "to rest": (each.state, hang),
        }
        for way, (before, after) in ways.items():
            start = time.process_time()
            beats, link = tried(before, after, REST_LENGTHS, each.flying)
            rows.append(
                {
                    "way": way,
                    "pattern": each.name,
                    "flies": each.flies,
                    "beats": beats,
                    "broken": [] if beats else list(link.broken),
                    "loops": time.process_time() - start,
                }
            )
    return {
        f"{way}, {words}": _summary(
            [row for row in rows if row["way"] == way and row["flies"] is flies], REST_LENGTHS
        )
        for way in ("from rest", "to rest")
        for words, flies in (("flies", True), ("others", False))
    } | {"rows": rows}


def link_figures(pairs: int | None) -> dict[str, Any]:
    """All figures of links; every possible pair if no number is given."""
    flown = vocabulary(sorted(patterns()))
    return {
        "patterns": len(flown),
        "fly": sum(each.flies for each in flown),
        "pairs": pair_figures(flown, len(flown) ** 2 if pairs is None else pairs),
        "rest": rest_figures(flown),
    }


def _hanging(flying: Flying) -> Callable[[float], HeadState]:
    return partial(_hung, flying)


@cache
def _hung(flying: Flying, _beat: float) -> HeadState:
    return hanging(rest(flying.side, flying.body, flying.prop), flying.prop.length)


def _summary(rows: list[dict[str, Any]], lengths: Sequence[float]) -> dict[str, Any]:
    """How many have a link of at most so many beats, why the rest has none, and the time for each."""
    times = [row["loops"] for row in rows]
    return {
        "links": len(rows),
        "within": {
            f"{most:g}": sum(row["beats"] is not None and row["beats"] <= most for row in rows)
            for most in lengths
        },
        "broken": dict(sorted(Counter(limit for row in rows for limit in row["broken"]).items())),
        "loops": sum(times),
        "loops_longest": max(times, default=0.0),
    }


def links_text(found: dict[str, Any]) -> list[str]:
    """The figures as lines."""
    lines = [
        (
            f"links of {found['patterns']} patterns, {found['fly']} of which fly; "
            f"{len(found['pairs']['rows'])} of {found['pairs']['possible']} pairs"
        ),
        "                        links  with one of at most so many beats              loops  longest  broken",
    ]
    groups = {key: found["pairs"][key] for key in ("both fly", "others")}
    groups |= {key: own for key, own in found["rest"].items() if key != "rows"}
    for name, own in groups.items():
        within = "  ".join(f"{beats}: {count}" for beats, count in own["within"].items())
        lines.append(
            f"{name:22}  {own['links']:5}  {within:46} {own['loops']:6.1f}  {own['loops_longest']:7.2f}"
            f"  {own['broken']}"
        )
    lines += [
        f"{row['from']} to {row['to']}: {', '.join(row['broken'])} {row['missed']}"
        for row in found["pairs"]["rows"]
        if row["both_fly"] and row["beats"] is None
    ]
    lines += [
        f"{row['way']}, {row['pattern']}: {', '.join(row['broken'])}"
        for row in found["rest"]["rows"]
        if row["flies"] and row["beats"] is None
    ]
    return lines
