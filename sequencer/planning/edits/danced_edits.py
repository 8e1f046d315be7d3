"""Changes of what is danced that may keep two performers apart, by kind.

Shift a block or change its canon, shorten a tether, choose another plane.
"""

from collections.abc import Iterator
from typing import Any

from sequencer.checks.distances.spacing import Conflict
from sequencer.planning.edits.as_written import plain
from sequencer.planning.edits.dance_edits import tether_edit
from sequencer.planning.edits.join_edits import step_at
from sequencer.planning.edits.space_edits import TOUCH, SpaceEdit, file_values
from sequencer.show.editing import Change, Insertion
from sequencer.show.model import Entry
from sequencer.staging.staged import Block, Staged

_SHIFTS = (0.5, -0.5, 1.0, -1.0, 2.0, -2.0)  # [beats]
_SHORTER = (0.05, 0.10, 0.15, 0.20)  # [m]
_A_BEAT, _A_METRE, _A_PLANE = 0.5, 4.0, 1.5  # [m] that each of these counts as


def _danced(show: Staged, conflict: Conflict, who: str) -> list[Block]:
    """Blocks of a performer during a conflict, without links."""
    return [
        block
        for block in show.blocks_of(who)
        if not block.link
        and block.start < conflict.end - TOUCH
        and block.end > conflict.start + TOUCH
    ]


def canons(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Tighten or widen the canon of an entry that both dance."""
    names = [show.dancers[k].name for k in (conflict.first, conflict.second)]
    for i, entry in enumerate(show.show.timeline):
        who = show.show.names if "all" in entry.who else entry.who
        if entry.canon is None or not set(names) <= set(who):
            continue
        for by in _SHIFTS:
            canon = entry.canon + by
            if canon <= 0:
                continue
            yield SpaceEdit(
                kind="canon",
                words=f"set the canon of {_entry(entry)} to {canon:g} beats instead of {entry.canon:g}",
                cost=_A_BEAT * abs(by) * (len(who) - 1),
                changes=((("timeline", i, "canon"), plain(canon)),),
            )


def shifts(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Start one performer some beats later or earlier in the pattern."""
    for k in (conflict.first, conflict.second):
        who = show.dancers[k].name
        for block in _danced(show, conflict, who):
            if block.path[0] != "timeline":
                continue
            for by in _SHIFTS:
                parts = _alone(show, block, {"shift": plain(block.shift + by)})
                if parts is not None:
                    where = "further into" if by > 0 else "earlier in"
                    yield SpaceEdit(
                        kind="shift",
                        words=(
                            f"let {who} start {abs(by):g} {'beat' if abs(by) == 1 else 'beats'} {where} "
                            f"{block.title} {show.at_aloud(block.start)}"
                        ),
                        cost=_A_BEAT * abs(by),
                        changes=parts[0],
                        insertions=parts[1],
                    )


def planes(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Dance a pattern in another plane that it allows: one performer, or all who dance it."""
    for k in (conflict.first, conflict.second):
        who = show.dancers[k].name
        for block in _danced(show, conflict, who):
            names = {part.pattern for part in block.hands.values()}
            step = step_at(show, block.path)
            if len(names) != 1 or step.pattern is None:
                continue
            pattern = show.book.get(step.pattern)
            planes = [p for p in pattern.parameters if p.name == "plane"] if pattern else []
            if pattern is None or not planes:
                continue
            part = next(iter(block.hands.values()))
            now = str(pattern.values(part.values)["plane"])
            for plane in planes[0].choices:
                if plane == now:
                    continue
                values = {**_raw(show, block).get("with", {}), "plane": plane}
                words = f"dance {step.pattern} {show.at_aloud(block.start)} in the {plane} plane"
                parts = _alone(show, block, {"with": values})
                if parts is not None:
                    yield SpaceEdit(
                        kind="plane",
                        words=f"let {who} {words}",
                        cost=_A_PLANE,
                        changes=parts[0],
                        insertions=parts[1],
                    )
                yield SpaceEdit(
                    kind="plane",
                    words=f"let everyone {words}",
                    cost=_A_PLANE * 1.5,
                    changes=(((*block.path, "with"), values),),
                )


def tethers(show: Staged, conflict: Conflict) -> Iterator[SpaceEdit]:
    """Shorten one performer's tethers, in both hands alike."""
    for k in (conflict.first, conflict.second):
        for by in _SHORTER:
            edit = tether_edit(show, show.dancers[k].name, by)
            if edit is not None:
                yield SpaceEdit(
                    kind="tether", words=edit.words, cost=_A_METRE * by, changes=edit.changes
                )


def _alone(
    show: Staged, block: Block, values: dict[str, Any]
) -> tuple[tuple[Change, ...], tuple[Insertion, ...]] | None:
    """Changes of a block for one performer: of the entry itself, or of a copy split off a shared one."""
    if block.path[0] != "timeline":
        return None
    entry = step_at(show, block.path)
    if not isinstance(entry, Entry) or entry.pattern is None:
        return None
    who = list(show.show.names if "all" in entry.who else dict.fromkeys(entry.who))
    if who == [block.who]:
        return tuple(((*block.path, key), value) for key, value in values.items()), ()
    if entry.canon is not None:
        return None
    mine = {**_raw(show, block), **values}
    mine = {"who": block.who, "from": show.position(block.start)} | {
        key: value for key, value in mine.items() if key not in {"who", "from", "mirror"}
    }
    if "all" in entry.mirror or block.who in entry.mirror:
        mine["mirror"] = block.who
    rest = [name for name in who if name != block.who]
    changes: list[Change] = [((*block.path, "who"), rest)]
    if block.who in entry.mirror:
        left = [name for name in entry.mirror if name != block.who]
        changes.append(((*block.path, "mirror"), left or None))
    return tuple(changes), ((block.path[:-1], int(block.path[-1]) + 1, mine),)


def _raw(show: Staged, block: Block) -> dict[str, Any]:
    """The entry or step as written in the file."""
    value = file_values(show)
    for key in block.path:
        value = value[key]
    return dict(value)


def _entry(entry: Entry) -> str:
    return entry.phrase or entry.pattern or "the entry"
