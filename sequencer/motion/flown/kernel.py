"""One least-deviation problem in numbers: its value, its derivatives and Newton's way down. Compiled before it is used.

The formulas are those of `optimum.py` and `tether.py`, written as plain loops over flat arrays, so that they can be made into
machine code (`compiled.py`); `python -m sequencer.motion.flown.compiled` makes it anew after a change here. As Python they run
too, a thousand times slower. Half gradients and half second derivatives throughout. Vectors of three lie one after the other,
matrices row by row. Names of arrays that every function takes:

    span     (spans, 6)                         coefficient at each place
    turned   (spans, 6, 3, 3)                   what it is multiplied by there
    pieces   (spans, 5, places, 6)              of the spline and its first four derivatives [1/s^order]
    shares   (spans, places)                    of the points in the mean
    frames   (copies, spans, places, 3, 3)      from the unknown's frame to the body's
    origins  (copies, spans, places, 3) [m]     where the unknown's origin is there
    ups      (copies, 3) [m/s²]                 against gravity, in the unknown's frame
    heads, hands, inwards (spans, places, 3)    as drawn [m, m, 1]
    numbers  (14,)                              see `Number`
    room     (22,)                              see `Room`
    bodies   (n, 7)                             capsules: both ends [m, body frame] and radius [m]
    mates    (spans, places, copies, m, 7)      the same, of what moves
    rows     (count,)                           first row of each coefficient in the matrix, or -1
    first    (n,)                               first column of each row that can differ from zero
    offset   (n,)                               where it lies: only what is right of it, up to the diagonal, is kept

The matrix is factored within that envelope, L·Lᵀ row by row, which fills in nothing outside.
Source: A. George and J. Liu, Computer Solution of Large Sparse Positive Definite Systems, 1981, chapter 4 (from memory);
J. Nocedal and S. Wright, Numerical Optimization, 2006, chapter 3 (from memory).
"""

from collections.abc import Sequence
from math import inf, sqrt
from types import FunctionType
from typing import NamedTuple

from sequencer.arrays import Floats, Ints

SMOOTH = 1e-8  # [m²/s²], as in `tether.speed_of`
LENGTH, DRAG, PULL, SPEED, ACCELERATION = range(5)  # places in `numbers`
HEAD_WEIGHT, HAND_WEIGHT, PULL_WEIGHT, SPEED_WEIGHT, ACCELERATION_WEIGHT, TOUCH_WEIGHT = range(5, 11)
ENOUGH, MOST_STEPS, LOOSER, FIRMER = range(11, 15)
NUMBERS = 15
ARM, FLOOR, THIN, THICK, SHOULDER, TRUNK, LOW, HIGH, ROOM = 0, 1, 2, 3, 4, 7, 16, 19, 22
VALUE, SHARE, PENALTY, STEPS, REFUSED, UNFACTORED, TOLD = 0, 1, 2, 3, 4, 5, 6  # places in `told`
_LEAST_DAMPING, _DAMPED_OUT = 1e-9, 1e12
HEADER = 27  # whole numbers before the first part


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
    rows: Ints
    first: Ints
    offset: Ints


# Places in the scratch `w`, of vectors of three or what is said.
LOCAL = 0  # (6, 3) coefficients of a span
PATH = 18  # (5, 3)
BLOWN = 33  # (3,) drag [m/s²]
PULLED = 36  # (3,) force
WAY = 39  # (3,) its direction
RATE = 42  # (3,) rate of the force
TURNING = 45  # (3,) rates of its direction
BENDING = 48  # (3,)
HELD = 51  # (3,) hand
SEEN = 54  # (2, 3) hand and head in the body frame
MOVED = 60  # (3,)
SLIP = 63  # (3, 3)
SLIPPING = 72  # (3, 3)
PUSHES = 81  # (2, 3) by head and hand
FIRM = 87  # (3, 3, 3) by head twice, head and hand, hand twice
REACH = 114  # (3, 3) hand by force
BOTH = 123  # (3, 3)
BY_HEAD = 132  # (3,)
BY_FORCE = 135  # (3,)
HEAD_HEAD = 138  # (3, 3)
HEAD_FORCE = 147  # (3, 3)
FORCE_FORCE = 156  # (3, 3)
SLOPE = 165  # (15,) by the path
BEND = 180  # (15, 15)
FOLLOWS = 405  # (3, 12)
FOLLOW = 441  # (12,)
BY_RATE = 453  # (4, 3, 3)
HALF = 489  # (18, 15)
BLOCK = 759  # (18, 18)
LOAD = 1083  # (18,)
NORMAL = 1101  # (3,)
OFF = 1104  # (3,)
NEAR = 1107  # (5,)
CROSS = 1112  # (3, 3)
INWARD = 1121
HEAD_OFF = 1124  # head from where it is drawn [m]
WORK = 1127


