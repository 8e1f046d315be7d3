"""A process made ready for the next edit while nobody waits for it: what that will load is loaded, what lies about is put away.

Results of the last edit wait until then to be written down, for the next process.

The collector of cyclic garbage looks at everything that lives whenever enough is new, some 0.1 s in an open show. What lives
while nothing is done is therefore kept out of its sight (`gc.freeze`) until the process rests again.
"""

import gc

from sequencer import kept


def make_ready() -> None:
    """Load what flights need, and collect garbage; takes a moment, the first time half a second."""
    import scipy.linalg  # noqa: F401  # loaded late elsewhere: an edit may be the first to need it

    from sequencer.motion.flown.compiled import solver
    from sequencer.motion.flown.small_code import small_code

    solver()
    small_code()
    kept.put_away()
    gc.unfreeze()
    gc.collect()
    gc.freeze()
