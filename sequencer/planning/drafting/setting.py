"""The problem of a draft: slots, candidates and costs as the tables that `choices.best` searches."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import inf

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.motion.patterns.library import Pattern
from sequencer.planning.drafting.candidates import Heard, Move
from sequencer.planning.drafting.choices import Choices, Counting
from sequencer.planning.drafting.passages import LENGTHS, Laws, Passage, joining
from sequencer.planning.drafting.repertoire import Material
from sequencer.planning.drafting.slots import Slot, occurrences
from sequencer.planning.drafting.weights import TOO_SOON, Weights
from sequencer.show.wishes import Wishes, meant_by

EIGHTS = 16.0  # [beats] of two eights, for which weights are stated
SOON = 16  # [beats] within which a pattern does not come again, unless the part returns
HARD = 4  # difficulty after which a rest is welcome
CALM = 0.4  # rank of loudness below which music counts as calm


@dataclass(frozen=True, kw_only=True)
class Cast:
    """What one performer, or a group together, may dance: moves that passed their auditions."""

    moves: tuple[Move, ...]
    heard: tuple[Heard, ...]
    laws: tuple[Laws, ...]  # of each performer, at the tempos of the song
    material: Material
    book: Mapping[str, Pattern]


@dataclass(kw_only=True)
class Setting:
    """A draft that is being searched; what was found to fail is kept in it."""

    slots: tuple[Slot, ...]
    loudness: Floats  # rank of each slot, 0 … 1, as wished
    cast: Cast
    wishes: Wishes
    weights: Weights = field(default_factory=Weights)
    walked: frozenset[int] = frozenset()  # slots in which somebody walks
    forbidden: set[tuple[int, int]] = field(default_factory=set)  # (material, move)
    bad: dict[tuple[int, float, int, int], str] = field(default_factory=dict)  # (move, beats, link, move)
    passed: set[tuple[int, float, int, int]] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.uses = occurrences(self.slots)
        self.count = len(self.cast.moves)
        self.neighbours = [
            (a, b)
            for a, b in pairwise(range(len(self.slots)))
            if self.slots[a].end == self.slots[b].start
        ]
        self._joins: dict[int, Bools] = {}
        book = self.cast.book
        of = [book[move.pattern] for move in self.cast.moves]
        self.patterns = [move.pattern for move in self.cast.moves]
        self.difficulty: Ints = np.array([each.difficulty for each in of])
        self.families = np.array([each.family for each in of])
        self.planes = np.array([_plane(each) for each in of])
        self.timings = np.array([move.timing for move in self.cast.moves])
        self.directions = np.array([move.direction for move in self.cast.moves])
        self.effect = _effects(self.cast.moves, self.cast.heard)

    # --- tables ---

    def choices(self) -> Choices:
        """The tables as they stand now."""
        own = [self._own_sum(material) for material in range(len(self.uses))]
        tables: dict[tuple[int, int], Floats] = {}
        for a, b in self.neighbours:
            i, j = self.slots[a].material, self.slots[b].material
            self._add(tables, own, i, j, self._passage_table(a, b))
        for i, j in self._soon():
            self._add(tables, own, i, j, self._same_pattern() * TOO_SOON)
        return Choices(costs=tuple(own), passages=tables, countings=tuple(self.countings()))

    @staticmethod
    def _add(
        tables: dict[tuple[int, int], Floats], own: list[Floats], i: int, j: int, table: Floats
    ) -> None:
        if i == j:
            own[i] = own[i] + table.diagonal()
            return
        key = (min(i, j), max(i, j))
        turned = table if i < j else table.T
        tables[key] = tables[key] + turned if key in tables else turned

    def _own_sum(self, material: int) -> Floats:
        total: Floats = np.sum(list(self.own_terms(material).values()), axis=0)
        for k in range(self.count):
            if (material, k) in self.forbidden:
                total[k] = inf
        return total

    def own_terms(self, material: int) -> dict[str, Floats]:
        """What each move costs in a material by itself, term by term, (n,) each."""
        weigh, cast = self.weights, self.cast
        terms = {name: np.zeros(self.count) for name in ("energy", "difficulty", "learning", "ending", "margin", "walking")}
        level = cast.material.level
        learning = np.array([name in cast.material.learning for name in self.patterns])
        close = np.array([max(0.0, 1.0 - each.margin / 0.05) for each in cast.heard])
        cycles = np.array([move.cycle for move in cast.moves])
        for k, slot in enumerate(self.slots):
            if slot.material != material:
                continue
            share, loud = slot.beats / EIGHTS, float(self.loudness[k])
            wanted = 1.0 + (level - 1) * (0.3 + 0.7 * loud)
            over = self.difficulty - wanted
            rest = np.abs(slot.beats / cycles - np.round(slot.beats / cycles))
            terms["energy"] += weigh.energy * share * np.abs(self.effect - loud) ** 1.5
            terms["difficulty"] += weigh.difficulty * share * np.where(over > 0, over, -over / 3)
            terms["learning"] += weigh.learning * share * learning * (loud > CALM)
            terms["ending"] += weigh.ending * 2 * np.where(rest < 1e-6, 0.0, np.maximum(rest, 0.25))
            terms["margin"] += weigh.margin * share * close
            if k in self.walked:
                terms["walking"] += weigh.walking * share * np.maximum(self.difficulty - 2, 0)
        return terms

    def _same_pattern(self) -> Floats:
        names = np.array(self.patterns)
        return np.asarray((names[:, None] == names).astype(np.float64))

    def _soon(self) -> Iterator[tuple[int, int]]:
        """Materials that come within two eights of each other without being neighbours."""
        seen = set()
        for a, one in enumerate(self.slots):
            for b in range(a + 1, len(self.slots)):
                other = self.slots[b]
                if other.start - one.end >= SOON:
                    break
                if (a, b) in self.neighbours or one.material == other.material:
                    continue
                key = (min(one.material, other.material), max(one.material, other.material))
                if key not in seen:
                    seen.add(key)
                    yield key

    def _passage_table(self, a: int, b: int) -> Floats:
        return np.asarray(sum(self.passage_terms(a, b).values()))

    def passage_terms(self, a: int, b: int) -> dict[str, Floats]:
        """What each pair of moves costs in two slots that follow each other, term by term, (n, n) each."""
        weigh = self.weights
        same = self._same_pattern()
        if self.slots[a].material == self.slots[b].material:
            too_soon = np.zeros_like(same)  # the part returns at once
        else:
            too_soon = same * TOO_SOON
        family = self.families[:, None] == self.families
        plane = self.planes[:, None] == self.planes
        turned = (self.timings[:, None] != self.timings) * 1.0 + (
            self.directions[:, None] != self.directions
        ) * 1.5
        hard = (self.difficulty >= HARD) * 1.0
        return {
            "variety": too_soon + weigh.variety * (0.7 * family + 0.3 * plane) * (1 - same),
            "hands": weigh.hands * turned,
            "rest": weigh.rest * hard[:, None] * hard,
            "links": self._link_table(a, b),
        }

    # --- links ---

    def joins(self, beats: int) -> Bools:
        """Which moves, danced for some beats, join which without a link, for everybody."""
        if beats not in self._joins:
            each = [joining(laws, self.cast.moves, float(beats)) for laws in self.cast.laws]
            self._joins[beats] = np.logical_and.reduce(each)
        return self._joins[beats]

    def link_costs(self, a: int, b: int) -> dict[int, float]:
        """What links of each length cost between two slots, best first."""
        beats = min(self.slots[a].beats, EIGHTS)
        ideal = 2 if beats >= 12 else 1
        if self.cast.material.level <= 1 and beats >= EIGHTS:
            ideal = 3
        costs = {
            n: self.weights.links * (0.4 + 0.3 * n + 0.35 * abs(n - ideal) + 4.0 * max(0.0, n / beats - 0.2))
            for n in LENGTHS
            if beats - n >= 4
        }
        return dict(sorted(costs.items(), key=lambda each: each[1]))

    def _link_table(self, a: int, b: int) -> Floats:
        costs = self.link_costs(a, b)
        beats = self.slots[a].beats
        usual = min(costs.values(), default=inf)
        table = np.where(self.joins(beats), 0.0, usual)
        for first, whole, second in {(k[0], k[1] + k[2], k[3]) for k in self.bad}:
            if whole == beats:
                link = self.link(a, b, first, second)
                table[first, second] = inf if link is None else costs.get(link, 0.0)
        return np.asarray(table)

    def link(self, a: int, b: int, first: int, second: int) -> int | None:
        """The link between two moves in two slots [beats], 0 if they join; None if nothing is left."""
        beats = self.slots[a].beats
        options = [0] if self.joins(beats)[first, second] else []
        options += self.link_costs(a, b)
        for n in options:
            if (first, float(beats - n), n, second) not in self.bad:
                return n
        return None

    def passage_keys(self, picks: Sequence[int]) -> Iterator[tuple[tuple[int, int], tuple[int, float, int, int]]]:
        """The passages of a routine: the slots, and what passes into what."""
        for a, b in self.neighbours:
            first, second = (picks[self.slots[k].material] for k in (a, b))
            link = self.link(a, b, first, second)
            if link is not None:
                yield (a, b), (first, float(self.slots[a].beats - link), link, second)

    def passage(self, key: tuple[int, float, int, int]) -> Passage:
        """A passage of the routine as one that can be tried."""
        first, beats, link, second = key
        moves = self.cast.moves
        return Passage(before=moves[first], beats=beats, link=link, after=moves[second])

    # --- counting ---

    def countings(self) -> Iterator[Counting]:
        """Rules over the whole routine: wishes, and patterns used too often."""
        families = {name: each.family for name, each in self.cast.book.items()}
        for word, often in self.wishes.counted.items():
            meant = set(meant_by(word, families))
            yield self._counting(f"{word} {often} times", meant, at_least=float(often), price=self.weights.wishes)
        names = list(dict.fromkeys(self.patterns))
        most = max(1, -(-2 * len(self.uses) // max(len(names), 1)) - 1) if len(names) > 1 else len(self.uses)
        for name in names:
            if most < len(self.uses):
                yield self._counting(f"{name} at most {most} times", {name}, at_most=float(most), price=self.weights.repetition)

    def _counting(
        self, name: str, meant: set[str], *, at_least: float = 0.0, at_most: float = inf, price: float
    ) -> Counting:
        row = np.array([1.0 if each in meant else 0.0 for each in self.patterns])
        return Counting(
            name=name, counts=tuple(row for _ in self.uses), at_least=at_least, at_most=at_most, price=price
        )

    # --- what it costs, in words ---

    def terms(self, picks: Sequence[int]) -> dict[str, float]:
        """The cost of a routine, term by term."""
        total: dict[str, float] = {}

        def add(name: str, value: float) -> None:
            total[name] = total.get(name, 0.0) + value

        for material in range(len(self.uses)):
            for name, each in self.own_terms(material).items():
                add(name, float(each[picks[material]]))
        for a, b in self.neighbours:
            i, j = picks[self.slots[a].material], picks[self.slots[b].material]
            for name, table in self.passage_terms(a, b).items():
                add(name, float(table[i, j]))
        for i, j in self._soon():
            add("variety", TOO_SOON * (self.patterns[picks[i]] == self.patterns[picks[j]]))
        for rule in self.countings():
            count = sum(rule.counts[k][pick] for k, pick in enumerate(picks))
            off = max(0.0, rule.at_least - count) + max(0.0, count - rule.at_most)
            add("wishes" if rule.at_least else "repetition", (rule.price or 0.0) * off)
        return total


def _plane(pattern: Pattern) -> str:
    try:
        return str(pattern.values({}).get("plane") or pattern.right.kind.name)
    except ValueError:
        return ""


def _effects(moves: Sequence[Move], heard: Sequence[Heard]) -> Floats:
    """How large and fast each move looks among the others, as a rank from 0 to 1."""
    sizes = _ranks(np.array([each.size for each in heard]))
    speeds = _ranks(np.array([each.speed for each in heard]))
    return _ranks(0.8 * sizes + 0.2 * speeds)


def _ranks(values: Floats) -> Floats:
    """Ranks from 0 to 1; equal values share one."""
    known, place = np.unique(np.round(values, 4), return_inverse=True)
    return np.asarray(place / max(len(known) - 1, 1), dtype=np.float64)
