"""Flown hands in their places: strains that are made up, and splines that touch or do not."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.checks.dance import flown_in_place as module
from sequencer.checks.dance.flown_findings import FlownPlace
from sequencer.checks.outcome import Outcome
from sequencer.findings import Figure, Finding
from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.trajectories.flown_path.flown_hand import Course, FlownHand
from sequencer.staging.in_flight.flown_strains import Strain
from tests.nothing_kept import nothing_kept
from tests.unit.checks.dance.solo import stage

SPIN = "  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 8, timing: together}\n"


def test_a_hand_that_walking_strains_is_told(monkeypatch):
    """Once for each place, by what it misses: the pull first, since of a slack tether nothing else means anything."""
    show = stage(SPIN)
    hard = Strain(
        "Ash", "left", Course(9.0, 12.0, lambda beats: (beats, beats), True), 0.5, 95.4, 0.1, True
    )
    slack = hard._replace(side="right", least_pull=0.12, moving=False)
    far = hard._replace(hand_acceleration=50.0, spare_reach=-0.034)
    monkeypatch.setattr(module, "flown_show", lambda show: show)
    monkeypatch.setattr(module, "strains", lambda _flown: (hard, slack, far))
    first, second, third = module.strained(show)
    assert (first.code, first.severity, first.who, first.position) == (
        "strained-as-flown", "warn", ("Ash",), "3.2",
    )  # fmt: skip
    assert first.message.startswith("static-spin, left hand: while walking or turning there")
    assert first.message.endswith("accelerate at 95 m/s², the limit is 80")
    assert len(first.remedies) == 2
    assert [(each.quantity, each.value, each.limit) for each in first.figures] == [
        ("hand acceleration", 95.4, 80)
    ]
    assert [each.quantity for each in second.figures] == ["least pull", "hand acceleration"]
    arm = show.dancers[0].body.arm_length
    assert [(each.quantity, each.value) for each in third.figures][-1] == (
        "hand from shoulder", pytest.approx(arm + 0.034),
    )  # fmt: skip
    assert (first.hands, second.hands) == (("left",), ("right",))
    assert second.message.endswith("pulls with only 0.12 of the head's weight, and needs 0.3")
    assert "at the tempo of the moment" in second.message
    assert len(second.remedies) == 1
    assert "3 cm out of reach" in third.message or "4 cm out of reach" in third.message


def test_speed_and_pull_of_the_flight_are_told_by_their_limits(monkeypatch):
    show = stage(SPIN)
    calm = Strain(
        "Ash", "left", Course(9.0, 12.0, lambda beats: (beats, beats), True), 1.0, 20.0, 0.1, False
    )
    found = (
        calm._replace(hand_speed=7.25), calm._replace(most_pull=75.0, wick_speed=24.0),
        calm._replace(wick_speed=24.0), calm._replace(hand_acceleration=84.0, most_pull=61.0),
        calm._replace(most_pull=66.0, wick_speed=30.0),
        calm._replace(least_pull=-0.1, hand_acceleration=400.0, spare_reach=-0.015),
    )  # fmt: skip
    monkeypatch.setattr(module, "flown_show", lambda show: show)
    monkeypatch.setattr(module, "strains", lambda _flown: found)
    fast, hard, swung, within, both, slack = module.strained(show)
    assert fast.message.endswith("the hand would have to move at 7.2 m/s, the limit is 6")
    assert hard.message.endswith("the prop pulls with 75 N, the limit is 60")
    assert swung.message.endswith("the wick moves at 24.0 m/s, the limit is 20")
    assert [each.quantity for each in hard.figures] == ["pull", "wick speed"]
    assert [each.quantity for each in fast.figures] == ["hand speed"]
    # what is over its limit by less than counts is not named: a hand may push a tenth harder
    assert within.message.endswith("the prop pulls with 61 N, the limit is 60")
    assert [each.quantity for each in within.figures] == ["pull"]
    # the worst first
    assert both.message.endswith("the wick moves at 30.0 m/s, the limit is 20")
    assert [each.quantity for each in both.figures] == ["wick speed", "pull"]
    # of a slack tether nothing else means anything
    assert "pulls with only 0.00 of the head's weight" in slack.message
    assert [each.quantity for each in slack.figures] == ["least pull", "hand acceleration"]


def told(start, end, who="Ash", side="left"):
    """Where it is told that something of a hand cannot be flown."""
    return FlownPlace(SimpleNamespace(dancer=SimpleNamespace(name=who), side=side), start, end)


LINK, STALL = (12.0, 14.0), (5.0, 9.0)  # drawn stretches that stand in beside a strain
HARD = Strain(
    "Ash", "left", Course(9.0, 12.0, lambda beats: (beats, beats), True), 0.5, 95.4, 0.1, True,
    follows=((LINK,),),
)  # fmt: skip


@pytest.mark.parametrize(
    ("follows", "places", "left_out"),
    [
        (((LINK,),), [told(12.0, 14.0)], True),
        (((LINK,),), [told(13.0, 20.0)], True),  # a link is drawn since the pattern behind it fails
        (((LINK,),), [], False),  # a stall, or a pattern that does not repeat, asks for no mend
        (((LINK,),), [told(14.0, 20.0), told(3.0, 12.0)], False),  # beyond it, and before it
        (((LINK,),), [told(12.0, 14.0, side="right"), told(12.0, 14.0, who="Birch")], False),
        (((STALL, LINK),), [told(12.0, 14.0)], False),  # it follows from the stall as well
        (((STALL, LINK),), [told(12.0, 14.0), told(5.0, 9.0)], True),
        (((STALL,), (LINK,)), [told(12.0, 14.0)], True),
        ((), [told(12.0, 14.0)], False),
    ],
)
def test_only_what_follows_from_what_is_told_is_left_out(monkeypatch, follows, places, left_out):
    """Whoever changes the show must not lead there all the same."""
    show = stage(SPIN)
    strain = HARD._replace(follows=follows)
    monkeypatch.setattr(module, "flown_show", lambda show: show)
    monkeypatch.setattr(module, "strains", lambda _flown: (strain,))
    assert [each.code for each in module.strained(show, places)] == ["strained-as-flown"][left_out:]
    assert [each.code for each in module.strained(show)] == ["strained-as-flown"]


@pytest.mark.parametrize(
    ("quantity", "side", "beats", "told_too"),
    [
        ("hand speed", "left", (8.0, 16.0), True),
        ("turns", "left", (8.0, 16.0), False),  # which the drawing's finding says itself
        ("hand speed", "right", (8.0, 16.0), False),
        ("hand speed", "left", (12.0, 16.0), False),
        ("hand speed", "left", (2.0, 9.0), False),
    ],
)
def test_a_drawing_that_is_too_fast_is_not_lost_with_a_strain(
    monkeypatch, quantity, side, beats, told_too
):
    """Of a flown hand the strain says so in place of the drawing's pace: then it is told, whatever it follows from."""
    show = stage(SPIN)
    start, end = (show.seconds(beat) for beat in beats)
    pace = Finding(
        code="too-fast-to-dance", severity="warn", message="", who=("Ash",), start=start, end=end, position=None,
        hands=(side,),
        figures=(Figure(quantity=quantity, value=9.0, limit=6.0, unit="m/s"),),
    )  # fmt: skip
    monkeypatch.setattr(module, "flown_show", lambda show: show)
    monkeypatch.setattr(module, "strains", lambda _flown: (HARD,))
    monkeypatch.setattr(module, "feasible", lambda _show: Outcome(findings=(pace,)))
    assert bool(list(module.strained(show, [told(12.0, 14.0)]))) is told_too


