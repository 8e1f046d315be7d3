"""What to rehearse first: what takes most off the chance that anything goes wrong in a run.

Of each likely conflict the error without which it is least likely; of each performer the cues that do harm when they are
missed. Where an error's absence makes a conflict likelier, or no error makes much of it, no rehearsal helps: the plan is to
be mended.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.checks.distances.conflict_groups import ConflictGroup, Dances
from sequencer.checks.distances.missed_cues import Slip

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """One thing to rehearse or to mend, and by how much it lowers the chance that anything goes wrong in a run."""

    beat: float  # [beats]
    who: tuple[str, ...]
    kind: str  # kind of error; empty: cues to be known, or a plan to be mended
    fall: float
    mend: bool = False
    slips: tuple[Slip, ...] = ()  # of the cues to be known, the worst first


def must_mend(one: ConflictGroup) -> bool:
    """Whether the plan brings two together: an error's absence makes it likelier, or none makes it less likely."""
    known = bool(one.removed.kinds)
    return known and bool(one.removed.raises or not one.removed.matters)


def any_share(dances: Dances) -> float:
    """Share of the runs in which anything happened."""
    return sum(bool(run) for run in dances.runs) / len(dances.runs)


def goes_wrong(chance: float, missed: float, slips: Sequence[Slip]) -> float:
    """Chance that anything goes wrong in a run: small errors, or a cue that somebody misses.

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
    found = [_of_group(one, dances) for one in dances.groups if one.removed.kinds]
    clear = 1 - any_share(dances)
    for who, own in _by_performer(slips).items():
        harm = sorted((slip for slip in own if slip.meets), key=lambda slip: slip.worst)
        if harm:
            fall = clear * missed * len(harm) / len(own)
            found.append(
                Advice(beat=harm[0].cue, who=(who,), kind="", fall=fall, slips=tuple(harm))
            )
    return tuple(sorted(found, key=lambda each: (-each.fall, each.beat, each.who)))


def _of_group(one: ConflictGroup, dances: Dances) -> Advice:
    """What to do about one conflict: by how much the chance of any falls, taken from the runs in which only this happened."""
    only = sum(
        1
        for run in one.in_runs
        if all((near.pair, near.scene) == (one.pair, one.scene) for near in dances.runs[run])
    ) / len(dances.runs)
    if must_mend(one):
        return Advice(beat=one.start, who=(one.first, one.second), kind="", fall=only, mend=True)
    kind = one.removed.matters
    fall = (one.share - one.removed.kinds[kind].chance) / one.share
    return Advice(beat=one.start, who=one.removed.who, kind=kind, fall=only * fall)


def _by_performer(slips: Sequence[Slip]) -> dict[str, list[Slip]]:
    out: dict[str, list[Slip]] = {}
    for slip in slips:
        out.setdefault(slip.who, []).append(slip)
    return out
