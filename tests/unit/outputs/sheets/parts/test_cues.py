from itertools import pairwise

import pytest

from sequencer.outputs.sheets.parts.cues import (
    cues_of,
    is_lit,
    place_at,
    standing_at,
    walks_of,
)


@pytest.fixture(scope="module")
def lantern(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("cues"))


def test_cues_cover_the_track_without_holes(lantern):
    """What takes time follows without a gap; walks run beside it."""
    for who in lantern.show.names:
        cues = [cue for cue in cues_of(lantern, who) if cue.kind in {"wait", "move", "link"}]

        assert lantern.seconds(cues[0].start) == pytest.approx(0.0, abs=1e-6)
        assert lantern.seconds(cues[-1].end) == pytest.approx(lantern.song.duration, abs=1e-6)
        for before, after in pairwise(cues):
            assert after.start == pytest.approx(before.end)


def test_every_block_of_the_show_is_a_cue(lantern):
    for who in lantern.show.names:
        assert [c.block for c in cues_of(lantern, who) if c.block] == list(lantern.blocks_of(who))


def test_fire_comes_before_the_move_it_lights(lantern):
    kinds = [cue.kind for cue in cues_of(lantern, "Łucja")]

    assert kinds[:3] == ["wait", "light", "move"]
    assert kinds.count("light") == kinds.count("out") == 2
    assert kinds[-1] == "end"


def test_cues_know_whether_they_burn(lantern):
    for cue in cues_of(lantern, "Noa עברית"):
        assert cue.lit is is_lit(lantern, "Noa עברית", cue.start)
    (span,) = lantern.lit_of("Noa עברית")
    assert is_lit(lantern, "Noa עברית", span.start)
    assert not is_lit(lantern, "Noa עברית", span.end)


def test_canon_shifts_a_cue_by_its_beats(lantern):
    starts = [
        next(c.start for c in cues_of(lantern, who) if c.block and c.block.title == "pro-bend-4")
        for who in lantern.show.names
    ]

    assert [round(s - starts[0], 6) for s in starts] == [0.0, 2.0, 4.0, 6.0]


def test_walks_are_cues_with_their_goal(lantern):
    first = next(cue for cue in cues_of(lantern, "Søren") if cue.kind == "walk")

    assert (first.formation, first.beats, first.spot) == ("Diamond", 8.0, (-3.0, 4.5, 30.0))
    assert [walk.formation for walk in walks_of(lantern, "Søren")] == ["Diamond", "Two by two"]


def test_a_formation_is_walked_to_and_then_held(lantern):
    walk = lantern.standings[1]

    assert standing_at(lantern, walk.walk + 1.0) == (walk, True)
    assert standing_at(lantern, walk.start) == (walk, False)
    assert standing_at(lantern, -0.5) == (lantern.standings[0], False)


def test_place_is_the_path_over_the_floor(lantern):
    assert place_at(lantern, "火花", 0.0) == (4.5, 2.5, 0.0)
    x, y, _ = place_at(lantern, "火花", lantern.standings[1].walk + 4.0)
    assert (x, y) == pytest.approx((2.25, 4.75))  # half-way of a straight walk
    with pytest.raises(ValueError, match="there is no 'X' in the cast"):
        place_at(lantern, "X", 0.0)
