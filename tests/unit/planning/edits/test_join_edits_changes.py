"""What each remedy of a join changes in the show file, by paths and values."""

from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.walks import Move
from sequencer.planning.edits import join_edits, join_remedies
from sequencer.planning.edits.join_edits import edits_for
from sequencer.planning.edits.join_remedies import Remedy
from sequencer.planning.edits.moves import elsewhere
from sequencer.planning.trying.restaging import changed_values
from tests.unit.planning.edits.test_join_edits import HEAD, stage

TWO = """\
timeline:
  - {from: 3.1, pattern: static-spin, beats: 4}
  - {pattern: extension, shift: 0.5, with: {plane: wheel}, beats: 6}
"""


def edits(timeline, monkeypatch, *remedies, side="right"):
    show = stage(HEAD + timeline)
    before, after = show.blocks[:2]
    joint = SimpleNamespace(
        who="Ash", beat=before.end, boundary=None, verdict=None, side=side, before=before, after=after
    )  # fmt: skip
    monkeypatch.setattr(join_edits, "remedies_for", lambda _boundary, _verdict: list(remedies))
    return edits_for(show, joint)


def remedy(change, lost=0.0, **values):
    return Remedy(words="do it", beats_lost=lost, change=change, values=values)


BEFORE, AFTER = ("timeline", 0), ("timeline", 1)
CHANGES = {
    "shift": (remedy("shift", shift=0.75), (((*AFTER, "shift"), 1.25),)),
    "a whole shift": (remedy("shift", shift=0.5), (((*AFTER, "shift"), 1),)),
    "extend": (remedy("extend", beats=8.0), (((*BEFORE, "beats"), 8),)),
    "before": (remedy("before", begin="out"), (((*BEFORE, "with"), {"begin": "out"}),)),
    "after": (remedy("after", start=-1), (((*AFTER, "with", "start"), -1),)),
    "both": (
        remedy("both", begin="out"),
        (((*BEFORE, "with"), {"begin": "out"}), ((*AFTER, "with", "begin"), "out")),
    ),
    "cycle and beats": (
        remedy("before", cycle=2.5, beats=5.0, lobes=4),
        (((*BEFORE, "cycle"), 2.5), ((*BEFORE, "beats"), 5), ((*BEFORE, "with"), {"lobes": 4})),
    ),
    "the same beats": (remedy("before", cycle=2.0, beats=4.0), (((*BEFORE, "cycle"), 2),)),
}


@pytest.mark.parametrize("case", CHANGES)
def test_a_remedy_changes_what_it_says_and_nothing_else(case, monkeypatch):
    given, changes = CHANGES[case]
    (edit,) = edits(TWO, monkeypatch, given)
    assert edit.changes == changes
    assert edit.insertions == ()
    assert edit.words == "Ash, 4.1: do it"


@pytest.mark.parametrize(("beats", "left"), [(1.0, 3), (2.5, 1.5), (3.0, 1), (3.25, None)])
def test_a_link_takes_its_beats_from_the_block_before_which_keeps_one(beats, left, monkeypatch):
    found = edits(TWO, monkeypatch, remedy("link", lost=beats, beats=beats))
    if left is None:
        assert found == []
        return
    (edit,) = found
    assert edit.changes == (((*BEFORE, "beats"), left),)
    number = int(beats) if beats.is_integer() else beats
    ((path, index, entry),) = edit.insertions
    assert (tuple(path), index, entry) == (("timeline",), 1, {"link": True, "beats": number})
    assert edit.beats_lost == beats


def test_a_link_of_one_performer_is_theirs(monkeypatch):
    mine = TWO.replace("{from: 3.1,", "{who: Ash, from: 3.1,")
    (edit,) = edits(mine, monkeypatch, remedy("link", beats=1.0))
    assert edit.insertions[0][2] == {"who": "Ash", "link": True, "beats": 1}


def test_a_remedy_without_effect_is_none_and_the_fewest_beats_come_first(monkeypatch):
    found = edits(
        TWO, monkeypatch, remedy("extend", lost=0.0, beats=4.0), remedy("extend", lost=4.0, beats=8.0),
        remedy("shift", lost=0.0, shift=0.25), remedy("link", lost=1.0, beats=1.0),
    )  # fmt: skip
    assert [edit.beats_lost for edit in found] == [0.0, 1.0, 4.0]


