"""How two hands go together, as performers say it: "same time, opposite directions"."""

from collections.abc import Mapping

TIME_WORDS: Mapping[str, str] = {
    "together": "same time",
    "split": "split time",
    "quarter": "quarter time",
}
WAY_WORDS: Mapping[str, str] = {"same": "same direction", "opposite": "opposite directions"}


def timing_words(timing: str, direction: str) -> str:
    """Timing and direction of two hands in words.

    Parameters
    ----------
    timing : {"together", "split", "quarter"}
    direction : {"same", "opposite"}

    Notes
    -----
    Source: common practice among spinners.
    """
    return f"{TIME_WORDS[timing]}, {WAY_WORDS[direction]}"
