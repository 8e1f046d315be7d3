"""Planes and directions in words, and build steps with their cross points."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.transforms import mirrored
from sequencer.motion.patterns.build_steps import build_steps, cross_point
from sequencer.motion.patterns.library import law_for
from sequencer.motion.patterns.planes import plane_words
from sequencer.outputs.words.law_words import law_words, words

BODY = Body(stature=1.7)


@pytest.mark.parametrize(
    ("n", "performer", "audience"),
    [
        ((-1, 0, 0), "wheel plane, forward", "wheel plane, forward"),
        ((1, 0, 0), "wheel plane, backward", "wheel plane, backward"),
        ((0, 1, 0), "wall plane, clockwise", "wall plane, anticlockwise"),
        ((0, -1, 0), "wall plane, anticlockwise", "wall plane, clockwise"),
        (
            (0, 0, 1),
            "floor plane, anticlockwise from above",
            "floor plane, anticlockwise from above",
        ),
        ((0, 0, -1), "floor plane, clockwise from above", "floor plane, clockwise from above"),
    ],
)
def test_every_named_plane_for_both_eyes(n, performer, audience):
    assert plane_words(np.array(n, float)) == performer
    assert plane_words(np.array(n, float), eye="audience") == audience


def test_tilted_planes_say_so():
    lean = np.radians([20, 45])
    n = [np.array([-np.cos(a), 0, np.sin(a)]) for a in lean]
    assert plane_words(n[0]) == (
        "wheel plane, forward, tilted 20° towards floor plane, anticlockwise from above"
    )
    assert plane_words(n[1]).startswith("between ")


@pytest.mark.parametrize(
    ("name", "parameters", "prop", "hand"),
    [
        ("static-spin", {}, "wall plane, anticlockwise", "the hand stays still"),
        ("wheel-spin", {}, "wheel plane, forward", "the hand stays still"),
        (
            "antispin-flower-4",
            {},
            "wall plane, clockwise",
            "circles in the wall plane, anticlockwise",
        ),
        ("two-beat-weave", {}, "wheel plane, forward", "from side to side"),
        ("pendulum", {}, "back and forth in the wheel plane", "the hand stays still"),
        ("carry", {}, "hangs without turning", "circles in the wall plane, anticlockwise"),
        ("windmill", {}, "wall plane, anticlockwise, leaning up to 20°", "forward and back"),
        (
            "pro-bend-4",
            {"start": -1},
            "the plane bends, starting with wheel plane, forward",
            "circles",
        ),
        ("box", {}, "wall plane, anticlockwise", "circles in the wall plane, anticlockwise"),
        ("fountain", {}, "wheel plane, forward", "up and down"),
    ],
)
def test_patterns_in_words(name, parameters, prop, hand):
    said = words(name, parameters, "right")["performer"]
    assert prop in said.prop
    assert hand in said.hand


def test_audience_sees_the_wall_plane_the_other_way_round():
    said = words("extension", {}, "right")
    assert said["performer"].prop == "wall plane, anticlockwise"
    assert said["audience"].prop == "wall plane, clockwise"
    assert "clockwise" in str(said["audience"])


def test_mirrored_laws_are_told_as_danced():
    law = law_for("extension", {}, side="right", body=BODY)
    assert law_words(mirrored(law)).prop == "wall plane, clockwise"


def test_cross_point_is_on_both_planes():
    draw = np.random.default_rng(4)
    for _ in range(50):
        hands, planes = draw.normal(size=(2, 3)), draw.normal(size=(2, 3))
        planes /= np.linalg.norm(planes, axis=1, keepdims=True)
        point = cross_point(hands[0], planes[0], hands[1], planes[1])
        for hand, plane in zip(hands, planes, strict=True):
            assert abs((point - hand) @ plane) < 1e-9
        # and no point of the line is nearer to the middle of the hands
        along = np.cross(*planes)
        assert abs((point - hands.mean(axis=0)) @ along) < 1e-9


def test_parallel_planes_do_not_cross():
    n = np.array([0.0, 1.0, 0.0])
    assert cross_point(np.zeros(3), n, np.ones(3), n) is None
    assert cross_point(np.zeros(3), n, np.ones(3), -n) is None


def test_even_builds_take_one_cycle_odd_ones_two():
    even, odd = build_steps("pro-bend-4", {}), build_steps("pro-bend-3", {})
    assert len(even) == 9
    assert len(odd) == 13
    assert {s.cycle for s in odd[:-1]} == {1, 2}
    assert [s.half for s in even[:3]] == ["in", "out", "in"]
    assert_allclose(odd[-1].plane, odd[0].plane, atol=1e-9)
    assert_allclose(odd[6].plane, -odd[0].plane, atol=1e-9)
    assert len(build_steps("iso-bend-3", {})) == 7


def test_steps_say_place_change_and_cross():
    steps = build_steps("pro-bend-4", {"start": -1, "hand_radius": 0.3})
    assert [s.place for s in steps[::2]] == ["bottom", "right", "top", "left", "bottom"]
    assert steps[1].place == "half-way between right and bottom"
    assert steps[1].change == "the hand goes on by 45°, the plane turns by 90°"
    # wheel and wall plane of hands 45° apart cross in an upright line below the middle
    assert steps[1].cross_words == "26 cm below"
    assert_allclose(steps[1].cross[1], steps[1].hand[1])


def test_steps_count_the_beats_of_a_given_cycle():
    """At 3.2 beats a cycle of four lobes a half lobe takes 0.4; the places are those of any other cycle."""
    usual, quick = build_steps("pro-bend-4", {}), build_steps("pro-bend-4", {}, cycle=3.2)
    assert_allclose([s.beat for s in quick], 0.4 * np.arange(9))
    assert [s.place for s in quick] == [s.place for s in usual]
    assert [s.lobe for s in quick] == [s.lobe for s in usual]


def test_starting_at_an_out_turns_ins_and_outs_over():
    steps = build_steps("toroid", {"begin": "out"})
    assert [s.half for s in steps[:3]] == ["out", "in", "out"]
    assert_allclose(steps[0].tether, (0, 0, -1), atol=1e-9)


def test_other_patterns_have_no_build_steps():
    with pytest.raises(ValueError, match="extension is not a toroid"):
        build_steps("extension", {})


def test_lobes_and_cycles_are_counted_from_one():
    """Half a lobe a step: four lobes in one cycle, three lobes twice over in two."""
    even, odd = build_steps("pro-bend-4", {}), build_steps("pro-bend-3", {})
    assert [s.lobe for s in even] == [1, 1, 2, 2, 3, 3, 4, 4, 1]
    assert [s.cycle for s in even] == [1] * 8 + [2]
    assert [s.lobe for s in odd] == [1, 1, 2, 2, 3, 3] * 2 + [1]
    assert [s.cycle for s in odd] == [1] * 6 + [2] * 6 + [3]
    assert [s.number for s in even] == list(range(1, 10))
