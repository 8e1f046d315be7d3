"""Machine code of small loops: the same digits as NumPy, used when it is worth it, and only if it is that of their source."""

import gzip
from dataclasses import replace
from importlib import resources

import numpy as np
import pytest

from sequencer.motion.flown import small_code, small_loops
from sequencer.motion.flown.even_splines import EvenSpline, together
from sequencer.motion.trajectories.one_link.link_gaps import Rod, least_gaps

LINE = (Rod(1.0, 0.0, 0.0, 0.4, 0.01), Rod(1.0, 0.0, 0.45, 0.45, 0.06))
FAN = (Rod(0.8, 0.6, 0.1, 0.5, 0.02), Rod(-0.6, 0.8, 0.3, 0.3, 0.03), Rod(-1.0, 0.0, 0.0, 0.2, 0.04))  # fmt: skip


def packed() -> bytes:
    return resources.files(small_code.__package__).joinpath(small_code.SMALL_DATA).read_bytes()


@pytest.fixture
def by_numpy(monkeypatch):
    """What NumPy finds."""

    def asked(work, *given):
        with monkeypatch.context() as patch:
            patch.setattr(small_code, "_SPENT", [-np.inf])
            return work(*given)

    return asked


@pytest.fixture
def by_code(monkeypatch):
    """What machine code finds."""

    def asked(work, *given):
        with monkeypatch.context() as patch:
            patch.setattr(small_code, "WORTH_SMALL_CODE", -np.inf)
            return work(*given)

    assert small_code.small_code() is not None
    return asked


def looked_at(seed: int, ways: int, bodies: int, looks: int = 33):
    """Random hands, tethers and bodies, some of which meet, some without length."""
    random = np.random.default_rng(seed)
    tether = random.normal(size=(ways, looks, 3))
    tether /= np.linalg.norm(tether, axis=-1, keepdims=True)
    wide = np.roll(tether, 1, axis=-1)
    hand = random.normal(scale=0.4, size=(ways, looks, 3))
    starts = random.normal(scale=0.5, size=(bodies, looks, 3))
    axes = random.normal(scale=0.3, size=(bodies, looks, 3))
    axes[::3] = 0.0
    return hand, tether, wide, (starts, axes, random.uniform(0.03, 0.2, size=bodies))


@pytest.mark.parametrize("rods", [LINE, FAN])
def test_gaps_are_those_of_numpy_in_every_digit(by_numpy, by_code, rods):
    for seed in range(20):
        hand, tether, wide, bodies = looked_at(seed, 5, 7)
        one, other = (
            find(least_gaps, hand, tether, wide, rods, bodies) for find in (by_numpy, by_code)
        )
        assert one.shape == other.shape == (5,)
        assert np.array_equal(one, other)
        # one hand path with several tether paths, and a single pair seen every so often
        args = least_gaps, hand[:1], tether, wide, rods, bodies
        assert np.array_equal(by_numpy(*args), by_code(*args))
        some = slice(None, None, 4)
        few = bodies[0][:, some], bodies[1][:, some], bodies[2]
        args = least_gaps, hand[0, some], tether[0, some], wide[0, some], rods, few
        assert np.array_equal(by_numpy(*args), by_code(*args))


@pytest.mark.parametrize(
    "what", ["a hand", "one sample", "a tether", "far away", "a body", "a radius"]
)
def test_what_is_no_number_is_never_clear(by_numpy, by_code, what):
    hand, tether, wide, (starts, axes, radii) = looked_at(3, 4, 5)
    where, value = {
        "a hand": (hand[1], np.nan), "one sample": (hand[1, 4:5], np.nan), "a tether": (tether[1], np.nan),
        "far away": (hand[1, 4:5], np.inf), "a body": (starts[2], np.nan), "a radius": (radii[2:3], np.nan),
    }[what]  # fmt: skip
    where[:] = value
    args = least_gaps, hand, tether, wide, LINE, (starts, axes, radii)
    with np.errstate(invalid="ignore"):
        one, other = by_numpy(*args), by_code(*args)
    assert np.isnan(other[1])
    assert np.array_equal(one, other, equal_nan=True)


