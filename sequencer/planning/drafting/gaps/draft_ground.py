"""What a draft starts from: the show file without what was drafted before, on its song; and the slots to be filled."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.errors import InputError
from sequencer.planning.drafting.gaps.entry_starts import entry_starts
from sequencer.planning.drafting.gaps.music import HeardMusic, heard_music, shares_below
from sequencer.planning.drafting.gaps.on_stage import (
    EVER,
    Away,
    LeftOpen,
    at_rest,
    cuts_beside,
    cuts_for_somebody,
    left_in_words,
    nobody_on,
    those_off,
)
from sequencer.planning.drafting.gaps.skipped import Skipped, skipped_in_words
from sequencer.planning.drafting.gaps.slots import (
    SHORTEST_STRETCH,
    STOP_BEATS,
    Fixed,
    Slot,
    SongPart,
    parts_of,
    slots_of,
)
from sequencer.show.drafted import drafted_entries, without_drafted
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.reading import ReadShow, nearest, show_from_document
from sequencer.show.text.document import Document, parse_document
from sequencer.staging.entries.moments import beat_of
from sequencer.staging.entries.wish_faults import wish_faults
from sequencer.staging.on_floor.entrances import spans_off
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.phrases import phrase_length
from sequencer.timing.position import clock_text, parse_moment
from sequencer.timing.song import Song
from sequencer.units import counted

_FAR = 4.0  # [m] between people until they have places; within the file's range for any cast
_NOWHERE = "somewhere, until formations are drafted"
_LOUD = 0.9  # [1] share of loudness in how full the music is; the rest is how busy it is
_CALM, _FULL = (
    (0.0, 0.1),
    (0.75, 0.25),
)  # rank of loudness that a wish gives: least, and share of the music's own


@dataclass(frozen=True, kw_only=True)
class DraftGround:
    """A show file, and what of it stays.

    Parameters
    ----------
    text : str
        The file as it stands.
    document : Document
        What it says.
    whole : ReadShow
        The show as it stands, for faults at their places in the file.
    keep : tuple of int
        Drafted entries of the timeline that stay.
    base : Staged
        The show without what is to be drafted anew.
    heard : Song
        Before the show's corrections.
    section : str, optional
        The only section to be filled.
    span : (float, float) [beats], optional
        The only stretch to be filled.
    """

    text: str
    document: Document
    whole: ReadShow
    keep: tuple[int, ...]
    base: Staged
    heard: Song
    section: str | None = None
    span: tuple[float, float] | None = None
    left: tuple[LeftOpen, ...] = ()  # what must stay open, as the checks found
    skipped: tuple[Skipped, ...] = ()  # where nothing was found that can be danced

    @property
    def is_part(self) -> bool:
        """Whether only a part of the song is drafted: where everybody stands is left alone then."""
        return self.section is not None or self.span is not None

    @cached_property
    def values(self) -> dict[str, Any]:
        """The file's values without what is to be drafted anew."""
        return without_drafted(self.document.values, self.keep, staging=not self.is_part)

    @cached_property
    def lead(self) -> Performer:
        """Whose dance the others follow."""
        wished = self.whole.show.wishes.lead
        cast = self.base.show.cast
        return next((each for each in cast if each.name == wished), cast[0])

    @cached_property
    def dancing(self) -> tuple[Performer, ...]:
        """Who dances what is drafted: everybody, the lead first."""
        return (self.lead, *(each for each in self.base.show.cast if each is not self.lead))

    @property
    def drafts_formations(self) -> bool:
        """Whether nothing that stays says where the group stands, and the whole song is drafted."""
        return len(self.dancing) > 1 and not self.is_part and not self.values.get("staging")

    @cached_property
    def taken(self) -> list[tuple[float, float]]:
        """From when to when somebody who dances has something to do already [beats]."""
        return [
            (block.start, block.end)
            for each in self.dancing
            for block in (*self.base.blocks_of(each.name), *self.base.stops_of(each.name))
        ]

    @cached_property
    def parts(self) -> tuple[SongPart, ...]:
        """The sections of the song in whole beats."""
        return parts_of(self.base.song, self.base.tempo)

    def fault(self, code: str, path: Sequence[str | int], what: str, mend: str) -> InputError:
        """An error at a place in the file."""
        return self.whole.fault(code, path, what, mend)

    def starts(self) -> Mapping[int, float]:
        """When each entry that stays begins [beats], by its place in the file as it stands."""
        gone = set(drafted_entries(self.document.values)) - set(self.keep)
        timeline = self.document.values.get("timeline") or []
        left = [k for k in range(len(timeline)) if k not in gone]
        begins = entry_starts(self.base)
        return {k: begins[n] for n, k in enumerate(left) if n in begins}

    # --- slots ---

    @property
    def _pulled(self) -> bool:
        """Whether somebody dances with a prop that only pulls."""
        return any(own.held().flexible for each in self.dancing for own in each.props.values())

    def slots(self) -> tuple[Slot, ...]:
        """The stretches to fill.

        Raises
        ------
        InputError
            If there is none.
        """
        if self.drafts_formations and self.whole.show.entrances:
            raise self.fault(
                "entrances-without-formations", ("entrances",),
                "whoever comes on or goes off needs a spot, and no formation says where anybody stands",
                "write `formations` and `staging` first, then draft",
            )  # fmt: skip
        off = nobody_on(self.names, self.resting)
        off += cuts_for_somebody(self._cut_at(off), self.names, self.resting)
        phrase = phrase_length(self.base.song.metre)
        off += cuts_beside(self._cut_at(off), self.left, self.names, phrase=phrase)
        slots = self._cut_at(off)
        if slots:
            return slots
        jumps = {each.jump for each in self.skipped if each.jump}
        if jumps:  # until they were left open, there were stretches to fill
            many = "once" if len(jumps) == 1 else f"{len(jumps)} times"
            raise self.fault(
                "count-jumps", ("track", "file"),
                f"the count {self._part_in_words()} jumps {many}, nothing was found that can be danced over that, "
                f"and nowhere are {SHORTEST_STRETCH} beats left to be danced",
                "tap along and give your beats under `track`, `corrections`, `beats`",
            )  # fmt: skip
        if nobody_on(self.names, self.away):
            raise self.fault(
                "nothing-to-fill", ("entrances",),
                f"there is no gap of {SHORTEST_STRETCH} beats or more in which anybody is on the stage",
                "move an entrance or an exit, or take out what should be drafted anew",
            )  # fmt: skip
        if self.unsteady() and not self.taken:
            raise self.fault(
                "no-beat", ("track", "file"), "no steady beat was found in this song",
                "tap along and give your beats under `track`, `corrections`, `beats`",
            )  # fmt: skip
        if self.span is not None:
            start, end = (self.base.position(beat) for beat in self.span)
            raise self.fault(
                "nothing-to-fill", ("timeline",), f"from {start} to {end} there is no gap of {SHORTEST_STRETCH} beats or more",
                "take a longer stretch, or take out what should be drafted anew",
            )  # fmt: skip
        if self.section is None:
            raise self.fault(
                "nothing-to-fill", ("timeline",), f"no gap of {SHORTEST_STRETCH} beats or more is left in the timeline",
                "take out entries that should be drafted anew",
            )  # fmt: skip
        inside = [part for part in self.parts if self.section in (part.name, part.label)]
        beats = max((part.end - part.start for part in inside), default=0)
        if beats < SHORTEST_STRETCH:
            raise self.fault(
                "section-too-short", ("track",),
                f"section {self.section!r} has {beats} beats, too few for any pattern: {SHORTEST_STRETCH} are needed",
                "make it longer under `track`, `corrections`, `sections`, or draft the one before with it",
            )  # fmt: skip
        raise self.fault(
            "nothing-to-fill", ("timeline",), f"section {self.section!r} has no gap of {SHORTEST_STRETCH} beats or more",
            "take out its entries that should be drafted anew",
        )  # fmt: skip

    def _part_in_words(self) -> str:
        """The part of the song that is drafted."""
        if self.span is not None:
            start, end = (self.base.position(beat) for beat in self.span)
            return f"from {start} to {end}"
        return "of this song" if self.section is None else f"of section {self.section!r}"

    def _cut_at(self, off: Sequence[tuple[float, float]]) -> tuple[Slot, ...]:
        """The stretches to fill, where nobody can dance from when to when [beats]."""
        return slots_of(
            self.base.song,
            self.base.tempo,
            taken=[
                *self.taken,
                *off,
                *self.stop_spans(),
                *self.unsteady(),
                *((start, end) for start, end, _ in self.skipped),
                *self._beside_span(),
            ],
            alike=self.whole.show.wishes.returns != "free",
            only=self.section,
            pulled=self._pulled,
        )

    @property
    def names(self) -> tuple[str, ...]:
        """Who dances, in the order of the cast."""
        return tuple(self.base.show.names)

    def off(self, slots: Sequence[Slot]) -> dict[int, frozenset[str]]:
        """Of each slot in which somebody is off the stage for a moment or longer, who that is."""
        return those_off(slots, self.names, self.away)

    def not_dancing(self, slots: Sequence[Slot]) -> dict[int, frozenset[str]]:
        """Of each slot in which somebody is off the stage, lit or put out for a moment or longer, who that is: they do not dance in it."""
        return those_off(slots, self.names, self.resting)

    @property
    def resting(self) -> Away:
        """From when to when each of those who do not dance throughout is off the stage, lit or put out [beats]."""
        return at_rest(self.names, self.away, self.left)

    @cached_property
    def away(self) -> Mapping[str, tuple[tuple[float, float], ...]]:
        """From when to when each of those who are not on stage throughout is off it, or on the way [beats]."""
        found = {each.name: spans_off(each.name, self.base.standings) for each in self.dancing}
        return {
            name: tuple((max(a, -EVER), min(b, EVER)) for a, b in spans)
            for name, spans in found.items()
            if spans
        }

    def _beside_span(self) -> list[tuple[float, float]]:
        """What stays as it is because only a stretch is drafted [beats]."""
        if self.span is None:
            return []
        start, end = self.span
        return [(-EVER, start), (end, EVER)]

    def stops(self) -> list[str]:
        """Names of the sections before which everything stops: all of a shared name, or the one that is numbered."""
        wished = self.whole.show.wishes.stops
        if isinstance(wished, int):
            held = [end for _, end in self.music.breaks]  # where the music itself stops first

            def worth(part: SongPart) -> tuple[bool, bool, float]:
                stops = any(abs(end - part.start) <= 1 for end in held)
                drops = any(abs(beat - part.start) <= 1 for beat in self.music.drops)
                return stops, drops, self.energy(part.start, part.end)

            return [part.name for part in sorted(self.parts[1:], key=worth, reverse=True)[:wished]]
        found: list[str] = []
        for name in wished:
            found += [part.name for part in self.parts if name in (part.name, part.label)]
        return list(dict.fromkeys(found))

    def stop_spans(self) -> list[tuple[float, float]]:
        """From when to when everything stops because of the wishes [beats], by start; only where nothing is written."""
        return sorted(span for span in self._stops_by_section().values() if self._is_open(span))

    def who_stops(self, start: float, end: float) -> list[dict[str, list[str]]]:
        """The key for who rests in a stop, none for everybody: those who are on the stage all the while; empty for nobody."""
        off = {
            name
            for name, spans in self.away.items()
            if any(a < end and b > start for a, b in spans)
        }
        on = [name for name in self.names if name not in off]
        return ([{"who": on}] if off else [{}]) if on else []

    def stops_left_out(self) -> tuple[str, ...]:
        """Wishes for a stop for which there is no room, in words."""
        wished = self.whole.show.wishes.stops
        said = []
        begun = any(start >= 0 for start, _ in self._stops_by_section().values())
        for name, (start, end) in self._stops_by_section().items():
            if start < 0:
                if not isinstance(wished, int) and name not in wished and begun:
                    continue  # of a part that returns, the song begins with the first
                said.append(f"a stop before {name}: the song begins with it")
            elif not self._is_open((start, end)):
                said.append(f"a stop before {name}: something is written there already")
        if not isinstance(wished, int):
            there = {word for part in self.parts for word in (part.name, part.label)}
            said += [
                f"a stop before {n}: too short to be counted" for n in wished if n not in there
            ]
        many = len(self._stops_by_section())
        if isinstance(wished, int) and many < wished:
            said.append(
                f"{counted(wished - many, 'stop')}: the song has {counted(many, 'section')} to stop before"
            )
        return tuple(said)

    def _stops_by_section(self) -> dict[str, tuple[float, float]]:
        """From when to when everything would stop before each section that the wishes name [beats]."""
        begins = {part.name: float(part.start) for part in self.parts}
        return {name: (begins[name] - STOP_BEATS, begins[name]) for name in self.stops()}

    def _is_open(self, span: tuple[float, float]) -> bool:
        """Whether nothing is written from one beat to another, and the song has begun."""
        start, end = span
        return start >= 0 and not any(a < end - 1e-6 and b > start + 1e-6 for a, b in self.taken)

    def unsteady(self) -> list[tuple[float, float]]:
        """From when to when no steady beat was heard [beats]: there nothing is drafted."""
        beat = self.base.tempo.beats_from_seconds
        return [(float(beat(a)), float(beat(b))) for a, b in self.base.song.unsteady]

    def left_open(self) -> tuple[str, ...]:
        """What is not drafted because of the song, in words."""
        seconds = self.base.seconds
        while_lit = left_in_words(
            self.left, self.names, lambda beat: clock_text(self.base.seconds(beat))
        )
        last = self.base.song.duration
        away = tuple(
            f"{clock_text(max(0.0, seconds(a)))} to {clock_text(min(last, seconds(b)))}: nobody is on the stage then"
            for a, b in nobody_on(self.names, self.away)
        )
        skipped = skipped_in_words(
            self.skipped,
            self.slots() if self.skipped else (),
            self.base.tempo,
            lambda beat: clock_text(min(max(0.0, seconds(beat)), last)),
        )
        return (
            while_lit
            + away
            + skipped
            + tuple(
                f"{clock_text(a)} to {clock_text(b)}: no steady beat was heard there, so nothing is drafted; tap along to change that"
                for a, b in self.base.song.unsteady
            )
        )

    def _section_names(self) -> list[str]:
        return list(dict.fromkeys([*(p.name for p in self.parts), *(p.label for p in self.parts)]))

    @cached_property
    def music(self) -> HeardMusic:
        """What the song gives to each of its eights."""
        return heard_music(self.base.song, self.base.tempo)

    def energy(self, start: float, end: float) -> float:
        """How full the song is between two beats, compared with the rest of it [1]."""
        song = self.base.song
        if song.loudness:
            shares = np.array(
                [max(0.0, min(end, e.end) - max(start, e.start)) for e in self.music.eights]
            )
            ranks = [_LOUD * e.loudness + (1 - _LOUD) * e.density for e in self.music.eights]
            if shares.sum() > 0:
                return float(np.dot(shares, ranks) / shares.sum())
        curve = np.array(song.energy or (0.0,))
        low, high = (int(self.base.seconds(b) / song.duration * len(curve)) for b in (start, end))
        return float(curve[max(low, 0) : max(high, low + 1)].mean()) if low < len(curve) else 0.0

    def loudness(self, slots: Sequence[Slot]) -> Floats:
        """How loud each slot is among all stretches of the song, 0 … 1, as the wishes have it, shape (slots,) [1].

        What is written already counts among the stretches, so that one section drafted alone is as full as in the whole song;
        where all are alike, each is in the middle.
        """
        song = [
            self.energy(each.start, each.end)
            for each in slots_of(self.base.song, self.base.tempo, pulled=self._pulled)
        ]
        ranks = shares_below([self.energy(slot.start, slot.end) for slot in slots], song)
        character = self.whole.show.wishes.character
        for k, slot in enumerate(slots):
            kind = character.get(slot.section, character.get(slot.label))
            if kind is not None:
                least, share = _CALM if kind == "calm" else _FULL
                ranks[k] = least + share * ranks[k]
        return ranks

    def fixed(self) -> tuple[Fixed, ...]:
        """What stays as it is, of the one who leads."""
        label = {part.name: part.label for part in self.parts}
        return tuple(
            Fixed(
                start=block.start,
                end=block.end,
                pattern=part.pattern,
                label=label.get(self.base.section_at(block.start), ""),
                material=repr(block.path),
            )
            for block in self.base.blocks_of(self.lead.name)
            for part in block.hands.values()
        )


