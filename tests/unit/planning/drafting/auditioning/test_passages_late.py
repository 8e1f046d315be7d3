"""At which beats and tempos a passage is tried: who is late out of a stretch has danced longer before it."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.planning.drafting.auditioning import passages
from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.auditioning.passages import (
    MoveLaws,
    MovePassage,
    PassageTempos,
    joining,
    tried,
)
from sequencer.planning.drafting.costing.auditions import (
    _between,
    _laws_in,
    _stages,
    tempo_ranges,
)
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.planning.drafting.gaps.slots import Slot
from sequencer.planning.drafting.grouping.group_draft import ALONE
from sequencer.timing.tempo import TempoMap
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 8 m, depth: 8 m}, audience: [{line: [[-8, -6], [8, -6]]}]}
cast: [{name: Ash, stature: 1.7, prop: poi}]
"""
SLOW = DraftMove(pattern="extension", timing="split", direction="same", cycle=5.0, usual=False)
FAST = DraftMove(pattern="extension", timing="split", direction="same", cycle=2.0, usual=True)


@pytest.fixture(name="stage", scope="module")
def _stage():
    ground = ground_of(SHOW, "s.yaml", even_song(33, tempo=100.0, sections={0.0: "A"}))
    return _stages(ground, [(100.0, 100.0)])[0][0]


def test_what_joins_is_looked_at_when_the_late_one_leaves(stage):
    moves = [SLOW, FAST]
    prompt, late = MoveLaws(stage), MoveLaws(stage, longer=1)
    for beats in (4.0, 5.0, 9.0):
        assert np.array_equal(
            joining(late, prompt, moves, beats), joining(prompt, prompt, moves, beats + 1)
        )
    assert joining(late, prompt, [SLOW], 4.0).all()  # a whole cycle of five beats
    assert not joining(prompt, prompt, [SLOW], 4.0).any()


def test_in_ways_that_differ_only_in_time_laws_and_states_are_the_same_and_worked_out_once(stage):
    found = _laws_in(
        [stage],
        [
            (0, frozenset(), (), frozenset()),
            (0, frozenset(), (("Ash", 3),), frozenset()),
            (0, frozenset({"Ash"}), (), frozenset()),
            (0, frozenset(), (), frozenset({"Ash"})),
        ],
    )
    assert [each.longer for each in found] == [0, 3, 0, 0]
    assert [each.dances for each in found] == [True, True, True, False]
    assert [each.stage.mirrored for each in found] == [False, False, True, False]
    usual, late, mirrored, off = found
    alone = MoveLaws(stage)
    for own in (late, off, usual):
        assert own.of(FAST) is usual.of(FAST)
        for side, state in own.states([FAST, SLOW], 4.0).items():
            assert np.array_equal(state.hand, alone.states([FAST, SLOW], 4.0)[side].hand)
            assert np.array_equal(state.tether, alone.states([FAST, SLOW], 4.0)[side].tether)
    left, right = (mirrored.states([FAST], 0.0)[side].hand[0] for side in ("left", "right"))
    assert left == pytest.approx(usual.states([FAST], 0.0)["right"].hand[0] * [-1, 1, 1])
    assert not np.allclose(right, usual.states([FAST], 0.0)["right"].hand[0])


def test_what_is_tried_is_what_the_late_one_dances(stage, monkeypatch):
    seen = []

    def known(each, *_, **_how):
        seen.extend(one.beats for one in each)
        return [""] * len(each)

    monkeypatch.setattr(passages, "_tried", known)
    monkeypatch.setattr(
        passages, "kept_each", lambda _name, contents, work, **_: work(list(range(len(contents))))
    )
    one = MovePassage(before=SLOW, beats=14.0, link=2, after=FAST)
    tried([one], MoveLaws(stage, longer=6), MoveLaws(stage, longer=-6))
    tried([one], MoveLaws(stage), MoveLaws(stage, longer=4))
    assert seen == [20.0, 14.0]


def test_a_link_is_tried_at_the_tempos_of_its_own_beats(stage, monkeypatch):
    """A beat that sways elsewhere in the stretch is no fault of the link's; what was found is kept with these tempos."""
    looked, joined = [], []
    findings_on, joins = passages.findings_on, passages.joins

    def looking(dancers, tempo, show):
        looked.append(60 * tempo.fastest(0, 1))
        return findings_on(dancers, tempo, show)

    def joining_at(show):
        joined.append(60 * show.tempo.fastest(0, 1))
        return joins(show)

    monkeypatch.setattr(passages, "findings_on", looking)
    monkeypatch.setattr(passages, "joins", joining_at)
    one = MovePassage(before=SLOW, beats=14.0, link=1, after=FAST)
    laws = MoveLaws(stage)
    tried([one], laws, laws)
    (slow,) = tried([one], laws, laws, PassageTempos.steady((84.0, 160.0)))
    assert looked == pytest.approx([100.0, 84.0])
    assert joined == pytest.approx([100.0, 84.0, 160.0])
    assert "goes slack at 84 beats" in slow


