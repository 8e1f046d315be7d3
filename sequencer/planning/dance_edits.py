"""Changes of a block that may let its performer dance it: place and size of the hand path, pace, hands, prop, pattern.

Windows of parameters in which a pattern passes come from `motion.fitting`; whatever is offered is tried on the show first.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any, get_args

from sequencer.checks.fault_kinds import (
    BEYOND_REACH,
    CEILING,
    OF_HEIGHT,
    OF_PACE,
    SLACK,
    TANGLE,
    TOO_FAST,
)
from sequencer.findings import Finding
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS
from sequencer.motion.fitting.windows import (
    CENTIMETRE,
    SIZE_PARAMETERS,
    Window,
    ways_out,
    window_of,
)
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.library import Pattern, cycle_beats
from sequencer.planning.as_written import length_like, plain, shown
from sequencer.planning.join_edits import step_at
from sequencer.planning.ladders import Ladder
from sequencer.planning.link_edits import counted_beats
from sequencer.planning.trials import DanceEdit, pace_share
from sequencer.show.editing import Change
from sequencer.show.model import Entry, Step
from sequencer.staging.dances import dance_of
from sequencer.staging.staged import Block, Staged

LEAST_TETHER = 0.30  # [m] that is offered
_ON_THE_WAY = (1, 2, 3, 4, 6, 9, 13, 18)  # [cm] by which a value is moved first
_FARTHEST = 0.60  # [m] by which a value is moved
_TETHER_STEPS = (0.05, 0.10, 0.15, 0.20, 0.25, 0.30)  # [m]
_LENGTHS = (*PLACE_OFFSETS, *SIZE_PARAMETERS)
_WIDEST_RANGE = 7  # values of a told range
_OTHERS = 12  # patterns that are offered instead
_SIDES = ("left", "right")


def block_ladders(show: Staged, block: Block, fault: Finding) -> list[Ladder]:
    """Changes of one block for a fault in it, by kind, in the order in which a performer would try them."""
    given = _given(show, block)
    places = [
        ladder for name in given if name in _LENGTHS
        if (ladder := _length_ladder(show, block, name, fault)) is not None
    ]  # fmt: skip
    own = [name for name in given if name in _LENGTHS]
    left = _left_out(show, block, own)
    paces = _cycles(show, block, fault)
    tether = _tethers(show, block.who, fault)
    hands, height = _other_hands(block), _raised(show, block, fault)
    order: list[Ladder | None]
    if fault.code in OF_PACE:
        order = [
            *paces,
            _cycle_left_out(show, block),
            *places,
            _narrower(show, block),
            tether,
            left,
        ]
    elif fault.code == TANGLE:
        order = [*places, left, hands, *paces, tether]
    elif fault.code in OF_HEIGHT:
        order = [*places, height, left, tether, *paces]
    else:
        order = [*places, left, _narrower(show, block), hands, tether, *paces]
    order += [
        _with_shift(block, paces[0]), _with_pace(left, paces[0]), _other_patterns(show, block)
    ]  # fmt: skip
    return [ladder for ladder in order if ladder is not None and ladder.rungs]


def _given(show: Staged, block: Block) -> dict[str, Any]:
    """Parameters that the file gives this block, as written; of the right hand where the two differ."""
    found: dict[str, Any] = {}
    for path in _holders(show, block):
        for name, value in _raw(show, path).items():
            found.setdefault(name, value)
    return found


def _holders(show: Staged, block: Block) -> list[tuple[Any, ...]]:
    """Paths of the `with` of a block: of the step, or of each hand's part."""
    step = step_at(show, block.path)
    parts = [
        (*block.path, side, "with") for side in _SIDES[::-1] if getattr(step, side) is not None
    ]
    return parts or [(*block.path, "with")]


def _raw(show: Staged, path: tuple[Any, ...]) -> Mapping[str, Any]:
    value: Any = show.read.document.values if show.read else {}
    for key in path:
        if isinstance(value, Mapping) and key not in value:
            return {}
        value = value[key]
    return value or {}


def _set(show: Staged, block: Block, values: Mapping[str, float]) -> tuple[Change, ...]:
    """Changes that set lengths [m] of a block, in the unit in which the file has them, or one like them."""
    changes: list[Change] = []
    for path in _holders(show, block):
        raw = _raw(show, path)
        like = next((raw[name] for name in _LENGTHS if name in raw), 0.0)
        new = {name: length_like(raw.get(name, like), value) for name, value in values.items()}
        if raw:
            changes += [((*path, name), value) for name, value in new.items()]
        else:
            changes.append((path, new))
    return tuple(changes)


