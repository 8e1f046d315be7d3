"""Levels of tempo are kept through a song, told apart where the sound does not, and weighed honestly."""

import numpy as np
import pytest

from sequencer.listening.barpointer import FPS, BarPointerModel, decode, intervals
from sequencer.listening.levels import readings_of, ways_to_count

SECONDS = 60.0
EVEN = np.array([-99.0, -99, -2, -2, -2, -9, -9, -9])  # two, three and four alike


def pulses(*trains, seconds=SECONDS, floor=0.01):
    """Chances by frame: of each train (first, step, chance[, last]) a peak one frame wide each way."""
    chance = np.full(round(seconds * FPS), floor)
    for first, step, height, *last in trains:
        for at in np.arange(first, last[0] if last else seconds - 0.5, step):
            frame = round(at * FPS)
            chance[frame - 1 : frame + 2] = np.maximum(chance[frame - 1 : frame + 2], height)
    return chance


def best(beat, downbeat, metres=EVEN):
    return ways_to_count(beat, downbeat, metres)[0]


def test_a_plain_count_is_found_with_its_metre():
    way = best(pulses((0.5, 0.5, 0.9)), pulses((0.5, 1.5, 0.9)))

    assert way.tempo == pytest.approx(120)
    assert way.path.metre == 3
    assert np.all(way.path.places == np.arange(len(way.path.places)) % 3)
    np.testing.assert_allclose(np.diff(way.path.frames), 50)


def test_a_song_is_not_counted_twice_as_fast_for_some_bars():
    """Off-beats as strong as beats from 15 s to 30 s: the free search doubles there, the count does not."""
    beat = pulses((0.5, 0.6, 0.9), (15.2, 0.6, 0.9, 30.0))
    downbeat = pulses((0.5, 2.4, 0.9), (14.9, 1.2, 0.9, 30.0))

    free = decode(beat, downbeat, metre=4, pointer=BarPointerModel())
    way = best(beat, downbeat)

    assert np.diff(free.frames).min() < 40  # what the level keeps away
    assert np.diff(way.path.frames).min() > 55
    assert np.diff(way.path.frames).max() < 65


def test_a_song_is_not_counted_twice_as_fast_for_half_of_its_beats():
    """As many intervals of one level as of the other: their median, between both, hid that half of the song was at another level."""
    beat = pulses((0.4, 0.4, 0.9, 32.5), (32.8, 0.8, 0.9), seconds=96.2)
    downbeat = pulses((0.4, 1.6, 0.9, 32.5), (32.8, 3.2, 0.9), seconds=96.2)

    free = np.diff(decode(beat, downbeat, metre=4, pointer=BarPointerModel()).frames)
    steps = np.diff(best(beat, downbeat).path.frames)

    assert np.sum(free < 60) == np.sum(free > 60)  # what the level keeps away
    assert steps.max() / steps.min() < 1.5


def test_levels_that_sound_alike_go_to_the_one_that_people_tap():
    """Source: van Noorden and Moelants (1999): resonance about 0.5 s; so 94, not 188, a minute."""
    beat = pulses((0.5, 0.64, 0.95), (0.82, 0.64, 0.5))

    assert best(beat, pulses((0.5, 2.56, 0.9))).tempo == pytest.approx(93.75, rel=0.01)


def test_of_two_levels_heard_alike_the_one_near_120_is_counted():
    """Every pulse alike, 188 a minute, in bars of eight: people tap every other one."""
    assert best(pulses((0.5, 0.32, 0.9)), pulses((0.5, 2.56, 0.9))).tempo == pytest.approx(93.75)


def test_bars_of_two_and_of_four_that_sound_alike_are_counted_as_fours():
    way = best(pulses((0.5, 0.5, 0.9)), pulses((0.5, 1.0, 0.6)))

    assert way.path.metre == 4
    assert way.tempo == pytest.approx(120)


@pytest.mark.parametrize("tempo", [44, 60])
def test_a_slow_count_is_not_filled_with_silence(tempo):
    beat = pulses((0.5, 60 / tempo, 0.9))

    way = best(beat, pulses((0.5, 240 / tempo, 0.9)))

    assert way.tempo == pytest.approx(tempo, rel=0.02)


def test_shares_add_up_and_doubt_is_told():
    sure = readings_of(ways_to_count(pulses((0.5, 0.5, 0.9)), pulses((0.5, 2.0, 0.9)), EVEN))
    beat = pulses((0.5, 0.7, 0.9), (0.85, 0.7, 0.7))
    torn = readings_of(ways_to_count(beat, pulses((0.5, 2.8, 0.5)), EVEN))

    def level(readings):
        return sum(r.share for r in readings if abs(np.log2(r.tempo / readings[0].tempo)) < 0.1)

    assert sum(r.share for r in sure) == pytest.approx(1, abs=0.05)
    assert level(sure) > 0.85
    assert level(torn) < 0.8
    assert any(r.tempo == pytest.approx(2 * torn[0].tempo, rel=0.02) for r in torn) or any(
        r.tempo == pytest.approx(torn[0].tempo / 2, rel=0.02) for r in torn
    )


def test_a_search_among_some_intervals_keeps_to_them():
    taus = intervals()
    some = taus[(taus > 50) & (taus < 70)]

    path = decode(pulses((0.5, 0.3, 0.9)), pulses((0.5, 1.2, 0.9)), metre=2, taus=some)

    assert set(np.diff(path.frames)) <= set(some.tolist())


def test_going_on_is_not_counted_as_evidence():
    """In noise the path may go on, but its score does not tell of a beat."""
    rng = np.random.default_rng(3)
    beat = np.clip(rng.normal(0.03, 0.02, 6000), 0.001, 0.2)

    assert decode(beat, beat / 4, metre=4).score < 8


def test_nothing_heard_is_no_way_to_count():
    quiet = np.full(3000, 1e-5)

    assert all(way.path.score < 8 for way in ways_to_count(quiet, quiet, EVEN))
