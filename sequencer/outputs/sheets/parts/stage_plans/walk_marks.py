"""Who passes first where two ways cross.

Stage frame [m]. A way's points are evenly spaced in beats. Source: elementary geometry.
"""

from itertools import combinations, pairwise
from math import dist

import numpy as np

from sequencer.outputs.sheets.page.wording import brief, number
from sequencer.outputs.sheets.parts.stage_plans.scene import Way, way_length

_WALKS = 0.05  # [m] shorter ways are not drawn
_TOGETHER = 0.25  # [beats] nearer than this nobody is first


def crossing_words(ways: dict[str, Way], beats: float) -> list[str]:
    """Who passes first wherever two ways cross, such as "Wren before Moss by 2 counts".

    Parameters
    ----------
    ways : dict of way [m, stage frame]
        All of them walked in the same `beats`.
    beats : float
    """
    import shapely

    walked = {name: way for name, way in ways.items() if way_length(way) >= _WALKS}
    lines = {name: shapely.LineString(way) for name, way in walked.items()}
    out = []
    for one, other in combinations(walked, 2):
        met = lines[one].intersection(lines[other])
        for each in getattr(met, "geoms", [met]):
            if each.geom_type != "Point":
                continue
            times = [_beat(walked[n], lines[n].project(each), beats) for n in (one, other)]
            gap = times[1] - times[0]
            if abs(gap) < _TOGETHER:
                out.append(
                    f"{brief(one)} and {brief(other)} at the same time: agree who goes first"
                )
                continue
            first, then = (one, other) if gap > 0 else (other, one)
            counts = max(round(2 * abs(gap)) / 2, 0.5)
            noun = "count" if counts <= 1 else "counts"
            out.append(f"{brief(first)} before {brief(then)} by {number(counts)} {noun}")
    return list(dict.fromkeys(out))


def _beat(way: Way, far: float, beats: float) -> float:
    """When somebody has walked so far along a way."""
    steps = [dist(a, b) for a, b in pairwise(way)]
    lengths = np.concatenate([[0.0], np.cumsum(steps)])
    return float(np.interp(far, lengths, np.linspace(0.0, beats, len(way))))
