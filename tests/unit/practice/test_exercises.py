"""What there is to practise of a small show: whole bars, hardest first, figures by hand and against sampled motion."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.motion.laws.law import Bounds
from sequencer.outputs.practice_pages.practice_words import nothing_left
from sequencer.practice.exercises import _share, exercises
from sequencer.practice.practice_plan import practice_plan
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.practice_show import made_show
from tests.songs import even_song

SOLO = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 10 m, depth: 8 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast: [{name: Ada, stature: 1.70 m, prop: poi}]
timeline: [{from: 3.1, pattern: static-spin, beats: 8}]
"""


def own(who):
    return {each.title: each for each in exercises(made_show(), who)}


def test_every_kind_is_there_with_its_loop():
    """The link of beats 22 to 24 with two beats on either side is in bars 6 and 7: beats 20 to 28."""
    found = own("Ada")
    assert [(each.kind, title) for title, each in found.items()] == [
        ("join", "extension into static-spin"),
        ("join", "static-spin into pro-bend-3"),
        ("build", "pro-bend-3, two circles"),
        ("walk", "walk to deep in static-spin"),
        ("run", "the whole show"),
    ]
    assert [(each.start, each.end) for each in found.values()] == [
        (20, 28),
        (52, 60),
        (52, 68),
        (28, 44),
        (4, 68),
    ]


def test_who_is_lit_and_who_is_in_canon():
    """Ada burns in bars 3 to 12; the canon begins in bar 15."""
    assert {title: each.lit for title, each in own("Ada").items()} == {
        "extension into static-spin": True, "static-spin into pro-bend-3": False, "pro-bend-3, two circles": False,
        "walk to deep in static-spin": True, "the whole show": True,
    }  # fmt: skip
    assert not any(each.lit for each in own("Bo").values())
    assert [title for title, each in own("Bo").items() if each.canon] == [
        "static-spin into pro-bend-3", "pro-bend-3, two circles",
    ]  # fmt: skip


def test_a_walk_is_as_fast_as_its_law():
    """2 m in 8 beats of half a second: 0.5 m/s on average, 15/8 of that at most. Bo's 10 cm are a step, no walk."""
    walk = own("Ada")["walk to deep in static-spin"]
    assert walk.hardness == pytest.approx(0.9375, abs=1e-4)
    assert walk.why == "2.00 m in 8 counts, up to 0.9 m/s"
    assert not any(each.kind == "walk" for each in own("Bo").values())


def test_a_join_is_as_hard_as_its_link():
    """The share that is told bounds the sampled one, and is not far above it; limits as the show leaves them."""
    show = made_show()
    beats = np.linspace(22.0, 24.0, 4001)
    shares = []
    for trajectory in show.dancers[0].trajectories.values():
        motion = trajectory.at(beats)
        sizes = [
            np.linalg.norm(each, axis=-1).max()
            for each in (
                motion.hand_rate,
                motion.hand_acceleration,
                np.gradient(motion.tether_rate, beats, axis=0),
            )
        ]
        shares.append(max(sizes[0] * 2 / 6.0, sizes[1] * 4 / 80.0, sizes[2] / 160.0))
    told = own("Ada")["extension into static-spin"].hardness
    assert max(shares) <= told <= 1.5 * max(shares)


@pytest.mark.parametrize(
    ("speed", "acceleration", "turning", "share"),
    [
        (1.5, 1.0, 1.0, 0.5),  # 1.5 m a beat, two beats a second: 3 of 6 m/s
        (0.1, 15.0, 1.0, 0.75),  # 15 m/beat² are 60 of 80 m/s²
        (0.1, 1.0, 144.0, 0.9),  # of 160 rad/beat²
    ],
)
def test_the_largest_share_of_the_limits_counts(speed, acceleration, turning, share):
    bounds = Bounds(
        hand_speed=speed, hand_acceleration=acceleration, turn_rate=1.0, turn_acceleration=turning, hand_reach=0.5
    )  # fmt: skip
    assert _share(made_show(), 22.0, 24.0, bounds) == pytest.approx(share)


def test_who_spins_nothing_has_nothing_to_practise():
    still = replace(made_show(), blocks=(), read=None)
    assert exercises(still, "Ada") == ()
    plan = practice_plan(still, [], ("Ada",))
    assert nothing_left(plan) == "There is nothing to practise yet: nothing is spun."


def test_a_loop_ends_on_a_beat_even_where_the_song_does_not():
    """A track of 47.8 s has 95.6 beats of half a second: the last whole one is 95, the fourth of bar 24."""
    text = SOLO.replace("beats: 8", "beats: 87")
    show = staged(
        show_from_document(parse_document(text, "solo.yaml")), even_song(beats=96, duration=47.8)
    )
    (run,) = exercises(show, "Ada")
    assert (show.position(run.start), show.position(run.end)) == ("2.1", "24.4")


def test_what_returns_is_one_exercise():
    """The same join at a second place: the harder one's loop, and where it is danced again."""
    from sequencer.practice import exercises as module

    first = own("Ada")["extension into static-spin"]
    again = replace(first, start=60.0, end=68.0, hardness=0.9, lit=False)
    (one,) = module._once_each([first, again])
    assert (one.start, one.hardness, one.also, one.lit) == (60.0, 0.9, ((20.0, 28.0),), True)
