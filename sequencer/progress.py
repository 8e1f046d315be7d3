"""Progress callback for long work: its subject, and the fraction done, 0 … 1."""

from collections.abc import Callable
from typing import TypeAlias

Progress: TypeAlias = Callable[[str, float], None]