def _cleared(show: Staged, block: Block, names: Sequence[str]) -> tuple[Change, ...]:
    """Changes that leave parameters of a block to the tool."""
    changes: list[Change] = []
    for path in _holders(show, block):
        raw = _raw(show, path)
        own = [name for name in names if name in raw]
        if own and len(own) == len(raw):
            changes.append((path, None))
        else:
            changes += [((*path, name), None) for name in own]
    return tuple(changes)


def _length_ladder(show: Staged, block: Block, name: str, fault: Finding) -> Ladder | None:
    """Another value of a place or a size that the file gives, the nearest first.

    The window in which the pattern by itself fits only says which way to go, and what to try once the nearest do not help:
    what the checks ask for may be less.
    """
    raw = _given(show, block)[name]
    now = _value_now(block, name, show)
    window = None if fault.code in OF_PACE else _window(show, block, name)
    if window is not None and abs(window.apart) > CENTIMETRE / 2:
        window = None  # no single value does for both hands
    values = [
        value
        for k in range(-60, 61)
        if (value := round(now + k * CENTIMETRE, 2)) != round(now, 4)
        and (name in PLACE_OFFSETS or value > 0)
        and abs(value - now) <= _FARTHEST
    ]
    if not values:
        return None
    if window is None:  # blindly, in wider steps: outwards and inwards
        values = [
            value for value in values
            if (far := round(100 * abs(value - now))) % 4 == 0 or far <= 2
        ]  # fmt: skip
        if fault.code in OF_PACE and name in SIZE_PARAMETERS:
            values = [value for value in values if value < now]
    values.sort(key=lambda value: (round(abs(value - now), 4), value))
    if window is not None:
        values = _towards(values, now, window)
    every = [
        DanceEdit(
            words=f"{name} {shown(length_like(raw, value))} (now {shown(raw)})",
            cost=_look(name, value - now),
            changes=_set(show, block, {name: value}),
            value=value,
        )
        for value in values
    ]

    def words(low: DanceEdit, high: DanceEdit) -> str:
        return f"{name} {_span(raw, low.value, high.value)} (now {shown(raw)})"

    return Ladder(name=name, rungs=every, most=14 if window is None else 18, now=now,
                  step=CENTIMETRE if window is not None else 0.0, range_words=words)  # fmt: skip


def _towards(values: list[float], now: float, window: Window) -> list[float]:
    """All values: those to try first on the way to the window, then those in it, then all others."""
    inside = [value for value in values if window.low - 1e-9 <= value <= window.high + 1e-9]
    way = [
        value for value in values
        if (now < value < window.low - 1e-9 or window.high + 1e-9 < value < now)
    ]  # fmt: skip
    first = [value for value in way if round(100 * abs(value - now)) in _ON_THE_WAY]
    return list(dict.fromkeys([*first, *_thinned(inside), *way]))


def _thinned(values: list[float]) -> list[float]:
    """All values, those nearest first; farther out those to try first are a few centimetres apart."""
    near, far = values[:4], values[4:]
    return [*near, *far[3::4], *[value for k, value in enumerate(far) if k % 4 != 3]]


def _span(raw: Any, low: float, high: float) -> str:
    first, last = (shown(length_like(raw, value)) for value in (low, high))
    number, _, unit = first.partition(" ")
    return f"{number} to {last}" if unit and last.endswith(unit) else f"{first} to {last}"


def _value_now(block: Block, name: str, show: Staged) -> float:
    part = block.hands.get("right") or next(iter(block.hands.values()))
    for own in block.hands.values():
        if name in own.parameters:
            part = own
            break
    pattern = show.book[part.pattern]
    return float(pattern.values(part.values)[name])


def _window(show: Staged, block: Block, name: str) -> Window | None:
    record = _record(show, block.who)
    try:
        dance = dance_of(block, record, show.tempo, show.book, torque=show.show.limits.torque)
        return window_of(dance, name)
    except ValueError:
        return None


def ways_by_itself(show: Staged, block: Block) -> tuple[str, ...]:
    """What would make the pattern of a block fit its performer, whatever is before and after it, in words."""
    try:
        dance = dance_of(
            block, _record(show, block.who), show.tempo, show.book, torque=show.show.limits.torque
        )
        return ways_out(dance)
    except ValueError:
        return ()


def _record(show: Staged, who: str) -> Any:
    return next(record for record in show.show.cast if record.name == who)


