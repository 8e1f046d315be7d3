"""Everything that the schema of a show file knows can be said on the planning page: in a form, or where it says so here."""

import re
from pathlib import Path

import pytest

from sequencer.errors import InputError
from sequencer.show.file_records.step_kinds import NEVER_TOGETHER, STEP_KINDS
from sequencer.show.operations.every_operation import read_operation
from sequencer.show.operations.operation import apply
from sequencer.show.reading import show_from_document
from sequencer.show.schemas.schema import show_schema, step_kinds
from sequencer.show.text.document import parse_document
from tests.unit.show.operations.duo import SHOW

PLANNING = Path(__file__).parents[2] / "web" / "planning"

# Headings with a tab or a place of their own on the page.
ELSEWHERE = {
    "track": "Song, and Count", "cast": "Cast", "crew": "Crew", "formations": "Stage", "staging": "Stage",
    "entrances": "Stage", "timeline": "the sheet", "tonight": "Who is there", "phrases": "the sheet",
}  # fmt: skip
# Forms of their own, below Show: tables of laws (`sequencer/show/pattern_form.py`), and a list of files.
OWN_FORMS = {"patterns": "OwnPattern", "pattern_files": "PatternFiles"}


def listed(file, name):
    """The texts of a constant of the page."""
    (found,) = re.findall(rf"const {name}[^=]*= (.*?);\n", (PLANNING / file).read_text(), re.DOTALL)
    return set(re.findall(r'"(\w+)"', found.replace("{", "[")))


def test_every_heading_has_a_form_or_a_place():
    known = set(show_schema()["properties"])
    headings = re.search(r"const HEADINGS.*?;\n", (PLANNING / "forms.tsx").read_text(), re.DOTALL)
    forms = set(re.findall(r'\["(\w+)", "', headings.group())) | listed("forms.tsx", "TITLES")
    own = (PLANNING / "own_patterns.tsx").read_text()
    assert all(f"<{form} " in own and f"values.{key}" in own for key, form in OWN_FORMS.items())
    assert forms | ELSEWHERE.keys() | OWN_FORMS.keys() == known
    assert not forms & (ELSEWHERE.keys() | OWN_FORMS.keys())


@pytest.mark.parametrize("kind", ["Entry", "Step"])
def test_a_move_says_all_but_what_its_buttons_change(kind):
    """The form is made of all fields but these: so that a new field is there without a change."""
    left_out = listed("more.tsx", "ELSEWHERE")
    known = set(show_schema()["$defs"][kind]["properties"])
    said = {"cue", "note", "timing", "direction", "hands", "cycle", "mirrored", "repeat", "accent", "with", "left", "right"}  # fmt: skip
    assert known - left_out == said
    if kind == "Entry":
        assert left_out <= known


# The last entry of a show, one of each kind.
WRITTEN = {
    "pattern": "{from: 30.1, pattern: extension, beats: 4}",
    "hands": "{from: 30.1, left: {pattern: extension}, right: {pattern: extension}, beats: 4}",
    "phrase": "{from: 30.1, phrase: wheel}",
    "link": "{from: 30.1, link: true, beats: 2}",
    "rest": "{from: 30.1, rest: 4}",
    "hold": "{from: 30.1, hold: 4}",
    "accent": "{accent: 30.1}",
}
# What the form's fields send; of a choice all choices.
SENT = {
    "cue": "eyes up", "note": "slowly", "cycle": 2, "repeat": 3, "accent": "31.1", "with": {"size": 1},
    "left": {"pattern": "flower"}, "right": {"pattern": "flower"},
}  # fmt: skip


def fields(kind):
    """What each field of the form sends, of a choice all choices; and whether it is offered for a kind of entry."""
    properties = show_schema()["$defs"]["Entry"]["properties"]
    takes = step_kinds()["kinds"][kind]["takes"]
    for key, of in properties.items():
        if key not in listed("more.tsx", "ELSEWHERE"):
            choices = of.get("enum") or (
                [True, False] if of.get("type") == "boolean" else [SENT[key]]
            )
            yield from ((key, value, key in takes) for value in choices)


def with_it(text, key, value):
    """The last entry as the file has it once a field is set, and as it is read."""
    change = {"do": "change-block", "at": ["timeline", 5], "values": {key: value}}
    document = parse_document(apply(text, read_operation(change), file="s.yaml"), "s.yaml")
    return document.values["timeline"][5], show_from_document(document).show.timeline[5]


def as_text(value):
    return {key: as_text(each) for key, each in value.items()} if isinstance(value, dict) else str(value).casefold()  # fmt: skip


@pytest.mark.parametrize("kind", STEP_KINDS)
def test_each_field_offered_for_a_kind_of_entry_can_be_set_and_no_other(kind):
    text = SHOW.replace("  - {accent: 21.1}\n", f"  - {WRITTEN[kind]}\n")
    for key, value, offered in fields(kind):
        if offered:
            row, entry = with_it(text, key, value)
            assert as_text(row[key]) == as_text(value)
            assert entry.kind == kind
        elif (kind, key) not in {("hands", "with"), ("link", "mirrored")}:  # read, but idle
            with pytest.raises(InputError):
                with_it(text, key, value)


def test_what_is_offered_for_each_kind():
    """As the file's rules say it in words: docs/show-file.md."""
    own = {kind: {key for key, _, offered in fields(kind) if offered} for kind in STEP_KINDS}
    always = {"cue", "note", "repeat", "mirrored"}
    of_hands = always | {"hands", "timing", "direction", "cycle"}
    assert own == {
        "pattern": of_hands | {"with"}, "hands": of_hands | {"left", "right"}, "phrase": always,
        "link": always - {"mirrored"}, "rest": always | {"hands"}, "hold": always | {"hands"}, "accent": {"accent", "note"},
    }  # fmt: skip


def test_keys_that_exclude_each_other_are_refused_together():
    lengths = {"until": "34.1", "beats": 4, "cycles": 2, "repeat": 2}
    for pair in NEVER_TOGETHER:
        both = ", ".join(f"{key}: {lengths[key]}" for key in pair)
        text = SHOW.replace("{accent: 21.1}", f"{{from: 30.1, pattern: extension, {both}}}")
        with pytest.raises(InputError, match=r"not both|give one of|cannot be combined"):
            show_from_document(parse_document(text, "s.yaml"))
