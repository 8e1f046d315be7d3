"""Links part by part: polynomials, frames and bounds a second way, scores by hand, choices as approved."""

from dataclasses import fields, replace
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.polynomial import Polynomial
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import ROUNDING_UP
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.peaks import twisting
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.one_link import link_law, link_search, link_words, links
from sequencer.motion.trajectories.one_link.hand_paths import (
    Piecewise,
    hand_figures,
    hand_paths,
    places,
    whole,
)
from sequencer.motion.trajectories.one_link.link_gaps import (
    Around,
    least_gaps,
    rods_of,
    sample_fractions,
)
from sequencer.motion.trajectories.one_link.link_law import LinkLaw, hand_at, know_parts
from sequencer.motion.trajectories.one_link.link_limits import (
    LinkLimits,
    PaceLimits,
    hand_space_of,
    tether_bounds,
    tether_figures,
)
from sequencer.motion.trajectories.one_link.link_search import FoundLink
from sequencer.motion.trajectories.one_link.links import found_link
from sequencer.motion.trajectories.one_link.sphere import pointings, polynomial, sphere_candidates
from sequencer.motion.trajectories.rests import rest

X, Y, Z = np.eye(3)
BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
FAN = Prop(
    kind="fan", length=0.35, mass=0.5, head_mass=0.04, wicks=3, spread=np.radians(110),
    wick_radius=0.03,
)  # fmt: skip
NAMES = [each.name for each in fields(Motion)]


def drawn(seed, *shape):
    return np.random.default_rng(seed).normal(size=shape)


def test_the_numbers_of_the_search():
    """This project's choices, typed here again: a changed one changes which link is chosen."""
    assert (link_search.STILL_SPEED, link_search.CLEAN, link_search.CLEAR, link_search.CROWDED) == (
        1e-6,
        0.03,
        0.08,
        10.0,
    )
    assert (link_search.LAST, link_search._ROUND, link_search.FIRST, link_search.FINALISTS) == (
        256,
        5e-4,
        4,
        20,
    )
    assert link_search.HALTS == (4, 2)
    assert link_search.ASIDES == (
        (0.25, 0.0, 0.0), (0.5, 0.0, 0.0), (0.0, 0.3, 0.0), (0.25, 0.3, 0.0), (0.45, 0.45, 0.0),
        (0.0, 0.0, 0.3), (0.3, 0.0, 0.3), (0.3, -0.2, 0.0), (-0.2, 0.3, 0.0), (0.3, 0.0, -0.2),
    )  # fmt: skip


def state(**parts):
    kept = {name: np.zeros(3) for name in NAMES} | {"tether": X, "plane": Z}
    return Motion(**{name: np.array(each, float) for name, each in {**kept, **parts}.items()})


UNEVEN = Piecewise((0, 3, 16), drawn(3, 2, 2, 6, 3))


def test_a_hand_is_read_from_its_piece_with_rates_by_beats():
    """Pieces that do not meet: at a knot the later one counts; beyond both ends the outer ones go on."""
    x = np.array([-0.2, 0.0, 0.1, 3 / 16, 0.5, 1.0, 1.2, 0.05])
    owner, beats = [0, 0, 0, 1, 1, 1, 1, 0], 2.5
    found = hand_at(UNEVEN, beats, x)
    for i, k in enumerate(owner):
        low, width = (0, 3 / 16)[k], (3 / 16, 13 / 16)[k]
        for m in range(3):
            own = Polynomial(UNEVEN.pieces[0, k, :, m])
            local = (x[i] - low) / width
            wanted = [
                own(local),
                own.deriv()(local) / (beats * width),
                own.deriv(2)(local) / (beats * width) ** 2,
            ]
            assert_allclose([part[i, m] for part in found], wanted, rtol=1e-10, atol=1e-10)


def law_of(*, tilt=(0.4, -1.1), beats=2.5):
    frame = np.linalg.qr(drawn(4, 3, 3))[0]
    frame = frame * np.sign(np.linalg.det(frame))
    return LinkLaw(
        beats=beats,
        hand=whole(drawn(5, 1, 6, 3)),
        frame=frame,
        angles=whole(0.4 * drawn(6, 1, 6, 2)),
        tilt=tilt,
    )


def test_a_link_is_its_polynomials_in_its_frame():
    """Hand and angles by numpy's own polynomials; rates by differences; the plane tilted about the tether."""
    law = law_of()
    beats = np.array([[0.0, 0.7, 1.1], [1.9, 2.5, 2.0]])
    found = law.at(beats)

    def hand(t):
        own = [Polynomial(law.hand.pieces[0, 0, :, m])(t / 2.5) for m in range(3)]
        return np.stack(own, axis=-1)

    def tether(t):
        alpha, psi = (Polynomial(law.angles.pieces[0, 0, :, m])(t / 2.5)[..., None] for m in (0, 1))
        p = law.frame
        return np.cos(psi) * (np.cos(alpha) * p[0] + np.sin(alpha) * p[1]) + np.sin(psi) * p[2]

    for place, names in ((hand, NAMES[:3]), (tether, NAMES[3:6])):
        value, rate, push = (getattr(found, name) for name in names)
        h = 1e-4
        low, mid, high = place(beats - h), place(beats), place(beats + h)
        assert_allclose(value, mid, atol=1e-12)
        assert_allclose(rate, (high - low) / (2 * h), atol=1e-5)
        assert_allclose(push, (high - 2 * mid + low) / h**2, atol=1e-4)
    x = beats / 2.5
    turn = 0.4 - 1.5 * (10 * x**3 - 15 * x**4 + 6 * x**5)
    up = law.frame[2] - (found.tether @ law.frame[2])[..., None] * found.tether
    psi = Polynomial(law.angles.pieces[0, 0, :, 1])(x)
    up = up / np.cos(psi)[..., None]  # towards the pole, also beyond it
    wanted = np.cos(turn)[..., None] * up + np.sin(turn)[..., None] * np.cross(found.tether, up)
    assert_allclose(found.plane, wanted, atol=1e-12)
    assert law.at(np.array(0.3)).plane.shape == (3,)


def test_a_link_names_its_beats_and_never_repeats():
    assert repr(law_of(beats=1)) == "<LinkLaw of 1 beat>"
    assert repr(law_of(beats=2.5)) == "<LinkLaw of 2.5 beats>"
    assert law_of().period == float("inf")


