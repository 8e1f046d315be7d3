"""Patterns called by their name alone, on bodies of every size: how many come through the whole check.

Run: python benchmarks/vocabulary.py [--json] [--prop poi] [--patterns toroid,isolation] [--jobs 2]

A cell is a prop, a pattern, a stature, a tether (of poi) and a tempo. Of each a show is written: one
performer, the pattern for 16 beats with nothing said about it, nothing before or after, no fire. It is
staged on a song with an even count and checked whole. Four questions, each with all before it:

    no stop  no finding stops the show
    clear    none warns of it either
    block    2 cm at least between a prop and the own body, and between the two props, while it is danced
    way      the same on the way from rest and back to it, and at rest

The 2 cm are asked of the check's own proven search, with a prop that is 2 cm thicker all over, so they
hold at every moment; what cannot be proven counts as too near.

Which patterns a prop is asked for stands in the library (`Pattern.props`). A staff comes alone and as
a pair. All but poi have their usual sizes.
"""

import argparse
import json
import math
import multiprocessing
import os
import sys
import time
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass
from functools import cached_property
from itertools import pairwise, product
from pathlib import Path
from typing import Any, NamedTuple

os.environ.setdefault("OMP_NUM_THREADS", "1")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np
from joblib import Parallel, delayed

from sequencer.checks.suite import checked
from sequencer.errors import InputError
from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.fitting.fits import Dance
from sequencer.motion.fitting.pacing import usual_cycle
from sequencer.motion.fitting.search import searched
from sequencer.motion.patterns.library import Pattern, patterns
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import GAP_ERROR, Least, body_gap, props_gap
from sequencer.motion.props.prop import Prop, PropKind, Solid
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.song import Section, Song

STATURES = (1.45, 1.55, 1.70, 1.85, 2.00)  # [m]
TETHERS = (0.40, 0.50, 0.60)  # [m]
TEMPI = (80.0, 100.0, 120.0)  # [beats a minute]
BEATS = 16  # of the block
SONG = 40  # [beats]
FIRST = 8  # beats before the block
SPARE = 0.02  # [m]
QUESTIONS = ("no stop", "clear", "block", "way")
ADDITIONS = 20_000_000


class Held(NamedTuple):
    """What a row of the benchmark has in hand."""

    kind: PropKind
    hands: int


