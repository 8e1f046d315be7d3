"""What the kernel adds up at one instant: contact, a hurried hand, and derivatives by the head's path; see `kernel`."""

from math import inf, sqrt

from sequencer.arrays import Floats
from sequencer.motion.flown.kernel_places import (
    AT_ARM,
    AT_BEND,
    AT_BLOCK,
    AT_BOTH,
    AT_BY_FORCE,
    AT_BY_HEAD,
    AT_BY_RATE,
    AT_CROSS,
    AT_FIRM,
    AT_FLOOR,
    AT_FOLLOW,
    AT_FOLLOWS,
    AT_FORCE_FORCE,
    AT_HALF,
    AT_HEAD_FORCE,
    AT_HEAD_HEAD,
    AT_HEAD_OFF,
    AT_HIGH,
    AT_INWARD,
    AT_LOAD,
    AT_LOW,
    AT_MOVED,
    AT_NEAR,
    AT_NORMAL,
    AT_OFF,
    AT_PATH,
    AT_PUSHES,
    AT_REACH,
    AT_SEEN,
    AT_SHOULDER,
    AT_SLIP,
    AT_SLIPPING,
    AT_SLOPE,
    AT_THIN,
    AT_TRUNK,
    AT_TURNING,
    AT_WAY,
)

_ROUNDED = 1e-9  # [m] far more than rounding


def four(w: Floats, at: int) -> tuple[float, float, float, float]:
    """Four numbers that lie one after the other: what is done to each of them is done to all at once."""
    return w[at], w[at + 1], w[at + 2], w[at + 3]


def into(w: Floats, at: int, a: float, b: float, c: float, d: float) -> None:
    """Put four numbers one after the other."""
    w[at] = a
    w[at + 1] = b
    w[at + 2] = c
    w[at + 3] = d


def nearest(w: Floats, start: int, b: Floats, at: int) -> float:
    """Distance of hand or head (`start`) to head, as in `AT_SEEN`, from a segment of b; shares and gap go to `AT_NEAR`.

    Source: `geometry.segments.segment_segment`.
    """
    aa = ee = bb = cc = ff = 0.0
    for i in range(3):
        d1 = w[AT_SEEN + 3 + i] - w[start + i]
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
        place = w[start + i] + s * (w[AT_SEEN + 3 + i] - w[start + i])
        gap = place - b[at + i] - t * (b[at + 3 + i] - b[at + i])
        w[AT_NEAR + 2 + i] = gap
        square += gap * gap
    w[AT_NEAR] = s
    w[AT_NEAR + 1] = t
    return sqrt(square)


def push(w: Floats, cost: float, frames: Floats, frame: int, depth: float, share: float) -> float:
    """Add a contact along `normal`, at a share of the tether from hand to head; its penalty."""
    for i in range(3):
        x = 0.0
        for j in range(3):
            x += frames[frame + 3 * j + i] * w[AT_NORMAL + j]
        w[AT_OFF + i] = x
    other = 1.0 - share
    for i in range(3):
        lift = -cost * depth * w[AT_OFF + i]
        w[AT_PUSHES + i] += share * lift
        w[AT_PUSHES + 3 + i] += other * lift
        for j in range(3):
            square = cost * w[AT_OFF + i] * w[AT_OFF + j]
            w[AT_FIRM + 3 * i + j] += share * share * square
            w[AT_FIRM + 9 + 3 * i + j] += share * other * square
            w[AT_FIRM + 18 + 3 * i + j] += other * other * square
    return cost * depth * depth


