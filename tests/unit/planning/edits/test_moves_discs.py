"""Moves of places worked by hand in a world of upright discs 1 m across that stand still.

Two discs whose middles are d apart leave d − 1 m between them. Places move by whole steps of 5 cm, to 2 cm
above the requirement: so 0.3 m wants 1.35 m from middle to middle where they were 1 m apart.
"""

import math
from dataclasses import dataclass
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.planning.edits import moves
from sequencer.planning.edits.moves import MovePlace, place_mends


@dataclass(frozen=True)
class Floor:
    place: tuple[float, float]
    holds: tuple[float, float] = (2.0, 20.0)  # beats

    def moved(self, by, *, start, end):
        assert (start, end) == (8.0, 12.0)
        return Floor((self.place[0] + by[0], self.place[1] + by[1]), self.holds)

    def at(self, beats):
        return SimpleNamespace(place=np.tile(np.array(self.place, float), (len(beats), 1)))

    def held(self, start, end):
        assert (start, end) == (8.0, 12.0)
        return self.holds


@dataclass(frozen=True)
class Disc:
    name: str
    floor: Floor


def disc(name, x, y=0.0, holds=(2.0, 20.0)):
    return Disc(name, Floor((x, y), holds))


def gap(pair):
    return math.dist(pair[0].floor.place, pair[1].floor.place) - 1.0


@pytest.fixture
def world(monkeypatch):
    """Approaches and nearest points of discs; what was asked is kept."""
    asked = []

    def approaches(pair, low, high, *, required, minima=True):
        asked.append((pair[0].name, pair[1].name, low, high))
        found = [(8.0, 12.0)] if gap(pair) < required else []
        start, end = (np.array([span[k] for span in found]) for k in (0, 1))
        spans = SimpleNamespace(start=start, end=end, group=np.zeros(len(found)))
        return SimpleNamespace(spans=spans, distance=np.array([gap(pair)]))

    def closest(first, second, beats):
        away = np.subtract(second.floor.place, first.floor.place)
        size = np.hypot(*away)
        direction = np.append(away / size, 0.0) if size else np.array([0.0, 0.0, 1.0])
        n = len(beats)
        return SimpleNamespace(
            direction=np.tile(direction, (n, 1)), distance=np.full(n, gap((first, second)))
        )

    monkeypatch.setattr(moves, "approaches", approaches)
    monkeypatch.setattr(moves, "closest", closest)
    # discs have no content keys: nothing is looked up
    monkeypatch.setattr(moves, "slice_keys", lambda _disc, edges: (None,) * (len(edges) - 1))
    return asked


def mends(*cast, required=0.3, show=(0.0, 48.0)):
    return place_mends(cast, 0, 1, conflict=(8.0, 12.0), show=show, required=required)


def test_each_goes_by_itself_or_both_by_half(world):
    second, first, both = mends(disc("Ada", 0.0), disc("Bo", 1.0))
    assert [one.who for one in (second, first, both)] == [("Bo",), ("Ada",), ("Ada", "Bo")]
    assert_allclose(second.by, [(0.35, 0.0)], atol=1e-12)
    assert_allclose(first.by, [(-0.35, 0.0)], atol=1e-12)
    assert_allclose(both.by, [(-0.175, 0.0), (0.175, 0.0)], atol=1e-12)
    for one in (second, first, both):
        assert (one.start, one.end, one.crowds) == (2.0, 20.0, ())
        assert_allclose(one.distance, 0.35)
        assert_allclose(one.cost, 0.35)
    assert {(low, high) for _, _, low, high in world} == {(2.0, 20.0), (7.5, 12.5)}


def test_a_slanted_pair_parts_along_the_line_between_them(world):
    """3–4–5: middles 0.5 m apart go to 1.35, so 0.85 m along (0.6, −0.8)."""
    (found, *_) = mends(disc("Ada", 0.0), disc("Bo", 0.3, -0.4))
    assert_allclose(found.by, [(0.51, -0.68)], atol=1e-12)
    assert_allclose(found.cost, 0.85)


def test_two_in_one_place_part_along_x(world):
    (found, *_) = mends(disc("Ada", 2.0, 2.0), disc("Bo", 2.0, 2.0))
    assert_allclose(found.by, [(1.35, 0.0)], atol=1e-12)