def _look(name: str, by: float) -> str:
    size = f"{100 * abs(by):.0f} cm"
    if name in SIZE_PARAMETERS:
        return f"the hand's circle {size} {'wider' if by > 0 else 'narrower'} in radius"
    way = {"across": ("further out", "further in"), "ahead": ("further ahead", "nearer to you"),
           "up": ("higher", "lower")}[name]  # fmt: skip
    return f"the circle {size} {way[0] if by > 0 else way[1]}"


def _left_out(show: Staged, block: Block, own: Sequence[str]) -> Ladder | None:
    """Leave one of several places and sizes to the tool, or all of them."""
    if not own:
        return None
    rungs = []
    groups = [[name] for name in own] + ([list(own)] if len(own) > 1 else [])
    for names in groups:
        several = " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))
        rungs.append(
            DanceEdit(
                words=f"leave {several} out: the tool then places the pattern where it fits you",
                cost="the circle goes elsewhere",
                changes=_cleared(show, block, names),
            )
        )
    return Ladder(name="leaving the place to the tool", rungs=rungs)


def _narrower(show: Staged, block: Block) -> Ladder | None:
    """A narrower circle of the hand where the file gives none."""
    if any(name in _given(show, block) for name in SIZE_PARAMETERS):
        return None
    name = next((each for each in SIZE_PARAMETERS if _has(show, block, each)), None)
    if name is None:
        return None
    now = _value_now(block, name, show)
    values = [
        v for k in range(1, 12) if (v := round(0.01 * math.floor(100 * now) - 0.02 * k, 2)) > 0
    ]
    rungs = [
        DanceEdit(
            words=f"{name} {shown(value)} (now {now:.2f} m, as the tool chose)",
            cost=_look(name, value - now),
            changes=_set(show, block, {name: value}),
            value=value,
        )
        for value in values
    ]
    return Ladder(name=f"a smaller {name}", rungs=rungs, most=5, last=True)


def _has(show: Staged, block: Block, name: str) -> bool:
    return all(
        any(each.name == name and each.default is not None for each in show.book[part.pattern].parameters)
        for part in block.hands.values()
    )  # fmt: skip


def _raised(show: Staged, block: Block, fault: Finding) -> Ladder | None:
    """The circle raised from the floor, or lowered under a ceiling, in 5 cm."""
    if "up" in _given(show, block) or not _has(show, block, "up"):
        return None
    sign = -1 if fault.code == CEILING else 1
    now = _value_now(block, "up", show)
    rungs = [
        DanceEdit(
            words=f"up {shown(value)} (now {now:.2f} m, as the tool chose)",
            cost=_look("up", value - now),
            changes=_set(show, block, {"up": value}),
            value=value,
        )
        for k in range(1, 9)
        for value in [round(now + sign * 0.05 * k, 2)]
    ]
    return Ladder(name="another height", rungs=rungs)


def _cycles(show: Staged, block: Block, fault: Finding) -> list[Ladder]:
    """Another number of beats for the cycle: more where it is too fast, fewer where the tether goes slack."""
    halves = [0.5 * k for k in range(1, 33)]
    odd = [0.25 * k for k in range(1, 16, 2)]
    if fault.code in OF_PACE:  # the tool's own choice for this tempo, which may be no half beat
        odd.append(_usual(show, block))
    found = []
    for grid, name, step in (
        (halves, "the cycle", 0.5), (odd, "the cycle in quarter beats", 0.0),
    ):  # fmt: skip
        rungs = [
            DanceEdit(
                words=f"a cycle of {counted_beats(round(cycle, 4))} (now {block.cycle:.4g})",
                cost=_pace_cost(cycle, block.cycle),
                changes=_cycle_changes(show, block, cycle),
                value=cycle,
            )
            for cycle in _wanted(grid, block.cycle, fault)
        ]
        found.append(
            Ladder(
                name=name, rungs=rungs, most=12, step=step, range_words=_cycle_words(block.cycle),
                last=step == 0.0,
            )
        )  # fmt: skip
    return found


def _cycle_words(now: float) -> Callable[[DanceEdit, DanceEdit], str]:
    return lambda low, high: (
        f"a cycle of {low.value:g} to {high.value:g} beats, in half beats (now {now:.4g})"
    )


def _wanted(grid: Iterable[float], now: float, fault: Finding) -> list[float]:
    """Cycles that may help, the nearest first."""
    fewer, more = fault.code != TOO_FAST, fault.code != SLACK
    share = pace_share(fault.message)
    near = math.inf if fault.code in OF_PACE else 1.5
    found = {
        round(cycle, 6) for cycle in grid
        if (fewer and now / near <= cycle < now * min(share, 1.0) - 1e-6)
        or (more and max(now + 1e-6, now * share) < cycle <= now * near)
    }  # fmt: skip
    return sorted(found, key=lambda cycle: (abs(cycle - now), cycle))


