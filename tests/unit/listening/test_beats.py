"""Beats lie on the peaks and tell their doubt; plain accents make the bars where the doubt is great."""

from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.listening import beats as module
from sequencer.listening.activations import Activations
from sequencer.listening.barpointer import FPS, Path
from sequencer.listening.beats import count_of
from sequencer.listening.signal.accents import plain_accents
from sequencer.listening.signal.spectra import FRAMES

NEVER = 1e-5


def chances(at, seconds, *, height=0.95, width=0.02):
    """Chances by frame with a peak at each time [s], between frames if need be."""
    t = np.arange(round(seconds * FRAMES))[:, None] / FRAMES
    at, height = np.atleast_1d(at)[None, :], np.broadcast_to(height, np.size(at))[None, :]
    peaks = height * np.exp(-((t - at) ** 2) / (2 * width**2))
    return np.maximum(NEVER, peaks.max(axis=1, initial=0.0))


def log_odds(chance):
    return np.log(chance / (1 - chance))


def activations(beat, downbeat, seconds, *, metre=4, high=0.95, down=0.95, bands=None):
    metres = np.full(8, -99.0)
    metres[metre] = 0.0
    n = round(seconds * FRAMES)
    return Activations(
        log_odds(chances(beat, seconds, height=high)),
        log_odds(chances(downbeat, seconds, height=down)),
        metres,
        np.ones((n, 80), np.float32) if bands is None else bands,
    )


def way(path, score=100.0):
    tempo = 60 * FPS / float(np.median(np.diff(path.frames)))
    return SimpleNamespace(path=path, value=score, tempo=tempo)


def path_of(frames, *, metre=4, first=0, score=100.0):
    number = np.arange(len(frames))
    return Path(np.asarray(frames), (number + first) % metre, number == 0, score, metre)


class TestCount:
    at = 1.013 + 0.5 * np.arange(36)

    @pytest.mark.parametrize(("metre", "first"), [(3, 0), (4, 1), (5, 4)])
    def test_beats_and_bars_are_where_they_are_heard(self, metre, first):
        heard = activations(self.at, self.at[first::metre], 20.0, metre=metre)

        count = count_of(heard, 20.0)

        np.testing.assert_allclose(count.beats, self.at, atol=0.004)
        np.testing.assert_allclose(count.downbeats, self.at[first::metre], atol=0.004)
        assert set(count.downbeats) <= set(count.beats)
        assert count.metre == count.readings[0].metre == metre
        assert count.readings[0].tempo == pytest.approx(120, rel=0.01)
        assert count.unsteady == ()

    def test_confidence_is_the_chance_of_a_beat(self):
        chance = np.where(np.arange(36) < 18, 0.95, 0.6)

        count = count_of(activations(self.at, self.at[::4], 20.0, high=chance), 20.0)

        assert len(count.beat_confidence) == len(count.beats)
        np.testing.assert_allclose(count.beat_confidence, chance, atol=0.15)
        assert len(count.confidence) == len(count.downbeats)
        assert count.confidence[:4].min() > 0.75
        assert count.confidence[5:].max() < 0.65

    def test_nothing_heard(self):
        count = count_of(activations([], [], 20.0), 20.0)

        for each in (count.beats, count.downbeats, count.confidence, count.beat_confidence):
            assert each.shape == (0,)
        assert count.metre == 4
        assert count.readings == ()
        assert count.unsteady == ((0.0, 20.0),)

    def test_a_single_frame(self):
        count = count_of(activations([], [], 0.02), 0.02)

        assert len(count.beats) == 0
        assert count.unsteady == ((0.0, 0.02),)

    def test_beats_too_faint_to_be_steady_are_left_out(self):
        """Loud for 10 s, then at one in fifty."""
        height = np.where(self.at < 11, 0.95, 0.02)

        count = count_of(activations(self.at, self.at[::4], 20.0, high=height), 20.0)

        assert count.beats[-1] == pytest.approx(self.at[self.at < 11][-1], abs=0.51)
        assert count.unsteady[-1][1] == 20.0


