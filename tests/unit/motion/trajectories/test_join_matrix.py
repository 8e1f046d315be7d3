"""The join matrix cell by cell against single pairs, and its links against limits asked one by one."""

from dataclasses import fields

import numpy as np
import pytest
from numpy.testing import assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import cycle_beats, law_for, patterns
from sequencer.motion.trajectories import join_matrix as module
from sequencer.motion.trajectories.join_matrix import JoinMatrix, join_matrix
from sequencer.motion.trajectories.joining import VERDICTS, Tolerances, gap_between, shifts_of
from sequencer.motion.trajectories.one_link.hand_paths import hand_paths, whole
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits
from sequencer.motion.trajectories.one_link.link_search import stacked
from sequencer.motion.trajectories.one_link.sphere import sphere_candidates

NAMES = [each.name for each in fields(Motion)]
BODY = Body(stature=1.7)
CHOSEN = ("static-spin", "pro-bend-3", "windmill", "toroid")


def test_a_matrix_is_read_by_name_and_counted():
    """Typed by hand: rows are the first pattern."""
    kind = np.array([[0, 2, 2], [4, 1, 2], [3, 0, 0]])
    none = np.full((3, 3), np.nan)
    matrix = JoinMatrix(names=("a", "b", "c"), kind=kind, shift=none, link_beats=none)
    assert matrix.verdict("a", "b") == "needs a link"
    assert matrix.verdict("b", "a") == "cannot join"
    assert matrix.verdict("c", "a") == "wrong way round"
    assert matrix.counts() == {
        "joins": 3, "joins after a shift": 1, "needs a link": 3, "wrong way round": 1, "cannot join": 1,
    }  # fmt: skip
    only = JoinMatrix(names=("a",), kind=np.array([[2]]), shift=none, link_beats=none)
    assert list(only.counts()) == list(VERDICTS)
    assert only.counts()["joins"] == 0


OTHER = {
    "side": "left", "body": Body(stature=1.5), "length": 0.7,
    "tolerances": Tolerances(hand=0.4, axis_deg=40.0, tether_deg=60.0),
    "limits": LinkLimits(hand_speed=3.0),
}  # fmt: skip


@pytest.mark.parametrize("more", [{}, OTHER], ids=["usual", "all given"])
def test_each_cell_is_the_verdict_of_its_pair(monkeypatch, more):
    """Shift by shift; the links are asked for once, for the states at the end and at the beginning without a shift."""
    asked = []

    def shortest(first, last, space, limits):
        asked.append((first, last, space, limits))
        return np.array([1.0 + k if k % 3 else np.nan for k in range(len(first.hand))])

    monkeypatch.setattr(module, "_shortest", shortest)
    matrix = join_matrix(names=CHOSEN, **more)
    body, length = more.get("body", BODY), more.get("length", 0.51)
    tolerances, side = more.get("tolerances", Tolerances()), more.get("side", "right")
    laws = [law_for(name, {}, side=side, body=body, tether=length) for name in CHOSEN]
    linked = []
    for i, (name, law) in enumerate(zip(CHOSEN, laws, strict=True)):
        end = law.at(np.array(cycle_beats(name, {})))
        for k, following in enumerate(laws):
            shifts = shifts_of(following)
            gaps = gap_between(end, following.at(shifts), length)
            fits = shifts[gaps.within(tolerances)].tolist()
            if fits and fits[0] == 0:
                wanted, shift = "joins", np.nan
            elif gaps.reversed_in_place(tolerances)[0]:
                wanted, shift = "wrong way round", np.nan
            elif fits:
                wanted, shift = "joins after a shift", fits[0]
            else:
                linked.append((end, following.at(np.array(0.0))))
                n = len(linked) - 1
                wanted, shift = ("needs a link" if n % 3 else "cannot join"), np.nan
                assert_array_equal(matrix.link_beats[i, k], 1.0 + n if n % 3 else np.nan)
            assert matrix.verdict(name, CHOSEN[k]) == wanted
            assert_array_equal(matrix.shift[i, k], shift)
            if wanted not in ("needs a link", "cannot join"):
                assert np.isnan(matrix.link_beats[i, k])
    ((first, last, space, limits),) = asked
    for part in NAMES:
        for found, own in ((first, 0), (last, 1)):
            rows = [getattr(pair[own], part) for pair in linked]
            np.testing.assert_allclose(getattr(found, part), rows, atol=1e-12)
    assert space == HandSpace(body=body, side=side, length=length)
    assert limits == more.get("limits", LinkLimits())
    assert len(matrix.counts()) == 5
    assert len({*matrix.kind.ravel()}) >= 4 or more


