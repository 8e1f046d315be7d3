"""Changes at a passage from one block to the next: the link's length, the shift of a block, or both, in half beats.

Nothing else in the song moves: what a link gains, a block beside it gives.
"""

from collections.abc import Iterator
from math import isfinite

from sequencer.planning.edits.as_written import plain
from sequencer.planning.edits.join_edits import (
    edits_for,
    failing,
    length_changes,
    link_entry,
    step_at,
)
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.trying.fault_places import Crossing
from sequencer.planning.trying.trials import DanceEdit
from sequencer.show.editing import Change
from sequencer.show.model import Entry
from sequencer.staging.staged import Block, Staged
from sequencer.units import counted

LEAST_BLOCK = 1.0  # [beats] that a block keeps when it gives some to a link
_MORE = (0.5, -0.5, 1.0, -1.0, 1.5, -1.5, 2.0, -2.0, 3.0, 4.0)  # [beats] of a link
_NEW = (1.0, 2.0, 1.5, 0.5, 3.0, 4.0)  # [beats] of a link where there was none
_LONGEST = 8.0  # [beats] of a link, and of a pattern's period in which shifts are tried
_SAME = 1e-6  # [beats]


def passage_ladders(show: Staged, passage: Crossing, *, both: bool = True) -> list[Ladder]:
    """Changes at a passage: the link's length, the shift, other mends of a join, then two at once.

    Parameters
    ----------
    show : Staged
    passage : Crossing
    both : bool
        Whether to change length and shift together too.
    """
    lengths = list(_lengths(show, passage))
    shifts = list(_shifts(show, passage.after, (0.5, 1.0))) if passage.after else []
    before = list(_shifts(show, passage.before, (0.5, 1.0))) if passage.before else []
    length = _length_ladder(passage, lengths)
    shift = Ladder(name="another shift", rungs=shifts, most=12)
    usual = list(_of_the_join(show, passage))
    free, dear = (
        Ladder(name="the usual mends of a join", rungs=rungs, most=6)
        for rungs in ([own for own in usual if not own.value], [own for own in usual if own.value])
    )
    # A link that is there is lengthened before anything else; where there is none, what costs no beats goes first.
    found = [free, shift, length, dear] if passage.touching else [length, shift, free, dear]
    if both:
        pairs = [_both(length, shift) for length in lengths[:6] for shift in shifts[:8]]
        found.append(
            Ladder(name="the link's length with another shift", rungs=pairs, most=24, last=True)
        )
        found.append(
            Ladder(name="another shift of the block before", rungs=before, most=10, last=True)
        )
    return [ladder for ladder in found if ladder.rungs]


def _length_ladder(passage: Crossing, lengths: list[DanceEdit]) -> Ladder:
    def words(low: DanceEdit, high: DanceEdit) -> str:
        span = f"{low.value:g} to {high.value:g} beats"
        if passage.link is None:
            return f"leave {span} between the two"
        return f"give the link {span} ({_now(passage.link)})"

    return Ladder(
        name="the link's length",
        rungs=lengths,
        most=12,
        step=0.5 if passage.link is not None else 0.0,
        range_words=words,
    )


def _lengths(show: Staged, passage: Crossing) -> Iterator[DanceEdit]:
    """Another length of the link; the block before or the one after gives or takes the beats."""
    before, link, after = passage.before, passage.link, passage.after
    if link is not None:
        yield from _of_a_link(show, before, link, after)
    elif passage.touching and before is not None:
        for beats in _NEW:
            if _gives(before, beats):
                yield DanceEdit(
                    words=f"put a link of {counted_beats(beats)} between the two",
                    cost=_given(before, beats),
                    changes=tuple(length_changes(show, before, before.end - before.start - beats)),
                    insertions=(link_entry(show, before, beats),),
                    value=beats,
                )
    else:
        yield from _gaps(show, before, after)


def _of_a_link(
    show: Staged, before: Block | None, link: Block, after: Block | None
) -> Iterator[DanceEdit]:
    now = link.end - link.start
    for more in _MORE:
        beats = now + more
        if not 0.5 - _SAME <= beats <= _LONGEST:
            continue
        own = length_changes(show, link, beats)
        words = f"give the link {counted_beats(beats)} ({_now(link)})"
        if before is not None and _gives(before, more) and _next_to(before, link):
            ends = length_changes(show, before, before.end - before.start - more)
            starts = _start_of(show, link, -more)
            if starts is not None:
                yield DanceEdit(
                    words=words,
                    cost=_given(before, more),
                    changes=(*own, *starts, *ends),
                    value=beats,
                )
                continue
        if after is not None and _gives(after, more):
            starts = _start_of(show, after, more)
            if starts is not None:
                yield DanceEdit(
                    words=words,
                    cost=_taken(after, more),
                    changes=(*own, *starts, *_later(show, after, more)),
                    value=beats,
                )