def test_who_is_moved_stays_so_while_the_place_is_held_within_the_show(world):
    ada, bo = disc("Ada", 0.0, holds=(-4.0, 14.0)), disc("Bo", 1.0, holds=(6.0, 99.0))
    found = {one.who: (one.start, one.end) for one in mends(ada, bo)}
    assert found == {("Ada",): (0.0, 14.0), ("Bo",): (6.0, 48.0), ("Ada", "Bo"): (0.0, 48.0)}


def test_who_is_crowded_is_told_and_that_comes_last(world):
    """Cy leaves 0.3 m to Bo now and −0.05 after: only who does not move Bo so far crowds nobody."""
    found = mends(disc("Ada", 0.0), disc("Bo", 1.0), disc("Cy", 2.3))
    assert [(one.who, one.crowds) for one in found] == [
        (("Ada",), ()), (("Bo",), ("Cy",)), (("Ada", "Bo"), ("Cy",)),
    ]  # fmt: skip
    assert_allclose([one.cost for one in found], [0.35, 100.35, 100.35])


@pytest.mark.parametrize(
    ("before", "after", "crowded"),
    [
        (0.2, 0.185, ("Cy",)),
        (0.5, 0.49, ()),  # one centimetre exactly
        (0.2, 0.195, ()),
        (0.2, 0.25, ()),
    ],
)
def test_who_was_too_close_already_is_crowded_by_a_centimetre_more(
    before, after, crowded, monkeypatch
):
    def approaches(pair, *_span, required, minima):
        assert required == 0.6
        return SimpleNamespace(
            spans=SimpleNamespace(group=np.zeros(1)),
            distance=[after if pair[0].floor.place[0] > 1 else before],
        )

    monkeypatch.setattr(moves, "approaches", approaches)
    mend = MovePlace(who=("Bo",), by=((0.5, 0.0),), start=0.0, end=1.0, distance=0.7)
    cast = [disc("Ada", 0.0), disc("Bo", 1.0), disc("Cy", 2.0)]
    told = moves._crowds(cast[1:], mend, (8.0, 12.0), (0.0, 48.0), 0.6)
    assert tuple(told) == crowded


def test_a_move_of_six_metres_is_the_farthest(world, monkeypatch):
    assert_allclose(mends(disc("Ada", 0.0), disc("Bo", 1.0), required=5.96)[0].cost, 6.0)
    assert mends(disc("Ada", 0.0), disc("Bo", 1.0), required=5.99) == ()
    monkeypatch.setattr(moves, "_rounded_up", lambda _v: np.array([6.0, 0.0]))
    assert mends(disc("Ada", 0.0), disc("Bo", 1.0))[0].by == ((6.0, 0.0),)


def test_a_pair_that_never_clears_is_given_up_after_six_tries(world, monkeypatch):
    """Six cutting planes: approved, a search that needs more is rare, and a change of breadth must be seen."""
    tries = []
    spans = SimpleNamespace(start=np.array([8.0]), end=np.array([12.0]), group=np.zeros(1))
    monkeypatch.setattr(
        moves, "approaches", lambda *_a, **_k: SimpleNamespace(spans=spans, distance=[0.0])
    )
    real = moves._planes
    monkeypatch.setattr(moves, "_planes", lambda *given: tries.append(given) or real(*given))
    assert mends(disc("Ada", 0.0), disc("Bo", 1.0)) == ()
    assert len(tries) == 3 * 6


def test_other_conflicts_of_the_pair_are_left_to_their_own_mends(monkeypatch):
    """Those that end before 7.5 or begin after 12.5, for a conflict from 8 to 12; half a beat wider."""
    edges = [(3.0, 7.4), (3.0, 7.5), (7.0, 8.0), (9.0, 10.0), (12.5, 14.0), (12.6, 14.0)]
    spans = SimpleNamespace(
        start=np.array([a for a, _ in edges]), end=np.array([b for _, b in edges])
    )
    monkeypatch.setattr(moves, "approaches", lambda *_a, **_k: SimpleNamespace(spans=spans))
    found = moves.elsewhere((None, None), (8.0, 12.0), (0.0, 48.0), 0.3)
    assert_allclose(found, [(2.5, 7.9), (12.1, 14.5)], atol=1e-12)


