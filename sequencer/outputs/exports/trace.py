"""Positions over time as CSV, for other tools.

Stage frame [m] for a show (X to the audience's right, Y upstage, Z up), body frame [m] for one pattern (x to
the performer's right, y forward, z up). `sense` is the unit vector of the prop's plane and direction by the
right-hand rule, as the law defines it. One row per instant, performer and side; `lit` is 1 or 0. `head` is the
wick farthest along the prop; if a show has props with more wicks, head2_x, head2_y, head2_z and so on
follow, empty for props with fewer.

The columns hand and head of one pattern are as drawn. Those of `FLOWN_COLUMNS` follow: where hand and head really go
with a poi of that tether, which only pulls; empty where it cannot be flown. Their names hold unit and frame.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from sequencer.arrays import Floats
from sequencer.errors import InputError, Place
from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.motion.flown.flown_motion import Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.patterns.samples import CARD_STATURE, pattern_law, pattern_rows
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.exports.timetable import inert
from sequencer.show.file_records.prop_records import usual_prop
from sequencer.staging.staged import Staged

if TYPE_CHECKING:
    import pandas as pd

TRACE_COLUMNS = (
    "seconds", "beat", "performer", "side", "hand_x", "hand_y", "hand_z",
    "head_x", "head_y", "head_z", "sense_x", "sense_y", "sense_z", "lit",
)  # fmt: skip
FLOWN_COLUMNS = tuple(f"flown_{what}_{axis}_m_body" for what in ("hand", "head") for axis in "xyz")
MOST_TRACED = 5_000_000  # of a table: some 2 GB while it is written
DECIMALS = 7  # a tenth of a micrometre: rounding never shows in anything computed from the file


def trace_csv(staged: Staged, *, rate: float, flown: Staged | None = None) -> str:
    """A show's hands and props over the whole track, as CSV; see `trace_frame`."""
    return _csv(trace_frame(staged, rate=rate, flown=flown))


def trace_frame(staged: Staged, *, rate: float, flown: Staged | None = None) -> "pd.DataFrame":
    """A show's hands and props over the whole track, all hands of an instant together.

    Parameters
    ----------
    staged : Staged
    rate : float
        Instants per second, from second 0 to the end of the track.
    flown : Staged, optional
        The same show as flown: adds hand and head as flown, in columns of their own.

    Raises
    ------
    ValueError
        If the rate is not positive.
    InputError
        If the table would be larger than MOST_TRACED.
    """
    if not rate > 0:
        raise ValueError(f"rate must be positive, got {rate!r}")
    hands = sum(side in each.props for each in staged.dancers for side in SIDES)
    rows = staged.song.duration * rate * hands
    if rows > MOST_TRACED:
        raise InputError(
            "too-many-rows", Place("--rate"), f"this would be {rows:,.0f} rows, and {MOST_TRACED:,} can be written",
            "ask for fewer",
        )  # fmt: skip
    seconds = np.arange(int(staged.song.duration * rate) + 1, dtype=np.float64) / rate
    beats = staged.tempo.beats_from_seconds(seconds)
    others = staged.dancers if flown is None else flown.dancers
    frames = [
        _hand(dancer, side, seconds, beats).assign(
            **_flown_columns(other, side, beats) if flown else {}
        )
        for dancer, other in zip(staged.dancers, others, strict=True)
        for side in SIDES
        if side in dancer.props
    ]
    return _whole(frames, len(seconds))


def _flown_columns(dancer: Dancer, side: Side, beats: Floats) -> dict[str, Floats]:
    """Columns of hand and first wick as flown, in the stage frame as those beside them."""
    points, _ = dancer.stage_points(beats)
    places = points[3 if side == "left" else 6], dancer.wick_places(beats)[side][0]
    return {
        f"flown_{what}_{axis}": np.asarray(np.round(place[:, i], DECIMALS) + 0.0)
        for what, place in zip(("hand", "head"), places, strict=True)
        for i, axis in enumerate("xyz")
    }


