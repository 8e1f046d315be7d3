"""The show as danced, for a terminal."""

import pytest

from sequencer.findings import AnyChance, Chance, Danced, MarksOff, MissedCue, Rehearsal
from sequencer.outputs.report.as_danced import danced_lines, percent, spread_words

SPREAD = {
    "place": 0.15,
    "facing": 0.15,
    "timing": 0.1,
    "tempo": 0.001,
    "tether": 0.01,
    "hand": 0.05,
}
CHANCE = Chance(
    between=("Wren", "Moss"), start=95.0, end=99.0, position="41.1", conflicts=60, runs=500, chance=0.12,
    low=0.093, high=0.152, worst=-0.04, parts=("left head", "right head"), formation="diamond", section="refrain 2",
    moves=("pro-bend-4", "pro-bend-4"), slices_from="41.1", slice_beats=2.0, slices=(40, 15, 5), half=0.01,
    twice=0.3, matters="place", who=("Wren", "Moss"), without={"place": 0.01, "timing": 0.1},
    without_who={"Wren": 0.05, "Moss": 0.06},
)  # fmt: skip
CUE = MissedCue(
    who="Sable", start=80.0, position="37.1", kind="an eight late", begins="the walk to box",
    meets=("Moss", "Wren"), worst=-0.28, at=84.0, parts=("left flame", "right arm"), apart=0.31,
    harm="Sable's left flame reaches Moss's right arm (the head 31 cm away); too close to Wren as well",
)  # fmt: skip


def danced(**given):
    usual = {
        "runs": 500, "seed": 3, "required": 0.3, "confidence": 0.95, "spread": SPREAD, "chances": (CHANCE,), "pairs": 6, "clear": 5,
        "clear_high": 0.0074, "missed": 0.02, "slips": 240, "missed_cues": (CUE,), "goes_wrong": 0.14, "goes_wrong_low": 0.11,
        "goes_wrong_high": 0.17,
        "anything": (
            AnyChance(spread=1.0, runs=500, chance=0.12, low=0.093, high=0.152),
            AnyChance(spread=0.5, runs=125, chance=0.016, low=0.002, high=0.057),
            AnyChance(spread=2.0, runs=62, chance=0.35, low=0.24, high=0.48),
        ),
        "rehearse": (
            Rehearsal(
                what="hitting the places in pro-bend-4", who=("Wren", "Moss"), start=95.0, position="41.1",
                before=0.14, after=0.03,
            ),
        ),
    }  # fmt: skip
    return Danced(**{**usual, **given})


def said(lines):
    return " ".join(" ".join(lines).split())


def test_it_says_where_in_the_plan_when_and_what_it_hangs_on():
    lines = danced_lines(danced(), 100)
    text = said(lines)

    assert all(len(line) <= 100 for line in lines)
    assert "1:35.0 (41.1) Wren – Moss 12 % 9 % – 15 % -0.04 m place, Wren and Moss" in text
    assert (
        "diamond, refrain 2, pro-bend-4; nearest: Wren's left head and Moss's right head; to 1:39.0"
        in text
    )
    assert (
        "how many runs brought them nearest in each stretch of 2 beats from 41.1 on: 40 15 5"
        in text
    )
    assert "1 % at half the spread, 30 % at twice" in text
    assert "without errors of places 1 %, timing 10 %" in text
    assert "5 pairs of 6 never under 0.30 m: chance of each at most 0.74 %" in text


def test_it_says_what_missed_cues_do():
    text = said(danced_lines(danced(missed_cues=(CUE,) * 7), 100))
    assert "7 of 240 bring two too close, flames counted, the nearest first:" in text
    assert (
        "1:20.0 (37.1) Sable, an eight late into the walk to box: at 1:24.0 Sable's left flame reaches Moss's right arm (the head 31 cm away); too close "
        "to Wren as well" in text
    )
    assert "2 more (--json lists all)" in text
    assert "0 of 240 bring two too close, flames counted Chance" in said(
        danced_lines(danced(missed_cues=()), 100)
    )
    assert "Missed cues" not in said(danced_lines(danced(slips=0, missed_cues=()), 100))


def test_it_ends_with_the_chance_of_anything_and_one_list():
    lines = danced_lines(danced(), 100)
    at = lines.index("Rehearse this first")

    assert lines[at + 1 :] == [
        "  1. 1:35.0 (41.1) Wren and Moss: hitting the places in pro-bend-4 – any two too close in 3 % of the",
        "     runs instead of 14 %",
    ]
    text = said(lines[:at])
    assert "Chance that any two come too close in a run: 14 % (11 % to 17 %)" in text
    assert "12 % (9 % to 15 % by 500 runs) by small errors" in text
    assert "each performer misses one in 2 % of the runs" in text
    assert "2 % (0.2 % to 6 % by 125 runs) if they are half as wide" in text
    assert "35 % (24 % to 48 % by 62 runs) if they are twice as wide" in text


