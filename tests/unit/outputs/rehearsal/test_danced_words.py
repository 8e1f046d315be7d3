"""What the rehearsal page says of a block, and of its mirror image."""

import re
from dataclasses import replace

import numpy as np
import pytest

from sequencer.findings import Report
from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.rehearsal.danced_words import (
    danced_words,
    mirrored_station,
    mirrored_words,
)
from sequencer.outputs.rehearsal.page_data import show_document
from sequencer.outputs.rehearsal.pattern import pattern_document
from tests.sites import site

MOVES = (
    ("extension", ""), ("antispin-flower-3", ", with: {hand_radius: 25 cm}"), ("corkscrew", ""), ("three-beat-weave", ", with: {width: 0.8}"),
    ("pro-bend-4", ", with: {start: -1}"), ("extension-with-antispin", ""),
)  # fmt: skip
STEPS = "".join(
    f"  - {{who: Wren, from: {3 + 16 * k}.1, pattern: {name}, beats: 12{more}, note: left foot first}}\n"
    f"  - {{who: Wren, from: {11 + 16 * k}.1, pattern: {name}, beats: 12{more}, mirrored: true}}\n"
    for k, (name, more) in enumerate(MOVES)
)


@pytest.fixture(scope="module")
def show():
    return site(("fire:\n", f"timeline:\n{STEPS}fire:\n"))


def test_the_image_is_what_the_mirrored_move_is(show):
    """The image's words, made from words, against those of the laws of the move danced mirrored; right is told before left."""
    wren = show.dancers[0]
    blocks = [block for block in show.blocks_of("Wren") if not block.link]
    seen = set()
    for own, image in zip(blocks[::2], blocks[1::2], strict=True):
        made = [mirrored_words(line) for line in danced_words(own, wren)]
        true = danced_words(image, wren)
        assert len(made) == len(true) > 2
        for one, other in zip(made, true, strict=True):
            assert sorted(re.findall(r"\w+", one)) == sorted(re.findall(r"\w+", other))
        seen.add(made[0] == danced_words(own, wren)[0])
    assert seen == {
        True,
        False,
    }  # weaves go forward in the image too; circles go the other way round


def test_words_are_those_of_dancers_and_not_of_the_file(show):
    document = show_document(show, Report(show="s"))
    text = " | ".join(line for lines in document["texts"] for line in lines)
    for jargon in ("start -1", "hand radius", "width 0.8", "together time", "bridge", "cycle"):
        assert jargon not in text
    assert "25 cm in radius" in text
    assert "80 % as wide as usual" in text


def test_what_a_person_wrote_stays_in_the_image(show):
    document = show_document(show, Report(show="s"))
    pairs = list(zip(document["texts"], document["mirrored"], strict=True))
    noted = [(own, image) for own, image in pairs if "left foot first" in own]
    assert noted
    for own, image in noted:
        assert own[0] == image[0]  # the title
        assert image[-1] == own[-1] == "left foot first"


@pytest.mark.parametrize(
    ("text", "image"),
    [
        ("right hand clockwise; left anticlockwise", "left hand anticlockwise; right clockwise"),
        ("right left-turn, on the right", "left left-turn, on the left"),
        ("forward, wheel plane", "forward, wheel plane"),
    ],
)
def test_words_of_the_image(text, image):
    assert mirrored_words(text) == image
    assert mirrored_words(image) == text


def test_stations_of_the_image():
    """The clock is read the other way round, but for the wheel plane, which is seen from the side."""
    step = one_pattern("pro-bend-3").stations()[1]
    image = mirrored_station(step)
    assert np.allclose(image.hand, step.hand * [-1, 1, 1])
    # an axis is the cross product of two vectors of the plane
    a, b = np.array([0.3, 0.2, 0.9]), np.array([-0.5, 0.7, 0.1])
    flip = np.array([-1.0, 1.0, 1.0])
    turned = mirrored_station(replace(step, plane=np.cross(a, b)))
    assert np.allclose(turned.plane, np.cross(a * flip, b * flip))

    own, other = pattern_document(one_pattern("pro-bend-3"))["stations"][1][1:]
    assert own.startswith(
        "step 2 · hand at 4 o’clock · anticlockwise, wall plane · next: hand to 2 o’clock"
    )
    assert other.startswith(
        "step 2 · hand at 8 o’clock · clockwise, wall plane · next: hand to 10 o’clock"
    )
    turned_round = pattern_document(one_pattern("pro-bend-3", {"start": -1}))["stations"]
    pairs = [(own, image) for _, own, image in turned_round if "across to the left" in own]
    assert pairs
    assert all("across to the right" in image for _, image in pairs)  # as a left hand says it
