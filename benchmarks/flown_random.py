"""Random shows as flown, against the law of motion and against sampling: python benchmarks/flown_random.py [--json].

    --shows N   shows of two or three performers (20): blocks of a small vocabulary with links between them, walks and turns.
                Of every flown course: how far the published hand is off the hand that the law of motion gives the published
                head (both splines) in the stage frame, at knots and three places between, and how far the two are from being
                a tether apart; least pull, and largest acceleration of the hand,
                at knots and half way; the head integrated forward over four beats with the hand of the law, nobody steering.
                A limit that is missed by up to a tenth is within what the check lets pass; by more, it
                counts as told where the check names that hand and course.
    --demo      the same of the clean demo shows
    --pairs N   shows of two performers, 12 beats (100): the proven distance against sampling at 20 kHz. It is broken if
                sampling is more than the tolerance (5 mm) below. Required is what makes the deepest approach a needle of 2 to
                10 ms, so that it must be found as one. For every rule from 20 cm to 1 m: of those too close as drawn by the
                margin of hand work alone, how many are clear as flown. Sampled is at 1 kHz, and at 20 kHz wherever that is within 4 cm of the least: nothing
                moves at 40 m/s, so no sample elsewhere can be lower.
    --shows-from N, --pairs-from N   go on from this number (0), where an earlier run stopped
    --rows FILE append the figures of each show and pair, as JSON lines, as they come.
    --minutes M stop after so many minutes of processor time; what was run is told, after Ctrl-C too.

Shows are drawn by `--seed` and the number of each: the same ones every time. Searches are kept (`XDG_CACHE_HOME`).
"""

import argparse
import json
import os
import sys
import time
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

os.environ.setdefault("OMP_NUM_THREADS", "1")  # before numpy is loaded
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np
from flown_routines import FOLDER, _Moved, windows
from scipy.interpolate import make_interp_spline

from sequencer.arrays import Floats
from sequencer.geometry.certified import TOLERANCE
from sequencer.motion.clearance.approach import Approaches, approaches
from sequencer.motion.clearance.nearest import closest
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.motion.trajectories.flown_path.flown_making import smoothed_tempo
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.in_flight.flown_eases import STRAINED
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.in_flight.flown_strains import strains
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.tasks.shows import stage_show
from tests.songs import even_song

DEMOS = ("night_ferry", "salt_wind", "lantern_round")
NAMES = ("Ash", "Birch", "Cedar")
STEPS = (
    ("static-spin", 1), ("extension", 2), ("two-beat-weave", 2), ("three-beat-weave", 3),
    ("antispin-flower-4", 4), ("inspin-flower-4", 4), ("butterfly", 1),
)  # pattern and beats of its cycle  # fmt: skip
TEMPI = (90.0, 100.0, 120.0)  # [beats/min]
STATURES = (1.60, 1.70, 1.80)  # [m]
ONE_MM, TWO_MM = 1e-3, 2e-3
PLACES = 4  # a knot, at which the published hand is looked at
GRAVITY = 9.80665  # [m/s²]
COARSE, FINE = 1_000.0, 20_000.0  # [Hz]
FASTEST = 40.0  # [m/s]
NEEDLE = (0.002, 0.010)  # [s]
RULES = tuple(0.2 + 0.05 * k for k in range(17))  # [m]
CHUNK = 20_000  # instants at a time


def show_text(draw: np.random.Generator, performers: int, bars: int) -> str:
    """A show of so many performers who walk or turn once, each pair of bars danced or two beats linked."""
    names = NAMES[:performers]
    statures = {name: draw.choice(STATURES) for name in names}
    spots = {
        name: (3.2 * k + draw.uniform(-0.4, 0.4), draw.uniform(3.0, 6.0), draw.integers(-2, 3) * 30)
        for k, name in enumerate(names)
    }
    moved = {
        name: (x + draw.uniform(-0.6, 0.6), y + draw.uniform(-0.6, 0.6), facing + draw.integers(-1, 2) * 30)
        for name, (x, y, facing) in spots.items()
    }  # fmt: skip
    at, rows = 3, []
    while at + 4 <= bars - 1:
        pattern, cycle = STEPS[draw.integers(len(STEPS))]
        rows.append(
            f"  - {{from: {at}.1, pattern: {pattern}, cycle: {cycle}, timing: together, beats: 14}}"
        )
        at += 4
        if at + 4 <= bars - 1:
            rows.append("  - {link: true, beats: 2}")
    walk = int(draw.integers(3, max(bars - 4, 4)))

    def formation(places: dict[str, tuple[float, float, int]]) -> str:
        return ", ".join(
            f"{name}: {{at: [{x:.2f}, {y:.2f}], facing: {int(facing)}}}"
            for name, (x, y, facing) in places.items()
        )

    cast = "".join(
        f"  - {{name: {name}, stature: {statures[name]}, prop: {{tether: 0.45}}}}\n"
        for name in names
    )
    return (
        "title: Random\ntrack: {file: song.ogg}\nvenue:\n"
        "  stage: {shape: rectangle, width: 20 m, depth: 12 m}\n"
        "  audience: [{line: [[-12, -9], [12, -9]]}]\n"
        f"cast:\n{cast}formations:\n  first: {{spots: {{{formation(spots)}}}}}\n"
        f"  second: {{spots: {{{formation(moved)}}}}}\nstaging:\n  - {{formation: first, from: 1.1}}\n"
        f"  - {{formation: second, from: {walk}.1, beats: 8}}\ntimeline:\n" + "\n".join(rows) + "\n"
    )


