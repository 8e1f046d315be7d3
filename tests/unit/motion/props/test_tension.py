"""Lowest tempi, margins and flights against formulas worked out by hand and dense samples."""

from dataclasses import dataclass, replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.tension import (
    GRAVITY,
    beats_a_second,
    farthest_flight,
    force_across,
    hand_work,
    leaves,
    lowest_tempo,
    most_hand_work,
    pull,
)

LENGTH = 0.5


@dataclass(frozen=True)
class Known:
    """Tether at α = spin·t + sway·sin(f·t) in the wall plane; hand at up·sin(g·t + lead) along z.

    Bounds are those of the formulas: |α'| ≤ spin + sway·f, |α''| ≤ sway·f², |h⁽ᵏ⁾| ≤ up·gᵏ.
    """

    spin: float = 2 * np.pi
    sway: float = 0.0
    f: float = 2 * np.pi
    up: float = 0.0
    g: float = 2 * np.pi
    lead: float = 0.0
    period: float = 1.0

    def at(self, beats):
        t = np.asarray(beats, float)[..., None]
        a = self.spin * t + self.sway * np.sin(self.f * t)
        a1 = self.spin + self.sway * self.f * np.cos(self.f * t)
        a2 = -self.sway * self.f**2 * np.sin(self.f * t)
        zero = np.zeros_like(t)
        tether = np.concatenate([np.sin(a), zero, np.cos(a)], axis=-1)
        aside = np.concatenate([np.cos(a), zero, -np.sin(a)], axis=-1)
        z = np.array([0.0, 0.0, 1.0])
        angle = self.g * t + self.lead
        return Motion(
            hand=z * (1.3 + self.up * np.sin(angle)),
            hand_rate=z * self.up * self.g * np.cos(angle),
            hand_acceleration=-z * self.up * self.g**2 * np.sin(angle),
            tether=tether,
            tether_rate=a1 * aside,
            tether_acceleration=a2 * aside - a1**2 * tether,
            plane=np.array([0.0, 1.0, 0.0]) + 0 * tether,
        )

    def bounds(self):
        w = abs(self.spin) + self.sway * self.f
        return Bounds(
            hand_speed=self.up * self.g,
            hand_acceleration=self.up * self.g**2,
            turn_rate=w,
            turn_acceleration=np.hypot(self.sway * self.f**2, w**2),
            hand_reach=0.0,
            hand_jerk=self.up * self.g**3,
        )


def dense(law, beats=1.0):
    """Lowest and highest tempo [beats a minute] at a quarter of a million instants: λ²·A > g·d_z, A = r·α'² − d·h''."""
    t = np.linspace(0, beats, 250_001)
    motion = law.at(t)
    outward = LENGTH * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
        motion.tether * motion.hand_acceleration, axis=-1
    )
    lift = motion.tether[:, 2]
    if np.any((outward <= 0) & (lift > 0)):
        return np.inf, None
    low = np.sqrt(np.max(np.where(lift > 0, GRAVITY * lift / outward, 0.0))) * 60
    back = (outward < 0) & (lift < 0)
    high = np.sqrt(np.min(GRAVITY * lift[back] / outward[back])) * 60 if np.any(back) else np.inf
    return low, high


LAWS = {
    "steady": Known(),
    "uneven": Known(sway=0.5),
    # the tether stands for a moment at 60° over the level: there it must be pulled by the hand
    "nearly stops": Known(sway=0.98),
    "a quick sway": Known(sway=0.1, f=8 * np.pi),
    "hand against it": Known(up=0.15),
    "hand with it": Known(up=-0.15),
    "hand shaken": Known(up=0.008, g=10 * np.pi, lead=1.0),
    "both": Known(sway=0.3, up=0.1, g=6 * np.pi, lead=0.7),
}


@pytest.mark.parametrize("name", LAWS)
def test_the_lowest_tempo_is_that_of_dense_instants(name):
    low, high = dense(LAWS[name])
    found = lowest_tempo(LAWS[name], length=LENGTH)
    assert low * (1 - 1e-9) <= found.lowest <= low * (1 + 1e-5)
    assert low >= (found.lowest - found.error) * (1 - 1e-5)
    if np.isinf(high):
        assert found.highest == np.inf
    else:
        assert high * (1 - 3e-3) <= found.highest <= high * (1 + 1e-9)


