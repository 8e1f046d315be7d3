from types import SimpleNamespace

from sequencer.planning.drafting.earlier_draft import standing
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 12 m, depth: 12 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: &poi {kind: poi, tether: 0.45}, repertoire: {known: [extension, wheel-spin]}}
  - {name: Birch, stature: 1.6, prop: *poi, repertoire: {known: [extension, wheel-spin]}}
formations: {line: {spots: {Ash: {at: [-3, 5]}, Birch: {at: [3, 5]}}}}
staging: [{formation: line, from: 1.1}]
entrances: [{who: Birch, comes_on: 1.3, beats: 12, side: stage left}, {who: Ash, goes_off: 9.1, beats: 12, side: stage right}]
timeline:
  - {from: 1.1, who: Ash, pattern: extension, beats: 12, drafted: true}
  - {from: 5.1, who: Ash, pattern: wheel-spin, beats: 12, drafted: true}
  - {from: 5.1, who: Birch, pattern: windmill, beats: 12, drafted: true}
  - {from: 9.1, who: Birch, pattern: butterfly, beats: 12, drafted: true}
"""


def test_what_stands_is_the_leads_dance_and_that_of_others_while_the_lead_is_off():
    ground = ground_of(
        SHOW, "s.yaml", even_song(49, tempo=100.0, sections={0.0: "A", 9.6: "B", 19.2: "C"})
    )
    slots = [SimpleNamespace(start=16.0 * k, material=k) for k in range(4)]
    found = standing(ground, SimpleNamespace(slots=slots))
    assert {piece: block.title for piece, block in found.items()} == {
        0: "extension",
        1: "wheel-spin",
        2: "butterfly",
    }
