"""Whether one state can continue into another: the gap between them, and the verdict.

Compared for one prop at the boundary itself, without sampling: hand, hand velocity, tether, turning
axis d × d', rate |d'| and head velocity. Frame: body frame [m], rates per beat.
The tolerances of the design are 0.15 m, 20°, 20° and a ratio of 0.8 to 1.25; those of the two velocities
are this project's, and wide: they only catch what the others miss, a hand that reverses on the spot.
Source: docs/motion.md, section 5.
"""

from dataclasses import dataclass
from math import inf, isfinite, isnan, nan
from typing import Literal, TypeAlias

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits
from sequencer.motion.trajectories.one_link.link_search import STILL_SPEED
from sequencer.motion.trajectories.one_link.link_words import limit_broken
from sequencer.motion.trajectories.one_link.links import link

VerdictKind: TypeAlias = Literal[
    "joins", "joins after a shift", "needs a link", "wrong way round", "cannot join"
]
VERDICTS: tuple[VerdictKind, ...] = (
    "joins", "joins after a shift", "needs a link", "wrong way round", "cannot join",
)  # fmt: skip
SHIFT_STEP = 0.25  # [beats] shifts are offered in quarters of a beat
LINK_BEATS = (1.0, 2.0, 3.0, 4.0, 0.5)  # half a beat last: it needs a fast dancer


