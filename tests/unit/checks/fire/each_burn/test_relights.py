"""A relight: the same wick cold and soaked again, or a second set and the time to take it up."""

import pytest

from tests.handled_show import found, said

LIT = "    - {who: Wren, from: 11.1, until: 31.1}\n"
# out by 65 s. A second burn without a dance; a third of Moss stays as it is
AGAIN = LIT + "    - {who: Wren, from: FROM, until: 81.1, props: PROPS}\n"
# nobody else to be lit or to be in the way
ALONE = ("    - {who: Moss, from: 41.1, until: 61.1}\n", "")


def again(start, props="second set", more=""):
    return (LIT, AGAIN.replace("FROM", start + more).replace("PROPS", props))


def weaves(start, until):
    """Wren dances between the two burns."""
    own = "  - {who: Moss, from: 43.1, p"
    return (
        own,
        f"  - {{who: Wren, from: {start}, until: {until}, pattern: two-beat-weave}}\n{own}",
    )


def codes(*edits):
    return [code for code, _severity, who in found(*edits) if who == ("Wren",)]


@pytest.mark.parametrize(
    ("edits", "expected"),
    [
        # 20 s to change sets: alight from 85 s at the earliest, so from: 90 s, 46.1
        ([again("46.1")], []),
        ([again("45.4")], ["relight-no-time"]),
        # 4.2672 m to the place of lighting are 4 s of slow walk there, and 4 s back alight: from: 98 s, 50.1
        ([again("50.1", more=", lit_at: [-5, 8.2672]")], []),
        ([again("49.4", more=", lit_at: [-5, 8.2672]")], ["relight-no-time"]),
        # nothing is danced in the 20 s before 105 s, 53.3: a block that ends at 85 s, 43.3, and one a beat longer
        ([again("56.1"), weaves("35.1", "43.3")], []),
        ([again("56.1"), weaves("35.1", "43.4")],
         ["relight-no-time"]),
        # the same wick: 30 s to cool, 10 s to soak, 15 s to spin off, 38.48 m to the fuel and back at 3.5 ft/s, 72.15 s:
        # alight from 192.15 s at the earliest, so from: 197.5 s, 99.4
        ([again("99.4", "same"), ("until: 81.1, p", "until: 110.1, p")], []),
        ([again("99.3", "same"), ("until: 81.1, p", "until: 110.1, p")], ["relight-hot"]),
        ([again("35.1", "same")], ["relight-hot"]),
        # lit again before the flame is out
        ([again("31.2", "same")], ["relight-hot"]),
        ([again("31.2")], ["relight-no-time"]),
        # a block while the props have to be soaked: 97.15 s before 192.5 s
        ([again("99.4", "same"), ("until: 81.1, p", "until: 110.1, p"),
          weaves("42.1", "48.2")], []),
        ([again("99.4", "same"), ("until: 81.1, p", "until: 110.1, p"),
          weaves("42.1", "49.1")],
         ["relight-no-time"]),
    ],
)  # fmt: skip
def test_a_relight_has_the_time_it_needs(edits, expected):
    relights = [code for code in codes(ALONE, *edits) if code.startswith("relight")]
    assert relights == expected


def test_with_two_sets_a_third_burn_takes_up_the_first_set_again_and_it_is_hot():
    # alight from 85 s to 105 s on the second set; the first went out at 65 s and is cold and soaked at 120 s
    # (30 s to cool, 10 s to soak, 15 s to spin off): alight from 120 s on, so from: 125 s, 63.3
    third = "    - {who: Wren, from: FROM, until: 81.1, props: second set}\n"
    two = "    - {who: Wren, from: 46.1, until: 48.1, props: second set}\n"

    def burns(start):
        return (LIT, LIT + two + third.replace("FROM", start))

    hot = said("relight-hot", ALONE, burns("63.2"))
    assert hot.severity == "stop"
    assert "with two sets this one burnt until 1:05.0: it needs 55 s" in hot.message
    assert hot.remedies[0] == "write from: 63.3 (2:05.0) or later"
    assert "relight-hot" not in codes(ALONE, burns("63.3"))


def test_the_findings_count_what_a_relight_needs_and_their_mends_mend():
    hot = said("relight-hot", ALONE, again("40.1", "same"))
    assert hot.message == (
        "Wren is lit again from 1:13.0, 8 s after the flame is out: the same wick needs 2 min 08 s "
        "(30 s until the wick is cold, 25 s to soak and spin off, 73 s of slow walk)"
    )
    assert hot.remedies == (
        "take a second set of props, soaked beforehand: props: second set, with 20 s to change from 1:05.0 on",
        "write from: 99.4 (3:17.5) or later",
        "leave Wren dark from 1:00.0 on",
    )
    early = said("relight-hot", ALONE, again("31.2", "same"))
    assert "lit again from 0:55.5, 10 s before the flame is out" in early.message
    set_ = said("relight-no-time", ALONE, again("40.1"))
    assert set_.message == (
        "the second set of Wren is lit from 1:13.0, 8 s after the first is out; 20 s needed "
        "(0 s of slow walk to the place of lighting, 20 s to change props)"
    )
    assert set_.remedies == (
        "write from: 46.1 (1:30.0) or later",
        "write until: 25.1 (0:48.0) or earlier for the first",
    )
    usual = ("swap: 20 s, ", "")
    assert (
        "20 s to change props (assumed, not measured)"
        in said("relight-no-time", ALONE, usual, again("40.1")).message
    )
    cool = ("cool: 30 s, ", "")
    assert (
        "10 min (assumed, not measured) until the wick is cold"
        in said("relight-hot", ALONE, cool, again("40.1", "same")).message
    )