def _usual(show: Staged, block: Block) -> float:
    return max(
        cycle_beats(part.pattern, part.parameters, show.book) for part in block.hands.values()
    )


def _cycle_left_out(show: Staged, block: Block) -> Ladder | None:
    """The cycle left to the tool, which takes what is usual for the pattern."""
    if step_at(show, block.path).cycle is None:
        return None
    usual = _usual(show, block)
    if abs(usual - block.cycle) < 1e-6:
        return None
    changes = [
        (path, None if path[-1] == "cycle" else value)
        for path, value in _cycle_changes(show, block, usual)
    ]
    rung = DanceEdit(
        words=f"leave cycle out: the tool then takes {counted_beats(round(usual, 4))}, as is usual (now {block.cycle:.4g})",
        cost=_pace_cost(usual, block.cycle),
        changes=tuple(changes),
        value=usual,
    )
    return Ladder(name="leaving the cycle to the tool", rungs=[rung])


def _pace_cost(cycle: float, now: float) -> str:
    return f"{abs(cycle - now):.3g} beats a circle {'slower' if cycle > now else 'quicker'}"


def _cycle_changes(show: Staged, block: Block, cycle: float) -> tuple[Change, ...]:
    """Changes that set the cycle; a block whose length is told in cycles keeps its beats."""
    step: Step = step_at(show, block.path)
    changes: list[Change] = [((*block.path, "cycle"), plain(cycle))]
    if step.cycles is not None:
        changes.append(((*block.path, "cycles"), None))
        changes.append(((*block.path, "beats"), plain((block.end - block.start) / step.repeat)))
    return tuple(changes)


def _other_hands(block: Block) -> Ladder | None:
    """Another timing or direction of the two hands."""
    if len(block.hands) < 2:
        return None
    rungs = [
        DanceEdit(
            words=f"dance it in {timing} time, {direction} direction",
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


def _tethers(show: Staged, who: str, fault: Finding) -> Ladder | None:
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
    record, raw = show.show.cast[k], _raw(show, ("cast", k))
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


def _with_shift(block: Block, pace: Ladder) -> Ladder:
    """Another cycle, entered elsewhere: where a new pace would break the joins."""
    rungs = [
        DanceEdit(
            words=f"{rung.words}, started {counted_beats(shift)} in",
            cost=rung.cost,
            changes=(*rung.changes, ((*block.path, "shift"), plain(shift))),
            value=rung.value,
        )
        for rung in list(pace.rungs)[:3]
        for shift in (0.5, 1.0, 1.5, 2.0)
        if abs(shift - block.shift) > 1e-9
    ]
    return Ladder(name="the cycle with another shift", rungs=rungs, most=8, last=True)


def _with_pace(left: Ladder | None, pace: Ladder) -> Ladder | None:
    """The place left to the tool, with another cycle."""
    if left is None:
        return None
    out = list(left.rungs)[-1]
    rungs = [
        DanceEdit(
            words=f"{out.words}, with {rung.words}",
            cost=rung.cost,
            changes=out.changes + rung.changes,
            value=rung.value,
        )
        for rung in list(pace.rungs)[:6]
    ]
    return Ladder(
        name="the place left to the tool with another cycle", rungs=rungs, most=6, last=True
    )


def _other_patterns(show: Staged, block: Block) -> Ladder | None:
    """Another pattern of the same family or near it in difficulty, with its own usual parameters."""
    step = step_at(show, block.path)
    if step.pattern is None or step.pattern not in show.book:
        return None
    own = show.book[step.pattern]
    kinds = {show_prop.kind for show_prop in _record(show, block.who).props.values()}
    names = [
        name for name, pattern in show.book.items()
        if name != own.name and kinds <= set(pattern.props) and pattern.hybrid == own.hybrid
    ]  # fmt: skip
    names.sort(key=lambda name: _unlike(show.book[name], own))
    rungs = []
    for name in names[:_OTHERS]:
        changes: list[Change] = [((*block.path, "pattern"), name)]
        given = _raw(show, block.path)
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


def ranges(values: Iterator[DanceEdit]) -> list[DanceEdit]:
    """The first few of some rungs, as many as a told range may have."""
    return [rung for rung, _ in zip(values, range(_WIDEST_RANGE - 1), strict=False)]
