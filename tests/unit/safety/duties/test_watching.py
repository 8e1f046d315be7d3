"""Who watches whom: within capacity, the near one, few hand-overs, and every gap said."""

import math
from itertools import pairwise

import numpy as np
import pytest

from sequencer.facts.profiles import Rule, kind_of
from sequencer.facts.rule_book import RuleBook
from sequencer.facts.sources import Source
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.safety.duties import watching
from sequencer.safety.duties.watching import (
    Duty,
    HandOver,
    Watch,
    _hand_overs,
    _longest,
    longest_walk,
    watch_plan,
)


def stand(who, x, y, start=0.0, end=32.0):
    return Followed(who=who, floor=WalkPath((x, y)), start=start, end=end)


def cross(who, a, b, start=0.0, end=32.0, go=8.0, stop=24.0):
    return Followed(
        who=who, floor=WalkPath(a, moves=(Move(start=go, end=stop, facing=0.0, place=b),)),
        start=start, end=end,
    )  # fmt: skip


def spotter(who, x, y, watches=()):
    return Duty(who=who, place=(x, y), duty="spotter", watches=watches)


LEFT, RIGHT = spotter("Flint", -6.0, 0.0), spotter("Brook", 6.0, 0.0)


def test_each_gets_the_near_one():
    plan = watch_plan([stand("Wren", -3, 0), stand("Moss", 3, 0)], [LEFT, RIGHT], each=2)

    assert {(watch.who, watch.spotter) for watch in plan.watches} == {
        ("Wren", "Flint"),
        ("Moss", "Brook"),
    }
    assert [watch.way for watch in plan.watches] == pytest.approx([3.0, 3.0])
    assert plan.worst == pytest.approx(3.0)
    # Woods et al. 2015; 3.5 ft/s, the slow walk: a rescuer may be slower, never assumed faster
    assert plan.watches[0].response == pytest.approx(0.231 + 3.0 / (3.5 * 0.3048))
    assert not plan.unwatched
    assert not plan.hand_overs


def test_the_way_to_somebody_who_walks_is_an_upper_bound_to_5_mm():
    """From [-6, 0] to the end of the walk at [4, 3]: √109 m, and never less told."""
    burn = cross("Wren", (-4, 3), (4, 3), start=8.0, end=24.0)  # out as soon as the walk ends
    plan = watch_plan([burn], [LEFT], each=1)

    assert 0.0 <= plan.watches[0].way - math.sqrt(109.0) <= 0.005 + 1e-9


def test_the_watch_is_handed_over_when_two_change_sides():
    burns = [cross("Wren", (-4, 0), (4, 0)), cross("Moss", (4, 2), (-4, 2))]
    plan = watch_plan(burns, [LEFT, RIGHT], each=1)

    ends = {watch.who: watch.spotter for watch in plan.watches if watch.end == 32.0}
    starts = {watch.who: watch.spotter for watch in plan.watches if watch.start == 0.0}
    assert starts == {"Wren": "Flint", "Moss": "Brook"}
    assert ends == {"Wren": "Brook", "Moss": "Flint"}
    assert {each.who for each in plan.hand_overs} == {"Wren", "Moss"}
    # at the ends of the walk, or of one of its four parts
    assert all(
        isinstance(each, HandOver) and each.beat in range(8, 25, 4) for each in plan.hand_overs
    )
    # no break: each performer's watches touch
    for who in ("Wren", "Moss"):
        own = [watch for watch in plan.watches if watch.who == who]
        assert [watch.start for watch in own[1:]] == [watch.end for watch in own[:-1]]


def test_a_small_gain_is_no_reason_to_hand_over():
    plan = watch_plan([cross("Wren", (-0.4, 0), (0.4, 0))], [LEFT, RIGHT], each=1)

    assert len(plan.watches) == 1
    assert not plan.hand_overs


