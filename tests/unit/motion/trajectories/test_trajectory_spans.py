"""Which law or blend a moment belongs to, which pieces cover it, and the formulas of a blend by hand."""

from dataclasses import fields, replace
from itertools import pairwise

import numpy as np
import pytest
from numpy.polynomial import Polynomial
from numpy.testing import assert_allclose, assert_array_equal

from sequencer import kept
from sequencer.geometry.bodies import Body
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.prop import PropPoint, Solid
from sequencer.motion.trajectories import trajectory as module
from sequencer.motion.trajectories.known_states import known_state
from sequencer.motion.trajectories.one_link.link_law import law_record
from sequencer.motion.trajectories.one_link.link_limits import HandSpace
from sequencer.motion.trajectories.one_link.links import link
from sequencer.motion.trajectories.trajectory import Blend, Span, Trajectory
from tests.next_process import next_process
from tests.nothing_kept import nothing_kept

NAMES = [each.name for each in fields(Motion)]
X, Y, Z = np.eye(3)
NONE = np.zeros(3)


def bounds_of(number):
    """Bounds that can be told apart."""
    return Bounds(
        hand_speed=number, hand_acceleration=number, turn_rate=0.0, turn_acceleration=0.0,
        hand_reach=1.0, hand_jerk=number, frame_rate=0.0,
    )  # fmt: skip


class Held:
    """One state for good, but for a hand that goes along x."""

    period = np.inf

    def __init__(self, *, number=1.0, pace=0.0, **state):
        kept = dict.fromkeys(NAMES, NONE) | {"tether": X, "plane": Z} | state
        self.state, self.own, self.pace = kept, bounds_of(number), pace

    def at(self, beats):
        beats = np.asarray(beats, float)
        rows = {name: np.broadcast_to(each, (*beats.shape, 3)) for name, each in self.state.items()}
        rows["hand"] = rows["hand"] + self.pace * beats[..., None] * X
        rows["hand_rate"] = rows["hand_rate"] + self.pace * X
        return Motion(**rows)

    def bounds(self):
        return self.own


def span(start, end, law, kind="block", origin=None):
    origin = start if origin is None else origin
    return Span(start=start, end=end, law=law, origin=origin, kind=kind, label="")


def test_the_numbers_of_a_blend():
    """docs/motion.md, section 5, typed here again."""
    assert module.BLEND_HALF_WIDTH == 0.25
    assert module._SAME == 1e-9
    assert module._BOUND_PIECES == 16
    assert pytest.approx((np.sqrt(6) - np.sqrt(2)) / 4) == module._WIDEST  # cos 75°


def test_a_span_reads_its_law_from_its_origin():
    law = Held(pace=2.0)
    assert_allclose(span(3.0, 5.0, law, origin=1.0).at(4.0).hand, 6 * X)
    with pytest.raises(ValueError, match="must end after it starts, got 3 … 2"):
        span(3, 2, law)


def test_a_trajectory_shows_its_spans():
    law = Held()
    assert repr(Trajectory((span(1.5, 4.0, law),))) == "<Trajectory of 1 span, beats 1.5 … 4>"
    pair = Trajectory((span(1.5, 4.0, law), span(4.0, 9.0, law)))
    assert repr(pair) == "<Trajectory of 2 spans, beats 1.5 … 9>"