class TestJudgedByPaths:
    """The ways to count are given, so that one thing at a time is seen."""

    frames = np.arange(100, 1900, 50)
    at = frames / FPS

    def count(self, monkeypatch, ways, *, down=0.95, accents=(0.0, 4, 0), at=None, downs=None):
        monkeypatch.setattr(module, "ways_to_count", lambda *_, **__: ways)
        monkeypatch.setattr(module, "plain_accents", lambda *_, **__: accents)
        at = self.at if at is None else at
        heard = activations(at, at[::4] if downs is None else downs, 20.0, down=down)
        return count_of(heard, 20.0)

    def test_no_way(self, monkeypatch):
        assert self.count(monkeypatch, []).unsteady == ((0.0, 20.0),)

    @pytest.mark.parametrize(("score", "believed"), [(5.0, False), (12.0, True)])
    def test_a_count_must_be_likelier_than_none(self, monkeypatch, score, believed):
        count = self.count(monkeypatch, [way(path_of(self.frames, score=score))])

        assert (len(count.beats) > 0) is believed
        if not believed:
            assert count.unsteady == ((0.0, 20.0),)

    def test_the_likeliest_sound_of_all_ways_tells_that_there_is_one(self, monkeypatch):
        """The first way may be first for what is known beforehand, another for what is heard."""
        ways = [
            way(path_of(self.frames, score=5.0)),
            way(path_of(self.frames[::2], score=50.0)),
        ]

        count = self.count(monkeypatch, ways)

        np.testing.assert_allclose(count.beats, self.at, atol=0.002)

    @pytest.mark.parametrize(("n", "believed"), [(3, False), (4, True)])
    def test_four_beats_make_a_count(self, monkeypatch, n, believed):
        count = self.count(monkeypatch, [way(path_of(self.frames[:n]))])

        assert len(count.beats) == (n if believed else 0)

    def test_beats_filled_in_do_not_make_a_count(self, monkeypatch):
        """Two beats, and one after a break that has room for more than four."""
        path = path_of([100, 150, 400])
        path.breaks[2] = True

        assert len(self.count(monkeypatch, [way(path)]).beats) == 0

    def test_four_beats_must_be_left(self, monkeypatch):
        """Of twelve beats only three are heard."""
        count = self.count(monkeypatch, [way(path_of(self.frames[:12]))], at=self.at[:3])

        assert len(count.beats) == 0
        assert count.unsteady == ((0.0, 20.0),)

    def test_a_count_without_a_first_beat_is_none(self, monkeypatch):
        with_one = self.count(monkeypatch, [way(path_of(self.frames[:6], metre=7, first=1))])
        without = self.count(monkeypatch, [way(path_of(self.frames[:5], metre=7, first=1))])

        assert len(with_one.beats) == len(without.beats) == 0

        begun = self.count(monkeypatch, [way(path_of(self.frames[:7], metre=7, first=1))])
        assert begun.downbeats == pytest.approx([self.at[6]], abs=0.002)

    @pytest.mark.parametrize(
        ("down", "share", "overridden"),
        [(0.35, 0.6, False), (0.35, 0.8, True), (0.65, 0.6, False), (0.65, 0.8, True)],
    )
    def test_plain_accents_override_the_metre(self, monkeypatch, down, share, overridden):
        ways = [way(path_of(self.frames)), way(path_of(self.frames[::2]), 90.0)]

        count = self.count(monkeypatch, ways, down=down, accents=(share, 3, 1))

        step, first = (3, 1) if overridden else (4, 0)
        assert count.metre == count.readings[0].metre == step
        np.testing.assert_allclose(count.downbeats, self.at[first::step], atol=0.002)
        np.testing.assert_allclose(count.beats, self.at, atol=0.002)
        assert [reading.metre for reading in count.readings[1:]] == [4]
        assert [reading.tempo for reading in count.readings] == pytest.approx([120, 60])

    @pytest.mark.parametrize(
        ("down", "share", "divided"),
        [(0.35, 0.6, False), (0.35, 0.8, True), (0.65, 0.8, False), (0.65, 0.99, False)],
    )
    def test_a_backbeat_divides_no_bar_that_is_sure(self, monkeypatch, down, share, divided):
        count = self.count(
            monkeypatch, [way(path_of(self.frames))], down=down, accents=(share, 2, 1)
        )

        assert count.metre == (2 if divided else 4)

    def test_the_doubt_is_of_first_beats_alone(self, monkeypatch):
        """Downbeats are sure where they are counted; that there is none elsewhere is no doubt."""
        sure = self.count(monkeypatch, [way(path_of(self.frames))], accents=(0.8, 2, 1))
        elsewhere = self.count(
            monkeypatch, [way(path_of(self.frames, first=2))], accents=(0.8, 2, 1)
        )

        assert (sure.metre, elsewhere.metre) == (4, 2)

    def test_bars_by_accents_are_as_sure_as_their_beats(self, monkeypatch):
        count = self.count(
            monkeypatch, [way(path_of(self.frames))], down=0.01, accents=(0.95, 3, 1)
        )
        doubted = self.count(monkeypatch, [way(path_of(self.frames))], down=0.01)

        assert count.confidence.min() > 0.95 * count.beat_confidence.mean()
        assert doubted.confidence.max() < 0.75 * doubted.beat_confidence.mean()


