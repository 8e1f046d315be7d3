"""When the entries of a timeline begin."""

from sequencer.staging.entries.moments import Moments
from sequencer.staging.staged import Staged


def entry_starts(show: Staged) -> dict[int, float]:
    """When each entry of the timeline begins [beats]; one that follows another, as the other."""
    read = show.read
    if read is None:
        return {}
    moments = Moments(read, show.song, show.tempo)
    begins: dict[int, float] = {}
    at = 0.0
    for k, entry in enumerate(read.show.timeline):
        if entry.start is not None:
            at = moments.beat(entry.start, ("timeline", k, "from"))
        begins[k] = at
    return begins
