"""Where in a dance a fault lies: the blocks that it is about, and the boundary that it is at."""

from dataclasses import dataclass

from sequencer.checks.fault_kinds import (
    FLOWN_CODES,
    MENDED_CODES,
    OF_BURNS,
    OF_HEIGHT,
    OF_JOINS,
    OF_PACE,
    OF_WALKS,
    SLACK,
    UNFLOWN_LINK,
)
from sequencer.findings import Finding
from sequencer.motion.fitting.search import fitted
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Span, Trajectory
from sequencer.staging.dances import dance_of
from sequencer.staging.staged import Block, Staged
from sequencer.timing.position import TOUCH

_NEAR = 0.05  # [beats] of rounding between a finding's seconds and beats
_AT_A_BLEND = BLEND_HALF_WIDTH + 0.1  # [beats] from a boundary


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Crossing:
    """Two blocks that follow each other, and what is between them."""

    who: str
    before: Block | None
    link: Block | None  # a written one
    after: Block | None

    @property
    def touching(self) -> bool:
        """Whether the two meet with nothing between them."""
        return (
            self.link is None and self.before is not None and self.after is not None
            and self.after.start - self.before.end <= TOUCH
        )  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FaultPlace:
    """What a fault is about: some blocks, a passage, or both."""

    who: str
    blocks: tuple[Block, ...] = ()
    passage: Crossing | None = None
    at_the_passage: bool = False  # rather than in the middle of the block


def place_of(show: Staged, fault: Finding) -> FaultPlace | None:
    """Where a fault of one performer's dance lies; None if it is of no block and no passage."""
    if len(fault.who) != 1 or fault.start is None:
        return None
    who = fault.who[0]
    start = float(show.tempo.beats_from_seconds(fault.start))
    end = start if fault.end is None else float(show.tempo.beats_from_seconds(fault.end))
    patterns = [block for block in show.blocks_of(who) if not block.link]
    if fault.code in OF_HEIGHT:
        # a finding may gather several passes
        inside = [block for block in patterns if block.start < end and start < block.end]
        links = _passage_at(show, who, start, end) if not inside else None
        if not inside and links is None:
            return None
        return FaultPlace(who=who, blocks=_once(inside), passage=links)
    if fault.code in OF_JOINS or fault.code == UNFLOWN_LINK:
        return FaultPlace(who=who, passage=_passage_at(show, who, start, end), at_the_passage=True)
    if fault.code in FLOWN_CODES:
        return _flown_place(show, who, (start + end) / 2)
    span = _span_of(show, who, start, end)
    return None if span is None else _place_of_span(show, fault, span, start)


def _flown_place(show: Staged, who: str, beat: float) -> FaultPlace:
    """The block in which a beat is, or the passage: where flown paths lie is no matter of one hand's blends."""
    inside = [
        block for block in show.blocks_of(who)
        if not block.link and block.start <= beat < block.end
    ]  # fmt: skip
    if inside:
        return FaultPlace(who=who, blocks=_once(inside))
    return FaultPlace(who=who, passage=_passage_at(show, who, beat, beat), at_the_passage=True)


