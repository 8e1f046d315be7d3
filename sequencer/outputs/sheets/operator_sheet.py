"""The sheet for the sound and lighting operators: every cue with time code at the usual rates. Lengths in points.

Time code counts from 00:00:00:00 at the start of the track.
"""

from collections.abc import Sequence
from functools import partial

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import CUE, INK, LEAD_SIZE, MIST, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    NB,
    brief,
    clock_fine,
    number,
)
from sequencer.outputs.sheets.parts.cues import late_clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.emergency import emergency_block
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import (
    cautions_block,
    doing_on_stop,
    findings_block,
    opening,
)
from sequencer.outputs.sheets.parts.run_cues import RunCue, run_cues
from sequencer.outputs.sheets.parts.timeline_strip import TimelineStrip
from sequencer.safety.burns.handling import seconds_words
from sequencer.timing.timecode import RATES, frame_at, timecode_of

_RATES = {"24": "24", "25": "25", "29.97df": "29.97 drop", "30": "30"}


def operator_sheet(edition: Edition) -> Sheet:
    """The operators' pages, landscape."""
    return Sheet(
        name="operator", title="Sound and light", story=partial(_story, edition), wide=True
    )


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    song = edition.staged.song
    facts = [
        ("Track", brief(edition.track)),
        ("Length", clock_fine(song.duration)),
        ("Tempo", f"{song.tempo:.1f} a minute, {song.metre} a bar"),
        ("sha256", edition.track_hash),
    ]
    story = opening(
        edition,
        room,
        kind="Sound and light",
        title=edition.title,
        facts=facts,
        stop=doing_on_stop(edition, None, "operator"),
    )
    story += findings_block(edition, edition.stops, room, title="What stops the show")
    story += [Spacer(1, 8), TimelineStrip(edition)]
    story += [CondPageBreak(140), heading("Cues"), _table(run_cues(edition.staged), room)]
    story += _standing_orders(edition)
    story += emergency_block(edition, room, short=True)
    story += cautions_block(edition, "operator", room)
    return story


def _table(cues: Sequence[RunCue], room: float) -> Flowable:
    widths = [30.0, 74.0, 56.0]
    widths += [88.0] * len(_RATES)
    widths.append(52.0)
    widths.insert(3, room - sum(widths))
    heads = ["no.", "time", "bar", "what", *(f"{name} fps" for name in _RATES.values()), "desk"]
    rows: list[list[Cell]] = [[head_cell(word) for word in heads]]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    for index, cue in enumerate(cues, start=1):
        codes = [timecode_of(frame_at(cue.seconds, RATES[key]), RATES[key]) for key in _RATES]
        strong = cue.kind in {"lit", "out", "end"}
        rows.append(
            [
                Prose(TextSpan(number(index), "Regular", SMALL, SOFT), role="TD"),
                Prose(
                    TextSpan(clock_fine(cue.seconds), "Poster", LEAD_SIZE), leading=1.1, role="TD"
                ),
                Prose(TextSpan(cue.position, "Bold", CUE), role="TD"),
                Prose(
                    TextSpan(cue.what, "Bold" if strong else "Regular", CUE), leading=1.2, role="TD"
                ),
                *(Prose(TextSpan(code, "Regular", CUE), role="TD") for code in codes),
                Prose(TextSpan(cue.who, "Regular", TEXT, SOFT), role="TD"),
            ]
        )
        if cue.kind == "lit":
            style.append(("BACKGROUND", (0, index), (-1, index), MIST))
    return grid(rows, widths, *style, repeat=1, pad=3)


def _standing_orders(edition: Edition) -> list[Flowable]:
    last = max((burn.out_s for burn in edition.plan.burns), default=None)
    lines = [
        "Before the first flame: play a few seconds and compare the length and the first digits of the hash.",
        "Never restart the track while anybody is lit. After a stop, wait for the lead’s word to go on.",
        "No strobe while anybody is lit; keep the ground visible before and after the act.",
    ]
    first = min((burn.alight_s for burn in edition.plan.burns), default=0.0)
    if first < 0:
        lines.insert(
            1,
            f"The first flame is lit {seconds_words(-first)} before the track starts: start it on the lead’s word.",
        )
    if last is not None:
        lines.append(
            f"Keep the work light on from the last flame out ({late_clock(last)}) "
            f"until the fuel is shut and the fire watch has begun.{NB}"
        )
    return [
        CondPageBreak(110),
        heading("Standing orders"),
        *(Prose(TextSpan(f"– {line}", "Regular", TEXT), after=2) for line in lines),
    ]