@pytest.mark.parametrize(
    ("start", "end", "mended"),
    [(2.0, 2.5, False), (2.0, 2.6, True), (5.4, 6.0, True), (5.5, 6.0, False), (3.0, 5.0, True)],
)
def test_only_new_approaches_ask_for_a_longer_move(start, end, mended, world, monkeypatch):
    """What overlaps another conflict, here from 2.5 to 5.5, is that one's: only what does not asks for planes."""
    monkeypatch.setattr(moves, "elsewhere", lambda *_given: [(2.5, 5.5)])
    spans = SimpleNamespace(start=np.array([start]), end=np.array([end]), group=np.zeros(1))
    monkeypatch.setattr(
        moves, "approaches", lambda *_a, **_k: SimpleNamespace(spans=spans, distance=[0.25])
    )
    pair = (disc("Ada", 0.0), disc("Bo", 1.0))
    found = moves._shortest(pair, (0.0, 1.0), (8.0, 12.0), (0.0, 48.0), 0.3)
    assert (found is not None) == mended
    if found is not None:
        assert (found.by, found.distance) == (((0.0, 0.0),), 0.25)


def planes(start, end, *, direction, distance, first, second, acting, required=0.3):
    """The planes of two who stand at `first` and `second`, moved by `acting` of a metre along x."""
    seen = []

    def closest(_a, _b, beats):
        seen.append(beats)
        n = len(beats)
        return SimpleNamespace(
            direction=np.tile(np.array(direction, float), (n, 1)), distance=np.full(n, distance)
        )

    pair = (disc("Ada", *first), disc("Bo", *second))
    moved = tuple(
        disc(one.name, one.floor.place[0] + by, one.floor.place[1])
        for one, by in zip(pair, acting, strict=True)
    )
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(moves, "closest", closest)
        found = moves._planes(
            pair, pair, moved, np.array(start, float), np.array(end, float), required
        )
    return (*found, seen[0])


def test_planes_stand_at_nine_instants_of_each_span_the_longest_first():
    normal, short, beats = planes(
        [0, 10, 20], [1, 14, 22],
        direction=(0.6, -0.8, 0.0), distance=0.1, first=(0, 0), second=(1, 0), acting=(-0.25, 0.5),
    )  # fmt: skip
    ninths = np.linspace(0, 1, 9)
    assert_allclose(beats, [*(10 + 4 * ninths), *(20 + 2 * ninths), *ninths])
    assert_allclose(normal, np.tile((0.45, -0.6), (27, 1)))
    assert_allclose(short, np.full(27, 0.22))


def test_the_sixty_four_longest_spans_are_looked_at():
    """Approved: how many spans a plane is laid through."""
    length = np.arange(1, 71) / 100
    *_, beats = planes(
        np.arange(70), np.arange(70) + length,
        direction=(1, 0, 0), distance=0.1, first=(0, 0), second=(1, 0), acting=(0, 1),
    )  # fmt: skip
    assert beats[::9].tolist() == list(range(69, 5, -1))


@pytest.mark.parametrize(
    ("direction", "second", "expected"),
    [
        ((0.5, 0.0, 0.8), (3, 4), (0.5, 0.0)),
        ((0.0, 0.49, 0.8), (3, 4), (0.6, 0.8)),
        ((0.0, 0.0, 1.0), (0, 0), (1.0, 0.0)),
        ((0.0, 0.0, 1.0), (2e-6, 0), (1.0, 0.0)),
        ((0.0, 0.0, 1.0), (0, -2e-6), (0.0, -1.0)),
        ((0.0, 0.0, 1.0), (0, -0.9e-6), (1.0, 0.0)),
        ((0.0, 0.0, 1.0), (0, -1e-6), (1.0, 0.0)),
    ],
)
def test_parts_above_each_other_are_parted_along_the_line_between_the_places(
    direction, second, expected
):
    normal, _, _ = planes(
        [0], [1], direction=direction, distance=0.1, first=(0, 0), second=second, acting=(0, 1)
    )
    assert_allclose(normal, np.tile(expected, (9, 1)), atol=1e-9)


def test_places_apart_are_those_of_the_second_from_the_first():
    normal, _, _ = planes(
        [0], [1], direction=(0, 0, 1), distance=0.1, first=(5, 7), second=(2, 3), acting=(0, 1)
    )
    assert_allclose(normal, np.tile((-0.6, -0.8), (9, 1)))


