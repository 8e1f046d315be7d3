"""Which limit a link breaks, in words that a performer knows."""

from math import pi
from typing import NamedTuple

from sequencer.motion.trajectories.one_link.link_law import LinkLaw
from sequencer.motion.trajectories.one_link.link_limits import REACH_SLACK, HandSpace, LinkLimits

_UNITS = {
    "hand speed": "m/{}", "turns": "1/{}", "hand acceleration": "m/{}²", "turning acceleration": "rad/beat²",
}  # fmt: skip


def limit_broken(limits: LinkLimits, law: LinkLaw, space: HandSpace) -> str:
    """The limit that a link of an upright performer exceeds, as text; empty if none."""
    reach, arm = law.reach_of(space.body, space.side), space.arm
    if reach > arm + REACH_SLACK:
        return out_of_reach(reach, arm)
    return pace_broken(limits, law)


def out_of_reach(reach: float, arm: float) -> str:
    """Message that the hand would be farther away than the arm's length [m]."""
    over = reach - arm
    far = f"{1000 * over:.0f} mm" if over < 0.00995 else f"{100 * over:.0f} cm"
    return f"the hand would be {far} out of reach: {reach:.3f} m from the shoulder, with an arm of {arm:.3f} m"


class LinkBreach(NamedTuple):
    """The limit of speed or acceleration that a link exceeds."""

    quantity: str
    value: float
    limit: float
    unit: str
    words: str


def pace_broken(limits: LinkLimits, law: LinkLaw) -> str:
    """The limit of speed or acceleration that a link exceeds, by the beat, as text; empty if none."""
    breach = pace_breach(limits, law)
    return "" if breach is None else breach.words


def pace_breach(
    limits: LinkLimits, law: LinkLaw, *, beats_per_second: float | None = None
) -> LinkBreach | None:
    """The first limit of speed or acceleration that a link exceeds; None if none.

    Parameters
    ----------
    limits : LinkLimits
    law : LinkLaw
    beats_per_second : float, optional
        Tempo at which the figures are told by the second [1/s]; by the beat if not given.
    """
    bounds = law.bounds()
    pace = beats_per_second or 1.0
    by = "s" if beats_per_second else "beat"
    turned = "times a second" if beats_per_second else "times a beat"
    whip = "the prop would have to brake and whip round too sharply"
    for quantity, what, value, most, scale, unit in (
        ("hand speed", "the hand would have to move too fast", bounds.hand_speed, limits.hand_speed, pace, f" m/{by}"),
        ("turns", "the prop would have to turn too fast", bounds.turn_rate, limits.turn_rate, pace / (2 * pi), f" {turned}"),
        ("hand acceleration", "the hand would have to brake and start too sharply", bounds.hand_acceleration, limits.hand_acceleration, pace**2, f" m/{by}²"),
        ("turning acceleration", whip, bounds.turn_acceleration, limits.turn_acceleration, 1.0, ""),
    ):  # fmt: skip
        if value > most:
            told = f"{what} ({_over(value * scale, most * scale)}{unit}, limit {most * scale:.3g})"
            of = _UNITS[quantity].format(by)
            return LinkBreach(quantity, value * scale, most * scale, of, told)
    return None


def _over(value: float, limit: float) -> str:
    """A value over a limit, with as many places as show that it is."""
    for digits in (3, 4, 5):
        if float(f"{value:.{digits}g}") > float(f"{limit:.3g}"):
            return f"{value:.{digits}g}"
    return f"{value:.6g}"
