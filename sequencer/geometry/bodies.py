"""Bodies of performers, scaled from stature.

Frame: body frame [m], origin on the floor between the feet, x to the right, y forward, z up.

Source: ANSUR II, the 2012 anthropometric survey of the US Army (Gordon et al., 2014, Natick
TR-15/007; 4,082 men and 1,986 women), public rows. Proportions are men's means over men's mean
stature, which exceed the women's by less than 1 %. Soldiers are not the general public, and one
person's arm differs from the mean at that stature by about 4 % (one standard deviation): a measured
arm wins over the proportion. Breadths marked "from memory" were not read in the data.
"""

import math
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats

Side: TypeAlias = Literal["left", "right"]
SIDES: tuple[Side, Side] = ("left", "right")

_SHOULDER_HEIGHT = 1440.7 / 1756.2  # acromial height
_ARM = 684.3 / 1756.2  # acromion–radiale and radiale–centre of grip, summed per person
_HALF_BIDELTOID = 510.4 / 1756.2 / 2
_HALF_BIACROMIAL = 415.7 / 1756.2 / 2  # from memory
_HALF_CHEST_DEPTH = 254.5 / 1756.2 / 2  # from memory
_HEAD_HEIGHT = 0.130  # chin to crown over stature, Drillis and Contini 1966, from memory
_HALF_HEAD = 197.0 / 1756.2 / 2  # head length, the longest way across; from memory
_LIMB = 0.065 / 1.756  # radius of the upper arm at the 95th percentile's girth; from memory
_THIGH = 0.100 / 1.756  # mean thigh girth over 2π; from memory
_CROTCH = 846.0 / 1756.2  # crotch height; from memory
_ELBOW_CAP = 0.08  # [m] least room left for the elbow: its bound would grow without limit below


class Survey(NamedTuple):
    """One percentile of the survey [m]; percentiles do not add, so sums are their own column."""

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


@dataclass(frozen=True, slots=True)
class Capsule:
    """All points within `radius` of a segment [m, body frame]; a ball where the ends are one."""

    name: str
    start: tuple[float, float, float]
    end: tuple[float, float, float]
    radius: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """A performer's body, from stature and what was measured besides.

    Parameters
    ----------
    stature : float
        Height without shoes [m].
    arm : float, optional
        Measured length from the top of the shoulder to the centre of the grip [m].
    shoulder_top : float, optional
        Measured height of the top of the shoulder [m].
    grip_overhead : float, optional
        Measured height of the grip overhead [m].
    """

    stature: float = 1.755
    arm: float | None = None
    shoulder_top: float | None = None
    grip_overhead: float | None = None

    def __post_init__(self) -> None:
        if not 0.8 <= self.stature <= 2.6:  # also catches nan
            raise ValueError(f"stature must be 0.8 to 2.6 m, got {self.stature!r}")
        for name, low, high in (
            ("arm", 0.2, 0.6),
            ("shoulder_top", 0.6, 1.0),
            ("grip_overhead", 0.9, 1.6),
        ):
            value = getattr(self, name)
            if value is not None and not low * self.stature <= value <= high * self.stature:
                raise ValueError(
                    f"{name} must be {low * self.stature:.2f} to {high * self.stature:.2f} m "
                    f"at a stature of {self.stature:.2f} m, got {value!r}"
                )

    @classmethod
    def of_survey(cls, sex: Literal["man", "woman"], percentile: Literal[5, 50, 95]) -> "Body":
        """Body with one percentile of every measure of the survey."""
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
        return _SHOULDER_HEIGHT * self.stature if self.shoulder_top is None else self.shoulder_top

    @property
    def overhead_grip(self) -> float:
        """Floor to the centre of the grip, arm straight up [m]."""
        own = self.shoulder_height + self.arm_length
        return own if self.grip_overhead is None else self.grip_overhead

    @property
    def half_shoulder(self) -> float:
        """Middle of the body to the point from which an arm is measured [m]."""
        return _HALF_BIACROMIAL * self.stature

    @property
    def half_breadth(self) -> float:
        """Middle of the body to the outside of the upper arm, arms hanging [m]."""
        return _HALF_BIDELTOID * self.stature

    @property
    def limb_radius(self) -> float:
        """Thickness of an arm [m]."""
        return _LIMB * self.stature

    def shoulder(self, side: Side) -> Floats:
        """Where an arm begins.

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
    def column(self) -> Capsule:
        """One upright capsule that holds trunk, head and legs."""
        radius = self.half_breadth
        return Capsule("body", (0.0, 0.0, 0.0), (0.0, 0.0, self.stature - radius), radius)

    @property
    def capsules(self) -> tuple[Capsule, ...]:
        """Trunk (three upright capsules side by side), head, legs: closer to the body than `column`."""
        s = self.stature
        depth, leg, head = _HALF_CHEST_DEPTH * s, _THIGH * s, _HALF_HEAD * s
        low, high = _CROTCH * s + depth / 2, self.shoulder_height - depth
        side = self.half_breadth - depth
        trunk = tuple(
            Capsule("trunk", (x, 0.0, low), (x, 0.0, high), depth) for x in (-side, 0.0, side)
        )
        chin = s - _HEAD_HEIGHT * s
        skull = Capsule("head", (0.0, 0.0, chin), (0.0, 0.0, s - head), head)
        legs = tuple(Capsule("leg", (x, 0.0, leg), (x, 0.0, _CROTCH * s), leg) for x in (-leg, leg))
        return (*trunk, skull, *legs)

    def elbow_room(self, shoulder_to_hand: ArrayLike) -> Floats:
        """How far an elbow can be from the line between shoulder and hand.

        Parameters
        ----------
        shoulder_to_hand : array_like, shape (...) [m]

        Returns
        -------
        room : ndarray, shape (...) [m]
            At least 8 cm: there the true bound's slope would grow without limit.

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
        """Bound of the rate of `elbow_room` with the distance of shoulder and hand [1]."""
        longest = math.sqrt(max(self.arm_length**2 - 4 * _ELBOW_CAP**2, 0.0))
        return longest / (4 * _ELBOW_CAP)
