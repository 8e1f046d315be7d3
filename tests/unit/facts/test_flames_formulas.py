"""The moving flame by its formulas, in every regime: small flames that tilt shorter, slow heads that drag none."""

from itertools import product

import pytest

from sequencer.facts import flames
from sequencer.facts.flames import stretched_reach


def by_hand(rest, base, speed, heat):
    """Heskestad for the heat; Thomas 55/42·X^0.06 once it moves, never below 1; Moorhouse 1.5·Fr^0.069."""
    if rest == 0:
        return 0.0
    watts = 1000 * ((rest + 1.02 * base) / 0.235) ** (1 / 0.4)
    flux = watts / heat / (3.141592653589793 * base**2 / 4)
    x = flux / (1.2 * (9.80665 * base) ** 0.5)
    tilt = max(1.0, 55 / 42 * x ** (0.67 - 0.61)) if speed else 1.0
    drag = max(0.0, 1.5 * (speed**2 / (9.80665 * base)) ** 0.069 - 1)
    return rest * tilt + base * drag


def test_every_regime_is_that_of_the_formulas():
    tilts = set()
    for rest, base, speed, heat in product(
        (0.0, 0.001, 0.3, 1.2), (0.03, 0.1, 2.5), (0.0, 1e-4, 0.3, 6.0, 20.0), (20e6, 43.2e6)
    ):
        found = stretched_reach(rest, diameter=base, speed=speed, heat_of_combustion=heat)
        assert found == pytest.approx(by_hand(rest, base, speed, heat), rel=1e-12)
        tilts.add(bool(rest and speed == 1e-4 and found > rest))
    assert tilts == {True, False}, "flames on both sides of the least tilt"


def test_what_is_not_said_is_kerosene_at_the_fastest():
    assert stretched_reach(0.45, diameter=0.1) == pytest.approx(by_hand(0.45, 0.1, 20.0, 43.2e6))
    assert (flames.PEAK, flames.FASTEST_HEAD) == (1.5, 20.0)
    assert (flames.STANDARD_GRAVITY, flames.AIR_DENSITY) == (9.80665, 1.2)


@pytest.mark.parametrize(
    ("rest", "base", "speed", "heat", "name"),
    [
        (-1e-9, 0.1, 1.0, 1e6, "rest"), ([0.1, -0.1], 0.1, 1.0, 1e6, "rest"),
        (0.1, 0.0, 1.0, 1e6, "diameter"), (0.1, [0.1, -0.05], 1.0, 1e6, "diameter"),
        (0.1, 0.1, -1e-9, 1e6, "speed"), (0.1, 0.1, 1.0, 0.0, "heat"), (0.1, 0.1, 1.0, -1.0, "heat"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(rest, base, speed, heat, name):
    with pytest.raises(ValueError, match=f"{name}.* must"):
        stretched_reach(rest, diameter=base, speed=speed, heat_of_combustion=heat)
