"""A sound show of two on a site with all that checks of crew, exits and posts look for; broken by replacing text."""

from functools import cache

from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SITE = """\
title: Two lanterns
track: {file: song.ogg}
venue:
  setting: outdoors
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience:
    - {name: front, line: [[-12, -9], [12, -9]]}
  scenery:
    - {name: hut, height: 2 m, outline: [[-14, 4], [-12, 4], [-12, 8], [-14, 8]]}
  exits:
    - {name: lane, at: [-16, -12], width: 2 m}
    - {name: road, at: [16, -12], width: 3 m}
  audience_size: 100
  extinguishers:
    - {at: [-5, 4], rating: "2-A:10-B:C", kind: foam}
    - {at: [5, 4], rating: "2-A:10-B:C", kind: foam}
    - {at: [11, 11], rating: "2-A:10-B:C", kind: foam}
  fuel_station: [11, 12]
  fire_lane: {line: [[20, 4], [12, 4]], width: 4 m}
cast:
  - {name: Wren, stature: 1.7 m, prop: {tether: 55 cm, fuel_mass: 45 g}}
  - {name: Moss, stature: 1.8 m, prop: {tether: 55 cm, fuel_mass: 45 g}}
formations:
  pair: {spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}
staging:
  - {formation: pair, from: 1.1}
fire:
  fuel: kerosene
  burn: {time: 4 min, measured: true}
  flame: 60 cm
  handling: {lit_by: Sorrel}
  lit:
    - {who: all, from: 1.1, until: 81.1}
emergency:
  caller: Sorrel
  first_aider: Iris, by the gate
  meets: Cole, with a torch
  meeting_point: Hazel Road, under the rowan
crew:
  - {name: Rowan, post: [0, 9], duty: spotter}
  - {name: Hazel, post: [0, -5], duty: perimeter}
  - {name: Tarn, post: [12, 12], duty: fuel keeper}
  - {name: Linden, post: [-8, 0], duty: lead}
  - {name: Sorrel, post: [8, 0], duty: lighter}
"""


@cache
def site(*pairs):
    """The show staged on a song of 120 beats a minute, with each first text replaced by the second."""
    text = SITE
    for old, new in pairs:
        assert old in text, old
        text = text.replace(old, new)
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(600))
