"""How mends are chosen and what counts as harm, with shows that only have the faults that are said."""

from collections import Counter
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.planning.edits.space_edits import SpaceEdit
from sequencer.planning.mends import space_mends as mends


def conflict(start, end, distance=0.2, first=0, second=1, spans=None):
    return Conflict(
        first=first, second=second, start=start, end=end, distance=distance, at=start,
        spans=spans or ((start, end),), parts=("head", "head"), where=(0.0, 4.0),
    )  # fmt: skip


DANCERS = tuple(SimpleNamespace(name=name) for name in ("Ash", "Birch", "Cedar"))


def show(**more):
    return SimpleNamespace(dancers=DANCERS, span=(0.0, 48.0), seconds=float, **more)


def before(*bad, floor=(), near=(), trajectories=()):
    return mends.Baseline(
        show=show(), span=(0.0, 48.0), required=0.3, close=bad, floor=Counter(floor), near=dict(near),
        trajectories=Counter(trajectories),
    )  # fmt: skip


def edit(kind, cost):
    return SpaceEdit(kind=kind, words=f"{kind} {cost:g}", cost=cost, changes=())


@pytest.mark.parametrize(
    ("start", "end", "distance", "known"),
    [
        (8.0, 12.0, None, True), (7.5, 12.5, None, True), (7.4, 12.0, None, False),
        (8.0, 12.6, None, False), (9.0, 10.0, 0.2, True), (8.0, 12.0, 0.25, True),
        (8.0, 12.0, 0.19, True), (8.0, 12.0, 0.189, False), (20.0, 21.0, None, False),
        (30.0, 31.0, 0.0, True),
    ],
)  # fmt: skip
def test_an_approach_is_known_within_half_a_beat_and_a_centimetre(start, end, distance, known):
    bad = (conflict(8.0, 12.0, 0.2), conflict(30.0, 31.0, 0.0))
    assert mends._known(bad, 0, 1, start, end, distance) == known
    assert not mends._known(bad, 1, 0, start, end, distance)
    assert not mends._known(bad, 0, 2, start, end, distance)


@pytest.mark.parametrize(
    ("spans", "close"),
    [
        ([], False),
        ([(9.0, 10.0)], True),
        ([(11.9, 14.0)], True),
        ([(12.0, 12.4)], False),  # beside it, and there before
        ([(7.6, 8.0)], False),
        ([(12.0, 12.6)], True),  # beside it, but longer than before
        ([(7.4, 8.0)], True),
        ([(12.1, 12.4), (9.0, 9.1)], True),
    ],
)
def test_a_pair_is_still_close_within_the_conflict_or_newly_beside_it(spans, close, monkeypatch):
    asked = []

    def approaches(pair, low, high, **named):
        asked.append(([one.name for one in pair], low, high, named))
        start, end = (np.array([span[k] for span in spans], float) for k in (0, 1))
        return SimpleNamespace(spans=SimpleNamespace(start=start, end=end))

    monkeypatch.setattr(mends, "approaches", approaches)
    own = before(conflict(8.0, 12.0))
    assert mends._still_close(own, own.bad[0], show()) == close
    assert asked == [(["Ash", "Birch"], 7.5, 12.5, {"required": 0.3, "minima": False})]
    wide = before(conflict(0.2, 47.8))
    mends._still_close(wide, wide.bad[0], show())
    assert asked[-1][1:3] == (0.0, 48.0), "within the show"


@pytest.fixture
def faults(monkeypatch):
    """Faults of the changed show, as they are put in."""
    own = SimpleNamespace(bad=(), floor=Counter(), near={}, dance=Counter(), walks=Counter())
    monkeypatch.setattr(mends, "_walk_faults", lambda _show: own.walks)
    monkeypatch.setattr(mends, "too_close", lambda _show: own.bad)
    monkeypatch.setattr(mends, "_floor_faults", lambda _show: (own.floor, own.near))
    monkeypatch.setattr(mends, "_trajectory_faults", lambda _show: own.dance)
    return own


