"""Contact: where the prop is too near to something, or the hand too far."""

from collections.abc import Callable
from typing import NamedTuple

from sequencer.arrays import Floats, Ints


class Contact(NamedTuple):
    """How far places of the prop are too near to something, or the hand too far; m pairs."""

    point: Ints  # (m,) index into the points
    depth: Floats  # (m,) [m] positive
    share: Floats  # (m,) place on the tether: 0 the hand, 1 the head
    normal: Floats  # (m, 3) unit vector along which the place must move


Touching = Callable[[Floats, Floats], Contact]  # hand, head (n, 3) [m, body frame] → contact
