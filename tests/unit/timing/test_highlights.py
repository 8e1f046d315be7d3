"""What stands out in a song whose loudness, strokes and brightness are all made here."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.timing.highlights import highlights
from sequencer.timing.song import Song
from tests.songs import even_song, silent_song

BEAT = 0.5  # [s]
BEATS = 128


def song(level, *, sections="A", strokes=(), bright=None) -> Song:
    """128 beats at 120 a minute; `level` gives the loudness [dB] at a beat."""
    made = even_song(BEATS, tempo=120.0, sections=sections)
    at = np.arange(round(made.duration * 10)) / 10 / BEAT
    curve = tuple(float(level(beat)) for beat in at)
    brightness = tuple(bright(beat) for beat in np.linspace(0, BEATS, 2 * 64)) if bright else ()
    return replace(
        made, loudness=curve, brightness=brightness,
        onsets=tuple(t * BEAT for t, _ in strokes), onset_strengths=tuple(s for _, s in strokes),
    )  # fmt: skip


def found(of, kind=None):
    return [
        (each.kind, each.start, each.end)
        for each in highlights(of, of.tempo_map())
        if kind in {None, each.kind}
    ]


def built(beat):
    """Calm, from beat 32 on growing to 64, with full music from there to 96, and calm again."""
    if 32 <= beat < 64:
        return -18 + 6 * (beat - 32) / 32
    return -9 if 64 <= beat < 96 else -18


def test_a_build_and_the_drop_that_it_leads_to():
    of = song(built)
    assert found(of) == [("build", 32.0, 64.0), ("drop", 64.0, 64.0)]
    drop = highlights(of, of.tempo_map())[-1]
    assert drop.strength == pytest.approx(3.2, abs=0.3)


def test_a_loud_master_that_is_hardly_louder_at_its_drop_has_both():
    """Five and a half dB from the calmest to the fullest; the build grows in brightness and in strokes more than in level."""

    def level(beat):
        return -12 + 3 * (beat - 32) / 32 if 32 <= beat < 64 else -6.5 if 64 <= beat < 96 else -12

    def bright(beat):
        return 0.3 + 0.3 * min(max((beat - 32) / 32, 0), 1) * (beat < 64)

    assert found(song(level, bright=bright)) == [("build", 32.0, 64.0), ("drop", 64.0, 64.0)]


def test_one_step_is_no_build():
    assert found(song(lambda beat: -18 if beat < 48 else -10), "build") == []


def test_an_even_song_has_nothing_that_stands_out():
    rng = np.random.default_rng(5)
    assert found(song(lambda _: -10 + rng.normal(0, 0.7))) == []


def test_one_loud_bar_is_no_drop():
    assert found(song(lambda beat: -8 if 64 <= beat < 68 else -16), "drop") == []
    assert found(song(lambda beat: -8 if 64 <= beat < 84 else -16), "drop") == [("drop", 64.0, 64.0)]  # fmt: skip


def test_one_very_loud_bar_is_no_drop_nor_is_the_bar_before_it():
    assert found(song(lambda beat: -8 if 64 <= beat < 68 else -24), "drop") == []


def test_no_drop_into_music_that_is_calm_for_this_song():
    """From very calm to calm, and from there to what most of the song is."""

    def level(beat):
        if 48 <= beat < 96:
            return -30 if beat < 64 else -20
        return -8

    assert found(song(level), "drop") == [("drop", 96.0, 96.0)]


def test_where_the_music_only_begins_is_no_drop():
    """After two bars that count it in, and after sixteen silent beats; after a calm beginning it is one."""
    counted_in = song(lambda beat: -20 if beat < 8 else -8)
    assert found(counted_in, "drop") == [("drop", 8.0, 8.0)]
    counted_in = replace(counted_in, downbeats=counted_in.downbeats[2:], count_in=8)
    assert counted_in.tempo_map().bars[0] == counted_in.tempo_map().knots[0] + 8
    assert found(counted_in, "drop") == []

    for before, drops in ((-70, []), (-30, [("drop", 16.0, 16.0)])):
        assert found(song(lambda beat, low=before: low if beat < 16 else -8), "drop") == drops


def test_full_music_that_falls_in_on_another_beat_is_no_drop_there():
    """Two beats late: the bar before has two beats of it already, and so has no bar a clear fall."""
    assert ("drop", 66.0, 66.0) not in found(song(lambda beat: -8 if 66 <= beat < 96 else -16))


def test_a_break_in_the_music_and_where_it_goes_on():
    of = song(lambda beat: -40 if 62 <= beat < 64 else -10)
    assert found(of) == [("break", 62.0, 64.0), ("drop", 64.0, 64.0)]


def test_silence_before_the_song_is_no_break():
    assert found(song(lambda beat: -60 if beat < 3 else -10)) == []


def test_a_figure_of_stops_is_no_break_but_a_longer_one_is():
    def level(beat):
        if 94 <= beat < 96:
            return -40
        return -40 if beat % 8 >= 7 else -10

    assert found(song(level), "break") == [("break", 94.0, 96.0)]


def test_a_build_ends_where_a_section_begins():
    """It goes on growing a little for two bars more, but the section is what it leads to."""

    def level(beat):
        return -20 + 8 * (min(max(beat, 16), 56) - 16) / 40

    assert found(song(level, sections={0.0: "A", 48 * BEAT: "B"}), "build") == [("build", 16.0, 48.0)]  # fmt: skip


def test_a_stroke_alone_is_an_accent_and_has_its_strength():
    strokes = [(float(k), 0.7) for k in range(BEATS) if k not in (24, 25)] + [(24.02, 1.4)]
    of = song(lambda _: -10, strokes=sorted(strokes))
    (accent,) = highlights(of, of.tempo_map())
    assert (accent.kind, accent.start, accent.end) == ("accent", 24.0, 24.0)
    assert accent.strength == pytest.approx(1.4)


def alone(*beats, level=lambda _: -10, like=1.4):
    """Where single strokes are found of those given, among softer ones on all other beats."""
    strong = {*beats, *(beat + 1 for beat in beats)}
    strokes = [(float(k), 0.7) for k in range(BEATS) if k not in strong]
    strokes += [(float(beat), 1.4 if k == 0 else like) for k, beat in enumerate(beats)]
    return [start for _, start, _ in found(song(level, strokes=sorted(strokes)), "accent")]


def test_a_stroke_that_comes_again_is_none():
    assert alone(26, 34) == []  # two bars later, on the three as well
    assert alone(28, 35.9) == []  # a little before the one
    assert alone(26, 58) == []  # eight bars
    assert alone(26, 62) == [26.0, 62.0]  # nine
    assert alone(26, 35) == [26.0, 35.0]  # on the four
    assert alone(26, 34, like=0.9) == []
    assert alone(26, 34, like=0.8) == [26.0]


def test_a_song_has_a_handful_of_single_strokes():
    many = [beat + place for place in range(0, 4, 2) for beat in (4, 44, 84, 124)]
    assert len(alone(*many)) == 5
    assert len(alone(*many[:3])) == 3


def test_the_first_notes_are_no_single_strokes():
    assert alone(0) == alone(3) == []
    assert alone(4) == [4.0]
    late = alone(20, 62, level=lambda beat: -60 if beat < 20 else -10)
    assert late == [62.0]


def test_made_by_hand_nothing_stands_out():
    of = even_song(64)
    assert highlights(of, of.tempo_map()) == ()
    with pytest.raises(ValueError, match="no steady beat"):
        silent_song().tempo_map()


def test_a_shorter_song_than_two_eights_has_no_builds_or_drops():
    short = replace(even_song(12), loudness=tuple(np.linspace(-30, -5, 60)))
    assert found(short) == []
