"""What a group does besides the lead's routine: where it stands in each part of the song, who is mirrored, who is late.

Everybody dances the lead's routine in unison or, in parts that are neither the loudest nor the calmest, in mirrored pairs (the
partner on the other side of the formation swaps left and right), in canon, as call and answer, or as a solo of the lead with the
others in support. Formations are drafted only
where the file stages none: shapes of which the spacing holds for everybody's whole reach, whatever is danced when, taken by
walks in the first stretch of a part.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations
from math import dist

from sequencer.checks.distances.rule_distances import required_distances
from sequencer.planning.drafting.gaps.draft_ground import DraftGround
from sequencer.planning.drafting.gaps.slots import Slot, SongPart
from sequencer.planning.drafting.grouping.formation_plan import (
    FormationPart,
    FormationStep,
    formation_plan,
)
from sequencer.planning.drafting.grouping.staggering import CANON, Lateness, Spots, staggered
from sequencer.planning.drafting.grouping.standing_room import standing_room
from sequencer.planning.drafting.grouping.where_to_stand import (
    fitting_formations,
    mirrored_partners,
)
from sequencer.show.drafted import DraftedRow, FileRow
from sequencer.show.file_records.performer_record import Performer

_LEAST = 16  # [beats] of a part that gets a formation of its own
_KEPT = 64  # [beats] eight eights, for which a formation is kept at least where little walking is wished
_ROUNDED = 0.02  # [m] that two places may lose when they are written in whole centimetres
_MOST_WALK = 14.0  # [beats]
_EASY_WALK = 8  # [beats] that a walk takes at least: nobody hurries if there is time
_UNISON = 0.66  # rank of loudness from which all dance alike


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupDraft:
    """Where a group stands, who is mirrored, and who goes on later than the first."""

    formations: Mapping[str, FileRow]  # to write, by name
    staging: tuple[DraftedRow, ...]  # to write
    walked: frozenset[int]  # slots in which somebody walks
    mirrored: Mapping[int, tuple[str, ...]]  # of each slot, in the order of the cast
    late: Mapping[int, Lateness] = field(default_factory=dict)  # of the passage out of each slot
    kinds: Mapping[int, str] = field(default_factory=dict)  # of those: canon or answer
    solos: frozenset[int] = frozenset()  # slots in which whoever leads dances alone
    room: float = 0.0  # [m] around everybody where formations are written; 0 where they are drafted
    off: Mapping[int, frozenset[str]] = field(default_factory=dict)  # who does not dance in a slot

    @property
    def words(self) -> tuple[str, ...]:
        """The formations taken, in words."""
        return tuple(str(row.values["formation"]) for row in self.staging)

    def remark(self, k: int, lead: str) -> str:
        """How a slot is left, for a reader of the file."""
        if k in self.solos:
            return f"solo of {lead}, the others in support"
        if self.kinds.get(k) == CANON:
            return f"in canon, {lead} first"
        return f"call and answer, {lead}'s side calls" if k in self.kinds else ""


ALONE = GroupDraft(formations={}, staging=(), walked=frozenset(), mirrored={})


def group_draft(ground: DraftGround, slots: Sequence[Slot], *, in_turn: bool = True) -> GroupDraft:
    """Where a group stands, who is mirrored, and who goes on later than the first.

    Parameters
    ----------
    ground : DraftGround
    slots : sequence of Slot
    in_turn : bool
        Whether some parts may be danced in canon, or as call and answer.

    Raises
    ------
    InputError
        If no formation fits on the stage, or none can be walked to.
    """
    if len(ground.dancing) < 2:
        return replace(ALONE, walked=_walked(ground, slots))
    off = ground.not_dancing(slots)
    if ground.drafts_formations:
        steps = _steps(ground)
        spots = [
            next(
                s.formation.spots for s in reversed(steps) if s.start <= slot.start or s is steps[0]
            )
            for slot in slots
        ]
        walks = [(step.start, step.start + step.beats) for step in steps if step.beats]
        walked = frozenset(
            k
            for k, slot in enumerate(slots)
            if any(a < slot.end and b > slot.start for a, b in walks)
        )
        formations, staging = _written(ground, steps)
        room = 0.0
    else:
        base = ground.base.standings
        spots = [
            dict(next((s for s in reversed(base) if s.walk <= slot.start), base[0]).spots)
            for slot in slots
        ]
        walked, formations, staging = _walked(ground, slots), {}, ()
        room = _room(ground, slots)
    between, calmest = _between(ground, slots)
    whole = _by_all(slots, off)
    turns = staggered(
        slots,
        spots,
        [label for label in between if label in whole],
        lead=ground.lead.name,
        names=ground.base.show.names,
        walked=walked if in_turn else frozenset(range(len(slots))),
        calmest=calmest if calmest in whole else None,
    )
    some = {k for k, slot in enumerate(slots) if slot.label in between and slot.label not in whole}
    there = [
        {name: spot for name, spot in each.items() if name not in off.get(k, ())}
        for k, each in enumerate(spots)
    ]
    return GroupDraft(
        formations=formations,
        staging=staging,
        walked=walked,
        mirrored=_mirrored(ground, there, sorted(turns.pairs | some)),
        late=turns.late,
        kinds=turns.kinds,
        solos=turns.solos,
        room=room,
        off=off,
    )


def _by_all(slots: Sequence[Slot], off: Mapping[int, frozenset[str]]) -> set[str]:
    """Labels of parts that everybody dances, with whatever comes right before and behind them: only there one goes on after another."""
    near = {n for k in off for n in (k - 1, k, k + 1)}
    some = {slot.label for k, slot in enumerate(slots) if k in near}
    return {slot.label for slot in slots} - some


def _room(ground: DraftGround, slots: Sequence[Slot]) -> float:
    """How far from the body's axis all may reach at once wherever they stand in the slots, as the file stages it [m]; 0 for no room at all."""
    names, off = [each.name for each in ground.dancing], ground.off(slots)
    between = (
        dist(one.spots[a][:2], one.spots[b][:2])
        for one in ground.base.standings
        for k, slot in enumerate(slots)
        if one.walk < slot.end and one.end > slot.start
        for a, b in combinations(
            [name for name in names if name in one.spots and name not in off.get(k, ())], 2
        )
    )
    apart = min(between, default=0.0)
    return max(0.0, 0.5 * (apart - required_distances(ground.base).performers))


