"""How two hands go together, as performers say it: "same time, opposite directions"."""

_TIMING = {"together": "same time", "split": "split time", "quarter": "quarter time"}
_DIRECTION = {"same": "same direction", "opposite": "opposite directions"}


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
    return f"{_TIMING[timing]}, {_DIRECTION[direction]}"
