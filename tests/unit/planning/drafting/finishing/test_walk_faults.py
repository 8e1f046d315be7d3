"""A walk on or off that is at fault whatever is danced is told instead of advice on moves."""

from types import SimpleNamespace

import pytest

from sequencer.findings import Finding
from sequencer.planning.drafting.finishing.walk_faults import walk_at_fault

WALK = SimpleNamespace(who="Wren", start=32.0, end=40.0)
SHOW = SimpleNamespace(
    comings=(WALK,), tempo=SimpleNamespace(beats_from_seconds=lambda seconds: 2 * seconds)
)


def found(start=17.0, who=("Wren", "Sable"), code="too-close", severity="stop"):
    return Finding(code=code, severity=severity, who=who, start=start, end=start, position=None, message="")  # fmt: skip


def test_what_is_there_without_a_routine_too_is_the_walks():
    known = found()
    for start in (16.0, 18.5, 20.0):
        danced = found(start, who=("Sable", "Wren"))
        assert walk_at_fault(SHOW, {"known": known}, danced) == (WALK, known)


@pytest.mark.parametrize(
    ("known", "danced"),
    [
        (found(), found(20.1)), (found(15.9), found()), (found(), found(who=("Sable", "Moss"))), (found(), found(code="lost")),
        (found(severity="warn"), found()), (found(who=("Sable",)), found(who=("Sable",))),
    ],
)  # fmt: skip
def test_all_else_is_the_routines(known, danced):
    assert walk_at_fault(SHOW, {"known": known}, danced) is None