def _walked(ground: DraftGround, slots: Sequence[Slot]) -> frozenset[int]:
    """Slots in which somebody walks who dances in them, as the file stages it."""
    stood, off = ground.base.standings, ground.not_dancing(slots)
    walks = [
        (
            one.walk,
            one.start,
            {name for name in one.spots if one.spots[name] != before.spots.get(name)},
        )
        for before, one in zip((stood[0], *stood), stood, strict=False)
        if one.start > one.walk
    ]
    return frozenset(
        k
        for k, slot in enumerate(slots)
        if any(
            a < slot.end and b > slot.start and who - off.get(k, frozenset()) for a, b, who in walks
        )
    )


def _steps(ground: DraftGround) -> tuple[FormationStep, ...]:
    """The formation of each part of the song."""
    base, required = ground.base, required_distances(ground.base)
    names = list(base.show.names)
    reach = {dancer.name: dancer.reach for dancer in base.dancers}
    if base.venue.stage is None:
        raise ground.fault(
            "no-stage", ("venue",), "the venue has no stage, so nothing says where a group can stand",
            "give `stage` under `venue`, or write the formations yourself",
        )  # fmt: skip
    lit = bool(base.lit)
    apart = required.performers + _ROUNDED
    room = standing_room(
        base.venue,
        reach=max(reach.values()),
        girth=max(each.body.girth - each.body.half_breadth for each in ground.dancing),
        audience=required.audience + required.audience_more if lit else required.scenery,
        required=required,
    )
    formations = fitting_formations(
        names, [reach[name] for name in names], required=apart, room=room
    )
    if not formations:
        raise ground.fault(
            "stage-too-small", ("venue", "stage"),
            f"no formation of {len(names)} fits on this stage: each reaches {max(reach.values()):.2f} m and must stay "
            f"{required.performers:.2f} m from the others",
            "give a larger stage, shorter props, or write the formations yourself",
        )  # fmt: skip
    steps = formation_plan(
        _parts(ground), formations, walking=reach, required=apart, tempo=base.tempo
    )
    if steps is None:
        raise ground.fault(
            "no-walk", ("venue", "stage"), "no formations were found between which the group can walk in time",
            "write `walking: none` under `wishes`, or the formations yourself",
        )  # fmt: skip
    return tuple(
        replace(step, beats=max(step.beats, _EASY_WALK)) if step.beats else step for step in steps
    )


