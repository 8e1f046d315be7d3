"""The vocabulary as a page lists it."""

from collections.abc import Mapping
from typing import Any

from sequencer.staging.staged import Staged


def pattern_list(show: Staged, given: Mapping[str, Any]) -> dict[str, Any]:
    """X"""
    return {"patterns": []}
