"""States of laws at single beats: where a span ends, links and blends ask for the same one, and after an edit most are known."""

import numpy as np

from sequencer.kept import recent
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion

_MOST_STATES = 20_000  # that are kept


def known_state(law: Law, beat: float) -> Motion:
    """State of a law at one of its beats, arrays of shape (3,) that nobody changes.

    Parameters
    ----------
    law : Law
    beat : float
    """

    def work() -> tuple[Law, Motion]:
        return law, law.at(np.asarray(beat))  # the law is held, so that its id stays its own

    key = (id(law), beat.hex())  # 0.0 and -0.0 are equal, and not the same
    return recent("states of laws", key, work, most=_MOST_STATES)[1]
