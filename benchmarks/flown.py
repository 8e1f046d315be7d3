"""How well patterns, links and shows fly: python benchmarks/flown.py [--steps 1 2 3] [--json].

Step 1 [--patterns NAME,NAME] [--tempi 80,100,125]: three tables, of what a passive prop makes of a drawn pattern
(sequencer/motion/flown):

    bare    a few patterns at 100 beats a minute, hand on 30 cm, tether of 45 cm, hand acceleration up to 120 m/s², without a
            body that could be in the way or out of reach: how far hand and head leave the drawing, the least pull, the
            hand's acceleration, how unlike lobes are that are drawn alike, and the residual of the optimum
    fitted  every pattern of the library as `sequencer pattern` fits it to a body of 1.70 m, both hands, at each tempo: how
            many fly, how many of those read clean (head at most 15 cm off, root mean square), of how many the search has not
            settled (a further step promises more than 1e-5 of the value), and the time of the search
    forward of each hand that flies, the head integrated forward from its start over four beats with nothing but the hand's
            motion given (scipy, DOP853): the largest distance from the path that was found. Where that is over 1 mm, also
            beat by beat, each from the path: nobody steers, so that what is rounded grows, in isolations and with a bend in
            each beat more than a hundredfold in a beat

Step 2 [--pairs N, or all], links as flown (flown_links), at 100 beats a minute, right hand, patterns as `sequencer pattern` fits
them, upright: of a seeded sample of ordered pairs, from the end of the one's period to the start of the other's, how many
have a link of at most 1, 2, 3 and 4 beats that holds every limit, split by whether both patterns fly; what the longest
breaks of those that have none; and the same from and to rest, of every pattern.

Step 3 [--shows NAME,NAME], shows as flown (flown_show): blocks and passages that fly; of every flown course the head
integrated forward in the stage frame, four beats at a time, with nothing but the published hand given, while its performer
walks and turns and at the smoothed tempo; least pull and largest acceleration of the hand, and where a limit is missed;
proven minima of every pair's distance against sampling at 2 kHz (a minimum is broken if sampling is more than 5 mm
below); pairs that are too close as drawn by margin alone, and those of them that are clear as flown.

Times are processor time over that of a calibrating loop of 20 million additions in the same interpreter (speed.py), of the
search alone, with nothing kept; fitting to the body and the integration are not in it.
"""

import argparse
import json
import os
import statistics
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NamedTuple

os.environ.setdefault("OMP_NUM_THREADS", "1")  # before numpy is loaded
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np
from flown_pairs import link_figures, links_text
from flown_routines import SHOWS, routines_text, show_figures
from scipy.integrate import solve_ivp
from speed import loop

from sequencer.arrays import Floats
from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.flown.body_space import NOWHERE, BodySpace, Room
from sequencer.motion.flown.contact import Contact
from sequencer.motion.flown.flown_motion import FlownLimits, Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.flown.symmetry import repeat_of
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.props.prop import Prop
from sequencer.outputs.patterns.one_pattern import one_pattern

TABLE = (
    "antispin-flower-4", "antispin-flower-3", "iso-bend-4", "pro-bend-3", "pro-bend-4", "pro-bend-5",
    "anti-bend-3", "anti-bend-4", "anti-bend-5", "inspin-flower-4", "inspin-flower-1", "extension",
)  # fmt: skip
TABLE_TEMPO, TABLE_RADIUS, TABLE_TETHER, TABLE_ACCELERATION = 100.0, "0.30 m", 0.45, 120.0
TEMPI = (80.0, 100.0, 125.0)  # [beats a minute]
CLEAN = 0.15  # [m] of the head off its drawing, root mean square
SETTLED = 1e-5  # [1] residual of a search that has converged
BEATS = 4.0  # of integration
GRAVITY = np.array([0.0, 0.0, 9.80665])  # [m/s²]
STILL = 1e-8  # [m²/s²] that smooths the speed at rest
_TOLERANCE = 1e-10
_SAMPLES = 480  # of a lobe


class Nowhere(BodySpace):
    """Room without a body, a floor, or an end of the arm."""

    def touching(self, hand: Floats, head: Floats) -> Contact:  # noqa: ARG002
        """Nothing."""
        return Contact(np.zeros(0, dtype=np.int64), *np.zeros((2, 0)), np.zeros((0, 3)))

    def room(self) -> Room:
        """Nothing."""
        return NOWHERE

    def gaps(self, hand: Floats, head: Floats) -> Floats:  # noqa: ARG002
        """Without end."""
        return np.full(len(hand), np.inf)

    def spare_reach(self, hand: Floats) -> Floats:
        """Without end."""
        return np.full(len(hand), np.inf)