def drawn_show(draw: np.random.Generator, performers: int, bars: int) -> Staged:
    """The show, staged on a song of one tempo."""
    text = show_text(draw, performers, bars)
    song = even_song(4 * bars, tempo=float(draw.choice(TEMPI)))
    return staged(show_from_document(parse_document(text, "random.yaml")), song)


class _Lawful(_Moved):
    """The same hand, but as the law of motion gives it for the published head; in the stage frame."""

    def __init__(self, dancer: Dancer, side: str, hand: FlownHand, show: Staged) -> None:
        super().__init__(dancer, side, hand, show.tempo)
        seconds = np.concatenate([[0.0], np.cumsum(np.diff(self.beats) * (self.beat[1:] + self.beat[:-1]) / 2)])  # fmt: skip
        points = on_stage(dancer, self.beats, hand.head.at(self.beats))
        self.head[0] = points
        path = make_interp_spline(seconds, points, k=5)
        rate, bent = (path.derivative(order)(seconds) for order in (1, 2))
        pulled = bent + self.drag * np.linalg.norm(rate, axis=1)[:, None] * rate
        pulled[:, 2] += GRAVITY
        self.head[1] = rate
        lawful = points + self.length * pulled / np.linalg.norm(pulled, axis=1)[:, None]
        held = make_interp_spline(seconds, lawful, k=5)
        self.hand = np.stack([held.derivative(order)(seconds) for order in range(3)])


def residual(dancer: Dancer, side: str, hand: FlownHand, show: Staged) -> Floats:
    """At `PLACES` to a knot: beat, distance of the published hand from that of the law [m], and of both from a tether's length [m]."""
    first, last = hand.head.start, hand.head.end
    count = round((last - first) * 96 * PLACES)
    beats = np.linspace(first, last, count + 1)
    rate = smoothed_tempo(beats, show.tempo.beats_per_second)
    pace, change = rate.at(beats)[:, :1], rate.at(beats, 1)[:, :1]
    head, own = (on_stage(dancer, beats, each.at(beats)) for each in (hand.head, hand.hand))
    # derivatives by beats of the published head in the stage frame, by a spline through every instant
    path = make_interp_spline(beats, head, k=5)
    by_beat, bent = (path.derivative(order)(beats) for order in (1, 2))
    rates = pace * by_beat
    drag = drag_of(dancer.props[side])
    lawful = pace**2 * bent + pace * change * by_beat
    lawful = lawful + drag * np.linalg.norm(rates, axis=1)[:, None] * rates
    lawful[:, 2] += GRAVITY
    needed = head + hand.length * lawful / np.linalg.norm(lawful, axis=1)[:, None]
    apart = np.abs(np.linalg.norm(own - head, axis=1) - hand.length)
    return np.stack([beats, np.linalg.norm(own - needed, axis=1), apart], axis=1)


def on_stage(dancer: Dancer, beats: Floats, points: Floats) -> Floats:
    """Points of the body's frame on the stage: at facing 0 the performer's right is −X, and ahead is −Y."""
    stand = dancer.floor.at(beats)
    turn = stand.facing + np.pi
    cos, sin = np.cos(turn), np.sin(turn)
    x, y = points[:, 0], points[:, 1]
    out = np.stack((cos * x - sin * y, sin * x + cos * y, points[:, 2]), axis=1)
    out[:, :2] += stand.place
    return out


def of_show(number: int, seed: int) -> dict[str, Any]:
    """The figures of one random show."""
    draw = np.random.default_rng([seed, number])
    return motion_figures(drawn_show(draw, int(draw.integers(2, 4)), 14))


