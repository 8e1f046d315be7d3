"""Trajectories in tables by hand, and their states against those of each trajectory by itself."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import ComposedLaw, HandPath, Slide
from sequencer.motion.laws.phases import CosineSteps, Spline, Steps, Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.laws.transforms import Mirrored, Retimed
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.performers import courses
from sequencer.motion.performers.batch import Needed
from sequencer.motion.performers.courses import Courses
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.unit.motion.performers.drawn import Loose, law, trajectory


def table(**more):
    """Three spans from 0, 4 and 8; a mix about 4 of half 0.5, a bridge about 8 of half 1, by hand."""
    given = {
        "edges": np.array([4.0, 8.0]), "laws": np.array([1, 2, 3]),
        "origins": np.array([0.0, 3.0, 8.5]), "boundaries": np.array([4.0, 8.0]),
        "halves": np.array([0.5, 1.0]), "bridges": np.array([-1, 0]), "befores": np.array([0, 1]),
    }  # fmt: skip
    return courses._Table(**{**given, **more})


def test_which_law_holds_at_each_instant():
    """A mix is two laws at once; a bridge begins where it does, and ends before its last beat."""
    beats = np.array([-1.0, 3.5, 3.75, 4.0, 4.25, 4.5, 5.0, 7.0, 7.25, 8.0, 8.99, 9.0, 20.0])
    found = table().places(beats)
    assert found.law.tolist() == [1, 1, 1, 1, 1, 2, 2, 2, 0, 0, 0, 3, 3]
    assert_allclose(found.origin, [*[0] * 5, *[3] * 3, *[7] * 3, 8.5, 8.5])
    assert found.other.tolist() == [-1, -1, 2, 2, 2, *[-1] * 8]
    mixed = found.other >= 0
    assert_allclose(found.other_origin[mixed], 3.0)
    assert_allclose(found.begin[mixed], 3.5)
    assert_allclose(found.width[mixed], 1.0)


def test_spans_that_are_not_blended():
    none = np.empty(0)
    bare = table(boundaries=none, halves=none, bridges=none, befores=none)
    found = bare.places(np.array([3.99, 4.0, 8.0]))
    assert found.law.tolist() == [1, 2, 3]
    assert_allclose(found.origin, [0.0, 3.0, 8.5])
    assert found.other.tolist() == [-1] * 3
    wide = table(halves=np.array([0.25, 1.0])).places(np.array([3.8, 4.0]))  # half a beat wide
    assert_allclose(wide.begin, 3.75)
    assert_allclose(wide.width, 0.5)


def test_a_trajectory_as_a_table():
    """Laws go into one list after those that are there: spans first, then what bridges them."""
    spans = [
        replace(span, origin=origin)
        for span, origin in zip(
            trajectory(1, 2, 2, 5, 4).spans, (-0.5, 3.5, 3.5, 1.0, 2.0), strict=True
        )
    ]
    own, laws = Trajectory(tuple(spans)), [law(7)]
    found = courses._table(own, laws)
    assert laws[1:6] == [law(1), law(2), law(2), law(5), law(4)]
    blended = [(k, blend) for k, blend in enumerate(own.blends) if blend.half > 0]
    bridged = [blend.bridge for _, blend in blended if blend.bridge is not None]
    assert [id(each) for each in laws[6:]] == [id(each) for each in bridged]
    assert found.laws.tolist() == [1, 2, 3, 4, 5]
    assert found.edges.tolist() == [4.0, 8.0, 12.0, 16.0]
    assert found.origins.tolist() == [-0.5, 3.5, 3.5, 1.0, 2.0]
    assert (
        found.befores.tolist() == [k for k, _ in blended] == [0, 2, 3]
    )  # the second goes on in the third
    assert found.boundaries.tolist() == [blend.boundary for _, blend in blended]
    assert found.halves.tolist() == [blend.half for _, blend in blended]
    assert 0 < len(bridged) < len(blended), [blend.bridge for blend in own.blends]
    numbers = iter(range(6, 9))
    assert found.bridges.tolist() == [
        -1 if blend.bridge is None else next(numbers) for _, blend in blended
    ]
    loose, one = Loose(), [law(7)]
    alone = courses._table(loose, one)
    assert one[1] is loose
    assert alone.laws.tolist() == [1]
    assert alone.origins.tolist() == [0.0]
    assert (alone.edges.tolist(), alone.boundaries.tolist(), alone.halves.tolist()) == ([], [], [])
    assert (alone.bridges.tolist(), alone.befores.tolist()) == ([], [])


BODY = Body(stature=1.7)
FAN = Prop(kind="fan", length=0.4, mass=0.5, wicks=3, spread=2.0, wick_radius=0.03)
VECTORS = (
    "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
)  # fmt: skip
EVERYTHING = Needed(hand=3, tether=3, plane=True)


def danced(names, side, wrap=lambda law, _: law, gap=1.5):
    """Blocks with gaps between them, linked from rest to rest."""
    spans = [
        Span(
            start=6.0 * k + gap, end=6.0 * k + 6, origin=6.0 * k + 0.25, kind="block", label=name,
            law=wrap(law_for(name, {}, side=side, body=BODY), k),
        )
        for k, name in enumerate(names)
    ]  # fmt: skip
    return assembled(spans, rest(side, BODY, FAN))


def wrapped(law, k):
    return (Mirrored(law), Retimed(law, 0.3, 1.5), Retimed(Mirrored(Retimed(law, 0.2)), 0.0, 0.5))[
        k % 3
    ]


def stepping(phase):
    """A tether that turns by a phase, beside a hand that slides by it."""
    hand = HandPath((0.3, 0.3, 1.2), (Slide((0.1, 0.0, 0.05), phase),))
    turns = (Turn((0.0, 0.0, 1.0), Wave(rate=0.5)), Turn((1.0, 0.0, 0.0), phase))
    return ComposedLaw(
        hand=hand, tether=(0.0, 0.0, -1.0), plane=(1.0, 0.0, 0.0), turns=turns, period=4.0
    )


def several():
    """Blends, bridges, links, every kind of phase, and laws in all their wrappings."""
    phases = (
        Steps((0.0, 1.5, 4.0), (0.0, 1.0, 0.3)), CosineSteps((0.5, 2.5, 4.5), (0.2, 1.1, 0.2)),
        Spline((0.0, 1.0, 4.0), (0.0, 0.8, 0.0)), Wave(0.1, 0.5, ((0.3, 1.5, 0.2),)),
        Steps((0.0, 2.0), (0.0, 1.0), repeats=False),
    )  # fmt: skip
    steps = Trajectory(
        tuple(
            Span(start=4.0 * k, end=4.0 * k + 4, origin=4.0 * k, kind="block", label="",
                 law=stepping(phase))
            for k, phase in enumerate(phases)
        )
    )  # fmt: skip
    names = sorted(patterns())
    return [
        steps, trajectory(1, 2, 3), trajectory(1, 2, 2, 5, 4), Loose(), law(3),
        danced(names[:4], "left"), danced(names[4:7], "right", wrapped),
    ]  # fmt: skip


@pytest.fixture(scope="module")
def each():
    return several()


def at(own, course, beats, needed):
    return own.parts(own.places(course, beats), beats, needed)


def test_states_are_those_of_each_trajectory(each):
    """Before, on and after every edge, and everywhere between: hand, tether, their rates and plane."""
    own = Courses(each)
    kinds = set()
    for k, course in enumerate(each):
        spans = getattr(course, "spans", ())
        for blend in getattr(course, "blends", ()):
            if blend.half:
                kinds.add("mix" if blend.bridge is None else "bridge")
        kinds |= {span.kind for span in spans}
        edges = np.array([edge for span in spans for edge in (span.start, span.end)])
        beats = np.concatenate([np.linspace(-0.7, 27.3, 400), edges, edges - 1e-7, edges + 1e-7])
        state, parts = course.at(beats), at(own, k, beats, EVERYTHING)
        for name, part in zip(VECTORS, parts, strict=True):
            expected = getattr(state, name)
            size = 1 + np.abs(expected).max()
            assert_allclose(part.T, expected, atol=1e-12 * size, err_msg=f"{k} {name}")
    assert kinds == {"mix", "bridge", "link", "rest", "block"}


@pytest.mark.parametrize(
    "needed",
    [
        Needed(1, 0),
        Needed(0, 1),
        Needed(2, 2),
        Needed(3, 2),
        Needed(1, 1, True),
        Needed(0, 0, True),
    ],
)
def test_what_is_needed_is_the_same_without_the_rest(each, needed):
    """To the last digit: results may not depend on what else is asked for."""
    own = Courses(each)
    rows = [*range(needed.hand), *range(3, 3 + needed.tether), *[6] * needed.plane]
    for k in range(len(each)):
        beats = np.linspace(-0.5, 27.0, 90)
        found = at(own, k, beats, needed)
        assert found.shape == (needed.rows, 3, 90)
        assert_array_equal(found, at(own, k, beats, EVERYTHING)[rows])


def test_an_instant_does_not_depend_on_the_others(each):
    """Alone, among few or among many trajectories and instants, to the last digit."""
    own = Courses(each)
    beats = np.linspace(0.0, 26.0, 37)
    for k, course in enumerate(each):
        many = at(own, k, beats, EVERYTHING)
        alone = Courses([course])
        assert_array_equal(at(alone, 0, beats[5:6], EVERYTHING)[..., 0], many[..., 5])
        assert_array_equal(at(alone, 0, beats[::3], EVERYTHING), many[..., ::3])


def test_a_part_of_a_trajectory_has_its_states(each):
    whole = each[2]
    part = whole.part(3.0, 9.0)
    assert len(part.spans) < len(whole.spans)
    beats = np.linspace(3.0, 9.0, 50)
    found = at(Courses([part]), 0, beats, EVERYTHING)
    assert_array_equal(found, at(Courses([whole]), 0, beats, EVERYTHING))


def test_a_law_is_known_by_its_index(each):
    own = Courses(each)
    places = own.places(1, np.array([1.0, 5.0]))
    assert [own.law(int(k)) for k in places.law] == [law(1), law(2)]
    assert own.places(1, np.array([1.0, 5.0, 9.0])).rows(np.array([2, 0, 0])).origin.tolist() == [
        7.5, -0.5, -0.5,
    ]  # fmt: skip
