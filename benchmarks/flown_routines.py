"""Whole shows as they can be flown: the third step of flown.py."""

import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
from scipy.integrate import cumulative_trapezoid
from scipy.interpolate import make_interp_spline

from sequencer.arrays import Floats, Ints
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.geometry.certified import TOLERANCE
from sequencer.motion.clearance.approach import Approaches, approaches
from sequencer.motion.clearance.nearest import closest
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.performers.body_parts import FIRST_POINT
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.trajectories.flown_path.flown_courses import Journey, Passage, Stay
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.staging.in_flight.flown_show import FlownShow, flown_hands, flown_show
from sequencer.staging.staged import Staged
from sequencer.tasks.shows import stage_show
from sequencer.timing.tempo import TempoMap

SHOWS = ("night_ferry", "lantern_round", "wrong_turns")
FOLDER = Path(__file__).resolve().parents[1] / "shows"
BEATS = 4.0  # of integration
GRAVITY = np.array([0.0, 0.0, 9.80665])  # [m/s²]
STILL = 1e-8  # [m²/s²] that smooths the speed at rest
RATE = 2000.0  # [Hz] at which distances are sampled
_A_BEAT = 960  # samples of tempo and hand: with 480 the integration itself is up to 3 mm off in four beats
_MOST = 20_000  # instants at a time


def show_figures(name: str) -> dict[str, Any]:
    """All figures of one show."""
    show = stage_show(FOLDER / f"{name}.yaml")
    times, clock = {}, time.process_time()
    flown_hands(show)
    times["search"], clock = time.process_time() - clock, time.process_time()
    flown = flown_show(show)
    times["show"] = time.process_time() - clock
    return {
        "show": name,
        **_flying(flown),
        **_motion_figures(flown),
        **_distance_figures(show, flown, times),
        "loops": times,
    }


def _flying(flown: FlownShow) -> dict[str, Any]:
    """How many blocks and passages fly, and which limits the others break."""
    parts: dict[str, Journey] = {
        "blocks": [
            each
            for way in flown.hands.values()
            for each in way
            if isinstance(each, Stay) and each.span.kind == "block"
        ],
        "passages": [
            each for way in flown.hands.values() for each in way if isinstance(each, Passage)
        ],
    }
    return {
        key: {
            "all": len(some),
            "fly": sum(each.flown for each in some),
            "broken": dict(
                sorted(Counter(limit for each in some for limit in _broken(each)).items())
            ),
        }
        for key, some in parts.items()
    }


def _broken(part: Stay | Passage) -> tuple[str, ...]:
    if part.flown:
        return ()
    if isinstance(part, Stay):
        return part.period.broken if part.period is not None else ("no period",)
    return part.link.broken if part.link is not None else ("beside a block that does not fly",)


def _motion_figures(flown: FlownShow) -> dict[str, Any]:
    """What is integrated forward, pull and acceleration over all flown courses."""
    residuals, pulls, pushes, missed, strayed = [], [], [], [], []
    limits = flown.staged.show.limits
    for dancer in flown.staged.dancers:
        for side, hand in dancer.trajectories.items():
            if not isinstance(hand, FlownHand):
                continue
            moved = _Moved(dancer, side, hand, flown.staged.tempo)
            spans: list[tuple[float, float]] = []
            for course in hand.courses:
                if not course.flown:
                    continue
                spans += windows(course.start, course.end)
                pull, (push, at) = hand.least_pull(course), moved.push(course.start, course.end)
                pulls.append(pull)
                pushes.append(push)
                where = f"{dancer.name} {side}, beats {course.start:g} to {course.end:g}"
                if pull < LEAST_PULL:
                    missed.append(f"{where}: pull {pull:.2f}")
                if push > limits.hand_acceleration:
                    missed.append(f"{where}: hand {push:.0f} m/s² at beat {at:.2f}")
            own = moved.strays(spans).tolist() if spans else []
            residuals += own
            strayed += [
                f"{dancer.name} {side}, beats {low:g} to {high:g}: head {1000 * size:.2g} mm off"
                for (low, high), size in zip(spans, own, strict=True)
                if size > 1e-3
            ]
    return {
        "courses": len(pulls),
        "windows": len(residuals),
        "forward_mm": 1000 * max(residuals, default=0.0),
        "over_1_mm": len(strayed),
        "least_pull": min(pulls, default=float("inf")),
        "hand_acceleration": max(pushes, default=0.0),
        "missed": [*missed, *strayed],
    }


