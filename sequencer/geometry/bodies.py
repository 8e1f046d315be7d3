"""Bodies of performers, scaled from stature.

Frame: body frame [m], origin on the floor between the feet, x to the right, y forward, z up.

Source: ANSUR II, the 2012 anthropometric survey of the US Army (Gordon et al., 2014, Natick
TR-15/007; 4,082 men and 1,986 women), public rows. Proportions are men's means over men's mean
stature, which exceed the women's by less than 1 %. Soldiers are not the general public, and one person's
arm differs from the mean at that stature by about 4 % (one standard deviation), so a measured arm takes
precedence. Breadths marked "from memory" were not read in the data.

The trunk that a prop must clear is as wide and deep as the survey's mean plus one standard deviation, so
five of six people of that stature are slimmer; no part exceeds the 95th percentile. For distances to others
a body is an upright column, as wide as the shoulders with hanging arms.
"""

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, NamedTuple, TypeAlias

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats, as_number
from sequencer.geometry.capsules import Capsule
from sequencer.geometry.wheelchair import (
    SEAT,
    SITTING,
    SITTING_SHOULDER,
    below_seat,
    outline_radius,
)

Side: TypeAlias = Literal["left", "right"]
SIDES: tuple[Side, Side] = ("left", "right")

_SHOULDER_HEIGHT = 1440.7 / 1756.2  # acromial height
_ARM = 684.3 / 1756.2  # acromion–radiale and radiale–centre of grip, summed per person
_HALF_BIDELTOID = 510.4 / 1756.2 / 2
_HALF_BIACROMIAL = 415.7 / 1756.2 / 2  # from memory
# Mean plus one standard deviation; all from memory. The 95th percentiles are about 320, 378, 297.
_HALF_CHEST = (289.0 + 18.0) / 1756.2 / 2  # chest breadth
_HALF_HIP = (343.0 + 22.0) / 1756.2 / 2  # hip breadth, which includes the waist
_HALF_DEPTH = (254.5 + 25.0) / 1756.2 / 2  # chest depth, which includes the waist
_WAIST = 1056.0 / 1756.2  # height of the navel; from memory
_NECK = 398.0 / 1756.2 / (2 * math.pi)  # girth over 2π; from memory
_YOKE = 0.055 / 1.756  # radius of collar bones and the muscle over them; from memory
_HIP_JOINT = 0.53  # height relative to stature, Drillis and Contini 1966, from memory
_HEAD_HEIGHT = 0.130  # chin to crown relative to stature, Drillis and Contini 1966, from memory
_HALF_HEAD = 197.0 / 1756.2 / 2  # head length, its largest dimension; from memory
_LIMB = 0.065 / 1.756  # radius of the upper arm at the 95th percentile's girth; from memory
_THIGH = 0.100 / 1.756  # mean thigh girth over 2π; from memory
_SHANK = 0.062 / 1.756  # mean calf girth over 2π; from memory
_KNEE = 495.0 / 1756.2  # height of the kneecap; from memory
_CROTCH = 846.0 / 1756.2  # crotch height; from memory
# How far a shoulder can move from its rest position: forward, back, up, and in towards the middle [m at the mean stature, no more for taller people]. The shoulder blade glides 15 cm from full retraction to full
# protraction and 10 to 12 cm up and down (Kapandji, The Physiology of the Joints, vol. 1, from memory);
# six tenths of the first and less than half of the second is used. Its diagonal stays under `_ELBOW_CAP`:
# see `Body.shoulder_give`.
_GIVE_FORWARD, _GIVE_BACK, _GIVE_UP, _GIVE_IN = 0.060, 0.030, 0.045, 0.020
_SWAY = 0.15  # of stature: more than the middle of the head moves aside in any posture
_ELBOW_CAP = (
    0.08  # [m] minimum allowance for the elbow: below it the slope of its bound would be unlimited
)


class Survey(NamedTuple):
    """One percentile of the survey [m]; percentiles do not add, so sums are a separate column."""

    stature: float
    shoulder_height: float
    arm_length: float  # shoulder to grip, summed per person
    overhead_grip: float  # shoulder height and arm, summed per person


