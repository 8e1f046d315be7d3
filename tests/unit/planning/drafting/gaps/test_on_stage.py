"""Who is on the stage when, against looking at single moments one by one."""

from itertools import pairwise

import numpy as np
import pytest

from sequencer.planning.drafting.gaps.on_stage import (
    LeftOpen,
    at_rest,
    cuts_beside,
    cuts_for_somebody,
    dances_in_words,
    left_in_words,
    nobody_on,
    those_off,
)
from sequencer.planning.drafting.gaps.slots import Slot

NAMES = ("Ash", "Bo", "Cy")
EVER = 1e6


def slots(*edges):
    return [
        Slot(start=a, end=b, section="A", label="A", material=k)
        for k, (a, b) in enumerate(pairwise(edges))
    ]


def drawn(seed):
    """For each of three, spans in which they are off, in whole beats."""
    draw = np.random.default_rng(seed)
    away = {}
    for name in NAMES:
        edges = sorted(draw.choice(60, size=4, replace=False).tolist())
        spans = [(-EVER, edges[0]), (edges[1], edges[2]), (edges[3], EVER)]
        away[name] = tuple(spans[int(draw.integers(2)) :])
    return away


def is_off(name, beat, away):
    return any(a < beat < b for a, b in away[name])


@pytest.mark.parametrize("seed", range(10))
def test_spans_and_slots_are_what_single_moments_say(seed):
    away = drawn(seed)
    moments = np.arange(0.25, 60, 0.5)
    alone = nobody_on(NAMES, away)
    each = slots(0, 8, 16, 22, 40, 60)
    off = those_off(each, NAMES, away)
    for beat in moments:
        nobody = all(is_off(name, beat, away) for name in NAMES)
        assert any(a < beat < b for a, b in alone) == nobody
    for k, slot in enumerate(each):
        inside = [beat for beat in moments if slot.start < beat < slot.end]
        assert off.get(k, frozenset()) == {
            name for name in NAMES if any(is_off(name, beat, away) for beat in inside)
        }


def test_everybody_is_on_where_nothing_is_said():
    assert nobody_on(NAMES, {"Ash": ((-EVER, 8.0),)}) == []
    assert those_off(slots(0, 16), NAMES, {}) == {}


def test_a_slot_in_which_one_goes_as_another_comes_is_cut_there():
    away = {"Ash": ((8.0, EVER),), "Bo": ((-EVER, 8.0),), "Cy": ((-EVER, 40.0),)}
    each = slots(0, 16, 32, 48)
    assert cuts_for_somebody(each, NAMES, away) == [(8.0, 8.0)]  # Bo is on from there
    assert cuts_for_somebody(each, NAMES, {"Cy": ((-EVER, 40.0),)}) == []


def test_when_each_dances_is_said_with_when_they_are_there():
    away = {"Bo": ((-EVER, 12.0), (40.0, EVER)), "Cy": ((2.0, 30.0), (34.0, 50.0))}
    stretches = slots(0, 16, 32, 48, 64)
    off = those_off(stretches, NAMES, away)
    said = dances_in_words(stretches, off, NAMES, away, lambda beat: f"b{beat:g}")
    assert said == (
        "Bo dances from b16 until b32 (there at b12, goes off at b40)",
        "Cy gets nothing to dance (goes off at b2): no stretch of the song lies in that time",
        "Cy gets nothing to dance (there at b30, goes off at b34): no stretch of the song lies in that time",
        "Cy gets nothing to dance (there at b50): no stretch of the song lies in that time",
    )
    assert dances_in_words((), off, NAMES, away, str) == ()
    lit = {**off, 1: off[1] | {"Bo"}} if 1 in off else {**off, 1: frozenset({"Bo"})}
    assert dances_in_words(stretches, lit, NAMES, away, lambda beat: f"b{beat:g}")[0] == (
        "Bo gets nothing to dance (there at b12, goes off at b40): no stretch of the song lies in that time"
    )


def test_who_is_lit_rests_and_where_all_are_at_once_nobody_dances():
    away = {"Bo": ((-EVER, 12.0),)}
    left = [LeftOpen(14.0, 20.0, ("Bo",)), LeftOpen(40.0, 44.0, NAMES)]
    resting = at_rest(NAMES, away, left)
    assert resting == {
        "Ash": ((40.0, 44.0),),
        "Bo": ((-EVER, 12.0), (14.0, 20.0), (40.0, 44.0)),
        "Cy": ((40.0, 44.0),),
    }
    assert at_rest(NAMES, {}, []) == {}
    assert nobody_on(NAMES, resting) == [(40.0, 44.0)]
    assert those_off(slots(0, 16, 24, 40), NAMES, resting) == {
        0: frozenset({"Bo"}),
        1: frozenset({"Bo"}),
    }


@pytest.mark.parametrize(
    ("start", "end", "who", "cuts"),
    [
        (16.5, 19.0, ("Bo",), [24]),  # Bo begins a phrase later
        (28.0, 31.0, ("Bo",), [24]),  # and ends one earlier
        (24.0, 32.0, ("Bo",), [24]),
        (20.0, 24.0, ("Bo",), [24]),
        (24.0 - 1e-9, 32.0, ("Bo",), [24]),
        (20.0, 24.0 + 1e-9, ("Bo",), [24]),
        (23.0, 25.0, ("Bo",), []),  # both phrases: the whole stretch
        (103.0, 114.0, ("Bo",), []),  # what would be left of it is too short to be danced
        (16.5, 19.0, NAMES, []),  # stretches end there anyway
        (55.0, 60.0, ("Bo",), []),  # behind a stretch of 23 beats
        (0.0, 16.0, ("Bo",), []),
        (0.0, 8.0, ("Bo",), []),
    ],
)
def test_a_stretch_is_cut_between_phrases_beside_whom_somebody_lights(start, end, who, cuts):
    found = cuts_beside(
        [*slots(16, 32), *slots(32, 55), *slots(100, 121)],
        [LeftOpen(start, end, who)],
        NAMES,
        phrase=8,
    )
    assert found == [(at, at) for at in cuts]


def test_who_does_not_dance_while_being_lit_is_said_by_span():
    left = [
        LeftOpen(40.0, 44.0, ("Cy", "Ash")),
        LeftOpen(8.0, 12.0, ("Bo",)),
        LeftOpen(40.0, 44.0, ("Cy",)),
        LeftOpen(60.0, 64.0, ("Bo", "Cy")),
        LeftOpen(60.0, 64.0, ("Ash",)),
    ]
    assert left_in_words(left, NAMES, lambda beat: f"b{beat:g}") == (
        "b8 to b12: Bo does not dance while being lit or put out",
        "b40 to b44: Ash and Cy do not dance while being lit or put out",
        "b60 to b64: somebody is lit or put out then, so nobody dances",
    )
