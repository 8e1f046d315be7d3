"""Where a pattern was placed, in a performer's words, against centres worked out by hand."""

from dataclasses import replace

import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.outputs.sheets.parts.changes import cue_key
from sequencer.outputs.sheets.parts.cues import Cue
from sequencer.outputs.words.block_words import block_words
from sequencer.outputs.words.place_words import block_place, lie_words, new_places
from sequencer.staging.staged import Block, HandWords

BODY = Body(stature=1.7)
CIRCLE = {"plane": "wall", "hand_radius": 0.1}
# circle_centre for this body: 0.53 m ahead at the right, 0.39 m at the left, 0.19 m aside, shoulder height
USUAL = "circles 10 cm in radius, centred 20 cm out to each side, at shoulder height"


def block(start=0.0, *, name="orbit", **found):
    hands = {
        side: HandWords(pattern=name, parameters=CIRCLE, fitted=found.get(side, {}))
        for side in ("left", "right")
        if side in found or not found
    }
    return Block(
        who="Ada", start=start, end=start + 8.0, hands=hands, timing="split", direction="same",
        cycle=4.0, shift=0.0, mirrored=False, link=False, phrase=None, note="", path=(),
    )  # fmt: skip


def ada(*blocks):
    sides = [side for side in ("left", "right") if any(side in b.hands for b in blocks)]

    def span(b, side):
        part = b.hands[side]
        law = law_for(part.pattern, part.values, side=side, body=BODY, beats=b.cycle)
        return Span(start=b.start, end=b.end, law=law, origin=b.start, kind="block", label="")

    return Dancer(
        name="Ada",
        body=BODY,
        props=dict.fromkeys(sides, Prop(length=0.5, mass=0.2, wick_radius=0.05)),
        trajectories={
            side: Trajectory(tuple(span(b, side) for b in blocks if side in b.hands))
            for side in sides
        },
        floor=WalkPath((0.0, 3.0), 0.0),
    )


def test_the_usual_place_is_the_one_that_the_words_below_start_from():
    right, left = (circle_centre("wall", side, BODY, 0.1) for side in ("right", "left"))

    assert right[:2] == pytest.approx([0.19, 0.53], abs=0.02)
    assert left[:2] == pytest.approx([-0.19, 0.39], abs=0.02)
    assert right[2] == left[2] == BODY.shoulder_height


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (
            {"right": {"across": 0.3}, "left": {"across": 0.3, "ahead": 0.14}},
            "circles 10 cm in radius, centred 55 cm ahead, 50 cm out to each side, at shoulder height",
        ),
        (
            {"right": {"up": 0.1}, "left": {"up": -0.1, "ahead": 0.14}},
            ("circles 10 cm in radius, centred 55 cm ahead, 20 cm out to each side; "
             "right 10 cm above shoulder height; left 10 cm below shoulder height"),
        ),
        (
            {"right": {"across": -0.19, "ahead": -0.53, "up": -0.2}},
            ("circle 10 cm in radius, centred level with your body, on your middle line, "
             "20 cm below shoulder height"),
        ),
        (
            {"right": {"across": -0.4, "ahead": -0.6}},
            "circle 10 cm in radius, centred 5 cm behind you, 20 cm to the left, at shoulder height",
        ),
        (
            {"right": {"across": -0.4}, "left": {"across": -0.4, "ahead": 0.14}},
            ("circles 10 cm in radius, centred 55 cm ahead, 20 cm across to the other side, "
             "at shoulder height"),
        ),
        (
            {"right": {"from": 45.0}},
            ("circle 10 cm in radius, centred 55 cm ahead, 20 cm to the right, at shoulder height, "
             "starting at the top right"),
        ),
    ],
)  # fmt: skip
def test_places_of_a_circle(found, words):
    one = block(**found)

    assert block_place(one, ada(one)) == words


@pytest.mark.parametrize("off", [0.05, -0.05])
def test_five_centimetres_are_not_worth_a_word(off):
    near = block(right={"up": off}, left={})
    far = block(right={"up": off * 1.02}, left={})

    assert block_place(near, ada(near)) == ""
    assert block_place(far, ada(far))


@pytest.mark.parametrize(
    ("radius", "words"),
    [(0.062, "circle 6 cm in radius"), (0.144, "circle 14 cm"), (0.17, "circle 15 cm"), (0.0, "hand")],
)  # fmt: skip
def test_radii(radius, words):
    one = block(right={"up": 0.2})
    part = replace(one.hands["right"], parameters={"plane": "wall"}, fitted={"hand_radius": radius})
    one = replace(one, hands={"right": part})

    assert block_place(one, ada(one)).startswith(words)


def test_what_the_show_file_sets_is_not_told_as_found():
    one = block()
    moved = {**CIRCLE, "up": 0.3}
    one = replace(one, hands={s: replace(p, parameters=moved) for s, p in one.hands.items()})

    assert block_place(one, ada(one)) == ""
    assert "30 cm above shoulder height" in lie_words(one, ada(one))


def test_a_place_is_told_when_it_changes_only():
    out = {"right": {"across": 0.3}, "left": {"across": 0.3}}
    up = {"right": {"up": 0.3}, "left": {"up": 0.3}}
    blocks = [
        block(0.0), block(8.0, **out), block(16.0, name="static-spin"), block(24.0, **out),
        block(32.0, **up), block(40.0, **out), block(48.0), block(56.0),
    ]  # fmt: skip
    spin = {s: HandWords(pattern="static-spin", parameters={}) for s in ("left", "right")}
    blocks[2] = replace(blocks[2], hands=spin)
    told = new_places(ada(*blocks), tuple(blocks))

    assert list(told) == [8.0, 32.0, 40.0, 48.0]
    assert told[8.0] == told[40.0]
    assert told[48.0].startswith(USUAL)  # back in its usual place: to say nothing would mislead


def test_the_page_says_it_too():
    one = block(right={"across": 0.3}, left={"across": 0.3})
    dancer = ada(one)

    assert block_place(one, dancer) in block_words(one, dancer)
    assert "plane wall · hand radius 0.1" in block_words(one, dancer)  # as the file has it


@pytest.mark.parametrize(
    ("change", "seen"),
    [
        ({"across": 0.3}, False), ({"across": 0.3004}, False), ({"across": 0.33}, True),
        ({"across": 0.3, "from": 45.0}, True), ({}, True),
    ],
)  # fmt: skip
def test_another_place_is_a_change(rounds, tmp_path, change, seen):
    show = rounds.show(tmp_path)

    def key(found):
        cue = Cue(
            start=0.0, end=8.0, kind="move", lit=False, spot=(0.0, 3.0, 0.0), formation="line",
            section="", walking=False, block=block(right=found),
        )  # fmt: skip
        return cue_key(show, cue)

    assert (key({"across": 0.3}) != key(change)) == seen