@pytest.mark.parametrize(
    ("distance", "acting", "kept"),
    [
        (0.1, (0, 1), 9), (0.32 - 1e-9, (0, 1), 9), (0.32, (0, 1), 0), (0.4, (0, 1), 0),
        (0.1, (0, 0.021), 9), (0.1, (0, 0.02), 0), (0.1, (0.3, 0.3), 0), (0.1, (-0.5, -0.4), 9),
    ],
)  # fmt: skip
def test_planes_are_kept_where_something_is_missing_and_the_vector_acts(distance, acting, kept):
    """Less than the requirement and 2 cm; by more than a fiftieth of the vector."""
    normal, short, _ = planes(
        [0], [1], direction=(1, 0, 0), distance=distance, first=(0, 0), second=(0, 1), acting=acting
    )
    assert len(normal) == len(short) == kept


def test_the_least_is_looked_for_among_all_candidates_in_order():
    """Parallel planes meet nowhere: each is one candidate, and only the last of them does."""
    for count in (255, 256, 257, 258, 513, 514):
        normals = np.tile((1.0, 0.0), (count, 1))
        missing = np.random.default_rng(count).permutation(np.arange(1.0, count + 1))
        if count <= 283:  # more are thinned out first
            assert_allclose(moves._least(normals, missing), (count, 0.0))


def test_a_billionth_of_a_metre_is_not_missed():
    """One plane asks for a nanometre more than the other, exactly: the shorter vector will do."""
    missing = np.array([1.0, 1.0 + 1e-9])
    assert missing[1] - 1e-9 == 1.0
    assert moves._least(np.tile((1.0, 0.0), (2, 1)), missing).tolist() == [1.0, 0.0]


def test_of_too_many_planes_the_most_demanding_are_kept_by_their_distance():
    """A half-length normal asks for twice its missing; the 250 planes farthest off are kept: approved."""
    normals = np.tile((1.0, 0.0), (300, 1))
    missing = np.full(300, 1.0)
    normals[[7, 8]] = (0.01, 0.0), (0.0, 0.01)
    missing[[7, 8]] = 0.02, 0.03
    assert_allclose(moves._least(normals, missing), (2.0, 3.0), atol=1e-9)
    for rank, found in ((250, (2.0, 1.0)), (251, (2.0, 0.0))):
        normals = np.tile((1.0, 0.0), (300, 1))
        missing = np.where(np.arange(300) < rank, 2.0, 0.5)
        normals[rank - 1], missing[rank - 1] = (0.0, 1.0), 1.0
        assert_allclose(moves._least(normals, missing), found, atol=1e-9)


def test_mends_are_in_order_of_their_cost_to_a_micrometre(world, monkeypatch):
    """The second's is found first: within a micrometre it stays first, beyond the shorter one does."""
    for costs, order in (
        ((1.0000004, 1.0, 1.0), ["Bo", "Ada", "both"]),
        ((1.000004, 1.0, 1.0), ["Ada", "both", "Bo"]),
        ((3.0, 2.0, 1.0), ["both", "Ada", "Bo"]),
    ):
        left = dict(zip(((0.0, 1.0), (1.0, 0.0), (0.5, 0.5)), zip(costs, ("Bo", "Ada", "both"), strict=True), strict=True))  # fmt: skip

        def shortest(_pair, shares, *_rest, left=left):
            cost, who = left[shares]
            return MovePlace(who=(who,), by=((cost, 0.0),), start=0.0, end=1.0, distance=1.0)

        monkeypatch.setattr(moves, "_shortest", shortest)
        monkeypatch.setattr(moves, "_crowds", lambda *_given: iter(()))
        found = mends(disc("Ada", 0.0), disc("Bo", 1.0))
        assert [one.who[0] for one in found] == order


def test_a_vector_is_rounded_up_from_a_millionth_of_a_millimetre_on():
    assert_allclose(moves._rounded_up(np.array([0.9e-9, 0.0])), (0.9e-9, 0.0), rtol=1e-9)
    assert_allclose(moves._rounded_up(np.array([0.0, -2e-9])), (0.0, -0.05), rtol=1e-9)
    assert_allclose(moves._rounded_up(np.array([0.05 + 4e-11, 0.0])), (0.05, 0.0), rtol=1e-9)
    assert_allclose(moves._rounded_up(np.array([0.05 + 1e-9, 0.0])), (0.10, 0.0), rtol=1e-9)