def pattern_csv(
    name: str,
    parameters: Mapping[str, object],
    *,
    beats: float | None,
    per_beat: int,
    tempo: float,
    book: Mapping[str, Pattern] | None = None,
) -> str:
    """One pattern of the right hand in the body frame, from the pattern's beat 0 on, both ends included.

    Parameters
    ----------
    name : str
        Name of the pattern.
    parameters : mapping
        Parameters of the pattern; `beats` is the length of one hand cycle.
    beats : float, optional
        Length of the trace; one hand cycle if not given.
    per_beat : int
        Rows per beat.
    tempo : float
        Beats per minute, for the times in seconds.
    book : mapping, optional
        Patterns to use instead of the built-in ones.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    rows = pattern_rows(name, parameters, beats=beats, per_beat=per_beat, tempo=tempo, book=book)
    vectors = (rows[:, 2:5], rows[:, 5:8], rows[:, 8:11])
    frame = _frame(rows[:, 0], rows[:, 1], "", "right", vectors)
    flown = _flown(name, parameters, rows[:, 1], tempo, book)
    flown = np.round(flown, DECIMALS) + 0.0
    columns = dict(zip(FLOWN_COLUMNS, flown.T, strict=True))
    return _csv(_whole([frame.assign(lit=0, **columns)], len(rows)))


def _flown(
    name: str,
    parameters: Mapping[str, object],
    beats: Floats,
    tempo: float,
    book: Mapping[str, Pattern] | None,
) -> Floats:
    """Hand and head as flown with a poi, shape (n, 6) [m, body frame]; not a number where it cannot be flown."""
    law, tether = pattern_law(name, parameters, book=book)
    body = Body(stature=CARD_STATURE)
    poi = replace(usual_prop("poi", stature=CARD_STATURE), length=tether)
    if not np.isfinite(law.period):
        return np.full((len(beats), 6), np.nan)
    period = flown_period(law, Flying(prop=poi, body=body, side="right", tempo=tempo))
    if period.broken:
        return np.full((len(beats), 6), np.nan)
    seen = period.flight(beats)
    return np.concatenate((seen.hand, seen.head), axis=-1)


def _hand(dancer: Dancer, side: Side, seconds: Floats, beats: Floats) -> "pd.DataFrame":
    points, _ = dancer.stage_points(beats)
    motion = dancer.trajectories[side].at(beats)
    facing = dancer.floor.at(beats).facing
    cos, sin = -np.cos(facing), -np.sin(facing)  # half a turn on: body y is −Y at facing 0
    x, y, z = np.moveaxis(motion.plane, -1, 0)
    sense = np.stack([cos * x - sin * y, sin * x + cos * y, z], axis=-1)
    hand = points[3 if side == "left" else 6]
    wicks = dancer.wick_places(beats)[side]
    frame = _frame(seconds, beats, dancer.name, side, (hand, wicks[0], sense))
    more = {
        f"head{k}_{axis}": np.round(wick[:, i], DECIMALS) + 0.0
        for k, wick in enumerate(wicks[1:], start=2)
        for i, axis in enumerate("xyz")
    }
    return frame.assign(lit=dancer.is_lit(beats).astype(int), **more)


def _frame(
    seconds: Floats, beats: Floats, performer: str, side: Side, vectors: tuple[Floats, ...]
) -> "pd.DataFrame":
    import pandas as pd

    table = np.column_stack([seconds, beats, *vectors])
    names = [name for name in TRACE_COLUMNS if name not in {"performer", "side", "lit"}]
    frame = pd.DataFrame(np.round(table, DECIMALS) + 0.0, columns=names)  # + 0.0: no −0
    return frame.assign(performer=performer, side=side)


def _whole(frames: "list[pd.DataFrame]", instants: int) -> "pd.DataFrame":
    """Order the rows by instant, so that all hands of one instant come together."""
    import pandas as pd

    whole = pd.concat(frames, keys=range(len(frames)), names=["hand", "instant"])
    if instants:
        whole = whole.sort_index(level=["instant", "hand"])
    most = max((len(frame.columns) for frame in frames), default=len(TRACE_COLUMNS))
    columns = next((list(f.columns) for f in frames if len(f.columns) == most), list(TRACE_COLUMNS))
    columns = [*TRACE_COLUMNS, *(name for name in columns if name not in TRACE_COLUMNS)]
    return whole[columns].reset_index(drop=True)


def _csv(frame: "pd.DataFrame") -> str:
    names = {name: inert(name) for name in frame["performer"].unique()}
    frame = frame.assign(performer=frame["performer"].map(names))
    return str(frame.to_csv(index=False, float_format=f"%.{DECIMALS}f", lineterminator="\n"))