def nearest(w: Floats, start: int, b: Floats, at: int) -> float:
    """Distance of hand or head (`start`) to head, as in `SEEN`, from a segment of b; shares and gap go to `NEAR`.

    Source: `geometry.segments.segment_segment`.
    """
    aa = ee = bb = cc = ff = 0.0
    for i in range(3):
        d1 = w[SEEN + 3 + i] - w[start + i]
        d2 = b[at + 3 + i] - b[at + i]
        r = w[start + i] - b[at + i]
        aa += d1 * d1
        ee += d2 * d2
        bb += d1 * d2
        cc += d1 * r
        ff += d2 * r
    crossing = aa * ee - bb * bb
    s = 0.0
    if crossing > 1e-14 * aa * ee:
        s = min(max((bb * ff - cc * ee) / crossing, 0.0), 1.0)
    t = min(max((bb * s + ff) / max(ee, 1e-300), 0.0), 1.0)
    s = min(max((bb * t - cc) / max(aa, 1e-300), 0.0), 1.0)
    square = 0.0
    for i in range(3):
        place = w[start + i] + s * (w[SEEN + 3 + i] - w[start + i])
        gap = place - b[at + i] - t * (b[at + 3 + i] - b[at + i])
        w[NEAR + 2 + i] = gap
        square += gap * gap
    w[NEAR] = s
    w[NEAR + 1] = t
    return sqrt(square)


def push(
    w: Floats, cost: float, frames: Floats, frame: int, depth: float, share: float
) -> float:
    """Add a contact along `normal`, at a share of the tether from hand to head; its penalty."""
    for i in range(3):
        x = 0.0
        for j in range(3):
            x += frames[frame + 3 * j + i] * w[NORMAL + j]
        w[OFF + i] = x
    other = 1.0 - share
    for i in range(3):
        lift = -cost * depth * w[OFF + i]
        w[PUSHES + i] += share * lift
        w[PUSHES + 3 + i] += other * lift
        for j in range(3):
            square = cost * w[OFF + i] * w[OFF + j]
            w[FIRM + 3 * i + j] += share * share * square
            w[FIRM + 9 + 3 * i + j] += share * other * square
            w[FIRM + 18 + 3 * i + j] += other * other * square
    return cost * depth * depth


def touching(
    w: Floats,
    cost: float,
    frames: Floats,
    frame: int,
    room: Floats,
    bodies: Floats,
    mates: Floats,
    mate: int,
    moving: int,
) -> float:
    """Penalty of arm's reach, floor, own body and what moves beside it; hand and head are in `seen`."""
    total = 0.0
    if room[ARM] > 0.0:
        square = 0.0
        for i in range(3):
            x = 0.0
            for j in range(3):
                x += room[TRUNK + 3 * j + i] * (w[SEEN + j] - room[SHOULDER + j])
            x -= min(max(x, room[LOW + i]), room[HIGH + i])
            w[OFF + i] = x
            square += x * x
        far = sqrt(square)
        over = far - room[ARM]
        if over > 0.0:
            for i in range(3):
                x = 0.0
                for j in range(3):
                    x -= room[TRUNK + 3 * i + j] * w[OFF + j] / far
                w[NORMAL + i] = x
            total += push(w, cost, frames, frame, over, 0.0)
    under = room[FLOOR] - w[SEEN + 5]
    if under > 0.0:
        w[NORMAL] = 0.0
        w[NORMAL + 1] = 0.0
        w[NORMAL + 2] = 1.0
        total += push(w, cost, frames, frame, under, 1.0)
    count = len(bodies) // 7
    for c in range(count + moving):
        # a ball about the tether tells first whether they can touch
        for own in range(2):
            start = SEEN if own == 0 else SEEN + 3
            if c < count:
                gap = nearest(w, start, bodies, 7 * c)
                enough = bodies[7 * c + 6] + room[THIN + own]
            else:
                gap = nearest(w, start, mates, mate + 7 * (c - count))
                enough = mates[mate + 7 * (c - count) + 6] + room[THIN + own]
            if gap < enough and gap > 1e-9:
                for i in range(3):
                    w[NORMAL + i] = w[NEAR + 2 + i] / gap
                total += push(w, cost, frames, frame, enough - gap, w[NEAR] if own == 0 else 1.0)
    return total


