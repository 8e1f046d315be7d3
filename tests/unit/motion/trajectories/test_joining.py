"""Verdicts at boundaries, links' limits, remedies, the matrix of the vocabulary."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import cycle_beats, law_for
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.boundary import BlockPart, Boundary
from sequencer.motion.trajectories.join_matrix import join_matrix
from sequencer.motion.trajectories.joining import (
    VERDICTS,
    Gap,
    Tolerances,
    ends,
    gap_between,
    judge,
    shifts_of,
    shortest_link,
)
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits
from sequencer.motion.trajectories.one_link.link_words import limit_broken
from sequencer.motion.trajectories.one_link.links import link
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.planning.edits.join_remedies import remedies_for

BODY = Body(stature=1.7)
ROOM = HandSpace(body=BODY, side="right", length=0.55)


def danced(name, beats=None, cycle=None, **parameters):
    own = cycle or cycle_beats(name, parameters)

    def build(changed, span):
        return law_for(name, changed, side="right", body=BODY, beats=span)

    return BlockPart(name=name, parameters=parameters, cycle=own, beats=beats or own, build=build)


def boundary(before, after, **more):
    return Boundary(before=before, after=after, space=ROOM, **more)


def verdict(before, after):
    return boundary(before, after).verdict()


def test_a_pattern_joins_itself_after_whole_cycles():
    assert verdict(danced("toroid"), danced("toroid")).kind == "joins"
    assert verdict(danced("two-beat-weave", 4), danced("three-beat-weave")).kind == "joins"


@pytest.mark.parametrize("lobes", [1, 3, 5, 7])
def test_odd_builds_join_themselves_the_wrong_way_round(lobes):
    odd = danced("toroid", lobes=lobes)
    assert verdict(odd, odd).kind == "wrong way round"
    twice = danced("toroid", beats=2 * cycle_beats("toroid", {"lobes": lobes}), lobes=lobes)
    assert verdict(twice, odd).kind == "joins"


def test_at_an_out_an_odd_build_joins_itself():
    odd = danced("toroid", lobes=3, begin="out")
    assert verdict(odd, odd).kind == "joins"


def test_reversed_spins_are_the_wrong_way_round():
    found = verdict(danced("static-spin"), danced("static-spin", turn="clockwise"))
    assert found.kind == "wrong way round"
    assert float(found.gap.axis) == pytest.approx(np.pi)


def test_a_shift_is_found_and_holds():
    before, after = danced("static-spin", 4), danced("static-spin", **{"from": 90})
    found = verdict(before, after)
    assert found.kind == "joins after a shift"
    assert found.shift == 0.5
    later = after.law.at(np.array(found.shift))
    assert bool(gap_between(before.end(), later, 0.55).within(Tolerances()))


def test_a_link_is_needed_between_far_states_and_keeps_the_limits():
    found = verdict(danced("windmill", 4), danced("corkscrew"))
    assert found.kind == "needs a link"
    bridge = link(danced("windmill", 4).end(), danced("corkscrew").start(), found.link_beats, ROOM)
    assert limit_broken(LinkLimits(), bridge, ROOM) == ""


def test_what_cannot_join_says_why():
    limits = LinkLimits(hand_speed=0.1)
    found = judge(danced("windmill", 4).end(), danced("corkscrew").law, space=ROOM, limits=limits)
    assert found.kind == "cannot join"
    assert "the hand would have to move too fast" in found.reason
    beats, reason = shortest_link(
        danced("windmill", 4).end(), danced("corkscrew").start(), space=ROOM, limits=limits
    )
    assert np.isnan(beats)
    assert reason == found.reason


@pytest.mark.parametrize(
    ("change", "joined"), [(0.149, True), (0.151, False)], ids=["within", "beyond"]
)
def test_hand_tolerance_is_taken_at_its_edge(change, joined):
    after = danced("static-spin", across=change)
    assert (verdict(danced("static-spin"), after).kind == "joins") is joined


@pytest.mark.parametrize(("degrees", "joined"), [(19.9, True), (20.1, False)])
def test_tether_tolerance_is_taken_at_its_edge(degrees, joined):
    first = danced("static-spin").end()
    last = danced("static-spin", **{"from": -90 + degrees}).start()
    assert bool(gap_between(first, last, 0.55).within(Tolerances())) is joined


def test_tolerances_are_checked():
    with pytest.raises(ValueError, match="tolerances must be positive"):
        Tolerances(hand=0)
    with pytest.raises(ValueError, match="tolerances must be positive"):
        Tolerances(rate_ratio=(1.1, 1.25))


def test_every_remedy_of_an_odd_build_is_offered_and_ranked():
    found = remedies_for(boundary(danced("toroid", lobes=3), danced("toroid", lobes=3)))
    changes = [remedy.change for remedy in found]
    assert set(changes) >= {"both", "after", "shift", "before", "link", "extend"}
    assert [r.beats_lost for r in found] == sorted(r.beats_lost for r in found)
    even = next(r for r in found if r.change == "before")
    assert even.values["lobes"] in (2, 4)
    assert any("second cycle" in r.words and r.beats_lost == 3 for r in found)


def test_remedies_really_join():
    before, after = danced("toroid", lobes=3), danced("toroid", lobes=3)
    place = boundary(before, after)
    for remedy in remedies_for(place):
        first, last = before.end(), after.start()
        if remedy.change == "extend":
            first = before.law.at(np.array(remedy.values["beats"]))
        elif remedy.change == "before":
            changed = {**before.parameters, "lobes": remedy.values["lobes"]}
            law = before.build(changed, remedy.values["cycle"])
            first = law.at(np.array(remedy.values["beats"]))
        elif remedy.change in ("after", "both"):
            last = after.start({**after.parameters, **remedy.values})
            if remedy.change == "both":
                first = before.end({**before.parameters, **remedy.values})
        elif remedy.change == "shift":
            last = after.law.at(np.array(remedy.values["shift"]))
        else:
            bridge = link(first, last, remedy.values["beats"], ROOM)
            assert limit_broken(LinkLimits(), bridge, ROOM) == ""
            continue
        assert place.joins(first, last), remedy.words


def test_a_remedy_that_breaks_the_join_before_is_not_offered():
    """Starting at an out would part the block from what came before it."""
    odd = danced("toroid", lobes=3)
    earlier = danced("toroid", lobes=4).end
    free = [r.change for r in remedies_for(boundary(odd, odd))]
    held = [r.change for r in remedies_for(boundary(odd, odd, earlier=earlier))]
    assert "both" in free
    assert "both" not in held


def test_what_joins_needs_no_remedy():
    assert remedies_for(boundary(danced("toroid"), danced("toroid"))) == []


def test_ends_of_blocks():
    law = law_for("pro-bend-3", {}, side="right", body=BODY)
    assert [ends(law, beats) for beats in (3.0, 6.0, 1.3)] == ["reversed", "home", "elsewhere"]


def test_shifts_are_quarters_nearest_first():
    law = law_for("static-spin", {}, side="right", body=BODY)
    assert shifts_of(law).tolist() == [0.0, 0.25, 0.75, 0.5]


def test_matrix_agrees_with_single_verdicts():
    names = ("toroid", "pro-bend-3", "static-spin", "two-beat-weave", "extension", "pendulum")
    matrix = join_matrix(names=names)
    for first in names:
        for following in names:
            assert (
                matrix.verdict(first, following) == verdict(danced(first), danced(following)).kind
            )
    counts = matrix.counts()
    assert sum(counts.values()) == 36
    assert set(counts) == set(VERDICTS)


def span(name, start, end, **parameters):
    law = law_for(name, parameters, side="right", body=BODY)
    return Span(start=start, end=end, law=law, origin=start, kind="block", label=name)


def test_gaps_are_links_and_rest():
    still = rest("right", BODY, 0.55)
    trajectory = assembled(
        [span("toroid", 4, 8), span("extension", 11, 13), span("static-spin", 24, 28)],
        still,
        space=ROOM,
    )
    assert [(s.kind, s.start, s.end) for s in trajectory.spans] == [
        ("rest", 1, 2), ("link", 2, 4), ("block", 4, 8), ("link", 8, 11), ("block", 11, 13),
        ("link", 13, 15), ("rest", 15, 22), ("link", 22, 24), ("block", 24, 28), ("link", 28, 30),
        ("rest", 30, 31),
    ]  # fmt: skip
    assert trajectory.at(np.array(-50.0)).tether.tolist() == [0, 0, -1]
    asked = assembled(
        [span("toroid", 4, 8), span("static-spin", 24, 28)], still, straight=[(8, 24)], space=ROOM
    )
    assert [s.kind for s in asked.spans] == [
        "rest",
        "link",
        "block",
        "link",
        "block",
        "link",
        "rest",
    ]
    with pytest.raises(ValueError, match="blocks overlap"):
        assembled([span("toroid", 4, 8), span("extension", 7, 9)], still)
    assert assembled([], still).spans[0].kind == "rest"


def test_courses_refuse_gaps_and_nothing():
    with pytest.raises(ValueError, match="at least one span"):
        Trajectory(())
    with pytest.raises(ValueError, match="must follow each other"):
        Trajectory((span("toroid", 0, 4), span("toroid", 5, 9)))
    with pytest.raises(ValueError, match="must end after it starts"):
        span("toroid", 4, 4)


def test_rest_hangs_clear_of_the_floor():
    for length in (0.4, 0.75, 1.2):
        state = rest("left", BODY, length).at(np.array(3.0))
        assert state.head(length)[2] >= 0.15 - 1e-12
        assert np.linalg.norm(state.hand - BODY.shoulder("left")) <= BODY.arm_length


def test_links_take_time():
    state = danced("toroid").start()
    with pytest.raises(ValueError, match="beats must be positive"):
        link(state, state, 0.0)


NONE_APART = {
    "hand": 0.0, "hand_velocity": 0.0, "tether": 0.0, "axis": 0.0, "plane": 0.0, "rate_ratio": 1.0,
    "head_velocity": 0.0,
}  # fmt: skip
EDGES = {  # docs/motion.md, section 5, and the two velocities of this project
    "hand": 0.15,
    "hand_velocity": 2.0,
    "head_velocity": 3.0,
    "tether": np.radians(20.0),
    "axis": np.radians(20.0),
}


@pytest.mark.parametrize("which", EDGES)
def test_each_tolerance_alone_decides_at_its_edge(which):
    for factor, joined in ((1.0, True), (0.999, True), (1.001, False), (3.0, False)):
        gap = gap_of(**{which: EDGES[which] * factor})
        assert bool(gap.within(Tolerances())) is joined


@pytest.mark.parametrize(
    ("rate", "joined"),
    [(0.8, True), (0.799, False), (1.25, True), (1.251, False), (0.0, False), (np.inf, False)],
)
def test_the_ratio_of_rates_decides_at_both_edges(rate, joined):
    assert bool(gap_of(rate_ratio=rate).within(Tolerances())) is joined


def test_where_a_tether_stands_its_axis_does_not_count():
    assert bool(gap_of(axis=np.nan).within(Tolerances()))
    assert not bool(gap_of(axis=np.nan).reversed_in_place(Tolerances()))


@pytest.mark.parametrize("which", ["axis", "plane"])
def test_reversed_is_what_differs_only_by_its_turn(which):
    """By turning axis or by plane, within 20° of half a turn; the head then goes the other way, and may."""
    for angle, turned in ((180.0, True), (160.1, True), (159.9, False), (0.0, False)):
        gap = gap_of(**{which: np.radians(angle), "head_velocity": 9.0})
        if which == "plane":
            gap = replace(gap, axis=np.array(np.radians(90.0)))
        assert bool(gap.reversed_in_place(Tolerances())) is turned
    for other in ("hand", "hand_velocity", "tether"):
        spoilt = gap_of(**{"axis": np.pi, "plane": np.pi, other: 1.001 * EDGES[other]})
        assert not bool(spoilt.reversed_in_place(Tolerances()))


def gap_of(**apart):
    return Gap(**{name: np.array(value) for name, value in {**NONE_APART, **apart}.items()})


def test_a_gap_is_measured_between_two_states():
    """Two states typed by hand: distances by Pythagoras, angles from the geometry, rates as given."""

    def state(hand, hand_rate, angle, spin, plane):
        return Motion(
            hand=np.array(hand), hand_rate=np.array(hand_rate), hand_acceleration=np.zeros(3),
            tether=np.array([np.cos(angle), np.sin(angle), 0.0]),
            tether_rate=spin * np.array([-np.sin(angle), np.cos(angle), 0.0]),
            tether_acceleration=np.zeros(3), plane=np.array(plane, float),
        )  # fmt: skip

    first = state((0.0, 0.0, 1.0), (1.0, 0.0, 0.0), 0.0, 2.0, (0, 0, 1))
    last = state((0.3, 0.4, 1.0), (1.0, 0.0, 2.0), 0.5, -3.0, (0, 1, 0))
    gap = gap_between(first, last, 0.5)

    assert float(gap.hand) == pytest.approx(0.5)
    assert float(gap.hand_velocity) == pytest.approx(2.0)
    assert float(gap.tether) == pytest.approx(0.5)
    assert float(gap.axis) == pytest.approx(np.pi)
    assert float(gap.plane) == pytest.approx(np.pi / 2)
    assert float(gap.rate_ratio) == pytest.approx(1.5)
    # heads: half the tether's rates, 1 m/beat along y against 1.5 across the tether the other way
    heads = np.array([1.5 * np.sin(0.5), -1.5 * np.cos(0.5) - 1.0, 2.0])
    assert float(gap.head_velocity) == pytest.approx(np.linalg.norm(heads))
    still = state((0, 0, 1), (0, 0, 0), 0.0, 0.0, (0, 0, 1))
    assert float(gap_between(still, still, 0.5).rate_ratio) == 1.0
    assert float(gap_between(still, first, 0.5).rate_ratio) == np.inf
    assert float(gap_between(first, still, 0.5).rate_ratio) == 0.0
    assert np.isnan(gap_between(first, still, 0.5).axis)


def test_shifts_are_quarters_of_a_beat_nearest_first():
    law = law_for("orbit", {}, side="right", body=BODY, beats=1.0)
    assert law.period == pytest.approx(1.0)
    assert list(shifts_of(law)) == [0.0, 0.25, 0.75, 0.5]


def test_only_an_odd_build_is_offered_other_lobes():
    """An even one comes home the right way round: the lobes are no cause."""
    even, odd = danced("toroid", lobes=4), danced("toroid", lobes=3)
    assert not [r for r in remedies_for(boundary(even, odd)) if r.change == "before"]
    assert [r for r in remedies_for(boundary(odd, odd)) if r.change == "before"]


def test_the_matrix_tells_shift_and_length_of_link_only_where_there_is_one():
    names = ("static-spin", "windmill", "corkscrew")
    matrix = join_matrix(names=names)
    for i, first in enumerate(names):
        for k, following in enumerate(names):
            own = verdict(danced(first), danced(following))
            linked = own.kind == "needs a link"
            shifted = own.kind == "joins after a shift"
            assert np.isnan(matrix.link_beats[i, k]) != linked
            assert not linked or matrix.link_beats[i, k] >= own.link_beats  # of its ways, the first
            assert np.isnan(matrix.shift[i, k]) != shifted
            assert not shifted or matrix.shift[i, k] == own.shift
    assert "needs a link" in {matrix.verdict(a, b) for a in names for b in names}


def test_the_usual_tolerances_are_those_of_the_page_on_motion():
    """docs/motion.md, section 5: typed here again."""
    usual = Tolerances()
    assert (usual.hand, usual.hand_velocity, usual.head_velocity) == (0.15, 2.0, 3.0)
    assert (usual.tether_deg, usual.axis_deg, usual.rate_ratio) == (20.0, 20.0, (0.8, 1.25))


@pytest.mark.parametrize(
    ("period", "shifts"),
    [
        (np.inf, [0.0]), (1.0, [0.0, 0.25, 0.75, 0.5]), (0.2, [0.0]), (0.25, [0.0]),
        (1.1, [0.0, 1.0, 0.25, 0.75, 0.5]),
    ],
)  # fmt: skip
def test_shifts_are_quarters_of_a_beat_nearest_to_none_first(period, shifts):
    """Round the period: a shift by nearly all of it is a small one the other way."""
    assert shifts_of(SimpleNamespace(period=period)).tolist() == shifts
