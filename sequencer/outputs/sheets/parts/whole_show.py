"""Findings of the whole show on a performer's sheet: what stops it whole, what should be mended in one line each."""

from reportlab.platypus import Flowable

from sequencer.findings import Finding
from sequencer.outputs.sheets.page.elements import SEVERITY_WORDS, heading
from sequencer.outputs.sheets.page.paper import SMALL
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.notices import findings_block
from sequencer.safety.rules.permits import MARKED_DRAFT

_TITLE = "Before you dance: the whole show"


def whole_show_block(edition: Edition, who: str, room: float) -> list[Flowable]:
    """What stops the show, with its mends, and what should be mended, as short lines: mends are for whoever plans."""
    shared = [each for each in edition.findings_for(who) if not each.who]
    stops = [each for each in shared if each.severity == "stop"]
    # that it is a draft stands on every page
    warns = [e for e in shared if e.severity == "warn" and MARKED_DRAFT not in e.message]
    lines = [_line(edition, each) for each in warns]
    if not stops:
        return [heading(_TITLE, level=2), *lines] if lines else []
    return [*findings_block(edition, stops, room, title=_TITLE), *lines]


def _line(edition: Edition, finding: Finding) -> Prose:
    when = "" if finding.start is None else f"{clock(finding.start)}  "
    return Prose(
        [
            TextSpan(f"{SEVERITY_WORDS[finding.severity]}  {when}", "Bold", SMALL),
            TextSpan(edition.in_order(finding.message), "Regular", SMALL),
        ],
        after=1,
    )