@pytest.mark.parametrize("kind", ["turn", "shift"])
@pytest.mark.parametrize(
    ("distances", "seen", "looks"),
    [
        ({9.0: 0.2}, True, 1),
        ({9.0: 0.3 - 2e-6}, True, 1),
        ({9.0: 0.3 - 5e-7}, False, 3),  # as good as the requirement: a search decides
        ({9.2: 0.1}, True, 2),  # the middle of the first approach
        ({11.5: 0.1}, True, 3),  # of the second
        ({8.0: 0.1}, False, 3),  # not looked at
    ],
)
def test_a_pair_that_is_seen_too_close_is_not_staged(distances, seen, looks, kind, monkeypatch):
    """A dance is looked at around each beat, if that is enough; else the two are built whole, once."""
    unsure = {9.0} if kind == "shift" else set()
    asked, built = [], []

    def restaged_dancers(_show, pair, _changes, _insertions, at=None):
        assert pair == (0, 1)
        built.append(at)
        return None if at in unsure else (f"Ash at {at}", f"Birch at {at}")

    def closest_at(first, second, beat):
        assert (first, second) in {(f"Ash at {at}", f"Birch at {at}") for at in (None, beat)}
        asked.append(beat)
        return SimpleNamespace(distance=np.array([distances.get(beat, 1.0)]))

    monkeypatch.setattr(mends, "restaged_dancers", restaged_dancers)
    monkeypatch.setattr(mends, "closest_at", closest_at)
    monkeypatch.setattr(mends, "restaged", None)
    two = replace(conflict(8.0, 12.0), spans=((8.0, 10.4), (11.0, 12.0)), at=9.0)
    own = before(two)
    assert mends._seen_close(own, two, edit(kind, 1)) == seen
    if kind == "turn":
        assert (asked, built) == ([9.0, 9.2, 11.5][:looks], [None])
    elif 9.0 in distances or not seen:
        assert (asked, built) == ([9.2, 11.5, 9.0], [9.0, 9.2, 11.5, None])
    else:
        assert (asked, built) == ([9.2, 11.5][: looks - 1], [9.0, 9.2, 11.5][:looks])
    if seen:
        assert mends._separated(own, two, edit(kind, 1)) is None


def test_whether_there_is_harm_is_known_with_the_first(faults, monkeypatch):
    own = before(conflict(8.0, 12.0))
    faults.bad = (conflict(8.0, 12.0),)
    assert not mends.does_harm(own, show(), trajectories=True)
    faults.dance = Counter([("torn", (), "")])
    assert not mends.does_harm(own, show(), trajectories=False)
    assert mends.does_harm(own, show(), trajectories=True)
    faults.bad = (conflict(20.0, 21.0),)
    monkeypatch.setattr(mends, "_floor_faults", None)
    assert mends.does_harm(own, show(), trajectories=True)


def test_a_fault_of_the_floor_is_new_whichever_check_tells_it(monkeypatch):
    """A code may be of several checks: what each of them tells no more than before may be more in all."""
    told = {"crew": 1, "exits": 1}

    def check(name):
        finding = Finding(
            code="blank", severity="stop", who=(), start=None, end=None, position=None, message=""
        )
        return SimpleNamespace(
            faults=lambda _show: SimpleNamespace(findings=(finding,) * told[name], things=())
        )

    monkeypatch.setattr(mends, "_walk_faults", lambda _show: Counter())
    monkeypatch.setattr(
        mends.keeping_clear, "boundaries_of",
        lambda _show: SimpleNamespace(findings=(), things=(), clearances=()),
    )  # fmt: skip
    monkeypatch.setattr(mends, "_floor_checks", lambda: [check("crew"), check("exits")])
    own = before()
    two = {("blank", (), "", rank): 2 for rank in ("stop", "warn")}
    assert list(mends.floor_harms(replace(own, floor=Counter(two)), show())) == []
    assert list(mends.floor_harms(replace(own, floor=Counter(two)), show())) == []
    told["crew"] = 0
    assert list(mends.floor_harms(replace(own, floor=Counter(two)), show())) == []
    told["exits"] = 3
    assert any(mends.floor_harms(replace(own, floor=Counter(two)), show()))
    told.update(crew=1, exits=1)
    one = Counter(dict.fromkeys(two, 1))
    assert any(mends.floor_harms(replace(own, floor=one), show())), "one each, two in all"


