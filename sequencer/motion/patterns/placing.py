"""Default position of the centre of a hand's circle.

Frame: body frame [m]. Every rule starts at the shoulder of that hand and keeps the whole circle within
arm's length; the planes of the two hands are `HANDS_APART` apart, so that their props pass.

- wall plane: straight in front of the shoulder, as far ahead as the circle allows, at most 80 % of the
  arm; the left hand's circle lies `HANDS_APART` behind. For a toroid, whose lobes swing back by nearly the
  length of the tether: farther ahead, and outward by 14 cm times the fraction of the arm that the circle's
  radius leaves;
- wheel plane: beside the body, 12 cm outside the upper arm, at shoulder height, and ahead as far as
  the circle allows, at most 25 cm;
- floor plane: above the shoulder, as high as the circle allows; the left hand `HANDS_APART` lower.
Source: design choice of this project, checked against reach (geometry/bodies.py).
"""

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.patterns.planes import PlaneName

HANDS_APART = 0.14  # [m] between the planes of two hands
BESIDE = 0.12  # [m] outside the upper arm
USED = 0.95  # fraction of the arm that a circle may use


def sign_of(side: Side) -> float:
    """1 for the right hand, −1 for the left: the sign of its x."""
    return 1.0 if side == "right" else -1.0


def check_radius(hand_radius: float, body: Body) -> None:
    """Raise if no arm can draw the hand circle.

    Raises
    ------
    ValueError
        If the radius is negative, not finite, or longer than the arm.
    """
    if not (np.isfinite(hand_radius) and hand_radius >= 0):
        raise ValueError(f"hand_radius must be 0 or more, got {hand_radius!r}")
    if hand_radius > body.arm_length:
        raise ValueError(
            f"hand_radius must be at most the arm's {body.arm_length:.2f} m "
            f"(stature {body.stature:.2f} m), got {hand_radius:g} m"
        )


def circle_centre(
    plane: PlaneName,
    side: Side,
    body: Body,
    hand_radius: float,
    offset: tuple[float, float, float] = (0.0, 0.0, 0.0),
    *,
    bends: bool = False,
) -> Floats:
    """Centre of a hand's circle.

    Parameters
    ----------
    plane : {"wall", "wheel", "floor"}
    side : {"left", "right"}
    body : Body
    hand_radius : float
        Radius of the hand's circle [m].
    offset : tuple of float
        The performer's offset of the centre: away from the middle of the body, ahead, up [m].
    bends : bool
        Whether the prop leaves the plane of the circle, as a toroid's does.

    Returns
    -------
    centre : ndarray, shape (3,) [m, body frame]

    Raises
    ------
    ValueError
        If the circle is larger than the arm's reach.

    Notes
    -----
    Source: design choice of this project, see the module docstring. Exact.
    """
    check_radius(hand_radius, body)
    out = sign_of(side)
    arm = body.arm_length
    slack = float(np.sqrt(max((USED * arm) ** 2 - hand_radius**2, 0.0)))
    behind = HANDS_APART if side == "left" else 0.0
    centre = body.shoulder(side).copy()
    if plane == "wall" and bends:
        outward = HANDS_APART * (1.0 - hand_radius / arm)
        deep = (0.97 * arm) ** 2 - (hand_radius + outward) ** 2
        centre[0] += out * outward
        centre[1] += min(0.9 * arm, float(np.sqrt(max(deep, 0.0))))
    elif plane == "wall":
        centre[1] += min(0.8 * arm, slack) - behind
    elif plane == "floor":
        centre[2] += slack - behind
    else:
        beside = min(body.half_breadth + BESIDE - body.half_shoulder, slack)
        centre[0] += out * beside
        deep = float(np.sqrt((USED * arm) ** 2 - beside**2)) - hand_radius
        centre[1] += min(0.25, max(deep, 0.0))
    across, ahead, up = offset
    return np.asarray(centre + np.array([out * across, ahead, up]))