def test_cues_that_few_runs_cannot_weigh_stand_apart():
    """By 20 runs, 45.12 % instead of 45.18 % is no advice: the cue is told without shares."""
    usual = {"who": ("Moss",), "start": 95.0, "position": "41.1", "before": 0.4518}
    place = Rehearsal(what="hitting the places everywhere", after=0.003, **usual)
    little = Rehearsal(what="the cue into weave", after=0.4512, gains=False, **usual)
    lines = danced_lines(danced(runs=20, rehearse=(place, little)), 100)
    at = lines.index("Rehearse this first")
    assert lines[at + 1 :] == [
        "  1. 1:35.0 (41.1) Moss: hitting the places everywhere – any two too close in under 5 % of the runs",
        "     instead of 45 %",
        "Cues to be sure of (missed so seldom that it shows in less than one run of 20)",
        "  – 1:35.0 (41.1) Moss: the cue into weave",
    ]
    alone = danced_lines(danced(runs=20, rehearse=(little,)), 100)
    assert "Rehearse this first" not in alone


@pytest.mark.parametrize(
    ("after", "runs", "words"),
    [
        (0.4512, 20, "45 %"), (0.05, 20, "5 %"), (0.049, 20, "under 5 %"), (0.0, 500, "under 0.2 %"),
        (0.0042, 500, "0.4 %"), (0.0042, 200, "under 0.5 %"),
    ],
)  # fmt: skip
def test_no_share_is_finer_than_the_runs_can_tell(after, runs, words):
    one = Rehearsal(
        what="places", who=("Moss",), start=95.0, position="41.1", before=0.6, after=after
    )
    told = said(danced_lines(danced(runs=runs, rehearse=(one,)), 100))
    assert f"any two too close in {words} of the runs instead of 60 %" in told


def test_too_few_runs_are_named():
    text = said(danced_lines(danced(chances=(CHANCE, *(few(n) for n in (1, 2)))), 100))
    assert "2 of these may be as likely as 5 % or not: 500 runs are too few to say" in text


def few(conflicts):
    return Chance(
        between=("Wren", "Moss"), start=95.0, end=99.0, position="41.1", conflicts=conflicts, runs=20,
        chance=conflicts / 20, low=0.01, high=0.3, worst=0.2,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("room", "most", "says"),
    [
        (
            0.2,
            0.135,
            "but if all marks are 20 cm off, Wren is too near the edge of the stage at 0:03.0 (2.3)",
        ),
        (0.2, 0.135, "with marks off by 10 cm (standard deviation) in at most 14 % of the runs"),
        (4.7, 1e-300, "with marks off by 10 cm (standard deviation) practically never"),
        (0.0, 1.0, "no room is left between Wren and the edge of the stage"),
    ],
)
def test_marks_that_are_off_for_all(room, most, says):
    marks = MarksOff(
        between=("Wren", "edge of the stage"),
        at=3.0,
        position="2.3",
        room=room,
        spread=0.1,
        most=most,
    )
    assert says in said(danced_lines(danced(marks=marks), 100))


def test_who_errs_by_their_own_is_told():
    own = {"Wren": {**SPREAD, "place": 0.4}, "Moss": dict(SPREAD)}
    words = spread_words(danced(own=own)).replace("\xa0", " ")
    assert words.endswith("hands 0.05 m; Wren: places 0.4 m; Moss: as all")
    assert words.startswith("places 0.15 m, facings 8.59°, timing 0.1 beats, tempo 0.1 %")


def test_a_plan_to_be_mended_is_what_it_is_most_by():
    from dataclasses import replace

    text = said(danced_lines(danced(chances=(replace(CHANCE, raises=("timing",)),)), 100))
    assert "-0.04 m the plan" in text


def test_a_share_is_finer_near_zero():
    assert [percent(each) for each in (0.0, 0.0042, 0.05, 1.0)] == ["0 %", "0.42 %", "5 %", "100 %"]


def test_one_run_is_one():
    assert danced_lines(danced(runs=1), 100)[0].startswith("As danced: 1 run, seed 3")


def test_a_solo_meets_nobody():
    assert "A solo" in said(danced_lines(danced(pairs=0), 100))