def hurried(
    w: Floats, r: float, kind: int, size: float, along: float, over: float, cost: float
) -> None:
    """Add to `slope` and `bend` the penalty of a hand over its speed (0) or acceleration (1); Gauss–Newton.

    By the force f, its rate q and its second rate, with u the direction, P = 1 − uu and s = |f|: of u' they are
    A = −(uu' + u'u)/s − (u·q)P/s² and P/s; of u'' the derivatives of (Pf'' − 2(u·q)u')/s − |u'|²u.
    Source: the formulas of `tether`, derived once more.
    """
    big = 0.0
    uw = 0.0
    turn = 0.0
    for i in range(3):
        big += w[MOVED + i] * w[MOVED + i]
        uw += w[WAY + i] * w[PATH + 12 + i]
        turn += w[TURNING + i] * w[TURNING + i]
    big = sqrt(big)
    for i in range(3):
        for j in range(3):
            p = (1.0 if i == j else 0.0) - w[WAY + i] * w[WAY + j]
            w[BY_RATE + 27 + 3 * i + j] = -(w[WAY + i] * w[TURNING + j] + w[TURNING + i] * w[WAY + j]) / size - along * p / (size * size)
            w[BY_RATE + 3 * i + j] = w[BY_RATE + 27 + 3 * i + j]
            w[BY_RATE + 9 + 3 * i + j] = p / size
            w[BY_RATE + 18 + 3 * i + j] = 0.0
    if kind == 1:
        for j in range(3):
            x = 0.0
            for i in range(3):
                x += w[TURNING + i] * w[BY_RATE + 27 + 3 * i + j]
            w[OFF + j] = x
        for i in range(3):
            n = w[PATH + 12 + i] - uw * w[WAY + i] - 2.0 * along * w[TURNING + i]
            for j in range(3):
                p = (1.0 if i == j else 0.0) - w[WAY + i] * w[WAY + j]
                across = w[PATH + 12 + j] - uw * w[WAY + j]
                x = -(w[WAY + i] * across + uw * p) / size - 2.0 * w[TURNING + i] * w[TURNING + j]
                x -= 2.0 * along * w[BY_RATE + 27 + 3 * i + j]
                w[BY_RATE + 3 * i + j] = (
                    x / size
                    - n * w[WAY + j] / (size * size)
                    - 2.0 * w[WAY + i] * w[OFF + j]
                    - turn * p / size
                )
                w[BY_RATE + 9 + 3 * i + j] = (
                    -2.0 * (w[TURNING + i] * w[WAY + j] + along * p / size) / size - 2.0 * w[WAY + i] * w[TURNING + j] / size
                )
                w[BY_RATE + 18 + 3 * i + j] = p / size
    for i in range(3):
        for j in range(3):
            x = 1.0 if i == j and kind == 0 else 0.0
            y = 1.0 if i == j and kind == 1 else 0.0
            for m in range(3):
                x += r * w[BY_RATE + 3 * i + m] * w[SLIP + 3 * m + j]
                x += r * w[BY_RATE + 9 + 3 * i + m] * w[SLIPPING + 3 * m + j]
                y += r * w[BY_RATE + 9 + 3 * i + m] * w[SLIP + 3 * m + j]
            w[FOLLOWS + 12 * i + j] = x
            w[FOLLOWS + 12 * i + 3 + j] = y + r * w[BY_RATE + 3 * i + j]
            w[FOLLOWS + 12 * i + 6 + j] = r * w[BY_RATE + 9 + 3 * i + j]
            w[FOLLOWS + 12 * i + 9 + j] = r * w[BY_RATE + 18 + 3 * i + j]
    for j in range(12):
        x = 0.0
        for i in range(3):
            x += w[MOVED + i] / big * w[FOLLOWS + 12 * i + j]
        w[FOLLOW + j] = x
        for i in range(3):
            w[FOLLOWS + 12 * i + j] -= w[MOVED + i] / big * x
    for i in range(12):
        w[SLOPE + 3 + i] += cost * over * w[FOLLOW + i]
        for j in range(12):
            x = w[FOLLOW + i] * w[FOLLOW + j]
            for m in range(3):
                x += w[FOLLOWS + 12 * m + i] * w[FOLLOWS + 12 * m + j] * over / big
            w[BEND + 15 * (3 + i) + 3 + j] += cost * x


