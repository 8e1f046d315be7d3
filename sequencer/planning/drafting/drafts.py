"""A routine drafted for a show: candidates, search, trial of its passages, and the checks on the whole, until it is clean.

What a check stops or warns of because of the routine is forbidden as a combination, and the search goes on; so what
comes out is clean by construction. Findings that the show has without the routine are left alone.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, floor
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.check import Check
from sequencer.checks.registry import checks
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.motion.fitting.fits import GOOD
from sequencer.motion.fitting.windows import windows_of
from sequencer.planning.drafting.candidates import Heard, Move, Stage, auditioned, moves_for
from sequencer.planning.drafting.choices import Chosen, Counting, Undecided, best
from sequencer.planning.drafting.passages import Laws
from sequencer.planning.drafting.repertoire import Material, fault_of_wish, material_for
from sequencer.planning.drafting.setting import Cast, Fixed, Setting
from sequencer.planning.drafting.slots import SHORTEST, Slot, occurrences, parts_of, slots_of
from sequencer.planning.drafting.weights import Weights
from sequencer.planning.drafting.writing import Danced, rows_of
from sequencer.progress import Progress
from sequencer.show.document import parse_document
from sequencer.show.drafted import drafted_entries, drafted_text, without_drafted
from sequencer.show.reading import nearest, show_from_document
from sequencer.show.wishes import meant_by
from sequencer.staging.moments import Moments
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.song import Song

QUICK, THOROUGH = 300, 3000  # effort of a search, see `choices.best`
MOST_ROUNDS = 60  # of searching again after a cut
_TEMPO_STEP = 4.0  # [beats/min] to which ranges of tempos are widened, so that other songs find them known
_WIDE = 1.15  # the fastest tempo of a range over its slowest
_LEAD = 2  # [beats] kept for a link next to what a person wrote
_NEAR_EDGE = 1.0  # [beats] from the edge of a block: what is found there is the passage's fault
_SHARE = (0.15, 0.35, 0.9)  # of the progress: base staged, auditions, search


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A drafted routine, and what is known about it."""

    text: str  # the show file with it
    cost: float
    bound: float  # proven: nothing costs less under these rules
    terms: dict[str, float]  # of the cost
    rows: tuple[tuple[str, str, str], ...]  # of each slot: section, position, move in words
    links: int  # number of links
    link_share: float  # [1] of the time
    checked: bool  # whether the checks found it clean
    left: tuple[Finding, ...]  # STOP and WARN that the show has without the routine
    unmet: tuple[str, ...]  # wishes that it leaves out
    picks: tuple[tuple[int, str], ...] = ()  # material and move in words, to tell drafts apart

    @property
    def gap(self) -> float:
        """How much better another routine could be at most, as a share of the cost."""
        return max(0.0, self.cost - self.bound) / max(abs(self.cost), 1e-9)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked of a draft."""

    section: str | None = None  # only this one
    another: bool = False  # the next best that differs in at least a third of the slots
    seed: int = 0
    effort: int = THOROUGH
    weights: Weights = Weights()


class DraftingStopped(KeyboardInterrupt):
    """Drafting was interrupted; the best routine by then comes with it, not checked."""

    def __init__(self, draft: Draft) -> None:
        super().__init__()
        self.draft = draft


def drafted_show(
    text: str, file: str, song: Song, asked: Asked | None = None, *, progress: Progress | None = None
) -> Draft:
    """Draft a routine into a show file; nothing is written.

    Parameters
    ----------
    text : str
        The show file as it stands.
    file : str
        Its name, for messages.
    song : Song
        The analysed song.
    asked : Asked, optional
    progress : callable, optional

    Returns
    -------
    draft : Draft

    Raises
    ------
    InputError
        If the show cannot be used as it stands, or nothing can be drafted; the message names what to relax.
    DraftingStopped
        If it is interrupted once there is a routine; it was not checked yet.
    """
    drafting = _Drafting(text, file, song, asked or Asked(), progress)
    try:
        return drafting.draft()
    except KeyboardInterrupt:
        left = drafting.best_so_far()
        if left is None:
            raise
        raise DraftingStopped(left) from None


class _Drafting:
    """One call of the draft."""

    def __init__(
        self, text: str, file: str, song: Song, asked: Asked, progress: Progress | None
    ) -> None:
        self.text, self.song, self.asked = text, song, asked
        self.say = progress or (lambda _subject, _share: None)
        self.document = parse_document(text.removeprefix("\ufeff"), file)
        self.whole = show_from_document(self.document)  # faults are told at their places in the file
        if not song.beats or len(song.beats) < 2 or not song.downbeats:
            raise self.whole.fault(
                "no-steady-beat", ("track", "file"), "no steady beat was found in this song",
                "give the beats yourself under `track`, `corrections`, `beats`",
            )  # fmt: skip
        self.say("putting what is written on the song", 0.02)
        self.keep = self._kept_entries()
        values = without_drafted(self.document.values, self.keep)
        self.read = show_from_document(replace(self.document, values=values))
        self.base = staged(self.read, song)
        self.record = self._lead()
        self.dancing = [self.record]
        self._setting_now: Setting | None = None
        self._chosen: Chosen | None = None

    # --- what there is ---

    def _kept_entries(self) -> tuple[int, ...]:
        """Drafted entries that stay: those outside the section that is asked for."""
        if self.asked.section is None:
            return ()
        show = staged(self.whole, self.song)
        inside = [
            (part.start, part.end)
            for part in parts_of(show.song, show.tempo)
            if self.asked.section in (part.name, part.label)
        ]
        if not inside:
            names = list(dict.fromkeys([*show.song.section_names(), *(s.label for s in show.song.sections)]))
            raise self.whole.fault(
                "unknown-section", ("timeline",), f"the song has no section {self.asked.section!r}",
                nearest(self.asked.section, names),
            )  # fmt: skip
        begins = _starts(show)
        return tuple(
            k
            for k in drafted_entries(self.document.values)
            if not any(low - 1e-6 <= begins.get(k, -1.0) < high - 1e-6 for low, high in inside)
        )

    def _lead(self) -> Any:
        lead = self.read.show.wishes.lead
        return next((each for each in self.read.show.cast if each.name == lead), self.read.show.cast[0])

    def _stops(self) -> list[str]:
        """Names of the sections before which everything stops."""
        wished = self.read.show.wishes.stops
        parts = parts_of(self.base.song, self.base.tempo)
        if isinstance(wished, int):
            loud = sorted(parts[1:], key=lambda part: -self._energy(part.start, part.end))
            return [part.name for part in loud[:wished]]
        found = []
        for name in wished:
            own = [part.name for part in parts if name in (part.name, part.label)]
            if not own:
                names = list(dict.fromkeys([*(p.name for p in parts), *(p.label for p in parts)]))
                raise fault_of_wish(
                    self.read, "stop", f"the song has no section {name!r} to stop before", nearest(name, names)
                )
            found.append(own[0] if name not in [part.name for part in parts] else name)
        return found

    def _energy(self, start: float, end: float) -> float:
        """Mean energy of the song between two beats."""
        curve = np.array(self.base.song.energy or (0.0,))
        low, high = (
            int(self.base.seconds(beat) / self.base.song.duration * len(curve)) for beat in (start, end)
        )
        return float(curve[max(low, 0) : max(high, low + 1)].mean()) if len(curve) else 0.0

    def _loudness(self, slots: Sequence[Slot]) -> Floats:
        """Rank of the loudness of each slot, as the wishes have it."""
        values = np.array([self._energy(slot.start, slot.end) for slot in slots])
        order = np.argsort(np.argsort(values, kind="stable"), kind="stable")
        ranks = order / max(len(slots) - 1, 1)
        for k, slot in enumerate(slots):
            wish = self.read.show.wishes.character
            kind = wish.get(slot.section, wish.get(slot.label))
            if kind is not None:
                ranks[k] = 0.1 * ranks[k] if kind == "calm" else 0.75 + 0.25 * ranks[k]
        return np.asarray(ranks, dtype=np.float64)

    def slots(self) -> tuple[Slot, ...]:
        """The slots to fill."""
        own = [block for block in self.base.blocks if block.who == self.record.name]
        slots = slots_of(
            self.base.song,
            self.base.tempo,
            taken=[(block.start, block.end) for block in own],
            stops=self._stops(),
            alike=self.read.show.wishes.returns == "alike",
            only=self.asked.section,
        )
        if not slots:
            where = f"section {self.asked.section!r}" if self.asked.section else "the song"
            raise self.whole.fault(
                "nothing-to-fill", ("timeline",),
                f"{where} has no gap of {SHORTEST} beats or more that could be filled",
                "take out entries that should be drafted anew, or name a longer section",
            )  # fmt: skip
        return slots

    def ranges(self, slots: Sequence[Slot]) -> tuple[list[tuple[float, float]], tuple[int, ...]]:
        """Ranges of tempos in which moves are auditioned [beats/min], and which of them each material needs."""
        spans = []
        for own in occurrences(slots).values():
            beats = np.concatenate([np.arange(slot.start, slot.end) for slot in own])
            tempos = 60.0 * self.base.tempo.beats_per_second(beats)
            low, high = (tempos.min() + 0.5) / _TEMPO_STEP, (tempos.max() - 0.5) / _TEMPO_STEP
            spans.append((float(floor(low)) * _TEMPO_STEP, float(ceil(high)) * _TEMPO_STEP))
        ranges: list[tuple[float, float]] = []
        of = [0] * len(spans)
        for k in sorted(range(len(spans)), key=lambda k: spans[k]):
            low, high = spans[k]
            if ranges and max(ranges[-1][1], high) <= _WIDE * ranges[-1][0]:
                ranges[-1] = (ranges[-1][0], max(ranges[-1][1], high))
            else:
                ranges.append((low, high))
            of[k] = len(ranges) - 1
        return ranges, tuple(of)

    def stages(self, ranges: Sequence[tuple[float, float]]) -> list[list[Stage]]:
        """Everybody who dances, at each range of tempos."""
        return [
            [
                Stage(show=self.base, record=record, tempo=tempo, lit=bool(self.base.lit_of(record.name)))
                for tempo in ranges
            ]
            for record in self.dancing
        ]

    # --- search ---

    def draft(self) -> Draft:
        """The draft; see `drafted_show`."""
        slots = self.slots()
        material = material_for(self.read, self.record, self.base.book)
        setting = self._setting(slots, material)
        self._before = self._findings(self.base, all_checks=True)
        known: tuple[int, ...] | None = None
        if self.asked.another:
            known = self._other_than_now(setting)
        for number in range(MOST_ROUNDS):
            for effort in (QUICK, self.asked.effort):
                chosen = self._best(setting, known, effort)
                known = chosen.picks
                if self._try_passages(setting, known):
                    break
            else:
                draft, show = self._made(setting, chosen)
                self.say(f"checking the routine (round {number + 1})", _SHARE[2])
                faults = self._caused(show)
                if not faults:
                    return replace(draft, checked=True)
                if not self._cut(setting, known, show, faults):
                    raise self._not_clean(faults[0])
        raise self._not_clean(None)

    def best_so_far(self) -> Draft | None:
        """The best routine of a search that was interrupted; it was not checked."""
        if self._setting_now is None or self._chosen is None:
            return None
        return self._made(self._setting_now, self._chosen)[0]

    def _other_than_now(self, setting: Setting) -> tuple[int, ...] | None:
        """Ask for patterns other than those that the file has now, in at least a third of the materials."""
        show = staged(self.whole, self.song)
        now: dict[int, str] = {}
        for slot in setting.slots:
            for block in show.blocks_of(self.record.name):
                if abs(block.start - slot.start) < 1.0 and not block.link:
                    now[slot.material] = block.title
        if not now:
            chosen = self._best(setting, None, self.asked.effort)
            now = {m: setting.patterns[k] for m, k in enumerate(chosen.picks)}
        count = {material: len(own) for material, own in setting.uses.items()}
        alike = [np.array([float(name == now.get(m)) for name in setting.patterns]) for m in count]
        setting.besides = tuple(
            Counting(
                name="another routine",
                counts=tuple(weigh * row for weigh, row in zip(each, alike, strict=True)),
                at_most=float(floor(2 * sum(each) / 3 + 1e-9)),
            )
            for each in ([1] * len(count), [count[m] for m in range(len(count))])
        )  # a third of what is danced, and a third of the stretches
        return None

    def _setting(self, slots: tuple[Slot, ...], material: Material) -> Setting:
        """The problem, with moves that passed their auditions."""
        self.say("auditioning patterns", _SHARE[0])
        ranges, of = self.ranges(slots)
        stages = self.stages(ranges)
        every = [stage for own in stages for stage in own]
        moves = list(moves_for(material.names, every))
        heard = self._heard(moves, every)
        passes = [
            [all(heard[n * len(ranges) + c][k].passes for n in range(len(stages))) for k in range(len(moves))]
            for c in range(len(ranges))
        ]  # by range and move
        somewhere = [k for k in range(len(moves)) if any(row[k] for row in passes)]
        self._refuse_hopeless(moves, heard, somewhere, every)
        best_of = [max((row[k] for row in heard), key=lambda each: each.passes) for k in range(len(moves))]
        chosen = _some(moves, best_of, somewhere, passes)
        cast = Cast(
            moves=tuple(moves[k] for k in chosen),
            heard=tuple(best_of[k] for k in chosen),
            laws=tuple(tuple(Laws(stage) for stage in own) for own in stages),
            paces=of,
            material=material,
            book=self.base.book,
        )
        return Setting(
            slots=slots,
            loudness=self._loudness(slots),
            cast=cast,
            wishes=self.read.show.wishes,
            weights=self.asked.weights,
            fixed=self._fixed(),
            seed=self.asked.seed,
            forbidden={
                (material, n)
                for material, c in enumerate(of)
                for n, k in enumerate(chosen)
                if not passes[c][k]
            },
        )

    def _fixed(self) -> tuple[Fixed, ...]:
        """What stays as it is, of the one who leads."""
        label = {part.name: part.label for part in parts_of(self.base.song, self.base.tempo)}
        return tuple(
            Fixed(
                start=block.start, end=block.end, pattern=part.pattern,
                label=label.get(self.base.section_at(block.start), ""), material=repr(block.path),
            )
            for block in self.base.blocks_of(self.record.name)
            for part in block.hands.values()
        )  # fmt: skip

    def _heard(self, moves: Sequence[Move], stages: Sequence[Stage]) -> list[list[Heard]]:
        """How each move fares on each stage."""
        found = []
        for n, stage in enumerate(stages):
            row: list[Heard] = []
            for k in range(0, len(moves), 40):
                share = (n + k / max(len(moves), 1)) / len(stages)
                self.say("auditioning patterns", _SHARE[0] + (_SHARE[1] - _SHARE[0]) * share)
                row += auditioned(moves[k : k + 40], stage)
            found.append(row)
        return found

    def _refuse_hopeless(
        self, moves: Sequence[Move], heard: Sequence[Sequence[Heard]], passing: Sequence[int], stages: Sequence[Stage]
    ) -> None:
        """Refuse wishes that nothing can meet, and a repertoire of which nothing can be danced."""
        worst = [next((row[k] for row in heard if not row[k].passes), heard[0][k]) for k in range(len(moves))]
        families = {name: each.family for name, each in self.base.book.items()}
        able = {moves[k].pattern for k in passing}
        for word, often in self.read.show.wishes.counted.items():
            meant = set(meant_by(word, families))
            if not meant & able:
                raise self._wish_fails(word, often, meant, moves, worst, stages[0])
        if not passing:
            raise self.read.fault(
                "nothing-fits", ("cast", self.read.show.cast.index(self.record)),
                f"no pattern of {self.record.name}'s can be danced to this song: {moves[0].pattern}: {worst[0].why}",
                self._relax(moves[0], stages[0]),
            )  # fmt: skip

    def _wish_fails(
        self, word: str, often: int, meant: set[str], moves: Sequence[Move], heard: Sequence[Heard], stage: Stage
    ) -> InputError:
        own = [(m, h) for m, h in zip(moves, heard, strict=True) if m.pattern in meant]
        if not own:
            return fault_of_wish(
                self.read, word, f"{word} is wished {often} times, but is not in the repertoire",
                "add it under `repertoire`, `known`, or raise `level`",
            )  # fmt: skip
        move, said = own[0]
        return fault_of_wish(
            self.read, word, f"{word} cannot be danced to this song by {self.record.name}: {said.why}",
            self._relax(move, stage),
        )  # fmt: skip

    def _relax(self, move: Move, stage: Stage) -> str:
        """What would let a move pass, in words."""
        opens = windows_of(stage.dance(move)).opens
        if opens:
            return f"it fits with {opens[0]}"
        return "choose another pattern, a shorter tether, or a slower count with `tempo: half`"

    def _best(self, setting: Setting, known: tuple[int, ...] | None, effort: int) -> Chosen:
        def told(subject: str, share: float) -> None:
            self.say(f"searching: {subject}", _SHARE[1] + (_SHARE[2] - _SHARE[1]) * share)

        choices = setting.choices()
        self._setting_now, self._chosen = setting, None

        def better(chosen: Chosen) -> None:
            self._chosen = chosen

        try:
            chosen = best(
                choices, effort=effort, seed=self.asked.seed, known=known, found=better, progress=told
            )
        except Undecided:
            if effort < self.asked.effort:
                return self._best(setting, known, self.asked.effort)
            chosen = None
        if chosen is None:
            raise self._not_clean(None)
        self._chosen = chosen
        return chosen

    def _try_passages(self, setting: Setting, picks: Sequence[int]) -> bool:
        """Try the passages of a routine that were not tried yet; whether any fails."""
        failed = False
        while True:
            keys = list(
                dict.fromkeys(
                    key for _, key in setting.passage_keys(picks) if key not in setting.passed
                )
            )
            if not keys:
                return failed
            for key, why in zip(keys, setting.tried(keys), strict=True):
                if why:
                    setting.bad[key] = why
                    failed = True
            setting.passed |= {key for key in keys if key not in setting.bad}
            if any(setting.link(a, b, picks[setting.slots[a].material], picks[setting.slots[b].material]) is None
                   for a, b in setting.neighbours):
                return True

    # --- the routine in the show ---

    def danced(self, setting: Setting, picks: Sequence[int]) -> list[Danced]:
        """What is danced in each slot."""
        links = {pair: key[2] for pair, key in setting.passage_keys(picks)}
        own = [block for block in self.base.blocks_of(self.record.name) if not block.link]
        starts, ends = {block.start for block in own}, {block.end for block in own}
        out = []
        for k, slot in enumerate(setting.slots):
            lead = _LEAD if slot.start in ends and not any(b == k for _, b in links) else 0
            link = links.get((k, k + 1), _LEAD if slot.end in starts else 0)
            rest = 0
            if not link and k in setting.exits:  # as long as where this section leads on
                rest = min(setting.link_costs(k, k), key=lambda n: setting.link_costs(k, k)[n], default=0)
            out.append(
                Danced(
                    slot=slot, move=setting.cast.moves[picks[slot.material]], lead=lead, link=link, rest=rest
                )
            )
        return out

    def _made(self, setting: Setting, chosen: Chosen) -> tuple[Draft, Staged]:
        """A routine as a draft, and the show with it."""
        danced = self.danced(setting, chosen.picks)
        values = without_drafted(self.document.values, self.keep)
        phrases, rows = rows_of(danced, self.base.position, names=(values.get("phrases") or {}).keys())
        starts = {k: v for k, v in _starts_of_file(self.base, self.document.values, self.keep).items()}
        text = drafted_text(
            self.text, self.document, keep=self.keep, phrases=phrases, rows=rows, starts=starts
        )
        show = staged(show_from_document(parse_document(text, self.document.file)), self.song, before=self.base)
        whole = sum(each.slot.beats for each in danced)
        linked = sum(each.link + each.lead for each in danced)
        draft = Draft(
            text=text,
            cost=chosen.cost,
            bound=min(chosen.bound, chosen.cost),
            terms=setting.terms(chosen.picks),
            rows=tuple(
                (each.slot.section, self.base.position(each.slot.start), each.move.words) for each in danced
            ),
            links=sum(bool(each.link) + bool(each.lead) for each in danced),
            link_share=linked / max(whole, 1),
            checked=False,
            left=tuple(self._before.values()),
            unmet=self._unmet(setting, chosen.picks),
            picks=tuple((m, setting.cast.moves[k].words) for m, k in enumerate(chosen.picks)),
        )
        return draft, show

    def _unmet(self, setting: Setting, picks: Sequence[int]) -> tuple[str, ...]:
        found = []
        for rule in setting.countings():
            if rule.at_least:
                count = sum(rule.counts[k][pick] for k, pick in enumerate(picks))
                if count < rule.at_least:
                    found.append(f"{rule.name} (found room for {count:g})")
        return tuple(found)

    def _findings(self, show: Staged, *, all_checks: bool) -> dict[tuple[Any, ...], Finding]:
        """STOP and WARN of a show, by what they are about."""
        found: dict[tuple[Any, ...], Finding] = {}
        for check in checks():
            if check.on_request or not (all_checks or _of_the_dance(check)):
                continue
            for finding in check.outcome(show).findings:
                if finding.severity != "note":
                    found.setdefault(_key(finding), finding)
        return found

    def _caused(self, show: Staged) -> list[Finding]:
        """STOP and WARN that the show has only with the routine."""
        dance = self._findings(show, all_checks=False)
        new = [finding for key, finding in dance.items() if key not in self._before]
        if new:
            return new
        whole = self._findings(show, all_checks=True)
        return [finding for key, finding in whole.items() if key not in self._before]

    def _cut(
        self, setting: Setting, picks: Sequence[int], show: Staged, faults: Sequence[Finding]
    ) -> bool:
        """Forbid what the checks found; whether anything was."""
        any_cut = False
        links = {pair: key for pair, key in setting.passage_keys(picks)}
        for finding in faults:
            if finding.start is None:
                continue
            beat = float(show.tempo.beats_from_seconds(finding.start))
            k = _slot_at(setting.slots, beat)
            if k is None:
                continue
            slot = setting.slots[k]
            pairs = [(k, k + 1)] if beat > slot.end - (links[(k, k + 1)][2] if (k, k + 1) in links else 0) - _NEAR_EDGE else []
            if beat < slot.start + _NEAR_EDGE:
                pairs.append((k - 1, k))
            for pair in pairs:
                if pair in links:
                    setting.bad[links[pair]] = finding.message
                    setting.passed.discard(links[pair])
                    any_cut = True
                    break
            else:
                setting.forbidden.add((slot.material, picks[slot.material]))
                any_cut = True
        return any_cut

    def _not_clean(self, finding: Finding | None) -> InputError:
        what = "no routine was found that passes the checks"
        if finding is not None:
            at = f" at {finding.position}" if finding.position else ""
            what += f": {finding.message}{at}"
        return self.whole.fault(
            "no-clean-draft", ("timeline",), what,
            "add patterns under `repertoire`, `known`, raise `level`, or take a wish out",
        )  # fmt: skip


def _of_the_dance(check: Check) -> bool:
    return check.name in ("joins", "feasible", "distances", "travel")


def _key(finding: Finding) -> tuple[Any, ...]:
    return finding.code, finding.who, finding.position, finding.message


def _slot_at(slots: Sequence[Slot], beat: float) -> int | None:
    """The slot that a beat lies in, or the nearest within two beats."""
    inside = [k for k, slot in enumerate(slots) if slot.start - 1e-6 <= beat < slot.end]
    if inside:
        return inside[0]
    near = min(range(len(slots)), key=lambda k: min(abs(slots[k].start - beat), abs(slots[k].end - beat)))
    slot = slots[near]
    return near if min(abs(slot.start - beat), abs(slot.end - beat)) <= 4.0 else None


def _starts(show: Staged) -> dict[int, float]:
    """When each entry of the timeline begins [beats]; one that follows another, as the other."""
    read = show.read
    if read is None:
        return {}
    moments = Moments(read, show.song, show.tempo)
    begins: dict[int, float] = {}
    at = 0.0
    for k, entry in enumerate(read.show.timeline):
        if entry.start is not None:
            at = moments.beat(entry.start, ("timeline", k, "from"))
        begins[k] = at
    return begins


def _starts_of_file(base: Staged, values: Any, keep: Sequence[int]) -> dict[int, float]:
    """When each entry that stays begins, by its place in the file as it stands."""
    gone = set(drafted_entries(values)) - set(keep)
    timeline = values.get("timeline") or []
    left = [k for k in range(len(timeline)) if k not in gone]
    begins = _starts(base)
    return {k: begins[n] for n, k in enumerate(left) if n in begins}


def _some(
    moves: Sequence[Move], heard: Sequence[Heard], passing: Sequence[int], passes: Sequence[Sequence[bool]]
) -> list[int]:
    """Of each pattern the moves with most room; fewer of each where there are many patterns."""
    names = list(dict.fromkeys(moves[k].pattern for k in passing))
    most = max(2, min(6, 160 // max(len(names), 1)))
    out: list[int] = []
    for name in names:
        own = [k for k in passing if moves[k].pattern == name]
        own.sort(key=lambda k: (not moves[k].usual, -min(heard[k].margin, GOOD)))
        chosen = set(own[:most])
        for row in passes:  # every range of tempos gets its share
            chosen |= set([k for k in own if row[k]][: max(1, most // 2)])
        out += sorted(chosen)
    return out


__all__ = ["Asked", "Draft", "DraftingStopped", "drafted_show"]
