"""The search finds the best path there is: held to a plain search through every state of small problems."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.listening import barpointer
from sequencer.listening.barpointer import (
    FPS,
    SHORTEST_BEAT,
    SLOWEST,
    BarPointerModel,
    decode,
    log_odds,
)

NONE = -1e9


def before_break(t):
    """Last frame at which a path may have ended that begins anew at t: whole blocks lie between."""
    return t // SHORTEST_BEAT * SHORTEST_BEAT - SHORTEST_BEAT


def change(k, i, taus, model):
    near = model.steadiness * abs(taus[i] / taus[k] - 1)
    return min(near, model.leap) if abs(i - k) <= barpointer._REACH else model.leap


def most(beat, downbeat, metre, taus, model):
    """Score of the best path, with what it earns by going on; every state in turn."""
    plain, first = (odds.tolist() for odds in log_odds(beat, downbeat, model=model))
    ended, value = [], {}  # best path ended by t; best path to a beat, its place and next interval
    for t in range(len(plain)):
        begun = 0.0
        if before_break(t) >= 0:
            begun = max(0.0, ended[before_break(t)] - model.restart)
        for place in range(metre):
            gain = plain[t] if place else first[t]
            for k, tau in enumerate(taus):
                led = begun
                for j in range(len(taus)):
                    if t >= taus[j]:
                        came = value[t - taus[j], (place - 1) % metre, j]
                        if place == 0 and metre > 2:
                            cut = max(value[t - taus[j], other, j] for other in range(1, metre))
                            came = max(came, cut - model.short)
                        led = max(led, came - change(j, k, taus, model))
                value[t, place, k] = led + gain + model.continuity_reward / FPS * tau
        now = max(  # the interval after a last beat is chosen, but no beat ends it
            value[t, place, k] - model.continuity_reward / FPS * tau
            for place in range(metre)
            for k, tau in enumerate(taus)
        )
        ended.append(max(now, ended[-1]) if ended else now)
    return max(ended[-1], 0.0) if ended else 0.0


def worth(path, beat, downbeat, taus, model):
    """What a path scores, counted from its beats alone; fails where the model forbids it."""
    plain, first = log_odds(beat, downbeat, model=model)
    frames, places, breaks = (a.tolist() for a in (path.frames, path.places, path.breaks))
    total, k = 0.0, None
    for i, (t, place) in enumerate(zip(frames, places, strict=True)):
        total += float(first[t] if place == 0 else plain[t])
        if breaks[i]:
            if i:
                assert frames[i - 1] <= before_break(t)
                total -= model.restart
            k = None
            continue
        came, k = k, taus.index(t - frames[i - 1])
        if place != (places[i - 1] + 1) % path.metre:
            assert place == 0
            assert places[i - 1] > 0
            total -= model.short
        total += model.continuity_reward / FPS * taus[k]
        if came is not None:
            total -= change(came, k, taus, model)
    assert breaks[0]
    return total


def travelled(path):
    """Frames between beats that follow each other without a break."""
    return int(np.diff(path.frames)[~path.breaks[1:]].sum())


def noise(n, seed):
    """Chances of beats and downbeats in which no count is planted, some loud and most small."""
    rng = np.random.default_rng(seed)
    beat = rng.beta(0.3, 1.0, n)
    return beat, beat * rng.beta(0.5, 0.7, n)


def pulses(n, at, height=0.9, floor=0.005):
    chance = np.full(n, floor)
    chance[np.asarray(at, dtype=int)] = height
    return chance


SOME = {
    "few": [24, 31, 40],
    "one": [29],
    "near": [30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42],
    "wide": [24, 25, 27, 30, 34, 39, 45, 52, 60, 75, 90, 120, 150],
    "ends": [24, 150],
}
MODELS = {
    "plain": BarPointerModel(continuity_reward=0.0),
    "given": BarPointerModel(),
    "free": BarPointerModel(
        steadiness=0.5,
        continuity_reward=1.0,
        restart=30.0,
        trust=1.0,
        beat_bias=-0.5,
        min_log_odds=-3.0,
    ),
    "leaping": BarPointerModel(
        steadiness=40.0,
        leap=0.5,
        short=0.7,
        continuity_reward=0.5,
        beat_bias=-0.5,
        min_log_odds=-6.0,
    ),
    "breaking": BarPointerModel(
        steadiness=8.0, continuity_reward=0.3, restart=1.5, beat_bias=-0.5, min_log_odds=-9.0
    ),
    "strict": BarPointerModel(steadiness=200.0, continuity_reward=3.0, restart=6.0, beat_bias=-1.0),
}


@pytest.mark.parametrize("model", MODELS.values(), ids=MODELS)
@pytest.mark.parametrize("taus", SOME.values(), ids=SOME)
@pytest.mark.parametrize(("metre", "n"), [(1, 160), (2, 253), (3, 211), (5, 264)])
def test_no_path_is_better(metre, n, taus, model):
    beat, downbeat = noise(n, seed=100 * metre + len(taus))

    path = decode(beat, downbeat, metre=metre, pointer=model, taus=np.array(taus))

    best = most(beat, downbeat, metre, taus, model)
    assert len(path.frames)
    assert worth(path, beat, downbeat, taus, model) == pytest.approx(best, abs=1e-3)
    assert path.score == pytest.approx(
        best - model.continuity_reward / FPS * travelled(path), abs=1e-3
    )
    assert path.metre == metre


def test_no_path_is_better_among_all_intervals():
    taus = barpointer.intervals().tolist()
    model = BarPointerModel(steadiness=4.0, restart=4.0, beat_bias=-1.0, min_log_odds=-9.0)
    beat, downbeat = noise(320, seed=5)

    path = decode(beat, downbeat, metre=2, pointer=model)

    assert worth(path, beat, downbeat, taus, model) == pytest.approx(
        most(beat, downbeat, 2, taus, model), abs=1e-3
    )


@pytest.mark.parametrize("n", [0, 1, 23, 24, 25, 47, 48, 49, 72])
def test_short_tracks(n):
    model = BarPointerModel(continuity_reward=0.0, restart=1.0)
    taus = [24, 30]
    beat, downbeat = noise(n, seed=n)

    path = decode(beat, downbeat, metre=2, pointer=model, taus=np.array(taus))

    best = most(beat, downbeat, 2, taus, model)
    assert max(path.score, 0.0) == pytest.approx(best, abs=1e-3)
    assert (len(path.frames) > 0) == (best > 0)
    assert path.frames.dtype == path.places.dtype == np.int64
    assert path.breaks.dtype == np.bool_


class TestBreakingOff:
    """Two stretches of even beats, the second off the first one's count, and silence between."""

    taus = np.array([40])
    first, second = [40, 80, 120], [297, 337, 377]
    model = BarPointerModel(continuity_reward=0.0, beat_bias=0.0, min_log_odds=-50.0, trust=1.0)

    def found(self, restart):
        beat = pulses(420, self.first + self.second)
        model = replace(self.model, restart=restart)
        return decode(beat, beat / 2, metre=1, pointer=model, taus=self.taus)

    def gain(self):
        """What three beats in a row score: odds of 0.45 downbeat against 0.1 none."""
        return 3 * np.log(0.45 / 0.1)

    def test_a_break_costs_its_price_once(self):
        path = self.found(restart=2.0)

        assert path.frames.tolist() == self.first + self.second
        assert path.breaks.tolist() == [True, False, False, True, False, False]
        assert path.score == pytest.approx(2 * self.gain() - 2.0, abs=1e-4)

    def test_it_is_taken_just_where_it_pays(self):
        under, over = (self.found(self.gain() + by) for by in (-0.01, 0.01))

        assert len(under.frames) == 6
        assert under.score == pytest.approx(self.gain() + 0.01, abs=1e-4)
        assert len(over.frames) == 3
        assert over.breaks.sum() == 1
        assert over.score == pytest.approx(self.gain(), abs=1e-4)

    def test_a_path_begins_late_rather_than_through_poor_beats(self):
        beat = pulses(420, self.second)

        path = decode(beat, beat / 2, metre=1, pointer=self.model, taus=self.taus)

        assert path.frames.tolist() == self.second
        assert path.breaks.tolist() == [True, False, False]

    def test_the_count_of_places_begins_anew(self):
        beat = pulses(420, self.first + self.second)
        downbeat = pulses(420, [80, 377], height=0.85)

        path = decode(
            beat, downbeat, metre=3, pointer=replace(self.model, restart=2.0), taus=self.taus
        )

        assert path.frames.tolist() == self.first + self.second
        assert path.places.tolist() == [2, 0, 1, 1, 2, 0]

    @pytest.mark.parametrize(("chance", "beats"), [(0.55, 1), (0.45, 0)])
    def test_a_beat_that_is_barely_likelier_than_none_is_one(self, chance, beats):
        beat = pulses(60, [30], height=chance)

        path = decode(beat, beat, metre=1, pointer=self.model, taus=self.taus)

        assert len(path.frames) == beats

    def test_several_breaks(self):
        stretches = [30, 70, 110, 247, 287, 327, 444, 484, 524]
        beat = pulses(600, stretches)

        path = decode(
            beat, beat / 2, metre=1, pointer=replace(self.model, restart=2.0), taus=self.taus
        )

        assert path.frames.tolist() == stretches
        assert np.flatnonzero(path.breaks).tolist() == [0, 3, 6]
        assert path.score == pytest.approx(3 * self.gain() - 2 * 2.0, abs=1e-4)

    def test_a_path_may_break_off_at_the_first_frame(self):
        beat = pulses(200, [0, 30, 70, 110])

        path = decode(
            beat, beat / 2, metre=1, pointer=replace(self.model, restart=0.5), taus=self.taus
        )

        assert path.frames.tolist() == [0, 30, 70, 110]
        assert path.breaks.tolist() == [True, True, False, False]
        assert path.score == pytest.approx(4 * self.gain() / 3 - 0.5, abs=1e-4)

    def test_no_break_is_shorter_than_the_shortest_interval(self):
        """Peaks 20 frames apart: only one of each pair can be a beat, whatever a break costs."""
        beat = pulses(300, [60, 80, 200, 220])

        path = decode(
            beat, beat / 2, metre=1, pointer=replace(self.model, restart=0.01), taus=self.taus
        )

        assert np.diff(path.frames).min() >= SHORTEST_BEAT
        assert len(path.frames) == 2