@pytest.mark.parametrize(
    ("gap", "follows"),
    [(0.0, True), (1e-6, True), (1.01e-6, False), (-0.99e-6, True), (-1.01e-6, False)],
)
def test_spans_follow_each_other_to_a_millionth_of_a_beat(gap, follows):
    """Before 0, so that the gap is exactly what is typed; also between the last two of three."""
    law = Held()
    for early in ((), (span(-2.0, -1.0, law),)):
        spans = (*early, span(-1.0, 0.0, law), span(gap, 1.0, law))
        if follows:
            assert len(Trajectory(spans).blends) == len(spans) - 1
        else:
            with pytest.raises(ValueError, match="spans must follow each other"):
                Trajectory(spans)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(
    ("apart", "same"), [(0.99e-9, True), (1e-9, False), (1.5e-9, False), (-1.5e-9, False)]
)
def test_laws_that_agree_to_a_billionth_are_not_blended(name, apart, same):
    """Each part of the state counts; the plane only for a flat prop. Exactly a billionth is no longer the same."""
    start = 0.5 * Y if name in ("tether", "plane") else NONE  # its x is 0: nothing is rounded
    body = Body(stature=1.7)
    wide = (Solid("fan", PropPoint(0.0), PropPoint(0.4, 0.1), 0.01),)
    flat = HandSpace(body=body, side="right", length=0.4, solids=wide)
    thin = HandSpace(body=body, side="right", length=0.4)
    for space in (None, thin, flat):
        laws = Held(**{name: start}), Held(**{name: start + apart * X})
        pair = span(0.0, 1.0, laws[0], kind="rest"), span(1.0, 2.0, laws[1], kind="rest")
        # The scale of these tethers is of no meaning, so only whether they are compared is asked.
        first, last = (each.at(np.array(1.0)) for each in pair)
        compared = 7 if space is flat else 6
        apart_now = np.abs(module._columns(first) - module._columns(last))[:compared].max()
        assert (apart_now < 1e-9) == (same or (name == "plane" and space is not flat))
        if name not in ("tether", "tether_rate", "tether_acceleration"):
            half = module._found_blend(pair, space).half
            assert (half == 0.0) == (same or (name == "plane" and space is not flat))


def test_what_the_laws_have_in_common_does_not_part_them():
    """Two laws far from the body's axis, but the same there."""
    law = Held(hand=3 * X + Y, hand_rate=Z)
    assert module._found_blend((span(0.0, 1.0, law), span(1.0, 2.0, law)), None) == Blend(
        1.0, 0.0, None
    )


def test_the_next_process_finds_every_blend_again(tmp_path, monkeypatch):
    """None, a mix, and a link between two opposite tethers, each to the last digit."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.setenv("LOCALAPPDATA", str(tmp_path))
    laws = [
        law_for(name, {}, side="right", body=Body(stature=1.7))
        for name in ("extension", "pro-bend-4")
    ]
    pairs = [
        (Span(start=0.0, end=4.0, law=laws[k], origin=0.0, kind="block", label=""),
         Span(start=4.0, end=8.0, law=laws[m], origin=4.0 - apart, kind="block", label=""))
        for k, m, apart in ((0, 0, 4.0), (0, 0, 0.1), (0, 1, 1.0))
    ]  # fmt: skip
    with nothing_kept():
        anew = [module._found_blend(pair, None) for pair in pairs]
    assert [(each.half > 0, each.bridge is not None) for each in anew] == [
        (False, False), (True, False), (True, True),
    ]  # fmt: skip
    for new in (True, False):
        with monkeypatch.context() as patch, next_process(), kept.shelf("show"):
            if not new:
                patch.setattr(module, "_found_blend", None)
            found = [module._blends(pair, None)[0] for pair in pairs]
        for one, other in zip(found, anew, strict=True):
            assert one[:2] == other[:2]
            assert (one.bridge and law_record(one.bridge)) == (
                other.bridge and law_record(other.bridge)
            )


def test_blends_read_at_once_are_known_one_by_one(monkeypatch, tmp_path):
    """A block is changed in the next process: only the blends beside it are sought."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.setenv("LOCALAPPDATA", str(tmp_path))
    radii = (0.2, 0.22, 0.24, 0.26, 0.28, 0.3)
    laws = [law_for("extension", {"hand_radius": r}, side="right", body=Body()) for r in radii]
    every = [span(2.0 * k, 2.0 * k + 2.0, law) for k, law in enumerate(laws)]
    spans, changed = tuple(every[:5]), (*every[:4], span(8.0, 10.0, laws[5]))
    sought, seek = [], module._found_blend
    with next_process():
        first = module._blends(spans, None)
    with next_process(), monkeypatch.context() as patch:
        patch.setattr(module, "_found_blend", lambda *own: sought.append(own) or seek(*own))
        assert module._blends(spans, None) == first
        assert sought == []
        assert module._blends(changed, None)[:3] == first[:3]
    assert [pair for pair, _ in sought] == [(spans[3], changed[4])]


def test_a_blend_takes_half_of_either_block_wherever_they_lie():
    """The blocks begin late: their lengths count, not where they end."""
    for first, last, half in ((4.0, 4.0, 0.25), (0.3, 4.0, 0.15), (4.0, 0.3, 0.15)):
        own = (
            span(50.0, 50.0 + first, Held()),
            span(50.0 + first, 50.0 + first + last, Held(hand=Y)),
        )
        found = module._found_blend(own, None)
        assert (found.boundary, found.bridge) == (50.0 + first, None)
        assert found.half == pytest.approx(half)


