"""Trajectories in pieces: where they are cut, and the bounds that hold on each."""

from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.performers.stretches import stretches
from tests.unit.motion.performers.drawn import Drawn


def test_stretches_are_cut_where_they_should_by_hand():
    own = Drawn(1)
    cut = stretches([own], [(0.5, 2.5), (2.5, 4.0)], at=[3.0, 1.0, 1.0, 0.5, 9.0, 2.5, -1.0])
    assert_array_equal(cut.start, [0.5, 1.0, 1.7, 2.5, 3.0, 3.25])
    assert_array_equal(cut.end, [1.0, 1.7, 2.5, 3.0, 3.25, 4.0])
    assert cut.group.tolist() == [0, 0, 0, 1, 1, 1]
    assert cut.bounds[0] == tuple(own.bounds[k] for k in (0, 0, 1, 1, 1, 2))
    speed, jerk = cut.columns("hand_speed", "hand_jerk")
    assert speed.tolist() == [b.hand_speed for b in cut.bounds[0]]
    assert jerk.tolist() == [b.hand_jerk for b in cut.bounds[0]]
    beats = stretches([own], [(0.5, 3.0)], whole_beats=True, at=[1.0, 2.6])
    assert_array_equal(beats.start, [0.5, 1.0, 1.7, 2.0, 2.6])
    assert_array_equal(beats.end, [1.0, 1.7, 2.0, 2.6, 3.0])
    assert_array_equal(stretches([own], [(0.5, 3.0)]).start, [0.5, 1.7])
    whole = stretches([own], [(1.0, 1.5)], whole_beats=True)
    assert_array_equal(whole.start, [1.0])


def test_slivers_are_left_out():
    """Narrower than 1e-12 beats is rounding; twice that is a part."""
    own = Drawn(1)
    cut = stretches([own], [(0.0, 4.0)], at=[1.0, 1.0 + 0.5e-12])
    assert_allclose(cut.start, [0.0, 1.0, 1.7, 3.25], atol=1e-12)
    wider = stretches([own], [(0.0, 4.0)], at=[1.0, 1.0 + 2e-12])
    assert len(wider.start) == 5


def test_two_trajectories_are_cut_alike():
    """Where either changes; cuts nearer than 1e-12 are one, and the bounds of both go on through it."""
    one, two = Drawn(5), Drawn(6, cuts=(0.0, 1.7 + 5e-13, 2.0, 4.5, 6.0))
    cut = stretches([one, two], [(0.25, 3.0), (3.5, 5.0)])
    assert_allclose(cut.start, [0.25, 1.7, 2.0, 3.5, 4.5], atol=1e-11)
    assert_allclose(cut.end, [1.7, 2.0, 3.0, 4.5, 5.0], atol=1e-11)
    assert cut.group.tolist() == [0, 0, 0, 1, 1]
    assert cut.bounds[0] == tuple(one.bounds[k] for k in (0, 1, 1, 2, 2))
    assert cut.bounds[1] == tuple(two.bounds[k] for k in (0, 1, 2, 2, 3))
    (rate,) = cut.columns("turn_rate", of=1)
    assert rate.tolist() == [own.turn_rate for own in cut.bounds[1]]


def test_whole_beats_of_a_pattern():
    cut = stretches(
        [Drawn(1, cuts=(0.0, 8.0, 9.0, 9.5))], [(0.0, 2.5), (2.5, 8.0)], whole_beats=True
    )
    assert_allclose(cut.start, [0, 1, 2, 2.5, 3, 4, 5, 6, 7])
    assert_allclose(cut.end, [1, 2, 2.5, 3, 4, 5, 6, 7, 8])
    assert cut.group.tolist() == [0, 0, 0, 1, 1, 1, 1, 1, 1]
