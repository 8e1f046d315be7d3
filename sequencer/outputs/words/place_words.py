"""Where the hands dance a pattern and how wide, as one performer would tell another.

Places are given relative to the performer's body: ahead and aside from the centre line, up and down from
the shoulders, to 5 cm. They come from the performer's laws, so they are right for mirrored hands too.
"""

from collections.abc import Iterable, Mapping
from functools import lru_cache
from math import isfinite
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.placing import sign_of
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.trajectories.trajectory import Span
from sequencer.staging.staged import Block, HandWords

MOVED = 0.05  # [m] from a pattern's usual place; less is not worth mentioning
SHAPES = ("hand_radius", "size", "from")  # fitted parameters of a path, besides its place
_SAMPLES = 240  # per path; for words only, nothing is proven with them
_ROUND = 0.01  # [m] by which a circle may be off; a hand that moves less is still
_FINE = 14.5  # [cm] smaller radii are given to the centimetre, larger ones to 5 cm


class Lie(NamedTuple):
    """One hand's path in words and whole centimetres."""

    what: str  # "circle 10 cm in radius"; empty if the hand stays still
    out: int  # [cm] from the body's centre line, towards the hand's side
    ahead: int  # [cm]
    up: int  # [cm] above the shoulders
    start: str  # where on its path the hand begins; empty if that is as usual


def is_placed(part: HandWords) -> bool:
    """Whether fitting moved a hand's path by more than 5 cm, or changed its size or starting point."""
    moved = [float(part.fitted.get(name, 0.0)) for name in ("across", "ahead", "up")]
    return float(np.linalg.norm(moved)) > MOVED or any(name in part.fitted for name in SHAPES)


def block_place(block: Block, dancer: Dancer | None) -> str:
    """Where the hands dance a block; empty if they dance it in its usual place."""
    if dancer is None or not any(is_placed(part) for part in block.hands.values()):
        return ""
    return lie_words(block, dancer)


@lru_cache(maxsize=64)
def new_places(dancer: Dancer, blocks: tuple[Block, ...]) -> Mapping[float, str]:
    """Places that a performer has to be told, by the beat at which a block starts.

    Each place is given once: at the first block of that title there, and again only if the same title
    was danced elsewhere in between, including in its usual place.
    """
    new: dict[float, str] = {}
    last: dict[str, str] = {}
    for block in blocks:
        if block.link:
            continue
        words = block_place(block, dancer)
        if words != last.get(block.title, ""):
            new[block.start] = words or lie_words(block, dancer)
            last[block.title] = words
    return new


def lie_words(block: Block, dancer: Dancer) -> str:
    """Where the hands dance a block, whether that is the usual place or not.

    Notes
    -----
    Source: the laws, sampled at 240 instants of a period; rounded to 5 cm, small radii to 1 cm.
    """
    lies: dict[Side, Lie] = {}
    for side in reversed(SIDES):  # the right hand leads
        law = danced_law(dancer, side, block)
        if side in block.hands and law is not None:
            lies[side] = _lie(law, side, block.hands[side], dancer)
    if not lies:
        return ""
    both = len(lies) == 2
    whats = dict.fromkeys(lie.what for lie in lies.values())
    if len(whats) == 1:
        what = next(iter(whats))
        if not what:
            lead = "hands " if both else "hand "
        elif both:
            kind, _, rest = what.partition(" ")
            lead = f"{kind}s {rest}, centred "
        else:
            lead = f"{what}, centred "
        return lead + _where(lies)
    return "; ".join(
        f"{side}: {f'{lie.what}, centred' if lie.what else 'hand'} {_where({side: lie})}"
        for side, lie in lies.items()
    )


def danced_law(dancer: Dancer | None, side: Side, block: Block) -> Law | None:
    """One hand's law in a block; None if it is not available."""
    span = danced_span(dancer, side, block)
    return span.law if span is not None else None


