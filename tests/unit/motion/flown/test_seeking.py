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

    def sought(self, limits):
        return Yielding(Goal(limits))

    def solved(self, start, _stages=()):
        ROUNDS.append(self.wanted.limits)
        return SimpleNamespace(unknown=start)


@dataclass(frozen=True)
class Missing:
    """A motion."""

    shares: dict

    def missed(self):
        return self.shares


ROUNDS: list[SoughtLimits] = []


def held(missed):
    """The limits sought round by round."""
    ROUNDS.clear()
    left = iter([*missed, {}])
    seeking.held_to_limits(Yielding(), 0.0, lambda _: Missing(next(left)))
    return list(ROUNDS)


def test_what_is_sought_first_is_stricter_than_the_limits():
    """A third more than the pull that must be held, and a little less speed and acceleration than a hand has."""
    pull, speed, acceleration = seeking.sought(FlownLimits(hand_speed=6.0, hand_acceleration=80.0))
    assert pull == pytest.approx(0.4 * 9.80665)
    assert 5.4 < speed < 6.0
    assert 72.0 < acceleration < 80.0


def test_limits_missed_by_little_are_sought_more_strictly():
    """A tenth over is sought 13 % under."""
    first, second = held([{"speed": 0.1, "acceleration": 0.05, "pull": 0.1}])
    assert second.speed == pytest.approx(first.speed * (1 - 0.13))
    assert second.acceleration == pytest.approx(first.acceleration * (1 - 0.065))
    assert second.pull == pytest.approx(first.pull * 1.13)


def test_what_is_held_or_missed_for_good_is_not_sought_again():
    """More than four times a limit is missed for good."""
    assert len(held([{}])) == 1
    assert len(held([{"speed": 0.01, "acceleration": 3.1}])) == 1


def test_a_round_asks_for_no_more_than_a_third_less():
    """Far over a limit, a search is led back in several rounds."""
    first, second = held([{"acceleration": 2.5}])
    assert second.acceleration == pytest.approx(first.acceleration * 0.65)


def test_a_round_asks_for_a_little_at_least():
    """Over by a ten-thousandth, a half per cent less is sought: the next round would ask for nothing else."""
    first, second = held([{"speed": 1e-4}])
    assert second.speed == pytest.approx(first.speed * 0.995)


def test_what_grows_when_it_is_sought_again_is_given_up():
    """The motion that missed least is what comes of it; what is missed by little may waver."""
    assert len(held([{"acceleration": 0.2}, {"acceleration": 0.3}, {}])) == 2
    assert len(held([{"acceleration": 0.3}, {"acceleration": 0.2}, {}])) == 3
    assert len(held([{"acceleration": 0.01}, {"acceleration": 0.04}, {}])) == 3
    left = iter([{"speed": 0.3}, {"speed": 0.4}])
    found = seeking.held_to_limits(Yielding(), 0.0, lambda _: Missing(next(left)))
    assert found.missed() == {"speed": 0.3}


def test_it_ends():
    """At most six rounds more, and never below nothing."""
    assert len(held([{"speed": 0.01}] * 9)) == 7
    assert all(min(limits) > 0 for limits in held([{"speed": 0.79}] * 9))
