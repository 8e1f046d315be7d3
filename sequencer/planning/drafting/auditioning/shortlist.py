"""Which of many moves are auditioned and kept: of each pattern a few, which time the hands in different ways."""

from collections.abc import Mapping, Sequence

from sequencer.motion.fitting.fits import GOOD
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.library import Pattern
from sequencer.planning.drafting.auditioning.candidates import HANDS, DraftMove, Heard, usual_hands

_EACH = (2, 6)  # least and most of one pattern
_TRIED = 2  # moves of one cycle that failed, after which the others are not tried


def kept_of_each(patterns: int, most: int) -> int:
    """How many moves of each of so many patterns are kept, about so many in all."""
    least, greatest = _EACH
    return max(least, min(greatest, most // max(patterns, 1)))


def in_order(moves: Sequence[DraftMove], book: Mapping[str, Pattern]) -> dict[str, list[int]]:
    """Of each pattern its moves in the order in which they are tried: the usual cycle first, and each pattern in its own way.

    A pattern's usual way of timing the hands comes first where it has one; then each begins with another.
    """
    names = list(dict.fromkeys(move.pattern for move in moves))
    out: dict[str, list[int]] = {}
    for n, name in enumerate(names):
        own = [k for k, move in enumerate(moves) if move.pattern == name]
        ways = [HANDS[(n + turn) % len(HANDS)] for turn in range(len(HANDS))]
        usual = {k: usual_hands(moves[k], book[name]) for k in own}
        out[name] = sorted(
            own, key=lambda k: (not moves[k].usual, not usual[k], ways.index(_hands(moves[k])))
        )
    return out


def lacking(passed: Sequence[int], enough: int) -> int:
    """How many more moves of a pattern are tried, once so many pass somewhere, and at each range of tempos."""
    missing = max(enough - passed[0], max(1, enough // 2) - min(passed[1:]))
    return max(missing, 0)


def without_hopeless(
    queue: list[int],
    moves: Sequence[DraftMove],
    found: Mapping[int, Sequence[Heard]],
    passed: Sequence[int],
    enough: int,
) -> None:
    """Takes moves out of a pattern's queue whose cycle has failed twice wherever too few pass.

    Parameters
    ----------
    queue : list of int
        Moves that wait; it is changed.
    moves : sequence of DraftMove
    found : mapping of int to sequence of Heard
        Of each move that was tried, how it fared on each stage of everybody, tempo by tempo.
    passed : sequence of int
        How many pass somewhere, and at each range of tempos.
    enough : int
    """
    ranges = len(passed) - 1
    few = [c for c in range(ranges) if lacking([enough, passed[1 + c]], enough)] or range(ranges)
    for pattern, cycle in {(moves[k].pattern, moves[k].cycle) for k in queue}:
        tried = [
            row
            for k, row in found.items()
            if (moves[k].pattern, moves[k].cycle) == (pattern, cycle)
        ]
        if len(tried) >= _TRIED and not any(
            all(each.passes for each in row[c::ranges]) for row in tried for c in few
        ):
            queue[:] = [k for k in queue if moves[k].cycle != cycle]


def taken(queue: list[int], count: int) -> list[int]:
    """So many from the front of a queue, which loses them."""
    out = queue[:count]
    del queue[:count]
    return out


def some_of(
    moves: Sequence[DraftMove],
    heard: Sequence[Heard],
    passing: Sequence[int],
    passes: Sequence[Sequence[bool]],
    *,
    most: int,
) -> list[int]:
    """Of each pattern the moves with most room; fewer of each where there are many patterns, about so many in all.

    Where few are kept, the second of a pattern times the hands in another way than the first, and each pattern in its own, so
    that all ways are left to choose from.
    """
    names = list(dict.fromkeys(moves[k].pattern for k in passing))
    each = kept_of_each(len(names), most)
    out: list[int] = []
    for n, name in enumerate(names):
        own = [k for k in passing if moves[k].pattern == name]
        own.sort(key=lambda k: (not moves[k].usual, -min(heard[k].margin, GOOD)))
        own = mixed(own, moves, n)
        chosen = set(own[:each])
        for row in passes:  # every range of tempos gets its share
            chosen |= set([k for k in own if row[k]][: max(1, each // 2)])
        out += sorted(chosen)
    return out


def mixed(own: Sequence[int], moves: Sequence[DraftMove], turn: int) -> list[int]:
    """Moves of a pattern, best first, so that each way of timing the hands comes once before any comes again."""
    left, out = list(own), []
    ways = [HANDS[(turn + n) % len(HANDS)] for n in range(len(HANDS))]
    while left:
        known: set[tuple[Timing, Direction]] = set()
        first = left[0]
        wanted = sorted(left, key=lambda k: (k != first, ways.index(_hands(moves[k]))))
        for k in wanted:
            if _hands(moves[k]) not in known:
                known.add(_hands(moves[k]))
                out.append(k)
        left = [k for k in left if k not in out]
    return out


def _hands(move: DraftMove) -> tuple[Timing, Direction]:
    return move.timing, move.direction
