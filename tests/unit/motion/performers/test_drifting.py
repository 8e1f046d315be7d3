"""A dancer with drawn errors: what is proven of the plan stays proven, and what is rigid stays so."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import Spread, drifted
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory

BODY = Body(stature=1.72)
POI = Prop(length=0.6, mass=0.2, wick_radius=0.05, flame_reach=0.3)
STAFF = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04, flame_reach=0.3)
WIDE = Spread(place=0.3, facing=0.3, timing=0.3, tempo=0.02, tether=0.05, hand=0.3)


def dancer(name="pro-bend-4"):
    trajectories = {
        side: Trajectory(
            tuple(
                Span(start=4.0 * k, end=4.0 * k + 4, origin=4.0 * k, kind="block", label=each,
                     law=law_for(each, {}, side=side, body=BODY))
                for k, each in enumerate((name, "extension"))
            )
        )
        for side in ("left", "right")
    }  # fmt: skip
    return Dancer(
        name="Ada", body=BODY, props={"left": POI, "right": STAFF}, trajectories=trajectories,
        floor=WalkPath((0.5, 2.0), 0.4, (Move(start=1.0, end=5.0, place=(1.5, 3.0), facing=2.0),)),
        lit=((0.0, 8.0),),
    )  # fmt: skip


def test_what_is_rigid_keeps_its_length():
    draws = [drifted(dancer(), WIDE, np.random.default_rng(k), 4.0) for k in range(8)]
    assert all(each.props["right"] == STAFF for each in draws)
    assert len({each.props["left"].length for each in draws}) == 8


@pytest.mark.parametrize("seed", range(6))
def test_no_drawn_point_leaves_its_bounds(seed):
    ada = drifted(dancer(), WIDE, np.random.default_rng(seed), 4.0)
    pieces = ada.pieces(0.0, 8.0)
    for k, (low, high) in enumerate(zip(pieces.edges[:-1], pieces.edges[1:], strict=True)):
        beats = np.linspace(low, high, 33)[1:-1]
        points, rates = ada.stage_points(beats)
        assert np.all(np.linalg.norm(rates, axis=-1).max(axis=1) <= pieces.speed[k] + 1e-9)
        place = ada.floor.at(beats).place
        for side, prop in ada.props.items():
            wicks = ada.wick_places(beats)[side]
            away = np.linalg.norm(wicks[..., :2] - place, axis=-1).max() + prop.hot_radius
            assert away <= pieces.reach[k] + 1e-9
        # the bound of a hand by itself, which the whole reach may hide
        for side, first in (("left", 2), ("right", 5)):
            off = np.linalg.norm(points[first + 1, :, :2] - place, axis=-1).max()
            own = [
                b for a, b_, b in ada.trajectories[side].pieces(0.0, 8.0) if a <= beats[15] <= b_
            ]
            assert off <= max(b.hand_reach for b in own) + 1e-9


def test_every_error_goes_where_it_belongs():
    """The draws taken again by hand: places, facings, a delay, a tempo, then for each side tether and hand."""
    floor = WalkPath(
        (0.5, 2.0), 0.4,
        (Move(start=1.0, end=5.0, place=(1.5, 3.0), facing=2.0, through=((1.0, 2.2), (1.4, 2.6))),
         Move(start=6.0, end=7.0, place=(0.0, 3.0), facing=1.0)),
    )  # fmt: skip
    ada = drifted(replace(dancer(), floor=floor), WIDE, np.random.default_rng(11), 4.0)
    draw = np.random.default_rng(11)
    places, facings = draw.normal(size=(3, 2)) * 0.3, draw.normal(size=3) * 0.3
    late, stretch = draw.normal() * 0.3, 1 + draw.normal() * 0.02
    longer, aside = draw.normal(), draw.normal(size=3) * 0.3

    def when(beat):
        return (beat - 4.0) / stretch + 4.0 + late

    assert (ada.floor.place, ada.floor.facing) == (floor.place, floor.facing)
    for move, plan in zip(ada.floor.moves, floor.moves, strict=True):
        assert (move.start, move.end) == pytest.approx((when(plan.start), when(plan.end)))
        assert (move.place, move.facing, move.through) == (plan.place, plan.facing, plan.through)
    assert np.array(ada.floor.strays) == pytest.approx(np.column_stack((places, facings)))
    for k, beat in enumerate((-5.0, when(5.5), 20.0)):
        there, plan = ada.floor.at(beat), floor.at((-5.0, 5.5, 20.0)[k])
        assert there.place == pytest.approx(plan.place + places[k])
        assert there.facing == pytest.approx(plan.facing + facings[k])
    assert ada.props["left"].length == pytest.approx(0.6 + 0.05 * longer)
    beats = np.array([2.0, 3.7])
    drawn = dancer().trajectories["left"].at(4.0 + (beats - late - 4.0) * stretch)
    found = ada.trajectories["left"].at(beats)
    assert found.hand == pytest.approx(drawn.hand + aside)
    assert found.tether == pytest.approx(drawn.tether)


def test_a_tether_never_gets_shorter_than_half_of_it():
    loose = replace(WIDE, tether=3.0)
    lengths = [
        drifted(dancer(), loose, np.random.default_rng(k), 4.0).props["left"].length
        for k in range(20)
    ]
    assert min(lengths) == 0.3
    assert max(lengths) > 0.6


@pytest.mark.parametrize("kind", ["place", "facing", "timing", "tether", "hand"])
def test_an_error_is_from_zero_to_ten(kind):
    assert getattr(Spread(**{kind: 0.0}), kind) == 0.0
    assert getattr(Spread(**{kind: 9.99}), kind) == 9.99
    for value in (-1e-9, -0.5, 10.0, float("nan")):
        with pytest.raises(ValueError, match=f"{kind} must be 0 to 10"):
            Spread(**{kind: value})


def test_a_tempo_error_is_at_most_a_twentieth():
    assert Spread(tempo=0.05).tempo == 0.05
    with pytest.raises(ValueError, match=r"at most 0\.05"):
        Spread(tempo=0.0501)


def test_whoever_is_late_is_off_the_stage_late():
    plan = dancer()
    off = replace(plan, floor=replace(plan.floor, off=((-np.inf, 1.0), (6.0, np.inf))))
    danced = drifted(off, WIDE, np.random.default_rng(5), 4.0)
    (move,) = danced.floor.moves  # from beat 1 to 5 of the plan
    pace = 4.0 / (move.end - move.start)
    assert abs(move.start - 1.0) > 0.01
    assert danced.floor.off == (
        (-np.inf, pytest.approx(move.start)),
        (pytest.approx(move.end + 1.0 / pace), np.inf),
    )


def test_a_path_that_is_moved_or_delayed_keeps_when_somebody_is_off_the_stage():
    path = replace(dancer().floor, off=((-np.inf, 1.0), (6.0, np.inf)))
    assert path.moved((0.5, 0.0)).off == path.off
    assert path.shifted(2.0).off == ((-np.inf, 3.0), (8.0, np.inf))


def test_bounds_as_arrays_are_those_of_the_pieces():
    ada = drifted(dancer(), WIDE, np.random.default_rng(3), 4.0)
    for own in (*ada.trajectories.values(), *dancer().trajectories.values()):
        for span in ((0.0, 8.0), (1.3, 2.1), (-3.0, 12.0)):
            table, pieces = own.bound_table(*span), own.pieces(*span)
            assert (table.starts[0], table.ends[-1]) == span
            assert list(zip(table.starts, table.ends, strict=True)) == [each[:2] for each in pieces]
            for column, (_, _, bounds) in zip(table.bounds.T, pieces, strict=True):
                assert column.tolist() == [
                    bounds.hand_reach, bounds.hand_speed, bounds.hand_acceleration,
                    bounds.turn_rate, bounds.turn_acceleration,
                ]  # fmt: skip