def test_all_names_of_a_book_in_their_order():
    """A book of two patterns; by default the built-in ones."""
    book = {name: patterns()[name] for name in ("toroid", "static-spin")}
    assert join_matrix(book).names == ("toroid", "static-spin")
    assert join_matrix(names=("toroid",)).names == ("toroid",)
    with pytest.raises(Exception, match="windmill"):
        join_matrix(book, names=("windmill",))


def rows(seed, n):
    """States of a hand before the body, a tether that turns."""
    draw = np.random.default_rng(seed)
    tether = draw.normal(size=(n, 3))
    tether /= np.sqrt((tether**2).sum(axis=1))[:, None]
    axis = np.cross(tether, draw.normal(size=(n, 3)))
    axis /= np.sqrt((axis**2).sum(axis=1))[:, None]
    spin = draw.uniform(2.0, 7.0, size=(n, 1))
    return Motion(
        hand=BODY.shoulder("right") + draw.uniform(-0.35, 0.35, (n, 3)),
        hand_rate=draw.uniform(-0.3, 0.3, (n, 3)), hand_acceleration=draw.uniform(-1, 1, (n, 3)),
        tether=tether, tether_rate=spin * np.cross(axis, tether),
        tether_acceleration=-(spin**2) * tether, plane=axis,
    )  # fmt: skip


def row(motion, k):
    return Motion(**{name: getattr(motion, name)[k : k + 1] for name in NAMES})


def test_the_shortest_link_is_the_first_within_limits_of_each_pair_for_itself():
    """In 1, 2, 3, 4 and then half a beat: any hand path with any tether path, each asked alone."""
    n = 3
    first, last = (module._at(rows(seed, 7), slice(2, 5)) for seed in (3, 4))
    space = HandSpace(body=BODY, side="right", length=0.5)
    limits = LinkLimits(
        hand_speed=0.8, hand_acceleration=5.0, turn_rate=8.2, turn_acceleration=45.0
    )
    wanted = []
    for k in range(n):
        a, b = row(first, k), row(last, k)
        own = np.nan
        for beats in (1.0, 2.0, 3.0, 4.0, 0.5):
            span = np.array([beats])
            hands = hand_paths(a, b, span, shoulder=space.shoulder, arm=space.arm)
            ways = sphere_candidates(stacked(a, b), span)
            good = (way for way in ways if np.isfinite(way.peak[0]))
            if any(limits.keep_moving(path, span, space)[0] for path in hands) and any(
                limits.keep_turning(whole(way.angles), span)[0] for way in good
            ):
                own = beats
                break
        wanted.append(own)
    found = module._shortest(first, last, space, limits)
    assert_array_equal(found, wanted)
    assert_array_equal(
        found, [2.0, np.nan, 1.0]
    )  # one of each kind, so that they can be told apart
    one = module._shortest(row(first, 0), row(first, 0), space, LinkLimits(turn_rate=99, turn_acceleration=999, hand_acceleration=99))  # fmt: skip
    assert_array_equal(one, [1.0])
    none = Motion(**{name: np.zeros((0, 3)) for name in NAMES})
    assert module._shortest(none, none, space, limits).shape == (0,)


def test_states_are_joined_and_picked_part_by_part():
    draw = np.random.default_rng(4)
    parts = [Motion(**{name: draw.normal(size=(n, 3)) for name in NAMES}) for n in (2, 1)]
    both = module._joined(parts)
    picked = module._at(both, np.array([2, 0]))
    for name in NAMES:
        whole_ = np.concatenate([getattr(part, name) for part in parts])
        assert_array_equal(getattr(both, name), whole_)
        assert_array_equal(getattr(picked, name), whole_[[2, 0]])
