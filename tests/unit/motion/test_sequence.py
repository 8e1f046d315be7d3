"""Links of two hands: the second keeps clear of the first one's prop."""

import numpy as np

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.distances import segment_segment
from sequencer.motion.blocks import block_laws
from sequencer.motion.course import Span
from sequencer.motion.links import rest
from sequencer.motion.props import Prop
from sequencer.motion.rooms import room_of
from sequencer.motion.sequence import assembled

BODY = Body(stature=1.61)
POI = Prop(length=0.48, mass=0.2, wick_radius=0.05)


def courses(*, apart):
    """An extension, hands together, and the links out of rest and back to it."""
    laws = block_laws(
        dict.fromkeys(SIDES, ("extension", {})),
        timing="together", direction="same", cycle=2.0, body=BODY,
        tethers=dict.fromkeys(SIDES, POI.length),
    )  # fmt: skip
    found = {}
    for side in ("right", "left"):
        block = Span(start=0.0, end=32.0, law=laws[side], origin=0.0, kind="block", label="")
        found[side] = assembled(
            [block],
            rest(side, BODY, POI.length),
            room=room_of(BODY, side, POI),
            other=found.get("right") if apart else None,
        )
    return found


def nearest(found):
    """Smallest distance of one head to the other tether on the link back to rest [m]."""
    beats = np.linspace(32.0, 34.0, 4001)
    ends = {}
    for side, course in found.items():
        seen = course.at(beats)
        ends[side] = seen.hand, seen.head(POI.length)
    gaps = []
    for side, other in (("left", "right"), ("right", "left")):
        head = ends[side][1]
        gaps.append(segment_segment(head, head, *ends[other])[0].min() - POI.wick_radius)
    return min(gaps)


def test_a_link_keeps_clear_of_the_other_hands_prop():
    assert nearest(courses(apart=False)) < 0.01  # tether on tether is 0.01 more
    assert nearest(courses(apart=True)) > 0.02