@dataclass(frozen=True, kw_only=True)
class Bare(Flying):
    """A hand and a prop, and nothing else."""

    def space(self, clearance: float) -> BodySpace:  # noqa: ARG002
        """Room without a body."""
        return Nowhere(body=self.body, posture=self.posture, side=self.side, prop=self.prop)


class HandState(NamedTuple):
    """A hand at one instant [m, m/s, m/s²]."""

    place: Floats
    velocity: Floats
    acceleration: Floats


def hand_at(period: FlownPeriod, seconds: float) -> HandState:
    """The hand that the law of motion gives, with the drag's second rate, written out once more."""
    beat, prop = period.flying.beat, period.flying.prop
    y, v, a, j, s = (period.head.at(np.array(seconds / beat), k) / beat**k for k in range(5))
    k = 0.5 * 1.2 * 0.47 * np.pi * prop.wick_radius**2 / prop.mass
    w = np.sqrt(v @ v + STILL)
    w1 = v @ a / w
    w2 = (a @ a + v @ j) / w - w1**2 / w
    f = a + GRAVITY + k * w * v
    f1 = j + k * (w1 * v + w * a)
    f2 = s + k * (w2 * v + 2.0 * w1 * a + w * j)
    size = np.sqrt(f @ f)
    u = f / size
    u1 = (f1 - (u @ f1) * u) / size
    size2 = u1 @ f1 + u @ f2
    u2 = (f2 - size2 * u - 2.0 * (u @ f1) * u1) / size
    return HandState(*(x + prop.length * y for x, y in ((y, u), (v, u1), (a, u2))))


def forward_error(
    period: FlownPeriod, *, first: float = 0.0, beats: float = BEATS, tolerance: float = _TOLERANCE
) -> float:
    """Largest distance of a head that is integrated forward, from a first beat on, from the path that was found [m].

    Notes
    -----
    A mass on a massless line: y'' = T·u − g − k|y'|y' with u from head to hand; that the line keeps its length gives
    T = u·(h'' + g + k|y'|y') + |h' − y'|²/r.
    """
    beat, prop = period.flying.beat, period.flying.prop
    k = 0.5 * 1.2 * 0.47 * np.pi * prop.wick_radius**2 / prop.mass

    def rates(seconds: float, state: Floats) -> Floats:
        hand, v = hand_at(period, seconds), state[3:]
        u = (hand.place - state[:3]) / prop.length
        against = GRAVITY + k * np.sqrt(v @ v + STILL) * v
        apart = hand.velocity - v
        pull = u @ (hand.acceleration + against) + apart @ apart / prop.length
        return np.concatenate([v, pull * u - against])

    start = [period.head.at(np.array(first), order) / beat**order for order in (0, 1)]
    looks = beat * np.linspace(first, first + beats, 65)
    found = solve_ivp(
        rates, (looks[0], looks[-1]), np.concatenate(start), method="DOP853", t_eval=looks,
        rtol=tolerance, atol=tolerance, max_step=period.head.step * beat,
    )  # fmt: skip
    off = np.linalg.norm(found.y[:3].T - period.head.at(looks / beat), axis=1)
    return float(off.max())


def lobes_apart(period: FlownPeriod) -> float | None:
    """Largest distance of heads in lobes that are drawn alike, turned back onto the first [m]; None if there are none."""
    repeat = repeat_of(period.law, period.flying.prop.length)
    if repeat.parts == 1:
        return None
    part, centre = period.law.period / repeat.parts, repeat.centre + period.moved
    beats = np.arange(_SAMPLES) * (part / _SAMPLES)
    first = period.head.at(beats) - centre
    back = [
        (period.head.at(beats + n * part) - centre) @ np.linalg.matrix_power(repeat.turn, n)
        for n in range(1, repeat.parts)
    ]
    return float(max(np.linalg.norm(each - first, axis=1).max() for each in back))