def ground_of(
    text: str,
    file: str,
    song: Song,
    *,
    section: str | None = None,
    span: tuple[str, str] | None = None,
) -> DraftGround:
    """What a draft of a show file starts from.

    Parameters
    ----------
    text : str
        The file as it stands.
    file : str
        Its name, for messages.
    song : Song
        The analysed song.
    section : str, optional
        The only section to be filled.
    span : (str, str), optional
        The only stretch to be filled, from one moment to another.

    Raises
    ------
    InputError
        If the show cannot be used as it stands, the song has no steady beat, it has no such section, or a wish cannot be met.
    """
    document = parse_document(text.removeprefix("\ufeff"), file)
    whole = show_from_document(document)
    if whole.show is not whole.written:
        raise whole.fault(
            "not-everybody", ("tonight",), "a draft is made for the whole cast, and not everybody is there tonight",
            "press “Everybody is there” under Who, or take `tonight` out of the file, while you draft",
        )  # fmt: skip
    corrections = whole.show.track.corrections
    given = corrections.beats is not None or corrections.steady is not None
    if not given and (len(song.beats) < 2 or not song.downbeats):
        raise whole.fault(
            "no-beat", ("track", "file"), "no steady beat was found in this song",
            "tap along and give your beats under `track`, `corrections`, `beats`",
        )  # fmt: skip
    part = section is not None or span is not None
    inside = _inside(whole, song, section, span) if part else None
    keep = () if inside is None else _outside(whole, song, inside)
    values = without_drafted(document.values, keep, staging=not part)
    if len(whole.show.cast) > 1 and not values.get("staging"):
        values = _somewhere(values, whole.show.names)
    read = show_from_document(replace(document, values=values))
    base = staged(read, song)
    for fault in wish_faults(whole, base.book, base.song):
        raise fault
    return DraftGround(
        text=text,
        document=document,
        whole=whole,
        keep=keep,
        base=base,
        heard=song,
        section=section,
        span=inside[0] if inside is not None and span is not None else None,
    )