class Spiked:
    """A steady circle but for a few thousandths of a beat about `where`, a dip no grid of 256 parts need see.

    There the tether turns at `least` of its rate, or the hand is pushed with `push` the way the tether points.
    """

    period = 1.0

    def __init__(self, where, *, least=1.0, push=0.0, wide=2.1e-3):
        self.where, self.lost, self.push, self.wide = where, 1 - least, push, wide

    def at(self, beats):
        t = np.asarray(beats, float)
        x = np.clip((t - self.where) / self.wide, -1, 1)
        behind = self.lost * self.wide * (x - 2 * x**3 / 3 + x**5 / 5 + 8 / 15)
        angle, dip = 2 * np.pi * (t - behind)[..., None], (1 - x**2) ** 2
        slope = 2 * np.pi * self.lost * 4 * x * (1 - x**2) / self.wide
        rate = 2 * np.pi * (1 - self.lost * dip)[..., None]
        zero = np.zeros_like(angle)
        tether = np.concatenate([np.sin(angle), zero, np.cos(angle)], axis=-1)
        aside = np.concatenate([np.cos(angle), zero, -np.sin(angle)], axis=-1)
        along = np.array([np.sin(2 * np.pi * self.where), 0, np.cos(2 * np.pi * self.where)])
        return Motion(
            hand=0 * tether, hand_rate=0 * tether, hand_acceleration=self.push * dip[..., None] * along,
            tether=tether, tether_rate=rate * aside,
            tether_acceleration=slope[..., None] * aside - rate**2 * tether, plane=0 * tether,
        )  # fmt: skip

    def bounds(self):
        steep = 8 / (3 * np.sqrt(3)) / self.wide  # of (1 − x²)², at x = 1/√3
        w = 2 * np.pi
        return Bounds(
            hand_speed=0.0, hand_acceleration=self.push, turn_rate=w,
            turn_acceleration=np.hypot(w * self.lost * steep, w**2), hand_reach=0.0,
            hand_jerk=self.push * steep,
        )  # fmt: skip


@pytest.mark.parametrize("edge", [31, 32, 224, 225])
@pytest.mark.parametrize("change", [{"least": 0.83}, {"push": 6.2}], ids=["turn", "push"])
def test_a_dip_between_two_looks_is_not_missed(edge, change):
    """Where two of the first parts meet: with half the slope of A the dip would stay unseen.

    A = r|d'|² − d·h″ has the slopes 2r|d'||d″| and |h‴|, by the product rule.
    """
    law = Spiked(edge / 256, **change)
    motion = law.at(np.linspace(edge / 256 - 2e-3, edge / 256 + 2e-3, 100_001))
    outward = LENGTH * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
        motion.tether * motion.hand_acceleration, axis=-1
    )
    low = 60 * np.sqrt(np.max(GRAVITY * motion.tether[:, 2] / outward))
    assert low > 60 * np.sqrt(GRAVITY / LENGTH) / (2 * np.pi) * 1.005  # worse than the circle's top
    assert lowest_tempo(law, length=LENGTH).lowest == pytest.approx(low, rel=1e-5)


def test_a_tether_that_comes_over_the_level_between_two_looks_is_not_missed():
    """Its hand follows it just over the level, and at the look it hangs: only d_z's slope tells what was."""
    look, wide = 0.2505, 1 / 32
    law = Spiked(look - 0.012, push=18.6, wide=0.02)
    motion = law.at(np.linspace(look - 0.03, look, 400_001))
    lift = motion.tether[:, 2]
    outward = LENGTH * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
        motion.tether * motion.hand_acceleration, axis=-1
    )
    assert lift[-1] < 0 < lift[200_000]
    low = 60 * np.sqrt(np.max(GRAVITY * lift / outward))
    assert low > 60 * np.sqrt(GRAVITY / LENGTH) / (2 * np.pi) * 1.005
    start = look - 8.5 * wide
    found = lowest_tempo(law, length=LENGTH, start=start, end=start + 256 * wide)
    assert found.lowest == pytest.approx(low, rel=1e-5)


