"""How long links are and between which states they lead, with a search that answers what the test says."""

from dataclasses import fields

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories import assembly, bridges, stops
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.one_link.link_gaps import around
from sequencer.motion.trajectories.one_link.link_limits import hand_space_of
from sequencer.motion.trajectories.one_link.link_search import FoundLink
from sequencer.motion.trajectories.trajectory import Span, Trajectory

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
ROOM = hand_space_of(BODY, "right", POI)


class Held:
    """A still prop whose plane, which no blend looks at here, tells the beats since its origin."""

    period = np.inf

    def __init__(self, number=0.0):
        self.number = number

    def at(self, beats):
        beats = np.asarray(beats, float)[..., None]
        rows = {each.name: np.zeros(3) + 0 * beats for each in fields(Motion)}
        rows |= {
            "tether": np.array([0, 0, -1.0]) + 0 * beats,
            "hand": np.array([0.3, 0.2, 1]) + 0 * beats,
        }
        return Motion(**rows | {"plane": np.array([1.0, 0, self.number]) + beats * [0, 1, 0]})

    def bounds(self):
        return Bounds(
            hand_speed=0, hand_acceleration=0, turn_rate=0, turn_acceleration=0, hand_reach=1
        )


REST = Held(7.0)


@pytest.fixture
def asked(monkeypatch):
    """Every link asked for: its ends' planes, its beats and the bodies; answered by `answer`."""
    calls = []
    answer = {"clean": lambda _: (True, 1.0)}

    def found(first, last, beats, space, *, limits, obstacles, keep):
        calls.append((first.plane.tolist(), last.plane.tolist(), beats, space, obstacles))
        kept, gap = answer["clean"](beats)
        return FoundLink(Held(3.0), kept=kept, gap=gap, needed=0.03)

    monkeypatch.setattr(bridges, "found_link", found)
    calls.append(answer)
    return calls


def block(start, end):
    return Span(start=start, end=end, law=Held(1.0), origin=start, kind="block", label="b")


def shape(trajectory):
    return [(span.kind[0], span.start, span.end) for span in trajectory.spans]


def test_the_numbers_of_the_leads():
    """docs/motion.md, section 5, typed here again."""
    assert (assembly.LEAD_IN, bridges.LEADS, stops.STILL) == (2.0, (1.5, 2.0, 0.5), 1.0)


def test_without_blocks_the_prop_rests(asked):
    found = assembled([], REST, space=ROOM)
    assert shape(found) == [("r", 0.0, 1.0)]
    assert found.spans[0].law is REST
    assert found.space is ROOM
    assert len(asked) == 1


def test_a_block_is_led_into_and_out_of(asked):
    """Two beats each unless said; links begin where rest ends, and laws count from there."""
    found = assembled([block(5.0, 9.0)], REST)
    assert shape(found) == [("r", 2, 3), ("l", 3, 5), ("b", 5, 9), ("l", 9, 11), ("r", 11, 12)]
    assert [span.origin for span in found.spans] == [2, 3, 5, 9, 11]
    assert [span.label for span in found.spans] == ["rest", "link", "b", "link", "rest"]
    assert found.space is None
    # rest one beat on, where its own span is a beat long; the block at its start and its end; rest at 0
    assert asked[1] == ([1, 1, 7], [1, 0, 1], 2.0, None, None)
    assert asked[2] == ([1, 4, 1], [1, 0, 7], 2.0, None, None)
    assert shape(assembled([block(5.0, 9.0)], REST, lead=1.5))[0] == ("r", 2.5, 3.5)


@pytest.mark.parametrize(
    ("clean", "in_", "out"),
    [
        ({2.0}, 2.0, 2.0), ({3.0}, 3.0, 3.0), ({4.0, 3.0}, 3.0, 3.0), ({4.0}, 4.0, 4.0),
        ({1.0}, 1.0, 1.0), ({1.0, 4.0}, 4.0, 4.0),
    ],
)  # fmt: skip
def test_the_first_clean_of_one_one_and_a_half_two_or_half_the_lead(asked, clean, in_, out):
    asked[0]["clean"] = lambda beats: (True, 0.5 if beats in clean else 0.0)
    found = assembled([block(5.0, 9.0)], REST)
    assert shape(found)[1] == ("l", 5 - in_, 5)
    assert shape(found)[3] == ("l", 9, 9 + out)


def test_where_no_link_is_clean_limits_come_first_then_the_gap(asked):
    answers = {2.0: (False, 0.9), 3.0: (True, -0.2), 4.0: (True, -0.1), 1.0: (True, -0.3)}
    asked[0]["clean"] = lambda beats: answers[beats]
    assert shape(assembled([block(5.0, 9.0)], REST))[1] == ("l", 1, 5)
    answers[4.0] = (False, 2.0)
    assert shape(assembled([block(5.0, 9.0)], REST))[1] == ("l", 2, 5)


def test_the_nearest_to_what_each_needs_is_taken(monkeypatch):
    """A gap that lacks 1 cm is better than a larger one that lacks 2."""

    def found(first, last, beats, space, *, limits, obstacles, keep):
        gap, needed = {2.0: (0.01, 0.03), 3.0: (-0.04, -0.03), 4.0: (0.0, 0.03), 1.0: (0.0, 0.02)}[
            beats
        ]
        return FoundLink(Held(), kept=True, gap=gap, needed=needed)

    monkeypatch.setattr(bridges, "found_link", found)
    assert shape(assembled([block(5.0, 9.0)], REST))[1] == ("l", 2, 5)