class _Moved:
    """One hand of a flown show in the stage frame, at the smoothed tempo."""

    def __init__(self, dancer: Dancer, side: str, hand: FlownHand, tempo: TempoMap) -> None:
        prop = dancer.props[side]
        self.length, self.drag = prop.length, drag_of(prop)
        count = round((hand.head.end - hand.head.start) * _A_BEAT)
        self.beats = np.linspace(hand.head.start, hand.head.end, count + 1)
        self.beat = seconds_a_beat(tempo, self.beats)
        seconds = cumulative_trapezoid(self.beat, self.beats, initial=0.0)
        points = dancer.stage_points(self.beats)[0]
        first = FIRST_POINT[side]
        held, path = (make_interp_spline(seconds, points[first + k], k=5) for k in (1, 2))
        self.hand = np.stack([held.derivative(order)(seconds) for order in range(3)])
        self.head = np.stack([path.derivative(order)(seconds) for order in range(2)])

    def push(self, start: float, end: float) -> tuple[float, float]:
        """Largest acceleration of the hand [m/s²], and its beat."""
        within = np.flatnonzero((self.beats >= start - 1e-9) & (self.beats <= end + 1e-9))
        size = np.linalg.norm(self.hand[2, within], axis=1)
        k = int(size.argmax())
        return float(size[k]), float(self.beats[within[k]])

    def strays(self, spans: Sequence[tuple[float, float]]) -> Floats:
        """Largest distance of the head from its path [m] over each span of at most four beats, integrated from its start.

        The classical Runge–Kutta method, all spans at once, in steps of two samples.
        """
        first = np.array([np.searchsorted(self.beats, low - 1e-9) for low, _ in spans])
        last = np.array([np.searchsorted(self.beats, high + 1e-9) - 1 for _, high in spans])
        step = 2.0 * (self.beats[1] - self.beats[0])
        place, velocity = self.head[:, first]
        worst = np.zeros(len(spans))
        for k in range(0, int((last - first).max()) - 1, 2):
            low, middle, high = (np.minimum(first + k + more, last) for more in range(3))
            v1, a1 = self._rates(low, place, velocity)
            v2, a2 = self._rates(middle, place + step / 2 * v1, velocity + step / 2 * a1)
            v3, a3 = self._rates(middle, place + step / 2 * v2, velocity + step / 2 * a2)
            v4, a4 = self._rates(high, place + step * v3, velocity + step * a3)
            place = place + step / 6 * (v1 + 2 * v2 + 2 * v3 + v4)
            velocity = velocity + step / 6 * (a1 + 2 * a2 + 2 * a3 + a4)
            off = np.linalg.norm(place - self.head[0, high], axis=1)
            going = first + k + 2 <= last
            worst = np.where(going, np.maximum(worst, off), worst)
            place = np.where(going[:, None], place, self.head[0, high])
            velocity = np.where(going[:, None], velocity, self.head[1, high])
        return worst

    def _rates(self, at: Ints, place: Floats, velocity: Floats) -> tuple[Floats, Floats]:
        """Rates per beat: y'' = T·u − g − k|y'|y', with T from that the line keeps its length."""
        hand, rate, acceleration = self.hand[:, at]
        u = (hand - place) / self.length
        speed = np.sqrt(np.sum(velocity**2, axis=1, keepdims=True) + STILL)
        against = GRAVITY + self.drag * speed * velocity
        apart = rate - velocity
        pull = np.sum(u * (acceleration + against), axis=1, keepdims=True)
        pull = pull + np.sum(apart**2, axis=1, keepdims=True) / self.length
        beat = self.beat[at, None]
        return beat * velocity, beat * (pull * u - against)


def windows(start: float, end: float) -> list[tuple[float, float]]:
    """Spans of at most four beats that cover a course."""
    lows = np.arange(start, end - 1e-6, BEATS).tolist()
    return [(low, min(low + BEATS, end)) for low in lows]