class TestSteadiness:
    def of(self, frames, *, steadiness, taus=(40, 42)):
        beat = pulses(400, frames)
        model = BarPointerModel(
            steadiness=steadiness,
            continuity_reward=0.0,
            beat_bias=0.0,
            trust=1.0,
            min_log_odds=-50.0,
        )
        return decode(beat, beat / 2, metre=1, pointer=model, taus=np.array(taus))

    def test_each_change_costs_its_share(self):
        gain = np.log(0.45 / 0.1)

        even = self.of([40, 80, 120, 160], steadiness=30.0)
        slower = self.of([40, 80, 120, 162], steadiness=30.0)
        faster = self.of([40, 82, 124, 164], steadiness=30.0)

        assert even.score == pytest.approx(4 * gain, abs=1e-4)
        assert slower.score == pytest.approx(4 * gain - 30.0 * (42 / 40 - 1), abs=1e-4)
        assert faster.score == pytest.approx(4 * gain - 30.0 * (1 - 40 / 42), abs=1e-4)

    def test_a_change_too_dear_is_not_made(self):
        """The last beat is worth 1.5: a change of 5 % costs less at 29 and more at 31."""
        gain = np.log(0.45 / 0.1)
        frames = [40, 80, 120, 162]

        assert self.of(frames, steadiness=20 * gain - 0.2).frames.tolist() == frames
        assert self.of(frames, steadiness=20 * gain + 0.2).frames.tolist() == frames[:3]

    def test_the_tempo_moves_step_by_step(self):
        """However cheap a change, the eleven intervals are not crossed at one beat."""
        taus = np.arange(40, 52)

        path = self.of([40, 80, 120, 171, 222, 273], steadiness=0.0, taus=taus)

        assert np.abs(np.diff(np.diff(path.frames))).max() <= barpointer._REACH
        assert path.frames.tolist() != [40, 80, 120, 171, 222, 273]

    @pytest.mark.parametrize("turn", [1, -1])
    def test_as_far_as_it_may_move_it_moves_both_ways(self, turn):
        most = 40 + barpointer._REACH
        frames = np.cumsum([40, *[40, 40, most, most][::turn]]).tolist()

        assert self.of(frames, steadiness=0.0, taus=np.arange(40, 52)).frames.tolist() == frames

    @pytest.mark.parametrize(("share", "followed"), [(0.06, True), (0.17, False)])
    def test_one_beat_may_be_a_little_longer_than_the_last_but_not_much(self, share, followed):
        longer = round(60 * (1 + share))
        frames = [60, 120, 180, 240, 240 + longer, 240 + 2 * longer, 240 + 3 * longer]
        beat = pulses(600, frames)
        model = BarPointerModel(
            steadiness=0.0, continuity_reward=0.0, beat_bias=0.0, trust=1.0, min_log_odds=-50.0
        )

        path = decode(beat, beat / 2, metre=1, pointer=model)

        assert (path.frames.tolist() == frames) is followed