@pytest.mark.parametrize(
    ("kinds", "bridged"),
    [
        (("block", "block"), False), (("block", "rest"), False), (("rest", "block"), False),
        (("link", "block"), True), (("block", "link"), True), (("link", "link"), True),
    ],
)  # fmt: skip
def test_a_link_is_met_by_a_link(kinds, bridged):
    """It leads from the one law's state before the boundary to the other's state after it."""
    laws = Held(pace=0.2), Held(pace=0.1, hand=0.3 * Y)
    pair = [span(10.0 + 2 * k, 12.0 + 2 * k, law, kinds[k]) for k, law in enumerate(laws)]
    blend = module._found_blend(pair, None)
    assert (blend.boundary, blend.half) == (12.0, 0.25)
    assert (blend.bridge is not None) == bridged
    if blend.bridge is not None:
        assert blend.bridge.beats == 0.5
        start, end = (blend.bridge.at(np.array(beat)).hand for beat in (0.0, 0.5))
        assert_allclose(start, 0.2 * 1.75 * X, atol=1e-9)
        assert_allclose(end, 0.1 * 0.25 * X + 0.3 * Y, atol=1e-9)


def test_tethers_exactly_75_degrees_apart_are_not_mixed():
    """Both at rest, so that nothing is added: to the last bit at the limit it is too far."""
    widest = float(module._WIDEST)
    for cosine, may in ((widest, False), (np.nextafter(widest, 1), True)):
        last = Held(tether=np.array([cosine, np.sqrt(1 - cosine**2), 0]))
        own = span(0.0, 4.0, Held()), span(4.0, 8.0, last)
        assert module._can_mix(*own, 4.0, 0.25) == may


class Swung(Held):
    """A tether whose angle in the x-y plane is a polynomial of the beats from 4."""

    def __init__(self, *angle, turn=0.0):
        super().__init__()
        self.angle, self.own = Polynomial(angle), replace(bounds_of(1.0), turn_rate=turn)

    def at(self, beats):
        state = super().at(beats)
        angle = self.angle(np.asarray(beats, float) - 4.0)[..., None]
        return replace(state, tether=np.cos(angle) * X + np.sin(angle) * Y)


@pytest.mark.parametrize(
    ("angle", "may"),
    [
        ((1.0,), True), ((1.4,), False),
        ((1.2, 0.3), True), ((1.2, -0.3), True),  # 75° is 1.309: 1.275 at the worse end
        ((1.2, 0.6), False), ((1.2, -0.6), False),  # 1.35 at the end, or at the start
        ((1.35, 0.0, -3.0), False), ((1.3, 0.0, -3.0), True),  # at the middle
    ],
)  # fmt: skip
def test_tethers_are_looked_at_from_end_to_end_of_a_blend(angle, may):
    """And not beyond it: the angle between both is known throughout."""
    own = span(0.0, 4.0, Swung(0.0), origin=0.0), span(4.0, 8.0, Swung(*angle), origin=0.0)
    assert module._can_mix(*own, 4.0, 0.25) == may


def test_between_two_of_129_looks_both_tethers_may_turn_for_half_a_step():
    """The looks are half/64 apart, so no moment is farther from one than half/128."""
    half, turn = 0.25, 8.0
    for off in (-1e-6, 1e-6):
        angle = np.arccos(np.cos(np.radians(75)) + turn * half / 128 + off)
        pair = Swung(0.0, turn=3.0), Swung(angle, turn=5.0)
        own = span(0.0, 4.0, pair[0], origin=0.0), span(4.0, 8.0, pair[1], origin=0.0)
        assert module._can_mix(*own, 4.0, half) == (off > 0)


def two_kinds():
    """Five spans: a boundary without a blend, a blend, a link with both its bridges, a span used up by blends."""
    a, b, c = Held(number=1.0), Held(number=2.0), Held(number=3.0, hand=0.1 * Y)
    bridge = link(c.at(np.array(0.0)), Held(hand=0.2 * Y).at(np.array(0.0)), 4.0)
    e, f = Held(number=5.0, hand=0.3 * Y), Held(number=6.0, hand=0.4 * Y)
    spans = (
        span(2.0, 6.0, a), span(6.0, 9.0, b), span(9.0, 12.0, c),
        span(12.0, 15.0, bridge, "link", origin=11.5), span(15.0, 15.5, e), span(15.5, 18.0, f),
    )  # fmt: skip
    return Trajectory(spans), (a, b, c, bridge, e, f)


