"""Certified clearance against sampling: time, evaluations, memory, misses, by size of cast.

Run: python benchmarks/clearance.py [--json] [--sizes 2,4,8,12,50,200] [--needles 1000] [--slice 4]

One process, one core. The search runs over the whole five minutes. Sampling runs over a slice of the show
in the middle and is scaled to the whole; so is the collision library. Times are processor time, all
threads together.
"""

import argparse
import json
import time

import brute_force
import casts
import needles
import numpy as np

from sequencer.motion.clearance.approach import approaches

REQUIRED = 0.30  # [m]
PER_SECOND = casts.TEMPO / 60


def peak_mib() -> float:
    """Largest memory of this process so far."""
    import resource
    import sys

    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return peak / (1024 * 1024 if sys.platform == "darwin" else 1024)


def measured(n: int, length: float) -> dict[str, float]:
    """Figures of one size of cast."""
    dancers = casts.cast(n)
    for dancer in dancers:
        dancer.pieces(0, casts.BEATS)  # bounds belong to the show: every check uses them
    before = peak_mib()
    began = time.process_time()
    found = approaches(dancers, 0.0, casts.BEATS, required=REQUIRED)
    seconds = time.process_time() - began
    memory = peak_mib() - before

    pairs = np.stack([found.first, found.second], axis=1)
    near = pairs[found.dismissed == 0]
    middle = casts.BEATS / 2
    beats = length * PER_SECOND
    scale = casts.BEATS / beats
    sample = {"start": middle - beats, "end": middle, "required": REQUIRED}
    fast = brute_force.sampled(dancers, near, per_beat=1000 / PER_SECOND, near_only=True, **sample)
    slow = brute_force.sampled(dancers, near, per_beat=240 / PER_SECOND, near_only=True, **sample)
    # Over all pairs every sample costs the same, so one in many of them is timed.
    some = pairs[:: max(1, len(pairs) // 40)]
    every = brute_force.sampled(
        dancers, some, per_beat=1000 / PER_SECOND, near_only=False, **sample
    )
    all_pairs = every.seconds * len(pairs) / len(some)
    instants = np.linspace(middle - beats, middle, 5)
    library = brute_force.library_seconds(dancers, near[:8], instants)
    samples = casts.BEATS / PER_SECOND * 1000
    row = {
        "performers": n,
        "pairs": len(pairs),
        "pairs_sampled": len(near),
        "spans_under": len(found.spans.group),
        "seconds": round(seconds, 3),
        "evaluations": found.evaluations,
        "memory_mib": round(max(memory, 0.0), 1),
        "sampling_1khz_same_broad_phase_s": round(fast.seconds * scale, 1),
        "sampling_240hz_same_broad_phase_s": round(slow.seconds * scale, 1),
        "sampling_1khz_all_pairs_s": round(all_pairs * scale, 1),
        "evaluations_1khz_same_broad_phase": int(fast.evaluations * scale),
        "evaluations_1khz_all_pairs": int(samples * len(pairs)),
    }
    row["times_faster_same_broad_phase"] = round(
        row["sampling_1khz_same_broad_phase_s"] / seconds, 1
    )
    row["times_faster_all_pairs"] = round(row["sampling_1khz_all_pairs_s"] / seconds, 1)
    row["times_fewer_evaluations"] = round(
        row["evaluations_1khz_same_broad_phase"] / max(found.evaluations, 1), 1
    )
    if library is not None and len(near):
        per_pair = library / (len(instants) * len(near[:8]))
        row["collision_library_240hz_s"] = round(per_pair * fast.evaluations * scale * 0.24, 1)
    return row


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--json", action="store_true")
    parser.add_argument("--sizes", default="2,4,8,12,50,200")
    parser.add_argument("--needles", type=int, default=1000)
    parser.add_argument("--slice", type=float, default=4.0, help="seconds that are sampled")
    given = parser.parse_args()
    approaches(casts.cast(2, beats=32), 0, 32, required=REQUIRED)  # imports and caches
    rows = [measured(int(n), given.slice) for n in given.sizes.split(",")]
    figures = {
        "show_seconds": casts.BEATS / PER_SECOND,
        "required_m": REQUIRED,
        "proven_error_mm": 5.0,
        "sizes": rows,
        "needles": needles.planted(given.needles) if given.needles else {},
    }
    several = [row for row in rows if row["performers"] >= 8]
    if len(several) > 1:
        n = np.log([row["performers"] for row in several])
        t = np.log([row["seconds"] for row in several])
        figures["cost_grows_as_n_to_the"] = round(float(np.polyfit(n, t, 1)[0]), 3)
    if given.json:
        print(json.dumps(figures, indent=2))
        return
    for row in rows:
        print(", ".join(f"{key} {value}" for key, value in row.items()))
    print(figures["needles"])
    print("cost grows as n to the", figures.get("cost_grows_as_n_to_the"))


if __name__ == "__main__":
    main()
