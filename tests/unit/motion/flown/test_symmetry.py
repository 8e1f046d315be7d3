"""Which parts of a period are alike: counted on the patterns themselves, as their names say."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown.symmetry import level_repeat_of, repeat_of
from tests.unit.motion.flown.flights import POI, law_of


@pytest.mark.parametrize(
    ("name", "parts", "level", "mirrored"),
    [
        # N lobes of an isobend follow each other by a turn of a full circle over N
        ("iso-bend-2", 2, 1, False), ("iso-bend-3", 3, 1, False), ("iso-bend-5", 5, 1, False),
        # each lobe of a probend or antibend bends the other way: an odd number takes two rounds to close
        ("pro-bend-3", 6, 2, True), ("anti-bend-3", 6, 2, True), ("pro-bend-5", 10, 2, True),
        ("pro-bend-4", 4, 1, True), ("anti-bend-4", 4, 1, True), ("pro-bend-2", 2, 1, True),
        # petals of flowers
        ("antispin-flower-3", 3, 1, False), ("antispin-flower-4", 4, 1, False),
        ("inspin-flower-3", 3, 1, False),
        # a weave crosses left and right; gravity does not tell them apart
        ("two-beat-weave", 2, 2, True),
        # what repeats after any time at all has no parts
        ("static-spin", 1, 1, False), ("extension", 1, 1, False), ("isolation", 1, 1, False),
        # a third beat is unlike the other two
        ("three-beat-weave", 1, 1, False),
    ],
)  # fmt: skip
def test_parts(name, parts, level, mirrored):
    law = law_of(name)
    found = repeat_of(law, POI.length)
    keeping_up = level_repeat_of(law, POI.length)
    assert (found.parts, keeping_up.parts) == (parts, level)
    assert_allclose(keeping_up.turn @ [0, 0, 1], [0, 0, 1], atol=1e-7)
    assert found.level == (parts == level)
    assert (np.linalg.det(found.turn) < 0) == mirrored
    beats = np.linspace(0.0, law.period, 31)
    here, there = law.at(beats), law.at(beats + law.period / parts)
    for now, then in (
        (here.hand, there.hand),
        (here.head(POI.length), there.head(POI.length)),
    ):
        wanted = then if parts > 1 else now
        assert_allclose((now - found.centre) @ found.turn.T + found.centre, wanted, atol=1e-7)
    # a rotation or reflection, which closes after all parts
    assert_allclose(found.turn @ found.turn.T, np.eye(3), atol=1e-9)
    assert_allclose(np.linalg.matrix_power(found.turn, found.parts), np.eye(3), atol=1e-6)


def test_a_flower_on_the_floor_keeps_up():
    """A petal turned about the vertical sees the same gravity; one that stands does not."""
    lying = law_of("antispin-flower-4", plane="floor")
    assert level_repeat_of(lying, POI.length).parts == 4
    assert level_repeat_of(law_of("antispin-flower-4", plane="wheel"), POI.length).parts == 1