@pytest.mark.parametrize("taus", SOME.values(), ids=SOME)
def test_the_tempo_never_leaves_the_given_intervals(taus):
    """Beats at 55 frames, which none of these is."""
    beat = pulses(1200, range(30, 1200, 55))
    model = BarPointerModel(restart=1e6, continuity_reward=20.0)

    path = decode(beat, beat / 3, metre=4, pointer=model, taus=np.array(taus))

    assert len(path.frames) > 5
    assert set(np.diff(path.frames).tolist()) <= set(taus)
    assert not path.breaks[1:].any()


class TestLeapsAndShortBars:
    def test_a_phrase_that_ends_slower_is_followed_and_left(self):
        """Four beats at 40, four that widen to 48, then 40 at once, which no small step reaches."""
        steps = [40] * 8 + [42, 44, 46, 48] + [40] * 8
        frames = np.concatenate([[5], 5 + np.cumsum(steps)])
        beat = pulses(frames[-1] + 60, frames)

        path = decode(beat, beat / 3, metre=4)

        assert path.frames.tolist() == frames.tolist()
        assert not path.breaks[1:].any()

    @pytest.mark.parametrize("widening", [(44, 48, 52, 56), (45, 50, 55, 60)])
    def test_a_phrase_that_ends_slower_keeps_its_bars(self, widening):
        steps = [40] * 27 + [*widening] + [40] * 32
        frames = np.concatenate([[5], 5 + np.cumsum(steps)])
        beat, downbeat = pulses(frames[-1] + 60, frames), pulses(frames[-1] + 60, frames[::4])

        path = decode(beat, downbeat, metre=4)

        assert path.frames.tolist() == frames.tolist()
        assert path.places.tolist() == [i % 4 for i in range(len(frames))]

    def test_no_bar_is_cut_to_one_beat(self):
        at = 5 + 40 * np.arange(41)
        firsts = np.concatenate([at[:21:4], at[21::4]])
        beat, downbeat = pulses(1720, at), pulses(1720, firsts)

        path = decode(beat, downbeat, metre=4, pointer=BarPointerModel(short=0.1))

        assert np.diff(np.flatnonzero(path.places == 0)).min() >= 2

    @pytest.mark.parametrize(("price", "cut"), [(4.0, True), (400.0, False)])
    def test_a_bar_of_two_is_put_in(self, price, cut):
        at = 5 + 40 * np.arange(42)
        firsts = np.concatenate([at[:20:4], at[20:22:4], at[22::4]])
        beat, downbeat = pulses(1720, at), pulses(1720, firsts)

        path = decode(beat, downbeat, metre=4, pointer=BarPointerModel(short=price))

        assert (path.frames[path.places == 0].tolist() == firsts.tolist()) is cut


