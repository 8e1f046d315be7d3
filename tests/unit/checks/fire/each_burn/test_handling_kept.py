"""Lit and put out at rest, and by somebody who is out of reach before the first spin."""

import pytest

from sequencer.checks.fire.each_burn.handling_kept import CHECK, NOT_CHECKED
from tests.handled_show import SHOW, found, handled, said

WREN = [("lit-while-spinning", "stop", ("Wren",))]
BLOCK = "{who: Wren, from: 13.1, pattern: two-beat-weave, until: 30.1}"
EARLY = f"{{who: Wren, from: 1.1, pattern: two-beat-weave, until: UNTIL}}\n  - {BLOCK}"
LATE = f"{BLOCK}\n  - {{who: Wren, from: FROM, pattern: two-beat-weave, beats: 8}}"
WALKS = """\
  away: {spots: {Wren: {at: [-7, 4]}, Moss: {at: [5, 4]}}}
staging:
  - {formation: pair, from: 1.1}
  - {formation: away, from: FROM, beats: 8}
"""


def early(until):
    return (BLOCK, EARLY.replace("UNTIL", until))


def walk(start):
    return ("staging:\n  - {formation: pair, from: 1.1}\n", WALKS.replace("FROM", start))


def test_a_show_that_is_handled_well_has_nothing():
    assert found() == []
    assert CHECK.outcome(handled()).not_checked == NOT_CHECKED


@pytest.mark.parametrize(
    ("edit", "expected"),
    [
        # lighting starts at 15 s, 8.3; the burn begins at 20 s, 11.1
        (early("8.3"), []),
        (early("8.4"), WREN),
        # putting out starts at 60 s, 31.1, and is over at 65 s, 33.3
        (("until: 30.1}\n  - {who: Moss", "until: 31.1}\n  - {who: Moss"), []),
        (("until: 30.1}\n  - {who: Moss", "until: 31.2}\n  - {who: Moss"), WREN),
        ((BLOCK, LATE.replace("FROM", "33.3")), []),
        ((BLOCK, LATE.replace("FROM", "33.2")), WREN),
        # a walk of 4 s, which is over as lighting starts, or a beat later
        (walk("6.3"), []),
        (walk("6.4"), WREN),
    ],
)
def test_nobody_moves_while_they_are_lit_or_put_out(edit, expected):
    assert found(edit) == expected


def test_what_is_said_of_it_gives_times_and_a_mend_that_mends():
    before = said("lit-while-spinning", early("10.1"))
    assert before.message == (
        "Wren dances two-beat-weave until 0:18.0, but is lit from 0:15.0 to 0:20.0"
    )
    assert before.remedies == (
        "end two-beat-weave of Wren at 8.3 (0:15.0) or earlier",
        "write from: 12.3 (0:23.0) or later for Wren",
    )
    assert (before.start, before.end, before.position) == (15.0, 20.0, "11.1")
    assert found(early("8.3")) == []
    # lighting then starts at 18 s; the block after it has to make room for whoever lights
    assert found(early("10.1"), ("who: Wren, from: 11.1", "who: Wren, from: 12.3"),
                 ("{who: Wren, from: 13.1, p", "{who: Wren, from: 14.1, p")) == []  # fmt: skip
    after = said(
        "lit-while-spinning", ("until: 30.1}\n  - {who: Moss", "until: 32.1}\n  - {who: Moss")
    )
    assert after.message == (
        "Wren dances two-beat-weave until 1:02.0, but is put out from 1:00.0, out by 1:05.0"
    )
    assert after.remedies == (
        "end two-beat-weave of Wren at 31.1 (1:00.0) or earlier, or write until: 32.1 (1:02.0)",
    )
    onset = said("lit-while-spinning", (BLOCK, LATE.replace("FROM", "33.1")))
    assert onset.remedies == ("start two-beat-weave of Wren at 33.3 (1:05.0) or later",)


def test_a_block_that_starts_while_they_wait_alight_is_moved_behind_it():
    """Lit 2 s of slow walk from her place: alight from 13 s, lit by 18 s; the weave starts at 19 s, the burn at 20 s."""
    finding = said(
        "lit-while-spinning",
        ("who: Wren, from: 11.1", "who: Wren, lit_at: [-7.13, 4], from: 11.1"),
        ("{who: Wren, from: 13.1, p", "{who: Wren, from: 10.3, p"),
    )
    assert finding.message == (
        "Wren dances two-beat-weave until 0:58.0, but is lit from 0:13.0 to 0:18.0 and waits alight until 0:20.0"
    )
    assert finding.remedies == ("start two-beat-weave of Wren at 11.1 (0:20.0) or later",)


def test_whoever_lights_is_out_of_reach_before_the_first_spin():
    """The reach of Wren at 3.5 ft/s: 20 s and two seconds; 12.1 is 22 s."""
    (wren,) = (dancer for dancer in handled().dancers if dancer.name == "Wren")
    away = 20.0 + wren.reach / 1.0668
    assert 21.5 < away <= 22.0
    assert found(("{who: Wren, from: 13.1, p", "{who: Wren, from: 12.1, p")) == []
    finding = said("lighter-in-reach", ("{who: Wren, from: 13.1, p", "{who: Wren, from: 11.4, p"))
    assert (finding.severity, finding.who) == ("stop", ("Wren", "Sorrel"))
    assert finding.end == pytest.approx(away)
    assert finding.message == (
        "Wren dances two-beat-weave from 0:21.5, and Sorrel lights until 0:20.0: out of a reach of "
        f"{wren.reach:.2f} m is 2 s of slow walk"
    )
    assert finding.remedies == (
        "start two-beat-weave of Wren at 12.1 (0:22.0) or later",
        "write from: 10.4 (0:19.5), so that lighting is over sooner",
    )
    assert found(("{who: Wren, from: 13.1, p", "{who: Wren, from: 11.4, p"),
                 ("who: Wren, from: 11.1", "who: Wren, from: 10.4")) == []  # fmt: skip


def test_a_fire_that_nobody_is_lit_with_is_said():
    """Fuel and burn are entered; without them there is nothing to say."""
    lit = SHOW[SHOW.index("  lit:") : SHOW.index("crew:")]
    assert found((lit, "")) == [("lit-not-danced", "warn", ())]
    fire = SHOW[SHOW.index("fire:") : SHOW.index("crew:")]
    assert found((fire, "")) == []


def test_times_that_nobody_measured_are_marked_in_the_findings():
    usual = ("light: 5 s, put_out: 5 s", "put_out: 5 s")
    finding = said("lit-while-spinning", usual, early("8.3"))
    assert "to 0:20.0 (assumed, not measured)" in finding.message
