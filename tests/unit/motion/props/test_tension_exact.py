"""Searches for a tempo look again just where the bounds written out here leave a doubt; hand work by hand.

The bounds are worked out part by part from the formulas of docs/motion.md, section 6: a term that is missing
changes which parts are looked at again, and shows even where no tempo changes.
"""

from dataclasses import dataclass, replace
from itertools import pairwise
from math import inf, sqrt

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props import tension
from sequencer.motion.props.tension import (
    GRAVITY,
    HandWork,
    TautTempo,
    beats_a_second,
    farthest_flight,
    force_across,
    hand_work,
    leaves,
    lowest_tempo,
    pull,
)

LENGTH = 0.45


def test_constants_are_those_told():
    """Typed again: m/s², relative error, beats a minute, parts, beats."""
    assert (tension.GRAVITY, tension.TEMPO_ERROR, tension.EVERY_TEMPO) == (
        9.80665,
        2e-6,
        0.1,
    )  # one g for all
    assert (tension.FASTEST_TEMPO, tension.MOST_PARTS, tension.NARROWEST) == (
        1000.0,
        2_000_000,
        1e-9,
    )
    assert (tension._SAMPLES, tension._ROUNDING) == (4096, 1e-12)
    assert TautTempo(lowest=1.0, error=0.0, at=0.0).highest == inf


@dataclass
class Waves:
    """Tether at a = spin·t + sway·sin(f·t) from up, in the plane that leans by `lean` about x; hand along two axes."""

    spin: float = 2 * np.pi
    sway: float = 0.0
    f: float = 2 * np.pi
    up: float = 0.0
    side: float = 0.0
    g: float = 2 * np.pi
    period: float = 1.0
    bounds_more: float = 1.0

    def __post_init__(self):
        self.asked = []

    def at(self, beats):
        t = np.asarray(beats, float)
        self.asked.append(t)
        a = self.spin * t + self.sway * np.sin(self.f * t)
        a1 = self.spin + self.sway * self.f * np.cos(self.f * t)
        a2 = -self.sway * self.f**2 * np.sin(self.f * t)
        zero = np.zeros_like(t)

        def vector(x, z):
            return np.stack([x, zero, z], axis=-1)

        out, across = vector(np.sin(a), np.cos(a)), vector(np.cos(a), -np.sin(a))
        s, c = np.sin(self.g * t), np.cos(self.g * t)
        return Motion(
            hand=vector(0.2 + self.side * c, 1.3 + self.up * s),
            hand_rate=self.g * vector(-self.side * s, self.up * c),
            hand_acceleration=-(self.g**2) * vector(self.side * c, self.up * s),
            tether=out,
            tether_rate=a1[..., None] * across,
            tether_acceleration=a2[..., None] * across - a1[..., None] ** 2 * out,
            plane=0 * out,
        )

    def bounds(self):
        w, most = abs(self.spin) + self.sway * self.f, max(self.up, self.side)
        return Bounds(
            hand_speed=most * self.g, hand_acceleration=1.1 * most * self.g**2, turn_rate=1.2 * w,
            turn_acceleration=self.bounds_more * np.hypot(self.sway * self.f**2, w**2),
            hand_reach=1.0, hand_jerk=1.3 * most * self.g**3,
        )  # fmt: skip


def figures(law, parts):
    """Middle, half, d_z, its slope, and A = r|d'|² − d·h'' of every part."""
    own = [((low + high) / 2, (high - low) / 2) for low, high in parts]
    state = law.at(np.array([t for t, _ in own]))
    law.asked.pop()
    d, d1, h2 = state.tether, state.tether_rate, state.hand_acceleration
    outward = LENGTH * (d1**2).sum(axis=1) - (d * h2).sum(axis=1)
    return [(*own[k], d[k, 2], d1[k, 2], outward[k]) for k in range(len(own))]


