"""What lies behind the hand reaches as far as what lies before it, and so do the rim's own arcs."""

from dataclasses import replace
from math import pi

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.hand_deviation import HandDeviation
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory

BODY = Body(stature=1.72)
FRONT_HEAVY = Prop(
    kind="staff", length=0.3, behind=1.1, mass=0.8, wick_radius=0.04, flame_reach=0.3
)


def dancer(name, prop=FRONT_HEAVY):
    law = law_for(name, {}, side="right", body=BODY, tether=prop.length)
    own = Trajectory((Span(start=0.0, end=8.0, law=law, origin=0.0, kind="block", label=name),))
    return Dancer(
        name="Ada", body=BODY, props={"right": prop}, trajectories={"right": own},
        floor=WalkPath((0.0, 3.0)), lit=((0.0, 8.0),),
    )  # fmt: skip


@pytest.mark.parametrize("name", ["wheel-spin", "extension", "antispin-flower-3", "two-beat-weave"])
def test_no_wick_leaves_the_reach_that_dismisses_pairs(name):
    ada = dancer(name)
    pieces = ada.pieces(0.0, 8.0)
    beats = np.linspace(0.0, 8.0, 801)
    wicks = ada.wick_places(beats)["right"]
    away = np.hypot(wicks[..., 0], wicks[..., 1] - 3.0).max(axis=0) + FRONT_HEAVY.hot_radius
    piece = np.clip(
        np.searchsorted(pieces.edges, beats, side="right") - 1, 0, len(pieces.reach) - 1
    )
    assert np.all(away <= pieces.reach[piece] + 1e-9)
    assert away.max() > pieces.reach.max() - 0.8  # the bound is of use


def test_the_envelope_holds_the_longer_arm_of_a_staff():
    assert dancer("extension").reach == pytest.approx(
        BODY.half_shoulder + BODY.arm_length + 1.1 + 0.34
    )


@pytest.mark.parametrize("name", sorted(patterns()))
def test_no_pattern_carries_a_flame_out_of_the_envelope(name):
    """What is drawn on plans as the reach, and kept from audience and posts, holds every wick."""
    poi = Prop(length=0.5, mass=0.2, wick_radius=0.05, flame_reach=0.45)
    ada = dancer(name, poi)
    wicks = ada.wick_places(np.linspace(0.0, 8.0, 1601))["right"][0]
    away = np.hypot(wicks[:, 0], wicks[:, 1] - 3.0).max() + poi.hot_radius
    assert away <= ada.reach


@pytest.mark.parametrize("diameter", [0.3, 0.85, 2.0])
def test_the_chords_of_a_hoop_hold_its_arcs(diameter):
    hoop = Prop(kind="hoop", length=diameter, mass=0.6, wicks=4, wick_radius=0.02)
    turns = np.linspace(0, 2 * pi, 2001)
    rim = diameter / 2
    arc = np.stack([rim - rim * np.cos(turns), rim * np.sin(turns)], axis=-1)
    tube = 0.012  # half the thickness of a hoop, from the props' module
    least = np.full(len(turns), np.inf)
    for solid in hoop.solids:
        if solid.name != "hoop":
            continue
        a, b = np.array(solid.start), np.array(solid.end)
        along = np.clip((arc - a) @ (b - a) / ((b - a) @ (b - a)), 0, 1)
        off = np.linalg.norm(arc - a - along[:, None] * (b - a), axis=-1)
        least = np.minimum(least, off + tube - solid.radius)
    assert least.max() <= 1e-12


def test_hand_work_stretches_no_arm():
    """Source: an arm's length bounds where its hand can be, wherever it is drawn; the drawn motion still counts."""
    poi = Prop(length=0.5, mass=0.2, wick_radius=0.05, flame_reach=0.45)
    ada = dancer("wheel-spin", poi)
    plain = ada.pieces(0.0, 8.0)
    reaches = []
    for size in (0.05, 0.4, 0.9):
        more = replace(ada, deviation={"right": (HandDeviation(0.0, 8.0, size),)})
        reaches.append(more.pieces(0.0, 8.0).reach)
        assert np.all(reaches[-1] >= plain.reach)
    assert reaches[0] == pytest.approx(plain.reach + 0.05)
    # From the corner of the shoulder's box that is farthest out, the arm straight on: never farther than the bound.
    (inward, back, _), (_, forward, _) = ada.body.shoulder_give
    corners = np.hypot(ada.body.half_shoulder + np.array([inward, 0, 0]), [forward, forward, back])
    farthest = corners.max() + ada.body.arm_length + poi.farthest + poi.hot_radius
    assert reaches[2].max() >= farthest > ada.reach
    assert reaches[2].max() == pytest.approx(ada.reach + np.hypot(inward, forward))
    # An arm drawn longer than it is, which another check stops, is not cut short.
    long = replace(more, body=Body(stature=1.0))
    assert np.all(long.pieces(0.0, 8.0).reach >= long.pieces(0.0, 8.0).drawn)
