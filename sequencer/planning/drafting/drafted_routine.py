"""A drafted routine and what is known about it, what is asked of one, and what is left of one that was interrupted."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from sequencer.findings import Finding
from sequencer.planning.drafting.costing.weights import Weights

THOROUGH = 8000  # effort of a proof, see `choices.best`


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A drafted routine, and what is known about it."""

    text: str  # the show file with it
    cost: float  # [1]
    bound: float  # [1] proven: nothing costs less under these rules
    terms: Mapping[str, float]  # of the cost, see `weights.TERMS`
    rows: tuple[tuple[str, str, str], ...]  # of each stretch: section, bar.beat, move in words
    links: int  # how many
    link_share: float  # [1] of the time
    checked: bool  # whether the checks found it clean
    left: tuple[Finding, ...]  # STOP and WARN that the show has without the routine
    unmet: tuple[str, ...]  # wishes that it leaves out
    unflown: tuple[
        Finding, ...
    ] = ()  # what of it cannot be flown, where no better routine was found in time
    dearer: float = 1.0  # times that links weigh more, since they took too much of the time
    left_open: tuple[str, ...] = ()  # what of the song is not filled, and why
    on_and_off: tuple[str, ...] = ()  # when those dance who come on or go off
    follows: float | None = None  # [1] rank correlation of loudness and size over the stretches
    most: float | None = None  # [1] the largest there can be if what returns is as large each time
    returns: str = "alike"  # as wished
    unseen: int = 0  # moves in their places that were given up unseen, as others of their pattern failed there

    @property
    def gap(self) -> float:
        """How much better another routine could be at most, as a share of the cost [1]."""
        return max(0.0, self.cost - self.bound) / max(abs(self.cost), 1e-9)


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftRequest:
    """What is asked of a draft."""

    section: str | None = None  # only this one
    span: tuple[str, str] | None = None  # only from one moment to another, as the file writes them
    another: bool = False  # the next best that differs in at least a third
    seed: int = 0
    effort: int = THOROUGH  # of the search, see `choices.best`
    weights: Weights = field(default_factory=Weights)


class DraftingStopped(KeyboardInterrupt):
    """Drafting was interrupted; the best routine by then comes with it, not checked."""

    def __init__(self, draft: Draft, *, over_another: bool = False) -> None:
        super().__init__()
        self.over_another = over_another  # drafted before, and checked
        self.draft = draft
        self.written = False  # into the show file