def bare_row(name: str) -> dict[str, Any]:
    """One pattern without a body."""
    body = Body(stature=1.75)
    given = {"hand_radius": TABLE_RADIUS}
    law = law_for(name, given, side="right", body=body, tether=TABLE_TETHER)
    flying = Bare(
        prop=Prop(length=TABLE_TETHER, mass=0.2, wick_radius=0.05),
        body=body,
        side="right",
        tempo=TABLE_TEMPO,
        limits=FlownLimits(hand_speed=np.inf, hand_acceleration=TABLE_ACCELERATION),
    )
    before = time.process_time()
    period = flown_period(law, flying)
    spent = time.process_time() - before
    apart = lobes_apart(period)
    return {
        "pattern": name,
        "head_cm": [round(100 * x, 1) for x in period.head_off],
        "hand_cm": [round(100 * x, 1) for x in period.hand_off],
        "least_pull": round(period.least_pull, 2),
        "hand_acceleration": round(period.hand_acceleration, 1),
        "alike": period.alike,
        "lobes_apart_cm": None if apart is None else round(100 * apart, 2),
        "residual": float(f"{period.residual:.1e}"),
        "broken": list(period.broken),
        "loops": spent,
    }


def fitted_row(name: str, tempo: float) -> dict[str, Any] | None:
    """One pattern as it is fitted, both hands, and integrated forward; None if it does not repeat."""
    one = one_pattern(name, tempo=tempo)
    before = time.process_time()
    flown = one.flown
    spent = time.process_time() - before
    if not flown:
        return None
    flies = {side: not period.broken for side, period in flown.items()}
    # hands that do the same are images of each other
    looked = [side for side in flown if flies[side] and (side == SIDES[-1] or not one.alike)]
    errors = {side: 1000 * forward_error(flown[side]) for side in looked}
    by_beat = [
        1000 * forward_error(flown[side], first=float(first), beats=1.0)
        for side, error in errors.items()
        for first in range(int(BEATS))
        if error > 1.0
    ]
    return {
        "pattern": name,
        "tempo": tempo,
        "hands": len(flown),
        "flies": all(flies.values()),
        "broken": sorted({limit for period in flown.values() for limit in period.broken}),
        "head_cm": round(100 * max(period.head_off[0] for period in flown.values()), 1),
        "clean": all(period.head_off[0] <= CLEAN for period in flown.values()),
        "residual": float(f"{max(period.residual for period in flown.values()):.1e}"),
        "forward_mm": max(errors.values(), default=None),
        "forward_hands": len(errors),
        "over_1_mm": sum(error > 1.0 for error in errors.values()),
        "by_beat_mm": max(by_beat, default=None),
        "loops": spent,
    }


def figures(table: list[str], names: list[str], tempi: tuple[float, ...]) -> dict[str, Any]:
    """All figures, with times as multiples of the loop."""
    loops = [loop() for _ in range(2)]
    bare = [bare_row(name) for name in table]
    found = [fitted_row(name, tempo) for tempo in tempi for name in names]
    rows = [row for row in found if row]
    one = statistics.median([*loops, *(loop() for _ in range(2))])
    for row in (*bare, *rows):
        row["loops"] = round(row["loops"] / one, 3)
    return {
        "bare": bare,
        "fitted": {f"{tempo:g}": _summary(rows, tempo) for tempo in tempi},
        "rows": rows,
        "loop_s": round(one, 3),
    }


def _summary(rows: list[dict[str, Any]], tempo: float) -> dict[str, Any]:
    own = [row for row in rows if row["tempo"] == tempo]
    times = [row["loops"] for row in own]
    flies = [row for row in own if row["flies"]]
    return {
        "patterns": len(own),
        "fly": len(flies),
        "clean": sum(row["clean"] for row in flies),
        "unsettled": sum(row["residual"] > SETTLED for row in own),
        "broken": dict(sorted(Counter(limit for row in own for limit in row["broken"]).items())),
        "loops": round(sum(times), 2),
        "loops_median": round(statistics.median(times), 3) if times else None,
        "loops_longest": max(times, default=None),
        "forward_hands": sum(row["forward_hands"] for row in own),
        "over_1_mm": sum(row["over_1_mm"] for row in own),
        "forward_mm": _largest(row["forward_mm"] for row in own),
        "by_beat_mm": _largest(row["by_beat_mm"] for row in own),
    }