def test_a_hand_of_its_own_is_changed_alone(monkeypatch):
    hands = """\
timeline:
  - {from: 3.1, left: {pattern: static-spin}, right: {pattern: static-spin, with: {plane: wheel}}, beats: 4}
  - {pattern: extension, beats: 6}
"""
    (edit,) = edits(hands, monkeypatch, remedy("before", turn="back"))
    assert edit.changes == (((*BEFORE, "right", "with", "turn"), "back"),)
    (edit,) = edits(hands, monkeypatch, remedy("before", turn="back"), side="left")
    assert edit.changes == (((*BEFORE, "left", "with"), {"turn": "back"}),)


def test_a_length_in_cycles_becomes_one_in_beats(monkeypatch):
    cycles = TWO.replace("static-spin, beats: 4", "static-spin, cycle: 1, cycles: 4")
    (edit,) = edits(cycles, monkeypatch, remedy("extend", beats=6.0))
    assert edit.changes == (((*BEFORE, "beats"), 6), ((*BEFORE, "cycles"), None))
    until = TWO.replace("static-spin, beats: 4", "static-spin, until: 4.1")
    (edit,) = edits(until, monkeypatch, remedy("extend", beats=6.0))
    assert edit.changes == (((*BEFORE, "beats"), 6), ((*BEFORE, "until"), None))


class _Block:
    """A block as the remedies see it: it starts where its parameters say."""

    def __init__(self, kind="pattern", values=None):
        self.kind, self.name, self.values, self.parameters = kind, "x", values or {}, {"a": 1}

    def open(self, name):
        return name in self.values

    def start(self, parameters=None):
        return parameters

    def end(self, *_given, **_named):
        return "end"


def other_way(after, joins):
    seen = []

    def judged(end, start):
        seen.append((end, start))
        return joins

    boundary = SimpleNamespace(before=_Block(), after=after, joins=judged)
    return join_remedies._other_way(boundary), seen


def test_the_other_way_reverses_what_is_open():
    found, seen = other_way(_Block("toroid", {"start": 1}), True)
    assert (found.values, found.change, found.beats_lost) == ({"start": -1}, "after", 0.0)
    assert seen == [("end", {"a": 1, "start": -1})]
    assert found.words == "start x with the opposite spin sense (start: -1)"
    assert other_way(_Block("toroid", {"start": 1}), False)[0] is None
    assert other_way(_Block("orbit", {"start": 1}), True) == (None, [])
    assert other_way(_Block("orbit", {}), True) == (None, [])


def test_conflicts_elsewhere_are_those_half_a_beat_away_and_are_widened_by_it(dance):
    """Ada passes Bo twice; about one passage the other is elsewhere, and none is about both."""
    walk = (
        Move(start=4, end=12, place=(4, 3), facing=0),
        Move(start=20, end=28, place=(-4, 3), facing=0),
    )
    pair = (dance.dancer("Ada", (-4, 3), moves=walk), dance.dancer("Bo", (0, 3.8)))
    spans = approaches(pair, 0, 32, required=0.3).spans
    starts, ends = spans.start, spans.end
    first = (float(starts[starts < 16].min()), float(ends[starts < 16].max()))
    last = [(a - 0.5, b + 0.5) for a, b in zip(starts, ends, strict=True) if a > 16]
    assert last
    np.testing.assert_allclose(elsewhere(pair, first, (0, 32), 0.3), last)
    assert elsewhere(pair, (first[0], 32.0), (0, 32), 0.3) == []


def test_insertions_go_in_from_the_last_on_and_none_takes_away():
    values = {"rows": [1, 2, 3], "x": {"y": 1, "z": 2}}
    changed = changed_values(
        values, [(("x", "y"), None), (("x", "z"), 5)], [(("rows",), 1, "a"), (("rows",), 3, "b")]
    )
    assert changed == {"rows": [1, "a", 2, 3, "b"], "x": {"z": 5}}
    assert values == {"rows": [1, 2, 3], "x": {"y": 1, "z": 2}}
    with pytest.raises(ValueError, match="there is no"):
        changed_values(values, [(("q", "y"), 1)])