SURVEY: dict[tuple[Literal["man", "woman"], Literal[5, 50, 95]], Survey] = {
    ("man", 5): Survey(1.648, 1.339, 0.631, 1.975),
    ("man", 50): Survey(1.755, 1.439, 0.684, 2.123),
    ("man", 95): Survey(1.870, 1.546, 0.740, 2.281),
    ("woman", 5): Survey(1.525, 1.242, 0.577, 1.824),
    ("woman", 50): Survey(1.626, 1.332, 0.627, 1.960),
    ("woman", 95): Survey(1.740, 1.4338, 0.684, 2.112),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """A performer's body, from stature and any further measurements.

    Parameters
    ----------
    stature : float
        Height without shoes [m].
    arm : float, optional
        Measured length from the top of the shoulder to the centre of the grip [m].
    shoulder_top : float, optional
        Measured height of the top of the shoulder [m], of a seated performer in the chair.
    grip_overhead : float, optional
        Measured height of the grip overhead [m], of a seated performer in the chair.
    seated : bool
        Whether the performer sits in a wheelchair; `stature` is still the standing height.
    """

    stature: float = 1.755
    arm: float | None = None
    shoulder_top: float | None = None
    grip_overhead: float | None = None
    seated: bool = False

    def __post_init__(self) -> None:
        as_number("stature", self.stature, "m")
        if not 0.8 <= self.stature <= 2.6:  # also catches nan
            raise ValueError(f"stature must be 0.8 to 2.6 m, got {self.stature!r}")
        for name, (low, high) in self._limits.items():
            value = getattr(self, name)
            if value is not None and not low <= as_number(name, value, "m") <= high:
                raise ValueError(
                    f"{name} must be {low:.2f} to {high:.2f} m "
                    f"at a stature of {self.stature:.2f} m{', seated' * self.seated}, got {value!r}"
                )

    @property
    def _limits(self) -> dict[str, tuple[float, float]]:
        """Accepted range of a measured length [m]; a seat may be 0.35 to 0.70 m high."""
        s = self.stature
        if self.seated:
            heights = {
                "shoulder_top": (0.35 + 0.25 * s, 0.70 + 0.45 * s),
                "grip_overhead": (0.35 + 0.45 * s, 0.70 + 1.05 * s),
            }
        else:
            heights = {"shoulder_top": (0.6 * s, s), "grip_overhead": (0.9 * s, 1.6 * s)}
        return {"arm": (0.2 * s, 0.6 * s), **heights}

    @classmethod
    def of_survey(cls, sex: Literal["man", "woman"], percentile: Literal[5, 50, 95]) -> "Body":
        """Body with the same percentile for every measure of the survey."""
        row = SURVEY[sex, percentile]
        return cls(
            stature=row.stature,
            arm=row.arm_length,
            shoulder_top=row.shoulder_height,
            grip_overhead=row.overhead_grip,
        )

    @property
    def arm_length(self) -> float:
        """Shoulder to centre of grip, arm straight [m]."""
        return _ARM * self.stature if self.arm is None else self.arm

    @property
    def shoulder_height(self) -> float:
        """Floor to the top of the shoulder [m]."""
        if self.shoulder_top is not None:
            return self.shoulder_top
        if self.seated:
            return SEAT + SITTING_SHOULDER * self.stature
        return _SHOULDER_HEIGHT * self.stature

    @property
    def height(self) -> float:
        """Floor to the crown [m]; for a seated performer, from the shoulder height measured in the chair."""
        if self.seated:
            return self.shoulder_height + (SITTING - SITTING_SHOULDER) * self.stature
        return self.stature

    @property
    def overhead_grip(self) -> float:
        """Floor to the centre of the grip, arm straight up [m]."""
        own = self.shoulder_height + self.arm_length
        return own if self.grip_overhead is None else self.grip_overhead

    @property
    def half_shoulder(self) -> float:
        """Midline of the body to the point from which an arm is measured [m]."""
        return _HALF_BIACROMIAL * self.stature

    @property
    def half_breadth(self) -> float:
        """Midline of the body to the outside of the upper arm, arms hanging [m]."""
        return _HALF_BIDELTOID * self.stature

    @property
    def limb_radius(self) -> float:
        """Thickness of an arm [m]."""
        return _LIMB * self.stature

    def shoulder(self, side: Side) -> Floats:
        """Shoulder point of an arm.

        Parameters
        ----------
        side : {"left", "right"}

        Returns
        -------
        point : ndarray, shape (3,) [m, body frame]

        Notes
        -----
        Source: ANSUR II, acromial height and biacromial breadth (the breadth from memory).
        """
        across = self.half_shoulder if side == "right" else -self.half_shoulder
        return np.array([across, 0.0, self.shoulder_height])

    @property
    def girth(self) -> float:
        """Radius of the upright column that others keep clear of [m].

        Notes
        -----
        Standing: half the shoulder breadth. Seated: the farthest corner of an occupied wheelchair's
        outline, centred on the performer, or of legs that reach beyond it.
        """
        if not self.seated:
            return self.half_breadth
        return outline_radius(self.legs)

    @property
    def column(self) -> Capsule:
        """One upright capsule that encloses trunk, head and legs, and the chair of a seated performer."""
        radius = self.girth
        top = self.height - radius
        if self.seated:
            # High enough that the cap encloses a head that leans aside.
            head = _HALF_HEAD * self.stature
            room = (radius - head) ** 2 - (_SWAY * self.stature) ** 2
            top = self.height - head - math.sqrt(max(room, 0.0))
        return Capsule("body", (0.0, 0.0, 0.0), (0.0, 0.0, top), radius)

    @property
    def leaning_top(self) -> float:
        """Height of the column's upper end whose cap encloses a head that leans as far as allowed [m].

        Notes
        -----
        A cap about the height of the upright head's middle: a lean only lowers the head, so within the
        column's radius of its axis no point of it is above the cap.
        """
        return max(self.column.end[2], self.height - _HALF_HEAD * self.stature)

    @property
    def _let_down(self) -> float:
        """How much lower trunk and head are than a standing performer's [m]."""
        return self.stature - self.height

    @property
    def hip_height(self) -> float:
        """Floor to the hip joints, about which the trunk leans [m]."""
        return _HIP_JOINT * self.stature - self._let_down

    @property
    def neck_height(self) -> float:
        """Floor to the base of the neck, about which the head leans [m]."""
        return self.shoulder_height

    @property
    def shoulder_give(self) -> tuple[Floats, Floats]:
        """Box of possible offsets of the right shoulder from its rest position: lowest and highest corner.

        Returns
        -------
        low, high : ndarray, shape (3,) [m, the trunk's frame]
            The left shoulder's box is the mirror image.

        Notes
        -----
        A shoulder moves only once the arm is straight, and by no more than needed. A straight arm is the
        segment from the moved shoulder to the hand, each point of which is within the box's diagonal, under
        8 cm, of the segment from the shoulder's rest position: so the capsule about that segment, never
        thinner than 8 cm (`elbow_room`), still encloses the arm.
        """
        scale = min(self.stature / 1.7562, 1.0)
        return (
            scale * np.array([-_GIVE_IN, -_GIVE_BACK, 0.0]),
            scale * np.array([0.0, _GIVE_FORWARD, _GIVE_UP]),
        )

    @property
    def trunk(self) -> tuple[Capsule, ...]:
        """Trunk: chest, waist and hips, and the yoke of the shoulders, body upright."""
        s = self.stature
        depth, yoke = _HALF_DEPTH * s, _YOKE * s
        chest, hip = _HALF_CHEST * s - depth, _HALF_HIP * s - depth
        low = SEAT + depth if self.seated else _CROTCH * s + depth / 2
        waist, high = _WAIST * s - self._let_down, self.shoulder_height - depth
        across = self.half_shoulder - yoke
        level = self.shoulder_height - yoke
        uprights = [(x, waist, high) for x in (-chest, chest)]
        uprights += [(x, low, waist) for x in (-hip, hip)]
        return (
            *(Capsule("trunk", (x, 0.0, a), (x, 0.0, b), depth) for x, a, b in uprights),
            Capsule("trunk", (-across, 0.0, level), (across, 0.0, level), yoke),
        )

    @property
    def skull(self) -> tuple[Capsule, ...]:
        """Head and neck, body upright."""
        s = self.stature
        head, chin = _HALF_HEAD * s, self.height - _HEAD_HEIGHT * s
        neck = _NECK * s
        return (
            Capsule("head", (0.0, 0.0, chin), (0.0, 0.0, self.height - head), head),
            Capsule("neck", (0.0, 0.0, self.neck_height - neck), (0.0, 0.0, chin), neck),
        )

    @property
    def legs(self) -> tuple[Capsule, ...]:
        """Parts that do not move with the trunk: thighs and shanks; if seated, also feet, wheels and chair."""
        s = self.stature
        thigh, shank, knee = _THIGH * s, _SHANK * s, _KNEE * s
        if self.seated:
            return below_seat(s, thigh=thigh, shank=shank, depth=_HALF_DEPTH * s)
        return tuple(
            Capsule("leg", (x, 0.0, a), (x, 0.0, b), r)
            for x in (-thigh, thigh)
            for a, b, r in ((knee, _CROTCH * s, thigh), (shank, knee, shank))
        )

    @property
    def capsules(self) -> tuple[Capsule, ...]:
        """Trunk, head, neck and legs, upright, and a chair: a closer fit than `column`."""
        return _capsules(self)

    def elbow_room(self, shoulder_to_hand: ArrayLike) -> Floats:
        """Largest distance of an elbow from the line between shoulder and hand.

        Parameters
        ----------
        shoulder_to_hand : array_like, shape (...) [m]

        Returns
        -------
        room : ndarray, shape (...) [m]
            At least 8 cm: below that the slope of the true bound would be unlimited.

        Notes
        -----
        Source: an elbow lies on the ellipsoid whose foci are shoulder and hand and whose long axis is
        the arm's length; no point of it is farther from the segment between the foci than its short
        half-axis (standard geometry of the ellipse). An upper bound whatever the elbow does.
        """
        length = self.arm_length
        span = as_floats("shoulder_to_hand", shoulder_to_hand)
        square = np.maximum(length * length - span * span, 0.0)
        return np.asarray(np.maximum(0.5 * np.sqrt(square), _ELBOW_CAP))

    @property
    def elbow_slope(self) -> float:
        """Bound on the derivative of `elbow_room` with respect to the distance of shoulder and hand [1]."""
        longest = math.sqrt(max(self.arm_length**2 - 4 * _ELBOW_CAP**2, 0.0))
        return longest / (4 * _ELBOW_CAP)


@lru_cache(maxsize=512)
def _capsules(body: Body) -> tuple[Capsule, ...]:
    """`Body.capsules`: asked for at every look at a body."""
    return (*body.trunk, *body.skull, *body.legs)
