"""A check from nothing: neither memory nor disk knows any result."""

from contextlib import contextmanager

import pytest

from sequencer import content_keys, kept
from sequencer.motion.fitting import kept_fits, search
from sequencer.motion.flown import optimum
from sequencer.motion.trajectories.flown_path import flown_links


class _Nothing:
    """A store that keeps nothing."""

    def get(self, _key):
        return None

    text = get

    def texts(self, _keys):
        return {}

    def put(self, _key, _record):
        pass


@contextmanager
def nothing_kept():
    """A context in which every result is computed."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(kept, "_STORE", _Nothing())
        patch.setattr(kept, "_MEMORY", type(kept._MEMORY)())
        patch.setattr(kept, "_RECENT", {})
        patch.setattr(content_keys, "_DIGESTS", {})
        patch.setattr(search, "_KEPT", {})
        patch.setattr(optimum, "_FRAMES", {})
        patch.setattr(flown_links, "_FLEW", {})
        patch.setattr(kept_fits, "load", lambda _question: None)
        yield
