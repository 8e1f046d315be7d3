"""Walks and turns too fast to keep spinning through, and wheelchairs that move while the hands are full.

Speeds are in seconds, with the tempo at every beat. No published limit for spinning while
walking was found: the defaults are the walking speed that a European standard assumes of anyone
approaching a machine, and half a turn a second.
Source: EN ISO 13855:2010, approach speed of 1.6 m/s (catalogue abstract); the turn rate is this tool's default.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.check import Check
from sequencer.checks.fault_kinds import WALK_SPEED, WALK_TURN
from sequencer.checks.outcome import BeatClock, Outcome
from sequencer.findings import Figure, Finding
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move
from sequencer.staging.staged import Staged
from sequencer.timing.position import TOUCH
from sequencer.timing.tempo import TempoMap

_LEAST = 64  # instants at which a move is sampled first
_MOST = 65_536


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelLimits:
    """Highest speeds while spinning."""

    speed: float = 1.6  # [m/s]
    turn_rate: float = math.pi  # [rad/s]
    speed_source: str = "EN ISO 13855:2010: walking approach at 1.6 m/s"
    turn_source: str = "this tool's default; common practice gives no figure"

    def __post_init__(self) -> None:
        for name in ("speed", "turn_rate"):
            if not 0 < getattr(self, name) < 100:  # also catches nan
                raise ValueError(
                    f"{name} must be over 0 and under 100, got {getattr(self, name)!r}"
                )


def walks(show: Staged) -> Outcome:
    """Every walk of a show against the limits, and those that are written as another kind of way than they are."""
    return travel(show.dancers, show.tempo) + Outcome(findings=tuple(_other_ways(show)))


def _other_ways(show: Staged) -> Iterator[Finding]:
    """Walks whose `path` says otherwise than their points: these alone decide the way."""
    for standing in show.standings:
        if standing.path[0] != "staging":
            continue
        row = show.show.staging[int(standing.path[1])]
        bent = [who for who, points in row.via.items() if points]
        if row.path is None or (row.path == "curved") == bool(bent):
            continue
        if bent:
            what = f"is written as straight, but {' and '.join(bent)} walk{'s' if len(bent) == 1 else ''} through points, which is a curve"
            mends = ("take `path` out", "take the points out (`via`): then the way is straight")
        else:
            what = "is written as curved, but leads through no points: everybody walks straight"
            mends = ("take `path` out", "give points to walk through (`via`)")
        yield Finding(
            code="path-says-nothing",
            severity="note",
            who=tuple(bent),
            start=show.seconds(standing.walk),
            end=show.seconds(standing.start),
            position=show.position(standing.walk),
            message=f"the walk to {standing.formation} {show.at_aloud(standing.walk)} {what}",
            remedies=mends,
            source="a way is given by its points",
        )


def travel(
    dancers: Sequence[Dancer], tempo: TempoMap, limits: TravelLimits | None = None
) -> Outcome:
    """Every walk against the limits.

    Parameters
    ----------
    dancers : sequence of Dancer
    tempo : TempoMap
    limits : TravelLimits, optional

    Returns
    -------
    outcome : Outcome
    """
    use = TravelLimits() if limits is None else limits
    findings = []
    for dancer in dancers:
        behind = _ways_behind(dancer)
        for move in dancer.floor.moves:
            if not any(move in way for way in behind):
                speed, turn = peaks(dancer, move, tempo)
                findings += _findings(dancer, move, tempo, use, speed, turn)
        findings += [each for way in behind for each in _hurried(dancer, way, tempo, use)]
        findings += _wheels(dancer, tempo)
    return Outcome(findings=tuple(findings))


def _ways_behind(dancer: Dancer) -> list[list[Move]]:
    """Moves from one place in the wings to another, those of one way together."""
    found: list[list[Move]] = []
    for low, high in dancer.floor.off:
        way = [
            move
            for move in dancer.floor.moves
            if low + TOUCH < move.start and move.end < high - TOUCH
        ]
        found += [way] if way else []
    return found


def _hurried(
    dancer: Dancer, way: Sequence[Move], tempo: TempoMap, limits: TravelLimits
) -> Iterator[Finding]:
    """A way behind the stage that is too fast: only a later entrance, or an earlier exit, gives it time."""
    speed = max(peaks(dancer, move, tempo)[0] for move in way)
    if speed <= limits.speed:
        return
    count, (start, end) = BeatClock(tempo), (way[0].start, way[-1].end)
    more = math.ceil(2 * (end - start) * (speed / limits.speed - 1)) / 2
    yield Finding(
        code="walks-too-fast",
        severity="warn",
        who=(dancer.name,),
        start=count.seconds(start),
        end=count.seconds(end),
        position=count.position(start),
        message=(
            f"{dancer.name} has {end - start:g} beats to get round behind the stage, which takes up to {speed:.1f} m/s; "
            f"the limit is {limits.speed:.1f} m/s"
        ),
        remedies=(
            f"let them come on {more:g} beats later, or go off as much earlier",
            "let them come on from the side on which they went off",
        ),
        source=limits.speed_source,
        where=(float(way[-1].place[0]), float(way[-1].place[1])),
        figures=(Figure(quantity=WALK_SPEED, value=speed, limit=limits.speed, unit="m/s"),),
    )


def peaks(dancer: Dancer, move: Move, tempo: TempoMap) -> tuple[float, float]:
    """Upper bounds of the speed [m/s] and turn rate [rad/s] of one move, tight to half a percent.

    The largest sample is raised by what acceleration can add between two samples; sampling gets finer
    until that is little.
    """
    bounds = [piece[2] for piece in dancer.floor.pieces(move.start, move.end)]
    acceleration = max(b.acceleration for b in bounds)
    turn_acceleration = max(b.turn_acceleration for b in bounds)
    fastest = tempo.fastest(move.start, move.end)
    n = _LEAST
    while True:
        step = (move.end - move.start) / n
        beats: Floats = np.asarray(move.start + step * (np.arange(n) + 0.5), dtype=np.float64)
        stand = dancer.floor.at(beats)
        # A step may hold a change of tempo: the faster of its two ends counts.
        rates = np.maximum(
            tempo.beats_per_second(beats - step / 2), tempo.beats_per_second(beats + step / 2)
        )
        speed = float(np.max(np.hypot(*stand.place_rate.T) * rates))
        turn = float(np.max(np.abs(stand.facing_rate) * rates))
        more = acceleration * step / 2 * fastest
        more_turn = turn_acceleration * step / 2 * fastest
        if (more <= 0.005 * speed and more_turn <= 0.005 * turn + 1e-12) or n >= _MOST:
            return speed + more, turn + more_turn
        n *= 4


def _findings(
    dancer: Dancer, move: Move, tempo: TempoMap, limits: TravelLimits, speed: float, turn: float
) -> list[Finding]:
    count = BeatClock(tempo)
    length = move.end - move.start
    name, verb = dancer.name, "rolls" if dancer.body.seated else "walks"
    out = []
    for code, quantity, value, limit, unit, words, source in (
        (
            "walks-too-fast",
            WALK_SPEED,
            speed,
            limits.speed,
            "m/s",
            f"{verb} at up to",
            limits.speed_source,
        ),
        (
            "turns-too-fast",
            WALK_TURN,
            math.degrees(turn),
            math.degrees(limits.turn_rate),
            "°/s",
            "turns at up to",
            limits.turn_source,
        ),
    ):
        if value <= limit:
            continue
        # A longer walk has lower peaks.
        needed = math.ceil(2 * length * value / limit) / 2
        decimals = 1 if unit == "m/s" else 0
        out.append(
            Finding(
                code=code,
                severity="warn",
                who=(name,),
                start=count.seconds(move.start),
                end=count.seconds(move.end),
                position=count.position(move.start),
                message=(
                    f"{name} {words} {value:.{decimals}f} {unit}; the limit while spinning is "
                    f"{limit:.{decimals}f} {unit}"
                ),
                remedies=(
                    f"give the walk {needed:g} beats instead of {length:g}",
                    "choose a nearer place" if unit == "m/s" else "turn less",
                ),
                source=source,
                where=(float(move.place[0]), float(move.place[1])),
                figures=(Figure(quantity=quantity, value=value, limit=limit, unit=unit),),
            )
        )
    return out


def _wheels(dancer: Dancer, tempo: TempoMap) -> list[Finding]:
    """Note that a wheelchair moves while its performer holds props; the path itself is taken as written."""
    if not (dancer.body.seated and dancer.props and dancer.floor.moves):
        return []
    count, moves = BeatClock(tempo), dancer.floor.moves
    first, others = moves[0], len(moves) - 1
    more = f", and {others} more time{'s' * (others > 1)}" if others else ""
    return [
        Finding(
            code="wheels-without-hands",
            severity="note",
            who=(dancer.name,),
            start=count.seconds(first.start),
            end=count.seconds(first.end),
            position=count.position(first.start),
            message=(
                f"{dancer.name}'s wheelchair moves or turns {count.at_aloud(first.start)}{more}, while "
                "the hands hold props"
            ),
            remedies=(
                "name who pushes, or use a motor",
                "stay in place, or rest both props in the lap on the way",
            ),
            source="hands that hold a prop do not turn wheels (common practice)",
            where=(float(first.place[0]), float(first.place[1])),
        )
    ]


CHECK = Check(
    name="walks",
    run=walks,
    codes={
        "path-says-nothing": ("note",),
        "turns-too-fast": ("warn",),
        "walks-too-fast": ("warn",),
        "wheels-without-hands": ("note",),
    },
    depends_on=("bodies", "places"),
    progress="checking distances",
)
