"""Usual sizes against the project's facts sheet, and reach and height against the survey.

Sources: facts sheet, section 6 (poi 0.5 to 0.9 m and 0.15 to 0.5 kg, staff 1.2 to 1.8 m and 0.5 to 1.2 kg,
fans of five short wicks, wick tape 51 to 102 mm: common practice and makers' pages, second-hand); ANSUR II,
arm and grip overhead of the 95th man, 0.740 m and 2.281 m (Gordon et al. 2014, public rows).
"""

import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances.boundaries import ceiling_needed
from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.show.file_records.prop_records import usual_prop


def test_usual_sizes_are_those_of_the_trade():
    poi, staff, fan = (usual_prop(kind) for kind in ("poi", "staff", "fan"))
    assert 0.5 <= poi.length <= 0.9
    assert 0.15 <= poi.mass <= 0.5
    assert 1.2 <= staff.length + staff.behind <= 1.8
    assert 0.5 <= staff.mass <= 1.2
    assert len(fan.heads) == 5
    for prop in (poi, staff, fan):
        assert 0.0255 <= prop.wick_radius <= 0.051  # tape of 51 to 102 mm, rolled as wide as it is


@pytest.mark.parametrize(
    "prop",
    [
        Prop(length=0.75, mass=0.2, wick_radius=0.05),
        Prop(kind="staff", length=0.75, behind=0.75, mass=0.8, wick_radius=0.05),
        Prop(kind="staff", length=0.25, behind=0.75, mass=0.8, wick_radius=0.05),
        Prop(kind="hoop", length=0.75, mass=0.6, wicks=1, wick_radius=0.05),
        Prop(kind="fan", length=0.75, mass=0.5, wicks=3, spread=1.5, wick_radius=0.05),
        Prop(kind="club", length=0.75, behind=0.1, mass=0.3, wick_radius=0.05),
    ],
    ids=["poi", "staff", "staff off its middle", "hoop", "fan", "club"],
)
def test_reach_and_height_of_the_tall_man(prop):
    """Worked example: arm 0.740 m and a prop of 0.75 m reach 1.49 m; overhead 2.281 + 0.75 = 3.031 m.

    The example counts from the shoulder; from the body's axis it is half the shoulders more.
    """
    body = Body.of_survey("man", 95)
    law = ComposedLaw(
        hand=HandPath((0.3, 0.3, 1.2)), tether=(0.0, 0.0, -1.0), plane=(-1.0, 0.0, 0.0), turns=(),
        period=1.0,
    )  # fmt: skip
    span = Span(start=0.0, end=1.0, law=law, origin=0.0, kind="rest", label="rest")
    ada = Dancer(
        name="Ada", body=body, props={"right": prop}, trajectories={"right": Trajectory((span,))},
        floor=WalkPath((0.0, 0.0)),
    )  # fmt: skip
    assert_allclose(ada.reach - body.half_shoulder - prop.hot_radius, 1.49, atol=1e-3)
    asked = Requirements(overhead=0.0, ceiling_least=0.0)
    assert_allclose(ceiling_needed(ada, asked) - prop.hot_radius, 3.031, atol=1e-3)