def slope_of(law):
    """2r|d'||d''| + |d'||h''| + |h'''|, by the product rule."""
    own = law.bounds()
    return (
        2 * LENGTH * own.turn_rate * own.turn_acceleration
        + own.turn_rate * own.hand_acceleration
        + own.hand_jerk
    )


def halved(parts):
    return [
        half for low, high in parts for half in ((low, (low + high) / 2), ((low + high) / 2, high))
    ]


def lowest_by_hand(law, edges):
    """Looks of every round, the largest g·d_z/A and where it is."""
    own, slope = law.bounds(), slope_of(law)
    parts = list(pairwise(edges))
    rounds, best, where = [], 0.0, edges[0]
    while parts:
        uppers = []
        for t, half, lift, rate, outward in figures(law, parts):
            if lift > 1e-12 and 9.80665 * lift / outward > best:
                best, where = 9.80665 * lift / outward, t
            climb = abs(rate) * half + own.turn_acceleration * half * half / 2
            most = lift + 1e-12 + min(own.turn_rate * half, climb)
            least = outward - slope * half
            uppers.append(0.0 if most <= 0 else 9.80665 * most / least if least > 0 else inf)
        rounds.append(sorted((low + high) / 2 for low, high in parts))
        doubt = max(best * (1 + 4e-6), (0.1 / 60) ** 2)
        parts = halved([p for p, upper in zip(parts, uppers, strict=True) if upper > doubt])
    return rounds, best, where


LAWS = {
    "steady": Waves(),
    "uneven": Waves(sway=0.6, bounds_more=1.2),
    "hand": Waves(up=0.06, g=4 * np.pi),
    "all": Waves(sway=0.3, up=0.05, side=0.04, g=4 * np.pi),
}


@pytest.mark.parametrize(
    ("name", "span"),
    [
        ("steady", (0.0, None)),
        ("uneven", (-0.31, 0.72)),
        ("hand", (-0.2, 0.3)),
        ("all", (0.0, None)),
    ],
)
def test_the_lowest_tempo_looks_where_there_is_doubt(name, span, monkeypatch):
    law, given = replace(LAWS[name]), []
    monkeypatch.setattr(tension, "_highest_tempo", lambda *each: given.append(each) or 77.0)
    found = lowest_tempo(law, length=LENGTH, start=span[0], end=span[1])
    edges = np.linspace(span[0], 1.0 if span[1] is None else span[1], 257)
    rounds, best, where = lowest_by_hand(law, edges.tolist())
    assert len(law.asked) == len(rounds) > 1
    for asked, expected in zip(law.asked, rounds, strict=True):
        assert_allclose(np.sort(asked), expected, atol=1e-12)
    assert found.lowest == pytest.approx(60 * sqrt(best * (1 + 4e-6)), rel=1e-13)
    assert found.error == pytest.approx(found.lowest - 60 * sqrt(best), rel=1e-6)
    assert found.at == pytest.approx(where, abs=1e-12)
    assert found.highest == 77.0
    ((asked_law, length, asked_edges, slope),) = given
    assert (asked_law, length) == (law, LENGTH)
    assert_array_equal(asked_edges, edges)
    assert slope == pytest.approx(slope_of(law), rel=1e-12)


def highest_by_hand(law, edges):
    """Looks of every round, and the least g·(−d_z)/(−A) where A is under 0 and the tether hangs."""
    own, slope = law.bounds(), slope_of(law)
    parts, rounds = list(pairwise(edges)), []
    best = (1000 / 60) ** 2
    while parts:
        lowers = []
        for _, half, lift, _, outward in figures(law, parts):
            hang = max(-lift, 0.0)
            if outward < -1e-12:
                best = min(best, 9.80665 * hang / -outward)
            least = outward - slope * half - 1e-12
            lowers.append(
                9.80665 * max(hang - own.turn_rate * half, 0) / -least if least < 0 else inf
            )
        rounds.append(sorted((low + high) / 2 for low, high in parts))
        parts = halved([p for p, low in zip(parts, lowers, strict=True) if low < best * (1 - 2e-3)])
    return rounds, best


