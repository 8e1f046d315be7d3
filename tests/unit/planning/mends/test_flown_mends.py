"""Mends of two who come too close as flown: tried as flown, and the smallest of their kind that keep them apart so."""

from dataclasses import replace

import pytest

from sequencer.checks.dance.flown_in_place import Touch
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.motion.performers.least_values import Least
from sequencer.motion.trajectories.flown_path.flown_hand import Course
from sequencer.planning.edits.floor_edits import places
from sequencer.planning.mends import flown_mends
from sequencer.planning.mends.flown_mends import mends_as_flown, words_as_flown
from sequencer.planning.mends.space_mends import baseline, floor_harms, too_close, unlike
from sequencer.planning.offers import checked_with_mends
from sequencer.planning.trying.restaging import restaged
from sequencer.show.model import Limits
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.in_flight.flown_strains import Strain, strains
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, right: &poi {tether: 0.45}}
  - {name: Birch, stature: 1.7, right: *poi}
formations:
  close: {spots: {Ash: {at: [-1, 4]}, Birch: {at: [0.3, 4]}}}
staging:
  - {formation: close, from: 1.1}
timeline:
  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 8}
"""


@pytest.fixture(scope="module")
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(24))


def test_what_is_offered_keeps_them_apart_as_flown(show):
    """Each is made, flown and searched here once more."""
    bad = too_close(flown_show(show).staged)
    assert bad
    found = [edit for edit, _ in mends_as_flown(baseline(show), bad, bad[0])]
    assert found
    for edit in found:
        after = flown_show(restaged(show, edit.changes, edit.insertions)).staged
        assert not too_close(after)


def test_a_check_as_flown_offers_them(show):
    report = checked_with_mends(show, flown=True)
    told = {
        (each.who, each.position): each.remedies
        for each in report.findings
        if each.code == "too-close"
    }
    assert told
    assert told == {key: words for key, words in words_as_flown(show).items() if key in told}
    assert all("move" in " ".join(words) for words in told.values())


def test_a_first_look_leaves_out_only_what_is_too_close(show):
    """A centimetre further Birch is still seen to be close, two metres further not."""
    (conflict, *_) = too_close(flown_show(show).staged)
    required = required_distances(show).performers
    ((edit, _), *_) = mends_as_flown(baseline(show), (conflict,), conflict)
    path = ("formations", "close", "spots", "Birch", "at")
    for x, close in ((0.31, True), (2.5, False)):
        moved = replace(edit, changes=((path, [x, 4]),), insertions=())
        assert flown_mends._seen_close(show, conflict, moved, required) is close


def test_where_nothing_helps_that_is_said(show, monkeypatch):
    monkeypatch.setattr(flown_mends, "mends_as_flown", lambda *_: iter(()))
    assert {words for (words,) in words_as_flown(show).values()} == {flown_mends._NOTHING}


def test_progress_comes_from_none_to_all(show):
    heard = []
    words_as_flown(show, lambda *told: heard.append(told))
    assert heard[0] == ("seeking mends as flown", 0.0)
    assert all(share < 1.0 for _, share in heard)


def test_what_does_harm_on_the_floor_is_not_offered(show, monkeypatch):
    before, bad = baseline(show), too_close(flown_show(show).staged)
    path = ("formations", "close", "spots", "Birch", "at")
    assert list(floor_harms(before, show)) == []
    off = restaged(show, [(path, [8, 4])])
    assert any("off-stage" in each for each in floor_harms(before, off))
    monkeypatch.setattr(flown_mends, "floor_harms", lambda *_: ("Birch: off-stage",))
    assert list(mends_as_flown(before, bad, bad[0])) == []


SCENERY = SHOW.replace(
    "  audience:",
    "  scenery: [{name: drape, outline: [[2.2, 5], [2.6, 5], [2.6, 8], [2.2, 8]], height: 3, combustible: true}]\n  audience:",
)


def test_what_comes_nearer_to_scenery_as_flown_is_not_offered(monkeypatch):
    """As drawn nothing is said against a change: what is told of the show as flown decides."""
    show = staged(show_from_document(parse_document(SCENERY, "s.yaml")), even_song(24))
    bad = too_close(flown_show(show).staged)
    free = list(mends_as_flown(baseline(show), bad, bad[0]))
    assert free
    for edit, offered in free:
        after = flown_show(restaged(show, edit.changes, edit.insertions)).staged
        assert list(floor_harms(baseline(flown_show(show).staged), after)) == []
        assert offered.dancers[1].floor == restaged(show, edit.changes).dancers[1].floor
    seen = []

    def harm(before, after):
        if before.show is flown_show(show).staged:
            seen.append(after)
            return ("Birch comes closer to drape",)
        return ()

    monkeypatch.setattr(flown_mends, "floor_harms", harm)
    assert list(mends_as_flown(baseline(show), bad, bad[0])) == []
    assert seen
    assert not any(after is show for after in seen)


def test_a_conflict_is_new_where_it_was_not_there_or_is_closer(show):
    bad = too_close(flown_show(show).staged)
    closer = replace(bad[0], distance=bad[0].distance - 0.02)
    later = replace(bad[0], start=90.0, end=91.0, spans=((90.0, 91.0),))
    assert list(unlike(bad, bad)) == []
    assert list(unlike(bad, (closer, later))) == [closer, later]


def test_what_still_comes_too_close_as_flown_is_not_offered(show, monkeypatch):
    """Whatever is changed, the search of the flown show finds the same."""
    before, bad = baseline(show), too_close(flown_show(show).staged)
    monkeypatch.setattr(flown_mends, "too_close", lambda _show: bad)
    assert list(mends_as_flown(before, bad, bad[0])) == []


COURSE = Course(8.0, 12.0, lambda beats: (beats, beats), True)
STRAIN = Strain("Ash", "right", COURSE, 0.2, 20.0, -0.03, True)


@pytest.mark.parametrize(
    ("now", "harm"),
    [
        ({}, False),
        ({"course": COURSE._replace(start=7.0, end=9.0)}, False),  # it walks longer
        ({"course": COURSE._replace(start=12.0, end=14.0)}, True),
        ({"who": "Birch"}, True),
        ({"side": "left"}, True),
        ({"least_pull": 0.15}, True),
        ({"least_pull": 0.195}, False),
        ({"hand_acceleration": 20.5}, True),
        ({"hand_acceleration": 20.1}, False),
        ({"hand_speed": 6.2}, True),
        ({"spare_reach": -0.05}, True),
        ({"spare_reach": 0.1, "hand_acceleration": 18.0, "least_pull": 2.0}, False),
    ],
)
def test_a_strain_that_is_new_or_worse_is_harm(show, monkeypatch, now, harm):
    """Compared by hand, place and each limit; the limit of acceleration is 16 m/s² here."""
    limits = show.show.limits.model_copy(update={"hand_acceleration": 16.0})
    before = replace(show, show=show.show.model_copy(update={"limits": limits}))
    after = replace(before)
    told = {id(before): (STRAIN,), id(after): (STRAIN._replace(**now),)}
    monkeypatch.setattr(flown_mends, "flown_show", lambda own: own)
    monkeypatch.setattr(flown_mends, "strains", lambda own: told[id(own)])
    monkeypatch.setattr(flown_mends, "touches", lambda _own: ())
    assert flown_mends.harms_as_flown(before, after) is harm


def test_a_limit_that_is_kept_is_not_missed():
    """Less spare than before is no harm as long as there is any."""
    kept = STRAIN._replace(least_pull=5.0, hand_acceleration=3.0, spare_reach=0.2)
    limits = Limits(hand_acceleration=16.0, hand_speed=5.0)
    assert flown_mends._misses(kept, limits) == (0.0,) * 6
    fast = STRAIN._replace(hand_speed=6.0, wick_speed=22.0, most_pull=90.0)
    assert flown_mends._misses(fast, limits) == pytest.approx((0.1, 0.25, 0.2, 0.1, 0.5, 0.03))


TOUCH = Touch("Ash", ("right",), 8.0, 10.0, Least(value=-0.03, beat=8.5, label=2))


@pytest.mark.parametrize(
    ("now", "harm"),
    [
        ({}, False),
        ({"start": 9.0}, False),
        ({"start": 7.0}, True),
        ({"end": 11.0}, True),
        ({"who": "Birch"}, True),
        ({"hands": ("left", "right")}, True),
        ({"worst": Least(value=-0.05, beat=8.5, label=2)}, True),
        ({"worst": Least(value=-0.035, beat=8.5, label=2)}, False),
    ],
)
def test_a_touch_that_is_new_longer_or_deeper_is_harm(show, monkeypatch, now, harm):
    before, after = replace(show), replace(show)
    told = {id(before): (TOUCH,), id(after): (TOUCH._replace(**now),)}
    monkeypatch.setattr(flown_mends, "flown_show", lambda own: own)
    monkeypatch.setattr(flown_mends, "strains", lambda _own: ())
    monkeypatch.setattr(flown_mends, "touches", lambda own: told[id(own)])
    assert flown_mends.harms_as_flown(before, after) is harm


CROSSING = (
    SHOW.replace("venue:", "limits: {hand_acceleration: 16.2}\nvenue:")
    .replace(
        "  close: {spots: {Ash: {at: [-1, 4]}, Birch: {at: [0.3, 4]}}}\n",
        "  a: {spots: {Ash: {at: [-1.5, 3.2]}, Birch: {at: [1.5, 4.2]}}}\n"
        "  b: {spots: {Ash: {at: [1.5, 3.2]}, Birch: {at: [-1.5, 4.2]}}}\n",
    )
    .replace(
        "  - {formation: close, from: 1.1}\n",
        "  - {formation: a, from: 1.1}\n  - {formation: b, from: 4.1, beats: 5}\n",
    )
    .replace("beats: 8}", "beats: 12}")
)


@pytest.fixture(scope="module")
def crossing():
    return staged(show_from_document(parse_document(CROSSING, "s.yaml")), even_song(24))


def test_what_strains_a_hand_as_flown_is_not_offered(crossing):
    """Farther or round about in as many beats is a quicker walk: as flown Ash's hand is strained by it, which it was not."""
    bad = too_close(flown_show(crossing).staged)
    before = {(each.who, each.side) for each in strains(flown_show(crossing))}
    assert before == {("Birch", "right")}
    found = [edit for edit, _ in mends_as_flown(baseline(crossing), bad, bad[0])]
    assert found
    for edit in found:
        after = flown_show(restaged(crossing, edit.changes, edit.insertions))
        assert {(each.who, each.side) for each in strains(after)} <= before


def moves(show, *, shaped):
    seen = flown_show(show).staged
    (conflict, *_) = too_close(seen)
    required = required_distances(show).performers
    found = places(seen, conflict, show.span, required, shaped=shaped)
    return {repr(edit.changes) for edit in found}


def test_a_move_that_keeps_a_shape_is_told_once(crossing, show):
    """Where nobody mirrors anybody every move keeps the shape; of a mirrored pair one may move alone."""
    assert moves(crossing, shaped=True)
    assert not moves(crossing, shaped=False)
    assert moves(show, shaped=False)
    assert not moves(show, shaped=False) & moves(show, shaped=True)