@pytest.mark.parametrize("tilt", [(0.4, -1.1), (0.4, 1.3), (0.7, 0.7)])
def test_the_bounds_of_a_link_are_its_largest_control_points(tilt):
    """Each sixteenth for itself. The frame: azimuth and elevation lie across each other; the tilt's step of 15/8."""
    law, span = law_of(tilt=tilt), np.array([2.5])
    turn, push = tether_figures(law.angles, span)
    bend = np.abs(law.angles.controls(1, span)[0]).max(axis=1)

    def most(order, axes=3):
        return np.sqrt((law.hand.controls(order, span)[0][..., :axes] ** 2).sum(axis=-1)).max(
            axis=1
        )

    roll = 15 / 8 * abs(tilt[1] - tilt[0]) / 2.5
    # ω = α'p + ψ'e + τ'd with p across e, |e'| = |α'| and |d'|; a step speeds up by 10/√3 at most.
    curve = np.abs(law.angles.controls(2, span)[0]).max(axis=1)
    speeding = np.sqrt(curve[:, 0] ** 2 + curve[:, 1] ** 2) + bend[:, 0] * bend[:, 1]
    speeding += 10 / np.sqrt(3) * abs(tilt[1] - tilt[0]) / 2.5**2 + roll * turn[0]
    wanted = {
        "hand_speed": most(1), "hand_acceleration": most(2), "hand_jerk": most(3),
        "hand_reach": most(0, 2), "turn_rate": turn[0], "turn_acceleration": push[0],
        "frame_rate": np.sqrt(bend[:, 0] ** 2 + bend[:, 1] ** 2) + roll,
        "turn_jerk": tether_bounds(law.angles, span).jerk[0],
        "frame_acceleration": speeding + (np.sqrt(bend[:, 0] ** 2 + bend[:, 1] ** 2) + roll) ** 2,
    }  # fmt: skip
    assert len(law.parts) == 16
    for k, (low, high, bounds) in enumerate(law.parts):
        assert (low, high) == (pytest.approx(k * 2.5 / 16), pytest.approx((k + 1) * 2.5 / 16))
        for name, rows in wanted.items():
            assert getattr(bounds, name) == pytest.approx(rows[k] * ROUNDING_UP, rel=1e-12)
    for name, rows in wanted.items():
        assert getattr(law.bounds(), name) == pytest.approx(rows.max() * ROUNDING_UP, rel=1e-12)


@pytest.mark.parametrize("side", ["left", "right"])
def test_the_reach_of_a_link_is_that_of_its_hand(side):
    law = law_of()
    reach = hand_figures(law.hand, np.array([2.5]), body=BODY, side=side)[0][0]
    assert law.reach_of(BODY, side) == pytest.approx(reach * ROUNDING_UP, rel=1e-12)


def test_the_worst_of_some_bounds_is_the_worst_of_each_kind():
    """Each of three is the largest in one kind or other, typed."""
    names = ["hand_speed", "hand_acceleration", "turn_rate", "turn_acceleration", "hand_reach", "hand_jerk", "frame_rate",
             "frame_acceleration", "turn_jerk"]  # fmt: skip
    rows = np.array(
        [[1, 5, 3, 2, 9, 1, 4, 7, 2], [7, 2, 3, 8, 1, 2, 6, 3, 5], [3, 4, 6, 5, 2, 9, 1, 1, 8]],
        float,
    )
    found = link_law.worst(*(Bounds(**dict(zip(names, row, strict=True))) for row in rows))
    assert [getattr(found, name) for name in names] == [7, 5, 6, 8, 9, 9, 6, 7, 8]


@pytest.mark.parametrize("tilt", [(0.4, -1.1), (0.4, 1.3), (0.7, 0.7)])
def test_dense_differences_stay_within_the_bounds_of_the_jerk_and_of_the_frame(tilt):
    """Third differences of the tether, second ones of the plane and of what lies across both."""
    law = law_of(tilt=tilt)
    tightest = dict.fromkeys(("turn_jerk", "frame_acceleration"), 0.0)
    for low, high, bounds in law.parts:
        beats = np.linspace(low, high, 201)
        step, state = beats[1] - beats[0], law.at(beats)
        sizes = {
            "turn_jerk": [np.diff(state.tether, 3, axis=0) / step**3],
            "frame_acceleration": [
                np.diff(each, 2, axis=0) / step**2
                for each in (state.plane, state.tether, np.cross(state.plane, state.tether))
            ],
        }
        for name, each in sizes.items():
            found = max(np.linalg.norm(part, axis=-1).max() for part in each)
            most = getattr(bounds, name)
            assert found <= most * (1 + 1e-3) + 1e-2
            tightest[name] = max(tightest[name], found / most)
    assert min(tightest.values()) > 0.35


def test_the_axis_of_a_tether_at_rest_is_its_plane():
    """Up to a millionth of a turn per beat it is at rest; one state, rows, and rows of rows."""
    for speed, axis in ((0.0, Z), (1e-6, Z), (1.1e-6, -Y), (3.0, -Y), (0.9e-6, Z)):
        own = state(tether_rate=speed * Z)
        assert_allclose(link_search.axis_of(own), axis, atol=1e-12)
    rows = {name: np.stack([getattr(state(), name)] * 2) for name in NAMES}
    rows["tether_rate"] = np.array([0.1 * Z, 0 * Z])
    wanted = np.array([-Y, Z])
    assert_allclose(link_search.axis_of(Motion(**rows)), wanted, atol=1e-12)
    deep = Motion(**{name: np.stack([part] * 3) for name, part in rows.items()})
    assert_allclose(link_search.axis_of(deep), np.stack([wanted] * 3), atol=1e-12)


def test_ends_are_stacked_pair_by_pair():
    first = state(tether=Y, tether_rate=2 * Z, tether_acceleration=3 * Z)
    last = state(tether=Z, tether_rate=-X, tether_acceleration=5 * X)
    one = link_search.stacked(first, last)
    assert_array_equal(one.tether, [[Y, Z]])
    assert_array_equal(one.rate, [[2 * Z, -X]])
    assert_array_equal(one.acceleration, [[3 * Z, 5 * X]])
    assert_allclose(one.axis, [[X, -Y]])
    rows = [
        Motion(**{name: np.stack([getattr(each, name)] * 2) for name in NAMES})
        for each in (first, last)
    ]
    two = link_search.stacked(*rows)
    assert_array_equal(two.tether, [[Y, Z], [Y, Z]])
    assert_allclose(two.axis, [[X, -Y], [X, -Y]])