@dataclass
class Hanging(Waves):
    """A tether that sways a little about straight down, from a hand on a quick path."""

    def at(self, beats):
        state = super().at(beats)
        return replace(
            state, tether=-state.tether, tether_rate=-state.tether_rate,
            tether_acceleration=-state.tether_acceleration,
        )  # fmt: skip


HUNG = {
    "down and up": Hanging(spin=0.0, up=0.3),
    "swaying": Hanging(spin=0.0, sway=0.5, up=0.3, side=0.2),
    "to the side": Hanging(spin=0.0, sway=0.4, f=4 * np.pi, side=0.5),
    "turning slowly": Hanging(spin=0.3, sway=0.1, up=0.2),
    "slow enough": Hanging(spin=0.0, up=0.0003),
    "nothing pulls": Hanging(spin=0.0),
}


@pytest.mark.parametrize("name", HUNG)
def test_the_highest_tempo_looks_where_there_is_doubt(name):
    law = replace(HUNG[name])
    edges = np.linspace(-0.2, 0.7, 33)
    slope = slope_of(law)
    found = tension._highest_tempo(law, LENGTH, edges, slope)
    rounds, best = highest_by_hand(law, edges.tolist())
    assert len(law.asked) == len(rounds)
    for asked, expected in zip(law.asked, rounds, strict=True):
        assert_allclose(np.sort(asked), expected, atol=1e-12)
    if name in ("nothing pulls", "slow enough"):
        assert found == inf
    else:
        assert best < (1000 / 60) ** 2
        assert found == pytest.approx(60 * sqrt(best * (1 - 2e-3)), rel=1e-13)


@dataclass
class Steady:
    """The same state at every beat, and bounds as given."""

    tether: tuple = (0.0, 0.0, -1.0)
    rate: tuple = (0.0, 0.0, 0.0)
    push: tuple = (0.0, 0.0, 0.0)
    period: float = 1.0
    turn_rate: float = 0.0
    jerk: float = 0.0
    bend: float = 0.0

    def __post_init__(self):
        self.asked = []

    def at(self, beats):
        self.asked.append(np.asarray(beats))
        rows = np.zeros((*np.shape(beats), 3))
        return Motion(
            hand=rows + np.array([0.0, 0.0, 1.0]), hand_rate=rows,
            hand_acceleration=rows + np.array(self.push), tether=rows + np.array(self.tether),
            tether_rate=rows + np.array(self.rate), tether_acceleration=rows, plane=rows,
        )  # fmt: skip

    def bounds(self):
        return Bounds(
            hand_speed=0.0, hand_acceleration=0.0, turn_rate=self.turn_rate, turn_acceleration=self.bend,
            hand_reach=0.0, hand_jerk=self.jerk,
        )  # fmt: skip


UP = (0.0, 0.0, 1.0)


