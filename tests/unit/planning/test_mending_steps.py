"""How a show file is mended step by step, with stand-ins for what is found and changed."""

from types import SimpleNamespace

from sequencer.planning import mending
from sequencer.timing.tempo import TempoMap


class Shown(str):
    """A name in place of a show, with its count."""

    __slots__ = ()
    tempo = TempoMap.steady(120.0)

    def __add__(self, more):
        return Shown(str(self) + more)


def draft(text="a", show="show a"):
    return mending._Draft(before=text, show=show)


def test_steps_go_on_until_none_helps_or_the_most_are_made():
    assert (mending.MOST_DANCED, mending.MOST_MOVES) == (200, 60)  # approved: more is another show

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
    assert [(each().text, each().done) for each in kept] == [
        ("b", ("x",)), ("c", ("x", "x")), ("d", ("x", "x", "x")),
    ]  # fmt: skip
    mending._teller("mending", left.__getitem__, None, None)(draft(), ("x",))


def test_the_time_under_the_requirement_is_that_of_all_spans():
    bad = [SimpleNamespace(spans=((1.0, 2.5), (4.0, 4.25))), SimpleNamespace(spans=((9.0, 10.0),))]
    assert mending._time(bad) == 2.75
    assert mending._time([]) == 0


def edit(name):
    return SimpleNamespace(changes=(), insertions=(), words=f"do {name}")


def close(length):
    return SimpleNamespace(spans=((0.0, length),))


def test_the_closest_conflict_with_a_mend_that_helps_is_mended(monkeypatch):
    """Less time must be under the requirement, by more than a millionth of a beat."""
    bad = [close(1.0) for _ in range(8)]
    asked = []
    times = {"same": 8.0, "hardly": 8.0 - 0.9e-6, "less": 7.0}

    def smallest_mends(_before, conflict):
        k = next(i for i, one in enumerate(bad) if one is conflict)
        asked.append(k)
        return ((edit(name), name) for name in edits[k])

    monkeypatch.setattr(mending, "baseline", lambda _show: SimpleNamespace(bad=bad))
    monkeypatch.setattr(mending, "smallest_mends", smallest_mends)
    monkeypatch.setattr(mending, "too_close", lambda show: [close(times[show])])
    monkeypatch.setattr(mending, "edited_in_turn", lambda text, _steps, **_: f"{text}+")
    edits = [["same", "hardly"], ["less", "same"], *([] for _ in range(6))]
    mended, words = mending._space_mended(draft())
    assert (mended.text, mended.show, words) == ("a+", "less", "do less")
    assert asked == [0, 1]
    asked.clear()
    edits[1] = []
    assert mending._space_mended(draft()) is None
    assert asked == [0, 1, 2, 3, 4, 5], "the six closest"


def test_steps_are_written_one_after_the_other(monkeypatch):
    monkeypatch.setattr(
        mending,
        "edited_in_turn",
        lambda text, steps, **_: text + "".join(own[0] for own, _ in steps),
    )
    first, *others = [SimpleNamespace(changes=(name,), insertions=()) for name in "xyz"]
    after = draft("a").stepped([first], "between").stepped(others, "after")
    assert (after.text, after.show) == ("axyz", "after")


def test_what_was_given_up_is_sought_again_once_others_are_mended(monkeypatch):
    """The first can only be mended after the second; the third never."""
    left = {"a": ["first", "second", "third"], "ab": ["first", "third"], "abb": ["third"]}

    def cause(code):
        fault = SimpleNamespace(code=code, who=("Isa",), position="1.1")
        return SimpleNamespace(faults=(fault,))

    def search(show, *, flown):
        def of(own, **_named):
            code = own.faults[0].code
            helps = code == "second" or (code == "first" and "second" not in left[show])
            mend = SimpleNamespace(
                words=f"do {code}", steps=(edit("b"),), after=show + "b", of_the_look=False
            )
            return SimpleNamespace(mends=(mend,) if helps else (), tried=("x",))

        assert not flown
        return SimpleNamespace(of=of)

    monkeypatch.setattr(mending, "_draft", lambda _text, _file, _song: draft("a", Shown("a")))
    monkeypatch.setattr(mending, "MendSearch", search)
    monkeypatch.setattr(mending, "mendable_faults", lambda show: show)
    monkeypatch.setattr(
        mending, "causes", lambda _show, found: [cause(code) for code in left[found]]
    )
    monkeypatch.setattr(mending, "in_order", list)
    monkeypatch.setattr(mending, "edited_in_turn", lambda text, steps, **_: text + "b" * len(steps))
    mended = mending.mended_dance("a", "s.yaml", None)
    assert mended.done == ("Isa, 1.1: do second", "Isa, 1.1: do first")
    assert mended.left == ("Isa, 1.1: third; tried x",)
    assert mended.text == "abb"
