"""Timeline entries expanded: phrases and repeats written out, canon and mirror applied.

The result is one flat list of blocks, each for one performer; all that is known about motion here is how
many beats one cycle of a pattern takes.
"""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any, NamedTuple, cast

import numpy as np

from sequencer.geometry.bodies import SIDES, Side
from sequencer.kept import recent
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.file_records.prop_records import PropRecord
from sequencer.show.model import Entry, HandPart, Step
from sequencer.show.reading import ReadShow
from sequencer.staging.entries.moments import Moments
from sequencer.staging.entries.stop_room import refuse_stops
from sequencer.staging.staged import Accent, Block, HandWords, Path
from sequencer.timing.position import TOUCH

MOST_BLOCKS = 20_000
_MOST_KEPT = 2 * MOST_BLOCKS  # blocks that are the same objects after an edit
CycleBeats = Callable[[str, Mapping[str, Any]], float]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    """A step placed in time, for all performers of the entry."""

    step: Step
    start: float
    end: float
    path: Path
    phrase: str | None
    mirrored: bool
    note: str = ""  # of the phrase that it expands
    cue: str = ""  # of the phrase that it expands; goes before the step's own

    @property
    def accent(self) -> bool:
        """Whether it is an accent, which takes no time."""
        return self.step.accent is not None


class Expansion(NamedTuple):
    """What the timeline comes to, each by start and then in the order of the cast."""

    blocks: tuple[Block, ...]
    stops: tuple[Block, ...]
    accents: tuple[Accent, ...]

    def of(self, names: Collection[str]) -> "Expansion":
        """What some performers have of it."""
        return Expansion(
            blocks=tuple(each for each in self.blocks if each.who in names),
            stops=tuple(each for each in self.stops if each.who in names),
            accents=tuple(each for each in self.accents if each.who in names),
        )


def expanded(
    read: ReadShow,
    moments: Moments,
    cycle_beats: CycleBeats,
    *,
    of: Callable[[Sequence[str]], CycleBeats] | None = None,
) -> Expansion:
    """Every performer's blocks, stops and accents; also of those who are away.

    Parameters
    ----------
    read : ReadShow
    moments : Moments
    cycle_beats : callable
        Returns the beats of one cycle of a pattern with its parameters.
    of : callable, optional
        The same for performers who dance an entry together, if it depends on them.

    Raises
    ------
    InputError
        If a length is missing, blocks of one hand overlap, a block is only for an empty hand, a block
        runs past the end of the track, or a stop has no room.
    """
    blocks: list[Block] = []
    accents: list[Accent] = []
    ends: dict[str, float] = {}
    # Expanded for everybody, so that who is there keeps their counts whoever is away.
    everybody = read.written.names
    cast = {record.name: record for record in read.parts}
    held = {name: record.props for name, record in cast.items()}
    kinds = {name: {prop.kind for prop in props.values()} for name, props in held.items()}
    for i, entry in enumerate(read.written.timeline):
        who = everybody if "all" in entry.who else tuple(dict.fromkeys(entry.who))
        start = (
            moments.beat(entry.start, ("timeline", i, "from"))
            if entry.start is not None
            else max((ends.get(name, 0.0) for name in who), default=0.0)
        )
        cycle = of(who) if of is not None else cycle_beats
        runs = _Opener(read, moments, cycle).entry_runs(entry, i, start)
        mirrored = set(everybody if "all" in entry.mirror else entry.mirror)
        cycles: dict[tuple[str, ...], list[float]] = {}  # of each run, for performers alike
        for k, name in enumerate(who):
            # Performers with similar props stay together; a staff at half the pace slows nobody else.
            alike = tuple(other for other in who if kinds[other] == kinds[name])
            if alike not in cycles:
                own = of(alike) if of is not None else cycle_beats
                cycles[alike] = [_cycle(run.step, own) for run in runs]
            late = k * (entry.canon or 0.0)
            flip = name in mirrored
            blocks += [
                _known_block(read, run, cast[name], held[name], late, flip=flip, cycle=beats)
                for run, beats in zip(runs, cycles[alike], strict=True)
                if not run.accent
            ]
            accents += [_accent(run, name, late) for run in runs if run.accent]
            ends[name] = max([ends.get(name, 0.0), *(r.end + late for r in runs if not r.accent)])
        if len(blocks) > MOST_BLOCKS:
            raise read.fault(
                "too-many-blocks", ("timeline", i), f"the timeline expands to more than {MOST_BLOCKS} blocks",
                "repeat less",
            )  # fmt: skip
    order = {name: k for k, name in enumerate(everybody)}
    blocks.sort(key=lambda block: (block.start, order[block.who], block.path))
    _refuse_overlaps(read, moments, blocks)
    _refuse_late(read, moments, blocks)
    refuse_stops(read, moments, blocks)
    accents.sort(key=lambda accent: (accent.beat, order[accent.who], accent.path))
    return Expansion(
        blocks=tuple(block for block in blocks if block.stop is None),
        stops=tuple(block for block in blocks if block.stop is not None),
        accents=tuple(accents),
    )


