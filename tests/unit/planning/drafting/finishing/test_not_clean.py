"""A refusal names what was found, and what of the show to change for it."""

import pytest

from sequencer.findings import Finding
from sequencer.planning.drafting.finishing.not_clean import NOT_CLEAN, not_clean
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from tests.songs import even_song

SHOW = """\
title: T
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast: [{name: Ash, stature: 1.7, prop: poi}]
timeline: []
fire: {fuel: kerosene, lit: [{who: Ash, from: 1.1, until: 9.1}]}
"""


@pytest.mark.parametrize(
    ("code", "line", "mend"),
    [
        ("hanging-lit", 6, "dance a pendulum, or write until: 4.1"),
        ("does-not-join", 5, "add patterns under `repertoire`"),
    ],
)
def test_what_is_found_of_the_fire_is_mended_there_and_all_else_by_other_moves(code, line, mend):
    ground = ground_of(SHOW, "s.yaml", even_song(96, sections="A"))
    found = Finding(
        code=code, severity="stop", who=("Ash",), message="Ash holds the lit poi still", start=8.0, end=9.0,
        position="4.1", remedies=("dance a pendulum", "write until: 4.1"),
    )  # fmt: skip
    said = not_clean(ground, {}, None, found)
    assert said.code == NOT_CLEAN
    assert str(said).startswith(f"s.yaml:{line}:")
    assert "passes the checks: Ash holds the lit poi still at 4.1" in str(said)
    assert mend in str(said)