def test_the_first_of_each_kind_that_does_no_harm_is_taken(monkeypatch):
    """A place after two that harm; a facing that does not part them; a shift only where the dance may change."""
    kinds = (
        (edit("place", 0.3), edit("place", 0.4), edit("place", 0.2), edit("place", 0.1)),
        (edit("facing", 0.5), edit("facing", 0.6)),
        (edit("shift", 0.05), edit("shift", 0.15)),
        tuple(edit("widen", 1 + k / 10) for k in range(6)),
        tuple(edit("turn", 2 + k / 10) for k in range(6)),
    )
    harms = {"place 0.3": ("a",), "place 0.4": ("b",), "shift 0.05": ("c",)}
    harms |= {f"widen {1 + k / 10:g}": ("d",) for k in range(4)}
    harms |= {f"turn {2 + k / 10:g}": ("e", "f") for k in range(3)}
    tried = []

    def separated(_before, _conflict, one):
        tried.append(one.words)
        return None if one.kind == "facing" else f"after {one.words}"

    def harm(_before, after, *, trajectories):
        assert trajectories == ("shift" in after)
        return harms.get(after.removeprefix("after "), ())

    monkeypatch.setattr(mends, "edits_by_kind", lambda *_given, **_named: tuple(map(iter, kinds)))
    monkeypatch.setattr(mends, "has_form", lambda *_given: False)
    monkeypatch.setattr(mends, "_TIERS", ((0, 1), (2,), (3, 4)))
    monkeypatch.setattr(mends, "_separated", separated)
    monkeypatch.setattr(mends, "harm_of", harm)
    monkeypatch.setattr(mends, "does_harm", harm)
    found = mends.mends_for(before(conflict(8.0, 12.0)), conflict(8.0, 12.0))
    assert [(one.words, after) for one, after in found.accepted] == [
        ("place 0.2", "after place 0.2"), ("shift 0.15", "after shift 0.15"),
        ("turn 2.3", "after turn 2.3"),
    ]  # fmt: skip
    assert [(one.words, why) for one, why in found.rejected] == [
        ("shift 0.05", ("c",)), ("place 0.3", ("a",)), ("widen 1", ("d",)), ("turn 2", ("e", "f")),
    ]  # fmt: skip
    assert [words for words in tried if "widen" in words] == [
        "widen 1",
        "widen 1.1",
        "widen 1.2",
        "widen 1.3",
    ]
    assert "place 0.1" not in tried
    tried.clear()
    still = mends.mends_for(before(conflict(8.0, 12.0)), conflict(8.0, 12.0), trajectories=False)
    assert not any("shift" in words for words in tried)
    assert [one.words for one, _ in still.accepted] == ["place 0.2", "turn 2.3"]
    tried.clear()
    smallest = mends.smallest_mends(before(conflict(8.0, 12.0)), conflict(8.0, 12.0))
    assert next(smallest) == found.accepted[0]
    assert not any("shift" in words for words in tried), "no other dance before another place"


def test_each_conflict_has_its_words(monkeypatch):
    """The dance is changed for the three closest, six are mended, the others wait; harm is told twice at most."""
    bad = tuple(conflict(4.0 * k, 4.0 * k + 1, 0.01 * k) for k in range(8))
    asked = []

    def mends_for(_before, one, *, trajectories):
        asked.append((one.start, trajectories))
        rejected = [(edit("place", k), ("x", "y")) for k in range(3)]
        accepted = [(edit("turn", 1), None), (edit("turn", 2), None)]
        return mends.Mends(
            accepted=() if one.start == 4.0 else tuple(accepted), rejected=tuple(rejected)
        )

    monkeypatch.setattr(mends, "baseline", lambda _show: before(*bad))
    monkeypatch.setattr(mends, "mends_for", mends_for)
    monkeypatch.setattr(
        mends, "BeatClock", lambda tempo: SimpleNamespace(position=lambda beat: f"{tempo} {beat:g}")
    )
    words = mends.words_for(show(tempo="at"))
    assert asked == [(4.0 * k, k < 3) for k in range(6)]
    assert list(words) == [(("Ash", "Birch"), f"at {4 * k}") for k in range(8)]
    assert words[("Ash", "Birch"), "at 0"] == ("turn 1", "turn 2")
    assert words[("Ash", "Birch"), "at 4"] == (
        mends._NOTHING, "place 0, but then: x; y", "place 1, but then: x; y",
    )  # fmt: skip
    for late in (24, 28):
        assert words[("Ash", "Birch"), f"at {late}"] == (
            "mend the closer conflicts first, then check again",
        )


