"""What a later process finds: nothing in memory, and on disk what earlier ones kept."""

from contextlib import contextmanager

import pytest

from sequencer import content_keys, kept, kept_store
from sequencer.motion.fitting import search


@contextmanager
def next_process():
    """A context with the memory of a process that has just begun; what it keeps is written when it ends."""
    with pytest.MonkeyPatch.context() as patch:
        store = kept_store.ResultStore(content_keys.code_unchanged)
        patch.setattr(kept, "_STORE", store)
        patch.setattr(kept, "_MEMORY", type(kept._MEMORY)())
        patch.setattr(kept, "_RECENT", {})
        patch.setattr(content_keys, "_DIGESTS", {})
        patch.setattr(search, "_KEPT", {})
        yield
        store.flush()
        store.close()
