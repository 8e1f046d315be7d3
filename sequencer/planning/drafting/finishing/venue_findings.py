"""What the checks say of drafted formations before anybody dances in them."""

from dataclasses import replace

from sequencer.planning.drafting.finishing.cuts import Findings, besides_dance
from sequencer.planning.drafting.gaps.draft_ground import DraftGround
from sequencer.planning.drafting.grouping.group_draft import GroupDraft
from sequencer.show.reading import show_from_document
from sequencer.staging.timeline import staged


def venue_findings(ground: DraftGround, group: GroupDraft) -> Findings:
    """What stops or warns in drafted formations before anybody dances, besides what is between the dancers; nothing where none are drafted."""
    if not group.formations:
        return {}
    values = {
        **ground.values,
        "formations": {**(ground.values.get("formations") or {}), **group.formations},
        "staging": [dict(row.values) for row in group.staging],
    }
    read = show_from_document(replace(ground.document, values=values))
    return besides_dance(staged(read, ground.heard, before=ground.base))