def home_of(show: Staged, fault: Finding) -> frozenset[float]:
    """The blocks and passages that a fault of one performer's dance is of, counted, so that links put in change nothing.

    Returns
    -------
    home : frozenset of float
        [1] 0 for their first pattern, 1 for their second, 0.5 for the passage between the two; empty if the fault is of
        no block.
    """
    if (
        len(fault.who) != 1 or fault.start is None
        or fault.code not in (*MENDED_CODES, *FLOWN_CODES) or fault.code in (*OF_WALKS, *OF_BURNS)
    ):  # fmt: skip
        return frozenset()
    who = fault.who[0]
    start = float(show.tempo.beats_from_seconds(fault.start))
    end = start if fault.end is None else float(show.tempo.beats_from_seconds(fault.end))
    patterns = [block for block in show.blocks_of(who) if not block.link]
    if fault.code in OF_HEIGHT:
        inside = [k for k, block in enumerate(patterns) if block.start < end and start < block.end]
        if inside:
            return frozenset(float(k) for k in inside)
    if fault.code in FLOWN_CODES and fault.code != UNFLOWN_LINK:
        middle = (start + end) / 2
        inside = [k for k, block in enumerate(patterns) if block.start <= middle < block.end]
        if inside:
            return frozenset(float(k) for k in inside)
    passed = fault.code in (*OF_JOINS, *FLOWN_CODES)
    span = None if passed else _span_of(show, who, start, end)
    if span is not None and span.kind == "block":
        return frozenset(
            float(k) for k, block in enumerate(patterns) if abs(block.start - span.start) < _NEAR
        )
    middle = (start + end) / 2 if span is None else (span.start + span.end) / 2
    return frozenset({sum(block.start < middle - _NEAR for block in patterns) - 0.5})


def _place_of_span(show: Staged, fault: Finding, span: Span, start: float) -> FaultPlace:
    """Where a fault of one span lies that is worst at a beat."""
    who = fault.who[0]
    if span.kind != "block":
        passage = _passage_at(show, who, span.start, span.end)
        return FaultPlace(who=who, passage=passage, at_the_passage=True)
    blocks = [
        block for block in show.blocks_of(who)
        if not block.link and abs(block.start - span.start) < _NEAR
    ]  # fmt: skip
    first = start - span.start < span.end - start  # the nearer border
    border = span.start if first else span.end
    near = (fault.code == SLACK and fault.severity == "warn") or (  # slack in a blend only warns
        abs(start - border) <= _AT_A_BLEND
        and fault.code not in OF_PACE
        and all(_fits(show, block) for block in blocks)
    )
    return FaultPlace(
        who=who,
        blocks=tuple(blocks),
        passage=_passage_at(show, who, border, border) if near else None,
        at_the_passage=near,
    )


def _fits(show: Staged, block: Block) -> bool:
    """Whether a pattern by itself stays clear of its performer, so that a fault is of what is beside it."""
    record = next(record for record in show.show.cast if record.name == block.who)
    try:
        dance = dance_of(block, record, show.tempo, show.book, torque=show.show.limits.torque)
        return fitted(dance).margins.least > 0
    except ValueError:
        return False


def _span_of(show: Staged, who: str, start: float, end: float) -> Span | None:
    """The span of either hand in which a finding begins and with which it ends."""
    dancer = next(each for each in show.dancers if each.name == who)
    for trajectory in dancer.trajectories.values():
        if not isinstance(trajectory, Trajectory):
            continue
        for span in trajectory.spans:
            if abs(span.end - end) < _NEAR and span.start - _NEAR <= start <= span.end + _NEAR:
                return span
    return None


def _passage_at(show: Staged, who: str, start: float, end: float) -> Crossing | None:
    """The passage about a boundary or a link between two beats."""
    blocks = show.blocks_of(who)
    patterns = [block for block in blocks if not block.link]
    link = next(
        (block for block in blocks if block.link
         and block.start < end + _NEAR and start - _NEAR < block.end), None,
    )  # fmt: skip
    low, high = (start, end) if link is None else (link.start, link.end)
    middle = (low + high) / 2
    before = max(
        (block for block in patterns if block.start < middle - _NEAR and block.end <= middle + _NEAR),
        key=lambda block: block.end, default=None,
    )  # fmt: skip
    after = min(
        (block for block in patterns if block.start >= middle - _NEAR),
        key=lambda block: block.start, default=None,
    )  # fmt: skip
    if before is None and after is None:
        return None
    return Crossing(who=who, before=before, link=link, after=after)


def _once(blocks: list[Block]) -> tuple[Block, ...]:
    """Blocks of different steps of the show file."""
    return tuple({block.path: block for block in blocks}.values())
