"""Where somebody new has room. Reference: the checks of distances on the show with them there."""

import math

import numpy as np
import pytest

from sequencer.checks.distances.keeping_clear import distances
from sequencer.planning.new_spots import _nearest, new_spots
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SONG = even_song(64, tempo=100.0)
SHOW = """\
title: Two
track: {{file: song.ogg}}
venue:
  stage: {{shape: rectangle, width: {width} m, depth: {depth} m}}
  audience: [{{line: [[-12, {front}], [12, {front}]]}}]
{venue}cast:
  - {{name: Ash, stature: 1.7, prop: {{tether: 0.45}}}}
  - {{name: Birch, stature: 1.6, prop: {{tether: 0.45}}}}
  - {{name: Cedar, stature: 1.8, prop: {{tether: 0.5}}}}
formations:
{formations}
staging:
{staging}
timeline:
  - {{from: 2.1, pattern: two-beat-weave, beats: 24}}
{more}"""
WIDE = {"width": 14, "depth": 9, "front": -9, "venue": "", "more": ""}
STANDING = "  - {formation: one, from: 1.1}"
WALKING = STANDING + "\n  - {formation: two, from: 4.1, beats: 8}"


def cast_in(formations, staging=STANDING, **venue):
    """A show whose third performer stands anywhere, and one by spots of theirs."""

    def tried(spots):
        rows = []
        for name, others in formations.items():
            spot = spots.get(name)
            own = {**others, "Cedar": (0, 0, 0) if spot is None else (*spot.at, spot.facing)}
            said = ", ".join(
                f"{who}: {{at: [{x:g}, {y:g}], facing: {facing:g}}}"
                for who, (x, y, facing) in own.items()
            )
            rows.append(f"  {name}: {{spots: {{{said}}}}}")
        text = SHOW.format(**{**WIDE, **venue, "formations": "\n".join(rows), "staging": staging})
        return staged(show_from_document(parse_document(text, "s.yaml")), SONG)

    return tried


def found_in(tried):
    return new_spots(tried({}), "Cedar", tried)


def stops(show):
    """What the checks say of distances from whoever is new."""
    return [
        one.code
        for one in distances(show).findings
        if one.severity == "stop" and "Cedar" in one.who
    ]


PAIR = {"Ash": (-3, 4, 0), "Birch": (3, 4, 0)}


def test_who_has_no_partner_is_mirrored():
    tried = cast_in({"one": {"Ash": (-4, 4, 30), "Birch": (0, 6, 0)}})
    spots = found_in(tried)
    assert spots["one"].at == (4, 4)
    assert spots["one"].facing == 330
    assert spots["one"].how == "mirrored to Ash"
    assert spots["one"].short == 0
    assert stops(tried(spots)) == []
    assert stops(tried({})) != []  # where they would stand otherwise


def test_between_a_mirrored_pair_only_where_there_is_room():
    apart = found_in(cast_in({"one": {"Ash": (-4, 4, 0), "Birch": (4, 4, 0)}}))["one"]
    assert (apart.at, apart.how) == ((0, 4), "on the middle line")
    tried = cast_in({"one": {"Ash": (-2, 4, 0), "Birch": (2, 4, 0)}})
    close = found_in(tried)["one"]
    assert close.how == "on the middle line"
    assert close.at[0] == 0
    assert abs(close.at[1] - 4) >= 2  # upstage of both, or downstage
    assert stops(tried({"one": close})) == []


def test_in_line_with_a_file_that_mirrors_nobody():
    tried = cast_in({"one": {"Ash": (0, 1.5, 0), "Birch": (0, 5, 0)}}, depth=12, front=-10)
    spot = found_in(tried)["one"]
    assert (spot.at, spot.how) == ((0, 8.5), "in line with Ash and Birch")


def test_every_formation_has_a_spot_and_the_way_between_them_is_clear():
    two = {"Ash": (4, 4, 0), "Birch": (-4, 4, 0)}
    tried = cast_in({"one": {"Ash": (4, 2, 0), "Birch": (0, 7, 0)}, "two": two}, WALKING)
    spots = found_in(tried)
    assert set(spots) == {"one", "two"}
    assert stops(tried(spots)) == []


def test_lit_they_keep_the_audience_too():
    lit = "fire: {fuel: lamp oil, lit: [{who: all, from: 2.1, until: 8.1}]}\n"
    near = {"Ash": (-4, 6, 0), "Birch": (0, 3, 0)}
    unlit = found_in(cast_in({"one": near}, front=-3.2, width=10))["one"]
    tried = cast_in({"one": near}, front=-3.2, more=lit, width=10)
    spot = found_in(tried)["one"]
    assert spot.short == 0
    assert spot.at[1] >= unlit.at[1]
    assert [code for code in stops(tried({"one": spot})) if code == "audience-too-close"] == []


@pytest.mark.parametrize(
    "thing",
    [
        "  scenery: [{name: drum, outline: [[3, 3], [5, 3], [5, 5], [3, 5]], height: 1.0, combustible: false}]\n",
        "crew: [{name: Fern, post: [4, 4], duty: spotter}]\n",
    ],
    ids=["scenery", "a post"],
)
def test_what_stands_on_the_stage_is_kept_clear(thing):
    tried = cast_in({"one": {"Ash": (-4, 4, 0), "Birch": (0, 6, 0)}}, venue=thing)
    spot = found_in(tried)["one"]
    assert spot.at != (4, 4)  # the mirrored one
    assert spot.short == 0
    assert stops(tried({"one": spot})) == []


def test_where_nowhere_has_room_it_is_said_by_how_much():
    tried = cast_in({"one": {"Ash": (-1, 2, 0), "Birch": (1, 2, 0)}}, width=4, depth=4)
    show = tried({})
    spot = found_in(tried)["one"]
    assert spot.short > 0.4
    assert not spot.clear
    assert abs(spot.at[0]) <= 1.7  # on the stage all the same
    assert 0.3 <= spot.at[1] <= 3.7
    reach = {one.name: one.reach for one in show.dancers}
    near = min(
        math.dist(spot.at, place) - reach["Cedar"] - reach[who]
        for who, place in {"Ash": (-1, 2), "Birch": (1, 2)}.items()
    )
    assert spot.short == pytest.approx(0.3 - near, abs=1e-9)  # 0.30 m between performers
    assert stops(tried({"one": spot})) != []


def test_ways_are_as_near_as_a_fine_walk_along_both():
    rng = np.random.default_rng(5)
    here, there = rng.uniform(-5, 5, (20, 2)), rng.uniform(-5, 5, (20, 2))
    other = rng.uniform(-5, 5, (2, 2))
    part = np.linspace(0, 1, 20_001)[:, None]
    walked = other[0] + part * (other[1] - other[0])
    for k, near in enumerate(_nearest(here, there, other[0], other[1])):
        own = here[k] + part * (there[k] - here[k])
        assert near == pytest.approx(np.hypot(*(own - walked).T).min(), abs=1e-6)
