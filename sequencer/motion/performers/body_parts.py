"""Points and parts of a performer: the capsules, and the points between which they run."""

from typing import Literal, NamedTuple

from sequencer.geometry.bodies import Side

PartKind = Literal["body", "arm", "tether", "head", "rear"]


class HandDeviation(NamedTuple):
    """Maximum deviation of a hand from its nominal path from `start` to `end` (hand work, docs/motion.md)."""

    start: float  # [beats]
    end: float  # [beats]
    size: float  # [m]


class Part(NamedTuple):
    """A capsule between two of a dancer's points."""

    name: str
    kind: PartKind
    side: Side | None
    start: int  # index of a point
    end: int  # index of a point, the same one for a ball


# Points: foot and top of the body's axis, then shoulder, hand and far end of the left and the right, then
# the rear ends of both props. All dancers have all of them; for a side without a prop they lie on the
# body's axis, and the rear end of a prop that does not extend behind the hand lies in the hand. The far end
# is the centre of `Prop.ball`.
N_POINTS = 10
N_FRONT = 8  # number of points without the rear ends
PARTS = (
    Part("body", "body", None, 0, 1),
    Part("left arm", "arm", "left", 2, 3),
    Part("left tether", "tether", "left", 8, 4),
    Part("left head", "head", "left", 4, 4),
    Part("right arm", "arm", "right", 5, 6),
    Part("right tether", "tether", "right", 9, 7),
    Part("right head", "head", "right", 7, 7),
    Part("left rear end", "rear", "left", 8, 8),
    Part("right rear end", "rear", "right", 9, 9),
)
# The same for a cast whose props all begin at the hand: fewer points, the same parts with the same indices.
FRONT_PARTS = tuple(
    part._replace(start={8: 3, 9: 6}.get(part.start, part.start)) for part in PARTS[:7]
)


def parts_of(points: int) -> tuple[Part, ...]:
    """Parts of a cast with a given number of points."""
    return PARTS if points == N_POINTS else FRONT_PARTS


FIRST_POINT: dict[Side, int] = {"left": 2, "right": 5}  # index of each side's shoulder
REAR: dict[Side, int] = {"left": 8, "right": 9}