def test_a_link_is_judged_by_its_own_fastest_beat_and_not_by_one_beside_it(stage, monkeypatch):
    """As a show judges it; each of several by its own, and what was found is kept with that tempo."""
    paced, joined = [], []
    link_limits, joins = passages.link_limits, passages.joins

    def limits(given, tempo, start, end):
        paced.append(60 * tempo.fastest(start, end))
        return link_limits(given, tempo, start, end)

    def joining_at(show):
        joined.append((60 * show.tempo.fastest(0, 1), [each.name for each in show.dancers]))
        return joins(show)

    monkeypatch.setattr(passages, "link_limits", limits)
    monkeypatch.setattr(passages, "joins", joining_at)
    own = PassageTempos.steady((96.0, 330.0))
    laws = MoveLaws(stage)
    each = [MovePassage(before=FAST, beats=14.0, link=n, after=FAST) for n in (2, 3)]
    slower = replace(own, links=(330.0, 330.0, 104.0, 128.0, 330.0))
    assert all("too fast" in one for one in tried(each, laws, laws, own, fly=False))
    assert set(np.round(paced)) == {330.0}
    paced.clear()
    joined.clear()
    assert tried(each, laws, laws, slower, fly=False) == ["", ""]
    assert set(np.round(paced)) == {104.0, 128.0}
    assert [(round(tempo), who) for tempo, who in joined] == [
        (96, ["0", "1"]), (104, ["0"]), (128, ["1"]),
    ]  # fmt: skip


def test_tempos_of_a_passage_are_those_around_it(stage):
    """What returns is passed alike, so at all tempos of its returns."""
    times = [0.6 * k for k in range(66)]
    times = [t + 0.4 * (k > 4) - 0.1 * (k > 39) for k, t in enumerate(times)]
    tempo = TempoMap(np.array(times), bars=tuple(range(0, 65, 4)), metre=4)
    ground = SimpleNamespace(base=SimpleNamespace(tempo=tempo))
    slots = [
        Slot(start=16 * k, end=16 * k + 16, section=label, label=label, material=k)
        for k, label in enumerate("AABB")
    ]
    assert [each.between for each in _between(ground, slots, ALONE)[:2]] == [(100.0, 100.0)] * 2
    assert tempo_ranges(ground, slots)[0] == [(60.0, 100.0), (100.0, 120.0)]  # the last holds A 2
    again = [replace(slot, material=k % 2) for k, slot in enumerate(slots)]
    again[2] = replace(again[2], end=41)  # its passage sways, so that of the first does too
    assert _between(ground, again, ALONE)[0].between == (100.0, 120.0)


def test_a_passage_is_flown_at_the_tempos_at_which_a_show_flies_it():
    """Each part at the fastest of its own beats, in whole beats a minute, wherever it comes, and by whoever is late."""
    lengths = [0.6] * 64
    lengths[13], lengths[15], lengths[16] = 60 / 130, 60 / 120, 60 / 110.3
    tempo = TempoMap(np.concatenate([[0.0], np.cumsum(lengths)]), bars=(0,), metre=4)
    ground = SimpleNamespace(base=SimpleNamespace(tempo=tempo))
    slots = [
        Slot(start=16 * k, end=16 * k + 16, section="A", label="A", material=k % 2)
        for k in range(4)
    ]
    flown = _between(ground, slots[:2], ALONE)[0].flown
    assert flown[1] == ((130.0, 120.0, 110.0),)
    assert flown[2] == ((130.0, 120.0, 110.0),)
    assert flown[3] == ((100.0, 130.0, 110.0),)
    # the same two moves meet again where the song is steady
    again = _between(ground, slots, ALONE)[0].flown
    assert again[2] == ((130.0, 120.0, 110.0), (100.0, 100.0, 100.0))
    late = replace(ALONE, late={0: {"Ash": 2}})
    assert _between(ground, slots[:2], late)[0].flown[2][1:] == ((130.0, 110.0, 100.0),)
    # drawn at its own fastest beat, to the step of four above, and no faster than all about it
    alone = _between(ground, slots[:2], ALONE)[0]
    assert alone.links == (112.0, 120.0, 120.0, 132.0, 132.0)
    assert alone.between == (100.0, 132.0)
    assert _between(ground, slots[2:], ALONE)[0].links == (100.0,) * 5


def test_of_many_tempos_the_quickest_link_is_flown_first_and_then_the_slowest():
    lengths = np.repeat(60.0 / np.array([100.0, 120.0, 90.0, 110.0]), 32)
    tempo = TempoMap(np.concatenate([[0.0], np.cumsum(lengths)]), bars=(0,), metre=4)
    ground = SimpleNamespace(base=SimpleNamespace(tempo=tempo))
    slots = [
        Slot(start=16 * k, end=16 * k + 16, section="A", label="A", material=k % 2)
        for k in range(8)
    ]
    flown = _between(ground, slots, ALONE)[0].flown
    assert flown[2] == ((120.0,) * 3, (90.0,) * 3)


def test_each_part_of_a_passage_is_flown_at_its_own_tempo(stage, monkeypatch):
    seen = []

    def unflown(_dancer, _stage, tempo):
        seen.append([60 * tempo.fastest(a, b) for a, b in ((0, 2), (2, 4), (4, 6))])
        return "no" if len(seen) == 3 else ""

    monkeypatch.setattr(passages, "unflown", unflown)
    monkeypatch.setattr(passages, "findings_on", lambda *_: {})
    row = ((101.0, 103.0, 107.0), (109.0, 113.0, 127.0))
    tempos = PassageTempos(between=(100.0, 130.0), flown=(row,) * 5, links=(130.0,) * 5)
    one = MovePassage(before=FAST, beats=14.0, link=2, after=FAST)
    laws = MoveLaws(stage)
    assert tried([one], laws, laws, tempos) == [""]
    assert seen == [pytest.approx(each) for each in row]
    # what was found is kept with these tempos, and each of them has to do
    other = PassageTempos(between=(100.0, 130.0), flown=(row[::-1],) * 5, links=(130.0,) * 5)
    assert tried([one], laws, laws, other) == ["no"]