def by_copy(w: Floats, r: float, share: float, size: float, lack: float, weight: float) -> None:
    """Add one copy's derivatives by head and force; what the hand costs is in `PUSHES` and `FIRM`."""
    along = 0.0
    for i in range(3):
        along += w[PUSHES + 3 + i] * w[WAY + i]
        for j in range(3):
            w[REACH + 3 * i + j] = r * ((1.0 if i == j else 0.0) - w[WAY + i] * w[WAY + j]) / size
    for i in range(3):
        w[BY_HEAD + i] += share * (w[PUSHES + i] + w[PUSHES + 3 + i])
        x = 0.0
        for j in range(3):
            x += w[REACH + 3 * i + j] * w[PUSHES + 3 + j]
            y = 0.0
            z = 0.0
            for m in range(3):
                y += w[FIRM + 9 + 3 * i + m] * w[REACH + 3 * m + j]
                z += w[FIRM + 18 + 3 * i + m] * w[REACH + 3 * m + j]
            w[BOTH + 3 * i + j] = z
            w[HEAD_FORCE + 3 * i + j] += share * (y + z)
            w[HEAD_HEAD + 3 * i + j] += share * (
                w[FIRM + 3 * i + j] + w[FIRM + 9 + 3 * i + j] + w[FIRM + 9 + 3 * j + i] + w[FIRM + 18 + 3 * i + j]
            )
        x -= weight * lack * w[INWARD + i]
        w[BY_FORCE + i] += share * x
    for i in range(3):
        for j in range(3):
            x = 0.0
            for m in range(3):
                x += w[REACH + 3 * i + m] * w[BOTH + 3 * m + j]
            bent = (
                w[PUSHES + 3 + i] * w[WAY + j]
                + w[WAY + i] * w[PUSHES + 3 + j]
                + along * ((1.0 if i == j else 0.0) - 3.0 * w[WAY + i] * w[WAY + j])
            )
            x -= r * bent / (size * size)
            x += weight * w[INWARD + i] * w[INWARD + j]
            w[FORCE_FORCE + 3 * i + j] += share * x


def by_path(w: Floats, share: float, weight: float) -> None:
    """Add to `slope` and `bend` what the copies cost, by the head's path through drag, and the head's own deviation."""
    for i in range(3):
        w[SLOPE + i] += share * (w[BY_HEAD + i] + weight * w[HEAD_OFF + i])
        w[SLOPE + 6 + i] += share * w[BY_FORCE + i]
        x = 0.0
        for j in range(3):
            x += w[SLIP + 3 * i + j] * w[BY_FORCE + j]
            y = 0.0
            z = 0.0
            for m in range(3):
                y += w[HEAD_FORCE + 3 * i + m] * w[SLIP + 3 * m + j]
                z += w[SLIP + 3 * i + m] * w[FORCE_FORCE + 3 * m + j]
            w[BOTH + 3 * i + j] = z
            w[CROSS + 3 * i + j] = y
        w[SLOPE + 3 + i] += share * x
    for i in range(3):
        for j in range(3):
            x = 0.0
            for m in range(3):
                x += w[BOTH + 3 * i + m] * w[SLIP + 3 * m + j]
            own = weight if i == j else 0.0
            w[BEND + 15 * i + j] += share * (w[HEAD_HEAD + 3 * i + j] + own)
            w[BEND + 15 * i + 3 + j] += share * w[CROSS + 3 * i + j]
            w[BEND + 15 * (3 + j) + i] += share * w[CROSS + 3 * i + j]
            w[BEND + 15 * i + 6 + j] += share * w[HEAD_FORCE + 3 * i + j]
            w[BEND + 15 * (6 + j) + i] += share * w[HEAD_FORCE + 3 * i + j]
            w[BEND + 15 * (3 + i) + 3 + j] += share * x
            w[BEND + 15 * (3 + i) + 6 + j] += share * w[BOTH + 3 * i + j]
            w[BEND + 15 * (6 + j) + 3 + i] += share * w[BOTH + 3 * i + j]
            w[BEND + 15 * (6 + i) + 6 + j] += share * w[FORCE_FORCE + 3 * i + j]


