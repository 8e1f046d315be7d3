"""What a hand flies: which spans are flown, how they join, what stands in, and that nothing is searched twice."""

from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.posture import Posture
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.laws.transforms import Mirrored, shifted
from sequencer.motion.trajectories.flown_path import flown_courses, flown_links
from sequencer.motion.trajectories.flown_path.flown_courses import (
    HALF,
    Passage,
    Stay,
    courses_of,
    journey,
)
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.nothing_kept import nothing_kept
from tests.unit.motion.flown.flights import BODY, POI, flying, law_of

REST = rest("right", BODY, POI)
ROPE = replace(POI, length=2.4)
WEAK = FlownLimits(hand_speed=0.1, hand_acceleration=0.1)  # nothing but a rest holds them


class Endless:
    """A law that does not repeat."""

    period = np.inf

    def __init__(self, law):
        self.at, self.bounds = law.at, law.bounds


def span(start, end, law, kind="block", origin=None):
    return Span(
        start=start, end=end, law=law, kind=kind, label=kind, origin=start if origin is None else origin
    )  # fmt: skip


def danced(*spans):
    return Trajectory(tuple(spans))


def extension_from_rest(later=0.0, still=2.0, mirrored=False):
    laws = [REST, law_of("extension")]
    if mirrored:
        laws = [Mirrored(law) for law in laws]
    return danced(
        span(later - still, later, laws[0], "rest"),
        span(later, later + 2.0, laws[0], "link"),
        span(later + 2.0, later + 6.0, laws[1]),
    )


def who(**more):
    own = flying(**more)
    return lambda *_: own


@cache
def from_rest():
    return journey(extension_from_rest(), who())


@pytest.fixture
def no_links(monkeypatch):
    """Links that are asked for, none of them searched or flown."""
    asked = []

    def link(_before, _after, beats, _flying, _beside=None):
        asked.append(beats)

    monkeypatch.setattr(flown_courses, "flown_link", link)
    return asked


def kinds(way):
    return [each.span.label if isinstance(each, Stay) else "passage" for each in way]


def test_links_that_are_drawn_become_passages_over_the_same_beats():
    way = from_rest()
    assert kinds(way) == ["rest", "passage", "block"]
    assert (way[1].start, way[1].end) == (0.0, 2.0)
    assert all(each.flown for each in way)


def test_states_go_on_at_every_border():
    """Position to 1e-6, velocity to 1e-4, by differences of second order on either side."""
    courses = courses_of(from_rest())
    assert [course.start for course in courses[1:]] == [course.end for course in courses[:-1]]
    assert (courses[0].start, courses[-1].end) == (-2.0, 6.0)
    step = 1e-4
    for before, after in pairwise(courses):
        beat, sides = after.start, []
        for course, way in ((before, -1.0), (after, 1.0)):
            places = np.stack(course.at(beat + way * step * np.arange(3.0)))
            rate = way * (-3 * places[:, 0] + 4 * places[:, 1] - places[:, 2]) / (2 * step)
            sides.append((places[:, 0], rate))
        assert_allclose(sides[0][0], sides[1][0], atol=1e-6)
        assert_allclose(sides[0][1], sides[1][1], atol=1e-4)


def test_the_head_of_a_mirrored_hand_is_the_mirror_image():
    """Source: reflection in the plane x = 0 of the body frame; limits, body and gravity have that symmetry."""
    mirrored = journey(extension_from_rest(mirrored=True), who(side="left"))
    for own, other in zip(courses_of(from_rest()), courses_of(mirrored), strict=True):
        beats = np.linspace(own.start, own.end, 60)
        for here, there in zip(own.at(beats), other.at(beats), strict=True):
            assert_allclose(there, here * [-1.0, 1.0, 1.0], atol=1e-6)