def test_steady_states_by_hand():
    """A = r|d'|² − d·h''. Up: λ² > g/A. Down with A under 0: λ² < g/−A. Where A is not above 0 and it rises: none."""
    turning = Steady(UP, rate=(2.0, 0.0, 0.0))
    found = lowest_tempo(turning, length=LENGTH)
    assert found.lowest == pytest.approx(60 * sqrt(9.80665 / (4 * LENGTH)), rel=3e-6)
    assert found.at == pytest.approx(1 / 512)
    pulled = lowest_tempo(Steady(UP, push=(0.0, 0.0, -3.0)), length=LENGTH)
    assert pulled.lowest == pytest.approx(60 * sqrt(9.80665 / 3), rel=3e-6)
    weak = lowest_tempo(Steady(UP, push=(0.0, 0.0, -0.5)), length=LENGTH)
    assert weak.lowest == pytest.approx(60 * sqrt(9.80665 / 0.5), rel=3e-6)
    level = lowest_tempo(Steady((1.0, 0.0, 0.0), push=(-1.0, 0.0, 0.0)), length=LENGTH)
    assert (level.lowest, level.error, level.at, level.highest) == (0.0, 0.1, 0.0, inf)
    for push in ((0.0, 0.0, 0.0), (0.0, 0.0, 2.0)):
        none = lowest_tempo(Steady(UP, push=push), length=LENGTH, start=2.0)
        assert (none.lowest, none.error, none.at) == (inf, 0.0, 2 + 1 / 512)
    hung = lowest_tempo(Steady(push=(0.0, 0.0, -20.0)), length=LENGTH)  # A = −20
    assert (hung.lowest, hung.error) == (0.0, 0.1)
    assert hung.highest == pytest.approx(60 * sqrt(9.80665 / 20 * (1 - 2e-3)), rel=1e-12)
    # the slowest and the fastest tempi that count: 0.1 and 1000 beats a minute
    slow = 9.80665 / (0.1 / 60) ** 2
    below = lowest_tempo(Steady(UP, push=(0.0, 0.0, -slow * 1.0001)), length=LENGTH)
    above = lowest_tempo(Steady(UP, push=(0.0, 0.0, -slow * 0.9999)), length=LENGTH)
    assert (below.lowest, below.error) == (0.0, 0.1)
    assert above.lowest == pytest.approx(0.1, rel=1e-4)
    fast = 9.80665 / (1000 / 60) ** 2
    assert lowest_tempo(Steady(push=(0.0, 0.0, -0.9 * fast)), length=LENGTH).highest == inf
    assert lowest_tempo(Steady(push=(0.0, 0.0, -1.1 * fast)), length=LENGTH).highest < 1000


@pytest.mark.parametrize(("doubt", "looks"), [(3e-6, 1), (5e-6, 2)])
def test_a_doubt_of_four_millionths_is_none(doubt, looks, monkeypatch):
    """Twice the error of a tempo, as it is squared; jerk·half over A = 3 is the doubt, and halves with the part."""
    monkeypatch.setattr(tension, "_highest_tempo", lambda *_: inf)
    law = Steady(UP, push=(0.0, 0.0, -3.0), jerk=doubt * 3 * 512)
    lowest_tempo(law, length=LENGTH)
    assert len(law.asked) == looks


@pytest.mark.parametrize(("doubt", "looks"), [(1.5e-3, 1), (2.5e-3, 2)])
def test_a_doubt_of_two_thousandths_of_the_highest_is_none(doubt, looks):
    law = Steady(push=(0.0, 0.0, -20.0))
    assert tension._highest_tempo(law, LENGTH, np.linspace(0, 1, 5), doubt * 20 * 8) == (
        pytest.approx(60 * sqrt(9.80665 / 20 * 0.998), rel=1e-12)
    )
    assert len(law.asked) == looks


def test_the_first_moment_at_which_no_tempo_helps_is_told():
    """A = 0.45 + 0.79·cos(t)·sin(2πt), about: under 0 from some moment after the middle on."""
    law = Waves(spin=1.0, up=0.02)
    found = lowest_tempo(law, length=LENGTH)
    edges = np.linspace(0, 1, 257).tolist()
    rows = figures(law, list(pairwise(edges)))
    first = next(t for t, _, lift, _, outward in rows if lift > 0 and outward <= 0)
    assert 0.5 < first < 0.75
    assert (found.lowest, found.error, found.at) == (inf, 0.0, first)


