"""A wheelchair and the legs of its user.

Body frame [m]: the middle of the axle above the origin, so that the chair turns on the spot about the
performer's position. An everyday chair with wheels of 24 inches, the seat at 0.50 m, feet on a footrest in
front of the castors (common practice). Greatest breadth and length of an occupied wheelchair, 0.70 m by
1.20 m: ISO
7176-5 and EN 12183, from memory. Lengths of the legs: ANSUR II, means of men, from memory; see bodies.py.
"""

import math
from functools import lru_cache

from sequencer.geometry.capsules import Capsule

SEAT = 0.50  # [m] height of the cushion
SITTING = 918.0 / 1756.2  # sitting height relative to stature
SITTING_SHOULDER = 604.0 / 1756.2  # acromial height sitting
_POPLITEAL = 430.0 / 1756.2  # sole to the hollow of the knee
_BUTTOCK_KNEE = 617.0 / 1756.2
_TOES = 0.75 * 271.0 / 1756.2  # ankle to toes, three quarters of the foot
_FOOT = 0.045  # [m] half a shoe's height and width
_LOWEST_REST = 0.05  # [m] height of the footrest above the floor: longer legs are not bent less

HALF_BREADTH, HALF_LENGTH = 0.35, 0.60  # [m] of the occupied chair's outline
WHEEL = 0.30  # [m] radius of a big wheel
_HALF_TYRE = 0.055  # [m] width including hand rim and its gap
_CHORDS = 11  # capsules that a wheel is made of
_CHORD = 0.268  # [m] radius of the circle whose chords they are: the smallest that leaves no gap in the wheel
AXLE = _CHORD + _HALF_TYRE  # [m] height above the floor on which the capsules stand
_HALF_BACK = 0.20  # [m] of the breadth of backrest and frame
_BACK = 0.30  # [m] from the seat to the top of the backrest
_BAR, _CASTOR, _TUBE = 0.04, 0.06, 0.02  # [m] radii


@lru_cache(maxsize=64)
def below_seat(stature: float, *, thigh: float, shank: float, depth: float) -> tuple[Capsule, ...]:
    """Legs, wheels and chair.

    Parameters
    ----------
    stature : float
        Standing [m].
    thigh, shank : float
        Radii [m].
    depth : float
        From the body's axis to the small of the back [m].

    Returns
    -------
    capsules : tuple of Capsule
        Named leg, wheel and chair.

    Notes
    -----
    Source: module docstring. Thighs lie forward on the seat, shanks hang down to the footrest.
    """
    kneecap = _BUTTOCK_KNEE * stature - depth  # in front of the body's axis
    rest = max(SEAT - _POPLITEAL * stature, _LOWEST_REST)
    level, shin, sole = SEAT + thigh, kneecap - shank, rest + _FOOT
    knee, hollow = (kneecap - thigh, level), (shin, level + thigh - shank)
    heel, toes = (shin, sole), (shin + _TOES * stature - _FOOT, sole)
    return (
        *(
            Capsule("leg", (x, *start), (x, *end), radius)
            for x in (-thigh, thigh)
            for start, end, radius in (
                ((0.0, level), knee, thigh),
                (hollow, (shin, rest + shank), shank),
                (heel, toes, _FOOT),
            )
        ),
        *_wheels(),
        *_frame(shin, rest, -depth),
    )


@lru_cache(maxsize=64)
def outline_radius(capsules: tuple[Capsule, ...]) -> float:
    """Radius of the circle about the performer's position that encloses the outline [m]: its corners, or longer legs."""
    ends = [(part, end) for part in capsules for end in (part.start, part.end)]
    legs = max(math.hypot(*end[:2]) + part.radius for part, end in ends)
    return max(math.hypot(HALF_BREADTH, HALF_LENGTH), legs)


@lru_cache(maxsize=1)
def _wheels() -> tuple[Capsule, ...]:
    """Both big wheels: upright discs of horizontal capsules that overlap."""
    turns = [math.pi * (k / (_CHORDS - 1) - 0.5) for k in range(_CHORDS)]
    rows = [(_CHORD * math.cos(turn), AXLE + _CHORD * math.sin(turn)) for turn in turns]
    beside = HALF_BREADTH - _HALF_TYRE
    return tuple(
        Capsule("wheel", (x, -half, height), (x, half, height), _HALF_TYRE)
        for x in (-beside, beside)
        for half, height in rows
    )


def _frame(shin: float, rest: float, back: float) -> tuple[Capsule, ...]:
    """Axle, footrest, top of the backrest; castors with the tubes over them."""
    across = (
        ((0.0, AXLE), _HALF_BACK, _BAR),
        ((shin + _FOOT, rest - _TUBE), _HALF_BACK, _TUBE),
        ((back - _TUBE, SEAT + _BACK), _HALF_BACK, _TUBE),
    )
    ahead = shin - 2 * _CASTOR
    return (
        *(Capsule("chair", (-half, *at), (half, *at), radius) for at, half, radius in across),
        *(
            Capsule("chair", (x, ahead, _CASTOR), (x, ahead, SEAT - _CASTOR), _CASTOR)
            for x in (-_HALF_BACK, _HALF_BACK)
        ),
    )
