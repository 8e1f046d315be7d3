"""Casts of any size at constant density, dancing real patterns: what the benchmarks measure on."""

import numpy as np

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.trajectory import Span

TEMPO = 120.0  # beats a minute
BEATS = 600  # five minutes
SPACING = 3.0  # [m] from neighbour to neighbour
_BLOCK = 24.0  # [beats]
_PATTERNS = (
    ("orbit", {"ratio": 3.0, "plane": "wall"}, 4.0),
    ("orbit", {"ratio": -3.0, "plane": "wall"}, 4.0),
    ("orbit", {"ratio": 1.0, "plane": "wall"}, 2.0),
    ("orbit", {"ratio": -2.0, "plane": "wheel"}, 4.0),
    ("orbit", {"hand_radius": 0.0, "plane": "floor"}, 1.0),
    ("toroid", {"lobes": 4, "bend": "pro"}, 4.0),
)


def cast(n: int, *, beats: int = BEATS, seed: int = 0, spacing: float = SPACING) -> list[Dancer]:
    """Performers on a square grid, who change place every 24 beats and pattern every 24 beats."""
    draw = np.random.default_rng(seed)
    side = int(np.ceil(np.sqrt(n)))
    dancers = []
    for k in range(n):
        home = np.array([(k % side) * spacing, (k // side) * spacing + 2.0])
        dancers.append(_dancer(f"d{k}", home, beats, draw))
    return dancers


def _dancer(name: str, home: np.ndarray, beats: int, draw: np.random.Generator) -> Dancer:
    body = Body(stature=float(draw.uniform(1.55, 1.9)))
    prop = Prop(length=float(draw.uniform(0.5, 0.7)), mass=0.2, wick_radius=0.05, flame_reach=0.3)
    moves, facing = [], 0.0
    for start in np.arange(8.0, beats - 16.0, _BLOCK):
        x, y = home + draw.uniform(-0.5, 0.5, 2)
        facing += float(draw.uniform(-0.8, 0.8))
        moves.append(Move(start=float(start), end=float(start) + 8.0, place=(x, y), facing=facing))
    x, y = home + draw.uniform(-0.5, 0.5, 2)
    chosen = draw.integers(len(_PATTERNS), size=int(np.ceil(beats / _BLOCK)))
    trajectories = {}
    for side in SIDES:
        spans = []
        for block, pick in enumerate(chosen):
            pattern, given, cycle = _PATTERNS[pick]
            start = block * _BLOCK
            law = law_for(pattern, given, side=side, body=body, beats=cycle, tether=prop.length)
            spans.append(
                Span(
                    start=start,
                    end=min(start + _BLOCK, float(beats)),
                    law=law,
                    origin=start,
                    kind="block",
                    label=pattern,
                )
            )
        rest = law_for("orbit", {"hand_radius": 0.0}, side=side, body=body, beats=1.0)
        trajectories[side] = assembled(spans, rest)
    return Dancer(
        name=name,
        body=body,
        props=dict.fromkeys(SIDES, prop),
        trajectories=trajectories,
        floor=WalkPath((x, y), 0.0, tuple(moves)),
        lit=((4.0, beats / 2), (beats / 2 + 8, beats - 4.0)),
    )
