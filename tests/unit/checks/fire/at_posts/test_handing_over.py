"""Hand-overs at once: who is in two of them, in which order they are done, and how they are avoided."""

import re
from dataclasses import dataclass

import pytest

from sequencer.checks.fire.at_posts.handing_over import TAKES, at_once, gives_first, hand_overs
from sequencer.safety.duties.watching import HandOver, WatchPlan
from tests.sites import site


@dataclass(frozen=True)
class Steady:
    """A second a beat."""

    def seconds(self, beat):
        return beat

    def position(self, beat):
        return str(beat)


def plan(*rows):
    given = tuple(HandOver(who=w, beat=b, giver=g, taker=t) for b, w, g, t in rows)
    return WatchPlan(watches=(), hand_overs=given, unwatched=())


@pytest.mark.parametrize(
    ("rows", "groups"),
    [
        # gives one and takes another
        ([(8.0, "Wren", "Flint", "Rowan"), (8.0, "Juniper", "Brook", "Flint")], 1),
        # takes two
        ([(8.0, "Wren", "Flint", "Rowan"), (8.0, "Juniper", "Brook", "Rowan")], 1),
        # gives two
        ([(8.0, "Wren", "Flint", "Rowan"), (8.0, "Juniper", "Flint", "Brook")], 1),
        # four people in two hand-overs: nobody is in both
        ([(8.0, "Wren", "Flint", "Rowan"), (8.0, "Juniper", "Brook", "Ash")], 0),
        # nearly at once, and not any more
        ([(8.0, "Wren", "Flint", "Rowan"), (8.0 + TAKES - 0.01, "Juniper", "Brook", "Flint")], 1),
        ([(8.0, "Wren", "Flint", "Rowan"), (8.0 + TAKES, "Juniper", "Brook", "Flint")], 0),
    ],
)  # fmt: skip
def test_two_at_once_are_found_where_one_person_is_in_both(rows, groups):
    found = at_once(plan(*rows), Steady())

    assert len(found) == groups
    assert all(len(group) == 2 for group in found)


# Wren walks away from Rowan's side to Brook's while Moss walks the other way: each spotter gives one and takes one.
CROSS = (
    ("  pair: {spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}",
     ("  pair: {spots: {Wren: {at: [-8, 4]}, Moss: {at: [8, 4]}}}\n"
     "  crossed: {spots: {Wren: {at: [8, 5]}, Moss: {at: [-8, 3]}}}")),
    ("  - {formation: pair, from: 1.1}\n",
     "  - {formation: pair, from: 1.1}\n  - {formation: crossed, from: 21.1, beats: 32}\n"),
    ("  - {name: Rowan, post: [0, 9], duty: spotter}",
     "  - {name: Rowan, post: [-8, 8], duty: spotter}\n  - {name: Brook, post: [8, 8], duty: spotter}"),
)  # fmt: skip


def test_a_crossing_hands_both_over_at_once():
    (found,) = hand_overs(site(*CROSS)).findings

    assert (found.code, found.severity, found.position) == ("hand-overs-at-once", "warn", "25.1")
    assert "Brook gives Moss to Rowan, Rowan gives Wren to Brook" in found.message
    assert "Brook and Rowan are in more than one" in found.message
    assert re.fullmatch("one after the other: .* takes .*, then .* takes .*; nobody lets go before they are answered", found.remedies[-1])  # fmt: skip


def test_who_gives_and_takes_gives_first():
    """Flint watches as many as before or fewer at every moment: Wren is taken before Juniper comes."""
    rows = plan((8.0, "Juniper", "Brook", "Flint"), (8.0, "Wren", "Flint", "Rowan")).hand_overs

    assert [each.who for each in gives_first(rows)] == ["Wren", "Juniper"]


def test_nothing_is_handed_over_where_everybody_stays():
    assert hand_overs(site()).findings == ()