def test_accents_in_the_sound_make_the_bars_where_downbeats_are_not_judged():
    """Bare clicks: beats are heard, downbeats nowhere; every fifth click from the third is brighter."""
    at = 1.0 + 0.5 * np.arange(36)
    bands = np.zeros((1000, 80), np.float32)
    for i, frame in enumerate(np.round(at * FRAMES).astype(int)):
        bands[frame, 10:20] = 1.0
        bands[frame, 40:44] = 0.6 if i % 5 == 2 else 0.0

    count = count_of(activations(at, [], 20.0, bands=bands), 20.0)

    assert plain_accents(bands, at, (2, 3, 4, 5, 6, 7)) == (pytest.approx(1.0, abs=1e-6), 5, 2)
    assert count.metre == count.readings[0].metre == 5
    np.testing.assert_allclose(count.downbeats, at[2::5], atol=0.004)


class TestRefined:
    @pytest.mark.parametrize("between", np.arange(0.0, 1.0, 0.125))
    @pytest.mark.parametrize("off", [-1, 0, 1])
    def test_a_peak_between_frames_is_placed_at_its_centre(self, between, off):
        """Path and peak differ by less than a frame of the network."""
        at = (100 + between) / FRAMES

        times = module._refined(chances(at, 4.0), np.array([round(at * FPS) + off], np.int64))

        assert times[0] == pytest.approx(at, abs=0.003)

    @pytest.mark.parametrize(("chance", "placed"), [(0.1, False), (0.25, True)])
    def test_without_a_clear_peak_the_path_is_kept(self, chance, placed):
        beat = np.full(200, 1e-6)
        beat[101] = chance

        times = module._refined(beat, np.array([200], np.int64))

        assert times[0] == pytest.approx(2.02 if placed else 2.0, abs=0.001)

    @pytest.mark.parametrize(("frame", "drawn"), [(2, True), (3, False)])
    def test_only_peaks_within_two_frames_draw_a_beat(self, frame, drawn):
        for sign in (-1, 1):
            beat = np.full(200, 1e-6)
            beat[100 + sign * frame] = 0.9

            times = module._refined(beat, np.array([200], np.int64))

            expected = 2.0 + sign * frame / FRAMES if drawn else 2.0
            assert times[0] == pytest.approx(expected, abs=0.001)

    def test_the_stronger_of_two_peaks_weighs_more_than_its_share(self):
        """Squared: at 0.8 and 0.2 the centre lies a seventeenth, not a fifth, of the way."""
        beat = np.full(200, 1e-9)
        beat[100], beat[101] = 0.8, 0.2

        times = module._refined(beat, np.array([200], np.int64))

        assert times[0] == pytest.approx(2.0 + 0.02 / 17, abs=1e-4)

    @pytest.mark.parametrize("seed", range(10))
    def test_beats_never_cross_and_never_lie_before_the_track(self, seed):
        rng = np.random.default_rng(seed)
        beat = rng.beta(0.3, 0.6, 400)
        frames = np.cumsum(rng.integers(2, 12, 150))
        frames = frames[frames < 800] - frames[0]

        times = module._refined(beat, frames)

        assert len(times) == len(frames)
        assert times[0] >= 0.0
        assert np.all(np.diff(times) >= 0)
        assert np.all(np.abs(times - frames / FPS) <= 2.5 / FRAMES + 1e-9)

    def test_nothing_at_all_near_a_beat(self):
        assert module._refined(np.zeros(200), np.array([200], np.int64))[0] == 2.0

    def test_peaks_in_the_first_and_in_the_last_frame(self):
        beat = np.full(100, 1e-6)
        beat[[0, 99]] = 0.9

        times = module._refined(beat, np.array([2, 196], np.int64))

        np.testing.assert_allclose(times, [0.0, 99 / FRAMES], atol=0.011)

    def test_the_first_frame(self):
        beat = np.full(100, 1e-6)
        beat[0] = 0.9

        assert module._refined(beat, np.array([0], np.int64))[0] == 0.0