def test_pieces_follow_spans_and_blends():
    """Edges by hand: blends of 16 parts, a link's own sixteenths, cut where a blend begins or ends."""
    course, (a, b, c, bridge, _, f) = two_kinds()
    assert [blend.half for blend in course.blends] == [0.0, 0.25, 0.25, 0.25, 0.25]
    assert [blend.bridge is None for blend in course.blends] == [True, True, False, False, True]
    sixteenth = 0.5 / 16
    parts = [11.5 + 0.25 * k for k in range(17)]  # of the link, from its origin
    wanted = [2.0, 6.0]
    wanted += [8.75 + sixteenth * k for k in range(17)]  # up to 9.25
    wanted += [11.75 + sixteenth * k for k in range(17)]  # up to 12.25
    wanted += [each for each in parts if 12.25 < each < 14.75]
    wanted += [14.75 + sixteenth * k for k in range(17)]  # up to 15.25, where the next one begins
    wanted += [15.25 + sixteenth * k for k in range(1, 17)]  # up to 15.75
    wanted += [18.0]
    pieces = course.pieces(2.0, 18.0)
    assert_allclose([low for low, _, _ in pieces], wanted[:-1], atol=1e-12)
    assert_allclose([high for _, high, _ in pieces], wanted[1:], atol=1e-12)
    assert pieces[0][2] is a.own or pieces[0][2] == a.own
    assert pieces[1][2] == b.own
    assert pieces[18][2] == c.own
    own = [bounds for low, _, bounds in pieces if 12.25 - 1e-9 <= low < 14.75 - 1e-9]
    assert own == [bounds for _, _, bounds in bridge.parts[3:13]]
    assert pieces[-1][2] == f.own
    for blend, start in zip(course.blends[2:4], (11.75, 14.75), strict=True):
        mixed = [bounds for low, _, bounds in pieces if start - 1e-9 <= low < start + 0.5 - 1e-9]
        assert mixed == [bounds for _, _, bounds in blend.bridge.parts]


def test_each_blend_has_the_pieces_of_its_own_two_laws():
    """Three blends between four laws that can be told apart: the same as in a trajectory of two of them."""
    places, numbers = [0.0, 0.1, 0.4, -0.2], [1.0, 4.0, 9.0, 2.0]
    laws = [Held(hand=x * Y, number=n) for x, n in zip(places, numbers, strict=True)]
    spans = [span(2.0 * k, 2.0 * k + 2, law) for k, law in enumerate(laws)]
    course = Trajectory(tuple(spans))
    for k in range(3):
        edges = 2.0 * k + 1.75, 2.0 * k + 2.25
        assert course.pieces(*edges) == Trajectory((spans[k], spans[k + 1])).pieces(*edges)


def test_pieces_of_a_part_are_all_that_overlap_it_cut_to_it():
    """Also beyond both ends, and where the part begins or ends at an edge. Source: the whole list, cut here."""
    course, laws = two_kinds()
    whole = course.pieces(2.0, 18.0)
    every = [(-9.0, 2.0, laws[0].own), *whole, (18.0, 30.0, laws[-1].own)]
    marks = [-3.0, 1.0, 2.0, 3.0, 6.0, 8.75, 8.8, 12.0, 12.25, 15.25, 15.3, 18.0, 19.0, 25.0]
    for start, end in [(a, b) for a in marks for b in marks if a < b]:
        cut = [(max(low, start), min(high, end), own) for low, high, own in every]
        assert list(course.pieces(start, end)) == [each for each in cut if each[0] < each[1]]


def test_short_spans_between_blends_keep_their_piece_and_used_up_ones_have_none():
    """What rounding leaves of a span of twice a blend's half is no piece."""
    for middle, halves in ((0.8, (0.25, 0.25)), (0.3, (0.15, 0.15)), (0.5, (0.25, 0.25))):
        for start in np.linspace(3.0, 5.0, 11):
            laws = Held(), Held(hand=0.1 * Y, number=7.0), Held(hand=0.2 * Y)
            course = Trajectory(
                (
                    span(0.0, start, laws[0]),
                    span(start, start + middle, laws[1]),
                    span(start + middle, 9.0, laws[2]),
                )
            )
            assert [blend.half for blend in course.blends] == pytest.approx(halves)
            pieces = course.pieces(0.0, 9.0)
            assert len(pieces) == 2 + 2 * 16 + (middle == 0.8)
            assert all(b[0] == a[1] for a, b in pairwise(pieces)) or middle != 0.8
            assert all(high - low > 0.01 for low, high, _ in pieces)