@pytest.mark.parametrize(
    ("start", "longest"), [(5.0, 4.0), (4.0, 4.0), (3.9, 3.0), (3.0, 3.0), (2.9, 1.0), (0.5, 1.0)]
)
def test_links_into_the_first_block_do_not_begin_before_the_song(asked, start, longest):
    """Unless even the lead is longer; the last link out may be as long as it likes."""
    asked[0]["clean"] = lambda beats: (True, 0.5 if beats == longest else 0.0)
    tried = []
    inner = asked[0]["clean"]
    asked[0]["clean"] = lambda beats: tried.append(beats) or inner(beats)
    assembled([block(start, 9.0)], REST)
    allowed = [2.0, *(beats for beats in (3.0, 4.0, 1.0) if beats <= max(start, 2.0))]
    assert tried[: tried.index(longest) + 1] == allowed[: allowed.index(longest) + 1]


@pytest.mark.parametrize(
    ("gap", "middle"),
    [
        (0.0, []), (5e-7, []), (-5e-7, []), (2e-6, ["l"]), (1.0, ["l"]), (4.0, ["l"]), (4 + 5e-7, ["l"]),
        (4 + 2e-6, ["l", "r", "l"]), (4.5, ["l", "r", "l"]), (30.0, ["l", "r", "l"]),
    ],
)  # fmt: skip
def test_a_gap_is_one_link_up_to_twice_the_lead(asked, gap, middle):
    found = assembled([block(5.0, 9.0), block(9.0 + gap, 40.0)], REST)
    assert [kind for kind, _, _ in shape(found)] == ["r", "l", "b", *middle, "b", "l", "r"]
    if middle == ["l"]:
        assert shape(found)[3] == ("l", 9.0, 9.0 + gap)
    if middle == ["l", "r", "l"]:
        assert shape(found)[3:6] == [("l", 9, 11), ("r", 11, 7 + gap), ("l", 7 + gap, 9 + gap)]


def test_blocks_that_overlap_are_refused(asked):
    with pytest.raises(ValueError, match=r"blocks overlap: 9\.0 … 8\.9"):
        assembled([block(5.0, 9.0), block(8.9, 12.0)], REST)


@pytest.mark.parametrize(
    ("gap", "tried"),
    [(4.5, [2, 1]), (7.0, [2, 3, 1]), (6.9, [2, 1]), (9.0, [2, 3, 4, 1]), (8.9, [2, 3, 1])],
)
def test_longer_links_leave_a_beat_of_rest_between_them(asked, gap, tried):
    """Both take as long: (gap − 1)/2 beats at most; none is clean here, so all are tried."""
    asked[0]["clean"] = lambda _: (True, 0.0)
    assembled([block(5.0, 9.0), block(9.0 + gap, 40.0)], REST)
    beats = [call[2] for call in asked[1:]]
    first = len([2, 3, 4, 1])
    assert_allclose(beats[first : first + 2 * len(tried)], tried * 2)


@pytest.mark.parametrize(
    ("straight", "one"),
    [
        ([], False), ([(9.0, 29.0)], True), ([(9 + 5e-7, 29 - 5e-7)], True), ([(8.0, 30.0)], True),
        ([(9 + 2e-6, 29.0)], False), ([(9.0, 29 - 2e-6)], False), ([(0.0, 9.0), (9.0, 29.0)], True),
        ([(0.0, 28.0), (10.0, 40.0)], False),
    ],
)  # fmt: skip
def test_a_gap_that_is_to_be_straight_is_one_link(asked, straight, one):
    found = assembled([block(5.0, 9.0), block(29.0, 40.0)], REST, straight=straight)
    assert (len(found.spans) == 7) == one
    if one:
        assert shape(found)[3] == ("l", 9, 29)


def test_a_link_keeps_clear_of_the_body_and_the_other_prop_as_they_are_then(asked):
    """The bodies at 257 looks from the link's start to its end; the other prop only where its room is known."""
    carriage = Carriage(body=BODY)
    blocks = [block(5.0, 9.0)]
    assembled(blocks, REST, space=ROOM)
    beats = np.linspace(3.0, 5.0, 257)
    assert asked[1][3] is ROOM
    assert asked[1][4] == around(carriage, beats)

    class Passing(Held):
        def at(self, beats):
            state = super().at(beats)
            return Motion(
                **{each.name: getattr(state, each.name) for each in fields(Motion)}
                | {"hand": state.hand + np.asarray(beats, float)[..., None] * [0, 1, 0]}
            )

    span = Span(start=0.0, end=20.0, law=Passing(), origin=0.0, kind="block", label="")
    for room, seen in ((None, False), (ROOM, True)):
        other = Trajectory((span,), room)
        del asked[1:]
        assembled(blocks, REST, space=ROOM, other=other)
        found = asked[1][4]
        wanted = around(carriage, beats, (other.at(beats), ROOM.shape) if seen else None)
        assert found == wanted
        assert len(found.radii) == len(BODY.capsules) + 2 * seen
    turned = Carriage(body=Body(stature=1.6))
    del asked[1:]
    assembled(blocks, REST, space=ROOM, carriage=turned)
    assert asked[1][4] == around(turned, beats)
    del asked[1:]
    assembled(blocks, REST, other=Trajectory((span,), ROOM), carriage=turned)
    assert asked[1][4] is None  # without a room of its own nothing is kept clear of
