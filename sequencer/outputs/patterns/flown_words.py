"""How a pattern is flown, in a performer's words: how clean it reads, what it asks of the hand, what would make it fly.

A line can only pull, so no poi or rope dart is exactly where it is drawn (motion/flown/). A pattern reads clean while the
head is off the drawing by at most 15 cm, root mean square, and soft beyond.

Whether there is time to correct: a wobble grows by the sensitivity S over two beats, so it doubles in two beats·ln 2/ln S;
there is time if that is no less than eye and hand take to answer.
Source: 15 cm: common practice; the answer of a hand to what the eye sees, 0.25 s: from memory.
"""

from collections.abc import Mapping
from math import floor, inf, log
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.geometry.posture import PosedBody
from sequencer.motion.flown.flyable import WouldFly
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.flown.sensitivity import BEATS, sensitivity
from sequencer.motion.patterns.build_steps import Station
from sequencer.motion.performers.flown_figures import READS_SOFT
from sequencer.outputs.patterns.fit_words import two_figures_up
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.progress import Progress

_ANSWER = 0.25  # [s]
_PER_BEAT = 96
_MOVED = 0.02  # [m] nobody notices less
_AT_REST = 0.1  # of the head's usual speed
NOT_LOOKED_AT = "the other hand's prop, where your arms are, walking and turning"


def flown_record(
    one: OnePattern, side: Side, progress: Progress | None = None, *, search: bool = True
) -> dict[str, Any] | None:
    """How one hand flies its law, as plain data; None if the prop flies as drawn or the law does not repeat.

    Parameters
    ----------
    one : OnePattern
    side : {"left", "right"}
    progress : callable, optional
        Told of the search.
    search : bool
        Look for a tempo or a tether at which a pattern flies that does not as it is, which takes up to a minute.
    """
    if side not in one.flown:
        return None
    period = one.flown[side]
    grown = sensitivity(period)
    nearest = None
    if period.broken and search:
        if progress is not None:
            progress(f"looking for a tempo at which {one.name} flies", 0.5)
        nearest = one.would_fly(side)
    limits = period.flying.limits
    return {
        "reads": reading(period),
        "moved_m": period.moved.tolist(),
        "head_off_rms_m": period.head_off[0],
        "head_off_m": period.head_off[1],
        "hand_off_rms_m": period.hand_off[0],
        "hand_off_m": period.hand_off[1],
        "tether_off_degrees": float(np.degrees(period.tether_off)),
        "least_pull_weights": period.least_pull,
        "least_pull_n": period.pull[0],
        "pull_n": period.pull[1],
        "hand_speed_m_s": period.hand_speed,
        "hand_acceleration_m_s2": period.hand_acceleration,
        "head_speed_m_s": period.head_speed,
        "reach_m": _reach(period),
        "spare_reach_m": period.spare_reach,
        "body_gap_m": period.body_gap,
        "head_off_for_hand_off": grown,
        "tether_m": period.flying.prop.length,
        "doubles_in_s": BEATS * period.flying.beat * log(2.0) / log(grown) if grown > 1 else None,
        "broken_limits": list(period.broken),
        "most_hand_speed_m_s": limits.hand_speed,
        "most_hand_acceleration_m_s2": limits.hand_acceleration,
        "pushed": pushed(period),
        "would_fly": None if nearest is None else nearest._asdict(),
        "not_looked_at": NOT_LOOKED_AT,
    }


def reading(period: FlownPeriod) -> str:
    """How a flown period reads: clean, soft, or not flown."""
    if period.broken:
        return "not flown"
    return "clean" if period.head_off[0] <= READS_SOFT else "soft"


def flown_words(one: OnePattern) -> str:
    """One clause on how the worse of the hands flies it; empty for a prop that flies as drawn."""
    if not one.flown:
        return ""
    if not one.flies:
        return "cannot be flown at this tempo (see its card): shown as drawn"
    worst = max(one.flown.values(), key=lambda period: period.head_off[0])
    return (
        f"reads {reading(worst)}, the head typically {off_words(worst.head_off[0])} off the drawing"
    )


def station_words(one: OnePattern, station: Station, side: Side = "right") -> str:
    """How far from where it is drawn the head flies at a station; empty where that is not known."""
    flown = one.flown_head(station, side)
    if flown is None:
        return ""
    drawn = station.hand + one.dance.props[side].length * station.tether
    if side in one.flown:
        drawn = drawn + one.flown[side].moved
    return f"{off_words(float(np.linalg.norm(flown - drawn)))} off"


def pushed(period: FlownPeriod) -> bool:
    """Whether the drawn head stops above the hand, where a line that only pulls cannot hold it."""
    beats = _beats(period)
    drawn, length = period.law.at(beats), period.flying.prop.length
    speed = np.linalg.norm(drawn.head_rate(length), axis=-1)
    return bool(
        np.any((speed <= _AT_REST * np.sqrt(np.mean(speed**2))) & (drawn.tether[:, 2] > _AT_REST))
    )