class TestBarSureness:
    def of(self, sure, down, first=(0, 4, 8), n=12):
        starts = np.zeros(n, np.bool_)
        starts[list(first)] = True
        times = 0.5 * np.arange(n)
        return module._bar_confidence(
            times, starts, np.broadcast_to(sure, n).astype(float), np.asarray(down, float)
        )

    def test_a_first_beat_that_stands_out_is_nearly_as_sure_as_the_beats(self):
        bars = self.of(0.8, [1, 0, 0, 0] * 3)

        assert bars.shape == (3,)
        assert np.all(bars > 0.95 * 0.8)
        assert np.all(bars <= 0.8)

    def test_one_like_any_other_is_half_way_and_a_wrong_one_is_half_as_sure(self):
        alike = self.of(0.8, [0.7] * 12)
        wrong = self.of(0.8, [0, 0, 1, 0] * 3)

        np.testing.assert_allclose(alike, 0.75 * 0.8, atol=0.02)
        np.testing.assert_allclose(wrong, 0.5 * 0.8, atol=0.005)

    def test_any_beat_of_the_bar_may_rival_the_first(self):
        for rival in (1, 2, 3):
            down = np.zeros(12)
            down[[0, 4, 8]] = 0.7
            down[4 + rival] = 0.7

            bars = self.of(0.8, down)

            assert bars[1] < 0.62
            assert min(bars[0], bars[2]) > 0.76

    def test_bars_of_two_have_a_rival(self):
        bars = self.of(0.8, [0.7, 0.7, 0.7, 0, 0.7, 0], first=(0, 2, 4), n=6)

        assert bars[0] < 0.62
        assert bars[1:].min() > 0.76

    def test_where_no_downbeat_is_heard_the_bar_is_doubted(self):
        assert self.of(0.8, np.full(12, 0.01)).max() < 0.5

    def test_beats_count_for_their_own_bar(self):
        sure = np.repeat([0.9, 0.3, 0.6], 4)
        sure[5] = 0.7  # mean 0.4

        bars = self.of(sure, [1, 0, 0, 0] * 3)

        np.testing.assert_allclose(bars, np.array([0.9, 0.4, 0.6]) * bars[0] / 0.9, atol=1e-9)

    def test_beats_before_the_first_bar_belong_to_none_and_the_last_bar_runs_to_the_end(self):
        sure = np.concatenate([[0.0, 0.0], np.full(9, 0.8), [0.0]])

        bars = self.of(sure, np.isin(np.arange(12), [2, 5, 8]), first=(2, 5, 8))

        assert bars.shape == (3,)
        assert bars[0] == pytest.approx(bars[1])
        assert bars[2] == pytest.approx(0.75 * bars[1])

    def test_a_bar_of_one_beat_has_no_rival(self):
        bars = self.of(0.8, [1, 0, 0, 0] * 2 + [1, 0, 0, 1], first=(0, 4, 8, 11))

        assert bars[3] > 0.76
        assert bars[2] > 0.76


class TestFiner:
    def test_each_frame_becomes_two_and_peaks_are_one_wide_each_way(self):
        coarse = np.zeros(50)
        coarse[20] = 1.0

        fine = module._finer(coarse)

        assert len(fine) == 100
        np.testing.assert_allclose(fine[39:42], 1.0)
        np.testing.assert_allclose(fine[[38, 42]], 0.5)
        np.testing.assert_allclose(fine[[36, 44]], 0.0)

    def test_the_chance_at_a_time_is_the_most_within_two_frames(self):
        fine = np.zeros(100)
        fine[50] = 0.7

        found = module._finer_at(fine, np.array([0.47, 0.48, 0.5, 0.52, 0.53]))

        np.testing.assert_allclose(found, [0, 0.7, 0.7, 0.7, 0])

    def test_times_at_both_ends_and_beyond(self):
        fine = np.zeros(100)
        fine[[0, 99]] = 0.4, 0.6

        np.testing.assert_allclose(
            module._finer_at(fine, np.array([0.0, 0.5, 0.99, 2.0])), [0.4, 0, 0.6, 0.6]
        )
