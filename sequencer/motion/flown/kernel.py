"""One least-deviation problem in numbers: its value, its derivatives and Newton's way down. Compiled before it is used.

The formulas are those of `optimum.py` and `tether.py`, written as plain loops over flat arrays, so that they can be made into
machine code (`compiled.py`); `python -m sequencer.motion.flown.compiled` makes it anew after a change here. As Python they run
too, a thousand times slower. Half gradients and half second derivatives throughout. Vectors of three lie one after the other,
matrices row by row. Names of arrays that every function takes:

    span     (spans, 6)                         coefficient at each place
    turned   (spans, 6, 3, 3)                   what it is multiplied by there; empty where it is by nothing
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
    clear    (copies, spans, places, 8 + n + m) hand and head when gaps were measured, and how far both may go from there
                                                before they touch (`kernel_points.measured`) [m, body frame]
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

from sequencer.arrays import Floats, Ints
from sequencer.motion.flown.kernel_places import (
    AT_BEND,
    AT_BENDING,
    AT_BLOCK,
    AT_BLOWN,
    AT_BY_FORCE,
    AT_BY_HEAD,
    AT_CROSS,
    AT_DRAG,
    AT_ENOUGH,
    AT_FIRM,
    AT_FIRMER,
    AT_FORCE_FORCE,
    AT_HAND_WEIGHT,
    AT_HEAD_FORCE,
    AT_HEAD_HEAD,
    AT_HEAD_OFF,
    AT_HEAD_WEIGHT,
    AT_HELD,
    AT_INWARD,
    AT_LENGTH,
    AT_LOAD,
    AT_LOCAL,
    AT_LOOSER,
    AT_MOST_STEPS,
    AT_MOVED,
    AT_PATH,
    AT_PENALTY,
    AT_PULL,
    AT_PULL_WEIGHT,
    AT_PULLED,
    AT_PUSHES,
    AT_RATE,
    AT_REFUSED,
    AT_SEEN,
    AT_SHARE,
    AT_SLIP,
    AT_SLIPPING,
    AT_SLOPE,
    AT_SPEED,
    AT_SPEED_WEIGHT,
    AT_STEPS,
    AT_TOUCH_WEIGHT,
    AT_TURNING,
    AT_UNFACTORED,
    AT_VALUE,
    AT_WAY,
    KERNEL_HEADER,
    SMOOTHED_AT_REST,
    Given,
)
from sequencer.motion.flown.kernel_points import (
    by_copy,
    by_path,
    four,
    hurried,
    into,
    measured,
    nearest,
    push,
    spread,
    touching,
)

_LEAST_DAMPING, _DAMPED_OUT = 1e-9, 1e12


def gathered(g: Given, w: Floats, span: int, gradient: Floats, matrix: Floats) -> None:
    """Add a span's `load` and `block` to those of all unknowns."""
    turned = len(g.turned) > 0
    for j in range(6):
        at = g.rows[g.span[6 * span + j]]
        if at < 0:
            continue
        turn = 9 * (6 * span + j)
        for i in range(3):
            x = w[AT_LOAD + 4 * j + i]
            if turned:
                x = 0.0
                for m in range(3):
                    x += g.turned[turn + 3 * m + i] * w[AT_LOAD + 4 * j + m]
            gradient[at + i] += x
        for q in range(6):
            to = g.rows[g.span[6 * span + q]]
            if to < 0 or to > at:
                continue
            other = 9 * (6 * span + q)
            # what the kernel leaves out of the block is its mirror image
            own, down, along = (
                (AT_BLOCK + 72 * q + 4 * j, 1, 24) if q <= j else (AT_BLOCK + 72 * j + 4 * q, 24, 1)
            )
            if not turned:
                for i in range(3):
                    for m in range(3):
                        if to + m <= at + i:
                            row = g.offset[at + i] - g.first[at + i]
                            matrix[row + to + m] += w[own + down * i + along * m]
                continue
            for i in range(3):
                for m in range(3):
                    x = 0.0
                    for o in range(3):
                        x += g.turned[turn + 3 * o + i] * w[own + down * o + along * m]
                    w[AT_CROSS + 3 * i + m] = x
            for i in range(3):
                for m in range(3):
                    if to + m <= at + i:
                        x = 0.0
                        for o in range(3):
                            x += w[AT_CROSS + 3 * i + o] * g.turned[other + 3 * o + m]
                        matrix[g.offset[at + i] + to + m - g.first[at + i]] += x


