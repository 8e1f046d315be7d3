from itertools import pairwise

import pytest

from sequencer.outputs.sheets.parts.cues import (
    burns_of,
    cues_of,
    early_clock,
    is_lit,
    late_clock,
    place_at,
    standing_at,
)
from sequencer.staging.on_floor.own_walks import own_walks


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
    """Łucja is lit first of four, before the track: 4 · 5 s, and 3 m of slow walk between each two of them."""
    cues = cues_of(lantern, "Łucja")
    kinds = [cue.kind for cue in cues]

    assert kinds[:3] == ["light", "wait", "move"]
    assert lantern.seconds(cues[0].start) == pytest.approx(8.5 - 20 - 9 / 1.0668)
    assert (cues[0].burn.lit_by, cues[1].waiting) == ("Mira", "first")
    assert kinds.count("light") == kinds.count("out") == 2
    assert kinds[-1] == "end"


def test_cues_know_whether_they_burn(lantern):
    for cue in cues_of(lantern, "Noa עברית"):
        assert cue.lit is is_lit(lantern, "Noa עברית", cue.start)
    (burn,) = burns_of(lantern, "Noa עברית")
    alight, out = (
        float(lantern.tempo.beats_from_seconds(each)) for each in (burn.alight_s, burn.out_s)
    )
    assert [is_lit(lantern, "Noa עברית", beat) for beat in (alight - 0.1, alight)] == [False, True]
    assert [is_lit(lantern, "Noa עברית", beat) for beat in (out - 0.1, out)] == [True, False]
    assert alight < burn.start < burn.end < out


def test_a_time_is_never_read_too_late():
    """A cue is rounded down, before the track too; the time by which something is over is rounded up."""
    assert [early_clock(s) for s in (-30.2, -30.0, -0.4, 0.9, 61.0)] == [
        "−0:31",
        "−0:30",
        "−0:01",
        "0:00",
        "1:01",
    ]
    assert [late_clock(s) for s in (-30.2, 0.2, 61.0, 61.01)] == ["−0:30", "0:01", "1:01", "1:02"]


def test_a_rest_while_lit_is_before_the_first_or_after_the_last_move_or_neither(rounds, tmp_path):
    """Łucja rests between two blocks of her burn, and after the last one until she is out."""
    text = rounds.ROUND.replace('until: "53.1"', 'until: "54.1"').replace(
        '{pattern: pro-bend-3, from: "53.1"', '{pattern: pro-bend-3, from: "57.1"'
    ).replace('{phrase: opening, from: "5.1", repeat: 2}', '{phrase: opening, from: "5.1"}')  # fmt: skip
    show = rounds.show(tmp_path, text)
    rests = [cue.waiting for cue in cues_of(show, "Łucja") if cue.kind == "wait" and cue.lit]
    assert rests[0] == "first"
    assert "last" in rests
    assert (
        show.position(next(c.start for c in cues_of(show, "Łucja") if c.waiting == "last"))
        == "42.3"
    )


def test_canon_shifts_a_cue_by_its_beats(lantern):
    starts = [
        next(c.start for c in cues_of(lantern, who) if c.block and c.block.title == "pro-bend-4")
        for who in lantern.show.names
    ]

    assert [round(s - starts[0], 6) for s in starts] == [0.0, 2.0, 4.0, 6.0]


def test_walks_are_cues_with_their_goal(lantern):
    first = next(cue for cue in cues_of(lantern, "Søren") if cue.kind == "walk")

    assert (first.formation, first.beats, first.spot) == ("Diamond", 8.0, (-3.0, 4.5, 30.0))
    assert [walk.standing.formation for walk in own_walks("Søren", lantern.standings)] == [
        "Diamond",
        "Two by two",
    ]


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
