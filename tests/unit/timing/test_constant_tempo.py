"""One tempo through a song: slips are not followed, a tempo that sways is refused."""

import numpy as np
import pytest

from sequencer.timing.constant_tempo import constant_grid
from sequencer.timing.corrections import Corrections, corrected
from sequencer.timing.song import SURE_CONFIDENCE, Reading
from tests.songs import even_song, silent_song

GAP = 60 / 128
TRUE = 0.7 + GAP * np.arange(256)


def heard(jitter=0.008, seed=3):
    return TRUE + np.random.default_rng(seed).normal(0, jitter, len(TRUE))


def grid_of(beats, stretches=((0, 4),), duration=125.0):
    return constant_grid(list(beats), stretches, duration)


def test_jitter_is_evened_out():
    grid = grid_of(heard())

    assert len(grid.beats) == len(TRUE)
    assert np.abs(grid.beats - TRUE).max() < 0.003
    assert grid.firsts == tuple(range(0, 256, 4))


def test_half_beats_by_which_a_search_slips_are_put_back():
    beats = heard()
    beats[96:160] -= GAP / 2

    grid = grid_of(beats, ((0, 4), (96, 4), (160, 4)))

    assert np.abs(grid.beats - TRUE).max() < 0.003
    assert grid.firsts == tuple(range(0, 256, 4))


def test_a_beat_that_was_heard_twice_or_not_at_all_shifts_nothing():
    beats = np.delete(heard(), [50, 120, 121])

    grid = grid_of(beats)

    assert np.abs(grid.beats - TRUE).max() < 0.003


def test_most_bars_say_which_beat_is_the_one():
    """Bars of the last stretch begin two beats later, as after a bar of two; those of a short one are not believed."""
    grid = grid_of(heard(), ((0, 4), (130, 4)))
    assert grid.firsts == (*range(0, 130, 4), *range(130, 256, 4))

    grid = grid_of(heard(), ((0, 4), (101, 4), (113, 4 * 1), (112 + 28, 4)))
    assert set(grid.firsts[:28]) == set(range(0, 112, 4))


@pytest.mark.parametrize("sway", [0.5, 2.0])
def test_a_tempo_that_sways_is_refused(sway):
    beats = TRUE + sway * np.sin(np.linspace(0, 3, len(TRUE)))

    with pytest.raises(ValueError, match="tempo is not constant"):
        grid_of(beats)


def test_as_many_beats_between_as_on_them_are_refused():
    beats = heard()
    beats[128:] -= GAP / 2

    with pytest.raises(ValueError, match="as many beats"):
        grid_of(beats)


def test_a_grid_that_a_third_of_the_beats_lies_beside_is_refused():
    """All of them are on it or half a beat off; so many half beats are no slips."""
    beats = heard()
    beats[90:170] -= GAP / 2

    with pytest.raises(
        ValueError, match=r"only 69% of the heard beats fall on its beats, and many between"
    ):
        grid_of(beats)


def slowing(beats, last):
    """Each of the last steps is a twelfth of its length longer than the one before."""
    steps = np.diff(beats)
    steps[-last:] *= 1 + np.arange(1, last + 1) / 12
    return np.append(beats[0], beats[0] + np.cumsum(steps))


@pytest.mark.parametrize("last", [8, 14])
def test_where_it_slows_down_at_the_end_or_settles_at_the_beginning_is_told(last):
    beats = slowing(heard(), last)
    ((low, high),) = grid_of(beats, duration=135.0).drifting
    assert high == 135.0
    assert beats[-last - 3] < low <= beats[-last + 2]

    settling = TRUE[0] - (beats[::-1] - beats[-1])
    ((low, high),) = grid_of(settling, duration=135.0).drifting
    assert low == 0.0
    assert settling[last - 3] <= high < settling[last + 3]


def test_a_few_beats_beside_it_at_an_end_are_no_drift():
    beats = heard(0.002)
    beats[[-3, 2, 4]] += 0.1
    assert grid_of(beats).drifting == ()


def test_bars_where_it_slows_down_are_told_to_be_listened_to():
    song = even_song(256, tempo=128, start=0.7, duration=135.0)
    beats = tuple(slowing(TRUE, 8).tolist())
    object.__setattr__(song, "beats", beats)
    object.__setattr__(song, "downbeats", beats[::4])

    found = corrected(song, Corrections(constant=True))

    assert [k for k, share in enumerate(found.bar_confidence) if share < SURE_CONFIDENCE] == [*range(62, len(found.downbeats))]  # fmt: skip
    assert set(found.bar_confidence) == {1.0, 0.45}


def test_few_beats_are_refused():
    with pytest.raises(ValueError, match="too few"):
        grid_of(TRUE[:15])


def test_a_correction_believes_the_tempo_and_halves_it_if_asked():
    song = even_song(256, tempo=128, start=0.7, duration=125.0)
    beats = heard()
    beats[96:160] -= GAP / 2
    times = tuple(beats.tolist())
    slipped = even_song(
        256, tempo=128, start=0.7, duration=125.0, bar_confidence=(0.4,) * 64,
        unsteady=((50.0, 60.0), (121.0, 125.0)),
    )  # fmt: skip
    object.__setattr__(slipped, "beats", times)
    object.__setattr__(slipped, "downbeats", times[::4])

    found = corrected(slipped, Corrections(constant=True))
    slow = corrected(slipped, Corrections(constant=True, tempo="half"))

    np.testing.assert_allclose(found.beats, song.beats, atol=0.003)
    np.testing.assert_allclose(found.downbeats, song.downbeats, atol=0.003)
    assert found.tempo == pytest.approx(128, abs=0.01)
    assert len(found.bar_confidence) == len(found.downbeats)
    assert found.unsteady == ((121.0, 125.0),)
    np.testing.assert_allclose(slow.beats, song.beats[::2], atol=0.003)


def test_without_beats_there_is_no_tempo():
    with pytest.raises(ValueError, match="no steady beat"):
        corrected(silent_song(), Corrections(constant=True))


READINGS = (
    Reading(tempo=120.0, metre=4, share=0.7),
    Reading(tempo=60.0, metre=4, share=0.2),
    Reading(tempo=120.0, metre=3, share=0.1),
)


def test_readings_are_told_from_the_corrected_count():
    song = even_song(64, readings=READINGS)

    slow = corrected(song, Corrections(tempo="half"))
    waltz = corrected(song, Corrections(metre=3))
    late = corrected(song, Corrections(shift=0.1))

    assert slow.readings == (READINGS[1], READINGS[0], READINGS[2])
    assert waltz.readings == (READINGS[2], READINGS[0], READINGS[1])
    assert late.readings == READINGS


def test_a_count_that_was_no_reading_has_no_share():
    song = even_song(64, readings=READINGS)

    quick = corrected(song, Corrections(tempo="double"))

    assert quick.readings == (Reading(tempo=240.0, metre=4, share=0.0), *READINGS)