def _parts(ground: DraftGround) -> list[FormationPart]:
    """The parts of the song that get a formation each; the others stay in the one before.

    With much walking every part of two eights or more has its formation, the same each time. With little, one is taken where something new
    begins, and is kept for a while; what returns is danced where the group stands by then.
    """
    wished = ground.whole.show.wishes.walking
    danced: set[str] = set()
    found: list[FormationPart] = []
    for part in ground.parts:
        moves = wished != "none" and part.end - part.start >= _LEAST
        if found and wished == "little":
            moves &= part.label not in danced and part.start - found[-1].start >= _KEPT
        danced.add(part.label)
        if not found or (moves and part.label != found[-1].label):
            found.append(_part(ground, part))
        else:
            last = found[-1]
            loudness = ground.energy(last.start, part.end) if wished == "little" else last.loudness
            found[-1] = replace(last, end=float(part.end), loudness=loudness)
    return found


def _part(ground: DraftGround, part: SongPart) -> FormationPart:
    return FormationPart(
        label=part.label,
        start=float(part.start),
        end=float(part.end),
        loudness=ground.energy(part.start, part.end),
        walk=min(_MOST_WALK, float(part.end - part.start) - 2),
    )


def _written(
    ground: DraftGround, steps: Sequence[FormationStep]
) -> tuple[dict[str, FileRow], tuple[DraftedRow, ...]]:
    """Formations and staging as the file has them."""
    taken = set(ground.values.get("formations") or {})
    names: dict[int, str] = {}
    formations: dict[str, FileRow] = {}
    staging = []
    before = None
    for step in steps:
        if before is not None and step.formation is before:
            continue
        if id(step.formation) not in names:
            names[id(step.formation)] = name = _free(step.formation.name, {*taken, *formations})
            formations[name] = {"spots": _places(step.formation.spots)}
        row = {
            "formation": names[id(step.formation)],
            "from": ground.base.position(step.start),
            **({"beats": step.beats} if before is not None else {}),
        }
        staging.append(DraftedRow(values=row, at=step.start))
        before = step.formation
    return formations, tuple(staging)


def _places(spots: Mapping[str, tuple[float, float, float]]) -> dict[str, FileRow]:
    return {
        name: {
            "at": [round(x, 2) + 0.0, round(y, 2) + 0.0],
            **({"facing": round(f, 1)} if f else {}),
        }
        for name, (x, y, f) in spots.items()
    }


def _free(name: str, taken: set[str]) -> str:
    number = 1
    while (free := name if number == 1 else f"{name} {number}") in taken:
        number += 1
    return free


def _between(ground: DraftGround, slots: Sequence[Slot]) -> tuple[list[str], str | None]:
    """The labels of the parts that are neither loudest nor calmest, in the order of the song; and of the calmest of many."""
    loud = {slot.label: 0.0 for slot in slots}
    for slot in slots:
        loud[slot.label] = max(loud[slot.label], ground.energy(slot.start, slot.end))
    ranked = sorted(loud, key=lambda label: loud[label])

    def suits(label: str) -> bool:
        rank = ranked.index(label) / max(len(ranked) - 1, 1)
        return rank <= _UNISON and not (rank == 0 and len(ranked) > 2)

    return [label for label in loud if suits(label)], ranked[0] if len(ranked) > 2 else None


def _mirrored(
    ground: DraftGround, spots: Sequence[Spots], pairs: Sequence[int]
) -> dict[int, tuple[str, ...]]:
    """Who dances each of some slots mirrored: partners on the other side."""
    able = {each.name for each in ground.dancing if _both_alike(each)}
    out: dict[int, tuple[str, ...]] = {}
    for k in pairs:
        partners, _ = mirrored_partners(spots[k])
        right = {other for _, other in partners} & able
        if ground.lead.name in right:  # the lead is not the one who turns it round
            right = {one for one, _ in partners} & able
        out[k] = tuple(name for name in ground.base.show.names if name in right)
    return out


def _both_alike(record: Performer) -> bool:
    props = list(record.props.values())
    return len(props) == 2 and props[0] == props[1]