def spread(w: Floats, pieces: Floats, piece: int, stride: int, orders: int) -> None:
    """Add one point's derivatives to `load` and `block` of its span."""
    for j in range(6):
        for i in range(3):
            x = 0.0
            for o in range(orders):
                x += pieces[piece + stride * o + j] * w[SLOPE + 3 * o + i]
            w[LOAD + 3 * j + i] += x
            for m in range(3 * orders):
                x = 0.0
                for o in range(orders):
                    x += pieces[piece + stride * o + j] * w[BEND + 15 * (3 * o + i) + m]
                w[HALF + 15 * (3 * j + i) + m] = x
    for j in range(6):
        for i in range(3):
            for l in range(j + 1):
                for m in range(3):
                    x = 0.0
                    for o in range(orders):
                        x += w[HALF + 15 * (3 * j + i) + 3 * o + m] * pieces[piece + stride * o + l]
                    w[BLOCK + 18 * (3 * j + i) + 3 * l + m] += x


def gathered(g: Given, w: Floats, span: int, gradient: Floats, matrix: Floats) -> None:
    """Add a span's `load` and `block` to those of all unknowns."""
    for j in range(18):
        for l in range(j + 1, 18):
            if l // 3 > j // 3:
                w[BLOCK + 18 * j + l] = w[BLOCK + 18 * l + j]
    for j in range(6):
        at = g.rows[g.span[6 * span + j]]
        if at < 0:
            continue
        turn = 9 * (6 * span + j)
        for i in range(3):
            x = 0.0
            for m in range(3):
                x += g.turned[turn + 3 * m + i] * w[LOAD + 3 * j + m]
            gradient[at + i] += x
        for l in range(6):
            to = g.rows[g.span[6 * span + l]]
            if to < 0 or to > at:
                continue
            other = 9 * (6 * span + l)
            for i in range(3):
                for m in range(3):
                    x = 0.0
                    for o in range(3):
                        x += g.turned[turn + 3 * o + i] * w[BLOCK + 18 * (3 * j + o) + 3 * l + m]
                    w[CROSS + 3 * i + m] = x
            for i in range(3):
                for m in range(3):
                    if to + m <= at + i:
                        x = 0.0
                        for o in range(3):
                            x += w[CROSS + 3 * i + o] * g.turned[other + 3 * o + m]
                        matrix[g.offset[at + i] + to + m - g.first[at + i]] += x