def figures(
    g: Given,
    w: Floats,
    unknown: Floats,
    wanted: int,
    gradient: Floats,
    matrix: Floats,
    told: Floats,
    most: float,
) -> float:
    """The value; where wanted, half its gradient and half its second derivatives. Penalties alone go to `told`.

    Where the value is more than `most`, it is left off as soon as that is known: no part of it is below zero.
    """
    spans = len(g.span) // 6
    places = len(g.shares) // spans
    mates = len(g.mates) // (7 * spans * places * g.copies)
    kept = 8 + len(g.bodies) // 7 + mates
    n = g.numbers
    r, drag = n[AT_LENGTH], n[AT_DRAG]
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
            turned = 9 * (6 * k + j)
            for i in range(3):
                x = unknown[c + i]
                if len(g.turned) > 0:
                    x = 0.0
                    for m in range(3):
                        x += g.turned[turned + 3 * i + m] * unknown[c + m]
                w[AT_LOCAL + 3 * j + i] = x
        if wanted > 0:
            for i in range(432):
                w[AT_BLOCK + i] = 0.0
            for i in range(24):
                w[AT_LOAD + i] = 0.0
        for p in range(places):
            point = places * k + p
            piece = 6 * (5 * places * k + p)
            share = g.shares[point]
            for o in range(5):
                for i in range(3):
                    x = 0.0
                    for j in range(6):
                        x += g.pieces[piece + 6 * places * o + j] * w[AT_LOCAL + 3 * j + i]
                    w[AT_PATH + 3 * o + i] = x
            square = SMOOTHED_AT_REST
            rising = 0.0
            for i in range(3):
                square += w[AT_PATH + 3 + i] * w[AT_PATH + 3 + i]
                rising += w[AT_PATH + 3 + i] * w[AT_PATH + 6 + i]
                off = w[AT_PATH + i] - g.heads[3 * point + i]
                w[AT_HEAD_OFF + i] = off
                w[AT_INWARD + i] = g.inwards[3 * point + i]
                value += share * n[AT_HEAD_WEIGHT] * off * off
            speed = sqrt(square)
            for i in range(3):
                w[AT_BLOWN + i] = drag * speed * w[AT_PATH + 3 + i]
                w[AT_RATE + i] = w[AT_PATH + 9 + i] + drag * (
                    rising / speed * w[AT_PATH + 3 + i] + speed * w[AT_PATH + 6 + i]
                )
            if wanted > 0:
                for i in range(20):
                    w[AT_SLOPE + i] = 0.0
                for i in range(300):
                    w[AT_BEND + i] = 0.0
                for i in range(3):
                    w[AT_BY_HEAD + i] = 0.0
                    w[AT_BY_FORCE + i] = 0.0
                for i in range(9):
                    w[AT_HEAD_HEAD + i] = 0.0
                    w[AT_HEAD_FORCE + i] = 0.0
                    w[AT_FORCE_FORCE + i] = 0.0
                for i in range(3):
                    for j in range(3):
                        same = 1.0 if i == j else 0.0
                        square = w[AT_PATH + 3 + i] * w[AT_PATH + 3 + j]
                        mixed = (
                            w[AT_PATH + 3 + i] * w[AT_PATH + 6 + j]
                            + w[AT_PATH + 6 + i] * w[AT_PATH + 3 + j]
                        )
                        w[AT_SLIP + 3 * i + j] = drag * (speed * same + square / speed)
                        w[AT_SLIPPING + 3 * i + j] = (
                            drag
                            * (rising * same + mixed - rising * square / (speed * speed))
                            / speed
                        )
            orders = 3
            for c in range(g.copies):
                cost = share / g.copies
                size = 0.0
                for i in range(3):
                    w[AT_PULLED + i] = w[AT_PATH + 6 + i] + g.ups[3 * c + i] + w[AT_BLOWN + i]
                    size += w[AT_PULLED + i] * w[AT_PULLED + i]
                size = sqrt(size)
                lack = n[AT_PULL]
                along = 0.0
                second = 0.0
                for i in range(3):
                    w[AT_WAY + i] = w[AT_PULLED + i] / size
                    w[AT_HELD + i] = w[AT_PATH + i] + r * w[AT_WAY + i]
                    lack -= w[AT_PULLED + i] * g.inwards[3 * point + i]
                    along += w[AT_WAY + i] * w[AT_RATE + i]
                    second += w[AT_WAY + i] * w[AT_PATH + 12 + i]
                    off = w[AT_HELD + i] - g.hands[3 * point + i]
                    value += cost * n[AT_HAND_WEIGHT] * off * off
                    w[AT_PUSHES + i] = 0.0
                    w[AT_PUSHES + 3 + i] = n[AT_HAND_WEIGHT] * off
                if lack > 0.0:
                    penalty += cost * n[AT_PULL_WEIGHT] * lack * lack
                for i in range(27):
                    w[AT_FIRM + i] = 0.0
                for i in range(3):
                    w[AT_FIRM + 18 + 4 * i] = n[AT_HAND_WEIGHT]
                if n[AT_TOUCH_WEIGHT] > 0.0:
                    at = (c * spans + k) * places + p
                    for i in range(3):
                        x = g.origins[3 * at + i]
                        y = x
                        for j in range(3):
                            x += g.frames[9 * at + 3 * i + j] * w[AT_HELD + j]
                            y += g.frames[9 * at + 3 * i + j] * w[AT_PATH + j]
                        w[AT_SEEN + i] = x
                        w[AT_SEEN + 3 + i] = y
                    mate = 7 * mates * (g.copies * point + c)
                    penalty += cost * touching(
                        w,
                        n[AT_TOUCH_WEIGHT],
                        g.frames,
                        9 * at,
                        g.room,
                        g.bodies,
                        g.mates,
                        mate,
                        mates,
                        g.clear,
                        kept * at,
                    )
                turn = 0.0
                for i in range(3):
                    w[AT_TURNING + i] = (w[AT_RATE + i] - along * w[AT_WAY + i]) / size
                    turn += w[AT_TURNING + i] * w[AT_TURNING + i]
                for i in range(3):
                    across = (
                        w[AT_PATH + 12 + i]
                        - second * w[AT_WAY + i]
                        - 2.0 * along * w[AT_TURNING + i]
                    )
                    w[AT_BENDING + i] = across / size - turn * w[AT_WAY + i]
                for kind in range(2):
                    big = 0.0
                    for i in range(3):
                        bent = w[AT_TURNING + i] if kind == 0 else w[AT_BENDING + i]
                        w[AT_MOVED + i] = w[AT_PATH + 3 + 3 * kind + i] + r * bent
                        big += w[AT_MOVED + i] * w[AT_MOVED + i]
                    over = sqrt(big) - n[AT_SPEED + kind]
                    if over > 0.0:
                        weight = cost * n[AT_SPEED_WEIGHT + kind]
                        penalty += weight * over * over
                        if wanted > 0:
                            orders = 5
                            hurried(w, r, kind, size, along, over, weight)
                if wanted > 0:
                    by_copy(
                        w,
                        r,
                        1.0 / g.copies,
                        size,
                        max(lack, 0.0),
                        n[AT_PULL_WEIGHT] if lack > 0.0 else 0.0,
                    )
            if wanted > 0:
                by_path(w, share, n[AT_HEAD_WEIGHT])
                spread(w, g.pieces, piece, 6 * places, orders)
        if wanted > 0:
            gathered(g, w, k, gradient, matrix)
        elif value + penalty > most:
            break
    told[AT_PENALTY] = penalty
    return value + penalty


