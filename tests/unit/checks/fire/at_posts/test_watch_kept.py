"""Watch and response, proven over every moment of a performer's way."""

import math
from dataclasses import dataclass, replace

import numpy as np
import pytest

from sequencer.checks.fire.at_posts import watch_kept
from sequencer.checks.fire.at_posts.watch_kept import (
    assigned_findings,
    plan_findings,
    sight_findings,
    watch_findings,
)
from sequencer.facts.profiles import kind_of
from sequencer.facts.rule_book import RuleBook, rule_book
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed, closest, farthest
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.safety.duties.watching import (
    Duty,
    HandOver,
    Watch,
    WatchPlan,
    longest_walk,
    watchers_of,
)

LIMIT = longest_walk(rule_book())
REACH = 7.5  # [m] the default's, a design choice


@dataclass(frozen=True)
class Steady:
    """Half a second a beat."""

    def seconds(self, beat):
        return beat / 2

    def position(self, beat):
        return f"{int(beat) // 4 + 1}.{int(beat) % 4 + 1}"

    def at_aloud(self, beat):
        return f"at {self.position(beat)}"


def standing(x, y, who="Wren", start=0.0, end=64.0):
    return Followed(who=who, floor=WalkPath((x, y)), start=start, end=end)


def spotter(x, y, who="Flint", watches=()):
    return Duty(who=who, place=(x, y), duty="spotter", watches=watches)


def found(followed, crew):
    return watch_findings(followed, crew, limit=LIMIT, clock=Steady(), ground=WalkableFloor())


@pytest.mark.parametrize(
    ("distance", "code"), [(REACH - 0.05, None), (REACH + 0.05, "post-out-of-reach")]
)
def test_a_standing_performer_is_in_reach_or_not(distance, code):
    findings = found([standing(0.0, 0.0)], [spotter(distance, 0.0)])

    assert [each.code for each in findings] == ([code] if code else [])


def test_a_walk_is_told_by_its_length_with_a_brisk_and_a_slow_time_and_nothing_is_promised():
    """7.93 m: 0.231 s + 7.93/1.6 = 5.19 s and 0.231 s + 7.93/1.0668 = 7.66 s, each rounded up."""
    (finding,) = found([standing(0.0, 0.0)], [spotter(7.931, 0.0)])

    assert "Wren is 7.94 m from Flint" in finding.message
    assert "(walk 8.0 m: 6 s brisk, 8 s slow); 7.50 m allowed" in finding.message
    assert "arrive" not in finding.message
    assert not any(word in finding.source for word in ("pain", "before it", "ISO 13855"))


def test_a_rule_of_the_house_that_gives_a_time_is_judged_at_the_slow_walk():
    """6 s: (6 − 0.231)·1.0668 = 6.15 m; briskly it would be 9.23 m."""
    rule = replace(LIMIT[1], kind=kind_of("response-time"), value=6.0)
    limit = longest_walk(RuleBook(profiles=(), rules=(rule,)))
    near, far = (
        watch_findings(
            [standing(0.0, 0.0)], [spotter(x, 0.0)], limit=limit, clock=Steady(), ground=WalkableFloor()
        )
        for x in (6.1, 6.2)
    )  # fmt: skip

    assert near == []
    assert "6.15 m allowed (6 s at a slow walk)" in far[0].message
    assert "Judged at a slow walk: LaPlante and Kaeser 2007" in far[0].source


@pytest.mark.parametrize(
    ("way", "known", "codes"),
    [
        (7.504, False, []),
        (7.51, False, ["post-out-of-reach"]),
        (7.51, True, []),
    ],  # to 5 mm; told already
)
def test_a_watch_that_is_planned_from_too_far_is_found_though_another_spotter_is_near(
    way, known, codes
):
    watch = Watch(who="Wren", spotter="Flint", start=0.0, end=8.0, way=way)
    plan = WatchPlan(watches=(watch,), hand_overs=(), unwatched=())
    told = found([standing(0.0, 0.0)], [spotter(9.0, 0.0)]) if known else []
    findings = assigned_findings(plan, limit=LIMIT, clock=Steady(), known=told)

    assert [each.code for each in findings] == codes
    assert all(
        "up to 7.51 m away" in each.message and "is not free" in each.message for each in findings
    )
    assert assigned_findings(plan, limit=None, clock=Steady()) == []


def test_without_a_rule_only_who_is_watched_is_asked():
    burns = [standing(0.0, 0.0), standing(1.0, 0.0, who="Moss")]
    crew = [spotter(40.0, 0.0, watches=("Wren",))]
    findings = watch_findings(burns, crew, limit=None, clock=Steady(), ground=WalkableFloor())

    assert [(each.code, each.who) for each in findings] == [("nobody-watching", ("Moss",))]