def figures(
    g: Given, w: Floats, unknown: Floats, wanted: int, gradient: Floats, matrix: Floats, told: Floats
) -> float:
    """The value; where wanted, half its gradient and half its second derivatives. Penalties alone go to `told`."""
    spans = len(g.span) // 6
    places = len(g.shares) // spans
    mates = len(g.mates) // (7 * spans * places * g.copies)
    n = g.numbers
    r, drag = n[LENGTH], n[DRAG]
    if wanted > 0:
        for i in range(len(gradient)):
            gradient[i] = 0.0
        for i in range(len(matrix)):
            matrix[i] = 0.0
    value = 0.0
    penalty = 0.0
    for k in range(spans):
        for j in range(6):
            c = 3 * g.span[6 * k + j]
            turn = 9 * (6 * k + j)
            for i in range(3):
                x = 0.0
                for m in range(3):
                    x += g.turned[turn + 3 * i + m] * unknown[c + m]
                w[LOCAL + 3 * j + i] = x
        if wanted > 0:
            for i in range(324):
                w[BLOCK + i] = 0.0
            for i in range(18):
                w[LOAD + i] = 0.0
        for p in range(places):
            point = places * k + p
            piece = 6 * (5 * places * k + p)
            share = g.shares[point]
            for o in range(5):
                for i in range(3):
                    x = 0.0
                    for j in range(6):
                        x += g.pieces[piece + 6 * places * o + j] * w[LOCAL + 3 * j + i]
                    w[PATH + 3 * o + i] = x
            square = SMOOTH
            rising = 0.0
            for i in range(3):
                square += w[PATH + 3 + i] * w[PATH + 3 + i]
                rising += w[PATH + 3 + i] * w[PATH + 6 + i]
                off = w[PATH + i] - g.heads[3 * point + i]
                w[HEAD_OFF + i] = off
                w[INWARD + i] = g.inwards[3 * point + i]
                value += share * n[HEAD_WEIGHT] * off * off
            speed = sqrt(square)
            for i in range(3):
                w[BLOWN + i] = drag * speed * w[PATH + 3 + i]
                w[RATE + i] = w[PATH + 9 + i] + drag * (rising / speed * w[PATH + 3 + i] + speed * w[PATH + 6 + i])
            if wanted > 0:
                for i in range(15):
                    w[SLOPE + i] = 0.0
                for i in range(225):
                    w[BEND + i] = 0.0
                for i in range(3):
                    w[BY_HEAD + i] = 0.0
                    w[BY_FORCE + i] = 0.0
                for i in range(9):
                    w[HEAD_HEAD + i] = 0.0
                    w[HEAD_FORCE + i] = 0.0
                    w[FORCE_FORCE + i] = 0.0
                for i in range(3):
                    for j in range(3):
                        same = 1.0 if i == j else 0.0
                        square = w[PATH + 3 + i] * w[PATH + 3 + j]
                        mixed = w[PATH + 3 + i] * w[PATH + 6 + j] + w[PATH + 6 + i] * w[PATH + 3 + j]
                        w[SLIP + 3 * i + j] = drag * (speed * same + square / speed)
                        w[SLIPPING + 3 * i + j] = (
                            drag
                            * (rising * same + mixed - rising * square / (speed * speed))
                            / speed
                        )
            orders = 3
            for c in range(g.copies):
                cost = share / g.copies
                size = 0.0
                for i in range(3):
                    w[PULLED + i] = w[PATH + 6 + i] + g.ups[3 * c + i] + w[BLOWN + i]
                    size += w[PULLED + i] * w[PULLED + i]
                size = sqrt(size)
                lack = n[PULL]
                along = 0.0
                second = 0.0
                for i in range(3):
                    w[WAY + i] = w[PULLED + i] / size
                    w[HELD + i] = w[PATH + i] + r * w[WAY + i]
                    lack -= w[PULLED + i] * g.inwards[3 * point + i]
                    along += w[WAY + i] * w[RATE + i]
                    second += w[WAY + i] * w[PATH + 12 + i]
                    off = w[HELD + i] - g.hands[3 * point + i]
                    value += cost * n[HAND_WEIGHT] * off * off
                    w[PUSHES + i] = 0.0
                    w[PUSHES + 3 + i] = n[HAND_WEIGHT] * off
                if lack > 0.0:
                    penalty += cost * n[PULL_WEIGHT] * lack * lack
                for i in range(27):
                    w[FIRM + i] = 0.0
                for i in range(3):
                    w[FIRM + 18 + 4 * i] = n[HAND_WEIGHT]
                if n[TOUCH_WEIGHT] > 0.0:
                    at = (c * spans + k) * places + p
                    for i in range(3):
                        x = g.origins[3 * at + i]
                        y = x
                        for j in range(3):
                            x += g.frames[9 * at + 3 * i + j] * w[HELD + j]
                            y += g.frames[9 * at + 3 * i + j] * w[PATH + j]
                        w[SEEN + i] = x
                        w[SEEN + 3 + i] = y
                    mate = 7 * mates * (g.copies * point + c)
                    penalty += cost * touching(
                        w, n[TOUCH_WEIGHT], g.frames, 9 * at, g.room, g.bodies, g.mates, mate, mates
                    )
                turn = 0.0
                for i in range(3):
                    w[TURNING + i] = (w[RATE + i] - along * w[WAY + i]) / size
                    turn += w[TURNING + i] * w[TURNING + i]
                for i in range(3):
                    across = w[PATH + 12 + i] - second * w[WAY + i] - 2.0 * along * w[TURNING + i]
                    w[BENDING + i] = across / size - turn * w[WAY + i]
                for kind in range(2):
                    big = 0.0
                    for i in range(3):
                        bent = w[TURNING + i] if kind == 0 else w[BENDING + i]
                        w[MOVED + i] = w[PATH + 3 + 3 * kind + i] + r * bent
                        big += w[MOVED + i] * w[MOVED + i]
                    over = sqrt(big) - n[SPEED + kind]
                    if over > 0.0:
                        weight = cost * n[SPEED_WEIGHT + kind]
                        penalty += weight * over * over
                        if wanted > 0:
                            orders = 5
                            hurried(w, r, kind, size, along, over, weight)
                if wanted > 0:
                    by_copy(w, r, 1.0 / g.copies, size, max(lack, 0.0), n[PULL_WEIGHT] if lack > 0.0 else 0.0)
            if wanted > 0:
                by_path(w, share, n[HEAD_WEIGHT])
                spread(w, g.pieces, piece, 6 * places, orders)
        if wanted > 0:
            gathered(g, w, k, gradient, matrix)
    told[PENALTY] = penalty
    return value + penalty