@pytest.mark.parametrize(
    "again", [{}, {"later": 16.0}, {"still": 5.0}], ids=["again", "later", "after a longer rest"]
)
def test_a_second_journey_searches_nothing(monkeypatch, again):
    """Source: kept by content, wherever in a show it lies."""
    first = from_rest()
    journey(extension_from_rest(), who())  # kept, wherever `from_rest` was first asked for
    monkeypatch.delattr(flown_links, "_searched")
    second = journey(extension_from_rest(**again), who())
    for own, other in zip(courses_of(first)[-2:], courses_of(second)[-2:], strict=True):
        beats = np.linspace(own.start, own.end, 50)
        later = again.get("later", 0.0)
        assert_allclose(np.stack(other.at(beats + later)), np.stack(own.at(beats)), atol=1e-12)


@pytest.mark.parametrize(
    "other",
    [{"tempo": 101.0}, {"prop": replace(POI, mass=0.21)}, {"limits": FlownLimits(hand_speed=5.9)}],
    ids=["tempo", "prop", "limits"],
)
def test_who_flies_otherwise_has_links_of_their_own(monkeypatch, other):
    from_rest()

    def search(*_):
        raise RuntimeError("searched")

    monkeypatch.setattr(flown_links, "_searched", search)
    with pytest.raises(RuntimeError, match="searched"):
        journey(extension_from_rest(), who(**other))


def test_the_same_journey_to_the_last_digit():
    with nothing_kept():
        again = journey(extension_from_rest(), who())
    one, other = (courses_of(way)[1].at(np.linspace(1.0, 1.9, 9)) for way in (from_rest(), again))
    assert np.stack(one).tobytes() == np.stack(other).tobytes()


def test_a_rest_hangs():
    """Source: a prop at rest is straight under the hand and stands still."""
    stay = from_rest()[0]
    head, hand = stay.at(np.array([-1.5, -0.5]))
    assert_allclose(hand - head, [[0.0, 0.0, POI.length]] * 2, atol=1e-12)
    state = stay.motion(-1.0)
    assert_allclose(state.hand, hand[0], atol=1e-9)
    assert_allclose(state.tether, [0.0, 0.0, -1.0], atol=1e-12)
    for rate in (state.hand_rate, state.hand_acceleration, state.tether_rate):
        assert_allclose(rate, 0.0, atol=1e-9)


def test_a_rope_that_lies_on_the_floor_does_not_hang(no_links):
    """A tether longer than a raised arm's height is laid out ahead (docs of rests): no weight hangs from it."""
    way = journey(
        danced(
            span(0.0, 2.0, rest("right", BODY, ROPE), "rest"),
            span(2.0, 4.0, REST, "link"),
            span(4.0, 8.0, law_of("extension")),
        ),
        lambda start, _end: flying(prop=ROPE if start < 2.0 else POI),
    )
    assert [each.flown for each in way] == [False, False, True]
    assert not no_links  # what leaves a rope on the floor is not searched
    head, hand = courses_of(way)[0].at(np.array([1.0]))
    assert_allclose(np.linalg.norm(head - hand), ROPE.length)


def test_blocks_that_meet_alike_have_no_passage(no_links):
    """The second goes on where the first ends: one law cut in two."""
    law = law_of("extension")
    way = journey(danced(span(0.0, 3.0, law), span(3.0, 8.0, law, origin=0.0)), who())
    assert kinds(way) == ["block", "block"]
    assert [(course.start, course.end) for course in courses_of(way)] == [(0.0, 3.0), (3.0, 8.0)]
    assert not no_links


@pytest.mark.parametrize(("length", "half"), [(4.0, HALF), (0.6, 0.3)], ids=["long", "short"])
def test_blocks_that_meet_otherwise_are_joined_over_the_boundary(no_links, length, half):
    law = law_of("extension")
    way = journey(
        danced(span(0.0, length, law), span(length, length + 4.0, law, origin=length + 0.3)), who()
    )
    assert kinds(way) == ["block", "passage", "block"]
    assert (way[1].start, way[1].end) == pytest.approx((length - half, length + half))
    assert no_links == pytest.approx([way[1].end - way[1].start])


