"""What has changed since the last print is told by its value: nobody at a rehearsal looks for what is only "other"."""

import re
from dataclasses import replace
from math import radians

import pypdf
import pytest

from sequencer.geometry.posture import Posture
from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.outputs.sheets.parts.dance_rows.changed_lines import change_words
from sequencer.outputs.sheets.parts.dance_rows.danced_values import danced_values, finer_values
from sequencer.outputs.sheets.parts.dance_rows.folding import folded
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.writing import sheets_of

WEAVE = '{pattern: two-beat-weave, from: "70.1", beats: 32'


def against(rounds, folder, old, new):
    before = rounds.show(folder, rounds.ROUND.replace(f"{WEAVE}}}", old), name="old.yaml")
    now = rounds.show(folder, rounds.ROUND.replace(f"{WEAVE}}}", new))
    said = rounds.report()
    return Edition(staged=now, report=said, before=Edition(staged=before, report=said))


def told(rounds, folder, old, new, who="Łucja"):
    """The words of every changed line of a performer, of a round with `old` in place of its weave, and then `new`."""
    edition = against(rounds, folder, old, new)
    now = edition.staged
    lines = folded(cues_of(now, who))
    words = [(line, change_words(edition, who, line).replace("\u00a0", " ")) for line in lines]
    return {now.position(line.cue.start): each for line, each in words if each}


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("", ", cycle: 1", "1 beat a round (was 2 beats a round)"),
        ("", ", cue: eyes up", "eyes up (was none)"),
        ("", ", with: {width: 0.8}", "width 0.8 (was 1)"),
        ("", ", with: {up: 10 cm}", "up 10 cm (was 0 cm)"),
        (", mirror: [Søren]", "", "without canon or mirror (was Søren mirrors you)"),
        (", canon: 2, who: [Łucja, Søren]", ", canon: 4, who: [Łucja, Søren]",
         "Søren follows after 4 counts (was canon: you lead, Søren follows after 2 counts)"),
    ],
)  # fmt: skip
def test_each_value_is_told_with_what_it_was(rounds, tmp_path, old, new, words):
    found = told(rounds, tmp_path, f"{WEAVE}{old}}}", f"{WEAVE}{new}}}")
    assert words in found["70.1"]
    assert "elsewhere" not in " ".join(found.values())


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("", "amplitude: 80", "amplitude 80° (was 60°)"),
        ("amplitude: 45", "amplitude: 80", "amplitude 80° (was 45°)"),
        ("plane: wall", "plane: wheel", "plane wheel (was wall)"),
    ],
)
def test_a_parameter_of_the_pattern_is_told_with_its_unit(rounds, tmp_path, old, new, words):
    swing = '{pattern: pendulum, from: "70.1", beats: 32, with: {%s}}'
    found = told(rounds, tmp_path, swing % old, swing % new)
    assert words in found["70.1"]


def test_a_show_that_is_as_it_was_has_no_changed_line(rounds, tmp_path):
    assert told(rounds, tmp_path, f"{WEAVE}}}", f"{WEAVE}}}") == {}


def test_how_the_body_gives_way_is_told(rounds, tmp_path):
    """Found by fitting, so no key of the show file sets it."""
    show = rounds.show(tmp_path)
    block = next(b for b in show.blocks_of("Łucja") if b.title == "two-beat-weave")
    bent = replace(block, posture=Posture(lean=radians(8)))
    assert danced_values(show, None, block)["body"] == "upright"
    assert danced_values(show, None, bent)["body"].startswith("lean")
    cue = next(c for c in cues_of(show, "Łucja") if c.block is block)
    assert "lean 8°" in finer_values(replace(cue, block=bent))["angles"]


def test_the_heads_number_counts_rows_whose_words_are_as_before(rounds, tmp_path):
    """A parameter that no word on the row tells: the row is marked and counted all the same."""
    edition = against(rounds, tmp_path, f"{WEAVE}}}", f"{WEAVE}, with: {{width: 0.98}}}}")
    sheet = next(each for each in sheets_of(edition) if each.name == "performer-lucja")
    path = tmp_path / "own.pdf"
    path.write_bytes(document_bytes([sheet], edition, "a4", "own"))
    text = " ".join(page.extract_text() for page in pypdf.PdfReader(path).pages)
    words = " ".join(text.replace("\u00a0", " ").split())
    number = int(re.search(r"(\d+) lines? new or changed", words).group(1))
    assert number == words.count("CHANGED ") == 1
    assert "CHANGED width 0.98 (was 1)" in words
