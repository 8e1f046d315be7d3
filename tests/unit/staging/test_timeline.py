"""A show on its song: trajectories, mirrored hands, links, walks and fire."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.errors import InputError
from sequencer.geometry.posture import Posture
from sequencer.motion.fitting.fits import Fit
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-6, -9], [6, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.55}}
  - {name: Birch, stature: 1.7, prop: {tether: 0.55}}
formations:
  apart:
    spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4], facing: 90}}
  turned:
    spots: {Ash: {at: [-2, 6], facing: 350}, Birch: {at: [2, 6], facing: 90}}
staging:
  - {formation: apart, from: 1.1}
  - {formation: turned, from: 5.1, beats: 8}
timeline:
  - {from: 3.1, pattern: pro-bend-4, beats: 8, cycle: 4, mirror: Birch}
  - {link: true, beats: 2}
  - {pattern: two-beat-weave, beats: 8}
fire:
  fuel: kerosene
  flame: 0.4 m
  lit:
    - {who: Ash, from: 2.1, until: 9.1}
"""
SONG = even_song(110, start=0.5, duration=60.0)


def stage(text=SHOW):
    return staged(show_from_document(parse_document(text, "s.yaml")), SONG)


def test_courses_run_through_rest_blocks_and_links():
    ash = stage().dancers[0]
    kinds = [(span.kind, span.start, span.end) for span in ash.trajectories["right"].spans]
    assert [kind for kind, _, _ in kinds] == [
        "rest",
        "link",
        "block",
        "link",
        "block",
        "link",
        "rest",
    ]
    assert kinds[2] == ("block", 8.0, 16.0)
    assert kinds[3] == ("link", 16.0, 18.0)


def test_nothing_jumps_and_rates_are_the_derivatives():
    """Central differences of positions give the stated rates, links and blends included."""
    for dancer in stage().dancers:
        beats = np.linspace(0.0, 40.0, 40_001)
        points, rates = dancer.stage_points(beats)
        differences = (points[:, 2:] - points[:, :-2]) / (beats[2:] - beats[:-2])[:, None]
        assert_allclose(differences, rates[:, 1:-1], atol=2e-3)


def test_who_dances_mirrored_has_the_other_hand_in_the_mirror():
    """Source: reflection in the plane x = 0 of the body frame."""
    ash, birch = stage().dancers
    beats = np.linspace(9.0, 15.0, 50)  # within the block, past its blend
    right = ash.trajectories["right"].at(beats)
    left = birch.trajectories["left"].at(beats)
    assert_allclose(left.hand, right.hand * [-1, 1, 1], atol=1e-12)
    assert_allclose(left.plane, right.plane * [1, -1, -1], atol=1e-12)


def test_walks_take_the_short_way_round():
    ash = stage().dancers[0]
    facing = np.degrees(ash.floor.at(np.linspace(16, 24, 50)).facing)
    assert facing.min() == pytest.approx(-10)
    assert facing.max() == pytest.approx(0)
    assert_allclose(ash.floor.at(np.array(24.0)).place, [-2, 6])


def test_fire_and_formations_are_in_beats():
    show = stage()
    assert [(lit.who, lit.start, lit.end) for lit in show.lit] == [("Ash", 4.0, 32.0)]
    assert [(s.formation, s.walk, s.start) for s in show.standings] == [
        ("apart", 0.0, 0.0),
        ("turned", 16.0, 24.0),
    ]
    assert show.dancers[0].is_lit([3.9, 4.1, 31.9, 32.1]).tolist() == [False, True, True, False]
    assert show.section_at(5.0) == "A"


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        ("from: 5.1, beats: 8}", "from: 5.1}", 16, "needs beats for the walk"),
        ("- {formation: turned, from: 5.1, beats: 8}",
         "- {formation: turned, from: 5.1, beats: 8}\n  - {formation: apart, from: 6.1, beats: 4}",
         17, "before the previous one ends, at 7.1"),
        ("until: 9.1}", "until: 9.1}\n    - {who: Ash, from: 8.1, until: 10.1}", 26, "still burning"),
        ("until: 9.1}", "until: 1.1}", 25, "not after"),
        ("pro-bend-4, beats", "pro-bend-4, with: {hand_radius: 2 m}, beats", 18, "hand_radius"),
        ("formation: turned", "formation: turnd", 16, "did you mean 'turned'"),
    ],
)  # fmt: skip
def test_what_does_not_fit_is_named(old, new, line, says):
    assert old in SHOW
    with pytest.raises(InputError, match=says) as caught:
        stage(SHOW.replace(old, new))
    assert caught.value.place.line == line


