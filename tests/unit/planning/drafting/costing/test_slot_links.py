"""Links between slots that not everybody dances."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np

from sequencer.motion.patterns.library import patterns
from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.auditioning.cast_moves import Cast
from sequencer.planning.drafting.auditioning.repertoire import Material
from sequencer.planning.drafting.costing import slot_links
from sequencer.planning.drafting.costing.auditions import _beside_rest, outermost_first
from sequencer.planning.drafting.costing.slot_links import SlotLinks
from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.show.file_records.wishes import Wishes
from sequencer.timing.tempo import TempoMap

SLOTS = tuple(
    Slot(start=16 * k, end=16 * k + 16, section="A", label="A", material=k) for k in range(3)
)
MOVE = DraftMove(pattern="extension", timing="split", direction="same", cycle=2.0, usual=True)


def links(*who, cast="AB"):
    """Of slots that are danced by Ash, Bo, or both, as "A", "B", "AB" say; or by others of a cast."""
    ways = tuple(dict.fromkeys(who))
    laws = tuple(
        tuple(SimpleNamespace(name=name, way=way, dances=name in way) for way in ways)
        for name in cast
    )
    return SlotLinks(
        slots=SLOTS[: len(who)],
        cast=Cast(
            moves=(MOVE,),
            heard=(),
            laws=laws,
            ways=tuple(ways.index(each) for each in who),
            material=Material(known=("extension",), learning=frozenset(), level=3),
            book=patterns(),
        ),
        wishes=Wishes(),
        beside_rest=((0, True, True), (1, True, True)),
    )


def test_nothing_leads_on_where_nobody_dances_both():
    assert links("AB", "A", "B").neighbours == [(0, 1)]
    assert links("A", "AB", "B").neighbours == [(0, 1), (1, 2)]


def test_a_passage_is_tried_and_a_join_asked_of_those_who_dance_both(monkeypatch):
    asked = []

    def tried(passages, first, second, _tempos, *, fly):
        asked.append((first.name, second.name, fly))
        return ["" for _ in passages]

    def joining(first, second, _moves, _beats):
        return np.array([[(first.name, second.name) == ("A", "A")]])

    monkeypatch.setattr(slot_links, "tried", tried)
    monkeypatch.setattr(slot_links, "joining", joining)
    own = links("A", "AB", "B")
    assert own.tried([(0, 14.0, 2, 0, *own.ways(0, 1))]) == [""]
    assert asked == [("A", "A", True)]
    assert own.joins(0, 1).tolist() == [[True]]
    assert own.joins(1, 2).tolist() == [[False]]  # Bo does not join


def test_of_a_large_group_three_try_a_passage(monkeypatch):
    """In turn, as long as nobody has anything against it; whoever refused one is asked first the next time."""
    asked = []

    def tried(passages, first, _second, _tempos, *, fly):
        asked.append(first.name)
        return ["too fast" if first.name == "B" else "" for _ in passages]

    monkeypatch.setattr(slot_links, "tried", tried)
    own = links("ABCDE", "ABCDE", cast="ABCDE")
    passage = (0, 14.0, 2, 0, *own.ways(0, 1))
    assert own.tried([passage]) == ["too fast"]
    assert asked == ["A", "B"]
    asked.clear()
    assert own.tried([passage]) == ["too fast"]
    assert asked == ["B"]
    asked.clear()
    others = links("ACDE", "ACDE", cast="ACDE")
    assert others.tried([(0, 14.0, 2, 0, *others.ways(0, 1))]) == [""]
    assert asked == ["A", "C", "D"]


def test_out_of_rest_begin_only_those_who_were_off(monkeypatch):
    asked = []

    def stranded(_dances, laws):
        asked.append((laws.name, laws.way))
        return [""]

    monkeypatch.setattr(slot_links, "stranded", stranded)
    own = links("A", "AB", "A")
    own.stranded([0, 0, 0])
    # Ash out of rest at first, not into any; Bo out of rest and into it in the second
    assert asked == [("A", "A"), ("B", "AB"), ("B", "AB")]


def test_what_is_not_flown_is_asked_of_those_who_dance_it(monkeypatch):
    def grounded(moves, stage):
        return [stage for _ in moves]

    monkeypatch.setattr(slot_links, "grounded", grounded)
    own = links("A", "AB", "A")
    stages = [
        [replace_stage(each, "slack" * (each.name == "B")) for each in row] for row in own.cast.laws
    ]
    own.cast = replace(own.cast, laws=tuple(map(tuple, stages)))
    assert own.grounded([0, 0, 0]) == {(1, 0)}


def test_where_the_beat_sways_a_move_is_tried_in_its_place_by_who_could_not_dance_most(monkeypatch):
    """Only the middle slot sways, and is danced until its usual link."""
    asked = []

    def strained(dances, laws, tempo):
        (dance,) = dances
        asked.append((laws.name, dance.start, dance.end, tempo is one.tempo))
        return ["hand_acceleration" if len(asked) == 1 else ""]

    monkeypatch.setattr(slot_links.in_place, "strained", strained)
    tempos = np.array([100.0] * 20 + [70.0] + [100.0] * 28)
    one = replace(links("AB", "AB", "A"), tempo=TempoMap(np.cumsum(60.0 / tempos)))
    monkeypatch.setattr(SlotLinks, "link_costs", lambda *_: {2: 1.0, 3: 2.0})
    one.cast = replace(one.cast, moves=(MOVE, MOVE))
    assert one.strained([0, 0, 0]) == {(1, 0)}
    assert one.strained([1, 0, 1]) == {(1, 0)}  # known
    one._refused[1] = 9
    assert one.strained([0, 1, 0]) == set()
    assert asked == [("A", 16, 30, True), ("B", 16, 30, True), ("A", 16, 30, True)]
    assert links("AB", "AB", "A").strained([0, 0, 0]) == set()  # no song is known


def test_everybody_tries_a_move_in_its_place_until_one_is_strained(monkeypatch):
    """Of a large group too: the check of the whole would take far longer to tell."""
    asked = []

    def strained(_dances, laws, _tempo):
        asked.append(laws.name)
        return ["most_pull" if laws.name in weak else ""]

    monkeypatch.setattr(slot_links.in_place, "strained", strained)
    monkeypatch.setattr(SlotLinks, "link_costs", lambda *_: {2: 1.0})
    tempo = TempoMap(np.cumsum(60.0 / np.array([100.0] * 8 + [70.0] + [100.0] * 28)))
    one = replace(links("ABCDE", "AB", cast="ABCDE"), tempo=tempo)
    one.cast = replace(one.cast, moves=(MOVE,) * 3)
    weak = "D"
    assert one.strained([0, 0]) == {(0, 0)}
    assert asked == ["A", "B", "C", "D"]
    asked.clear()
    weak = ""
    assert one.strained([1, 0]) == set()
    assert asked == ["D", "A", "B", "C", "E"]
    asked.clear()
    little = TempoMap(np.cumsum(60.0 / np.array([100.0] * 8 + [80.0] + [100.0] * 28)))
    assert replace(one, tempo=little).strained([1, 0]) == set()
    assert asked == ["A"]  # it sways less: one tries


def test_those_with_the_longest_and_the_shortest_arms_try_first(monkeypatch):
    asked = []

    def tried(passages, first, _second, _tempos, *, fly):
        asked.append(first.name)
        return ["" for _ in passages]

    monkeypatch.setattr(slot_links, "tried", tried)
    order = outermost_first([0.70, 0.66, 0.74, 0.68, 0.72])
    assert order == (2, 1, 4, 3, 0)
    one = replace(links("ABCDE", "ABCDE", cast="ABCDE"), first=order)
    assert one.tried([(0, 14.0, 2, 0, *one.ways(0, 1))]) == [""]
    assert asked == ["C", "B", "E"]
    one._refused[3] += 1
    assert one._in_turn() == [3, 2, 1, 4, 0]  # what was found out goes first


def test_where_the_beat_sways_most_a_move_is_tried_first_and_nowhere_else_once_it_is_strained(
    monkeypatch,
):
    asked = []

    def strained(dances, _laws, _tempo):
        asked.append(dances[0].start)
        return ["most_pull" if dances[0].start == 16 else ""]

    monkeypatch.setattr(slot_links.in_place, "strained", strained)
    monkeypatch.setattr(SlotLinks, "link_costs", lambda *_: {2: 1.0})
    tempos = np.full(50, 100.0)
    tempos[[8, 20, 40]] = 80.0, 60.0, 70.0
    one = links("AB", "AB", "AB")
    again = tuple(replace(each, material=0) for each in one.slots)
    one = replace(one, tempo=TempoMap(np.cumsum(60.0 / tempos)), slots=again)
    assert one.strained([0]) == {(0, 0)}
    assert asked == [16]
    apart = tuple(replace(each, material=k) for k, each in enumerate(again))
    assert replace(one, slots=apart).strained([0, 0, 0]) == {(1, 0)}
    assert list(dict.fromkeys(asked)) == [16, 32, 0]


def test_in_a_group_a_beat_counts_as_swaying_sooner(monkeypatch):
    """From the cast: a fastest beat a fifth above the slowest is no matter for one alone."""
    monkeypatch.setattr(SlotLinks, "link_costs", lambda *_: {2: 1.0})
    tempo = TempoMap(np.cumsum(60.0 / np.array([100.0] * 20 + [84.0] + [100.0] * 28)))
    ways = {cast: replace(links(cast, cast, cast=cast), tempo=tempo) for cast in ("A", "AB")}
    assert {cast: one._swaying for cast, one in ways.items()} == {"A": [], "AB": [1]}


def replace_stage(laws, stage):
    return SimpleNamespace(**{**vars(laws), "stage": stage})


def test_beside_a_rest_is_also_what_somebody_begins_or_ends_alone():
    assert list(_beside_rest(SLOTS, (), {})) == [(0, True, False), (2, False, True)]
    found = list(_beside_rest(SLOTS, (), {0: frozenset("B"), 2: frozenset("A")}))
    assert found == [(0, True, False), (1, True, True), (2, False, True)]
