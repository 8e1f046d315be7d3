"""Burning wicks that pass near their own performer: touching, lingering, or noted.

Gaps are proven elsewhere, of the drawing (`proven`) or of the flight (`flights_near`); here the nearest pass of each pattern and
each link becomes a finding.
"""

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from sequencer.checks.dance.dancer_case import DancerCase
from sequencer.checks.dance.proven import SpanLeast
from sequencer.checks.fault_kinds import BODY_GAP
from sequencer.findings import Figure, Finding
from sequencer.geometry.bodies import Side
from sequencer.motion.flown.flown_motion import SLOW_PASS
from sequencer.motion.performers.feasibility import GAP_ERROR
from sequencer.motion.trajectories.trajectory import Span
from sequencer.units import length_words

CONTACT = 0.01  # [m] nearer than this a wick can wipe fuel on cloth; a design choice


def flames_near(
    case: DancerCase,
    side: Side,
    gaps: Sequence[SpanLeast],
    head_rate: Callable[[Span, float], float],
) -> list[Finding]:
    """Passes of a burning wick near its own performer, of each pattern and each link the nearest.

    Parameters
    ----------
    case : DancerCase
    side : {"left", "right"}
    gaps : sequence of SpanLeast
        Of the prop to the body, on spans or parts of them; what goes into the body is told elsewhere.
    head_rate : callable
        Speed of the head on a span at a show beat, in the body frame [m/beat].
    """
    body, limit = case.dancer.body, case.limits.own_body_near
    near: dict[str, Finding] = {}
    nearest: dict[str, float] = {}
    for span, gap in gaps:
        if (
            span.kind == "rest"
            or gap.label < 0  # farther than was asked
            or not -GAP_ERROR <= gap.value < min(limit, nearest.get(_way_of(span), 1.0))
            or not bool(case.dancer.is_lit(np.array(gap.beat)))
        ):
            continue
        nearest[_way_of(span)] = gap.value
        part = body.capsules[gap.label].name if gap.label >= 0 else "body"
        pace = float(case.show.tempo.beats_per_second(np.array(gap.beat)))
        speed = head_rate(span, gap.beat) * pace
        touches = gap.value < CONTACT
        grave = touches or speed < SLOW_PASS
        how = "brushes past," if touches else "passes" if speed >= SLOW_PASS else "lingers"
        danger = f" at {speed:.1f} m/s; hair or clothing can catch fire" if grave else ""
        near[_way_of(span)] = case.finding(
            "flame-near-body", "warn" if grave else "note", span,
            f"{span.label}, {side} hand: the burning wick {how} {length_words(max(gap.value, 0))} "
            f"from the {part}{danger}",
            ("move the centre away from the body with ahead or across",)
            if span.kind == "block"
            else ("leave more beats here", "change the shift of the block after it"),
            at=gap.beat, hands=(side,),
            figures=(
                Figure(quantity=BODY_GAP, value=gap.value, limit=limit, unit="m", least=True),
            ),
        )  # fmt: skip
    return _told_once(near)


def _way_of(span: Span) -> str:
    """The pattern of a block; of a link itself, as each leads another way."""
    return span.label if span.kind == "block" else f"{span.label} from {span.start}"


def _told_once(near: Mapping[str, Finding]) -> list[Finding]:
    """Passes near the body, of those in links that are only noted the nearest."""
    notes = [
        each
        for each in near.values()
        if each.severity == "note" and each.message.startswith("link,")
    ]
    least = min(notes, key=lambda each: each.figures[0].value, default=None)
    return [each for each in near.values() if each is least or each not in notes]