def _gaps(show: Staged, before: Block | None, after: Block | None) -> Iterator[DanceEdit]:
    """More time between two blocks, or to and from a rest, where no link is written."""
    gap = after.start - before.end if before is not None and after is not None else 0.0
    for more in (0.5, 1.0, 1.5, 2.0, -0.5, -1.0, 3.0):
        if before is not None and _gives(before, more) and gap + more > 0.25:
            ends = before.end - more
            yield DanceEdit(
                words=f"end {before.title} {counted_beats(abs(more))} "
                f"{'earlier' if more > 0 else 'later'}, at {show.position(ends)}",
                cost="nothing else moves",
                changes=tuple(length_changes(show, before, ends - before.start)),
                value=gap + more,
            )
        if after is not None and _gives(after, more) and gap + more > 0.25:
            moved = _moved_start(show, after, more)
            if moved:
                yield DanceEdit(
                    words=f"start {after.title} {counted_beats(abs(more))} "
                    f"{'later' if more > 0 else 'earlier'}, at {show.position(after.start + more)}",
                    cost="it ends where it did",
                    changes=moved,
                    value=gap + more,
                )


def _shifts(show: Staged, block: Block, steps: tuple[float, ...]) -> Iterator[DanceEdit]:
    step = steps[0] if block.cycle >= 1 else 0.25
    period = _period(show, block)
    count = round(period / step)
    for k in sorted(range(1, count), key=lambda k: (min(k, count - k), k > count - k)):
        by = k * step if 2 * k <= count else (k - count) * step
        shift = block.shift + by
        if shift < 0:
            shift += period
        yield DanceEdit(
            words=f"start {block.title} {counted_beats(shift)} in (shift: {plain(shift):g}, now {block.shift:g})"
            if shift else f"start {block.title} from its beginning (shift: 0, now {block.shift:g})",
            cost="nothing else moves",
            changes=(((*block.path, "shift"), plain(shift)),),
            value=shift,
        )  # fmt: skip


def _period(show: Staged, block: Block) -> float:
    """Beats after which a block's laws repeat [beats]; at most eight, and whole half beats."""
    from sequencer.motion.trajectories.trajectory import Trajectory

    dancer = next(each for each in show.dancers if each.name == block.who)
    periods = [
        span.law.period
        for trajectory in dancer.trajectories.values() if isinstance(trajectory, Trajectory)
        for span in trajectory.spans
        if span.kind == "block" and abs(span.start - block.start) < _SAME and isfinite(span.law.period)
    ]  # fmt: skip
    longest = max(periods, default=block.cycle)
    return longest if longest <= _LONGEST else max(block.cycle, 1.0)


def _of_the_join(show: Staged, passage: Crossing) -> Iterator[DanceEdit]:
    """Mends of a join that fails, as `join_remedies` finds them."""
    if passage.before is None or passage.after is None or not passage.touching:
        return
    for meeting in failing(show):
        if meeting.who != passage.who or abs(meeting.beat - passage.before.end) > _SAME:
            continue
        for edit in edits_for(show, meeting.judged()):
            if edit.insertions or any(path[-1] == "shift" for path, _ in edit.changes):
                continue  # links and shifts have ladders of their own, in half beats
            yield DanceEdit(
                words=edit.words.split(": ", 1)[-1],
                cost=f"{edit.beats_lost:g} beats moved"
                if edit.beats_lost
                else "nothing else moves",
                changes=edit.changes,
                insertions=edit.insertions,
                value=edit.beats_lost,
            )


def _both(length: DanceEdit, shift: DanceEdit) -> DanceEdit:
    paths = {path for path, _ in shift.changes}
    return DanceEdit(
        words=f"{length.words}, and {shift.words}",
        cost=length.cost,
        changes=tuple(each for each in length.changes if each[0] not in paths) + shift.changes,
        insertions=length.insertions,
    )


def _gives(block: Block, beats: float) -> bool:
    return block.end - block.start - beats >= LEAST_BLOCK - _SAME


def _next_to(before: Block, link: Block) -> bool:
    """Whether a block is written in the same list as the link after it, so that both change together."""
    return before.path[:-1] == link.path[:-1] and int(link.path[-1]) > int(before.path[-1])


def _start_of(show: Staged, block: Block, beats: float) -> tuple[Change, ...] | None:
    """Changes by which a block begins some beats later: none where it follows what is before it; None if it cannot be moved alone."""
    step = step_at(show, block.path)
    if not isinstance(step, Entry) or step.start is None:
        return ()
    if step.phrase is not None or step.canon is not None:
        return None
    return (((*block.path, "from"), show.position(block.start + beats)),)


def _later(show: Staged, block: Block, beats: float) -> tuple[Change, ...]:
    """A block that begins some beats later and goes on as it did."""
    step = step_at(show, block.path)
    changes: list[Change] = []
    if not (isinstance(step, Entry) and step.until is not None):
        changes += length_changes(show, block, block.end - block.start - beats)
    changes.append(((*block.path, "shift"), plain(block.shift + beats)))
    return tuple(changes)


def _moved_start(show: Staged, block: Block, beats: float) -> tuple[Change, ...]:
    starts = _start_of(show, block, beats)
    return (*starts, *_later(show, block, beats)) if starts else ()


def _given(block: Block, beats: float) -> str:
    if beats > 0:
        return f"{block.title} before it ends {counted_beats(beats)} earlier"
    return f"{block.title} before it goes on for {counted_beats(-beats)} more"


def _taken(block: Block, beats: float) -> str:
    if beats > 0:
        return f"{block.title} after it starts {counted_beats(beats)} later, at the same place in the music"
    return f"{block.title} after it starts {counted_beats(-beats)} earlier"


def _now(link: Block) -> str:
    return f"now {link.end - link.start:g}"


def counted_beats(beats: float) -> str:
    """A number of beats in words."""
    return counted(plain(beats), "beat")
