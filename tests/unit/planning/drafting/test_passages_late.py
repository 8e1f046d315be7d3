"""Who is late out of a stretch has danced longer before the passage."""

import numpy as np
import pytest

from sequencer.planning.drafting import passages
from sequencer.planning.drafting.auditions import _stages
from sequencer.planning.drafting.candidates import DraftMove
from sequencer.planning.drafting.draft_ground import ground_of
from sequencer.planning.drafting.passages import MoveLaws, MovePassage, joining, tried
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


def test_what_is_tried_is_what_the_late_one_dances(stage, monkeypatch):
    seen = []

    def known(each, *_):
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
