"""The audience in figures: how many, on how much floor, through which exits, in how long. Lengths in points.

Flow arithmetic as in the open-air guides, for each published flow; not an evacuation study.
"""

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.facts.crowd import exit_capacity, floor_capacity, flows
from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading, named_rows
from sequencer.outputs.sheets.page.paper import CUE, INK, SMALL, SOFT, TEXT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, brief, metres, span_seconds
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety.site_ground.audience_floor import audience_floor
from sequencer.safety.site_ground.ways_out import WayOut, ways_out
from sequencer.units import rounded_down

_FLOWS = ("default", "level", "open-air")
_WHY = {
    "inside": "it stands inside {what}",
    "through": "its way leads through {what}",
    "no way": "no way leads to it",
    "fire at exit": "{what}’s flame comes too near",
    "fire at way": "its way passes {what}’s flame",
    "fuel": "the fuel is too near",
    "post": "{what} is posted in it",
}
_BLANK = "____ (not in the show file: write it in)"


def audience_block(edition: Edition, room: float) -> list[Flowable]:
    """How many people watch, how many fit, and how many can leave in time."""
    venue = edition.staged.show.venue
    size = venue.audience_size
    lines: list[tuple[str, str]] = [("Audience, at most", _BLANK if size is None else str(size))]
    area = audience_floor(edition.staged)
    floor = _BLANK
    if area is not None:
        drawn = venue.audience_area is None
        floor = f"{rounded_down(area, 1) if drawn else area:g}{NB}m²"
        floor += " drawn, without what is kept clear of flames" if drawn else ""
        floor += f": holds {floor_capacity(area)} at 0.5{NB}m² a person, outdoors"
        if size:
            floor += f"; {area / size:.2f}{NB}m² each as entered"
    lines.append(("Audience floor", floor))
    lines += [(f"Exit {brief(out.name)}", _exit_words(out)) for out in ways_out(edition.staged)]
    named = [(edition.in_order(name), words) for name, words in lines]
    return [
        CondPageBreak(130),
        heading("Audience and exits"),
        named_rows(named, room, share=0.32),
        *_leaving(edition, room),
    ]


def _exit_words(out: WayOut) -> str:
    """Width of an exit, and why it does not count if it does not."""
    if out.width is None:
        return "width ____ m"
    wide = metres(out.width, decimals=2)
    why = dict.fromkeys(_WHY[fault.kind].format(what=brief(fault.what)) for fault in out.faults)
    return f"{wide}; does not count: {', '.join(why)}" if why else wide


def _leaving(edition: Edition, room: float) -> list[Flowable]:
    """How many can leave in time, by flow; nothing if no exit counts."""
    venue = edition.staged.show.venue
    outs = ways_out(edition.staged)
    widths = [out.width for out in outs if out.counted and out.width is not None]
    if not widths:
        return []
    minutes = venue.leave_in / 60
    rows: list[list[Cell]] = [
        [head_cell(word) for word in ("flow", "largest exit lost", "every exit open", "source")]
    ]
    for name in _FLOWS:
        flow = flows()[name]
        cells = (
            f"{flow.per_metre_minute:g} per metre and minute: {flow.what}",
            str(exit_capacity(widths, minutes=minutes, flow=flow.per_metre_minute)),
            str(
                exit_capacity(
                    widths, minutes=minutes, flow=flow.per_metre_minute, discount_largest=False
                )
            ),
        )
        row: list[Cell] = [
            Prose(TextSpan(cells[0], "Regular", TEXT), role="TD"),
            *(Prose(TextSpan(words, "Bold", CUE), role="TD") for words in cells[1:]),
            Prose(TextSpan(flow.source.citation, "Regular", SMALL, SOFT), role="TD"),
        ]
        rows.append(row)
    words = (
        f"People who can leave in {span_seconds(venue.leave_in)}. Exits narrower than 1.05{NB}m do not count, nor "
        "those near or behind the fire or with something in their way. "
        "The check uses the slowest flow; none of this is an evacuation study."
    )
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [
        grid(rows, [room * 0.34, room * 0.13, room * 0.13, room * 0.4], style, repeat=1, pad=2),
        Prose(TextSpan(words, "Regular", SMALL, SOFT), before=3),
    ]