def _largest(values: Iterable[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return float(f"{max(known):.2g}") if known else None


def table_of(found: dict[str, Any]) -> str:
    """The figures as text."""
    lines = [
        "bare               head cm      hand cm      pull  hand m/s²  alike  lobes cm  residual  loops  broken",
        *(
            f"{row['pattern']:18} {_pair(row['head_cm'])}  {_pair(row['hand_cm'])}  {row['least_pull']:4.2f}"
            f"  {row['hand_acceleration']:9.1f}  {row['alike']:5}"
            f"  {'-' if row['lobes_apart_cm'] is None else row['lobes_apart_cm']:>8}"
            f"  {row['residual']:8.1e}  {row['loops']:5.2f}  {' '.join(row['broken'])}"
            for row in found["bare"]
        ),
        "",
        "fitted  patterns  fly  clean  unsettled  loops: all  median  longest  broken",
        *(
            f"{tempo:>6}  {row['patterns']:8}  {row['fly']:3}  {row['clean']:5}  {row['unsettled']:9}  {row['loops']:10}"
            f"  {row['loops_median'] or 0:6}  {row['loops_longest'] or 0:7}  {row['broken']}"
            for tempo, row in found["fitted"].items()
        ),
        "",
        "forward  hands  largest mm  over 1 mm  those by beat mm",
        *(
            f"{tempo:>7}  {row['forward_hands']:5}  {row['forward_mm'] or 0:10}  {row['over_1_mm']:9}"
            f"  {row['by_beat_mm'] or '-':>16}"
            for tempo, row in found["fitted"].items()
        ),
        "",
        *(
            f"{row['tempo']:g} {row['pattern']}: {', '.join(row['broken'])}; head {row['head_cm']} cm off"
            for row in found["rows"]
            if not row["flies"]
        ),
        *(
            f"{row['tempo']:g} {row['pattern']}: forward {row['forward_mm']:.2g} mm, by beat {row['by_beat_mm']:.1g} mm"
            for row in found["rows"]
            if row["by_beat_mm"] is not None
        ),
    ]
    return "\n".join(lines)


def _pair(values: list[float]) -> str:
    return f"{values[0]:5.1f}/{values[1]:5.1f}"


def _names(text: str) -> list[str]:
    names = [part.strip() for part in text.split(",") if part.strip()]
    unknown = [name for name in names if name not in patterns()]
    if unknown:
        raise argparse.ArgumentTypeError(f"not in the vocabulary: {', '.join(unknown)}")
    return names


def in_loops(found: Any, one: float) -> Any:
    """The same figures, times as multiples of the loop."""
    if isinstance(found, list):
        return [in_loops(each, one) for each in found]
    if not isinstance(found, dict):
        return found
    return {
        key: _divided(own, one) if key.startswith("loops") else in_loops(own, one)
        for key, own in found.items()
    }


def _divided(times: Any, one: float) -> Any:
    if isinstance(times, dict):
        return {key: round(own / one, 3) for key, own in times.items()}
    return round(times / one, 3)


def main() -> None:
    """Print the figures as one JSON object, or as tables."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    parser.add_argument("--steps", type=int, nargs="+", choices=(1, 2, 3), default=[1])
    parser.add_argument("--table", type=_names, default=list(TABLE), help="patterns without a body")
    parser.add_argument("--patterns", type=_names, help="fitted patterns; default: all")
    parser.add_argument(
        "--tempi", type=lambda text: tuple(float(each) for each in text.split(",")), default=TEMPI
    )
    parser.add_argument(
        "--pairs", type=lambda text: None if text == "all" else int(text), default=200,
        help="ordered pairs that are linked, or all",
    )  # fmt: skip
    parser.add_argument("--shows", type=lambda text: text.split(","), default=list(SHOWS))
    given = parser.parse_args()
    names = sorted(patterns()) if given.patterns is None else given.patterns
    found: dict[str, Any] = {}
    lines: list[str] = []
    with tempfile.TemporaryDirectory() as base:
        os.environ["XDG_CACHE_HOME"] = os.environ["LOCALAPPDATA"] = base
        if 1 in given.steps:
            found |= figures(given.table, names, given.tempi)
            lines += [table_of(found), ""]
        one = statistics.median(loop() for _ in range(3))
        if 2 in given.steps:
            found["links"] = in_loops(link_figures(given.pairs), one)
            lines += [*links_text(found["links"]), ""]
        if 3 in given.steps:
            found["shows"] = in_loops([show_figures(name) for name in given.shows], one)
            lines += routines_text(found["shows"])
    print(json.dumps(found) if given.json else "\n".join(lines).rstrip())


if __name__ == "__main__":
    main()
