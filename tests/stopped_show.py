"""A small show of one performer, unlit, whose timeline a test writes; its song counts 120 beats a minute, four to a bar."""

from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

HEAD = """\
title: Stops
track: {file: song.ogg}
venue: {name: yard, setting: outdoors, stage: {shape: rectangle, width: 9 m, depth: 9 m}, audience: [{line: [[-9, -6], [9, -6]]}], ceiling: open}
cast:
  - {name: Ash, stature: 1.7 m, prop: PROP}
"""
EXTENSION = "{pattern: extension, cycle: 2, beats: 8}"


def stopped_show(*entries, prop="poi", phrases="", cast="", start="3.1"):
    """The show staged; each entry is written as YAML, the first from bar 3."""
    lines = [entry.strip() for entry in entries]
    if start and "from:" not in lines[0] and "accent" not in lines[0]:
        lines[0] = "{from: " + start + ", " + lines[0].removeprefix("{")
    text = HEAD.replace("PROP", prop) + cast
    if phrases:
        text += f"phrases:\n{phrases}"
    text += "timeline:\n" + "".join(f"  - {line}\n" for line in lines)
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(120))
