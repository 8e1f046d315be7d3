"""What everybody dances in each slot of a routine: moves, links, who is mirrored, late, or in support."""

from collections.abc import Sequence
from dataclasses import replace

from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.finishing.draft_entries import SlotDance
from sequencer.planning.drafting.finishing.support import Support
from sequencer.planning.drafting.gaps.draft_ground import DraftGround
from sequencer.planning.drafting.grouping.group_draft import GroupDraft

LEAD_LINK = 2  # [beats] kept for a link next to what a person wrote


def slot_dances(
    ground: DraftGround,
    group: GroupDraft,
    setting: Setting,
    at: Sequence[int],
    supports: Sequence[Support] = (),
) -> list[SlotDance]:
    """What is danced in each slot.

    Parameters
    ----------
    ground : DraftGround
    group : GroupDraft
    setting : Setting
    at : sequence of int
        The move of each slot.
    supports : sequence of Support, optional
    """
    links = {pair: key[2] for pair, key in setting.keys_between(at)}
    blocks = [block for each in ground.dancing for block in ground.base.blocks_of(each.name)]
    starts, ends = (
        (
            {round(edge, 6) for edge in edges}
            for edges in zip(*((b.start, b.end) for b in blocks if not b.link), strict=True)
        )
        if any(not b.link for b in blocks)
        else (set(), set())
    )
    out = []
    names, lead = ground.base.show.names, ground.lead.name
    late = {k: {name: each.get(name, 0) for name in names} for k, each in group.late.items()}
    for k, slot in enumerate(setting.slots):
        link = links.get((k, k + 1), LEAD_LINK if slot.end in starts else 0)
        off: frozenset[str] = group.off.get(k, frozenset())
        leaving = group.off.get(k + 1, off) - off if (k, k + 1) in links else set[str]()
        out.append(
            SlotDance(
                slot=slot,
                move=setting.cast.moves[at[k]],
                lead=LEAD_LINK if slot.start in ends and (k - 1, k) not in links else 0,
                link=link,
                mirror=group.mirrored.get(k, ()),
                rest=0 if link or (k, k + 1) in links else setting.ended_early(k, at[k]),
                comes=late.get(k - 1, {}),
                leaves=late.get(k, {}),
                off=tuple(name for name in names if name in off),
                who=tuple(name for name in names if name not in off) if off or leaving else (),
                ends=tuple(name for name in names if name in leaving),
                ends_early=setting.ended_early(k, at[k]) if leaving else 0,
                remark="" if k in group.solos else group.remark(k, lead),
            )
        )
    for each in supports:
        others = tuple(name for name in names if name != lead)
        end = out[each.last]
        for k in range(each.first, each.last + 1):
            out[k] = replace(
                out[k],
                alone=lead,
                others=others,
                mirror=(),
                goes_on=k < each.last,
                remark=group.remark(k, lead),
            )
        begin = out[each.first]
        beats = end.slot.end - end.link - end.rest - begin.slot.start - begin.lead
        move = setting.cast.moves[each.move]
        out[each.first] = replace(begin, support=move, support_beats=beats)
    return out
