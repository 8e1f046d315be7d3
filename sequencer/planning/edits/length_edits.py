"""Changes of where and how large a hand dances a block: places and sizes that the file gives, another value or left to the tool.

Windows of parameters in which a pattern passes come from `motion.fitting`; whatever is offered is tried on the show first.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from sequencer.checks.fault_kinds import CEILING, OF_PACE
from sequencer.findings import Finding
from sequencer.motion.fitting.fits import Dance
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS
from sequencer.motion.fitting.search import fitted
from sequencer.motion.fitting.windows import (
    CENTIMETRE,
    SIZE_PARAMETERS,
    Window,
    ways_out,
    window_of,
    without,
)
from sequencer.planning.edits.as_written import length_like, shown
from sequencer.planning.edits.join_edits import step_at
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.trying.trials import DanceEdit
from sequencer.show.editing import Change
from sequencer.staging.dances import dance_of
from sequencer.staging.staged import Block, Staged

_ON_THE_WAY = (1, 2, 3, 4, 6, 9, 13, 18)  # [cm] by which a value is moved first
_BLIND = (0.02, 0.05, 0.10, 0.15, 0.25)  # [m] by which a value is moved that nothing is known of
_FARTHEST = 0.60  # [m] by which a value is moved
_WIDEST = 2  # [cm] of a told range
_LENGTHS = (*PLACE_OFFSETS, *SIZE_PARAMETERS)
_SIDES = ("left", "right")


def _given(show: Staged, block: Block) -> dict[str, Any]:
    """Parameters that the file gives this block, as written; of the right hand where the two differ."""
    found: dict[str, Any] = {}
    for path in _holders(show, block):
        for name, value in raw_values(show, path).items():
            found.setdefault(name, value)
    return found


def _holders(show: Staged, block: Block) -> list[tuple[Any, ...]]:
    """Paths of the `with` of a block: of the step, or of each hand's part."""
    step = step_at(show, block.path)
    parts = [
        (*block.path, side, "with") for side in _SIDES[::-1] if getattr(step, side) is not None
    ]
    return parts or [(*block.path, "with")]


def raw_values(show: Staged, path: tuple[Any, ...]) -> Mapping[str, Any]:
    """What stands at a path of the file; nothing if that is left out."""
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
        raw = raw_values(show, path)
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
        raw = raw_values(show, path)
        own = [name for name in names if name in raw]
        if own and len(own) == len(raw):
            changes.append((path, None))
        else:
            changes += [((*path, name), None) for name in own]
    return tuple(changes)


def length_ladders(
    show: Staged, block: Block, fault: Finding, among: Sequence[str]
) -> Iterator[Ladder]:
    """Other values of those of some places and sizes that the file gives a block, by parameter.

    A parameter that no single value opens, with the others as they are, is tried last: in a few wide steps.
    """
    for name in _own_lengths(show, block):
        if name in among:
            yield _length_ladder(show, block, name, fault)


def _own_lengths(show: Staged, block: Block) -> list[str]:
    given = _given(show, block)
    return [name for name in _LENGTHS if name in given]


def _length_ladder(show: Staged, block: Block, name: str, fault: Finding) -> Ladder:
    """Another value of a place or a size that the file gives.

    The window in which the pattern by itself fits only says which way to go, and what to try once the nearest do not help:
    what the checks ask for may be less.
    """
    raw = _given(show, block)[name]
    now = _value_now(block, name, show)
    window = None if fault.code in OF_PACE else _window(show, block, name)
    if window is None:
        size = name in SIZE_PARAMETERS
        values = [
            value
            for far in _BLIND
            for value in ((now - far,) if fault.code in OF_PACE else (now - far, now + far))
            if value > 0 or not size
        ]
    else:
        values = _towards(_centimetres(now, positive=name in SIZE_PARAMETERS), now, window)

    def edit(value: float) -> DanceEdit:
        value = round(value, 2)
        return DanceEdit(
            words=f"{name} {shown(length_like(raw, value))} (now {shown(raw)})",
            cost=_look(name, value - now),
            changes=_set(show, block, {name: value}),
            value=value,
        )

    def words(low: DanceEdit, high: DanceEdit) -> str:
        return f"{name} {_span(raw, low.value, high.value)} (now {shown(raw)})"

    rungs = [edit(value) for value in values]
    if window is None:
        return Ladder(name=name, rungs=rungs, most=len(rungs), last=fault.code not in OF_PACE)
    steps = sorted(rungs, key=lambda rung: abs(rung.value - now))
    return Ladder(
        name=name, rungs=rungs, most=18, now=now, step=CENTIMETRE, widest=_WIDEST,
        range_words=words, approach=[rung for rung in steps if not window.holds(rung.value)],
    )  # fmt: skip


def _centimetres(now: float, *, positive: bool) -> list[float]:
    """Values a centimetre apart beside one of a file, the nearest first [m]."""
    values = [round(now + k * CENTIMETRE, 2) for k in range(-60, 61)]
    values = [
        value for value in values
        if round(now, 4) != value and abs(value - now) <= _FARTHEST and (value > 0 or not positive)
    ]  # fmt: skip
    return sorted(values, key=lambda value: (round(abs(value - now), 4), value))


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
    """Where one value for both hands lets the pattern by itself fit; None if none does."""
    try:
        window = window_of(_dance(show, block), name)
    except ValueError:
        return None
    if window is None or abs(window.apart) > CENTIMETRE / 2 or window.low > window.high:
        return None
    return window


def _opens(show: Staged, block: Block, name: str) -> bool:
    """Whether the pattern by itself fits once a parameter is left to the tool."""
    try:
        return fitted(without(_dance(show, block), name)).fits
    except ValueError:
        return False


def _dance(show: Staged, block: Block) -> Dance:
    record = record_of(show, block.who)
    return dance_of(block, record, show.tempo, show.book, torque=show.show.limits.torque)


def ways_by_itself(show: Staged, block: Block) -> tuple[str, ...]:
    """What would make the pattern of a block fit its performer, whatever is before and after it, in words."""
    try:
        return ways_out(_dance(show, block))
    except ValueError:
        return ()


def record_of(show: Staged, who: str) -> Any:
    """A performer of the cast, as the file has them."""
    return next(record for record in show.show.cast if record.name == who)


def _look(name: str, by: float) -> str:
    size = f"{100 * abs(by):.0f} cm"
    if name in SIZE_PARAMETERS:
        return f"the hand's circle {size} {'wider' if by > 0 else 'narrower'} in radius"
    way = {"across": ("further out", "further in"), "ahead": ("further ahead", "nearer to you"),
           "up": ("higher", "lower")}[name]  # fmt: skip
    return f"the circle {size} {way[0] if by > 0 else way[1]}"


def left_out(show: Staged, block: Block) -> Ladder | None:
    """Leave one of several places and sizes to the tool, or all of them; first those of which that alone is enough."""
    own = _own_lengths(show, block)
    if not own:
        return None
    first = next((name for name in own if _opens(show, block, name)), own[0])
    alone = [[first], *([name] for name in own if name != first)]
    rungs = []
    for names in [*alone, *([own] if len(own) > 1 else [])]:
        several = " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))
        rungs.append(
            DanceEdit(
                words=f"leave {several} out: the tool then places the pattern where it fits you",
                cost="the circle goes elsewhere",
                changes=_cleared(show, block, names),
            )
        )
    return Ladder(name="leaving the place to the tool", rungs=rungs)


def narrower(show: Staged, block: Block) -> Ladder | None:
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


def raised(show: Staged, block: Block, fault: Finding) -> Ladder | None:
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
