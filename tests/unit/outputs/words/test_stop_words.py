"""Stops and accents as they are read: on the sheets, in captions, timetable, MIDI and the count track."""

import pytest

from sequencer.outputs.exports.captions import captions
from sequencer.outputs.exports.midi import midi_file
from sequencer.outputs.exports.timetable import timetable
from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.outputs.sheets.parts.dance_rows.folding import folded
from sequencer.outputs.sound.counts import changes
from sequencer.outputs.words.block_words import block_words
from sequencer.outputs.words.stop_words import stop_words
from tests.stopped_show import EXTENSION, stopped_show


def stops(*entries, **more):
    return stopped_show(EXTENSION, *entries, EXTENSION, "{accent: 4.1, note: bang}", **more)


@pytest.mark.parametrize(
    ("entry", "prop", "said"),
    [
        ("{rest: 4}", "poi", "arms down, poi held clear of your legs"),
        ("{hold: 4}", "poi", "hands still where the pattern before leaves them, poi hanging straight down"),
        ("{hold: 4}", "club", "hands still where the pattern before leaves them, clubs still as they point then"),
        ("{rest: 4, hands: left}", "poi", "left hand: arm down, poi held clear of your legs"),
        ("{hold: 4, hands: left}", "club", "left hand: hand still where the pattern before leaves it, club still as it points then"),
        ("{rest: 4}", "null, right: staff", "arm down, staff held clear of your legs"),
        ("{hold: 4}", "null, left: poi, right: club", "hands still where the pattern before leaves them, what hangs on a line straight down, the other prop still as it points then"),
    ],
)  # fmt: skip
def test_a_stop_in_words(entry, prop, said):
    show = stops(entry, prop=prop)
    (stop,) = show.stops
    assert stop_words(stop, show.dancers[0]) == said
    assert block_words(stop, show.dancers[0])[:2] == ["stop for 4 beats", said]


def test_a_pattern_is_no_stop():
    with pytest.raises(ValueError, match="is no stop"):
        stop_words(stops("{rest: 4}").blocks[0])


def test_every_export_names_stops_and_accents():
    show = stops("{rest: 4, note: look up}")
    said = captions(show)
    assert "Ash: stop for 4 beats" in said
    assert "accent: Ash" in said
    kinds = {row["kind"]: row for row in timetable(show) if row["who"] == "Ash"}
    assert (kinds["rest"]["from"], kinds["rest"]["until"]) == ("5.1", "6.1")
    assert kinds["rest"]["how"] == "arms down, poi held clear of your legs; look up"
    assert (kinds["accent"]["from"], kinds["accent"]["how"]) == ("4.1", "bang")
    texts = [m.text for track in midi_file(show).tracks for m in track if m.type == "cue_marker"]
    assert "accent: bang" in texts
    assert any(text.startswith("stop for 4 beats: arms down") for text in texts)
    assert {12.0, 16.0, 20.0} <= set(changes(show, ("Ash",)))


def test_the_sheet_has_a_line_for_each_stop_and_accent():
    cues = cues_of(stops("{rest: 4}"), "Ash")
    lines = [(line.cue.kind, line.cue.start) for line in folded(cues)]
    assert ("stop", 16.0) in lines
    assert ("accent", 12.0) in lines
    assert [cue.note for cue in cues if cue.kind == "accent"] == ["bang"]
    assert not [cue for cue in cues if cue.kind == "wait" and 8.0 <= cue.start < 28.0]
