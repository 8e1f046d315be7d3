"""What a pattern's parameters change of its law: offsets move it, the others leave today's law alone."""

from math import cos, pi, radians, sin

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.patterns.library import law_for, patterns, patterns_from
from sequencer.motion.props.prop import PROP_KINDS

BODY = Body(stature=1.7)
ARM = BODY.arm_length
SHOULDER = BODY.shoulder_height
MOVE = {"across": 0.07, "ahead": 0.11, "up": -0.05}
STILL = (
    "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
)  # fmt: skip
# One of every kind of law, the hybrids aside.
ONE_EACH = (
    "orbit", "wheel-spin", "overhead-spin", "isolation", "toroid", "two-beat-weave", "three-beat-weave",
    "behind-the-back-weave", "overhead-weave", "windmill", "fountain", "corkscrew", "pendulum", "carry",
    "infinity", "box", "body-turn",
)  # fmt: skip


def instants(law, count=41):
    span = law.period if np.isfinite(law.period) else 8.0
    return span * (np.arange(count) + 0.37) / count


def turned(axis, angle, vector):
    """Rodrigues' rotation of a plain vector."""
    axis, vector = np.array(axis, dtype=float), np.array(vector, dtype=float)
    return (
        vector * cos(angle)
        + np.cross(axis, vector) * sin(angle)
        + axis * np.dot(axis, vector) * (1 - cos(angle))
    )


def test_every_pattern_can_be_moved():
    for name, pattern in patterns().items():
        assert {p.name for p in pattern.parameters} >= set(MOVE), name


@pytest.mark.parametrize("name", ONE_EACH)
@pytest.mark.parametrize("direction", ["same", "opposite"])
@pytest.mark.parametrize("mirrored", [False, True])
def test_offsets_move_hand_and_prop_and_nothing_else(name, direction, mirrored):
    def both(given):
        return block_laws(
            dict.fromkeys(SIDES, (name, given)), timing="split", direction=direction, cycle=4.0,
            mirrored=mirrored, body=BODY, tethers={},
        )  # fmt: skip

    usual, moved = both({}), both(MOVE)
    for side, sign in (("right", 1.0), ("left", -1.0)):
        beats = instants(usual[side])
        before, after = usual[side].at(beats), moved[side].at(beats)
        away = np.broadcast_to([sign * 0.07, 0.11, -0.05], before.hand.shape)
        assert_allclose(after.hand - before.hand, away, atol=1e-12)
        for field in STILL:
            assert_allclose(getattr(after, field), getattr(before, field), atol=1e-12)


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("loops", [2, 3])
def test_a_weave_by_its_name_is_as_the_formula_says(side, loops):
    out = 1.0 if side == "right" else -1.0
    name = {2: "two-beat-weave", 3: "three-beat-weave"}[loops]
    law = law_for(name, {}, side=side, body=BODY, beats=float(loops))
    for t in np.linspace(0, loops, 13):
        seen = law.at(np.array(t))
        f = cos(pi * t)
        if loops == 3:
            f = 1 / 3 - cos(2 / 3 * pi * (t + 1)) - cos(4 / 3 * pi * (t + 1)) / 3
        hand = (
            out * ARM * (0.035 + 0.635 * f),
            ARM * (0.29 - 0.08 * cos(2 * pi * t)),
            SHOULDER - 0.18 * ARM - (0.1 if side == "left" else 0.0),
        )
        assert_allclose(seen.hand, hand, atol=1e-12)
        assert_allclose(seen.tether, turned((-1, 0, 0), 2 * pi * t, (0, -1, 0)), atol=1e-12)


@pytest.mark.parametrize("side", SIDES)
def test_windmill_fountain_and_corkscrew_are_as_the_formulas_say(side):
    out = 1.0 if side == "right" else -1.0
    mill = law_for("windmill", {}, side=side, body=BODY, beats=2.0)
    fountain = law_for("fountain", {}, side=side, body=BODY, beats=2.0)
    screw = law_for("corkscrew", {}, side=side, body=BODY, beats=4.0)
    for t in np.linspace(0, 2, 9):
        f, once = cos(pi * t), 2 * pi * t
        seen = mill.at(np.array(t))
        high = SHOULDER + ARM * (0.68 - 0.1 * cos(once))
        assert_allclose(seen.hand, (out * 0.25 * ARM, ARM * (0.06 + 0.48 * f), high), atol=1e-12)
        flat = turned((0, -1, 0), once, (0, 0, -1))
        leant = turned((1, 0, 0), radians(20) * sin(pi * t), flat)
        assert_allclose(seen.tether, leant, atol=1e-12)

        seen = fountain.at(np.array(t))
        beside = out * (BODY.half_breadth + 0.12)
        place = (beside, ARM * (0.3 + 0.15 * f), SHOULDER + ARM * (0.05 - 0.6 * f))
        assert_allclose(seen.hand, place, atol=1e-12)
        assert_allclose(seen.tether, turned((-1, 0, 0), once, (0, 1, 0)), atol=1e-12)

        seen = screw.at(np.array(t))
        rise = radians(47.5 - 42.5 * cos(pi * t / 2))
        arm = 0.98 * ARM * np.array([out * cos(rise), 0.0, sin(rise)])
        assert_allclose(seen.hand, BODY.shoulder(side) + arm, atol=1e-12)
        assert_allclose(seen.tether, turned((0, 0, 1), once, (out, 0, 0)), atol=1e-12)


