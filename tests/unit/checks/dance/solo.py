"""One performer's staged show, made from the lines of its timeline."""

from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-6, -9], [6, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: TETHER}}
formations:
  alone:
    spots: {Ash: {at: [0, 4]}}
staging:
  - {formation: alone, from: 1.1}
fire:
  fuel: kerosene
  flame: 0.4 m
  lit:
    - {who: Ash, from: 1.1, until: 20.1}
timeline:
"""


def stage(timeline, tempo=100.0, tether="0.4", held=None, stature="1.7"):
    text = (
        SHOW.replace("stature: 1.7", f"stature: {stature}").replace(
            "{tether: TETHER}", held or f"{{tether: {tether}}}"
        )
        + timeline
    )
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(120, tempo=tempo))


def found(outcome, *, above="note"):
    return [f.code for f in outcome.findings if f.severity != above]


TOROIDS = """\
  - {from: 3.1, pattern: toroid, with: {lobes: 4}, beats: 8, timing: together}
  - {pattern: toroid, with: {lobes: 4}, beats: 8, timing: together}
"""
