"""Joins found in staged shows: each fault planted once, and a clean show."""

from dataclasses import replace
from functools import cache

import pytest

from sequencer.checks.dance.feasible import feasible
from sequencer.checks.dance.joins import joins, joints, meetings
from sequencer.errors import InputError
from sequencer.motion.trajectories.boundary import Boundary
from sequencer.motion.trajectories.joining import Tolerances
from sequencer.planning.offers import with_mends
from tests.nothing_kept import nothing_kept
from tests.unit.checks.dance.solo import TOROIDS, found, stage


def test_a_clean_show_has_no_fault():
    assert found(joins(stage(TOROIDS))) == []


def test_an_odd_build_that_repeats_is_the_wrong_way_round():
    show = stage(
        """\
  - {from: 3.1, pattern: toroid, with: {lobes: 3}, beats: 3, timing: together, repeat: 1}
  - {pattern: toroid, with: {lobes: 3}, beats: 3, timing: together}
"""
    )
    (finding,) = with_mends(show, joins(show)).findings
    assert finding.code == "wrong-way-round"
    assert finding.severity == "stop"
    assert finding.position == "3.4"
    assert finding.who == ("Ash",)
    assert "left hand and right hand" in finding.message
    words = " / ".join(finding.remedies)
    for part in ("begin: out", "a link of 1 beat"):  # tried, and they clear it
        assert part in words, part


def test_a_phrase_is_followed_through_its_repeats():
    """Three cycles of an odd build in a phrase: each repeat starts against the one before."""
    show = stage(
        """\
  - {from: 3.1, phrase: turns, repeat: 3}
phrases:
  turns:
    - {pattern: pro-bend-3, beats: 3, timing: together}
"""
    )
    codes = [f.code for f in joins(show).findings]
    assert codes == ["wrong-way-round", "wrong-way-round"]
    assert [f.position for f in joins(show).findings] == ["3.4", "4.3"]


def test_mirror_carries_the_sense_with_it():
    show = stage(
        """\
  - {from: 3.1, pattern: pro-bend-3, beats: 3, timing: together, mirrored: true}
  - {pattern: pro-bend-3, beats: 6, timing: together, mirrored: true}
"""
    )
    assert [f.code for f in joins(show).findings] == ["wrong-way-round"]


def test_a_second_cycle_mends_it():
    show = stage(
        """\
  - {from: 3.1, pattern: pro-bend-3, beats: 6, timing: together}
  - {pattern: pro-bend-3, beats: 6, timing: together}
"""
    )
    assert joins(show).findings == ()


@pytest.mark.parametrize(
    ("after", "code", "said"),
    [
        ("{pattern: static-spin, beats: 4, shift: 0.5}", "needs-a-shift", "if started 0.5 beats into its pattern"),
        ("{pattern: corkscrew, beats: 4}", "needs-a-link", "a link of 1 beat between"),
        ("{pattern: static-spin, with: {turn: clockwise}, beats: 4}", "wrong-way-round", "the opposite way"),
    ],
)  # fmt: skip
def test_each_verdict_has_its_code(after, code, said):
    show = stage("  - {from: 3.1, pattern: static-spin, beats: 4}\n  - " + after + "\n")
    findings = with_mends(show, joins(show)).findings
    assert {f.code for f in findings} == {code}
    assert said in findings[0].message
    assert findings[0].remedies
    assert (
        joins(show).findings[0].remedies == ()
    )  # a check says what is so; planning says how to mend it


def test_joints_know_both_hands():
    show = stage(TOROIDS)
    got = joints(show, show.dancers[0])
    assert [(j.side, j.beat, j.verdict.kind) for j in got] == [
        ("left", 16.0, "joins"),
        ("right", 16.0, "joins"),
    ]