@pytest.mark.parametrize("side", SIDES)
def test_a_body_turn_is_as_the_formula_says(side):
    out = 1.0 if side == "right" else -1.0
    law = law_for("body-turn", {}, side=side, body=BODY, beats=8.0)
    for t in np.linspace(0, 8, 17):
        x = t / 4 if t < 4 else 2 - t / 4
        about = out * pi * (10 * x**3 - 15 * x**4 + 6 * x**5)
        seen = law.at(np.array(t))
        place = turned((0, 0, 1), about, (out * (BODY.half_breadth + 0.12), 0, 0))
        assert_allclose(seen.hand, place + np.array([0, 0, SHOULDER - 0.15 * ARM]), atol=1e-12)
        still = turned((-1, 0, 0), 2 * pi * t, (0, 0, -1))
        assert_allclose(seen.tether, turned((0, 0, 1), about, still), atol=1e-12)


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("way", ["forward", "backward"])
@pytest.mark.parametrize("name", ["two-beat-weave", "three-beat-weave", "behind-the-back-weave"])
def test_a_swing_turns_the_plane_while_the_hand_crosses(name, way, side):
    """Wheel plane at the sides; nearest the wall plane in the middle, its crossing end going along."""
    if way == "backward" and not name.startswith("behind"):
        name, given = f"reverse-{name}", {}
    else:
        given = {"way": way}
    law = law_for(name, {**given, "swing": 75}, side=side, body=BODY)
    beats = np.linspace(0, law.period, 3001)
    seen = law.at(beats)
    wheel = -1.0 if way == "forward" else 1.0
    crossing = np.abs(seen.hand_rate[:, 0]) > 0.999 * np.abs(seen.hand_rate[:, 0]).max()
    still = np.abs(seen.hand_rate[:, 0]) < 1e-9
    assert_allclose(seen.plane[still], np.broadcast_to([wheel, 0, 0], (still.sum(), 3)), atol=1e-9)
    assert np.any(crossing)
    assert_allclose(np.abs(seen.plane[crossing, 1]), sin(radians(75)), atol=2e-3)
    # d' = n × d, and the end that passes on the body's far side of the turn goes with the hand:
    # the top of a wheel that goes forward before the body, the bottom of one that goes backward.
    top = np.cross(seen.plane[crossing], [0.0, 0.0, 1.0])[:, 0]
    behind = name.startswith("behind")
    along = top * np.sign(seen.hand_rate[crossing, 0]) * -wheel * (-1 if behind else 1)
    assert np.all(along > 0.9)


def test_lead_turns_the_prop_on_and_width_carries_the_hand_farther():
    usual = law_for("two-beat-weave", {}, side="right", body=BODY)
    upright = law_for("two-beat-weave", {"lead": 90}, side="right", body=BODY)
    wide = law_for("two-beat-weave", {"width": 0.5}, side="right", body=BODY)
    middle = usual.period / 4
    assert_allclose(usual.at(np.array(middle)).tether, (0, 1, 0), atol=1e-12)
    assert_allclose(np.abs(upright.at(np.array(middle)).tether), (0, 0, 1), atol=1e-12)
    for law, width in ((usual, 1.0), (wide, 0.5)):
        x = law.at(np.linspace(0, law.period, 201)).hand[:, 0]
        assert_allclose(np.ptp(x), width * 1.27 * ARM, rtol=1e-9)