def factored(g: Given, matrix: Floats) -> bool:
    """Factor a matrix L·Lᵀ in its place; False where it is not positive."""
    for i in range(len(g.first)):
        fi = g.first[i]
        oi = g.offset[i] - fi
        for j in range(fi, i + 1):
            fj = g.first[j]
            oj = g.offset[j] - fj
            x = matrix[oi + j]
            for k in range(max(fi, fj), j):
                x -= matrix[oi + k] * matrix[oj + k]
            if j < i:
                matrix[oi + j] = x / matrix[oj + j]
            elif x > 0.0:
                matrix[oi + j] = sqrt(x)
            else:
                return False
    return True


def backed(g: Given, factor: Floats, load: Floats) -> None:
    """Solve with the factor, in the place of the right side."""
    n = len(g.first)
    for i in range(n):
        o = g.offset[i] - g.first[i]
        x = load[i]
        for k in range(g.first[i], i):
            x -= factor[o + k] * load[k]
        load[i] = x / factor[o + i]
    for up in range(n):
        i = n - 1 - up
        o = g.offset[i] - g.first[i]
        load[i] /= factor[o + i]
        for k in range(g.first[i], i):
            load[k] -= factor[o + k] * load[i]


def promised_by(g: Given, gradient: Floats, matrix: Floats, move: Floats) -> float:
    """By how much a move lowers the value, to second order."""
    out = 0.0
    for i in range(len(g.first)):
        o = g.offset[i] - g.first[i]
        x = 2.0 * gradient[i] + matrix[o + i] * move[i]
        for k in range(g.first[i], i):
            x += 2.0 * matrix[o + k] * move[k]
        out -= x * move[i]
    return out


