"""A changed document keeps the records of all that it has in common with the one read before.

Reference: the same document read by itself.
"""

from dataclasses import replace

import pytest

from sequencer.errors import InputError
from sequencer.planning.trying.restaging import changed_values
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from tests.unit.staging.test_reuse import EDITS, SHOW

ENTRY = {"who": "Cedar", "from": "5.1", "pattern": "extension", "beats": 4}


@pytest.fixture(scope="module")
def before():
    return show_from_document(parse_document(SHOW, "s.yaml"))


def changed(before, changes, insertions=()):
    values = changed_values(before.document.values, changes, insertions)
    return replace(before.document, values=values)


@pytest.mark.parametrize("name", EDITS)
def test_the_show_is_that_of_the_document_by_itself(before, name):
    path, value, _ = EDITS[name]
    document = changed(before, [(path, value)])
    assert show_from_document(document, before=before).show == show_from_document(document).show


def test_an_entry_put_in_leaves_the_records_of_the_others(before):
    again = show_from_document(changed(before, [], [(("timeline",), 1, ENTRY)]), before=before).show
    old = before.show
    assert [each.pattern for each in again.timeline][1] == "extension"
    assert [again.timeline[k] for k in (0, 2, 3)] == list(old.timeline)
    for one, two in zip((again.timeline[k] for k in (0, 2, 3)), old.timeline, strict=True):
        assert one is two
    assert all(one is two for one, two in zip(again.cast, old.cast, strict=True))
    assert again.venue is old.venue
    assert again.formations["wide"] is old.formations["wide"]


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("cast", 1, "stature"), "5 m"), (("timeline", 1, "canon"), "x"), (("timeline", 0, "who"), "Nobody"),
        (("formations", "wide", "spots", "Ash"), None), (("venue", "stage", "colour"), "red"),
        (("cast", 0), "Ash"), (("timeline",), {"a": 1}), (("track",), None),
    ],
)  # fmt: skip
def test_faults_are_told_as_of_the_document_by_itself(before, path, value):
    document = changed(before, [(path, value)])
    with pytest.raises(InputError) as alone:
        show_from_document(document)
    with pytest.raises(InputError) as again:
        show_from_document(document, before=before)
    assert str(again.value) == str(alone.value)