BOUNDS = Bounds(
    hand_speed=1.0, hand_acceleration=2.0, turn_rate=6 * np.pi, turn_acceleration=40.0,
    hand_reach=9.0,
)  # fmt: skip
WIDE = LinkLimits(
    hand_speed=1.0, hand_acceleration=2.0, turn_rate=6 * np.pi, turn_acceleration=40.0
)


@pytest.mark.parametrize(
    ("which", "most", "words"),
    [
        ("hand_speed", 0.9, "the hand would have to move too fast (1 m/beat, limit 0.9)"),
        ("turn_rate", 5 * np.pi, "the prop would have to turn too fast (3 times a beat, limit 2.5)"),
        ("hand_acceleration", 1.9, "the hand would have to brake and start too sharply (2 m/beat², limit 1.9)"),
        (
            "turn_acceleration", 39.5,
            "the prop would have to brake and whip round too sharply (40, limit 39.5)",
        ),
    ],
)  # fmt: skip
def test_a_link_says_which_limit_it_breaks(which, most, words):
    """Exactly at every limit nothing is broken; reach comes first, and a millimetre is allowed."""
    room = hand_space_of(BODY, "right", POI)
    asked = []

    def law(reach):
        def reach_of(*who):
            asked.append(who)
            return reach

        return SimpleNamespace(bounds=lambda: BOUNDS, reach_of=reach_of)

    arm = BODY.arm_length
    assert link_words.limit_broken(WIDE, law(arm), room) == ""
    assert link_words.pace_broken(replace(WIDE, **{which: most}), law(arm)) == words
    tight = replace(WIDE, **{which: most})
    assert link_words.limit_broken(tight, law(arm + 0.0009), room) == words
    far = (
        f"the hand would be 10 cm out of reach: {arm + 0.1:.3f} m from the shoulder, "
        f"with an arm of {arm:.3f} m"
    )
    assert link_words.limit_broken(tight, law(arm + 0.1), room) == far
    just = link_words.limit_broken(WIDE, law(arm + 0.0011), room)
    assert just == link_words.out_of_reach(arm + 0.0011, arm) != ""
    assert link_words.limit_broken(WIDE, law(arm + 1e-3), room) == ""
    assert set(asked) == {(BODY, "right")}


@pytest.mark.parametrize(
    ("kept", "gap", "clean"),
    [(True, 0.03, True), (True, 0.0299, False), (True, 0.5, True), (False, 0.5, False)],
)
def test_a_link_is_clean_within_limits_and_with_its_gap(kept, gap, clean):
    assert FoundLink(law_of(), kept=kept, gap=gap, needed=0.03).clean == clean


@pytest.mark.parametrize("beats", [0.0, -1.0, np.inf, np.nan])
def test_a_link_takes_some_beats(beats):
    with pytest.raises(ValueError, match="a link's beats must be positive, got"):
        found_link(state(), state(), beats)


def test_looks_of_a_link_are_spread_from_start_to_end():
    assert_allclose(links.sample_beats(3.0, 5.5), np.linspace(3.0, 5.5, 257))


def test_a_state_is_packed_and_unpacked_part_by_part():
    own = Motion(**dict(zip(NAMES, drawn(8, 7, 3), strict=True)))
    again = links._unpacked(links._packed(own))
    for name in NAMES:
        assert_array_equal(getattr(again, name), getattr(own, name))


def swung(angle, spin, push=0.0):
    """A tether in the x-y plane."""
    d, across = (
        np.array([np.cos(angle), np.sin(angle), 0]),
        np.array([-np.sin(angle), np.cos(angle), 0]),
    )
    return {
        "tether": d,
        "tether_rate": spin * across,
        "tether_acceleration": push * across - spin**2 * d,
    }


FIRST = state(hand=(0.3, 0.4, 1.2), hand_rate=(0.5, 0, 0.2), plane=Z, **swung(0.2, 2.0))
LAST = state(hand=(0.2, 0.5, 1.0), hand_acceleration=(0, 1, 0), plane=Z, **swung(1.5, 3.0, 1.0))


def test_the_ways_of_a_tether_are_all_candidates_within_limits_first_then_the_gentlest():
    """Against the candidates themselves, whose peaks are sampled elsewhere."""
    beats, limits, x = 1.5, LinkLimits(turn_acceleration=90.0, turn_rate=7.0), np.array([0.3])
    last = replace(LAST, tether_rate=LAST.tether_rate + 2 * Z, hand=Y)
    found = link_search._ways(FIRST, last, beats, limits)
    assert found.angles.knots == (0, 16)
    tethers = pointings(found.frames, places(found.angles, x))[:, 0]
    rows = []
    for way in sphere_candidates(link_search.stacked(FIRST, last), np.array([beats])):
        if np.isfinite(way.peak[0]):
            over = not limits.keep_turning(whole(way.angles), np.array([beats]))[0]
            tether = pointings(way.frames, polynomial(way.angles, x)[0])[0, 0]
            rows.append((over, way.peak[0], tether))
    order = sorted((over, peak) for over, peak, _ in rows)
    assert found.over.tolist() == [over for over, _ in order]
    assert_allclose(found.peak, [peak for _, peak in order], rtol=1e-9)
    assert 0 < sum(found.over) < len(rows)
    assert max(found.peak[~found.over]) > min(found.peak[found.over])  # limits come first
    for over, peak, tether in rows:
        like = (found.over == over) & (np.abs(found.peak - peak) < 1e-6)
        assert np.abs(tethers[like] - tether).max(axis=1).min() < 1e-9


def test_where_no_pole_will_do_there_is_no_way(monkeypatch):
    monkeypatch.setattr("sequencer.motion.trajectories.one_link.sphere.LEAST_COSINE", 1.1)
    with pytest.raises(ValueError, match="no path between the two tethers was found"):
        link_search._ways(FIRST, LAST, 1.0, LinkLimits())


