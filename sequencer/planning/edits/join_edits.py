"""Mends of joins as changes of the show file, cheapest first; the caller checks each one again.

A mend that sets a parameter, a shift or a length changes values; a link shortens the block before by
its beats and adds an entry between the two, so that nothing after it moves.
"""

from dataclasses import dataclass
from typing import Any

from sequencer.checks.dance.joins import Joint, Meeting, meetings, performers_blocks
from sequencer.geometry.bodies import Side
from sequencer.motion.performers.dancer import Dancer
from sequencer.planning.edits.as_written import plain
from sequencer.planning.edits.join_remedies import Remedy, remedies_for
from sequencer.show.editing import Change, Insertion
from sequencer.show.model import Entry, Step
from sequencer.staging.results import result_of
from sequencer.staging.staged import Block, Path, Staged

LEAST_LEFT = 1.0  # [beats] that a block must keep when it gives beats to a link


@dataclass(frozen=True, slots=True, kw_only=True)
class Edit:
    """One way to mend a join in the show file."""

    words: str
    beats_lost: float
    changes: tuple[Change, ...]
    insertions: tuple[Insertion, ...] = ()


def failing(show: Staged) -> list[Meeting]:
    """Every boundary that does not join, by beat."""
    bad = [meeting for dancer in show.dancers for meeting in _failing(show, dancer)]
    return sorted(bad, key=lambda meeting: meeting.beat)


def _failing(show: Staged, dancer: Dancer) -> list[Meeting]:
    key = performers_blocks("failing", show, dancer)
    return result_of(
        show, key, lambda: [each for each in meetings(show, dancer) if not each.joins()]
    )


def edits_for(show: Staged, joint: Joint) -> list[Edit]:
    """Changes of the show file that may mend a boundary, fewest beats lost first."""
    found = []
    for remedy in remedies_for(joint.boundary, joint.verdict):
        edit = _edit(show, joint, remedy)
        if edit is not None:
            found.append(edit)
    return sorted(found, key=lambda edit: edit.beats_lost)


def _edit(show: Staged, joint: Joint, remedy: Remedy) -> Edit | None:
    changes: list[Change] = []
    insertions: list[Insertion] = []
    before, after = joint.before, joint.after
    if remedy.change in ("before", "both"):
        changes += _set(show, before, joint.side, remedy)
    if remedy.change in ("after", "both") and not (
        remedy.change == "both" and before.path == after.path
    ):
        changes += _set(show, after, joint.side, remedy)
    if remedy.change == "shift":
        changes.append(((*after.path, "shift"), plain(after.shift + remedy.values["shift"])))
    if remedy.change == "extend":
        changes += length_changes(show, before, remedy.values["beats"])
    if remedy.change == "link":
        beats = remedy.values["beats"]
        if before.end - before.start - beats < LEAST_LEFT:
            return None
        changes += length_changes(show, before, before.end - before.start - beats)
        insertions.append(link_entry(show, before, beats))
    if not changes:
        return None
    return Edit(
        words=f"{joint.who}, {show.aloud(joint.beat)}: {remedy.words}",
        beats_lost=remedy.beats_lost,
        changes=tuple(changes),
        insertions=tuple(insertions),
    )


def step_at(show: Staged, path: Path) -> Step:
    """The entry or step of the show file that a block comes from."""
    if path[0] == "timeline":
        return show.show.timeline[int(path[1])]
    return show.show.phrases[str(path[1])][int(path[2])]


def _set(show: Staged, block: Block, side: Side, remedy: Remedy) -> list[Change]:
    """Changes that set parameters of a block, in the part of that hand if it has one."""
    step = step_at(show, block.path)
    written: Side = side
    if block.mirrored:
        written = "left" if side == "right" else "right"
    part = step.left if written == "left" else step.right
    where: Path = block.path if part is None else (*block.path, written)
    parameters = step.parameters if part is None else part.parameters
    changes: list[Change] = []
    values = dict(remedy.values)
    for key in ("cycle", "beats"):  # of the block, not of the pattern
        if key in values:
            value = values.pop(key)
            if key == "beats":
                changes += length_changes(show, block, value)
            else:
                changes.append(((*block.path, "cycle"), plain(value)))
    if parameters:
        changes += [((*where, "with", key), value) for key, value in values.items()]
    elif values:
        changes.append(((*where, "with"), values))
    return changes


def length_changes(show: Staged, block: Block, beats: float) -> list[Change]:
    """Changes that set the length of a block; none if it is unchanged."""
    step = step_at(show, block.path)
    if abs(beats - (block.end - block.start)) < 1e-9:
        return []
    changes: list[Change] = [((*block.path, "beats"), plain(beats / step.repeat))]
    if step.cycles is not None:
        changes.append(((*block.path, "cycles"), None))
    if isinstance(step, Entry) and step.until is not None:
        changes.append(((*block.path, "until"), None))
    return changes


def link_entry(show: Staged, before: Block, beats: float) -> Insertion:
    """A link of some beats, to be inserted after a block."""
    step = step_at(show, before.path)
    entry: dict[str, Any] = {"link": True, "beats": plain(beats)}
    if isinstance(step, Entry):
        if "all" not in step.who:
            entry = {"who": list(step.who) if len(step.who) > 1 else step.who[0], **entry}
        if step.canon is not None:
            entry["canon"] = plain(step.canon)
    return before.path[:-1], int(before.path[-1]) + 1, entry
