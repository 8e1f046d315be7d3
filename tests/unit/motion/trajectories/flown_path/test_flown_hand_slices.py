"""A flown hand is made by slices: as if at once, and each known by what decides it and nothing else."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer import kept
from sequencer.motion.trajectories.flown_path import flown_hand as module
from sequencer.motion.trajectories.flown_path import hand_slices
from sequencer.motion.trajectories.flown_path.flown_bounds import largest_on_spans, largest_rates
from sequencer.motion.trajectories.flown_path.flown_hand import SHOW_KNOTS, Course
from sequencer.motion.trajectories.flown_path.flown_making import clipped, flown_hand
from tests.nothing_kept import nothing_kept
from tests.unit.motion.trajectories.flown_path.test_flown_hand import (
    DRAG,
    DRAWN,
    LENGTH,
    TEMPO,
    WALKING,
    circling,
    standing,
)

FOUND = WALKING._replace(part=lambda low, high: b"walk %r %r" % (low, high))


@pytest.fixture(autouse=True)
def _nothing_kept():
    with nothing_kept():
        yield


def long(beats):
    """The same circle, over and over."""
    return circling(np.mod(beats, 12.0))


def courses(last=b"c", start=0.0):
    """Flown, a drawing that stands in, flown again."""
    return [
        Course(start, 10.0, long, flown=True, content=b"a"),
        Course(10.0, 30.0, lambda beats: long(0.5 * beats), flown=False, content=b"b"),
        Course(30.0, 80.0, long, flown=True, content=last),
    ]


def made(own=None, ground=FOUND, **more):
    given = {"length": LENGTH, "drag": DRAG, "drawn": DRAWN, "ground": ground, **more}
    return flown_hand(own or courses(), **given)


def test_slices_make_what_is_made_at_once(monkeypatch):
    """Source: the same made in one slice; what is left out dies away below rounding, which second differences enlarge."""
    hand = made()
    assert len(hand.slices) == 5
    monkeypatch.setattr(module, "SLICE_KNOTS", 10_000)
    whole = made()
    assert len(whole.slices) == 1
    assert_allclose(hand.head.coefficients, whole.head.coefficients, rtol=0, atol=1e-13)
    assert_allclose(hand.hand.coefficients, whole.hand.coefficients, rtol=0, atol=1e-9)
    assert_allclose(hand.pull, whole.pull, rtol=1e-9)


def test_knots_are_those_of_the_count():
    hand = made(courses(start=0.005))
    assert hand.head.start == 1 / SHOW_KNOTS
    assert hand.head.end == pytest.approx(80.0)


def keys(**more):
    return made(**more).slices


def differ(one, other):
    return [k for k, pair in enumerate(zip(one, other, strict=True)) if pair[0] != pair[1]]


def test_a_course_changes_the_slices_that_it_reaches():
    """From beat 30 on, less three beats: the second slice, from 16 to 32, and those after it."""
    assert differ(keys(), keys(own=courses(last=b"d"))) == [1, 2, 3, 4]
    moved = courses()
    moved[1] = moved[1]._replace(end=36.0)
    moved[2] = moved[2]._replace(start=36.0)
    assert differ(keys(), keys(own=moved)) == [1, 2]
    drawn = [each._replace(flown=False) for each in courses()]
    assert differ(keys(), keys(own=drawn)) == [0, 1, 2, 3, 4]


def test_place_tempo_tether_and_drag_are_in_the_keys():
    slow = FOUND._replace(beats_a_second=lambda beats: np.full(beats.shape, 0.9 * TEMPO))
    here = FOUND._replace(part=lambda low, high: b"stand" if high < 40 else FOUND.part(low, high))
    assert differ(keys(), keys(ground=slow)) == [0, 1, 2, 3, 4]
    assert differ(keys(), keys(ground=here)) == [0, 1]
    assert differ(keys(), keys(length=LENGTH + 0.01)) == [0, 1, 2, 3, 4]
    assert differ(keys(), keys(drag=2 * DRAG)) == [0, 1, 2, 3, 4]


def test_what_is_not_known_is_not_kept():
    assert keys(ground=standing()) == (None,) * 5
    unknown = courses()
    unknown[0] = unknown[0]._replace(content=None)
    assert [key is None for key in keys(own=unknown)] == [True, False, False, False, False]


def test_a_slice_is_made_once():
    asked = []

    def counted(beats):
        asked.append(len(beats))
        return long(beats)

    own = courses()
    own[2] = own[2]._replace(at=counted)
    first = made(own)
    count = len(asked)
    again = made(own)
    assert count > 0
    assert len(asked) == count
    assert np.array_equal(first.head.coefficients, again.head.coefficients)


def test_a_slice_comes_back_from_its_record_to_the_last_digit():
    own = hand_slices.HandSlice(
        *(np.random.default_rng(3).normal(size=(7, 3)) for _ in range(2)),
        np.ones(4),
        np.arange(4.0),
    )
    back = hand_slices._slice_from(hand_slices._slice_record(own))
    assert all(np.array_equal(a, b) for a, b in zip(own, back, strict=True))
    bounds = made().pieces(0.0, 16.0)[3:6]
    held = tuple(each for _, _, each in bounds)
    assert module._unpacked(module._packed(held)) == held
    assert len(set(held)) == 3


def test_what_is_no_slice_is_not_read_as_one():
    own = hand_slices.HandSlice(np.zeros((7, 3)), np.ones((7, 3)), np.ones(4), np.arange(4.0))
    record = hand_slices._slice_record(own)
    unlike = own._replace(hand=np.ones((6, 3)), pull=np.ones(7))  # as many numbers in all
    for damaged in (record[:-8], record[:20], b"", hand_slices._slice_record(unlike)):
        with pytest.raises(ValueError):  # noqa: PT011 - numpy's own words, or ours
            hand_slices._slice_from(damaged)


def test_pieces_are_hashed_by_themselves_wherever_a_slice_begins():
    """A change of one coefficient changes the hash of its piece alone; pieces end at whole multiples from beat 0."""
    head, hand = np.random.default_rng(5).normal(size=(2, 100, 3))
    said = hand_slices.said_by_piece(None, 10, head, hand)
    assert len(said) == 5  # 14, 24, 24, 24 and 14
    for at, piece in ((13, 0), (14, 1), (37, 1), (38, 2), (99, 4)):
        for path in (head, hand):
            path[at, 1] += 1e-12
            again = hand_slices.said_by_piece(None, 10, head, hand)
            assert [k for k in range(5) if again[k] != said[k]] == [piece]
            said = again


def test_a_part_holds_all_that_counts_between_two_beats():
    """Every coefficient of a span there, and two pieces more on either side, whose bounds count."""
    one = made()
    for knot in (16 * SHOW_KNOTS, 24 * SHOW_KNOTS, 32 * SHOW_KNOTS - 1, 32 * SHOW_KNOTS + 4):
        for name in ("head", "hand"):
            path = getattr(one, name)
            changed = path.coefficients.copy()
            changed[knot - round(path.start * SHOW_KNOTS)] += 1e-12
            other = replace(one, **{name: replace(path, coefficients=changed)}, slices=())
            assert other.part(16.0, 32.0) != one.part(16.0, 32.0)
            assert other.part(40.0, 48.0) == one.part(40.0, 48.0)


def test_a_slice_that_is_kept_is_read_once(monkeypatch):
    own = hand_slices.HandSlice(np.zeros((7, 3)), np.ones((7, 3)), np.ones(4), np.arange(4.0))
    on_disk = {b"one": own}

    def read(key, **_):
        return (on_disk.pop(key),) if key in on_disk else ()

    monkeypatch.setattr(hand_slices, "known_on_disk", read)
    assert hand_slices.known_slice(b"one") is own
    assert not on_disk
    assert hand_slices.known_slice(b"one") is own
    assert hand_slices.known_slice(b"another") is None


def test_what_is_clipped_is_what_lies_between():
    near = clipped(courses(), 5.0, 12.0)
    assert near == [(5.0, 10.0, True, b"a"), (10.0, 12.0, False, b"b")]


def test_a_part_is_known_by_the_splines_there():
    """Changed from beat 30 on; planes are not in it, starts are."""
    one = made()
    changed = replace(one.hand, coefficients=one.hand.coefficients.copy())
    other = replace(one, hand=changed, slices=())  # those that are kept are others
    other.hand.coefficients[30 * SHOW_KNOTS :] += 1e-15
    assert one.part(0.0, 16.0) == other.part(0.0, 16.0)
    assert one.part(16.0, 32.0) != other.part(16.0, 32.0)
    later = replace(one, head=replace(one.head, start=0.5))
    assert one.part(0.0, 16.0) != later.part(0.0, 16.0)


def test_bounds_are_those_of_the_slices(monkeypatch):
    """Source: the same bounds worked out at once."""
    some = made().pieces(0.0, 80.0)
    monkeypatch.setattr(kept, "_RECENT", {})
    hand = made()
    monkeypatch.setattr(module, "SLICE_KNOTS", 10_000)
    assert hand.pieces(0.0, 80.0) == some


def test_rates_are_those_of_the_whole_hand(monkeypatch):
    """Source: the bounds of the two splines, worked out at once; speeds are theirs at the fastest tempo of each span."""
    monkeypatch.setattr(kept, "_RECENT", {})
    hand, steady = made(), np.ones_like
    assert len(hand.slices) > 1
    gone, bent = (largest_on_spans(hand.hand, order) for order in (1, 2))
    swung = largest_on_spans(hand.head, 1)
    assert np.array_equal(hand.pushes(steady), bent)
    for course in hand.courses:
        on = slice(*(round(beat * SHOW_KNOTS) for beat in (course.start, course.end)))
        assert hand.hand_acceleration(course, lambda beats: 3.0 * steady(beats)) == 9.0 * max(
            bent[on]
        )
        found = hand.largest_rates(course, lambda beats: 2.0 * steady(beats))
        assert found == (2.0 * max(gone[on]), 4.0 * max(bent[on]), 2.0 * max(swung[on]))


def test_rates_are_worked_out_once_for_each_slice(monkeypatch):
    """A hand that differs in one slice shares those of the others."""
    monkeypatch.setattr(kept, "_RECENT", {})
    seen = []

    def counted(head, hand):
        seen.append(head.start)
        return largest_rates(head, hand)

    monkeypatch.setattr(module, "largest_rates", counted)
    one = made()
    one.pushes(np.ones_like)
    count = len(seen)
    assert count == len(one.slices)
    changed = replace(one.hand, coefficients=one.hand.coefficients.copy())
    other = replace(one, hand=changed, slices=())  # those that are kept are others
    other.hand.coefficients[30 * SHOW_KNOTS : 31 * SHOW_KNOTS] += 1e-9
    other.pushes(np.ones_like)
    assert seen[count:] == [16.0]
    assert np.array_equal(other.pushes(np.ones_like), largest_on_spans(other.hand, 2))


@pytest.mark.parametrize("count", [1, 2, 3, 7, 64, 1001])
def test_states_do_not_depend_on_what_is_asked_with_them(count):
    hand = made().hand
    beats = np.random.default_rng(5).uniform(0.0, 80.0, 1001)
    for order in range(3):
        assert np.array_equal(hand.at(beats, order)[:count], hand.at(beats[:count], order))


def test_bounds_are_known_by_where_a_slice_begins(monkeypatch):
    """The same splines some knots later are cut into other pieces; source: the same bounds with nothing known."""
    monkeypatch.setattr(kept, "_RECENT", {})
    one = made([Course(0.0, 12.0, long, flown=True, content=b"a")])
    assert len(one.slices) == 1
    start = 7 / SHOW_KNOTS
    later = replace(one, head=replace(one.head, start=start), hand=replace(one.hand, start=start))
    one.pieces(0.0, 12.0)
    known = later.pieces(start, 12.0)
    monkeypatch.setattr(kept, "_RECENT", {})
    assert replace(later).pieces(start, 12.0) == known
