"""Flown solutions of two checkouts side by side: python benchmarks/flown_compare.py OTHER_CHECKOUT [--only patterns links shows].

The same problems are solved by the code of both, nothing kept, each in a process of its own: every pattern of the library as
fitted at three tempi, both hands; a seeded sample of ordered pairs linked in two beats, at 100 beats a minute; and the solo
shows, all periods and passages. Compared are the limits that are held, the value that is least (mean square of head and hand
off the drawing, weighed alike [cm²]), head and hand off [cm, root mean square], and processor time. Of links the ways may
differ, so their values are compared where the way is the same.

    --dump FILE     only solve, with the code that is imported, and write figures as JSON
    --pairs N       links (60)
"""

import argparse
import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

os.environ.setdefault("OMP_NUM_THREADS", "1")  # before numpy is loaded
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

import numpy as np

TEMPI = (80.0, 100.0, 125.0)  # [beats a minute]
SHOWS = ("night_ferry", "salt_wind")
GROUPS = ("patterns", "links", "shows")
BEATS = 2.0  # of a link
SEED = 20_262
SAME = 0.01  # of a value: nearer than this counts as as good
LOOKS = 240  # at a link


def _of_period(period: Any) -> dict[str, Any]:
    head, hand = period.head_off[0], period.hand_off[0]
    return {
        "broken": list(period.broken),
        "missed": sum(period.missed().values()),
        "head": 100 * head,
        "hand": 100 * hand,
        "value": 1e4 * (head**2 + hand**2),
        "residual": period.residual,
    }


