"""The tempo that a block is fitted at, against beats counted by hand."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer import kept
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging import dances
from sequencer.staging.dances import dance_of, fitted_blocks
from sequencer.staging.timeline import staged
from sequencer.timing.tempo import TempoMap
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 9 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast: [{name: Ash, stature: 1.7, prop: {tether: 0.45}}]
timeline: [{from: 1.1, pattern: extension, beats: 4}]
"""
QUICKENING = TempoMap(np.array([0.0, 1.0, 2.0, 2.5, 3.0, 3.25, 3.5, 4.5]))  # 60, 120, 240, 60


@pytest.mark.parametrize(
    ("start", "end", "tempi"),
    [
        (0.0, 1.5, (60.0, 120.0)),  # to the beat that begins at its end, rounded up
        (0.0, 4.0, (60.0, 240.0)),
        (2.5, 3.0, (120.0, 120.0)),
        (4.0, 5.0, (240.0, 240.0)),
    ],
)
def test_the_slowest_and_the_fastest_tempo_of_a_block(start, end, tempi):
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(8))
    block = replace(show.blocks[0], start=start, end=end)

    def tempo(counted):
        return dance_of(block, show.show.cast[0], counted, show.book, torque=5.0).tempo

    for _ in range(2):
        assert tempo(QUICKENING) == pytest.approx(tempi)
    steady = TempoMap.steady(100.0, beats=8)
    assert tempo(steady) == pytest.approx((100.0, 100.0))  # another song's is not taken for it


def test_the_fits_of_a_step_hold_for_no_other_tempo_torque_book_or_performer(monkeypatch):
    """One thing changed at a time: what is the same is not fitted again, and what is not is."""
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(8))
    asked = []

    def counted(blocks, _records, _tempo, _book, *, torque):
        asked.append(torque)
        return [replace(block, note=str(len(asked))) for block in blocks]

    monkeypatch.setattr(kept, "_RECENT", {})
    monkeypatch.setattr(dances, "_fitted_step", counted)
    stronger = show.show.model_copy(
        update={"limits": show.show.limits.model_copy(update={"torque": 9.0})}
    )
    taller = show.show.model_copy(
        update={"cast": (show.show.cast[0].model_copy(update={"stature": 1.8}),)}
    )
    other = (replace(show.blocks[0], shift=1.0),)
    cases = [
        (show.show, show.blocks, show.tempo, show.book),
        (stronger, show.blocks, show.tempo, show.book),
        (taller, show.blocks, show.tempo, show.book),
        (show.show, other, show.tempo, show.book),
        (show.show, show.blocks, QUICKENING, show.book),
        (show.show, show.blocks, show.tempo, dict(show.book)),
    ]
    for _ in range(2):
        found = [fitted_blocks(*case)[0].note for case in cases]
        assert found == [str(k + 1) for k in range(len(cases))]