def test_several_performers_need_places():
    start = SHOW.index("formations:")
    end = SHOW.index("timeline:")
    with pytest.raises(InputError, match="does not say where the performers stand"):
        stage(SHOW[:start] + SHOW[end:])


def asked_of(monkeypatch, text, song=SONG, fit=None):
    """A show, and what the search for fits was asked on the way."""
    asked = []

    def fitted(dance):
        asked.append(dance)
        return fit or Fit()

    monkeypatch.setattr(
        "sequencer.staging.dances.fitted_together", lambda own: [fitted(dance) for dance in own]
    )
    return staged(show_from_document(parse_document(text, "s.yaml")), song), asked


def test_who_dances_mirrored_gives_way_in_the_mirror(monkeypatch):
    """Fits are found for the pattern as it is written; values and posture change sides with the hands."""
    posture = Posture(turn=np.radians(12.0), tilt=np.radians(-6.0))
    fit = Fit(posture=posture, values={"right": {"up": 0.07}})
    show, _ = asked_of(monkeypatch, SHOW, fit=fit)
    first = {who: next(b for b in show.blocks_of(who) if not b.link) for who in ("Ash", "Birch")}
    assert first["Birch"].mirrored
    assert first["Ash"].posture == posture
    assert first["Birch"].posture == posture.mirrored()
    assert first["Ash"].hands["right"].fitted == first["Birch"].hands["left"].fitted == {"up": 0.07}
    assert first["Ash"].hands["left"].fitted == first["Birch"].hands["right"].fitted == {}


def test_a_fit_is_asked_for_with_the_prop_of_the_hand_that_dances_it(monkeypatch):
    props = "prop: {tether: 0.6}, left: {tether: 0.5}"
    _, asked = asked_of(monkeypatch, SHOW.replace("prop: {tether: 0.55}", props))
    lengths = [
        [dance.props[side].length for side in ("left", "right")]
        for dance in asked
        if dance.parts["left"][0] == "pro-bend-4"
    ]
    assert lengths == [[0.5, 0.6], [0.6, 0.5]]


def test_a_fit_is_asked_for_at_the_slowest_and_the_fastest_tempo_of_its_block(monkeypatch):
    beats = np.append(0.5 + 0.5 * np.arange(12), 6.0 + 0.4 * np.arange(1, 100))
    quicker = replace(SONG, beats=tuple(beats.tolist()), downbeats=tuple(beats[::4].tolist()))
    _, asked = asked_of(monkeypatch, SHOW, quicker)
    tempi = [dance.tempo for dance in asked if dance.parts["left"][0] == "pro-bend-4"]
    assert len(tempi) == 2
    for low, high in tempi:
        assert low == pytest.approx(120.0, rel=1e-3)
        assert high == pytest.approx(150.0, rel=1e-3)


@pytest.mark.parametrize("later", [0, 4])
def test_hands_with_an_entry_each_share_one_body(monkeypatch, later):
    """Each hand's pattern is fitted by itself; where both dance at once the body stays upright."""
    lean = Fit(posture=Posture(lean=np.radians(-5.0)))
    monkeypatch.setattr("sequencer.staging.dances.fitted_together", lambda own: [lean] * len(own))
    head, _, tail = SHOW.partition("timeline:")
    entries = f"""timeline:
  - {{who: Ash, from: 3.1, pattern: pro-bend-4, hands: right, beats: 8, cycle: 4}}
  - {{who: Ash, from: {3 + later // 4}.1, pattern: static-spin, hands: left, beats: 8, cycle: 2}}
  - {{who: Ash, from: 7.1, pattern: static-spin, beats: 8, cycle: 2}}
fire:"""
    show = stage(head + entries + tail.partition("fire:")[2])
    assert [block.posture.upright for block in show.blocks_of("Ash")] == [True, True, False]
    seen = show.dancers[0].carriage.angles(np.array([8.0, 14.0, 19.0, 28.0]))[:, 1]
    assert_allclose(seen, [0.0, 0.0, 0.0, np.radians(-5.0)], atol=1e-12)


def test_each_performers_blocks_and_burns_are_theirs_in_order():
    """Reference: all of them, one after the other."""
    show = stage()
    for who in ("Ash", "Birch", "Nobody"):
        assert show.blocks_of(who) == tuple(each for each in show.blocks if each.who == who)
        assert show.lit_of(who) == tuple(each for each in show.lit if each.who == who)
    assert show.lit_of("Ash")
