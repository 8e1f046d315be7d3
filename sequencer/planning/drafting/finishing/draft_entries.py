"""A chosen routine as phrases and entries of a show file: parts that return become phrases that are used again."""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.auditioning.sizes import written
from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.show.drafted import DraftedRow, FileRow

Link = int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SlotDance:
    """What is danced in a slot: the move, beats kept free before it, and the link behind it."""

    slot: Slot
    move: DraftMove
    lead: int = 0  # [beats] of a link before it, out of what a person wrote
    link: int = 0  # [beats] of the link behind it
    mirror: tuple[str, ...] = ()  # who dances it with left and right swapped
    rest: int = 0  # [beats] by which it ends early, so that it is as long as where it leads on
    comes: Mapping[str, int] = field(default_factory=dict)  # [beats] how late everybody begins it
    leaves: Mapping[str, int] = field(default_factory=dict)  # [beats] how late everybody ends it
    remark: str = ""  # how a group dances it, for a reader of the file
    alone: str = ""  # who dances it, while the others do something else
    others: tuple[str, ...] = ()  # these
    support: DraftMove | None = None  # what they begin here
    support_beats: int = 0  # [beats] of it, to the end of the part
    goes_on: bool = False  # whether it goes on into the next slot
    off: tuple[str, ...] = ()  # who is off the stage meanwhile
    who: tuple[str, ...] = ()  # who dances it, where somebody is off here or in the next slot
    ends: tuple[str, ...] = ()  # who of them ends with it, while the others go on
    ends_early: int = 0  # [beats] by which these end before the slot does

    @property
    def step(self) -> dict[str, Any]:
        """The block as a step of a phrase."""
        return self._step(self.move, self.slot.beats - self.lead - self.link - self.rest)

    @property
    def support_step(self) -> dict[str, Any]:
        """What the others begin here, as a step."""
        return {} if self.support is None else self._step(self.support, self.support_beats)

    @property
    def words(self) -> str:
        """What is danced, in words."""
        if self.off:
            return f"{self.move.words}, {self._by}"
        if not self.alone:
            return self.move.words
        beside = f"; the others: {self.support.words}" if self.support else ""
        return f"{self.move.words}, {self.alone} alone{beside}"

    @property
    def _by(self) -> str:
        if len(self.who) == 1:
            return f"{self.who[0]} alone"
        *others, last = self.off
        return f"without {', '.join(others)} and {last}" if others else f"without {last}"

    @property
    def whose(self) -> dict[str, list[str]]:
        """The key for who dances it; none for everybody."""
        return {"who": list(self.who)} if self.off else {}

    @property
    def turns(self) -> dict[tuple[int, int], list[str]]:
        """Who begins and who ends it how late [beats], by these two; no names for everybody."""
        if not self.who:
            return _together(self.comes, self.leaves)
        more = self.link + self.rest - self.ends_early
        leaves = {name: more if name in self.ends else 0 for name in self.who}
        return _together(dict.fromkeys(self.who, 0), leaves)

    @staticmethod
    def _step(move: DraftMove, beats: int) -> dict[str, Any]:
        row: dict[str, Any] = {"pattern": move.pattern}
        if move.timing != "split" and not move.one_hand:
            row["timing"] = move.timing
        if move.direction != "same" and not move.one_hand:
            row["direction"] = move.direction
        if not move.usual:
            row["cycle"] = _number(move.cycle)
        if move.shift:
            row["shift"] = _number(move.shift)
        if move.sized is not None:
            row["with"] = written(*move.sized)
        row["beats"] = beats
        return row


def _number(value: float) -> int | float:
    return int(value) if float(value).is_integer() else round(value, 6)


def rows_of(
    danced: Sequence[SlotDance],
    position: Callable[[float], str],
    *,
    names: Collection[str] = (),
    besides: Mapping[str, Any] | None = None,
) -> tuple[dict[str, list[FileRow]], list[DraftedRow]]:
    """Phrases, and entries of the timeline.

    Parameters
    ----------
    danced : sequence of SlotDance
        By start.
    position : callable
        bar.beat of a beat coordinate.
    names : collection of str
        Of phrases that a person wrote.
    besides : mapping, optional
        Keys that every entry gets, such as who dances it.
    """
    runs = _runs(danced)
    bodies = [_steps(run) for run in runs]
    phrases: dict[str, list[FileRow]] = {}
    rows: list[DraftedRow] = []
    named = _phrases_for(runs, bodies, names)
    for run, body in zip(runs, bodies, strict=True):
        first = run[0]
        at = float(first.slot.start)
        if not _at_once(run):
            rows += _in_turn(run, position, besides or {})
            continue
        own = {**(besides or {}), **first.whose}
        swapped = {"mirror": list(first.mirror)} if first.mirror else {}
        if first.lead:
            link = {"from": position(at), **own, "link": True, "beats": first.lead}
            rows.append(DraftedRow(values=link, at=at, remark=first.slot.section))
            at += first.lead
        name, used = named.get(id(run), ("", 0))
        if name:
            phrases.setdefault(name, [dict(step) for step in body[:used]])
            values = {"from": position(at), **own, "phrase": name, **swapped}
            rows.append(DraftedRow(values=values, at=at, remark=first.slot.section))
            at += sum(step["beats"] for step in body[:used])
        for k, step in enumerate(body[used:]):
            remark = first.slot.section if k == 0 and not used else ""
            how = swapped if "pattern" in step else {}
            rows.append(
                DraftedRow(
                    values={"from": position(at), **own, **step, **how},
                    at=at,
                    remark=remark,
                )
            )
            at += step["beats"]
    return phrases, rows


