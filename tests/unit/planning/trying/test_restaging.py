"""Values of a show file after changes, and what of a show is staged again: all, or the floor alone."""

from dataclasses import dataclass
from types import SimpleNamespace

import pytest

from sequencer.planning.trying import restaging
from sequencer.planning.trying.restaging import changed_values, restaged


def test_changes_of_every_depth_leave_the_file_as_it_was():
    values = {"a": {"b": [1, {"c": 2}]}, "d": 3, "rows": [10, 20]}
    found = changed_values(
        values,
        [(("a", "b", 1, "c"), 5), (("d",), None), (("e",), {"new": 1}), (("a", "b", 0), 0)],
        [(("rows",), 0, "first"), (("a", "b"), 2, "last"), (("rows",), 2, "end")],
    )
    assert found == {
        "a": {"b": [0, {"c": 5}, "last"]},
        "rows": ["first", 10, 20, "end"],
        "e": {"new": 1},
    }
    assert values == {"a": {"b": [1, {"c": 2}]}, "d": 3, "rows": [10, 20]}
    assert changed_values(values, []) == values


def test_what_no_change_leads_through_stays_the_same_object():
    """So that a reading of the values before knows what it has validated already."""
    values = {"a": {"b": [{"x": 1}, {"y": 2}]}, "rows": [{"z": 3}]}
    found = changed_values(values, [(("a", "b", 0, "x"), 5)], [(("rows",), 0, {"w": 4})])
    assert found["a"]["b"][1] is values["a"]["b"][1]
    assert found["rows"][1] is values["rows"][0]
    assert found["a"]["b"][0] is not values["a"]["b"][0]


@pytest.mark.parametrize(
    ("path", "says"),
    [(("x", "y"), "no x/y"), (("rows", 2, "y"), "no rows/2/y"), (("d", "y", "z"), "no d/y/z")],
)
def test_a_path_that_is_not_there_is_named(path, says):
    values = {"d": 3, "rows": [10, 20]}
    with pytest.raises(ValueError, match=f"there is {says} in the show file"):
        changed_values(values, [(path, 1)])
    with pytest.raises(ValueError, match="there is no q in the show file"):
        changed_values(values, [], [(("q",), 0, 1)])


@dataclass(frozen=True)
class Document:
    values: dict
    file: str = "show.yaml"


@dataclass(frozen=True)
class Read:
    document: Document
    show: str = "old"


@dataclass(frozen=True)
class Dancer:
    name: str
    floor: str


@dataclass(frozen=True)
class Show:
    read: Read | None
    heard: str | None = "heard"
    show: str = "old"
    song: str = "song"
    tempo: str = "tempo"
    standings: tuple = (SimpleNamespace(end=9.0), SimpleNamespace(end=4.0))
    dancers: tuple = (Dancer("Ash", "here"), Dancer("Birch", "here"))


CARRIED: list[tuple[Show, Show]] = []  # shows before and after


@pytest.fixture
def show(monkeypatch):
    monkeypatch.setattr(
        restaging,
        "show_from_document",
        lambda document, before: Read(document, "new" if before.show == "old" else "?"),
    )
    monkeypatch.setattr(
        restaging,
        "staged",
        lambda read, heard, before, **_named: ("all", read.document.values, heard, before),
    )
    monkeypatch.setattr(restaging, "Moments", lambda *given: given[1:])
    monkeypatch.setattr(restaging, "standings", lambda _read, moments, last: (*moments, last))
    monkeypatch.setattr(restaging, "floor_path", lambda _read, name, places: (name, places))
    monkeypatch.setattr(restaging, "carry_results", lambda *pair: CARRIED.append(pair))
    CARRIED.clear()
    return Show(
        Read(Document({"formations": {"a": 1}, "staging": [1], "timeline": [1], "cast": 2}))
    )


@pytest.mark.parametrize("changes", [[(("formations", "a"), 2)], [(("staging", 0), 2)], []])
def test_where_only_the_floor_changes_the_floor_alone_is_staged_again(show, changes):
    found = restaged(show, changes)
    assert (found.show, found.read.show) == ("new", "new")
    assert found.standings == ("song", "tempo", 9.0)
    assert [one.floor for one in found.dancers] == [
        ("Ash", ("song", "tempo", 9.0)), ("Birch", ("song", "tempo", 9.0)),
    ]  # fmt: skip
    assert [(show, found)] == CARRIED


@pytest.mark.parametrize(
    ("changes", "insertions"),
    [
        ([(("cast",), 3)], ()),
        ([(("formations", "a"), 2), (("timeline", 0), 3)], ()),
        ([], [(("timeline",), 0, 1)]),
        ([(("staging", 0), 2)], [(("staging",), 0, 1)]),
    ],
)
def test_anything_else_stages_the_whole_show(show, changes, insertions):
    kind, values, heard, before = restaged(show, changes, insertions)
    assert (kind, heard) == ("all", "heard")
    assert before is show
    assert values == changed_values(show.read.document.values, changes, insertions)


@pytest.mark.parametrize("lost", ["read", "heard"])
def test_a_show_without_its_file_or_its_song_cannot_be_changed(show, lost):
    from dataclasses import replace

    with pytest.raises(ValueError, match="does not remember its file"):
        restaged(replace(show, **{lost: None}), [])
