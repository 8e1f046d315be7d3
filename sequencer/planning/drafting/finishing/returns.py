"""What returns follows the music: the same moves each time, drawn smaller where the part is softer and larger where it is louder.

It comes after the search, as loud and soft come after the notes: steps, hands, cycles and links stay. A size is taken only where it
passes the checks alone and in both passages beside it, with links that are no longer than before.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from scipy.stats import rankdata

from sequencer.arrays import Floats
from sequencer.planning.drafting.auditioning.candidates import DraftMove, Heard, auditioned
from sequencer.planning.drafting.auditioning.sizes import (
    first_found,
    is_seen,
    keeps_shape,
    sizes_of,
)
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.costing.slot_links import EIGHTS

_WORTH = 0.5  # [1] of cost that a size must save in two eights, or it is not worth knowing two
_FEW = 3  # sizes, and loudnesses, from which it can be said whether one follows the other


def sized_returns(setting: Setting, picks: Sequence[int]) -> tuple[Setting, dict[int, int]]:
    """Sizes for what returns.

    Parameters
    ----------
    setting : Setting
        Of the search.
    picks : sequence of int
        Its routine, of which every passage passed.

    Returns
    -------
    setting : Setting
        The same, with the sizes among its moves, behind all others.
    sized : dict of int to int
        The move of each slot that is drawn in another size than the routine has.
    """
    at = setting.at_slots(picks)
    wider, ways = _with_sizes(setting, picks)
    saved = {
        k: _best(wider, k, at[k], ways[slot.material])
        for k, slot in enumerate(setting.slots)
        if slot.material in ways
    }
    sized = {
        k: move
        for k, (gain, move) in saved.items()
        if gain >= _WORTH * setting.slots[k].beats / EIGHTS
    }
    for k in wider.stranded([sized.get(k, move) for k, move in enumerate(at)]):
        sized.pop(k, None)
    before = {pair: key[2] for pair, key in setting.passage_keys(picks)}
    while sized:
        now = [sized.get(k, move) for k, move in enumerate(at)]
        keys = {pair: key for pair, key in wider.keys_between(now) if sized.keys() & set(pair)}
        new = [key for key in dict.fromkeys(keys.values()) if key not in wider.passed]
        wider.try_all(new)
        failed = [
            pair
            for pair in before
            if sized.keys() & set(pair)
            and (pair not in keys or keys[pair] not in wider.passed or keys[pair][2] > before[pair])
        ]
        if not failed:
            break
        for pair in failed:
            own = sorted(sized.keys() & set(pair), key=lambda k: (saved[k][0], k))
            for k in own[:1]:
                del sized[k]
    return wider, sized


def _with_sizes(setting: Setting, picks: Sequence[int]) -> tuple[Setting, dict[int, list[int]]]:
    """The setting with the moves of what returns in every size, and which moves each such material may have."""
    cast = setting.cast
    moves, heard = list(cast.moves), list(cast.heard)
    ways: dict[int, list[int]] = {}
    for material, uses in setting.uses.items():
        if len(uses) < 2:
            continue
        usual = moves[picks[material]].as_usual
        own = [k for k, slot in enumerate(setting.slots) if slot.material == material]
        able = []
        for move, each in _in_sizes(setting, usual, own):
            if move not in moves:
                moves.append(move)
                heard.append(each)
            if (material, moves.index(move)) not in setting.forbidden:
                able.append(moves.index(move))
        ways[material] = able
    elsewhere = {
        (material, move)
        for material in setting.uses
        for move in range(len(cast.moves), len(moves))
        if move not in ways.get(material, ())
    }
    wider = replace(
        setting,
        cast=replace(cast, moves=tuple(moves), heard=tuple(heard), sizable=()),
        forbidden=setting.forbidden | elsewhere,
        bad=dict(setting.bad),
        passed=set(setting.passed),
    )
    return wider, ways


def _in_sizes(
    setting: Setting, usual: DraftMove, slots: Sequence[int]
) -> list[tuple[DraftMove, Heard]]:
    """A move in the sizes in which everybody can dance it in some slots, and how the first fares; nothing if not in the usual one."""
    ways = sorted({setting.cast.ways[k] for k in slots})
    stages = [own[way].stage for own in setting.cast.laws for way in ways]

    def passing(wave: Sequence[DraftMove]) -> list[Heard | None]:
        rows = [auditioned(wave, stage) for stage in stages]
        return [
            column[0] if all(each.passes for each in column) else None
            for column in zip(*rows, strict=True)
        ]

    (own,) = passing([usual])
    if own is None:
        return []

    def seen(wave: Sequence[DraftMove]) -> list[Heard | None]:
        return [
            each
            if each is not None
            and is_seen(own, each, move.drawn)
            and all(keeps_shape(move, stage) for stage in stages)
            else None
            for move, each in zip(wave, passing(wave), strict=True)
        ]

    return [(usual, own), *first_found(sizes_of(usual, setting.cast.book), seen)]


def _best(setting: Setting, k: int, now: int, ways: Sequence[int]) -> tuple[float, int]:
    """How much a slot's best size saves, and the move."""
    if not ways:
        return 0.0, now
    costs = setting.energy_cost(k)
    move = min(ways, key=lambda each: (costs[each], each))
    return float(costs[now] - costs[move]), move


def follows(loudness: Floats, sizes: Sequence[float]) -> float | None:
    """Rank correlation of loudness and size over the stretches [1]; None where there are too few of either to say.

    Notes
    -----
    Source: C. Spearman's coefficient, its definition: the correlation of mean ranks.
    """
    if len(set(loudness)) < _FEW or len(set(sizes)) < _FEW:
        return None
    return float(np.corrcoef(rankdata(loudness), rankdata(sizes))[0, 1])


def most_by_material(setting: Setting) -> float | None:
    """The largest such correlation if what returns were as large each time, however loud [1].

    Notes
    -----
    Source: of all that is equal within a material, its mean ranks of loudness correlate most with the ranks (least squares); their
    own ranks nearly so.
    """
    ranks = rankdata(setting.loudness)
    own = np.array([slot.material for slot in setting.slots])
    means = np.array([ranks[own == each].mean() for each in own])
    return follows(setting.loudness, [float(each) for each in means])