def factored(g: Given, matrix: Floats) -> bool:
    """Factor a matrix L·Lᵀ in its place, three rows by three columns at a time; False where it is not positive."""
    for i in range(0, len(g.first), 3):
        fi = g.first[i]  # the same for all three rows of a coefficient
        a0, a1, a2 = g.offset[i] - fi, g.offset[i + 1] - fi, g.offset[i + 2] - fi
        for j in range(fi, i, 3):
            fj = g.first[j]
            b0, b1, b2 = g.offset[j] - fj, g.offset[j + 1] - fj, g.offset[j + 2] - fj
            x00, x01, x02 = matrix[a0 + j], matrix[a0 + j + 1], matrix[a0 + j + 2]
            x10, x11, x12 = matrix[a1 + j], matrix[a1 + j + 1], matrix[a1 + j + 2]
            x20, x21, x22 = matrix[a2 + j], matrix[a2 + j + 1], matrix[a2 + j + 2]
            for k in range(max(fi, fj), j):
                p, q, r = matrix[a0 + k], matrix[a1 + k], matrix[a2 + k]
                u, v, w = matrix[b0 + k], matrix[b1 + k], matrix[b2 + k]
                x00 -= p * u
                x01 -= p * v
                x02 -= p * w
                x10 -= q * u
                x11 -= q * v
                x12 -= q * w
                x20 -= r * u
                x21 -= r * v
                x22 -= r * w
            u, v, w = matrix[b0 + j], matrix[b1 + j], matrix[b2 + j]
            x00, x10, x20 = x00 / u, x10 / u, x20 / u
            u = matrix[b1 + j + 1]
            x01, x11, x21 = (x01 - x00 * v) / u, (x11 - x10 * v) / u, (x21 - x20 * v) / u
            v, u = matrix[b2 + j + 1], matrix[b2 + j + 2]
            x02 = (x02 - x00 * w - x01 * v) / u
            x12 = (x12 - x10 * w - x11 * v) / u
            x22 = (x22 - x20 * w - x21 * v) / u
            matrix[a0 + j], matrix[a0 + j + 1], matrix[a0 + j + 2] = x00, x01, x02
            matrix[a1 + j], matrix[a1 + j + 1], matrix[a1 + j + 2] = x10, x11, x12
            matrix[a2 + j], matrix[a2 + j + 1], matrix[a2 + j + 2] = x20, x21, x22
        for j in range(3):
            at = g.offset[i + j] - fi
            for m in range(j + 1):
                to = g.offset[i + m] - fi
                x = matrix[at + i + m]
                for k in range(fi, i + m):
                    x -= matrix[at + k] * matrix[to + k]
                if m < j:
                    matrix[at + i + m] = x / matrix[to + i + m]
                elif x > 0.0:
                    matrix[at + i + m] = sqrt(x)
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
    most, enough = int(g.numbers[AT_MOST_STEPS]), g.numbers[AT_ENOUGH]
    value = 0.0
    promised = 0.0
    damping = 1e-3
    firmer = g.numbers[AT_FIRMER]
    share = inf
    steps = 0
    penalty = 0.0
    trying = False
    for i in range(len(unknown)):
        trial[i] = unknown[i]
    while True:
        # one call for both: it is made into machine code where it stands
        reached = figures(
            g, w, trial, 0 if trying else 1, gradient, matrix, told, value if trying else inf
        )
        if trying:
            steps += 1
            if reached <= value:
                ratio = 2.0 * (value - reached) / max(promised, 1e-300) - 1.0
                damping *= max(g.numbers[AT_LOOSER], 1.0 - ratio * ratio * ratio)
                damping = max(damping, _LEAST_DAMPING)
                firmer = g.numbers[AT_FIRMER]
                trying = False
                share = promised / max(reached, 1e-9)
                continue
            told[AT_REFUSED] += 1.0
            damping = max(firmer * damping, _LEAST_DAMPING)
            firmer *= g.numbers[AT_FIRMER]
            share = min(share, promised / value)
        else:
            value = reached
            penalty = told[AT_PENALTY]
            for i in range(len(unknown)):
                unknown[i] = trial[i]
        found = False
        while steps < most and share > enough and damping < _DAMPED_OUT and not found:
            for i in range(len(matrix)):
                factor[i] = matrix[i] + damping * mass[i]
            found = factored(g, factor)
            if not found:
                told[AT_UNFACTORED] += 1.0
                damping = max(firmer * damping, _LEAST_DAMPING)
                firmer *= g.numbers[AT_FIRMER]
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
    told[AT_VALUE] = value
    told[AT_SHARE] = share
    told[AT_PENALTY] = penalty
    told[AT_STEPS] += steps


