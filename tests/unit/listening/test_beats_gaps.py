"""Where the path breaks off the count goes on, and where no steady beat is heard the span is named."""

import numpy as np
import pytest

from sequencer.listening import beats as module
from sequencer.listening.barpointer import FPS, Path


def broken(times, breaks, metre, first):
    frames = np.round(np.asarray(times) * FPS).astype(np.int64)
    begun = np.isin(np.arange(len(frames)), [0, *breaks])
    return Path(frames, (np.arange(len(frames)) + first) % metre, begun, 100.0, metre)


class TestWithoutGaps:
    def filled(self, times, *, breaks=(), metre=4, first=0, places=None, sure=0.9):
        path = broken(times, breaks, metre, first)
        if places is not None:
            path.places[:] = places
        return module._without_gaps(np.asarray(times), path, np.full(len(times), sure))

    def test_an_unbroken_count_stays(self):
        at = np.arange(1.0, 9.0, 0.5)

        times, places, sure = self.filled(at, first=3)

        np.testing.assert_array_equal(times, at)
        np.testing.assert_array_equal(places, (np.arange(16) + 3) % 4)
        np.testing.assert_array_equal(sure, 0.9)

    @pytest.mark.parametrize(
        ("gap", "inserted"), [(4.0, 7), (3.8, 7), (4.2, 7), (3.3, 6), (0.6, 0)]
    )
    def test_the_count_goes_on_evenly_over_a_break(self, gap, inserted):
        before = 1.0 + 0.5 * np.arange(7)
        at = np.concatenate([before, before[-1] + gap + 0.5 * np.arange(6)])

        times, places, sure = self.filled(at, breaks=(7,), places=[*range(7), *[3] * 6], metre=9)

        assert len(times) == len(places) == len(sure) == 13 + inserted
        np.testing.assert_allclose(times[:7], at[:7])
        np.testing.assert_allclose(times[7 + inserted :], at[7:])
        np.testing.assert_allclose(np.diff(times[6 : 8 + inserted]), gap / (inserted + 1))
        np.testing.assert_array_equal(sure[7 : 7 + inserted], 0.0)
        assert np.all(np.delete(sure, np.s_[7 : 7 + inserted]) == 0.9)
        # places go on from the last beat, and are the path's own after the break
        np.testing.assert_array_equal(places[7 : 7 + inserted], (7 + np.arange(inserted)) % 9)
        np.testing.assert_array_equal(places[7 + inserted :], 3)

    def test_places_run_over_the_bar_line(self):
        at = np.concatenate([1.0 + 0.5 * np.arange(6), 6.5 + 0.5 * np.arange(6)])

        _, places, _ = self.filled(at, breaks=(6,), metre=3, first=1)

        np.testing.assert_array_equal(places[:11], (np.arange(11) + 1) % 3)

    def test_every_break_is_filled(self):
        at = np.concatenate([start + 0.5 * np.arange(6) for start in (1.0, 10.0, 20.0)])

        times, _, sure = self.filled(at, breaks=(6, 12))

        np.testing.assert_allclose(np.diff(times), 0.5, atol=0.03)
        assert np.sum(sure > 0) == 18

    @pytest.mark.parametrize("side", ["before", "after"])
    def test_the_tempo_is_that_of_the_beats_beside_the_break(self, side):
        """Four quick steps lie beside the break, with one beat beyond it; farther off all are slow."""
        steps = np.array([*[1.0] * 12, *[0.5] * 4, 3.0])
        steps = steps if side == "before" else steps[::-1]
        at = 1.0 + np.concatenate([[0.0], np.cumsum(steps)])

        times, _, sure = self.filled(at, breaks=(17 if side == "before" else 1,))

        assert np.sum(sure == 0) == 5
        assert np.sum(np.isclose(np.diff(times), 0.5)) == 10

    def test_one_odd_step_beside_the_break_does_not_tell_the_tempo(self):
        at = 1.0 + np.cumsum([0, 0.5, 0.9, 0.5, 0.5, 4.0, 0.5, 0.5])

        _, _, sure = self.filled(at, breaks=(5,))

        assert np.sum(sure == 0) == 7

    @pytest.mark.parametrize(("at", "number"), [([1.0, 5.0, 5.5], 1), ([1.0, 1.5, 5.5], 2)])
    def test_the_break_itself_does_not_tell_the_tempo(self, at, number):
        times, _, _ = self.filled(at, breaks=(number,))

        np.testing.assert_allclose(np.diff(times), 0.5)

    def test_one_side_may_be_a_single_beat(self):
        alone = self.filled([1.0, 3.0, 3.5, 4.0], breaks=(1,))
        ending = self.filled([1.0, 1.5, 2.0, 4.0], breaks=(3,))

        np.testing.assert_allclose(alone[0], np.arange(1.0, 4.1, 0.5))
        np.testing.assert_allclose(ending[0], np.arange(1.0, 4.1, 0.5))

    def test_two_beats_tell_no_tempo_to_go_on_with(self):
        np.testing.assert_allclose(self.filled([1.0, 9.0], breaks=(1,))[0], [1.0, 9.0])

    @pytest.mark.parametrize(("apart", "kept"), [(0.05, 6), (0.16, 7)])
    def test_of_two_beats_at_one_place_the_first_is_kept(self, apart, kept):
        at = np.array([1.0, 1.5, 2.0, 2.0 + apart, 2.5, 3.0, 3.5])

        times, places, sure = self.filled(at, breaks=(3,))

        assert len(times) == len(places) == len(sure) == kept
        assert 2.0 in times


