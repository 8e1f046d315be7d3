"""Where everything lies in the flat arrays of the kernel."""

from typing import NamedTuple

from sequencer.arrays import Floats, Ints

SMOOTHED_AT_REST = 1e-8  # [m²/s²], as in `tether.speed_of`
AT_LENGTH, AT_DRAG, AT_PULL, AT_SPEED, AT_ACCELERATION = range(5)  # places in `numbers`
(
    AT_HEAD_WEIGHT,
    AT_HAND_WEIGHT,
    AT_PULL_WEIGHT,
    AT_SPEED_WEIGHT,
    AT_ACCELERATION_WEIGHT,
    AT_TOUCH_WEIGHT,
) = range(5, 11)
AT_ENOUGH, AT_MOST_STEPS, AT_LOOSER, AT_FIRMER = range(11, 15)
KERNEL_NUMBERS = 15
AT_ARM, AT_FLOOR, AT_THIN, AT_THICK, AT_SHOULDER, AT_TRUNK, AT_LOW, AT_HIGH, KERNEL_ROOM = (
    0,
    1,
    2,
    3,
    4,
    7,
    16,
    19,
    22,
)
AT_VALUE, AT_SHARE, AT_PENALTY, AT_STEPS, AT_REFUSED, AT_UNFACTORED, KERNEL_TOLD = (
    0,
    1,
    2,
    3,
    4,
    5,
    6,
)  # places in `told`
KERNEL_HEADER = 28  # whole numbers before the first part


class Given(NamedTuple):
    """A problem; see the module docstring."""

    copies: int
    span: Ints
    turned: Floats
    pieces: Floats
    shares: Floats
    frames: Floats
    origins: Floats
    ups: Floats
    heads: Floats
    hands: Floats
    inwards: Floats
    numbers: Floats
    room: Floats
    bodies: Floats
    mates: Floats
    clear: Floats
    rows: Ints
    first: Ints
    offset: Ints


# Places in the scratch `w`, of vectors of three or what is said.
AT_LOCAL = 0  # (6, 3) coefficients of a span
AT_PATH = 18  # (5, 3)
AT_BLOWN = 33  # (3,) drag [m/s²]
AT_PULLED = 36  # (3,) force
AT_WAY = 39  # (3,) its direction
AT_RATE = 42  # (3,) rate of the force
AT_TURNING = 45  # (3,) rates of its direction
AT_BENDING = 48  # (3,)
AT_HELD = 51  # (3,) hand
AT_SEEN = 54  # (2, 3) hand and head in the body frame
AT_MOVED = 60  # (3,)
AT_SLIP = 63  # (3, 3)
AT_SLIPPING = 72  # (3, 3)
AT_PUSHES = 81  # (2, 3) by head and hand
AT_FIRM = 87  # (3, 3, 3) by head twice, head and hand, hand twice
AT_REACH = 114  # (3, 3) hand by force
AT_BOTH = 123  # (3, 3)
AT_BY_HEAD = 132  # (3,)
AT_BY_FORCE = 135  # (3,)
AT_HEAD_HEAD = 138  # (3, 3)
AT_HEAD_FORCE = 147  # (3, 3)
AT_FORCE_FORCE = 156  # (3, 3)
AT_BY_RATE = 165  # (4, 3, 3)
AT_NORMAL = 201  # (3,)
AT_OFF = 204  # (3,)
AT_NEAR = 207  # (5,)
AT_CROSS = 212  # (3, 3)
AT_INWARD = 221
AT_HEAD_OFF = 224  # head from where it is drawn [m]
AT_MIDDLE = 227  # (3,) of the tether [m, body frame]
# By the path: rows of four, of which the last is zero, so that four are worked out at once.
AT_SLOPE = 232  # (5, 4) order and axis
AT_BEND = 252  # (15, 5, 4) one order and axis, then the other's
AT_FOLLOWS = 552  # (3, 4, 4)
AT_FOLLOW = 600  # (4, 4)
AT_HALF = 616  # (15, 6, 4)
AT_BLOCK = 976  # (6, 3, 6, 4) place and axis of a column, then of a row from that place on
AT_LOAD = 1408  # (6, 4)
KERNEL_WORK = 1432