def danced_span(dancer: Dancer | None, side: Side, block: Block) -> Span | None:
    """One hand's law in a block with its place in the count; None if it is not available."""
    spans = getattr(dancer.trajectories.get(side), "spans", ()) if dancer is not None else ()
    middle = 0.5 * (block.start + block.end)
    return next((s for s in spans if s.kind == "block" and s.start <= middle < s.end), None)


def _lie(law: Law, side: Side, part: HandWords, dancer: Dancer) -> Lie:
    span = law.period if isfinite(law.period) else 8.0
    hand = law.at(np.arange(_SAMPLES + 1, dtype=np.float64) * span / _SAMPLES).hand
    centre = hand[:-1].mean(axis=0)
    away = np.linalg.norm(hand - centre, axis=-1)
    right, ahead, up = 100 * (centre - [0.0, 0.0, dancer.body.shoulder_height])
    return Lie(
        what=_what(away),
        out=_five(sign_of(side) * right),
        ahead=_five(ahead),
        up=_five(up),
        start=_direction(hand[0] - centre) if "from" in part.fitted else "",
    )


def _what(away: Floats) -> str:
    """A path described by its distance from its centre."""
    least, most = 100 * float(away.min()), 100 * float(away.max())
    if most < 100 * _ROUND:
        return ""
    if most - least < 100 * _ROUND:
        radius = 0.5 * (least + most)
        return f"circle {round(radius) if radius < _FINE else _five(radius)} cm in radius"
    return f"path {_five(2 * most)} cm across"


def _where(lies: Mapping[Side, Lie]) -> str:
    """The place of one or both hands: first what they share, then what differs."""
    columns = (
        {side: _ahead(lie.ahead) for side, lie in lies.items()},
        {side: _aside(lie.out, side) for side, lie in lies.items()},
        {side: _height(lie.up) for side, lie in lies.items()},
        {side: f"starting at the {lie.start}" if lie.start else "" for side, lie in lies.items()},
    )
    shared = [
        next(iter(words.values())) if len(set(words.values())) == 1 else "" for words in columns
    ]
    outs = {lie.out for lie in lies.values()}
    if len(lies) == 2 and len(outs) == 1 and (out := outs.pop()):
        shared[1] = f"{abs(out)} cm {'out to each side' if out > 0 else 'across to the other side'}"
    separate = {
        side: _listed(
            words[side] for words, common in zip(columns, shared, strict=True) if not common
        )
        for side in lies
    }
    clauses = [_listed(shared), *(f"{side} {words}" for side, words in separate.items() if words)]
    return "; ".join(filter(None, clauses))


def _listed(words: Iterable[str]) -> str:
    return ", ".join(filter(None, words))


def _ahead(ahead: int) -> str:
    if not ahead:
        return "level with your body"
    return f"{ahead} cm ahead" if ahead > 0 else f"{-ahead} cm behind you"


def _aside(out: int, side: Side) -> str:
    if not out:
        return "on your middle line"
    return f"{abs(out)} cm to the {'right' if (out > 0) == (side == 'right') else 'left'}"


def _height(up: int) -> str:
    if not up:
        return "at shoulder height"
    return f"{abs(up)} cm {'above' if up > 0 else 'below'} shoulder height"


def _direction(away: Floats) -> str:
    """A point of a path relative to its centre: `top`, `front left`; from the two largest of three axes."""
    names = (("left", "right"), ("back", "front"), ("bottom", "top"))
    strong = sorted(range(3), key=lambda k: -abs(away[k]))[:2]
    if abs(away[strong[1]]) < np.tan(np.radians(22.5)) * abs(away[strong[0]]):
        strong = strong[:1]
    return " ".join(names[k][int(away[k] > 0)] for k in sorted(strong, reverse=True))


def _five(value: float) -> int:
    """Centimetres, rounded to the nearest 5."""
    return 5 * round(value / 5)