def test_each_moment_has_the_state_of_its_own_span():
    """At a boundary that needs no blend, of the later one; outside, of the first and the last."""
    laws = [Held(hand=k * 4e-10 * Y) for k in range(3)]
    far = Held(hand=0.1 * Y)
    course = Trajectory(
        (*(span(k, k + 1.0, law) for k, law in enumerate(laws)), span(3.0, 4.0, far))
    )
    assert [blend.half for blend in course.blends] == [0.0, 0.0, 0.25]
    beats = np.array([-5.0, 0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 2.75, 3.25, 3.5, 9.0])
    own = [0, 0, 0, 1, 1, 2, 2, 2, 3, 3, 3]
    every = [*laws, far]
    wanted = [every[k].state["hand"] for k in own]
    assert_array_equal(course.at(beats).hand, wanted)
    assert_allclose(course.at(np.array(3.0)).hand, 0.05 * Y, atol=1e-9)  # halfway
    assert course.at(np.array(0.5)).hand.shape == (3,)


def test_at_the_edges_of_a_blend_stand_the_laws_themselves():
    """To the last bit: there the blend itself would round, as these numbers show."""
    a, b = 0.3, -0.7000000000000001 / 3
    assert a + 1.0 * (b - a) != b
    course = Trajectory((span(0.0, 4.0, Held(hand=a * Y)), span(4.0, 8.0, Held(hand=b * Y))))
    assert_array_equal(course.at(np.array([3.75, 4.25])).hand[:, 1], [a, b])


def test_each_of_several_blends_mixes_its_own_two_laws():
    """Three blends at rest: at its middle each is halfway, at a quarter 0.103515625 of the way by hand."""
    places = [0.0, 0.1, 0.4, -0.2]
    laws = [Held(hand=place * Y) for place in places]
    course = Trajectory(tuple(span(2.0 * k, 2.0 * k + 2, law) for k, law in enumerate(laws)))
    for k in range(3):
        found = course.at(np.array([2.0 * k + 1.875, 2.0 * k + 2.0])).hand[:, 1]
        step = places[k + 1] - places[k]
        # 10/64 − 15/256 + 6/1024
        assert_allclose(found, [places[k] + 0.103515625 * step, places[k] + 0.5 * step], atol=1e-12)


def test_a_blend_is_the_mixture_by_leibniz():
    """Hand and tether by differences of the mixture of both laws, written down once more."""
    first = Held(hand=0.2 * X, hand_rate=0.3 * Z, hand_acceleration=0.7 * Y, tether=X)
    last = Held(
        hand=0.5 * Y, hand_rate=-0.2 * X, hand_acceleration=0.1 * Z, tether=(X + Y) / np.sqrt(2)
    )
    course = Trajectory((span(0.0, 4.0, first), span(4.0, 5.2, last)))
    t = np.array([0.1, 0.2, 0.31, 0.4])  # of the half-beat's blend from 3.75
    state = course.at(3.75 + t)
    x = t / 0.5
    step = Polynomial([0, 0, 0, 10, -15, 6])
    s, s1, s2 = step(x), step.deriv()(x) / 0.5, step.deriv(2)(x) / 0.25
    gaps = {name: last.state[name] - first.state[name] for name in NAMES}
    for k in range(4):
        mixed = {name: first.state[name] + s[k] * gaps[name] for name in NAMES}
        speed = mixed["hand_rate"] + s1[k] * gaps["hand"]
        push = mixed["hand_acceleration"] + 2 * s1[k] * gaps["hand_rate"] + s2[k] * gaps["hand"]
        assert_allclose(state.hand[k], mixed["hand"], atol=1e-12)
        assert_allclose(state.hand_rate[k], speed, atol=1e-11)
        assert_allclose(state.hand_acceleration[k], push, atol=1e-10)

        def way(at, k=k):
            m = first.state["tether"] + step(x[k] + at / 0.5) * gaps["tether"]
            return m / np.sqrt(m @ m)

        h = 1e-4
        assert_allclose(state.tether[k], way(0.0), atol=1e-12)
        assert_allclose(state.tether_rate[k], (way(h) - way(-h)) / (2 * h), atol=1e-5)
        push = (way(h) - 2 * way(0.0) + way(-h)) / h**2
        assert_allclose(state.tether_acceleration[k], push, atol=1e-4)