def seconds_a_beat(tempo: TempoMap, beats: Floats) -> Floats:
    """Seconds of a beat at the smoothed tempo: a quintic through the tempo in the middle of each beat.

    A song's beats as heard are some hundredths of a second early or late; a hand that obeyed each would be jerked.
    """
    middles = np.arange(np.floor(beats[0]) - 1.0, np.ceil(beats[-1]) + 1.5) + 0.5
    smooth = make_interp_spline(middles, np.asarray(tempo.beats_per_second(middles)), k=5)
    return np.asarray(1.0 / smooth(beats))


def _distance_figures(show: Staged, flown: FlownShow, times: dict[str, float]) -> dict[str, Any]:
    """Distances of every pair: as drawn, as drawn without margins, and as flown, the last against sampling."""
    required, span = required_distances(show).performers, show.span
    bare = tuple(replace(dancer, deviation={}) for dancer in show.dancers)
    if len(show.dancers) < 2:
        return {
            "pairs": 0,
            "sampled_pairs": 0,
            "broken_minima": 0,
            "too_close": {},
            "largest_error_mm": 0.0,
        }
    clock = time.process_time()
    drawn = approaches(show.dancers, *span, required=required)
    times["distances drawn"], clock = time.process_time() - clock, time.process_time()
    own = approaches(flown.staged.dancers, *span, required=required)
    times["distances flown"] = time.process_time() - clock
    plain = approaches(bare, *span, required=required)
    near = {
        key: _near(each, required)
        for key, each in (("drawn", drawn), ("bare", plain), ("flown", own))
    }
    errors = list(_sampled(flown.staged, own))
    return {
        "pairs": len(own.first),
        "sampled_pairs": len(errors),
        "broken_minima": sum(below > TOLERANCE for below, _ in errors),
        "largest_error_mm": 1000 * max((max(pair) for pair in errors), default=0.0),
        "required": required,
        "too_close": {
            "drawn": len(near["drawn"]),
            "drawn_by_margin_alone": len(near["drawn"] - near["bare"]),
            "of_those_clear_as_flown": len(near["drawn"] - near["bare"] - near["flown"]),
            "flown": len(near["flown"]),
            "flown_but_not_drawn": len(near["flown"] - near["drawn"]),
        },
    }


def _near(found: Approaches, required: float) -> set[int]:
    return set(np.flatnonzero(found.distance < required).tolist())


def _sampled(show: Staged, found: Approaches) -> Iterator[tuple[float, float]]:
    """For each pair, how far sampling is below what is proven [m], and how far above where that is a minimum."""
    start, end = show.span
    seconds = np.asarray(show.tempo.seconds_from_beats(np.array([start, end])))
    count = int((seconds[1] - seconds[0]) * RATE)
    beats = np.asarray(show.tempo.beats_from_seconds(np.linspace(*seconds, count)))
    for k, (i, j) in enumerate(zip(found.first.tolist(), found.second.tolist(), strict=True)):
        least = _least(show.dancers[i], show.dancers[j], beats)
        proven = float(found.distance[k])
        yield proven - least, 0.0 if found.dismissed[k] else least - proven


def _least(first: Dancer, second: Dancer, beats: Floats) -> float:
    parts = range(0, len(beats), _MOST)
    return float(min(closest(first, second, beats[k : k + _MOST]).distance.min() for k in parts))


def routines_text(found: Sequence[dict[str, Any]]) -> list[str]:
    """The figures as lines."""
    lines = []
    for row in found:
        lines += [
            f"{row['show']}: blocks {_share(row['blocks'])}; passages {_share(row['passages'])}",
            (
                f"  forward: {row['windows']} times up to 4 beats, largest {row['forward_mm']:.2g} mm, "
                f"over 1 mm {row['over_1_mm']}; least pull {row['least_pull']:.2f}, "
                f"hand up to {row['hand_acceleration']:.0f} m/s²"
            ),
            *(f"  missed: {each}" for each in row["missed"]),
            (
                f"  distances: {row['pairs']} pairs, {row['broken_minima']} minima broken, "
                f"largest error {row['largest_error_mm']:.2g} mm; too close {row['too_close']}"
            ),
            f"  loops: {', '.join(f'{key} {value:.2f}' for key, value in row['loops'].items())}",
        ]
    return lines


def _share(part: dict[str, Any]) -> str:
    return f"{part['fly']} of {part['all']} fly, others {part['broken']}"