def of_demo(number: int, _seed: int) -> dict[str, Any]:
    """The figures of one demo show."""
    return {"show": DEMOS[number]} | motion_figures(stage_show(FOLDER / f"{DEMOS[number]}.yaml"))


def motion_figures(show: Staged) -> dict[str, Any]:
    """The figures of a show."""
    flown = flown_show(show)
    own = flown.staged
    limit = show.show.limits.hand_acceleration
    strained = limit * STRAINED
    told = {(each.who, each.side, each.course.start) for each in strains(flown)}
    out: dict[str, Any] = {
        "courses": 0,
        "within_a_tenth": 0,
        "told": 0,
        "untold": 0,
        "windows": 0,
        "over_1_mm": 0,
        "stand_ins": 0,
    }
    law_mm, least, most, forward, length = [0.0], [np.inf], [0.0], [0.0], [0.0]
    for dancer in own.dancers:
        for side, hand in dancer.trajectories.items():
            if not isinstance(hand, FlownHand):
                continue
            off = residual(dancer, side, hand, own)
            moved = _Lawful(dancer, side, hand, own)
            spans: list[tuple[float, float]] = []
            for course in hand.courses:
                if not course.flown:
                    out["stand_ins"] += 1
                    continue
                inside = (off[:, 0] > course.start + 0.1) & (off[:, 0] < course.end - 0.1)
                if not inside.any():
                    continue
                out["courses"] += 1
                law_mm.append(1000.0 * float(off[inside, 1].max()))
                length.append(1000.0 * float(off[inside, 2].max()))
                pull = hand.least_pull(course)
                push = hand.hand_acceleration(course, own.tempo.beats_per_second)
                least.append(pull)
                most.append(push)
                if pull < LEAST_PULL or push > strained:
                    known = (dancer.name, side, course.start) in told
                    out["told" if known else "untold"] += 1
                else:
                    out["within_a_tenth"] += push > limit
                spans += windows(course.start, course.end)
            strayed = moved.strays(spans) if spans else np.zeros(0)
            out["windows"] += len(strayed)
            out["over_1_mm"] += int(np.sum(strayed > ONE_MM))
            forward += strayed.tolist()
    return out | {
        "law_mm": max(law_mm), "length_mm": max(length), "least_pull": min(least), "hand_acceleration": max(most),
        "forward_mm": 1000.0 * max(forward),
    }  # fmt: skip


def of_pair(number: int, seed: int) -> dict[str, Any]:
    """Proven against sampled, of one random pair."""
    draw = np.random.default_rng([seed, 1_000_000 + number])
    show = drawn_show(draw, 2, 8)
    own = flown_show(show).staged
    low, high = show.span
    first, second = own.dancers
    seconds = np.asarray(show.tempo.seconds_from_beats(np.array([low, high])))
    at, gap = _sampled(first, second, show, *seconds)
    least = float(gap.min())
    # a requirement under which the deepest approach stays for 2 to 10 ms
    deep = int(gap.argmin())
    required = least + _rise(at, gap, deep, float(draw.uniform(*NEEDLE)))
    found = approaches(own.dancers, low, high, required=required)
    proven = float(found.distance[0])
    beat = float(show.tempo.beats_from_seconds(at[deep : deep + 1])[0])
    return {
        "proven_m": proven,
        "sampled_m": least,
        "broken": proven - least > TOLERANCE,
        "loose": bool(found.dismissed[0]) is False and least - proven > TOLERANCE,
        "needle_missed": not _covered(found, beat),
        **_told(show, own),
    }


def _sampled(
    first: Dancer, second: Dancer, show: Staged, start: float, end: float
) -> tuple[Floats, Floats]:
    """Instants [s] and distances [m]: all at 1 kHz, and those at 20 kHz where the least can be."""
    coarse = np.arange(start, end, 1.0 / COARSE)
    gap = _gaps(first, second, show, coarse)
    near = np.flatnonzero(gap < gap.min() + FASTEST / COARSE)
    steps = np.arange(-0.5, 0.5, COARSE / FINE) / COARSE
    fine = np.unique((coarse[near][:, None] + steps).ravel())
    return fine, _gaps(first, second, show, fine)


def _gaps(first: Dancer, second: Dancer, show: Staged, seconds: Floats) -> Floats:
    beats = np.asarray(show.tempo.beats_from_seconds(seconds))
    return np.concatenate(
        [closest(first, second, beats[k : k + CHUNK]).distance for k in range(0, len(beats), CHUNK)]
    )