@dataclass(frozen=True, slots=True, kw_only=True)
class Tolerances:
    """Tolerances of a join: differences that the blend can absorb."""

    hand: float = 0.15  # [m]
    tether_deg: float = 20.0
    axis_deg: float = 20.0
    rate_ratio: tuple[float, float] = (0.8, 1.25)
    hand_velocity: float = 2.0  # [m/beat]
    head_velocity: float = 3.0  # [m/beat]

    def __post_init__(self) -> None:
        low, high = self.rate_ratio
        sizes = (self.hand, self.tether_deg, self.axis_deg, self.hand_velocity, self.head_velocity)
        if not (all(size > 0 for size in sizes) and 0 < low <= 1 <= high):
            raise ValueError("tolerances must be positive, and the ratios must have 1 between them")


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """Differences between two states; arrays of n pairs, or of one."""

    hand: Floats  # [m]
    hand_velocity: Floats  # [m/beat]
    tether: Floats  # [rad]
    axis: Floats  # [rad] of the turning axes; nan if a tether is at rest
    plane: Floats  # [rad] of the laws' planes n
    rate_ratio: Floats  # later over earlier; 1 if both are at rest, inf or 0 if one is
    head_velocity: Floats  # [m/beat]

    def within(self, tolerances: Tolerances, *, axis: Floats | None = None) -> Bools:
        """Which pairs join; `axis` replaces the angle between the turning axes [rad]."""
        low, high = tolerances.rate_ratio
        turned = self.axis if axis is None else axis
        same_axis = np.isnan(turned) | (turned <= np.radians(tolerances.axis_deg) + 1e-9)
        place = (self.hand <= tolerances.hand + 1e-9) & (
            self.tether <= np.radians(tolerances.tether_deg) + 1e-9
        )
        rate = (self.rate_ratio >= low - 1e-9) & (self.rate_ratio <= high + 1e-9)
        velocity = self.hand_velocity <= tolerances.hand_velocity + 1e-9
        if axis is None:
            velocity = velocity & (self.head_velocity <= tolerances.head_velocity + 1e-9)
        return np.asarray(place & rate & same_axis & velocity)

    def reversed_in_place(self, tolerances: Tolerances) -> Bools:
        """Which pairs differ only in the direction of turning.

        By the turning axis, or by the law's plane: an odd toroid's plane is reversed at an in, while
        its turning axis, which the hand's own turn tilts by atan(1/N) both times, has turned by
        180° − 2·atan(1/N) only (143° for three lobes).
        """
        axis = self.within(tolerances, axis=np.pi - self.axis) & ~np.isnan(self.axis)
        plane = self.within(tolerances, axis=np.pi - self.plane) & ~np.isnan(self.axis)
        return np.asarray(axis | plane, dtype=np.bool_)

    def words(self) -> str:
        """One pair's gap as text."""
        axis = float(self.axis)
        turned = (
            "turning axis undefined" if isnan(axis) else f"turning axis {np.degrees(axis):.0f}°"
        )
        ratio = float(self.rate_ratio)
        pace = f"turning {ratio:.2f} times as fast" if isfinite(ratio) else "turning from rest"
        return (
            f"hand {100 * float(self.hand):.0f} cm, tether {np.degrees(float(self.tether)):.0f}°, "
            f"{turned}, {pace}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """Result of judging one join."""

    kind: VerdictKind
    gap: Gap  # gap without any shift
    shift: float = 0.0  # [beats] shift of the next block, if that is the remedy
    link_beats: float = nan  # shortest link within the limits, if one is needed
    reason: str = ""  # why it cannot join


def gap_between(first: Motion, last: Motion, length: float) -> Gap:
    """Differences between two states.

    Parameters
    ----------
    first, last : Motion
        Arrays of shape (..., 3) [body frame]; they broadcast.
    length : float
        Length of the tether [m], for the head's velocity.

    Returns
    -------
    gap : Gap
        Arrays of the common shape (...).

    Notes
    -----
    Source: docs/motion.md, section 5. Exact to rounding.
    """
    rates = [np.linalg.norm(motion.tether_rate, axis=-1) for motion in (first, last)]
    still = [rate <= STILL_SPEED for rate in rates]
    axes = [motion.turning_axis for motion in (first, last)]
    axis = np.where(still[0] | still[1], nan, _angle(axes[0], axes[1]))
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = np.where(still[0], np.where(still[1], 1.0, inf), rates[1] / rates[0])
    return Gap(
        hand=np.linalg.norm(last.hand - first.hand, axis=-1),
        hand_velocity=np.linalg.norm(last.hand_rate - first.hand_rate, axis=-1),
        tether=_angle(first.tether, last.tether),
        axis=np.asarray(axis),
        plane=_angle(first.plane, last.plane),
        rate_ratio=np.asarray(ratio),
        head_velocity=np.linalg.norm(last.head_rate(length) - first.head_rate(length), axis=-1),
    )


def shifts_of(law: Law) -> Floats:
    """The shifts offered for a law, shape (n,) [beats]: quarters of a beat, smallest first."""
    if not isfinite(law.period):
        return np.zeros(1)
    count = max(int(np.ceil(law.period / SHIFT_STEP - 1e-9)), 1)
    shifts = np.arange(count) * SHIFT_STEP
    order = np.argsort(np.minimum(shifts, law.period - shifts), kind="stable")
    return np.asarray(shifts[order], dtype=np.float64)


def judge(
    first: Motion,
    following: Law,
    *,
    space: HandSpace,
    tolerances: Tolerances | None = None,
    limits: LinkLimits | None = None,
) -> Verdict:
    """The verdict on one boundary.

    Parameters
    ----------
    first : Motion
        Final state of the previous block, arrays of shape (3,) [body frame].
    following : Law
        Law of the next block, whose beat 0 is the boundary.
    space : HandSpace
        The hand, and the length of the tether.
    tolerances : Tolerances, optional
    limits : LinkLimits, optional

    Returns
    -------
    verdict : Verdict

    Notes
    -----
    Source: docs/motion.md, section 5. A join that is reversed in place is reported as such before a shift
    is tried: shifting an odd toroid by a whole cycle would hide what the dancer must know.
    """
    tolerances, limits = tolerances or Tolerances(), limits or LinkLimits()
    shifts = shifts_of(following)
    states = following.at(shifts)
    gaps = gap_between(first, states, space.length)
    joins = gaps.within(tolerances)
    own = _one(gaps, 0)
    if joins[0]:
        return Verdict(kind="joins", gap=own)
    if bool(own.reversed_in_place(tolerances)):
        return Verdict(kind="wrong way round", gap=own)
    if np.any(joins):
        return Verdict(kind="joins after a shift", gap=own, shift=float(shifts[np.argmax(joins)]))
    start = _state(states, 0)
    beats, reason = shortest_link(first, start, space=space, limits=limits)
    if isfinite(beats):
        return Verdict(kind="needs a link", gap=own, link_beats=beats)
    return Verdict(kind="cannot join", gap=own, reason=reason)


def shortest_link(
    first: Motion,
    last: Motion,
    *,
    space: HandSpace,
    limits: LinkLimits | None = None,
) -> tuple[float, str]:
    """Beats of the first link (1 to 4, else ½) within the limits, or nan and the reason.

    Parameters
    ----------
    first, last : Motion
        Arrays of shape (3,) [body frame].
    space : HandSpace
    limits : LinkLimits, optional

    Returns
    -------
    beats, reason : float and str

    Notes
    -----
    Source: docs/motion.md, section 5. The limits are compared with proven bounds of the link.
    """
    limits, reasons = limits or LinkLimits(), []
    for beats in LINK_BEATS:
        reason = limit_broken(limits, link(first, last, beats, space, limits), space)
        if not reason:
            return beats, ""
        reasons.append(f"in {beats:g} {'beat' if beats == 1 else 'beats'} {reason}")
    return nan, "; ".join(reasons[:2])


def ends(
    law: Law, beats: float, *, length: float = 0.55
) -> Literal["home", "reversed", "elsewhere"]:
    """Whether a law turns in its starting direction again after a number of beats.

    Parameters
    ----------
    law : Law
    beats : float
    length : float
        Length of the tether [m], for the head's velocity.
    """
    gap = gap_between(law.at(np.array(beats)), law.at(np.zeros(())), length)
    if bool(gap.within(Tolerances())):
        return "home"
    return "reversed" if bool(gap.reversed_in_place(Tolerances())) else "elsewhere"


def _angle(a: Floats, b: Floats) -> Floats:
    """Angle between vectors, accurate near 0 and π as well (Kahan's formula)."""
    sizes = [np.linalg.norm(v, axis=-1, keepdims=True) for v in (a, b)]
    left, right = a * sizes[1], b * sizes[0]
    return np.asarray(
        2.0
        * np.arctan2(np.linalg.norm(left - right, axis=-1), np.linalg.norm(left + right, axis=-1))
    )


def _one(gap: Gap, index: int) -> Gap:
    return Gap(
        hand=gap.hand[index],
        hand_velocity=gap.hand_velocity[index],
        tether=gap.tether[index],
        axis=gap.axis[index],
        plane=gap.plane[index],
        rate_ratio=gap.rate_ratio[index],
        head_velocity=gap.head_velocity[index],
    )


def _state(motion: Motion, index: int) -> Motion:
    return Motion(
        hand=motion.hand[index],
        hand_rate=motion.hand_rate[index],
        hand_acceleration=motion.hand_acceleration[index],
        tether=motion.tether[index],
        tether_rate=motion.tether_rate[index],
        tether_acceleration=motion.tether_acceleration[index],
        plane=motion.plane[index],
    )
