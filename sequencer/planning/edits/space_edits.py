"""A change of the show file that may keep two performers apart; those of the floor and of the dance stand in modules of their own.

`planning.space_mends` tries each on the show before offering it. The cost is the size of the change in metres of moved
places; other changes are weighed against those by common practice.
"""

from dataclasses import dataclass
from typing import Any, Literal

from sequencer.show.editing import Change, Insertion
from sequencer.staging.staged import Staged

EditKind = Literal["place", "way", "widen", "turn", "facing", "shift", "canon", "tether", "plane"]
TOUCH = 1e-6  # [beats] by which spans may meet without overlapping


@dataclass(frozen=True, slots=True, kw_only=True)
class SpaceEdit:
    """One change of the show file to keep two performers apart."""

    kind: EditKind
    words: str  # what to do
    cost: float  # [m]
    changes: tuple[Change, ...]
    insertions: tuple[Insertion, ...] = ()

    @property
    def of_trajectories(self) -> bool:
        """Whether it changes what is danced, and not only where."""
        return self.kind in {"shift", "canon", "tether", "plane"}


def file_values(show: Staged) -> Any:
    """What the show's file says.

    Raises
    ------
    ValueError
        If the show is from no file.
    """
    if show.read is None:
        raise ValueError("this show does not remember its file")
    return show.read.document.values