def test_a_short_gap_is_a_hard_link():
    show = stage(
        """\
  - {from: 3.1, pattern: windmill, beats: 4}
  - {from: 4.1+1/8, pattern: corkscrew, beats: 4}
"""
    )
    findings = joins(show).findings
    assert {f.code for f in findings} == {"link-too-hard"}
    assert "from windmill to corkscrew" in findings[0].message
    asked = stage(
        """\
  - {from: 3.1, pattern: windmill, beats: 4}
  - {link: true, beats: 1/8}
  - {pattern: corkscrew, beats: 4}
"""
    )
    assert {f.severity for f in joins(asked).findings} == {"stop"}


OWN = """\
  - {from: 3.1, pattern: slow-star, beats: 8, timing: together}
  - {pattern: four-ins, cycles: 2, timing: together}
patterns:
  slow-star:
    law: orbit
    set: {ratio: -2}
    defaults: {hand_radius: 25 cm}
    cycle: 4
    needs: [extension]
  four-ins:
    stations:
      - {hand: 0, bend: 0, phase: 180}
      - {hand: 90, bend: 180, phase: 540}
      - {hand: 180, bend: 0, phase: 900}
      - {hand: 270, bend: 180, phase: 1260}
      - {hand: 360, bend: 0, phase: 1620}
"""


def test_a_shows_own_patterns_are_danced_and_checked():
    show = stage(OWN)
    assert [block.cycle for block in show.blocks] == [4, 4]
    assert show.blocks[1].end == show.blocks[1].start + 8
    (line,) = joins(show).findings
    assert line.code == "needs-a-link"
    assert feasible(show).not_checked


def test_a_bad_pattern_of_ones_own_is_refused_where_it_stands():
    bad = OWN.replace("{hand: 90, bend: 180, phase: 540}", "{hand: 90, bend: 280, phase: 540}")
    with pytest.raises(
        InputError, match=r"s\.yaml:29:\d+: .*stations 1 and 2: the direction jumps"
    ):
        stage(bad)
    with pytest.raises(InputError, match="needs 'extensio', which is not known"):
        stage(OWN.replace("[extension]", "[extensio]"))


def test_a_show_sets_its_own_limits():
    pair = """\
  - {from: 3.1, pattern: static-spin, beats: 4}
  - {pattern: static-spin, with: {across: 0.2}, beats: 4}
"""
    assert {f.code for f in joins(stage(pair)).findings} == {"needs-a-link"}
    assert joins(stage(pair + "limits: {join_hand: 25 cm}\n")).findings == ()
    slow = stage("  - {from: 3.1, pattern: extension, cycle: 1, beats: 8}\nlimits: {turns: 1}\n")
    assert "too-fast-to-dance" in found(feasible(slow))
    for bad in ("{join_rate: [1.1, 1.2]}", "{join_axis: 120}", "{pull: 0}"):
        with pytest.raises(InputError):
            stage(pair + f"limits: {bad}\n")


MET = """\
  - {from: 3.1, pattern: toroid, with: {lobes: 3}, beats: 3, timing: split, direction: opposite, shift: 0.25}
  - {pattern: own-way, beats: 6, timing: together}
patterns:
  own-way: {law: orbit, set: {ratio: -2}, defaults: {hand_radius: 25 cm}, cycle: 4}
"""
OTHERWISE = {
    "tether": ({"tether": "0.5"}, MET),
    "stature": ({"stature": "1.9"}, MET),
    "tempo": ({"tempo": 140.0}, MET),
    "limits": ({}, MET + "limits: {hand_speed: 1 m/s}\n"),
    "pattern before": ({}, MET.replace("lobes: 3", "lobes: 5")),
    "length before": ({}, MET.replace("beats: 3", "beats: 4")),
    "timing": ({}, MET.replace("timing: split", "timing: quarter")),
    "direction": ({}, MET.replace("opposite", "same")),
    "shift": ({}, MET.replace("shift: 0.25", "shift: 0.5")),
    "cycle": ({}, MET.replace("shift: 0.25", "shift: 0.25, cycle: 6")),
    "mirror": ({}, MET.replace("shift: 0.25", "shift: 0.25, mirrored: true")),
    "pattern after": ({}, MET.replace("own-way, beats", "pro-bend-3, beats")),
    "shift after": ({}, MET.replace("timing: together", "timing: together, shift: 0.5")),
    "own patterns": ({}, MET.replace("ratio: -2", "ratio: -3")),
}


