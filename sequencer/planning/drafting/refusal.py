"""Where a draft had least to choose from, for the line that refuses it."""

from collections import Counter
from collections.abc import Callable

import numpy as np

from sequencer.planning.drafting.setting import Setting


def narrowest(setting: Setting, position: Callable[[float], str]) -> str:
    """Where the fewest passages were left, and what most often spoke against the others, in words; empty if nowhere any failed.

    Parameters
    ----------
    setting : Setting
        Of a search that found nothing.
    position : callable
        bar.beat of a beat coordinate.
    """
    rows = []
    for a, b in setting.neighbours:
        here, there = (
            np.array(
                [
                    (setting.slots[k].material, n) not in setting.forbidden
                    for n in range(setting.count)
                ]
            )
            for k in (a, b)
        )
        left = np.isfinite(setting.link_table(a, b)) & here[:, None] & there
        why = [
            text
            for key, text in setting.bad.items()
            if key[1] + key[2] == setting.slots[a].beats and key[4:] == setting.ways(a, b)
        ]
        if why or not left.all():
            rows.append((int(left.sum()), a, Counter(why).most_common(1)))
    if not rows:
        return ""
    count, a, common = min(rows, key=lambda row: row[:2])
    one, other = setting.slots[a], setting.slots[a + 1]
    said = (
        f"least is left from {one.section} to {other.section} at {position(other.start)}, "
        f"{count} of {setting.count**2} pairs of moves"
    )
    return said + (f" ({common[0][0]})" if common else "")
