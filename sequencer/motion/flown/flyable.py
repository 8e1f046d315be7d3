"""What would make a pattern fly that does not: another tempo, or another tether.

Tried outwards from what is danced, 12 % at a time, then halved to within one beat a minute or one centimetre; every value
that is named has been flown. A tempo or tether farther away than a factor of 1.6 is not looked for.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from sequencer.motion.flown.flown_motion import Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.laws.law import Law

_STRIDE = 1.12
_FARTHEST = 1.6
_TEMPO_STEP = 1.0  # [beats/min]
_TETHER_STEP = 0.01  # [m]
_USUALLY = 6.0  # flights on one side

LawOf = Callable[[float], Law]  # tether [m] → the pattern's law


class WouldFly(NamedTuple):
    """The nearest values at which a pattern flies, each with everything else as it is; None if there is none near."""

    slower: float | None  # [beats/min] at most this
    faster: float | None  # [beats/min] at least this
    shorter: float | None  # [m] a tether of at most this
    longer: float | None  # [m] at least this


def would_fly(
    law_of: LawOf, flying: Flying, told: Callable[[float], None] | None = None
) -> WouldFly:
    """The nearest tempi and tethers at which a law flies.

    Parameters
    ----------
    law_of : callable
        The law for a tether [m].
    flying : Flying
        At a tempo and with a tether at which it does not.
    told : callable, optional
        Called before each flight, with the share that is done [1].

    Raises
    ------
    ValueError
        As `flown_period`.
    """
    length = flying.prop.length

    def at_tempo(tempo: float) -> FlownPeriod:
        return flown_period(law_of(length), replace(flying, tempo=tempo))

    def with_tether(tether: float) -> FlownPeriod:
        return flown_period(
            law_of(tether), replace(flying, prop=replace(flying.prop, length=tether))
        )

    def nearest(
        k: int, flown: Callable[[float], FlownPeriod], now: float, stride: float, step: float
    ) -> float | None:
        tried = 0

        def flies(value: float) -> bool:
            nonlocal tried
            if told is not None:
                told((k + min(tried / _USUALLY, 0.9)) / len(WouldFly._fields))
            tried += 1
            return not flown(value).broken

        return _nearest(flies, now, stride, step)

    return WouldFly(
        nearest(0, at_tempo, flying.tempo, 1.0 / _STRIDE, _TEMPO_STEP),
        nearest(1, at_tempo, flying.tempo, _STRIDE, _TEMPO_STEP),
        nearest(2, with_tether, length, 1.0 / _STRIDE, _TETHER_STEP),
        nearest(3, with_tether, length, _STRIDE, _TETHER_STEP),
    )


def _nearest(
    flies: Callable[[float], bool], now: float, stride: float, step: float
) -> float | None:
    """The value nearest to the present one, on one side of it, that flies; a multiple of the step."""
    failed, value = now, now
    while 1.0 / _FARTHEST < value / now < _FARTHEST:
        value *= stride
        tried = round(value / step) * step
        if flies(tried):
            break
        failed = tried
    else:
        return None
    while abs(tried - failed) > 1.5 * step:
        middle = round((tried + failed) / 2.0 / step) * step
        if flies(middle):
            tried = middle
        else:
            failed = middle
    return float(round(tried, 6))
