"""Links between slots that follow each other: which are left for two moves, what each costs, and what was found against them."""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import islice, pairwise, product, zip_longest
from math import inf

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.planning.drafting.auditioning import in_place
from sequencer.planning.drafting.auditioning.cast_moves import Cast
from sequencer.planning.drafting.auditioning.flights import grounded
from sequencer.planning.drafting.auditioning.from_rest import EdgeDance, stranded
from sequencer.planning.drafting.auditioning.in_place import MoveInPlace, sways
from sequencer.planning.drafting.auditioning.passages import (
    LINK_LENGTHS,
    MovePassage,
    joining,
    tried,
)
from sequencer.planning.drafting.costing.trial_record import TrialRecord
from sequencer.planning.drafting.costing.weights import Weights
from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.show.file_records.wishes import Wishes
from sequencer.timing.tempo import TempoMap

EIGHTS = 16.0  # [beats] of two eights, for which weights are stated
_TOO_QUICK = (
    0.55  # [s] of a link: of those with a poi hardly one in twenty flies, so they are not tried
)
MOST_FLIGHTS = 500  # passages that are flown for one draft; the rest are only drawn, and the check of the whole tells
_MOST_EARLY = 3  # [beats] by which a move ends early to be led to rest
_MOST_OF_A_PAIR = (
    6  # links of so many beats between two patterns, all failed: then no others are tried
)
_MOST_TRYING = 3  # performers who try a link, in turn: it is rarely another who cannot fly it
_NONE = max(LINK_LENGTHS) + 1  # in a table of beats: no link is left
_LOST = 2.0  # [1] what it costs about to dance something else, as no link is left
SEEN = 12.0  # [beats] that a hard move needs to be seen

# move, beats, link, move; the way of each, and the tempos on the way, see `SlotLinks.ways`
PassageKey = tuple[int, float, int, int, int, int, int]


