"""A sheet for the stage hands: what is laid out for whom before the song starts."""

from functools import partial

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.elements import heading, named_rows
from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import cautions_block, opening


def stage_hands(edition: Edition) -> Sheet:
    """The stage hands' page; its name is a part of the file name."""
    return Sheet(name="stage-hands", title="Stage hands", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    cast = edition.staged.dancers
    held = [
        (dancer.name, ", ".join(f"{prop.kind} ({side})" for side, prop in dancer.props.items()))
        for dancer in cast
    ]
    return [
        *opening(
            edition,
            page.inner,
            kind="Stage hands",
            title=edition.title,
            facts=[("Performers", str(len(cast)))],
            stop="You: clear the wings, hold the doors, let nobody in.",
        ),
        heading("Lay out, unlit"),
        named_rows(held, page.inner, share=0.3),
        *cautions_block(edition, "operator", page.inner),
    ]
