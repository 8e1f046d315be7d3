"""The problem of a draft: slots, candidates and costs as the tables that `choices.best` searches."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from math import inf

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.motion.patterns.timing_words import timing_words
from sequencer.planning.drafting.auditioning.candidates import usual_hands
from sequencer.planning.drafting.auditioning.cast_moves import effects, plane_of
from sequencer.planning.drafting.costing.slot_links import EIGHTS, SEEN, SlotLinks
from sequencer.planning.drafting.costing.weights import TOO_SOON
from sequencer.planning.drafting.gaps.slots import Fixed, Slot, occurrences
from sequencer.planning.drafting.optimising.choices import Choices, Counting
from sequencer.show.file_records.wishes import meant_by

_OWN_TERMS = (
    "energy",
    "difficulty",
    "learning",
    "ending",
    "margin",
    "walking",
    "hands",
    "variety",
    "chance",
)
SOON = 16  # [beats] within which a pattern does not come again, unless the part returns
EASY_WALKING = 2  # difficulty up to which one can walk in it
HARD = 4  # difficulty after which a rest is welcome
_ONE_OF = 8  # pieces of material of which one is as hard as the level
_ALIKE = 0.4  # share of the stretches with one way of timing the hands, above which it reads dull
_UNCHANGED = 0.5  # of a family that follows itself: hands that go on alike into another part
_AT_PARTS = 0.5  # of what a change of the hands costs within a part
_SIZED = (
    0.1  # by which at least a move's rank of size rises or falls where it is drawn large or small
)
_STRANDED = 200.0  # [1] cost of a move that is not flown from rest, or to rest, where it has to be; or that strains a hand in its place
_FAULTED = 2  # ways of dancing a pattern in one place that the check of the whole found at fault alike: the others mostly are too
CALM = 0.4  # rank of loudness below which music counts as calm


@dataclass(kw_only=True)
class Setting(SlotLinks):
    """A draft that is being searched; what was found to fail is kept in it."""

    loudness: Floats  # rank of each slot, 0 … 1, as wished
    walked: frozenset[int] = frozenset()  # slots in which somebody walks
    late: Mapping[int, int] = field(default_factory=dict)  # [beats] of the last out of each slot
    fixed: tuple[Fixed, ...] = ()
    seed: int = 0
    forbidden: set[tuple[int, int]] = field(default_factory=set)  # (material, move)
    # those of them that nobody looked at, since others of their pattern were at fault there
    unseen: set[tuple[int, int]] = field(default_factory=set)
    stranded_moves: set[tuple[int, int]] = field(
        default_factory=set
    )  # (material, move), see `stranded`
    strained_moves: set[tuple[int, int]] = field(
        default_factory=set
    )  # (material, move), see `strained`
    blamed: set[tuple[object, ...]] = field(default_factory=set)  # passages, for what, and whose
    besides: tuple[Counting, ...] = ()  # further rules
    faulted: dict[tuple[int, str, str], set[int]] = field(
        default_factory=dict
    )  # moves that were found at fault, by material, pattern, and for what

    def __post_init__(self) -> None:
        super().__post_init__()
        self.uses = occurrences(self.slots)
        book = self.cast.book
        of = [book[move.pattern] for move in self.cast.moves]
        self.difficulty: Ints = np.array([each.difficulty for each in of])
        self.families = np.array([each.family for each in of])
        self.planes = np.array([plane_of(each) for each in of])
        self.timings = np.array([move.timing for move in self.cast.moves])
        self.directions = np.array([move.direction for move in self.cast.moves])
        self.modes = sorted({(move.timing, move.direction) for move in self.cast.moves})
        self.unusual = np.array(
            [not usual_hands(move, book[move.pattern]) for move in self.cast.moves],
            dtype=np.float64,
        )
        self.seen = self._seen()
        self.final = self._final()
        self.effect = effects(
            self.patterns,
            [each.size for each in self.cast.heard],
            [each.speed for each in self.cast.heard],
        )

    def _seen(self) -> Bools:
        """Materials in which a wished move is seen: not in a short rest of a part, if there is anything longer."""
        long = np.array([max(s.beats for s in self.uses[m]) >= SEEN for m in range(len(self.uses))])
        return np.asarray(long if long.any() else np.ones_like(long))

    def _final(self) -> int:
        """The slot with which the routine ends; -1 where it ends with what stays as it is."""
        last = max(range(len(self.slots)), key=lambda k: self.slots[k].end, default=-1)
        after = max((each.end for each in self.fixed), default=-inf)
        return last if last >= 0 and self.slots[last].end > after else -1

    # --- tables ---

    def choices(self, *, doubting: bool = False) -> Choices:
        """The tables as they stand now; if asked for, with what links are expected to cost that were not tried, see `doubts`."""
        own = [self._own_sum(material) for material in range(len(self.uses))]
        tables: dict[tuple[int, int], Floats] = {}
        if doubting:
            for k, *_ in self.beside_rest:
                piece = self.slots[k].material
                own[piece] = own[piece] + self.doubts_beside_rest(k)
        for a, b in self.neighbours:
            i, j = self.slots[a].material, self.slots[b].material
            self._add(tables, own, i, j, self._passage_table(a, b))
            if doubting:
                self._add(tables, own, i, j, self.doubts(a, b))
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
        barred = [k for k in range(self.count) if (material, k) in self.forbidden]
        if any(self.slots[k].material == material for k in self.walked):
            easy = self.difficulty <= EASY_WALKING
            easy[barred] = False
            if easy.any():  # nobody walks in anything harder
                total[~easy] = inf
        total[barred] = inf
        return total

    def own_terms(self, material: int) -> dict[str, Floats]:
        """What each move costs in a material by itself, term by term, (n,) each."""
        weigh, cast = self.weights, self.cast
        terms: dict[str, Floats] = {name: np.zeros(self.count) for name in _OWN_TERMS}
        level = cast.material.level
        learning = np.array([name in cast.material.learning for name in self.patterns])
        close = np.array([max(0.0, 1.0 - each.margin / 0.05) for each in cast.heard])
        cycles = np.array([move.cycle for move in cast.moves])
        for k, slot in enumerate(self.slots):
            if slot.material != material:
                continue
            share, loud = slot.beats / EIGHTS, float(self.loudness[k])
            # What is seen last stays with people: there it is as hard as in full music, however softly the song ends.
            full = 1.0 if k == self.final else loud
            wanted = 1.0 + (level - 1) * (0.5 + 0.5 * full)
            over = self.difficulty - wanted
            rest = np.abs(slot.beats / cycles - np.round(slot.beats / cycles))
            terms["energy"] += self.energy_cost(k, self._follows(k))
            # In calm music something easy is welcome; in loud music it shows less than the performer can do.
            easy = (1.0 + 2.0 * full) / 3
            terms["difficulty"] += weigh.difficulty * share * np.where(over > 0, over, -easy * over)
            short = max(0.0, SEEN - slot.beats) / 6
            terms["difficulty"] += weigh.difficulty * 2 * short * (self.difficulty >= HARD)
            terms["learning"] += weigh.learning * share * learning * (loud > CALM)
            terms["ending"] += weigh.ending * (
                2 * np.where(rest < 1e-6, 0.0, np.maximum(rest, 0.25))
                + np.maximum(0.0, 2.0 - slot.beats / cycles)
            )
            terms["hands"] += weigh.hands * 4 * share * self.unusual
            terms["margin"] += weigh.margin * share * close
            terms["variety"] += TOO_SOON * self._beside(slot)
            if k in self.walked:
                terms["walking"] += (
                    weigh.walking * share * np.maximum(self.difficulty - EASY_WALKING, 0)
                )
        for k in range(self.count):
            terms["ending"][k] += _STRANDED * ((material, k) in self.stranded_moves)
            terms["ending"][k] += _STRANDED * ((material, k) in self.strained_moves)
        if self.seed:
            draw = np.random.default_rng([self.seed, material]).random(self.count)
            terms["chance"] += weigh.chance * draw
        return terms

    def forbid(
        self, material: int, move: int, why: str, *, but: Collection[tuple[int, int]] = ()
    ) -> None:
        """Forbid a move in a material for what was found against it; of its pattern all, once several were found at fault alike.

        Parameters
        ----------
        material, move : int
        why : str
            What was found, the same text for what is alike.
        but : collection of (material, move)
            What was found to stand, and stays allowed.
        """
        self.forbidden.add((material, move))
        pattern = self.patterns[move]
        found = self.faulted.setdefault((material, pattern, why), set())
        found.add(move)
        if len(found) >= _FAULTED:
            same = (k for k, name in enumerate(self.patterns) if name == pattern)
            alike = {(material, k) for k in same} - set(but)
            self.unseen |= alike - self.forbidden
            self.forbidden |= alike

    def without_moves(self) -> list[int]:
        """The materials in which nothing is left to be danced: each move is forbidden, or was found to strain a hand in its place."""
        spoilt = self.forbidden | self.strained_moves
        return [
            material
            for material in range(len(self.uses))
            if all((material, k) in spoilt for k in range(self.count))
        ]

    def without_links(self) -> list[tuple[int, int]]:
        """The slots that follow each other of which no two moves are left, though some of each are."""
        left = np.ones((len(self.uses), self.count), dtype=np.bool_)
        left[tuple(np.array(list(self.forbidden), dtype=np.int64).reshape(-1, 2).T)] = False
        own = {k: left[slot.material] for k, slot in enumerate(self.slots)}
        return [
            (a, b)
            for a, b in self.neighbours
            if own[a].any()
            and own[b].any()
            and not (np.isfinite(self.link_table(a, b)) & own[a][:, None] & own[b]).any()
        ]

    def unsettled(self, picks: Sequence[int]) -> set[int]:
        """The materials of a routine in which something is forbidden by now, or beside a link that was not found to pass."""
        out = {
            material for material, pick in enumerate(picks) if (material, pick) in self.forbidden
        }
        links = dict(self.passage_keys(picks))
        for pair in self.neighbours:
            if links.get(pair) not in self.passed:
                out |= {self.slots[k].material for k in pair}
        return out

    def with_beside(self, some: Collection[int]) -> set[int]:
        """Some materials, and those that are danced right before or behind one of them."""
        pairs = ({self.slots[k].material for k in pair} for pair in self.neighbours)
        return set(some).union(*(pair for pair in pairs if pair & set(some)))

    def stranded_picks(self, picks: Sequence[int]) -> set[tuple[int, int]]:
        """The moves of a routine that are stranded, as (material, move)."""
        slots = (self.slots[k] for k in self.stranded(self.at_slots(picks)))
        return {(slot.material, picks[slot.material]) for slot in slots}

    def energy_cost(self, k: int, spare: Floats | float = 0.0) -> Floats:
        """What each move costs in a slot by being smaller or larger than the music asks for, but for what it may be off, shape (n,) [1]."""
        share = self.slots[k].beats / EIGHTS
        off = np.maximum(np.abs(self.effect - float(self.loudness[k])) - spare, 0.0)
        return np.asarray(self.weights.energy * share * off**1.5)

    def _follows(self, k: int) -> Floats:
        """By how much each move follows the music where its part returns softer or louder, see `returns`, shape (n,) [1]."""
        returns = len(self.uses[self.slots[k].material]) > 1
        if self.wishes.returns != "alike" or not returns or not self.cast.sizable:
            return np.zeros(self.count)
        return np.asarray(_SIZED * np.array(self.cast.sizable, dtype=np.float64))

    def _beside(self, slot: Slot) -> Floats:
        """Whether a move's pattern is danced within two eights of a slot, in what stays as it is."""
        near = {
            each.pattern
            for each in self.fixed
            if each.start - slot.end < SOON
            and slot.start - each.end < SOON
            and each.label != slot.label
        }
        return np.array([float(name in near) for name in self.patterns])

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
        other_part = self.slots[a].label != self.slots[b].label
        # Within a part the hands go on as they are; a new part is seen to begin when they change.
        unchanged = (turned == 0) * float(other_part and len(self.modes) > 1)
        hard = (self.difficulty >= HARD) * 1.0
        return {
            "variety": too_soon
            + weigh.variety * ((0.7 * family + 0.3 * plane) * (1 - same) + _UNCHANGED * unchanged),
            "hands": weigh.hands * turned * (_AT_PARTS if other_part else 1.0),
            "rest": weigh.rest * hard[:, None] * hard,
            "links": self.link_table(a, b),
        }

    # --- counting ---

    def countings(self) -> Iterator[Counting]:
        """Rules over the whole routine: wishes, something of the performer's own level, and patterns used too often."""
        yield from self._wished()
        yield from self._shown()
        yield from self._seldom()
        yield from self.besides

    def _wished(self) -> Iterator[Counting]:
        families = {name: each.family for name, each in self.cast.book.items()}
        for word, often in self.wishes.counted.items():
            meant = set(meant_by(word, families))
            there = len({each.material for each in self.fixed if each.pattern in meant})
            if often > there:
                yield self._counting(
                    f"{word} {often} times",
                    meant,
                    at_least=float(often - there),
                    price=self.weights.wishes,
                    where=self.seen,
                )

    def _shown(self) -> Iterator[Counting]:
        """Something as hard as the level, or as hard as there is, in one of so many pieces of material."""
        hardest = min(int(self.difficulty.max()), self.cast.material.level)
        learning = self.cast.material.learning
        of_level = {
            name
            for name, difficulty in zip(self.patterns, self.difficulty, strict=True)
            if difficulty == hardest and name not in learning
        }
        if hardest >= HARD and of_level:
            yield self._counting(
                f"difficulty {hardest}",
                of_level,
                at_least=float(max(1, len(self.uses) // _ONE_OF)),
                price=self.weights.shown,
                where=self.seen,
            )

    def _seldom(self) -> Iterator[Counting]:
        names = list(dict.fromkeys(self.patterns))
        most = (
            max(1, -(-2 * len(self.uses) // max(len(names), 1)) - 1)
            if len(names) > 1
            else len(self.uses)
        )
        for name in names:
            if most < len(self.uses):
                yield self._counting(
                    f"{name} at most {most} times",
                    {name},
                    at_most=float(most),
                    price=self.weights.repetition,
                )
        most_alike = float(max(1, round(_ALIKE * len(self.uses))))
        for timing, direction in self.modes if len(self.modes) > 1 else ():
            row = ((self.timings == timing) & (self.directions == direction)).astype(np.float64)
            yield Counting(
                name=f"{timing_words(timing, direction)} at most {most_alike:g} times",
                counts=tuple(row for _ in self.uses),
                at_most=most_alike,
                price=self.weights.alike,
            )

    def _counting(
        self,
        name: str,
        meant: set[str],
        *,
        at_least: float = 0.0,
        at_most: float = inf,
        price: float,
        where: Bools | None = None,
    ) -> Counting:
        row = np.array([1.0 if each in meant else 0.0 for each in self.patterns])
        counts = np.ones(len(self.uses)) if where is None else where.astype(np.float64)
        return Counting(
            name=name,
            counts=tuple(row * n for n in counts),
            at_least=at_least,
            at_most=at_most,
            price=price,
        )

    def unmet(self, picks: Sequence[int]) -> tuple[str, ...]:
        """Wishes that a routine leaves out, in words."""
        found = []
        for rule in self._wished():
            count = sum(rule.counts[k][pick] for k, pick in enumerate(picks))
            if count < rule.at_least:
                found.append(f"{rule.name} (there is room for {count:g})")
        return tuple(found)

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
        rules = [("wishes", self._wished()), ("difficulty", self._shown())]
        for term, some in (*rules, ("repetition", (*self._seldom(), *self.besides))):
            for rule in some:
                count = sum(rule.counts[k][pick] for k, pick in enumerate(picks))
                off = max(0.0, rule.at_least - count) + max(0.0, count - rule.at_most)
                add(term, float((rule.price or 0.0) * off))
        return total
