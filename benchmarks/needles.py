"""Approaches of a few milliseconds between two spinning heads, and who finds them.

Two performers spin statically in one plane, at rates that never meet; now and then both heads pass the line
between them at once. The requirement is set so that such a pass is under it for 2 to 10 ms. The reference
is the closed form of two points on circles, refined around every dip: it shares no code with the search.
"""

import numpy as np

from sequencer.geometry.bodies import Body
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.nearest import closest
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.body_parts import PARTS
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory

_RATE = 2.0  # [beats/s]
_WICK = 0.05
_HEAD = [part.name for part in PARTS].index("right head")
_BEATS = 96.0


def planted(wanted: int, *, seed: int = 0) -> dict[str, float]:
    """Plant needles until there are as many as wanted; count who finds them."""
    draw = np.random.default_rng(seed)
    total = missed = at_240 = at_60 = extra = 0
    worst = 0.0
    longest, shortest = 0.0, np.inf
    while total < wanted:
        scene = _Scene(draw)
        dips = scene.dips()
        if not len(dips) or not scene.heads_only:
            continue
        found = approaches(scene.dancers, 0.0, _BEATS, required=scene.required)
        spans = np.stack([found.spans.start, found.spans.end], axis=1)
        for low, high in dips:
            total += 1
            milliseconds = (high - low) / _RATE * 1000
            longest, shortest = max(longest, milliseconds), min(shortest, milliseconds)
            missed += not np.any((spans[:, 0] <= high) & (spans[:, 1] >= low))
            for rate, name in ((240, "fast"), (60, "slow")):
                step = _RATE / rate
                seen = np.floor(high / step) > np.floor(low / step)
                if name == "fast":
                    at_240 += not seen
                else:
                    at_60 += not seen
        for low, high in spans:
            near = scene.distance(np.linspace(low, high, 400)).min()
            extra += near > scene.required + 0.005
        worst = max(worst, abs(float(found.distance[0]) - scene.least))
    return {
        "needles": total,
        "missed": missed,
        "missed_by_sampling_240_hz": at_240,
        "missed_by_sampling_60_hz": at_60,
        "false_beyond_5_mm": int(extra),
        "shortest_ms": round(shortest, 2),
        "longest_ms": round(longest, 2),
        "worst_error_mm": round(1000 * worst, 3),
    }


class _Scene:
    """Two performers, their closed form, and a requirement just over their least distance."""

    def __init__(self, draw: np.random.Generator) -> None:
        body = Body(stature=1.7)
        self.radius = draw.uniform(0.5, 0.8, 2)
        turns = draw.uniform(0.8, 1.3, 2)  # beats of one turn
        prop = [Prop(length=float(r), mass=0.2, wick_radius=_WICK) for r in self.radius]
        start = draw.uniform(0, 360, 2)
        laws = [
            law_for(
                "orbit",
                {"hand_radius": 0.0, "plane": "wall", "from": float(start[k]), "turn": way},
                side="right",
                body=body,
                beats=float(turns[k]),
            )
            for k, way in enumerate(("anticlockwise", "clockwise"))
        ]
        state = [law.at(np.array([0.0])) for law in laws]
        gap = draw.uniform(0.35, 0.8)
        across = float(self.radius.sum()) + gap
        self.dancers = [
            Dancer(
                name=name,
                body=body,
                props={"right": prop[k]},
                trajectories={
                    "right": Trajectory(
                        (Span(start=0, end=_BEATS, law=laws[k], origin=0, kind="block", label=""),)
                    )
                },
                floor=WalkPath((across * k, 5.0)),
            )
            for k, name in enumerate(("Ada", "Bo"))
        ]
        # On stage, facing the audience, body x is −X and y is −Y; the circles lie in planes Y = const.
        self.centre = np.array(
            [[across * k - s.hand[0, 0], s.hand[0, 2]] for k, s in enumerate(state)]
        )
        self.depth = float(state[0].hand[0, 1] - state[1].hand[0, 1])
        self.phase = np.array([np.arctan2(s.tether[0, 2], -s.tether[0, 0]) for s in state])
        # Anticlockwise as the performer sees it is clockwise for the audience.
        self.rate = np.array([-2 * np.pi / turns[0], 2 * np.pi / turns[1]])
        coarse = np.linspace(0, _BEATS, 400_001)
        value = self.distance(coarse)
        low = np.flatnonzero((value[1:-1] < value[:-2]) & (value[1:-1] <= value[2:])) + 1
        low = low[np.argsort(value[low])[:24]]
        self.lows = np.array([self._refined(coarse[k], coarse[1]) for k in low])
        depth = self.distance(self.lows)
        self.least = float(depth.min())
        self.required = self.least + float(draw.uniform(0.002, 0.02))
        # The closed form knows heads only: a scene in which another part comes as near is not used.
        near = closest(*self.dancers, np.linspace(0.0, _BEATS, 20_001))
        under = near.distance < self.required + 0.05
        self.heads_only = bool(np.all(near.part[under] == _HEAD))

    def distance(self, beats: np.ndarray) -> np.ndarray:
        """Between the two heads' surfaces, in closed form [m]."""
        angle = self.phase[:, None] + self.rate[:, None] * np.asarray(beats)
        x = self.centre[:, 0, None] + self.radius[:, None] * np.cos(angle)
        z = self.centre[:, 1, None] + self.radius[:, None] * np.sin(angle)
        return np.sqrt((x[0] - x[1]) ** 2 + (z[0] - z[1]) ** 2 + self.depth**2) - 2 * _WICK

    def _refined(self, beat: float, step: float) -> float:
        for _ in range(3):
            near = np.linspace(beat - step, beat + step, 201)
            beat, step = float(near[np.argmin(self.distance(near))]), step / 50
        return beat

    def dips(self) -> list[tuple[float, float]]:
        """Edges of every dip under the requirement that lasts 2 to 10 ms [beats]."""
        out = []
        for low in self.lows:
            if self.distance(np.array([low]))[0] >= self.required:
                continue
            near = low + np.linspace(-0.05, 0.05, 20_001)
            under = near[self.distance(near) < self.required]
            if 0.002 <= (under[-1] - under[0]) / _RATE <= 0.010:
                out.append((float(under[0]), float(under[-1])))
        return out