def test_harm_is_what_was_not_there_before(faults):
    off = ("off-stage", ("Ash",), "stage")
    fast = ("too-fast", (), "")
    own = before(
        conflict(8.0, 12.0), floor=[off], near={("Ash", "audience"): 1.0, ("Birch", "post"): 0.5},
        trajectories=[fast],
    )  # fmt: skip
    faults.bad = (conflict(8.0, 12.0, 0.195, spans=((8.0, 9.0), (11.0, 12.4))),)
    faults.floor, faults.dance = Counter([off]), Counter([fast])
    faults.near = {("Ash", "audience"): 0.99, ("Cedar", "post"): 0.1}
    assert mends.harm_of(own, show(), trajectories=True) == ()
    faults.bad += (conflict(20.0, 21.0, first=1, second=2, spans=((20.0, 20.5), (20.7, 21.0))),)
    faults.floor = Counter([off, off, ("off-stage", ("Ash", "Cedar"), "")])
    faults.dance = Counter([fast, ("torn", (), ""), ("bent", ("Birch",), "")])
    faults.near = {("Ash", "audience"): 0.9899, ("Birch", "post"): 0.6}
    expected = [
        "Birch and Cedar are too close", "Ash: off-stage", "Ash, Cedar: off-stage",
        "Ash comes closer to audience",
    ]  # fmt: skip
    assert list(mends.harm_of(own, show(), trajectories=False)) == expected
    told = mends.harm_of(own, show(), trajectories=True)
    assert set(told) == {*expected, "torn", "Birch: bent"}
    assert told[0] == expected[0]
    assert told[-1] == expected[-1]


def test_walks_are_judged_first_and_nothing_else_if_one_is_new(faults, monkeypatch):
    slow = ("walks-too-fast", ("Ash",), "", "warn")
    own = before(conflict(8.0, 12.0), floor=[slow])
    faults.floor = faults.walks = Counter([slow])
    assert not mends.does_harm(own, show(), trajectories=False)
    faults.floor = faults.walks = Counter([slow, slow])
    monkeypatch.setattr(mends, "too_close", None)
    assert mends.does_harm(own, show(), trajectories=False)


def test_a_pair_that_comes_closer_than_before_is_harm(faults):
    faults.bad = (conflict(8.0, 12.0, 0.18),)
    assert mends.harm_of(before(conflict(8.0, 12.0)), show(), trajectories=False) == (
        "Ash and Birch are too close",
    )


def test_faults_are_counted_by_what_they_are_about():
    def finding(code, who, severity="stop"):
        return SimpleNamespace(code=code, who=who, severity=severity)

    # hashable by identity, as the findings of a report are by value
    class Row(SimpleNamespace):
        __hash__ = object.__hash__

    rows = [Row(**vars(finding(*one))) for one in (
        ("off-stage", ("Ash",)), ("off-stage", ("Ash",)), ("near", ("Ash",)), ("slow", (), "warn"),
        ("said", ("Ash",), "note"),
    )]  # fmt: skip
    outcome = SimpleNamespace(findings=rows, things=[(rows[2], "post")])
    assert mends._faults(outcome) == Counter(
        {("off-stage", ("Ash",), "", "stop"): 2, ("off-stage", ("Ash",), "", "warn"): 2,
         ("near", ("Ash",), "post", "stop"): 1, ("near", ("Ash",), "post", "warn"): 1,
         ("slow", (), "", "warn"): 1}
    )  # fmt: skip


@pytest.mark.parametrize(
    ("old", "new", "harm"),
    [
        (["stop"], ["warn"], False),  # it no longer stops
        (["warn"], ["stop"], True),
        (["warn"], ["warn"], False),
        (["stop", "warn"], ["warn", "warn"], False),
        (["warn"], ["warn", "warn"], True),
        ([], ["warn"], True),
        ([], ["note"], False),
    ],
)
def test_a_warning_that_is_new_is_harm_and_a_stop_that_only_warns_now_is_none(old, new, harm):
    def counted(severities):
        rows = [
            Finding(code="let-go-near", severity=each, who=("Ash",), message=str(k), start=None,
                    end=None, position=None, remedies=(), source="")
            for k, each in enumerate(severities)
        ]  # fmt: skip
        return mends._faults(Outcome(findings=tuple(rows)))

    assert bool(counted(new) - counted(old)) == harm


