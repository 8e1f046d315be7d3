"""Where everybody stands and walks now and did before: formations taken, spots and ways, by how much and which way."""

import math
from collections.abc import Iterator
from dataclasses import replace

from sequencer.outputs.compared.alignment import TimedPiece, aligned
from sequencer.outputs.compared.show_changes import ShowChange, SpotMove
from sequencer.outputs.words.entrance_words import only_entrances
from sequencer.show.model import Staging
from sequencer.staging.staged import Staged, Standing
from sequencer.units import counted

_STILL = 0.005  # [m] that is no move
_CLOSE = 1e-3  # [beats]
_FACING = 0.5  # [degrees]
_KEYS = frozenset({"formation", "from", "beats", "path", "via"})


def moved_words(x: float, y: float) -> str:
    """How far and which way something is moved on the stage.

    Parameters
    ----------
    x, y : float [m]
        To the audience's right, and upstage.
    """
    parts = []
    if abs(x) >= _STILL:
        parts.append(f"{abs(x):.2f} m to stage {'left' if x > 0 else 'right'}")
    if abs(y) >= _STILL:
        parts.append(f"{abs(y):.2f} m {'upstage' if y > 0 else 'downstage'}")
    return " and ".join(parts) or "not at all"


def floor_changes(old: Staged, new: Staged) -> list[ShowChange]:
    """What differs in where everybody stands, and how they get there, in order of time."""
    # Entrances and exits are told as what the file says of them.
    olds, news = ([one for one in each.standings if not only_entrances(one)] for each in (old, new))
    was = [TimedPiece(each.formation, each.walk, each.end) for each in olds]
    now = [TimedPiece(each.formation, each.walk, each.end) for each in news]
    found: list[ShowChange] = []
    spots: dict[tuple[str, str], ShowChange] = {}
    for i, j in aligned(was, now):
        if i is None and j is not None:
            found.append(_alone(new, news[j], gone=False))
        elif i is not None and j is None:
            found.append(_alone(old, olds[i], gone=True))
        elif i is not None and j is not None:
            found += _of_pair(old, new, olds[i], news[j], spots)
    found += spots.values()
    return sorted(found, key=lambda each: (each.beat if each.beat is not None else 0.0, each.who, each.words))  # fmt: skip


def _row(staged: Staged, standing: Standing) -> Staging | None:
    number = standing.path[1] if len(standing.path) > 1 and standing.path[0] == "staging" else None
    rows = staged.show.staging
    return rows[number] if isinstance(number, int) and number < len(rows) else None


def _alone(staged: Staged, standing: Standing, *, gone: bool) -> ShowChange:
    walk = standing.start - standing.walk
    by = f", with a walk of {counted(round(walk, 3), 'beat')}" if walk > _CLOSE else ""
    span = (round(standing.walk, 6), round(standing.start, 6))
    path = tuple(standing.path)
    return ShowChange(
        subject="floor", kind="gone" if gone else "new", position=staged.position(standing.walk),
        words=f"formation {standing.formation} is {'no longer taken' if gone else 'taken'}{by}",
        spans=() if gone else (span,), before=(span,) if gone else (),
        old=(path,) if gone else (), new=() if gone else (path,), keys=_KEYS,
    )  # fmt: skip


def _of_pair(
    old: Staged, new: Staged, was: Standing, now: Standing, spots: dict[tuple[str, str], ShowChange]
) -> Iterator[ShowChange]:
    told = ShowChange(
        subject="floor", kind="changed", words="", position=new.position(now.walk),
        spans=((round(now.walk, 6), round(now.start, 6)),), old=(tuple(was.path),), new=(tuple(now.path),),
    )  # fmt: skip
    if was.formation != now.formation:
        moves = tuple(_spot_moves(was, now))
        yield replace(
            told, words=f"formation {now.formation} instead of {was.formation}{_farthest(moves)}",
            moves=moves, keys=frozenset({"formation"}),
        )  # fmt: skip
    else:
        _note_spots(was, now, told, spots)
    yield from _of_walk(old, new, was, now, told)


def _spot_moves(was: Standing, now: Standing) -> Iterator[SpotMove]:
    for who, (x, y, _) in now.spots.items():
        before = was.spots.get(who)
        if who in (*was.waiting, *now.waiting):
            continue  # in the wings
        if before is not None and math.dist(before[:2], (x, y)) >= _STILL:
            yield SpotMove(who=who, before=(before[0], before[1]), after=(x, y))


