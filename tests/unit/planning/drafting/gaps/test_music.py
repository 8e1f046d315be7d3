"""What a song gives to its eights, where everything in it is known."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import rankdata

from sequencer.planning.drafting.gaps.music import HeardMusic, heard_music, shares_below
from sequencer.timing.song import Song
from tests.songs import even_song, silent_song

BEAT = 0.5  # [s]


def song(levels: dict[float, float] | None = None, **more: object) -> Song:
    """64 beats at 120 a minute, sections A and B of 32 beats, with levels [dB] from given beats on."""
    made = even_song(64, tempo=120.0, sections={0.0: "A", 16.0: "B"}, **more)
    if levels is None:
        return made
    curve = np.full(round(made.duration * 10), -10.0)
    for beat, level in levels.items():
        curve[round(beat * BEAT * 10) :] = level
    return replace(made, loudness=tuple(curve))


def heard(of: Song) -> HeardMusic:
    return heard_music(of, of.tempo_map())


def test_eights_are_counted_from_each_section() -> None:
    eights = heard(song()).eights
    assert [(e.section, e.number, e.start, e.end) for e in eights] == [
        ("A", k + 1, 8.0 * k, 8.0 * k + 8) for k in range(4)
    ] + [("B", k + 1, 32 + 8.0 * k, 40 + 8.0 * k) for k in range(4)]
    # made by hand: nothing is known of the sound
    assert {(e.loudness, e.density, e.brightness) for e in eights} == {(0.5, 0.5, 0.5)}


def test_loudness_is_a_rank_within_the_song() -> None:
    ranks = [e.loudness for e in heard(song({0: -12.0, 32: -10.0, 48: -9.0})).eights]
    assert ranks == pytest.approx([0.25] * 4 + [0.625] * 2 + [0.875] * 2)


def test_density_counts_strokes_and_leaves_faint_ones_out() -> None:
    strokes = [k * BEAT for k in range(32)] + [16 + k * BEAT / 2 for k in range(64)]
    faint = [0.1 + k * BEAT for k in range(32)]
    times = sorted((t, s) for t, s in [*((t, 1.0) for t in strokes), *((t, 0.2) for t in faint)])
    eights = heard(
        song(onsets=tuple(t for t, _ in times), onset_strengths=tuple(s for _, s in times))
    ).eights
    assert [e.density for e in eights] == pytest.approx([0.25] * 4 + [0.75] * 4)


def test_brightness_is_a_rank() -> None:
    eights = heard(song(brightness=tuple([0.3] * 32 + [0.6] * 32))).eights
    assert [e.brightness for e in eights] == pytest.approx([0.25] * 4 + [0.75] * 4)


@pytest.mark.parametrize(
    ("quiet", "after", "found"),
    [
        ((30.0, 32.0), -10.0, ((30.0, 32.0),)),
        ((31.0, 32.0), -10.0, ((31.0, 32.0),)),
        ((31.5, 32.0), -10.0, ()),  # half a beat is none
        ((20.0, 32.0), -10.0, ()),  # twelve beats are a calm part
        ((30.0, 32.0), -21.0, ()),  # nothing loud follows
    ],
)
def test_a_break_is_quiet_before_a_loud_part(
    quiet: tuple[float, float], after: float, found: tuple[tuple[float, float], ...]
) -> None:
    assert heard(song({quiet[0]: -30.0, quiet[1]: after})).breaks == found


def test_an_accent_stands_alone() -> None:
    steady = [(k * BEAT, 0.7) for k in range(64)]
    alone = [p for p in steady if not 23 * BEAT < p[0] < 26 * BEAT]
    alone.append((24.02 * BEAT, 1.1))
    alone.sort()
    times, strengths = zip(*alone, strict=True)
    assert heard(song(onsets=times, onset_strengths=strengths)).accents == (24.0,)
    # as loud, with its neighbours there
    times, strengths = zip(*sorted({**dict(steady), 24 * BEAT: 1.1}.items()), strict=True)
    assert heard(song(onsets=times, onset_strengths=strengths)).accents == ()


def test_an_accent_is_strong_and_on_a_half_beat() -> None:
    for beat, strength in ((24.0, 0.7), (24.25, 1.5)):
        of = song(onsets=(beat * BEAT,), onset_strengths=(strength,))
        assert heard(of).accents == ()
    assert heard(song(onsets=(12.25,), onset_strengths=(1.5,))).accents == (24.5,)


def test_without_beats_there_is_nothing() -> None:
    of = silent_song()
    assert heard_music(of, song().tempo_map()) == HeardMusic(eights=(), accents=(), breaks=())


def test_places_are_mean_ranks() -> None:
    """Outside reference: scipy.stats.rankdata, average ranks."""
    rng = np.random.default_rng(5)
    values = rng.integers(0, 9, 40) / 10
    assert shares_below(values, values) == pytest.approx((rankdata(values) - 1) / 39)


def test_one_stretch_alone_has_the_place_that_it_has_in_the_whole_song() -> None:
    song = [0.1, 0.5, 0.66, 0.2, 0.9]
    assert shares_below([0.66], song)[0] == shares_below(song, song)[2] == 0.75


def test_an_even_song_is_in_the_middle_throughout() -> None:
    assert shares_below([0.4] * 5, [0.4] * 5).tolist() == [0.5] * 5
    assert shares_below([0.4], [0.4]).tolist() == [0.5]


def test_a_stretch_between_two_of_the_song_lies_between_their_places() -> None:
    assert shares_below([0.3, -1.0, 2.0], [0.2, 0.4, 0.6]) == pytest.approx([0.25, 0.0, 1.0])
