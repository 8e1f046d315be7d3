"""A routine drafted for a show: candidates, search, trial of its passages, and the checks on the whole, until it is clean.

What a check stops or warns of because of the routine is forbidden as a combination, and the search goes on; so what
comes out is clean by construction. Findings that the show has without the routine are left alone.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.costing.auditions import setting_for
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.drafted_routine import Draft, DraftingStopped, DraftRequest
from sequencer.planning.drafting.earlier_draft import another_than, standing, standing_picks
from sequencer.planning.drafting.finishing.cuts import (
    Findings,
    at_slots_only,
    caused,
    cut,
    grave_findings,
    of_flight_only,
    slots_beside,
    to_leave,
)
from sequencer.planning.drafting.finishing.draft_entries import rows_of
from sequencer.planning.drafting.finishing.hopeless import Hopeless
from sequencer.planning.drafting.finishing.in_turn import FlownInTurn
from sequencer.planning.drafting.finishing.not_clean import NOT_CLEAN, not_clean
from sequencer.planning.drafting.finishing.returns import follows, most_by_material, sized_returns
from sequencer.planning.drafting.finishing.slot_dances import slot_dances
from sequencer.planning.drafting.finishing.support import Support, supported
from sequencer.planning.drafting.finishing.venue_findings import venue_findings
from sequencer.planning.drafting.gaps.draft_ground import DraftGround, ground_of
from sequencer.planning.drafting.gaps.on_stage import dances_in_words
from sequencer.planning.drafting.gaps.skipped import Skipped
from sequencer.planning.drafting.grouping.group_draft import ALONE, GroupDraft, group_draft
from sequencer.planning.drafting.optimising.choices import Chosen, Counting
from sequencer.planning.drafting.routine_search import RoutineSearch
from sequencer.progress import Progress
from sequencer.show.drafted import DraftedRow, drafted_entries
from sequencer.show.drafted_lines import drafted_text
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.song import Song

_MOST_STARTS = 10  # with more and more left open
_MOST_FLOWN = 8  # checks that find what cannot be flown, before that is left and told; twice as many of a group
_MOST_CHECKS = 30  # of the whole, from one start
_MOST_NEAR = 4  # cheaper routines that failed as a whole, near which another is sought
_MOST_SUPPORTS = 3  # of solos, before they are danced by all
_MOST_SIZINGS = 3  # of what returns, before it is as large each time
_STAGED, _HEARD, _FOUND = 0.05, 0.35, 0.9  # of the progress: on its song, auditions, search


def drafted_show(
    text: str,
    file: str,
    song: Song,
    asked: DraftRequest | None = None,
    *,
    progress: Progress | None = None,
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
    asked : DraftRequest, optional
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
    asked = asked or DraftRequest()
    say = progress or (lambda _subject, _share: None)
    say("putting what is written on the song", 0.0)
    ground = ground_of(text, file, song, section=asked.section, span=asked.span)
    drafting = _Drafting(ground, asked, say)
    try:
        return drafting.draft()
    except KeyboardInterrupt:
        left = drafting.best_so_far()
        if left is None:
            raise
        again = bool(drafted_entries(ground.document.values))
        raise DraftingStopped(left, over_another=again) from None


class _Whole(NamedTuple):
    """A routine in the show, and what the checks find against it."""

    chosen: Chosen
    setting: Setting  # with the sizes among its moves
    at: list[int]  # of each slot, its move
    draft: Draft
    show: Staged
    faults: list[Finding]
    of_one: bool  # whether only one performer's flight was looked at, as something of it cannot be flown
    stranded: set[int]  # slots whose move is not flown out of the rest beside it, or into it


def _next_better(
    search: RoutineSearch, sound: Chosen, failed: Chosen | None
) -> tuple[Chosen | None, bool]:
    """What to check as a whole after a routine that stands: something near a cheaper one that failed, or what is proven no worse than it; None for neither; and which.

    What was tried and found good in the cheaper one is kept so, where only a little of it has to change.
    """
    near = None if failed is None else search.mended(failed.picks, below=sound.cost)
    if near is not None:
        return near, False
    # What was forbidden for another routine's sake may be in it: it stands nevertheless
    return search.proven(sound.picks) if search.allows(sound.picks) else None, True


class _Drafting:
    """One call of the draft."""

    def __init__(self, ground: DraftGround, asked: DraftRequest, say: Progress) -> None:
        self.ground, self.asked, self.say = ground, asked, say
        self._setting: Setting | None = None
        self._chosen: Chosen | None = None
        self._before: Findings = {}  # what the show has without the routine
        self._known_before: Findings = {}  # and what it would have if it were lit
        self._group: GroupDraft = ALONE
        self._unflown: tuple[Finding, ...] = ()  # what is left that cannot be flown
        self._in_turn = FlownInTurn(ground.base)
        self._hopeless = Hopeless(ground.base.tempo)
        # sizes of slots in which something was found
        self._unsized = set[tuple[int, DraftMove]]()
        self._staggers = True  # whether a group may dance in canon, or call and answer

    def draft(self) -> Draft:
        """The draft; see `drafted_show`."""
        base, placed = self.ground.base, not self.ground.drafts_formations
        self._before = grave_findings(base, placed=placed)
        self._known_before = {**grave_findings(base, placed=placed, lit=True), **self._before}
        for _ in range(_MOST_STARTS):
            try:
                draft = self._round()
            except InputError as error:
                if error.code != NOT_CLEAN:
                    raise
                if self._group.late:
                    self._staggers = False  # all together is easier
                elif not (self._setting and self._skips(self._hopeless.in_search(self._setting))):
                    raise
                continue
            if draft is not None:
                return draft
        raise self._not_clean(None)

    def _round(self) -> Draft | None:
        """The draft; None if something must stay open for it, and it has to be begun again."""
        slots = self.ground.slots()
        self._group = group_draft(self.ground, slots, in_turn=self._staggers)
        venue = venue_findings(self.ground, self._group)
        before = {**self._known_before, **venue}
        setting = setting_for(
            self.ground,
            slots,
            self._group,
            weights=self.asked.weights,
            seed=self.asked.seed,
            say=self._within(_STAGED, _HEARD),
        )
        self._setting, self._chosen, self._unsized = setting, None, set()
        if self.asked.another:
            setting.besides = self._another(setting)
        search = self._search(setting)
        sound = self._sound(search, before)
        if sound is None:
            return None
        # What of it cannot be flown even so is told.
        self._unflown = tuple(sound.faults)
        draft = self._with_support(sound, before) or sound.draft
        return replace(
            draft,
            cost=sound.chosen.cost,
            bound=max(min(sound.chosen.bound, sound.chosen.cost), 0.0),  # no term is below 0
            checked=True,
            left=tuple({**self._before, **venue}.values()),
            unflown=self._unflown,
            dearer=search.dearer,
        )

    def _sound(self, search: RoutineSearch, before: Findings) -> "_Whole | None":
        """A routine that stands as a whole, and is proven; None if something must stay open for it.

        A soloist's first is proven before the whole is checked, since mostly nothing is found. Where something is, and with a
        group, in which mostly something is, proofs wait until a routine stands: each would be made anew. What the proof finds
        better is checked in its turn, and until it stands the one that does is kept.
        """
        setting = search.setting
        sound: _Whole | None = None
        faults: list[Finding] = []
        alone = proven = len(self.ground.dancing) == 1
        flown = nears = 0
        known = standing_picks(self.ground, setting)
        chosen = search.routine(known) if proven else search.unproven(known)
        for checks in range(1, _MOST_CHECKS + 1):
            if chosen is None:
                break
            self.say(f"checking the routine (round {checks})", _FOUND)
            whole = self._whole(setting, chosen, before, flown)
            faults = whole.faults
            flown += whole.of_one or of_flight_only(faults)
            stands = self._stands(whole, flown)
            if (
                sound is None
                and faults
                and (self._may_leave if stands else self._must_leave)(whole)
            ):
                return None
            if stands:
                if proven:
                    return whole
                sound = whole
            elif not cut(
                setting,
                chosen.picks,
                whole.show,
                faults,
                stands=() if sound is None else sound.chosen.picks,
            ):
                break
            if sound is None:
                proven = False
                chosen = (search.unproven if alone else search.repaired)(chosen.picks)
                continue
            nears += not stands
            failed = chosen if not stands and nears <= _MOST_NEAR else None
            chosen, proven = _next_better(search, sound.chosen, failed)
            if chosen is not None and chosen.picks == sound.chosen.picks:
                return sound._replace(chosen=chosen)
        if sound is not None:
            return sound
        raise self._not_clean(faults[0] if faults else None)

    def _must_leave(self, whole: "_Whole") -> bool:
        """Whether something must stay open, since whatever is danced there is in the way; it is noted."""
        if self._skips(self._hopeless.in_routine(whole.setting, whole.show, whole.faults)):
            return True
        if whole.of_one:
            return False
        names, off = self.ground.names, self._group.off
        left = to_leave(whole.setting, whole.show, whole.faults, names, off)
        more = [each for each in left if each not in self.ground.left]
        if more:
            self.ground = replace(self.ground, left=(*self.ground.left, *more))
        return bool(more)

    def _may_leave(self, whole: "_Whole") -> bool:
        """Whether something is left open rather than told, since whatever was tried there cannot be flown; it is noted."""
        at_last = self._hopeless.at_last
        return self._skips(at_last(whole.setting, whole.show, whole.faults, whole.stranded))

    def _skips(self, some: Sequence[Skipped]) -> bool:
        """Whether anything new is left open, as nothing can be danced there; not where nothing would be left to be danced."""
        more = [each for each in some if each not in self.ground.skipped]
        if not more:
            return False
        ground = replace(self.ground, skipped=(*self.ground.skipped, *more))
        try:
            ground.slots()
        except InputError:
            if any(each.jump for each in more):
                raise
            return False
        self.ground = ground
        return True

    @property
    def _most_flown(self) -> int:
        """Checks that find what cannot be flown, before that is left and told: of a group, each finds what one cannot fly."""
        return _MOST_FLOWN * min(len(self.ground.dancing), 2)

    def _stands(self, whole: "_Whole", flown: int) -> bool:
        """Whether nothing is found against a routine, or only what cannot be flown where that was sought often enough."""
        if whole.of_one:
            return False
        slots = whole.setting.slots
        at_rests = at_slots_only(whole.faults, whole.show, slots, whole.stranded)
        hopeless = flown > self._most_flown or at_rests
        return not whole.faults or bool(hopeless and of_flight_only(whole.faults))

    def _search(self, setting: Setting) -> RoutineSearch:
        def better(chosen: Chosen) -> None:
            self._chosen = chosen

        return RoutineSearch(
            setting,
            effort=self.asked.effort,
            seed=self.asked.seed,
            found=better,
            progress=self._within(_HEARD, _FOUND),
        )

    def _whole(self, setting: Setting, chosen: Chosen, before: Findings, flown: int) -> "_Whole":
        """A routine in the show, what returns drawn as large as the music asks for as far as that passes, and what is found against it.

        Sizes come before the checks, which cost most: as a rule nothing is found, and they are made once.
        """
        at, wider, sized = setting.at_slots(chosen.picks), setting, dict[int, int]()
        if (
            len(self.ground.dancing) > 1
        ):  # sizes that everybody has to try take longer than flying one
            whole = self._looked_at(setting, chosen, at, None, flown)
            if whole.of_one:
                return whole
        if setting.wishes.returns == "alike":
            wider, sized = sized_returns(setting, chosen.picks)
        tries = 0
        for k in [k for k, move in sized.items() if (k, wider.cast.moves[move]) in self._unsized]:
            del sized[k]
        while True:
            now = [sized.get(k, move) for k, move in enumerate(at)]
            whole = self._looked_at(wider, chosen, now, before, flown)
            faults, show = whole.faults, whole.show
            near = [sized.keys() & slots_beside([each], show, setting.slots) for each in faults]
            beside = set[int]().union(*near)
            others = [each for each, own in zip(faults, near, strict=True) if not own]
            whole = whole._replace(faults=others)
            if not beside:
                return whole
            if others and not self._stands(whole, flown + of_flight_only(others)):
                # It has to be another routine whatever the sizes are
                inside = slots_beside(faults, show, setting.slots, by=0) & beside
                self._unsized |= {(k, wider.cast.moves[sized[k]]) for k in inside}
                return whole
            tries += 1
            for k in beside if tries < _MOST_SIZINGS else tuple(sized):
                del sized[k]

    def _looked_at(
        self, setting: Setting, chosen: Chosen, at: list[int], before: Findings | None, flown: int
    ) -> "_Whole":
        """A routine in the show, and what is found against it; without `before` only whether everybody can fly it."""
        draft, show = self._made(setting, chosen, at)
        stranded, slots = setting.stranded(at), setting.slots
        faults: list[Finding] = []
        if (
            flown < self._most_flown
        ):  # what nothing can be done about is left to the checks of the whole
            faults = self._in_turn.faults(
                show, lambda some: not at_slots_only(some, show, slots, stranded)
            )
        of_one = bool(faults)
        if not of_one and before is not None:
            faults = caused(show, before)
        return _Whole(chosen, setting, at, draft, show, faults, of_one, stranded)

    def _with_support(self, whole: "_Whole", before: Findings) -> Draft | None:
        """The routine with solos that the others support, if there is one that passes the checks."""
        if not self._group.solos:
            return None
        setting, at = whole.setting, whole.at
        for tries, supports in enumerate(supported(setting, at, self._group.solos)):
            if tries == _MOST_SUPPORTS:
                break
            self.say("finding support for the solos", _FOUND)
            draft, show = self._made(setting, whole.chosen, at, supports)
            if not self._worse(caused(show, before)):
                return draft
        return None

    def _worse(self, faults: Sequence[Finding]) -> list[Finding]:
        """Faults of a changed routine, but for those of its flight that were left anyway."""
        if of_flight_only(faults):
            known = {(each.code, each.who, each.position) for each in self._unflown}
            return [each for each in faults if (each.code, each.who, each.position) not in known]
        return list(faults)

    def best_so_far(self) -> Draft | None:
        """The best routine of a search that was interrupted; it was not checked."""
        if self._setting is None or self._chosen is None:
            return None
        at = self._setting.at_slots(self._chosen.picks)
        return self._made(self._setting, self._chosen, at)[0]

    def _within(self, start: float, end: float) -> Progress:
        def told(subject: str, share: float) -> None:
            self.say(subject, start + (end - start) * min(max(share, 0.0), 1.0))

        return told

    def _another(self, setting: Setting) -> tuple[Counting, ...]:
        """Ask for another routine than that of now, or than the first that is found."""
        now = {piece: block.title for piece, block in standing(self.ground, setting).items()}
        if not now:
            picks = self._search(setting).first(None)
            if picks is None:
                raise self._not_clean(None)
            now = {piece: setting.patterns[k] for piece, k in enumerate(picks)}
        return another_than(setting, now)

    # --- the routine in the show ---

    def _made(
        self,
        setting: Setting,
        chosen: Chosen,
        at: Sequence[int],
        supports: Sequence[Support] = (),
    ) -> tuple[Draft, Staged]:
        """A routine as a draft, and the show with it."""
        ground = self.ground
        danced = slot_dances(ground, self._group, setting, at, supports)
        phrases, rows = rows_of(
            danced, ground.base.position, names=(ground.values.get("phrases") or {}).keys()
        )
        rows += [
            DraftedRow(
                values={"from": ground.base.position(start), **who, "rest": int(end - start)},
                at=start,
            )
            for start, end in ground.stop_spans()
            for who in ground.who_stops(start, end)
        ]
        rows.sort(key=lambda row: row.at)
        text = drafted_text(
            ground.text,
            ground.document,
            keep=ground.keep,
            phrases=phrases,
            rows=rows,
            formations=None if ground.is_part else self._group.formations,
            staging=self._group.staging,
            starts=ground.starts(),
        )
        read = show_from_document(parse_document(text.removeprefix("\ufeff"), ground.document.file))
        show = staged(read, ground.heard, before=ground.base)
        whole = sum(each.slot.beats for each in danced)
        draft = Draft(
            text=text,
            cost=chosen.cost,
            bound=min(chosen.bound, chosen.cost),
            terms=(self._setting or setting).terms(chosen.picks),  # as searched, without more sizes
            rows=tuple(
                # where the move begins: a link before it is the way there
                (each.slot.section, ground.base.position(each.slot.start + each.lead), each.words)
                for each in danced
            ),
            links=sum(bool(each.link) + bool(each.lead) for each in danced),
            link_share=sum(each.link + each.lead for each in danced) / max(whole, 1),
            checked=False,
            left=tuple(self._before.values()),
            unmet=(*setting.unmet(chosen.picks), *ground.stops_left_out()),
            left_open=ground.left_open(),
            on_and_off=dances_in_words(
                setting.slots, self._group.off, ground.names, ground.away, ground.base.position
            ),
            follows=follows(setting.loudness, [setting.cast.heard[k].size for k in at]),
            most=most_by_material(setting),
            returns=setting.wishes.returns,
            unseen=len(setting.unseen & setting.forbidden),
        )
        return draft, show

    def _not_clean(self, finding: Finding | None) -> InputError:
        return not_clean(self.ground, self._before, self._setting, finding)