def test_hairs_about_the_level(monkeypatch):
    """A unit vector's height is known to 1e-12: level and pulled by 1e-6 m/beat² leaves a doubt, by 1e-5 none."""
    monkeypatch.setattr(tension, "NARROWEST", 1e-3)
    assert (
        lowest_tempo(Steady((1.0, 0.0, 0.0), push=(-1e-6, 0.0, 0.0)), length=LENGTH).lowest == inf
    )
    assert lowest_tempo(Steady((1.0, 0.0, 0.0), push=(-1e-5, 0.0, 0.0)), length=LENGTH).lowest == 0
    # as far under the level as the height may be off: it does not rise, whatever pulls
    assert lowest_tempo(Steady((1.0, 0.0, -1e-12)), length=LENGTH).lowest == 0
    one = Steady(push=(0.0, 0.0, -20.0))
    assert tension._highest_tempo(one, LENGTH, np.array([0.0, 1.0]), 0.0) < 1000


@pytest.mark.parametrize(("bend", "looks"), [(36.0, 3), (45.0, 4)])
def test_a_level_tether_is_looked_at_until_it_cannot_rise(bend, looks):
    """It rises by bend·half²/2 at most, under A = 0.45·36 less its slope 9·bend·half: by hand against (0.1/60)².

    For 36 at a half of 1/1024 9.80665·1.717e-5/15.88 = 1.06e-5, at 1/2048 2.62e-6: under 2.78e-6. For 45 at 1/2048
    3.3e-6, at 1/4096 8.2e-7.
    """
    law = Steady((1.0, 0.0, 0.0), rate=(0.0, 6.0, 0.0), turn_rate=10.0, bend=bend)
    assert lowest_tempo(law, length=LENGTH).lowest == 0.0
    assert [len(each) for each in law.asked[:looks]] == [256 * 2**k for k in range(looks)]


def test_the_first_of_equal_moments_is_told():
    """Looked at again and again for what its bounds allow, a steady state is worst at its first look."""
    found = lowest_tempo(Steady(UP, push=(0.0, 0.0, -3.0), jerk=0.05), length=LENGTH)
    assert found.at == 1 / 512


def test_a_tempo_on_the_slowest_that_counts_is_none():
    """g·d_z/A is (0.1/60)² to the last digit."""
    least = (0.1 / 60) ** 2
    push = next(
        p for p in 9.80665 / least * (1 + 1e-16 * np.arange(-40, 41)) if 9.80665 / p == least
    )
    found = lowest_tempo(Steady(UP, push=(0.0, 0.0, -push)), length=LENGTH)
    assert (found.lowest, found.error) == (0.0, 0.1)


def test_highest_tempi_at_the_edges(monkeypatch):
    """Up and pushed up: none. Pulled by a hair, 1e-13: every one. A hair under the level, not pulled: not settled."""
    monkeypatch.setattr(tension, "NARROWEST", 1e-3)
    edges = np.linspace(0.0, 1.0, 5)

    def highest(law):
        return tension._highest_tempo(law, LENGTH, edges, 0.0)

    assert highest(Steady(UP, push=(0.0, 0.0, 2.0))) == 0.0
    assert highest(Steady(push=(0.0, 0.0, 1e-13))) == inf
    assert highest(Steady((1.0, 0.0, -1e-11))) == 0.0
    assert highest(Steady((1.0, 0.0, -1e-10))) == inf  # g·1e-10/1e-12 is past 1000 beats a minute


