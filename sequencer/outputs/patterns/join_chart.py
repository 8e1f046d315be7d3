"""The join matrix as a picture: the row's pattern comes first, the column's second."""

import numpy as np
from matplotlib.figure import Figure

from sequencer.motion.trajectories.join_matrix import JoinMatrix
from sequencer.motion.trajectories.joining import VERDICTS
from sequencer.outputs.figures import plain_text

# Shades that survive grey print, and marks that distinguish them without colour.
_LOOKS = {
    "joins": ("#14505c", "o", "white"),
    "joins after a shift": ("#6aa7ad", "s", "#14505c"),
    "needs a link": ("#eceae4", "", "#eceae4"),
    "wrong way round": ("#f0b37e", "x", "#7a2e0e"),
    "cannot join": ("#1b1b1b", "", "#1b1b1b"),
}


@plain_text
def join_chart(matrix: JoinMatrix) -> Figure:
    """Verdicts of every ordered pair, one square each, with the number of each verdict."""
    from matplotlib.colors import ListedColormap
    from matplotlib.patches import Patch

    n = len(matrix.names)
    side = max(0.135 * n + 2.6, 6.0)
    figure = Figure(figsize=(side, side + 0.5), layout="constrained")
    axes = figure.subplots()
    colours = ListedColormap([_LOOKS[verdict][0] for verdict in VERDICTS])
    axes.imshow(matrix.kind, cmap=colours, vmin=-0.5, vmax=len(VERDICTS) - 0.5, aspect="equal")
    for k, verdict in enumerate(VERDICTS):
        _, mark, ink = _LOOKS[verdict]
        rows, columns = np.nonzero(matrix.kind == k)
        if mark and rows.size:
            size = {"o": 9.0, "s": 7.0, "x": 12.0}[mark]
            width = 1.0 if mark == "x" else 0.0
            axes.scatter(columns, rows, s=size, marker=mark, color=ink, linewidths=width)
    axes.set_xticks(range(n), matrix.names, rotation=90, fontsize=6.5)
    axes.set_yticks(range(n), matrix.names, fontsize=6.5)
    axes.set_xticks(np.arange(-0.5, n), minor=True)
    axes.set_yticks(np.arange(-0.5, n), minor=True)
    axes.grid(which="minor", color="white", linewidth=0.6)
    axes.tick_params(which="both", length=0)
    axes.set_ylabel("first, for one hand cycle", fontsize=10)
    axes.set_xlabel("then", fontsize=10)
    axes.set_title(
        "What joins what: right hand, 1.70 m body, each pattern at its usual tempo", fontsize=12
    )
    counts = matrix.counts()
    figure.legend(
        handles=[
            Patch(facecolor=_LOOKS[verdict][0], edgecolor="#8a8a8a", label=f"{verdict}: {counts[verdict]}")
            for verdict in VERDICTS
        ],
        loc="outside lower center", ncols=5, frameon=False, fontsize=8.5,
    )  # fmt: skip
    return figure
