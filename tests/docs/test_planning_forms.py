"""Everything that the schema of a show file knows can be said on the planning page: in a form, or where it says so here."""

import re
from pathlib import Path

import pytest

from sequencer.show.schema import show_schema

PLANNING = Path(__file__).parents[2] / "web" / "planning"

# Headings with a tab or a place of their own on the page.
ELSEWHERE = {
    "track": "Song, and Count", "cast": "Cast", "crew": "Crew", "formations": "Stage", "staging": "Stage",
    "entrances": "Stage", "timeline": "the sheet", "tonight": "Who is there", "phrases": "the sheet",
}  # fmt: skip
# By hand in the file (the tab Text): patterns of one's own, which are tables of their own.
BY_HAND = {"patterns", "pattern_files"}


def listed(file, name):
    """The texts of a constant of the page."""
    (found,) = re.findall(rf"const {name}[^=]*= (.*?);\n", (PLANNING / file).read_text(), re.DOTALL)
    return set(re.findall(r'"(\w+)"', found.replace("{", "[")))


def test_every_heading_has_a_form_or_a_place():
    known = set(show_schema()["properties"])
    headings = re.search(r"const HEADINGS.*?;\n", (PLANNING / "forms.tsx").read_text(), re.DOTALL)
    forms = set(re.findall(r'\["(\w+)", "', headings.group())) | listed("forms.tsx", "TITLES")
    assert forms | ELSEWHERE.keys() | BY_HAND == known
    assert not forms & (ELSEWHERE.keys() | BY_HAND)


@pytest.mark.parametrize("kind", ["Entry", "Step"])
def test_a_move_says_all_but_what_its_buttons_change(kind):
    """The form is made of all fields but these: so that a new field is there without a change."""
    left_out = listed("more.tsx", "ELSEWHERE")
    known = set(show_schema()["$defs"][kind]["properties"])
    said = {"cue", "note", "timing", "direction", "hands", "cycle", "mirrored", "repeat", "accent", "with", "left", "right"}  # fmt: skip
    assert known - left_out == said
    if kind == "Entry":
        assert left_out <= known