def test_where_the_head_is_pushed_over_the_hand_no_tempo_helps():
    found = lowest_tempo(Known(up=0.6, lead=-np.pi / 2, g=2 * np.pi), length=LENGTH)
    assert found.lowest == np.inf


def test_a_span_is_looked_at_alone():
    """The lower half of a circle hangs: any tempo will do. Its upper half asks √(g/r) at the top."""
    low = lowest_tempo(Known(), length=LENGTH, start=0.25, end=0.75)
    assert low.lowest == 0.0
    assert low.error == 0.1
    top = lowest_tempo(Known(), length=LENGTH, start=-0.1, end=0.1)
    assert top.lowest == pytest.approx(60 * np.sqrt(GRAVITY / LENGTH) / (2 * np.pi), rel=1e-5)
    assert top.at == pytest.approx(0.0, abs=1e-2)
    assert lowest_tempo(Known(), length=LENGTH, start=0.5).lowest == pytest.approx(top.lowest)
    with pytest.raises(ValueError, match="no period"):
        lowest_tempo(Known(period=np.inf), length=LENGTH)
    with pytest.raises(ValueError, match="average over a period"):
        hand_work(Known(period=np.inf), length=LENGTH, mass=0.2, tempo=100.0)


def test_the_hand_work_of_a_circle_by_hand():
    """Wall circle, v² = 4π²r²λ²: the felt force a − g is ω²r inward and g upward; the hand leaves by its turn.

    At the sides inward and upward are square to each other, so the line leaves the drawing by
    atan(g/ω²r), which is the farthest; mean power is what the hand gives on the way up.
    """
    rate, r, m = 1.7, LENGTH, 0.25
    w = 2 * np.pi * rate
    law = Known()
    found = hand_work(law, length=r, mass=m, tempo=60 * rate)
    inward = w**2 * r
    t = np.linspace(0, 1, 200_001)
    felt = np.stack([-inward * np.sin(2 * np.pi * t), GRAVITY - inward * np.cos(2 * np.pi * t)])
    size = np.hypot(*felt)
    away = r * np.hypot(*(felt / size + np.stack([np.sin(2 * np.pi * t), np.cos(2 * np.pi * t)])))
    assert found.largest == pytest.approx(away.max(), rel=1e-5)
    assert found.rms == pytest.approx(np.sqrt((away[:-1] ** 2).mean()), rel=1e-6)
    assert found.peak_force == pytest.approx(m * (inward + GRAVITY))
    assert found.peak_across == pytest.approx(m * GRAVITY, rel=1e-6)
    head = r * np.stack([np.sin(2 * np.pi * t), np.cos(2 * np.pi * t)])
    needed = head + r * felt / size
    velocity = np.gradient(needed, t / rate, axis=1)
    assert found.peak_speed == pytest.approx(np.hypot(*velocity[:, 2:-2]).max(), rel=1e-4)
    power = np.maximum(m * (felt * velocity).sum(axis=0), 0.0)
    assert found.work == pytest.approx(power[2:-2].mean() / rate, rel=1e-3)
    margin = leaves(law, length=r, tempo=60 * rate, start=0.0, end=7.0)
    assert margin == pytest.approx(np.ceil(100 * (away.max() + 0.002)) / 100)


def test_pull_and_force_across_are_the_parts_of_what_is_felt():
    """Newton: both squared add up to (m·|a − g|)², and the pull is m(ω²r + g·d_z·(−1)) on a circle."""
    motion = Known().at(np.array([0.0, 0.25, 0.5, 0.1]))
    rate, m = 2.0, 0.3
    w2r = (2 * np.pi * rate) ** 2 * LENGTH
    along = pull(motion, length=LENGTH, mass=m, beats_per_second=rate)
    across = force_across(motion, length=LENGTH, mass=m, beats_per_second=rate)
    up = np.cos(2 * np.pi * np.array([0.0, 0.25, 0.5, 0.1]))
    assert_allclose(along, m * (w2r - GRAVITY * up))
    assert_allclose(across, m * GRAVITY * np.sqrt(1 - up**2), atol=1e-6)


