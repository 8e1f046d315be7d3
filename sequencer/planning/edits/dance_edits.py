"""Changes of a block that may let its performer dance it, in a performer's order; hands, prop and another pattern among them.

Whatever is offered is tried on the show first.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import get_args

from sequencer.checks.fault_kinds import (
    BEYOND_REACH,
    OF_HEIGHT,
    OF_PACE,
    PROP_TURNS,
    PULL,
    TANGLE,
    WICK_SPEED,
)
from sequencer.findings import Finding
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS
from sequencer.motion.fitting.windows import SIZE_PARAMETERS
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.patterns.timing_words import timing_words
from sequencer.planning.edits.as_written import length_like, plain, shown
from sequencer.planning.edits.join_edits import step_at
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.edits.length_edits import (
    left_out,
    length_ladders,
    narrower,
    raised,
    raw_values,
    record_of,
)
from sequencer.planning.edits.pace_edits import cycle_ladders, cycle_left_out, with_pace, with_shift
from sequencer.planning.trying.trials import DanceEdit
from sequencer.show.editing import Change
from sequencer.show.model import Entry
from sequencer.staging.staged import Block, Staged

LEAST_TETHER = 0.30  # [m] that is offered
_TETHER_STEPS = (0.05, 0.10, 0.15, 0.20, 0.25, 0.30)  # [m]
_OF_THE_TETHER = {PULL, WICK_SPEED}  # what a shorter tether makes less
_OTHERS = 12  # patterns that are offered instead


def block_ladders(show: Staged, block: Block, fault: Finding) -> Iterator[Ladder]:
    """Changes of one block for a fault in it, in the order in which a performer would try them; each kind made when asked for.

    Another pattern is not among them.
    """
    return (ladder for ladder in _kinds(show, block, fault) if ladder is not None and ladder.rungs)


def _kinds(show: Staged, block: Block, fault: Finding) -> Iterator[Ladder | None]:
    blind: list[Ladder] = []

    def hopeful(ladders: Iterator[Ladder]) -> Iterator[Ladder]:
        for ladder in ladders:
            if ladder.last:
                blind.append(ladder)
            else:
                yield ladder

    def lengths() -> Iterator[Ladder | None]:
        """Places, then the place left to the tool, then sizes: these are part of the look."""
        yield from hopeful(length_ladders(show, block, fault, PLACE_OFFSETS))
        yield left_out(show, block)
        yield from hopeful(length_ladders(show, block, fault, SIZE_PARAMETERS))

    paces = cycle_ladders(show, block, fault)
    tether = shorter_tethers(show, block.who, fault)
    if fault.code in OF_PACE:
        yield from paces
        yield cycle_left_out(show, block)
        of = {each.quantity for each in fault.figures}
        if PROP_TURNS not in of:  # how fast a prop turns is a matter of the cycle alone
            yield from hopeful(length_ladders(show, block, fault, SIZE_PARAMETERS))
            yield narrower(show, block)
            if of and of <= _OF_THE_TETHER:
                yield tether
            yield left_out(show, block)
    elif fault.code == TANGLE:
        yield from lengths()
        yield _other_hands(block)
        yield from paces
        yield tether
    elif fault.code in OF_HEIGHT:
        yield from hopeful(length_ladders(show, block, fault, PLACE_OFFSETS))
        yield raised(show, block, fault)
        yield left_out(show, block)
        yield from hopeful(length_ladders(show, block, fault, SIZE_PARAMETERS))
        yield tether
        yield from paces
    else:
        yield from lengths()
        yield narrower(show, block)
        yield _other_hands(block)
        yield tether
        # How far a hand reaches hardly depends on the pace: that is for where nothing else helps.
        yield from (
            replace(each, last=True) if fault.code == BEYOND_REACH else each for each in paces
        )
    yield from blind
    yield with_shift(block, paces[0])
    yield with_pace(left_out(show, block), paces[0])


def _other_hands(block: Block) -> Ladder | None:
    """Another timing or direction of the two hands."""
    if len(block.hands) < 2:
        return None
    rungs = [
        DanceEdit(
            words=f"dance it {timing_words(timing, direction)}",
            cost="the two hands' timing or direction changes",
            changes=tuple(
                ((*block.path, key), value)
                for key, value, now in (
                    ("timing", timing, block.timing), ("direction", direction, block.direction),
                )
                if value != now
            ),
        )
        for timing in get_args(Timing)
        for direction in get_args(Direction)
        if (timing, direction) != (block.timing, block.direction)
    ]  # fmt: skip
    rungs.sort(key=lambda rung: len(rung.changes))
    return Ladder(name="timing and direction of the hands", rungs=rungs)


def shorter_tethers(show: Staged, who: str, fault: Finding) -> Ladder | None:
    """A shorter tether, in every pattern of this performer; longer ones for none."""
    if fault.code == BEYOND_REACH:
        return None
    rungs = [
        rung for by in _TETHER_STEPS if (rung := tether_edit(show, who, by)) is not None
    ]  # fmt: skip
    return Ladder(name="a shorter tether", rungs=rungs, most=6, last=True)


def tether_edit(show: Staged, who: str, by: float) -> DanceEdit | None:
    """A performer's tethers shorter by some metres, both alike; None if they would be too short to spin."""
    k = next(i for i, record in enumerate(show.show.cast) if record.name == who)
    record, raw = show.show.cast[k], raw_values(show, ("cast", k))
    changes: list[Change] = []
    words = ""
    for key in ("prop", "left", "right"):
        prop = getattr(record, key)
        tether = None if prop is None else prop.sized(record.stature).tether
        if tether is None:
            continue
        if tether - by < LEAST_TETHER - 1e-9:
            return None
        # The whole prop is rewritten: it may be an alias shared with others, or just the name of its kind.
        own = {"kind": raw[key]} if isinstance(raw[key], str) else dict(raw[key])
        shorter = length_like(own.get("tether", tether), tether - by)
        words = words or f"{shown(shorter)} (now {shown(own.get('tether', tether))})"
        changes.append((("cast", k, key), {**own, "tether": shorter}))
    if not changes:
        return None
    return DanceEdit(
        words=f"{who}'s tethers at {words}",
        cost="changes every pattern that they dance",
        changes=tuple(changes),
        value=by,
    )


