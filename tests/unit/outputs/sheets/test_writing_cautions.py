"""There is no way to print a lit show without its cautions: whatever it leaves out, whatever is asked for."""

from dataclasses import replace

import pytest

from sequencer.facts.cautions import cautions, page_one
from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.writing import sheets_of

KILLS = next(each for each in cautions() if each.key == "can-kill")
WAYS = {
    "as it is": [],
    "no crew": [(", lit_by: Mira", ""), ("crew:", "x_crew:")],
    "a permit": [("crew:", "rules: {permit: P-1}\ncrew:")],
    "own words": [("crew:", "stop_call: {word: Halt, does: {performer: [kneel]}}\ncrew:")],
    "several profiles": [("crew:", "rules: {profile: [montreal, seattle]}\ncrew:")],
    "one who burns": [("who: all", "who: Søren"), ("who: [Łucja, Søren]", "who: Søren")],
    "a moment of fire": [('until: "53.1"', 'until: "5.2"'), ('until: "89.1"', 'until: "66.2"')],
    "a filled card": [("crew:", "emergency: {number: 112, address: a, gate: b}\ncrew:")],
}


def edition_of(rounds, folder, edits, **given):
    text = rounds.ROUND
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    if "x_crew:" in text:
        text = text[: text.index("x_crew:")]
    return Edition(staged=rounds.show(folder, text), report=rounds.report(stop=False), **given)


@pytest.mark.parametrize(
    ("way", "paper", "again"),
    [
        *((way, "a4", False) for way in WAYS),
        ("as it is", "letter", False),
        ("as it is", "a4", True),
    ],
)
def test_every_sheet_of_a_lit_show_says_them(rounds, tmp_path, way, paper, again):
    edition = edition_of(rounds, tmp_path, WAYS[way])
    if again:
        edition = replace(edition, before=edition)

    assert edition.is_lit
    for sheet in sheets_of(edition):
        said = " ".join(lines_of(sheet.story(Page.of(paper, wide=sheet.wide))))
        assert page_one() in said, sheet.name
        assert KILLS.short in said or KILLS.text in said, sheet.name


@pytest.mark.parametrize("lost", [page_one(), KILLS.short])
def test_a_sheet_that_leaves_them_out_is_not_printed(rounds, tmp_path, lost):
    edition = edition_of(rounds, tmp_path, [])
    whole = next(sheet for sheet in sheets_of(edition) if sheet.name == "fuel")

    def without(page):
        return [part for part in whole.story(page) if lost not in " ".join(lines_of([part]))]

    with pytest.raises(ValueError, match="leaves out the cautions"):
        document_bytes([replace(whole, story=without)], edition, "a4", "fuel")
    assert document_bytes([whole], edition, "a4", "fuel").startswith(b"%PDF")