def test_a_head_let_go_flies_no_farther_than_at_any_angle():
    """R = v_x·(v_z + √(v_z² + 2gh))/g, the farthest of all angles; from under the floor as from it."""
    slopes = np.radians(np.linspace(-90, 90, 20001))
    ranges = (
        7
        * np.cos(slopes)
        * (7 * np.sin(slopes) + np.sqrt((7 * np.sin(slopes)) ** 2 + 2 * GRAVITY * 1.2))
    )
    assert farthest_flight(7.0, 1.2) == pytest.approx((ranges / GRAVITY).max(), rel=1e-6)
    assert farthest_flight(7.0, -1.0) == pytest.approx(49 / GRAVITY)


@pytest.mark.parametrize("tempo", [0.0, -1.0, np.inf, np.nan])
def test_a_tempo_is_positive(tempo):
    with pytest.raises(ValueError, match="tempo must be positive"):
        beats_a_second(tempo)


class Nodding:
    """A hand pushed steadily by 50 m/beat² along −x under a tether that leans towards +x and nods up between looks.

    φ = 80° + 1.6°·(1 + cos 2π(t − ¼)) over the level, and 0.1 rad·(1 − x²)³ more about ¾; with a
    tether of no length to speak of A = 50·cos φ, whose slope is |d'||h″| alone.
    """

    period, push, wide, amp = 1.0, 50.0, 1.9e-3, 0.1

    def _angle(self, t):
        x = np.clip((t - 0.75) / self.wide, -1, 1)
        turn = 2 * np.pi * (t - 0.25)
        broad = np.radians(1.6)
        angle = np.radians(80) + broad * (1 + np.cos(turn)) + self.amp * (1 - x**2) ** 3
        rate = -2 * np.pi * broad * np.sin(turn) - self.amp * 6 * x * (1 - x**2) ** 2 / self.wide
        bend = -((2 * np.pi) ** 2) * broad * np.cos(turn)
        bend -= self.amp * 6 * (1 - x**2) * (1 - 5 * x**2) / self.wide**2
        return angle, rate, bend

    def at(self, beats):
        angle, rate, bend = (each[..., None] for each in self._angle(np.asarray(beats, float)))
        zero = np.zeros_like(angle)
        out = np.concatenate([np.cos(angle), zero, np.sin(angle)], axis=-1)
        aside = np.concatenate([-np.sin(angle), zero, np.cos(angle)], axis=-1)
        return Motion(
            hand=0 * out, hand_rate=0 * out, hand_acceleration=0 * out - [self.push, 0, 0],
            tether=out, tether_rate=rate * aside, tether_acceleration=bend * aside - rate**2 * out,
            plane=0 * out,
        )  # fmt: skip

    def bounds(self):
        _, rate, bend = self._angle(0.75 + np.linspace(-1, 1, 20_001) * 2e-3)
        w = 1.01 * np.max(np.abs(rate))
        return Bounds(
            hand_speed=0.0, hand_acceleration=self.push, turn_rate=w, hand_reach=0.0,
            turn_acceleration=np.hypot(1.01 * np.max(np.abs(bend)), w**2), hand_jerk=0.0,
        )  # fmt: skip


def test_a_tether_that_leans_out_of_the_push_between_two_looks_is_not_missed():
    """With the slope |d'||h″| of A left out, the moment would stay unseen: 90° − 85.7° of push is little."""
    law, length = Nodding(), 1e-9
    angle = law._angle(0.75 + np.linspace(-1, 1, 400_001) * 1e-3)[0]
    low = 60 * np.sqrt(np.max(GRAVITY * np.sin(angle) / (law.push * np.cos(angle))))
    assert lowest_tempo(law, length=length).lowest == pytest.approx(low, rel=1e-4)


