"""Burns as they are watched: from the start of lighting until the flame is out, and put out by who watches then."""

import pytest

from sequencer.safety.safety_plan import safety_plan
from tests.handled_show import handled

NOT_MOSS = ("    - {who: Moss, from: 41.1, until: 61.1}\n", "")
BOTH = ("who: Wren, from: 11.1, until: 31.1", "who: all, from: 11.1, until: 31.1")
WREN = "who: Wren, from: 11.1"


def seconds(show, span):
    return pytest.approx((show.seconds(span.start), show.seconds(span.end)))


def test_a_watch_reaches_from_the_first_flame_to_the_last():
    """Wren is lit from 15 s on and out at 65 s, Moss from 75 s on and out at 125 s."""
    show = handled()
    plan = safety_plan(show)
    assert [(each.who, each.spotter) for each in plan.watch.watches] == [
        ("Wren", "Flint"),
        ("Moss", "Brook"),
    ]
    assert seconds(show, plan.watch.watches[0]) == (15.0, 65.0)
    assert seconds(show, plan.watch.watches[1]) == (75.0, 125.0)
    assert [seconds(show, each) for each in plan.followed] == [(15.0, 65.0), (75.0, 125.0)]
    assert [burn.put_out_by for burn in plan.burns] == ["Flint", "Brook"]
    assert plan.lit_at_once == 1


def test_flames_that_overlap_only_while_they_are_handled_count_as_two():
    """Moss is lit from 65 s on, the moment at which Wren is out; a beat later they are one at a time."""
    assert safety_plan(handled(("who: Moss, from: 41.1", "who: Moss, from: 36.1"))).lit_at_once == 2
    assert safety_plan(handled(("who: Moss, from: 41.1", "who: Moss, from: 36.2"))).lit_at_once == 1


def test_one_spotter_puts_out_two_and_watches_the_second_until_then():
    """Flint alone: Wren was lit first and has less to spare; to Moss it is 10 m, 9.37 s. Both are watched on."""
    show = handled(NOT_MOSS, BOTH, ("duty: spotter, watches: Wren", "duty: spotter"),
                   ("  - {name: Brook, post: [5, 9], duty: spotter, watches: Moss}\n", ""))  # fmt: skip
    plan = safety_plan(show)
    out = {burn.who: burn.out_s for burn in plan.burns}
    assert out == pytest.approx({"Wren": 65.0, "Moss": 70.0 + 10 / 1.0668})
    assert {burn.put_out_by for burn in plan.burns} == {"Flint"}
    assert {each.who: show.seconds(each.end) for each in plan.watch.watches} == pytest.approx(out)


def test_whoever_is_named_puts_out_instead():
    plan = safety_plan(handled((WREN, "who: Wren, put_out_by: Linden, from: 11.1")))
    assert [burn.put_out_by for burn in plan.burns] == ["Linden", "Brook"]


def test_nobody_watching_puts_nobody_out():
    plan = safety_plan(handled(("duty: spotter, watches: Wren", "duty: lead")))
    assert plan.burns[0].put_out_by is None
    assert plan.burns[0].out_s == 65.0


def test_a_performer_is_followed_from_the_place_of_lighting():
    """5 m from the place of lighting to the spot, 4.69 s of slow walk before 20 s; Flint stands 10 m away, then 5 m."""
    show = handled(NOT_MOSS, (WREN, "who: Wren, lit_at: [-5, -1], from: 11.1"))
    (burn,), (followed,) = safety_plan(show).burns, safety_plan(show).followed
    walk = 5 / 1.0668
    assert burn.alight_s == pytest.approx(20.0 - walk - 5.0)
    assert followed.floor.place_at(followed.start) == pytest.approx((-5, -1))
    assert followed.floor.place_at(40.0) == pytest.approx((-5, 4))
    assert safety_plan(show).watch.watches[0].way == pytest.approx(10.0, abs=0.01)
    assert safety_plan(handled(NOT_MOSS)).watch.watches[0].way == pytest.approx(5.0, abs=0.01)


def test_walks_of_the_dance_follow_the_way_from_the_place_of_lighting():
    show = handled(
        NOT_MOSS, (WREN, "who: Wren, lit_at: [-5, -1], from: 11.1"),
        ("staging:\n  - {formation: pair, from: 1.1}\n",
         ("  away: {spots: {Wren: {at: [-7, 4]}, Moss: {at: [5, 4]}}}\nstaging:\n"
         "  - {formation: pair, from: 1.1}\n  - {formation: away, from: 20.1, beats: 8}\n")),
    )  # fmt: skip
    (followed,) = safety_plan(show).followed
    assert followed.floor.place_at(60.0) == pytest.approx((-5, 4))
    assert followed.floor.place_at(90.0) == pytest.approx((-7, 4))


def test_two_burns_of_one_performer_are_followed_one_after_the_other():
    """Relit before the first is out: 55.5 s to 65 s belong to the first, up to where the second burn begins at most."""
    again = "    - {who: Wren, from: 11.1, until: 31.1}\n"
    show = handled(NOT_MOSS, (again, again + "    - {who: Wren, from: 31.2, until: 40.1}\n"))
    first, second = safety_plan(show).followed
    assert seconds(show, first) == (15.0, 60.5)
    assert seconds(show, second) == (60.5, 83.0)
    assert [each.who for each in safety_plan(show).watch.watches] == ["Wren"]
