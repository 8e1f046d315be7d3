"""A boundary between two blocks of one hand, which can be rebuilt with other parameters."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from sequencer.geometry.bodies import Side
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import Pattern, find
from sequencer.motion.trajectories.joining import Tolerances, Verdict, gap_between, judge
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits

Builder = Callable[[Mapping[str, Any], float], Law]  # parameters and cycle → the hand's law


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BlockPart:
    """One hand's part of a block, and how to build it with other parameters."""

    name: str  # of the pattern
    parameters: Mapping[str, Any]
    cycle: float  # [beats] of one hand cycle
    beats: float  # duration of the block
    build: Builder
    side: Side = "right"  # side of the pattern that the hand dances
    book: Mapping[str, Pattern] | None = None

    @property
    def law(self) -> Law:
        """The state as in the show."""
        return self.build(self.parameters, self.cycle)

    def end(self, parameters: Mapping[str, Any] | None = None, extra: float = 0.0) -> Motion:
        """State at its end, with other parameters or some beats later."""
        law = self.build(self.parameters if parameters is None else parameters, self.cycle)
        return law.at(np.array(self.beats + extra))

    def start(self, parameters: Mapping[str, Any] | None = None) -> Motion:
        """State at its start."""
        law = self.build(self.parameters if parameters is None else parameters, self.cycle)
        return law.at(np.zeros(()))

    @property
    def values(self) -> dict[str, Any]:
        """All values of its law."""
        return find(self.name, self.book).values(self.parameters, self.side)

    @property
    def kind(self) -> str:
        """Name of its kind of law."""
        return find(self.name, self.book).hand(self.side).kind.name

    def open(self, parameter: str) -> bool:
        """Whether the pattern leaves a parameter open."""
        return any(p.name == parameter for p in find(self.name, self.book).parameters)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Boundary:
    """Two consecutive parts of one hand, and the part before them."""

    before: BlockPart
    after: BlockPart
    space: HandSpace
    # the end of the block before `before`, if that follows directly; few ask for it
    earlier: Callable[[], Motion] | None = None
    tolerances: Tolerances = field(default_factory=Tolerances)
    limits: LinkLimits = field(default_factory=LinkLimits)

    def verdict(self) -> Verdict:
        """The boundary as in the show."""
        return judge(
            self.before.end(), self.after.law, space=self.space, tolerances=self.tolerances,
            limits=self.limits,
        )  # fmt: skip

    def joins(self, first: Motion, last: Motion) -> bool:
        """Whether two states join."""
        return bool(gap_between(first, last, self.space.length).within(self.tolerances))

    def starts(self, parameters: Mapping[str, Any]) -> bool:
        """Whether `before` still joins the previous block with other parameters."""
        return self.earlier is None or self.joins(self.earlier(), self.before.start(parameters))