def _farthest(moves: tuple[SpotMove, ...]) -> str:
    if not moves:
        return ""
    far = [f"{each.who} {math.dist(each.before, each.after):.2f} m away" for each in moves]
    return f" ({', '.join(far)})"


def _note_spots(
    was: Standing, now: Standing, told: ShowChange, spots: dict[tuple[str, str], ShowChange]
) -> None:
    """Spots of a formation that are others now, once for all times that it is taken."""
    moved = {each.who: each for each in _spot_moves(was, now)}
    for who in dict.fromkeys((*was.spots, *now.spots)):
        before, after = was.spots.get(who), now.spots.get(who)
        if before is None or after is None:
            continue  # somebody else is in the cast: that is told there
        if who in (*was.waiting, *now.waiting):
            continue  # in the wings
        turned = abs((after[2] - before[2] + 180.0) % 360.0 - 180.0)
        words = []
        if who in moved:
            words.append(f"{moved_words(after[0] - before[0], after[1] - before[1])}, at {_at(after)} instead of {_at(before)}")  # fmt: skip
        if turned > _FACING:
            words.append(f"faces {after[2]:g}° instead of {before[2]:g}°")
        if not words:
            continue
        known = spots.get((now.formation, who))
        span = ((round(now.walk, 6), round(max(now.start, now.walk + 1.0), 6)),)  # when it is taken
        if known is not None:
            spots[now.formation, who] = replace(known, spans=known.spans + span)
            continue
        spots[now.formation, who] = replace(
            told, kind="moved", who=(who,), words=f"formation {now.formation}: {'; '.join(words)}",
            spans=span, moves=(moved[who],) if who in moved else (),
            old=(("formations", was.formation, "spots", who),), new=(("formations", now.formation, "spots", who),),
            keys=frozenset({"at", "facing"}),
        )  # fmt: skip


def _at(spot: tuple[float, float, float]) -> str:
    return f"[{round(spot[0], 2) + 0.0:g}, {round(spot[1], 2) + 0.0:g}]"


def _of_walk(
    old: Staged, new: Staged, was: Standing, now: Standing, told: ShowChange
) -> Iterator[ShowChange]:
    shift, lengths = now.walk - was.walk, (was.start - was.walk, now.start - now.walk)
    words = []
    if abs(shift) > _CLOSE:
        words.append(f"from {new.position(now.walk)} instead of {old.position(was.walk)}")
    if abs(lengths[1] - lengths[0]) > _CLOSE:
        words.append(f"a walk of {counted(round(lengths[1], 3), 'beat')} instead of {counted(round(lengths[0], 3), 'beat')}")  # fmt: skip
    if words:
        before = ((round(was.walk, 6), round(was.start, 6)),)
        yield replace(
            told, kind="moved" if abs(shift) > _CLOSE else "changed", before=before,
            words=f"to formation {now.formation}: {', '.join(words)}", keys=frozenset({"from", "beats"}),
        )  # fmt: skip
    yield from _of_ways(_row(old, was), _row(new, now), told)


def _of_ways(was: Staging | None, now: Staging | None, told: ShowChange) -> Iterator[ShowChange]:
    if was is None or now is None:
        return
    if was.path != now.path:
        yield replace(told, words=f"to formation {now.formation}: path says {_curve(now)} instead of {_curve(was)}; the ways stay as they are", keys=frozenset({"path"}))  # fmt: skip
    for who in dict.fromkeys((*was.via, *now.via)):
        before, after = was.via.get(who, ()), now.via.get(who, ())
        if before == after:
            continue
        yield replace(
            told, who=(who,), words=f"to formation {now.formation}: {_way(after)} instead of {_way(before)}",
            moves=tuple(_way_moves(who, before, after)), keys=frozenset({"via"}),
        )  # fmt: skip


def _curve(row: Staging) -> str:
    return row.path or "nothing"


def _way(points: tuple[tuple[float, float], ...]) -> str:
    if not points:
        return "straight there"
    return f"through {', '.join(_at((x, y, 0.0)) for x, y in points)}"


def _way_moves(
    who: str, was: tuple[tuple[float, float], ...], now: tuple[tuple[float, float], ...]
) -> Iterator[SpotMove]:
    if len(was) == len(now):
        for before, after in zip(was, now, strict=True):
            if math.dist(before, after) >= _STILL:
                yield SpotMove(who=who, before=before, after=after)
