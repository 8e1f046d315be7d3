"""Who goes on later than the first, and where."""

import pytest

from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.planning.drafting.grouping.staggering import longer, staggered

NAMES = ("Ann", "Bo", "Cy", "Dee")
LINE = {name: (3.0 * k - 4.5, 5.0, 0.0) for k, name in enumerate(NAMES)}


def slots_of(*parts):
    """Slots from (section, label, beats) in a row."""
    found, at = [], 0
    for k, (section, label, beats) in enumerate(parts):
        found.append(Slot(start=at, end=at + beats, section=section, label=label, material=k))
        at += beats
    return found


def two(section, label, beats=16):
    return [(section, label, beats), (section, label, beats)]


SONG = slots_of(*two("A", "A"), *two("B 1", "B"), *two("C", "C"), *two("B 2", "B"))


def turns(slots=SONG, *, between=("A", "B", "C"), lead="Ann", walked=(), spots=None, names=NAMES):
    stood = spots or [LINE] * len(slots)
    return staggered(slots, stood, between, lead=lead, names=names, walked=frozenset(walked))


def test_parts_take_turns_and_returns_are_alike():
    found = turns()
    assert found.pairs == {0, 1}
    assert found.kinds == {2: "canon", 6: "canon", 4: "answer"}
    assert found.late[2] == found.late[6] == {"Bo": 2, "Cy": 4, "Dee": 6}
    assert found.late[4] == {"Cy": 8, "Dee": 8}


def test_a_canon_goes_out_from_the_lead():
    assert turns(lead="Cy").late[2] == {"Bo": 2, "Dee": 4, "Ann": 6}
    assert turns(lead="Cy").late[4] == {"Ann": 8, "Bo": 8}


@pytest.mark.parametrize(
    ("people", "counts"), [(2, [4]), (3, [3, 6]), (6, [1, 2, 3, 4, 5]), (8, [])]
)
def test_the_last_of_a_canon_is_six_beats_late_at_most(people, counts):
    names = tuple(f"P{k}" for k in range(people))
    spots = {name: (float(k), 0.0, 0.0) for k, name in enumerate(names)}
    found = turns(lead="P0", names=names, spots=[spots] * len(SONG))
    assert list(found.late.get(2, {}).values()) == counts
    assert (2 in found.pairs) == (not counts)


@pytest.mark.parametrize("walked", [3, 7])
def test_nobody_is_late_into_a_walk_in_any_return(walked):
    found = turns(walked=[walked])
    assert {2, 3, 6, 7} <= found.pairs
    assert set(found.late) == {4}
    assert set(turns(walked=[2, 6]).late) == {2, 4, 6}  # by then everybody has arrived


def test_the_calmest_part_is_a_canon_or_in_unison():
    found = turns(between=["A"], spots=None)
    assert not found.late
    stood = {"lead": "Ann", "names": NAMES}
    calm = staggered(SONG, [LINE] * len(SONG), ["A"], walked=frozenset(), calmest="C", **stood)
    assert calm.kinds == {4: "canon"}
    calm = staggered(SONG, [LINE] * len(SONG), ["A"], walked=frozenset({5}), calmest="C", **stood)
    assert (calm.kinds, calm.pairs) == ({}, {0, 1})


def test_where_the_calmest_part_is_a_canon_no_other_is():
    """The same canon in one part after the other would be seen through."""
    stood = {"lead": "Ann", "names": NAMES, "calmest": "C"}
    spots = [LINE] * len(SONG)
    found = staggered(SONG, spots, ["A", "B"], walked=frozenset(), **stood)
    assert found.kinds == {4: "canon", 2: "answer", 6: "answer"}
    found = staggered(SONG, spots, ["A", "B"], walked=frozenset({5}), **stood)
    assert found.kinds == {2: "canon", 6: "canon"}


def test_short_stretches_and_gaps_are_danced_in_pairs():
    short = slots_of(*two("A", "A"), ("B", "B", 16), ("B", "B", 8), ("C", "C", 16))
    found = turns(short)
    assert (found.pairs, found.solos) == ({0, 1, 2, 3}, {4})
    assert not found.late


def test_returns_from_other_places_are_danced_in_pairs():
    turned = {name: (-x, y, f) for name, (x, y, f) in LINE.items()}
    other = {**LINE, "Bo": LINE["Dee"], "Dee": LINE["Bo"]}
    assert turns(spots=[LINE] * 6 + [turned] * 2).late[6] == {"Bo": 2, "Cy": 4, "Dee": 6}
    assert 6 not in turns(spots=[LINE] * 6 + [other] * 2).late


def test_what_one_stretch_gains_by_lateness_the_next_one_loses():
    late = {2: {"Bo": 2, "Dee": 6}, 3: {"Bo": 2}}
    assert longer(late, 1) == {}
    assert longer(late, 2) == {"Bo": 2, "Dee": 6}
    assert longer(late, 3) == {"Dee": -6}
    assert longer(late, 4) == {"Bo": -2}


def test_the_fourth_part_in_turn_and_what_cannot_be_answered_is_a_solo():
    song = slots_of(
        *two("A", "A"), ("C", "C", 16), *two("B 1", "B"), *two("D", "D"), *two("B 2", "B")
    )
    given = {"lead": "Ann", "names": NAMES, "walked": frozenset()}
    spots = [LINE] * len(song)
    found = staggered(song, spots, ["A", "C", "D", "B"], **given)
    assert found.solos == {3, 4, 7, 8}
    assert found.pairs == {0, 1, 2}
    assert found.kinds == {5: "answer"}
    assert staggered(song, spots, ["A", "B", "C"], **given).solos == {2}
    # of two nobody is alone, and it must last long enough to be seen
    two_people = {**given, "names": NAMES[:2]}
    assert staggered(song, spots, ["A", "C", "D", "B"], **two_people).pairs >= {3, 4, 7, 8}
    short = slots_of(*two("A", "A"), ("B", "B", 8), *two("C", "C"))
    assert staggered(short, spots, ["A", "C", "B"], **given).pairs >= {2}