@pytest.mark.parametrize(
    ("law", "more"), [(law_of("extension"), {"limits": WEAK}), (Endless(law_of("extension")), {})],
    ids=["over its limits", "without a period"],
)  # fmt: skip
def test_what_cannot_be_flown_is_as_drawn(law, more):
    way = journey(
        danced(span(0.0, 2.0, REST, "rest"), span(2.0, 4.0, REST, "link"), span(4.0, 8.0, law)),
        who(**more),
    )
    assert [each.flown for each in way] == [True, False, False]
    assert way[1].link is None  # nothing is searched towards what is not flown
    rested, bridge, block = courses_of(way)
    assert [course.flown for course in (rested, bridge, block)] == [True, False, False]
    beats = np.linspace(4.0, 8.0, 30)
    head, hand = block.at(beats)
    drawn = law.at(beats - 4.0)
    assert_allclose(head, drawn.head(POI.length), atol=1e-12)
    assert_allclose(hand, drawn.hand, atol=1e-12)
    for before, after in ((rested, bridge), (bridge, block)):
        ends = [np.stack(each.at(np.array([after.start]))) for each in (before, after)]
        assert_allclose(ends[0], ends[1], atol=1e-6)


def test_a_link_over_its_limits_is_as_drawn():
    """It is kept to say what it lacks, and its drawn stand-in takes all of its beats."""
    passage = from_rest()[1]
    weak = replace(passage.link, flying=replace(passage.link.flying, limits=WEAK))
    lame = replace(passage, link=weak)
    assert lame.link.broken
    assert not lame.flown
    way = [from_rest()[0], lame, from_rest()[2]]
    courses = courses_of(way)
    assert [(c.start, c.end, c.flown) for c in courses] == [
        (-2.0, 0.0, True),
        (0.0, 2.0, False),
        (2.0, 6.0, True),
    ]
    ends = [np.stack(each.at(np.array([2.0]))) for each in courses[1:]]
    assert_allclose(ends[0], ends[1], atol=1e-6)


def test_links_are_flown_in_the_posture_of_the_block_beside_them(monkeypatch):
    flown, seen = flown_courses.flown_period, []
    leaning = Posture(lean=0.1)

    def period(law, own):
        seen.append(own.posture)
        return flown(law, replace(own, posture=Posture()))

    monkeypatch.setattr(flown_courses, "flown_period", period)
    monkeypatch.setattr(flown_courses, "flown_link", lambda *own: seen.append(own[3].posture))
    upright, own = flying(), flying(posture=leaning)
    journey(extension_from_rest(), lambda start, _end: own if start == 2.0 else upright)
    assert seen == [leaning, leaning]


def test_the_beat_that_is_reached_is_told(no_links):
    told = []
    journey(extension_from_rest(), who(), told=told.append)
    assert told == [-2.0, 0.0, 2.0]


def test_a_passage_without_a_link_is_not_flown():
    way = from_rest()
    assert not Passage(
        before=way[0], after=way[2], start=0.0, end=2.0, link=None, flying=flying()
    ).flown


def test_a_block_is_flown_from_where_its_law_begins():
    """Source: a span's law is counted from its origin."""
    law = law_of("extension")
    stay = journey(danced(span(0.0, 8.0, law, origin=0.3)), who())[0]
    beats = np.linspace(0.0, 8.0, 30)
    head, hand = stay.at(beats)
    seen = stay.period.flight(beats - 0.3)
    assert_allclose(head, seen.head)
    assert_allclose(hand, seen.hand)


def test_a_block_is_in_the_same_state_after_a_period():
    """Source: a law with a period; the same digits each time, so that links are found again."""
    law = shifted(law_of("extension"), 0.25)
    stay = journey(danced(span(0.0, 8.0, law)), who())[0]
    assert stay.state(1.0).path.tobytes() == stay.state(1.0 + law.period).path.tobytes()
    assert np.abs(stay.state(1.0).path - stay.state(1.5).path).max() > 0.01


def test_what_is_not_worth_a_search_is_as_drawn():
    way = journey(danced(span(0.0, 8.0, law_of("extension"))), who(), worth=lambda _: False)
    assert [(each.flown, each.period) for each in way] == [(False, None)]
