"""Values stay in the unit in which the file has them."""

import pytest

from sequencer.planning.edits.as_written import angle_like, length_like, shown


@pytest.mark.parametrize(
    ("old", "metres", "new"),
    [
        ("30 cm", 0.24, "24 cm"), ("0.30 m", 0.2, "0.20 m"), ("0.3", 0.25, 0.25), (0.3, 1.0, 1),
        ("300 mm", 0.24, "240 mm"), ("1 ft", 0.6096, "2 ft"), ("5 ft 7 in", 0.5, "19.7 in"), (None, 0.255, 0.26),
        ("a few", 0.3, 0.3),
    ],
)  # fmt: skip
def test_a_length_is_written_like_the_one_it_replaces(old, metres, new):
    assert length_like(old, metres) == new


@pytest.mark.parametrize(
    ("old", "new"), [("20°", "35°"), ("20 deg", "35 deg"), (20, 35), ("20", 35)]
)
def test_an_angle_is_written_like_the_one_it_replaces(old, new):
    assert angle_like(old, 35.0) == new


def test_a_number_is_shown_with_its_unit():
    assert [shown(value) for value in ("0.45", 0.3, "30 cm")] == ["0.45 m", "0.30 m", "30 cm"]
