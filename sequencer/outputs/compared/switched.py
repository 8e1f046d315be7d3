"""What a switch of who is there changed: who stands where, what falls out or is danced again, who leads, and which jobs nobody has.

Three stagings of one show are held against each other: before the switch, after it, and with everybody there.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from sequencer.outputs.compared.comparing import sheet_rows
from sequencer.outputs.compared.show_changes import Eight
from sequencer.outputs.words.block_words import block_words
from sequencer.outputs.words.entrance_words import only_entrances
from sequencer.safety.duties.people import JOB_WORDS, jobs_of
from sequencer.show.model import Fire, Show
from sequencer.staging.entries.danced_entries import entry_of_blocks
from sequencer.staging.staged import Block, Staged
from sequencer.timing.position import TOUCH
from sequencer.units import counted

_DIGITS = 6  # of a beat by which blocks are known again


@dataclass(frozen=True, slots=True, kw_only=True)
class PartTonight:
    """Who has a part of the cast or a post of the crew, before a switch and after it."""

    part: str
    group: Literal["cast", "crew"]
    before: str | None  # who had it; None: nobody
    after: str | None
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A spot of a formation, and who stands on it; nobody if its performer is away."""

    part: str
    person: str | None
    at: tuple[float, float]  # [m, stage frame]


