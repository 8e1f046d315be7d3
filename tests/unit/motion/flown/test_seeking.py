"""Limits sought again until they are held: this module's own rule, on problems that stand in for the search."""

from dataclasses import dataclass, field
from types import SimpleNamespace

import pytest

from sequencer.motion.flown import seeking
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.flown.optimum import SoughtLimits


@dataclass(frozen=True)
class Goal:
    """What `Problem.wanted` is read for."""

    limits: SoughtLimits = field(default_factory=lambda: SoughtLimits(4.0, 5.0, 70.0))


@dataclass
class Yielding:
    """A problem whose motions miss its limits by given shares, one set a round."""

    wanted: Goal = field(default_factory=Goal)
    grid: object = None

    def solved(self, start, _stages=()):
        ROUNDS.append(self.wanted.limits)
        return SimpleNamespace(unknown=start)


ROUNDS: list[SoughtLimits] = []


def held(missed, monkeypatch):
    """The limits sought round by round."""
    ROUNDS.clear()
    left = iter([*missed, {}])
    monkeypatch.setattr(seeking, "Problem", lambda grid, wanted: Yielding(wanted, grid))
    seeking.held_to_limits(Yielding(), 0.0, lambda _: SimpleNamespace(missed=lambda: next(left)))
    return list(ROUNDS)


def test_what_is_sought_first_is_stricter_than_the_limits():
    """A third more than the pull that must be held, and a little less speed and acceleration than a hand has."""
    pull, speed, acceleration = seeking.sought(FlownLimits(hand_speed=6.0, hand_acceleration=80.0))
    assert pull == pytest.approx(0.4 * 9.80665)
    assert 5.4 < speed < 6.0
    assert 72.0 < acceleration < 80.0


def test_limits_missed_by_little_are_sought_more_strictly(monkeypatch):
    """A tenth over is sought 13 % under."""
    first, second = held([{"speed": 0.1, "acceleration": 0.05, "pull": 0.1}], monkeypatch)
    assert second.speed == pytest.approx(first.speed * (1 - 0.13))
    assert second.acceleration == pytest.approx(first.acceleration * (1 - 0.065))
    assert second.pull == pytest.approx(first.pull * 1.13)


def test_what_is_held_or_missed_for_good_is_not_sought_again(monkeypatch):
    """More than four times a limit is missed for good."""
    assert len(held([{}], monkeypatch)) == 1
    assert len(held([{"speed": 0.01, "acceleration": 3.1}], monkeypatch)) == 1


def test_a_round_asks_for_no_more_than_a_third_less(monkeypatch):
    """Far over a limit, a search is led back in several rounds."""
    first, second = held([{"acceleration": 2.5}], monkeypatch)
    assert second.acceleration == pytest.approx(first.acceleration * 0.65)


def test_it_ends(monkeypatch):
    """At most six rounds more, and never below nothing."""
    assert len(held([{"speed": 0.01}] * 9, monkeypatch)) == 7
    assert all(min(limits) > 0 for limits in held([{"speed": 0.79}] * 9, monkeypatch))