def measured(
    w: Floats,
    room: Floats,
    bodies: Floats,
    mates: Floats,
    mate: int,
    moving: int,
    clear: Floats,
    kept: int,
) -> None:
    """Note where hand and head are, and how far both can go before they touch each capsule; -1 where they may touch already.

    Before that stand the least of all, and the least of those that are not touched.
    """
    count = len(bodies) // 7
    least = inf
    free = inf
    for i in range(6):
        clear[kept + i] = w[AT_SEEN + i]
    for c in range(count + moving):
        spare = inf
        for own in range(2):
            start = AT_SEEN if own == 0 else AT_SEEN + 3
            if c < count:
                gap = nearest(w, start, bodies, 7 * c)
                enough = bodies[7 * c + 6] + room[AT_THIN + own]
            else:
                gap = nearest(w, start, mates, mate + 7 * (c - count))
                enough = mates[mate + 7 * (c - count) + 6] + room[AT_THIN + own]
            spare = min(spare, gap - enough)
        if spare > _ROUNDED:
            free = min(free, spare)
        else:
            spare = -1.0
        least = min(least, spare)
        clear[kept + 8 + c] = spare
    clear[kept + 6] = least
    clear[kept + 7] = free


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
    clear: Floats,
    kept: int,
) -> float:
    """Penalty of arm's reach, floor, own body and what moves beside it; hand and head are in `seen`."""
    total = 0.0
    if room[AT_ARM] > 0.0:
        square = 0.0
        for i in range(3):
            x = 0.0
            for j in range(3):
                x += room[AT_TRUNK + 3 * j + i] * (w[AT_SEEN + j] - room[AT_SHOULDER + j])
            x -= min(max(x, room[AT_LOW + i]), room[AT_HIGH + i])
            w[AT_OFF + i] = x
            square += x * x
        far = sqrt(square)
        over = far - room[AT_ARM]
        if over > 0.0:
            for i in range(3):
                x = 0.0
                for j in range(3):
                    x -= room[AT_TRUNK + 3 * i + j] * w[AT_OFF + j] / far
                w[AT_NORMAL + i] = x
            total += push(w, cost, frames, frame, over, 0.0)
    under = room[AT_FLOOR] - w[AT_SEEN + 5]
    if under > 0.0:
        w[AT_NORMAL] = 0.0
        w[AT_NORMAL + 1] = 0.0
        w[AT_NORMAL + 2] = 1.0
        total += push(w, cost, frames, frame, under, 1.0)
    count = len(bodies) // 7
    off = 0.0
    gone = 0.0
    for i in range(3):
        off += (w[AT_SEEN + i] - clear[kept + i]) ** 2
        gone += (w[AT_SEEN + 3 + i] - clear[kept + 3 + i]) ** 2
    # no place of the tether has gone farther than its farther end since gaps were measured
    gone = sqrt(max(off, gone)) + _ROUNDED
    if clear[kept + 7] <= gone:
        measured(w, room, bodies, mates, mate, moving, clear, kept)
        gone = _ROUNDED
    if clear[kept + 6] > gone:
        return total
    for c in range(count + moving):
        if clear[kept + 8 + c] > gone:
            continue
        for own in range(2):
            start = AT_SEEN if own == 0 else AT_SEEN + 3
            if c < count:
                gap = nearest(w, start, bodies, 7 * c)
                enough = bodies[7 * c + 6] + room[AT_THIN + own]
            else:
                gap = nearest(w, start, mates, mate + 7 * (c - count))
                enough = mates[mate + 7 * (c - count) + 6] + room[AT_THIN + own]
            if gap < enough and gap > 1e-9:
                for i in range(3):
                    w[AT_NORMAL + i] = w[AT_NEAR + 2 + i] / gap
                total += push(w, cost, frames, frame, enough - gap, w[AT_NEAR] if own == 0 else 1.0)
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
        big += w[AT_MOVED + i] * w[AT_MOVED + i]
        uw += w[AT_WAY + i] * w[AT_PATH + 12 + i]
        turn += w[AT_TURNING + i] * w[AT_TURNING + i]
    big = sqrt(big)
    for i in range(3):
        for j in range(3):
            p = (1.0 if i == j else 0.0) - w[AT_WAY + i] * w[AT_WAY + j]
            w[AT_BY_RATE + 27 + 3 * i + j] = -(
                w[AT_WAY + i] * w[AT_TURNING + j] + w[AT_TURNING + i] * w[AT_WAY + j]
            ) / size - along * p / (size * size)
            w[AT_BY_RATE + 3 * i + j] = w[AT_BY_RATE + 27 + 3 * i + j]
            w[AT_BY_RATE + 9 + 3 * i + j] = p / size
            w[AT_BY_RATE + 18 + 3 * i + j] = 0.0
    if kind == 1:
        for j in range(3):
            x = 0.0
            for i in range(3):
                x += w[AT_TURNING + i] * w[AT_BY_RATE + 27 + 3 * i + j]
            w[AT_OFF + j] = x
        for i in range(3):
            n = w[AT_PATH + 12 + i] - uw * w[AT_WAY + i] - 2.0 * along * w[AT_TURNING + i]
            for j in range(3):
                p = (1.0 if i == j else 0.0) - w[AT_WAY + i] * w[AT_WAY + j]
                across = w[AT_PATH + 12 + j] - uw * w[AT_WAY + j]
                x = (
                    -(w[AT_WAY + i] * across + uw * p) / size
                    - 2.0 * w[AT_TURNING + i] * w[AT_TURNING + j]
                )
                x -= 2.0 * along * w[AT_BY_RATE + 27 + 3 * i + j]
                w[AT_BY_RATE + 3 * i + j] = (
                    x / size
                    - n * w[AT_WAY + j] / (size * size)
                    - 2.0 * w[AT_WAY + i] * w[AT_OFF + j]
                    - turn * p / size
                )
                w[AT_BY_RATE + 9 + 3 * i + j] = (
                    -2.0 * (w[AT_TURNING + i] * w[AT_WAY + j] + along * p / size) / size
                    - 2.0 * w[AT_WAY + i] * w[AT_TURNING + j] / size
                )
                w[AT_BY_RATE + 18 + 3 * i + j] = p / size
    for i in range(3):
        for j in range(3):
            x = 1.0 if i == j and kind == 0 else 0.0
            y = 1.0 if i == j and kind == 1 else 0.0
            for m in range(3):
                x += r * w[AT_BY_RATE + 3 * i + m] * w[AT_SLIP + 3 * m + j]
                x += r * w[AT_BY_RATE + 9 + 3 * i + m] * w[AT_SLIPPING + 3 * m + j]
                y += r * w[AT_BY_RATE + 9 + 3 * i + m] * w[AT_SLIP + 3 * m + j]
            w[AT_FOLLOWS + 16 * i + j] = x
            w[AT_FOLLOWS + 16 * i + 4 + j] = y + r * w[AT_BY_RATE + 3 * i + j]
            w[AT_FOLLOWS + 16 * i + 8 + j] = r * w[AT_BY_RATE + 9 + 3 * i + j]
            w[AT_FOLLOWS + 16 * i + 12 + j] = r * w[AT_BY_RATE + 18 + 3 * i + j]
    for o in range(4):
        for j in range(3):
            x = 0.0
            for i in range(3):
                x += w[AT_MOVED + i] / big * w[AT_FOLLOWS + 16 * i + 4 * o + j]
            w[AT_FOLLOW + 4 * o + j] = x
            for i in range(3):
                w[AT_FOLLOWS + 16 * i + 4 * o + j] -= w[AT_MOVED + i] / big * x
    for i in range(16):
        w[AT_SLOPE + 4 + i] += cost * over * w[AT_FOLLOW + i]
    for k in range(0, 16, 4):
        f0, f1, f2, f3 = four(w, AT_FOLLOW + k)
        a0, a1, a2, a3 = four(w, AT_FOLLOWS + k)
        b0, b1, b2, b3 = four(w, AT_FOLLOWS + 16 + k)
        c0, c1, c2, c3 = four(w, AT_FOLLOWS + 32 + k)
        for j in range(12):
            own, at = j + j // 3, AT_BEND + 20 * (3 + j) + 4 + k
            f, a = w[AT_FOLLOW + own], w[AT_FOLLOWS + own]
            b, c = w[AT_FOLLOWS + 16 + own], w[AT_FOLLOWS + 32 + own]
            x0, x1, x2, x3 = four(w, at)
            x0 += cost * (f0 * f + a0 * a * over / big + b0 * b * over / big + c0 * c * over / big)
            x1 += cost * (f1 * f + a1 * a * over / big + b1 * b * over / big + c1 * c * over / big)
            x2 += cost * (f2 * f + a2 * a * over / big + b2 * b * over / big + c2 * c * over / big)
            x3 += cost * (f3 * f + a3 * a * over / big + b3 * b * over / big + c3 * c * over / big)
            into(w, at, x0, x1, x2, x3)


