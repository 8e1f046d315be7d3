"""Where in the plan two performers come too close: which formation or walk, which section, and what each dances there.

The show is cut for each pair where one of them begins another move, walks or stands, and where a section begins.
Beats.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.slips import move_starts
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.staging.moves_danced import move_words
from sequencer.staging.staged import Staged

FRINGE = 1.0  # [beats] a scene is no shorter; what reaches over its border by less belongs to where it comes from

Edges = tuple[float, ...]
Spell = tuple[float, float]  # from one beat to another


@dataclass(frozen=True, slots=True, kw_only=True)
class Whereabouts:
    """A part of the plan in a captain's words."""

    formation: str  # "diamond", "walk to box"; empty if the show has none
    section: str
    moves: tuple[str, str]  # of the first and the second


UNPLACED = Whereabouts(formation="", section="", moves=("", ""))


def scene_edges(
    first: Dancer, second: Dancer, span: Spell, *, sections: Iterable[float] = ()
) -> Edges:
    """Beats at which the show is cut for two performers, from the start of a span to its end.

    Parameters
    ----------
    first, second : Dancer
    span : (float, float)
    sections : iterable of float
        Beats at which sections begin.

    Notes
    -----
    A link belongs to the move that it leads into. Two who both stand at rest stand there through all sections. Edges
    less than a beat after another are left out; where walks begin and end comes before sections, and sections before
    moves.
    """
    start, end = span
    walks = [b for each in (first, second) for m in each.floor.moves for b in (m.start, m.end)]
    moves = [b for each in (first, second) for b in move_starts(each)]
    kept = [start, end]
    cuts = [beat for beat in sections if not (_at_rest(first, beat) and _at_rest(second, beat))]
    for some in (walks, cuts, moves):
        for beat in sorted(some):
            if start < beat < end and min(abs(beat - each) for each in kept) >= FRINGE:
                kept.append(beat)
    return tuple(sorted(kept))


def _at_rest(dancer: Dancer, beat: float) -> bool:
    """Whether somebody stands with hands that rest."""
    if any(move.start < beat < move.end for move in dancer.floor.moves):
        return False
    return all(
        isinstance(hand, Trajectory) and _rests(hand, beat) for hand in dancer.trajectories.values()
    )


def _rests(hand: Trajectory, beat: float) -> bool:
    """Whether a hand rests; before its first span and after its last, that span continues."""
    first, last = hand.spans[0], hand.spans[-1]
    return any(
        own.kind == "rest"
        and (own is first or own.start <= beat)
        and (own is last or beat <= own.end)
        for own in hand.spans
    )


def by_scene(spells: Sequence[Spell], edges: Edges) -> dict[int, list[Spell]]:
    """Spells of one run by the scene that they belong to.

    Parameters
    ----------
    spells : sequence of (float, float)
        In order; for each from when to when two were too close.
    edges : tuple of float

    Notes
    -----
    One that reaches over an edge by less than `FRINGE` stays where its longer part is. A scene in which there are only
    spells within `FRINGE` of a neighbour's, who has some too, gives them to it: somebody was late, or early.
    """
    found: dict[int, list[Spell]] = {}
    for spell in spells:
        for scene, part in _parts(spell, edges):
            found.setdefault(scene, []).append(part)
    for scene in sorted(found):
        before, after = scene - 1, scene + 1
        if before in found and found[scene][-1][1] <= edges[scene] + FRINGE:
            found[before] += found.pop(scene)
        elif after in found and found[scene][0][0] >= edges[after] - FRINGE:
            found[after] = found.pop(scene) + found[after]
    return found


def _parts(spell: Spell, edges: Edges) -> list[tuple[int, Spell]]:
    start, end = spell
    low = min(max(int(np.searchsorted(edges, start, side="right")) - 1, 0), len(edges) - 2)
    high = min(max(int(np.searchsorted(edges, end, side="left")) - 1, low), len(edges) - 2)
    parts = [(k, (max(start, edges[k]), min(end, edges[k + 1]))) for k in range(low, high + 1)]
    long = [(k, part) for k, part in parts if part[1] - part[0] >= FRINGE]
    if long:
        return long
    longest = max(parts, key=lambda part: part[1][1] - part[1][0])
    return [(longest[0], spell)]


def edges_of(show: Staged) -> tuple[Edges, ...]:
    """The edges of every pair of a show, in the order of pairs."""
    sections = [float(show.tempo.beats_from_seconds(each.start)) for each in show.song.sections]
    dancers = show.dancers
    return tuple(
        scene_edges(dancers[i], dancers[j], show.span, sections=sections)
        for i in range(len(dancers))
        for j in range(i + 1, len(dancers))
    )


def whereabouts(show: Staged, first: str, second: str, beat: float) -> Whereabouts:
    """What is danced by two performers at a beat, and from which formation."""
    return Whereabouts(
        formation=_formation(show, beat),
        section=show.section_at(beat),
        moves=(move_words(show, first, beat), move_words(show, second, beat)),
    )


def _formation(show: Staged, beat: float) -> str:
    here = [each for each in show.standings if each.walk <= beat]
    if not here:
        return show.standings[0].formation if show.standings else ""
    last = here[-1]
    return last.formation if beat >= last.start else f"walk to {last.formation}"


def histogram(
    moments: Sequence[float], start: float, end: float, most: int = 16
) -> tuple[float, tuple[int, ...]]:
    """How many of some moments fall into each slice of equal length between two beats.

    Parameters
    ----------
    moments : sequence of float [beats]
    start, end : float [beats]
        Where the first slice begins, a whole beat; and what the last one reaches.
    most : int
        Number of slices at most.

    Returns
    -------
    width : float [beats]
        A whole number.
    counts : tuple of int
    """
    width = float(max(1.0, np.ceil((end - start) / most)))
    count = max(1, int(np.ceil((end - start) / width)))
    slices: Floats = np.clip((np.asarray(moments) - start) // width, 0, count - 1)
    return width, tuple(np.bincount(slices.astype(np.int64), minlength=count).tolist())


def scenes(edges: Edges) -> list[Spell]:
    """From when to when each scene lasts."""
    return list(pairwise(edges))