RATE, PUSH, JERK = 15 / 8 / 0.5, 10 / np.sqrt(3) / 0.5**2, 60 / 0.5**3  # of half a beat's step
LIVELY = [
    Bounds(
        hand_speed=100.0, hand_acceleration=5.0, turn_rate=50.0, turn_acceleration=2.0,
        hand_reach=0.5, hand_jerk=13.0, frame_rate=0.3,
    ),
    Bounds(
        hand_speed=90.0, hand_acceleration=7.0, turn_rate=40.0, turn_acceleration=3.0,
        hand_reach=0.7, hand_jerk=11.0, frame_rate=0.4,
    ),
]  # fmt: skip


@pytest.mark.parametrize("order", [1, -1])
def test_what_may_move_within_a_part_counts_from_its_middle(order):
    """Two laws at rest that might move: every term of Taylor's and Leibniz's rules, with half a part's beats."""
    laws = Held(), Held(hand=0.1 * Y)
    for law, own in zip(laws, LIVELY[::order], strict=True):
        law.own = own
    spans = span(0.0, 4.0, laws[0]), span(4.0, 8.0, laws[1])
    blend = Blend(4.0, 0.25, None)
    delta = 0.5 / 16 / 2
    found = module._mix_pieces(*spans, blend)
    gap1, apart1 = delta * 12.0, delta * 5.0
    gap, apart = 0.1 + delta * gap1, delta * apart1
    turn1 = 3.0 * delta
    least = np.sqrt(1 - apart**2 / 4)
    turn = (turn1 + RATE * apart) / least
    curve = 3.0 + 2 * RATE * apart1 + PUSH * apart
    shrink = turn1 * apart + RATE * apart**2 / 2
    wanted = {
        "hand_speed": 7.0 * delta + RATE * gap,
        "hand_acceleration": 7.0 + 2 * RATE * gap1 + PUSH * gap,
        "hand_jerk": 13.0 + 3 * RATE * 12.0 + 3 * PUSH * gap1 + JERK * gap,
        "turn_rate": turn,
        "turn_acceleration": np.hypot((curve + 2 * shrink * turn) / least, turn**2),
        "hand_reach": 0.7,
        # planes that lie across: both rates, the first's once more, and the angle they may come to
        "frame_rate": turn + frame_of([own.frame_rate for own in LIVELY[::order]], turn, delta),
    }
    for k, (low, high, bounds) in enumerate(found):
        assert (low, high) == (pytest.approx(3.75 + k / 32), pytest.approx(3.75 + (k + 1) / 32))
        for name, value in wanted.items():
            assert getattr(bounds, name) == pytest.approx(value, rel=1e-12)


def frame_of(own, turn, delta):
    """Rate of the frame about its tether for planes across it that are one."""
    first, last = (2 * (rate + turn) / np.sqrt(1 - ((rate + turn) * delta) ** 2) for rate in own)
    return 2 * first + last + (first + last) * delta * RATE


def test_tethers_that_might_part_within_a_part_are_half_as_long_at_least():
    """Two directions are 2 apart at most; their mixture is proven longer than a half: so much is divided by."""
    laws = Held(), Held(hand=0.1 * Y)
    for law in laws:
        law.own = replace(LIVELY[0], turn_rate=0.1, turn_acceleration=1e4)
    found = module._mix_pieces(
        span(0.0, 4.0, laws[0]), span(4.0, 8.0, laws[1]), Blend(4.0, 0.25, None)
    )
    assert found[3][2].turn_rate == pytest.approx((0.1 + RATE * 2) / 0.5, rel=1e-12)


def test_a_unit_vectors_rates_are_its_differences():
    """Of a vector that grows, turns and speeds up at once; rows of any depth."""
    a, b, c, d = np.random.default_rng(3).normal(size=(4, 2, 2, 3)) * 0.5 + X

    def m(t):
        return a + b * t + c * t**2 + d * t**3

    def way(t):
        return m(t) / np.sqrt((m(t) ** 2).sum(axis=-1, keepdims=True))

    h = 1e-4
    found = module._normalised(m(0.0), b, 2 * c)
    assert_allclose(found[0], way(0.0), atol=1e-14)
    assert_allclose(found[1], (way(h) - way(-h)) / (2 * h), atol=1e-6)
    assert_allclose(found[2], (way(h) - 2 * way(0.0) + way(-h)) / h**2, atol=1e-5)


