"""What is auditioned."""

from sequencer.planning.drafting.auditioning.candidates import moves_for
from sequencer.planning.drafting.costing.auditions import _stages
from sequencer.planning.drafting.gaps.draft_ground import ground_of
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