@pytest.mark.parametrize("halt", [2, 4])
def test_ways_with_halts_turn_least_between_their_stops_one_loop_more_or_one_less(halt):
    """Direction, rate and acceleration at both ends by differences; halts at rest; the loops in threes."""
    beats = 2.0
    plain = link_search._ways(FIRST, LAST, beats, LinkLimits())
    found = link_search._ways(FIRST, LAST, beats, LinkLimits(), halt=halt)
    assert found.angles.knots == (0, halt, 16 - halt, 16)
    assert len(found.peak) == len(plain.peak)
    assert np.all(np.diff(found.peak[~found.over]) >= 0)
    h, x = 1e-4, np.array([0.0, 1e-4, 2e-4, 1 - 2e-4, 1 - 1e-4, 1.0])
    tethers = pointings(found.frames, places(found.angles, x))
    assert_allclose(tethers[:, 0], np.broadcast_to(FIRST.tether, tethers[:, 0].shape), atol=1e-9)
    assert_allclose(tethers[:, -1], np.broadcast_to(LAST.tether, tethers[:, -1].shape), atol=1e-9)
    slope = (4 * tethers[:, 1] - 3 * tethers[:, 0] - tethers[:, 2]) / (2 * h * beats)
    assert_allclose(slope, np.broadcast_to(FIRST.tether_rate, slope.shape), atol=1e-3)
    slope = (3 * tethers[:, 5] - 4 * tethers[:, 4] + tethers[:, 3]) / (2 * h * beats)
    assert_allclose(slope, np.broadcast_to(LAST.tether_rate, slope.shape), atol=1e-3)
    # a stop at 0.4 of the way that the rate would lead; from stop to stop at most half a turn, or a loop more
    stops = places(found.angles, np.array([halt, 16 - halt]) / 16)[..., 0]
    turned = np.sort(np.abs(stops[:, 1] - stops[:, 0])) / np.pi
    third = len(turned) // 3
    assert np.all(turned[:third] <= 1 + 1e-9)
    assert np.all(turned[third:] >= 1 - 1e-9)
    assert np.all(turned <= 3 + 1e-9)


@pytest.mark.parametrize("least", [np.pi - 0.05, 0.4, 0.05 - np.pi])
@pytest.mark.parametrize("loops", [-3, 0, 4])
def test_stops_are_a_loop_apart_in_threes_about_the_least(least, loops):
    """Azimuth from 0.3 at 2 rad per link, arriving at 5 rad per link: halts of a quarter of the link.

    By hand: the stops lie 0.4·¼·2 = 0.2 after the start and 0.4·¼·5 = 0.5 before the end. The middle one of
    three turns least between them; a term forgotten would take it over half a turn in one case or other.
    """
    goal = 0.3 + 0.2 + least + 0.5 + 2 * np.pi * loops
    start = np.array([[[0.3, 0.1], [2.0, 0.3], [1.0, -1.0]]] * 6)
    end = np.array(
        [[[goal + 2 * np.pi * k, -0.4], [5.0, 0.2], [-2.0, 0.5]] for k in (-1, 0, 1, 2, 3, 4)]
    )
    system = np.linalg.inv(
        [
            [1, 0, 0, 0, 0, 0], [0, 1, 0, 0, 0, 0], [0, 0, 2, 0, 0, 0],
            [1, 1, 1, 1, 1, 1], [0, 1, 2, 3, 4, 5], [0, 0, 2, 6, 12, 20],
        ]
    )  # fmt: skip
    found = link_search._halting(system @ np.concatenate((start, end), axis=1), 4)
    assert found.knots == (0, 4, 12, 16)
    low, high = places(found, np.array([0.25, 0.75]))[..., 0].T
    assert_allclose(low, 0.5)
    assert_allclose(high - low, least + 2 * np.pi * np.array([-1, 0, 1, -1, 0, 1]))
    edges = places(found, np.array([0.0, 1.0]))
    assert_allclose(edges[:, 0], start[:, 0])
    assert_allclose(edges[:, 1, 1], -0.4)


def test_jets_are_values_and_rates_of_every_path():
    x = np.array([0.1, 0.6])
    found = link_search._jets(UNEVEN, 2.0, x)
    for n in range(2):
        one = hand_at(Piecewise(UNEVEN.knots, UNEVEN.pieces[n : n + 1]), 2.0, x)
        for part, own in zip(found, one, strict=True):
            assert_array_equal(part[n], own)


def test_without_a_room_the_gentlest_plain_path_is_taken():
    """Even where it breaks the limits and another one does not."""
    usual = link_search._ways(FIRST, LAST, 1.5, LinkLimits())
    for limits in (None, LinkLimits(turn_rate=0.1)):
        found = found_link(FIRST, LAST, 1.5, limits=limits)
        assert (found.kept, found.gap, found.needed) == (True, np.inf, 0.03)
        plain = hand_paths(
            link_search._rows(FIRST, 1),
            link_search._rows(LAST, 1),
            np.array([1.5]),
            shoulder=X,
            arm=1.0,
        )[0]
        assert_array_equal(found.law.hand.pieces, plain.pieces)
        tether = pointings(usual.frames[:1], places(usual.angles, np.array([0.4]))[:1])[0, 0]
        assert_allclose(found.law.at(np.array(0.6)).tether, tether, atol=1e-9)
        assert found.law.beats == 1.5
    # Where the limits of acceleration sort a harsher way first, the gentlest is taken all the same.
    keep = LinkLimits(turn_rate=usual.peak[0])
    assert links.link(FIRST, LAST, 1.5, limits=keep).bounds() == found.law.bounds()


def test_a_link_meets_both_states_plane_included():
    for last in (LAST, replace(LAST, plane=-Z)):
        law = links.link(FIRST, last, 1.5)
        for own, at in ((FIRST, 0.0), (last, 1.5)):
            found = law.at(np.array(at))
            for name in NAMES:
                assert_allclose(getattr(found, name), getattr(own, name), atol=1e-8)


def test_scores_are_what_a_gap_lacks_and_how_hard_a_pair_is():
    """To a millimetre; 10 per metre below 8 cm; what is out of reach counts as lacking."""
    gaps = np.array([0.10, 0.08, 0.03, 0.0, -0.0206])
    far = np.array([0.0, 0.0, 0.0, 0.5, 0.0])
    short, hard = link_search._scores(gaps, 0.03, far, np.array([1.0, 2.0, 3.0, 4.0, 5.0]))
    assert_allclose(short, [0.0, 0.0, 0.0, 0.53, 0.051], atol=1e-12)
    assert_allclose(hard, [1.0, 2.0, 3.5, 4.8, 6.006], atol=1e-12)


