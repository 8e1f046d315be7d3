"""Ways to posts: the slack between samples is the whole of what a walker can do in half an interval."""

import numpy as np
import pytest

from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed, beyond, closest, farthest
from sequencer.motion.performers.walks import Move, WalkPath

WALK = WalkPath((0.0, 0.0), moves=(Move(start=0.0, end=8.0, place=(4.0, 0.0), facing=0.0),))
HEIGHT = 0.0099  # [m] just under twice the tolerance of 5 mm


def cone(top, sign):
    """A way of 5 m, but for a cone of slope 1 at `top`: the sharpest change that a distance may have."""

    def ways(places):
        off = np.abs(places[:, 0] - top)
        return (5.0 + sign * np.maximum(HEIGHT - off, 0.0))[:, None]

    return ways


@pytest.mark.parametrize("top", np.linspace(0.7, 3.3, 14))
def test_no_cone_between_samples_is_missed(top):
    """Source: S. A. Piyavskii's bound with the Lipschitz constant; distances are 1-Lipschitz in place."""
    one = [Followed(who="Ada", floor=WALK, start=0.0, end=8.0)]
    far = farthest(one, [cone(top, 1.0)], limit=6.0)[0]
    near = closest(one, [cone(top, -1.0)], limit=4.0)[0]

    assert 5.0 + HEIGHT - 0.005 <= far.distance <= 5.0 + HEIGHT
    assert 5.0 - HEIGHT <= near.distance <= 5.0 - HEIGHT + 0.005
    assert far.spans == near.spans == ()


def test_whoever_breaks_the_limit_does_so_in_spans_that_hold_every_moment():
    """Post at the start: 3 m away from where the walk has come 3 m, until it is back."""
    back = WalkPath(
        (0.0, 0.0), moves=(*WALK.moves, Move(start=8.0, end=16.0, place=(0.0, 0.0), facing=0.0))
    )
    found = farthest(
        [Followed(who="Ada", floor=back, start=0.0, end=16.0)],
        [lambda places: np.hypot(*places.T)[:, None]],
        limit=3.0,
    )[0]
    beats = np.linspace(0.0, 16.0, 16001)
    over = beats[back.at(beats).place[:, 0] > 3.0]
    ((low, high),) = found.spans

    assert over[0] - 0.02 <= low <= over[0]
    assert over[-1] <= high <= over[-1] + 0.02
    assert found.distance == pytest.approx(4.0, abs=0.005)
    assert found.beat == pytest.approx(8.0, abs=0.5)
    assert found.place == pytest.approx(tuple(back.at(found.beat).place))


def test_each_is_held_against_the_nearest_of_their_own_posts():
    posts = [np.array([[0.0, 1.0], [4.0, 1.0]]), np.array([[0.0, 2.0]])]
    ways = [lambda p, own=own: np.linalg.norm(p[:, None] - own, axis=-1) for own in posts]
    both = [Followed(who=who, floor=WALK, start=0.0, end=8.0) for who in ("Ada", "Bo")]
    far = farthest(both, ways, limit=9.0)

    assert far[0].distance == pytest.approx(
        np.hypot(2, 1), abs=0.005
    )  # at the middle, 2 m from both
    assert far[1].distance == pytest.approx(np.hypot(4, 2), abs=0.005)
    near = closest(both, ways, limit=0.0)
    assert near[0].distance == pytest.approx(1.0, abs=0.005)
    assert near[1].distance == pytest.approx(2.0, abs=0.005)
    assert near[1].post == 0
    assert (
        farthest([Followed(who="Ada", floor=WALK, start=7.9, end=8.0)], ways, limit=9.0)[0].post
        == 1
    )


def test_where_there_is_no_way_the_distance_is_beyond_all_limits():
    none = farthest(
        [Followed(who="Ada", floor=WALK, start=0.0, end=8.0)],
        [lambda places: np.full((len(places), 1), np.inf)],
        limit=5.0,
    )[0]
    assert none.distance == 1e6
    assert none.spans == ((0.0, 8.0),)


def test_nobody_is_followed_for_no_time():
    assert farthest([], [], limit=1.0) == []
    with pytest.raises(ValueError, match=r"Ada is followed from 2\.0 to 2\.0, an empty span"):
        closest([Followed(who="Ada", floor=WALK, start=2.0, end=2.0)], [], limit=1.0)


@pytest.mark.parametrize("limit", [1.0, 3.0, 3.999, 4.001])
def test_whether_somebody_is_beyond_the_limit_is_whether_there_are_spans(limit):
    """Reference: the spans of `farthest`, each searched alone; one way of two people is asked of both at once."""
    back = Move(start=9.0, end=12.0, place=(1.0, 1.0), facing=0.0, through=((3.0, 2.0),))
    paths = [WALK, WalkPath((0.5, 0.0)), WalkPath((0.0, 0.0), moves=(*WALK.moves, back))]
    people = [Followed(who=str(k), floor=path, start=1.0, end=14.0) for k, path in enumerate(paths)]
    near, far = (WalkableFloor().ways_to([post]) for post in ((0.0, 0.0), (2.0, 0.0)))
    ways = [near, near, far]
    alone = [farthest([one], [way], limit)[0] for one, way in zip(people, ways, strict=True)]
    assert beyond(people, ways, limit) == [bool(each.spans) for each in alone]
    assert farthest(people, ways, limit) == alone
    assert beyond([], [], limit) == farthest([], [], limit) == []