@dataclass(kw_only=True)
class SlotLinks:
    """The slots of a draft, and the links that are left between their moves."""

    slots: tuple[Slot, ...]
    cast: Cast
    wishes: Wishes
    weights: Weights = field(default_factory=Weights)
    bad: dict[PassageKey, str] = field(default_factory=dict)  # what was found against a passage
    passed: set[PassageKey] = field(default_factory=set)
    flights: int = MOST_FLIGHTS  # passages that may still be flown
    tempo: TempoMap | None = None  # of the song, where moves are flown in their places
    # slots beside a rest: whether it is before, and whether it is behind
    beside_rest: tuple[tuple[int, bool, bool], ...] = ()
    # performers in the order in which they try before any could not dance something; empty: as in the cast
    first: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        self.count = len(self.cast.moves)
        self.patterns = [move.pattern for move in self.cast.moves]
        self.neighbours = [
            (a, b)
            for a, b in pairwise(range(len(self.slots)))
            if self.slots[a].end == self.slots[b].start and self._goes_on(a, b)
        ]
        self.exits = self._exits()
        self._joins: dict[tuple[int, int, int], Bools] = {}
        self._edges: dict[tuple[int, int], tuple[bool, int | None]] = {}
        self._in_place: dict[tuple[int, int], bool] = {}
        self._swaying = self._most_swaying()
        self._given_up: set[tuple[str, int, str]] = set()  # patterns, and beats of a link
        self._refused = Counter[int]()  # what each could not dance
        self._record = TrialRecord(self.cast.moves)
        self._looked_at = (-1, -1)  # how many of what is bad, and has passed, the tables are of
        self._failed: dict[tuple[float, ...], set[tuple[int, int]]] = {}
        self._clear: dict[tuple[float, ...], set[tuple[int, int, int]]] = {}
        self._lengths: dict[tuple[object, ...], Ints] = {}
        self._link_costs: dict[tuple[float, int, float], Mapping[int, float]] = {}

    def _most_swaying(self) -> list[int]:
        """The slots in which the beat sways, most first."""
        if self.tempo is None:
            return []
        people, tempo = len(self.cast.laws), self.tempo
        spans = {k: (slot.start, slot.end) for k, slot in enumerate(self.slots)}
        some = [k for k, span in spans.items() if sways(tempo, *span, people=people)]
        return sorted(some, key=lambda k: tempo.slowest(*spans[k]) / tempo.fastest(*spans[k]))

    def _goes_on(self, a: int, b: int) -> bool:
        """Whether anybody dances in both of two slots."""
        ways = self.cast.ways[a], self.cast.ways[b]
        return not self.cast.laws or any(
            all(laws[way].dances for way in ways) for laws in self.cast.laws
        )

    def _exits(self) -> frozenset[int]:
        """Last slots of sections that return: they end in a link wherever they lead, so that the section is one phrase."""
        labels: dict[str, set[str]] = {}
        for slot in self.slots:
            labels.setdefault(slot.label, set()).add(slot.section)
        ends = {slot.section: k for k, slot in enumerate(self.slots)}
        if self.wishes.returns == "free":
            return frozenset()
        return frozenset(k for name, k in ends.items() if len(labels[self.slots[k].label]) > 1)

    def ways(self, a: int, b: int) -> tuple[int, int, int]:
        """How two slots are danced: at which tempos and who is mirrored, in the one and the other; and the tempos between."""
        passing = self.cast.passing[a] if self.cast.passing else 0
        return self.cast.ways[a], self.cast.ways[b], passing

    def joins(self, a: int, b: int) -> Bools:
        """Which moves in one slot join which in the next without a link, for everybody."""
        key = (self.slots[a].beats, *self.ways(a, b)[:2])
        if key not in self._joins:
            beats, first, second = key
            each = [
                joining(laws[first], laws[second], self.cast.moves, float(beats))
                for laws in self.cast.laws
                if laws[first].dances and laws[second].dances
            ]
            self._joins[key] = np.logical_and.reduce(each)
        return self._joins[key]

    def link_costs(self, a: int) -> Mapping[int, float]:
        """What links of each length out of a slot cost, best first."""
        key = min(self.slots[a].beats, EIGHTS), self.cast.ways[a], self.weights.links
        if key not in self._link_costs:
            self._link_costs[key] = self._new_link_costs(*key)
        return self._link_costs[key]

    def _new_link_costs(self, beats: float, way: int, weight: float) -> dict[int, float]:
        ideal = 2 if beats > SEEN else 1
        if self.cast.material.level <= 1 and beats >= EIGHTS:
            ideal = 3
        shortest = self._shortest(way)
        costs = {
            n: weight * (0.4 + 0.3 * n + 0.35 * abs(n - ideal) + 4.0 * max(0.0, n / beats - 0.2))
            for n in LINK_LENGTHS
            if beats - n >= 4 and n >= shortest
        }
        return dict(sorted(costs.items(), key=lambda each: each[1]))

    def _shortest(self, way: int) -> float:
        """The shortest link that is tried where moves are danced in one way [beats]."""
        stages = [laws[way].stage for laws in self.cast.laws]
        if not any(prop.flexible for stage in stages for prop in stage.props.values()):
            return 0.0
        return min(_TOO_QUICK * max(stage.tempo) / 60.0 for stage in stages)

    def early(self, k: int) -> int:
        """Beats by which the last block of a section that returns ends where it leads on to nothing."""
        return next(iter(self.link_costs(k)), 0) if k in self.exits else 0

    def _may_join(self, a: int, b: int) -> Bools:
        """Which moves in two slots may pass into each other without a link: none out of what returns, unless it goes on as it is."""
        if a not in self.exits:
            return np.ones((self.count, self.count), dtype=np.bool_)
        returns = self.slots[a].material == self.slots[b].material
        return np.asarray(np.eye(self.count, dtype=np.bool_) & returns)

    def passable(self, picks: Sequence[int]) -> bool:
        """Whether some link is left between any two moves of a routine."""
        return all(
            self.link(a, b, picks[self.slots[a].material], picks[self.slots[b].material])
            is not None
            for a, b in self.neighbours
        )

    def link_table(self, a: int, b: int) -> Floats:
        """What the link between each pair of moves in two slots costs, (n, n) [1]; inf where none is left."""
        costs = np.full(max(LINK_LENGTHS) + 2, inf)
        costs[0] = 0.0
        for n, cost in self.link_costs(a).items():
            costs[n] = cost
        return np.asarray(costs[self._link_lengths(a, b)])

    def doubts(self, a: int, b: int) -> Floats:
        """What links that nobody tried yet are expected to cost besides, as they may fail, (n, n) [1].

        It is no part of a routine's cost: it keeps a search near links that are known to pass.
        """
        lengths, costs = self._link_lengths(a, b), self.link_costs(a)
        out: Floats = np.zeros(lengths.shape)
        options = [0, *costs]
        for n, longer in zip_longest(options, options[1:]):
            least = costs.get(n, 0.0)
            more = self.weights.links * _LOST if longer is None else costs[longer] - least
            mask = lengths == n
            out[mask] = (more * self._record.links_fail(n))[mask]
        for first, second, n in self._clear.get((self.slots[a].beats, *self.ways(a, b)), ()):
            if lengths[first, second] == n:
                out[first, second] = 0.0
        return out

    def _link_lengths(self, a: int, b: int) -> Ints:
        """The link that is left between each pair of moves in two slots, as `link` gives it, (n, n) [beats]; `_NONE` for none."""
        if self._looked_at != (len(self.bad), len(self.passed)):
            self._look_again()
        one, other = self.slots[a], self.slots[b]
        same = one.material == other.material
        key = one.beats, self.ways(a, b), a in self.exits, same
        if key not in self._lengths:
            self._lengths[key] = self._new_link_lengths(a, b)
        return self._lengths[key]

    def _look_again(self) -> None:
        """Takes up what was tried since."""
        self._looked_at = len(self.bad), len(self.passed)
        self._lengths, self._failed, self._clear = {}, {}, {}
        for first, beats, link, second, *ways in self.bad:
            self._failed.setdefault((beats + link, *ways), set()).add((first, second))
        for first, beats, link, second, *ways in self.passed:
            self._clear.setdefault((beats + link, *ways), set()).add((first, second, link))

    def _new_link_lengths(self, a: int, b: int) -> Ints:
        usual = next(iter(self.link_costs(a)), _NONE)
        lengths = np.where(self.joins(a, b) & self._may_join(a, b), 0, usual)
        failed = set(self._failed.get((self.slots[a].beats, *self.ways(a, b)), ()))
        names = np.array(self.patterns)
        for one, _, other in self._given_up:
            failed |= set(product(*(np.flatnonzero(names == n).tolist() for n in (one, other))))
        for first, second in failed:
            link = self.link(a, b, first, second)
            lengths[first, second] = _NONE if link is None else link
        return np.asarray(lengths)

    def link(self, a: int, b: int, first: int, second: int) -> int | None:
        """The link between two moves in two slots [beats], 0 if they join; None if nothing is left."""
        beats, ways = self.slots[a].beats, self.ways(a, b)
        returns = first == second and self.slots[a].material == self.slots[b].material
        may = (a not in self.exits or returns) and self.joins(a, b)[first, second]
        options = [0] if may else []
        options += self.link_costs(a)
        for n in options:
            given_up = (self.patterns[first], n, self.patterns[second]) in self._given_up
            if not given_up and (first, float(beats - n), n, second, *ways) not in self.bad:
                return n
        return None

    def passage_keys(self, picks: Sequence[int]) -> Iterator[tuple[tuple[int, int], PassageKey]]:
        """The passages of a routine: the slots, and what passes into what."""
        return self.keys_between(self.at_slots(picks))

    def at_slots(self, picks: Sequence[int]) -> list[int]:
        """The move of each slot, of a routine that has one for each material."""
        return [picks[slot.material] for slot in self.slots]

    def keys_between(self, at: Sequence[int]) -> Iterator[tuple[tuple[int, int], PassageKey]]:
        """The passages between moves, one for each slot: the slots, and what passes into what."""
        for a, b in self.neighbours:
            first, second = at[a], at[b]
            link = self.link(a, b, first, second)
            if link is not None:
                beats = float(self.slots[a].beats - link)
                yield (a, b), (first, beats, link, second, *self.ways(a, b))

    def linked(self, picks: Sequence[int]) -> float:
        """The share of the time that a routine spends in links [1]."""
        links = sum(key[2] for _, key in self.passage_keys(picks))
        return links / max(sum(slot.beats for slot in self.slots), 1)

    def alike_keys(self, picks: Sequence[int]) -> Iterator[PassageKey]:
        """The passages of the same patterns, otherwise danced, where a routine has no link left."""
        for a, b in self.neighbours:
            one, other = (picks[self.slots[k].material] for k in (a, b))
            if self.link(a, b, one, other) is not None:
                continue
            for first in range(self.count):
                for second in range(self.count):
                    pair = self.patterns[first], self.patterns[second]
                    if pair != (self.patterns[one], self.patterns[other]):
                        continue
                    link = self.link(a, b, first, second)
                    if link is not None:
                        beats = float(self.slots[a].beats - link)
                        yield first, beats, link, second, *self.ways(a, b)

    def most_doubtful(self, keys: Sequence[PassageKey]) -> list[PassageKey]:
        """Passages in the order in which they are expected to fail, the likeliest first."""
        likely = {n: self._record.links_fail(n) for n in {key[2] for key in keys}}
        return sorted(keys, key=lambda key: -likely[key[2]][key[0], key[3]])

    def try_all(self, keys: Sequence[PassageKey]) -> bool:
        """Try some passages and keep what was found; whether any fails."""
        found = self.tried(keys)
        for (first, _, link, second, *_), why in zip(keys, found, strict=True):
            self._record.add_link(first, link, second, failed=bool(why))
            if link and self._record.never_passed(first, link, second) >= _MOST_OF_A_PAIR:
                self._given_up.add((self.patterns[first], link, self.patterns[second]))
        self.bad.update((key, why) for key, why in zip(keys, found, strict=True) if why)
        self.passed.update(key for key, why in zip(keys, found, strict=True) if not why)
        return any(found)

    def tried(self, keys: Sequence[PassageKey]) -> list[str]:
        """What is held against each of some passages by those who try them: in a large group some, and the check of the whole tells of the others."""
        said = [""] * len(keys)
        moves = self.cast.moves
        fly, self.flights = self.flights > 0, self.flights - len(keys)
        for ways in dict.fromkeys(key[4:] for key in keys):
            own = {
                k: MovePassage(before=moves[key[0]], beats=key[1], link=key[2], after=moves[key[3]])
                for k, key in enumerate(keys)
                if key[4:] == ways
            }
            earlier, later, passing = ways
            tempos = self.cast.tempos[passing] if self.cast.tempos else None
            both = (n for n in self._in_turn() if self._dances(n, earlier, later))
            for n in islice(both, _MOST_TRYING):
                left = [k for k in own if not said[k]]
                if not left:
                    break
                first, second = self.cast.laws[n][earlier], self.cast.laws[n][later]
                found = tried([own[k] for k in left], first, second, tempos, fly=fly)
                for k, why in zip(left, found, strict=True):
                    said[k] = why
                self._refused[n] += sum(map(bool, found))
        return said

    def _dances(self, n: int, *ways: int) -> bool:
        return all(self.cast.laws[n][way].dances for way in ways)

    def _in_turn(self) -> list[int]:
        """Performers in the order in which they try: whoever could not dance most so far first, since what one cannot dance nobody else tries."""
        order = self.first or range(len(self.cast.laws))
        return sorted(order, key=lambda n: -self._refused[n])

    def could_not(self, who: Collection[str]) -> None:
        """Takes up who could not dance what the others could."""
        for n, laws in enumerate(self.cast.laws):
            self._refused[n] += laws[0].stage.record.name in who

    def ended_early(self, k: int, move: int) -> int:
        """Beats by which a move ends early in a slot where it leads on to nothing: at the first from which all fly it to rest."""
        early = self.early(k)
        ends = any(ends for slot, _, ends in self.beside_rest if slot == k)
        found = self._edge(k, move)[1] if ends else early
        return early if found is None else found

    def stranded(self, at: Sequence[int]) -> set[int]:
        """The slots whose move somebody cannot fly out of the rest before it, or into the rest behind; `at` is the move of each."""
        return {
            k
            for k, begins, ends in self.beside_rest
            if (begins and not self._edge(k, at[k])[0])
            or (ends and self._edge(k, at[k])[1] is None)
        }

    def doubts_beside_rest(self, k: int) -> Floats:
        """What each move that was not tried yet beside the rest at a slot is expected to cost besides, see `doubts`, (n,) [1]."""
        out: Floats = np.zeros(self.count)
        for slot, begins, ends in self.beside_rest:
            if slot == k:
                likely = begins * self._record.edges_fail(begins=True)
                out += _LOST * (likely + ends * self._record.edges_fail(begins=False))
        out[[move for slot, move in self._edges if slot == k]] = 0.0
        return out

    def _edge(self, k: int, move: int) -> tuple[bool, int | None]:
        """Whether a move is flown from rest in a slot, and how many beats early it ends to be flown to rest; None if never."""
        if (k, move) not in self._edges:
            _, begins, ends = next(each for each in self.beside_rest if each[0] == k)
            early, beats = self.early(k), self.slots[k].beats
            leaves = range(early, min(early + _MOST_EARLY, beats - 4) + 1)
            starts = not begins or self._flies_beside_rest(k, move, beats, begins=True)
            stops: int | None = early
            if ends:
                flown = (
                    n for n in leaves if self._flies_beside_rest(k, move, beats - n, begins=False)
                )
                stops = next(flown, None)
            if begins:
                self._record.add_edge(move, begins=True, failed=not starts)
            if ends:
                self._record.add_edge(move, begins=False, failed=stops is None)
            self._edges[k, move] = starts, stops
        return self._edges[k, move]

    def _flies_beside_rest(self, k: int, move: int, beats: int, *, begins: bool) -> bool:
        dance = EdgeDance(move=self.cast.moves[move], beats=float(beats), begins=begins)
        way = self.cast.ways[k]
        beside = (k - 1, k) if begins else (k, k + 1)
        other = None
        if beside in self.neighbours:  # then only of those who are off in the other slot
            other = self.cast.ways[beside[0] if begins else beside[1]]
        for n in self._in_turn():
            laws = self.cast.laws[n]
            dances = laws[way].dances and (other is None or not laws[other].dances)
            if dances and stranded([dance], laws[way])[0]:
                self._refused[n] += 1
                return False
        return True

    def strained(self, picks: Sequence[int]) -> set[tuple[int, int]]:
        """The moves of a routine that strain a hand where the beat sways, each danced alone in its place, as (material, move).

        Everybody tries them, whoever could not dance most so far first, until one is strained, as the check of the whole, which tells of the
        others, takes many times as long as one try. Where the beat sways only so much that in a group one may be strained, one tries.
        """
        out = set[tuple[int, int]]()
        for k in self._swaying:
            own = self.slots[k].material, picks[self.slots[k].material]
            if own not in out and self._strains(k, own[1]):
                out.add(own)
        return out

    def _strains(self, k: int, move: int) -> bool:
        if (k, move) not in self._in_place and self.tempo is not None:
            slot, way = self.slots[k], self.cast.ways[k]
            end = slot.end - next(iter(self.link_costs(k)), 0)
            dance = MoveInPlace(move=self.cast.moves[move], start=slot.start, end=end)
            self._in_place[k, move] = False
            some = None if sways(self.tempo, slot.start, slot.end) else 1
            for n in islice((n for n in self._in_turn() if self._dances(n, way)), some):
                if in_place.strained([dance], self.cast.laws[n][way], self.tempo)[0]:
                    self._in_place[k, move] = True
                    self._refused[n] += 1
                    break
        return self._in_place.get((k, move), False)

    def grounded(self, picks: Sequence[int]) -> set[tuple[int, int]]:
        """The moves of a routine that somebody cannot fly where they are danced, as (material, move)."""
        wanted: dict[int, dict[int, set[int]]] = {}  # by way and by move, the materials
        for way, slot in zip(self.cast.ways, self.slots, strict=True):
            wanted.setdefault(way, {}).setdefault(picks[slot.material], set()).add(slot.material)
        out: set[tuple[int, int]] = set()
        for way, moves in wanted.items():
            for n in self._in_turn():
                own = self.cast.laws[n][way]
                left = {
                    k: all_of for k, all_of in moves.items() if not out & {(m, k) for m in all_of}
                }
                if not (own.dances and left):
                    continue
                said = grounded([self.cast.moves[k] for k in left], own.stage)
                self._refused[n] += sum(map(bool, said))
                out |= {
                    (material, k)
                    for (k, materials), why in zip(left.items(), said, strict=True) if why
                    for material in materials
                }  # fmt: skip
        return out