def test_pairs_are_ordered_by_what_they_lack_then_by_how_hard_they_are():
    short, hard = np.array([0.1, 0.0, 0.0, 0.1, 0.0]), np.array([1.0, 3.0, 2.0, 0.5, 2.0])
    assert link_search._order(short, hard).tolist() == [2, 4, 1, 3, 0]


@pytest.mark.parametrize("crowded", [False, True])
def test_the_first_pairs_are_those_of_all_gaps(crowded):
    """However few gaps are found: sorted by hand with all of them. Harshness and lack repeat, so that some tie."""
    draw = np.random.default_rng(21)
    far, harsh = draw.integers(0, 2, 90) / 100, draw.integers(0, 30, 90) / 4
    gaps = draw.integers(-2, 5, 90) / 100 if crowded else np.full(90, 0.2)
    asked = []

    def found(part):
        asked.extend(part.tolist())
        return gaps[part]

    short, hard = link_search._scores(gaps, 0.03, far, harsh)
    every = sorted(range(90), key=lambda k: (short[k], hard[k], k))
    ranking = link_search._Ranking(far, harsh, found, at_first=2)
    for count in (1, 4, 20, 90, 100):
        assert ranking.first(count).tolist() == every[:count]
    assert sorted(asked) == list(range(90))  # each once
    if not crowded:
        assert asked[:20] == every[:20]  # none that could not be among them
    first = every[0]
    assert (ranking.short[first], ranking.hard[first]) == (short[first], hard[first])
    assert ranking.gaps[first] == gaps[first]
    needed = link_search._Ranking(far, harsh, found, needed=-0.01)
    short, hard = link_search._scores(gaps, -0.01, far, harsh)
    assert needed.first(3).tolist() == sorted(range(90), key=lambda k: (short[k], hard[k], k))[:3]


def test_one_of_several_stacks_of_paths():
    more = Piecewise((0, 16), drawn(9, 3, 1, 6, 3))
    for row, (paths, own) in enumerate(((UNEVEN, 0), (UNEVEN, 1), (more, 0), (more, 1), (more, 2))):
        found = link_search._row([UNEVEN, more], row)
        assert found.knots == paths.knots
        assert_array_equal(found.pieces, paths.pieces[own : own + 1])
    with pytest.raises(ValueError, match="there is no such path"):
        link_search._row([UNEVEN, more], 5)


def test_a_state_in_rows():
    rows = link_search._rows(FIRST, 3)
    for name in NAMES:
        assert_array_equal(getattr(rows, name), [getattr(FIRST, name)] * 3)


def test_up_is_the_slope_of_the_direction_by_elevation():
    turns = np.array([[0.3, -0.7], [2.0, 1.2], [-2.5, 0.0]])
    h = 1e-6
    ends = [pointings(np.eye(3)[None], (turns + np.array([0, k * h]))[None])[0] for k in (-1, 1)]
    assert_allclose(link_law.up_from(turns), (ends[1] - ends[0]) / (2 * h), atol=1e-9)
    assert_array_equal(link_law.up_from(turns[0]), link_law.up_from(turns)[0])


@pytest.mark.parametrize(
    ("angles", "tilts"),
    [
        ((0.0, 0.0), (0.0, 0.0)), ((0.5, 2.0), (0.5, 2.0)), ((-0.5, 3.0), (-0.5, 3.0 - 2 * np.pi)),
        ((3.0, -3.0), (3.0, 2 * np.pi - 3.0)), ((-3.0, 3.0), (-3.0, 3.0 - 2 * np.pi)),
        ((2.0, -1.0), (2.0, -1.0)), ((1.0, -2.1), (1.0, -2.1)),
    ],
)  # fmt: skip
def test_a_tilt_goes_the_shorter_way_round(angles, tilts):
    """Planes turned about their tethers from the direction towards the pole, by hand: about x from z to −y."""
    frame = np.array([Y, Z, X])  # azimuth 0 is y, the pole x
    ends = []
    for azimuth, angle in zip((0.0, np.pi / 2), angles, strict=True):
        tether = np.cos(azimuth) * Y + np.sin(azimuth) * Z
        plane = np.cos(angle) * X + np.sin(angle) * np.cross(tether, X)
        ends.append(state(tether=tether, plane=plane))
    turns = np.array([[0.0, 0.0], [0.7, 0.3], [np.pi / 2, 0.0]])
    assert_allclose(link_search._tilts(frame, turns, *ends), tilts, atol=1e-12)
    law = link_search._law(
        whole(drawn(1, 1, 6, 3)),
        link_search._Ways(
            np.stack([np.eye(3), frame]),
            whole(np.array([np.ones((6, 2)), [[0, 0], [np.pi / 2, 0], *[[0, 0]] * 4]])),
            np.zeros(2), np.zeros(2, bool),
        ),
        1, 2.0, *ends,
    )  # fmt: skip
    assert_allclose(law.tilt, tilts, atol=1e-12)
    assert_array_equal(law.frame, frame)
    assert law.beats == 2.0


def search(prop, side="right", beats=2.0, limits=None):
    """A search from a static spin to rest, and its ways."""
    law = law_for("static-spin", {}, side=side, body=BODY, tether=prop.length)
    ends = law.at(np.array(0.3)), rest(side, BODY, prop).at(np.array(0.0))
    keep = limits or LinkLimits()
    low = np.array([c.start for c in BODY.capsules])[:, None] + np.zeros((1, 257, 1))
    high = np.array([c.end for c in BODY.capsules])[:, None] + np.zeros((1, 257, 1))
    bodies = Around(
        starts=low.tobytes(), ends=high.tobytes(), radii=tuple(c.radius for c in BODY.capsules)
    )
    own = link_search._Search(*ends, beats, hand_space_of(BODY, side, prop), keep, bodies)
    return own, link_search._ways(*ends, beats, keep)


