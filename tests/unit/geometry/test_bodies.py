import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import SURVEY, Body


def test_measured_lengths_win():
    body = Body(stature=1.8, arm=0.75, shoulder_top=1.5)

    assert body.arm_length == 0.75
    assert body.shoulder_height == 1.5
    assert_allclose(body.overhead_grip, 2.25)


@pytest.mark.parametrize(
    ("given", "name"),
    [
        ({"stature": 180}, "stature"),
        ({"stature": float("nan")}, "stature"),
        ({"stature": 1.8, "arm": 7.0}, "arm"),
        ({"stature": 1.8, "shoulder_top": 0.2}, "shoulder_top"),
        ({"stature": 1.8, "grip_overhead": 9.0}, "grip_overhead"),
    ],
)
def test_absurd_measures_are_refused(given, name):
    with pytest.raises(ValueError, match=name):
        Body(**given)


def test_shoulders_are_on_their_sides():
    body = Body(stature=1.7)

    assert body.shoulder("right")[0] > 0 > body.shoulder("left")[0]
    assert body.shoulder("left")[2] == body.shoulder_height


def test_the_column_holds_every_capsule():
    """Points on the surface of trunk, head and legs lie in the column."""
    body = Body(stature=1.7)
    column = body.column
    draw = np.random.default_rng(0)
    for capsule in body.capsules:
        along = draw.uniform(size=(2000, 1))
        axis = np.array(capsule.start) * (1 - along) + np.array(capsule.end) * along
        out = draw.normal(size=(2000, 3))
        point = axis + capsule.radius * out / np.linalg.norm(out, axis=1, keepdims=True)
        foot = np.clip(point[:, 2], column.start[2], column.end[2])
        away = np.hypot(np.hypot(point[:, 0], point[:, 1]), point[:, 2] - foot)

        assert np.max(away) <= column.radius + 1e-9, capsule.name


def test_no_elbow_leaves_its_room():
    """Elbows of random arms stay within the room round the line from shoulder to hand."""
    body = Body(stature=1.75)
    draw = np.random.default_rng(3)
    n, length = 20_000, body.arm_length
    upper = length * draw.uniform(0.4, 0.6, n)
    turn = draw.uniform(0, np.pi, n)
    elbow = np.stack([upper, np.zeros(n)], axis=1)
    hand = elbow + (length - upper)[:, None] * np.stack([np.cos(turn), np.sin(turn)], axis=1)
    span = np.linalg.norm(hand, axis=1)
    along = np.clip(np.sum(elbow * hand, axis=1) / span**2, 0, 1)
    away = np.linalg.norm(elbow - along[:, None] * hand, axis=1)

    assert np.all(away <= body.elbow_room(span) + 1e-12)


def test_elbow_room_changes_no_faster_than_said():
    body = Body(stature=1.75)
    span = np.linspace(0.0, body.arm_length * 1.2, 100_001)
    slope = np.abs(np.diff(body.elbow_room(span)) / np.diff(span))

    assert slope.max() <= body.elbow_slope + 1e-9


MEAN = Body(stature=1.7562)  # men's mean: lengths are then the survey's own, in metres
LIMB = 1.7562 / 1.756  # radii that were taken at a stature of 1.756 m


def test_every_part_of_the_mean_man_has_the_survey_s_size():
    """ANSUR II, means of men in mm, and one standard deviation more for the trunk's breadths (bodies.py)."""
    depth = (254.5 + 25.0) / 2000
    chest, hip = (289.0 + 18.0) / 2000 - depth, (343.0 + 22.0) / 2000 - depth
    yoke, across = 0.055 * LIMB, 0.4157 / 2
    low, waist, high = 0.846 + depth / 2, 1.056, 1.4407 - depth
    head, chin = 0.197 / 2, 1.7562 * 0.87
    neck = 0.398 / (2 * np.pi)
    thigh, shank = 0.1 * LIMB, 0.062 * LIMB
    expected = [
        ("trunk", (-chest, 0, waist), (-chest, 0, high), depth),
        ("trunk", (chest, 0, waist), (chest, 0, high), depth),
        ("trunk", (-hip, 0, low), (-hip, 0, waist), depth),
        ("trunk", (hip, 0, low), (hip, 0, waist), depth),
        ("trunk", (-(across - yoke), 0, 1.4407 - yoke), (across - yoke, 0, 1.4407 - yoke), yoke),
        ("head", (0, 0, chin), (0, 0, 1.7562 - head), head),
        ("neck", (0, 0, 1.4407 - neck), (0, 0, chin), neck),
        ("leg", (-thigh, 0, 0.495), (-thigh, 0, 0.846), thigh),
        ("leg", (-thigh, 0, shank), (-thigh, 0, 0.495), shank),
        ("leg", (thigh, 0, 0.495), (thigh, 0, 0.846), thigh),
        ("leg", (thigh, 0, shank), (thigh, 0, 0.495), shank),
    ]
    assert [capsule.name for capsule in MEAN.capsules] == [name for name, *_ in expected]
    for capsule, (_, start, end, radius) in zip(MEAN.capsules, expected, strict=True):
        assert_allclose(capsule.start, start, atol=1e-12)
        assert_allclose(capsule.end, end, atol=1e-12)
        assert capsule.radius == pytest.approx(radius, rel=1e-12)


