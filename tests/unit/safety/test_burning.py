"""Who is lit at once, on how much burning time, with times worked out by hand."""

import math

import pytest

from sequencer.facts.burn_times import BurnTime
from sequencer.safety.burning import PlannedBurn, _with_waits, lit_at_once, spare


def burn(who, start, end, *, seconds=60.0, lit=None, soak=0):
    own = None if seconds is None else BurnTime(seconds=seconds, basis="stated", source="test")
    return PlannedBurn(
        who=who, start=start, end=end, start_s=start / 2, end_s=end / 2,
        lit_s=(end - start) / 2 if lit is None else lit, burn=own, fuel="lamp-oil", soak=soak,
    )  # fmt: skip


def test_who_goes_out_as_another_is_lit_counts_too():
    """docs: flames do not end on a beat; both ends of a burn count, no more."""
    ada, bo, cy = burn("Ada", 0, 8), burn("Bo", 8, 16), burn("Cy", 16.01, 20)
    assert lit_at_once((ada, bo, cy)) == (2, bo)
    assert lit_at_once((ada, burn("Bo", 8.01, 16)))[0] == 1
    assert lit_at_once((burn("Bo", 8, 16), burn("Ada", 0, 8)))[0] == 2
    assert lit_at_once(()) == (0, None)
    assert lit_at_once((ada, burn("Ada", 8, 9))) == (1, ada)  # one performer, however often
    three = (burn("Ada", 0, 8), burn("Bo", 2, 8), burn("Cy", 4, 8), burn("Di", 9, 12))
    assert lit_at_once(three) == (3, three[2])


def test_time_to_spare_and_when_a_wick_is_dry():
    one = burn("Ada", 10, 40, seconds=60.0, lit=18.0)
    assert spare(one) == 42.0
    assert one.dry_s == 20.0 + 42.0
    assert one.share() == 0.3
    over = burn("Ada", 10, 40, seconds=60.0, lit=66.0)
    assert over.dry_s == 20.0 - 6.0
    gone = burn("Ada", 10, 40, seconds=60.0, lit=200.0)
    assert gone.dry_s == 5.0  # dry before it was lit: no earlier than its start
    nobody_knows = burn("Ada", 10, 40, seconds=None)
    assert spare(nobody_knows) == 0.0
    assert nobody_knows.dry_s is None
    assert nobody_knows.share() == math.inf


def test_who_has_least_to_spare_is_lit_last_and_those_before_wait():
    """Three lit together, 5 s each to light: the first waits 10 s, and a later burn of the soak carries it."""
    waits = _with_waits(
        [
            burn("Ada", 0, 8, seconds=30.0),
            burn("Bo", 0, 8, seconds=90.0),
            burn("Cy", 0, 8, seconds=60.0),
            burn("Bo", 20, 28, seconds=90.0, lit=8.0),
            burn("Cy", 40, 48, seconds=60.0, soak=1),
        ]
    )
    told = {(each.who, each.start): each for each in waits}
    assert [told[who, 0].wait_s for who in ("Ada", "Bo", "Cy")] == [0.0, 10.0, 5.0]
    assert [told[who, 0].lit_s for who in ("Ada", "Bo", "Cy")] == [4.0, 14.0, 9.0]
    assert told["Bo", 20].wait_s == 0.0
    assert told["Bo", 20].lit_s == 18.0  # 8 s of both burns, and the 10 s of the first wait
    assert told["Cy", 40].lit_s == pytest.approx(4.0)  # freshly soaked