def said(show):
    return [(each.side, each.beat, repr(each.verdict)) for each in joints(show, show.dancers[0])]


def test_blocks_that_meet_alike_are_judged_once(monkeypatch):
    with nothing_kept():
        before = stage(MET)
        first = said(before)
        show = replace(stage(MET.replace("3.1", "5.1")), book=before.book)
        monkeypatch.setattr(Boundary, "verdict", None)  # none is judged again
        again = joints(show, show.dancers[0])
    assert [repr(each.verdict) for each in again] == [verdict for _, _, verdict in first]
    assert [each.beat for each in again] == [beat + 8 for _, beat, _ in first]


@cache
def as_first():
    return stage(MET)


@pytest.mark.parametrize("name", OTHERWISE)
def test_what_was_judged_for_other_blocks_is_never_taken_for_these(name):
    options, text = OTHERWISE[name]
    show = stage(text, **options)
    if name != "own patterns":
        show = replace(show, book=as_first().book)  # as after an edit
    with nothing_kept():
        fresh = said(show)
    with nothing_kept():
        before = said(as_first())
        after = said(show)
    assert after == fresh
    assert [each[2:] for each in after] != [each[2:] for each in before]


def test_a_join_is_judged_by_the_tolerances_that_are_asked_for():
    wide = Tolerances(
        hand=5.0, tether_deg=180.0, axis_deg=180.0, rate_ratio=(0.01, 100.0), hand_velocity=50.0, head_velocity=50.0
    )  # fmt: skip
    show = as_first()
    with nothing_kept():
        strict = joints(show, show.dancers[0])
        loose = joints(show, show.dancers[0], tolerances=wide)
    assert {each.verdict.kind for each in strict} == {"needs a link"}
    assert {each.verdict.kind for each in loose} == {"joins"}


def test_each_hand_is_judged_by_itself():
    with nothing_kept():
        left, right = said(as_first())
    assert (left[0], right[0]) == ("left", "right")
    assert left[2] != right[2]


@pytest.mark.parametrize("name", ["tether", "stature", "own patterns"])
def test_the_same_blocks_with_another_body_prop_or_book_are_judged_anew(name):
    options, text = OTHERWISE[name]
    own, other = as_first(), stage(text, **options)
    other = replace(
        other, blocks=own.blocks, book=own.book if name != "own patterns" else other.book
    )
    known = {each.content for each in meetings(own, own.dancers[0])}
    asked = {each.content for each in meetings(other, other.dancers[0])}
    assert len(known) == len(asked) == 2
    assert None not in known
    assert not known & asked


@pytest.mark.parametrize(
    "change",
    [{"timing": "quarter"}, {"direction": "same"}, {"cycle": 7.0}, {"shift": 1.0}, {"mirrored": True}, {"end": 50.0}],
    ids=lambda change: next(iter(change)),
)  # fmt: skip
def test_a_block_that_moves_otherwise_is_judged_anew(change):
    show = as_first()
    block = show.blocks[0]
    for other, anew in ((replace(block, **change), True), (replace(block, note="other"), False)):
        changed = replace(show, blocks=(other, *show.blocks[1:]))
        own = [each.content for each in _judged(show)]
        assert (not set(own) & {each.content for each in _judged(changed)}) == anew


def _judged(show):
    """Both hands where the two blocks meet, wherever the first ends."""
    first, second = show.blocks[:2]
    second = replace(second, start=first.end, end=first.end + second.end - second.start)
    return meetings(replace(show, blocks=(first, second)), show.dancers[0])
