"""What a burn is made of, rounding to the safe side, and mends that keep the limit once they are applied."""

import re
from dataclasses import replace

import pytest

from sequencer.checks.fire.each_burn.burning_time import Cut, burn_findings
from sequencer.facts.burn_times import BurnTime
from sequencer.facts.rule_book import rule_book
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.handling import HandlingTimes
from sequencer.safety.safety_plan import refuel_rules

SHARE = rule_book().strictest("burn-share")  # 0.8
TIMED = HandlingTimes(light=5.0, put_out=8.0, cool=600.0, swap=20.0)


def burn(end_s, *, seconds=100.0, before=0.0, **more):
    """Danced from 10 s on; 5 s to light, 8 s to put out, unless said otherwise; with `before` burnt on the same soak."""
    own = PlannedBurn(
        who="Wren", start=0.0, end=9.0, start_s=10.0, end_s=end_s, lit_s=0.0, fuel="kerosene",
        burn=BurnTime(seconds=seconds, basis="measured", source="log"),
        **{"lighting_s": 5.0, "putting_out_s": 8.0, **more},
    )  # fmt: skip
    return replace(own, lit_s=own.flame_s + before)


def judged(own, cuts=(), handling=TIMED):
    found = burn_findings(
        [own], share=SHARE, cuts=[Cut(seconds=s, position=f"{s:g}", label="x") for s in cuts],
        positions=["1.1"], handling=handling, refuel=refuel_rules(rule_book()),
    )  # fmt: skip
    return found[0] if found else None


@pytest.mark.parametrize(
    ("own", "words"),
    [
        # 5 + 70 + 8 s
        (burn(80.0), "lit for 1:23.0 (5 s being lit, 1:10.0 danced, 8 s until it is out), but 80% of the burning time of 1:40.0 (timed) is 1:20.0"),
        (burn(80.0, wait_s=4.2, queue_s=3.0), "lit for 1:30.2 (5 s being lit, 5 s waiting alight, 1:10.0 danced, 11 s until it is out)"),
        (burn(80.0, before=9.99), "lit for 1:33.0 (0:10.0 burnt before on the same soak, 5 s being lit, 1:10.0 danced, 8 s until it is out)"),
        (burn(110.0), "lit for 1:53.0 (5 s being lit, 1:40.0 danced, 8 s until it is out), but the wick burns 1:40.0 (timed)"),
        # a hair over the limit: what is lit is rounded up, what is allowed down
        (burn(77.01), "lit for 1:20.1 (5 s being lit, 1:07.1 danced, 8 s until it is out), but 80% of the burning time of 1:40.0 (timed) is 1:20.0"),
        (burn(77.0, seconds=99.96), "is 1:19.9"),
    ],
)  # fmt: skip
def test_a_finding_says_what_a_burn_is_made_of(own, words):
    assert words in judged(own).message


def test_times_that_nobody_measured_say_so():
    assumed = replace(TIMED, assumed=frozenset({"light", "put_out"}))
    assert (
        "(5 s being lit (assumed, not measured), 1:10.0 danced, 8 s until it is out (assumed, not measured))"
    ) in judged(burn(80.0), handling=assumed).message
    unknown = replace(burn(80.0), burn=None)
    assert (
        "lit for 1:23.0 (5 s being lit, 1:10.0 danced, 8 s until it is out), and how long"
        in judged(unknown).message
    )


def test_what_just_fits_is_not_found_and_what_does_not_is():
    assert judged(burn(77.0)) is None
    assert judged(burn(77.001)).code == "burn-reserve"
    assert judged(burn(97.0)).code == "burn-reserve"
    assert judged(burn(97.001)).code == "burns-out"


@pytest.mark.parametrize("over", [0.001, 0.04, 0.05, 0.06, 0.2, 0.94, 0.96, 3.0, 12.34])
@pytest.mark.parametrize("wait", [0.0, 17.3])
def test_the_mends_keep_the_limit_once_they_are_applied(over, wait):
    """Put out as early as is said, never 0 s earlier; a wick as large; the relights, each lit, waited for and put out."""
    own = burn(77.0 - wait + over, wait_s=wait)
    finding = judged(own)
    said = re.fullmatch(r"put Wren out by (\d+):(\d+\.\d), ([\d.]+) s earlier", finding.remedies[0])
    by = 60 * int(said[1]) + float(said[2])
    assert float(said[3]) > 0
    assert judged(burn(by, wait_s=wait)) is None
    assert judged(burn(own.end_s - float(said[3]), wait_s=wait)) is None
    wick = re.search(
        r"at least ([\d.]+) times the fuel and, timed, burns (\d+):(\d+\.\d)", finding.remedies[-1]
    )
    assert float(wick[1]) > 1.0
    assert judged(burn(own.end_s, wait_s=wait, seconds=60 * int(wick[2]) + float(wick[3]))) is None
    assert judged(burn(own.end_s, wait_s=wait, seconds=100.0 * float(wick[1]))) is None
    alone = [text for text in finding.remedies if text.startswith("let another person light Wren")]
    assert bool(alone) is (wait >= over)
    if alone:
        less = int(re.search(r"(\d+) s less", alone[0])[1])
        assert less == 17
        assert over > less or judged(burn(own.end_s, wait_s=wait - less)) is None


def test_a_cut_that_is_early_enough_is_named_and_later_ones_are_not():
    finding = judged(burn(80.0), cuts=(50.0, 76.9, 77.1))
    assert finding.remedies[0] == "put Wren out at 76.9 (x, 1:16.9), 3.1 s earlier, and end dark"
    assert judged(burn(80.0), cuts=(77.1,)).remedies[0] == "put Wren out by 1:17.0, 3 s earlier"


def test_every_part_of_a_relit_burn_is_lit_waited_for_and_put_out():
    """80 s allowed, of them 13 s handled and 4 s waited: 63 s of dance a part; the first has burnt 10 s before.

    From 10 s to 126 s: cut by 63 s. Longer, it would be cut by 126 s again, and the first set taken up again is hot.
    """
    own = burn(126.0, wait_s=4.0, queue_s=0.0, before=10.0)
    (relit,) = (text for text in judged(own, cuts=(63.0, 64.0)).remedies if "relight" in text)
    assert relit == (
        "put Wren out at 63 (x, 1:03.0), and relight with a second soaked set (props: second set), "
        "33 s later or more"
    )
    twice = burn(150.0, wait_s=4.0, queue_s=0.0, before=10.0)
    assert not any("relight" in text for text in judged(twice, cuts=(63.0, 126.0)).remedies)
    after = replace(own, soak=1, second_set=True)  # the other set has burnt already
    assert not any("relight" in text for text in judged(after, cuts=(63.0, 64.0)).remedies)
    assert not any("relight" in text for text in judged(own, cuts=(63.5, 126.0)).remedies)
    assert not any("relight" in text for text in judged(own, cuts=(62.0, 64.0)).remedies)
    assert "burns with no time to cool and soak in between count as one" in judged(own).message
    assert "soak-seconds" in judged(own).source
    assert "soak-seconds" not in judged(burn(80.0)).source