@pytest.mark.parametrize("side", ["left", "right"])
def test_hands_are_led_outwards_on_their_own_side(side):
    """The first of a displacement is to the outside, in arms: against the paths themselves."""
    own, _ = search(POI, side)
    out = {"left": -1.0, "right": 1.0}[side]
    asides = np.array([[0.25, 0.1, -0.2], [0.5, 0.0, 0.0]])
    for given, count in ((None, 1), (asides, 2)):
        aside = None if given is None else given * [out, 1, 1] * BODY.arm_length
        wanted = hand_paths(
            link_search._rows(own.first, count), link_search._rows(own.last, count), np.full(count, 2.0),
            shoulder=BODY.shoulder(side), arm=BODY.arm_length, aside=aside,
        )  # fmt: skip
        for path, other in zip(own._hands(given), wanted, strict=True):
            assert path.knots == other.knots
            assert_allclose(path.pieces, other.pieces, atol=1e-12)


def test_a_flat_prop_lies_where_the_link_lays_its_plane():
    """Its wide direction is plane × tether of the finished link; of a poi there is none to tell."""
    x = np.array([0.0, 0.3, 0.8, 1.0])
    own, ways = search(FAN)
    rows = np.array([3, 0])
    tethers, wide = own._turns(ways, rows, x)
    for k, row in enumerate(rows):
        law = link_search._law(own._hands(None)[0], ways, int(row), 2.0, own.first, own.last)
        state = law.at(2.0 * x)
        assert_allclose(tethers[k], state.tether, atol=1e-12)
        assert_allclose(wide[k], np.cross(state.plane, state.tether), atol=1e-9)
    own, ways = search(POI)
    tethers, wide = own._turns(ways, rows, x)
    assert wide is tethers


def measured(own, found, law):
    """Score of a link from its law alone: what is missing, and how hard it is."""
    x = sample_fractions()
    motion = law.at(own.beats * x)
    wide = np.cross(motion.plane, motion.tether)
    gap = float(least_gaps(motion.hand, motion.tether, wide, rods_of(own.space.shape), own.obstacles.arrays()))  # fmt: skip
    reach, _, push = hand_figures(law.hand, np.array([own.beats]), body=BODY, side=own.space.side)
    looks = law.at(own.beats * np.arange(25) / 24)
    peak = np.linalg.norm(looks.tether_acceleration, axis=-1).max()
    hard = push[0] / own.limits.hand_acceleration + peak / own.limits.turn_acceleration
    far = 10 * max(reach[0] - own.space.arm, 0.0)
    short = round(max(found.needed - gap, 0.0) + far, 3)
    return gap, short, hard + 10 * max(0.08 - gap, 0.0)


@pytest.mark.parametrize("beats", [2.0, 0.5])
@pytest.mark.parametrize("prop", [POI, FAN], ids=["poi", "fan"])
def test_the_score_of_the_best_pair_is_that_of_its_link(prop, beats):
    """Measured again on the finished link, by its states at all looks."""
    own, ways = search(prop, beats=beats)
    best = own.best(None, ways)
    gap, short, hard = measured(own, best.found, best.found.law)
    assert best.found.gap == pytest.approx(gap, abs=1e-9)
    assert best.found.kept == (best.score[0] == 0.0)
    assert best.score[1] == pytest.approx(short, abs=1e-9)
    assert best.score[2] == pytest.approx(hard, rel=1e-9)


def test_the_best_pair_is_the_best_of_all():
    """All pairs measured finely, one by one: where it is clean the two looks at a few lose nothing."""
    own, ways = search(POI)
    picked = np.arange(0, len(ways.peak), 4)
    paths = Piecewise(ways.angles.knots, ways.angles.pieces[picked])
    ways = link_search._Ways(ways.frames[picked], paths, ways.peak[picked], ways.over[picked])
    hands = own._hands(None)
    every = []
    for h in range(len(hands)):
        for w in range(len(ways.peak)):
            law = link_search._law(link_search._row(hands, h), ways, w, 2.0, own.first, own.last)
            kept = own.limits.keep_moving(law.hand, np.array([2.0]), own.space)[0]
            over = int(not kept) + int(ways.over[w])
            found = SimpleNamespace(needed=0.03)
            every.append((over, *measured(own, found, law)[1:]))
    assert own.best(None, ways).score == pytest.approx(min(every), abs=1e-9)


@pytest.mark.parametrize(
    ("clean", "scores", "looked", "chosen"),
    [
        (True, [0.5, 0.1], [4], 0), (False, [0.5, 0.1], [4, 16], 1), (False, [0.1, 0.5], [4, 16], 0),
        (False, [0.1, 0.1], [4, 16], 0),
    ],
)  # fmt: skip
def test_four_pairs_are_looked_at_finely_and_sixteen_more_if_none_is_clean(
    monkeypatch, clean, scores, looked, chosen
):
    """The better one counts, the first of two as good; each pair with what its own rows say."""
    own, ways = search(POI)
    law, seen = law_of(), []

    def finely(self, sets, ways, h, w, far, harsh):
        seen.append((h, w, far, harsh))
        gap = 0.05 if clean else 0.01
        found = FoundLink(law, kept=True, gap=gap + len(seen), needed=0.03 if clean else 9.0)
        return link_search._Best((7.0, scores[len(seen) - 1], 0.0), found)

    monkeypatch.setattr(link_search._Search, "_finely", finely)
    best = own.best(None, ways)
    assert [len(h) for h, *_ in seen] == looked
    assert best.score == (0.0, scores[chosen], 0.0)
    assert best.found.gap == (0.05 if clean else 0.01) + 1 + chosen
    hands = own._hands(None)
    for h, w, far, harsh in seen:
        for k in range(len(h)):
            path = link_search._row(hands, int(h[k]))
            reach, _, push = hand_figures(path, np.array([2.0]), body=BODY, side="right")
            assert far[k] == pytest.approx(10 * max(reach[0] - BODY.arm_length, 0.0))
            assert harsh[k] == pytest.approx(push[0] / 25.0 + ways.peak[w[k]] / 160.0)
    every = {(int(a), int(b)) for h, w, *_ in seen for a, b in zip(h, w, strict=True)}
    assert len(every) == sum(looked)  # none twice


