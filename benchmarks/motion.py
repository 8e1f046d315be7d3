"""Speed of the laws, of the join matrix and of the joins' check, each against a plain way in the same run.

    python benchmarks/motion.py --json

One core. `positions`: hand and head of one pattern at 1 kHz for five minutes, with all derivatives,
against a plain numpy program that only evaluates the positions by the formula of docs/motion.md.
`matrix`: all ordered pairs of the vocabulary against judging a sample of pairs one by one.
`check`: joins and feasibility of the demo shows, against sampling every distance at 240 Hz without proof.
"""

import argparse
import json
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

os.environ.setdefault("OMP_NUM_THREADS", "1")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np

from sequencer.geometry.bodies import Body
from sequencer.geometry.segments import segment_segment
from sequencer.motion.patterns.library import cycle_beats, law_for, patterns
from sequencer.motion.trajectories.join_matrix import join_matrix
from sequencer.motion.trajectories.joining import judge
from sequencer.motion.trajectories.one_link.link_limits import HandSpace

BODY = Body(stature=1.70)
TEMPO = 100.0
SECONDS = 300.0
RATE = 1000.0


def best_of(times: int, run: Callable[[], Any]) -> float:
    """Shortest CPU time of several runs [s]."""
    found = []
    for _ in range(times):
        start = time.process_time()
        run()
        found.append(time.process_time() - start)
    return min(found)


def plain_toroid(beats: np.ndarray) -> np.ndarray:
    """Hand and head of a four-lobe pro-bend straight from the formula, positions only."""
    lobes, radius, length = 4, 0.2, 0.55
    u = 2 * np.pi * beats / lobes
    zero = np.zeros_like(u)
    angle = u - np.pi / 2  # from the bottom
    outward = np.stack((np.cos(angle), zero, np.sin(angle)), axis=-1)
    along = np.stack((-np.sin(angle), zero, np.cos(angle)), axis=-1)
    beta = np.pi / 2 - np.pi / 2 * np.cos(lobes * u / 2)
    axis = np.array([0.0, -1.0, 0.0])
    n = np.cos(beta)[:, None] * along + np.sin(beta)[:, None] * axis
    phi = np.pi + lobes * u
    d = np.cos(phi)[:, None] * outward + np.sin(phi)[:, None] * np.cross(n, outward)
    hand = radius * outward
    return np.concatenate((hand, hand + length * d), axis=1)


def positions() -> dict[str, Any]:
    """Five minutes at 1 kHz."""
    beats = np.arange(round(SECONDS * RATE)) / RATE * TEMPO / 60
    law = law_for("pro-bend-4", {}, side="right", body=BODY)
    own = best_of(3, lambda: law.at(beats).head(0.55))
    plain = best_of(3, lambda: plain_toroid(beats))
    motion, reference = law.at(beats), plain_toroid(beats)
    own_offset = motion.head(0.55) - motion.hand
    error = np.abs(own_offset - (reference[:, 3:] - reference[:, :3])).max()
    return {
        "rows": len(beats),
        "seconds": round(own, 4),
        "plain_seconds": round(plain, 4),
        "ratio": round(own / plain, 2),
        "rows_per_second": round(len(beats) / own),
        "largest_difference_m": float(error),
        "note": "ours also gives velocity, acceleration and plane",
    }


def matrix() -> dict[str, Any]:
    """All ordered pairs of the vocabulary."""
    own = best_of(2, join_matrix)
    found = join_matrix()
    names = found.names
    room = HandSpace(body=BODY, side="right", length=0.55)
    draw = np.random.default_rng(0)
    pairs = draw.integers(0, len(names), (60, 2))
    laws = {n: law_for(n, {}, side="right", body=BODY, tether=0.55) for n in names}
    ends = {n: laws[n].at(np.array(cycle_beats(n, {}))) for n in names}
    agree = 0
    start = time.process_time()
    for i, j in pairs:
        verdict = judge(ends[names[i]], laws[names[j]], room=room)
        agree += verdict.kind == found.verdict(names[i], names[j])
    each = (time.process_time() - start) / len(pairs)
    return {
        "patterns": len(names),
        "pairs": len(names) ** 2,
        "seconds": round(own, 3),
        "one_by_one_seconds": round(each * len(names) ** 2, 1),
        "speed_up": round(each * len(names) ** 2 / own, 1),
        "agree": f"{agree}/{len(pairs)}",
        "counts": found.counts(),
    }


def sampled(show: Any, rate: float) -> int:
    """The same questions sampled, without proof: how many instants are looked at."""
    count = 0
    for dancer in show.dancers:
        spans = dancer.trajectories["right"].spans
        seconds = np.arange(show.seconds(spans[0].start), show.seconds(spans[-1].end), 1 / rate)
        beats = show.tempo.beats_from_seconds(seconds)
        hands, heads = {}, {}
        for side, trajectory in dancer.trajectories.items():
            motion = trajectory.at(beats)
            hands[side], heads[side] = motion.hand, motion.head(dancer.props[side].length)
            np.linalg.norm(motion.hand - dancer.body.shoulder(side), axis=-1).max()
            for capsule in dancer.body.capsules:
                low, high = (
                    np.broadcast_to(np.array(end), motion.hand.shape)
                    for end in (capsule.start, capsule.end)
                )
                segment_segment(motion.hand, heads[side], low, high)[0].min()
            count += len(beats)
        segment_segment(hands["left"], heads["left"], hands["right"], heads["right"])[0].min()
    return count


def check() -> dict[str, Any]:
    """Joins and feasibility of the demo shows."""
    from sequencer import tasks
    from sequencer.checks.dance.feasible import feasible
    from sequencer.checks.dance.joins import joins

    found = {}
    for path in sorted((Path(__file__).parents[1] / "shows").glob("*.yaml")):
        show = tasks.stage_show(path)
        found[path.stem] = {
            "dancers": len(show.dancers),
            "blocks": len(show.blocks),
            "joins_seconds": round(best_of(1, lambda: joins(show)), 3),  # noqa: B023 - run at once
            "feasible_seconds": round(best_of(1, lambda: feasible(show)), 3),  # noqa: B023
            "sampled_240_hz_seconds": round(best_of(1, lambda: sampled(show, 240.0)), 3),  # noqa: B023
        }
    return found


def main() -> None:
    """Run all of it."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    asked = parser.parse_args()
    figures = {
        "vocabulary": len(patterns()),
        "positions": positions(),
        "matrix": matrix(),
        "check": check(),
    }
    if asked.json:
        print(json.dumps(figures, indent=2))
        return
    for name, values in figures.items():
        print(name, values)


if __name__ == "__main__":
    main()
