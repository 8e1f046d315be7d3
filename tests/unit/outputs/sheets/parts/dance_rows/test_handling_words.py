"""Who lights, how lit props wait, who puts out: in the words of a performer's page."""

import pytest

from sequencer.outputs.sheets.parts.dance_rows.handling_words import (
    first_move,
    lighter_words,
    lighting_lines,
    putter_words,
    putting_out_lines,
)
from sequencer.outputs.sheets.parts.edition import Edition
from tests.handled_show import handled

LIT = "    - {who: Wren, from: 11.1, until: 31.1}\n"
SORREL = "  - {name: Sorrel, post: [0, 1], duty: lighter}\n"


def lines(*edits, which=0, out=False):
    """Of the first burn of Wren, or of the one after it."""
    edition = Edition(staged=handled(*edits), report=None)
    burn = [each for each in edition.plan.burns if each.who == "Wren"][which]
    found = (putting_out_lines if out else lighting_lines)(edition, burn)
    return [line.replace("\u00a0", " ") for line in found]


def test_a_performer_reads_who_lights_them_how_they_wait_and_when_they_are_out():
    """Lit from 15 s to 20 s, the first move at 24 s, 13.1, after a lift of 2 beats; out at 65 s, cold 30 s later."""
    assert lines() == [
        "Sorrel lights you, 5.0 m to stage right, 4.0 m upstage: 5 s. Stand still",
        "Lay the heads on bare ground, tethers to your side, until 2 beats before bar 13.1; then lift into the first move",
        "Burn begins at 0:20, bar 11.1. Out by 1:05, after 50 s alight",
    ]
    assert lines(out=True) == [
        "Stand still, heads to the ground, away from you",
        "Flint puts you out: smothers, checks that it is out; out by 1:05",
        "Hot for 30 s, until 1:35: lay the heads down away from the fuel",
    ]


def test_times_that_nobody_measured_say_so():
    usual = ("light: 5 s, put_out: 5 s, cool: 30 s, swap: 20 s, ", "")
    assert "10 s (assumed, not measured). Stand still" in lines(usual)[0]
    assert lines(usual, out=True)[1:] == [
        "Flint puts you out: smothers, checks that it is out; out by 1:10 (assumed, not measured)",
        "Hot for 10 min (assumed, not measured), until 11:10: lay the heads down away from the fuel",
    ]


def test_who_is_put_out_second_reads_that_they_wait():
    """Linden puts out Moss, who was lit later and has more to spare, after Wren: 5 s, and 10 m at 3.5 ft/s."""
    linden = "put_out_by: Linden, from"
    edits = (
        ("who: Wren, from", f"who: Wren, {linden}"),
        ("{who: Wren, put_out_by: Linden, from: 13.1", "{who: Wren, from: 13.1"),
        ("who: Moss, from: 41.1, until: 61.1", f"who: Moss, {linden}: 9.1, until: 31.1"),
    )
    assert lines(*edits, out=True)[0] == (
        "Stand still, heads to the ground, away from you. You wait about 15 s: somebody else is put out first"
    )


@pytest.mark.parametrize(
    ("props", "words"),
    [
        (
            "second set",
            (
                "Take the second soaked set, never the hot wick: 20 s to change; "
                "lit by Sorrel from 1:25, 5.0 m to stage right, 4.0 m upstage"
            ),
        ),
        (
            "same",
            (
                "Relight of the same wick, only once it is cold and soaked again; "
                "lit by Sorrel from 1:25, 5.0 m to stage right, 4.0 m upstage"
            ),
        ),
    ],
)
def test_a_relight_is_said_where_the_first_burn_ends(props, words):
    again = (LIT, LIT + f"    - {{who: Wren, from: 46.1, until: 50.1, props: {props}}}\n")
    alone = ("    - {who: Moss, from: 41.1, until: 61.1}\n", "")
    assert lines(again, alone, out=True)[-1] == words
    lit = lines(again, alone, which=1)[0]
    assert ("the second soaked set, never the hot wick" in lit) is (props == "second set")


def test_nobody_named_is_said_in_capitals():
    edition = Edition(
        staged=handled((SORREL, ""), ("duty: spotter, watches: Wren", "duty: lead")), report=None
    )
    wren = next(burn for burn in edition.plan.burns if burn.who == "Wren")
    assert lighter_words(edition, wren) == "NOBODY IS NAMED TO LIGHT YOU: do not light"
    assert putter_words(edition, wren) == "NOBODY IS NAMED TO PUT YOU OUT: do not light"


def test_who_only_stands_lit_has_no_first_move():
    still = ("{who: Wren, from: 13.1, p", "{who: Moss, from: 13.1, p")
    edition = Edition(staged=handled(still), report=None)
    wren = next(burn for burn in edition.plan.burns if burn.who == "Wren")
    assert first_move(edition, wren) is None
    assert len(lighting_lines(edition, wren)) == 2
