"""Which parts of two meet, how far apart these are without flames, and how it is said."""

import numpy as np
import pytest

from sequencer.checks.distances.meeting import meeting, met_words

WREN_MOSS = ("Wren", "Moss")


def heads_apart(first, second, beat):
    """Between the wicks of one's left and the other's right [m]: points 4 and 7, balls of 5 cm."""
    left = first.stage_points(np.array([beat]))[0][4, 0]
    right = second.stage_points(np.array([beat]))[0][7, 0]
    return float(np.linalg.norm(right - left)) - 0.1


@pytest.mark.parametrize("flame", [0.3, 0.9])
def test_heads_are_as_far_apart_however_large_their_flames_are(dance, flame):
    """Two turn the same circles 2.2 m apart; flames change what counts as too close, not where the heads are."""
    two = [dance.dancer(name, (x, 3.0), flame=flame) for name, x in (("Bo", 0.0), ("Ada", 2.2))]
    beats = np.linspace(0.0, 4.0, 33)
    seen = [(beat, meeting(*two, float(beat))) for beat in beats]
    flames = [(beat, met) for beat, met in seen if met.parts == ("left flame", "right flame")]

    assert len(flames) >= 5
    for beat, met in flames:
        assert met.apart == pytest.approx(heads_apart(*two, float(beat)))
    assert max(met.apart for _, met in flames) > 0.3


def test_what_does_not_burn_is_told_by_its_own_name(dance):
    cold = [dance.dancer(name, (x, 3.0), lit=()) for name, x in (("Bo", 0.0), ("Ada", 2.2))]
    told = {part for beat in range(8) for part in meeting(*cold, beat / 2).parts}
    assert any(part.endswith("head") for part in told)
    assert not any(part.endswith("flame") for part in told)
    bodies = [dance.dancer(name, (x, 3.0), sides=()) for name, x in (("Bo", 0.0), ("Ada", 1.0))]
    met = meeting(*bodies, 1.0)
    assert met.parts == ("body", "body")
    assert met.apart == pytest.approx(1.0 - 2 * bodies[0].body.half_breadth)


@pytest.mark.parametrize(
    ("parts", "worst", "apart", "words"),
    [
        (("left flame", "left flame"), -1.74, 0.32, "Wren's left flame meets Moss's left flame (heads 32 cm apart)"),
        (("left flame", "left flame"), -1.74, 0.0, "Wren's left flame meets Moss's left flame (heads touching)"),
        (("left flame", "left fan flame"), -0.2, 0.4,
         "Wren's left flame meets Moss's left fan flame (head and fan 40 cm apart)"),
        (("left fan flame", "right fan flame"), -0.2, 0.4,
         "Wren's left fan flame meets Moss's right fan flame (fans 40 cm apart)"),
        (("left rear flame", "body"), -0.3, 0.121, "Wren's left rear flame reaches Moss's body (the head 12 cm away)"),
        (("body", "left flame"), -0.3, 0.0, "Wren's body gets into Moss's left flame (the head touching)"),
        (("left arm", "body"), -0.3, 0.0, "Wren's left arm runs into Moss's body"),
        (("left arm", "body"), -0.3, 0.2,
         "Wren's left arm can touch Moss's body (20 cm apart with hands exactly on their paths)"),
        (("left flame", "body"), 0.09, 0.7, "Wren's left flame comes within 9 cm of Moss's body (the head 70 cm away)"),
        (("left arm", "body"), 0.09, 0.12, "Wren's left arm comes within 9 cm of Moss's body"),
        (("left flame", "body"), -0.3, None, "Wren's left flame reaches Moss's body"),
    ],
)  # fmt: skip
def test_a_meeting_in_words(parts, worst, apart, words):
    assert met_words(WREN_MOSS, parts, worst, apart) == words