def _runs(danced: Sequence[SlotDance]) -> list[list[SlotDance]]:
    """Stretches that follow each other in one section."""
    runs: list[list[SlotDance]] = []
    for each in danced:
        last = runs[-1][-1] if runs else None
        if last and last.slot.section == each.slot.section and last.slot.end == each.slot.start:
            runs[-1].append(each)
        else:
            runs.append([each])
    return runs


def _at_once(run: Sequence[SlotDance]) -> bool:
    """Whether the same people dance all of a section together."""
    alike = all(each.whose == run[0].whose for each in run)
    return alike and not any(each.leaves or each.alone or each.ends for each in run)


def _steps(run: Sequence[SlotDance]) -> list[dict[str, Any]]:
    """The steps of a section, with the link out of it."""
    steps: list[dict[str, Any]] = []
    for each in run:
        steps.append(each.step)
        if each.link:
            steps.append({"link": True, "beats": each.link})
    return steps


def _phrases_for(
    runs: Sequence[list[SlotDance]], bodies: Sequence[list[dict[str, Any]]], names: Collection[str]
) -> dict[int, tuple[str, int]]:
    """For each run that uses a phrase, its name and how many of the run's steps it has."""
    out: dict[int, tuple[str, int]] = {}
    labels = dict.fromkeys(run[0].slot.label for run in runs)
    for label in labels:
        same = [k for k, run in enumerate(runs) if run[0].slot.label == label and _at_once(run)]
        if len(same) < 2:
            continue
        name, number = label, 1
        left = same
        while len(left) > 1:
            first = bodies[left[0]]
            shared = {k: _common(first, bodies[k]) for k in left[1:]}
            length = max(shared.values())
            if length == 0:
                left = left[1:]
                continue
            taking = [left[0], *(k for k, n in shared.items() if n >= length)]
            while name in names or any(name == own for own, _ in out.values()):
                number += 1
                name = f"{label} {_letter(number)}"
            out |= {id(runs[k]): (name, length) for k in taking}
            left = [k for k in left if k not in taking]
    return out


def _in_turn(
    run: Sequence[SlotDance], position: Callable[[float], str], besides: Mapping[str, Any]
) -> list[DraftedRow]:
    """The entries of a section in which some go on later than others, or one dances alone."""
    rows: list[DraftedRow] = []

    def add(at: float, names: Sequence[str], values: Mapping[str, Any]) -> None:
        who = {"who": list(names)} if names else {}
        said = ": ".join(filter(None, (run[0].slot.section, note)))
        remark = "" if rows else said
        rows.append(
            DraftedRow(
                values={"from": position(at), **besides, **who, **values}, at=at, remark=remark
            )
        )

    note = next((each.remark for each in run if each.remark), "")
    for each in run:
        start = float(each.slot.start)
        if each.lead:
            add(start, each.who, {"link": True, "beats": each.lead})
            start += each.lead
        if each.alone:
            add(start, [each.alone], each.step)
            if each.support is not None:
                add(start, each.others, each.support_step)
            if each.link:
                at = each.slot.end - each.link
                add(at, [each.alone] if each.goes_on else (), {"link": True, "beats": each.link})
            continue
        for (come, leave), names in each.turns.items():
            mirrored = [name for name in each.mirror if not names or name in names]
            swapped = {"mirror": mirrored} if mirrored else {}
            beats = each.step["beats"] + leave - come
            add(start + come, names, {**each.step, "beats": beats, **swapped})
        if each.link:
            link = {"link": True, "beats": each.link}
            going = dict.fromkeys([name for name in each.who if name not in each.ends], 0)
            for (late, _), names in _together(each.leaves or going, {}).items():
                add(each.slot.end - each.link + late, names, link)
    return rows


def _together(
    first: Mapping[str, int], second: Mapping[str, int]
) -> dict[tuple[int, int], list[str]]:
    """Who has the same two beats, by them; no names where nobody has any."""
    found: dict[tuple[int, int], list[str]] = {}
    for name in {**first, **second}:
        found.setdefault((first.get(name, 0), second.get(name, 0)), []).append(name)
    return dict(sorted(found.items())) or {(0, 0): []}


def _letter(number: int) -> str:
    return "way " + str(number)


def _common(first: Sequence[FileRow], second: Sequence[FileRow]) -> int:
    """How many steps two sections begin with alike."""
    count = 0
    for a, b in zip(first, second, strict=False):
        if a != b:
            break
        count += 1
    return count
