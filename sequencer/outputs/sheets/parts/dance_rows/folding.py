"""A performer's cues as the lines of a sheet: links, short rests and walks are folded into the move they belong to."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from sequencer.outputs.sheets.page.wording import facing_words, place_words, plural
from sequencer.outputs.sheets.parts.cues import Cue
from sequencer.staging.staged import Coming

SHORT_REST = 8.0  # [beats] longer rests get a separate line
_NOTHING = 1.0  # [beats] a rest at the start of the track that nobody counts
_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CueLine:
    """One line of a sheet: a cue, the walk that begins with it, and what follows until the next line."""

    cue: Cue
    walk: Cue | None = None
    then: tuple[Cue, ...] = ()

    @property
    def cues(self) -> tuple[Cue, ...]:
        """Every cue on the line."""
        return (self.cue, *((self.walk,) if self.walk is not None else ()), *self.then)


def folded(cues: Sequence[Cue]) -> tuple[CueLine, ...]:
    """Lines of a sheet, in order; every cue is on one of them, except the end and a rest that nobody counts."""
    entries: list[CueLine] = []
    walk: Cue | None = None
    target: int | None = None  # line that what follows is added to
    for index, cue in enumerate(cues):
        if cue.kind == "end" or (index == 0 and cue.kind == "wait" and cue.beats < _NOTHING):
            continue
        follows = cue.kind == "link" or (cue.kind == "wait" and _is_short(cue, entries, cues))
        if cue.kind == "accent":
            entries.append(CueLine(cue=cue))
        elif cue.kind == "walk":
            after = next((c for c in cues[index + 1 :] if c.kind != "walk"), None)
            if after is not None and after.kind == "move" and abs(after.start - cue.start) < _SAME:
                walk = cue
                continue
            entries.append(CueLine(cue=cue))
            if cue.coming is not None:
                target = None  # what follows once they are on does not belong to the wait before
        elif follows and target is not None:
            entries[target] = replace(entries[target], then=(*entries[target].then, cue))
        else:
            entries.append(CueLine(cue=cue, walk=walk))
            walk = None
            target = len(entries) - 1
    return tuple(entries)


def _is_short(cue: Cue, entries: Sequence[CueLine], cues: Sequence[Cue]) -> bool:
    """A rest that is short, or the only thing left once the fire is out; waiting in the wings is a line of its own."""
    if cue.in_wings:
        return False
    last = not any(c.start >= cue.end - _SAME and c.kind != "end" for c in cues)
    is_out = bool(entries) and entries[-1].cue.kind == "out"
    return cue.beats <= SHORT_REST or (last and is_out)


def walk_words(cue: Cue, *, facing: bool = True) -> str:
    """A walk in words: how long, past which points, where to, and which way to face there, unless that is as before."""
    x, y, faced = cue.spot
    if cue.coming is not None and not cue.coming.on:
        side = f", {cue.coming.side}" if cue.coming.side else ""
        return f"{plural(cue.beats, 'beat')} into the wings{side}; end {place_words(x, y)}"
    passing = [f"pass the point {place_words(*point)}" for point in cue.via]
    goal = f"end {place_words(x, y)}"
    goal += f", face {facing_words(faced)}" if facing else ""
    wings = "" if cue.coming is None else " from the wings"
    if cue.coming is not None and cue.coming.side:
        wings += f", {cue.coming.side},"
    return "; ".join([f"{plural(cue.beats, 'beat')}{wings} to {cue.formation}", *passing, goal])


def onward_words(entrance: Coming) -> str:
    """Where in the wings to get to before an entrance, for whoever went off elsewhere."""
    where = place_words(*entrance.place)
    return (
        f"get round to {entrance.side}, behind the stage: {where}"
        if entrance.side
        else f"get round behind the stage to where you come on: {where}"
    )
