"""Ways of links against a show's limits per second: python benchmarks/link_ways.py [--routines 60] [--json].

The shows of this repository, and random solo routines with a fixed seed: patterns of the built-in vocabulary, links of 1 to 4
beats, rests, holds and holes, at 80 to 140 beats a minute, for bodies of 1.5 to 1.95 m, with poi, clubs and staffs. Counted are
the links (written, implied and between blocks that cannot be blended) whose proven bounds break a limit of hand speed, hand
acceleration or turns; how many of them no finding tells; and on how many the hand stands for
long and then darts (`link_search.darting`).
"""

import argparse
import json
import random
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path
from typing import Any

import numpy as np
import pytest

ROOT = Path(__file__).resolve().parents[1]
DARTS = 2.0  # times as fast in its quickest quarter as in its middle three: the hand stands and then darts
TELLING = {
    "does-not-join",
    "link-too-hard",
    "needs-a-link",
    "needs-a-shift",
    "too-fast-to-dance",
    "wrong-way-round",
}  # codes that tell of a link, or of a border at which a bridge stands in for one
PROPS = ("poi", "poi", "{kind: poi, tether: 0.45 m}", "club", "null, right: staff")


def routine(seed: int) -> tuple[str, Any]:
    """A random solo as the text of a show file, and its song."""
    from sequencer.motion.patterns.library import patterns
    from tests.songs import even_song

    draw = random.Random(seed)  # noqa: S311  # no secret
    prop = draw.choice(PROPS)
    kind = "staff" if "staff" in prop else "club" if prop == "club" else "poi"
    names = sorted(name for name, own in patterns().items() if not own.props or kind in own.props)
    tempo = draw.choice([80, 96, 108, 115, 128, 140])
    lines = []
    for _ in range(12):
        shift = draw.choice(["", "", f", shift: {draw.choice([0.5, 1, 1.5, 2])}"])
        hands = "" if "right: staff" in prop else f", timing: {draw.choice(['together', 'split'])}"
        lines.append(
            f"{{pattern: {draw.choice(names)}{hands}{shift}, beats: {draw.choice([6, 8, 12])}}}"
        )
        between = draw.random()
        if between < 0.6:
            lines.append(f"{{link: true, beats: {draw.choice([1, 2, 2, 3, 4])}}}")
        elif between < 0.8:
            lines.append(f"{{rest: {draw.choice([4, 6, 8])}}}")
        elif between < 0.9:
            lines.append(f"{{hold: {draw.choice([3, 4])}}}")
    lines[0] = "{from: 3.1, " + lines[0][1:]
    text = (
        "title: random\ntrack: {file: song.ogg}\nvenue: {setting: outdoors, ceiling: open, "
        "stage: {shape: rectangle, width: 9 m, depth: 9 m}, audience: [{line: [[-9, -6], [9, -6]]}]}\n"
        f"cast: [{{name: Ash, stature: {draw.uniform(1.5, 1.95):.2f} m, prop: {prop}}}]\n"
        "timeline:\n" + "".join(f"  - {line}\n" for line in lines)
    )
    return text, even_song(240, tempo=float(tempo))


def links_of(show: Any) -> list[dict[str, Any]]:
    """Every link of a show, with its figures against the limits, and whether a finding tells one that breaks them."""
    from sequencer.checks.dance import feasible, joins
    from sequencer.motion.trajectories.one_link.link_search import darting

    limits = show.show.limits
    told = [
        finding
        for check in (joins.CHECK, feasible.CHECK)
        for finding in check.outcome(show).findings
        if finding.code in TELLING
    ]
    found = []
    for dancer in show.dancers:
        for side, way in dancer.trajectories.items():
            spans = [(s.start, s.end, s.law, "link") for s in way.spans if s.kind == "link"]
            spans += [
                (b.boundary - b.half, b.boundary + b.half, b.bridge, "bridge")
                for b in way.blends
                if b.bridge is not None
            ]
            for start, end, law, kind in spans:
                shares = [0.0, 0.0, 0.0]
                for low, high, bounds in law.parts:
                    pace = show.tempo.fastest(start + low, start + high)
                    own = (
                        bounds.hand_speed * pace / limits.hand_speed,
                        bounds.hand_acceleration * pace**2 / limits.hand_acceleration,
                        bounds.turn_rate * pace / (2 * np.pi) / limits.turns,
                    )
                    shares = [max(pair) for pair in zip(shares, own, strict=True)]
                low, high = show.seconds(start), show.seconds(end)
                found.append(
                    {
                        "who": dancer.name, "side": side, "kind": kind, "start": start, "beats": end - start,
                        "shares": shares, "darts": darting(law),
                        "told": any(
                            f.who == (dancer.name,) and low - 1e-3 <= (f.start or 0) <= high + 1e-3
                            for f in told
                        ),
                    }
                )  # fmt: skip
    return found


def figures_of(links: list[dict[str, Any]]) -> dict[str, Any]:
    """Counts over many links."""
    broken = [each for each in links if max(each["shares"]) > 1.001]
    names = ("hand_speed", "hand_acceleration", "turns")
    return {
        "links": len(links),
        "over": len(broken),
        "untold": sum(not each["told"] for each in broken),
        "over_of": dict(Counter(n for e in broken for n, s in zip(names, e["shares"], strict=True) if s > 1.001)),
        "worst": max((max(each["shares"]) for each in links), default=0.0),
        "uneven": sum(each["darts"] > DARTS for each in links),
        "most_uneven": max((each["darts"] for each in links), default=0.0),
    }  # fmt: skip


def main() -> None:
    """Print the figures of the shows and of the random routines."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--routines", type=int, default=60)
    parser.add_argument("--first", type=int, default=0, help="seed of the first")
    parser.add_argument("--json", action="store_true")
    parser.add_argument("--each", action="store_true", help="list the links that break a limit")
    given = parser.parse_args()
    sys.path.insert(0, str(ROOT))
    with tempfile.TemporaryDirectory() as cache, pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", cache)
        patch.setenv("LOCALAPPDATA", cache)
        import sequencer
        from sequencer.errors import InputError
        from sequencer.show.reading import show_from_document
        from sequencer.show.text.document import parse_document
        from sequencer.staging.timeline import staged

        begun = time.process_time()
        shows = [
            link
            for path in sorted((ROOT / "shows").glob("*.yaml"))
            for link in links_of(sequencer.stage(path))
        ]
        drawn, refused = [], 0
        for seed in range(given.first, given.first + given.routines):
            text, song = routine(seed)
            try:
                own = links_of(staged(show_from_document(parse_document(text, "r.yaml")), song))
            except InputError as error:
                refused += 1
                if given.each:
                    print(seed, error, file=sys.stderr)
                continue
            drawn += own
            if given.each:
                for each in own:
                    if max(each["shares"]) > 1.001 or each["darts"] > DARTS:
                        print(seed, each)
        figures = {
            "shows": figures_of(shows),
            "routines": {"refused": refused, **figures_of(drawn)},
            "processor_s": round(time.process_time() - begun, 1),
        }
    if given.json:
        print(json.dumps(figures))
        return
    for name in ("shows", "routines"):
        print(name, figures[name])


if __name__ == "__main__":
    main()
