"""Build steps are told as the show dances them: its cycle, its bodies, where the search placed the hands."""

import pytest

from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.steps_sheet import steps_sheet, toroids
from sequencer.outputs.words.place_words import block_place

SET = "{pattern: pro-bend-4, with: {hand_radius: 15 cm, from: 270}, cycle: 4, "


def edition(rounds, folder, pattern=SET):
    text = rounds.ROUND.replace("{pattern: pro-bend-4, ", pattern)
    assert text != rounds.ROUND or pattern == "{pattern: pro-bend-4, "
    return Edition(staged=rounds.show(folder, text), report=rounds.report())


def test_one_build_for_all_who_build_it_alike(rounds, tmp_path):
    """Their hands lie in different places; their stations, seen from the circle's middle, are the same."""
    show = edition(rounds, tmp_path)
    danced = [b for b in show.staged.blocks if b.title == "pro-bend-4"]
    builds = [build for build in toroids(show) if build.pattern == "pro-bend-4"]

    assert len({repr(b.hands["right"].fitted) for b in danced}) > 1
    assert len(builds) == 1
    dancers = {d.name: d for d in show.staged.dancers}
    for block in danced:
        place = block_place(block, dancers[block.who])
        told = [words for who, words in builds[0].places if who == block.who]
        assert any(words.startswith(place) for words in told) == bool(place)


def test_steps_count_the_blocks_own_cycle(rounds, tmp_path):
    quick = edition(rounds, tmp_path, SET.replace("cycle: 4", "cycle: 3.2"))
    build = next(b for b in toroids(quick) if b.pattern == "pro-bend-4")

    assert build.stations[-1].beat == pytest.approx(3.2)


def test_the_hand_is_where_it_is_danced(rounds, tmp_path):
    """The first station of a build against the law of who is drawn, at the block's start."""
    show = edition(rounds, tmp_path)
    build = next(b for b in toroids(show) if b.pattern == "pro-bend-4")
    block = next(b for b in show.staged.blocks if b.title == "pro-bend-4")
    dancer = next(d for d in show.staged.dancers if d.name == block.who)
    span = next(s for s in dancer.trajectories["right"].spans if s.label == "pro-bend-4")
    hand = span.law.at([0.5 * block.cycle])

    assert (block.mirrored, block.shift) == (False, 0.0)
    assert build.body == dancer.body
    assert build.length == dancer.props["right"].length
    assert build.stations[4].hand == pytest.approx(hand.hand[0], abs=1e-9)


def test_every_placing_stands_under_its_build(rounds, tmp_path):
    show = edition(rounds, tmp_path)
    words = [
        "".join(span.text for span in getattr(part, "spans", ())).replace("\u00a0", " ")
        for part in steps_sheet(show).story(Page.of("a4"))
    ]
    for build in toroids(show):
        for who, place in build.places:
            assert any(
                line.startswith((f"{who}: ", f"{who}, mirrored: ")) and place in line
                for line in words
            ), (who, place)
