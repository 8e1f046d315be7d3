import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body


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
