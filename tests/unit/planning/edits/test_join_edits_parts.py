"""Pieces of the edits of joins: lengths of repeated blocks, links of several, mirrored hands, order."""

from types import SimpleNamespace

import pytest

from sequencer.planning.edits import join_edits
from sequencer.planning.edits.join_edits import step_at
from tests.unit.planning.edits.test_join_edits import HEAD, stage
from tests.unit.planning.edits.test_join_edits_changes import remedy


@pytest.fixture(scope="module")
def show():
    cast = HEAD.replace(
        "# short poi", "\n  - {name: Birch, stature: 1.7, prop: {tether: 0.4 m}}"
    ).replace("{Ash: {at: [0, 4]}}", "{Ash: {at: [-2, 4]}, Birch: {at: [2, 4]}}")
    return stage(
        cast
        + "timeline:\n"
        "  - {who: [Ash, Birch], from: 3.1, pattern: static-spin, cycle: 1, beats: 4, canon: 1.5}\n"
        "  - {who: [Ash, Birch], from: 6.1, pattern: static-spin, cycle: 1, beats: 4, repeat: 2, mirror: Birch}\n"
        "  - {from: 9.1, phrase: turns}\n"
        "phrases:\n  turns:\n"
        "    - {pattern: static-spin, cycle: 1, beats: 4}\n"
        "    - {pattern: extension, beats: 4, right: {pattern: extension, with: {plane: wheel}}, left: {pattern: static-spin}}\n"
        .replace("pattern: extension, beats: 4, right", "beats: 4, right")
    )  # fmt: skip


def block(show, who, k):
    return show.blocks_of(who)[k]


def test_a_step_is_found_in_the_timeline_or_its_phrase(show):
    assert step_at(show, ("timeline", 1)).repeat == 2
    assert step_at(show, ("phrases", "turns", 1)).left.pattern == "static-spin"


def test_a_link_is_danced_by_those_of_the_entry_and_in_its_canon(show):
    path, index, entry = join_edits.link_entry(show, block(show, "Birch", 0), 2.0)
    assert (path, index) == (("timeline",), 1)
    assert entry == {"who": ["Ash", "Birch"], "link": True, "beats": 2, "canon": 1.5}
    path, index, entry = join_edits.link_entry(
        show, SimpleNamespace(path=("phrases", "turns", 1)), 0.25
    )
    assert (path, index, entry) == (("phrases", "turns"), 2, {"link": True, "beats": 0.25})
    whole = join_edits.link_entry(show, SimpleNamespace(path=("timeline", 2)), 1.0)
    assert whole == (("timeline",), 3, {"link": True, "beats": 1})


def test_a_length_is_shared_by_the_repeats(show):
    own = block(show, "Ash", 1)
    assert (own.start, own.end) == (20.0, 28.0)
    assert join_edits.length_changes(show, own, 10.0) == [(("timeline", 1, "beats"), 5)]
    assert join_edits.length_changes(show, own, 8.0 + 0.9e-9) == []
    assert join_edits.length_changes(show, own, 8.0 - 2e-9) == [(("timeline", 1, "beats"), 4)]
    assert join_edits.length_changes(show, own, 7.0) == [(("timeline", 1, "beats"), 3.5)]


@pytest.mark.parametrize(
    ("side", "mirrored", "changes"),
    [
        ("right", False, [((*("phrases", "turns", 1), "right", "with", "turn"), 1)]),
        ("left", True, [((*("phrases", "turns", 1), "right", "with", "turn"), 1)]),
        ("left", False, [((*("phrases", "turns", 1), "left", "with"), {"turn": 1})]),
        ("right", True, [((*("phrases", "turns", 1), "left", "with"), {"turn": 1})]),
    ],
)
def test_a_mirrored_hand_is_written_as_the_other(show, side, mirrored, changes):
    own = SimpleNamespace(path=("phrases", "turns", 1), mirrored=mirrored)
    assert join_edits._set(show, own, side, remedy("before", turn=1)) == changes


def test_nothing_set_is_nothing_changed(show):
    own = SimpleNamespace(path=("timeline", 1), mirrored=False, start=20.0, end=28.0)
    assert join_edits._set(show, own, "right", remedy("before")) == []
    assert join_edits._set(show, own, "right", remedy("before", cycle=0.5)) == [
        (("timeline", 1, "cycle"), 0.5)
    ]


def test_both_of_one_entry_are_set_once(show):
    """A step that follows itself is before and after."""
    own = SimpleNamespace(path=("phrases", "turns", 0), mirrored=False)
    joint = SimpleNamespace(who="Ash", beat=8.0, side="right", before=own, after=own)
    for change in ("both", "before", "after"):
        edit = join_edits._edit(show, joint, remedy(change, begin="out"))
        assert edit.changes == ((("phrases", "turns", 0, "with"), {"begin": "out"}),)


@pytest.mark.parametrize(
    ("value", "number"), [(2.0, 2), (2, 2), (0.5, 0.5), (1 / 3, 0.333333), (2 / 3, 0.666667)]
)
def test_numbers_are_whole_or_to_a_millionth(value, number):
    found = join_edits.plain(value)
    assert (found, type(found)) == (number, type(number))


def test_boundaries_that_fail_are_told_by_beat(monkeypatch):
    def meeting(beat, joins):
        return SimpleNamespace(beat=beat, joins=lambda: joins)

    made = {
        "Ash": [meeting(9, False), meeting(4, True)],
        "Birch": [meeting(5, False), meeting(12, False)],
    }
    monkeypatch.setattr(join_edits, "meetings", lambda _show, dancer: made[dancer])
    monkeypatch.setattr(join_edits, "performers_blocks", lambda _what, _show, dancer: dancer)
    found = join_edits.failing(SimpleNamespace(dancers=("Ash", "Birch"), results={}))
    assert [one.beat for one in found] == [5, 9, 12]
    assert join_edits.LEAST_LEFT == 1.0