class TestOnlySteady:
    gap = 0.5

    def of(self, *stretches, first=1.0, after=1.0, gap=0.5):
        """Beats of the sureness and number given in turn."""
        sure = np.concatenate([np.full(n, level) for level, n in stretches])
        times = first + gap * np.arange(len(sure))
        places = np.arange(len(sure)) % 4
        duration = float(times[-1]) + after
        kept = module._only_steady(times, places, sure, duration)
        self.times, self.places, self.sure, self.duration = times, places, sure, duration
        assert len(kept[0]) == len(kept[1]) == len(kept[2])
        return kept

    def assert_kept(self, kept, low, high):
        np.testing.assert_array_equal(kept[0], self.times[low:high])
        np.testing.assert_array_equal(kept[1], self.places[low:high])
        np.testing.assert_array_equal(kept[2], self.sure[low:high])

    @pytest.mark.parametrize("n", [1, 4, 7, 8, 9, 30])
    def test_steady_beats_stay(self, n):
        kept = self.of((0.8, n))

        self.assert_kept(kept, 0, n)
        assert kept[3] == ()

    @pytest.mark.parametrize("n", [1, 5, 7, 8, 30])
    def test_doubtful_ones_all_go(self, n):
        kept = self.of((0.05, n))

        self.assert_kept(kept, 0, 0)
        assert kept[3] == ((0.0, self.duration),)

    @pytest.mark.parametrize(("level", "steady"), [(0.15, False), (0.25, True)])
    def test_a_fifth_is_steady(self, level, steady):
        assert (len(self.of((level, 20))[0]) == 20) is steady
        assert (len(self.of((level, 5))[0]) == 5) is steady

    def test_fewer_than_eight_are_judged_together(self):
        assert len(self.of((0.3, 1), (0.12, 4))[0]) == 0
        assert len(self.of((0.6, 1), (0.12, 4))[0]) == 5

    @pytest.mark.parametrize("stretches", [((0.12, 6), (0.9, 2)), ((0.12, 7), (0.9, 8))])
    def test_eight_and_more_are_judged_by_their_neighbours(self, stretches):
        kept = self.of(*stretches)

        assert 2 <= len(kept[0]) < len(self.times)
        assert kept[0][-1] == self.times[-1]

    def test_doubtful_beats_at_the_ends_go(self):
        kept = self.of((0.02, 12), (0.8, 20), (0.02, 5))

        self.assert_kept(kept, 12, 32)

    def test_the_count_does_not_begin_or_end_in_silence_beside_loud_beats(self):
        """The mean of eight is enough there, the beat itself is not heard."""
        kept = self.of((0.06, 2), (0.9, 20), (0.06, 2))

        self.assert_kept(kept, 2, 22)

    def test_a_beat_heard_at_a_sixth_may_be_the_last_one_but_not_the_first(self):
        """Music dies away, but noise before it is no beat."""
        kept = self.of((0.17, 2), (0.9, 20), (0.17, 2))

        self.assert_kept(kept, 2, 24)

    @pytest.mark.parametrize(("level", "first"), [(0.3, 2), (0.4, 0)])
    def test_the_first_beat_is_heard_at_a_third(self, level, first):
        self.assert_kept(self.of((level, 2), (0.9, 20)), first, 22)

    def test_a_lone_beat_far_off_is_not_the_first_one(self):
        kept = self.of((0.9, 1), (0.0, 12), (0.8, 20), (0.0, 12), (0.9, 1))

        # the window of eight at either end repeats its last value: half of it is the lone beat
        assert kept[3] != ()

        kept = self.of((0.0, 6), (0.9, 1), (0.0, 12), (0.8, 20), (0.0, 12), (0.9, 1), (0.0, 6))
        self.assert_kept(kept, 19, 39)

    def test_a_silent_stretch_between_is_kept_and_named(self):
        kept = self.of((0.8, 20), (0.0, 20), (0.8, 20))

        self.assert_kept(kept, 0, 60)
        # of eight beats, from four before to three after, fewer than 0.45 at 20 … 40
        assert kept[3] == ((self.times[20], self.times[41]),)

    def test_spans_are_right_where_beats_before_are_left_out(self):
        kept = self.of((0.02, 12), (0.8, 20), (0.0, 20), (0.8, 20), first=0.0)

        self.assert_kept(kept, 12, 72)
        np.testing.assert_allclose(kept[3][-1], [self.times[32], self.times[53]])

    def test_each_silent_stretch_is_named(self):
        kept = self.of((0.8, 20), (0.0, 12), (0.8, 20), (0.0, 30), (0.8, 20))

        (first, second) = kept[3]
        np.testing.assert_allclose(first, [self.times[20], self.times[32]], atol=0.51)
        np.testing.assert_allclose(second, [self.times[52], self.times[82]], atol=0.51)

    def test_one_beat_that_is_missing_is_no_span(self):
        assert self.of((0.8, 20), (0.0, 2), (0.8, 20))[3] == ()

    def test_half_heard_beats_alone_are_no_span(self):
        assert self.of((0.8, 20), (0.35, 20), (0.8, 20))[3] == ()

    @pytest.mark.parametrize("level", [0.35, 0.42])
    def test_half_heard_beats_beside_a_silent_stretch_belong_to_it(self, level):
        before = self.of((0.8, 20), (level, 20), (0.0, 20), (0.8, 20))[3]
        np.testing.assert_allclose(before, [[self.times[20], self.times[60]]], atol=2.1)

        after = self.of((0.8, 20), (0.0, 20), (level, 20), (0.8, 20))[3]
        np.testing.assert_allclose(after, [[self.times[20], self.times[60]]], atol=2.1)

    def test_beats_heard_more_than_half_do_not(self):
        spans = self.of((0.8, 20), (0.6, 20), (0.0, 20), (0.8, 20))[3]

        np.testing.assert_allclose(spans, [[self.times[40], self.times[60]]], atol=1.1)

    def test_a_stretch_may_reach_the_last_beat(self):
        kept = self.of((0.8, 20), (0.0, 12), (0.45, 3))

        ((start, end),) = kept[3]
        assert start == pytest.approx(self.times[20], abs=0.51)
        assert end == self.times[34]

    @pytest.mark.parametrize(
        ("gap", "silence", "named"), [(0.5, 3.9, 0), (0.5, 4.1, 1), (1.0, 5.9, 0), (1.0, 6.1, 1)]
    )
    def test_long_silence_before_and_after_is_named(self, gap, silence, named):
        """Longer than four beats and two seconds."""
        before = self.of((0.8, 20), first=silence, gap=gap)
        assert before[3] == ((0.0, silence),) * named

        after = self.of((0.8, 20), after=silence, gap=gap)
        assert after[3] == ((self.times[-1], pytest.approx(self.duration, abs=1e-3)),) * named

    def test_one_long_step_does_not_make_silence_short(self):
        times = 5.0 + np.cumsum([0.0, *[0.5] * 10, 3.0, *[0.5] * 10])
        end = float(times[-1])

        spans = module._only_steady(times, times, np.full(22, 0.8), end + 5.0)[3]

        assert spans == ((0.0, 5.0), (end, end + 5.0))

    def test_silence_before_a_single_beat(self):
        assert self.of((0.8, 1), first=9.0)[3] == ((0.0, 9.0),)

    def test_spans_come_in_order_from_the_beginning_to_the_end(self):
        kept = self.of((0.8, 20), (0.0, 20), (0.8, 20), first=9.0, after=9.0)

        ends = np.array(kept[3])
        assert ends.shape == (3, 2)
        assert ends[0].tolist() == [0.0, 9.0]
        assert ends[2].tolist() == [self.times[-1], self.duration]
        assert np.all(np.diff(ends.ravel()) > 0)

    def test_beats_left_out_at_the_ends_are_named_as_silence(self):
        kept = self.of((0.02, 12), (0.8, 20), (0.02, 12))

        assert kept[3] == ((0.0, self.times[12]), (self.times[31], self.duration))

    def test_times_of_spans_are_rounded_to_milliseconds(self):
        assert self.of((0.8, 20), first=5.12345)[3] == ((0.0, 5.123),)