def test_arrays_of_any_kind_are_read_as_numbers(by_numpy, by_code):
    hand, tether, wide, (starts, axes, radii) = looked_at(4, 3, 4)
    for kind in (np.float32, np.int64):
        other = tuple(np.asfortranarray(10 * each).astype(kind) for each in (starts, axes, radii))
        args = least_gaps, (10 * hand).astype(kind).astype(float), tether, wide, FAN, other
        assert np.allclose(by_numpy(*args), by_code(*args), rtol=1e-5, atol=1e-5)
    with pytest.raises(ValueError, match="broadcast"):  # as many samples as the hands have
        by_code(least_gaps, hand, tether, wide, FAN, (starts[:, :5], axes[:, :5], radii))
    whole = np.arange(36).reshape(12, 3)
    for coefficients in (whole, whole.astype(np.float32), np.asfortranarray(whole / 7)):
        curves = [EvenSpline(start=0.0, step=0.5, coefficients=coefficients)]
        for orders in (range(2), range(5, 6), range(0, 5, 2)):
            args = together, curves, np.array([1.1, 2.2]), orders
            assert np.allclose(by_numpy(*args), by_code(*args), rtol=1e-6)


def test_where_there_is_nothing_no_gap_is_too_small(by_numpy, by_code):
    hand, tether, wide, _ = looked_at(1, 2, 1)
    nothing = np.empty((0, 33, 3)), np.empty((0, 33, 3)), np.empty(0)
    for find in (by_numpy, by_code):
        assert find(least_gaps, hand, tether, wide, LINE, nothing).tolist() == [np.inf, np.inf]


SPLINES = tuple(
    EvenSpline(start=1.25, step=1 / 96, coefficients=np.random.default_rng(k).normal(size=(105, 3)))
    for k in range(2)
)
BEATS = np.concatenate([np.linspace(0.5, 3.5, 997), 1.25 + np.arange(-2, 104) / 96, [np.inf, -9e9]])


@pytest.mark.parametrize("periodic", [False, True])
@pytest.mark.parametrize("orders", [range(1), range(3), range(1, 4), range(2, 5)])
def test_splines_are_those_of_numpy_in_every_digit(by_numpy, by_code, periodic, orders):
    """Between knots and at them, before and after, and at places of more than one shape."""
    curves = [replace(each, periodic=periodic) for each in SPLINES]
    beats = BEATS[:-2] if periodic else BEATS
    for places in (beats, beats[:1000].reshape(20, 50), beats[7], beats[:0]):
        one, other = (find(together, curves, places, orders) for find in (by_numpy, by_code))
        for own, compiled in zip(one, other, strict=True):
            assert len(own) == len(compiled) == len(orders)
            for wanted, found in zip(own, compiled, strict=True):
                assert wanted.shape == found.shape
                assert np.array_equal(wanted, found)


def test_the_loops_say_the_same_as_python(by_numpy):
    """Read as Python, they are what was compiled."""
    hand, tether, wide, (starts, axes, radii) = looked_at(4, 2, 3, looks=5)
    least = np.empty(2)
    given = [hand, tether, wide, np.array(FAN), starts, axes]
    small_loops.pair_gaps(*(each.ravel() for each in given), radii, least, 2, 5, 3, len(FAN))
    wanted = by_numpy(least_gaps, hand, tether, wide, FAN, (starts, axes, radii))
    assert np.array_equal(least, wanted)


def test_it_is_made_when_it_is_worth_it(monkeypatch):
    monkeypatch.setattr(small_code, "small_code", lambda: "made")
    monkeypatch.setattr(small_code, "_SPENT", [0.0])
    part = small_code.WORTH_SMALL_CODE / 4
    assert [small_code.small_code_for(part) for _ in range(5)] == [None] * 4 + ["made"]


def test_the_machine_code_is_that_of_the_loops():
    """`python -m sequencer.motion.flown.small_code` makes it anew."""
    first = gzip.decompress(packed()).decode().splitlines()[0]
    assert first == f"; loops {small_code.small_digest()}"


def test_code_of_other_loops_or_damaged_is_not_used(monkeypatch, tmp_path):
    whole = packed()
    text = gzip.decompress(whole).replace(small_code.small_digest().encode(), b"0" * 64)
    with pytest.raises(RuntimeError, match="not of these loops"):
        small_code.small_code_from(gzip.compress(text))
    monkeypatch.setattr(small_code.resources, "files", lambda _: tmp_path)
    for damaged in (None, b"", whole[:-99], gzip.compress(b"define nonsense")):
        if damaged is not None:
            (tmp_path / small_code.SMALL_DATA).write_bytes(damaged)
        assert small_code.small_code.__wrapped__() is None