def test_where_nothing_can_be_settled(monkeypatch):
    """Level with A = 0 under a bound that lets it turn: never settled, told as no tempo with no error known."""
    law = Steady((1.0, 0.0, 0.0), turn_rate=1.0, jerk=1.0)
    monkeypatch.setattr(tension, "NARROWEST", 1e-4)
    found = lowest_tempo(law, length=LENGTH)
    # halves 1/512, 1/1024 … : the first under 1e-4 is 1/16384, after five halvings
    assert len(law.asked) == 5
    assert (found.lowest, found.error, found.at) == (inf, inf, 1 / 16384)
    monkeypatch.setattr(tension, "MOST_PARTS", 256 + 512)
    law.asked.clear()
    assert lowest_tempo(law, length=LENGTH).at == 1 / 2048
    assert len(law.asked) == 2
    monkeypatch.setattr(tension, "MOST_PARTS", 256 + 512 - 1)
    assert lowest_tempo(law, length=LENGTH).at == 1 / 1024
    # as narrow as the narrowest is wide enough
    monkeypatch.setattr(tension, "MOST_PARTS", 2_000_000)
    monkeypatch.setattr(tension, "NARROWEST", 1 / 1024)
    assert lowest_tempo(law, length=LENGTH).at == 1 / 2048
    hung = Steady(tether=(1.0, 0.0, 0.0))
    monkeypatch.setattr(tension, "NARROWEST", 1 / 16)
    assert tension._highest_tempo(hung, LENGTH, np.linspace(0, 1, 3), 1.0) == 0.0
    assert [len(each) for each in hung.asked] == [2, 4, 8, 16]


def test_what_needs_a_period_or_a_bound():
    with pytest.raises(ValueError, match="no period; give its end"):
        lowest_tempo(Steady(period=inf), length=LENGTH)
    with pytest.raises(ValueError, match="nothing is proven about this law's third derivative"):
        lowest_tempo(Steady(jerk=inf), length=LENGTH)
    law = Steady(period=inf)
    assert lowest_tempo(law, length=LENGTH, start=1.0, end=3.0).lowest == 0.0
    assert_allclose(law.asked[0], 1 + (np.arange(256) + 0.5) / 128)
    shifted = Steady(period=2.0)
    lowest_tempo(shifted, length=LENGTH, start=1.0)
    assert_allclose(shifted.asked[0], 1 + (np.arange(256) + 0.5) / 128)


def test_hand_work_by_hand():
    """Differences of 4096 instants of a period, each figure by its definition; at rest and in free fall as well."""
    law = Waves(spin=4 * np.pi, sway=0.3, f=4 * np.pi, up=0.1, side=0.05, g=8 * np.pi, period=0.5)
    mass, rate = 0.3, 1.4
    found = hand_work(law, length=LENGTH, mass=mass, tempo=60 * rate)
    assert_array_equal(law.asked[0], 0.5 * np.arange(4096) / 4096)
    state = law.at(0.5 * np.arange(4096) / 4096)
    felt = rate**2 * (state.hand_acceleration + LENGTH * state.tether_acceleration) + [
        0,
        0,
        9.80665,
    ]
    size = np.sqrt((felt**2).sum(axis=1))
    hand = state.hand + LENGTH * state.tether + LENGTH * felt / size[:, None]
    away = np.sqrt(((hand - state.hand) ** 2).sum(axis=1))
    second = 0.5 / 4096 / rate
    around = np.concatenate([hand[-1:], hand, hand[:1]])
    velocity = (around[2:] - around[:-2]) / (2 * second)
    power = mass * (felt * velocity).sum(axis=1)
    along = (felt * state.tether).sum(axis=1)
    expected = HandWork(
        largest=away.max(), rms=np.sqrt((away**2).sum() / 4096),
        peak_speed=np.sqrt((velocity**2).sum(axis=1)).max(),
        work=power[power > 0].sum() / 4096 / rate, peak_force=mass * size.max(),
        peak_across=mass * np.sqrt(size**2 - along**2).max(),
    )  # fmt: skip
    for name in ("largest", "rms", "peak_speed", "work", "peak_force", "peak_across"):
        assert getattr(found, name) == pytest.approx(getattr(expected, name), rel=1e-9), name
    rest = hand_work(Steady(), length=LENGTH, mass=mass, tempo=60.0)
    assert rest == HandWork(
        largest=0.0, rms=0.0, peak_speed=0.0, work=0.0, peak_force=mass * 9.80665, peak_across=0.0
    )
    falling = hand_work(Steady(push=(0, 0, -9.80665)), length=LENGTH, mass=mass, tempo=60.0)
    assert falling.largest == pytest.approx(LENGTH)
    assert falling.peak_force == 0.0
    with pytest.raises(ValueError, match="this law has none"):
        hand_work(Steady(period=inf), length=LENGTH, mass=mass, tempo=60.0)