class TestGoingOn:
    silence = np.full(1200, 1e-6)

    def test_it_carries_a_path_through_silence_but_is_not_in_its_score(self):
        """A silent beat costs 2.5; the 1.5 s that led to it earn 3; the one at either end is loud."""
        model = BarPointerModel(continuity_reward=2.0, trust=1.0, beat_bias=0.0, min_log_odds=-2.5)
        beat = pulses(1200, [0, 1050], height=0.99, floor=1e-6)

        path = decode(beat, beat / 2, metre=1, pointer=model, taus=np.array([150]))

        assert path.frames.tolist() == list(range(0, 1200, 150))
        ends = 2 * np.log(0.495 / 0.01)
        assert path.score == pytest.approx(ends - 6 * 2.5, abs=1e-3)

    @pytest.mark.parametrize("tau", [30, 50])
    def test_it_is_earned_by_the_second_whatever_the_tempo(self, tau):
        """Beats worth nothing in themselves: as many seconds as there are, of either tempo."""
        model = BarPointerModel(continuity_reward=2.0, min_log_odds=0.0, beat_bias=-50.0)

        path = decode(self.silence, self.silence, metre=1, pointer=model, taus=np.array([tau]))

        assert path.frames[0] < tau
        assert path.frames[-1] >= len(self.silence) - tau
        assert path.score == pytest.approx(0.0, abs=1e-3)

    def test_nothing_is_earned_after_the_last_beat(self):
        """One silent beat costs 2.5, and the 1.5 s that would follow it are not travelled."""
        model = BarPointerModel(continuity_reward=2.0, min_log_odds=-2.5)

        path = decode(self.silence[:100], self.silence[:100], metre=2, pointer=model)

        assert len(path.frames) == 0

    def test_without_it_silence_has_no_beat(self):
        path = decode(
            self.silence, self.silence, metre=3, pointer=BarPointerModel(continuity_reward=0.0)
        )

        assert len(path.frames) == len(path.places) == len(path.breaks) == 0
        assert path.score == 0.0
        assert path.metre == 3

    def test_nothing_earned_across_a_break(self):
        beat = pulses(420, TestBreakingOff.first + TestBreakingOff.second)
        model = replace(TestBreakingOff.model, restart=2.0, continuity_reward=1.0)

        path = decode(beat, beat / 2, metre=1, pointer=model, taus=np.array([40]))

        assert path.frames.tolist() == TestBreakingOff.first + TestBreakingOff.second
        assert path.score == pytest.approx(6 * np.log(0.45 / 0.1) - 2.0, abs=1e-3)


