"""A walk on or off that no routine can make good: it is at fault whatever is danced."""

from sequencer.findings import Finding
from sequencer.planning.drafting.finishing.cuts import Findings
from sequencer.staging.staged import Coming, Staged


def walk_at_fault(
    show: Staged, before: Findings, finding: Finding
) -> tuple[Coming, Finding] | None:
    """The walk behind what was found with a routine, and what is found of it without any; None if it is not one.

    Parameters
    ----------
    show : Staged
        Without the routine.
    before : Findings
        What is found in it.
    finding : Finding
        Found with the routine.
    """
    for known in before.values():
        alike = (known.code, set(known.who)) == (finding.code, set(finding.who))
        if known.severity != "stop" or not alike or known.start is None or finding.start is None:
            continue
        beats = [
            float(show.tempo.beats_from_seconds(each)) for each in (known.start, finding.start)
        ]
        for walk in show.comings:
            if walk.who in known.who and all(walk.start <= beat <= walk.end for beat in beats):
                return walk, known
    return None
