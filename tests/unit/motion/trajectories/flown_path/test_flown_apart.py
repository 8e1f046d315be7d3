"""Both hands of a performer: links in which the props would meet are flown again, those that would not are left."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.motion.flown.apart import LEAST_BESIDE
from sequencer.motion.trajectories.flown_path import flown_apart
from sequencer.motion.trajectories.flown_path.flown_apart import kept_apart
from sequencer.motion.trajectories.flown_path.flown_hand import Course
from tests.nothing_kept import nothing_kept
from tests.unit.motion.flown.flights import POI
from tests.unit.motion.trajectories.flown_path.test_flown_courses import from_rest

PROPS = {"left": POI, "right": POI}
THICK = replace(POI, wick_radius=POI.wick_radius + 0.001)


@pytest.fixture(autouse=True)
def _nothing_kept():
    """What stands in for a search here is not kept."""
    with nothing_kept():
        yield


def test_one_hand_alone_is_left_as_it_is():
    ways = {"right": from_rest()}
    assert kept_apart(ways, PROPS) is ways


def test_links_in_which_props_meet_are_sought_again_until_one_flies(monkeypatch):
    """Both hands on one path meet everywhere: the right hand's link is sought again first, then the left's, each once."""
    asked = []

    def again(passage, prop, other):
        head, hand = other(np.linspace(passage.start, passage.end, 5))
        asked.append((passage, prop, np.linalg.norm(head - hand, axis=-1)))
        return passage

    monkeypatch.setattr(flown_apart, "bridged", again)
    way = from_rest()
    out = kept_apart({"left": way, "right": way}, {"left": THICK, "right": POI})
    assert [each[:2] for each in asked] == [(way[1], THICK), (way[1], POI)]
    assert all(out[side] == list(way) for side in out)
    for *_, lines in asked:
        assert lines == pytest.approx(POI.length)


def test_what_does_not_fly_apart_is_not_taken(monkeypatch):
    monkeypatch.setattr(flown_apart, "bridged", lambda passage, *_: _Failed(passage))
    way = from_rest()
    out = kept_apart({"left": way, "right": way}, PROPS)
    assert out["right"] == out["left"] == list(way)


class _Failed:
    flown = False
    link = SimpleNamespace(broken=("speed",))

    def __init__(self, passage):
        self.passage = passage


def test_what_flies_is_taken_and_what_keeps_clear_is_left(monkeypatch):
    """The right hand's link is replaced, by one far away; then nothing meets in it, and the left's is not asked for."""
    way = from_rest()
    monkeypatch.setattr(flown_apart, "bridged", lambda passage, *_: replace(passage, link=FAR))
    monkeypatch.setattr(flown_apart, "courses_of", far_courses)
    out = kept_apart({"left": way, "right": way}, PROPS)
    assert out["right"][1].link is FAR
    assert out["left"][1] is way[1]


class FAR:
    """A link that flies."""

    broken = ()


def far_courses(way):
    """One course: at the origin, or far from it with the new link."""
    place = 9.0 if way[1].link is FAR else 0.0

    def at(beats):
        head = np.full((len(beats), 3), place)
        return head, head + np.array([0.0, 0.0, POI.length])

    return [Course(0.0, 6.0, at, flown=True)]


@pytest.mark.parametrize(("more", "times"), [(0.001, 0), (-0.002, 2)])
def test_what_is_farther_apart_than_is_asked_is_left(monkeypatch, more, times):
    """Two balls of 5 cm, and a little more or less than what is asked for between them."""
    asked = []
    monkeypatch.setattr(
        flown_apart, "bridged", lambda passage, *_: asked.append(1) or _Failed(passage)
    )
    way = from_rest()
    shifts = iter([0.0, 0.1 + LEAST_BESIDE + more])

    def beside(own):
        (course,) = far_courses(own)
        shift = np.array([next(shifts), 0.0, 0.0])
        return [course._replace(at=lambda beats: [each + shift for each in course.at(beats)])]

    monkeypatch.setattr(flown_apart, "courses_of", beside)
    kept_apart({"left": way, "right": way}, PROPS)
    assert len(asked) == times