def test_a_dart_out_of_reach_between_two_stands_is_found():
    """Both ends of the walk are in reach; for a fraction of a beat, far from any grid, it is not."""
    start = 20.0 + 1 / 7
    dart = WalkPath(
        (0.0, 0.0),
        moves=(
            Move(start=start, end=start + 0.4, facing=0.0, place=(0.0, REACH + 0.02)),
            Move(start=start + 0.4, end=start + 0.8, facing=0.0, place=(0.0, 0.0)),
        ),
    )
    findings = found([Followed(who="Wren", floor=dart, start=0.0, end=64.0)], [spotter(0.0, 0.0)])

    assert [each.code for each in findings] == ["post-out-of-reach"]
    assert findings[0].start == pytest.approx((start + 0.4) / 2, abs=0.1)
    assert findings[0].where[1] == pytest.approx(REACH + 0.02, abs=0.01)
    assert "Flint" in findings[0].who


def test_the_nearest_of_two_posts_counts():
    walk = WalkPath((-6.0, 0.0), moves=(Move(start=8.0, end=24.0, facing=0.0, place=(6.0, 0.0)),))
    burn = Followed(who="Wren", floor=walk, start=0.0, end=64.0)
    posts = [spotter(-6.0, -4.0, "Flint"), spotter(6.0, -4.0, "Brook")]

    assert not found([burn], posts)
    assert [each.code for each in found([burn], posts[:1])] == ["post-out-of-reach"]


def test_moving_the_post_as_told_mends_it():
    burns = [standing(0.0, 0.0)]
    (finding,) = found(burns, [spotter(REACH + 2.0, 0.0)])
    text = finding.remedies[0]
    x, y = (float(part) for part in text[text.index("[") + 1 : text.index("]")].split(","))

    assert text.startswith("move Flint 2.05 m")
    assert not found(burns, [spotter(x, y)])


def test_a_move_that_would_bare_another_is_not_promised():
    burns = [standing(-8.9, 0.0, "Wren"), standing(6.0, 0.0, "Moss")]
    findings = found(burns, [spotter(0.0, 0.0)])

    assert [each.who[0] for each in findings] == ["Wren"]
    assert "everybody they watch is then in reach" in findings[0].remedies[0]
    wide = [standing(-9.0, 0.0, "Wren"), standing(7.5, 0.0, "Moss")]
    (finding,) = found(wide, [spotter(0.0, 0.0)])
    assert "another post must then cover the rest" in finding.remedies[0]
    assert finding.remedies[1].startswith("add a spotter for Wren")


def test_nobody_on_post_while_someone_is_lit():
    others = [Duty(who="Hazel", place=(0.0, 0.0), duty="perimeter")]
    for crew in ([], others, [spotter(0.0, 0.0, watches=("Moss",))], [spotter(0.0, 0.0, "wren")]):
        findings = found([standing(0.0, 0.0)], crew)
        assert [each.code for each in findings] == ["nobody-watching"]
        assert findings[0].severity == "stop"


def test_who_watches_whom():
    crew = [spotter(0, 0, "A"), spotter(0, 0, "B", ("Moss",)), spotter(0, 0, "C", ("all",))]

    assert [each.who for each in watchers_of("Wren", crew)] == ["A", "C"]
    assert [each.who for each in watchers_of("Moss", crew)] == ["A", "B", "C"]


def test_proven_extremes_agree_with_a_dense_sample():
    """Largest and smallest distance of a curved way to two posts, against 200,000 samples."""
    way = WalkPath(
        (-3.0, 1.0),
        moves=(
            Move(start=4.0, end=20.0, facing=0.0, place=(4.0, 6.0), through=((0.0, 7.0),)),
            Move(start=30.0, end=33.0, facing=0.0, place=(-2.0, 2.0)),
        ),
    )
    burn = Followed(who="Wren", floor=way, start=0.0, end=40.0)
    ways = WalkableFloor().ways_to([(-8.0, 0.0), (9.0, 3.0)])
    sample = ways(way.at(np.linspace(0.0, 40.0, 200_001)).place).min(axis=1)

    (far,) = farthest([burn], [ways], math.inf)
    (near,) = closest([burn], [ways], 0.0)

    assert far.distance == pytest.approx(sample.max(), abs=0.005)
    assert near.distance == pytest.approx(sample.min(), abs=0.005)
    assert far.spans == near.spans == ()
    assert farthest([], [], 1.0) == []


def test_following_nobody_for_no_time_is_refused():
    with pytest.raises(ValueError, match="an empty span"):
        farthest([standing(0, 0, start=4.0, end=4.0)], [WalkableFloor().ways_to([(0, 0)])], 1.0)


WALL = WalkableFloor((((-1.0, 4.0), (1.0, 4.0), (1.0, 5.0), (-1.0, 5.0)),))


