"""Portable code is used only if it is that of the kernel's source."""

import gzip

import pytest

from sequencer.motion.flown import compiled


def test_portable_code_of_another_kernel_is_refused(monkeypatch):
    """A stale file would fly by other formulas than those that are read: numba compiles the source instead."""
    other = gzip.compress(
        gzip.decompress(compiled.packed()).replace(compiled.source_digest().encode(), b"0" * 64)
    )
    with pytest.raises(RuntimeError, match="not of this kernel"):
        compiled._from_portable(other)
    monkeypatch.setattr(compiled, "_by_numba", lambda: "compiled anew")
    assert compiled.made_from(other) == "compiled anew"
    assert compiled.made_from(compiled.packed()) != "compiled anew"
