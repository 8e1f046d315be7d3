"""Parts of a performer and the points between which they run, typed again."""

from sequencer.motion.performers.body_parts import (
    FIRST_POINT,
    FRONT_PARTS,
    N_FRONT,
    N_POINTS,
    PARTS,
    REAR,
    parts_of,
)

# points: 0 foot, 1 top; left 2 shoulder, 3 hand, 4 far end; right 5, 6, 7; rear ends 8 and 9
EXPECTED = [
    ("body", "body", None, 0, 1),
    ("left arm", "arm", "left", 2, 3),
    ("left tether", "tether", "left", 8, 4),
    ("left head", "head", "left", 4, 4),
    ("right arm", "arm", "right", 5, 6),
    ("right tether", "tether", "right", 9, 7),
    ("right head", "head", "right", 7, 7),
    ("left rear end", "rear", "left", 8, 8),
    ("right rear end", "rear", "right", 9, 9),
]


def test_points_and_parts():
    assert (N_POINTS, N_FRONT) == (10, 8)
    assert dict(FIRST_POINT) == {"left": 2, "right": 5}
    assert dict(REAR) == {"left": 8, "right": 9}
    assert [tuple(part) for part in PARTS] == EXPECTED


def test_parts_of_props_that_begin_at_the_hand():
    """Their tethers run from the hands, and there are no rear ends."""
    front = [list(part) for part in EXPECTED[:7]]
    front[2][3], front[5][3] = 3, 6
    assert [list(part) for part in FRONT_PARTS] == front
    assert parts_of(8) == FRONT_PARTS
    assert parts_of(10) == PARTS