@dataclass(frozen=True, slots=True)
class _Opener:
    """Expands phrases; `read` has already refused phrases that contain each other."""

    read: ReadShow
    moments: Moments
    cycle_beats: CycleBeats

    def entry_runs(self, entry: Entry, index: int, start: float) -> list[_Run]:
        path: Path = ("timeline", index)
        end = None
        if entry.until is not None:
            end = self.moments.beat(entry.until, (*path, "until"))
            if end <= start + TOUCH:
                raise self.read.fault(
                    "ends-before-start", (*path, "until"), f"{entry.until} is not after the start",
                    "choose a later moment",
                )  # fmt: skip
        if entry.phrase is not None:
            runs = self.phrase_runs(entry, path, start, mirrored=entry.mirrored)
            done = _end(runs)
            if end is not None and abs(done - end) > TOUCH:
                raise self.read.fault(
                    "phrase-does-not-fit", (*path, "until"),
                    f"the phrase lasts {done - start:g} beats, but until allows {end - start:g}",
                    "leave until out, or use repeat",
                )  # fmt: skip
            return runs
        if entry.accent is not None:
            hit = self.moments.beat(entry.accent, (*path, "accent"))
            return [_Run(step=entry, start=hit, end=hit, path=path, phrase=None, mirrored=False)]
        if end is None:
            end = start + self.length(entry, path)
        return [
            _Run(step=entry, start=start, end=end, path=path, phrase=None, mirrored=entry.mirrored)
        ]

    def phrase_runs(self, user: Step, path: Path, start: float, *, mirrored: bool) -> list[_Run]:
        name = str(user.phrase)
        steps = self.read.show.phrases[name]
        if all(step.accent is not None for step in steps):
            what = "steps" if not steps else "steps but accents"
            raise self.read.fault(
                "empty-phrase", ("phrases", name), f"phrase {name!r} has no {what}", "add a step"
            )
        if user.beats is not None or user.cycles is not None:
            raise self.read.fault(
                "length-of-a-phrase", path, "a phrase is as long as its steps",
                "leave beats and cycles out, or use repeat",
            )  # fmt: skip
        runs: list[_Run] = []
        at = start
        for _ in range(user.repeat):
            begun = at
            for j, step in enumerate(steps):
                here: Path = ("phrases", name, j)
                if step.accent is not None:
                    continue
                flip = mirrored != step.mirrored
                if step.phrase is not None:
                    inner = self.phrase_runs(step, here, at, mirrored=flip)
                else:
                    end = at + self.length(step, here)
                    inner = [
                        _Run(step=step, start=at, end=end, path=here, phrase=name, mirrored=flip)
                    ]
                runs += inner
                at = _end(inner)
                if len(runs) > MOST_BLOCKS:
                    raise self.read.fault(
                        "too-many-blocks", path, f"this phrase expands to more than {MOST_BLOCKS} blocks",
                        "repeat less",
                    )  # fmt: skip
            runs += self.phrase_accents(name, begun, at)
        if user.note:
            runs[0] = replace(runs[0], note="; ".join(filter(None, (user.note, runs[0].note))))
        if user.cue:
            runs[0] = replace(runs[0], cue=user.cue)
        return runs

    def phrase_accents(self, name: str, start: float, end: float) -> list[_Run]:
        """The accents of a phrase that is danced from one beat to another."""
        found = []
        for j, step in enumerate(self.read.show.phrases[name]):
            if step.accent is None:
                continue
            path: Path = ("phrases", name, j)
            hit = start + cast("float", step.accent) - 1.0
            if hit > end - TOUCH:
                raise self.read.fault(
                    "accent-outside", (*path, "accent"),
                    f"phrase {name!r} has {end - start:g} beats, and the accent is on beat {hit - start + 1:g}",
                    "choose an earlier beat, or write the accent where the next phrase counts its first",
                )  # fmt: skip
            found.append(
                _Run(step=step, start=hit, end=hit, path=path, phrase=name, mirrored=False)
            )
        return found

    def length(self, step: Step, path: Path) -> float:
        """Beats of a step, including repeats: a pattern that repeats simply continues."""
        if step.stop_beats is not None and step.stop is not None:
            return step.stop_beats * step.repeat
        if step.beats is not None:
            return step.beats * step.repeat
        if step.cycles is not None:
            return step.cycles * step.repeat * _cycle(step, self.cycle_beats)
        raise self.read.fault(
            "no-length", path, "this block has no length", "add beats, cycles or until"
        )


def _end(runs: Sequence[_Run]) -> float:
    """Where the last of some runs ends that takes time."""
    return max(run.end for run in runs if not run.accent)


def _accent(run: _Run, who: str, late: float) -> Accent:
    return Accent(
        who=who, beat=run.start + late, phrase=run.phrase, note=run.step.note, path=run.path
    )


def _stopped(step: Step, *, mirrored: bool) -> tuple[Side, ...]:
    """The hands that a stop is for."""
    if step.stop is None:
        return ()
    if step.hands == "both":
        return SIDES
    return (step.hands,) if not mirrored else tuple(side for side in SIDES if side != step.hands)


