"""Range of values in which a pattern fits: the window of each parameter about the best position, or how to open one.

A window is the contiguous range of one parameter, changed alike for both hands with everything else as in
the best fit, in which the pattern stays 2 cm from the performer's body and the other prop, within reach. It
is found in steps of a centimetre over samples; its ends are sampled as finely as a fit in `search`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from math import inf
from typing import get_args

import numpy as np

from sequencer.geometry.bodies import Side
from sequencer.motion.fitting.fits import LEAST_MARGIN, REACH_SPARE, Dance, Fit
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS, Placing, SampledDance
from sequencer.motion.fitting.search import fitted
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.parameters import ParameterValue
from sequencer.motion.patterns.timing_words import timing_words

CENTIMETRE = 0.01
_SAME = 5e-4  # [m] below which hand positions count as equal
_WIDEST = 0.60  # [m] how far a window is searched to each side
SIZE_PARAMETERS = ("hand_radius", "size")
SHORTER = (0.9, 0.75, 0.6)  # fractions of a tether that are tried if nothing fits
MOST_OPENERS = 2
QUICKER = (1.1, 1.2, 1.35, 1.5)  # of the tempo


@dataclass(frozen=True, kw_only=True)
class Window:
    """Range in which a parameter fits [m]."""

    name: str
    low: float
    high: float
    best: float  # of the right hand, or of the only one
    apart: float = 0.0  # of the left hand minus the right hand's

    @property
    def words(self) -> str:
        """The window as text, in whole centimetres within it; the best value if there are none."""
        low, high = np.ceil(100 * self.low - 1e-6), np.floor(100 * self.high + 1e-6)
        if low > high:
            return f"{100 * self.best:.4g} cm"
        return f"{low:z.0f} cm" if low >= high else f"{low:z.0f} to {high:z.0f} cm"

    def holds(self, value: float) -> bool:
        """Whether a value is in the window."""
        return self.low - 1e-9 <= value <= self.high + 1e-9


@dataclass(frozen=True, kw_only=True)
class Windows:
    """Windows in which a dance fits.

    Parameters
    ----------
    fit : Fit
        The best fit, with the performer's parameters unchanged.
    windows : mapping of parameter to Window
        Empty if nothing fits.
    opens : tuple of str
        Changes that would open a window if there is none, each tested.
    """

    fit: Fit
    windows: Mapping[str, Window] = field(default_factory=dict)
    opens: tuple[str, ...] = ()


def windows_of(dance: Dance) -> Windows:
    """The windows of every position parameter.

    Parameters
    ----------
    dance : Dance

    Raises
    ------
    ValueError
        If a pattern or a parameter is not known, or out of range.
    """
    fit = fitted(dance)
    if not fit.fits:
        return Windows(fit=fit, opens=tuple(_openers(dance, fit)))
    return Windows(fit=fit, windows=_windows(dance, fit))


def window_of(dance: Dance, name: str) -> Window | None:
    """The window of one parameter that the performer set, all others unchanged; None if there is none.

    Raises
    ------
    ValueError
        If a pattern or a parameter is not known, or out of range.
    """
    free = without(dance, name)
    fit = fitted(free)
    return _windows(free, fit, (name,)).get(name) if fit.fits else None


def ways_out(dance: Dance) -> tuple[str, ...]:
    """Changes that would make a dance fit, each tested, as text; empty if none was found.

    Parameters
    ----------
    dance : Dance

    Raises
    ------
    ValueError
        If a pattern or a parameter is not known, or out of range.
    """
    own = sorted(
        {name for _, given in dance.parts.values() for name in given}.intersection(
            (*PLACE_OFFSETS, *SIZE_PARAMETERS)
        )
    )
    out = []
    for name in own:
        window = window_of(dance, name)
        now = [float(dance.values(s)[name]) for s in dance.sides if name in dance.parts[s][1]]
        if window is None:
            continue
        if abs(window.apart) > _SAME:  # no single value for both hands is in it
            out.append(f"leave {name} out: the pattern is then placed where it fits")
        elif not all(window.holds(value) for value in now):
            out.append(f"{name} {window.words} (now {_centimetres(now[0])})")
    if not out and len(own) > 1 and fitted(without(dance, *own)).fits:
        names = f"{', '.join(own[:-1])} and {own[-1]}"
        out.append(f"leave {names} out: the pattern is then placed where it fits")
    if out:
        return tuple(out)
    return tuple(f"it fits with {words}" for words in _openers(dance, fitted(dance)))


def without(dance: Dance, *names: str) -> Dance:
    """The dance with some parameters left open."""
    parts = {
        side: (pattern, {k: v for k, v in given.items() if k not in names})
        for side, (pattern, given) in dance.parts.items()
    }
    return replace(dance, parts=parts)


def _windows(
    dance: Dance, fit: Fit, names: tuple[str, ...] = (*PLACE_OFFSETS, *SIZE_PARAMETERS)
) -> dict[str, Window]:
    sizes: dict[Side, dict[str, ParameterValue]] = {
        side: {k: v for k, v in values.items() if k not in PLACE_OFFSETS}
        for side, values in fit.values.items()
    }
    sampled = SampledDance(dance, sizes)
    moves = sampled.moves_of(fit)
    lead: Side = "right" if "right" in moves else "left"
    out = {}
    for k, name in enumerate(PLACE_OFFSETS):
        if name not in names or not sampled.free[k]:
            continue
        unit = np.eye(3)[k]
        steps = CENTIMETRE * np.arange(round(_WIDEST / CENTIMETRE) + 1)
        ends = [
            sign * _run(sampled.places([{s: moves[s] + sign * step * unit for s in moves} for step in steps],
                                     [fit.posture] * len(steps)))
            for sign in (-1.0, 1.0)
        ]  # fmt: skip
        at = {side: float(sampled.usual[side][k] + move[k]) for side, move in moves.items()}
        best = at[lead]
        apart = at["left"] - at["right"] if len(at) == 2 else 0.0
        out[name] = Window(
            name=name, low=best + ends[0], high=best + ends[1], best=best, apart=apart
        )
    for name in SIZE_PARAMETERS:
        own = [dance.open(side).get(name) for side in dance.sides]
        if name not in names or any(each is None or not each.default for each in own):
            continue
        usual = float(own[0].default or 0.0) if own[0] else 0.0
        best = float(fit.values.get(lead, {}).get(name, usual))
        low, high = (_sized(dance, fit, name, best, sign) for sign in (-1.0, 1.0))
        out[name] = Window(name=name, low=low, high=high, best=best)
    return out


def _run(places: list[Placing]) -> float:
    """Extent of the first contiguous run of positions that fit [m]."""
    good = [
        place.margins.least >= LEAST_MARGIN and place.margins.reach >= REACH_SPARE
        for place in places
    ]
    return CENTIMETRE * max((good.index(False) if False in good else len(good)) - 1, 0)


def _sized(dance: Dance, fit: Fit, name: str, best: float, sign: float) -> float:
    """Last size that fits, in centimetre steps from the best one."""
    last = best
    while abs(last - best) < _WIDEST:
        size = round(last + sign * CENTIMETRE, 4)
        if size <= 0:
            break
        values: dict[Side, dict[str, ParameterValue]] = {
            side: {
                **{k: v for k, v in fit.values.get(side, {}).items() if k not in PLACE_OFFSETS},
                name: size,
            }
            for side in dance.sides
        }
        try:
            sampled = SampledDance(dance, values)
        except ValueError:
            break
        (place,) = sampled.places([sampled.moves_of(fit)], [fit.posture])
        if place.margins.least < LEAST_MARGIN or sampled.pull < 0:
            break
        last = size
    return last


def _openers(dance: Dance, fit: Fit) -> Iterator[str]:
    """Changes that would make the dance fit, each tested; at most one of each kind."""
    kinds = [
        _other_tempi(dance) if fit.margins.pull < 0 else iter(()),
        _shorter(dance),
        _left_out(dance),
    ]
    if len(dance.parts) == 2 and fit.margins.other < LEAST_MARGIN:
        kinds.append(_other_hands(dance))
    found = 0
    for tried in kinds:
        words = next((words for words, other in tried if fitted(other).fits), None)
        if words is not None:
            found += 1
            yield words
        if found == MOST_OPENERS:
            return  # each test is a complete search


Tried = Iterator[tuple[str, Dance]]  # the change as text, and the changed dance


def _other_tempi(dance: Dance) -> Tried:
    for share in QUICKER:
        low, high = (share * tempo for tempo in dance.tempo)
        words = f"{np.ceil(low - 1e-6):.0f} beats per minute or more"
        yield words, replace(dance, tempo=(low, high))


def _shorter(dance: Dance) -> Tried:
    if not all(prop.flexible for prop in dance.props.values()):
        return
    longest = max(prop.length for prop in dance.props.values())
    for share in SHORTER:
        props = {s: replace(p, length=round(p.length * share, 3)) for s, p in dance.props.items()}
        yield f"a tether of {100 * share * longest:.0f} cm", replace(dance, props=props)


def _left_out(dance: Dance) -> Tried:
    own = {name for _, given in dance.parts.values() for name in given}
    for name in sorted(own.intersection((*PLACE_OFFSETS, *SIZE_PARAMETERS))):
        yield f"{name} left for the tool to choose", without(dance, name)


def _other_hands(dance: Dance) -> Tried:
    for timing in get_args(Timing):
        for direction in get_args(Direction):
            if (timing, direction) != (dance.timing, dance.direction):
                yield (
                    timing_words(timing, direction),
                    replace(dance, timing=timing, direction=direction),
                )
    for side in dance.sides:
        parts, props = {side: dance.parts[side]}, {side: dance.props[side]}
        yield "one hand alone", replace(dance, parts=parts, props=props)


def short_of(fit: Fit) -> str:
    """What is wrong with a fit, as text; empty if nothing is."""
    margins = fit.margins
    worst = min(margins.body, margins.other)
    if margins.reach < 0:
        return f"the hand would be {_length(-margins.reach)} out of reach"
    if margins.reach < REACH_SPARE:
        return "the arm would be fully stretched"
    if margins.pull < 0:
        return "the tether goes slack"
    if worst < LEAST_MARGIN and worst != inf:
        near = "your own body" if margins.body <= margins.other else "the other prop"
        if worst < 0:
            return f"the prop still goes {_length(-worst)} into {near}"
        return f"the prop comes within {_length(worst)} of {near}"
    return ""


def _centimetres(value: float) -> str:
    return f"{100 * value:.3g} cm"


def _length(value: float) -> str:
    """A short length, in millimetres below a centimetre."""
    return f"{1000 * value:.0f} mm" if value < CENTIMETRE else f"{100 * value:.0f} cm"