def test_a_plane_rolls_about_the_tether_from_the_first_to_the_last():
    """About z, from 20° to 110° or to −40° the shorter way; what leans along the tether does not count."""
    degrees = np.radians([20.0, 20.0, 20.0, 20.0, 20.0])
    goals = np.radians([110.0, 110.0, 110.0, -40.0, -170.0])
    step = np.array([0.0, 0.5, 1.0, 0.5, 0.25])
    turned = np.radians([20.0, 65.0, 110.0, -10.0, 20 + 170 / 4])
    turned[4] = np.radians(20.0 - 190.0 / 4 + 360.0 / 4)  # 190° back is 170° ahead

    def plane(angles, lean):
        flat = np.cos(angles)[:, None] * X + np.sin(angles)[:, None] * Y
        return np.cos(lean) * flat + np.sin(lean) * Z

    found = module._plane_between(plane(degrees, 0.5), plane(goals, -0.8), np.tile(Z, (5, 1)), step)
    assert_allclose(found, plane(turned, 0.0), atol=1e-12)


def roll(tethers, planes, own, *, at=4.0, delta=0.01, turn=0.5, pace=3.0):
    """The bound on one part of a blend of half a beat about beat 4."""
    states = [
        Motion(**{name: np.zeros((1, 3)) for name in NAMES} | {"tether": d[None], "plane": p[None]})
        for d, p in zip(tethers, planes, strict=True)
    ]
    found = module._frame_rates(
        Blend(4.0, 0.25, None), (states[0], states[1]), own, np.array([at]), delta,
        np.array([turn]), pace,
    )  # fmt: skip
    return float(found[0])


def leant(lean, angle=0.0):
    """A plane that leans towards the tether x, rolled about it."""
    return np.sin(lean) * X + np.cos(lean) * (np.cos(angle) * Y + np.sin(angle) * Z)


@pytest.mark.parametrize("leans", [(0.0, 0.0), (0.6, -0.9), (-1.1, 0.3)])
@pytest.mark.parametrize("angle", [0.0, 0.7, -2.0])
def test_a_frame_turns_no_faster_than_its_tether_its_planes_and_the_roll_between_them(leans, angle):
    """One tether x: each plane's own (2p' + 2d')/c, the angle's rate, and the angle times the step's rate."""
    own, turn, delta, pace = (0.4, 0.9), 0.5, 0.01, 3.0
    rates = []
    for lean, rate in zip(leans, own, strict=True):
        most = abs(np.sin(lean)) + (rate + turn) * delta
        rates.append(2 * (rate + turn) / np.sqrt(1 - most**2))
    widest = abs(angle) + sum(rates) * delta
    wanted = turn + rates[0] + sum(rates) + widest * pace
    found = roll((X, X), (leant(leans[0]), leant(leans[1], angle)), own)
    assert found == pytest.approx(wanted, rel=1e-12)


@pytest.mark.parametrize("at", [3.8, 3.9, 4.0, 4.15])
def test_a_frame_is_measured_at_the_tether_halfway(at):
    """From x towards y by the step; the first plane leans by what it has along that, the last lies across."""
    x = (at - 3.75) / 0.5
    s = 10 * x**3 - 15 * x**4 + 6 * x**5
    d = (1 - s) * X + s * Y
    d = d / np.hypot(*d[:2])
    most = [abs(p @ d) + (rate + 0.5) * 0.01 for p, rate in (((0.8 * Z + 0.6 * Y), 0.4), (Z, 0.9))]
    rates = [2 * (r + 0.5) / np.sqrt(1 - m**2) for r, m in zip((0.4, 0.9), most, strict=True)]
    across = (0.8 * Z + 0.6 * Y) - (0.6 * Y @ d) * d  # and z itself: both across the tether
    angle = np.arccos(across @ Z / np.sqrt(across @ across))
    wanted = 0.5 + 2 * rates[0] + rates[1] + (angle + sum(rates) * 0.01) * 3.0
    assert roll((X, Y), (0.8 * Z + 0.6 * Y, Z), (0.4, 0.9), at=at) == pytest.approx(
        wanted, rel=1e-12
    )