def test_within_the_limit_no_watch_is_handed_over():
    """The walk of 8 m changes who is near, but the first spotter is never more than 10 m away."""
    burn = cross("Wren", (-4, 0), (4, 0))

    assert len(watch_plan([burn], [LEFT, RIGHT], each=1).hand_overs) == 1
    assert len(watch_plan([burn], [LEFT, RIGHT], each=1, limit=7.5).hand_overs) == 1
    assert not watch_plan([burn], [LEFT, RIGHT], each=1, limit=10.5).hand_overs


@pytest.mark.parametrize(
    ("rules", "most", "kind"),
    [
        ({"response-distance": 7.5}, 7.5, "response-distance"),
        ({"response-time": 5.0}, (5.0 - 0.231) * 3.5 * 0.3048, "response-time"),  # 5.09 m: at the slow walk
        ({"response-distance": 7.5, "response-time": 8.0}, 7.5, "response-distance"),  # 8 s are 8.29 m
        ({"response-distance": 7.5, "response-time": 6.0}, (6.0 - 0.231) * 3.5 * 0.3048, "response-time"),
        ({"response-time": 0.1}, 0.0, "response-time"),  # over before anybody has reacted
    ],
)  # fmt: skip
def test_a_rule_is_a_distance_or_a_time_at_the_slow_walk_and_the_stricter_counts(rules, most, kind):
    book = RuleBook(profiles=(), rules=tuple(rule(name, value) for name, value in rules.items()))
    found, by = longest_walk(book)

    assert found == pytest.approx(most, abs=1e-9)
    assert by.kind.name == kind
    assert longest_walk(RuleBook(profiles=(), rules=())) is None


def rule(kind, value):
    origin = Source(key="own", title="house", date="", where="here", mark="as entered")
    return Rule(
        kind=kind_of(kind), value=value, printed=str(value), profile="house", source=origin, mark="as entered"
    )  # fmt: skip


def test_capacity_and_choice_leave_gaps_that_are_said():
    three = [stand(who, x, 0) for who, x in (("A", -1), ("B", 0), ("C", 1))]

    assert len(watch_plan(three, [LEFT], each=3).watches) == 3
    short = watch_plan(three, [LEFT], each=2)
    assert [gap[1:] for gap in short.unwatched] == [(0.0, 32.0)]
    own = watch_plan(three, [spotter("Flint", 0, 0, ("A",)), RIGHT], each=1)
    assert {watch.who for watch in own.watches} >= {"A"}
    assert len(own.unwatched) == 1
    nobody = watch_plan(three, [], each=2)
    assert len(nobody.unwatched) == 3
    assert nobody.worst == 0.0


def test_gaps_join_over_phases():
    burns = [cross("Wren", (-1, 0), (1, 0)), stand("Moss", 3, 0, start=4.0, end=28.0)]
    plan = watch_plan(burns, [], each=1)

    assert plan.unwatched == (("Wren", 0.0, 32.0), ("Moss", 4.0, 28.0))


def test_ways_are_proven_upper_bounds():
    """Against 100,000 samples of a curved walk: never shorter, and at most a hand's breadth longer."""
    floor = WalkPath(
        (-4.0, 1.0),
        moves=(Move(start=4.0, end=20.0, facing=0.0, place=(4.0, 1.0), through=((0.0, 6.0),)),),
    )
    burn = Followed(who="Wren", floor=floor, start=0.0, end=32.0)
    plan = watch_plan([burn], [LEFT], each=1)
    places = floor.at(np.linspace(0.0, 32.0, 100_001)).place
    longest = np.hypot(places[:, 0] + 6.0, places[:, 1]).max()

    assert longest <= plan.watches[0].way <= longest + 0.6


def test_ways_go_round_scenery():
    wall = WalkableFloor((((-3.0, -4.0), (-2.5, -4.0), (-2.5, 4.0), (-3.0, 4.0)),))
    plan = watch_plan([stand("Wren", 0.0, 0.0)], [LEFT], each=1, ground=wall)

    assert plan.watches[0].way == pytest.approx(
        math.hypot(3, 4) + 0.5 + math.hypot(2.5, 4), abs=1e-4
    )


