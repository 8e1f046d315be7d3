"""How a body gives way, as one performer would tell another."""

from collections.abc import Mapping

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats
from sequencer.geometry.bodies import SIDES, Side
from sequencer.geometry.posture import Posture
from sequencer.motion.performers.arms import shoulder_gives
from sequencer.motion.performers.dancer import Dancer
from sequencer.staging.staged import Block

LITTLE = 6.0  # [degrees] below this it is "a little"
SILENT = 1.0  # [degrees] below this nobody would notice
_PER_BEAT = 48  # instants at which a shoulder is sampled


def posture_words(posture: Posture, gives: Mapping[Side, ArrayLike] | None = None) -> str:
    """A posture as one sentence; empty if the body is upright.

    Parameters
    ----------
    posture : Posture
    gives : mapping of side to array_like, shape (3,) [m, the trunk's frame: right, forward, up], optional
        How far the shoulders come along.

    Returns
    -------
    words : str
        Angles to 5°, shoulders to whole centimetres.

    Notes
    -----
    Source: as a trainer would say it, common practice.
    """
    turn, lean, side, nod, tilt = np.degrees(posture.angles)
    head = [_bow(nod), _clause("tilt your head", tilt, "to the right", "to the left")]
    body = [_clause("turn your trunk", turn, "to the left", "to the right"), _lean(lean, side)]
    clauses = [", ".join(filter(None, [*body, *head])), ", ".join(_shoulders(gives or {}))]
    words = "; ".join(filter(None, clauses))
    return words[:1].upper() + words[1:] + "." if words else ""


def block_posture(block: Block, dancer: Dancer | None = None) -> str:
    """How the body gives way in a block; empty if its posture is upright.

    Parameters
    ----------
    block : Block
    dancer : Dancer, optional
        Adds this performer's shoulders: how far each comes along at most.
    """
    if block.posture.upright:
        return ""
    return posture_words(
        block.posture, widest_gives(dancer, block.start, block.end) if dancer else {}
    )


def widest_gives(dancer: Dancer, start: float, end: float) -> dict[Side, Floats]:
    """How far each shoulder comes along at most between two beats.

    Parameters
    ----------
    dancer : Dancer
    start, end : float [beats]

    Returns
    -------
    gives : dict of ndarray, shape (3,) [m, the trunk's frame: right, forward, up]
        Sampled 48 times per beat.

    Notes
    -----
    Source: `motion.performers.arms.shoulder_gives`.
    """
    count = 2 + int(_PER_BEAT * (end - start))
    beats = as_floats("beats", np.linspace(start, end, count))
    out: dict[Side, Floats] = {}
    for side, trajectory in dancer.trajectories.items():
        gives = shoulder_gives(dancer.carriage, beats, trajectory.at(beats).hand, side)
        out[side] = np.asarray(gives[np.argmax(np.linalg.norm(gives, axis=1))])
    return out


def _clause(verb: str, angle: float, positive: str, negative: str) -> str:
    if abs(angle) < SILENT:
        return ""
    return f"{verb} {_amount(angle)} {positive if angle > 0 else negative}"


def _amount(angle: float) -> str:
    return "a little" if abs(angle) < LITTLE else f"{5 * int(abs(angle) / 5 + 0.5)}°"


def _lean(lean: float, side: float) -> str:
    """The trunk's lean in both directions, in one clause."""
    ways = [(lean, "forward" if lean > 0 else "back")]
    ways += [(side, "to the right" if side > 0 else "to the left")]
    leans = [(angle, way) for angle, way in ways if abs(angle) >= SILENT]
    if not leans:
        return ""
    if all(abs(angle) < LITTLE for angle, _ in leans):
        return f"lean {' and '.join(way for _, way in leans)} a little"
    return "lean " + " and ".join(f"{_amount(angle)} {way}" for angle, way in leans)


def _bow(nod: float) -> str:
    if abs(nod) < SILENT:
        return ""
    if abs(nod) < LITTLE:
        return "bow your head a little" if nod > 0 else "tip your head back a little"
    return f"bow your head {_amount(nod)}" if nod > 0 else f"tip your head {_amount(nod)} back"


def _shoulders(gives: Mapping[Side, ArrayLike]) -> list[str]:
    """A clause for each shoulder that comes along; one for both if they do the same."""
    clauses = {side: _shoulder(np.asarray(gives[side])) for side in SIDES if side in gives}
    clauses = {side: each for side, each in clauses.items() if each[1]}
    if len(clauses) == 2 and len(set(clauses.values())) == 1:
        verb, way = clauses["left"]
        return [f"{verb} both shoulders {way}"]
    return [f"{verb} your {side} shoulder {way}" for side, (verb, way) in clauses.items()]


def _shoulder(give: Floats) -> tuple[str, str]:
    """Verb and distance; a shoulder that comes in a little is just following the arm."""
    forward, up = (round(100 * float(each)) for each in give[1:])
    if not forward:
        return "lift", f"{up} cm" if up else ""
    way = f"{abs(forward)} cm {'forward' if forward > 0 else 'back'}"
    return ("bring" if forward > 0 else "draw"), way + (f" and {up} cm up" if up else "")
