"""What each block asks of its margin: its law's own beats, the fastest tempo within it, the blends at both ends."""

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers import hand_deviation
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.hand_deviation import hand_deviations_of
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Span, Trajectory
from sequencer.timing.tempo import TempoMap

POI = Prop(length=0.55, mass=0.2, wick_radius=0.05)


def test_what_is_asked_by_hand(monkeypatch):
    """Beats of 0.5 s up to beat 9, of 0.8 s after it; the rest in the middle has no margin."""
    law = law_for("extension", {}, side="right", body=Body(stature=1.7))
    spans = [
        Span(start=a, end=b, law=law, origin=c, kind=kind, label=kind)
        for a, b, c, kind in ((1, 5, -2.0, "block"), (5, 9, 3.0, "rest"), (9, 12, 8.0, "block"))
    ]
    asked = []

    def leaves(law, **given):
        asked.append((law, given))
        return 0.1 * len(asked)

    monkeypatch.setattr(hand_deviation, "leaves", leaves)
    tempo = TempoMap(np.append(np.arange(10) * 0.5, 4.5 + 0.8 * np.arange(1, 8)))
    found = hand_deviations_of(Trajectory(tuple(spans)), POI, tempo)
    half = BLEND_HALF_WIDTH
    assert found == (
        HandDeviation(1 - half, 5 + half, 0.1), HandDeviation(9 - half, 12 + half, 0.2),
    )  # fmt: skip
    (first, one), (second, two) = asked
    assert first is second is law
    assert (one["length"], one["start"], one["end"]) == (0.55, 3.0, 7.0)
    assert (two["length"], two["start"], two["end"]) == (0.55, 1.0, 4.0)
    assert one["tempo"] == pytest.approx(120.0)
    assert two["tempo"] == pytest.approx(75.0)