def _of_link(link: Any) -> dict[str, Any]:
    start, end = link.head.start, link.head.end
    shares = (np.arange(LOOKS) + 0.5) / LOOKS
    seen = link.flight(start + (end - start) * shares)
    drawn = link.drawn.at((end - start) * shares)
    off = seen.head - drawn.head(link.flying.prop.length), seen.hand - drawn.hand
    head, hand = (float(np.sqrt(np.mean(np.sum(each**2, axis=-1)))) for each in off)
    middle = drawn.tether[LOOKS // 2]
    return {
        "broken": list(link.broken),
        "missed": sum(link.missed().values()),
        "head": 100 * head,
        "hand": 100 * hand,
        "value": 1e4 * (head**2 + hand**2),
        "residual": link.residual,
        "way": [start, end, *(round(float(x), 3) for x in middle)],
    }


def pattern_rows() -> Iterator[tuple[str, dict[str, Any]]]:
    """Figures of every pattern's hands."""
    from sequencer.motion.patterns.library import patterns
    from sequencer.outputs.patterns.one_pattern import one_pattern

    for tempo in TEMPI:
        for name in sorted(patterns()):
            one = one_pattern(name, tempo=tempo)
            before = time.process_time()
            flown = one.flown
            spent = time.process_time() - before
            for side, period in flown.items():
                yield (
                    f"{tempo:g} {name} {side}",
                    {**_of_period(period), "seconds": spent / len(flown)},
                )


def link_rows(pairs: int) -> Iterator[tuple[str, dict[str, Any]]]:
    """Figures of links between a sample of ordered pairs, in two beats."""
    sys.path.insert(0, str(Path(__file__).resolve().parent))
    from flown_pairs import vocabulary

    from sequencer.motion.patterns.library import patterns
    from sequencer.motion.trajectories.flown_path.flown_links import flown_link

    flown = vocabulary(sorted(patterns()))
    possible = [(a, b) for a in flown for b in flown if a is not b and a.flies and b.flies]
    for k in np.random.default_rng(SEED).permutation(len(possible))[:pairs].tolist():
        first, last = possible[k]
        before = time.process_time()
        link = flown_link(first.state, last.state, BEATS, first.flying)
        spent = time.process_time() - before
        yield f"{first.name} into {last.name}", {**_of_link(link), "seconds": spent}


def show_rows(folder: Path) -> Iterator[tuple[str, dict[str, Any]]]:
    """Figures of all periods and passages of the solo shows; the time is that of the whole show, shared alike."""
    from sequencer.motion.trajectories.flown_path.flown_courses import Stay
    from sequencer.staging.in_flight.flown_show import flown_hands
    from sequencer.tasks.shows import stage_show

    for name in SHOWS:
        show = stage_show(folder / f"{name}.yaml")
        before = time.process_time()
        hands = flown_hands(show)
        spent = time.process_time() - before
        parts = []
        for (who, side), way in hands.items():
            for each in way:
                if isinstance(each, Stay):
                    label = f"{name} {who} {side} {each.span.start:g} {each.span.label}"
                    if each.period is not None:
                        parts.append((label, _of_period(each.period)))
                elif each.link is not None:
                    label = f"{name} {who} {side} {each.start:g} to {each.end:g}"
                    parts.append((label, _of_link(each.link)))
        for label, figures in parts:
            yield label, {**figures, "seconds": spent / len(parts)}


def dump(path: Path, groups: Sequence[str], pairs: int) -> None:
    """Solve with the code that is imported, and write figures."""
    from sequencer import kept

    folder = Path(kept.__file__).resolve().parents[1] / "shows"
    made = {
        "patterns": pattern_rows,
        "links": lambda: link_rows(pairs),
        "shows": lambda: show_rows(folder),
    }
    path.write_text(json.dumps({group: dict(made[group]()) for group in groups}), encoding="utf-8")


def solved_by(checkout: Path, groups: Sequence[str], pairs: int) -> dict[str, Any]:
    """Figures from another process with the code of a checkout, nothing kept."""
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "figures.json"
        command = [
            sys.executable, __file__, "--dump", str(out), "--pairs", str(pairs), "--only", *groups,
        ]  # fmt: skip
        own = {"PYTHONPATH": str(checkout), "XDG_CACHE_HOME": folder}
        subprocess.run(command, check=True, env={**os.environ, **own})
        found: dict[str, Any] = json.loads(out.read_text(encoding="utf-8"))
    return found


def compared(old: dict[str, Any], new: dict[str, Any]) -> list[str]:
    """What differs, as lines."""
    lines = []
    for group, before in old.items():
        after = new[group]
        keys = [key for key in before if key in after]
        fly = [sum(not own[key]["broken"] for key in keys) for own in (before, after)]
        spent = [sum(own[key]["seconds"] for key in keys) for own in (before, after)]
        lines.append(
            f"{group}: {len(keys)} in both; fly {fly[0]} before, {fly[1]} after; "
            f"{spent[0]:.1f} s before, {spent[1]:.1f} s after: {spent[0] / max(spent[1], 1e-9):.1f} times faster"
        )
        both = [key for key in keys if not before[key]["broken"] and not after[key]["broken"]]
        alike = [key for key in both if before[key].get("way") == after[key].get("way")]
        ratio = {key: after[key]["value"] / max(before[key]["value"], 1e-9) for key in alike}
        worse = sorted((key for key in alike if ratio[key] > 1 + SAME), key=lambda k: -ratio[k])
        better = [key for key in alike if ratio[key] < 1 - SAME]
        lines.append(
            f"  fly in both {len(both)}, the same way {len(alike)}; of these value better {len(better)}, as good "
            f"{len(alike) - len(better) - len(worse)}, worse {len(worse)}"
        )
        for name in ("head", "hand"):
            means = [np.mean([own[key][name] for key in both] or [0]) for own in (before, after)]
            lines.append(f"  mean {name} off: {means[0]:.2f} cm before, {means[1]:.2f} after")
        lines += [
            f"  worse: {key}: {before[key]['value']:.1f} to {after[key]['value']:.1f} cm²"
            for key in worse[:12]
        ]
        lines += [
            f"  {'no longer flies' if not before[key]['broken'] else 'flies now'}: {key} "
            f"{after[key]['broken'] or before[key]['broken']}"
            for key in keys
            if bool(before[key]["broken"]) != bool(after[key]["broken"])
        ]
    return lines


def main() -> None:
    """Print the comparison."""
    parser = argparse.ArgumentParser()
    parser.add_argument("checkout", type=Path, nargs="?")
    parser.add_argument("--dump", type=Path)
    parser.add_argument("--only", nargs="*", choices=GROUPS, default=list(GROUPS))
    parser.add_argument("--pairs", type=int, default=60)
    given = parser.parse_args()
    if given.dump is not None:
        dump(given.dump, given.only, given.pairs)
        return
    if given.checkout is None:
        parser.error("give the other checkout")
    own = Path(__file__).resolve().parents[1]
    old, new = (solved_by(each, given.only, given.pairs) for each in (given.checkout, own))
    print("\n".join(compared(old, new)))


if __name__ == "__main__":
    main()