def test_a_plane_along_the_tether_proves_nothing():
    """Less than a tenth of it lies across: 0.11 is enough, 0.09 is not, nor is none at all."""
    still = {"turn": 0.0, "delta": 1e-9}
    for across, proves in ((0.11, True), (0.09, False), (0.0, False)):
        lying = np.sqrt(1 - across**2) * X + across * Y
        for planes in ((lying, Y), (Y, lying)):
            assert np.isfinite(roll((X, X), planes, (0.4, 0.4), **still)) == proves
    # So much may change within the part that the plane may come to lie along the tether.
    assert roll((X, X), (Y, Y), (0.1, 0.1), turn=3.0, delta=0.5) == np.inf


def test_half_a_turn_between_planes_proves_nothing():
    """Exactly half a turn, with nothing that moves; a little less is the angle times the step's rate."""
    still = {"turn": 0.0, "delta": 0.0}
    assert roll((X, X), (Y, -Y), (0.0, 0.0), **still) == np.inf
    assert roll((X, X), (Y, leant(0.0, 3.0)), (0.0, 0.0), **still) == pytest.approx(9.0)
    assert roll((X, X), (Y, leant(0.0, 3.0)), (0.0, 0.0), turn=0.0, delta=0.1) == pytest.approx(9.0)
    assert roll((X, X), (Y, leant(0.0, 3.0)), (1.0, 1.0), turn=0.0, delta=0.1) == np.inf


def test_same_spans_are_the_same_objects_and_others_are_not():
    """Every part of a span tells it from another: law, place, kind and label; and 0.0 from -0.0."""
    law, other = Held(), Held()
    one = Span(start=0.0, end=4.0, law=law, origin=0.0, kind="block", label="a")
    changes = (
        {}, {"law": other}, {"start": 1.0}, {"end": 3.0}, {"origin": 1.0}, {"kind": "rest"},
        {"label": "b"}, {"start": -0.0}, {"origin": -0.0},
    )  # fmt: skip
    each = [replace(one, **change) for change in changes]
    first = module.same_spans(each)
    assert all(a is b for a, b in zip(first, each, strict=True))
    again = module.same_spans([replace(one, **change) for change in changes])
    assert all(a is b for a, b in zip(first, again, strict=True))


def test_a_few_moments_are_what_all_together_are():
    """At, and to the last digit beside, the edges of blends of different widths: only blends near them are looked at."""
    laws = [Held(number=k, hand=k * Y) for k in range(6)]
    edges = [0.0, 4.0, 4.2, 4.6, 8.0, 12.0, 13.0]
    own = Trajectory(
        tuple(span(low, high, law) for (low, high), law in zip(pairwise(edges), laws, strict=True))
    )
    marks = [
        blend.boundary + side * blend.half for blend in own.blends for side in (-1, -0.5, 0, 1)
    ]
    beats = np.sort(
        np.concatenate([marks, np.nextafter(marks, -99), np.nextafter(marks, 99), [-3.0, 20.0]])
    )
    together = own.at(beats)
    for k, beat in enumerate(beats):
        for some in (np.array([beat]), np.array(beat)):
            assert_array_equal(own.at(some).hand.reshape(3), together.hand[k])
    assert own.at(np.zeros(0)).hand.shape == (0, 3)


def test_the_state_at_a_border_is_that_of_the_law_and_known_again():
    """The same arrays where the same law is asked at the same of its beats; 0.0 and -0.0 are told apart."""
    law = law_for("extension", {}, side="right", body=Body())
    span = Span(start=3.0, end=7.0, law=law, origin=2.5, kind="block", label="")
    later = Span(start=13.0, end=17.0, law=law, origin=12.5, kind="block", label="")
    for beat in (3.0, 7.0):
        found, plain = span.state_at(beat), span.at(np.array(beat))
        for part in ("hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "plane"):
            assert getattr(found, part).tobytes() == getattr(plain, part).tobytes()
        assert later.state_at(beat + 10.0) is found
        assert span.state_at(beat + 1e-12) is not found
    other = law_for("extension", {}, side="right", body=Body())
    assert known_state(other, 0.5) is not known_state(law, 0.5)
    assert known_state(law, 0.0) is not known_state(law, -0.0)
