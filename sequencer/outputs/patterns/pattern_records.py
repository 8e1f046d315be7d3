"""A pattern's card, its parameters and its build steps as records, for text and for JSON.

What a performer feels of a poi or a rope dart is recorded as it is flown (flown_words.py), as values. Figures of the
law as drawn, for props that the hand turns and for patterns that cannot be flown, are the largest over one closing of
the pattern (four cycles where it has none), proven and rounded up to two figures, so at most 1.2 times the true value;
if a law of another package has only a coarse bound, the record names it among its `bounds_only`.
"""

from collections.abc import Mapping, Sequence
from math import isfinite
from typing import Any

import numpy as np

from sequencer.geometry.bodies import Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.build_steps import Station
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.patterns.parameters import Parameter
from sequencer.motion.props.peaks import (
    Peak,
    farthest_let_go,
    fastest_hand,
    fastest_wick,
    hardest_pull,
    hardest_twist,
)
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.reach import farthest_reach
from sequencer.motion.props.tension import TautTempo, hand_work, lowest_tempo
from sequencer.motion.trajectories.joining import ends
from sequencer.outputs.patterns.fit_words import (
    danced_words,
    finite,
    margin_words,
    verdict,
    window_lines,
)
from sequencer.outputs.patterns.flown_words import (
    flown_record,
)
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.words.law_words import law_words
from sequencer.outputs.words.station_words import step_words
from sequencer.progress import Progress

_SAMPLES = 2048  # per closing, for the lowest wick
STEERED = 0.2  # [m] of the hand off its drawn path that makes a pattern harder; common practice


def card_record(one: OnePattern, progress: Progress | None = None) -> dict[str, Any]:
    """Everything on a card, as plain data; a pattern that does not fly takes up to a minute the first time.

    Parameters
    ----------
    one : OnePattern
    progress : callable, optional
    """
    if progress is not None:
        progress(f"flying {one.name}", 0.0)
    pattern = one.pattern
    hands: dict[str, Any] = {}
    for side in one.sides:
        law = one.laws[side]
        hands[side] = {
            "performer": str(law_words(law)),
            "audience": str(law_words(law, eye="audience")),
            "home_after_beats": finite(law.period),
            "after_one_cycle": ends(one.lead(side), one.cycle, length=one.prop.length),
            **_figures(one, side),
            "flown": flown_record(one, side, progress),
        }
    return {
        "name": pattern.name,
        "family": pattern.family,
        "summary": pattern.summary,
        "difficulty": pattern.difficulty,
        "why": _reason(pattern, [hand["flown"] for hand in hands.values()]),
        "needs": list(pattern.needs),
        "props": list(pattern.props),
        "notes": pattern.notes,
        "source": pattern.source,
        "cycle_beats": one.cycle,
        "usual_cycle_beats": one.usual_beats,
        "tempo": one.tempo,
        "timing": one.dance.timing,
        "direction": one.dance.direction,
        "stature_m": one.body.stature,
        "arm_m": one.body.arm_length,
        "prop": one.prop.kind,
        "tether_m": one.prop.length,
        "prop_mass_kg": one.prop.mass,
        "parameters": parameter_records(pattern.parameters),
        "fit": _fit_record(one),
        "hands": hands,
    }


def _fit_record(one: OnePattern) -> dict[str, Any]:
    """How this body dances the pattern, how much room is left, and what would make some."""
    angles = zip(one.posture.__slots__, np.degrees(one.posture.angles).tolist(), strict=True)
    margins = one.proven.margins
    return {
        "fits": not verdict(one.proven),
        "short_of": verdict(one.proven),
        "values": {side: dict(one.fit.values.get(side, {})) for side in one.sides},
        "posture_degrees": {name: round(angle, 3) for name, angle in angles},
        "margins": {
            "body_m": finite(margins.body),
            "other_prop_m": finite(margins.other),
            "reach_m": finite(margins.reach),
            "pull_m_s2": finite(margins.pull),
        },
        "windows": {
            name: {
                "low": round(window.low, 4), "high": round(window.high, 4),
                "best": round(window.best, 4), "left_more": round(window.apart, 4),
            }
            for name, window in one.room.windows.items()
        },
        "opens": list(one.room.opens),
        "words": [*danced_words(one), *filter(None, [gap_words(one)])],
        "window_words": window_lines(one.room),
    }  # fmt: skip


def gap_words(one: OnePattern) -> str:
    """The least margins that are proven, in words."""
    return margin_words(one.proven, flexible=one.prop.flexible)