def through(hand, head, length=0.5, start=0.0):
    """A hand that stands still over eight beats, and its head, as two splines."""
    splines = [
        EvenSpline(start=start, step=0.5, coefficients=np.tile(place, (21, 1)))
        for place in (head, hand)
    ]
    return FlownHand(
        head=splines[0], hand=splines[1], length=length, drawn=stage(SPIN).dancers[0].trajectories["left"],
        courses=(), pull=np.ones(17), most_pull=np.ones(17),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("left", "right", "codes"),
    [
        (((-0.6, 0.5, 1.4), (-0.6, 0.5, 0.9)), ((0.6, 0.5, 1.4), (0.6, 0.5, 0.9)), []),
        (((-0.2, 0.5, 1.2), (0.3, 0.5, 1.2)), ((0.2, 0.5, 1.2), (-0.3, 0.5, 1.2)), ["props-meet-as-flown"]),
        (((-0.5, 0.0, 1.2), (0.0, 0.0, 1.2)), ((0.6, 0.5, 1.4), (0.6, 0.5, 0.9)), ["hits-body-as-flown"]),
    ],
    ids=["apart", "crossed", "in the trunk"],
)  # fmt: skip
def test_props_that_meet_or_go_into_the_body_as_flown_are_told_once(
    monkeypatch, left, right, codes
):
    """Crossed tethers meet by plane geometry; a head on the body's axis is in the trunk."""
    show = stage(SPIN)
    (dancer,) = show.dancers
    hands = {"left": through(*left), "right": through(*right)}
    flown = replace(show, dancers=(replace(dancer, trajectories=hands),))
    monkeypatch.setattr(module, "flown_show", lambda _show: SimpleNamespace(staged=flown))
    told = list(module.touching(show))
    assert [each.code for each in told] == codes
    assert all((each.severity, each.who) == ("warn", ("Ash",)) for each in told)
    quantities = {"props-meet-as-flown": "gap between props", "hits-body-as-flown": "gap to body"}
    assert all(each.figures[0].quantity == quantities[each.code] for each in told)
    assert all(each.figures[0].beyond > 0 for each in told)
    assert all(each.start == show.seconds(0.0) for each in told)  # one passage, from its first beat
    # who only asks whether they do is told of the first stretch
    first = [(each.code, each.who, each.start, each.end) for each in module.first_touch(show)]
    assert first == [(code, ("Ash",), show.seconds(0.0), show.seconds(1.0)) for code in codes]


