"""How a show file is mended step by step, with stand-ins for what is found and changed."""

from types import SimpleNamespace

import pytest

from sequencer.errors import InputError, Place
from sequencer.planning import mending


def draft(text="a", show="show a"):
    return mending._Draft(text=text, file="s.yaml", song="song", show=show)


def test_steps_go_on_until_none_helps_or_the_most_are_made():
    assert (mending.MOST_JOINS, mending.MOST_MOVES) == (500, 60)  # approved: more is another show

    def step(own):
        return None if own.text == "aaaa" else (draft(own.text + "a"), f"to {len(own.text) + 1}")

    told = []

    def tell(own, done):
        told.append((own.text, done))

    assert mending._repeated(draft(), step, 9, tell)[1] == ("to 2", "to 3", "to 4")
    assert told == [
        ("a", ()), ("aa", ("to 2",)), ("aaa", ("to 2", "to 3")), ("aaaa", ("to 2", "to 3", "to 4")),
    ]  # fmt: skip
    assert mending._repeated(draft(), step, 2, tell)[1] == ("to 2", "to 3")
    assert mending._repeated(draft(), step, 2, tell)[0].text == "aaa"
    assert mending._repeated(draft(), step, 0, tell) == (draft(), ())


def test_progress_says_how_many_are_mended_and_how_many_are_left():
    """The share is of the most that were ever left, as a mend may split one into two."""
    said, kept = [], []
    left = {"show a": 4, "show b": 3, "show c": 5, "show d": 0}
    tell = mending._teller(
        "mending", left.__getitem__, lambda *words: said.append(words), kept.append
    )
    for k, name in enumerate("abcd"):
        tell(draft(name, f"show {name}"), ("x",) * k)
    assert said == [
        ("mending: 0 mended, 4 left", 0.0), ("mending: 1 mended, 3 left", 0.25),
        ("mending: 2 mended, 5 left", 0.0), ("mending: 3 mended, 0 left", 1.0),
    ]  # fmt: skip
    assert [(each.text, each.done) for each in kept] == [
        ("b", ("x",)), ("c", ("x", "x")), ("d", ("x", "x", "x")),
    ]  # fmt: skip
    mending._teller("mending", left.__getitem__, None, None)(draft(), ("x",))


def test_the_time_under_the_requirement_is_that_of_all_spans():
    bad = [SimpleNamespace(spans=((1.0, 2.5), (4.0, 4.25))), SimpleNamespace(spans=((9.0, 10.0),))]
    assert mending._time(bad) == 2.75
    assert mending._time([]) == 0


def edit(name, *, trajectories=False):
    return SimpleNamespace(
        changes=((name,),), insertions=(name,), words=f"do {name}", of_trajectories=trajectories
    )


@pytest.fixture
def changes(monkeypatch):
    """Which changes fit: a draft whose show is named after the change."""
    made = {}

    def changed(self, given, insertions):
        assert given == ((insertions[0],),)
        return made.get(insertions[0])

    monkeypatch.setattr(mending._Draft, "changed", changed)
    return made


def meeting(name):
    return SimpleNamespace(judged=lambda: name)


def test_the_first_boundary_with_a_mend_that_leaves_fewer_is_mended(changes, monkeypatch):
    bad = {
        "show a": [meeting("one"), meeting("two")], "as many": [1, 2], "fewer": [1], "none": [],
    }  # fmt: skip
    edits = {"one": [edit("x"), edit("y")], "two": [edit("z"), edit("w")]}
    monkeypatch.setattr(mending, "failing", lambda show: bad[show])
    monkeypatch.setattr(mending, "edits_for", lambda _show, joint: edits[joint])
    changes.update(y=draft("y", "as many"), z=draft("z", "fewer"), w=draft("w", "none"))
    assert mending._join_mended(draft()) == (changes["z"], "do z")
    changes["x"] = draft("x", "none")
    assert mending._join_mended(draft()) == (changes["x"], "do x")
    changes.clear()
    assert mending._join_mended(draft()) is None


def close(length):
    return SimpleNamespace(spans=((0.0, length),))


def test_the_closest_conflict_with_a_mend_that_helps_without_harm_is_mended(changes, monkeypatch):
    """Less time must be under the requirement, by more than a millionth of a beat."""
    bad = [close(1.0) for _ in range(8)]
    asked = []
    times = {"same": 8.0, "hardly": 8.0 - 0.9e-6, "less": 7.0, "harm": 6.0, "dance": 5.0}

    def smallest_mends(_before, conflict):
        k = bad.index(conflict) if conflict is not bad[0] else 0
        asked.append(k)
        return ((each, None) for each in edits[len(asked) - 1])

    def does_harm(before, show, *, trajectories):
        assert before.bad is bad
        return show == "harm" or (show == "dance" and trajectories)

    monkeypatch.setattr(mending, "baseline", lambda _show: SimpleNamespace(bad=bad))
    monkeypatch.setattr(mending, "smallest_mends", smallest_mends)
    monkeypatch.setattr(mending, "does_harm", does_harm)
    monkeypatch.setattr(mending, "too_close", lambda show: [close(times[show])])
    changes.update({name: draft(name, name) for name in times})
    edits = [
        [edit("none"), edit("same"), edit("hardly")], [edit("harm"), edit("dance", trajectories=True)],
        [edit("less"), edit("dance")], *([] for _ in range(9)),
    ]  # fmt: skip
    assert mending._space_mended(draft()) == (changes["less"], "do less")
    assert len(asked) == 3
    asked.clear()
    edits[2] = [edit("dance")]
    assert mending._space_mended(draft()) == (changes["dance"], "do dance")
    asked.clear()
    edits[2] = []
    assert mending._space_mended(draft()) is None
    assert len(asked) == 6, "the six closest"


def test_a_change_that_does_not_fit_the_show_is_none(monkeypatch):
    def drafted(text, file, song, before):
        if text == "bad":
            raise InputError("x", Place(file), "x", "x")
        return (text, file, song, before)

    monkeypatch.setattr(mending, "_draft", drafted)
    monkeypatch.setattr(mending, "edited_text", lambda text, given, _more: text + given[0])
    assert draft("b").changed(("ad",), ()) is None
    old = draft("g")
    assert old.changed(("ood",), ()) == ("good", "s.yaml", "song", old.show)