def by_copy(w: Floats, r: float, share: float, size: float, lack: float, weight: float) -> None:
    """Add one copy's derivatives by head and force; what the hand costs is in `AT_PUSHES` and `AT_FIRM`."""
    along = 0.0
    for i in range(3):
        along += w[AT_PUSHES + 3 + i] * w[AT_WAY + i]
        for j in range(3):
            w[AT_REACH + 3 * i + j] = (
                r * ((1.0 if i == j else 0.0) - w[AT_WAY + i] * w[AT_WAY + j]) / size
            )
    for i in range(3):
        w[AT_BY_HEAD + i] += share * (w[AT_PUSHES + i] + w[AT_PUSHES + 3 + i])
        x = 0.0
        for j in range(3):
            x += w[AT_REACH + 3 * i + j] * w[AT_PUSHES + 3 + j]
            y = 0.0
            z = 0.0
            for m in range(3):
                y += w[AT_FIRM + 9 + 3 * i + m] * w[AT_REACH + 3 * m + j]
                z += w[AT_FIRM + 18 + 3 * i + m] * w[AT_REACH + 3 * m + j]
            w[AT_BOTH + 3 * i + j] = z
            w[AT_HEAD_FORCE + 3 * i + j] += share * (y + z)
            w[AT_HEAD_HEAD + 3 * i + j] += share * (
                w[AT_FIRM + 3 * i + j]
                + w[AT_FIRM + 9 + 3 * i + j]
                + w[AT_FIRM + 9 + 3 * j + i]
                + w[AT_FIRM + 18 + 3 * i + j]
            )
        x -= weight * lack * w[AT_INWARD + i]
        w[AT_BY_FORCE + i] += share * x
    for i in range(3):
        for j in range(3):
            x = 0.0
            for m in range(3):
                x += w[AT_REACH + 3 * i + m] * w[AT_BOTH + 3 * m + j]
            bent = (
                w[AT_PUSHES + 3 + i] * w[AT_WAY + j]
                + w[AT_WAY + i] * w[AT_PUSHES + 3 + j]
                + along * ((1.0 if i == j else 0.0) - 3.0 * w[AT_WAY + i] * w[AT_WAY + j])
            )
            x -= r * bent / (size * size)
            x += weight * w[AT_INWARD + i] * w[AT_INWARD + j]
            w[AT_FORCE_FORCE + 3 * i + j] += share * x


