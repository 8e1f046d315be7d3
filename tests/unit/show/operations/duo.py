"""A small show for tests of operations, and what an operation does to its lines."""

from difflib import unified_diff

import pytest

from sequencer.errors import InputError
from sequencer.show.operations.every_operation import read_operation
from sequencer.show.operations.operation import apply, json_of

SHOW = """\
title: Duo
track: {file: a.ogg}
venue:
  stage: {shape: round, width: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7 m, prop: poi}     # has a cold
  - {name: Birch, stature: 1.6 m, prop: staff}
formations:
  wide: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4], facing: 90}}}
  row: {shape: line, centre: [0, 4], spacing: 3 m}
staging:
  - {formation: wide, from: 1.1}
  - {formation: row, from: 9.1, beats: 8, via: {Ash: [[0, 3]]}}
phrases:
  wheel:
    - {pattern: extension, beats: 6}           # slowly
    - {link: true, beats: 2}
  long one:
    - {phrase: wheel, repeat: 3}
    - {pattern: corkscrew, cycles: 2}
timeline:
  # in the dark
  - {from: 2.1, phrase: wheel}                 # all
  - {who: Ash, phrase: wheel, repeat: 2, note: twice}

  # and lights
  - {who: [Ash, Birch], from: 8.1, phrase: long one, canon: 4, mirror: [Birch]}
  - {who: Birch, pattern: fountain, until: 20.1}
  - {rest: 4}
  - {accent: 21.1}
crew:
  - {name: Ivy, post: [-8, 6], watches: [Ash]}
"""


def lines(operation, text=SHOW):
    """Lines that an operation takes out (-) and puts in (+)."""
    after = apply(text, operation, file="s.yaml")
    assert apply(text, read_operation(json_of(operation)), file="s.yaml") == after
    told = unified_diff(text.splitlines(), after.splitlines(), lineterm="", n=0)
    return [line for line in told if not line.startswith(("---", "+++", "@@"))]


def refused(operation, text=SHOW):
    """The sentence with which an operation is refused."""
    with pytest.raises(InputError) as told:
        apply(text, operation, file="s.yaml")
    return str(told.value)