def test_the_closest_come_first(monkeypatch):
    found = [conflict(1.0, 2.0, 0.2), conflict(3.0, 4.0, 0.1), conflict(5.0, 6.0, 0.15)]
    asked = []
    monkeypatch.setattr(mends, "required_distances", lambda _show: SimpleNamespace(performers=0.3))
    monkeypatch.setattr(mends, "approaches", lambda *given, **named: asked.append((given, named)))
    monkeypatch.setattr(mends, "conflicts", lambda *_given, **_named: found)
    assert [one.distance for one in mends.too_close(show(results={}))] == [0.1, 0.15, 0.2]
    assert asked == [((DANCERS, 0.0, 48.0), {"required": 0.3, "minima": False})]


@pytest.mark.parametrize("fault", [ValueError("x"), None])
def test_a_change_that_does_not_fit_or_does_not_part_them_is_none(fault, monkeypatch):
    def restaged(_show, _changes, _insertions):
        if fault:
            raise fault
        return "after"

    monkeypatch.setattr(mends, "restaged", restaged)
    monkeypatch.setattr(mends, "_seen_close", lambda *_given: False)
    own = before(conflict(8.0, 12.0))
    for close in (True, False):
        monkeypatch.setattr(mends, "_still_close", lambda *_given, close=close: close)
        found = mends._separated(own, own.bad[0], edit("turn", 1))
        assert found == (None if fault or close else "after")


class Told:
    """An outcome of checks: what is told, and what is added to it."""

    def __init__(self, clearances=(), findings=()):
        self.clearances, self.findings, self.things = clearances, tuple(findings), ()

    def __add__(self, other):
        return Told(self.clearances, (*self.findings, *other.findings))


def check(code, *, can_fail=True):
    row = SimpleNamespace(code=code, who=("Ash",), severity="stop")
    made = type("Row", (SimpleNamespace,), {"__hash__": object.__hash__})(**vars(row))
    return SimpleNamespace(faults=lambda _show: Told(findings=[made]), can_fail=can_fail)


def test_faults_of_the_floor_are_those_of_places_and_the_nearest_that_is_too_near(monkeypatch):
    """Exactly as far as required is far enough; of one pair the nearest counts; spacing has its own search."""
    spacing = check("spacing")

    def row(distance, who, thing, required=1.0):
        return SimpleNamespace(distance=distance, required=required, between=(who, thing))

    rows = [
        row(0.8, "Ash", "post"), row(0.6, "Ash", "post"), row(0.7, "Ash", "post"), row(1.0, "Ash", "arch"),
        row(0.9, "Birch", "post"), row(2.0, "Ash", "wall", 2.5),
    ]  # fmt: skip
    asked = []

    def boundaries_of(show):
        asked.append(show)
        return Told(clearances=rows)

    monkeypatch.setattr(mends.keeping_clear, "boundaries_of", boundaries_of)
    monkeypatch.setattr(mends.keeping_clear, "CHECK", spacing)
    mild = check("d", can_fail=False)  # is not run: notes are no harm
    made = {
        "places": (check("a"), spacing, mild, check("b")),
        "trajectories": (spacing, mild, check("c")),
    }
    monkeypatch.setattr(mends, "checks_of", lambda what: made[what])
    own = show(results={})
    stops, near = mends._floor_faults(own)
    assert near == {("Ash", "post"): 0.6, ("Birch", "post"): 0.9, ("Ash", "wall"): 2.0}
    assert stops == Counter(
        {(code, ("Ash",), "", rank): 1 for code in "ab" for rank in ("stop", "warn")}
    )
    assert asked == [own]
    monkeypatch.setattr(mends, "Outcome", Told)
    assert mends._trajectory_faults(show()) == Counter(
        {("c", ("Ash",), "", rank): 1 for rank in ("stop", "warn")}
    )
