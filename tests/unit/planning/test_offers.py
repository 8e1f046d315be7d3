"""Which words of mends a finding is given, with findings and mends that are said here."""

from dataclasses import dataclass
from types import SimpleNamespace

import pytest

from sequencer.checks.dance.joins import Joint
from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.outcome import Mendable
from sequencer.planning import offers


@dataclass(frozen=True)
class Found:
    who: tuple[str, ...]
    position: str
    remedies: tuple[str, ...] = ("before",)


@dataclass(frozen=True)
class Result:
    findings: tuple[Found, ...]
    mendable: tuple[Mendable, ...]


CLOSE = Conflict(
    first=0, second=1, start=8.0, end=9.0, distance=0.1, at=8.0, spans=((8.0, 9.0),),
    parts=("head", "head"), where=(0.0, 4.0),
)  # fmt: skip


def joint(*words):
    """A join whose remedies have these words."""
    made = object.__new__(Joint)
    for name, value in (("boundary", words), ("verdict", None)):
        object.__setattr__(made, name, value)
    return made


@pytest.fixture(autouse=True)
def _remedies(monkeypatch):
    monkeypatch.setattr(
        offers, "remedies_for",
        lambda words, _verdict: [SimpleNamespace(words=one) for one in words],
    )  # fmt: skip


@pytest.mark.parametrize(
    ("hands", "words"),
    [
        ((("a", "b", "c"), ("c", "a")), ("a", "c")),
        ((("a", "b"), ("c", "b", "d")), ("b",)),
        ((("a", "a"),), ("a",)),
        ((("a", "b"), ("c", "c")), ("a", "b", "c")),
        (((), ("c",)), ("c",)),
    ],
)
def test_mends_of_both_hands_go_before_those_of_one(hands, words):
    each = Mendable(finding=None, subject=tuple(joint(*hand) for hand in hands))
    assert offers._join_words(each) == words


def test_what_is_neither_a_join_nor_a_conflict_has_none():
    assert offers._join_words(Mendable(finding=None, subject=CLOSE)) == ()


def test_every_finding_keeps_its_own_words(monkeypatch):
    near, far = Found(("Ash", "Birch"), "3.1"), Found(("Ash", "Birch"), "9.1")
    join, other = Found(("Ash",), "4.1"), Found(("Ash",), "5.1")
    result = Result(
        findings=(near, other, join, far),
        mendable=(
            Mendable(finding=near, subject=CLOSE), Mendable(finding=far, subject=CLOSE),
            Mendable(finding=join, subject=(joint("a"),)),
        ),
    )  # fmt: skip
    asked = []
    words = {(("Ash", "Birch"), "3.1"): ("x", "y")}
    monkeypatch.setattr(offers, "words_for", lambda show: asked.append(show) or words)
    found = offers.with_mends("show", result).findings
    assert [one.remedies for one in found] == [("x", "y"), ("before",), ("a",), ("before",)]
    assert asked == ["show"]
    still = Result(
        findings=(other, join), mendable=(Mendable(finding=join, subject=(joint("a"),)),)
    )
    assert [one.remedies for one in offers.with_mends("show", still).findings] == [
        ("before",),
        ("a",),
    ]
    assert asked == ["show"], "no conflict: nothing is tried"
