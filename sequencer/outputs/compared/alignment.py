"""Which piece of one timeline has become which piece of another: the way of telling it that takes the fewest words."""

from collections.abc import Hashable, Sequence
from typing import NamedTuple

_CLOSE = 1e-3  # [beats] that count as the same moment
_MOST_CELLS = (
    400_000  # of the table of all ways; beyond it pieces are paired by their moments alone
)
_ALONE = 1.0  # what it costs to say that a piece is new, or gone
_MOVED, _STRETCHED = 0.3, 0.2  # that one is danced at another time, or longer
_FAR = 64.0  # [beats] beyond which a move is as far as can be
_OTHER = (0.7, 1.4)  # that another one is danced in its place: all of its time, hardly any


class TimedPiece(NamedTuple):
    """A piece of a timeline: what it is, and when."""

    what: Hashable  # equal for pieces that are danced alike
    start: float  # [beats]
    end: float  # [beats]


PiecePair = tuple[int | None, int | None]  # numbers in the old list and the new; None: gone, or new


def aligned(old: Sequence[TimedPiece], new: Sequence[TimedPiece]) -> list[PiecePair]:
    """Pairs of pieces, in order of time.

    Parameters
    ----------
    old, new : sequence of TimedPiece
        In order of time.

    Notes
    -----
    What stays where it is is paired first. The rest is aligned as two texts are, by the least sum of costs: a move costs less
    than a piece gone and a new one, and another piece at the same time lies between. The recurrence is that of R. A. Wagner and
    M. J. Fischer, The string-to-string correction problem, 1974 (from memory); the costs are this project's own.
    """
    pairs: list[PiecePair] = []
    at: dict[tuple[Hashable, int, int], list[int]] = {}
    for j, piece in enumerate(new):
        at.setdefault(_key(piece), []).append(j)
    left, taken = [], set()
    for i, piece in enumerate(old):
        found = at.get(_key(piece))
        if found:
            j = found.pop(0)
            pairs.append((i, j))
            taken.add(j)
        else:
            left.append(i)
    others = [j for j in range(len(new)) if j not in taken]
    if len(left) * len(others) <= _MOST_CELLS:
        pairs += _cheapest(old, new, left, others)
    else:
        pairs += _by_moment(old, new, left, others)
    return sorted(_crossed(old, new, pairs), key=lambda pair: _order(old, new, pair))


def _key(piece: TimedPiece) -> tuple[Hashable, int, int]:
    return piece.what, round(piece.start / _CLOSE), round(piece.end / _CLOSE)


def _order(
    old: Sequence[TimedPiece], new: Sequence[TimedPiece], pair: PiecePair
) -> tuple[float, int]:
    i, j = pair
    if j is not None:
        return new[j].start, 1
    return (old[i].start if i is not None else 0.0), 0


def _cost(one: TimedPiece, other: TimedPiece) -> float:
    """What it costs to say that a piece has become another; two for pieces that have nothing in common."""
    shift = abs(other.start - one.start)
    if one.what == other.what:
        far = 0.05 * min(shift, _FAR) / _FAR
        return (_STRETCHED if shift <= _CLOSE else _MOVED) + far
    shared = min(one.end, other.end) - max(one.start, other.start)
    longer = max(one.end - one.start, other.end - other.start)
    if shared <= _CLOSE or longer <= 0:
        return 2 * _ALONE
    whole, hardly = _OTHER
    return hardly - (hardly - whole) * shared / longer


def _cheapest(
    old: Sequence[TimedPiece], new: Sequence[TimedPiece], left: list[int], others: list[int]
) -> list[PiecePair]:
    rows, columns = len(left), len(others)
    cost = [[_ALONE * (i + j) for j in range(columns + 1)] for i in range(rows + 1)]
    for i in range(1, rows + 1):
        for j in range(1, columns + 1):
            cost[i][j] = min(
                cost[i - 1][j] + _ALONE,
                cost[i][j - 1] + _ALONE,
                cost[i - 1][j - 1] + _cost(old[left[i - 1]], new[others[j - 1]]),
            )
    pairs: list[PiecePair] = []
    i, j = rows, columns
    while i or j:
        if i and j:
            own = _cost(old[left[i - 1]], new[others[j - 1]])
            if own < 2 * _ALONE and cost[i][j] >= cost[i - 1][j - 1] + own - 1e-9:
                pairs.append((left[i - 1], others[j - 1]))
                i, j = i - 1, j - 1
                continue
        if i and cost[i][j] >= cost[i - 1][j] + _ALONE - 1e-9:
            pairs.append((left[i - 1], None))
            i -= 1
        else:
            pairs.append((None, others[j - 1]))
            j -= 1
    return pairs


def _by_moment(
    old: Sequence[TimedPiece], new: Sequence[TimedPiece], left: list[int], others: list[int]
) -> list[PiecePair]:
    """Pairs that start at the same moment; all else is gone, or new."""
    at: dict[int, list[int]] = {}
    for j in others:
        at.setdefault(round(new[j].start / _CLOSE), []).append(j)
    pairs: list[PiecePair] = []
    for i in left:
        found = at.get(round(old[i].start / _CLOSE))
        pairs.append((i, found.pop(0) if found else None))
    taken = {j for _, j in pairs}
    return pairs + [(None, j) for j in others if j not in taken]


def _crossed(
    old: Sequence[TimedPiece], new: Sequence[TimedPiece], pairs: list[PiecePair]
) -> list[PiecePair]:
    """The pairs with one that is gone and one alike that is new made a move."""
    came: dict[Hashable, list[int]] = {}
    for i, j in pairs:
        if i is None and j is not None:
            came.setdefault(new[j].what, []).append(j)
    joined: dict[int, int] = {}
    for i, j in pairs:
        if j is None and i is not None and (found := came.get(old[i].what)):
            nearest = min(found, key=lambda own, i=i: abs(new[own].start - old[i].start))  # type: ignore[misc]
            found.remove(nearest)
            joined[i] = nearest
    moved = set(joined.values())
    return [
        (i, joined.get(i)) if i is not None and j is None else (i, j)
        for i, j in pairs
        if not (i is None and j in moved)
    ]
