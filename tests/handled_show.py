"""A show of two whose burns are handled well, at half a second a beat, and copies with one thing changed."""

from functools import cache

from sequencer.checks.fire.each_burn.handling_kept import CHECK
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

# Bar n begins at 2 (n − 1) s. Wren is lit from 15 s on and Moss from 75 s on, 5 s each; they dance from 24 s to 58 s and from
# 84 s to 118 s, in which time the other stands still; both stand 10 m apart, and nobody is put out while the other dances.
SHOW = """\
title: Two lanterns
track: {file: song.ogg}
venue:
  setting: outdoors
  stage: {shape: rectangle, width: 20 m, depth: 12 m}
  audience: [{name: front, line: [[-16, -20], [16, -20]]}]
  fuel_station: [30, 20]
cast:
  - {name: Wren, stature: 1.7 m, prop: {tether: 50 cm, fuel_mass: 20 g}}
  - {name: Moss, stature: 1.7 m, prop: {tether: 50 cm, fuel_mass: 20 g}}
formations:
  pair: {spots: {Wren: {at: [-5, 4]}, Moss: {at: [5, 4]}}}
staging:
  - {formation: pair, from: 1.1}
timeline:
  - {who: Wren, from: 13.1, pattern: two-beat-weave, until: 30.1}
  - {who: Moss, from: 43.1, pattern: two-beat-weave, until: 60.1}
fire:
  fuel: kerosene
  burn: {time: 4 min, measured: true}
  handling: {light: 5 s, put_out: 5 s, cool: 30 s, swap: 20 s, waiting: on the ground}
  lit:
    - {who: Wren, from: 11.1, until: 31.1}
    - {who: Moss, from: 41.1, until: 61.1}
crew:
  - {name: Flint, post: [-5, 9], duty: spotter, watches: Wren}
  - {name: Brook, post: [5, 9], duty: spotter, watches: Moss}
  - {name: Sorrel, post: [0, 1], duty: lighter}
  - {name: Linden, post: [0, 11], duty: lead}
  - {name: Tarn, post: [31, 20], duty: fuel keeper}
  - {name: Hazel, post: [0, -8], duty: perimeter}
"""


@cache
def handled(*pairs):
    """The show with some of its text replaced."""
    text = SHOW
    for old, new in pairs:
        assert old in text, old
        text = text.replace(old, new)
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(500))


def found(*pairs):
    """What the check says of it, by code."""
    return [
        (each.code, each.severity, each.who) for each in CHECK.outcome(handled(*pairs)).findings
    ]


def said(code, *pairs):
    """The only finding of a code."""
    (finding,) = (each for each in CHECK.outcome(handled(*pairs)).findings if each.code == code)
    return finding