def by_path(w: Floats, share: float, weight: float) -> None:
    """Add to `slope` and `bend` what the copies cost, by the head's path through drag, and the head's own deviation."""
    for i in range(3):
        w[AT_SLOPE + i] += share * (w[AT_BY_HEAD + i] + weight * w[AT_HEAD_OFF + i])
        w[AT_SLOPE + 8 + i] += share * w[AT_BY_FORCE + i]
        x = 0.0
        for j in range(3):
            x += w[AT_SLIP + 3 * i + j] * w[AT_BY_FORCE + j]
            y = 0.0
            z = 0.0
            for m in range(3):
                y += w[AT_HEAD_FORCE + 3 * i + m] * w[AT_SLIP + 3 * m + j]
                z += w[AT_SLIP + 3 * i + m] * w[AT_FORCE_FORCE + 3 * m + j]
            w[AT_BOTH + 3 * i + j] = z
            w[AT_CROSS + 3 * i + j] = y
        w[AT_SLOPE + 4 + i] += share * x
    for i in range(3):
        for j in range(3):
            x = 0.0
            for m in range(3):
                x += w[AT_BOTH + 3 * i + m] * w[AT_SLIP + 3 * m + j]
            own = weight if i == j else 0.0
            w[AT_BEND + 20 * j + i] += share * (w[AT_HEAD_HEAD + 3 * i + j] + own)
            w[AT_BEND + 20 * (3 + j) + i] += share * w[AT_CROSS + 3 * i + j]
            w[AT_BEND + 20 * i + 4 + j] += share * w[AT_CROSS + 3 * i + j]
            w[AT_BEND + 20 * (6 + j) + i] += share * w[AT_HEAD_FORCE + 3 * i + j]
            w[AT_BEND + 20 * i + 8 + j] += share * w[AT_HEAD_FORCE + 3 * i + j]
            w[AT_BEND + 20 * (3 + j) + 4 + i] += share * x
            w[AT_BEND + 20 * (6 + j) + 4 + i] += share * w[AT_BOTH + 3 * i + j]
            w[AT_BEND + 20 * (3 + i) + 8 + j] += share * w[AT_BOTH + 3 * i + j]
            w[AT_BEND + 20 * (6 + j) + 8 + i] += share * w[AT_FORCE_FORCE + 3 * i + j]