def _parts(step: Step, *, mirrored: bool) -> dict[Side, HandWords]:
    """What each hand does; if mirrored, the hands swap."""
    if step.link or step.stop is not None:
        return {}
    both = None
    if step.pattern:  # from a step that was validated
        both = HandPart.model_construct(pattern=step.pattern, parameters=step.parameters)
    parts: dict[Side, HandPart | None] = {"left": step.left or both, "right": step.right or both}
    if step.hands != "both":
        parts["left" if step.hands == "right" else "right"] = None
    if mirrored:
        parts = {"left": parts["right"], "right": parts["left"]}
    return {
        side: HandWords(pattern=part.pattern, parameters=dict(part.parameters))
        for side, part in parts.items()
        if part is not None
    }


def _cycle(step: Step, cycle_beats: CycleBeats) -> float:
    if step.cycle is not None:
        return step.cycle
    parts = _parts(step, mirrored=False)
    return max((cycle_beats(part.pattern, part.parameters) for part in parts.values()), default=1.0)


def _known_block(
    read: ReadShow,
    run: _Run,
    record: Performer,
    held: Mapping[Side, PropRecord],
    late: float,
    *,
    flip: bool,
    cycle: float,
) -> Block:
    """A performer's block of a run: the same object as before, if an edit of the file left its step as it was."""

    def work() -> tuple[object, Block]:
        block = _block(run, record.name, late, flip=flip, cycle=cycle)
        return (run.step, record), _with_what_is_held(read, block, held)

    # Step and performer are kept with it, so that their ids stay their own; numbers as text, since 0.0 and -0.0 are equal.
    key = (
        id(run.step), id(record), flip, run.mirrored, f"{run.start!r} {run.end!r} {late!r} {cycle!r}",
        run.path, run.phrase, run.note, run.cue,
    )  # fmt: skip
    return recent("blocks of steps", key, work, most=_MOST_KEPT)[1]


def _block(run: _Run, who: str, late: float, *, flip: bool, cycle: float) -> Block:
    mirrored = run.mirrored != flip
    return Block(
        who=who,
        start=run.start + late,
        end=run.end + late,
        hands=_parts(run.step, mirrored=mirrored),
        timing=run.step.timing,
        direction=run.step.direction,
        cycle=cycle,
        shift=run.step.shift,
        mirrored=mirrored,
        link=run.step.link,
        stop=run.step.stop,
        stopped=_stopped(run.step, mirrored=mirrored),
        phrase=run.phrase,
        note="; ".join(filter(None, (run.note, run.step.note))),
        cue=run.cue or run.step.cue,
        path=run.path,
    )


def _with_what_is_held(read: ReadShow, block: Block, held: Mapping[Side, PropRecord]) -> Block:
    """The block without the empty hands."""
    hands = {side: part for side, part in block.hands.items() if side in held}
    stopped = tuple(side for side in block.stopped if side in held)
    if len(hands) == len(block.hands) and len(stopped) == len(block.stopped):
        return block
    if not (hands or stopped):
        sides = " or ".join(block.hands or block.stopped)
        raise read.fault(
            "empty-hand", block.path, f"{block.who} holds nothing in the {sides} hand",
            f"write `hands: {next(iter(held))}`, leave `hands` out, or give {block.who} a prop there",
        )  # fmt: skip
    return replace(block, hands=hands, stopped=stopped)


def _refuse_overlaps(read: ReadShow, moments: Moments, blocks: list[Block]) -> None:
    sides: tuple[Side, Side] = ("left", "right")
    of: dict[str, list[Block]] = {who: [] for who in read.written.names}
    for block in blocks:
        of[block.who].append(block)
    for who in read.written.names:
        for side in sides:
            own = [b for b in of[who] if b.link or side in (*b.hands, *b.stopped)]
            for before, after in pairwise(own):
                if after.start < before.end - TOUCH:
                    here, there, since = (
                        str(moments.tempo.position_of(b))
                        for b in (after.start, before.end, before.start)
                    )
                    line = read.document.place(*before.path).line
                    raise read.fault(
                        "blocks-overlap", after.path,
                        f"{who}'s {after.title} starts at {here}, while {before.title} from {since} on "
                        f"(line {line} of the file) runs to {there}",
                        "start it later, or shorten the one before",
                    )  # fmt: skip


def _refuse_late(read: ReadShow, moments: Moments, blocks: list[Block]) -> None:
    seconds = moments.tempo.seconds_from_beats(np.array([block.end for block in blocks]))
    for block, end in zip(blocks, seconds.tolist(), strict=True):
        if end > moments.song.duration + 0.05:
            last = float(moments.tempo.beats_from_seconds(moments.song.duration))
            raise read.fault(
                "past-the-end", block.path,
                f"{block.who}'s {block.title} runs to {moments.tempo.position_of(block.end)}, "
                f"the track ends at {moments.tempo.position_of(last)}",
                f"shorten it by {block.end - last:.1f} beats",
            )  # fmt: skip
