"""Mends of one performer's dance, each tried on the restaged show: the smallest of each kind, with its range.

Faults of one cause are mended together: the same step of the show file, whoever dances it and however often.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from sequencer.checks.fault_kinds import (
    BEYOND_REACH,
    MENDED_CODES,
    OF_BURNS,
    OF_HEIGHT,
    OF_PASSAGES,
    OF_WALKS,
    PROP_TURNS,
    SLACK,
    TOO_FAST,
)
from sequencer.findings import Finding
from sequencer.planning.edits.dance_edits import block_ladders, other_patterns
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.edits.length_edits import left_out
from sequencer.planning.edits.link_edits import passage_ladders
from sequencer.planning.edits.stage_edits import burn_path, stage_ladders, walk_path
from sequencer.planning.trying.fault_places import FaultPlace, place_of
from sequencer.planning.trying.trials import DanceEdit, FaultTrials, Trial
from sequencer.staging.staged import Block, Path, Staged
from sequencer.units import at_aloud

OFFERED = 2  # mends of one cause
MOST_FOR_A_CAUSE = 70  # for one cause
_NEXT = 3  # values from the first that may do, before farther ones are tried
_LEFT_OUT = 2  # of three
_IN_A_ROW = 6  # values after which a join beside the block fails, before one in three is tried
_AFTER_A_MEND = 3  # trials of each kind once another kind has helped
_FOLLOWED = 3  # changes that break a join, which are tried with a mend of that join
_FOLLOWING = 12  # trials of each
_FOLLOWING_OF_A_KIND = 4  # so that a link is tried too, not shifts only


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DanceMend:
    """A change that was tried and clears a cause without harm."""

    words: str  # what to do, as a value or a range, and what it costs
    steps: tuple[DanceEdit, ...]  # one after the other
    after: Staged  # the show with it
    of_the_look: bool = False  # it makes another dance of it
    span: tuple[
        DanceEdit, ...
    ] = ()  # what the words tell as a range, step by step; empty if they tell one value


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FoundMends:
    """What was found for one cause."""

    mends: tuple[DanceMend, ...]  # in the order in which a performer would try them
    tried: tuple[str, ...] = ()  # kinds of change that were tried
    trials: int = 0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cause:
    """Faults that one change of the show file may mend."""

    code: str
    faults: tuple[Finding, ...]
    place: FaultPlace


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Broken:
    """A change that clears a cause, but after which a join no longer holds."""

    rung: DanceEdit
    trial: Trial
    of_the_look: bool  # it makes another dance of it


LaddersOf = Callable[[FaultTrials, Cause], Iterable[Ladder]]


def causes(show: Staged, faults: Sequence[Finding]) -> list[Cause]:
    """The faults that mends are sought for, by cause, in their order."""
    found: dict[tuple[str, Path | None, Path | None], list[tuple[Finding, FaultPlace]]] = {}
    for fault in faults:
        if fault.code not in MENDED_CODES or fault.severity == "note":
            continue
        place: FaultPlace | None
        key: tuple[Path | None, Path | None]
        if fault.code in OF_WALKS or fault.code in OF_BURNS:
            # each walker has a way of their own, but those of one burn are put out together
            path = (walk_path if fault.code in OF_WALKS else burn_path)(show, fault)
            place, key = FaultPlace(who=fault.who[0]), (path, None)
        else:
            place = place_of(show, fault)
            if place is None:
                continue
            key = step_of(place)
        found.setdefault((fault.code, *key), []).append((fault, place))
    return [
        Cause(code=key[0], faults=tuple(fault for fault, _ in each), place=each[0][1])
        for key, each in found.items()
    ]


def step_of(place: FaultPlace) -> tuple[Path | None, Path | None]:
    """The step of the show file that a fault is of, or the two about its passage."""
    if place.blocks and not place.at_the_passage:
        return place.blocks[0].path, None
    passage = place.passage
    if passage is None:
        return (place.blocks[0].path if place.blocks else None), None
    return tuple(None if each is None else each.path for each in (passage.before, passage.after))  # type: ignore[return-value]


def sought(
    trials: FaultTrials,
    cause: Cause,
    *,
    most: int = OFFERED,
    look: bool = True,
    ranged: bool = True,
    ladders: "LaddersOf | None" = None,
    spent_at_most: int = MOST_FOR_A_CAUSE,
) -> FoundMends:
    """Mends of a cause, each tried on the restaged show.

    Parameters
    ----------
    trials : FaultTrials
    cause : Cause
    most : int
        How many mends are wanted, of one kind each.
    look : bool
        Whether another dance (another pattern) may be offered where nothing smaller helps.
    ranged : bool
        Whether it is sought how far a change may go, to tell it as a range.
    ladders : callable, optional
        The changes that are tried, by kind; those of a fault as drawn if not given.
    spent_at_most : int
        Trials after which no other kind of change is begun.
    """
    start, looked = trials.spent, trials.looked
    mends: list[DanceMend] = []
    tried: list[str] = []
    broken: list[_Broken] = []
    kinds = iter((ladders or _ladders)(trials, cause))
    while (
        len(mends) < most and trials.spent - start < spent_at_most and not trials.allowance.used_up
    ):
        ladder = next(kinds, None)  # making one takes fits, so none is made that is not wanted
        if ladder is None:
            break
        if (ladder.last or ladder.of_the_look) and mends:
            continue
        if ladder.of_the_look:
            mends += _followed(trials, cause, broken)
            if mends or not look:
                continue
        if not ladder.rungs:
            continue
        tried.append(ladder.name)
        rungs = _AFTER_A_MEND if mends else ladder.most
        mend = _on(trials, cause, ladder, broken, most=rungs, ranged=ranged)
        if mend is not None:
            mends.append(mend)
    if not mends:
        mends += _followed(trials, cause, broken)
    made = trials.spent - start + trials.looked - looked
    return FoundMends(mends=tuple(mends), tried=tuple(dict.fromkeys(tried)), trials=made)


def _ladders(trials: FaultTrials, cause: Cause) -> Iterator[Ladder]:
    show, place, fault = trials.show, cause.place, cause.faults[0]
    if fault.code in OF_WALKS or fault.code in OF_BURNS:
        yield from stage_ladders(show, fault)
        return
    blocks = place.blocks[:2]
    if not place.at_the_passage:
        if (
            fault.code in OF_HEIGHT
        ):  # a slack tether is held up by much hand work, which reaches far
            for block, root in _rooted(trials, place.who, blocks, (SLACK,)):
                yield from _named(block, block_ladders(show, block, root))
        for block in blocks:
            yield from block_ladders(show, block, fault)
        if place.passage is not None:
            yield from passage_ladders(show, place.passage)
    else:
        yield from _at_a_passage(trials, place, fault)
        if place.passage is not None and not blocks:
            both = place.passage.after, place.passage.before
            blocks = tuple(each for each in both if each is not None)
    for block in blocks:
        yield other_patterns(show, block)


def _at_a_passage(trials: FaultTrials, place: FaultPlace, fault: Finding) -> Iterator[Ladder]:
    """Changes of a passage and of the blocks beside it, what is too fast or too far itself first."""
    show, passage = trials.show, place.passage
    roots = list(_roots_beside(trials, place))
    for block, root in roots:
        yield from _named(block, block_ladders(show, block, root))
    turns = any(each.quantity == PROP_TURNS for _, root in roots for each in root.figures)
    if passage is not None and not turns:  # a link turns as fast as the block that it leads to
        yield from passage_ladders(show, passage)
    for block in place.blocks[:2]:
        yield from _named(block, block_ladders(show, block, fault))
    if passage is not None and not place.blocks:
        for beside in (passage.after, passage.before):
            out = None if beside is None else left_out(show, beside)
            if beside is not None and out is not None:
                yield from _named(beside, (out,))


def _named(block: Block, ladders: Iterable[Ladder]) -> Iterator[Ladder]:
    """Ladders that say which pattern they change, as a passage has two."""
    return (replace(ladder, of=block.title) for ladder in ladders)


def _roots_beside(trials: FaultTrials, place: FaultPlace) -> Iterator[tuple[Block, Finding]]:
    """Blocks beside a passage that are too fast or out of reach themselves, and how."""
    passage = place.passage
    if passage is not None and place.at_the_passage:
        beside = [block for block in (passage.before, passage.after) if block is not None]
        yield from _rooted(trials, place.who, beside, (TOO_FAST, BEYOND_REACH))


def _rooted(
    trials: FaultTrials, who: str, blocks: Sequence[Block], codes: Sequence[str]
) -> Iterator[tuple[Block, Finding]]:
    """Those of some blocks that have faults of some kinds of their own, and these."""
    among = {(block.path, block.start) for block in blocks}
    for fault in (each for code in codes for each in trials.before.get((code, (who,)), ())):
        own = place_of(trials.show, fault)
        for block in () if own is None or own.at_the_passage else own.blocks:
            if (block.path, block.start) in among:
                yield block, fault


def _on(
    trials: FaultTrials,
    cause: Cause,
    ladder: Ladder,
    broken: list[_Broken],
    *,
    most: int,
    ranged: bool,
) -> DanceMend | None:
    """The smallest clear rung of a ladder, with the range that is clear beside it."""
    row: list[DanceEdit] = []  # in a row, after which nothing but a join beside the block fails
    fine = ladder.now is not None  # what is clear is then sought on to the value that changes least
    for rung in _hopeful(
        trials, cause, ladder, most, sparsely=lambda: fine and len(row) >= _IN_A_ROW
    ):
        if trials.allowance.used_up:
            break
        trial = trials.of(cause.faults, rung)
        if trial is None:
            continue
        if trial.cleared and trial.harm and all(each.code in OF_PASSAGES for each in trial.harm):
            broken.append(_Broken(rung=rung, trial=trial, of_the_look=ladder.of_the_look))
            row.append(rung)
        else:
            row.clear()
        if not trial.clear:
            continue
        trial = trials.confirmed(cause.faults, rung)
        if trial is None or not trial.clear:
            continue
        least, trial = _nearest(trials, cause, ladder, rung, trial)
        span = _span(trials, cause, ladder, least) if ranged else ()
        return DanceMend(
            words=(f"{ladder.of}: " if ladder.of else "")
            + (ladder.told(span[0], span[-1]) if span else least.told),
            steps=(least,), after=trial.after, of_the_look=ladder.of_the_look, span=span,
        )  # fmt: skip
    return None


def _hopeful(
    trials: FaultTrials,
    cause: Cause,
    ladder: Ladder,
    most: int,
    *,
    sparsely: Callable[[], bool] = lambda: False,
) -> Iterator[DanceEdit]:
    """The rungs to be tried, smallest first, without those of which a first look shows that the fault stays.

    On the way to where the pattern fits by itself, the first that may do is sought by halves. While `sparsely` says so, two
    of three are left out; what is clear beside one that is will be found from there.
    """
    rungs = list(ladder.rungs)
    if _seen_alone(cause) is not None and ladder.approach:
        low, high = 0, len(ladder.approach)
        while low < high:
            middle = (low + high) // 2
            if _stays(trials, cause, ladder.approach[middle]):
                low = middle + 1
            else:
                high = middle
        first = ladder.approach[low : low + _NEXT]
        seen = {id(rung) for rung in (*ladder.approach[:low], *first)}
        rungs = [*first, *(own for own in rungs if id(own) not in seen)]
    left = 0
    for rung in rungs[:most]:
        if sparsely() and left < _LEFT_OUT:
            left += 1
            continue
        left = 0
        if not _stays(trials, cause, rung):
            yield rung


def _seen_alone(cause: Cause) -> Block | None:
    """The block of a cause, if what is before and after it does not matter."""
    place = cause.place
    return place.blocks[0] if place.blocks and not place.at_the_passage else None


def _stays(trials: FaultTrials, cause: Cause, rung: DanceEdit) -> bool:
    """Whether a first look shows that a fault stays."""
    block = _seen_alone(cause)
    return block is not None and trials.hopeless(cause.faults[0], block, rung)


def _clear(trials: FaultTrials, cause: Cause, rung: DanceEdit) -> bool:
    """Whether a rung is clear as drawn; false too if no more is to be tried."""
    if trials.allowance.used_up or _stays(trials, cause, rung):
        return False
    trial = trials.of(cause.faults, rung)
    return trial is not None and trial.clear


def _nearest(
    trials: FaultTrials, cause: Cause, ladder: Ladder, rung: DanceEdit, trial: Trial
) -> tuple[DanceEdit, Trial]:
    """The clear rung next to a clear one that changes least: those to try first are some steps apart."""
    if ladder.now is None or not ladder.step:
        return rung, trial
    near: list[DanceEdit] = []
    for own in ladder.beyond(rung, up=ladder.now > rung.value):
        if not _clear(trials, cause, own):
            break
        near.append(own)
    for own in reversed(near):
        more = trials.confirmed(cause.faults, own)
        if more is not None and more.clear:
            return own, more
    return rung, trial


def _span(
    trials: FaultTrials, cause: Cause, ladder: Ladder, rung: DanceEdit
) -> tuple[DanceEdit, ...]:
    """The rungs from one to the farthest beside it that is clear too, by value; empty if none is.

    Both ends are tried as staged.
    """
    if not ladder.step or ladder.range_words is None:
        return ()
    for up in (True, False):
        more: list[DanceEdit] = []
        for own in ladder.along(rung, up=up):
            if not _clear(trials, cause, own):
                break
            more.append(own)
        while more and not _holds(trials.confirmed(cause.faults, more[-1])):
            more.pop()
        if more:
            low, high = sorted((rung.value, more[-1].value))
            inside = [own for own in ladder.rungs if low - 1e-9 <= own.value <= high + 1e-9]
            return tuple(sorted(inside, key=lambda own: own.value))
    return ()


def _holds(trial: Trial | None) -> bool:
    return trial is not None and trial.clear


def _followed(trials: FaultTrials, cause: Cause, broken: Sequence[_Broken]) -> list[DanceMend]:
    """A change that clears the cause but breaks a join, with the smallest mend of that join."""
    for each in broken[:_FOLLOWED]:
        rung, trial = each.rung, each.trial
        harm = trial.harm[0]
        place = place_of(trial.after, harm)
        if place is None or place.passage is None:
            continue
        left = _FOLLOWING
        for ladder in passage_ladders(trial.after, place.passage, both=False):
            for more in ladder.rungs[: min(left, _FOLLOWING_OF_A_KIND)]:
                if trials.allowance.used_up:
                    return []
                left -= 1
                second = trials.confirmed(cause.faults, rung, more)
                if second is not None and second.clear:
                    words = f"{rung.words}, and {at_aloud(harm.position or '', trial.after.tempo.bar_lengths)} {more.words}"
                    return [
                        DanceMend(
                            words=words, steps=(rung, more), after=second.after, of_the_look=each.of_the_look
                        )
                    ]  # fmt: skip
    return []