def spread(w: Floats, pieces: Floats, piece: int, stride: int, orders: int) -> None:
    """Add one point's derivatives to `load` and `block` of its span; unrolled, for this is where most of the time goes."""
    for m in range(-1, 3 * orders):  # -1: the gradient
        at = AT_SLOPE if m < 0 else AT_BEND + 20 * m
        to = AT_LOAD if m < 0 else AT_HALF + 24 * m
        a0, a1, a2, a3 = four(w, at)
        b0, b1, b2, b3 = four(w, at + 4)
        c0, c1, c2, c3 = four(w, at + 8)
        d0, d1, d2, d3 = four(w, at + 12)
        e0, e1, e2, e3 = four(w, at + 16)
        for j in range(6):
            own = piece + j
            p, q, r = pieces[own], pieces[own + stride], pieces[own + 2 * stride]
            x0 = p * a0 + q * b0 + r * c0
            x1 = p * a1 + q * b1 + r * c1
            x2 = p * a2 + q * b2 + r * c2
            x3 = p * a3 + q * b3 + r * c3
            if orders > 3:
                p, q = pieces[own + 3 * stride], pieces[own + 4 * stride]
                x0 = x0 + p * d0 + q * e0
                x1 = x1 + p * d1 + q * e1
                x2 = x2 + p * d2 + q * e2
                x3 = x3 + p * d3 + q * e3
            if m < 0:
                x0 += w[to + 4 * j + 0]
                x1 += w[to + 4 * j + 1]
                x2 += w[to + 4 * j + 2]
                x3 += w[to + 4 * j + 3]
            into(w, to + 4 * j, x0, x1, x2, x3)
    for m in range(3):
        for j in range(6):
            at, to = AT_HALF + 24 * m + 4 * j, AT_BLOCK + 24 * m + 4 * j
            a0, a1, a2, a3 = four(w, at)
            b0, b1, b2, b3 = four(w, at + 72)
            c0, c1, c2, c3 = four(w, at + 144)
            d0, d1, d2, d3 = four(w, at + 216)
            e0, e1, e2, e3 = four(w, at + 288)
            for k in range(j + 1):
                own = piece + k
                p, q, r = pieces[own], pieces[own + stride], pieces[own + 2 * stride]
                x0 = p * a0 + q * b0 + r * c0
                x1 = p * a1 + q * b1 + r * c1
                x2 = p * a2 + q * b2 + r * c2
                x3 = p * a3 + q * b3 + r * c3
                if orders > 3:
                    p, q = pieces[own + 3 * stride], pieces[own + 4 * stride]
                    x0 = x0 + p * d0 + q * e0
                    x1 = x1 + p * d1 + q * e1
                    x2 = x2 + p * d2 + q * e2
                    x3 = x3 + p * d3 + q * e3
                y0, y1, y2, y3 = four(w, to + 72 * k)
                into(w, to + 72 * k, y0 + x0, y1 + x1, y2 + x2, y3 + x3)
