"""Energy by what is quieter in the same song."""

import numpy as np
import pytest

from sequencer.listening.signal.energy import energy_curve, loudness_curve, mean_energy


def levels(*parts: tuple[float, float]) -> np.ndarray:
    """Loudness at ten a second from pairs of seconds and dB."""
    return np.concatenate([np.full(round(10 * s), 10 ** (db / 20)) for s, db in parts])


@pytest.mark.parametrize("apart", [20.0, 3.0])  # a wide mix, and a loud master
def test_calm_and_full_parts_stand_apart_however_loud_the_master(apart: float) -> None:
    loudness = levels((20, -10 - apart), (20, -10 - 0.5 * apart), (20, -10))
    curve = energy_curve(loudness, 60.0)

    calm, middle, full = (mean_energy(curve, 60.0, a, a + 20.0) for a in (0.0, 20.0, 40.0))
    # thirds of the song: ranks 1/6, 1/2, 5/6; 0.03: windows of 3 s across the borders
    assert (calm, middle, full) == pytest.approx((1 / 6, 1 / 2, 5 / 6), abs=0.03)


def test_an_even_track_is_neither_calm_nor_full() -> None:
    rng = np.random.default_rng(0)
    loudness = levels((60, -9)) * 10 ** (rng.normal(0, 0.05, 600) / 20)
    assert energy_curve(loudness, 60.0) == pytest.approx(np.full(120, 0.5), abs=0.05)


def test_silence_has_no_energy_and_does_not_raise_the_rest() -> None:
    loudness = np.concatenate([np.zeros(300), levels((15, -20), (15, -8))])
    curve = energy_curve(loudness, 60.0)
    assert curve[:55] == pytest.approx(0.0)
    assert mean_energy(curve, 60.0, 32.0, 44.0) == pytest.approx(0.25, abs=0.06)
    assert energy_curve(np.zeros(100), 10.0) == pytest.approx(np.zeros(20))
    assert energy_curve(np.zeros(0), 0.2) == pytest.approx(np.zeros(2))


def test_loudness_has_a_floor() -> None:
    assert loudness_curve(np.array([1.0, 0.0])) == pytest.approx([-0.691, -70.0])


def test_a_track_that_starts_loud_is_loud_from_its_first_moment() -> None:
    curve = energy_curve(levels((20, -8), (20, -20)), 40.0)
    assert curve[:3] == pytest.approx([0.75] * 3, abs=0.02)
