"""Where somebody new has room. Reference: the checks of distances on the show with them there."""

import math

import numpy as np
import pytest

from sequencer.checks.distances.keeping_clear import distances
from sequencer.planning.new_spots import NewSpot, _nearest, _Room, new_spots
from sequencer.planning.trying.restaging import with_everybody
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
{formations}{shaped}
staging:
{staging}
timeline:
  - {{from: 2.1, pattern: two-beat-weave, beats: 24}}
{more}"""
WIDE = {"width": 14, "depth": 9, "front": -9, "venue": "", "shaped": "", "more": ""}
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
    return all_found_in(tried).spots


def all_found_in(tried):
    return new_spots(tried({}), "Cedar", tried)


def stops(show):
    """What the checks say of distances from whoever is new."""
    return [
        one.code
        for one in distances(show).findings
        if one.severity == "stop" and "Cedar" in one.who
    ]


@pytest.fixture
def unchecked(monkeypatch):
    """What is chosen at first stays: no check mends what is measured wrongly."""
    monkeypatch.setattr("sequencer.planning.new_spots._too_close", lambda *_: set())


def checked_in_turn(monkeypatch, *close):
    """The checks find somebody too close in these formations, one answer after the other; the last stays."""
    left = list(close)
    monkeypatch.setattr(
        "sequencer.planning.new_spots._too_close",
        lambda *_: left.pop(0) if len(left) > 1 else left[0],
    )


OTHERS_LIT = "fire: {fuel: lamp oil, lit: [{who: [Ash], from: 2.1, until: 8.1}]}\n"
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


# --- who is away tonight ---

AWAY = "tonight: {away: [Birch]}\n"
WEDGE = {"Ash": (0, 4, 0), "Birch": (-3, 3, 0)}


def test_who_is_away_tonight_keeps_their_spot(unchecked):
    tried = cast_in({"one": WEDGE}, more=AWAY)
    spots = found_in(tried)
    assert (spots["one"].at, spots["one"].how) == ((3, 3), "mirrored to Birch")
    assert stops(with_everybody(tried(spots))) == []


def test_the_whole_cast_is_staged_once_and_only_where_somebody_is_not_there():
    there, away = cast_in({"one": WEDGE})({}), cast_in({"one": WEDGE}, more=AWAY)({})
    assert with_everybody(there) is there
    assert [each.name for each in away.dancers] == ["Ash", "Cedar"]
    everybody = with_everybody(away)
    assert [each.name for each in everybody.dancers] == ["Ash", "Birch", "Cedar"]
    assert everybody.standings[0].spots == there.standings[0].spots
    assert with_everybody(away) is everybody


def test_ways_of_who_is_away_are_kept_clear(unchecked):
    crossing = {"one": {"Ash": (-6, 1, 0), "Birch": (4, 4, 0)}, "two": {"Ash": (-6, 1, 0), "Birch": (-4, 4, 0)}}  # fmt: skip
    here = found_in(cast_in(crossing, WALKING))
    assert found_in(cast_in(crossing, WALKING, more=AWAY)) == here


def test_who_is_away_is_looked_for_by_the_checks_too():
    tried = cast_in({"one": WEDGE}, more=AWAY)
    on_theirs = tried({"one": NewSpot(at=(-3, 3), facing=0, how="")})
    assert stops(on_theirs) == []  # nobody else is there tonight
    assert not new_spots(tried({}), "Cedar", lambda _: on_theirs).spots["one"].clear


@pytest.mark.parametrize("tether", [0.3, 0.9])
def test_whose_part_is_taken_has_room_and_so_has_who_takes_it(tether, unchecked):
    taken = f"tonight: {{stand_ins: [{{for: Birch, name: Fern, stature: 1.6, prop: {{tether: {tether}}}}}]}}\n"
    tried = cast_in({"one": PAIR}, more=taken)
    spots = found_in(tried)
    for show in (tried(spots), with_everybody(tried(spots))):
        reach = {one.name: one.reach for one in show.dancers}
        gap = math.dist(spots["one"].at, (3, 4)) - reach["Cedar"] - reach["Birch"]
        assert gap >= 0.3 - 1e-9
    far = max(each.dancers[1].reach for each in (tried({}), with_everybody(tried({}))))
    assert _Room(tried({}), "Cedar").reach["Birch"] == far


def test_who_takes_a_part_is_looked_for_by_the_checks_too():
    """A longer tether than the part's comes too close, which the part's own does not."""
    taken = "tonight: {stand_ins: [{for: Birch, name: Fern, stature: 1.6, prop: {tether: 0.9}}]}\n"
    beside = cast_in({"one": PAIR}, more=taken)({"one": NewSpot(at=(1, 4), facing=0, how="")})
    assert stops(beside) == ["too-close"]
    assert stops(with_everybody(beside)) == []
    assert not new_spots(beside, "Cedar", lambda _: beside).spots["one"].clear


# --- named shapes ---


def ring(spacing):
    return {
        "shaped": f"\n  ring: {{shape: circle, spacing: {spacing} m, centre: [0, 4]}}",
        "staging": STANDING + "\n  - {formation: ring, from: 4.1, beats: 8}",
    }


def test_a_named_shape_in_which_somebody_comes_too_close_is_told():
    tried = cast_in({"one": PAIR}, **ring(1.6))
    found = all_found_in(tried)
    assert found.crowded == ("ring",)
    assert found.spots["one"].clear
    assert "too-close" in stops(tried(found.spots))
    assert all_found_in(cast_in({"one": PAIR}, depth=14, **ring(5.4))).crowded == ()


def test_whoever_a_named_shape_moves_is_looked_at_too():
    """Ash burns, and the ring that is wider for three brings them too near the audience."""
    far = {"Ash": (-3, 14, 0), "Birch": (3, 14, 0)}
    tried = cast_in({"one": far}, depth=20, front=0, more=OTHERS_LIT, **ring(5.4))
    found = all_found_in(tried)
    who = {one.who for one in distances(tried(found.spots)).findings if one.severity == "stop"}
    assert who == {("Ash",)}
    assert found.crowded == ("ring",)


def test_what_no_other_spot_mends_is_tried_once():
    tried = cast_in({"one": PAIR}, **ring(1.6))
    asked = []
    new_spots(tried({}), "Cedar", lambda spots: asked.append(spots) or tried(spots))
    assert len(asked) == 1


# --- fire ---


def test_where_others_burn_the_newcomer_is_measured_as_lit(unchecked):
    lit = "fire: {fuel: lamp oil, lit: [{who: [Ash, Cedar], from: 2.1, until: 8.1}]}\n"
    wedge, edge = {"Ash": (-4, 6, 0), "Birch": (0, 3, 0)}, -3.2
    found = all_found_in(cast_in({"one": wedge}, front=edge, more=OTHERS_LIT))
    burning = all_found_in(cast_in({"one": wedge}, front=edge, more=lit))
    assert found.as_lit
    assert not burning.as_lit
    assert found.spots == burning.spots
    y, reach = found.spots["one"].at[1], cast_in({"one": wedge})({}).dancers[2].reach
    assert found.spots["one"].short == 0
    assert y - edge - reach >= 6.096 + 1.524  # several burn, were Cedar lit too
    unlit = all_found_in(cast_in({"one": wedge}, front=edge))
    assert not unlit.as_lit


def test_who_burns_and_is_away_counts_as_burning():
    lit = OTHERS_LIT.replace("[Ash]", "[Birch]")
    assert all_found_in(cast_in({"one": PAIR}, more=lit + AWAY)).as_lit


# --- what is measured ---

THINGS = """\
  scenery:
    - {name: drum, outline: [[-6, 1], [-5, 1], [-5, 2], [-6, 2]], height: 1.0, combustible: false}
    - {name: curtain, outline: [[5, 1], [6, 1], [6, 2], [5, 2]], height: 1.0, combustible: true}