def newton(
    g: Given,
    w: Floats,
    unknown: Floats,
    trial: Floats,
    gradient: Floats,
    matrix: Floats,
    mass: Floats,
    factor: Floats,
    move: Floats,
    told: Floats,
) -> None:
    """Newton's steps, damped until the matrix is positive and the value falls, until one promises little enough.

    With no step allowed, value and derivatives alone. What it came to goes to `told`.
    """
    most, enough = int(g.numbers[MOST_STEPS]), g.numbers[ENOUGH]
    value = 0.0
    promised = 0.0
    damping = 1e-3
    firmer = g.numbers[FIRMER]
    share = inf
    steps = 0
    penalty = 0.0
    trying = False
    for i in range(len(unknown)):
        trial[i] = unknown[i]
    while True:
        # one call for both: it is made into machine code where it stands
        reached = figures(g, w, trial, 0 if trying else 1, gradient, matrix, told)
        if trying:
            steps += 1
            if reached <= value:
                ratio = 2.0 * (value - reached) / max(promised, 1e-300) - 1.0
                damping *= max(g.numbers[LOOSER], 1.0 - ratio * ratio * ratio)
                damping = max(damping, _LEAST_DAMPING)
                firmer = g.numbers[FIRMER]
                trying = False
                share = promised / max(reached, 1e-9)
                continue
            told[REFUSED] += 1.0
            damping = max(firmer * damping, _LEAST_DAMPING)
            firmer *= g.numbers[FIRMER]
            share = min(share, promised / value)
        else:
            value = reached
            penalty = told[PENALTY]
            for i in range(len(unknown)):
                unknown[i] = trial[i]
        found = False
        while steps < most and share > enough and damping < _DAMPED_OUT and not found:
            for i in range(len(matrix)):
                factor[i] = matrix[i] + damping * mass[i]
            found = factored(g, factor)
            if not found:
                told[UNFACTORED] += 1.0
                damping = max(firmer * damping, _LEAST_DAMPING)
                firmer *= g.numbers[FIRMER]
        if not found:
            break
        for i in range(len(move)):
            move[i] = -gradient[i]
        backed(g, factor, move)
        promised = promised_by(g, gradient, matrix, move)
        for c in range(len(g.rows)):
            for i in range(3):
                trial[3 * c + i] = unknown[3 * c + i]
                if g.rows[c] >= 0:
                    trial[3 * c + i] += move[g.rows[c] + i]
        trying = True
    told[VALUE] = value
    told[SHARE] = share
    told[PENALTY] = penalty
    told[STEPS] += steps


def solve(ints: Ints, floats: Floats) -> None:
    """Newton's way down, everything in two arrays: see `packed`; what changes is found in its place.

    At the start of `ints` stand the number of copies and the lengths of the parts that follow, first of whole numbers.
    """
    at = HEADER
    span = ints[at : at + ints[1]]
    at += ints[1]
    rows = ints[at : at + ints[2]]
    at += ints[2]
    first = ints[at : at + ints[3]]
    at += ints[3]
    offset = ints[at : at + ints[4]]
    at = 0
    turned = floats[at : at + ints[5]]
    at += ints[5]
    pieces = floats[at : at + ints[6]]
    at += ints[6]
    shares = floats[at : at + ints[7]]
    at += ints[7]
    frames = floats[at : at + ints[8]]
    at += ints[8]
    origins = floats[at : at + ints[9]]
    at += ints[9]
    ups = floats[at : at + ints[10]]
    at += ints[10]
    heads = floats[at : at + ints[11]]
    at += ints[11]
    hands = floats[at : at + ints[12]]
    at += ints[12]
    inwards = floats[at : at + ints[13]]
    at += ints[13]
    numbers = floats[at : at + ints[14]]
    at += ints[14]
    room = floats[at : at + ints[15]]
    at += ints[15]
    bodies = floats[at : at + ints[16]]
    at += ints[16]
    mates = floats[at : at + ints[17]]
    at += ints[17]
    mass = floats[at : at + ints[18]]
    at += ints[18]
    unknown = floats[at : at + ints[19]]
    at += ints[19]
    told = floats[at : at + ints[20]]
    at += ints[20]
    gradient = floats[at : at + ints[21]]
    at += ints[21]
    matrix = floats[at : at + ints[22]]
    at += ints[22]
    trial = floats[at : at + ints[23]]
    at += ints[23]
    factor = floats[at : at + ints[24]]
    at += ints[24]
    move = floats[at : at + ints[25]]
    at += ints[25]
    work = floats[at : at + ints[26]]
    given = Given(
        ints[0], span, turned, pieces, shares, frames, origins, ups, heads, hands, inwards,
        numbers, room, bodies, mates, rows, first, offset,
    )  # fmt: skip
    newton(
        given, work, unknown, trial, gradient, matrix, mass, factor, move, told
    )


# in the order in which they use each other
FUNCTIONS: Sequence[FunctionType] = (
    nearest, push, touching, hurried, by_copy, by_path, spread, gathered, figures, factored, backed,
    promised_by, newton, solve,
)  # type: ignore[assignment]  # fmt: skip
