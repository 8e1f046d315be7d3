"""What taps along the song come to, in words, and as corrections of the count that a person may take."""

from collections.abc import Sequence
from typing import Any

from sequencer.show.model import CorrectionRecord
from sequencer.timing.position import clock_text
from sequencer.timing.song import Song
from sequencer.timing.tapping import (
    USUAL_LEAD,
    TapFit,
    TapMatch,
    beats_of_pairs,
    fit_taps,
    lead_of_strokes,
    match_taps,
)

_SURE = 0.12  # [beats] of sway; a person who taps further about tells no tempo
_WORTH = 0.02  # [s] below which the beats are where the taps are
_OF_ONE_S_OWN = {"steady": None, "beats": None, "tempo": None, "shift": None, "one": None}


def tapped_count(
    taps: Sequence[float], song: Song, given: CorrectionRecord, latency: float | None = None
) -> dict[str, Any]:
    """What taps say, as JSON values.

    Parameters
    ----------
    taps : sequence of float [s]
        Of the track.
    song : Song
        As the show counts it now.
    given : CorrectionRecord
        The corrections that the file has.
    latency : float, optional
        Of the sound, as the page took it into account [s]; None if it does not know it.

    Returns
    -------
    values : dict
        `fit` (`tempo`, `tempo_error` [beats/min], `start`, `sway` [s], `used`, `slips`), `match` (`relation`, `offset`, `sway` [s])
        or None, `words` (sentences), and `offers`: `words` and the `values` of an operation `correct-count`, the best first.

    Raises
    ------
    ValueError
        If there are too few taps, or too many.
    """
    inside = [time for time in taps if 0.0 <= time <= song.duration]
    pairs = beats_of_pairs(inside)
    if pairs is not None:
        inside = pairs[0].tolist()
    fit = fit_taps(inside)
    match = match_taps(inside, _from_a_one(song))
    steady = fit.sway <= _SURE * fit.period
    words = [] if pairs is None else [_about_the_pairs(pairs[1])]
    words += [_about_the_taps(fit)]
    if match is not None:
        words.append(_RELATIONS[match.relation])
        words.append(_about_the_offset(match))
    elif steady:
        words.append("They go with none of the beats that the count has now.")
    else:
        words.append("They sway too much to tell a tempo: start over, and tap on each beat.")
    words += [] if latency is not None else [_UNKNOWN]
    offers = [] if match is None else _of_the_match(match, song, given)
    if steady and (match is None or match.relation != "same"):
        offers.append(_of_the_taps(fit, song, inside))
    return {
        "fit": {
            "tempo": fit.tempo, "tempo_error": fit.tempo_error, "start": fit.start, "sway": fit.sway,
            "used": fit.used, "slips": fit.slips,
        },
        "match": None
        if match is None
        else {"relation": match.relation, "offset": match.offset, "sway": match.sway},
        "words": words,
        "offers": offers,
    }  # fmt: skip


def _from_a_one(song: Song) -> list[float]:
    """Beats of which every second, from the first on, is one from which halving the count would count."""
    beats = list(song.beats)
    if not song.downbeats:
        return beats
    return beats[beats.index(song.downbeats[0]) % 2 :]


_LOST_COUNT = (
    " You paused for so long that nobody can tell how many beats that was: this is the tempo of the taps before and after, and the "
    "count begins with your first tap. To be surer, tap through."
)


def _about_the_taps(fit: TapFit) -> str:
    slips = f" {_many(fit.slips, 'slip')} left out." if fit.slips else ""
    return (
        f"{fit.used} taps: {fit.tempo:.2f} beats a minute, give or take {max(fit.tempo_error, 0.01):.2f}; "
        f"they sway by {1000 * fit.sway:.0f} ms.{slips}{_LOST_COUNT if fit.lost else ''}"
    )


def _about_the_pairs(apart: float) -> str:
    return (
        f"Your taps come in pairs, {1000 * apart:.0f} ms apart: the second of each pair is taken for the beat. "
        "Tap once on each beat if that is not what you mean."
    )


def _many(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


_RELATIONS = {
    "same": "You tap on every beat of the count as it is.",
    "half": "You tap on every second beat of the count as it is: it counts twice as fast as you.",
    "double": "You tap twice on every beat of the count as it is: it counts half as fast as you.",
    "between": "You tap between the beats of the count as it is.",
}
_UNKNOWN = (
    "This browser does not say how late its sound comes out; all taps may be late by the same, some hundredths of a second, and "
    "with wireless headphones by some tenths."
)


def _about_the_offset(match: TapMatch) -> str:
    by = abs(1000 * match.offset)
    way = "early" if match.offset < 0 else "late"
    if by < 0.5:
        return "They are on the beats."
    usual = (
        " Fingers are early by that much without noticing."
        if -USUAL_LEAD <= match.offset < -_WORTH
        else ""
    )
    return f"Against those beats they are mostly {by:.0f} ms {way}, and sway by {1000 * match.sway:.0f} ms.{usual}"


def _of_the_match(match: TapMatch, song: Song, given: CorrectionRecord) -> list[dict[str, Any]]:
    beat = 60.0 / song.tempo
    if match.relation == "same":
        if abs(match.offset) < _WORTH:
            return []
        way = "earlier" if match.offset < 0 else "later"
        return [
            {
                "words": f"Move every beat {abs(1000 * match.offset):.0f} ms {way}, to where you tap",
                "values": {"shift": _shift(given, match.offset)},
            }
        ]
    if match.relation == "between":
        return [
            {
                "words": "Count half a beat later, where you tap",
                "values": {"shift": _shift(given, beat / 2)},
            }
        ]
    level = level_after(given.tempo, match.relation)
    if level is _NO_LEVEL:
        return []
    values: dict[str, Any] = {"tempo": level}
    if match.odd:
        values["shift"] = _shift(given, beat)
    fast = "half" if match.relation == "half" else "twice"
    return [{"words": f"Count {fast} as fast", "values": values}]


def _of_the_taps(fit: TapFit, song: Song, taps: Sequence[float]) -> dict[str, Any]:
    span = (min(taps), max(taps))
    lead = lead_of_strokes(fit.period, fit.start, song.onsets, song.onset_strengths, span)
    start = min(max(fit.start + (lead or 0.0), 0.0), song.duration)
    on = "" if lead is None else ", set on the strokes that were heard"
    return {
        "words": f"Count {fit.tempo:.2f} beats a minute from your first tap on{on}",
        "values": {
            **_OF_ONE_S_OWN,
            "steady": {"tempo": round(fit.tempo, 3), "at": clock_text(start, decimals=3)},
        },
    }


_NO_LEVEL = "none"


def level_after(now: str | None, wanted: str) -> str | None:
    """What `tempo` must say to count half or twice as fast as now: None is as it was heard, "none" cannot be said."""
    levels: list[str | None] = ["half", None, "double"]
    if now is not None and now.startswith("constant"):
        levels = ["constant half", "constant", "constant double"]
    at = levels.index(now) + (1 if wanted == "double" else -1)
    return levels[at] if 0 <= at < len(levels) else _NO_LEVEL


def _shift(given: CorrectionRecord, more: float) -> str | None:
    """The file's shift and some more [s], as the file says it."""
    total = round(1000 * (given.shift + more))
    return f"{total} ms" if total else None
