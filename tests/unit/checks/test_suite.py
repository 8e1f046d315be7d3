"""Checks of the motion itself, of a show as drawn or as flown."""

import pytest

from sequencer.checks import suite
from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import checks
from sequencer.staging.in_flight.flown_show import is_flown
from tests.unit.staging.in_flight.test_flown_show import flown, staged_show


def told(name):
    """A check that tells whether it was given the show as flown."""

    def run(show):
        return Outcome(not_checked=(f"{name}: {any(is_flown(own) for own in show.dancers)}",))

    return Check(name=name, run=run, codes={"told": ("note",)}, progress=f"asking {name}")


def test_checks_of_the_motion_are_known():
    assert set(suite.AS_FLOWN) <= {check.name for check in checks()}


@pytest.mark.parametrize("as_flown", [False, True])
def test_only_checks_of_the_motion_get_the_show_as_flown(monkeypatch, as_flown):
    """Joins, parity and stations are about the pattern that is drawn."""
    made, heard = flown(), []
    monkeypatch.setattr(suite, "checks", lambda: [told(name) for name in ("joins", "distances", "let-go")])  # fmt: skip

    def shown(_show, say=None):
        if say is not None:
            say("flying", 0.5)
        return made

    monkeypatch.setattr(suite, "flown_show", shown)
    monkeypatch.setattr(suite, "flights_outcome", lambda show, _: told("as-flown").outcome(show))
    outcome, danced = suite.examined(
        staged_show(), flown=as_flown, progress=lambda words, _share: heard.append(words)
    )
    last = ("as-flown: False",) if as_flown else ()
    assert outcome.not_checked == (
        "joins: False", f"distances: {as_flown}", f"let-go: {as_flown}", *last,
    )  # fmt: skip
    assert danced is None
    assert heard[-3:] == ["asking joins", "asking distances", "asking let-go"]
    assert ("flying" in heard) is as_flown


@pytest.mark.parametrize("name", ["distances", "let-go"])
def test_the_checks_of_the_motion_take_a_flown_show(name):
    """An outcome of its own: the drawn one, computed before, is not taken for it."""
    (check,) = [own for own in checks() if own.name == name]
    drawn, made = staged_show(), flown().staged
    before = check.outcome(drawn)
    after = check.outcome_of(made)
    assert check.outcome_of(made) is after
    assert after is not before
    assert check.outcome(drawn) is before
