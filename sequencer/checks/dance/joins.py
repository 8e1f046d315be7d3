"""Whether each block passes into the next: the verdict at every boundary, for both hands.

Verdicts come from `motion.trajectories.joining`; here they become findings, for which planning seeks mends. Where
blocks do not touch, the link that fills the gap is checked against the same limits as a mend's.
"""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache, partial
from itertools import pairwise
from math import isfinite
from typing import Any

from sequencer.checks.check import Check
from sequencer.checks.dance.hard_links import links_too_hard
from sequencer.checks.fault_kinds import HAND_GAP, LINK_LENGTH
from sequencer.checks.outcome import Mendable, Outcome
from sequencer.content_keys import content_key
from sequencer.findings import Figure, Finding
from sequencer.geometry.bodies import SIDES, Side
from sequencer.kept import recent
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.trajectories.boundary import BlockPart, Boundary
from sequencer.motion.trajectories.joining import Tolerances, Verdict
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, hand_space_of
from sequencer.staging.dancers import link_limits
from sequencer.staging.results import OfPerformer, result_of
from sequencer.staging.staged import Block, Staged, written
from sequencer.timing.position import TOUCH

_SOURCE = "docs/motion.md, section 5; this show's tolerances"
_MOST_VERDICTS = 20_000
_CODES = {
    "wrong way round": "wrong-way-round",
    "joins after a shift": "needs-a-shift",
    "needs a link": "needs-a-link",
    "cannot join": "does-not-join",
}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Meeting:
    """Two blocks of one hand that follow each other, not yet judged."""

    who: str
    side: Side
    beat: float
    before: Block
    after: Block
    boundary: Boundary
    content: Hashable | None = None  # all that the verdict depends on; None if that is not known

    def joins(self) -> bool:
        """Whether they join as they stand."""
        return self.boundary.joins(self.boundary.before.end(), self.boundary.after.start())

    def judged(self) -> "Joint":
        """The meeting, judged; once for all that meet alike."""
        own = self.boundary
        # The book of patterns is held, so that no other can have its id.
        _, verdict = recent(
            "verdicts on joins", self.content, lambda: (own.before.book, own.verdict()), most=_MOST_VERDICTS
        )  # fmt: skip
        return Joint(
            who=self.who,
            side=self.side,
            beat=self.beat,
            before=self.before,
            after=self.after,
            boundary=self.boundary,
            verdict=verdict,
        )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Joint(Meeting):
    """A boundary of two blocks in one hand, judged."""

    verdict: Verdict


def joins(show: Staged) -> Outcome:
    """Findings on every boundary of blocks, and on the links between them.

    Parameters
    ----------
    show : Staged

    Returns
    -------
    outcome : Outcome
        Each boundary that does not join is mendable: its joints, one per hand, are the subject.
    """
    findings: list[Finding] = []
    mendable: list[Mendable] = []
    for dancer in show.dancers:
        failing, links = result_of(
            show, performers_blocks("joins", show, dancer), partial(_of_performer, show, dancer)
        )
        findings += [each.finding for each in failing] + links
        mendable += failing
    findings.sort(key=lambda finding: (finding.start or 0.0, finding.who))
    return Outcome(findings=tuple(findings), mendable=tuple(mendable))


def performers_blocks(what: str, show: Staged, dancer: Dancer) -> OfPerformer:
    """Key of a result about one performer's blocks as the file writes them, and where."""
    return OfPerformer(
        what, dancer.name, written((*show.blocks_of(dancer.name), *show.stops_of(dancer.name)))
    )


def _of_performer(show: Staged, dancer: Dancer) -> tuple[list[Mendable], list[Finding]]:
    judged = joints(show, dancer)
    unjoined = {(each.side, each.beat) for each in judged if each.verdict.kind != "joins"}
    return _unjoined(show, judged), links_too_hard(show, dancer, unjoined)


def joints(show: Staged, dancer: Dancer, *, tolerances: Tolerances | None = None) -> list[Joint]:
    """Every boundary between consecutive blocks of one dancer, by hand and beat."""
    return [meeting.judged() for meeting in meetings(show, dancer, tolerances=tolerances)]


def tolerances_of(show: Staged) -> Tolerances:
    """How much the show lets a blend make up at a join."""
    limits = show.show.limits
    return Tolerances(
        hand=limits.join_hand,
        tether_deg=limits.join_tether,
        axis_deg=limits.join_axis,
        rate_ratio=limits.join_rate,
    )


def meetings(
    show: Staged, dancer: Dancer, *, tolerances: Tolerances | None = None
) -> list[Meeting]:
    """Consecutive blocks of one dancer, by hand and beat; with the show's tolerances unless given."""
    found = []
    allowed = tolerances or tolerances_of(show)
    tethers = {side: prop.length for side, prop in dancer.props.items()}
    own = _dancer_content(dancer, show.book)
    for side in SIDES:
        blocks = [block for block in show.blocks_of(dancer.name) if side in block.hands]
        for k, (before, after) in enumerate(pairwise(blocks)):
            if abs(after.start - before.end) > TOUCH:
                continue
            earlier = None
            if k and abs(blocks[k - 1].end - before.start) <= TOUCH:
                earlier = cache(_block_part(blocks[k - 1], side, dancer, tethers, show.book).end)
            limits = link_limits(show.show.limits, show.tempo, before.end, before.end)
            content = (side, _block_content(before), _block_content(after), allowed, limits)
            boundary = Boundary(
                before=_block_part(before, side, dancer, tethers, show.book),
                after=_block_part(after, side, dancer, tethers, show.book),
                space=_hand_space(dancer, side),
                earlier=earlier,
                tolerances=allowed,
                limits=limits,
            )
            found.append(
                Meeting(
                    who=dancer.name,
                    side=side,
                    beat=before.end,
                    before=before,
                    after=after,
                    boundary=boundary,
                    content=None if own is None else (own, content),
                )
            )
    return found


