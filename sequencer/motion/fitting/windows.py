"""Between which values a pattern fits: the window of each parameter about the best place, or what opens one.

A window is the unbroken range of one parameter, both hands changed alike and all else as in the best fit,
in which the pattern keeps 2 cm from the own body and the other prop, in reach. It is taken in steps of a
centimetre over samples; its ends are looked at as closely as the search looks at a fit (fitting.py).
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from math import inf
from typing import get_args

import numpy as np

from sequencer.geometry.bodies import Side
from sequencer.motion.fitting.fits import LEAST_MARGIN, REACH_SPARE, Dance, Fit
from sequencer.motion.fitting.search import PLACE_OFFSETS, Placing, SampledDance, fitted
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.parameters import ParameterValue

CENTIMETRE = 0.01
_SAME = 5e-4  # [m] by which the hands' places are not told apart
_WIDEST = 0.60  # [m] a window is looked at so far to each side
SIZE_PARAMETERS = ("hand_radius", "size")
SHORTER = (0.9, 0.75, 0.6)  # shares of a tether that are tried where nothing fits
MOST_OPENERS = 2
QUICKER = (1.1, 1.2, 1.35, 1.5)  # of the tempo


@dataclass(frozen=True, kw_only=True)
class Window:
    """From where to where a parameter fits [m]."""

    name: str
    low: float
    high: float
    best: float  # of the right hand, or of the only one
    apart: float = 0.0  # of the left hand less the right one's

    @property
    def words(self) -> str:
        """The window for people, in whole centimetres that lie in it; the best value where none does."""
        low, high = np.ceil(100 * self.low - 1e-6), np.floor(100 * self.high + 1e-6)
        if low > high:
            return f"{100 * self.best:.4g} cm"
        return f"{low:.0f} cm" if low >= high else f"{low:.0f} to {high:.0f} cm"

    def holds(self, value: float) -> bool:
        """Whether a value lies in it."""
        return self.low - 1e-9 <= value <= self.high + 1e-9


@dataclass(frozen=True, kw_only=True)
class Windows:
    """What fits of a dance.

    Parameters
    ----------
    fit : Fit
        The best, with the performer's own parameters as they are.
    windows : mapping of parameter to Window
        Empty where nothing fits.
    opens : tuple of str
        What would open a window where there is none, each tried.
    """

    fit: Fit
    windows: Mapping[str, Window] = field(default_factory=dict)
    opens: tuple[str, ...] = ()


def windows_of(dance: Dance) -> Windows:
    """The windows of every parameter that a place depends on.

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
    """The window of one parameter that the performer set, all others as they are; None where none is.

    Raises
    ------
    ValueError
        If a pattern or a parameter is not known, or out of range.
    """
    free = without(dance, name)
    fit = fitted(free)
    return _windows(free, fit, (name,)).get(name) if fit.fits else None


def ways_out(dance: Dance) -> tuple[str, ...]:
    """What would let a dance fit that does not, each tried, in words; empty where nothing was found.

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
        if abs(window.apart) > _SAME:  # no one value for both hands lies in it
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
    """The same dance with some parameters left open."""
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
    looks = SampledDance(dance, sizes)
    moves = looks.moves_of(fit)
    lead: Side = "right" if "right" in moves else "left"
    out = {}
    for k, name in enumerate(PLACE_OFFSETS):
        if name not in names or not looks.free[k]:
            continue
        unit = np.eye(3)[k]
        steps = CENTIMETRE * np.arange(round(_WIDEST / CENTIMETRE) + 1)
        ends = [
            sign * _run(looks.places([{s: moves[s] + sign * step * unit for s in moves} for step in steps],
                                     [fit.posture] * len(steps)))
            for sign in (-1.0, 1.0)
        ]  # fmt: skip
        at = {side: float(looks.usual[side][k] + move[k]) for side, move in moves.items()}
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
    """How far the first unbroken run of places that fit goes [m]."""
    good = [
        place.margins.least >= LEAST_MARGIN and place.margins.reach >= REACH_SPARE
        for place in places
    ]
    return CENTIMETRE * max((good.index(False) if False in good else len(good)) - 1, 0)


def _sized(dance: Dance, fit: Fit, name: str, best: float, sign: float) -> float:
    """Last size that fits, going a centimetre at a time from the best one."""
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
            looks = SampledDance(dance, values)
        except ValueError:
            break
        (place,) = looks.places([looks.moves_of(fit)], [fit.posture])
        if place.margins.least < LEAST_MARGIN or looks.pull < 0:
            break
        last = size
    return last


def _openers(dance: Dance, fit: Fit) -> Iterator[str]:
    """What would let the dance fit, each tried; at most one of a kind."""
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
            return  # each that is tried is a whole search


Tried = Iterator[tuple[str, Dance]]  # what is changed, in words, and the dance with it


def _other_tempi(dance: Dance) -> Tried:
    for share in QUICKER:
        low, high = (share * tempo for tempo in dance.tempo)
        yield f"{np.ceil(low):.0f} beats a minute or more", replace(dance, tempo=(low, high))


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
        yield f"{name} left to the tool", without(dance, name)


def _other_hands(dance: Dance) -> Tried:
    for timing in get_args(Timing):
        for direction in get_args(Direction):
            if (timing, direction) != (dance.timing, dance.direction):
                words = f"{timing} time, {direction} direction"
                yield words, replace(dance, timing=timing, direction=direction)
    for side in dance.sides:
        parts, props = {side: dance.parts[side]}, {side: dance.props[side]}
        yield "one hand alone", replace(dance, parts=parts, props=props)


def short_of(fit: Fit) -> str:
    """What a fit lacks, in words; empty where it lacks nothing."""
    margins = fit.margins
    worst = min(margins.body, margins.other)
    if margins.reach < 0:
        return f"the hand would be {_length(-margins.reach)} out of reach"
    if margins.reach < REACH_SPARE:
        return "the arm would be stretched to its end"
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
