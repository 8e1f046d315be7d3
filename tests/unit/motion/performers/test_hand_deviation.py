"""Hand work as a margin: how large it is, when it holds, and that distances carry it."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.prisms import plane
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.fixtures import encounters
from sequencer.motion.clearance.grid import cells
from sequencer.motion.flown.flown_motion import FlownLimits, Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.drifting import Spread, drifted, later
from sequencer.motion.performers.flown_figures import FlownFigures, FlyingHand, flown_figures
from sequencer.motion.performers.hand_deviation import hand_deviations_of
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import hand_work, leaves
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.timing.tempo import TempoMap

BODY = Body(stature=1.755)
POI = Prop(length=0.55, mass=0.2, wick_radius=0.05)
STAFF = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)


def trajectory(*names, beats=8.0):
    return Trajectory(
        tuple(
            Span(
                start=beats * k, end=beats * (k + 1), origin=beats * k, kind="block", label=name,
                law=law_for(name, {}, side="right", body=BODY),
            )
            for k, name in enumerate(names)
        )
    )  # fmt: skip


def test_the_margin_of_one_block_is_told_apart_by_tether_and_tempo():
    """The same objects with another tether, or counted faster, all in one memory."""
    own = trajectory("extension", "pro-bend-4")
    found = {}
    for length in (0.55, 0.7, 0.55):
        for tempo in (80.0, 120.0, 80.0):
            margins = hand_deviations_of(own, replace(POI, length=length), TempoMap.steady(tempo))
            found[length, tempo] = sizes = [each.size for each in margins]
            anew = [
                leaves(each.law, length=length, tempo=tempo, start=0.0, end=8.0)
                for each in own.spans
            ]
            assert sizes == anew
    assert len(set(map(repr, found.values()))) == len(found)


@pytest.mark.parametrize(
    ("parameters", "centimetres"),
    [
        ({"hand_radius": 0.0, "beats": 1.0}, 9.0),
        ({"ratio": -3.0, "hand_radius": 0.6}, 22.0),
    ],
)
def test_the_margin_is_the_hand_work_rounded_up(parameters, centimetres):
    """Check values of docs/motion.md, section 6: 100 beats a minute, tether 0.55 m."""
    given = {k: v for k, v in parameters.items() if k != "beats"}
    beats = parameters.get("beats", 4.0)
    law = law_for("orbit", given, side="right", body=BODY, beats=beats, tether=0.55)
    size = leaves(law, length=0.55, tempo=100.0, start=0.0, end=16.0)
    assert centimetres / 100 - 0.005 <= size <= centimetres / 100 + 0.02
    exact = hand_work(law, length=0.55, mass=0.2, tempo=100.0).largest
    assert exact <= size <= exact + 0.0121
    assert round(100 * size, 6) == round(100 * size)


@pytest.mark.parametrize("name", ["pro-bend-4", "anti-bend-3", "three-beat-weave", "stall"])
def test_no_instant_leaves_farther(name):
    law = law_for(name, {}, side="right", body=BODY)
    for tempo in (60.0, 100.0, 140.0):
        size = leaves(law, length=0.55, tempo=tempo, start=1.0, end=7.0)
        motion = law.at(np.linspace(1.0, 7.0, 20_001))
        felt = motion.head_acceleration(0.55) * (tempo / 60) ** 2 + np.array([0, 0, 9.80665])
        needed = motion.head(0.55) + 0.55 * felt / np.linalg.norm(felt, axis=-1, keepdims=True)
        assert np.linalg.norm(needed - motion.hand, axis=-1).max() <= size


def test_blocks_carry_it_and_what_is_rigid_has_none():
    own = trajectory("extension", "pro-bend-4")
    tempo = TempoMap(np.arange(0.0, 40.0, 0.6))
    first, second = hand_deviations_of(own, POI, tempo)
    assert (first.start, first.end) == (-0.25, 8.25)
    assert (second.start, second.end) == (7.75, 16.25)
    assert second.size > first.size > 0
    assert hand_deviations_of(own, STAFF, tempo) == ()


def test_a_large_margin_is_what_is_flown_where_the_block_flies(monkeypatch):
    """Of 31 cm and 22 cm the larger, in whole centimetres, and 2 cm for what lies between the looks."""
    own, tempo = trajectory("extension", "pro-bend-4"), TempoMap(np.arange(0.0, 40.0, 0.9))
    hand = FlyingHand(
        side="right", prop=POI, carriage=Carriage(body=BODY), tempo=tempo, limits=FlownLimits()
    )
    flown = FlownFigures(
        head_rms=0.2, head_most=0.3012, hand_rms=0.1, hand_most=0.22, least_pull=0.5, hand_speed=3.0,
        hand_acceleration=50.0, spare_reach=0.1, tether_off=0.2, moved=0.0, residual=1e-7, broken=(),
    )  # fmt: skip
    monkeypatch.setattr(FlyingHand, "worth_flying", lambda *_: True)
    drawn = [each.size for each in hand_deviations_of(own, POI, tempo)]
    assert min(drawn) <= 0.4 < max(drawn)
    for found, sizes in (
        (flown, [0.33 if size > 0.4 else size for size in drawn]),
        (replace(flown, hand_most=0.6), [0.62 if size > 0.4 else size for size in drawn]),
        (replace(flown, broken=("pull",)), drawn),
        (None, drawn),
    ):
        monkeypatch.setattr(FlyingHand, "figures", lambda *_, found=found: found)
        seen = [each.size for each in hand_deviations_of(own, POI, tempo, hand=hand)]
        assert_allclose(seen, sizes)
    monkeypatch.setattr(FlyingHand, "worth_flying", lambda *_: False)
    monkeypatch.setattr(FlyingHand, "figures", lambda *_: flown)
    assert [each.size for each in hand_deviations_of(own, POI, tempo, hand=hand)] == drawn


def test_the_widened_drawing_encloses_what_is_flown():
    """Really flown, and looked at elsewhere than the search did: head and hand stay within the margin."""
    law = law_for("pro-bend-4", {}, side="right", body=BODY)
    flying = Flying(prop=POI, body=BODY, side="right", tempo=60.0)
    figures = flown_figures(law, flying)
    beats = np.linspace(0.0, law.period, 3001)
    seen, drawn = flown_period(law, flying).flight(beats), law.at(beats)
    off = max(
        np.linalg.norm(flown - own, axis=-1).max()
        for flown, own in ((seen.head, drawn.head(POI.length)), (seen.hand, drawn.hand))
    )
    # 2 cm, what rounding up adds, and the move of the whole pattern, which may lie the other way
    assert figures.margin - 0.0301 - 2 * figures.moved <= off <= figures.margin
    assert figures.moved > 0.02


def test_the_fastest_beat_of_a_block_sets_its_margin():
    """The fastest tempo of the whole block counts, not that of its first beat."""
    law = law_for("antispin-flower-4", {}, side="right", body=BODY)
    own = Trajectory((Span(start=0.0, end=8.0, law=law, origin=0.0, kind="block", label="flower"),))
    seconds = np.append(0.0, np.cumsum([0.9] * 4 + [0.5] * 20))
    (found,) = hand_deviations_of(own, POI, TempoMap(seconds))
    sizes = [
        leaves(law, length=POI.length, tempo=tempo, start=0.0, end=8.0)
        for tempo in (60 / 0.9, 120.0)
    ]
    assert found.size == sizes[1] != sizes[0]


def test_the_larger_counts_where_two_overlap(dance):
    ada = replace(
        dance.dancer(),
        deviation={"right": (HandDeviation(0.0, 4.25, 0.1), HandDeviation(3.75, 8.0, 0.3))},
    )
    beats = np.array([-0.1, 0.0, 3.7, 3.75, 4.0, 4.25, 4.3, 8.0, 8.1])
    assert_allclose(ada.deviations(beats)[1], [0, 0.1, 0.1, 0.3, 0.3, 0.3, 0.3, 0.3, 0])
    assert_allclose(ada.deviations(beats)[0], 0)
    points, _ = ada.stage_points(beats)
    more = ada.shells(points, beats) - ada.radii(points, ada.is_lit(beats))
    assert_allclose(
        more[4], ada.deviations(beats)[1]
    )  # arm, tether, head and rear end of the right
    assert_allclose(more[5], more[4])
    assert_allclose(more[6], more[4])
    assert_allclose(more[:4], 0)
    moved = replace(ada, deviation=later(ada.deviation, 2.0))
    assert_allclose(moved.deviations(beats + 2.0), ada.deviations(beats))


def test_a_dancer_of_another_tempo_carries_it_where_the_block_is(dance):
    """Far from the middle of a show an error of the tempo is worth half a beat."""
    ada = replace(dance.dancer(), deviation={"right": (HandDeviation(200.0, 208.0, 0.3),)})
    draw = np.random.default_rng(4)
    spread = Spread(place=0.0, facing=0.0, timing=0.0, tempo=0.005, tether=0.0, hand=0.0)
    late = drifted(ada, spread, draw, 10.0)
    own = late.trajectories["right"]
    edges = own.planned_beats(np.ravel([each[:2] for each in late.deviation["right"]]))

    assert abs(own.stretch - 1.0) > 1e-3
    assert_allclose(edges, [200.0, 208.0], atol=1e-9)


def test_distances_between_performers_carry_it(dance):
    one, two = dance.dancer("Ada", (0.0, 3.0)), dance.dancer("Bo", (2.0, 3.1), ratio=-2.0)
    bare = approaches((one, two), 0.0, 8.0, required=0.5)
    both = tuple(
        replace(each, deviation=dict.fromkeys(("left", "right"), (HandDeviation(3.0, 5.3, 0.17),)))
        for each in (one, two)
    )
    found = approaches(both, 0.0, 8.0, required=0.5)
    beats = np.unique(np.append(np.linspace(0.0, 8.0, 8001), [3.0, 5.3]))
    sampled = dance.sampled_distance(*both, beats)
    assert abs(found.distance[0] - sampled.min()) <= 0.005 + 1e-9
    assert found.distance[0] < bare.distance[0]
    under = np.zeros(len(beats), bool)
    for low, high in zip(found.spans.start, found.spans.end, strict=True):
        under |= (beats >= low) & (beats <= high)
    assert not np.any((sampled < 0.5) & ~under)


def test_things_carry_it_too_but_not_the_envelope(dance):
    ada = dance.dancer(flame=0.3)
    more = replace(
        ada, deviation=dict.fromkeys(("left", "right"), (HandDeviation(-1.0, 9.0, 0.2),))
    )
    told = {}
    for who, each in (("bare", ada), ("more", more)):
        grid = cells((each,), 0.0, 8.0)
        for measure in ("wicks", "flames", "parts", "envelope"):
            found = encounters(
                (each,), grid, (plane(top=-0.1),), measure=measure, required=np.array([5.0])
            )
            told[who, measure] = found.distance[0]
    for measure in ("wicks", "flames"):
        assert told["bare", measure] - told["more", measure] == pytest.approx(0.2, abs=0.0101)
    assert told["bare", "wicks"] - told["bare", "flames"] == pytest.approx(0.3, abs=0.0101)
    assert told["more", "envelope"] == pytest.approx(told["bare", "envelope"], abs=0.0101)


def test_the_drawn_reach_stays_beside_the_wider_one(dance):
    ada = replace(
        dance.dancer(), deviation=dict.fromkeys(("left", "right"), (HandDeviation(2.0, 4.0, 0.03),))
    )
    pieces = ada.pieces(0.0, 8.0)
    middle = 0.5 * (pieces.edges[:-1] + pieces.edges[1:])
    within = (middle > 2.0) & (middle < 4.0)
    assert {2.0, 4.0} <= set(pieces.edges.tolist())
    assert_allclose(pieces.reach - pieces.drawn, np.where(within, 0.03, 0.0), atol=1e-12)


def test_no_cell_straddles_a_change(dance):
    """Cells are cut at whole quarters, and where a radius jumps, be it at no quarter."""
    ada = replace(
        dance.dancer(lit=((1.1, 6.7),)), deviation={"left": (HandDeviation(2.03, 4.41, 0.2),)}
    )
    edges = cells((ada,), 0.0, 8.0).edges.tolist()
    assert {1.1, 6.7, 2.03, 4.41} <= set(edges)