crew: [{name: Fern, post: [3, 7], duty: spotter}]
"""


def box(x, y, low, high):
    """How far a place is from an upright rectangle [m]."""
    out = [max(a - each, 0, each - b) for each, a, b in zip((x, y), low, high, strict=True)]
    return math.hypot(*out)


@pytest.mark.parametrize("more", ["", OTHERS_LIT])
def test_room_is_what_remains_of_the_nearest_distance(more):
    show = cast_in({"one": PAIR}, venue=THINGS, more=more, front=-6)({})
    (post,) = show.venue.posts
    assert post.radius > 0.1
    reach = {one.name: one.reach for one in show.dancers}
    own = reach["Cedar"]
    at = np.random.default_rng(2).uniform((-9, -2), (9, 11), (400, 2))
    limits = set()
    for (x, y), spare in zip(at, _Room(show, "Cedar").spare(at, {"Ash": (-3, 4, 0)}), strict=True):
        left = {
            "Ash": math.dist((x, y), (-3, 4)) - own - reach["Ash"] - 0.3,
            "edge": min(x + 7, 7 - x, y, 9 - y) - 0.3,
            "drum": box(x, y, (-6, 1), (-5, 2)) - own - 0.3,
            "curtain": box(x, y, (5, 1), (6, 2)) - own - (6.096 if more else 0.3),
            "post": math.dist((x, y), (3, 7)) - own - post.radius,
        }
        if more:
            left["audience"] = y + 6 - own - 7.62
        if left["edge"] > -0.3:  # beyond the corners it is a little farther
            assert spare == pytest.approx(min(left.values()), abs=1e-6)
            limits.add(min(left, key=left.get))
    assert limits >= ({"audience", "curtain"} if more else left.keys())


def test_spots_that_keep_no_picture_are_those_near_others_with_the_nearest_facing():
    others = {"Ash": (-3, 4, 10), "Birch": (3.25, 4.5, 20), "Dew": (1.25, 1.25, 30)}
    at, facings = _Room(cast_in({"one": PAIR})({}), "Cedar").anywhere(others)
    assert len(at) == 29 * 19  # every half metre of 14 m by 9 m
    middle = (0.5, 3.25)
    ranked = []
    for place, facing in zip(at, facings, strict=True):
        near, its = min((math.dist(place, (x, y)), turned) for x, y, turned in others.values())
        assert facing == its
        ranked.append((round(near, 9), round(math.dist(place, middle), 9), place[0]))
    assert ranked == sorted(ranked)


def test_of_two_that_are_as_near_the_one_with_the_lower_x_comes_first():
    at, _ = _Room(cast_in({"one": PAIR})({}), "Cedar").anywhere(PAIR)
    assert at[:2].tolist() == [[-3, 4], [3, 4]]


def test_ways_are_clear_of_what_everybody_reaches_on_theirs():
    two = {"Ash": (-3, 4, 0), "Birch": (-4, 7, 0)}
    show = cast_in({"one": {"Ash": (-3, 4, 0), "Birch": (4, 2, 0)}, "two": two}, WALKING)({})
    room = _Room(show, "Cedar")
    at = np.random.default_rng(3).uniform((-7, 0), (7, 9), (200, 2))
    chosen = {"one": NewSpot(at=(-1, 8), facing=0, how="")}
    part = np.linspace(0, 1, 20_001)[:, None]
    met = part * (np.array([-4, 7]) - [4, 2]) + [4, 2]
    clear = room.ways_clear("two", at, chosen, 0.25)
    for place, free in zip(at, clear, strict=True):
        own = part * (place - [-1, 8]) + [-1, 8]
        gaps = [
            np.hypot(*(own - met).T).min() - room.apart("Birch"),
            np.hypot(*(own - [-3, 4]).T).min() - room.apart("Ash"),
        ]
        assert free == (min(gaps) >= 0.25), place
    assert 10 < clear.sum() < 190


def test_of_two_spots_with_room_the_one_with_a_clear_way_is_taken(unchecked):
    one = {"Ash": (-3, 6, 0), "Birch": (-4, 4, 0)}
    two = {"Ash": (-4, 5, 0), "Birch": (4, 5, 0)}
    tried = cast_in({"one": one, "two": two}, WALKING)
    spots = found_in(tried)
    assert stops(tried(spots)) == []
    alone = found_in(cast_in({"two": two}, "  - {formation: two, from: 1.1}"))["two"]
    assert alone.at == (0, 5)  # between the two, where there is no way to it from one
    assert spots["two"].at != alone.at
    assert "too-close" in stops(tried({**spots, "two": alone}))


# --- what the checks say ---


def test_what_stands_still_is_looked_at_too():
    tried = cast_in({"one": {"Ash": (-5, 6, 0), "Birch": (5, 6, 0)}})
    at_the_edge = tried({})
    assert stops(at_the_edge) == ["off-stage"]
    assert not new_spots(at_the_edge, "Cedar", lambda _: at_the_edge).spots["one"].clear


def test_they_stand_farther_off_as_long_as_the_checks_find_something(monkeypatch):
    tried = cast_in({"one": PAIR})
    gaps = []

    def wanting(show, who):
        reach = {one.name: one.reach for one in show.dancers}
        spots = show.standings[0].spots
        gaps.append(
            min(
                math.dist(spots["Cedar"][:2], spots[other][:2])
                - reach["Cedar"]
                - reach[other]
                - 0.3
                for other in PAIR
            )
        )
        return {"one"} if gaps[-1] < 0.6 else set()

    monkeypatch.setattr("sequencer.planning.new_spots._too_close", wanting)
    spot = found_in(tried)["one"]
    assert gaps[0] < 0.25  # else nothing had to be mended
    assert spot.clear
    assert gaps[-1] >= 0.6


def test_the_try_with_the_fewest_too_close_is_kept(monkeypatch):
    tried = cast_in({"one": PAIR, "two": PAIR}, WALKING)
    both = {"one", "two"}
    checked_in_turn(monkeypatch, both, {"one"}, both)
    spots = found_in(tried)
    assert (spots["one"].clear, spots["two"].clear) == (False, True)


def test_a_named_shape_without_room_counts_among_the_tries(monkeypatch):
    tried = cast_in({"one": PAIR}, **ring(1.6))
    both = {"one", "ring"}
    checked_in_turn(monkeypatch, both, {"one"}, both)
    assert all_found_in(tried).crowded == ()


def test_others_who_were_too_close_before_are_no_matter_of_the_newcomer():
    tried = cast_in({"one": {"Ash": (-5, 4, 0), "Birch": (-4, 4, 0)}})
    found = found_in(tried)
    assert {one.who for one in distances(tried(found)).findings if one.severity == "stop"} == {
        ("Ash", "Birch")
    }
    assert found["one"].clear


def test_what_is_only_warned_of_is_no_lack_of_room(monkeypatch):
    long = SHOW.replace("1.8, prop: {{tether: 0.5}}", "1.8, prop: {{tether: 1.2}}")
    monkeypatch.setitem(cast_in.__globals__, "SHOW", long)
    tried = cast_in({"one": {"Ash": (-5, 4, 0), "Birch": (5, 4, 0)}})
    found = found_in(tried)
    assert [(one.code, one.who) for one in distances(tried(found)).findings] == [
        ("hits-floor", ("Cedar",))
    ]
    assert found["one"].clear


def test_what_is_missing_is_what_is_required_and_no_more(monkeypatch):
    tight = {"Ash": (-1, 2, 0), "Birch": (1, 2, 0)}
    tried = cast_in({"one": tight, "two": tight}, WALKING, width=4, depth=4)
    at_first = all_found_in(tried).spots["one"]
    both = {"one", "two"}
    checked_in_turn(monkeypatch, both, {"one"})
    later = found_in(tried)
    assert later["two"].clear  # a later try, with more room wanted
    assert later["one"].short == pytest.approx(at_first.short, abs=1e-9)