PROPS: Mapping[str, Held] = {
    "poi": Held("poi", 2),
    "rope dart": Held("rope dart", 1),
    "staff": Held("staff", 1),
    "two staffs": Held("staff", 2),
    "club": Held("club", 2),
    "fan": Held("fan", 2),
    "hoop": Held("hoop", 2),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One show to be checked."""

    prop: str
    pattern: str
    stature: float  # [m]
    tether: float | None  # [m] of poi
    tempo: float  # [beats a minute]


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """What came of a cell."""

    cell: Cell
    passed: tuple[str, ...]  # of QUESTIONS
    codes: tuple[str, ...]  # why not all of them
    messages: tuple[str, ...]


# --- the show of a cell -----------------------------------------------------------------------------


def text_of(cell: Cell) -> str:
    """The show file: the pattern by its name alone."""
    held = PROPS[cell.prop]
    length = cell.tether if held.kind == "poi" else None
    size = "" if length is None else f", tether: {length:g}"
    hand = "prop" if held.hands == 2 else "right"
    return f"""\
title: One pattern
track: {{file: song.ogg}}
venue:
  setting: outdoors
  stage: {{shape: rectangle, width: 20 m, depth: 20 m}}
  audience: [{{name: fence, line: [[-30, -30], [30, -30]]}}]
  ceiling: open
cast:
  - {{name: Ash, stature: {cell.stature:g}, birth_year: 1990, {hand}: {{kind: {held.kind}{size}}}}}
formations:
  middle: {{spots: {{Ash: {{at: [0, 10]}}}}}}
staging:
  - {{formation: middle, from: 1.1}}
timeline:
  - {{who: Ash, from: {1 + FIRST // 4}.1, pattern: {cell.pattern}, beats: {BEATS}}}
"""


def staged_cell(cell: Cell) -> Staged:
    """The show of a cell on a song with an even count.

    Raises
    ------
    InputError
        If the show is refused.
    """
    beat = 60 / cell.tempo
    song = Song(
        track="song.ogg",
        sha256="0" * 64,
        duration=SONG * beat,
        tempo=cell.tempo,
        metre=4,
        beats=tuple(float(t) for t in beat * np.arange(SONG)),
        downbeats=tuple(float(t) for t in beat * np.arange(0, SONG, 4)),
        sections=(Section(start=0.0, end=SONG * beat, label="A"),),
    )
    return staged(show_from_document(parse_document(text_of(cell), "vocabulary.yaml")), song)


# --- room to spare ----------------------------------------------------------------------------------


class _Thicker(Prop):
    """A prop with `SPARE` more all round, so that what is clear of it has as much to spare."""

    @cached_property
    def solids(self) -> tuple[Solid, ...]:
        """The true shape, thicker."""
        return _thicker(super().solids)

    @cached_property
    def envelope(self) -> tuple[Solid, ...]:
        """What holds the true shape, thicker."""
        return _thicker(super().envelope)


def _thicker(solids: Iterable[Solid]) -> tuple[Solid, ...]:
    return tuple(solid._replace(radius=solid.radius + SPARE) for solid in solids)


def thicker(prop: Prop) -> Prop:
    """The same prop with `SPARE` more all round."""
    return _Thicker(**{name: getattr(prop, name) for name in Prop.__dataclass_fields__})


def gaps_of(dancer: Dancer) -> list[tuple[str, str, Least]]:
    """What is left beyond `SPARE`: stretch ("block" or "way"), from what ("body", "prop"), least gap.

    Notes
    -----
    The one place that asks `body_gap` and `props_gap`.
    """
    trajectories = {s: c for s, c in dancer.trajectories.items() if isinstance(c, Trajectory)}
    told = []
    for side, trajectory in trajectories.items():
        edges = edges_of(trajectory)
        gaps = body_gap(
            trajectory, edges, prop=thicker(dancer.props[side]), body=dancer.body,
            carriage=dancer.carriage,
        )  # fmt: skip
        told += [(stretch, "body", gap) for stretch, gap in _labelled(edges, gaps, trajectory)]
    if len(trajectories) == len(SIDES):
        left, right = trajectories["left"], trajectories["right"]
        own = edges_of(left), edges_of(right)
        low, high = max(e[0] for e in own), min(e[-1] for e in own)
        edges = sorted({e for each in own for e in each if low <= e <= high})
        gaps = props_gap(
            (left, thicker(dancer.props["left"])), (right, dancer.props["right"]), edges
        )
        told += [(stretch, "prop", gap) for stretch, gap in _labelled(edges, gaps, left, right)]
    return told


def edges_of(trajectory: Trajectory) -> list[float]:
    """Where the spans of a trajectory start and end [beats]."""
    return [trajectory.spans[0].start, *(span.end for span in trajectory.spans)]


def _labelled(
    edges: Sequence[float], gaps: Sequence[Least], *trajectories: Trajectory
) -> Iterator[tuple[str, Least]]:
    """Each gap with "block" where all hands dance, else "way"."""
    for (start, end), gap in zip(pairwise(edges), gaps, strict=True):
        middle = (start + end) / 2
        kinds = {
            span.kind
            for trajectory in trajectories
            for span in trajectory.spans
            if span.start < middle < span.end
        }
        yield ("block" if kinds == {"block"} else "way"), gap


# --- judging ----------------------------------------------------------------------------------------


def judged(cell: Cell) -> Result:
    """A cell with what stands against it."""
    try:
        show = staged_cell(cell)
    except InputError as error:
        return Result(cell=cell, passed=(), codes=("refused",), messages=(str(error),))
    against = [f for f in checked(show).findings if f.severity != "note"]
    failed = {{"stop": "no stop"}.get(finding.severity, "clear") for finding in against}
    codes = [f"{finding.severity} {finding.code}" for finding in against]
    messages = [finding.message for finding in against]
    least: dict[tuple[str, str], float] = {}
    for stretch, what, gap in gaps_of(show.dancers[0]):
        if gap.value < GAP_ERROR - 1e-9:  # at the error itself it is proven that nothing is less
            least[stretch, what] = min(least.get((stretch, what), math.inf), gap.value + SPARE)
    for (stretch, what), value in sorted(least.items()):
        failed.add(stretch)
        codes.append(f"near {what}, {'danced' if stretch == 'block' else 'on the way'}")
        messages.append(f"{1000 * value:.0f} mm to the {what}, {stretch}")
    passed = []
    for question in QUESTIONS:  # each with all before it
        if question in failed:
            break
        passed.append(question)
    return Result(
        cell=cell, passed=tuple(passed), codes=tuple(sorted(set(codes))), messages=tuple(messages)
    )


def cells_of(
    prop: str,
    names: Sequence[str] | None,
    statures: Sequence[float],
    tethers: Sequence[float],
    tempi: Sequence[float],
) -> list[Cell]:
    """Every cell of one prop; of the patterns named, those that are for it."""
    held = PROPS[prop]
    chosen = [p.name for p in patterns().values() if p.suits(held.kind, held.hands)]
    if names is not None:
        chosen = [name for name in chosen if name in names]
    lengths = list(tethers) if held.kind == "poi" else [None]
    return [
        Cell(prop=prop, pattern=pattern, stature=stature, tether=tether, tempo=tempo)
        for pattern, stature, tether, tempo in product(chosen, statures, lengths, tempi)
    ]


# --- figures ----------------------------------------------------------------------------------------


def counted(results: Iterable[Result]) -> dict[str, int]:
    """How many cells, and how many pass each question."""
    rows = list(results)
    return {"cells": len(rows)} | {q: sum(q in row.passed for row in rows) for q in QUESTIONS}


def is_small_toroid(pattern: Pattern) -> bool:
    """Whether it is one of the toroids of 2 to 5 lobes."""
    return pattern.family == "toroid" and pattern.right.fixed.get("lobes") in range(2, 6)


def figures_of(results: Sequence[Result]) -> dict[str, Any]:
    """The figures of one prop."""
    grid: dict[tuple[float, float | None], list[Result]] = defaultdict(list)
    for row in results:
        grid[row.cell.stature, row.cell.tether].append(row)
    reasons = Counter(
        (row.cell.pattern, row.codes) for row in results if len(row.passed) < len(QUESTIONS)
    )
    of_each = Counter(row.cell.pattern for row in results)
    toroids = [
        row
        for row in results
        if row.cell.tether in (0.4, 0.5) and is_small_toroid(patterns()[row.cell.pattern])
    ]
    return {
        **counted(results),
        "patterns": len(of_each),
        "by_size": [
            {"stature": stature, "tether": tether, **counted(rows)}
            for (stature, tether), rows in sorted(
                grid.items(), key=lambda item: (item[0][0], item[0][1] or 0.0)
            )
        ],
        "toroids_2_to_5": counted(toroids) if toroids else None,
        "reasons": [
            {"pattern": name, "codes": list(codes), "failing": count, "cells": of_each[name]}
            for (name, codes), count in reasons.items()
        ],
        "failing": [
            {**asdict(row.cell), "passed": row.passed, "codes": row.codes, "messages": row.messages}
            for row in results
            if len(row.passed) < len(QUESTIONS)
        ],
    }


def table_of(prop: str, figures: Mapping[str, Any]) -> str:
    """One prop's figures for people."""

    def share(row: Mapping[str, Any]) -> str:
        return " / ".join(f"{100 * row[q] / row['cells']:3.0f}" for q in QUESTIONS)

    lines = [
        f"{prop}: {figures['patterns']} patterns, {figures['cells']} cells; "
        + ", ".join(f"{q} {figures[q]}" for q in QUESTIONS)
        + f" ({share(figures)} of 100)"
    ]
    tethers = list(dict.fromkeys(row["tether"] for row in figures["by_size"]))
    if tethers != [None]:
        lines.append("  stature  " + "  ".join(f"{f'tether {t:.2f} m':>21}" for t in tethers))
    for stature in dict.fromkeys(row["stature"] for row in figures["by_size"]):
        row = [share(each) for each in figures["by_size"] if each["stature"] == stature]
        lines.append(f"  {stature:.2f} m   " + "  ".join(f"{each:>21}" for each in row))
    if figures["toroids_2_to_5"]:
        toroids = figures["toroids_2_to_5"]
        lines.append(
            f"  toroids of 2 to 5 lobes, 0.40 and 0.50 m: {share(toroids)} of 100 "
            f"({toroids['cells']} cells)"
        )
    wide = max((len(row["pattern"]) for row in figures["reasons"]), default=0)
    lines += [
        f"    {row['pattern']:<{wide}}  {row['failing']:>3} of {row['cells']:<3} "
        f"{'; '.join(row['codes'])}"
        for row in figures["reasons"]
    ]
    return "\n".join(lines)


# --- how long the search takes ----------------------------------------------------------------------


def additions_seconds() -> float:
    """Processor time of a plain loop of 20 million additions, the shorter of two [s]."""

    def run() -> None:
        total = 0
        for k in range(ADDITIONS):
            total += k

    return min(_seconds(run) for _ in range(2))


def search_ratios() -> dict[str, float]:
    """Processor time of the search for one body and prop over that of the loop of additions.

    Notes
    -----
    The search alone, in a process of its own that has made one search for another body first: modules,
    tables of derivatives and the like are loaded, and nothing asked for is known or kept. `single` is of
    every pattern by itself.
    """
    names = tuple(cell.pattern for cell in cells_of("poi", None, (1.7,), (0.5,), (100.0,)))
    with ProcessPoolExecutor(1, mp_context=multiprocessing.get_context("spawn")) as pool:
        each = pool.submit(_searched, names).result()
    loop = additions_seconds()
    return {
        "all": round(sum(each) / loop, 3),
        "single_median": round(float(np.median(each)) / loop, 3),
        "single_longest": round(max(each) / loop, 3),
        "single_over_a_tenth": sum(seconds > 0.1 * loop for seconds in each),
        "loop_seconds": round(loop, 3),
    }


def _searched(names: tuple[str, ...]) -> list[float]:
    """Processor time of the search for each pattern [s]."""

    def dance(name: str, stature: float) -> Dance:
        poi = Prop(length=0.5, mass=0.2, wick_radius=0.05)
        return Dance(
            parts=dict.fromkeys(SIDES, (name, {})),
            cycle=usual_cycle(name, {}, tempo=100.0, props=[poi]),
            tempo=(100.0, 100.0),
            body=Body(stature=stature),
            props=dict.fromkeys(SIDES, poi),
        )

    searched(dance("pro-bend-5", 1.6))
    asked = [dance(name, 1.7) for name in names]
    return [_seconds(lambda one=one: searched(one)) for one in asked]


def _seconds(run: Callable[[], None]) -> float:
    began = time.process_time()
    run()
    return time.process_time() - began


# --- command line -----------------------------------------------------------------------------------


def _numbers(text: str) -> tuple[float, ...]:
    return tuple(float(part) for part in text.split(","))


def _names(text: str) -> list[str]:
    names = [part.strip() for part in text.split(",")]
    unknown = [name for name in names if name not in patterns()]
    if unknown:
        raise argparse.ArgumentTypeError(f"not in the vocabulary: {', '.join(unknown)}")
    return names


def main() -> None:
    """Stage, check, count, print."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", maxsplit=1)[0])
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    parser.add_argument("--prop", choices=[*PROPS, "all"], default="all")
    parser.add_argument("--patterns", type=_names, help="only these, by name, with commas")
    parser.add_argument("--statures", type=_numbers, default=STATURES, help="[m], with commas")
    parser.add_argument("--tethers", type=_numbers, default=TETHERS, help="of poi [m], with commas")
    parser.add_argument("--tempi", type=_numbers, default=TEMPI, help="beats a minute, with commas")
    parser.add_argument("--jobs", type=int, default=1, help="processes; -1 for every core")
    parser.add_argument("--without-search", action="store_true", help="leave out the search's time")
    asked = parser.parse_args()
    began = time.perf_counter()
    by_prop: dict[str, Any] = {}
    for prop in PROPS if asked.prop == "all" else [asked.prop]:
        cells = cells_of(prop, asked.patterns, asked.statures, asked.tethers, asked.tempi)
        if cells:
            results = Parallel(n_jobs=asked.jobs)(delayed(judged)(cell) for cell in cells)
            by_prop[prop] = figures_of(results)
            if not asked.json:
                print(table_of(prop, by_prop[prop]), end="\n\n", flush=True)
    figures: dict[str, Any] = {
        "props": by_prop,
        "seconds": round(time.perf_counter() - began, 1),
        "jobs": asked.jobs,
        "search": None if asked.without_search else search_ratios(),
    }
    if asked.json:
        print(json.dumps(figures, indent=2))
    elif figures["search"]:
        print("search, in loops of 20 million additions:", figures["search"])


if __name__ == "__main__":
    main()
