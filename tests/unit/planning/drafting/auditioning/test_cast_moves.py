"""What of a file is what a draft would dance."""

from types import SimpleNamespace

import pytest

from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.auditioning.cast_moves import likeness


def block(**more):
    given = {"title": "pendulum", "timing": "split", "direction": "same", "cycle": 2.0, **more}
    parameters = given.pop("parameters", {})
    part = SimpleNamespace(parameters=parameters)
    return SimpleNamespace(hands={"left": part, "right": part}, **given)


@pytest.mark.parametrize(
    ("more", "likes"),
    [
        ({}, 1),  # in another size
        ({"parameters": {"amplitude": 30}}, 2),
        ({"parameters": {"amplitude": 45.0}}, 1),
        ({"cycle": 4.0, "parameters": {"amplitude": 30}}, 0),
        ({"title": "carry"}, 0),
        ({"timing": "together"}, 0),
        ({"direction": "opposite"}, 0),
    ],
)
def test_a_move_is_known_again_by_what_is_danced_and_how_large(more, likes):
    small = DraftMove(
        pattern="pendulum", timing="split", direction="same", cycle=2.0, usual=True,
        drawn="small", sized=("amplitude", 30.0),
    )  # fmt: skip
    assert likeness(small, block(**more)) == likes
    assert likeness(small, None) == 0


def test_a_size_is_known_again_as_a_file_writes_it():
    large = DraftMove(
        pattern="extension", timing="split", direction="same", cycle=1.0, usual=True,
        drawn="large", sized=("hand_radius", 0.45),
    )  # fmt: skip
    there = {"title": "extension", "cycle": 1.0}
    assert likeness(large, block(**there, parameters={"hand_radius": "45 cm"})) == 2
    assert likeness(large, block(**there, parameters={"hand_radius": "50 cm"})) == 1
    assert likeness(large.as_usual, block(**there)) == 2