@pytest.mark.parametrize("out", [0.03, 0.2])
def test_what_is_out_of_reach_counts_ten_times_as_lacking(out):
    """From a hand farther away than the arm: no path is within the limits, and all lack as much at least."""
    own, ways = search(POI)
    shoulder = BODY.shoulder("right")
    far = shoulder + (BODY.arm_length + out) * np.array([0, 0, -1.0]) + 0.0
    own = replace(own, first=replace(own.first, hand=far, hand_rate=0 * X, hand_acceleration=0 * X))
    best = own.best(None, ways)
    _, short, hard = measured(own, best.found, best.found.law)
    assert best.score == (1.0, pytest.approx(short, abs=1e-9), pytest.approx(hard, rel=1e-9))
    assert short >= 10 * out - 1e-3
    assert not best.found.kept


def test_given_bodies_are_kept_clear_of_instead_of_the_performers_own():
    """A ball on the way of the link that is found without it; the performer's body is then not looked at."""
    own, _ = search(POI)
    room = hand_space_of(BODY, "right", POI)
    usual = found_link(own.first, own.last, 2.0, room)
    middle = usual.law.at(np.array(1.0))
    spot = np.broadcast_to(middle.hand + 0.4 * middle.tether, (1, 257, 3)).tobytes()
    ball = Around(starts=spot, ends=spot, radii=(0.05,))
    found = found_link(own.first, own.last, 2.0, room, obstacles=ball)
    assert found.clean
    x = sample_fractions()
    for law, clear in ((usual.law, False), (found.law, True)):
        motion = law.at(2.0 * x)
        gap = least_gaps(
            motion.hand, motion.tether, motion.tether, rods_of(room.shape), ball.arrays()
        )
        assert (gap > 0.03) == clear
    assert found.gap == pytest.approx(float(gap), abs=1e-9)


def test_one_pair_alone_is_measured_as_any():
    own, ways = search(POI)
    for h in (0, 2):
        best = own._finely(
            own._hands(None), ways, np.array([h]), np.array([1]), np.array([0.25]), np.array([7.0])
        )
        law = link_search._law(
            link_search._row(own._hands(None), h), ways, 1, 2.0, own.first, own.last
        )
        gap = measured(own, best.found, law)[0]
        assert best.found.gap == pytest.approx(gap, abs=1e-9)
        short = round(max(0.03 - gap, 0.0) + 0.25, 3)
        assert best.score == pytest.approx((0.0, short, 7.0 + 10 * max(0.08 - gap, 0.0)))
        assert best.found.kept
        assert_allclose(best.found.law.at(np.array(0.9)).tether, law.at(np.array(0.9)).tether)
        assert_allclose(best.found.law.hand.pieces, law.hand.pieces)


@pytest.mark.parametrize("count", [3, 4, 5])
def test_where_there_are_no_more_than_four_pairs_four_is_all(monkeypatch, count):
    own, ways = search(POI)
    fewer = Piecewise(ways.angles.knots, ways.angles.pieces[:count])
    ways = link_search._Ways(ways.frames[:count], fewer, ways.peak[:count], ways.over[:count])
    one = own._hands(None)[1:2]
    monkeypatch.setattr(link_search._Search, "_hands", lambda *_: one)
    seen = []

    def finely(self, sets, ways, h, w, far, harsh):
        seen.append(len(h))
        found = FoundLink(law_of(), kept=True, gap=0.0, needed=0.03)
        return link_search._Best((0.0, 1.0, 0.0), found)

    monkeypatch.setattr(link_search._Search, "_finely", finely)
    own.best(None, ways)
    assert seen == ([count] if count <= 4 else [4, 1])


STAFF = Prop(kind="staff", length=0.7, behind=0.5, mass=0.7, head_mass=0.1, wick_radius=0.04)


def twists(own, law):
    """Torque of the hand at many moments of a link by itself [N·m at a beat a second]."""
    return twisting(law, STAFF, 1.0).value(own.beats * np.arange(2001) / 2000)


def test_a_pair_that_twists_the_hand_too_hard_gives_way_to_one_that_does_not():
    """Every pair against the torque of its finished link, the weight as it is at a beat a second."""
    own, ways = search(STAFF)
    free = own.best(None, ways)
    assert not free.found.twisted
    hands = own._hands(None)
    own = replace(own, limits=PaceLimits(torque=1e9).at(1.0))
    own = replace(own, limits=replace(own.limits, gravity=9.80665))
    most = {}
    for h in range(len(hands)):
        for w in range(len(ways.peak)):
            law = link_search._law(link_search._row(hands, h), ways, w, 2.0, own.first, own.last)
            most[h, w] = twists(own, law).max()
    for torque in (0.7 * min(most.values()), np.median(list(most.values())), 1e5):
        own = replace(own, limits=replace(own.limits, torque=float(torque)))
        heavy = own._heavy(hands, ways)
        for pair, value in most.items():
            if value > torque:
                assert heavy[pair]
            elif value < 0.95 * torque:
                assert not heavy[pair]
        found = own.best(None, ways).found
        assert found.twisted == bool(heavy.all())
        assert found.kept
        assert found.clean == (not found.twisted)
        if not found.twisted:
            assert twists(own, found.law).max() <= torque
        elif (
            found.gap > 0.1
        ):  # clear, as some other may not be: then one that twists about as little as any
            assert twists(own, found.law).max() <= 1.02 * min(most.values())


def test_a_line_is_never_too_heavy_and_nothing_is_without_a_limit():
    for prop, limits in ((POI, replace(LinkLimits(), torque=1e-9)), (STAFF, LinkLimits())):
        own, ways = search(prop, limits=limits)
        assert not own._heavy(own._hands(None), ways).any()


def test_of_links_that_are_not_clean_one_that_meets_nothing_is_better_than_one_that_twists_less():
    def found(gap, **more):
        return FoundLink(law_of(), kept=True, gap=gap, needed=0.03, **more)

    ranked = [found(-0.1, twisted=True), found(-0.1), found(0.01), found(0.05, twisted=True), found(0.06, twisted=True)]  # fmt: skip
    merits = [each.merit for each in ranked]
    assert merits == sorted(merits)
    assert found(0.04).merit > merits[-1]
    assert (
        FoundLink(law_of(), kept=False, gap=0.5, needed=0.03).merit < merits[0]
    )  # limits come first
    assert not any(each.clean for each in ranked)


def test_limits_that_a_pair_breaks_are_counted():
    """Neither hand nor tether, one of them, or both: the least number of all pairs."""
    for limits, count in (
        (LinkLimits(), 0), (LinkLimits(hand_speed=0.01), 1), (LinkLimits(turn_rate=0.01), 1),
        (LinkLimits(hand_speed=0.01, turn_rate=0.01), 2),
    ):  # fmt: skip
        own, ways = search(POI, limits=limits)
        best = own.best(None, ways)
        assert best.score[0] == count
        assert best.found.kept == (count == 0)


