"""Who goes with what at the least cost in all: rows of a table matched with columns."""

from sequencer.arrays import Floats
from sequencer.kept import remembering


@remembering(
    record=list,
    restore=lambda record: [(int(row), int(column)) for row, column in record],
)
def cheapest_matching(cost: Floats) -> list[tuple[int, int]]:
    """Pairs of a row and a column, each used once, whose costs add up to the least.

    Parameters
    ----------
    cost : ndarray, shape (n, m) [1]
        Finite.

    Returns
    -------
    pairs : list of tuple of int
        min(n, m) of them, by row.

    Raises
    ------
    ValueError
        If a cost is not a number.

    Notes
    -----
    Source: scipy.optimize.linear_sum_assignment.
    """
    # Loaded only where nothing is kept: it takes longer to load than most matchings.
    from scipy.optimize import linear_sum_assignment

    rows, columns = linear_sum_assignment(cost)
    return list(zip(rows.tolist(), columns.tolist(), strict=True))
