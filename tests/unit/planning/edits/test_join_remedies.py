"""Each remedy of a join and when there is none, with blocks that start and end where the test says."""

from functools import partial
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.planning.edits import join_remedies as remedies


class Block:
    """A block of `kind`; `shut` parameters are set in the show and cannot be changed."""

    def __init__(self, kind="toroid", *, shut=(), cycle=2.0, beats=6.0, refuses=(), **values):
        self.kind, self.name, self.values = kind, f"the {kind}", values
        self.parameters, self.cycle, self.beats = {"a": 1}, cycle, beats
        self.shut, self.refuses = shut, refuses
        self.law = SimpleNamespace(at=lambda shifts: ("at", tuple(np.ravel(shifts))))

    def open(self, name):
        return name in self.values and name not in self.shut

    def start(self, parameters=None):
        return ("start", self.name, *sorted((parameters or {}).items()))

    def end(self, parameters=None, *, extra=0.0):
        return ("end", extra, *sorted((parameters or {}).items()))

    def build(self, parameters, cycle):
        if parameters["lobes"] in self.refuses:
            raise ValueError("no such bend")
        lobes = parameters["lobes"]
        return SimpleNamespace(at=lambda beats: (lobes, cycle, float(beats)))


def boundary(before, after, joins, *, starts=True, earlier=None):
    """`joins` is a function of the end before and the start after."""
    return SimpleNamespace(
        before=before, after=after, joins=joins, starts=lambda _changed: starts, earlier=earlier,
        space=SimpleNamespace(length=0.5), limits="limits", tolerances="tolerances",
    )  # fmt: skip


def test_a_second_cycle_is_offered_where_its_end_joins():
    own = boundary(
        Block(),
        Block("orbit"),
        lambda end, start: (end, start) == (("end", 2.0), ("start", "the orbit")),
    )
    found = remedies._second_cycle(own)
    assert (found.beats_lost, found.change, found.values) == (2.0, "extend", {"beats": 8.0})
    assert found.words == "dance a second cycle of the toroid (2 more beats)"
    assert remedies._second_cycle(boundary(Block(), Block(), lambda *_: False)) is None


OUT = ("begin", "out")


def test_a_start_at_an_out_of_one_or_of_both():
    plain = ("start", "the toroid")
    before, after = Block(begin="in"), Block(begin="in")
    one = remedies._start_at_out(
        boundary(
            before, after, lambda end, start: OUT in end and ("a", 1) in end and start == plain
        )
    )
    assert (one.words, one.change) == ("start the toroid at an out (begin: out)", "before")
    assert (one.beats_lost, one.values) == (0.0, {"begin": "out"})
    both = remedies._start_at_out(
        boundary(
            before, after, lambda end, start: OUT in end and OUT in start and ("a", 1) in start
        )
    )
    assert both.words == "start both the toroid and the the toroid after it at an out (begin: out)"
    assert (both.change, both.beats_lost, both.values) == ("both", 0.0, {"begin": "out"})


@pytest.mark.parametrize(
    ("before", "after", "starts"),
    [
        (Block("orbit", begin="in"), Block(begin="in"), True),
        (Block(begin="in", shut=("begin",)), Block(begin="in"), True),
        (Block(begin="out"), Block(begin="in"), True),
        (Block(begin="in"), Block(begin="in"), False),
        (Block(begin="in"), Block("orbit", begin="in"), True),
        (Block(begin="in"), Block(begin="in", shut=("begin",)), True),
    ],
)
def test_no_start_at_an_out_where_it_cannot_be_set(before, after, starts):
    """Everything would join that starts at an out on both sides."""
    own = boundary(before, after, lambda _end, start: OUT in start, starts=starts)
    assert remedies._start_at_out(own) is None


def test_even_lobes_in_the_same_length_or_at_the_same_pace():
    """Three lobes in 2 beats, three times: four or two in 2 beats, else four in 8/3 and two in 4/3 beats."""
    own = boundary(Block(lobes=3), Block(), lambda end, _start: isinstance(end[0], int))
    found = remedies._even_neighbours(own)
    assert [(one.values, one.beats_lost, one.change) for one in found] == [
        ({"lobes": 4, "cycle": 2.0, "beats": 6.0}, 0.0, "before"),
        ({"lobes": 2, "cycle": 2.0, "beats": 6.0}, 0.0, "before"),
    ]
    assert found[0].words == "dance the toroid with 4 lobes, 2 beats a cycle (6 beats in all)"
    paced = boundary(Block(lobes=3), Block(), lambda end, _start: end[1] != 2.0)
    found = remedies._even_neighbours(paced)
    assert [one.values["lobes"] for one in found] == [4, 2]
    assert [one.values["cycle"] for one in found] == pytest.approx([8 / 3, 4 / 3])
    assert [one.values["beats"] for one in found] == pytest.approx([8.0, 4.0])
    assert [one.beats_lost for one in found] == pytest.approx([2.0, 2.0])
    few = boundary(Block(lobes=3, refuses=(2,)), Block(), lambda *_: True)
    assert [one.values["lobes"] for one in remedies._even_neighbours(few)] == [4]
    assert remedies._even_neighbours(boundary(Block(lobes=3), Block(), lambda *_: False)) == []