class TestLogOdds:
    raw = BarPointerModel(trust=1.0, beat_bias=0.0, min_log_odds=-100.0)

    @pytest.mark.parametrize(
        ("beat", "downbeat"), [(0.5, 0.25), (0.9, 0.05), (0.2, 0.19), (0.999, 0.5)]
    )
    def test_they_are_odds_against_neither(self, beat, downbeat):
        plain, first = log_odds(np.array([beat]), np.array([downbeat]), model=self.raw)

        assert plain[0] == pytest.approx(np.log((beat - downbeat) / (1 - beat)), abs=1e-5)
        assert first[0] == pytest.approx(np.log(downbeat / (1 - beat)), abs=1e-5)

    def test_a_downbeat_is_a_beat(self):
        """A chance of 0.6 that it is the first beat is one of at least 0.6 that it is a beat."""
        plain, first = log_odds(np.array([0.3]), np.array([0.6]), model=self.raw)

        assert first[0] == pytest.approx(np.log(0.6 / 0.4), abs=1e-5)
        assert plain[0] == pytest.approx(np.log(1e-4 / 0.4), abs=1e-5)

    @pytest.mark.parametrize("chance", [0.0, 1.0])
    def test_certainty_is_finite(self, chance):
        edge = 1e-4 if chance == 0 else 1 - 1e-4

        plain, first = log_odds(np.array([chance]), np.array([chance]), model=self.raw)

        assert first[0] == pytest.approx(np.log(edge / (1 - edge)), abs=1e-3)
        assert plain[0] == pytest.approx(np.log(1e-4 / (1 - edge)), abs=1e-3)

    def test_trust_scales_then_lean_adds_then_least_forgives(self):
        beat, downbeat = noise(500, seed=1)
        plain, first = log_odds(beat, downbeat, model=self.raw)

        shaped = log_odds(
            beat, downbeat, model=BarPointerModel(trust=0.4, beat_bias=0.8, min_log_odds=-1.5)
        )

        for mine, odds in zip(shaped, (plain, first), strict=True):
            np.testing.assert_allclose(mine, np.maximum(0.4 * odds + 0.8, -1.5), atol=1e-5)
            assert mine.dtype == np.float32
            assert (mine == -1.5).any()
            assert (mine > -1.5).any()


def test_what_is_given_leans_as_it_is_told():
    """The sizes are fitted to music (benchmarks); their directions are not."""
    model = BarPointerModel()

    assert 0 < model.trust < 1  # each frame says less than it seems to
    assert model.beat_bias > 0  # towards a beat
    assert model.min_log_odds < 0  # a silent beat still speaks against one
    assert min(model.steadiness, model.continuity_reward, model.restart) > 0  # prices


class TestIntervals:
    def test_they_run_from_250_to_40_a_minute(self):
        taus = barpointer.intervals()

        assert 60 * FPS / taus[0] == 250
        assert taus[-2] < 60 * FPS / 40 <= taus[-1]
        assert taus[0] == SHORTEST_BEAT
        assert 60 * FPS / 40 == SLOWEST

    def test_neighbours_lie_as_near_as_frames_allow_or_some_two_percent_apart(self):
        taus = barpointer.intervals()
        steps = np.diff(taus)

        assert taus.dtype == np.int64
        assert steps.min() == 1
        assert np.all((steps == 1) | (taus[1:] / taus[:-1] < 1.03))
        assert np.all(taus[1:][taus[:-1] > 100] / taus[:-1][taus[:-1] > 100] > 1.01)


@pytest.mark.parametrize(("metre", "length"), [(0, 100), (-1, 100), (4, 99), (4, 101)])
def test_a_bar_without_beats_and_unequal_lengths_are_refused(metre, length):
    with pytest.raises(ValueError, match="metre must be at least 1"):
        decode(np.full(100, 0.5), np.full(length, 0.5), metre=metre)


def test_bars_of_three_begin_where_the_downbeats_are():
    at = np.arange(10, 700, 50)

    path = decode(pulses(700, at), pulses(700, at[2::3]), metre=3)

    assert path.frames.tolist() == at.tolist()
    assert np.flatnonzero(path.places == 0).tolist() == list(range(2, len(at), 3))
