"""What stands before and behind the music, told by what rises on the beats; bands are made by hand."""

import numpy as np
import pytest

from sequencer.listening.leaders import count_in, counted_music, stroke_ranks

FRAMES, BANDS, GAP = 50, 80, 0.5


def speech(seconds, seed=4):
    """Colours of its own, risen at any moment."""
    rng = np.random.default_rng(seed)
    level = 0.4 + 0.2 * rng.normal(size=round(seconds * FRAMES)).clip(-2, 2)
    return level[:, None] * np.linspace(0.2, 1.0, BANDS)


def music(seconds, *, strokes=True, eighths=False):
    """Chords with a stroke on each half second that dies away; its lower bands are the fuller ones."""
    n = round(seconds * FRAMES)
    bands = (
        0.3
        + 0.05 * np.random.default_rng(2).normal(size=(n, BANDS))
        + 0.1 * np.sin(np.arange(n) / 90)[:, None]
    )
    if strokes:
        for k in range(round(seconds / GAP) * (2 if eighths else 1)):
            start = round(k * GAP / (2 if eighths else 1) * FRAMES)
            bands[start : start + 8] += 0.5 * np.exp(-np.arange(min(8, n - start)) / 3)[:, None]
    return bands * np.linspace(1.0, 0.2, BANDS)


def track(*parts):
    return np.maximum(np.concatenate(parts), 0).astype(np.float32)


def beats(seconds, start=0.02):
    return np.arange(start, seconds - 0.1, GAP)


def test_music_alone_is_counted_from_end_to_end():
    assert counted_music(beats(30), track(music(30))) == (0, 60)


@pytest.mark.parametrize("seed", [5, 6, 7])
def test_what_is_not_music_is_not_counted_on_either_side(seed):
    bands = track(speech(12), music(20), speech(12, seed))

    first, end = counted_music(beats(44), bands)

    assert first == pytest.approx(24, abs=4)
    assert end == pytest.approx(64, abs=8)


def test_music_that_begins_without_strokes_keeps_its_count():
    """Its colours are those of the music behind it."""
    bands = track(music(12, strokes=False), music(20))
    assert counted_music(beats(32), bands) == (0, 64)


@pytest.mark.parametrize(("calm", "begins"), [(4, 24), (8, 24), (15, 30)])
def test_the_count_begins_where_the_colours_are_those_of_the_music(calm, begins):
    """Its strokes set in later; of a long stretch without any, twelve seconds are told from the speech before it."""
    bands = track(speech(12), music(calm, strokes=False), music(20))
    assert counted_music(beats(32 + calm), bands) == (begins, 64 + 2 * calm)


def test_a_few_beats_of_other_colours_are_left_out_only_if_nothing_is_struck_on_them():
    bare = speech(4, 7)
    tapped = bare.copy()
    for beat in (0, 3, 6):
        frame = round(beat * GAP * FRAMES) + 1
        tapped[frame : frame + 3] += 0.9 * np.linspace(0.2, 1.0, BANDS)

    assert counted_music(beats(28), track(bare, music(24))) == (8, 56)
    assert counted_music(beats(28), track(tapped, music(24))) == (0, 56)


def test_a_hum_of_the_same_colours_is_no_music():
    hum = np.tile(np.linspace(0.3, 0.06, BANDS), (600, 1)) + 1e-4 * np.random.default_rng(2).normal(
        size=(600, BANDS)
    )
    first, end = counted_music(beats(32), track(hum, music(20)))
    assert first == pytest.approx(24, abs=4)
    assert end == 64


def test_music_that_fades_into_other_colours_is_counted_to_its_end():
    bands = track(music(20), 0.45 * speech(12, 5))
    assert counted_music(beats(32), bands) == (0, 64)


def test_eighths_do_not_make_beats_doubtful():
    bands = track(music(30, eighths=True))
    assert stroke_ranks(beats(30), bands)[2:-2].mean() > 0.9


def test_few_beats_are_left_alone():
    assert counted_music(beats(1.6), track(speech(2))) == (0, 3)


def clicks(count, *, low=False):
    """Strokes on beats with silence between them."""
    bands = np.zeros((round(count * GAP * FRAMES), BANDS))
    for k in range(count):
        bands[round(k * GAP * FRAMES) + 1 : round(k * GAP * FRAMES) + 4, : 8 if low else BANDS] = 0.6  # fmt: skip
    return bands


def firsts(total, metre=4, start=0):
    return (np.arange(total) - start) % metre == 0


@pytest.mark.parametrize(("count", "metre"), [(4, 4), (8, 4), (3, 3), (6, 3)])
def test_a_count_in_is_one_or_two_bars_of_clicks(count, metre):
    bands = track(clicks(count), music(20))
    total = count + 40
    assert count_in(beats(total * GAP), firsts(total, metre), metre, bands) == count


@pytest.mark.parametrize(
    "bands",
    [music(22), clicks(44), np.concatenate([clicks(4, low=True), music(20)]), np.concatenate([clicks(12), music(16)])],
    ids=["music", "only clicks", "bass drum", "twelve clicks"],
)  # fmt: skip
def test_what_is_no_count_in(bands):
    bands = track(bands)
    total = round(len(bands) / FRAMES / GAP)
    assert count_in(beats(total * GAP), firsts(total), 4, bands) == 0


def test_a_count_in_before_very_little_is_none():
    bands = track(clicks(4), music(5))
    assert count_in(beats(7), firsts(14), 4, bands) == 0
