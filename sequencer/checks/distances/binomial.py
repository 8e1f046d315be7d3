"""What some runs tell of a chance: exact intervals, and whether two errors weigh differently.

Sources: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934), 404-413 (the interval); Q. McNemar, Psychometrika 12 (1947),
153-157, in its exact form (two outcomes of the same runs).
"""

from typing import NamedTuple

CONFIDENCE = 0.95


class ChanceChange(NamedTuple):
    """What taking one error away does to a chance."""

    chance: float  # without it
    low: float  # of the change, at `CONFIDENCE` or more
    high: float


def interval(hits: int, runs: int, confidence: float = CONFIDENCE) -> tuple[float, float]:
    """Exact binomial interval of a chance (Clopper and Pearson); 0 to 1 of no runs.

    Parameters
    ----------
    hits, runs : int
    confidence : float
    """
    from scipy.stats import beta

    tail = (1 - confidence) / 2
    low = 0.0 if hits == 0 else float(beta.ppf(tail, hits, runs - hits + 1))
    high = 1.0 if hits == runs else float(beta.ppf(1 - tail, hits + 1, runs - hits))
    return low, high


def changed(chance: float, gone: tuple[int, int], come: tuple[int, int]) -> ChanceChange:
    """How a chance changes if an error is taken away, from the same runs with and without it.

    Parameters
    ----------
    chance : float
        With the error.
    gone : (int, int)
        Of so many runs with a conflict (the second number), how many have none without the error.
    come : (int, int)
        Of so many runs without one, how many have one without the error.

    Returns
    -------
    change : ChanceChange

    Notes
    -----
    p′ = p·(1 − g) + (1 − p)·c with the shares g and c. Each has its exact interval at half the tails, so that both hold
    together at `CONFIDENCE` (Bonferroni); p is taken as it is.
    """
    each = 1 - (1 - CONFIDENCE) / 2
    (few_gone, most_gone), (few_come, most_come) = interval(*gone, each), interval(*come, each)
    share_gone, share_come = (hits / runs if runs else 0.0 for hits, runs in (gone, come))
    rest = 1 - chance
    return ChanceChange(
        chance=chance * (1 - share_gone) + rest * share_come,
        low=rest * few_come - chance * most_gone,
        high=rest * most_come - chance * few_gone,
    )


def alike(first_only: int, second_only: int, confidence: float = CONFIDENCE) -> bool:
    """Whether two errors cannot be told apart: by runs that one of them alone decides (McNemar, exact).

    Parameters
    ----------
    first_only, second_only : int
        Runs whose conflict goes away without the first but not without the second; and the other way round.
    confidence : float
    """
    from scipy.stats import binom

    few, all_of = min(first_only, second_only), first_only + second_only
    return min(1.0, 2 * float(binom.cdf(few, all_of, 0.5))) > 1 - confidence