@pytest.mark.parametrize("depth", [0.003, 0.007])
def test_whether_props_touch_is_told_of_what_counts_as_a_touch(monkeypatch, depth):
    """Two props hang beside each other: gaps are known to 5 mm, so less than that deep is no touch."""
    show = stage(SPIN)
    (dancer,) = show.dancers

    def told(apart, tell):
        hands = {
            side: through((x, 0.5, 0.9), (x, 0.5, 1.4))
            for side, x in (("left", -apart / 2), ("right", apart / 2))
        }
        flown = replace(show, dancers=(replace(dancer, trajectories=hands),))
        monkeypatch.setattr(module, "flown_show", lambda _show: SimpleNamespace(staged=flown))
        return [each for each in tell(replace(show)) if each.code == "props-meet-as-flown"]

    (merged,) = told(0.0, module.touching)
    both = -merged.figures[0].value  # [m] of their two radii
    counts = depth > module.GAP_ERROR
    assert len(told(both - depth, module.first_touch)) == counts
    assert len(told(both - depth, module.touching)) == counts


def test_hands_that_dance_one_after_the_other_are_both_looked_at(monkeypatch):
    """The right hand flies when the left has ended: each goes into the trunk by itself, and their props cannot meet."""
    show = stage(SPIN)
    (dancer,) = show.dancers
    inside = (-0.5, 0.0, 1.2), (0.0, 0.0, 1.2)
    hands = {"left": through(*inside), "right": through(*inside, start=21.5)}
    flown = replace(show, dancers=(replace(dancer, trajectories=hands),))
    monkeypatch.setattr(module, "flown_show", lambda _show: SimpleNamespace(staged=flown))
    found = [(each.code, each.hands, each.start, each.end) for each in module.touching(show)]
    assert found == [
        ("hits-body-as-flown", (side,), show.seconds(low), show.seconds(low + 8.0))
        for side, low in (("left", 0.0), ("right", 21.5))
    ]


