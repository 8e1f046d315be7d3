"""What is auditioned."""

from dataclasses import replace

import pytest

from sequencer.planning.drafting.auditioning import candidates
from sequencer.planning.drafting.auditioning.candidates import DraftMove, moves_for
from sequencer.planning.drafting.costing.auditions import (
    RANGE_STEP,
    _fastest_link,
    _stages,
    setting_for,
)
from sequencer.planning.drafting.costing.weights import Weights
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.planning.drafting.grouping.group_draft import group_draft
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 8 m, depth: 8 m}, audience: [{line: [[-8, -6], [8, -6]]}]}
cast: [{name: Ash, stature: 1.7, prop: poi}]
formations: {start: {spots: {Ash: {at: [0, 4]}}}}
staging: [{formation: start, from: 1.1}]
"""
FEW = ["static-spin", "extension", "inspin-flower-3"]
MANY = [*FEW, "two-beat-weave", "pendulum", "fountain", "carry", "butterfly"]


def cycles(names):
    ground = ground_of(SHOW, "s.yaml", even_song(65, tempo=145.0))
    (stages,) = _stages(ground, [(145.0, 145.0)])
    found = {}
    for move in moves_for(names, stages):
        found.setdefault(move.pattern, {})[move.cycle] = move.usual
    return found


def test_who_knows_few_patterns_tries_them_in_half_time_too():
    few, many = cycles(FEW), cycles(MANY)
    for name in FEW:
        (usual,) = [cycle for cycle, is_usual in few[name].items() if is_usual]
        assert list(few[name])[-1] == 2 * usual  # after all others
        assert list(few[name])[:-1] == list(many[name])
    assert len(many["static-spin"]) == 1


def test_who_dances_together_has_one_shape_worked_out_once_whoever_asks(monkeypatch):
    """The same as for each by themselves, and mirrored apart; whoever has another prop is not among them."""
    text = SHOW.replace("cast: [", "cast: [{name: Birch, stature: 1.55, prop: poi}, ").replace(
        "prop: poi}]", "prop: poi}, {name: Cedar, stature: 1.8, prop: staff}]"
    ).replace("{Ash: {at: [0, 4]}}", "{Ash: {at: [-2, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [2, 4]}}")  # fmt: skip
    ground = ground_of(text, "s.yaml", even_song(65, tempo=100.0))
    move = DraftMove(pattern="pro-bend-4", timing="split", direction="same", cycle=4.0, usual=True)
    asked = []
    together = candidates.fitted_together
    monkeypatch.setattr(
        candidates, "fitted_together", lambda all_: asked.append(len(all_)) or together(all_)
    )
    stages = [own for (own,) in _stages(ground, [(100.0, 100.0)])]
    stages += [replace(own, mirrored=True) for own in stages]
    found = [own.fit(move) for own in stages if own.record.name != "Cedar"]
    assert asked == [2, 2]
    alone = [replace(own, fits={}).fit(move) for own in stages if own.record.name != "Cedar"]
    assert found == alone
    assert asked == [2] * 6


def test_in_a_setting_the_tallest_and_the_shortest_try_first():
    people = (("Ash", 1.7), ("Birch", 1.55), ("Cedar", 1.8), ("Dale", 1.62))
    cast = ", ".join(
        f"{{name: {name}, stature: {tall}, prop: poi, repertoire: {{known: [static-spin]}}}}"
        for name, tall in people
    )
    head, _, _ = SHOW.partition("cast:")
    text = head.replace("width: 8 m", "width: 16 m") + f"cast: [{cast}]\n"
    ground = ground_of(text, "s.yaml", even_song(33, tempo=100.0))
    slots = ground.slots()
    made = setting_for(
        ground, slots, group_draft(ground, slots), weights=Weights(), seed=0, say=lambda *_: None
    )
    assert [people[n][0] for n in made._in_turn()] == ["Cedar", "Birch", "Ash", "Dale"]


@pytest.mark.parametrize(
    ("links", "pace"),
    [((101.0,), 104.0), ((103.0, 97.0), 104.0), ((100.0,), 100.0), ((100.0, 101.0), 104.0)],
)
def test_links_are_auditioned_at_the_whole_step_above_their_fastest_beat(links, pace):
    """So songs of nearly one tempo find each other's auditions; what is danced beside a link is none of it."""
    assert RANGE_STEP == 4.0
    assert _fastest_link([(160.0, link, 170.0) for link in links]) == pace >= max(links)