def solve(ints: Ints, floats: Floats) -> None:
    """Newton's way down, everything in two arrays: see `packed`; what changes is found in its place.

    At the start of `ints` stand the number of copies and the lengths of the parts that follow, first of whole numbers.
    """
    at = KERNEL_HEADER
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
    clear = floats[at : at + ints[18]]
    at += ints[18]
    mass = floats[at : at + ints[19]]
    at += ints[19]
    unknown = floats[at : at + ints[20]]
    at += ints[20]
    told = floats[at : at + ints[21]]
    at += ints[21]
    gradient = floats[at : at + ints[22]]
    at += ints[22]
    matrix = floats[at : at + ints[23]]
    at += ints[23]
    trial = floats[at : at + ints[24]]
    at += ints[24]
    factor = floats[at : at + ints[25]]
    at += ints[25]
    move = floats[at : at + ints[26]]
    at += ints[26]
    work = floats[at : at + ints[27]]
    given = Given(
        ints[0], span, turned, pieces, shares, frames, origins, ups, heads, hands, inwards,
        numbers, room, bodies, mates, clear, rows, first, offset,
    )  # fmt: skip
    newton(given, work, unknown, trial, gradient, matrix, mass, factor, move, told)


# in the order in which they use each other
FUNCTIONS: Sequence[FunctionType] = (
    four, into, nearest, measured, push, touching, hurried, by_copy, by_path, spread, gathered, figures, factored, backed,
    promised_by, newton, solve,
)  # type: ignore[assignment]  # fmt: skip