def test_hands_that_overlap_are_looked_at_together_where_they_do(monkeypatch):
    show = stage(SPIN)
    (dancer,) = show.dancers
    crossed = ((-0.2, 0.5, 1.2), (0.3, 0.5, 1.2)), ((0.2, 0.5, 1.2), (-0.3, 0.5, 1.2))
    hands = {"left": through(*crossed[0]), "right": through(*crossed[1], start=5.5)}
    flown = replace(show, dancers=(replace(dancer, trajectories=hands),))
    monkeypatch.setattr(module, "flown_show", lambda _show: SimpleNamespace(staged=flown))
    assert [(each.hands, each.start, each.end) for each in module.touching(show)] == [
        (("left", "right"), show.seconds(5.5), show.seconds(8.0))
    ]


def test_how_deep_props_go_is_measured_after_it_was_asked_whether_they_do(monkeypatch):
    """What is answered by "deep enough" is no measured depth."""
    show = stage(SPIN)
    (dancer,) = show.dancers
    hands = {
        "left": through((-0.5, 0.0, 1.2), (0.0, 0.0, 1.2)),
        "right": through((0.3, 0.3, 1.2), (0.1, 0.0, 1.2)),
    }
    flown = replace(show, dancers=(replace(dancer, trajectories=hands),))
    monkeypatch.setattr(module, "flown_show", lambda _show: SimpleNamespace(staged=flown))
    with nothing_kept():
        new = module.own_gaps(replace(show), flown.dancers[0])
    with nothing_kept():
        assert list(module.first_touch(replace(show)))
        after = module.own_gaps(replace(show), flown.dancers[0])
    assert repr(after) == repr(new)  # where there is no gap its place is no number


def test_own_gaps_of_a_flight_are_worked_out_once_for_all_that_decides_them(monkeypatch):
    """Another show in which a performer flies the same is not looked at; where they are lit otherwise, or fly otherwise, it is."""
    looked = []
    work = module._new_gaps_of
    monkeypatch.setattr(
        module,
        "_new_gaps_of",
        lambda dancers, near, *, whether: (
            looked.append(whether) or work(dancers, near, whether=whether)
        ),
    )

    def gaps(show):
        return module.own_gaps(show, module.flown_show(show).staged.dancers[0])

    with nothing_kept():
        show = stage(SPIN)
        first = gaps(show)
        assert gaps(replace(show)) is first
        assert looked == [False]
        list(module.first_touch(replace(show)))
        assert looked == [False, True]
        (dancer,) = show.dancers
        lit = replace(show, dancers=(replace(dancer, lit=((9.25, 12.0),)),))
        assert gaps(lit).beats != first.beats
        gaps(stage(SPIN.replace("beats: 8", "beats: 9")))
    assert looked == [False, True, False, False]


def test_a_flight_that_is_not_known_by_its_slices_is_looked_at_each_time():
    show = stage(SPIN)
    (dancer,) = show.dancers
    far, near = (
        replace(
            dancer, trajectories={side: through((x, 0.5, 0.9), (x, 0.5, 1.4)) for side, x in hands}
        )
        for hands in ((("left", -0.9), ("right", 0.9)), (("left", 0.0), ("right", 0.0)))
    )
    (apart,), (together,) = (module._gaps_of(show, [each]) for each in (far, near))
    assert all(each.label < 0 for each in apart.gaps[module.BOTH])
    assert any(each.label >= 0 for each in together.gaps[module.BOTH])