def test_a_yaw_turns_an_orbit_about_its_centre():
    given = {"ratio": -3, "plane": "wheel"}
    for side in SIDES:
        usual = law_for("orbit", given, side=side, body=BODY)
        yawed = law_for("orbit", {**given, "yaw": 40}, side=side, body=BODY)
        beats = instants(usual)
        before, after = usual.at(beats), yawed.at(beats)
        centre = before.hand.mean(axis=0)
        for k in range(len(beats)):
            expected = centre + turned((0, 0, 1), radians(40), before.hand[k] - centre)
            assert_allclose(after.hand[k], expected, atol=1e-9)
            assert_allclose(
                after.tether[k], turned((0, 0, 1), radians(40), before.tether[k]), atol=1e-12
            )


@pytest.mark.parametrize("plane", ["wall", "floor", "wheel"])
def test_both_hands_keep_parallel_planes_when_yawed_the_opposite_way(plane):
    laws = block_laws(
        {side: ("orbit", {"plane": plane, "yaw": 30}) for side in SIDES}, timing="together",
        direction="opposite", cycle=4.0, body=BODY, tethers={},
    )  # fmt: skip
    planes = [laws[side].at(np.array(0.3)).plane for side in SIDES]
    assert_allclose(planes[0], -planes[1], atol=1e-12)


@pytest.mark.parametrize("towards", ["right", "left"])
def test_hands_that_turn_to_one_side_stay_a_plane_apart(towards):
    laws = {
        side: law_for("body-turn", {"towards": towards, "apart": 0.05}, side=side, body=BODY)
        for side in SIDES
    }
    beats = instants(laws["right"])
    hands = [laws[side].at(beats).hand for side in SIDES]
    assert_allclose(np.linalg.norm(hands[0] - hands[1], axis=1), 0.14, atol=1e-12)
    start = laws["left"].at(np.array(0.0)).hand[0]
    assert start * (1 if towards == "right" else -1) > 0


def test_a_corkscrew_must_rise():
    with pytest.raises(ValueError, match="low must be under high, got 60° and 40°"):
        law_for("corkscrew", {"low": 60, "high": 40}, side="right", body=BODY)


def test_what_to_try_begins_with_what_is_usual():
    weave = patterns()["two-beat-weave"]
    assert weave.trials({}, "poi")[0] == {"width": 1.0, "lead": 0.0, "swing": 0.0}
    assert weave.trials({}, "staff")[0] == {"swing": 75.0, "lead": 135.0, "width": 1.0}
    assert weave.trials({"swing": 10, "lead": 0}, "staff") == [
        {"width": 1.0}, {"width": 1.15}, {"width": 0.8},
    ]  # fmt: skip
    assert patterns()["butterfly"].trials({}, "club")[0] == {"hand_radius": 0.1, "yaw": 0.0}
    assert patterns()["pendulum"].trials({}, "poi") == [{}]


def test_what_to_try_is_short_allowed_and_distinct():
    for name, pattern in patterns().items():
        for prop in PROP_KINDS:
            trials = pattern.trials({}, prop)
            assert 1 <= len(trials) <= 40
            assert len({repr(sorted(trial.items())) for trial in trials}) == len(trials)
            for trial in trials:
                pattern.values(trial)
                if prop != "staff" and trial == trials[0]:
                    assert pattern.values(trial) == pattern.values({}), name


def test_a_patterns_own_default_is_tried_first():
    book = patterns_from(
        {"own": {"law": "toroid", "defaults": {"from": 90, "hand_radius": 0.1}}}, patterns()
    )
    first, second, *_ = book["own"].trials({"begin": "in"}, "poi")
    assert first == {"hand_radius": 0.1, "from": 90.0}
    assert second == {"hand_radius": 0.1, "from": -90.0}


def test_a_weave_has_room_where_it_still_crosses():
    book = patterns()
    assert book["two-beat-weave"].room({}).ahead == (-0.15, 0.5)
    assert book["behind-the-back-weave"].room({}).ahead == (-0.45, 0.15)
    assert book["buzzsaw"].room({}).across == (-0.12, 0.08)


@pytest.mark.parametrize(
    ("room", "message"),
    [
        ({"across": [0.1, 0.2]}, "room: across must hold 0, got 0.1 … 0.2 m"),
        ({"across": 0.1}, "room: across must be a lowest and a highest offset"),
        ({"aside": [0, 1]}, "room must give across, ahead or up"),
        ([], "room must give across, ahead or up"),
        ({"up": ["low", "high"]}, "room: up: 'low' is not a number"),
    ],
)
def test_a_room_that_is_none_is_refused(room, message):
    with pytest.raises(ValueError, match=message):
        patterns_from({"own": {"law": "orbit", "room": room}}, patterns())