def test_shoulders_arms_and_what_others_keep_clear_of():
    """The same source: acromial height, biacromial and bideltoid breadth, arm to the grip."""
    assert_allclose(MEAN.shoulder("right"), [0.4157 / 2, 0, 1.4407])
    assert_allclose(MEAN.shoulder("left"), [-0.4157 / 2, 0, 1.4407])
    assert MEAN.half_shoulder == pytest.approx(0.4157 / 2)
    assert MEAN.half_breadth == MEAN.girth == pytest.approx(0.5104 / 2)
    assert MEAN.arm_length == pytest.approx(0.6843)
    assert MEAN.overhead_grip == pytest.approx(1.4407 + 0.6843)
    assert MEAN.limb_radius == pytest.approx(0.065 * LIMB)
    assert MEAN.hip_height == pytest.approx(0.53 * 1.7562)
    assert MEAN.neck_height == MEAN.shoulder_height == pytest.approx(1.4407)
    assert MEAN.height == 1.7562
    column = MEAN.column
    assert (column.name, column.start) == ("body", (0.0, 0.0, 0.0))
    assert_allclose(column.end, [0, 0, 1.7562 - 0.2552])
    assert column.radius == MEAN.girth
    assert MEAN.leaning_top == pytest.approx(1.7562 - 0.197 / 2)
    assert Body(stature=1.7562, grip_overhead=2.2).overhead_grip == 2.2


def test_a_shoulder_gives_in_a_box_that_grows_no_further_with_stature():
    """6 cm forward, 3 back, 4.5 up, 2 in at the mean stature (Kapandji, from memory); under 8 cm across."""
    low, high = MEAN.shoulder_give
    assert_allclose(low, [-0.02, -0.03, 0.0])
    assert_allclose(high, [0.0, 0.06, 0.045])
    assert_allclose(Body(stature=2.0).shoulder_give, (low, high))
    assert_allclose(Body(stature=0.8781).shoulder_give, (low / 2, high / 2))
    corner = np.maximum(np.abs(low), np.abs(high))
    assert np.linalg.norm(corner) < 0.08


def test_room_and_slope_of_an_elbow_by_the_ellipse():
    """Short half-axis ½√(L² − s²), 8 cm at least; its slope s/(2√(L² − s²)) is largest at the least room."""
    length = MEAN.arm_length
    assert MEAN.elbow_room(0.0) == pytest.approx(length / 2)
    assert MEAN.elbow_room(0.6 * length) == pytest.approx(0.4 * length)
    assert_allclose(MEAN.elbow_room([length, 2 * length]), 0.08)
    longest = np.sqrt(length**2 - 0.16**2)
    assert MEAN.elbow_room(longest) == pytest.approx(0.08)
    assert MEAN.elbow_slope == pytest.approx(longest / (2 * 0.16))


@pytest.mark.parametrize(
    ("name", "low", "high", "seated"),
    [
        ("stature", 0.8, 2.6, False),
        ("arm", 0.2 * 1.8, 0.6 * 1.8, False),
        ("shoulder_top", 0.6 * 1.8, 1.8, False),
        ("grip_overhead", 0.9 * 1.8, 1.6 * 1.8, False),
        ("arm", 0.2 * 1.8, 0.6 * 1.8, True),
        ("shoulder_top", 0.35 + 0.25 * 1.8, 0.70 + 0.45 * 1.8, True),
        ("grip_overhead", 0.35 + 0.45 * 1.8, 0.70 + 1.05 * 1.8, True),
    ],
)
def test_measures_are_believed_between_their_limits_and_no_further(name, low, high, seated):
    """Shares of stature, and a seat of 0.35 to 0.70 m (bodies.py)."""
    for value in (low, high):
        given = {"stature": 1.8, "seated": seated, name: value}
        assert getattr(Body(**given), name) == value
    for value in (low * 0.9999, high * 1.0001):
        with pytest.raises(ValueError, match=f"{name} must be"):
            Body(**{"stature": 1.8, "seated": seated, name: value})


