"""Where nothing can be danced, as the search and the checks of the whole find it, so that something must stay open there."""

from collections import Counter
from collections.abc import Collection, Sequence

from sequencer.checks.dance import as_flown, feasible
from sequencer.findings import Finding
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.finishing.cuts import slots_beside
from sequencer.planning.drafting.gaps.skipped import (
    OFF_TEMPO,
    Jump,
    Skipped,
    around_jump,
    in_slot,
    jumps_of,
    off_tempo,
    skipped_for,
)
from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.staging.staged import Staged
from sequencer.timing.tempo import TempoMap

_MOST_AT_JUMP = 3  # routines at fault where the count jumps, before it is not danced over
_MOST_BESIDE = 2  # of them, where it is not danced over at another jump
_MOST_AT_LAST = 4  # times that something is left open although it may still be possible
_OF_THE_DANCE = frozenset(feasible.CHECK.codes) | frozenset(as_flown.CHECK.codes)


class Hopeless:
    """Where nothing can be danced over a song's count.

    A jump of the count is danced over as long as that may be possible: until nothing is left that could be danced there, or several
    routines were at fault there. Where one jump is left open, so is each that is about as bad: it would only come next.

    Parameters
    ----------
    tempo : TempoMap
        Of the song.
    """

    def __init__(self, tempo: TempoMap) -> None:
        self._tempo = tempo
        self._jumps = jumps_of(tempo)
        self._faults = Counter[Jump]()  # routines that were at fault there
        self._at_last = 0  # times
        self._alike = set[
            tuple[int, int]
        ]()  # stretches beside which one was open that is danced alike

    def in_search(self, setting: Setting) -> list[Skipped]:
        """What must stay open, since there nothing is left to be danced in a search.

        Only where that is because of how it is danced: what is forbidden because of places, people or fire stands in the way of a
        routine, and no gap in it would help. Where no link is left between two stretches, only if one of them is far from the tempo of
        the song.

        Parameters
        ----------
        setting : Setting
            With what was forbidden.
        """
        found: list[Skipped] = []
        for material in setting.without_moves():
            codes = {why for piece, _, why in setting.faulted if piece == material}
            if codes <= _OF_THE_DANCE:
                found += self._of_those_alike(setting.uses[material])
        for a, b in setting.without_links():
            found += self._of_those_far_off([setting.slots[a], setting.slots[b]])
        return list(dict.fromkeys(found))

    def in_routine(
        self, setting: Setting, show: Staged, faults: Sequence[Finding]
    ) -> list[Skipped]:
        """What must stay open, as a routine was at fault: where nothing else is left, and where the count jumps and others were too.

        Parameters
        ----------
        setting : Setting
        show : Staged
            With the routine.
        faults : sequence of Finding
        """
        of_flight = [each for each in faults if each.code in as_flown.CHECK.codes]
        at = slots_beside(of_flight, show, setting.slots, by=0)
        own = [jump for jump in self._jumps if any(in_slot(jump, setting.slots[k]) for k in at)]
        self._faults.update(own)
        if any(self._faults[jump] >= _MOST_AT_JUMP for jump in own):
            bad = [jump for jump in self._jumps if self._faults[jump] >= _MOST_BESIDE]
            return [around_jump(jump, self._tempo) for jump in bad]
        return self.in_search(setting) if at else []

    def at_last(
        self, setting: Setting, show: Staged, faults: Sequence[Finding], besides: Collection[int]
    ) -> list[Skipped]:
        """What is left open where routine after routine was at fault, and the last one is: of stretches beside each other the one farthest from the song's tempo.

        Parameters
        ----------
        setting : Setting
        show : Staged
            With the routine.
        faults : sequence of Finding
            All of its flight.
        besides : collection of int
            Slots at whose faults a gap would not help.
        """
        if self._at_last == _MOST_AT_LAST:
            return []
        at = sorted(slots_beside(faults, show, setting.slots, by=0) - set(besides))
        runs: list[list[Slot]] = []
        for before, k in zip([None, *at], at, strict=False):
            if before is None or before + 1 < k:
                runs.append([])
            runs[-1] += [slot for slot in setting.slots[k : k + 2] if slot not in runs[-1]]
        found = [each for run in runs for each in self._of_those_far_off(run)]
        self._at_last += bool(found)
        return found

    def _of_those_alike(self, some: Sequence[Slot]) -> list[Skipped]:
        """What is left open of stretches in which nothing is left; all of them, where one of them was not enough before."""
        spans = {(slot.start, slot.end) for slot in some}
        one_helps = not spans & self._alike
        self._alike |= spans
        return skipped_for(some, self._tempo, self._jumps, one_helps=one_helps)

    def _of_those_far_off(self, some: Sequence[Slot]) -> list[Skipped]:
        far = [slot for slot in some if off_tempo(slot, self._tempo) >= OFF_TEMPO]
        return skipped_for(far, self._tempo, self._jumps)
