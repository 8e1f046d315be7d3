"""Cells that several tables share: when, who, and who watches. Sizes in points."""

from reportlab.platypus import Flowable

from sequencer.facts.pace import walk_words
from sequencer.outputs.sheets.page.elements import Cell
from sequencer.outputs.sheets.page.paper import CUE, HEAD, INK, TEXT, WATCH
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, brief, clock, closed_up
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.units import aloud


def when_cell(edition: Edition, beat: float) -> Cell:
    """Time and bar of a beat, large."""
    staged = edition.staged
    bar = aloud(staged.position(beat), staged.tempo.bar_lengths, "bar ")
    return [
        Prose(TextSpan(clock(staged.seconds(beat)), "Poster", HEAD), leading=1.1, role="TD"),
        Prose(TextSpan(bar, "Bold", TEXT), role="TD"),
    ]


def who_cell(edition: Edition, who: str) -> Prose:
    """Number and name of a performer."""
    return Prose(
        [
            TextSpan(f"{edition.number_of(who)}  ", "Poster", CUE, INK),
            TextSpan(brief(who), "Bold", CUE),
        ],
        leading=1.2,
        role="TD",
    )


def post_label(edition: Edition, name: str) -> str:
    """Number and name of a post, as on the plan."""
    return f"S{edition.staged.post_number(name)}{NB}{brief(edition.staged.taken_by(name))}"


def watch_cell(edition: Edition, burn: PlannedBurn) -> Cell:
    """Who watches a burn, in order: how far they walk at most, and for how long."""
    plan = edition.plan.watch
    watches = [
        w for w in plan.watches if w.who == burn.who and w.start < burn.end and w.end > burn.start
    ]
    gaps = [g for g in plan.unwatched if g[0] == burn.who and g[1] < burn.end and g[2] > burn.start]
    lines: list[Flowable] = []
    if gaps:
        lines.append(Prose(TextSpan("NOBODY WATCHES: do not light", "Bold", CUE), role="TD"))
    for watch in watches[:3]:
        words = f"  {closed_up(walk_words(watch.way))}"
        lines.append(
            Prose(
                [
                    TextSpan(post_label(edition, watch.spotter), "Bold", TEXT, WATCH),
                    TextSpan(words, "Regular", TEXT),
                ],
                role="TD",
            )
        )
    return lines or Prose(TextSpan("–", "Regular", TEXT))