@dataclass(frozen=True, slots=True, kw_only=True)
class StandsNow:
    """A formation as it stands tonight."""

    formation: str
    position: str  # bar.beat from which it stands
    second: float  # of the track
    spots: tuple[Spot, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RowOfPart:
    """What changes of a part in one row of the sheet, an eight."""

    bar: int
    position: str  # bar.beat of the first move
    second: float  # of the track
    moves: int
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionOfPart:
    """What changes of a part in one section of the song."""

    section: str
    moves: int
    rows: tuple[RowOfPart, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartChange:
    """What falls out of a part, comes back, or is danced differently by whoever takes it."""

    part: str
    kind: Literal["out", "back", "otherwise"]
    moves: int  # moves and stops; links are none
    sections: tuple[SectionOfPart, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TogetherChange:
    """A canon that another one leads, or a mirror with another side."""

    kind: Literal["canon", "mirror"]
    title: str  # what is danced
    position: str
    second: float  # of the track
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobTonight:
    """A job of somebody who is away, or was before the switch."""

    part: str
    job: str
    state: Literal["open", "still open", "filled"]
    left: tuple[str, ...]  # others who have the same duty


@dataclass(frozen=True, slots=True, kw_only=True)
class Switched:
    """All that a switch changed."""

    parts: tuple[PartTonight, ...]
    stands: tuple[StandsNow, ...]
    changes: tuple[PartChange, ...]
    together: tuple[TogetherChange, ...]
    jobs: tuple[JobTonight, ...]


def switched(before: Staged, after: Staged, everybody: Staged) -> Switched:
    """What a switch changed.

    Parameters
    ----------
    before, after : Staged
        The show before the switch, and as it is danced now.
    everybody : Staged
        The show with everybody in their own part.
    """
    return Switched(
        parts=tuple(_parts(before, after, everybody.show)),
        stands=tuple(_stands(after, everybody)),
        changes=tuple(_part_changes(before, after)),
        together=tuple(_together(before, after, everybody)),
        jobs=tuple(_jobs(before, after, everybody)),
    )


# --- who ---


def _parts(before: Staged, after: Staged, written: Show) -> Iterator[PartTonight]:
    groups: tuple[tuple[Literal["cast", "crew"], tuple[str, ...]], ...] = (
        ("cast", written.names),
        ("crew", tuple(post.name for post in written.crew)),
    )
    for group, parts in groups:
        for part in parts:
            was, now = (_person(show, part, group) for show in (before, after))
            if was != now:
                words = _part_words(part, was, now, group)
                yield PartTonight(part=part, group=group, before=was, after=now, words=words)


def _person(show: Staged, part: str, group: Literal["cast", "crew"]) -> str | None:
    """Who has a part tonight; None if nobody has."""
    there = show.show.names if group == "cast" else tuple(post.name for post in show.show.crew)
    return show.taken_by(part) if part in there else None


def _part_words(part: str, was: str | None, now: str | None, group: Literal["cast", "crew"]) -> str:
    if now is None:
        return f"{part} is away" if was == part else f"{part}’s part: {was} is away too"
    if now == part:
        return (
            f"{part} is there again" if was is None else f"{part} is there again, instead of {was}"
        )
    takes = f"{now} {'dances the part' if group == 'cast' else 'takes the post'} of {part}"
    return takes if was in (None, part) else f"{takes}, instead of {was}"


# --- where ---


def _stands(after: Staged, everybody: Staged) -> Iterator[StandsNow]:
    """Each formation as it stands now; the spot of somebody who is away stays empty."""
    now = {(each.path, round(each.walk, _DIGITS)): each for each in after.standings}
    for standing in everybody.standings:
        own = now.get((standing.path, round(standing.walk, _DIGITS)))
        if own is None or only_entrances(standing):
            continue
        spots = tuple(
            Spot(
                part=part,
                person=after.taken_by(part) if part in own.spots else None,
                at=_place(spot),
            )
            for part, spot in standing.spots.items()
        )
        yield StandsNow(
            formation=standing.formation, position=after.position(standing.start),
            second=after.seconds(standing.start), spots=spots,
        )  # fmt: skip


def _place(spot: Sequence[float]) -> tuple[float, float]:
    return round(spot[0], 3), round(spot[1], 3)


# --- what is danced ---


def _part_changes(before: Staged, after: Staged) -> Iterator[PartChange]:
    was, now = _moves(before), _moves(after)
    names = before.show.names if before.read is None else before.read.written.names
    rows = sheet_rows(after, max([0.0, *(each.start for each in (*was.values(), *now.values()))]))
    for part in names:
        out = [block for key, block in was.items() if key[0] == part and key not in now]
        back = [block for key, block in now.items() if key[0] == part and key not in was]
        other = {
            key: block
            for key, block in now.items()
            if key[0] == part and key in was and before.taken_by(part) != after.taken_by(part)
        }
        changed = {
            id(block): words
            for key, block in other.items()
            if (words := _otherwise(was[key], block, before, after))
        }
        found: tuple[tuple[Literal["out", "back", "otherwise"], list[Block], dict[int, str]], ...] = (
            ("out", out, {}),
            ("back", back, {}),
            ("otherwise", [each for each in other.values() if id(each) in changed], changed),
        )  # fmt: skip
        for kind, blocks, said in found:
            if blocks:
                sections = _by_section(blocks, after, rows, said)
                yield PartChange(part=part, kind=kind, moves=len(blocks), sections=sections)


def _moves(show: Staged) -> dict[tuple[object, ...], Block]:
    """Moves and stops by whose they are, where they are written and when they are danced; links and rests are none."""
    return {
        (each.who, each.path, round(each.start, _DIGITS), round(each.end, _DIGITS)): each
        for each in (*show.blocks, *show.stops)
        if not each.link and each.stop != "rest"
    }


def _otherwise(was: Block, now: Block, before: Staged, after: Staged) -> str:
    """How somebody else dances a move, by their own body and props; empty if in nothing."""
    dancers = [
        next(each for each in show.dancers if each.name == now.who) for show in (before, after)
    ]
    old, new = (block_words(*each) for each in zip((was, now), dancers, strict=True))
    if old == new:
        return ""
    return "; ".join(line for line in new if line not in old) or "in the usual place"


def _by_section(
    blocks: Sequence[Block], show: Staged, rows: Sequence[Eight], words: dict[int, str]
) -> tuple[SectionOfPart, ...]:
    """Moves by the section and the row of the sheet in which they begin."""
    found: dict[str, dict[int, list[Block]]] = {}
    for block in sorted(blocks, key=lambda each: each.start):
        row = max(
            (k for k, each in enumerate(rows) if each.start <= block.start + TOUCH), default=0
        )
        found.setdefault(rows[row].section, {}).setdefault(row, []).append(block)
    return tuple(
        SectionOfPart(
            section=section,
            moves=sum(map(len, by_row.values())),
            rows=tuple(_row(rows[row].bar, own, show, words) for row, own in by_row.items()),
        )
        for section, by_row in found.items()
    )


def _row(bar: int, blocks: Sequence[Block], show: Staged, words: dict[int, str]) -> RowOfPart:
    said = Counter(
        f"{each.title}: {words[id(each)]}" if id(each) in words else each.title for each in blocks
    )
    return RowOfPart(
        bar=bar, position=show.position(blocks[0].start), second=show.seconds(blocks[0].start),
        moves=len(blocks),
        words=", ".join(each if many == 1 else f"{each} ({many} times)" for each, many in said.items()),
    )  # fmt: skip


# --- who leads ---


def _together(before: Staged, after: Staged, everybody: Staged) -> Iterator[TogetherChange]:
    """Canons and mirrors in which somebody has gone or come."""
    first: dict[int, Block] = {}
    entries = entry_of_blocks(everybody)
    for block in (*everybody.blocks, *everybody.stops):
        k = entries.get(id(block))
        if k is not None and (k not in first or block.start < first[k].start):
            first[k] = block
    for k, entry in enumerate(everybody.show.timeline):
        if k not in first:
            continue
        names = everybody.show.names
        order = names if "all" in entry.who else tuple(dict.fromkeys(entry.who))
        was, now = ([name for name in order if name in show.show.names] for show in (before, after))
        if [before.taken_by(each) for each in was] == [after.taken_by(each) for each in now]:
            continue
        told: tuple[tuple[Literal["canon", "mirror"], str], ...] = (
            ("canon", _canon_words(entry.canon, order, (was, before), (now, after))),
            ("mirror", _mirror_words(set(order) if "all" in entry.mirror else set(entry.mirror), was, now, after)),
        )  # fmt: skip
        for kind, words in told:
            if words:
                start = first[k].start
                yield TogetherChange(
                    kind=kind, title=entry.phrase or first[k].title, position=after.position(start),
                    second=after.seconds(start), words=words,
                )  # fmt: skip


def _canon_words(
    late: float | None,
    order: Sequence[str],
    earlier: tuple[Sequence[str], Staged],
    later: tuple[Sequence[str], Staged],
) -> str:
    """Who leads a canon now; empty if the same as before."""
    (was, before), (now, show) = earlier, later
    if not late or len(order) < 2:
        return ""
    if not now:
        return f"nobody dances it: {_listed(was)} away"
    leader = show.taken_by(now[0])
    after = counted(round(late * order.index(now[0]), 3), "count")
    begins = "at its first count" if now[0] == order[0] else f"{after} after its first count"
    if len(now) == 1:
        return f"{leader} dances it alone, {begins}: no canon is left"
    if was and was[0] == now[0]:
        old = before.taken_by(was[0])
        if old != leader:
            return f"{leader} leads it now, {begins}, in the place of {old}"
        return "" if len(was) > 1 else f"{leader} leads it again, {begins}"
    lost = f", since {was[0]} is away" if was and was[0] not in now else ""
    return f"{leader} leads it now, {begins}{lost}"


def _mirror_words(swapped: set[str], was: Sequence[str], now: Sequence[str], show: Staged) -> str:
    """Who mirrors whom now; empty if nobody mirrors anybody, before or after."""
    sides = [
        ([name for name in there if name not in swapped], [name for name in there if name in swapped])
        for there in (was, now)
    ]  # fmt: skip
    (plain_before, other_before), (plain, other) = sides
    mirrored_before, mirrored = bool(plain_before and other_before), bool(plain and other)
    if not swapped or not (mirrored_before or mirrored):
        return ""
    if mirrored:
        return f"{_listed(other, show)} {_verb(other, 'mirrors')} {_listed(plain, show)}"
    if other:
        return f"{_listed(other, show)} {_verb(other, 'dances')} the mirror image of nobody: {_listed(plain_before)} away"
    if plain:
        return f"nobody mirrors {_listed(plain, show)}: {_listed(other_before)} away"
    return f"nobody dances it: {_listed(was)} away"


def _verb(who: Sequence[str], verb: str) -> str:
    return verb if len(who) == 1 else verb.removesuffix("s")


def _listed(names: Sequence[str], show: Staged | None = None) -> str:
    """Names in a row, with whoever takes each part tonight; without a show, with the verb: "Ash and Birch are"."""
    said = list(names) if show is None else [show.taken_by(name) for name in names]
    joined = said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"
    if show is not None:
        return joined
    return f"{joined} {'is' if len(said) == 1 else 'are'}"


# --- jobs ---


def _jobs(before: Staged, after: Staged, everybody: Staged) -> Iterator[JobTonight]:
    """Jobs of crew and safety that nobody has now, or had before."""
    people = {*everybody.show.names, *(post.name for post in everybody.show.crew)}
    there: Callable[[Staged, str], bool] = _is_there
    jobs = [(*each, there) for each in dict.fromkeys(_written_jobs(everybody.show))]
    jobs += [(*each, _has_a_part) for each in dict.fromkeys(_jobs_of_the_card(everybody))]
    for part, job, duty, is_there in jobs:
        was, now = (is_there(show, part) for show in (before, after))
        if (was and now) or part not in people:  # the stop call may name all, or a duty
            continue
        left = tuple(after.taken_by(each.name) for each in after.show.crew if each.duty == duty)
        state: Literal["open", "still open", "filled"] = (
            "filled" if now else "open" if was else "still open"
        )
        yield JobTonight(part=part, job=job, state=state, left=left if not now else ())


def _is_there(show: Staged, part: str) -> bool:
    return part in show.show.names or any(post.name == part for post in show.show.crew)


def _has_a_part(show: Staged, person: str) -> bool:
    """Whether somebody is there in person: the card names people, whoever has their part tonight."""
    parts = (*show.show.names, *(post.name for post in show.show.crew))
    return any(show.taken_by(part) == person for part in parts)


def _jobs_of_the_card(everybody: Staged) -> Iterator[tuple[str, str, str]]:
    """Jobs that the emergency card gives to somebody by name."""
    for job in jobs_of(everybody):
        if job.written.startswith("emergency"):
            yield job.who, f"{JOB_WORDS[job.kind]}, by the emergency card", ""


def _written_jobs(show: Show) -> Iterator[tuple[str, str, str]]:
    """Jobs that the file gives by name: whose they are, the job in words, and the duty, if it is one."""
    for post in show.crew:
        yield post.name, f"{post.duty} at the post", post.duty
        for name in post.watches:
            yield post.name, f"watches {'everybody' if name == 'all' else name}", ""
    if show.fire is not None:
        yield from _jobs_with_fire(show.fire)
    for name in show.stop_call.callers:
        yield name, "calls the stop", ""
    for name, does in show.stop_call.does.items():
        yield name, f"at the stop call: {', '.join(does)}", ""


def _jobs_with_fire(fire: Fire) -> Iterator[tuple[str, str, str]]:
    if fire.handling.lit_by:
        yield fire.handling.lit_by, "lights the props", ""
    for span in fire.lit:
        who = " and ".join(span.who)
        if span.lit_by:
            yield span.lit_by, f"lights {who}", ""
        if span.put_out_by:
            yield span.put_out_by, f"puts {who} out", ""
