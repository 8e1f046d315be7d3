"""Build steps as pictures: nothing is seen edge-on, arrows go the way of the head, both hands are there."""

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.outputs.station_picture import HandAt, flat, station_picture, window

BODY = Body(stature=1.70)
PLANES = {"wheel": (1.0, 0.0, 0.0), "wall": (0.0, 1.0, 0.0), "floor": (0.0, 0.0, 1.0)}


def at(plane, sign=1.0, **more):
    n = sign * np.array(PLANES[plane])
    tether = np.array([0.0, 0.0, 1.0]) if plane != "floor" else np.array([0.0, 1.0, 0.0])
    return HandAt(
        side="right", hand=np.array([0.3, 0.35, 1.2]), tether=tether, plane=n, length=0.5, **more
    )


def _cross(a, b):
    """Positive if b is anticlockwise of a on paper."""
    return a[0] * b[1] - a[1] * b[0]


def ring(strokes, tone="ink"):
    return np.concatenate(
        [s.points for s in strokes if s.kind == "line" and s.tone == tone and len(s.points) == 2]
    )


@pytest.mark.parametrize("plane", PLANES)
def test_no_plane_is_seen_edge_on(plane):
    """A ring of 1 m across is an ellipse: its narrow side is never less than a third of a metre."""
    points = ring(station_picture([at(plane)], BODY))
    spread = np.linalg.svd(points - points.mean(axis=0), compute_uv=False)
    assert spread[1] / spread[0] > 0.33


@pytest.mark.parametrize("plane", PLANES)
def test_the_arrows_go_the_way_of_the_head(plane):
    """Forward and backward differ: each arrow points along the head's velocity, plane times tether."""
    for sign in (1.0, -1.0):
        hand = at(plane, sign)
        arrows = [s for s in station_picture([hand], BODY) if s.kind == "fill" and s.tone == "ink"]
        assert len(arrows) == 3
        middle = flat(hand.hand)
        normal = _cross(
            *(flat(np.array(v)) for v in (hand.tether, np.cross(hand.plane, hand.tether)))
        )
        for arrow in arrows:
            tip, rear = arrow.points[0], arrow.points[1:].mean(axis=0)
            turned = _cross((tip + rear) / 2 - middle, tip - rear)
            assert np.sign(turned) == np.sign(normal)


def test_both_hands_and_their_arms_are_drawn():
    one = at("wheel")
    other = HandAt(
        side="left", hand=np.array([-0.3, 0.35, 1.2]), tether=np.array([0.0, 0.0, -1.0]),
        plane=np.array(PLANES["wheel"]), length=0.5, leads=False,
    )  # fmt: skip
    strokes = station_picture([one, other], BODY)
    arms = [s for s in strokes if s.tone == "arm"]
    assert len(arms) == 2
    for hand, arm in zip((other, one), arms, strict=True):
        assert np.allclose(arm.points[-1], flat(hand.hand))
    heads = {s.kind: s.points[0] for s in strokes if s.kind in {"dot", "ring"} and s.width > 0.04}
    assert np.allclose(heads["dot"], flat(one.hand + 0.5 * one.tether))
    assert np.allclose(heads["ring"], flat(other.hand + 0.5 * other.tether))


def test_the_window_holds_every_ring():
    pictures = [station_picture([at(plane)], BODY) for plane in PLANES]
    x, y, half = window(pictures, BODY)
    for picture in pictures:
        points = ring(picture)
        assert np.all(np.abs(points - [x, y]) < half)