def test_only_spotters_watch_and_nobody_themselves():
    lead = Duty(who="Hazel", place=(0.0, 0.0), duty="lead")
    plan = watch_plan([stand("Flint", 0, 0)], [LEFT, lead], each=2)

    assert plan.unwatched == (("Flint", 0.0, 32.0),)
    assert plan.of("Hazel") == ()
    with pytest.raises(ValueError, match="at least 1"):
        watch_plan([], [], each=0)


def test_all_phases_of_a_burn_are_bounded_at_once_and_as_each_alone(monkeypatch):
    """Thirteen performers lit one after the other, one of them farthest off in the middle of a walk: 26 phases or more, and the ways of each burn are asked for once."""
    asked = []
    ways_to = WalkableFloor.ways_to

    def counting(floor, posts):
        ways = ways_to(floor, posts)
        return lambda places: asked.append(len(places)) or ways(places)

    monkeypatch.setattr(WalkableFloor, "ways_to", counting)
    wall = WalkableFloor((((-5.4, 1.0), (-5.0, 1.0), (-5.0, 6.0), (-5.4, 6.0)),))
    burns = [
        cross(f"P{k}", (0.37 * k - 4, 2.0), (3.3 - 0.21 * k, 9.0 - 0.3 * k), start=0.25 * k, end=31.0 + k, go=8.5)
        for k in range(12)
    ]  # fmt: skip
    bend = (Move(start=8.5, end=24.0, facing=0.0, place=(-3.0, -2.0), through=((6.0, -9.0),)),)
    burns.append(Followed(who="Bend", floor=WalkPath((-4.0, 0.3), moves=bend), start=0.1, end=29.0))
    plan = watch_plan(burns, [LEFT, RIGHT], each=13, limit=60.0, ground=wall)
    assert len(asked) == len(burns)

    ways = ways_to(wall, (LEFT.place, RIGHT.place))
    edges = sorted({edge for burn in burns for edge in (burn.start, burn.end, 8.5, 24.0)})
    for burn in burns:
        own = [(a, b) for a, b in pairwise(edges) if burn.start <= a and b <= burn.end]
        together = _longest(burn.floor, own, ways)
        alone = np.concatenate([_longest(burn.floor, [each], ways) for each in own])
        assert np.array_equal(together, alone)
        for (a, b), row in zip(own, together, strict=True):
            true = ways(burn.floor.at(np.linspace(a, b, 20_001)).place).max(axis=0)
            assert np.all(row >= true - 1e-9)
            assert np.all(row <= true + 0.005 + 1e-9)
    assert plan.worst > 0


def test_a_hand_over_is_between_watches_of_one_performer_that_touch():
    def watch(who, by, start, end):
        return Watch(who=who, spotter=by, start=start, end=end, way=1.0)

    some = [
        watch("Wren", "Flint", 0.0, 8.0), watch("Moss", "Brook", 0.0, 8.0), watch("Wren", "Brook", 8.0, 16.0),
        watch("Moss", "Brook", 8.0, 12.0), watch("Wren", "Flint", 17.0, 20.0),
    ]  # fmt: skip

    assert _hand_overs(some) == (HandOver(who="Wren", beat=8.0, giver="Flint", taker="Brook"),)


def test_between_samples_a_walk_may_lead_farther_and_that_is_counted(monkeypatch):
    """Looked at every metre, a walk bends away from the post in the middle of each phase: never less than the true way is told."""
    monkeypatch.setattr(watching, "TOLERANCE", 0.5)
    bend = Move(start=8.5, end=24.0, facing=0.0, place=(-3.0, -2.0), through=((6.0, -9.0),))
    floor = WalkPath((-4.0, 0.3), moves=(bend,))
    ways = WalkableFloor().ways_to((LEFT.place, RIGHT.place))
    phases = [(9.0 + 0.1 * k, 23.0 + 0.07 * k) for k in range(12)]

    for (start, end), row in zip(phases, _longest(floor, phases, ways), strict=True):
        true = ways(floor.at(np.linspace(start, end, 20_001)).place).max(axis=0)
        assert np.all(row >= true)
        assert np.all(row <= true + 0.5 + 1e-9)
