"""Who is lit at once, on how much burning time, with times worked out by hand."""

import math
from dataclasses import replace

from sequencer.facts.burn_times import BurnTime
from sequencer.safety.burns.burning import PlannedBurn, lit_at_once, put_out, spare


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


def test_a_flame_counts_from_its_lighting_until_it_is_out():
    """Danced from 5 s to 20 s; 4 s to light, 3 s of waiting before; 2 s of queue and 6 s to put out after."""
    one = replace(
        burn("Ada", 10, 40, seconds=60.0, lit=30.0), lighting_s=4.0, wait_s=3.0, queue_s=2.0,
        putting_out_s=6.0, cool_s=100.0,
    )  # fmt: skip
    assert (one.alight_s, one.out_s, one.cold_s) == (-2.0, 28.0, 128.0)
    assert one.flame_s == 30.0
    assert one.dry_s == 28.0 + 30.0
    assert replace(one, lit_s=500.0).dry_s == -2.0  # dry before it was lit: no earlier than that


def test_who_waits_alight_or_is_put_out_counts_as_lit():
    """Ada burns until 12 s, put out; Bo is lit from 12 s on, 12.5 s would be too late."""
    ada = replace(burn("Ada", 0, 20), putting_out_s=2.0)
    bo = replace(burn("Bo", 40, 60), lighting_s=5.0, wait_s=3.0)
    assert lit_at_once((ada, bo)) == (2, bo)
    assert lit_at_once((ada, replace(bo, wait_s=2.5)))[0] == 1


def test_who_puts_out_does_one_after_the_other_the_least_to_spare_first():
    """Rowan: Cy has 8 s to spare, Ada 26 s and Bo 30 s; 5 s each and a way of 1 s between them. Flint comes to Di alone.

    What is burnt on one soak adds up, the wait for the first putting out with it.
    """
    found = put_out(
        [
            burn("Ada", 0, 8, seconds=30.0, lit=4.0), burn("Bo", 0, 8, seconds=34.0, lit=4.0),
            burn("Cy", 0, 8, seconds=12.0, lit=4.0), burn("Di", 0, 8),
            burn("Bo", 40, 48, seconds=34.0), burn("Bo", 80, 88, seconds=34.0, soak=1),
        ],
        ["Rowan", "Rowan", "Rowan", "Flint", "Rowan", None], [(k, 0) for k in range(6)], seconds=5.0,
        walk=lambda _a, _b: 1.0,
    )  # fmt: skip
    assert [one.out_s for one in found] == [15.0, 21.0, 9.0, 9.0, 29.0, 49.0]
    assert [one.queue_s for one in found] == [6.0, 12.0, 0.0, 0.0, 0.0, 0.0]
    assert [one.put_out_by for one in found] == ["Rowan", "Rowan", "Rowan", "Flint", "Rowan", None]
    assert [one.lit_s for one in found] == [15.0, 21.0, 9.0, 9.0, 21.0 + 9.0, 9.0]