def _figures(one: OnePattern, side: Side) -> dict[str, Any]:
    """One hand's figures: the largest of each over one closing, and which of them are only bounds."""
    law, prop, tempo = one.laws[side], one.dance.props[side], one.tempo
    whole = isfinite(law.period)
    end, beats_per_second = law.period if whole else 4 * one.cycle, tempo / 60
    peaks = {
        "hand_speed_m_s": fastest_hand(law, beats_per_second=beats_per_second, start=0.0, end=end),
        "head_speed_m_s": fastest_wick(
            law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end
        ),
        "pull_n": hardest_pull(
            law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end
        ),
        "let_go_m": farthest_let_go(
            law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end
        ),
    }
    twist: Peak | None = None
    taut = work = None
    if prop.flexible:
        taut = _taut_tempi(law, prop.length, end)
        work = hand_work(law, length=prop.length, mass=prop.mass, tempo=tempo) if whole else None
    else:
        twist = hardest_twist(law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end)
        peaks["torque_n_m"] = twist
    reach = farthest_reach(law, side=side, body=one.body, end=end, posture=one.posture)
    return {
        "reach_m": reach.distance + reach.error,
        "out_of_reach_m": one.beyond[side],
        "lowest_tempo": taut.lowest if taut and isfinite(taut.lowest) else None,
        "highest_tempo": taut.highest if taut and isfinite(taut.highest) else None,
        "tempo_known": taut is not None,
        "hand_work_m": work.largest if work else None,
        "hand_work_rms_m": work.rms if work else None,
        "hand_work_j_a_beat": work.work if work else None,
        "torque_n_m": None,
        **{key: peak.most for key, peak in peaks.items()},
        "lowest_m": _lowest_wick(law, prop, end),
        "bounds_only": [key for key, peak in peaks.items() if not peak.known],
    }


def _taut_tempi(law: Law, length: float, end: float) -> TautTempo | None:
    """Lowest and highest tempo at which the tether is taut; None if nothing is proven."""
    try:
        return lowest_tempo(law, length=length, start=0.0, end=end)
    except ValueError:  # the law's third derivative is unknown
        return None


def slowest_taut(one: OnePattern, side: Side = "right") -> float | None:
    """Lowest tempo at which a hand's tether is taut throughout [beats a minute]; None if there is none, or it is not known."""
    prop = one.dance.props[side]
    taut = _taut_tempi(one.laws[side], prop.length, one.end) if prop.flexible else None
    return taut.lowest if taut is not None and isfinite(taut.lowest) else None


def _lowest_wick(law: Law, prop: Prop, end: float) -> float:
    """Height of the lowest wick's underside above the floor [m]; sampled, within 1 mm for danceable patterns."""
    motion = law.at(end * np.arange(_SAMPLES + 1, dtype=np.float64) / _SAMPLES)
    aside = np.cross(motion.plane, motion.tether)
    wicks = [motion.hand + spot.along * motion.tether + spot.across * aside for spot in prop.heads]
    return min(float(wick[:, 2].min()) for wick in wicks) - prop.wick_radius


def _reason(pattern: Pattern, flown: Sequence[Mapping[str, Any] | None]) -> str:
    """What makes a pattern difficult; a hand that leaves its drawn path by a lot is one more reason."""
    most = max((each["hand_off_m"] for each in flown if each is not None), default=0.0)
    steered = f"the prop is steered: the hand leaves its drawn path by up to {100 * most:.0f} cm"
    return "; ".join(filter(None, (pattern.why, steered if most >= STEERED else "")))


def parameter_records(parameters: Sequence[Parameter]) -> list[dict[str, Any]]:
    """Parameters as plain data."""
    return [
        {
            "name": parameter.name,
            "range": parameter.range_words,
            "default": "the prop's" if parameter.default is None else parameter.default,
            "unit": parameter.unit,
            "help": parameter.help,
        }
        for parameter in parameters
    ]


def station_records(one: OnePattern) -> list[dict[str, Any]]:
    """Build steps as plain data, with the hand by the clock and what to do next in words."""
    stations = one.stations()
    return [
        {**station_record(one, station), "clock": said.hand, "next": said.then}
        for station, said in zip(stations, step_words(stations), strict=True)
    ]


def station_record(one: OnePattern, station: Station) -> dict[str, Any]:
    """One build step as plain data; places in metres, body frame; `flown_head` is None if it flies as drawn or not at all."""
    flown = one.flown_head(station)
    return {
        "number": station.number,
        "beat": station.beat,
        "half": station.half,
        "lobe": station.lobe,
        "cycle": station.cycle,
        "hand": station.hand.tolist(),
        "tether": station.tether.tolist(),
        "plane": station.plane.tolist(),
        "flown_head": None if flown is None else flown.tolist(),
        "place": station.place,
        "performer": station.performer,
        "audience": station.audience,
        "change": station.change,
        "cross": None if station.cross is None else station.cross.tolist(),
        "cross_words": station.cross_words,
    }
