"""Contact: where the prop is too near to something or the hand too far, and how that is penalised."""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints


class Contact(NamedTuple):
    """How far places of the prop are too near to something, or the hand too far; m pairs."""

    point: Ints  # (m,) index into the points of all copies, flat
    depth: Floats  # (m,) [m] positive
    share: Floats  # (m,) place on the tether: 0 the hand, 1 the head
    normal: Floats  # (m, 3) unit vector along which the place must move

    def push(self, costs: Floats, curves: "Curves") -> None:
        """Add half its gradient and half its second derivatives, for the cost of each point, shape (points,) [1]."""
        at, cost = self.point, costs[self.point]
        near, far = 1.0 - self.share, self.share
        lift = -(cost * self.depth)[:, None] * self.normal
        square = cost[:, None, None] * self.normal[:, :, None] * self.normal[:, None, :]
        np.add.at(curves.by_hand, at, near[:, None] * lift)
        np.add.at(curves.by_head, at, far[:, None] * lift)
        np.add.at(curves.hand_hand, at, (near * near)[:, None, None] * square)
        np.add.at(curves.head_head, at, (far * far)[:, None, None] * square)
        np.add.at(curves.head_hand, at, (near * far)[:, None, None] * square)


class Curves(NamedTuple):
    """Half gradients and half second derivatives of a cost by head and hand at n points, to be added to."""

    by_head: Floats  # (n, 3)
    by_hand: Floats  # (n, 3)
    head_head: Floats  # (n, 3, 3)
    head_hand: Floats  # (n, 3, 3)
    hand_hand: Floats  # (n, 3, 3)


Touching = Callable[[Floats, Floats], Contact]  # hand, head (n, 3) [m, body frame] → contact
