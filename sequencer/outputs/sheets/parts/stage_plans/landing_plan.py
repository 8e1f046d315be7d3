"""Where heads that come off may land, in words and as a plan. Lengths in points."""

from dataclasses import replace
from math import inf

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, heading, named_rows
from sequencer.outputs.sheets.page.paper import SMALL, SOFT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import at_least, at_most, brief, clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import scene_of
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.safety.site_ground.landings import Landing, landing_area, landing_plan
from sequencer.staging.moves_danced import move_words

TALLEST_LANDING = 200.0  # also with the words of a plan about it
_DRAWN_SHARE, _BESIDE = 0.42, 12.0  # of the width, for the plan; between it and the words
WIDEST_AREA = 0.6  # [m] that the area drawn is wider than the flights, at most: `flown_area.GROWN`, rounded up
_NAMED = {
    "audience": "Nearest to the audience",
    "post": "Nearest to a post",
    "fuel": "Nearest to the fuel",
    "exit": "Nearest to an exit",
    "gate": "Nearest to the gate",
    "combustible": "Nearest to what burns",
}


def landing_block(edition: Edition, room: float, *, drawn: bool) -> list[Flowable]:
    """What a head that comes off reaches, one line a thing; with a plan of its own if it is not on another."""
    plan = landing_plan(edition.motion)
    if plan is None:
        return []
    staged = edition.staged
    who, best = plan.farthest
    when = clock(staged.seconds(best.beat))
    move = move_words(edition.motion, who, best.beat)
    slower = f" in {move}, which could be danced slower" if move else ""
    far = (
        f"{at_most(best.flight)}, {brief(who)} at {when}{slower}; "
        f"no head moves faster than {at_most(best.fastest)}/s"
    )
    lines = [("Farthest", far)]
    for place, name in _NAMED.items():
        near = plan.near(place)  # type: ignore[arg-type]  # the keys are its literals
        if near:
            lines.append((name, _near_words(edition, near[0])))
    words = (
        "Flight without air from every instant at which a head is lit; with air it comes down earlier on the same line. "
        f"The area drawn is at most {WIDEST_AREA:.1f}\u00a0m wider. Bounces and rolls are not in it: nobody catches a "
        "burning head."
    )
    below = Prose(TextSpan(words, "Regular", SMALL, SOFT), before=3, after=4)
    if not (drawn and staged.standings):
        return [
            CondPageBreak(150),
            heading("If a head comes off"),
            named_rows(lines, room, share=0.27),
            below,
        ]
    scene = replace(scene_of(edition, 0), landing=landing_area(edition.motion), distances=False)
    told = room * (1 - _DRAWN_SHARE) - _BESIDE
    drawing = StagePlan(scene, tall=TALLEST_LANDING, wide=room * _DRAWN_SHARE)
    row: list[Cell] = [[named_rows(lines, told, share=0.34), below], [drawing]]
    widths = [told + _BESIDE, room * _DRAWN_SHARE]
    beside = grid([row], widths, pad=0, gutter=_BESIDE, lines=False, by_cell=True)
    return [CondPageBreak(beside.wrap(room, inf)[1] + 40), heading("If a head comes off"), beside]


def _near_words(edition: Edition, near: Landing) -> str:
    flight = near.flight
    when = f"{brief(near.who)} at {clock(edition.staged.seconds(flight.beat))}"
    if flight.beyond > 0:
        return f"up to {at_most(flight.beyond)} beyond {brief(near.name)}, {when}"
    if flight.distance == 0:
        return f"over {brief(near.name)}, {when}"
    return f"{at_least(flight.distance)} from {brief(near.name)}, {when}"
