"""What to rehearse first: what takes most off the chance that any two come too close in a run.

Each error on which a likely conflict hangs, taken away in the whole show; of each performer the cues that do harm when they
are missed. Where an error's absence makes a conflict likelier, or no error makes much of it, no rehearsal helps: the plan is
to be mended.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.checks.distances.conflict_groups import ConflictGroup, Dances
from sequencer.checks.distances.missed_cues import Slip
from sequencer.checks.distances.removed_everywhere import Removal

REHEARSED = {
    "place": "hitting the places",
    "facing": "the facings",
    "timing": "starting on the count",
    "tempo": "keeping the tempo",
    "tether": "tethers of the same length",
    "hand": "the hands' paths",
}
EXACT = {
    "place": "places hit exactly",
    "facing": "facings held exactly",
    "timing": "everybody exactly on the count",
    "tempo": "everybody in the same tempo",
    "tether": "tethers exactly as planned",
    "hand": "hands exactly on their paths",
}


_ROUNDING = 1e-9  # of a run


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """One thing to rehearse or to mend, and by how much it lowers the chance that any two come too close in a run."""

    beat: float  # [beats]
    who: tuple[str, ...]
    kind: str  # kind of error; empty: cues to be known, or a plan to be mended
    fall: float
    mend: bool = False
    slips: tuple[Slip, ...] = ()  # of the cues to be known, the worst first
    more: int = 0  # more conflicts that hang on it, but for that at the beat


def must_mend(one: ConflictGroup) -> bool:
    """Whether the plan brings two together: an error's absence makes it likelier, or none makes it less likely."""
    known = bool(one.removed.kinds)
    return known and bool(one.removed.raises or not one.removed.matters)


def any_share(dances: Dances) -> float:
    """Share of the runs in which anything happened."""
    return sum(bool(run) for run in dances.runs) / len(dances.runs)


def goes_wrong(chance: float, missed: float, slips: Sequence[Slip]) -> float:
    """Chance that any two come too close in a run: small errors, or a cue that somebody misses.

    Parameters
    ----------
    chance : float
        That small errors bring any two too close.
    missed : float
        That a performer misses a cue in a run.
    slips : sequence of Slip
        Every way in which one can be missed, each as likely as another.

    Notes
    -----
    1 − (1 − p)·Π(1 − q·f) over the performers, f being the share of their slips that do harm; small errors and missed
    cues are taken as independent.
    """
    clear = 1 - chance
    for own in _by_performer(slips).values():
        clear *= 1 - missed * sum(bool(slip.meets) for slip in own) / len(own)
    return 1 - clear


def advice(dances: Dances, missed: float, slips: Sequence[Slip]) -> tuple[Advice, ...]:
    """What to rehearse or mend, the most helpful first.

    Parameters
    ----------
    dances : Dances
    missed : float
        Chance that a performer misses a cue in a run.
    slips : sequence of Slip
    """
    chance = any_share(dances)
    before = goes_wrong(chance, missed, slips)
    found = [*_mends(dances, missed, slips), *_rehearsals(dances, missed, slips)]
    for who, own in _by_performer(slips).items():
        harm = sorted((slip for slip in own if slip.meets), key=lambda slip: slip.worst)
        if harm:
            rest = [slip for slip in slips if slip.who != who]
            fall = before - goes_wrong(chance, missed, rest)
            found.append(
                Advice(beat=harm[0].cue, who=(who,), kind="", fall=fall, slips=tuple(harm))
            )
    return tuple(sorted(found, key=lambda each: (-each.fall, each.beat, each.who)))


def worth_telling(found: Sequence[Advice], runs: int) -> tuple[Advice, ...]:
    """Advice that gains what so many runs can tell – one of them or more – and all cues, whose harm is proven anyway.

    Parameters
    ----------
    found : sequence of Advice
    runs : int
        That were danced.
    """
    return tuple(each for each in found if each.slips or gains(each, runs))


def gains(one: Advice, runs: int) -> bool:
    """Whether it takes at least one run of so many off those in which any two come too close."""
    return one.fall * runs >= 1 - _ROUNDING


def _rehearsals(dances: Dances, missed: float, slips: Sequence[Slip]) -> list[Advice]:
    """Errors on which conflicts hang: of those who err most there, and of everybody where that takes more away."""
    before = goes_wrong(any_share(dances), missed, slips)
    hang: dict[Removal, list[ConflictGroup]] = {}
    of_kind: dict[str, list[ConflictGroup]] = {}
    for one in dances.groups:
        kind = one.removed.matters
        if kind and not must_mend(one):
            hang.setdefault(Removal(one.removed.who, (kind,)), []).append(one)
            of_kind.setdefault(kind, []).append(one)
    found = {
        removal: before - goes_wrong(dances.everywhere[removal].chance, missed, slips)
        for removal in hang
    }
    for kind, groups in of_kind.items():
        everybody = next(
            each for each in dances.everywhere if each.kinds == (kind,) and len(each.who) > 1
        )
        fall = before - goes_wrong(dances.everywhere[everybody].chance, missed, slips)
        if all(fall > own for each, own in found.items() if each.kinds == (kind,)):
            hang[everybody], found[everybody] = groups, fall
    return [
        Advice(
            beat=hang[removal][0].start,
            who=removal.who,
            kind=removal.kinds[0],
            fall=fall,
            more=len(hang[removal]) - 1,
        )
        for removal, fall in found.items()
    ]


def _mends(dances: Dances, missed: float, slips: Sequence[Slip]) -> list[Advice]:
    """Pairs whom the plan brings together: what is left if it does so no more, in any of their scenes."""
    before = goes_wrong(any_share(dances), missed, slips)
    found: dict[int, list[ConflictGroup]] = {}
    for one in dances.groups:
        if must_mend(one):
            found.setdefault(one.pair, []).append(one)
    out = list[Advice]()
    for groups in found.values():
        gone = {one.at for one in groups}
        left = sum(any((near.pair, near.scene) not in gone for near in run) for run in dances.runs)
        fall = before - goes_wrong(left / len(dances.runs), missed, slips)
        one = groups[0]
        out.append(
            Advice(
                beat=one.start,
                who=(one.first, one.second),
                kind="",
                fall=fall,
                mend=True,
                more=len(groups) - 1,
            )
        )
    return out


def _by_performer(slips: Sequence[Slip]) -> dict[str, list[Slip]]:
    out: dict[str, list[Slip]] = {}
    for slip in slips:
        out.setdefault(slip.who, []).append(slip)
    return out
