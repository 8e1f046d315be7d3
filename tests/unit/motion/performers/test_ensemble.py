"""A cast evaluated together has the points of each of its dancers evaluated alone."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.laws.transforms import Retimed, mirrored
from sequencer.motion.patterns.library import law_for, patterns, patterns_from
from sequencer.motion.performers.batch import Laws
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.ensemble import Ensemble
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span

BODY = Body(stature=1.7)
ROWS = [(0, 0, 180), (70, 120, 430), (200, 60, 800), (360, 0, 1260)]
UNEVEN = [{"hand": h, "bend": b, "phase": p} for h, b, p in ROWS]
BOOK = patterns_from({"uneven": {"stations": UNEVEN}}, patterns())


def law(name, side="right", beats=4.0):
    return law_for(name, {}, side=side, body=BODY, beats=beats, book=BOOK)


def trajectory(names, side, *, gap=0.0):
    spans = []
    for k, name in enumerate(names):
        own = law(name, side, beats=3.0 + k % 2)
        if k % 3 == 1:
            own = mirrored(law(name, "left" if side == "right" else "right"))
        if k % 3 == 2:
            own = Retimed(own, 0.7, 1.25)
        start = 8.0 * k + gap
        spans.append(
            Span(start=start, end=8.0 * (k + 1), law=own, origin=start, kind="block", label=name)
        )
    return assembled(spans, rest(side, BODY, 0.5))


def cast():
    names = list(BOOK)
    poi = Prop(length=0.5, mass=0.2, wick_radius=0.05)
    staff = Prop(length=0.7, behind=0.6, mass=0.8, wick_radius=0.05, kind="staff")
    moves = (Move(start=9.0, end=17.0, place=(1.0, 4.0), facing=2.0, through=((3.0, 3.0),)),)
    return [
        Dancer(
            name=f"d{k}",
            body=Body(stature=1.6 + 0.05 * k, seated=k % 3 == 1),
            props=dict.fromkeys(sides, poi if k % 2 else staff),
            trajectories={
                side: trajectory(names[9 * k : 9 * k + 9], side, gap=0.5 * (k % 2))
                for side in sides
            },
            floor=WalkPath((float(k), 2.0), 0.3 * k, moves if k % 3 else ()),
        )
        for k, sides in enumerate([SIDES, SIDES, ("left",), SIDES, (), SIDES, ("right",), SIDES])
    ]


def test_every_law_of_the_vocabulary_alone_and_in_a_table():
    laws = [law(name, side) for name in BOOK for side in SIDES]
    laws += [mirrored(Retimed(each, 0.3, 0.8)) for each in laws[::5]]
    table = Laws(laws)
    which = np.repeat(np.arange(len(laws)), 7)
    beats = np.random.default_rng(3).uniform(-5.0, 20.0, len(which))
    seen = table.at(which, beats)

    for k, each in enumerate(laws):
        own = each.at(beats[which == k])
        for name in ("hand", "hand_rate", "tether", "tether_rate"):
            found = getattr(seen, name)[:, which == k].T
            assert_allclose(found, getattr(own, name), atol=1e-11, err_msg=f"{k} {name}")


@pytest.mark.parametrize("kept", [8, 10])
def test_points_are_those_of_the_dancers(kept):
    dancers = cast()
    draw = np.random.default_rng(5)
    who = np.sort(draw.integers(len(dancers), size=3000))
    near = 8.0 * draw.integers(0, 10, 3000) + draw.uniform(-0.4, 0.4, 3000)  # blends and bridges
    beats = np.where(draw.random(3000) < 0.5, near, draw.uniform(-4.0, 84.0, 3000))
    points, rates = Ensemble(dancers).stage_points(who, beats, kept)

    for k, dancer in enumerate(dancers):
        own = who == k
        at, moving = dancer.stage_points(beats[own])
        assert_allclose(points[own], at[:kept].transpose(1, 0, 2), atol=1e-11)
        assert_allclose(rates[own], moving[:kept].transpose(1, 0, 2), atol=1e-10)


def test_the_casts_above_hold_what_they_should():
    """Mixes, bridges and links are all there, else the comparison above says little."""
    trajectories = [each for dancer in cast() for each in dancer.trajectories.values()]
    blends = [blend for each in trajectories for blend in each.blends if blend.half > 0]
    assert any(blend.bridge is None for blend in blends)
    assert any(blend.bridge is not None for blend in blends)
    assert any(span.kind == "link" for each in trajectories for span in each.spans)
