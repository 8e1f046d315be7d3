"""Bars and beats of a count as pandas data frames."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from sequencer.timing.tempo import TempoMap


def bars_frame(
    count: TempoMap, bars: int, confidence: Sequence[float], sections: Sequence[str]
) -> pd.DataFrame:
    """Bars, one a row.

    Parameters
    ----------
    count : TempoMap
    bars : int
        How many.
    confidence : sequence of float
        0 … 1, one a bar; empty where it is not known.
    sections : sequence of str
        Name of the section in which each bar begins.

    Returns
    -------
    frame : DataFrame
        `bar` (from 1), `start` and `end` [s], `beats`, `tempo` [beats a minute], `confidence`, `section`.
    """
    number = np.arange(1, bars + 1)
    edges = count.seconds_from_beats([count.bar_start(bar) for bar in range(1, bars + 2)])
    beats = np.array([count.bar_length(int(bar)) for bar in number])
    return pd.DataFrame(
        {
            "bar": number,
            "start": edges[:-1],
            "end": edges[1:],
            "beats": beats,
            "tempo": 60.0 * beats / np.diff(edges),
            "confidence": np.array(confidence or [np.nan] * bars, dtype=np.float64),
            "section": list(sections),
        }
    )


def beats_frame(count: TempoMap) -> pd.DataFrame:
    """Beats, one a row: `bar` (0, −1, … before the first full one), `beat` and `seconds`."""
    places = [count.position_of(float(knot)) for knot in count.knots]
    return pd.DataFrame(
        {
            "bar": [place.bar for place in places],
            "beat": [int(place.beat) for place in places],
            "seconds": count.times,
        }
    )
