"""Sampled rows of one hand's pattern over its beats, for other tools; body frame [m].

Columns as in `SAMPLE_COLUMNS`; `sense` is the plane's unit vector n (docs/motion.md, section 2), not the turning
axis: the two differ while a plane bends.
"""

from collections.abc import Mapping

import numpy as np

from sequencer.arrays import Floats, as_positive, as_whole
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.law_kinds import DEFAULT_TETHER
from sequencer.motion.patterns.library import Pattern, cycle_beats, find, law_for
from sequencer.motion.props.tension import beats_a_second

SAMPLE_COLUMNS = (
    "seconds", "beat", "hand_x", "hand_y", "hand_z", "head_x", "head_y", "head_z",
    "sense_x", "sense_y", "sense_z",
)  # fmt: skip
CARD_STATURE = 1.70  # [m] stature of the default body for patterns outside a show
MOST_ROWS = 20_000_000


def pattern_rows(
    name: str,
    parameters: Mapping[str, object],
    *,
    beats: float | None = None,
    per_beat: int = 24,
    tempo: float = 100.0,
    side: Side = "right",
    body: Body | None = None,
    book: Mapping[str, Pattern] | None = None,
) -> Floats:
    """Positions of one pattern at beat 0, 1/per_beat, … up to and including `beats`.

    Parameters
    ----------
    name : str
        Of the pattern.
    parameters : mapping
        Parameters that are set; `beats` is the length of one hand cycle.
    beats : float, optional
        Number of beats; default: one hand cycle.
    per_beat : int
        Rows per beat.
    tempo : float
        [beats/min], for the seconds column.
    side : {"left", "right"}
    body : Body, optional
        1.70 m tall if not given.
    book : mapping, optional
        Patterns to use instead of the built-in ones.

    Returns
    -------
    rows : ndarray, shape (n, 11) [s, beats, m and 1, body frame]

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.

    Notes
    -----
    Source: docs/motion.md. Exact to rounding.
    """
    law, tether, span = _law(name, parameters, side, body, book)
    length = span if beats is None else beats
    return law_rows(law, beats=length, per_beat=per_beat, tempo=tempo, tether=tether)


def pattern_law(
    name: str, parameters: Mapping[str, object], *, book: Mapping[str, Pattern] | None = None
) -> tuple[Law, float]:
    """The law whose positions `pattern_rows` gives for the right hand of the default body, and its tether [m].

    Raises
    ------
    ValueError
        As there.
    """
    return _law(name, parameters, "right", None, book)[:2]


def _law(
    name: str,
    parameters: Mapping[str, object],
    side: Side,
    body: Body | None,
    book: Mapping[str, Pattern] | None,
) -> tuple[Law, float, float]:
    """A pattern's law, its tether [m] and the beats of a hand cycle."""
    given = dict(parameters)
    cycle = given.pop("beats", None)
    try:
        span = cycle_beats(name, given, book) if cycle is None else float(str(cycle))
    except ValueError:
        if cycle is None:
            raise
        raise ValueError(f"beats of a hand cycle must be a number, got {cycle!r}") from None
    tether = find(name, book).values(given, side).get("tether") or DEFAULT_TETHER
    law = law_for(
        name, given, side=side, body=body or Body(stature=CARD_STATURE), beats=span, book=book
    )
    return law, float(tether), span


def law_rows(law: Law, *, beats: float, per_beat: int, tempo: float, tether: float) -> Floats:
    """Positions of a law's hand and head at beat 0, 1/per_beat, … up to and including `beats`.

    Parameters
    ----------
    law : Law
    beats : float
        Number of beats.
    per_beat : int
        Rows per beat.
    tempo : float
        [beats a minute], for the seconds.
    tether : float
        Hand to head [m].

    Returns
    -------
    rows : ndarray, shape (n, 11) [s, beats, m and 1, body frame]

    Raises
    ------
    ValueError
        If a number is not positive, or the rows are more than 20 million.
    TypeError
        If one is not a number, or `per_beat` not a whole one.

    Notes
    -----
    Source: docs/motion.md. Exact to rounding.
    """
    as_whole("per_beat", per_beat, least=1)
    as_positive("beats", beats, "beats")
    as_positive("tempo", tempo, "beats a minute")
    as_positive("tether", tether, "m")
    if beats * per_beat > MOST_ROWS:
        raise ValueError(f"{beats * per_beat:g} rows are more than {MOST_ROWS}")
    count = int(np.floor(beats * per_beat + 1e-9)) + 1
    at: Floats = np.arange(count, dtype=np.float64) / per_beat
    motion = law.at(at)
    return np.column_stack(
        (at / beats_a_second(tempo), at, motion.hand, motion.head(tether), motion.plane)
    )
