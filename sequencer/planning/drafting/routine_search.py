"""The search for a routine whose moves and links have all been tried, and the proof of how good it is.

Trials cost more than anything else, so a search walks first: from routine to routine, preferring links that are known to
pass over others that cost about the same, until all that the routine holds has passed. Only then the best routine is
sought as if whatever was not tried passed; nothing costs less than what that proves. Where the two are still apart,
that best routine is tried in its turn, and the walk goes on.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import inf, isfinite

from sequencer.planning.drafting.auditioning.passages import LINK_LENGTHS
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.costing.slot_links import PassageKey
from sequencer.planning.drafting.optimising.choices import (
    BestSearch,
    Choices,
    Chosen,
    Undecided,
    cost_at,
    holding,
    improved,
    nowhere_cheaper,
)
from sequencer.progress import Progress

QUICK = 300  # effort of a first search, see `choices.best`
_CLOSE = 0.005  # [1] of the cost: nobody sees what a routine better by less would bring
_NEAR_ENOUGH = 0.02  # [1] of the cost: by less nothing is sought better once so many passages were tried, which cost most
_MANY_TRIED = 16
_ROUNDED = 0.999  # [1] of a gap: so that rounding leaves none above it
_MOST_BETTER = 48  # routines that would be better, of which each is tried, in one draft
_MOST_WHERE_FAR = 80  # the same where the gap is one that is worth more
_FEW_PEOPLE = 2  # up to whom so many are tried; more people share them
_WALKED_EACH = 3  # of these, after which a walk tries what is likelier to pass
_FAR = 0.05  # [1] of the cost: a gap that is worth more than one effort
_MORE_EFFORTS = 3  # for one draft
_OF_A_HALF = 4  # of an effort, the share that is spent on half of a gap, and on what a whole effort did not decide before
MOST_LINKED = 0.15  # [1] of the time in links; where a routine has more, links become dearer
_DEARER, _MOST_DEARER = 2.0, 3  # times, and how often
_MOST_ROUNDS = 60  # from best to best, where no walk ends
_MOST_WALKS = 120  # from routine to routine until one passes
_FAILURES = 2  # of links in a walk's routine, after which it goes on to another: what fails tells of others too
_STAYING = 0.1  # [1] of the cost that it may cost to leave a routine as it is where nothing was found against it
_MOST_REPAIRS = 48  # routines near one of which something was forbidden that are tried
_MOST_ALIKE = 6  # passages between two patterns, otherwise danced, that are tried where one failed


class RoutineSearch:
    """The search in one setting; what is found to fail is kept there.

    Parameters
    ----------
    setting : Setting
    effort : int
        Of a proof, see `choices.best`.
    seed : int
    found : callable
        Told the best routine so far, whether all of it has passed or not.
    progress : callable
    """

    def __init__(
        self,
        setting: Setting,
        *,
        effort: int,
        seed: int,
        found: Callable[[Chosen], None],
        progress: Progress,
    ) -> None:
        self.setting, self.effort, self.seed = setting, effort, seed
        self._found = found
        self._progress = progress
        # Looks for what is better, again and again, as what it found fails
        self._proof = BestSearch(seed=seed, close=_CLOSE, found=found, progress=progress)
        self._begun = False
        self._made_dearer = 0  # times
        self._tries = 0  # of routines that are better as long as nothing of them fails
        self._more_efforts = _MORE_EFFORTS
        self._wearied = False  # whether a whole effort ended without a proof
        self._bound = -inf  # [1] proven of `_proven_of`, so of all that costs nowhere less
        self._proven_of: Choices | None = None

    @property
    def dearer(self) -> float:
        """How many times as much links weigh by now [1]."""
        return _DEARER**self._made_dearer

    def routine(self, known: Sequence[int] | None) -> Chosen | None:
        """A routine of which all passes, with what is proven of it; None where none was found.

        Parameters
        ----------
        known : sequence of int, optional
            Picks to start from.
        """
        near = self.unproven(known)
        while near is not None:
            chosen = self._proven(near.picks)
            if chosen is None or not self._make_dearer(chosen.picks):
                return chosen
            near = self._walked(self._untried(chosen.picks))
        return None

    def unproven(self, known: Sequence[int] | None) -> Chosen | None:
        """A routine of which all passes, with what was proven before; None where none was found.

        Parameters
        ----------
        known : sequence of int, optional
            Picks to start from.
        """
        return self._walked(known if self._begun else self.first(known))

    def repaired(self, picks: Sequence[int]) -> Chosen | None:
        """A routine of which all passes again, after something of one that did was forbidden; None where none was found.

        What nothing was found against stays, as it was tried, and looked at by the checks of the whole: what was forbidden is chosen
        anew, or that and what is beside it, or all, whichever is the least that costs not much more than the next.

        Parameters
        ----------
        picks : sequence of int
            Of the one that passed.
        """
        return self.mended(picks) or self.unproven(picks)

    def mended(self, picks: Sequence[int], *, below: float = inf) -> Chosen | None:
        """The same, but only near the one that passed, and cheaper than so much [1]; None where none was met, which proves nothing."""
        most = max(MOST_LINKED, self.setting.linked(picks))
        for _ in range(_MOST_REPAIRS):
            near = self._near(picks)
            if near is None or self.setting.linked(near) > most:
                return None
            chosen = self._with_bound(near)
            if chosen.cost >= below:
                return None
            self._found(chosen)
            if not self._fails(near, most=1):
                return self._with_bound(near)
        return None

    def _near(self, picks: Sequence[int]) -> tuple[int, ...] | None:
        """The routine to try next where something of another was forbidden; None where none was met that is possible."""
        choices = self.setting.choices(doubting=True)
        best = improved(choices, picks, seed=self.seed, near=True)
        if best is None:
            return None
        cost = cost_at(choices, best)
        most = cost + _STAYING * abs(cost)
        free = self.setting.unsettled(picks)
        for some in (free, self.setting.with_beside(free)):
            held = improved(holding(choices, picks, some), picks, seed=self.seed, near=True)
            if held is not None and cost_at(choices, held) <= most:
                return held
        return best

    def proven(self, picks: Sequence[int]) -> Chosen | None:
        """A routine of which all passes, no worse than one that does, with what is proven of it; None where nothing is possible any more.

        Parameters
        ----------
        picks : sequence of int
            Of the one that passes.
        """
        chosen = self._proven(picks)
        if chosen is not None and self.setting.linked(chosen.picks) > MOST_LINKED:
            return self._with_bound(picks)  # not for more links than it has
        return chosen

    def allows(self, picks: Sequence[int]) -> bool:
        """Whether nothing of a routine is forbidden by now."""
        return bool(isfinite(cost_at(self.setting.choices(), picks)))

    def _walked(self, picks: Sequence[int] | None) -> Chosen | None:
        """A routine of which all passes, found from another; links become dearer on the way where it has too many."""
        while picks is not None:
            passing = self._passing(picks) or self._passing_by_proof(picks)
            if passing is None:
                return None
            if not self._make_dearer(passing):
                return self._with_bound(passing)
            picks = self._untried(passing)
        return None

    def _untried(self, picks: Sequence[int]) -> tuple[int, ...] | None:
        """The best routine as if all passed that was not tried, which is tried now; None where nothing is possible."""
        chosen = self._best(picks, QUICK)
        if chosen is None:
            return None
        self._fails(chosen.picks)
        return chosen.picks

    def first(self, known: Sequence[int] | None) -> tuple[int, ...] | None:
        """A good routine of which nothing was tried yet; None where nothing is possible.

        Parameters
        ----------
        known : sequence of int, optional
            Picks to start from.
        """
        chosen = self._best(known, QUICK)
        self._begun = True
        return None if chosen is None else chosen.picks

    def _make_dearer(self, picks: Sequence[int]) -> bool:
        """Make links dearer where a routine spends too much of its time in them; whether that was done."""
        setting = self.setting
        if self._made_dearer == _MOST_DEARER or setting.linked(picks) <= MOST_LINKED:
            return False
        setting.weights = replace(setting.weights, links=setting.weights.links * _DEARER)
        self._made_dearer += 1
        return True

    def _passing(self, picks: Sequence[int], *, below: float = inf) -> tuple[int, ...] | None:
        """A good routine near another of which all passes; None where none was met that is cheap enough, which proves nothing."""
        for walks in range(_MOST_WALKS):
            near = improved(
                self.setting.choices(doubting=True), picks, seed=self.seed, near=walks > 0
            )
            if near is None or (below < inf and self._with_bound(near).cost >= below):
                return None
            picks = near
            self._found(self._with_bound(picks))
            if not self._fails(picks, most=_FAILURES):
                return near
        return None

    def _passing_by_proof(self, picks: Sequence[int]) -> tuple[int, ...] | None:
        """The same, from best to best; None where nothing is possible any more, or none passed."""
        for _ in range(_MOST_ROUNDS):
            chosen = self._best(picks, QUICK)
            if chosen is None:
                return None
            picks = chosen.picks
            if not self._fails(picks, alike=True):
                return chosen.picks
        return None

    def _proven(self, picks: Sequence[int]) -> Chosen | None:
        """A routine no worse than one of which all passes, and what is proven; None where nothing is possible any more.

        What is cheaper by half of the gap is sought first, and tried: where nothing is, half of the gap is closed.
        """
        halves = True
        while True:
            own = self._with_bound(picks)
            if own.gap <= self._enough:  # by what was proven before: it holds of what is left
                return own
            worth = own.cost - _ROUNDED * self._enough * abs(own.cost)
            half = 0.5 * (own.cost + own.bound)
            below = half if halves and -inf < half < worth else worth
            effort = self.effort // _OF_A_HALF if below < worth or self._wearied else self.effort
            chosen = self._best(picks, effort, below=below)
            if chosen is None:
                return None
            if chosen.cost >= below:
                if below < worth:
                    halves = self._bound >= below  # or it takes too long
                    continue
                if self._with_bound(picks).gap > _FAR and self._more_efforts:
                    self._more_efforts -= 1
                    continue
                self._wearied = self._wearied or self._bound < below
            own = self._with_bound(picks)
            most = self._most_tries(own.gap)
            if chosen.cost >= worth or own.gap <= self._enough or self._tries >= most:
                self._best(picks, QUICK, below=own.cost)  # often nothing better exists at all
                return self._with_bound(picks)
            self._tries += 1
            if not self._fails(chosen.picks, most=1):
                picks = chosen.picks
            elif self._tries % _WALKED_EACH == 0:
                picks = self._better(picks, self._passing(chosen.picks, below=own.cost))

    def _most_tries(self, gap: float) -> int:
        """How many better routines are tried; of a group fewer, as everybody flies each."""
        most = _MOST_BETTER if gap <= _FAR else _MOST_WHERE_FAR
        return most * _FEW_PEOPLE // max(len(self.setting.cast.laws), _FEW_PEOPLE)

    @property
    def _enough(self) -> float:
        """The gap with which the search is content."""
        tried = len(self.setting.passed) + len(self.setting.bad)
        return _CLOSE if tried < _MANY_TRIED else _NEAR_ENOUGH

    def _better(self, picks: Sequence[int], other: Sequence[int] | None) -> tuple[int, ...]:
        choices = self.setting.choices()
        if other is None or cost_at(choices, picks) <= cost_at(choices, other):
            return tuple(picks)
        return tuple(other)

    def _with_bound(self, picks: Sequence[int]) -> Chosen:
        cost = cost_at(self._choices(), picks)
        return Chosen(picks=tuple(picks), cost=cost, bound=min(self._bound, cost))

    def _choices(self) -> Choices:
        """The tables as they stand; what was proven is forgotten where anything costs less than it did then.

        What fails, and dearer links, only add to costs. But where all that is easy is forbidden in a slot in which somebody
        walks, what is harder may be danced there.
        """
        now = self.setting.choices()
        if self._proven_of is not None and not nowhere_cheaper(self._proven_of, now):
            self._bound = -inf
        self._proven_of = now
        return now

    def _best(
        self, known: Sequence[int] | None, effort: int, *, below: float = inf
    ) -> Chosen | None:
        search = self._proof if below < inf else self._anew()
        try:
            chosen = search.best(self._choices(), effort=effort, known=known, below=below)
        except Undecided:
            return self._best(known, self.effort) if effort < self.effort else None
        if chosen is not None:
            self._bound = max(self._bound, chosen.bound)
            self._found(chosen)
        return chosen

    def _anew(self) -> BestSearch:
        return BestSearch(seed=self.seed, close=_CLOSE, found=self._found, progress=self._progress)

    def _fails(self, picks: Sequence[int], *, alike: bool = False, most: int = 0) -> bool:
        """Try the moves and links of a routine that were not tried yet; whether any fails.

        Parameters
        ----------
        picks : sequence of int
        alike : bool
            Whether, where no link is left between two patterns, it is looked at whether any other way of dancing them has one.
        most : int
            Failures that end it, the most doubtful links tried first, as a routine is of use only as a whole; 0: all are tried.
        """
        setting = self.setting
        grounded, stranded = setting.grounded(picks), setting.stranded_picks(picks)
        if grounded or not stranded <= setting.stranded_moves:
            setting.forbidden |= grounded
            setting.stranded_moves |= stranded
            return True
        strained = setting.strained(picks)
        if not strained <= setting.strained_moves:
            setting.strained_moves |= strained
            return True
        failed = False
        for _ in range(len(LINK_LENGTHS) + 2):  # each turn takes the next link where one failed
            keys = [key for _, key in setting.passage_keys(picks) if key not in setting.passed]
            keys = list(dict.fromkeys(keys))
            if not keys:
                return failed
            failed = self._tried(keys, most) or failed
            if failed and not alike:
                return True  # a walk may know something better than the next link
            if not setting.passable(picks):
                self._try_alike(picks)
                return True
        return failed

    def _tried(self, keys: Sequence[PassageKey], most: int) -> bool:
        """Try some passages, until so many failed; whether any did."""
        if not most:
            return self.setting.try_all(keys)
        failures = 0
        for key in self.setting.most_doubtful(keys):
            failures += self.setting.try_all([key])
            if failures == most:
                break
        return failures > 0

    def _try_alike(self, picks: Sequence[int]) -> None:
        """Where no link leads from one pattern to the next, try it with other hands and cycles too: they mostly fail alike.

        A few are tried, evenly from all; where none of them passes, the others are taken to fail as well.
        """
        setting = self.setting
        for _ in LINK_LENGTHS:
            keys = [key for key in setting.alike_keys(picks) if key not in setting.passed]
            if not keys:
                return
            between: dict[tuple[object, ...], list[PassageKey]] = {}
            for key in dict.fromkeys(keys):
                patterns = setting.patterns[key[0]], setting.patterns[key[3]]
                between.setdefault((patterns, *key[4:]), []).append(key)
            some = {pair: own[:: -(-len(own) // _MOST_ALIKE)] for pair, own in between.items()}
            setting.try_all([key for own in some.values() for key in own])
            for pair, own in some.items():
                if all(key in setting.bad for key in own):
                    setting.bad.update((key, setting.bad[own[0]]) for key in between[pair])