def other_patterns(show: Staged, block: Block) -> Ladder:
    """Another pattern of the same family or near it in difficulty, with its own usual parameters."""
    step = step_at(show, block.path)
    if step.pattern is None or step.pattern not in show.book:
        return Ladder(name="another pattern", rungs=(), of_the_look=True)
    own = show.book[step.pattern]
    kinds = {show_prop.kind for show_prop in record_of(show, block.who).props.values()}
    names = [
        name for name, pattern in show.book.items()
        if name != own.name and kinds <= set(pattern.props) and pattern.hybrid == own.hybrid
    ]  # fmt: skip
    names.sort(key=lambda name: _unlike(show.book[name], own))
    rungs = []
    for name in names[:_OTHERS]:
        changes: list[Change] = [((*block.path, "pattern"), name)]
        given = raw_values(show, block.path)
        changes += [
            ((*block.path, key), None) for key in ("with", "cycle", "shift") if key in given
        ]
        if step.cycles is not None:
            changes.append(((*block.path, "cycles"), None))
            changes.append(((*block.path, "beats"), plain((block.end - block.start) / step.repeat)))
        if isinstance(step, Entry) and step.until is not None and step.cycles is not None:
            continue
        rungs.append(
            DanceEdit(
                words=f"dance {name} instead of {own.name}",
                cost="another pattern",
                changes=tuple(changes),
            )
        )
    return Ladder(name="another pattern", rungs=rungs, most=_OTHERS, of_the_look=True)


def _unlike(pattern: Pattern, own: Pattern) -> tuple[bool, int, str]:
    return pattern.family != own.family, abs(pattern.difficulty - own.difficulty), pattern.name