@pytest.mark.parametrize(
    "law",
    [
        Known(),
        Known(spin=4 * np.pi, sway=0.3),
        Known(sway=0.4, up=0.15, g=4 * np.pi),
        Known(spin=np.pi, up=0.1, g=2 * np.pi, lead=0.7, period=2.0),
        Known(spin=6 * np.pi, up=0.05, g=6 * np.pi),
    ],
)
@pytest.mark.parametrize("tempo", [60.0, 110.0, 180.0])
def test_most_hand_work_is_never_less_than_it_is(law, tempo):
    """Against 20 000 samples of the definition; near it where the tether pulls hard, at most two tethers' lengths."""
    beats = np.linspace(0.0, law.period, 20_001)
    motion = law.at(beats)
    felt = motion.head_acceleration(LENGTH) * (tempo / 60) ** 2 + np.array([0.0, 0.0, 9.80665])
    away = motion.tether + felt / np.linalg.norm(felt, axis=-1, keepdims=True)
    off = LENGTH * np.linalg.norm(away, axis=-1).max()
    found = most_hand_work(Bent(law), length=LENGTH, tempo=tempo)
    work = hand_work(law, length=LENGTH, mass=0.2, tempo=tempo)
    assert max(off, work.largest) <= found <= 2 * LENGTH
    if np.linalg.norm(felt, axis=-1).min() > 30.0:
        assert found <= off + 0.05


class Bent:
    """A known law with a bound on its tether's third derivative: a³ + 3ab + c, with those of its angle."""

    def __init__(self, law):
        self.law, self.period, self.at = law, law.period, law.at

    def bounds(self):
        a, b, c = self.law.spin, 0.0, 0.0
        a += self.law.sway * self.law.f
        b += self.law.sway * self.law.f**2
        c += self.law.sway * self.law.f**3
        return replace(self.law.bounds(), turn_jerk=a**3 + 3 * a * b + c)


@pytest.mark.parametrize("jerk", [0.0, 40.0])
def test_most_hand_work_by_hand(jerk):
    """A steady level spin at ω: the force points inwards and up, by arctan(g/ω²r) off the tether, at every instant.

    Its direction turns at ω as the tether does, no faster than the bound of ω³r/√(ω⁴r² + g²) less what may be lost.
    """
    omega, rate = 2 * np.pi, 2.0
    law = Level(jerk)
    found = most_hand_work(law, length=LENGTH, tempo=60 * rate)
    pull, half = (omega * rate) ** 2 * LENGTH, 1 / 512
    size, slope = np.hypot(pull, 9.80665), pull * omega + jerk * rate**2
    off = 2 * LENGTH * np.sin(np.arctan(9.80665 / pull) / 2)
    assert found == pytest.approx(
        off + LENGTH * half * (omega + slope / (size - slope * half)), rel=1e-9
    )


class Level:
    """One level turn a beat about a still hand, of which no more is proven than a bound on its third derivative."""

    period = 1.0

    def __init__(self, jerk):
        self.jerk = jerk

    def at(self, beats):
        a = 2 * np.pi * np.asarray(beats, float)[..., None]
        zero = np.zeros_like(a)
        tether = np.concatenate([np.cos(a), np.sin(a), zero], axis=-1)
        aside = np.concatenate([-np.sin(a), np.cos(a), zero], axis=-1)
        still = np.zeros_like(tether)
        return Motion(
            hand=still, hand_rate=still, hand_acceleration=still, tether=tether,
            tether_rate=2 * np.pi * aside, tether_acceleration=-((2 * np.pi) ** 2) * tether, plane=still,
        )  # fmt: skip

    def bounds(self):
        turn = 2 * np.pi
        return Bounds(
            hand_speed=0.0, hand_acceleration=0.0, turn_rate=turn, turn_acceleration=turn**2,
            hand_reach=0.0, hand_jerk=self.jerk, turn_jerk=turn**3,
        )  # fmt: skip


def test_most_hand_work_of_what_never_repeats_is_refused():
    with pytest.raises(ValueError, match="has none"):
        most_hand_work(Known(period=np.inf), length=LENGTH, tempo=100.0)
    with pytest.raises(ValueError, match="tempo must be positive"):
        most_hand_work(Known(), length=LENGTH, tempo=0.0)
