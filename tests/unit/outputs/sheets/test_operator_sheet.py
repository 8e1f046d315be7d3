"""The operators read flames as FLAMES, never as lamps."""

from sequencer.outputs.sheets.operator_sheet import operator_sheet
from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.run_cues import run_cues
from tests.handled_show import handled

FLAMES = ("FLAMES ON", "burn begins", "putting out starts", "FLAMES OUT")


def flames(*edits):
    cues = run_cues(handled(*edits))
    return [(cue.seconds, cue.position, cue.what) for cue in cues if cue.what.startswith(FLAMES)]


def test_each_flame_is_a_cue_from_its_lighting_until_it_is_out():
    """FLAMES ON is where the performers' pages have it: when the torch comes. Wren lit from 15 s to 20 s, put out from 60 s to 65 s; Moss a minute later."""
    assert flames() == [
        (15.0, "", "FLAMES ON: Wren (1)"),
        (20.0, "11.1", "burn begins: Wren (1)"),
        (60.0, "31.1", "putting out starts: Wren (1)"),
        (65.0, "", "FLAMES OUT: Wren (1)"),
        (75.0, "", "FLAMES ON: Moss (2)"),
        (80.0, "41.1", "burn begins: Moss (2)"),
        (120.0, "61.1", "putting out starts: Moss (2)"),
        (125.0, "", "FLAMES OUT: Moss (2)"),
    ]


def test_what_is_lit_before_the_track_has_no_time_code():
    both = ("who: Wren, from: 11.1, until: 31.1", "who: all, from: 1.3, until: 31.1")
    alone = ("    - {who: Moss, from: 41.1, until: 61.1}\n", "")
    found = flames(both, alone)
    assert found[0] == (1.0, "1.3", "burn begins: all (1, 2)")
    assert [what for *_, what in found] == [
        "burn begins: all (1, 2)", "putting out starts: all (1, 2)", "FLAMES OUT: all (1, 2)",
    ]  # fmt: skip


def test_lamps_are_stage_light(rounds, tmp_path):
    edition = Edition(staged=rounds.show(tmp_path), report=rounds.report(stop=False))
    said = " ".join(lines_of(operator_sheet(edition).story(Page.of("a4", wide=True))))
    assert "bring the stage light to full, white" in said
    assert "light up" not in said.lower()
