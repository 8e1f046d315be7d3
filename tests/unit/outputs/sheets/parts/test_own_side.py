"""The stage from each of its sides, against a person's own left and right worked out by hand."""

import pytest

from sequencer.outputs.sheets.page.wording import NB
from sequencer.outputs.sheets.parts.own_side import own_side

# 16 m wide and 12 m deep; X to the audience's right, Y upstage.
STAGE = ((-8, 0), (8, 0), (8, 12), (-8, 12))
AUDIENCE, UPSTAGE = (0, -20), (0, 40)


@pytest.mark.parametrize(
    ("at", "name", "ahead", "audience", "upstage"),
    [
        # Whoever looks upstage from the front has the audience behind; from stage left (the audience's right) the
        # audience is on the left hand, from stage right on the right.
        ((0, -1), "front", (0, 6), "behind you", "straight ahead"),
        ((1, 14), "back", (0, 6), "straight ahead", "behind you"),
        ((9, 6), "stage left", (0, 6), "on your left", "on your right"),
        ((-6.2, 9.5), "stage right", (8, 9.5), "on your right", "on your left"),
    ],
)
def test_each_side_has_its_own_left_and_right(at, name, ahead, audience, upstage):
    side = own_side(STAGE, at)

    assert side.name == name
    assert side.direction(at, (ahead[0] if "stage" in name else at[0], ahead[1] if name in {"front", "back"} else at[1])) == "straight ahead"  # fmt: skip
    assert side.direction((0, 6), AUDIENCE) == audience
    assert side.direction((0, 6), UPSTAGE) == upstage


def test_a_view_is_turned_and_never_mirrored():
    """From stage left looking at (0, 6): upstage is on the right, and the far side ahead."""
    side = own_side(STAGE, (9, 6))
    (right, ahead), (x, y) = side.view(0, 10), side.view(0, 6)

    assert (right - x, ahead - y) == (4, 0)
    assert side.view(-3, 6)[1] - y == 3


@pytest.mark.parametrize(
    ("at", "words"),
    [
        # the middle of the stage right side is (-8, 6); from there upstage is on the left
        ((-6.2, 9.5), "3.5 m to the left of its middle, 1.8 m inside the edge"),
        ((0, -0.5), "at its middle, 0.5 m outside the edge"),
        ((8, 1.5), "4.5 m to the left of its middle, on the edge"),
        ((4, 12.5), "4.0 m to the left of its middle, 0.5 m outside the edge"),
    ],
)
def test_a_post_is_found_from_the_middle_of_its_side(at, words):
    assert own_side(STAGE, at).place_words(*at).replace(NB, " ") == words


def test_directions_go_by_eighths_and_what_is_close_has_none():
    side = own_side(STAGE, (0, -1))

    assert side.direction((0, 0), (3, 3)) == "ahead, to your right"
    assert side.direction((0, 0), (-3, -3)) == "behind you, to your left"
    assert side.direction((0, 0), (0.3, -0.3)) == "beside you"