def test_what_the_ends_of_a_link_allow_is_all_that_is_needed():
    """A ball 1 cm from the head at the end of the link: half a millimetre less is clean; 5 cm: 3 cm are."""
    for off, needed in ((0.01, 0.0095), (-0.02, -0.0205), (0.05, 0.03)):
        own, ways = search(POI)
        spot = own.last.hand + 0.5 * own.last.tether + (0.05 + 0.02 + off) * X
        ball = np.broadcast_to(spot, (1, 257, 3)).tobytes()
        around = Around(starts=ball, ends=ball, radii=(0.02,))
        found = replace(own, obstacles=around).best(None, ways).found
        assert found.needed == pytest.approx(needed, abs=1e-9)
        start = own.first.hand + 0.5 * own.first.tether + (0.05 + 0.02 + off) * X
        ball = np.broadcast_to(start, (1, 257, 3)).tobytes()
        around = Around(starts=ball, ends=ball, radii=(0.02,))
        found = replace(own, obstacles=around).best(None, ways).found
        assert found.needed <= needed + 1e-9


# Approved: what the search chose. A changed choice changes what dancers are shown, and must be seen.
APPROVED = [
    ("static-spin", POI, "right", 2.0, {}, True, 0.175294, 0.03, (0, 16), (0, 16),
     [0.252647, 0.394082, 1.208731], [-0.508652, 0.0, 0.860972], [0.411739, -0.878237, 0.243251]),
    ("antispin-flower-3", FAN, "left", 2.0, {}, True, 0.145544, 0.03, (0, 8, 16), (0, 16),
     [0.050848, 0.480988, 1.265111], [-0.637656, 0.0, 0.770321], [0.368387, 0.878237, 0.304944]),
    ("buzzsaw", POI, "right", 1.0, {}, True, -0.05712, -0.05762, (0, 16), (0, 16),
     [0.174723, 0.366833, 1.208731], [0.0, -0.613661, 0.789569], [-1.0, 0.0, 0.0]),
    ("corkscrew", FAN, "right", 2.0, {}, True, 0.045419, 0.03, (0, 16), (0, 16),
     [0.643023, 0.032379, 1.481609], [-0.686973, -0.336333, 0.644165], [-0.504838, 0.858494, -0.090148]),
    ("overhead-weave", POI, "left", 2.0, {}, True, 0.088343, 0.03, (0, 4, 12, 16), (0, 16),
     [-0.262477, -0.06887, 1.584092], [0.0, 0.508652, 0.860972], [-1.0, 0.0, 0.0]),
    ("iso-bend-5", POI, "left", 2.0, {}, True, -0.033619, -0.022135, (0, 8, 16), (0, 2, 14, 16),
     [-0.34431, 0.42102, 1.137275], [0.268108, -0.457188, -0.847996], [0.342599, -0.777436, 0.527464]),
    ("two-beat-weave", FAN, "right", 2.0, {}, True, 0.085313, 0.03, (0, 6, 10, 16), (0, 16),
     [-0.046832, 0.301699, 1.271642], [-0.128109, 0.512887, 0.848843], [0.472232, -0.721096, 0.506969]),
    ("windmill", POI, "right", 1.0, {"hand_speed": 0.5}, False, 0.175294, 0.03, (0, 8, 16), (0, 16),
     [0.384358, 0.00159, 1.591426], [0.565722, -0.530136, 0.631597], [0.125078, -0.701917, -0.701191]),
    ("overhead-weave", POI, "left", 2.0, {"turn_acceleration": 30.0}, False, 0.082965, 0.03,
     (0, 4, 12, 16), (0, 16),
     [-0.291996, 0.141074, 1.48243], [0.0, 0.508652, 0.860972], [-1.0, 0.0, 0.0]),
]  # fmt: skip


@pytest.mark.parametrize(
    "case", APPROVED, ids=[f"{c[0]} {c[1].kind} {c[2]} {c[3]} {len(c[4])}" for c in APPROVED]
)
def test_the_search_chooses_what_was_approved(case):
    """From a third of a beat into a pattern to rest: led aside, with halts, crowded, beyond a limit."""
    name, prop, side, beats, limits, kept, gap, needed, hands, angles, *middle = case
    law = law_for(name, {}, side=side, body=BODY, tether=prop.length)
    ends = law.at(np.array(0.3)), rest(side, BODY, prop).at(np.array(0.0))
    room, most = hand_space_of(BODY, side, prop), LinkLimits(**limits) if limits else None
    found = found_link(*ends, beats, room, most)
    assert found.kept == kept
    assert (found.gap, found.needed) == (
        pytest.approx(gap, abs=2e-6),
        pytest.approx(needed, abs=2e-6),
    )
    assert (found.law.hand.knots, found.law.angles.knots) == (hands, angles)
    state = found.law.at(np.array(0.4 * beats))
    for part, wanted in zip((state.hand, state.tether, state.plane), middle, strict=True):
        assert_allclose(part, wanted, atol=2e-6)


def test_parts_that_are_worked_out_together_are_those_of_each_alone():
    """Links of other beats, tilts and knots beside it change no digit of a link's bounds."""
    draw = np.random.default_rng(7)

    def drawn():
        return [
            LinkLaw(
                beats=float(beats),
                hand=Piecewise(knots, draw.normal(size=(1, len(knots) - 1, 6, 3))),
                frame=np.eye(3),
                angles=Piecewise((0, 16), draw.normal(size=(1, 1, 6, 2))),
                tilt=(0.1, float(tilt)),
            )
            for beats, knots, tilt in zip(
                (0.5, 1.0, 1.37, 2.0, 3.3), ((0, 16), (0, 4, 12, 16)) * 2 + ((0, 16),), (0.1, 2.0, -1.0, 0.7, 0.0), strict=True,
            )
        ]  # fmt: skip

    laws = drawn()
    alone = [law.parts for law in laws]
    draw = np.random.default_rng(7)
    again = drawn()
    know_parts([*again, again[0]])
    assert [vars(law)["parts"] for law in again] == alone
    assert len({law.parts[3][2] for law in again}) == len(laws)
