"""A law in the words that performers and audience use: planes and directions.

Derived from the law's curves, so that it is right for mirrored, opposite and user-defined laws too.
The audience is taken to be in front of the performer, so it sees the wall plane the other way round.
Source: docs/motion.md, section 1; common practice.
"""

from dataclasses import dataclass
from math import isfinite
from typing import Literal

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.library import Pattern, find, law_for
from sequencer.motion.patterns.planes import plane_words
from sequencer.motion.trajectories.one_link.link_search import STILL_SPEED

Eye = Literal["performer", "audience"]
_SAMPLES = 128  # for words only; nothing is proven with them
_STEADY = 2.0  # [degrees] a plane that wanders less counts as steady
LEANS = 30.0  # [degrees] a plane that wanders less leans; beyond that it bends


@dataclass(frozen=True, slots=True, kw_only=True)
class LawWords:
    """A law in words."""

    prop: str  # what the prop does
    hand: str  # what the hand does

    def __str__(self) -> str:
        return f"{self.prop}; {self.hand}"


def law_words(law: Law, *, eye: Eye = "performer", beats: float | None = None) -> LawWords:
    """What prop and hand do in a law.

    Parameters
    ----------
    law : Law
    eye : {"performer", "audience"}
    beats : float, optional
        How much of it; one period if not given (8 beats for a law without one).

    Returns
    -------
    words : LawWords
    """
    span = beats or (law.period if isfinite(law.period) else 8.0)
    motion = law.at((np.arange(_SAMPLES, dtype=np.float64) + 0.5) * span / _SAMPLES)
    first = law.at(np.zeros(1))
    return LawWords(
        prop=_prop_words(motion.plane, motion.turning_axis, first.plane[0], eye),
        hand=_hand_words(motion.hand, motion.hand_rate, eye),
    )


def words(
    name: str,
    parameters: dict[str, object],
    hand: Side,
    *,
    body: Body | None = None,
    opposite: bool = False,
    book: dict[str, Pattern] | None = None,
) -> dict[Eye, LawWords]:
    """A pattern's plane and direction in words, as performer and audience see them.

    Parameters
    ----------
    name : str
        Name of the pattern.
    parameters : dict
    hand : {"left", "right"}
    body : Body, optional
    opposite : bool
        Whether this hand goes round the opposite way to the pattern.
    book : dict, optional
        Patterns to use instead of the built-in ones.

    Returns
    -------
    words : dict
        By point of view, "performer" and "audience".

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    find(name, book)
    law = law_for(
        name, parameters, side=hand, body=body or Body(stature=1.70), opposite=opposite, book=book
    )
    return {eye: law_words(law, eye=eye) for eye in ("performer", "audience")}


def _prop_words(plane: Floats, axis: Floats, first: Floats, eye: Eye) -> str:
    mean = plane.mean(axis=0)
    size = float(np.linalg.norm(mean))
    wander = (
        float(np.degrees(np.arccos(np.clip(np.min(plane @ mean) / size, -1.0, 1.0))))
        if size > 1e-6
        else 180.0
    )
    turning = np.sum(axis * plane, axis=-1)
    if np.max(np.abs(turning)) <= STILL_SPEED:
        return "the prop hangs without turning"
    if wander > LEANS:
        words = plane_words(first, eye=eye)
        return f"the plane bends, starting {'' if words.startswith('between') else 'with '}{words}"
    seen = plane_words(mean / size, eye=eye)
    if np.min(turning) < -STILL_SPEED < STILL_SPEED < np.max(turning):
        return f"back and forth in the {seen.split(',')[0]}"
    return seen if wander <= _STEADY else f"{seen}, leaning up to {wander:.0f}°"


def _hand_words(place: Floats, rate: Floats, eye: Eye) -> str:
    if np.max(np.linalg.norm(rate, axis=-1)) <= STILL_SPEED:
        return "the hand stays still"
    spread = place - place.mean(axis=0)
    wide = spread.max(axis=0) - spread.min(axis=0)
    area = np.cross(spread, rate).mean(axis=0)  # twice the loop's area per beat
    size = float(np.linalg.norm(area))
    scale = float(np.mean(np.linalg.norm(spread, axis=-1) * np.linalg.norm(rate, axis=-1)))
    if size > 0.3 * scale:
        return f"the hand circles in the {plane_words(area / size, eye=eye)}"
    way = ("from side to side", "forward and back", "up and down")[int(np.argmax(wide))]
    return f"the hand moves {way}"