def _somewhere(values: Mapping[str, Any], names: Sequence[str]) -> dict[str, Any]:
    """The values with everybody standing far from each other, until formations are drafted."""
    spots = {name: {"at": [str(_FAR * k), "0"]} for k, name in enumerate(names)}
    formations = {**(values.get("formations") or {}), _NOWHERE: {"spots": spots}}
    staging = [{"formation": _NOWHERE, "from": "0:00"}]
    return {**values, "formations": formations, "staging": staging}


def _inside(
    whole: ReadShow, song: Song, section: str | None, span: tuple[str, str] | None
) -> list[tuple[float, float]]:
    """Where a part of the song is that is drafted alone [beats]; where a section's name is shared, several."""
    show = staged(whole, song)
    if span is not None:
        return [_beats_of(whole, show, span)]
    parts = parts_of(show.song, show.tempo)
    inside = [
        (float(each.start), float(each.end)) for each in parts if section in (each.name, each.label)
    ]
    if not inside:
        labels = [each.label for each in show.song.sections]
        raise whole.fault(
            "unknown-section", ("track",), f"the song has no section {section!r}",
            nearest(str(section), list(dict.fromkeys([*show.song.section_names(), *labels]))),
        )  # fmt: skip
    return inside


def _beats_of(whole: ReadShow, show: Staged, span: tuple[str, str]) -> tuple[float, float]:
    try:
        start, end = (beat_of(parse_moment(each), show.song, show.tempo) for each in span)
    except ValueError as error:
        raise whole.fault(
            "no-such-moment", ("timeline",), str(error),
            "write bar.beat (17.3), m:ss.s of the track (1:02.5) or a section (verse 2)",
        ) from error  # fmt: skip
    return start, max(start, end)


def _outside(whole: ReadShow, song: Song, inside: Sequence[tuple[float, float]]) -> tuple[int, ...]:
    """Drafted entries that do not begin in a part of the song."""
    begins = entry_starts(staged(whole, song))
    return tuple(
        k
        for k in drafted_entries(whole.document.values)
        if not any(low - 1e-6 <= begins.get(k, -1.0) < high - 1e-6 for low, high in inside)
    )
