"""How long work says how far it is: a subject, and the share that is done, 0 … 1."""

from collections.abc import Callable
from typing import TypeAlias

Progress: TypeAlias = Callable[[str, float], None]
