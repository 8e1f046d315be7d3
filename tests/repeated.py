"""Dear proofs that are repeated: a few times in every run, at length in the long one (`.ci/long`)."""

import pytest

LONG = pytest.mark.long


def at_length(*values):
    """Parameters of a test that stand in the long run only; a tuple is several parameters."""
    return [
        pytest.param(*(value if isinstance(value, tuple) else (value,)), marks=LONG)
        for value in values
    ]


def often(first, *values):
    """How often something drawn is tried: the first number in every run, the others in the long one."""
    return [first, *at_length(*values)]
