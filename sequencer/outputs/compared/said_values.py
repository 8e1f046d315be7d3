"""Everything in which what two show files say differs, value by value, in words."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from sequencer.outputs.compared.show_changes import ChangeKind, ShowChange, SpotMove
from sequencer.outputs.compared.value_words import (
    is_point,
    place_label,
    subject_of,
    value_at,
    value_text,
    worded,
)
from sequencer.show.differences import hunks, of_records, words_of
from sequencer.show.drafted import KEY as DRAFTED
from sequencer.show.drafted import is_drafted
from sequencer.show.model import Show
from sequencer.show.text.plain_values import ValuePath
from sequencer.units import counted

_GONE = object()
_ALIKE = 0.6  # share of all that two rows say, what is usual counted in, from which they are one that was changed
_MOST_CELLS = 40_000
_LONG = 1_000  # rows of a list, beyond which it takes long to align it
ORDER = "order"  # the key of a difference that is of a list's order


@dataclass(frozen=True, slots=True)
class SaidFile:
    """What a file says: as it is written, and as it is read."""

    plain: Any  # plain values, scalars as text
    read: Any  # the same with units, defaults and short forms worked out; equal if it says the same


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueDifference:
    """One value that differs; `old` or `new` is None where one file has no such place."""

    old: ValuePath | None
    new: ValuePath | None
    was: Any  # as it is read
    now: Any
    kind: ChangeKind

    @property
    def key(self) -> str:
        """The key under which it stands, of its record."""
        path = self.new if self.new is not None else self.old
        return str(path[-1]) if path else ""


def said_file(plain: Any, show: Show | None) -> SaidFile:
    """What a file says.

    Parameters
    ----------
    plain : plain values
    show : Show, optional
        None if the file says no show: then it is taken as it is written.
    """
    return SaidFile(plain, plain if show is None else show.model_dump(mode="json", by_alias=True))


def value_differences(old: Any, new: Any) -> list[ValueDifference]:
    """All values that differ; items of lists are paired by their names, or by what stands around them."""
    return list(_between(old, new, (), ()))


def _between(was: Any, now: Any, old: ValuePath, new: ValuePath) -> Iterator[ValueDifference]:
    if was == now:
        return
    if isinstance(was, dict) and isinstance(now, dict):
        for key in dict.fromkeys([*was, *now]):
            yield from _one(was.get(key, _GONE), now.get(key, _GONE), (*old, key), (*new, key))
    elif isinstance(was, list) and isinstance(now, list) and (of_records(was) or of_records(now)):
        yield from _lists(was, now, old, new)
    else:
        yield ValueDifference(old=old, new=new, was=was, now=now, kind="changed")


def _one(was: Any, now: Any, old: ValuePath, new: ValuePath) -> Iterator[ValueDifference]:
    if was is _GONE or (was is None and isinstance(now, dict)):
        yield ValueDifference(old=None, new=new, was=None, now=now, kind="new")
    elif now is _GONE or (now is None and isinstance(was, dict)):
        yield ValueDifference(old=old, new=None, was=was, now=None, kind="gone")
    else:
        yield from _between(was, now, old, new)


def _lists(
    was: list[Any], now: list[Any], old: ValuePath, new: ValuePath
) -> Iterator[ValueDifference]:
    pairs = _by_name(was, now) if _named(was) and _named(now) else _by_place(was, now)
    for i, j in pairs:
        if i is None and j is not None:
            yield ValueDifference(old=None, new=(*new, j), was=None, now=now[j], kind="new")
        elif i is not None and j is None:
            yield ValueDifference(old=(*old, i), new=None, was=was[i], now=None, kind="gone")
        elif i is not None and j is not None:
            yield from _between(was[i], now[j], (*old, i), (*new, j))
    both = [i for i, j in sorted(((i, j) for i, j in pairs if i is not None and j is not None), key=lambda p: p[1])]  # fmt: skip
    if both != sorted(both):
        names = [[str(row.get("name", k + 1)) for k, row in enumerate(own)] for own in (was, now)]
        yield ValueDifference(old=(*old, ORDER), new=(*new, ORDER), was=names[0], now=names[1], kind="changed")  # fmt: skip


def _named(rows: Sequence[Any]) -> bool:
    names = [row.get("name") for row in rows if isinstance(row, dict)]
    return len(names) == len(rows) and all(names) and len(set(map(str, names))) == len(names)


def _by_name(was: list[Any], now: list[Any]) -> list[tuple[int | None, int | None]]:
    at = {row["name"]: j for j, row in enumerate(now)}
    pairs: list[tuple[int | None, int | None]] = [(i, at.pop(row["name"], None)) for i, row in enumerate(was)]  # fmt: skip
    return [*pairs, *((None, j) for j in at.values())]


def _by_place(was: list[Any], now: list[Any]) -> list[tuple[int | None, int | None]]:
    pairs: list[tuple[int | None, int | None]] = []
    if len(was) == len(now) > _LONG:
        same = sum(one == other for one, other in zip(was, now, strict=True))
        if same * 2 > len(
            was
        ):  # where most stay in their places, the others have changed in theirs
            return [(k, k) for k in range(len(was))]
    i = j = 0
    for hunk in hunks(words_of(was), words_of(now)):
        while i < hunk.start:
            pairs.append((i, j))
            i, j = i + 1, j + 1
        if hunk.paired:
            pairs += zip(range(hunk.start, hunk.end), range(hunk.first, hunk.last), strict=True)
        else:
            pairs += _likest(was, now, range(hunk.start, hunk.end), range(hunk.first, hunk.last))
        i, j = hunk.end, hunk.last
    return [*pairs, *zip(range(i, len(was)), range(j, len(now)), strict=True)]


def _likest(
    was: list[Any], now: list[Any], old: range, new: range
) -> list[tuple[int | None, int | None]]:
    """Neighbouring rows paired with those that are most like them, in their order; the others are gone, or new."""
    if len(old) * len(new) > _MOST_CELLS:
        return [*((k, None) for k in old), *((None, k) for k in new)]
    said = [[_said_by(rows[k]) for k in of] for rows, of in ((was, old), (now, new))]
    best = [[0.0] * (len(new) + 1) for _ in range(len(old) + 1)]
    for i in range(1, len(old) + 1):
        for j in range(1, len(new) + 1):
            own = best[i - 1][j - 1] + _likeness(said[0][i - 1], said[1][j - 1])
            best[i][j] = max(best[i - 1][j], best[i][j - 1], own)
    pairs: list[tuple[int | None, int | None]] = []
    i, j = len(old), len(new)
    while i or j:
        if i and best[i][j] == best[i - 1][j]:
            i -= 1
            pairs.append((old[i], None))
        elif j and best[i][j] == best[i][j - 1]:
            j -= 1
            pairs.append((None, new[j]))
        else:
            i, j = i - 1, j - 1
            pairs.append((old[i], new[j]))
    return pairs[::-1]


def _said_by(row: dict[str, Any]) -> set[str]:
    return set(words_of([[key, own] for key, own in row.items() if own not in (None, [], {}, "")]))


def _likeness(one: set[str], other: set[str]) -> float:
    """The share of what two rows say in common; nothing for rows that are less than alike."""
    share = len(one & other) / max(len(one | other), 1)
    return share if share >= _ALIKE else 0.0


# --- in words ---


def value_change(each: ValueDifference, old: SaidFile, new: SaidFile) -> ShowChange:
    """A difference in words.

    Parameters
    ----------
    each : ValueDifference
        Of what both files read.
    old, new : SaidFile
    """
    path = each.new if each.new is not None else each.old
    side = new if each.new is not None else old
    whole = path or ()
    return ShowChange(
        subject=subject_of(whole),
        kind=each.kind,
        words=_sentence(each, whole, side, old, new),
        moves=tuple(_moves(each, whole, side)),
        old=() if each.old is None else (each.old,),
        new=() if each.new is None else (each.new,),
        keys=frozenset([each.key]),
    )


def _sentence(
    each: ValueDifference, path: ValuePath, side: SaidFile, old: SaidFile, new: SaidFile
) -> str:
    values = side.plain if value_at(side.plain, path[:-1]) is not None else side.read
    is_row = each.kind != "changed" and (isinstance(path[-1], int) or (len(path) == 2 and path[0] in ("formations", "phrases", "patterns")))  # fmt: skip
    if is_row:
        said = value_at(side.plain, path) or each.now or each.was
        if isinstance(said, dict):
            said = {key: own for key, own in said.items() if key != "name"}
        return f"{place_label(path, values)} is {each.kind}: {value_text(said)}"
    label = place_label(path[:-1], values)
    if path[-1] == DRAFTED:
        return f"{label}: {_marked(each)}"
    if path[-1] == "canon":
        return f"{label}: {_canon(each.now)} instead of {_canon(each.was)}"
    head = f"{label}: {worded(path[-1])}" if label else worded(path[-1])
    now, was = _said(new, each.new, each.now), _said(old, each.old, each.was)
    if each.kind == "new":
        return f"{head} {now} is new"
    if each.kind == "gone":
        return f"{head} {was} is gone"
    far = _distance(each)
    away = f", {far:.2f} m away" if far is not None else ""
    return f"{head} {now} instead of {was}{away}"


def _marked(each: ValueDifference) -> str:
    if each.now and each.was:
        return "the mark of what is drafted is another one"
    return "marked as drafted now" if each.now else "no longer marked as drafted"


def is_mark_of_change(each: ValueDifference, old: SaidFile, new: SaidFile) -> bool:
    """Whether a difference is only the mark of a drafted entry, which is made from all else that it says, and follows that.

    Parameters
    ----------
    each : ValueDifference
        Of what both files read.
    old, new : SaidFile
    """
    if each.key != DRAFTED or each.old is None or each.new is None:
        return False
    plain = value_at(old.plain, each.old[:-1]), value_at(new.plain, each.new[:-1])
    read = [value_at(file.read, path[:-1]) for file, path in ((old, each.old), (new, each.new))]
    said = [{key: own for key, own in row.items() if key != DRAFTED} for row in read]
    return said[0] != said[1] and all(map(is_drafted, plain))


def _canon(beats: Any) -> str:
    if beats in (None, 0, 0.0):
        return "all at once"
    return f"one after the other, {counted(float(beats), 'beat')} apart,"


def _said(side: SaidFile, path: ValuePath | None, read: Any) -> str:
    """A value as it is written; as it is usual, where it is not."""
    written = None if path is None else value_at(side.plain, path)
    if written is not None:
        return value_text(written)
    if read is None or read in ([], {}, "") or side.plain is side.read:
        return value_text(read)
    below = bool(path) and path is not None and isinstance(value_at(side.plain, path[:-1]), str)
    return (
        value_text(read)
        if below or (path and path[-1] == ORDER)
        else f"the usual {value_text(read)}"
    )


def _distance(each: ValueDifference) -> float | None:
    if not (is_point(each.was) and is_point(each.now) and each.key in _PLACES):
        return None
    return math.dist([float(v) for v in each.was], [float(v) for v in each.now])


_PLACES = {"at", "post", "centre", "lit_at", "fuel_station", "gate"}


def _moves(each: ValueDifference, path: ValuePath, side: SaidFile) -> Iterator[SpotMove]:
    if _distance(each) is None or each.kind != "changed":
        return
    values = side.plain if value_at(side.plain, path[:-1]) is not None else side.read
    yield SpotMove(
        who=place_label(path[:-1], values) if each.key != "fuel_station" else worded(each.key),
        before=(float(each.was[0]), float(each.was[1])),
        after=(float(each.now[0]), float(each.now[1])),
    )


# --- how it is written ---


def spelled_otherwise(
    old: SaidFile, new: SaidFile, told: Sequence[ValueDifference]
) -> Iterator[ShowChange]:
    """Values that are written otherwise and say the same.

    Parameters
    ----------
    old, new : SaidFile
    told : sequence of ValueDifference
        What they read differs in.
    """
    if old.plain is old.read or new.plain is new.read:
        return
    before = _Paths(each.old for each in told if each.old is not None)
    after = _Paths(each.new for each in told if each.new is not None)
    for each in value_differences(old.plain, new.plain):
        known = (each.old is not None and before.meet(each.old)) or (
            each.new is not None and after.meet(each.new)
        )
        if not known:
            said = value_change(each, old, new)
            yield replace(said, subject="writing", words=f"{said.words}; it says the same")


class _Paths:
    """Places in a file, and whether one lies in another or around it."""

    def __init__(self, paths: Iterable[ValuePath]) -> None:
        self._all = set(paths)
        self._above = {path[:n] for path in self._all for n in range(len(path))}

    def meet(self, path: ValuePath) -> bool:
        """Whether a place lies in one of these, or one of these in it."""
        return path in self._above or any(path[:n] in self._all for n in range(len(path) + 1))