@pytest.mark.parametrize(
    "before", [Block("orbit", lobes=3), Block(lobes=3, shut=("lobes",)), Block(lobes=4), Block()]
)
def test_no_even_lobes_where_they_are_even_or_set(before):
    assert remedies._even_neighbours(boundary(before, Block(), lambda *_: True)) == []


def test_other_lobes_fit_only_where_the_join_before_holds_too():
    seen = []

    def joins(end, start):
        seen.append((end, start))
        return end != "bad"

    for earlier, fits in ((None, True), ("good", True), ("bad", False)):
        ends = None if earlier is None else partial(str, earlier)
        own = boundary(Block(lobes=3), Block("orbit"), joins, earlier=ends)
        assert remedies._fits(own, {"lobes": 4}, 2.0, 6.0) == fits
    assert seen == [
        ((4, 2.0, 6.0), ("start", "the orbit")),
        ("good", (4, 2.0, 0.0)), ((4, 2.0, 6.0), ("start", "the orbit")),
        ("bad", (4, 2.0, 0.0)),
    ]  # fmt: skip


def test_a_pattern_is_spun_the_other_way_by_its_turn_or_its_way():
    own = boundary(Block(), Block("orbit", turn="forward"), lambda *_: True)
    found = remedies._other_way(own)
    assert (found.change, found.beats_lost) == ("after", 0.0)
    assert list(found.values) == ["turn"]
    assert found.values["turn"] != "forward"
    assert found.words == f"spin the orbit the other way (turn: {found.values['turn']})"
    assert remedies._other_way(boundary(Block(), Block("orbit", start=1), lambda *_: True)) is None


@pytest.mark.parametrize(
    ("fits", "shift"),
    [
        ([False, False, True, True], 1.0),
        ([False, True, True, True], 0.5),
        ([True] * 4, None),
        ([False] * 4, None),
    ],
)
def test_the_least_shift_that_fits_is_offered(fits, shift, monkeypatch):
    asked = []
    monkeypatch.setattr(remedies, "shifts_of", lambda _law: np.array([0.0, 0.5, 1.0, 1.5]))

    def gap(end, start, length):
        asked.append((end, start, length))
        return SimpleNamespace(
            within=lambda tolerances: np.array(fits) & (tolerances == "tolerances")
        )

    monkeypatch.setattr(remedies, "gap_between", gap)
    found = remedies._shift(boundary(Block(), Block("orbit"), None))
    assert asked == [(("end", 0.0), ("at", (0.0, 0.5, 1.0, 1.5)), 0.5)]
    if shift is None:
        assert found is None
        return
    assert (found.beats_lost, found.change, found.values) == (0.0, "shift", {"shift": shift})
    beats = "1 beat" if shift == 1 else "0.5 beats"
    assert found.words == f"start the orbit {beats} further into the pattern (add to shift)"


@pytest.mark.parametrize(("beats", "words"), [(1.0, "1 beat"), (1.5, "1.5 beats"), (np.inf, None)])
def test_a_link_is_as_short_as_the_limits_allow(beats, words, monkeypatch):
    asked = []
    monkeypatch.setattr(
        remedies,
        "shortest_link",
        lambda *given, **named: asked.append((given, named)) or (beats, None),
    )
    own = boundary(Block(), Block("orbit"), None)
    found = [remedies._link(own, stall=stall) for stall in (True, False)]
    assert asked[0][0] == (("end", 0.0), ("start", "the orbit"))
    assert asked[0][1] == {"space": own.space, "limits": "limits"}
    if words is None:
        assert found == [None, None]
        return
    assert [one.words for one in found] == [
        f"stall to reverse, in a link of {words} before the orbit", f"put a link of {words} before the orbit",
    ]  # fmt: skip
    assert {(one.beats_lost, one.change, one.values["beats"]) for one in found} == {
        (beats, "link", beats)
    }


def test_remedies_by_the_verdict_and_by_beats_lost(monkeypatch):
    def named(name, lost):
        return remedies.Remedy(words=name, beats_lost=lost, change="x", values={})

    for name, lost in (
        ("_second_cycle", 2.0),
        ("_start_at_out", 0.0),
        ("_other_way", 0.0),
        ("_shift", 0.0),
    ):
        monkeypatch.setattr(remedies, name, lambda _own, name=name, lost=lost: named(name, lost))
    monkeypatch.setattr(remedies, "_even_neighbours", lambda _own: [named("even", 1.0), None])
    monkeypatch.setattr(remedies, "_link", lambda _own, *, stall: named(f"link {stall}", 1.5))

    def found(kind, given=None):
        own = SimpleNamespace(verdict=lambda: SimpleNamespace(kind=kind))
        return [one.words for one in remedies.remedies_for(own, given)]

    assert found("joins") == []
    assert found("wrong way round") == [
        "_start_at_out", "_other_way", "_shift", "even", "link True", "_second_cycle",
    ]  # fmt: skip
    assert found("needs a link") == ["_shift", "_other_way", "link False", "_second_cycle"]
    assert found("joins", SimpleNamespace(kind="needs a link"))[-1] == "_second_cycle"