def test_pull_and_force_across_of_any_shape():
    """m·(g − λ²·h'')·(−d) and the rest of that vector, for one instant and for a table of them."""
    law = Steady((0.6, 0.0, -0.8), push=(1.0, 2.0, 3.0))
    felt = np.array([1.0, 2.0, 3.0]) * 2.5**2 + [0, 0, 9.80665]
    along = felt @ [0.6, 0.0, -0.8]
    for shape in ((), (2, 3)):
        state = law.at(np.zeros(shape))
        given = {"length": LENGTH, "mass": 0.3, "beats_per_second": 2.5}
        assert_allclose(pull(state, **given), np.full(shape, -0.3 * along))
        assert_allclose(
            force_across(state, **given), np.full(shape, 0.3 * sqrt(felt @ felt - along**2))
        )
        assert np.shape(pull(state, **given)) == shape


@pytest.mark.parametrize(
    ("away", "told"),
    [(0.0, 0.01), (0.0079, 0.01), (0.0081, 0.02), (0.0479, 0.05), (0.0481, 0.06), (0.3, 0.31)],
)
def test_a_margin_is_rounded_up_with_its_two_millimetres(away, told):
    """A tether at rest that leans by θ from straight down needs the hand 2r·sin(θ/2) away."""
    half = np.arcsin(away / 2 / LENGTH)
    law = Steady((np.sin(2 * half), 0.0, -np.cos(2 * half)))
    found = leaves(law, length=LENGTH, tempo=60.0, start=0.0, end=1.0)
    assert found == pytest.approx(told, abs=1e-12)


@pytest.mark.parametrize(
    ("span", "period", "asked"),
    [
        ((1.0, 1.3), 4.0, np.linspace(1.0, 1.3, 65)),
        ((1.0, 2.0), 4.0, np.linspace(1.0, 2.0, 65)),
        ((1.0, 2.01), 4.0, np.linspace(1.0, 2.01, 66)),
        ((0.5, 9.0), 2.0, np.linspace(0.5, 2.5, 129)),
        ((0.5, 3.5), inf, np.linspace(0.5, 3.5, 193)),
    ],
)
def test_a_margin_looks_64_times_a_beat(span, period, asked):
    law = Steady(period=period)
    leaves(law, length=LENGTH, tempo=60.0, start=span[0], end=span[1])
    assert_allclose(law.asked[0], asked, atol=1e-12)
    assert len(law.asked) == 1


def test_a_margin_at_the_tempo_given():
    """λ²·h'' + g by hand: pushed sideways by 9.80665/4 at two beats a second the line leans by 45°."""
    law = Steady(push=(9.80665 / 4, 0.0, 0.0))
    away = 2 * LENGTH * np.sin(np.pi / 8)
    found = leaves(law, length=LENGTH, tempo=120.0, start=0.0, end=1.0)
    assert found == pytest.approx(np.ceil(100 * (away + 0.002)) / 100)
    falling = Steady(push=(0.0, 0.0, -9.80665))
    assert leaves(falling, length=LENGTH, tempo=60.0, start=0.0, end=1.0) == 0.46


def test_flights_and_tempi_by_hand():
    assert farthest_flight(0.0, 1.0) == 0.0
    assert farthest_flight(GRAVITY, 1.5 * GRAVITY) == pytest.approx(2 * GRAVITY)  # √(v² + 3g²) = 2g
    assert farthest_flight(GRAVITY, 0.0) == farthest_flight(GRAVITY, -2.0) == pytest.approx(GRAVITY)
    assert beats_a_second(90) == 1.5
    assert beats_a_second(1e-9) == 1e-9 / 60
