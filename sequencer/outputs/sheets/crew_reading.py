"""What everybody at a post reads before the act: stop call, emergency card, checks, signs and cautions. Lengths in points.

One sheet for all posts, so that a post's own page holds nothing but what is needed in the dark.
"""

from collections.abc import Sequence
from functools import partial

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.page.elements import Cell, Disc, grid, heading
from sequencer.outputs.sheets.page.paper import INK, LEAD_SIZE, SMALL, TEXT, WATCH, Page
from sequencer.outputs.sheets.page.pictograms import SignMark
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.ticks import TickRun
from sequencer.outputs.sheets.page.wording import listed
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.emergency import emergency_block
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import cautions_block, doing_on_stop, opening
from sequencer.outputs.sheets.parts.stop_calls import stop_block

_CHECKS = (
    "I stand on my mark, and my way is free",
    "I see the performer I watch from head to foot",
    "my towel is damp, and everything on my page is at hand",
    "I have touched the nearest extinguisher: pin, pressure, tag",
    "I know who takes over from me, and from whom I take over",
    "hair tied, sleeves close, no synthetic cloth",
    "phone silent, no camera, no drink, no other job",
    "I have called the stop word once today",
)
_HAND_OVER = (
    "Hand-over: who takes over says the performer’s name aloud; who gives looks away only then."
)


def crew_reading_sheet(edition: Edition) -> Sheet:
    """The shared pages of the crew."""
    return Sheet(name="crew-reading", title="All crew", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    crew = edition.staged.show.crew
    names = listed((edition.staged.taken_by(post.name) for post in crew), most=8)
    story = opening(
        edition,
        room,
        kind=f"Read before the act: {names}" if names else "No crew in the show file",
        title="All crew",
        facts=(),
        stop=doing_on_stop(edition, None, "everybody"),
        close=True,
    )
    half = room / 2 - 8
    story += stop_block(edition, room, close=True)
    story += emergency_block(edition, room)
    story += _beside(_checks(), _signs(half), room)
    story += cautions_block(edition, "post", room)
    return story


def _beside(left: Sequence[Flowable], right: Sequence[Flowable], room: float) -> list[Flowable]:
    """Two blocks side by side; one alone where the other is empty."""
    blocks = [
        [part for part in block if not isinstance(part, CondPageBreak)]
        for block in (left, right)
        if block
    ]
    table = grid(
        [blocks], [room / len(blocks)] * len(blocks), pad=0, gutter=16.0, lines=False, by_cell=True
    )
    return [table, Spacer(1, 2)]


def _checks() -> list[Flowable]:
    """What each ticks for themselves before the act."""
    return [
        heading("Before the act", level=2, before=4),
        *(_tick(words) for words in _CHECKS),
        Prose(TextSpan(_HAND_OVER, "Bold", TEXT), before=3),
    ]


def _tick(words: str) -> TickRun:
    return TickRun([words], TEXT)


def _signs(room: float) -> list[Flowable]:
    """What the marks on a post's small plans mean."""
    marks: list[tuple[Cell, str]] = [
        (Disc("1", 17, colour=INK), "a performer whom you watch now"),
        (Prose(TextSpan("○", "Bold", LEAD_SIZE)), "another performer"),
        (Disc("S2", 17, colour=WATCH), "another post: who takes over, or gives"),
        (Prose(TextSpan("- - >", "Bold", TEXT)), "where they walk from there"),
        (SignMark("F001", 16), "the nearest extinguisher"),
        (SignMark("E001", 16), "an exit; at the frame if it is farther off"),
        (Prose(TextSpan("▬", "Bold", LEAD_SIZE)), "the edge of the audience"),
    ]
    rows: list[list[Cell]] = [
        [mark, Prose(TextSpan(words, "Regular", TEXT), role="TD")] for mark, words in marks
    ]
    hint = "Your plans are drawn from your own side: you stand at the bottom."
    return [
        heading("Signs on your page", level=2, before=4),
        Prose(TextSpan(hint, "Regular", SMALL), after=2),
        grid(rows, [28, room - 28], ("VALIGN", (0, 0), (-1, -1), "MIDDLE"), pad=1.0, lines=False),
    ]