def flown_lines(record: Mapping[str, Any], line: str) -> list[str]:
    """A hand's block "As flown", a line each.

    Parameters
    ----------
    record : mapping
        See `flown_record`.
    line : str
        What holds the head: tether or rope.
    """
    lines = [_reads_words(record, line)]
    if record["reads"] == "not flown":
        return [*lines, *_broken_words(record, line), f"the nearest motion: {_off_words(record)}"]
    speed, jerk, head = (
        two_figures_up(record[key])
        for key in ("hand_speed_m_s", "hand_acceleration_m_s2", "head_speed_m_s")
    )
    least = _down(record["least_pull_weights"])
    pull = f"pull {record['least_pull_n']:.1f} to {record['pull_n']:.1f} N"
    return [
        *lines,
        *_moved_words(record),
        _off_words(record),
        f"{pull}, never less than {least} of the head's weight",
        f"hand up to {speed} m/s and {jerk} m/s², head up to {head} m/s",
        _wobble_words(record),
    ]


def _reads_words(record: Mapping[str, Any], line: str) -> str:
    if record["reads"] != "not flown":
        return f"reads {record['reads']}"
    cannot, nearest = "cannot be flown at this tempo", record["would_fly"]
    return f"{cannot}: {would_fly_words(WouldFly(**nearest), line)}" if nearest else cannot


def would_fly_words(nearest: WouldFly, line: str) -> str:
    """Which tempo or tether would do, or that none near does."""
    tempi = [f"{value:.0f}" for value in nearest[:2] if value is not None]
    lengths = [f"{100 * value:.0f} cm" for value in nearest[2:] if value is not None]
    ways = [f"{' or '.join(tempi)} beats a minute"] if tempi else []
    ways += [f"a {line} of {' or '.join(lengths)}"] if lengths else []
    return f"{' or '.join(ways)} would do" if ways else f"no tempo or {line} near these would do"


def _broken_words(record: Mapping[str, Any], line: str) -> list[str]:
    """Which limits are broken, and how that is felt."""
    words = {
        "pull": f"the {line} goes slack: the head falls out of its path (pull down to "
        f"{record['least_pull_weights']:.1f} of its weight)",
        "speed": f"the hand cannot keep up: it would move at {record['hand_speed_m_s']:.1f} m/s, and "
        f"{record['most_hand_speed_m_s']:g} m/s is fast for an arm",
        "acceleration": f"the hand would have to snatch: {record['hand_acceleration_m_s2']:.0f} m/s², and "
        f"{record['most_hand_acceleration_m_s2']:g} m/s² is hard on an arm",
        "reach": f"the arm is {off_words(max(-record['spare_reach_m'], 0.0))} too short",
        "pattern": f"the {line} would be up to {record['tether_off_degrees']:.0f}° off the drawing: nobody "
        "would see the pattern",
    }
    rests = f"the head stops above the hand: it would have to be pushed, and a {line} only pulls"
    return [
        *([rests] if record["pushed"] else []),
        *(words[name] for name in record["broken_limits"]),
    ]


def _moved_words(record: Mapping[str, Any]) -> list[str]:
    """Where the pattern is danced, if not where it is drawn."""
    moved = record["moved_m"]
    if float(np.linalg.norm(moved)) < _MOVED:
        return []
    ways = [
        f"{off_words(abs(value))} {ahead if value > 0 else back}"
        for value, (back, ahead) in zip(
            moved,
            (("left of", "right of"), ("behind", "in front of"), ("below", "above")),
            strict=True,
        )
        if abs(value) >= 0.005
    ]
    where = " and ".join(filter(None, [", ".join(ways[:-1]), ways[-1]]))
    return [f"danced {where} where it is drawn, so that the arm has room"]


def _off_words(record: Mapping[str, Any]) -> str:
    head, hand = (
        f"typically {off_words(record[f'{what}_off_rms_m'])}{{}}, {off_words(record[f'{what}_off_m'])} at most"
        for what in ("head", "hand")
    )
    turned = f"tether up to {record['tether_off_degrees']:.0f}°"
    return f"head {head.format(' off the drawing')}; hand {hand.format('')}; {turned}"


def _wobble_words(record: Mapping[str, Any]) -> str:
    """What a wobbling hand does to the head, and what that asks of the performer."""
    grown, doubles = record["head_off_for_hand_off"], record["doubles_in_s"]
    time = (doubles or inf) >= _ANSWER
    lost = grown > 100 * record["tether_m"]  # farther than a line is long is no distance any more
    off = "loses the head" if lost else f"takes the head {max(grown, 1.0):.0f} cm off"
    so = ", yet" if lost and time else ":"
    asks = "leaves time to correct" if time else "needs a steady hand"
    return f"a hand that wobbles by 1 cm {off} within two beats if nobody steers{so} {asks}"


def _beats(period: FlownPeriod) -> Floats:
    """Instants of a period, shape (n,) [beats]."""
    return np.arange(0.0, period.law.period, 1 / _PER_BEAT, dtype=np.float64)


def _reach(period: FlownPeriod) -> float:
    """Largest distance of the hand from its shoulder at rest [m], at 96 instants a beat."""
    flying = period.flying
    beats = _beats(period)
    away = period.hand.at(beats) - PosedBody(flying.body, flying.posture).shoulder(flying.side)
    return float(np.max(np.linalg.norm(away, axis=-1)))


def off_words(length: float) -> str:
    """A distance from the drawing."""
    return "under 1 cm" if length < 0.005 else f"{100 * length:.0f} cm"


def _down(value: float) -> str:
    """Rounded down to one decimal."""
    return f"{floor(10 * value + 1e-9) / 10:.1f}"