def _dancer_content(dancer: Dancer, book: Mapping[str, Pattern]) -> Hashable | None:
    """A performer's body and props, and the patterns of the show; None if that has no content."""
    try:
        return id(book), content_key(dancer.body, dancer.props)
    except TypeError:  # a prop of another package
        return None


@lru_cache(maxsize=40_000)  # by object: an edit leaves most blocks the same objects
def _block_content(block: Block) -> str:
    """All of a block that decides how its hands move, as text; equal numbers of two kinds have different texts."""
    return repr(
        (
            sorted(block.hands.items()), block.timing, block.direction, block.cycle, block.shift,
            block.mirrored, block.end - block.start,
        )
    )  # fmt: skip


def _hand_space(dancer: Dancer, side: Side) -> HandSpace:
    return hand_space_of(dancer.body, side, dancer.props[side])


def _block_part(
    block: Block,
    side: Side,
    dancer: Dancer,
    tethers: Mapping[Side, float],
    book: Mapping[str, Pattern],
) -> BlockPart:
    part = block.hands[side]

    def build(parameters: Mapping[str, Any], cycle: float) -> Law:
        parts: dict[Side, tuple[str, Mapping[str, Any]]] = {
            s: (words.pattern, words.values) for s, words in block.hands.items()
        }
        parts[side] = (part.pattern, parameters)
        return block_laws(
            parts, timing=block.timing, direction=block.direction, cycle=cycle,
            shift=block.shift, mirrored=block.mirrored, body=dancer.body, tethers=tethers, book=book,
        )[side]  # fmt: skip

    return BlockPart(
        name=part.pattern,
        parameters=part.values,
        cycle=block.cycle,
        beats=block.end - block.start,
        build=build,
        book=book,
        side=side if not block.mirrored else ("left" if side == "right" else "right"),
    )


def _unjoined(show: Staged, found: list[Joint]) -> list[Mendable]:
    """One finding per boundary that does not join; hands with the same verdict share one."""
    bad = [joint for joint in found if joint.verdict.kind != "joins"]
    mendable: list[Mendable] = []
    for beat in sorted({joint.beat for joint in bad}):
        here = [joint for joint in bad if joint.beat == beat]
        kinds = dict.fromkeys(joint.verdict.kind for joint in here)
        for kind in kinds:
            same = tuple(joint for joint in here if joint.verdict.kind == kind)
            mendable.append(Mendable(finding=_finding(show, same), subject=same))
    return mendable


def _beats(count: float) -> str:
    return f"{count:g} beat{'' if count == 1 else 's'}"


def _finding(show: Staged, same: Sequence[Joint]) -> Finding:
    joint = same[0]
    kind = joint.verdict.kind
    hands = " and ".join(f"{each.side} hand" for each in same)
    what = {
        "wrong way round": "the first ends with the prop spinning the opposite way to the start "
        "of the second",
        "joins after a shift": f"the second joins only if started {_beats(joint.verdict.shift)} into its pattern",
        "needs a link": f"the two need a link of {_beats(joint.verdict.link_beats)} between them",
        "cannot join": f"no link of up to 4 beats joins them ({joint.verdict.reason})",
    }[kind]
    return Finding(
        code=_CODES[kind],
        severity="stop",
        who=(joint.who,),
        start=show.seconds(joint.beat),
        end=show.seconds(joint.beat),
        position=show.position(joint.beat),
        message=f"{joint.before.title} into {joint.after.title}, {hands}: {what} "
        f"({joint.verdict.gap.words()})",
        source=_SOURCE,
        figures=_figures(same),
        hands=tuple(each.side for each in same),
    )


def _figures(same: Sequence[Joint]) -> tuple[Figure, ...]:
    """How long a link the worst hand needs, and how far it is off."""
    apart = max(same, key=lambda joint: float(joint.verdict.gap.hand))
    off = float(apart.verdict.gap.hand)
    allowed = apart.boundary.tolerances.hand
    found = [Figure(quantity=HAND_GAP, value=off, limit=allowed, unit="m")]
    beats = [joint.verdict.link_beats for joint in same]
    if all(isfinite(each) for each in beats):
        found.insert(0, Figure(quantity=LINK_LENGTH, value=max(beats), limit=0.0, unit="beats"))
    return tuple(found)


CHECK = Check(
    name="joins",
    run=joins,
    codes={
        "does-not-join": ("stop",),
        "link-too-hard": ("stop", "warn"),
        "needs-a-link": ("stop",),
        "needs-a-shift": ("stop",),
        "wrong-way-round": ("stop",),
    },
    depends_on=("trajectories", "bodies"),
    progress="checking joins",
    share=0.1,
)