def test_every_part_of_the_mean_man_in_a_chair():
    """Sitting height 918, acromial height sitting 604 mm, seat 0.50 m; legs and chair as wheelchair.py states."""
    body = Body(stature=1.7562, seated=True)
    depth, thigh, shank, foot = (254.5 + 25.0) / 2000, 0.1 * LIMB, 0.062 * LIMB, 0.045
    assert body.shoulder_height == pytest.approx(0.5 + 0.604)
    assert body.height == pytest.approx(0.5 + 0.918)
    assert body.hip_height == pytest.approx(0.53 * 1.7562 - (1.7562 - 1.418))
    assert Body(stature=1.7562, seated=True, shoulder_top=1.2).height == pytest.approx(1.2 + 0.314)
    low = next(capsule for capsule in body.trunk[2:])
    assert low.start[2] == pytest.approx(0.5 + depth)
    assert low.end[2] == pytest.approx(1.056 - (1.7562 - 1.418))
    kneecap, rest = 0.617 - depth, 0.07
    shin = kneecap - shank
    expected = []
    for x in (-thigh, thigh):
        expected += [
            ("leg", (x, 0, 0.5 + thigh), (x, kneecap - thigh, 0.5 + thigh), thigh),
            ("leg", (x, shin, 0.5 + 2 * thigh - shank), (x, shin, rest + shank), shank),
            ("leg", (x, shin, rest + foot), (x, shin + 0.75 * 0.271 - foot, rest + foot), foot),
        ]
    for x in (-0.295, 0.295):
        for k in range(11):
            turn = np.pi * (k / 10 - 0.5)
            half, height = 0.268 * np.cos(turn), 0.323 + 0.268 * np.sin(turn)
            expected.append(("wheel", (x, -half, height), (x, half, height), 0.055))
    for (y, z), radius in (
        ((0, 0.323), 0.04), ((shin + foot, rest - 0.02), 0.02), ((-depth - 0.02, 0.8), 0.02),
    ):  # fmt: skip
        expected.append(("chair", (-0.2, y, z), (0.2, y, z), radius))
    for x in (-0.2, 0.2):
        expected.append(("chair", (x, shin - 0.12, 0.06), (x, shin - 0.12, 0.44), 0.06))
    assert len(body.legs) == len(expected)
    for capsule, (name, start, end, radius) in zip(body.legs, expected, strict=True):
        assert capsule.name == name
        assert_allclose(capsule.start, start, atol=1e-9)
        assert_allclose(capsule.end, end, atol=1e-9)
        assert capsule.radius == pytest.approx(radius)
    toes = np.hypot(thigh, shin + 0.75 * 0.271 - foot) + foot
    assert body.girth == pytest.approx(max(np.hypot(0.35, 0.6), toes))
    head = 0.197 / 2
    room = (body.girth - head) ** 2 - (0.15 * 1.7562) ** 2
    assert body.column.end[2] == pytest.approx(1.418 - head - np.sqrt(room))
    short = Body(stature=0.8, seated=True)
    assert short.girth == pytest.approx(np.hypot(0.35, 0.6))
    tall = Body(stature=2.3, seated=True)  # legs that hang lower than the footrest may
    assert min(
        end[2] for c in tall.legs if c.name == "leg" for end in (c.start, c.end)
    ) == pytest.approx(min(0.05 + foot, 0.05 + 0.062 / 1.756 * 2.3))


def test_the_survey_s_percentiles():
    """ANSUR II, public rows: stature, acromial height, arm to the grip, overhead grip, in mm, copied again."""
    rows = {
        "man": {5: (1648, 1339, 631, 1975), 50: (1755, 1439, 684, 2123), 95: (1870, 1546, 740, 2281)},
        "woman": {
            5: (1525, 1242, 577, 1824), 50: (1626, 1332, 627, 1960), 95: (1740, 1433.8, 684, 2112),
        },
    }  # fmt: skip
    for sex, percentiles in rows.items():
        for percentile, expected in percentiles.items():
            assert_allclose(SURVEY[sex, percentile], np.array(expected) / 1000, rtol=1e-12)
            body = Body.of_survey(sex, percentile)
            found = (body.stature, body.shoulder_height, body.arm_length, body.overhead_grip)
            assert_allclose(found, np.array(expected) / 1000, rtol=1e-12)
    assert len(SURVEY) == 6
    assert Body().stature == 1.755
    assert not Body().seated