def _rise(at: Floats, gap: Floats, deep: int, length: float) -> float:
    """How far the distance rises within half a needle's length of its least [m], the lesser of both sides."""
    around = np.abs(at - at[deep]) <= length / 2
    return max(float(min(gap[around][0], gap[around][-1]) - gap[deep]), 1e-4)


def _covered(found: Approaches, beat: float) -> bool:
    spans = found.spans
    return bool(np.any((spans.start <= beat + 1e-6) & (spans.end >= beat - 1e-6)))


def _told(show: Staged, own: Staged) -> dict[str, float]:
    """The least distance without hand work's margin, with it, and as flown [m]."""
    bare = tuple(replace(each, deviation={}) for each in show.dancers)
    plain, drawn, flown = (
        float(approaches(each, *show.span, required=max(RULES)).distance[0])
        for each in (bare, show.dancers, own.dancers)
    )
    return {"plain_m": plain, "drawn_m": drawn, "flown_m": flown}


def by_margin(rows: Sequence[dict[str, Any]]) -> dict[str, int]:
    """Pairs and rules under which margins alone make the pair too close, and those of them that are clear as flown."""
    alone = [
        (row["flown_m"], rule)
        for row in rows
        for rule in RULES
        if row["drawn_m"] < rule <= row["plain_m"]
    ]
    return {
        "by_margin_alone": len(alone),
        "clear_as_flown": sum(flown >= rule for flown, rule in alone),
    }


def _run(
    kind: Any, numbers: range, seed: int, minutes: float, rows: Path | None
) -> Iterator[dict[str, Any]]:
    began = time.process_time()
    for number in numbers:
        if time.process_time() - began > 60.0 * minutes:
            return
        try:
            row = kind(number, seed)
        except KeyboardInterrupt:  # what was run is told
            return
        if rows is not None:
            with rows.open("a", encoding="utf-8") as file:
                file.write(json.dumps({"kind": kind.__name__, "number": number} | row) + "\n")
        yield row
        if number % 10 == 9:
            print(f"{kind.__name__}: {number + 1}", file=sys.stderr, flush=True)


def figures(
    shows: range, pairs: range, seed: int, minutes: float, file: Path | None = None
) -> dict[str, Any]:
    """All figures, with how many were run."""
    found: dict[str, Any] = {}
    if shows:
        rows = list(_run(of_show, shows, seed, minutes, file))
        total = {key: sum(row[key] for row in rows) for key in ("courses", "within_a_tenth", "told", "untold", "windows", "over_1_mm", "stand_ins")}  # fmt: skip
        found["shows"] = {
            "first": shows.start, "run": len(rows), "asked": len(shows), **total,
            "largest_law_mm": max(row["law_mm"] for row in rows),
            "largest_length_mm": max(row["length_mm"] for row in rows),
            "over_2_mm": sum(row["law_mm"] > 1000 * TWO_MM for row in rows),
            "least_pull": min(row["least_pull"] for row in rows),
            "hand_acceleration": max(row["hand_acceleration"] for row in rows),
            "largest_forward_mm": max(row["forward_mm"] for row in rows),
        }  # fmt: skip
    if pairs:
        rows = list(_run(of_pair, pairs, seed, minutes, file))
        found["pairs"] = {
            "first": pairs.start, "run": len(rows), "asked": len(pairs),
            **{key: sum(row[key] for row in rows) for key in ("broken", "loose", "needle_missed")},
            **by_margin(rows),
            "largest_error_mm": 1000 * max(row["proven_m"] - row["sampled_m"] for row in rows),
        }  # fmt: skip
    return found


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--shows", type=int, default=20)
    parser.add_argument("--demo", action="store_true")
    parser.add_argument("--pairs", type=int, default=100)
    parser.add_argument("--shows-from", type=int, default=0, help="go on from this number")
    parser.add_argument("--pairs-from", type=int, default=0, help="go on from this number")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=10.0)
    parser.add_argument("--rows", type=Path)
    parser.add_argument("--json", action="store_true")
    given = parser.parse_args()
    began = time.process_time()
    demo = list(_run(of_demo, range(len(DEMOS) * given.demo), 0, given.minutes, given.rows))
    shows, pairs = range(given.shows_from, given.shows), range(given.pairs_from, given.pairs)
    found = figures(shows, pairs, given.seed, given.minutes, given.rows)
    found |= {row.pop("show"): row for row in demo}
    found["processor_s"] = round(time.process_time() - began, 1)
    if given.json:
        print(json.dumps(found))
    else:
        for part, own in found.items():
            print(part, own)


if __name__ == "__main__":
    main()
