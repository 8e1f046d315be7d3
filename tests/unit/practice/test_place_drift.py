"""How far off and which way, in words and back: stage left is the performer's left, the audience's right (+X)."""

import pytest

from sequencer.practice.place_drift import drift_of, drift_words


@pytest.mark.parametrize(
    ("text", "drift"),
    [
        ("40 cm downstage", (0.0, -0.4)),
        ("0.4 m upstage", (0.0, 0.4)),
        ("0,3 m stage left", (0.3, 0.0)),
        ("10cm Stage-Right and 20 cm upstage", (-0.1, 0.2)),
        ("1 ft downstage, 2 in stage left", (0.0508, -0.3048)),
        ("0.5 upstage", (0.0, 0.5)),
        ("0", (0.0, 0.0)),
    ],
)
def test_a_drift_is_read(text, drift):
    assert drift_of(text) == pytest.approx(drift, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("40 cm", "how far and which way"),
        ("downstage", "how far and which way"),
        ("40 cm downstage or so", "how far and which way"),
        ("21 m downstage", "farther than 20 m"),
        ("1,500 mm upstage", "can be read as"),
        ("-10 cm upstage", "how far and which way"),
    ],
)
def test_what_is_none_is_refused(text, says):
    with pytest.raises(ValueError, match=says):
        drift_of(text)


@pytest.mark.parametrize(
    ("drift", "words"),
    [
        ((0.0, -0.4), "40 cm downstage"),
        ((0.1, -0.4), "40 cm downstage"),  # a quarter of it aside is not told
        ((0.2, -0.4), "40 cm downstage and 20 cm stage left"),
        ((-1.2, 0.7), "1.20 m stage right and 70 cm upstage"),
        ((0.0, 0.0), "on the spot"),
    ],
)
def test_a_drift_is_told(drift, words):
    assert drift_words(drift) == words