def test_a_wall_makes_the_way_longer():
    """Straight 7.5 m are in reach; round the wall it is 7.8 m and more."""
    burn, post = standing(0.0, 0.0), spotter(0.0, 7.5)
    way = math.hypot(1, 4) + 1.0 + math.hypot(1, 2.5)

    assert not found([burn], [post])
    (finding,) = watch_findings([burn], [post], limit=LIMIT, clock=Steady(), ground=WALL)
    assert f"{way:.2f} m" in finding.message


def test_a_yard_without_a_gate_has_no_way_in():
    yard = WalkableFloor(
        (
            ((-2, -2), (2, -2), (2, -1), (-2, -1)), ((-2, 1), (2, 1), (2, 2), (-2, 2)),
            ((-2, -2), (-1, -2), (-1, 2), (-2, 2)), ((1, -2), (2, -2), (2, 2), (1, 2)),
        )
    )  # fmt: skip
    (finding,) = watch_findings(
        [standing(0.0, 0.0)], [spotter(4.0, 0.0)], limit=LIMIT, clock=Steady(), ground=yard
    )

    assert finding.message.startswith("none of their spotters can walk to Wren at ")


def test_scenery_in_the_line_of_sight_is_found_for_a_moment_only():
    walk = WalkPath((-5.0, 0.0), moves=(Move(start=8.0, end=24.0, facing=0.0, place=(5.0, 0.0)),))
    burn = Followed(who="Wren", floor=walk, start=0.0, end=64.0)
    one, two = spotter(0.0, 7.0, "Flint"), spotter(6.0, 7.0, "Brook")

    (finding,) = sight_findings([burn], [one], tall=WALL, clock=Steady())
    assert (finding.code, finding.severity) == ("sight-blocked", "stop")
    # the wall's near corners at ±1 m, 2 m from the post, hide ±3.5 m of the walk (similar triangles)
    half = 3.5
    beats = np.linspace(8.0, 24.0, 16_001)
    hidden = beats[np.abs(walk.at(beats).place[:, 0]) <= half]
    # the margin of 5 cm beside the corner is some 20 cm on the walk
    assert hidden[0] / 2 - 0.15 < finding.start < hidden[0] / 2
    assert hidden[-1] / 2 < finding.end < hidden[-1] / 2 + 0.15
    assert not sight_findings([burn], [one, two], tall=WALL, clock=Steady())
    assert not sight_findings([burn], [], tall=WALL, clock=Steady())
    assert not sight_findings([burn], [one], tall=WalkableFloor(), clock=Steady())


def test_overloads_and_hand_overs_become_findings():
    plan = WatchPlan(
        watches=(),
        hand_overs=(HandOver(who="Wren", beat=8.0, giver="Flint", taker="Brook"),),
        unwatched=(("Moss", 0.0, 16.0),),
    )
    rule = rule_book().all("spotters")[0]
    findings = plan_findings(plan, each=2, rule=rule, clock=Steady())

    assert [(each.code, each.severity) for each in findings] == [
        ("watch-overloaded", "stop"),
        ("watch-handed-over", "note"),
    ]
    assert not plan_findings(plan, each=2, rule=None, clock=Steady(), unwatched={"Moss"})[
        0
    ].remedies


@pytest.mark.parametrize("seed", range(2))
def test_a_post_covers_after_a_move_what_it_covered_before(seed):
    """Reference: the rule itself, with every burn of the post searched before the move and after it."""
    draw = np.random.default_rng(seed)
    ground = WalkableFloor()
    crew = [spotter(*draw.uniform(-6, 6, 2), who=who) for who in ("Flint", "Onyx")]
    crew[1] = replace(crew[1], watches=("B0", "B2", "B4"))
    burns = [
        Followed(
            who=f"B{k}",
            floor=WalkPath(
                tuple(draw.uniform(-7, 7, 2)),
                moves=(Move(start=4.0, end=9.0, facing=0.0, place=tuple(draw.uniform(-7, 7, 2))),),
            ),
            start=0.0,
            end=16.0,
        )
        for k in range(5)
    ]
    posts = [watchers_of(each.who, crew) for each in burns]

    def spans(moved):
        places = [[moved if each == crew[0] else each.place for each in some] for some in posts]
        found = farthest(burns, [ground.ways_to(each) for each in places], REACH)
        return [bool(each.spans) for each in found]

    before, seen = spans(crew[0].place), set()
    for moved in draw.uniform(-5, 5, (8, 2)).tolist():
        after = spans(tuple(moved))
        for k, burn in enumerate(burns):
            broken = [new and (i == k or not before[i]) for i, new in enumerate(after)]
            within = [not each for each in before]
            found = watch_kept._covers(
                crew[0], tuple(moved), burn, REACH, burns, posts, within, ground
            )
            assert found == (not any(broken))
            seen.add(found)
    assert seen == {True, False}
